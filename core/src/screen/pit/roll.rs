//! The roll tests of a pit: soil from the depth to be worked, then from the surface.

use super::super::bar::act_button;
use super::super::part::{answers, choices, go};
use super::super::{Doing, Done, Draft, Edit, Known, Place, ScreenKind, Size, World};
use super::{AtPit, PitAct};
use crate::advice::TIP_BELOW_MOST_MM;
use crate::picture::roll as drawing;
use crate::record::{Condition, FieldNotes, Pit, RecordId, Roll, RollOutcome, Unknown};
use crate::words::{Heading, PitText};

/// Soil from no deeper than this is from the surface, as the gates of the call have it.
const SURFACE_MM: u32 = 100;
/// A test within this distance of the depth asked for is that test, as the gates of the call have it.
const NEAR_MM: u32 = 75;

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Draft> {
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let place = Place::Roll { field, pit };
    let mut shown = at.screen(place, ScreenKind::Roll, &words.of(Heading::RollTest), world);
    let depth_mm = depth_to_roll(&at);
    shown.known.push(Known::Sentence(words.of(PitText::RollHow)));
    if depth_mm.is_none() {
        shown.known.push(Known::Line(words.of(PitText::NoRollAtDepth)));
    }
    let told = at.pit.rolls.iter().map(|its| words.rolled(its.depth_mm, is_surface(its), its.roll));
    shown.known.extend(super::super::part::section(world, Heading::RollTest, told));
    let ways = vec![
        go(words.label(PitText::ByHand), super::walk::layers_of(field, pit)),
        go(words.label(PitText::Photos), Place::Photos { field, pit }),
    ];
    shown.doing.push(choices(2, ways.into_iter().map(|way| way.sized(Size::Small)).collect()));
    // The depth to be worked decides, so it is nearest to the thumb; an answer changes no place, else a second tap would
    // answer the other question.
    for depth_mm in [None].into_iter().chain(depth_mm.map(Some)) {
        let given = roll_at(at.pit, depth_mm).map(|its| its.roll);
        let button = |&roll: &RollOutcome| {
            act_button(words.label(roll), PitAct::Roll { depth_mm, roll })
                .about(words.soil_from(depth_mm))
                .drawn(Some(drawing(roll)))
                .chosen_if(given == Some(roll))
        };
        shown.doing.push(Doing::Question(words.roll_question(depth_mm)));
        shown.doing.push(answers(RollOutcome::ALL.iter().map(button).collect()));
    }
    shown.bar.main = Some(go(words.label(PitText::GiveCall), Place::Call { field, pit }));
    Some(shown)
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

/// Notes a roll test, in place of an earlier one of the same soil; to the call once both are done.
pub(super) fn rolled(
    notes: &FieldNotes,
    pit: &Pit,
    (depth_mm, roll): (Option<u32>, RollOutcome),
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let field = notes.field.id;
    let rolled = match roll_at(pit, depth_mm) {
        Some(before) => Roll { roll, depth_mm: depth_mm.unwrap_or(before.depth_mm), ..before.clone() },
        None => Roll { id: new_id(), depth_mm: depth_mm.unwrap_or(0), roll, unknown: Unknown::new() },
    };
    let place = if lacks_another(notes, pit, depth_mm, world) {
        Place::Roll { field, pit: pit.id }
    } else {
        Place::Call { field, pit: pit.id }
    };
    Done::save(Edit::Roll { parent: pit.id, roll: rolled }, place)
}

/// Whether another soil than this one is still to be rolled.
fn lacks_another(notes: &FieldNotes, pit: &Pit, depth_mm: Option<u32>, world: &World) -> bool {
    if depth_mm.is_some() {
        return roll_at(pit, None).is_none();
    }
    let index = notes.pits.iter().position(|its| its.id == pit.id);
    let at = index.map(|index| AtPit { field: notes.field.id, answer: world.answer_of(notes), index, pit });
    let wanted = at.and_then(|at| depth_to_roll(&at));
    wanted.is_some_and(|depth_mm| roll_at(pit, Some(depth_mm)).is_none())
}
