//! What a hole behind the machine, its pass and a pit's place say: everything whole in both languages and units, and
//! samples word for word.

use chrono::NaiveDate;
use pitface_core::advice::after_dig::{
    Across, CauseReason, Check, DigAdvice, FailureCause, Held, Lasting, LikelyCause, NextStep, Pair, PairBy,
    PassAdvice, PassClue, Remedy, Stretch, TrafficWarning, Verdict, VerdictReason,
};
use pitface_core::advice::machine::{Loosened, Model, WhyNot};
use pitface_core::place::PlaceRemark;
use pitface_core::record::{
    AfterDig, Clods, Condition, Extent, FeetSeen, Lift, Pass, PlaceKind, PlatesLeft, Profile, RecordId,
    RootsSeen, Smear, Zone,
};
use pitface_core::units::LengthUnit::{self, Centimetres, Inches};
use pitface_core::words::{Language, Listed, Words};
use std::collections::BTreeSet;

fn id() -> RecordId {
    RecordId::new(0, [0; 10])
}

fn day(day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 9, day).unwrap()
}

fn english() -> Words {
    Words::new(Language::English, Centimetres)
}

fn german() -> Words {
    Words::new(Language::German, Centimetres)
}

/// Compares with the no-break spaces of measures written as plain ones.
#[track_caller]
fn says(said: &str, expected: &str) {
    assert_eq!(said.replace('\u{a0}', " "), expected);
}

/// Runs a check in every language and unit.
fn everywhere(check: impl Fn(&Words)) {
    for &language in Language::ALL {
        for unit in [LengthUnit::Centimetres, LengthUnit::Inches] {
            check(&Words::new(language, unit));
        }
    }
}

/// A text with nothing missing in it.
#[track_caller]
fn whole(text: &str) {
    assert!(!text.trim().is_empty(), "nothing is said");
    assert!(!text.contains(['{', '}', '_']), "a mark is left: {text}");
    for slip in ["  ", " ,", " .", "..", ",.", ": .", ";.", "()", ": ;", ",,"] {
        assert!(!text.contains(slip), "{slip:?} in: {text}");
    }
    assert_eq!(text, text.trim());
}

/// A whole text that begins with a capital or a number and ends with a stop.
#[track_caller]
fn sentence(text: &str) {
    whole(text);
    assert!(text.starts_with(|first: char| first.is_uppercase() || first.is_numeric()), "{text}");
    assert!(text.ends_with('.'), "{text}");
}

fn stretch(across: Across, known: bool) -> Stretch {
    let (from_mm, to_mm) = if known { (Some(210), Some(390)) } else { (None, None) };
    Stretch { from: 0.35, to: 0.65, from_mm, to_mm, across }
}

fn figure() -> Loosened {
    Loosened { ridge_mm: 100, meets: true, share: 0.89, single_area_m2: 0.184, surface_width_mm: 1_000 }
}

fn dig(verdict: Verdict) -> DigAdvice {
    DigAdvice {
        dig: id(),
        season_on: false,
        target_mm: Some(340),
        layer_bottom_mm: Some(290),
        share: Model::Applies(0.71),
        layer_broken: Model::Applies(0.61),
        ridge_mm: Model::Applies(150),
        figure: Model::Applies(figure()),
        firm_at: vec![stretch(Across::Between, true)],
        verdict,
        why: vec![VerdictReason::LayerBroken { share: 0.61 }],
        causes: Vec::new(),
        pair: None,
    }
}

fn reason(clue: PassClue, code: &str, decibans: f64) -> CauseReason {
    let answer = clue.answers().iter().position(|its| *its == code).unwrap();
    CauseReason { clue, answer, decibans }
}

fn cause(cause: FailureCause, share: f64, reasons: Vec<CauseReason>) -> LikelyCause {
    LikelyCause { cause, share, reasons, check: Some(cause.check()), remedy: cause.remedy() }
}

fn spacing() -> LikelyCause {
    let reasons = vec![
        reason(PassClue::Pattern, "ridge", 7.0),
        reason(PassClue::Ridge, "higher", 4.0),
        reason(PassClue::Smear, "none", -2.0),
        reason(PassClue::Clods, "small", 0.4),
    ];
    cause(FailureCause::SpacingTooWide, 0.64, reasons)
}

fn pair() -> Pair {
    Pair {
        before: id(),
        by: PairBy::Nearest,
        condition: Condition::Tight,
        top_mm: 220,
        bottom_mm: 290,
        firm_before_mm: Some(220),
        firm_now_mm: Some(330),
    }
}

