//! A hole behind the machine, a pass and what is told of them, as the tests of their words take them.

use chrono::NaiveDate;
use pitface_core::advice::after_dig::{
    Across, CauseReason, DigAdvice, FailureCause, Lasts, LikelyCause, NextStep, Pair, PairBy, PassAdvice,
    PassClue, Stretch, Verdict, VerdictReason,
};
use pitface_core::advice::machine::{Loosened, LoosenedRange, Model};
use pitface_core::record::{
    AfterDig, Clods, Condition, Extent, FeetSeen, Field, Lift, Pass, PlatesLeft, Profile, RecordId,
    RootsSeen, Smear, Zone,
};
use pitface_core::units::LengthUnit::{self, Centimetres};
use pitface_core::words::{Language, Words};

pub fn id() -> RecordId {
    RecordId::new(0, [0; 10])
}

pub fn day(day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 9, day).unwrap()
}

pub fn english() -> Words {
    Words::new(Language::English, Centimetres)
}

pub fn german() -> Words {
    Words::new(Language::German, Centimetres)
}

/// Compares with the no-break spaces of measures written as plain ones.
#[track_caller]
pub fn says(said: &str, expected: &str) {
    assert_eq!(said.replace('\u{a0}', " "), expected);
}

/// Runs a check in every language and unit.
pub fn everywhere(check: impl Fn(&Words)) {
    for &language in Language::ALL {
        for unit in [LengthUnit::Centimetres, LengthUnit::Inches] {
            check(&Words::new(language, unit));
        }
    }
}

/// A text with nothing missing in it.
#[track_caller]
pub fn whole(text: &str) {
    assert!(!text.trim().is_empty(), "nothing is said");
    assert!(!text.contains(['{', '}', '_']), "a mark is left: {text}");
    for slip in ["  ", " ,", " .", "..", ",.", ": .", ";.", "()", ": ;", ",,"] {
        assert!(!text.contains(slip), "{slip:?} in: {text}");
    }
    assert_eq!(text, text.trim());
}

/// A whole text that begins with a capital or a number and ends with a stop.
#[track_caller]
pub fn sentence(text: &str) {
    whole(text);
    assert!(text.starts_with(|first: char| first.is_uppercase() || first.is_numeric()), "{text}");
    assert!(text.ends_with('.'), "{text}");
}

pub fn stretch(across: Across, known: bool) -> Stretch {
    let (from_mm, to_mm) = if known { (Some(210), Some(390)) } else { (None, None) };
    Stretch { from: 0.35, to: 0.65, from_mm, to_mm, across }
}

pub fn figure() -> LoosenedRange {
    let most =
        Loosened { ridge_mm: 100, meets: true, share: 0.89, single_area_m2: 0.184, surface_width_mm: 1_000 };
    LoosenedRange { least: Loosened { ridge_mm: 170, share: 0.81, ..most }, most }
}

pub fn dig(verdict: Verdict) -> DigAdvice {
    DigAdvice {
        dig: id(),
        season_on: false,
        target_mm: Some(340),
        layer_top_mm: Some(220),
        layer_bottom_mm: Some(290),
        share: Model::Applies(0.71),
        layer_broken: Model::Applies(0.61),
        layer_left_mm: Model::Applies(27.3),
        ridge_mm: Model::Applies(150),
        figure: Model::Applies(figure()),
        firm_at: vec![stretch(Across::Between, true)],
        verdict,
        why: vec![VerdictReason::LayerBroken { share: 0.61 }],
        causes: Vec::new(),
        pair: None,
    }
}

pub fn reason(clue: PassClue, code: &str, decibans: f64) -> CauseReason {
    let answer = clue.answers().iter().position(|its| *its == code).unwrap();
    CauseReason { clue, answer, decibans }
}

pub fn cause(cause: FailureCause, share: f64, reasons: Vec<CauseReason>) -> LikelyCause {
    LikelyCause { cause, share, reasons, check: Some(cause.check()), remedy: cause.remedy() }
}

pub fn spacing() -> LikelyCause {
    let reasons = vec![
        reason(PassClue::Pattern, "ridge", 7.0),
        reason(PassClue::Ridge, "higher", 4.0),
        reason(PassClue::Smear, "none", -2.0),
        reason(PassClue::Clods, "small", 0.4),
    ];
    cause(FailureCause::SpacingTooWide, 0.64, reasons)
}

pub fn pair() -> Pair {
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

pub fn pass_advice(next: NextStep) -> PassAdvice {
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
        rolled_wet: false,
        one_hole: false,
        lasts: Lasts::of(&Field::new(id(), "Long Sedge")),
    }
}

pub fn pass() -> Pass {
    Pass {
        zone: Some(Zone::Headland),
        extent: Some(Extent::TrialStrip),
        done: Some(day(1)),
        tip_mm: Some(340),
        speed_kmh: Some(6.0),
        ..Pass::new(id())
    }
}

pub fn hole() -> AfterDig {
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
