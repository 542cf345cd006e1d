//! What a tap on a pit has saved, in a short sentence.

use super::super::{Done, Edit, World};
use super::look::day_of;
use super::skipped::is_of_field;
use super::{PitAct, roll, walk};
use crate::reading::Clue;
use crate::record::{ComesAway, FieldNotes, Pit};
use crate::words::PitText;

/// Returns what is told of a tap; what it tells of itself stays, and where nothing is saved nothing is told.
pub(super) fn told(act: &PitAct, done: &Done, (notes, pit): (&FieldNotes, &Pit), world: &World) -> String {
    if done.edits.is_empty() || !done.told.is_empty() {
        return done.told.clone();
    }
    let words = world.words;
    match *act {
        PitAct::Begin(kind) => {
            let number = notes.pits.iter().position(|its| its.id == pit.id).map_or(0, |index| index + 1);
            words.kept(&words.pit_numbered(number, kind))
        }
        PitAct::TakePosition
        | PitAct::HoleDug
        | PitAct::Skip { .. }
        | PitAct::PassMoisture
        | PitAct::Remark
        | PitAct::PassRoll { .. } => String::new(),
        PitAct::Face(face) | PitAct::Dug(face) => words.face_kept(face, false),
        PitAct::Away(away) => step_told(pit, away, world),
        PitAct::Same => walk::above(pit).map_or_else(String::new, |away| step_told(pit, away, world)),
        PitAct::Knife(met) => words.kept_as(&words.from_depth(walk::next_depths(pit).0), &words.of(met)),
        PitAct::Bottom => {
            walk::bottom_mm(pit).map_or_else(String::new, |depth_mm| words.bottom_kept(depth_mm))
        }
        PitAct::Look { top_mm, bottom_mm, clue, answer } => {
            let layer = (!is_of_field(clue)).then(|| words.depth_range(top_mm, bottom_mm));
            looked_told(layer, clue, answer.map(usize::from), world)
        }
        PitAct::Since { clue, years } => {
            let year = words.since_year(day_of(pit, years, world), years == super::look::LONGEST_YEARS);
            words.kept_as(&words.label(clue), &year)
        }
        PitAct::Nudge { at_mm, by_mm } => {
            at_mm.checked_add_signed(by_mm).map_or_else(String::new, |to_mm| words.boundary_kept(to_mm))
        }
        PitAct::Drag { at_mm } => {
            let moved = done.edits.iter().find_map(|edit| match edit {
                Edit::Pit { pit, .. } => Some(&pit.layers),
                _ => None,
            });
            let before = |edge_mm: u32| pit.layers.iter().any(|own| own.bottom_mm == edge_mm);
            let edges = moved.into_iter().flatten().map(|own| own.bottom_mm);
            let to_mm = edges.filter(|edge_mm| *edge_mm != at_mm && !before(*edge_mm)).min();
            to_mm.map_or_else(String::new, |to_mm| words.boundary_kept(to_mm))
        }
        PitAct::Roll { .. } => {
            let rolled = done.edits.iter().find_map(|edit| match edit {
                Edit::Roll { roll, .. } => Some(roll),
                _ => None,
            });
            rolled.map_or_else(String::new, |its| {
                let depth_mm = (!roll::is_surface(its)).then_some(its.depth_mm);
                words.kept_as(&words.soil_from(depth_mm), &words.of(its.roll))
            })
        }
    }
}

fn step_told(pit: &Pit, away: ComesAway, world: &World) -> String {
    let (from_mm, to_mm) = walk::next_depths(pit);
    world.words.kept_as(&world.words.depth_range(from_mm, to_mm), &world.words.of(away))
}

/// An answer, or that there is none: of a layer by its depths, else of the field.
fn looked_told(layer: Option<String>, clue: Clue, answer: Option<usize>, world: &World) -> String {
    let words = world.words;
    let not_looked = || words.named(&words.of(clue), &words.of(PitText::NotLooked));
    let seen = answer.map_or_else(not_looked, |answer| words.answer_clause(clue, answer));
    match layer {
        Some(depths) => words.kept_as(&depths, &seen),
        None => words.kept(&seen),
    }
}
