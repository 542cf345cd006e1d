//! Where a pit was left: what a tap on it leads to.

use super::super::{Place, World};
use super::{AtPit, look, roll};
use crate::answer::FieldAnswer;

/// Rolled from the depth and from the surface, a pit is finished.
const MOST_ROLLS: usize = 2;

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
    let at = AtPit::of(field, id, world).filter(|_| today && pit.rolls.len() < MOST_ROLLS);
    let skipped = world.passed_over(id);
    let look = |at: &AtPit| look::best(pit, at.reading(), &answer.notes.field, skipped).is_some();
    match at {
        Some(at) if pit.rolls.is_empty() && look(&at) => Place::NextLook { field, pit: id },
        Some(at) if !roll::to_come(&at, skipped).is_empty() => Place::Roll { field, pit: id },
        _ => Place::Call { field, pit: id },
    }
}
