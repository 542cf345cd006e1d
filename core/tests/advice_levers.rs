//! What somebody can do to get another call: each lever that is told exists, and does what is told when it is pulled.

use crate::advice_fixture;

use advice_fixture::{fit_to_loosen, id, notes, open, pan_pit, reference, sound_pit};
use chrono::NaiveDate;
use pitface_core::advice::{Change, ChangedAnswer, Obstacle, What, changes};
use pitface_core::answer::FieldAnswer;
use pitface_core::record::{
    Buried, BuriedLine, Call, Field, FieldNotes, LineSort, PlaceKind, RollOutcome, TextureNote, Unknown, Zone,
};
use pitface_core::soil::texture::TextureGroup;

fn with(set: impl Fn(&mut Field)) -> FieldNotes {
    let mut notes = fit_to_loosen();
    set(&mut notes.field);
    notes
}

fn line(sort: Option<LineSort>, kind: Buried, depth_mm: Option<u32>) -> BuriedLine {
    let along = vec![[2.5, 54.5], [2.501, 54.5]];
    BuriedLine { id: id(70), kind, along, depth_mm, sort, unknown: Unknown::new() }
}

fn levers(notes: &FieldNotes) -> Vec<Change> {
    let clue_or_roll =
        |answer: &ChangedAnswer| matches!(answer, ChangedAnswer::Clue { .. } | ChangedAnswer::Roll { .. });
    let told = changes(notes, Zone::Open);
    assert!(told.len() <= 3, "{told:?}");
    told.into_iter().filter(|change| !change.answers.iter().any(clue_or_roll)).collect()
}

/// The shallow end of the tip is at 305 mm; 200 mm are kept above a drain, 600 mm above a cable or pipe.
#[test]
fn a_depth_that_stands_in_the_way_is_to_be_measured() {
    let deeper = |obstacle, mm| Change {
        answers: vec![ChangedAnswer::Deeper { obstacle, mm }],
        call: Call::Loosen,
        hangs: false,
    };
    let drains = with(|field| field.drains_mm = Some(450));
    assert_eq!(levers(&drains), [deeper(Obstacle::Drains, 505)]);
    assert_eq!(open(&with(|field| field.drains_mm = Some(505))).call, Call::Loosen, "and so it is");
    assert_eq!(open(&with(|field| field.drains_mm = Some(504))).call, Call::AskSpecialist);
    let unknown = with(|field| field.lines = vec![line(None, Buried::Service, None)]);
    assert_eq!(levers(&unknown), [deeper(Obstacle::Services, 905)]);
    let bare = with(|field| field.lines = vec![line(Some(LineSort::BareDrain), Buried::Drain, None)]);
    assert_eq!(levers(&bare), [deeper(Obstacle::BareDrains, 505)]);
}

#[test]
fn what_stands_in_the_way_together_is_cleared_together() {
    let both = with(|field| {
        field.drains_mm = Some(450);
        field.mole_drains_mm = Some(400);
    });
    let told = levers(&both);
    let mut answers = told[0].answers.clone();
    answers.sort_by_key(|answer| format!("{answer:?}"));
    let deeper = |obstacle, mm| ChangedAnswer::Deeper { obstacle, mm };
    assert_eq!(answers, [deeper(Obstacle::Drains, 505), deeper(Obstacle::MoleDrains, 405)]);
    assert_eq!((told.len(), told[0].call), (1, Call::Loosen));
}

#[test]
fn a_depth_on_which_the_work_hangs_is_told() {
    let close = with(|field| field.drains_mm = Some(520));
    let shallower = ChangedAnswer::Shallower { obstacle: Obstacle::Drains, mm: 505 };
    assert_eq!(
        levers(&close),
        [Change { answers: vec![shallower], call: Call::AskSpecialist, hangs: false }]
    );
    assert_eq!(levers(&with(|field| field.drains_mm = Some(900))), [], "deep drains change nothing");
    assert_eq!(levers(&fit_to_loosen()), []);
}

