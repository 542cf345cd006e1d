//! Calls follow the zone that a pit's position gives.

use crate::advice_fixture;

use advice_fixture::{calls, fit_to_loosen};
use pitface_core::advice::{changes, stands_for};
use pitface_core::place::{FieldMap, Plane};
use pitface_core::record::{FieldNotes, PlaceKind, Position, Zone};

/// One pit with a pan, noted as open ground, so many metres east of the middle of a field 400 m by 200 m.
fn noted(east_m: f64) -> FieldNotes {
    let plane = Plane::at([2.5, 54.5]);
    let mut notes = fit_to_loosen();
    notes.field.outline = [[-200.0, -100.0], [200.0, -100.0], [200.0, 100.0], [-200.0, 100.0]]
        .map(|it| plane.place(it))
        .to_vec();
    notes.field.headland_mm = Some(12_000);
    let [longitude_deg, latitude_deg] = plane.place([east_m, 0.0]);
    let harmed = notes.pits.iter_mut().filter(|pit| pit.place == PlaceKind::Open);
    harmed.for_each(|pit| pit.at = Some(Position { longitude_deg, latitude_deg, accuracy_m: Some(3.0) }));
    notes
}

#[test]
fn a_pit_in_the_headland_makes_the_call_of_the_headland() {
    for (east_m, zone) in
        [(0.0, Zone::Open), (194.0, Zone::Headland), (190.0, Zone::Open), (230.0, Zone::Open)]
    {
        let notes = noted(east_m);
        let zones: Vec<Zone> = calls(&notes).zones.iter().map(|call| call.zone).collect();
        assert_eq!(zones, [zone], "{east_m}");
        assert_eq!(stands_for(&FieldMap::of(&notes.field), &notes.pits[1]), Some(zone), "{east_m}");
    }
}

/// What would change a call is tried on the same ground.
#[test]
fn the_same_answers_change_the_call_wherever_the_map_puts_the_pit() {
    let (open, headland) = (changes(&noted(0.0), Zone::Open), changes(&noted(194.0), Zone::Headland));
    assert!(!open.is_empty() && !headland.is_empty());
    assert!(changes(&noted(194.0), Zone::Open).is_empty());
}
