//! Ways to the details of a field that are worth noting now: those that can change what is told.

use super::super::part::{way, ways};
use super::super::{Block, Place, World};
use crate::advice::FieldInput;
use crate::answer::FieldAnswer;
use crate::record::Zone;
use crate::words::Detail;

/// So many are shown at once, the weightiest: a field is no form to be filled in. Our judgement.
const AT_ONCE: usize = 2;

/// The ways, for one zone or for all.
pub(in crate::screen) fn ways_to_note(answer: &FieldAnswer, zone: Option<Zone>, world: &World) -> Vec<Block> {
    let (words, field) = (world.words, answer.notes.field.id);
    let worth = answer.worth_asking().iter();
    let worth = worth.filter(|worth| zone.is_none_or(|zone| worth.zones.contains(&zone)));
    ways(worth.take(AT_ONCE).map(|worth| {
        let detail = noted_as(worth.input);
        let place = Place::Detail { field, detail };
        way(None, words.detail_asked(detail), words.worth_noting(worth), place)
    }))
}

/// The detail that answers it.
const fn noted_as(input: FieldInput) -> Detail {
    match input {
        FieldInput::Tillage => Detail::Tillage,
        FieldInput::Stony => Detail::Stony,
        FieldInput::PlatesSoft => Detail::PlatesSoft,
        FieldInput::Slope => Detail::Slope,
        FieldInput::NextSown => Detail::NextSown,
        FieldInput::NextCrop => Detail::NextCrop,
    }
}
