//! Whether another pit is worth digging, and where.

mod advice_fixture;

use advice_fixture::{calls, notes, pan_pit, reference, roll, sound_pit};
use pitface_core::advice::another_pit;
use pitface_core::reading::read_field;
use pitface_core::record::{FieldNotes, Pit, PlaceKind, RollOutcome, Zone};

fn asked(notes: &FieldNotes) -> Option<Zone> {
    another_pit(notes, &read_field(notes), &calls(notes))
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
    assert_eq!(asked(&notes(Vec::new())), Some(Zone::Whole));
    let harmed = notes(vec![rolled(pan_pit(1, PlaceKind::Headland, 280))]);
    assert_eq!(asked(&harmed), Some(Zone::Headland));
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
        notes([reference()].into_iter().chain(harmed).collect())
    };
    assert_eq!(asked(&with(3)), Some(Zone::Headland));
    assert_eq!(asked(&with(4)), None);
}
