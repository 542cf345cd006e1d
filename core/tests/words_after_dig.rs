//! Everything a hole behind the machine, its pass and a pit's place can say is said whole, in both languages and units.

use crate::after_dig_words;

use after_dig_words::*;
use pitface_core::advice::after_dig::{
    Across, Check, DigAdvice, FailureCause, Held, Lasting, LikelyCause, NextStep, Pair, PairBy, PassAdvice,
    PassClue, Remedy, TrafficWarning, Verdict, VerdictReason,
};
use pitface_core::advice::machine::{Model, WhyNot};
use pitface_core::place::PlaceRemark;
use pitface_core::record::{
    AfterDig, Clods, Condition, Extent, FeetSeen, Lift, Pass, PlaceKind, PlatesLeft, Profile, RootsSeen,
    Smear, Zone,
};
use pitface_core::words::{Listed, Words};
use std::collections::BTreeSet;

/// One of each; the match does not compile when a new one is missing here.
fn verdict_reasons() -> Vec<VerdictReason> {
    let all = vec![
        VerdictReason::NoReadings,
        VerdictReason::LayerBroken { share: 0.61 },
        VerdictReason::SectionLoose { share: 0.61 },
        VerdictReason::NoDeeper { before_mm: 240, now_mm: 220 },
        VerdictReason::PressedSlot,
        VerdictReason::Thrown,
        VerdictReason::PlatesLeft,
        VerdictReason::FloorLeft,
        VerdictReason::SlotSeen { smeared: true, narrow: true },
        VerdictReason::Against { clue: PassClue::Clods, answer: "large" },
    ];
    let number = |why: &VerdictReason| match why {
        VerdictReason::NoReadings => 0,
        VerdictReason::LayerBroken { .. } => 1,
        VerdictReason::SectionLoose { .. } => 2,
        VerdictReason::NoDeeper { .. } => 3,
        VerdictReason::PressedSlot => 4,
        VerdictReason::Thrown => 5,
        VerdictReason::PlatesLeft => 6,
        VerdictReason::FloorLeft => 7,
        VerdictReason::SlotSeen { .. } => 8,
        VerdictReason::Against { .. } => 9,
    };
    assert_eq!(all.iter().map(number).collect::<Vec<_>>(), (0..10).collect::<Vec<_>>());
    all
}

fn models<T: Copy>(value: T) -> Vec<Model<T>> {
    let why_not = WhyNot::ALL.iter().map(|&why| Model::DoesNotApply(why));
    [Model::Applies(value), Model::AppliesIfAboveCritical(value)].into_iter().chain(why_not).collect()
}

/// Every hole there can be, as far as its words go.
fn digs() -> Vec<DigAdvice> {
    let mut all = Vec::new();
    for (&verdict, season_on) in Verdict::ALL.iter().flat_map(|verdict| [(verdict, false), (verdict, true)]) {
        let dig = DigAdvice { season_on, ..dig(verdict) };
        for why in verdict_reasons() {
            all.push(DigAdvice { why: vec![why], ..dig.clone() });
            let no_layer = Model::DoesNotApply(WhyNot::NoLayer);
            let bare =
                DigAdvice { layer_bottom_mm: None, layer_broken: no_layer, why: vec![why], ..dig.clone() };
            all.push(DigAdvice { target_mm: None, ..bare.clone() });
            all.push(DigAdvice { share: Model::DoesNotApply(WhyNot::NotGiven), ..bare.clone() });
            all.push(bare);
        }
        for &across in Across::ALL {
            for known in [true, false] {
                let one = stretch(across, known);
                all.push(DigAdvice { firm_at: vec![one], ..dig.clone() });
                all.push(DigAdvice { firm_at: vec![one, one], ..dig.clone() });
                let at_line = stretch(Across::AtLine, known);
                all.push(DigAdvice { firm_at: vec![at_line, one], ..dig.clone() });
            }
        }
        all.push(DigAdvice { firm_at: Vec::new(), ..dig.clone() });
        all.push(DigAdvice { why: vec![VerdictReason::PressedSlot, VerdictReason::Thrown], ..dig });
    }
    let done = dig(Verdict::Done);
    all.extend(models(0.71).into_iter().map(|share| DigAdvice { share, ..done.clone() }));
    all.extend(models(0.71).into_iter().map(|layer_broken| DigAdvice { layer_broken, ..done.clone() }));
    all.extend(models(150).into_iter().map(|ridge_mm| DigAdvice { ridge_mm, ..done.clone() }));
    all.extend(models(figure()).into_iter().map(|figure| DigAdvice { figure, ..done.clone() }));
    let no_figure = Model::DoesNotApply(WhyNot::BelowCriticalDepth);
    all.extend([Model::Applies(figure()), no_figure].map(|figure| DigAdvice {
        figure,
        ridge_mm: Model::Applies(0),
        ..done.clone()
    }));
    all
}

