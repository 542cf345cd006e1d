//! Where a pit was left: what a tap on it leads to.

use super::super::{Place, World};
use super::{Skipped, look};
use crate::answer::FieldAnswer;

/// The furthest place of a pit that is not finished; its call where it is, or where it is of another day.
pub(in crate::screen) fn where_left(answer: &FieldAnswer, index: usize, world: &World) -> Place {
    let (field, pit) = (answer.notes.field.id, &answer.notes.pits[index]);
    let id = pit.id;
    if pit.walk.is_empty() && pit.layers.is_empty() {
        return Place::StartPit { field, pit: Some(id) };
    }
    if pit.dug_to_mm.is_none() && pit.layers.is_empty() {
        return Place::KnifeWalk { field, pit: id };
    }
    let today = pit.dug.is_some_and(|dug| dug.date_naive() == world.now.date_naive());
    if !today || !pit.rolls.is_empty() {
        return Place::Call { field, pit: id };
    }
    match look::best(pit, &answer.reading.pits[index], &answer.notes.field, Skipped::NONE) {
        Some(_) => Place::NextLook { field, pit: id, skipped: Skipped::NONE },
        None => Place::Roll { field, pit: id },
    }
}
