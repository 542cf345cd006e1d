//! The notes as last loaded: a tap that saves nothing reads nothing.

use crate::PitfaceError;
use pitface_core::record::{FieldNotes, RecordId};
use pitface_core::screen::{Edit, Place, example};
use pitface_core::store::{Store, StoreError};
use std::collections::BTreeMap;

/// Fields with everything noted.
#[derive(Default)]
pub(crate) struct Notes {
    fields: Vec<FieldNotes>,
    /// The fields are all there are, in the order of the list.
    all: bool,
    /// Pits of these fields that stand otherwise in the store: the other 49 of a field need not be read again for one tap.
    stale: Vec<RecordId>,
}

impl Notes {
    /// Loads what a place shows and is not loaded yet. Tells whether the field of the place is there.
    pub fn load(&mut self, store: &Store, place: Place) -> Result<bool, PitfaceError> {
        if example::is_in(place) {
            return Ok(true);
        }
        for id in std::mem::take(&mut self.stale) {
            let mut pits = self.fields.iter_mut().flat_map(|notes| &mut notes.pits);
            if let Some(pit) = pits.find(|pit| pit.id == id) {
                match store.load_pit(id) {
                    Ok(now) => *pit = now,
                    // Whatever it is, reading the whole field tells it.
                    Err(_) => self.changed(None),
                }
            }
        }
        if shows_all(place) && !self.all {
            self.load_all(store)?;
        }
        match place.field() {
            Some(field) if self.fields.iter().any(|notes| notes.field.id == field) => {}
            Some(_) if self.all => return Ok(false),
            Some(field) => match store.load_notes(field) {
                // It is one field with an older record, under which it is shown.
                Ok(notes) if notes.field.id != field => return Ok(false),
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

    /// Returns what a place shows: all fields, or the open one.
    pub fn of(&self, place: Place) -> &[FieldNotes] {
        if example::is_in(place) {
            return example::fields();
        }
        match place.field() {
            _ if shows_all(place) => &self.fields,
            Some(field) => {
                let open = self.fields.iter().find(|notes| notes.field.id == field);
                open.map(std::slice::from_ref).unwrap_or_default()
            }
            None => &[],
        }
    }

    /// What an edit at a place changed has to be loaded again.
    pub fn edited(&mut self, edit: &Edit, place: Place) {
        let (pit, field) = match edit {
            Edit::Step { pit, .. } | Edit::Layer { pit, .. } | Edit::Photo { pit, .. } => (Some(*pit), None),
            Edit::Roll { parent, .. } => (Some(*parent), None),
            Edit::Pit { field, pit } => (Some(pit.id), Some(*field)),
            Edit::Field(field) => (None, Some(field.id)),
            Edit::Machine { field, .. } | Edit::Pass { field, .. } => (None, Some(*field)),
            Edit::AfterDig { .. } | Edit::Delete { .. } | Edit::Undo | Edit::Redo => (None, None),
            // Of any field, from a screen that is of none.
            Edit::Settle { .. } | Edit::BringBack { .. } | Edit::StayDeleted { .. } | Edit::Join { .. } => {
                return self.changed(None);
            }
        };
        let is_loaded =
            |id: &RecordId| self.fields.iter().any(|notes| notes.pits.iter().any(|pit| pit.id == *id));
        match pit.filter(is_loaded) {
            Some(pit) if !self.stale.contains(&pit) => self.stale.push(pit),
            Some(_) => {}
            None => self.changed(field.or(place.field())),
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
    matches!(place, Place::Field { .. } | Place::Call { .. } | Place::Photos { .. } | Place::Photo { .. })
}

/// The list of fields does, a machine may be taken over from another field, and two may be one.
const fn shows_all(place: Place) -> bool {
    matches!(
        place,
        Place::Fields | Place::FoundFields { .. } | Place::Machine { .. } | Place::OneField { .. }
    )
}
