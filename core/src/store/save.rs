//! Saving: only the cells that differ from what stands there become edits.

use super::cells::{Cell, Kind};
use super::kept::{Kept, Wanted};
use super::log::{Batch, Heads, next_rank};
use super::valid::{self, Check};
use super::value::{ABSENT, Hangs};
use super::{Saved, Store, StoreError, same_field};
use crate::error::Fault;
use crate::record::{
    AfterDig, BuriedLine, Field, FieldNotes, Layer, Machine, Part, Pass, Person, Photo, Pit, RecordId, Roll,
    Step,
};
use rusqlite::TransactionBehavior;

/// The place a saved record takes among its siblings.
#[derive(Clone, Copy)]
pub(super) enum Place {
    /// Where it is, or last if it is new there.
    Last,
    /// After this rank, or first: the order of a whole list.
    After(Option<u64>),
}

impl Store {
    /// Saves a field with everything in it. A pit, step, ... that the store has and the notes lack is left
    /// as it is: deleting is [`Store::delete_record`].
    ///
    /// # Errors
    /// [`StoreError::InvalidValue`] for a value no record may have, or whatever the disk reports.
    pub fn save_notes(&mut self, notes: &FieldNotes, now_ms: u64) -> Result<Saved, StoreError> {
        valid::notes(notes)?;
        self.save(now_ms, |batch| {
            let unknown = Wanted::new(Cell::NOTES_UNKNOWN_KEYS, &notes.unknown);
            let field = notes.field.id;
            batch.save_field(&notes.field, Some(unknown))?;
            batch.save_list(&notes.pits, field, Batch::save_pit)?;
            batch.save_list(&notes.machines, field, Batch::save_listed)?;
            batch.save_list(&notes.passes, field, Batch::save_pass)
        })
    }

    /// Saves what is noted of a field itself, and the parts and lines marked on it.
    ///
    /// # Errors
    /// As [`Store::save_notes`].
    pub fn save_field(&mut self, field: &Field, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.field(field))
    }

    /// Saves a pit of a field with everything in it.
    ///
    /// # Errors
    /// As [`Store::save_notes`]; [`StoreError::RecordNotFound`] without the field.
    pub fn save_pit(&mut self, field: RecordId, pit: &Pit, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.pit(field, pit))
    }

    /// Saves one step of a pit's knife walk: a tap. A new one goes to the end of the walk.
    ///
    /// # Errors
    /// As [`Store::save_notes`]; [`StoreError::RecordNotFound`] without the pit.
    pub fn save_step(&mut self, pit: RecordId, step: &Step, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.step(pit, step))
    }

    /// Saves one layer of a pit.
    ///
    /// # Errors
    /// As [`Store::save_step`].
    pub fn save_layer(&mut self, pit: RecordId, layer: &Layer, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.layer(pit, layer))
    }

    /// Saves one roll test of a pit, or of the day of a pass.
    ///
    /// # Errors
    /// As [`Store::save_step`].
    pub fn save_roll(&mut self, parent: RecordId, roll: &Roll, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.roll(parent, roll))
    }

    /// Saves what is known of a photo of a pit.
    ///
    /// # Errors
    /// As [`Store::save_step`].
    pub fn save_photo(&mut self, pit: RecordId, photo: &Photo, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.photo(pit, photo))
    }

    /// Saves a machine of a field.
    ///
    /// # Errors
    /// As [`Store::save_pit`].
    pub fn save_machine(
        &mut self,
        field: RecordId,
        machine: &Machine,
        now_ms: u64,
    ) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.machine(field, machine))
    }

    /// Saves a pass over a field with its rolls and after-digs. Its machine may be saved later.
    ///
    /// # Errors
    /// As [`Store::save_pit`].
    pub fn save_pass(&mut self, field: RecordId, pass: &Pass, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.pass(field, pass))
    }

    /// Saves one after-dig of a pass.
    ///
    /// # Errors
    /// As [`Store::save_notes`]; [`StoreError::RecordNotFound`] without the pass.
    pub fn save_after_dig(
        &mut self,
        pass: RecordId,
        dig: &AfterDig,
        now_ms: u64,
    ) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.after_dig(pass, dig))
    }

    /// Saves one marked part of a field.
    ///
    /// # Errors
    /// As [`Store::save_pit`].
    pub fn save_part(&mut self, field: RecordId, part: &Part, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.part(field, part))
    }

    /// Saves one line of drains or services of a field.
    ///
    /// # Errors
    /// As [`Store::save_pit`].
    pub fn save_line(
        &mut self,
        field: RecordId,
        line: &BuriedLine,
        now_ms: u64,
    ) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.line(field, line))
    }

    /// Saves a person.
    ///
    /// # Errors
    /// As [`Store::save_notes`].
    pub fn save_person(&mut self, person: &Person, now_ms: u64) -> Result<Saved, StoreError> {
        person.check("person")?;
        self.save(now_ms, |batch| batch.save(person, None, Place::Last, None).map(drop))
    }

    /// Deletes a record, and with it from sight whatever hangs on it. Its cells stay; saving it again, or
    /// [`Store::undo`], brings it back.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if it is not there or already deleted.
    pub fn delete_record(&mut self, record: RecordId, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.delete(record))
    }

    /// One save: all of `edits` or none of them.
    pub(super) fn save(
        &mut self,
        now_ms: u64,
        edits: impl FnOnce(&mut Batch) -> Result<(), StoreError>,
    ) -> Result<Saved, StoreError> {
        let mut batch = self.batch(now_ms)?;
        edits(&mut batch)?;
        Ok(Saved { changes: batch.commit()? })
    }

    /// Begins a save; dropped without commit, it leaves no trace.
    pub(super) fn batch(&mut self, now_ms: u64) -> Result<Batch<'_>, StoreError> {
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        Batch::begin(transaction, self.device, now_ms)
    }
}

