//! Several records in one save: what one tap means is saved as a whole or not at all, and undone as a whole.

use super::cells::{Cell, Kind};
use super::conflicts::{all_heads, children, versions};
use super::kept::Kept;
use super::log::{Batch, Heads};
use super::save::Place;
use super::valid::{self, Check};
use super::value::{ABSENT, encode};
use super::{Saved, Store, StoreError, same_field};
use crate::record::{
    AfterDig, BuriedLine, Field, Layer, Machine, Part, Pass, Photo, Pit, RecordId, Roll, Step,
};

/// A save being put together; see [`Store::save_together`]. What was put in is seen by what follows.
pub struct Saving<'batch, 'store>(&'batch mut Batch<'store>);

impl Store {
    /// One save of several records: all that `edits` puts in, or nothing if it or the disk fails. One
    /// [`Store::undo`] takes back all of it. The order matters only for new records, whose parents come before them.
    ///
    /// # Errors
    /// Whatever `edits` returns, or the disk reports.
    pub fn save_together(
        &mut self,
        now_ms: u64,
        edits: impl FnOnce(&mut Saving) -> Result<(), StoreError>,
    ) -> Result<Saved, StoreError> {
        self.save(now_ms, |batch| edits(&mut Saving(batch)))
    }
}

impl Saving<'_, '_> {
    /// Returns what is noted of a field itself, and the parts and lines marked on it.
    ///
    /// # Errors
    /// As [`Store::save_field`].
    pub fn field(&mut self, field: &Field) -> Result<(), StoreError> {
        valid::field(field)?;
        self.0.save_field(field, None)
    }

    /// A pit with everything in it.
    ///
    /// # Errors
    /// As [`Store::save_pit`].
    pub fn pit(&mut self, field: RecordId, pit: &Pit) -> Result<(), StoreError> {
        valid::pit(pit)?;
        self.require(field, Kind::Field)?;
        self.0.save_pit(pit, field, Place::Last).map(drop)
    }

    /// One step of a pit's knife walk; a new one goes to the end of the walk.
    ///
    /// # Errors
    /// As [`Store::save_step`].
    pub fn step(&mut self, pit: RecordId, step: &Step) -> Result<(), StoreError> {
        self.child(pit, Kind::Pit, step)
    }

    /// One layer of a pit.
    ///
    /// # Errors
    /// As [`Store::save_layer`].
    pub fn layer(&mut self, pit: RecordId, layer: &Layer) -> Result<(), StoreError> {
        self.child(pit, Kind::Pit, layer)
    }

    /// One roll test of a pit, or of the day of a pass.
    ///
    /// # Errors
    /// As [`Store::save_roll`].
    pub fn roll(&mut self, parent: RecordId, roll: &Roll) -> Result<(), StoreError> {
        let kind = Heads::load_marks(&self.0.transaction, parent)?.kind();
        self.child(parent, if kind == Some(Kind::Pass) { Kind::Pass } else { Kind::Pit }, roll)
    }

    /// Returns what is known of a photo of a pit.
    ///
    /// # Errors
    /// As [`Store::save_photo`].
    pub fn photo(&mut self, pit: RecordId, photo: &Photo) -> Result<(), StoreError> {
        self.child(pit, Kind::Pit, photo)
    }

    /// A machine of a field.
    ///
    /// # Errors
    /// As [`Store::save_machine`].
    pub fn machine(&mut self, field: RecordId, machine: &Machine) -> Result<(), StoreError> {
        self.child(field, Kind::Field, machine)
    }

    /// A pass over a field with its rolls and after-digs.
    ///
    /// # Errors
    /// As [`Store::save_pass`].
    pub fn pass(&mut self, field: RecordId, pass: &Pass) -> Result<(), StoreError> {
        valid::pass(pass)?;
        self.require(field, Kind::Field)?;
        self.0.save_pass(pass, field, Place::Last).map(drop)
    }

    /// One after-dig of a pass.
    ///
    /// # Errors
    /// As [`Store::save_after_dig`].
    pub fn after_dig(&mut self, pass: RecordId, dig: &AfterDig) -> Result<(), StoreError> {
        self.child(pass, Kind::Pass, dig)
    }

    /// One marked part of a field.
    ///
    /// # Errors
    /// As [`Store::save_part`].
    pub fn part(&mut self, field: RecordId, part: &Part) -> Result<(), StoreError> {
        self.child(field, Kind::Field, part)
    }

    /// One line of drains or services of a field.
    ///
    /// # Errors
    /// As [`Store::save_line`].
    pub fn line(&mut self, field: RecordId, line: &BuriedLine) -> Result<(), StoreError> {
        self.child(field, Kind::Field, line)
    }

