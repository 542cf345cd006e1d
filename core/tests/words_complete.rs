//! Everything that can be said is said whole, in both languages and units: nothing missing, no code left.

use chrono::NaiveDate;
use pitface_core::advice::after_dig::{Check, NextStep, Remedy, Verdict};
use pitface_core::advice::{
    BearsOn, Caution, Change, ChangedAnswer, FieldAdvice, FieldInput, FollowUp, Obstacle, OfGround,
    Readiness, RootingLoss, Stance, Sureness, TipDepth, WaterHeld, What, Why, WorthAsking, ZoneCall,
};
use pitface_core::reading::{Clue, KINDS, Kind, NextLook, Reason};
use pitface_core::record::{Call, Cause, Condition, FaceMoisture, PlaceKind, RollOutcome, Sign, Zone};
use pitface_core::soil::texture::{Texture, TextureClass, TextureScheme};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Heading, Language, Listed, Words};
use proptest::prelude::*;
use std::collections::BTreeSet;

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
    assert!(!text.contains(['{', '}', '_', '\u{2068}', '\u{2069}']), "a mark is left: {text}");
    for slip in ["  ", " ,", " .", "..", ",.", ": .", ";.", "()", ": ;"] {
        assert!(!text.contains(slip), "{slip:?} in: {text}");
    }
    assert_eq!(text, text.trim());
}

/// A whole text that begins with a capital or a number and ends with a stop.
#[track_caller]
fn sentence(text: &str) {
    whole(text);
    assert!(
        text.starts_with(|first: char| first.is_uppercase() || first.is_numeric() || "½".contains(first)),
        "{text}"
    );
    assert!(text.ends_with('.'), "{text}");
}

const TIP: TipDepth =
    TipDepth { lo_mm: 325, hi_mm: 350, bottom_mm: 300, cleared_share: 0.8, pits: 5, confidence: 0.672 };

fn zone_call(zone: Zone, call: Call) -> ZoneCall {
    ZoneCall {
        zone,
        call,
        readiness: Readiness::Fit,
        share: 0.86,
        sure: Sureness::Likely,
        ground: OfGround { pits: 2, agree: 2, share: 0.94, sure: Sureness::Sure },
        tip: None,
        pits: 2,
        reasons: Vec::new(),
        cautions: Vec::new(),
        follow_up: Vec::new(),
        rooting_loss: None,
    }
}

#[test]
fn every_call_of_every_zone_is_a_sentence() {
    let fitness = [
        Readiness::Fit,
        Readiness::RollFirst { depth_mm: 350 },
        Readiness::RollNotApplicable,
        Readiness::StripFirst,
    ];
    everywhere(|words| {
        for &zone in Zone::ALL {
            let mut said = BTreeSet::new();
            whole(&words.zone_on(zone));
            sentence(&words.dig_another(zone));
            for &call in Call::ALL {
                for (readiness, tip) in fitness.into_iter().flat_map(|fit| [(fit, None), (fit, Some(TIP))]) {
                    let call = ZoneCall { readiness, tip, ..zone_call(zone, call) };
                    sentence(&words.call_sentence(&call));
                    whole(&words.call_line(&call));
                    said.insert(words.call_sentence(&call));
                }
            }
            assert_eq!(said.len(), Call::ALL.len() + 6, "{said:?}");
        }
    });
}

#[test]
fn every_pair_of_calls_is_a_sentence_for_the_whole() {
    everywhere(|words| {
        for (&one, &other) in Call::ALL.iter().flat_map(|one| Call::ALL.iter().map(move |other| (one, other)))
        {
            let zones = vec![zone_call(Zone::Open, one), zone_call(Zone::Wheelings, other)];
            let field = FieldAdvice { whole: zone_call(Zone::Whole, one), zones };
            sentence(&words.whole_sentence(&field));
        }
    });
}

const DAY: NaiveDate = NaiveDate::from_ymd_opt(2026, 8, 20).unwrap();

