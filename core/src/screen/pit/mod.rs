//! A pit from its place to what is to be done there.

pub(super) mod call;
mod faces;
mod given;
mod headline;
pub(super) mod layers;
mod left;
pub(super) mod look;
pub(super) mod moisture;
mod next;
pub(super) mod remark;
pub(super) mod roll;
mod skipped;
pub(super) mod start;
mod told;
pub(super) mod walk;

pub use skipped::Skipped;

use super::bar::{blank, gone, tool};
use super::{Act, Ask, Button, Does, Done, Edit, Input, Place, Screen, ScreenKind, World};
use crate::answer::FieldAnswer;
use crate::error::Fault;
use crate::picture::{Icon, icon};
use crate::reading::{Clue, PitReading};
use crate::record::{ComesAway, FaceMoisture, Pit, PlaceKind, RecordId, Resistance, RollOutcome};
use crate::words::{FaceText, PitText};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

use faces::{boundary_places, wide_face};
pub(super) use headline::{Says, headline, says};
pub(super) use left::where_left;
pub(super) use next::next_label;

/// What can be tapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "fields say what they are: depths, answers as indices")]
pub enum PitAct {
    /// Begins a pit at this kind of place, or says so of one that is begun.
    Begin(PlaceKind),
    /// Takes the position as it is now in place of the one noted.
    TakePosition,
    /// The hole is dug: the position is taken where none is noted, and the knife walk begins.
    HoleDug,
    /// The same, with the moisture of its face.
    Dug(FaceMoisture),
    /// Moisture of the face.
    Face(FaceMoisture),
    /// The moisture of the face is passed over.
    PassMoisture,
    /// How the soil of the next step comes away.
    Away(ComesAway),
    /// It comes away as in the step above.
    Same,
    /// What the knife meets from the next step on.
    Knife(Resistance),
    /// The last step was the bottom of the hole. Where the hole is shallower than wanted, the first tap only says so.
    Bottom,
    /// Something seen in a layer, or known of the field; `None` = not looked.
    Look { top_mm: u32, bottom_mm: u32, clue: Clue, answer: Option<u8> },
    /// When the field was last loosened or driven on: so many years before the pit's, three for longer ago.
    Since { clue: Clue, years: u8 },
    /// Not to be asked again of this pit.
    Skip { top_mm: u32, clue: Clue },
    /// Moves a boundary between two layers.
    Nudge { at_mm: u32, by_mm: i32 },
    /// Moves a boundary to where a finger was lifted from the face.
    Drag { at_mm: u32 },
    /// What soil did when it was rolled; from the surface where no depth is given.
    Roll { depth_mm: Option<u32>, roll: RollOutcome },
    /// What was typed is noted as a remark on the pit, or on the layer of its place.
    Remark,
    /// That roll test is passed over.
    PassRoll { surface: bool },
}

impl From<PitAct> for Act {
    fn from(act: PitAct) -> Self {
        Self::Pit(act)
    }
}

/// One pit on its screen.
pub(super) struct AtPit<'a> {
    pub field: RecordId,
    pub answer: Arc<FieldAnswer>,
    /// Its place among the field's pits.
    pub index: usize,
    pub pit: &'a Pit,
}

impl<'a> AtPit<'a> {
    pub fn of(field: RecordId, pit: RecordId, world: &World<'a>) -> Option<Self> {
        let notes = world.notes(field)?;
        let index = notes.pits.iter().position(|its| its.id == pit)?;
        Some(Self { field, answer: world.answer_of(notes), index, pit: &notes.pits[index] })
    }

    pub fn reading(&self) -> &PitReading {
        &self.answer.reading.pits[self.index]
    }

    /// Its number as it is told.
    pub const fn number(&self) -> usize {
        self.index + 1
    }

    /// A screen of this pit, with undo and photo among its tools.
    pub fn screen(&self, place: Place, kind: ScreenKind, world: &World) -> Screen {
        let title = world.words.pit_title(self.number(), self.pit.place);
        let mut screen = Screen { awake: true, ..blank(place, kind, title, world) };
        screen.tools.push(self.photo(world));
        screen
    }

