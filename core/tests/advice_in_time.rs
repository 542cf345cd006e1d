//! What was done since the pits were dug bears on the call, and rolls count for their day.

use crate::advice_fixture;

use advice_fixture::{call_of, fit_to_loosen, id, open, pan_pit, roll, says, sound_pit};
use chrono::{DateTime, FixedOffset, NaiveDate};
use pitface_core::advice::{Readiness, What};
use pitface_core::answer::FieldAnswer;
use pitface_core::record::{AfterDig, Call, Extent, FieldNotes, Pass, PlaceKind, RollOutcome, Smear, Zone};

const BEFORE: &str = "2025-08-20T09:00:00+00:00";

fn time(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn day(text: &str) -> NaiveDate {
    time(text).date_naive()
}

/// The plainest case for steel, its pits dug on a day.
fn dug() -> FieldNotes {
    let mut notes = fit_to_loosen();
    for pit in &mut notes.pits {
        pit.dug = Some(time(BEFORE));
    }
    notes
}

/// A pass over open ground the day after, with a hole behind it read so.
fn pass(extent: Extent, firm_mm: &[u32]) -> Pass {
    let done = day("2025-08-21T09:00:00+00:00");
    let dig = AfterDig {
        dug: Some(time("2025-08-21T12:00:00+00:00")),
        firm_mm: firm_mm.to_vec(),
        ..AfterDig::new(id(61))
    };
    Pass {
        zone: Some(Zone::Open),
        extent: Some(extent),
        done: Some(done),
        tip_mm: Some(320),
        after_digs: vec![dig],
        ..Pass::new(id(60))
    }
}

const BROKEN: [u32; 5] = [320, 320, 315, 320, 320];
const STANDING: [u32; 5] = [225, 220, 220, 222, 225];

fn with(passes: Vec<Pass>) -> FieldNotes {
    FieldNotes { passes, ..dug() }
}

#[test]
fn a_zone_worked_and_proved_done_is_left() {
    let notes = with(vec![pass(Extent::Zone, &BROKEN)]);
    let call = open(&notes);
    assert_eq!((call.call, call.tip), (Call::LeaveIt, None));
    assert!(matches!(call.reasons[0].what, What::Behind { strip: false, .. }));
    let whole = call_of(&notes, Zone::Whole);
    assert_eq!(whole.call, Call::LeaveIt, "the whole follows open ground as it is now");
}

#[test]
fn a_pass_nobody_dug_behind_asks_for_that() {
    let mut undug = pass(Extent::Zone, &BROKEN);
    undug.after_digs.clear();
    let call = open(&with(vec![undug]));
    assert_eq!(call.call, Call::DigAgain);
    assert!(matches!(call.reasons[0].what, What::Behind { verdict: None, .. }));
}

#[test]
fn a_pass_that_failed_says_what_the_hole_behind_it_says() {
    let notes = with(vec![pass(Extent::Zone, &STANDING)]);
    let call = open(&notes);
    assert_eq!((call.call, call.readiness), (Call::Wait, Readiness::StripFirst));
    let answer = FieldAnswer::of(notes, None);
    let said = &answer.passes[0];
    let told = What::Behind {
        on: Some(day("2025-08-21T09:00:00+00:00")),
        strip: false,
        verdict: said.verdict,
        next: said.next,
        check: said.check,
        remedy: said.remedy,
    };
    assert_eq!(call.reasons[0].what, told);
}

#[test]
fn a_strip_holds_back_the_rest_only_where_it_failed_or_was_too_wet() {
    let done = open(&with(vec![pass(Extent::TrialStrip, &BROKEN)]));
    assert_eq!((done.call, done.readiness), (Call::Loosen, Readiness::Fit));
    let failed = open(&with(vec![pass(Extent::TrialStrip, &STANDING)]));
    assert_eq!((failed.call, failed.readiness), (Call::Wait, Readiness::StripFirst));
    let mut wet = pass(Extent::TrialStrip, &BROKEN);
    wet.rolls = vec![roll(320, RollOutcome::Thread)];
    assert_eq!(open(&with(vec![wet])).call, Call::Wait, "a thread, however the strip looks");
    let mut worse = pass(Extent::TrialStrip, &STANDING);
    worse.after_digs[0].smear = Some(Smear::Smeared);
    let worse = open(&with(vec![worse]));
    assert_ne!(worse.call, Call::Loosen, "{worse:?}");
    let mut undug = pass(Extent::TrialStrip, &[]);
    undug.after_digs.clear();
    let undug = open(&with(vec![undug]));
    assert_eq!((undug.call, undug.readiness), (Call::Loosen, Readiness::StripFirst));
}

#[test]
fn a_loosening_after_the_last_pits_asks_for_new_ones() {
    let mut notes = dug();
    notes.field.last_loosened = Some(day("2025-09-10T09:00:00+00:00"));
    let call = open(&notes);
    assert_eq!(call.call, Call::DigAgain);
    assert_eq!(call.reasons[0].what, What::LoosenedSince { on: day("2025-09-10T09:00:00+00:00") });
}

/// Pits dug after a loosening count alone, and a pan among them did not last.
#[test]
fn pits_after_a_loosening_stand_for_the_ground() {
    let mut notes = with(vec![pass(Extent::Zone, &BROKEN)]);
    let later = Some(time("2026-08-20T09:00:00+00:00"));
    let mut sound = sound_pit(2, PlaceKind::Open);
    sound.dug = later;
    notes.pits.push(sound);
    let call = open(&notes);
    assert_eq!((call.call, call.pits), (Call::LeaveIt, 1));
    notes.pits.pop();
    let mut shut = pan_pit(2, PlaceKind::Open, 280);
    shut.dug = later;
    notes.pits.push(shut);
    let call = open(&notes);
    assert_eq!((call.call, call.pits), (Call::Loosen, 1));
    assert!(matches!(call.reasons[0].what, What::DidNotLast { .. }));
}

#[test]
fn rolls_count_for_their_day_and_the_next_and_not_after_rain() {
    let on = |text: &str| {
        let answer = FieldAnswer::of(dug(), Some(day(text)));
        answer.call_of(Zone::Open).unwrap().readiness
    };
    assert_eq!(on("2025-08-20T00:00:00+00:00"), Readiness::Fit);
    assert_eq!(on("2025-08-21T00:00:00+00:00"), Readiness::Fit);
    assert_eq!(on("2025-08-22T00:00:00+00:00"), Readiness::RollFirst { depth_mm: 330 });
    let mut rained = dug();
    rained.field.last_rain = Some(day("2025-08-21T00:00:00+00:00"));
    let call = open(&rained);
    assert_eq!(call.readiness, Readiness::RollFirst { depth_mm: 330 });
    assert!(says(&call, |what| matches!(what, What::RainSince { .. })));
    let told = |what: &What| matches!(what, What::Rolled { on: Some(on), .. } if *on == day(BEFORE));
    assert!(says(&open(&dug()), told), "the day is told");
}

#[test]
fn soil_from_inside_or_above_the_layer_does_not_stand_for_the_tips() {
    let at = |depth_mm| {
        let mut notes = dug();
        notes.pits[1].rolls =
            vec![roll(0, RollOutcome::ShortLengths), roll(depth_mm, RollOutcome::ShortLengths)];
        open(&notes).readiness
    };
    assert_eq!(at(279), Readiness::RollFirst { depth_mm: 330 });
    assert_eq!(at(280), Readiness::Fit);
}