/// One of each; the match below does not compile when a new one is missing here.
#[expect(clippy::too_many_lines, reason = "a list of one of each")]
fn every_what() -> Vec<What> {
    let (top_mm, bottom_mm, depth_mm) = (200, 305, 350);
    let kind = Kind { condition: Condition::Tight, cause: Cause::Pressed };
    let settled = Kind { condition: Condition::Firm, cause: Cause::Settled };
    let reason = |clue, answer, decibans| Reason { clue, answer, decibans };
    let carry = reason(Clue::Roots, 2, 8.0);
    let against = reason(Clue::Smell, 0, -3.0);
    let reference = reason(Clue::Reference, 1, 5.0);
    let layer = |reasons: &[Reason]| What::Layer {
        pit: 3,
        top_mm,
        bottom_mm,
        kind,
        share: 0.86,
        reasons: reasons.to_vec(),
    };
    let mut all = vec![
        layer(&[]),
        layer(&[carry]),
        layer(&[against]),
        layer(&[carry, reference, against]),
        What::NothingHarmed,
        What::RootsPass { top_mm, bottom_mm, roots: true, worms: true },
        What::RootsPass { top_mm, bottom_mm, roots: true, worms: false },
        What::RootsPass { top_mm, bottom_mm, roots: false, worms: true },
        What::Peat { top_mm, bottom_mm },
        What::NoPits,
        What::TooShallow { dug_to_mm: 300, need_mm: 400 },
        What::NoReference,
        What::SignsTooFew { top_mm, bottom_mm, missing: vec![Clue::Pores, Clue::Roots] },
        What::KindsOpen { top_mm, bottom_mm, one: kind, other: settled },
        What::SignsClash { top_mm, bottom_mm, signs: vec![carry, against] },
        What::ReadersDiffer {
            pits: [2, 3],
            calls: [Call::Loosen, Call::LeaveIt],
            top_mm,
            bottom_mm,
            signs: vec![Sign::Roots, Sign::Pores],
        },
        What::ReadersDiffer {
            pits: [2, 3],
            calls: [Call::Loosen, Call::LeaveIt],
            top_mm,
            bottom_mm,
            signs: Vec::new(),
        },
        What::PitsDisagree { agree: 2, of: 4 },
        What::PitsDisagree { agree: 1, of: 1 },
        What::RootsNeeded { top_mm, bottom_mm },
        What::Cemented { top_mm, bottom_mm },
        What::WaterStands { top_mm, bottom_mm, facts: 2 },
        What::WaterHeldUp { top_mm, bottom_mm },
        What::FaceWet,
        What::NearSurface { top_mm, bottom_mm },
        What::UnderGrass { top_mm, bottom_mm },
        What::RollMissing { depth_mm },
        What::SurfaceRollMissing,
        What::BeyondReach { tip_mm: 450, reach_mm: 400 },
        What::NotSure { call: Call::RootsFirst, top_mm, bottom_mm, clue: None },
        What::NotSure { call: Call::Loosen, top_mm, bottom_mm, clue: Some(Clue::Roots) },
        What::HangsOnDepth { obstacle: Obstacle::Drains, depth_mm: 540, needs_mm: 525 },
        What::HangsOnBottom { bottom_mm, limit_mm: 300 },
        What::NoMachine { tip_mm: 450, foot_mm: 65 },
        What::RollPast { rolled: DAY },
        What::RainSince { rolled: DAY, rain: DAY },
        What::LoosenedSince { on: DAY },
        What::DidNotLast { on: None },
        What::DidNotLast { on: Some(DAY) },
        What::DeepClay { bottom_mm },
        What::DeepClayHeldTo { bottom_mm },
        What::ZonesDiffer { loosen: Vec::new() },
        What::ZonesDiffer { loosen: vec![Zone::Headland] },
        What::ZonesDiffer { loosen: vec![Zone::Headland, Zone::Wheelings, Zone::Gateway] },
        What::TwinsCountedOnce { twins: 1 },
        What::TwinsCountedOnce { twins: 2 },
    ];
    all.extend(FaceMoisture::ALL.iter().map(|&face| What::FaceUnreadable { face }));
    all.extend(Obstacle::ALL.iter().map(|&obstacle| What::DepthUnknown { obstacle }));
    for &obstacle in Obstacle::ALL {
        for (depth_mm, away_m) in [(None, None), (Some(900), None), (None, Some(12)), (Some(900), Some(12))] {
            all.push(What::Service { obstacle, depth_mm, away_m });
        }
        all.push(What::NeedsLeave { obstacle, within_m: 30 });
        all.push(What::LiftOut { obstacle, side_m: 5 });
    }
    for (on, leave, lapsed) in
        [(None, None, false), (Some(DAY), Some(true), false), (Some(DAY), Some(false), true)]
    {
        all.push(What::Asked { whom: "the water company".into(), on, leave, lapsed });
    }
    for (&verdict, &next) in Verdict::ALL.iter().flat_map(|v| NextStep::ALL.iter().map(move |n| (v, n))) {
        let waits = next == NextStep::Wait;
        let remedy = Some(if waits { Remedy::WaitForDrier } else { Remedy::Deeper });
        let check = Some(Check::RollAtTip);
        all.push(What::Behind { on: Some(DAY), strip: true, verdict: Some(verdict), next, check, remedy });
    }
    for (on, strip) in [(None, false), (None, true), (Some(DAY), false)] {
        let next = NextStep::DigBehind;
        all.push(What::Behind { on, strip, verdict: None, next, check: None, remedy: None });
    }
    all.extend(Obstacle::ALL.iter().map(|&obstacle| What::TooNear {
        obstacle,
        depth_mm: 450,
        tip_mm: 380,
        clearance_mm: 100,
    }));
    for surface in [false, true] {
        all.extend(RollOutcome::ALL.iter().map(|&roll| What::Rolled {
            depth_mm,
            roll,
            surface,
            on: surface.then_some(DAY),
        }));
    }
    all
}

