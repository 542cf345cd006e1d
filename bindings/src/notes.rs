//! The notes as last loaded: a tap that saves nothing reads nothing.

use crate::PitfaceError;
use pitface_core::record::{FieldNotes, RecordId};
use pitface_core::screen::Place;
use pitface_core::store::{Store, StoreError};
use std::collections::BTreeMap;

/// Fields with everything noted.
#[derive(Default)]
pub(crate) struct Notes {
    fields: Vec<FieldNotes>,
    /// The fields are all there are, in the order of the list.
    all: bool,
}

impl Notes {
    /// Loads what a place shows and is not loaded yet. Tells whether the field of the place is there.
    pub fn load(&mut self, store: &Store, place: Place) -> Result<bool, PitfaceError> {
        if shows_all(place) && !self.all {
            self.load_all(store)?;
        }
        match place.field() {
            Some(field) if self.fields.iter().any(|notes| notes.field.id == field) => {}
            Some(_) if self.all => return Ok(false),
            Some(field) => match store.load_notes(field) {
                Ok(notes) => self.fields.push(notes),
                Err(StoreError::RecordNotFound { .. }) => return Ok(false),
                Err(error) => return Err(error.into()),
            },
            None => {}
        }
        Ok(true)
    }

    fn load_all(&mut self, store: &Store) -> Result<(), PitfaceError> {
        let listed = store.fields()?;
        let loaded = std::mem::take(&mut self.fields);
        let mut loaded: BTreeMap<RecordId, FieldNotes> =
            loaded.into_iter().map(|notes| (notes.field.id, notes)).collect();
        for field in listed {
            let notes = loaded.remove(&field.id).map_or_else(|| store.load_notes(field.id), Ok)?;
            self.fields.push(notes);
        }
        self.all = true;
        Ok(())
    }

    /// What a place shows: all fields, or the open one.
    pub fn of(&self, place: Place) -> &[FieldNotes] {
        match place.field() {
            _ if shows_all(place) => &self.fields,
            Some(field) => {
                let open = self.fields.iter().find(|notes| notes.field.id == field);
                open.map(std::slice::from_ref).unwrap_or_default()
            }
            None => &[],
        }
    }

    /// A field was changed, made or deleted; `None`: any of them.
    pub fn changed(&mut self, field: Option<RecordId>) {
        self.all = false;
        match field {
            Some(field) => self.fields.retain(|notes| notes.field.id != field),
            None => self.fields.clear(),
        }
    }
}

/// The screens on which it is said which pictures are not on this phone.
pub(crate) const fn shows_photos(place: Place) -> bool {
    matches!(place, Place::Field { .. } | Place::Call { .. } | Place::Photos { .. })
}

/// The list of fields does, and a machine may be taken over from another field.
const fn shows_all(place: Place) -> bool {
    matches!(place, Place::Fields | Place::Machine { .. })
}
