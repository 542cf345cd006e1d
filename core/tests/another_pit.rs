//! Whether another pit is worth digging, and where.

use crate::advice_fixture;

use advice_fixture::{notes, pan_pit, reference, roll, sound_pit};
use pitface_core::advice::sampling::Next;
use pitface_core::advice::{Lacks, NextDig};
use pitface_core::answer::FieldAnswer;
use pitface_core::record::{FieldNotes, Pit, PlaceKind, RollOutcome, Zone};

fn next(notes: &FieldNotes) -> NextDig {
    FieldAnswer::of(notes.clone(), None).next().unwrap()
}

fn asked(notes: &FieldNotes) -> Option<Zone> {
    match next(notes).next {
        Next::Pit { zone, .. } | Next::Behind { zone } => Some(zone),
        Next::Reference | Next::Stop => None,
    }
}

fn sound_pits(count: u64) -> FieldNotes {
    let open = (1..=count).map(|number| sound_pit(number, PlaceKind::Open));
    notes([reference()].into_iter().chain(open).collect())
}

fn rolled(mut pit: Pit) -> Pit {
    pit.rolls = vec![roll(0, RollOutcome::ShortLengths), roll(310, RollOutcome::ShortLengths)];
    pit
}

#[test]
fn a_field_without_a_pit_wants_one_and_one_without_a_reference_goes_on_wanting() {
    for field in [notes(Vec::new()), notes(vec![rolled(pan_pit(1, PlaceKind::Headland, 280))])] {
        assert_eq!(next(&field), NextDig { next: Next::Reference, why: Some(Lacks::Reference) });
    }
    // Ground that is sound by itself misses none.
    let sound = notes((1..=4).map(|number| sound_pit(number, PlaceKind::Open)).collect());
    assert_eq!(next(&sound), NextDig { next: Next::Stop, why: None });
}

/// Wald's test with the plan's shares and risks: one pit settles nothing, several alike do.
#[test]
fn one_sound_pit_does_not_settle_open_ground_and_several_do() {
    assert_eq!(asked(&sound_pits(1)), Some(Zone::Open));
    assert_eq!(asked(&sound_pits(4)), None);
}

/// 1 - 0.8^n: three pits are sure to 49 %, four to 59 % (Wilks 1941).
#[test]
fn a_depth_from_three_pits_wants_a_fourth() {
    let with = |count: u64| {
        let harmed = (1..=count).map(|number| rolled(pan_pit(number, PlaceKind::Headland, 280)));
        let open = (11..=14).map(|number| sound_pit(number, PlaceKind::Open));
        notes([reference()].into_iter().chain(harmed).chain(open).collect())
    };
    assert_eq!(asked(&with(3)), Some(Zone::Headland));
    assert_eq!(asked(&with(4)), None);
}