const WHATS: usize = 43;

fn number(what: &What) -> usize {
    match what {
        What::Layer { .. } => 0,
        What::NothingHarmed => 1,
        What::RootsPass { .. } => 2,
        What::NoPits => 3,
        What::FaceUnreadable { .. } => 4,
        What::TooShallow { .. } => 5,
        What::NoReference => 6,
        What::SignsTooFew { .. } => 7,
        What::PitsDisagree { .. } => 8,
        What::RootsNeeded { .. } => 9,
        What::Cemented { .. } => 10,
        What::WaterStands { .. } => 11,
        What::Rolled { .. } => 12,
        What::RollMissing { .. } => 13,
        What::SurfaceRollMissing => 14,
        What::TooNear { .. } => 15,
        What::BeyondReach { .. } => 16,
        What::DeepClay { .. } => 17,
        What::DeepClayHeldTo { .. } => 18,
        What::ZonesDiffer { .. } => 19,
        What::TwinsCountedOnce { .. } => 20,
        What::NotSure { .. } => 37,
        What::DepthUnknown { .. } => 21,
        What::HangsOnDepth { .. } => 22,
        What::Service { .. } => 23,
        What::Asked { .. } => 24,
        What::NoMachine { .. } => 25,
        What::RollPast { .. } => 26,
        What::RainSince { .. } => 27,
        What::Behind { .. } => 28,
        What::LoosenedSince { .. } => 29,
        What::DidNotLast { .. } => 30,
        What::KindsOpen { .. } => 31,
        What::SignsClash { .. } => 32,
        What::WaterHeldUp { .. } => 33,
        What::FaceWet => 34,
        What::NearSurface { .. } => 35,
        What::UnderGrass { .. } => 36,
        What::Peat { .. } => 38,
        What::NeedsLeave { .. } => 39,
        What::LiftOut { .. } => 40,
        What::ReadersDiffer { .. } => 41,
        What::HangsOnBottom { .. } => 42,
    }
}

