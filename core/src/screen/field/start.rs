//! The picture of the first start: a face as the app reads it, out of a pit that is noted nowhere.

use super::super::drawn::low_face_of;
use super::super::{Picture, World};
use crate::answer::FieldAnswer;
use crate::record::{ComesAway, Field, FieldNotes, Pit, PlaceKind, RecordId, Resistance, Step, Unknown};

/// The face: down to this depth, millimetres, it comes away so and meets the knife so. Our own example.
const STEPS: [(u32, ComesAway, Resistance); 3] = [
    (200, ComesAway::Crumbs, Resistance::SlipsIn),
    (300, ComesAway::FlatPlates, Resistance::HardPush),
    (450, ComesAway::RoundedLumps, Resistance::FirmPush),
];

/// The face with its layers.
pub(super) fn picture(world: &World) -> Option<Picture> {
    let id = |number: usize| RecordId::new(number as u64, [0; 10]);
    let mut pit = Pit::new(id(1), PlaceKind::Open);
    let step = |(index, &(to_mm, comes_away, resistance)): (usize, &(u32, ComesAway, Resistance))| Step {
        id: id(index + 2),
        to_mm,
        comes_away: Some(comes_away),
        resistance: Some(resistance),
        unknown: Unknown::new(),
    };
    pit.walk = STEPS.iter().enumerate().map(step).collect();
    pit.dug_to_mm = STEPS.last().map(|(to_mm, ..)| *to_mm);
    let answer = FieldAnswer::of(FieldNotes::new(Field::new(id(0), ""), vec![pit]), None);
    low_face_of(world.words, &answer, 0, None, false).map(Picture::from)
}
