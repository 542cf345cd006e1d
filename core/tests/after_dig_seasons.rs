//! A hole behind the machine beside the pit before it, a season on, and what comes between: wheels, and the whole field
//! without a strip. What is expected follows from the rules; sources stand beside the rules.

use crate::advice_fixture;

use advice_fixture::{fit_to_loosen, id, pan_pit, sound_pit};
use chrono::{DateTime, FixedOffset, NaiveDate};
use pitface_core::advice::advise;
use pitface_core::advice::after_dig::{
    Lasting, NextStep, PairBy, PassAdvice, Verdict, VerdictReason, look_behind,
};
use pitface_core::advice::machine::{Model, WhyNot};
use pitface_core::reading::read_field;
use pitface_core::record::{
    AfterDig, Condition, Extent, FieldNotes, Pass, PlaceKind, Position, RootsSeen, Zone,
};

fn day(text: &str) -> NaiveDate {
    text.parse().expect("a day")
}

fn hour(text: &str) -> DateTime<FixedOffset> {
    format!("{text}T10:00:00+01:00").parse().expect("an hour")
}

const fn at(longitude_deg: f64) -> Position {
    Position { longitude_deg, latitude_deg: 54.5, accuracy_m: None }
}

fn dig(number: u64, dug: &str, firm_mm: &[u32]) -> AfterDig {
    AfterDig { dug: Some(hour(dug)), firm_mm: firm_mm.to_vec(), ..AfterDig::new(id(number)) }
}

fn pass(number: u64, extent: Extent, done: &str, digs: Vec<AfterDig>) -> Pass {
    Pass {
        zone: Some(Zone::Open),
        extent: Some(extent),
        done: Some(day(done)),
        tip_mm: Some(320),
        after_digs: digs,
        ..Pass::new(id(number))
    }
}

/// Open ground with a pan from 220 to 280 mm, dug in August, and these passes.
fn notes(passes: Vec<Pass>) -> FieldNotes {
    let mut notes = fit_to_loosen();
    for pit in &mut notes.pits {
        pit.dug = Some(hour("2025-08-20"));
    }
    notes.passes = passes;
    notes
}

fn told(notes: &FieldNotes) -> Vec<PassAdvice> {
    let reading = read_field(notes);
    look_behind(notes, &reading, &advise(notes, &reading))
}

const LOOSE: [u32; 5] = [320, 320, 300, 310, 320];
const CLOSED: [u32; 5] = [290, 240, 230, 240, 280];

#[test]
fn the_pit_before_gives_the_layer_and_the_pair() {
    let notes = notes(vec![pass(40, Extent::TrialStrip, "2025-09-01", vec![dig(50, "2025-09-01", &LOOSE)])]);
    let told = &told(&notes)[0];
    let dig = &told.digs[0];
    assert_eq!((dig.layer_bottom_mm, dig.verdict, told.next), (Some(280), Verdict::Done, NextStep::GoOn));
    let pair = dig.pair.expect("a pair");
    assert_eq!((pair.before, pair.by), (id(1), PairBy::Last));
    assert_eq!((pair.top_mm, pair.bottom_mm, pair.firm_before_mm), (220, 280, Some(220)));
    assert!(pair.condition >= Condition::Tight);
    assert_eq!(pair.firm_now_mm, Some(313));
}