#[test]
fn every_hole_is_said_whole() {
    everywhere(|words| {
        for dig in digs() {
            sentence(&words.after_dig_sentence(&dig));
            for said in &words.after_dig_figures(&dig) {
                sentence(said);
            }
            sentence(&words.describe_after_dig(&hole(), &dig));
            sentence(&words.describe_after_dig(&AfterDig::new(id()), &dig));
            for stretch in &dig.firm_at {
                sentence(&words.firm_stretch(stretch));
            }
        }
        let said: BTreeSet<String> = verdict_reasons().iter().map(|why| words.verdict_reason(why)).collect();
        assert_eq!(said.len(), verdict_reasons().len());
        for said in &said {
            sentence(said);
        }
        for said in &words.published_share() {
            sentence(said);
        }
    });
}

#[test]
fn every_cause_check_change_and_answer_is_said_whole() {
    everywhere(|words| {
        for &clue in PassClue::ALL {
            let said: BTreeSet<String> =
                (0..clue.answers().len()).map(|answer| words.pass_answer(clue, answer)).collect();
            assert_eq!(said.len(), clue.answers().len(), "{said:?}");
            for said in &said {
                whole(said);
            }
            assert_eq!(words.pass_answer(clue, clue.answers().len()), "", "no such answer");
        }
        for &what in FailureCause::ALL {
            for share in [1.0, 0.64, 0.2, 0.03] {
                let (carry, against) =
                    (reason(PassClue::Smear, "smeared", 5.0), reason(PassClue::Speed, "within", -5.0));
                for reasons in [vec![], vec![carry], vec![against], vec![carry, against]] {
                    let cause = cause(what, share, reasons);
                    whole(&words.cause_line(&cause));
                    for said in &words.cause_lines(&cause) {
                        sentence(said);
                    }
                    let checked = LikelyCause { check: None, ..cause };
                    assert!(words.cause_lines(&checked).len() < words.cause_lines(&spacing()).len());
                }
            }
        }
        for &check in Check::ALL {
            sentence(&words.check_sentence(check));
        }
        for &remedy in Remedy::ALL {
            sentence(&words.remedy_sentence(remedy));
        }
    });
}