#[test]
fn every_reason_is_a_sentence_of_its_own() {
    let all = every_what();
    let numbers: BTreeSet<usize> = all.iter().map(number).collect();
    assert_eq!(numbers, (0..WHATS).collect(), "one of each");
    everywhere(|words| {
        let mut said = BTreeSet::new();
        for what in &all {
            let told = words.why(&Why { stance: Stance::For, what: what.clone() });
            sentence(&told);
            assert!(said.insert(told.clone()), "said twice: {told}");
        }
    });
}

#[test]
fn every_caution_and_follow_up_is_a_sentence() {
    everywhere(|words| {
        for &caution in Caution::ALL {
            sentence(&words.of(caution));
        }
        for &step in FollowUp::ALL {
            sentence(&words.of(step));
        }
        sentence(&words.no_more_looks());
        sentence(&words.enough_pits());
    });
}

#[test]
fn everything_worth_asking_of_a_field_is_a_question_and_what_it_changes() {
    everywhere(|words| {
        let mut said = BTreeSet::new();
        for &input in FieldInput::ALL {
            for &bears_on in BearsOn::ALL {
                let zones = vec![Zone::Open, Zone::Headland];
                let told = words.worth_asking(&WorthAsking { input, bears_on, zones });
                sentence(&told);
                assert!(told.contains('?') && said.insert(told.clone()), "{told}");
            }
        }
    });
}

#[test]
fn every_change_is_a_sentence() {
    everywhere(|words| {
        for &clue in Clue::ALL {
            for answer in 0..clue.answers().len() {
                let one = ChangedAnswer::Clue { top_mm: 200, bottom_mm: 280, clue, answer };
                for &call in Call::ALL {
                    sentence(&words.change(&Change { answers: vec![one], call, hangs: false }));
                }
            }
        }
        let lying = |&obstacle: &Obstacle| {
            let mm = 525;
            [ChangedAnswer::Deeper { obstacle, mm }, ChangedAnswer::Shallower { obstacle, mm }]
        };
        let mut levers: Vec<ChangedAnswer> = Obstacle::ALL.iter().flat_map(lying).collect();
        levers.extend([ChangedAnswer::Leave, ChangedAnswer::DeepClayHeldTo]);
        levers.push(ChangedAnswer::AnotherPit { like: 3 });
        for &lever in &levers {
            sentence(&words.change(&Change { answers: vec![lever], call: Call::Loosen, hangs: false }));
        }
        sentence(&words.change(&Change { answers: levers, call: Call::Loosen, hangs: false }));
        for &roll in RollOutcome::ALL {
            let both = [true, false].map(|surface| ChangedAnswer::Roll { surface, roll });
            sentence(&words.change(&Change { answers: both.to_vec(), call: Call::Loosen, hangs: false }));
        }
    });
}

#[test]
fn every_clue_has_a_question_and_answers() {
    everywhere(|words| {
        for &clue in Clue::ALL {
            let look = NextLook {
                layer: 1,
                top_mm: 250,
                bottom_mm: 300,
                clue,
                gain: 1.0,
                between: [KINDS[6], KINDS[7]],
            };
            let question = words.question(&look);
            whole(&question);
            assert!(question.ends_with('?'), "{question}");
            sentence(&words.look(&look));
            whole(&words.clue_question(clue));
            for answer in 0..clue.answers().len() {
                whole(&words.answer(clue, answer));
                whole(&words.answer_clause(clue, answer));
            }
            assert_eq!(words.answer(clue, clue.answers().len()), "", "no such answer");
        }
    });
}