/// Leave alone does over a gas pipe that lies deep enough; over one of unknown depth that is to be known too.
#[test]
fn the_owner_is_to_be_asked_where_leave_is_what_is_missing() {
    let gas = |depth_mm| {
        with(|field| field.lines = vec![line(Some(LineSort::GasOrOil), Buried::Service, depth_mm)])
    };
    let leave = Change { answers: vec![ChangedAnswer::Leave], call: Call::Loosen, hangs: false };
    assert_eq!(levers(&gas(Some(1_200))), [leave]);
    let deep = ChangedAnswer::Deeper { obstacle: Obstacle::GasOrOil, mm: 905 };
    let both = Change { answers: vec![ChangedAnswer::Leave, deep], call: Call::Loosen, hangs: false };
    for depth_mm in [None, Some(800)] {
        assert_eq!(levers(&gas(depth_mm)), std::slice::from_ref(&both));
    }
}

#[test]
fn who_holds_to_deep_clay_is_told_what_it_changes() {
    let mut clay = fit_to_loosen();
    clay.pits[1] = pan_pit(1, PlaceKind::Open, 330);
    clay.field.texture = Some(TextureNote::Group(TextureGroup::Heavy));
    assert_eq!(open(&clay).call, Call::RootsFirst);
    let held = Change { answers: vec![ChangedAnswer::DeepClayHeldTo], call: Call::Loosen, hangs: false };
    assert_eq!(levers(&clay), [held]);
    clay.field.deep_clay_anyway = Some(true);
    assert_eq!((open(&clay).call, levers(&clay)), (Call::Loosen, vec![]));
}

/// Where two of three pits have a pan, digging again costs less than loosening; three of four carry it.
#[test]
fn where_pits_disagree_another_pit_decides() {
    let pan = |number| pan_pit(number, PlaceKind::Open, 280);
    let three = vec![reference(), pan(1), pan(2), sound_pit(3, PlaceKind::Open)];
    assert_eq!(open(&notes(three.clone())).call, Call::DigAgain);
    let told = levers(&notes(three.clone()));
    let [Change { answers, call: Call::Loosen, .. }] = told.as_slice() else { panic!("{told:?}") };
    assert_eq!(answers, &[ChangedAnswer::AnotherPit { like: 2 }]);
    assert_eq!(open(&notes(three.into_iter().chain([pan(4)]).collect())).call, Call::Loosen);
}

/// Rolls count for their day and the next: rolling anew is told though they are past.
#[test]
fn rolling_today_is_told_though_the_rolls_are_past() {
    let mut old = fit_to_loosen();
    old.pits[1].dug = chrono::DateTime::parse_from_rfc3339("2026-05-12T10:00:00+01:00").ok();
    for day in [12, 28] {
        let answer = FieldAnswer::of(old.clone(), NaiveDate::from_ymd_opt(2026, 5, day));
        let thread = ChangedAnswer::Roll { surface: false, roll: RollOutcome::Thread };
        let told = answer.changes(Zone::Open);
        let waits = |change: &Change| change.answers == [thread] && change.call == Call::Wait;
        assert!(told.iter().any(waits), "on the {day}th: {told:?}");
    }
}

/// Clay below 300 mm is mostly not loosened (Tasmanian state guide); half a step of the knife walk is 25 mm.
#[test]
fn a_layer_that_ends_near_a_limit_says_what_the_call_hangs_on() {
    let ends_at = |bottom_mm| {
        let mut clay = fit_to_loosen();
        clay.pits[1] = pan_pit(1, PlaceKind::Open, bottom_mm);
        clay.field.texture = Some(TextureNote::Group(TextureGroup::Heavy));
        open(&clay)
    };
    let hangs = |bottom_mm| {
        let what = What::HangsOnBottom { bottom_mm, limit_mm: 300 };
        ends_at(bottom_mm).reasons.iter().any(|why| why.what == what)
    };
    assert_eq!(
        (ends_at(300).call, ends_at(301).call),
        (Call::Loosen, Call::RootsFirst),
        "a millimetre tips it"
    );
    assert!(hangs(300) && hangs(301) && hangs(275) && hangs(325), "and that is told on both sides");
    assert!(!hangs(274) && !hangs(326));
    assert!(!open(&fit_to_loosen()).reasons.iter().any(|why| matches!(why.what, What::HangsOnBottom { .. })));
}
