//! Two people at one hole: that it is one, where they differ, and whether it matters.

use crate::advice_fixture;

use advice_fixture::{notes, open, pan_pit, reference, says, signs, sound_pit, sound_subsoil};
use chrono::DateTime;
use pitface_core::advice::What;
use pitface_core::advice::readers::several_readers;
use pitface_core::reading::read_field;
use pitface_core::record::{Call, Pit, PlaceKind, Position, Sign};

const HERE: (f64, f64) = (2.5, 54.5);
/// Degrees of latitude in a metre, nearly.
const METRE_DEG: f64 = 1.0 / 111_300.0;

fn dug(pit: Pit, by: &str, day: u32, north_m: f64) -> Pit {
    let at =
        Position { longitude_deg: HERE.0, latitude_deg: HERE.1 + north_m * METRE_DEG, accuracy_m: Some(3.0) };
    let dug = DateTime::parse_from_rfc3339(&format!("2026-05-{day:02}T10:00:00+01:00")).ok();
    Pit { by: Some(by.into()), at: Some(at), dug, ..pit }
}

fn pan(number: u64, by: &str, day: u32, north_m: f64) -> Pit {
    dug(pan_pit(number, PlaceKind::Open, 280), by, day, north_m)
}

fn sound(number: u64, by: &str, day: u32, north_m: f64) -> Pit {
    dug(sound_pit(number, PlaceKind::Open), by, day, north_m)
}

fn holes(pits: Vec<Pit>) -> Vec<Vec<usize>> {
    let notes = notes(pits);
    several_readers(&notes, &read_field(&notes)).map(|several| several.holes).unwrap_or_default()
}

#[test]
fn two_people_at_one_hole_that_would_call_it_differently() {
    let notes = notes(vec![reference(), pan(1, "walker", 12, 0.0), sound(2, "second walker", 12, 4.0)]);
    let several = several_readers(&notes, &read_field(&notes)).unwrap();
    assert_eq!(several.holes, [[1, 2]]);
    assert_eq!(several.calls, [[Some(Call::Loosen), Some(Call::LeaveIt)]]);
    assert!(several.agreement.calls_differ && several.agreement.differ_most.is_some());
}

#[test]
fn the_same_reading_twice_does_not_matter() {
    let notes = notes(vec![pan(1, "walker", 12, 0.0), pan(2, "second walker", 12, 1.0)]);
    let several = several_readers(&notes, &read_field(&notes)).unwrap();
    assert!(!several.agreement.calls_differ && several.agreement.differ_most.is_none());
}

#[test]
fn other_days_other_places_and_the_same_person_are_other_holes() {
    assert!(holes(vec![pan(1, "walker", 12, 0.0), pan(2, "second walker", 13, 0.0)]).is_empty());
    assert!(holes(vec![pan(1, "walker", 12, 0.0), pan(2, "second walker", 12, 6.5)]).is_empty());
    assert!(holes(vec![pan(1, "walker", 12, 0.0), pan(2, "walker", 12, 0.0)]).is_empty());
    let unplaced = Pit { at: None, ..pan(2, "second walker", 12, 0.0) };
    assert!(holes(vec![pan(1, "walker", 12, 0.0), unplaced]).is_empty());
}

#[test]
fn three_people_at_one_hole_are_three_readings_of_it() {
    let three =
        vec![pan(1, "a", 12, 0.0), pan(2, "b", 12, 1.0), sound(3, "c", 12, 2.0), sound(4, "a", 12, 80.0)];
    assert_eq!(holes(three), [[0, 1, 2]]);
}

/// Two people who would do different things have to look again, at the signs they see differently. Our judgement.
#[test]
fn two_readers_who_differ_have_to_dig_again_and_are_told_where_they_differ() {
    let call = open(&notes(vec![reference(), pan(1, "walker", 12, 0.0), sound(2, "second walker", 12, 4.0)]));
    assert_eq!(call.call, Call::DigAgain);
    let What::ReadersDiffer { pits, calls, signs, .. } = &call.reasons[0].what else {
        panic!("{:?}", call.reasons)
    };
    assert_eq!((pits, calls), (&[2, 3], &[Call::Loosen, Call::LeaveIt]));
    assert!(signs.contains(&Sign::Roots) && !signs.contains(&Sign::Smell), "{signs:?}");
    let alone =
        open(&notes(vec![reference(), pan(1, "walker", 12, 0.0), sound(2, "second walker", 13, 40.0)]));
    assert!(!says(&alone, |what| matches!(what, What::ReadersDiffer { .. })), "two holes may differ");
}

/// One hole in dispute counts against the others as one, like a pit whose signs clash: two of three still carry a call.
#[test]
fn a_hole_in_dispute_among_holes_that_agree_holds_up_nothing() {
    let dispute = [pan(1, "walker", 12, 0.0), sound(2, "second walker", 12, 4.0)];
    let with = |agreeing: u64| {
        let more = (0..agreeing).map(|n| pan(10 + n, "walker", 12, 60.0 * (n + 1) as f64));
        open(&notes([reference()].into_iter().chain(dispute.clone()).chain(more).collect()))
    };
    assert_eq!(with(1).call, Call::DigAgain, "one of two");
    let two = with(2);
    assert_eq!(two.call, Call::Loosen, "two of three: {:?}", two.reasons);
    assert!(says(&two, |what| matches!(what, What::ReadersDiffer { .. })), "and it is told");
}

/// To leave it and roots first both keep steel out: a hole of which one says this and one that is in no dispute.
#[test]
fn two_readers_who_both_keep_steel_out_are_in_no_dispute() {
    let slumped = signs(&[
        (Sign::ComesAway, "one_mass"),
        (Sign::Resistance, "hard_push"),
        (Sign::Pores, "few"),
        (Sign::Channels, "none"),
        (Sign::Roots, "through"),
        (Sign::ClodInWater, "falls_apart"),
    ]);
    let mut roots = pan(1, "walker", 12, 0.0);
    roots.layers[0].signs = slumped;
    roots.layers[1].signs = sound_subsoil();
    let both = notes(vec![reference(), roots, sound(2, "second walker", 12, 4.0)]);
    let several = several_readers(&both, &read_field(&both)).unwrap();
    assert_eq!(several.calls, [[Some(Call::RootsFirst), Some(Call::LeaveIt)]]);
    let call = open(&both);
    assert!(!says(&call, |what| matches!(what, What::ReadersDiffer { .. })), "{:?}", call.reasons);
}