fn pass_advice(next: NextStep) -> PassAdvice {
    PassAdvice {
        pass: id(),
        digs: Vec::new(),
        verdict: None,
        next,
        check: None,
        remedy: None,
        no_strip_before: false,
        traffic: None,
        held: None,
    }
}

fn pass() -> Pass {
    Pass {
        zone: Some(Zone::Headland),
        extent: Some(Extent::TrialStrip),
        done: Some(day(1)),
        tip_mm: Some(340),
        speed_kmh: Some(6.0),
        ..Pass::new(id())
    }
}

fn hole() -> AfterDig {
    AfterDig {
        firm_mm: vec![340, 300, 225, 300, 330],
        slots_mm: vec![340, 335],
        profile: Some(Profile::V),
        smear: Some(Smear::None),
        lift: Some(Lift::Even),
        clods: Some(Clods::Small),
        subsoil_up: Some(false),
        plates: Some(PlatesLeft::Some),
        feet: Some(FeetSeen::Worn),
        old_slots: Some(true),
        roots: Some(RootsSeen::Through),
        ..AfterDig::new(id())
    }
}

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
    ];
    let number = |why: &VerdictReason| match why {
        VerdictReason::NoReadings => 0,
        VerdictReason::LayerBroken { .. } => 1,
        VerdictReason::SectionLoose { .. } => 2,
        VerdictReason::NoDeeper { .. } => 3,
        VerdictReason::PressedSlot => 4,
        VerdictReason::Thrown => 5,
        VerdictReason::PlatesLeft => 6,
    };
    assert_eq!(all.iter().map(number).collect::<Vec<_>>(), (0..7).collect::<Vec<_>>());
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
            words.after_dig_figures(&dig).iter().for_each(|said| sentence(said));
            sentence(&words.describe_after_dig(&hole(), &dig));
            sentence(&words.describe_after_dig(&AfterDig::new(id()), &dig));
            dig.firm_at.iter().for_each(|stretch| sentence(&words.firm_stretch(stretch)));
        }
        let said: BTreeSet<String> = verdict_reasons().iter().map(|why| words.verdict_reason(why)).collect();
        assert_eq!(said.len(), verdict_reasons().len());
        said.iter().for_each(|said| sentence(said));
        words.published_share().iter().for_each(|said| sentence(said));
    });
}

