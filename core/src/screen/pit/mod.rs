//! A pit from its place to its call.

pub(super) mod call;
mod given;
pub(super) mod layers;
mod left;
pub(super) mod look;
pub(super) mod roll;
mod skipped;
pub(super) mod start;
mod told;
pub(super) mod walk;

pub use skipped::Skipped;

use super::bar::{empty, gone};
use super::drawn::low_face_of;
use super::{Act, Done, Draft, Edit, Known, Place, ScreenKind, World};
use crate::advice::TipDepth;
use crate::answer::FieldAnswer;
use crate::error::Fault;
use crate::reading::{Clue, PitReading};
use crate::record::{ComesAway, FaceMoisture, Pit, PlaceKind, RecordId, Resistance, RollOutcome};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

pub(super) use left::where_left;

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
    /// How the soil of the next step comes away.
    Away(ComesAway),
    /// It comes away as in the step above.
    Same,
    /// What the knife meets from the next step on.
    Knife(Resistance),
    /// The last step was the bottom of the hole.
    Bottom,
    /// Something seen in a layer, or known of the field; `None` = not looked.
    Look { top_mm: u32, bottom_mm: u32, clue: Clue, answer: Option<u8> },
    /// When the field was last loosened or driven on: so many years before the pit's, three for longer ago.
    Since { clue: Clue, years: u8 },
    /// Not to be asked again on this visit.
    Skip { top_mm: u32, clue: Clue },
    /// Moves a boundary between two layers.
    Nudge { at_mm: u32, by_mm: i32 },
    /// What soil did when it was rolled; from the surface where no depth is given.
    Roll { depth_mm: Option<u32>, roll: RollOutcome },
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

    /// A screen of this pit.
    pub fn screen(&self, place: Place, kind: ScreenKind, what: &str, world: &World) -> Draft {
        let title = world.words.pit_screen_title(self.number(), self.pit.place, what);
        Draft { awake: true, ..empty(place, kind, title, world) }
    }

    /// Its face as far as it is noted; nothing where nothing is.
    pub fn face(&self, tip: Option<TipDepth>, beside_reference: bool, world: &World) -> Option<Known> {
        let begun = !self.reading().layers.is_empty();
        let drawn = || low_face_of(world.words, &self.answer, self.index, tip, beside_reference);
        begun.then(drawn).flatten().map(Known::Drawing)
    }
}

pub(super) fn tap(
    place: Place,
    act: &PitAct,
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
    let done = match *act {
        PitAct::Begin(kind) => changed(Pit { place: kind, ..pit.clone() }, place),
        PitAct::TakePosition => start::take_position(field, pit, place, world),
        PitAct::HoleDug => start::hole_dug(field, pit, None, world),
        PitAct::Dug(face) => start::hole_dug(field, pit, Some(face), world),
        PitAct::Face(face) => changed(Pit { face: Some(face), ..pit.clone() }, place),
        PitAct::Away(away) => walk::step(field, pit, Some(away), place, new_id),
        PitAct::Same => walk::step(field, pit, None, place, new_id),
        PitAct::Knife(resistance) => walk::knife(field, pit, resistance, place, new_id),
        PitAct::Bottom => walk::bottom(notes, pit),
        PitAct::Look { top_mm, bottom_mm, clue, answer } => {
            let answer = answer.map(usize::from);
            look::answered(notes, pit, ((top_mm, bottom_mm), clue, answer), place, new_id)
        }
        PitAct::Since { clue, years } => look::since(notes, pit, clue, years, place, world),
        PitAct::Skip { top_mm, clue } => look::skip(notes, pit, (top_mm, clue), place),
        PitAct::Nudge { at_mm, by_mm } => layers::nudge(notes, pit, (at_mm, by_mm), place, new_id),
        PitAct::Roll { depth_mm, roll } => roll::rolled(notes, pit, (depth_mm, roll), world, new_id),
    };
    let told = told::told(act, &done, (notes, pit), world);
    Ok(Done { told, ..done })
}

/// The pit a place is at.
const fn pit_of(place: Place) -> Option<RecordId> {
    match place {
        Place::StartPit { pit, .. } => pit,
        Place::KnifeWalk { pit, .. }
        | Place::NextLook { pit, .. }
        | Place::Layers { pit, .. }
        | Place::Roll { pit, .. }
        | Place::Call { pit, .. } => Some(pit),
        _ => None,
    }
}