    /// Deletes a record, and with it from sight whatever hangs on it; of a field all records that it is.
    ///
    /// # Errors
    /// As [`Store::delete_record`].
    pub fn delete(&mut self, record: RecordId) -> Result<(), StoreError> {
        let heads = Heads::load(&self.0.transaction, record)?;
        if heads.value(Cell::KIND).is_none() || heads.deleted() {
            return Err(StoreError::RecordNotFound { record, kind: "record" });
        }
        if heads.kind() != Some(Kind::Field) {
            return self.0.delete(&heads);
        }
        for member in same_field::members(&self.0.transaction, record)? {
            let heads = Heads::load(&self.0.transaction, member)?;
            self.0.delete(&heads)?;
        }
        Ok(())
    }

    /// Says that two records are one field.
    ///
    /// # Errors
    /// As [`Store::join`].
    pub fn join(&mut self, one: RecordId, other: RecordId) -> Result<(), StoreError> {
        self.require(one, Kind::Field)?;
        self.require(other, Kind::Field)?;
        let one = same_field::oldest(&self.0.transaction, one)?;
        let other = same_field::oldest(&self.0.transaction, other)?;
        let (older, newer) = (one.min(other), one.max(other));
        if older != newer {
            let heads = Heads::load(&self.0.transaction, newer)?;
            self.0.replace(&heads, Cell::SAME_AS, &Some(older))?;
        }
        Ok(())
    }

    /// Takes a field apart again into the records that were joined.
    ///
    /// # Errors
    /// As [`Store::part`].
    pub fn take_apart(&mut self, field: RecordId) -> Result<(), StoreError> {
        self.require(field, Kind::Field)?;
        for member in same_field::members(&self.0.transaction, field)? {
            let heads = Heads::load(&self.0.transaction, member)?;
            if heads.read::<Option<RecordId>>(Cell::SAME_AS)?.is_some() {
                self.0.replace(&heads, Cell::SAME_AS, &None::<RecordId>)?;
            }
        }
        Ok(())
    }

    /// Settles a conflict: one of its versions stands from now on, in place of all of them.
    ///
    /// # Errors
    /// As [`Store::settle`].
    pub fn settle(&mut self, record: RecordId, cell: Cell, value: &[u8]) -> Result<(), StoreError> {
        let versions = versions(&self.0.transaction, record, cell)?;
        if !versions.iter().any(|version| version.value == value) {
            return Err(StoreError::RecordNotFound { record, kind: "version of this" });
        }
        let heads = Heads::load(&self.0.transaction, record)?;
        self.0.edit(record, cell, &heads.names(cell), value)
    }

    /// Nothing stands in a cell from now on.
    pub(super) fn empty(&mut self, record: RecordId, cell: Cell) -> Result<(), StoreError> {
        let heads = Heads::load(&self.0.transaction, record)?;
        if heads.value(cell).is_none_or(|value| value == ABSENT) {
            return Ok(());
        }
        self.0.edit(record, cell, &heads.names(cell), ABSENT)
    }

    /// Brings a deleted record back, and with it what hangs on it and was deleted in the same save.
    ///
    /// # Errors
    /// As [`Store::bring_back`].
    pub fn bring_back(&mut self, record: RecordId) -> Result<(), StoreError> {
        let heads = Heads::load(&self.0.transaction, record)?;
        if !heads.deleted() {
            return Err(StoreError::RecordNotFound { record, kind: "deleted record" });
        }
        let by = versions(&self.0.transaction, record, Cell::DELETED)?;
        let mut back = vec![record];
        while let Some(record) = back.pop() {
            let heads = Heads::load(&self.0.transaction, record)?;
            self.0.replace(&heads, Cell::DELETED, &None::<bool>)?;
            for child in children(&self.0.transaction, record)? {
                let same = versions(&self.0.transaction, child, Cell::DELETED)? == by;
                back.extend(same.then_some(child));
            }
        }
        Ok(())
    }

    /// Lets a record of [`Store::regretted`] stay deleted, with all that came to it meanwhile.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if it is not there or not deleted.
    pub fn stay_deleted(&mut self, record: RecordId) -> Result<(), StoreError> {
        let heads = Heads::load(&self.0.transaction, record)?;
        if !heads.deleted() {
            return Err(StoreError::RecordNotFound { record, kind: "deleted record" });
        }
        self.0.delete(&heads)
    }

    fn child<R: Kept + Check>(&mut self, parent: RecordId, of: Kind, child: &R) -> Result<(), StoreError> {
        child.check(R::KIND.name())?;
        self.require(parent, of)?;
        self.0.save(child, Some(parent), Place::Last, None).map(drop)
    }

    fn require(&self, record: RecordId, kind: Kind) -> Result<(), StoreError> {
        Heads::load_marks(&self.0.transaction, record)?.require(kind)
    }
}

impl Batch<'_> {
    /// Deletes a record. It names all that is there, so that what others write without knowing of it is told from that.
    pub(super) fn delete(&mut self, heads: &Heads) -> Result<(), StoreError> {
        let mut names = all_heads(&self.transaction, heads.record)?;
        names.extend(heads.names(Cell::DELETED));
        let names: Vec<_> = names.into_iter().collect();
        self.edit(heads.record, Cell::DELETED, &names, &encode(Some(&true.into())))
    }
}
