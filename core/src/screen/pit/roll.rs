//! The roll tests of a pit: soil from the depth to be worked, then from the surface, one a screen.

use super::super::bar::act_button;
use super::super::deleting::entry;
use super::super::{Block, Done, Edit, Headline, Pictured, Place, Screen, ScreenKind, World};
use super::faces::strip_face;
use super::{AtPit, PitAct, Skipped, skip_tool};
use crate::advice::TIP_BELOW_MOST_MM;
use crate::picture::{how_to_roll, roll as drawing};
use crate::record::{Condition, FieldNotes, Pit, RecordId, Roll, RollOutcome, Unknown};
use crate::words::{Heading, PitText};

/// Soil from no deeper than this is from the surface, as the gates of the call have it.
const SURFACE_MM: u32 = 100;
/// A test within this distance of the depth asked for is that test, as the gates of the call have it.
const NEAR_MM: u32 = 75;
/// How much of the face is lit where soil is to be taken, above and below. Our judgement.
const TAKEN_MM: u32 = 25;

/// One roll test: that of the surface or of the depth to be worked where `surface` says which, else the first that is
/// still to be made. What is to be done, where all are made.
pub(in crate::screen) fn show(
    field: RecordId,
    pit: RecordId,
    surface: Option<bool>,
    world: &World,
) -> Option<Screen> {
    let at = AtPit::of(field, pit, world)?;
    let skipped = world.passed_over(pit);
    let wanted = match surface {
        Some(true) => Some(None),
        Some(false) => depth_to_roll(&at).map(Some),
        None => to_come(&at, skipped).into_iter().next(),
    };
    let Some(depth_mm) = wanted else { return super::call::show(field, pit, world) };
    let place = surface.map_or(Place::Roll { field, pit }, |surface| Place::RollOf { field, pit, surface });
    Some(asked(&at, place, depth_mm, world))
}

fn asked(at: &AtPit, place: Place, depth_mm: Option<u32>, world: &World) -> Screen {
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::Roll, world);
    shown.answer =
        Some(Headline { line: words.of(PitText::RollHow), ..Headline::new(words.roll_question(depth_mm)) });
    let taken = depth_mm.map_or((0, 2 * TAKEN_MM), |depth_mm| {
        (depth_mm.saturating_sub(TAKEN_MM), depth_mm.saturating_add(TAKEN_MM))
    });
    shown.picture = Some(strip_face(at, Some(taken), world));
    let noted = roll_at(at.pit, depth_mm);
    shown.menu.extend(noted.and_then(|noted| entry(&at.answer.notes, noted.id, world)));
    let given = noted.map(|its| its.roll);
    let button = |&roll: &RollOutcome| {
        act_button(words.label(roll), PitAct::Roll { depth_mm, roll })
            .about(words.soil_from(depth_mm))
            .drawn(Some(drawing(roll)))
            .chosen_if(given == Some(roll))
    };
    let answers = RollOutcome::ALL.iter().map(button).collect();
    shown.blocks.push(Block::Question { text: String::new(), columns: 2, answers });
    let (title, description) = (words.label(Heading::RollTest), words.of(PitText::RollHow));
    shown.blocks.push(Block::Drawing(Pictured { drawing: how_to_roll(), title, description }.into()));
    shown.blocks.push(Block::Ways { heading: String::new(), rows: super::faces::layer_rows(at, world) });
    shown.tools.push(skip_tool(PitAct::PassRoll { surface: depth_mm.is_none() }, world));
    shown
}

/// Returns what was rolled and what could be, a row each: `surface`, what it is called, what came of it.
pub(super) fn rolls<'a>(at: &AtPit<'a>) -> Vec<(bool, Option<u32>, Option<&'a Roll>)> {
    let depth_mm = depth_to_roll(at).map(Some);
    let all = depth_mm.into_iter().chain([None]);
    all.map(|depth_mm| (depth_mm.is_none(), depth_mm, roll_at(at.pit, depth_mm))).collect()
}

pub(super) const fn is_surface(roll: &Roll) -> bool {
    roll.depth_mm <= SURFACE_MM
}

/// The test of soil from the surface, or from a depth.
fn roll_at(pit: &Pit, depth_mm: Option<u32>) -> Option<&Roll> {
    pit.rolls.iter().rev().find(|its| match depth_mm {
        None => is_surface(its),
        Some(depth_mm) => !is_surface(its) && its.depth_mm.abs_diff(depth_mm) <= NEAR_MM,
    })
}

/// Soil that is still to be rolled and was not passed over, the depth to be worked first, for it decides.
pub(super) fn to_come(at: &AtPit, skipped: Skipped) -> Vec<Option<u32>> {
    let open =
        rolls(at).into_iter().filter(|(surface, _, rolled)| rolled.is_none() && !skipped.has_roll(*surface));
    open.map(|(_, depth_mm, _)| depth_mm).collect()
}

/// The deepest tip as advised so far where this pit stands, as the call asks for it; else just below its deepest layer
/// that is tight or shut, which is what would be worked. `None` where there is none.
fn depth_to_roll(at: &AtPit) -> Option<u32> {
    let advised = at.answer.call_at(at.index).and_then(|call| call.tip).map(|tip| tip.hi_mm);
    let tight = at.reading().layers.iter().filter(|layer| layer.condition >= Condition::Tight);
    let below =
        tight.map(|layer| layer.bottom_mm).max().map(|bottom_mm| bottom_mm.saturating_add(TIP_BELOW_MOST_MM));
    // To the centimetre: nobody takes soil from a depth more exactly.
    advised.or(below).map(|depth_mm| depth_mm / 10 * 10).filter(|depth_mm| *depth_mm > SURFACE_MM)
}

/// Notes a roll test, in place of an earlier one of the same soil, and goes on.
pub(super) fn rolled(
    notes: &FieldNotes,
    pit: &Pit,
    (depth_mm, roll): (Option<u32>, RollOutcome),
    place: Place,
    (world, new_id): (&World, &mut dyn FnMut() -> RecordId),
) -> Done {
    let rolled = match roll_at(pit, depth_mm) {
        Some(before) => Roll { roll, depth_mm: depth_mm.unwrap_or(before.depth_mm), ..before.clone() },
        None => Roll { id: new_id(), depth_mm: depth_mm.unwrap_or(0), roll, unknown: Unknown::new() },
    };
    let mut after = pit.clone();
    match after.rolls.iter_mut().find(|its| its.id == rolled.id) {
        Some(its) => *its = rolled.clone(),
        None => after.rolls.push(rolled.clone()),
    }
    let place = onward(notes, &after, world.passed_over(pit.id), place, world);
    Done::save(Edit::Roll { parent: pit.id, roll: rolled }, place)
}

/// Where one goes from the looks, or from a roll test: to the next one, or to what is to be done.
pub(super) fn onward(notes: &FieldNotes, pit: &Pit, skipped: Skipped, place: Place, world: &World) -> Place {
    let (field, id) = (notes.field.id, pit.id);
    if let Place::RollOf { .. } = place {
        return place.above().unwrap_or(place);
    }
    let index = notes.pits.iter().position(|its| its.id == id);
    let mut notes = notes.clone();
    for own in notes.pits.iter_mut().filter(|own| own.id == id) {
        *own = pit.clone();
    }
    let answer = world.answer_of(&notes);
    let at = index.map(|index| AtPit { field, answer, index, pit });
    let more = at.is_some_and(|at| !to_come(&at, skipped).is_empty());
    if more { Place::Roll { field, pit: id } } else { Place::Call { field, pit: id } }
}
