//! A field's notes as far as they matter for the next pit.

use super::next_pit::{DIG_CLEARANCE_M, Ground, ZoneGround};
use super::{Count, counts_on};
use crate::place::{FieldMap, Plane};
use crate::reading::FieldReading;
use crate::record::{FieldNotes, PlaceKind, Position, Zone};

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

impl Ground {
    /// From the notes of a field and their reading: every zone that has a pit or ground of its own on the map, so that a
    /// headland without a pit can be proposed too. Open ground is there unless the map leaves none.
    pub fn of(notes: &FieldNotes, reading: &FieldReading) -> Self {
        Self::on(notes, reading, &FieldMap::of(&notes.field))
    }

    /// The same for a field that is laid out already.
    pub(crate) fn on(notes: &FieldNotes, reading: &FieldReading, map: &FieldMap) -> Self {
        let areas = map.areas();
        let counts = counts_on(notes, reading, map);
        let zones = Zone::ALL.iter().filter_map(|&zone| {
            let area_m2 = areas.iter().find(|area| area.zone == zone).map(|area| area.area_m2);
            let count = counts.iter().find(|(counted, _)| *counted == zone).map(|(_, count)| *count);
            let is_there = area_m2.is_some() || count.is_some() || (zone == Zone::Open && !map.has_outline());
            is_there.then(|| ZoneGround {
                zone,
                count: count.unwrap_or(Count::new(0, 0)),
                area_ha: area_m2.map(|area_m2| area_m2 / HECTARE_M2),
                rings: rings_of(map, zone),
            })
        });
        let pits = notes.pits.iter().filter_map(|pit| pit.at);
        let after_digs = notes.passes.iter().flat_map(|pass| &pass.after_digs).filter_map(|dig| dig.at);
        Self {
            zones: zones.collect(),
            outline: if map.has_outline() { notes.field.outline.clone() } else { Vec::new() },
            headland_mm: notes.field.headland_mm,
            dug: pits.chain(after_digs).map(place).collect(),
            reference_dug: notes.pits.iter().any(|pit| pit.place == PlaceKind::Reference),
            buried: notes.field.lines.iter().map(|line| line.along.clone()).collect(),
            clearance_m: DIG_CLEARANCE_M,
        }
    }
}

fn place(position: Position) -> [f64; 2] {
    [position.longitude_deg, position.latitude_deg]
}

/// The parts marked as this zone, circles as rings.
fn rings_of(map: &FieldMap, zone: Zone) -> Vec<Vec<[f64; 2]>> {
    let of_zone = map.parts_flat().into_iter().filter(|part| part.zone == zone);
    let ring = |plane: Plane, edge: &[[f64; 2]]| edge.iter().map(|&corner| plane.place(corner)).collect();
    of_zone.filter_map(|part| Some(ring(map.plane()?, &part.edge))).collect()
}