#[test]
fn the_named_pit_goes_before_the_nearest_and_the_nearest_before_the_last() {
    let mut hole = dig(50, "2025-09-01", &LOOSE);
    hole.at = Some(at(2.5));
    let mut notes = notes(vec![pass(40, Extent::TrialStrip, "2025-09-01", vec![hole])]);
    for (number, longitude_deg, bottom_mm) in [(11, 2.51, 300), (12, 2.5001, 260), (13, 2.49, 290)] {
        let mut pit = pan_pit(number, PlaceKind::Open, bottom_mm);
        (pit.at, pit.dug) = (Some(at(longitude_deg)), Some(hour("2025-08-21")));
        notes.pits.push(pit);
    }
    let mut later = pan_pit(14, PlaceKind::Open, 310);
    (later.at, later.dug) = (Some(at(2.5)), Some(hour("2025-10-01")));
    notes.pits.push(later);
    let pair = |notes: &FieldNotes| told(notes)[0].digs[0].pair.expect("a pair");
    assert_eq!((pair(&notes).before, pair(&notes).by), (id(12), PairBy::Nearest));
    notes.pits.reverse();
    assert_eq!(pair(&notes).before, id(12));
    notes.passes[0].after_digs[0].before = Some(id(13));
    assert_eq!(
        (pair(&notes).before, pair(&notes).by, told(&notes)[0].digs[0].layer_bottom_mm),
        (id(13), PairBy::Noted, Some(290))
    );
}

#[test]
fn a_named_pit_without_a_harmed_layer_leaves_nothing_to_break() {
    let mut hole = dig(50, "2025-09-01", &LOOSE);
    hole.before = Some(id(21));
    let mut notes = notes(vec![pass(40, Extent::TrialStrip, "2025-09-01", vec![hole])]);
    let mut sound = sound_pit(21, PlaceKind::Open);
    sound.dug = Some(hour("2025-08-21"));
    notes.pits.push(sound);
    let told = told(&notes);
    let dig = &told[0].digs[0];
    assert_eq!(dig.layer_broken, Model::DoesNotApply(WhyNot::NoLayer));
    assert!(dig.share.value().is_some());
}

#[test]
fn no_deeper_than_before_is_not_done() {
    let shallow = dig(50, "2025-09-01", &[230, 220, 210, 215, 220]);
    let told = &told(&notes(vec![pass(40, Extent::TrialStrip, "2025-09-01", vec![shallow])]))[0];
    assert_eq!(told.verdict, Some(Verdict::NotDone));
    assert!(told.digs[0].why.contains(&VerdictReason::NoDeeper { before_mm: 220, now_mm: 218 }));
}

fn season_on(later: &[u32], roots: Option<RootsSeen>) -> PassAdvice {
    let again = AfterDig { roots, ..dig(51, "2026-05-01", later) };
    let holes = vec![dig(50, "2025-09-02", &LOOSE), again];
    told(&notes(vec![pass(40, Extent::Zone, "2025-09-01", holes)])).remove(0)
}

#[test]
fn a_season_on_it_has_held_or_not() {
    for (later, roots, lasting, next) in [
        (&LOOSE, Some(RootsSeen::Through), Lasting::Held, NextStep::KeepOff),
        (&LOOSE, None, Lasting::Held, NextStep::KeepOff),
        (&LOOSE, Some(RootsSeen::Sideways), Lasting::Partly, NextStep::KeepOff),
        (&[280, 250, 260, 245, 280], None, Lasting::Partly, NextStep::KeepOff),
        // Of the 60 mm of the layer 52, 50, 30 and 29 are still loose: the marks are 0.85 and a half of it (our judgement).
        (&[272; 5], None, Lasting::Held, NextStep::KeepOff),
        (&[270; 5], None, Lasting::Partly, NextStep::KeepOff),
        (&[250; 5], None, Lasting::Partly, NextStep::KeepOff),
        (&[249; 5], None, Lasting::Lost, NextStep::StopLoosening),
        (&CLOSED, Some(RootsSeen::Through), Lasting::Lost, NextStep::StopLoosening),
        (&[230, 230, 230, 230, 230], None, Lasting::Lost, NextStep::StopLoosening),
    ] {
        let told = season_on(later, roots);
        let held = told.held.expect("a hole a season on");
        assert_eq!((held.lasting, told.next, held.roots), (lasting, next, roots), "{later:?}");
        // What the later hole shows does not undo what the pass did then, and needs no cause of the machine.
        assert_eq!(told.verdict, Some(Verdict::Done));
        assert!(told.digs[1].season_on && told.digs[1].causes.is_empty());
    }
}

