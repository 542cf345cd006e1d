//! The edge of a field, walked: one tap at every corner.

use super::super::bar::{act_button, empty};
use super::super::drawn::plan_of;
use super::super::part::choices;
use super::super::{Ask, Button, Does, Done, Draft, Edit, Known, Place, ScreenKind, Size, World};
use super::{FieldAct, degrees};
use crate::place::{Outline, OutlineFault, walk};
use crate::record::{Field, RecordId};
use crate::words::PitText;

/// Two corners nearer than this are one: positions are no better. Our judgement.
const SAME_M: f64 = 2.0;

pub(in crate::screen) fn show(field: RecordId, world: &World) -> Option<Draft> {
    let notes = world.notes(field)?;
    let words = world.words;
    let title = words.label(PitText::WalkEdge);
    let mut shown = empty(Place::Outline { field }, ScreenKind::Field, title, world);
    shown.wants_position = true;
    shown.awake = true;
    let plan = plan_of(words, &world.answer_of(notes));
    shown.known.extend(plan.map(Known::Drawing));
    let count = notes.field.outline.len();
    shown.known.push(if count == 0 {
        Known::Sentence(words.of(PitText::NoCorner))
    } else {
        Known::Sentence(words.corners(count))
    });
    shown.known.push(Known::Line(match world.fix {
        Some(fix) => words.position_so_far(fix),
        None if world.position_refused => words.of(PitText::PositionRefused),
        None => words.of(PitText::NoPosition),
    }));
    let anew = (count > 0).then(|| act_button(words.label(PitText::OutlineAnew), FieldAct::OutlineAnew));
    let allow = world
        .position_refused
        .then(|| Button::new(words.label(PitText::AllowPosition), Does::Ask(Ask::AllowPosition)));
    for button in [anew, allow].into_iter().flatten() {
        shown.doing.push(choices(1, vec![button.sized(Size::Small)]));
    }
    let corner = act_button(words.label(PitText::AnotherCorner), FieldAct::Corner);
    shown.bar.main = Some(corner.enabled_if(world.fix.is_some()));
    Some(shown)
}

/// Notes a corner where one stands.
pub(super) fn corner(field: &Field, place: Place, world: &World) -> Done {
    let words = world.words;
    let refuse = |text: PitText| Done { told: words.of(text), ..Done::go(place) };
    let Some(fix) = world.fix else { return refuse(PitText::NoPosition) };
    let here = degrees(fix.position);
    if field.outline.last().is_some_and(|&last| walk(last, here).distance_m < SAME_M) {
        return refuse(PitText::CornerSame);
    }
    let mut field = field.clone();
    field.outline.push(here);
    // The side back to the first corner is not walked yet: in a field with a bay it may cross others for a while.
    let closing = field.outline.len() - 1;
    match Outline::new(&field.outline) {
        Ok(_) | Err(OutlineFault::TooFew { .. }) => {}
        Err(OutlineFault::Crosses { side, other }) if side == closing || other == closing => {}
        Err(_) => return refuse(PitText::CornerCrosses),
    }
    let told = words.corner_noted(field.outline.len());
    Done { told, ..Done::save(Edit::Field(field), place) }
}

/// Takes the edge back, to be walked anew.
pub(super) fn anew(field: &Field, place: Place, world: &World) -> Done {
    let field = Field { outline: Vec::new(), ..field.clone() };
    let told = world.words.of(PitText::OutlineGone);
    Done { told, ..Done::save(Edit::Field(field), place) }
}
