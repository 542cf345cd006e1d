//! What a tap saves: all of it in one save, or nothing.

use crate::held::Held;
use crate::made::now_ms;
use pitface_core::screen::Edit;
use pitface_core::store::{Saving, StoreError, Undone};
use pitface_core::words::NotSaved;

/// What a save came to.
#[derive(Default)]
pub(crate) struct Kept {
    /// It is on the disk.
    pub saved: bool,
    /// Something is now other than it was.
    pub changed: bool,
    pub told: String,
}

impl Held {
    /// All edits of a tap in one save; an undo or a redo among them parts it.
    pub fn save(&mut self, edits: &[Edit]) -> Result<Kept, StoreError> {
        let mut kept = Kept::default();
        let is_apart = |edit: &Edit| matches!(edit, Edit::Undo | Edit::Redo);
        for edits in edits.chunk_by(|one, next| !is_apart(one) && !is_apart(next)) {
            match edits {
                [Edit::Undo] => self.undo(&mut kept)?,
                [Edit::Redo] => self.redo(&mut kept)?,
                _ => self.put_in(edits, &mut kept)?,
            }
        }
        Ok(kept)
    }

    fn put_in(&mut self, edits: &[Edit], kept: &mut Kept) -> Result<(), StoreError> {
        let saved = self
            .store
            .save_together(now_ms(), |saving| edits.iter().try_for_each(|edit| put_in(saving, edit)))?;
        kept.saved = true;
        kept.changed |= !saved.changes.is_empty();
        for edit in edits {
            self.notes.edited(edit, self.place);
        }
        self.saved_something();
        Ok(())
    }

    fn undo(&mut self, kept: &mut Kept) -> Result<(), StoreError> {
        let field = self.place.field();
        let save = self.store.last_save_in(field)?;
        let undone = self.store.undo_in(field, now_ms())?;
        kept.told = self.words.undone(save.as_ref().filter(|_| undone.is_some()));
        self.taken_back(undone, kept);
        Ok(())
    }

    fn redo(&mut self, kept: &mut Kept) -> Result<(), StoreError> {
        let field = self.place.field();
        let save = self.store.last_undone_in(field)?;
        let undone = self.store.redo_in(field, now_ms())?;
        kept.told = self.words.redone(save.as_ref().filter(|_| undone.is_some()));
        self.taken_back(undone, kept);
        Ok(())
    }

    fn taken_back(&mut self, undone: Option<Undone>, kept: &mut Kept) {
        if undone.is_some() {
            (kept.saved, kept.changed) = (true, true);
            self.notes.changed(None);
            self.partners_stale();
        }
    }
}

fn put_in(saving: &mut Saving, edit: &Edit) -> Result<(), StoreError> {
    match edit {
        Edit::Field(field) => saving.field(field),
        Edit::Pit { field, pit } => saving.pit(*field, pit),
        Edit::Step { pit, step } => saving.step(*pit, step),
        Edit::Layer { pit, layer } => saving.layer(*pit, layer),
        Edit::Roll { parent, roll } => saving.roll(*parent, roll),
        Edit::Photo { pit, photo } => saving.photo(*pit, photo),
        Edit::Machine { field, machine } => saving.machine(*field, machine),
        Edit::Pass { field, pass } => saving.pass(*field, pass),
        Edit::AfterDig { pass, dig } => saving.after_dig(*pass, dig),
        Edit::Delete { record } => saving.delete(*record),
        Edit::Settle { record, cell, value } => saving.settle(*record, *cell, value),
        Edit::BringBack { record } => saving.bring_back(*record),
        Edit::StayDeleted { record } => saving.stay_deleted(*record),
        Edit::Join { one, other } => saving.join(*one, *other),
        // Parted off before.
        Edit::Undo | Edit::Redo => Ok(()),
    }
}

/// Why something was not saved, as far as the person with the phone can do something about it.
pub(crate) fn why(error: &StoreError) -> NotSaved {
    match error {
        StoreError::DiskFull => NotSaved::Full,
        StoreError::ReadOnly => NotSaved::Locked,
        StoreError::RecordNotFound { .. } => NotSaved::Gone,
        StoreError::InvalidValue(_) => NotSaved::Refused,
        _ => NotSaved::Failed,
    }
}
