//! A field on its way through the core: notes in, everything that follows from them out.

use pitface_core::advice::after_dig::{PassAdvice, look_behind};
use pitface_core::advice::readers::{SeveralReaders, several_readers};
use pitface_core::advice::{FieldAdvice, REGRET, advise, changes};
use pitface_core::place::FieldMap;
use pitface_core::reading::{FieldReading, NextLook, Table, next_look, read_field};
use pitface_core::record::{FieldNotes, RecordId};
use std::collections::BTreeSet;

/// A field with its reading and its calls.
pub struct FieldRead {
    /// What was noted, as the store gave it back.
    pub notes: FieldNotes,
    /// The field laid out.
    pub map: FieldMap,
    /// What was read in it, pit by pit.
    pub reading: FieldReading,
    /// The calls.
    pub advice: FieldAdvice,
    /// Holes that several people read.
    pub readers: Option<SeveralReaders>,
    /// What the holes behind the machine say of each pass.
    pub passes: Vec<PassAdvice>,
    /// The next look of each pit.
    pub next_looks: Vec<Option<NextLook>>,
    /// Places of keys in its file that nobody knows; they are kept.
    pub unknown_keys: Vec<String>,
    /// Ids made for this reading alone, which nothing keeps.
    pub passing: BTreeSet<RecordId>,
}

impl FieldRead {
    /// Reads a field and makes the calls.
    pub fn of(notes: FieldNotes, unknown_keys: Vec<String>) -> Self {
        let map = FieldMap::of(&notes.field);
        let reading = read_field(&notes);
        let mut advice = advise(&notes, &reading);
        for call in advice.zones.iter_mut().chain([&mut advice.whole]) {
            call.would_change = changes(&notes, call.zone);
        }
        let next_looks = reading.pits.iter().map(|pit| next_look(pit, &REGRET, Table::standard())).collect();
        let readers = several_readers(&notes, &reading);
        let passes = look_behind(&notes, &reading, &advice);
        let passing = BTreeSet::new();
        Self { notes, map, reading, advice, readers, passes, next_looks, unknown_keys, passing }
    }
}