#[test]
fn every_two_kinds_are_told_apart() {
    everywhere(|words| {
        let names: BTreeSet<String> = KINDS.iter().map(|&kind| words.kind_label(kind)).collect();
        assert_eq!(names.len(), KINDS.len());
        for (&one, &other) in KINDS.iter().flat_map(|one| KINDS.iter().map(move |other| (one, other))) {
            let between = [one, other];
            let look =
                NextLook { layer: 0, top_mm: 0, bottom_mm: 100, clue: Clue::Roots, gain: 1.0, between };
            whole(&words.why_question(&look));
        }
        for &condition in Condition::ALL {
            whole(&words.kind(Kind { condition, cause: Cause::Unclear }));
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
        all(words, Heading::ALL);
        all(words, Call::ALL);
        all(words, Zone::ALL);
        all(words, Condition::ALL);
        all(words, Cause::ALL);
        all(words, PlaceKind::ALL);
        all(words, RollOutcome::ALL);
        all(words, Sureness::ALL);
        all(words, TextureClass::ALL);
        all(words, Language::ALL);
    });
}

#[test]
fn every_other_sentence_is_whole() {
    everywhere(|words| {
        for confidence in [0.2, 0.672, 0.9999, 1.0] {
            let tip = TipDepth { confidence, ..TIP };
            whole(&words.tip_statement(&tip));
            sentence(&words.tip_sentences(&tip));
            whole(&words.tip_label(&tip));
        }
        for &sure in Sureness::ALL {
            whole(&words.sureness(sure, 0.43));
        }
        let loss =
            RootingLoss { crop: "wheat".into(), potential_mm: 1250, top_mm: 450, share: 0.64, water: None };
        sentence(&words.rooting_loss(&loss));
        let water = Some(WaterHeld { least_mm: 104, most_mm: 146 });
        sentence(&words.rooting_loss(&RootingLoss { water, ..loss }));
        for &place in PlaceKind::ALL {
            whole(&words.pit(place));
            whole(&words.pit_numbered(3, place));
        }
        for &class in TextureClass::ALL {
            for &scheme in TextureScheme::ALL {
                sentence(&words.texture_sentence(Texture { scheme, class }));
            }
        }
        sentence(&words.texture_edge(TextureScheme::Usda, &[TextureClass::Loam, TextureClass::Clay]));
        sentence(&words.class("A 1999", "30 N", "firm"));
        for count in [0, 1, 2] {
            sentence(&words.tables_written(count + 1, count));
            sentence(&words.tables_without_place(count + 1));
        }
        let rolls = || RollOutcome::ALL.iter().copied().map(Some).chain([None]);
        for (surface, at_depth) in
            rolls().flat_map(|surface| rolls().map(move |at_depth| (surface, at_depth)))
        {
            sentence(&words.roll_sentence(&pitface_core::soil::roll::reading(None, surface, at_depth)));
        }
    });
}

proptest! {
    #[test]
    fn any_depth_and_share_is_said_whole(lo_mm: u32, hi_mm: u32, share: f64, pits: usize) {
        everywhere(|words| {
            whole(&words.depth(lo_mm));
            whole(&words.depth_range(lo_mm, hi_mm));
            whole(&words.share(share));
            whole(&words.small_share(share));
            let tip = TipDepth { lo_mm, hi_mm, bottom_mm: lo_mm, cleared_share: share, pits, confidence: share };
            sentence(&words.tip_sentences(&tip));
        });
    }

    #[test]
    fn a_depth_in_centimetres_reads_back_as_it_was(mm in 0u32..10_000) {
        for (&language, mark) in Language::ALL.iter().zip(['.', ',']) {
            let said = Words::new(language, LengthUnit::Centimetres).depth(mm);
            let number = said.strip_suffix("\u{a0}cm").unwrap().replace(mark, ".");
            prop_assert_eq!(LengthUnit::Centimetres.to_mm(number.parse().unwrap()), mm);
        }
    }

    #[test]
    fn a_tip_range_to_be_set_lies_inside_the_range(lo_mm in 100u32..600, span_mm in 25u32..60) {
        let tip = TipDepth { lo_mm, hi_mm: lo_mm + span_mm, ..TIP };
        let said = Words::new(Language::English, LengthUnit::Centimetres).tip_range(&tip);
        let range = said.strip_suffix("\u{a0}cm").unwrap();
        let (lo, hi) = range.split_once('–').unwrap_or((range, range));
        let [lo, hi] = [lo, hi].map(|number| number.parse::<u32>().unwrap() * 10);
        prop_assert!(tip.lo_mm <= lo && lo <= hi && hi <= tip.hi_mm);
    }
}