/// 120 days after the pass a hole tells whether it has held (our judgement); the day before it still tells what was done.
#[test]
fn a_season_is_a_hundred_and_twenty_days() {
    let season_on = |dug| {
        let pass = pass(40, Extent::Zone, "2025-09-01", vec![dig(50, dug, &LOOSE)]);
        told(&notes(vec![pass])).remove(0).digs[0].season_on
    };
    assert!(!season_on("2025-12-29") && season_on("2025-12-30"));
}

#[test]
fn without_readings_then_nothing_can_be_said_of_lasting() {
    let holes = vec![dig(51, "2026-05-01", &LOOSE)];
    let told = told(&notes(vec![pass(40, Extent::Zone, "2025-09-01", holes)])).remove(0);
    assert_eq!(told.held.map(|held| held.lasting), Some(Lasting::CannotSay));
    assert_eq!(told.verdict, None);
}

#[test]
fn wheels_on_a_later_day_noted_for_the_field_count_too() {
    let days = |last_traffic: &str| {
        let mut notes = notes(vec![pass(40, Extent::Zone, "2025-09-01", Vec::new())]);
        notes.field.last_traffic = Some(day(last_traffic));
        told(&notes)[0].traffic.map(|warning| warning.days)
    };
    assert_eq!(days("2025-09-01"), None); // that is the tractor before the machine
    assert_eq!(days("2025-09-02"), Some(1));
    assert_eq!(days("2025-09-15"), Some(14));
    assert_eq!(days("2025-09-16"), None);
    assert_eq!(days("2025-08-30"), None);
}

#[test]
fn the_whole_zone_wants_a_strip_found_done_before_it() {
    let whole = || pass(41, Extent::Zone, "2025-09-05", Vec::new());
    let strip =
        |done: &str, firm_mm: &[u32]| pass(40, Extent::TrialStrip, done, vec![dig(50, done, firm_mm)]);
    let flagged = |passes: Vec<Pass>| {
        let told = told(&notes(passes));
        told.into_iter().find(|told| told.pass == id(41)).expect("the pass").no_strip_before
    };
    assert!(flagged(vec![whole()]));
    assert!(!flagged(vec![strip("2025-09-01", &LOOSE), whole()]));
    assert!(!flagged(vec![whole(), strip("2025-09-01", &LOOSE)]));
    assert!(flagged(vec![strip("2025-09-06", &LOOSE), whole()]));
    assert!(flagged(vec![strip("2025-09-01", &CLOSED), whole()]));
    let elsewhere = Pass { zone: Some(Zone::Headland), ..strip("2025-09-01", &LOOSE) };
    assert!(flagged(vec![elsewhere, whole()]));
}

#[test]
fn the_worst_hole_gives_the_verdict_of_the_pass() {
    let holes = vec![
        dig(50, "2025-09-01", &LOOSE),
        dig(51, "2025-09-01", &[320, 290, 240, 250, 320]),
        dig(52, "2025-09-01", &[]),
    ];
    let told = told(&notes(vec![pass(40, Extent::TrialStrip, "2025-09-01", holes)])).remove(0);
    let verdicts: Vec<Verdict> = told.digs.iter().map(|dig| dig.verdict).collect();
    assert_eq!(verdicts, [Verdict::Done, Verdict::Partly, Verdict::CannotSay]);
    assert_eq!(told.verdict, Some(Verdict::Partly));
}

#[test]
fn a_pass_not_dug_behind_is_to_be_dug_behind_first() {
    let told = told(&notes(vec![pass(40, Extent::TrialStrip, "2025-09-01", Vec::new())])).remove(0);
    assert_eq!((told.verdict, told.next), (None, NextStep::DigBehind));
}
