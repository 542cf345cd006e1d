//! What undo and redo would do where one is, looked up again once something was saved or one is in another field.

use pitface_core::record::RecordId;
use pitface_core::store::{LastSave, Store, StoreError};

/// What was last found, and for what.
#[derive(Default)]
pub(crate) struct Undoing {
    /// The field, and how many edits this device had made.
    of: Option<(Option<RecordId>, u64)>,
    undo: Option<LastSave>,
    redo: Option<LastSave>,
}

impl Undoing {
    /// Looks up what can be taken back in a field; outside of fields, in all that is noted.
    pub fn load(&mut self, store: &Store, field: Option<RecordId>) -> Result<(), StoreError> {
        let of = Some((field, store.edits_of_all()?));
        if self.of != of {
            self.undo = store.last_save_in(field)?;
            self.redo = store.last_undone_in(field)?;
            self.of = of;
        }
        Ok(())
    }

    pub fn undo(&self) -> Option<&LastSave> {
        self.undo.as_ref()
    }

    pub fn redo(&self) -> Option<&LastSave> {
        self.redo.as_ref()
    }
}