#[test]
fn every_cause_check_change_and_answer_is_said_whole() {
    everywhere(|words| {
        for &clue in PassClue::ALL {
            let said: BTreeSet<String> =
                (0..clue.answers().len()).map(|answer| words.pass_answer(clue, answer)).collect();
            assert_eq!(said.len(), clue.answers().len(), "{said:?}");
            said.iter().for_each(|said| whole(said));
            assert_eq!(words.pass_answer(clue, clue.answers().len()), "", "no such answer");
        }
        for &what in FailureCause::ALL {
            for share in [1.0, 0.64, 0.2, 0.03] {
                let (carry, against) =
                    (reason(PassClue::Smear, "smeared", 5.0), reason(PassClue::Speed, "within", -5.0));
                for reasons in [vec![], vec![carry], vec![against], vec![carry, against]] {
                    let cause = cause(what, share, reasons);
                    whole(&words.cause_line(&cause));
                    words.cause_lines(&cause).iter().for_each(|said| sentence(said));
                    let checked = LikelyCause { check: None, ..cause };
                    assert!(words.cause_lines(&checked).len() < words.cause_lines(&spacing()).len());
                }
            }
        }
        Check::ALL.iter().for_each(|&check| sentence(&words.check_sentence(check)));
        Remedy::ALL.iter().for_each(|&remedy| sentence(&words.remedy_sentence(remedy)));
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
            words.traffic_warning(&traffic).iter().for_each(|said| sentence(said));
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
        PairBy::ALL.iter().for_each(|&by| sentence(&words.pair_found(&Pair { by, ..pair() })));
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

fn with(verdict: Verdict, change: impl FnOnce(&mut DigAdvice)) -> DigAdvice {
    let mut dig = dig(verdict);
    change(&mut dig);
    dig
}

#[test]
fn a_verdict_names_what_where_and_how_wide() {
    let partly = dig(Verdict::Partly);
    says(
        &english().after_dig_sentence(&partly),
        "Partly: 61 % of the layer is broken; it is firm between the tine lines (18 cm wide).",
    );
    says(
        &german().after_dig_sentence(&partly),
        "Teilweise: 61 % der Schicht sind gebrochen; fest ist es zwischen den Zinkenspuren (18 cm breit).",
    );
    says(
        &Words::new(Language::English, Inches).after_dig_sentence(&partly),
        "Partly: 61 % of the layer is broken; it is firm between the tine lines (7 in wide).",
    );
    let no_spacing = with(Verdict::Partly, |dig| dig.firm_at = vec![stretch(Across::Between, false)]);
    says(
        &english().after_dig_sentence(&no_spacing),
        "Partly: 61 % of the layer is broken; it is firm between the tine lines (30 % of the width).",
    );
    let not_done = with(Verdict::NotDone, |dig| dig.firm_at = vec![stretch(Across::Throughout, true)]);
    says(
        &english().after_dig_sentence(&not_done),
        "Not done: the layer stands as it was; it is firm from tine line to tine line.",
    );
    says(
        &german().after_dig_sentence(&not_done),
        "Nicht geschafft: Die Schicht steht wie zuvor; fest ist es von Zinkenspur zu Zinkenspur.",
    );
    says(
        &english().firm_stretch(&stretch(Across::Between, true)),
        "Firm between the tine lines: 21–39 cm from the first line.",
    );
}

#[test]
fn a_verdict_says_the_harm_and_what_is_missing() {
    let pressed =
        with(Verdict::Worse, |dig| dig.why = vec![VerdictReason::Thrown, VerdictReason::PressedSlot]);
    says(
        &english().after_dig_sentence(&pressed),
        "Worse: the ground is pressed round the slots; subsoil lies on the surface in large clods.",
    );
    says(
        &german().after_dig_sentence(&pressed),
        "Schlimmer: Um die Schlitze ist der Boden gepresst; Unterboden liegt in großen Kluten obenauf.",
    );
    let nothing = with(Verdict::CannotSay, |_| ());
    says(&english().after_dig_sentence(&nothing), "Cannot say: no depths to firm soil were read.");
    let no_mark = with(Verdict::CannotSay, |dig| (dig.target_mm, dig.layer_bottom_mm) = (None, None));
    assert!(english().after_dig_sentence(&no_mark).contains("the depth that was wanted"));
    let no_layer = with(Verdict::Done, |dig| {
        dig.layer_broken = Model::DoesNotApply(WhyNot::NoLayer);
        dig.why = vec![VerdictReason::SectionLoose { share: 0.82 }];
    });
    says(&english().after_dig_sentence(&no_layer), "Done: 82 % of the ground down to 34 cm is loose.");
}

#[test]
fn a_season_on_it_is_said_whether_it_held() {
    let later = |verdict| with(verdict, |dig| dig.season_on = true);
    says(&english().after_dig_sentence(&later(Verdict::Done)), "Held: 61 % of the layer is still broken.");
    says(
        &german().after_dig_sentence(&later(Verdict::NotDone)),
        "Nicht gehalten: Fest ist es wieder zwischen den Zinkenspuren (18 cm breit).",
    );
    for &verdict in Verdict::ALL {
        let (now, then) = (dig(verdict), later(verdict));
        assert_ne!(english().after_dig_sentence(&now), english().after_dig_sentence(&then));
    }
}

#[test]
fn figures_are_measured_against_the_figure_and_the_published_share() {
    let said = english().after_dig_figures(&dig(Verdict::Partly));
    let expected = [
        "Measured: 71 % of the ground down to 34 cm is loose.",
        "Measured: the layer, which ends at 29 cm, is broken at 61 % of the readings.",
        "The ridge between the tine lines is 15 cm high; by the figure at most 10 cm.",
        "By the figure 89 % of the ground or more would be loosened.",
    ];
    assert_eq!(said.len(), expected.len());
    said.iter().zip(expected).for_each(|(said, expected)| says(said, expected));
    let below = with(Verdict::Partly, |dig| dig.figure = Model::DoesNotApply(WhyNot::BelowCriticalDepth));
    let said = german().after_dig_figures(&below);
    says(&said[2], "Der Damm zwischen den Zinkenspuren ist 15 cm hoch.");
    assert!(said[3].contains("beiseite gedrückt") && !said[3].contains('%'));
    let perhaps = with(Verdict::Partly, |dig| dig.figure = Model::AppliesIfAboveCritical(figure()));
    assert!(english().after_dig_figures(&perhaps)[3].starts_with("Only if the trial strip"));
    // USDA Forest Service 0834-2828, p. 6: 75 to 80 % of the compacted layer in ideal conditions.
    let published = english().published_share();
    says(
        &published[0],
        "Published for ideal conditions: 75–80 % of the compacted layer broken (USDA Forest Service 0834-2828, p. 6).",
    );
    says(&published[1], "No source gives a mark from which a pass is done; ours is 75 %.");
}

#[test]
fn a_cause_comes_with_reasons_check_and_change() {
    says(&english().cause_line(&spacing()), "Likely: spacing too wide, 64 of 100");
    says(
        &german().cause_line(&LikelyCause { share: 0.2, ..spacing() }),
        "Möglich: Zinkenabstand zu weit, 20 von 100",
    );
    let expected = [
        "Likely: spacing too wide, 64 of 100. For it: the ground between the lines stayed firm; the ridge is higher \
         than the figure has it. Against it: the walls of the slot are not smeared.",
        "Check: read the depth to firm soil from one tine line to the next, and measure the spacing of the legs.",
        "Then: set the legs closer, or run a second time between the lines.",
        "Machine stopped and keys out before anyone goes near the tines.",
    ];
    let said = english().cause_lines(&spacing());
    assert_eq!(said.len(), expected.len());
    said.iter().zip(expected).for_each(|(said, expected)| says(said, expected));
}

#[test]
fn the_caution_stands_where_somebody_goes_near_the_tines() {
    let caution = "Machine stopped and keys out before anyone goes near the tines.";
    says(
        &english().check_sentence(Check::SlotsAcross),
        &format!("Check: measure the slots behind the outer legs on both sides. {caution}"),
    );
    says(&english().remedy_sentence(Remedy::Slower), "Then: drive slower.");
    for check in [Check::LookAtFeet, Check::MeasureSlots, Check::ReadAcross] {
        assert!(english().check_sentence(check).ends_with(caution));
        let next = PassAdvice { check: Some(check), ..pass_advice(NextStep::CheckFirst) };
        assert!(english().next_sentence(&next).ends_with(caution));
    }
    for remedy in [Remedy::NewFeet, Remedy::Closer, Remedy::ShallowerOrWider, Remedy::LevelIt] {
        assert!(english().remedy_sentence(remedy).ends_with(caution));
        let next = PassAdvice { remedy: Some(remedy), ..pass_advice(NextStep::ChangeAndTry) };
        assert!(english().next_sentence(&next).ends_with(caution));
    }
    let feet = cause(FailureCause::WornFeet, 0.6, Vec::new());
    let lines = english().cause_lines(&feet);
    assert_eq!(lines.iter().filter(|line| line.contains("keys out")).count(), 1, "once is enough");
}

#[test]
fn a_pass_is_told_from_title_to_traffic() {
    says(
        &english().pass_title(&pass(), Some("Yard subsoiler")),
        "Trial strip on the headland, 2026-09-01, with Yard subsoiler at 34 cm, 6 km/h",
    );
    says(
        &german().pass_title(&Pass { speed_kmh: Some(4.5), ..pass() }, None),
        "Probestreifen auf dem Vorgewende, 01.09.2026, Scharspitzen in 34 cm, 4,5 km/h",
    );
    says(&english().pass_title(&Pass::new(id()), None), "Pass");
    let change = PassAdvice { remedy: Some(Remedy::Closer), ..pass_advice(NextStep::ChangeAndTry) };
    assert!(english().next_sentence(&change).starts_with(
        "Next: set the legs closer, or run a second time between the lines; then run another trial strip and dig \
         behind it."
    ));
    says(
        &german().next_sentence(&pass_advice(NextStep::GoOn)),
        "Als Nächstes: mit der Zone in dieser Einstellung weitermachen.",
    );
    let digs = vec![dig(Verdict::Done), dig(Verdict::Partly)];
    let two = PassAdvice { verdict: Some(Verdict::Partly), digs, ..pass_advice(NextStep::GoOn) };
    says(
        &english().pass_verdict(&two),
        "The pass loosened in places only. So says the worst of the 2 holes behind it.",
    );
    says(
        &english().pass_verdict(&pass_advice(NextStep::DigBehind)),
        "No hole has been dug behind this pass yet.",
    );
    // soilandwater.org.uk: a sandy loam, driven on a week later, stronger than before down to 10 cm.
    let said = english().traffic_warning(&TrafficWarning { loosened: day(1), driven_on: day(8), days: 7 });
    says(&said[0], "Heavy wheels ran over it on 2026-09-08, 7 days after it was loosened.");
    assert!(said[1].contains("soilandwater.org.uk") && said[1].contains("10\u{a0}cm"));
    says(&said[2], "Keep heavy wheels off loosened ground.");
}

#[test]
fn whether_it_has_held_is_said_with_shares_and_roots() {
    let held =
        Held { lasting: Lasting::Held, then: Some(0.82), now: Some(0.78), roots: Some(RootsSeen::Through) };
    says(
        &english().held_sentence(&held),
        "It has held: 82 % was loose behind the machine, 78 % is a season on. Roots go right through.",
    );
    says(
        &german().held_sentence(&Held { roots: None, ..held }),
        "Es hat gehalten: Hinter dem Gerät waren 82 % locker, eine Saison später sind es 78 %.",
    );
}

#[test]
fn before_and_behind_stand_side_by_side() {
    says(
        &english().pair_sentences(&pair()),
        "Before: tight at 22–29 cm. Behind the machine: firm only from 33 cm on average.",
    );
    says(
        &german().pair_sentences(&pair()),
        "Vorher: dicht in 22–29 cm. Hinter dem Gerät: fest erst ab 33 cm im Mittel.",
    );
    let no_deeper = Pair { firm_now_mm: Some(220), ..pair() };
    assert!(english().pair_sentences(&no_deeper).ends_with("no deeper than before."));
    says(&english().pair_found(&pair()), "Compared with the nearest pit of the zone from before the pass.");
}

#[test]
fn where_a_pit_lies_is_said_in_whole_metres_or_feet() {
    let outside = |distance_m| PlaceRemark::Outside { distance_m, accuracy_m: 5.0 };
    let near = PlaceRemark::NearEdge { distance_m: 2.1, accuracy_m: 4.0, zone: Zone::Headland };
    let (open, gateway) = (PlaceKind::Open, PlaceKind::Gateway);
    says(&english().place_remark(4, open, &outside(12.0)), "Pit 4 lies 12 m outside the outline.");
    says(
        &Words::new(Language::English, Inches).place_remark(4, open, &outside(12.0)),
        "Pit 4 lies 39 ft outside the outline.",
    );
    says(
        &english().place_remark(4, open, &outside(3.0)),
        "Pit 4 lies 3 m outside the outline, within the accuracy of its position (±5 m).",
    );
    says(
        &english().place_remark(3, open, &near),
        "Pit 3 may also lie on the headland: the edge is 2 m away, and the position is accurate to ±4 m.",
    );
    says(
        &german().place_remark(3, open, &near),
        "Grube 3 kann auch auf dem Vorgewende liegen: Bis zum Rand sind es 2 m, und die Position stimmt auf ±4 m.",
    );
    says(
        &english().place_remark(3, gateway, &PlaceRemark::DiffersFromPlace { zone: Zone::Headland }),
        "By its position pit 3 lies on the headland; it was noted in a gateway, and that stands.",
    );
    says(
        &english().place_remark(3, open, &PlaceRemark::MovedTo { zone: Zone::Headland }),
        "Pit 3 was noted on open ground; by its position it lies on the headland and counts there.",
    );
}

#[test]
fn a_hole_is_spoken_with_everything_seen_and_nothing_else() {
    let dig = with(Verdict::Partly, |dig| (dig.pair, dig.causes) = (Some(pair()), vec![spacing()]));
    let said = english().describe_after_dig(&hole(), &dig).replace('\u{a0}', " ");
    for expected in [
        "Hole behind the machine. 34 cm was wanted. The layer ended at 29 cm.",
        "From tine line to tine line firm soil begins at 34; 30; 22.5; 30; 33 cm.",
        "some plates of the layer are left whole",
        "no subsoil lies on the surface",
        "roots go right through. Partly: 61 % of the layer is broken;",
        "Before: tight at 22–29 cm.",
        "Likely: spacing too wide, 64 of 100.",
        "keys out",
    ] {
        assert!(said.contains(expected), "{expected} is not in\n{said}");
    }
    // Not looked is never "none".
    let said = english().describe_after_dig(&AfterDig::new(id()), &dig);
    for unseen in ["plates", "surface", "lumps", "feet", "smeared or", "roots"] {
        assert!(!said.contains(unseen), "{unseen} is in\n{said}");
    }
}