    /// The tool that takes a photo of the face.
    fn photo(&self, world: &World) -> Button {
        let label = world.words.label(FaceText::Photo);
        Button { drawing: Some(icon(Icon::Photo)), ..Button::new(label, Does::Ask(self.take_photo())) }
    }

    /// Asks for a photo of the whole face.
    const fn take_photo(&self) -> Ask {
        Ask::TakePhoto { field: self.field, pit: self.pit.id, depth_mm: None }
    }
}

/// The tool that passes a question over.
fn skip_tool(act: PitAct, world: &World) -> Button {
    tool(Icon::Skip, world.words.label(PitText::NotLooked), act)
}

pub(super) fn tap(
    place: Place,
    act: &PitAct,
    input: Input,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let gone = || gone(world.words);
    let field = place.field().ok_or_else(gone)?;
    let notes = world.notes(field).ok_or_else(gone)?;
    if let (PitAct::Begin(kind), None) = (act, pit_of(place)) {
        return Ok(start::begin(notes, *kind, world, new_id));
    }
    let id = pit_of(place).ok_or_else(gone)?;
    let pit = notes.pits.iter().find(|pit| pit.id == id).ok_or_else(gone)?;
    let changed = |pit: Pit, place: Place| Done::save(Edit::Pit { field, pit }, place);
    let passed =
        |skipped: Skipped, place: Place| Done { passed_over: Some((id, skipped)), ..Done::go(place) };
    let skipped = world.passed_over(id);
    let done = match *act {
        PitAct::Begin(kind) => changed(Pit { place: kind, ..pit.clone() }, place),
        PitAct::TakePosition => start::take_position(field, pit, place, world),
        PitAct::HoleDug => start::hole_dug(field, pit, None, world),
        PitAct::Dug(face) => start::hole_dug(field, pit, Some(face), world),
        PitAct::Face(face) => changed(Pit { face: Some(face), ..pit.clone() }, moisture::onward(place)),
        PitAct::PassMoisture => passed(skipped.with_moisture(), moisture::onward(place)),
        PitAct::Away(away) => walk::step(field, pit, Some(away), new_id),
        PitAct::Same => walk::step(field, pit, None, new_id),
        PitAct::Knife(resistance) => walk::knife(field, pit, resistance, new_id),
        PitAct::Bottom => walk::bottom(notes, pit, place, world),
        PitAct::Look { top_mm, bottom_mm, clue, answer } => {
            let answer = answer.map(usize::from);
            look::answered(notes, pit, ((top_mm, bottom_mm), clue, answer), place, (world, new_id))
        }
        PitAct::Since { clue, years } => look::since(notes, pit, clue, years, place, world),
        PitAct::Skip { top_mm, clue } => look::skip(notes, pit, (top_mm, clue), place, world),
        PitAct::Nudge { at_mm, by_mm } => layers::nudge(notes, pit, (at_mm, by_mm), place, new_id),
        PitAct::Drag { at_mm } => layers::drag(notes, pit, at_mm, place, (input.point, world), new_id),
        PitAct::Roll { depth_mm, roll } => roll::rolled(notes, pit, (depth_mm, roll), place, (world, new_id)),
        PitAct::Remark => {
            let text = input.text.unwrap_or_default();
            return remark::typed(notes, pit, text, place, (world, new_id));
        }
        PitAct::PassRoll { surface } => {
            let skipped = skipped.with_roll(surface);
            passed(skipped, roll::onward(notes, pit, skipped, place, world))
        }
    };
    let told = told::told(act, &done, (notes, pit), world);
    Ok(Done { told, ..done })
}

/// The pit a place is at.
const fn pit_of(place: Place) -> Option<RecordId> {
    match place {
        Place::StartPit { pit, .. } => pit,
        Place::KnifeWalk { pit, .. }
        | Place::HoleEnds { pit, .. }
        | Place::Moisture { pit, .. }
        | Place::NextLook { pit, .. }
        | Place::Layers { pit, .. }
        | Place::Roll { pit, .. }
        | Place::RollOf { pit, .. }
        | Place::Remark { pit, .. }
        | Place::Call { pit, .. } => Some(pit),
        _ => None,
    }
}
