//! The plan of a field from its notes.

use super::{PlanAfterDig, PlanLine, PlanPart, PlanPicture, PlanPit, Spot};
use crate::harmless::name;
use crate::place::{FieldMap, Plane};
use crate::reading::FieldReading;
use crate::record::{FieldNotes, Position};

impl PlanPicture {
    /// Everything noted of a field that has a place, with where to dig next, `[longitude, latitude]`; parts and words
    /// still without their text. `reading` and `map` are those of the same notes.
    pub fn of(notes: &FieldNotes, reading: &FieldReading, map: &FieldMap, next: Option<[f64; 2]>) -> Self {
        Self::laid_on(Self::plane(notes, map), notes, reading, map, next)
    }

    /// The plane a field is laid out on: its own; one of which nothing is marked is laid out around its first pit.
    pub fn plane(notes: &FieldNotes, map: &FieldMap) -> Option<Plane> {
        let first = notes.pits.iter().find_map(|pit| pit.at).map(degrees);
        map.plane().or(first.map(Plane::at))
    }

    /// The same laid out on a plane that is given: that of [`Self::plane`] where there is one.
    pub fn laid_on(
        plane: Option<Plane>,
        notes: &FieldNotes,
        reading: &FieldReading,
        map: &FieldMap,
        next: Option<[f64; 2]>,
    ) -> Self {
        let flat = |place: [f64; 2]| plane.map(|plane| plane.flat(place));
        let spot = |position: Option<Position>| position.map(degrees).and_then(flat);
        let pits = notes.pits.iter().zip(&reading.pits).enumerate().map(|(index, (pit, read))| PlanPit {
            at: spot(pit.at),
            number: (index + 1).to_string(),
            condition: read.layers.iter().map(|layer| layer.condition).max(),
            place: pit.place,
        });
        let digs = notes.passes.iter().flat_map(|pass| &pass.after_digs).enumerate();
        Self {
            outline: map.outline_flat(),
            headland: map.headland_inner_flat(),
            tramlines: map.tramlines_flat(),
            parts: map
                .parts_flat()
                .into_iter()
                .map(|part| PlanPart {
                    ring: part.edge,
                    zone: part.zone,
                    label: name(&part.name.unwrap_or_default()).into_owned(),
                })
                .collect(),
            buried: map
                .lines_flat()
                .into_iter()
                .map(|line| PlanLine { kind: line.kind, along: line.along })
                .collect(),
            pits: pits.collect(),
            after_digs: digs
                .map(|(index, dig)| PlanAfterDig { at: spot(dig.at), label: format!("A{}", index + 1) })
                .collect(),
            next: next.and_then(flat),
            ..Self::empty()
        }
    }
}

fn degrees(position: Position) -> Spot {
    [position.longitude_deg, position.latitude_deg]
}
