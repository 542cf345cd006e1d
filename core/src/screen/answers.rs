//! A field with everything the core answers to it, for the screens that show answers.

use super::World;
use crate::advice::{FieldAdvice, ZoneCall, advise};
use crate::place::FieldMap;
use crate::reading::{FieldReading, read_field};
use crate::record::{FieldNotes, RecordId};

/// A field, read.
pub(super) struct Answers<'a> {
    /// As noted.
    pub notes: &'a FieldNotes,
    /// Laid out.
    pub map: FieldMap,
    /// Pit by pit.
    pub reading: FieldReading,
    /// The calls.
    pub advice: FieldAdvice,
}

impl<'a> Answers<'a> {
    /// Reads a field; `None` where it is gone.
    pub fn of(field: RecordId, world: &'a World) -> Option<Self> {
        let notes = world.notes(field)?;
        let reading = read_field(notes);
        let advice = advise(notes, &reading);
        Some(Self { notes, map: FieldMap::of(&notes.field), reading, advice })
    }

    /// Calls that name a tip depth: to loosen, or once it is dry enough.
    pub fn to_loosen(&self) -> impl Iterator<Item = &ZoneCall> {
        self.advice.zones.iter().filter(|call| call.tip.is_some())
    }
}