impl Batch<'_> {
    pub(super) fn save_field(&mut self, field: &Field, also: Option<Wanted>) -> Result<(), StoreError> {
        self.save(field, None, Place::Last, also)?;
        self.save_list(&field.parts, field.id, Self::save_listed)?;
        self.save_list(&field.lines, field.id, Self::save_listed)
    }

    pub(super) fn save_pass(
        &mut self,
        pass: &Pass,
        field: RecordId,
        place: Place,
    ) -> Result<u64, StoreError> {
        let rank = self.save(pass, Some(field), place, None)?;
        self.save_list(&pass.rolls, pass.id, Self::save_listed)?;
        self.save_list(&pass.after_digs, pass.id, Self::save_listed)?;
        Ok(rank)
    }

    pub(super) fn save_pit(&mut self, pit: &Pit, field: RecordId, place: Place) -> Result<u64, StoreError> {
        let rank = self.save(pit, Some(field), place, None)?;
        self.save_list(&pit.walk, pit.id, Self::save_listed)?;
        self.save_list(&pit.layers, pit.id, Self::save_listed)?;
        self.save_list(&pit.rolls, pit.id, Self::save_listed)?;
        self.save_list(&pit.photos, pit.id, Self::save_listed)?;
        Ok(rank)
    }

    fn save_listed<R: Kept>(
        &mut self,
        record: &R,
        parent: RecordId,
        place: Place,
    ) -> Result<u64, StoreError> {
        self.save(record, Some(parent), place, None)
    }

    /// Saves a list so that it is read back in this order; ranks that already rise stay.
    fn save_list<R>(
        &mut self,
        list: &[R],
        parent: RecordId,
        save: impl Fn(&mut Self, &R, RecordId, Place) -> Result<u64, StoreError>,
    ) -> Result<(), StoreError> {
        let mut rank = None;
        for record in list {
            rank = Some(save(self, record, parent, Place::After(rank))?);
        }
        Ok(())
    }

    /// Saves the own cells of one record, and tells its rank.
    pub(super) fn save<R: Kept>(
        &mut self,
        record: &R,
        parent: Option<RecordId>,
        place: Place,
        also: Option<Wanted>,
    ) -> Result<u64, StoreError> {
        let heads = Heads::load(&self.transaction, record.id())?;
        match heads.kind() {
            Some(kind) if kind == R::KIND => {}
            None if heads.value(Cell::KIND).is_none() => {
                self.replace(&heads, Cell::KIND, &(R::KIND as u32))?;
            }
            other => {
                let is = other.map_or("something of a newer version", Kind::name);
                let wrong = format!("record {} is already {is}", record.id());
                return Err(Fault::new(R::KIND.name(), wrong, "give each record an id of its own").into());
            }
        }
        let rank = self.hang(&heads, parent, R::KIND, place)?;
        if heads.deleted() {
            self.replace(&heads, Cell::DELETED, &None::<bool>)?;
        }
        let joined = if R::KIND == Kind::Field { self.joined(record.id())? } else { None };
        for wanted in record.cells().into_iter().chain(also) {
            let stands = joined.as_ref().map_or(&heads, |(joined, _)| joined).value(wanted.cell);
            if !wanted.differs(stands) {
                continue;
            }
            if wanted.differs(heads.value(wanted.cell)) {
                self.edit(record.id(), wanted.cell, &heads.names(wanted.cell), &wanted.value)?;
            }
            // What is said no more must not be said by another record that is this field.
            let others = joined.iter().flat_map(|(_, others)| others);
            for other in others.filter(|_| wanted.value == ABSENT) {
                if wanted.differs(other.value(wanted.cell)) {
                    self.edit(other.record, wanted.cell, &other.names(wanted.cell), &wanted.value)?;
                }
            }
        }
        Ok(rank)
    }

    /// The cells of a field that is several records, as they are shown, and the records beside this one; `None` if it is alone.
    fn joined(&self, field: RecordId) -> Result<Option<(Heads, Vec<Heads>)>, StoreError> {
        let members = same_field::members(&self.transaction, field)?;
        if members.len() < 2 {
            return Ok(None);
        }
        let others = members.iter().filter(|member| **member != field);
        let others =
            others.map(|member| Heads::load(&self.transaction, *member)).collect::<Result<_, _>>()?;
        Ok(same_field::heads(&self.transaction, &members)?.map(|heads| (heads, others)))
    }

    /// Returns whether two parents are one.
    fn is_in(&self, one: Option<RecordId>, other: Option<RecordId>) -> Result<bool, StoreError> {
        match (one, other) {
            (Some(one), Some(other)) => same_field::are_one(&self.transaction, one, other),
            _ => Ok(one == other),
        }
    }

    /// Puts a record in the list of its kind under its parent, and tells its rank.
    pub(super) fn hang(
        &mut self,
        heads: &Heads,
        parent: Option<RecordId>,
        list: Kind,
        place: Place,
    ) -> Result<u64, StoreError> {
        let mut now = heads.hangs();
        if let Some(hangs) = now
            && !self.is_in(hangs.parent, parent)?
        {
            now = None;
        }
        // In a field that is several records, each stays where it was noted.
        let parent = now.map_or(parent, |hangs| hangs.parent);
        let rank = match (place, now.map(|hangs| hangs.rank)) {
            (Place::Last, Some(rank)) => return Ok(rank),
            (Place::After(before), Some(rank)) if before.is_none_or(|before| before < rank) => {
                return Ok(rank);
            }
            (Place::Last, None) => next_rank(&self.transaction, parent, list)?,
            (Place::After(before), _) => before.map_or(0, |before| before.saturating_add(1)),
        };
        self.replace(heads, Cell::PARENT, &Hangs { parent, list: list as u32, rank })?;
        Ok(rank)
    }
}