#[test]
fn every_pass_is_said_whole() {
    everywhere(|words| {
        for &next in NextStep::ALL {
            sentence(&words.next_sentence(&pass_advice(next)));
            for &check in Check::ALL {
                sentence(&words.next_sentence(&PassAdvice { check: Some(check), ..pass_advice(next) }));
            }
            for &remedy in Remedy::ALL {
                sentence(&words.next_sentence(&PassAdvice { remedy: Some(remedy), ..pass_advice(next) }));
            }
        }
        for verdict in Verdict::ALL.iter().copied().map(Some).chain([None]) {
            for digs in [vec![dig(Verdict::Partly)], vec![dig(Verdict::Partly), dig(Verdict::NotDone)]] {
                sentence(&words.pass_verdict(&PassAdvice { verdict, digs, ..pass_advice(NextStep::GoOn) }));
            }
        }
        sentence(&words.no_strip_before());
        for days in [0, 1, 7] {
            let driven_on = day(1 + u32::try_from(days).unwrap());
            let traffic = TrafficWarning { loosened: day(1), driven_on, days };
            for said in &words.traffic_warning(&traffic) {
                sentence(said);
            }
        }
        let roots = || RootsSeen::ALL.iter().copied().map(Some).chain([None]);
        for (&lasting, roots) in
            Lasting::ALL.iter().flat_map(|lasting| roots().map(move |roots| (lasting, roots)))
        {
            for (then, now) in
                [(None, None), (Some(0.82), None), (None, Some(0.78)), (Some(0.82), Some(0.78))]
            {
                sentence(&words.held_sentence(&Held { lasting, then, now, roots }));
            }
        }
        for &condition in Condition::ALL {
            for (firm_before_mm, firm_now_mm) in [
                (None, None),
                (None, Some(330)),
                (Some(220), None),
                (Some(220), Some(220)),
                (Some(220), Some(330)),
            ] {
                sentence(&words.pair_sentences(&Pair { condition, firm_before_mm, firm_now_mm, ..pair() }));
            }
        }
        for &by in PairBy::ALL {
            sentence(&words.pair_found(&Pair { by, ..pair() }));
        }
    });
}

#[test]
fn every_title_has_what_is_known() {
    everywhere(|words| {
        let zones = Zone::ALL.iter().copied().map(Some).chain([None]);
        for zone in zones {
            for extent in Extent::ALL.iter().copied().map(Some).chain([None]) {
                for known in [true, false] {
                    let bare = Pass { zone, extent, ..Pass::new(id()) };
                    let pass = if known { Pass { zone, extent, ..pass() } } else { bare };
                    for machine in [Some("Yard subsoiler"), None] {
                        let said = words.pass_title(&pass, machine);
                        whole(&said);
                        assert_eq!(said.contains("Yard subsoiler"), machine.is_some());
                        assert_eq!(said.contains("2026"), known);
                        assert!(said.starts_with(char::is_uppercase));
                    }
                }
            }
        }
    });
}

#[test]
fn every_place_is_said_whole() {
    everywhere(|words| {
        for &place in PlaceKind::ALL {
            for (distance_m, accuracy_m) in [(12.0, 5.0), (3.0, 4.2), (0.3, 0.02)] {
                sentence(&words.place_remark(4, place, &PlaceRemark::Outside { distance_m, accuracy_m }));
                for &zone in Zone::ALL {
                    let remark = PlaceRemark::NearEdge { distance_m, accuracy_m, zone };
                    sentence(&words.place_remark(4, place, &remark));
                    sentence(&words.place_remark(4, place, &PlaceRemark::DiffersFromPlace { zone }));
                    sentence(&words.place_remark(4, place, &PlaceRemark::MovedTo { zone }));
                }
            }
        }
    });
}

#[test]
fn every_word_stands_alone_with_a_capital() {
    fn all<T: Listed>(words: &Words, values: &[T]) {
        for &value in values {
            whole(&words.of(value));
            assert!(words.label(value).starts_with(char::is_uppercase), "{}", words.label(value));
        }
    }
    everywhere(|words| {
        all(words, Verdict::ALL);
        all(words, FailureCause::ALL);
        all(words, PassClue::ALL);
        all(words, Across::ALL);
        all(words, Extent::ALL);
        all(words, Profile::ALL);
        all(words, Smear::ALL);
        all(words, Lift::ALL);
        all(words, Clods::ALL);
        all(words, PlatesLeft::ALL);
        all(words, FeetSeen::ALL);
        all(words, pitface_core::record::Buried::ALL);
    });
}
