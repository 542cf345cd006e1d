//! The moisture of a face, asked on its own.

use super::super::bar::act_button;
use super::super::{Block, Headline, Place, Screen, ScreenKind, World};
use super::{AtPit, PitAct, skip_tool};
use crate::record::{FaceMoisture, RecordId};
use crate::words::PitText;

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Screen> {
    let at = AtPit::of(field, pit, world)?;
    Some(asked(&at, Place::Moisture { field, pit }, world))
}

/// The question at a place, which shows something else once it is answered.
pub(super) fn asked(at: &AtPit, place: Place, world: &World) -> Screen {
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::KnifeWalk, world);
    shown.answer = Some(Headline::new(words.of(PitText::FaceQuestion)));
    shown.blocks.push(answers(at.pit.face, PitAct::Face, String::new(), world));
    shown.tools.push(skip_tool(PitAct::PassMoisture, world));
    shown
}

/// The answers under a question.
pub(super) fn answers(
    given: Option<FaceMoisture>,
    act: impl Fn(FaceMoisture) -> PitAct,
    text: String,
    world: &World,
) -> Block {
    let button =
        |&face: &FaceMoisture| act_button(world.words.label(face), act(face)).chosen_if(given == Some(face));
    Block::Question { text, columns: 3, answers: FaceMoisture::ALL.iter().map(button).collect() }
}

/// Where one goes once it is answered or passed over.
pub(super) fn onward(place: Place) -> Place {
    match place {
        Place::Moisture { .. } => place.above().unwrap_or(place),
        _ => place,
    }
}
