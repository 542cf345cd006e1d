//! A field with what the core answers to it, and where it came from.

use pitface_core::answer::FieldAnswer;
use pitface_core::record::{FieldNotes, RecordId};
use std::collections::BTreeSet;
use std::ops::Deref;
use std::path::PathBuf;

/// Where a field came from.
pub struct Origin {
    /// The file or store, as it is called in what is said of it.
    pub called: PathBuf,
    /// What files made of the field are named after.
    pub stem: String,
}

/// A field's answer with what is known of its file.
pub struct FieldRead {
    /// What was noted, as the store gave it back, with all that follows.
    pub answer: FieldAnswer,
    /// Where it came from.
    pub origin: Origin,
    /// Places of keys in its file that nobody knows; they are kept.
    pub unknown_keys: Vec<String>,
    /// Ids made for this reading alone, which nothing keeps.
    pub passing: BTreeSet<RecordId>,
}

impl FieldRead {
    /// Reads a field and makes the calls.
    pub fn of(notes: FieldNotes, origin: Origin, unknown_keys: Vec<String>) -> Self {
        Self { answer: FieldAnswer::of(notes, None), origin, unknown_keys, passing: BTreeSet::new() }
    }

    /// An id, if something keeps it: ids made for this reading alone are of no use to anybody.
    pub fn lasting(&self, id: RecordId) -> Option<RecordId> {
        (!self.passing.contains(&id)).then_some(id)
    }
}

/// Commands ask of a field what follows from it far more often than where it came from.
impl Deref for FieldRead {
    type Target = FieldAnswer;

    fn deref(&self) -> &FieldAnswer {
        &self.answer
    }
}
