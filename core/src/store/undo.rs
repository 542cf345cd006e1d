//! Undo: an edit that gives cells back the value they had before a save of this device. Redo is the undoing of an undo.
//!
//! Both look for their save from the last one back, in all that is noted or within one field; a save that a later one took back is passed over.

use super::cells::Cell;
use super::conflicts::all_heads;
use super::last_save::{LastSave, named};
use super::log::{Batch, EditName, Heads, decode_names, record_id, value_of};
use super::regretted::path_of;
use super::value::encode;
use super::{Store, StoreError, Undone, clock, same_field, sources};
use crate::record::RecordId;
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::{BTreeMap, BTreeSet, HashSet};

/// Edits of this device, from the last one back, among which a save of one field is looked for. Our judgement: some thousand taps, and no
/// more than a phone reads between two screens.
const FAR_BACK_EDITS: usize = 20_000;

/// One of the edits to take back.
struct Edit {
    record: RecordId,
    cell: Cell,
    predecessors: Vec<EditName>,
}

/// One save of this device.
struct Save {
    first_sequence: i64,
    clock: i64,
    /// First sequence of the save that this one took back.
    undoes: Option<i64>,
    edits: Vec<Edit>,
}

impl Store {
    /// Takes back the last save of this device that is not taken back yet, and tells what that was; `None` if there
    /// is none. May be called again and again, back to the first save.
    ///
    /// Returns what another device wrote over such a save in the meantime stays.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn undo(&mut self, now_ms: u64) -> Result<Option<Undone>, StoreError> {
        self.undo_in(None, now_ms)
    }

    /// The same within a field: the last save that wrote something into it, whatever came after it in other fields. `None`: in all that is
    /// noted. [`Store::last_save_in`] names that save.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn undo_in(&mut self, field: Option<RecordId>, now_ms: u64) -> Result<Option<Undone>, StoreError> {
        let batch = self.batch(now_ms)?;
        let save = Back::new(&batch.transaction, batch.device, field)?.undoable()?;
        save.map(|save| taken_back(batch, &save)).transpose()
    }

    /// Takes back the last undo within a field (`None`: in all that is noted), as long as nothing was saved there since: what it took back
    /// stands again. `None` if there is no such undo. [`Store::last_undone_in`] names what comes back.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn redo_in(&mut self, field: Option<RecordId>, now_ms: u64) -> Result<Option<Undone>, StoreError> {
        let batch = self.batch(now_ms)?;
        let save = Back::new(&batch.transaction, batch.device, field)?.redoable()?;
        save.map(|save| taken_back(batch, &save)).transpose()
    }

    /// Returns whether this device has a save that can be taken back.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn can_undo(&self) -> Result<bool, StoreError> {
        Ok(Back::new(&self.connection, self.device, None)?.undoable()?.is_some())
    }

    /// How many edits of all devices are here: a number that grows with every save and everything taken in.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn edits_of_all(&self) -> Result<u64, StoreError> {
        const LAST: &str = "SELECT coalesce(sum(last - first + 1), 0) FROM devices";
        let sum: i64 = self.connection.prepare_cached(LAST)?.query_row([], |row| row.get(0))?;
        Ok(sum.cast_unsigned())
    }

    /// Returns what [`Store::undo_in`] would take back.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn last_save_in(&self, field: Option<RecordId>) -> Result<Option<LastSave>, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let save = Back::new(connection, self.device, field)?.undoable()?;
        save.map_or(Ok(None), |save| named(connection, self.device, save.first_sequence))
    }

    /// Returns what [`Store::redo_in`] would bring again.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn last_undone_in(&self, field: Option<RecordId>) -> Result<Option<LastSave>, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let undone = Back::new(connection, self.device, field)?.redoable()?.and_then(|undo| undo.undoes);
        undone.map_or(Ok(None), |first_sequence| named(connection, self.device, first_sequence))
    }
}

/// The way back over the saves of this device.
struct Back<'a> {
    connection: &'a Connection,
    device: i64,
    /// First sequence of the save before which it goes on.
    before: i64,
    /// First sequences of the saves that a later one took back.
    undone: BTreeSet<i64>,
    /// The records that are the field it is of.
    field: Option<Vec<RecordId>>,
    /// Where records hang.
    tops: BTreeMap<RecordId, Option<RecordId>>,
    edits_left: usize,
}

impl<'a> Back<'a> {
    fn new(connection: &'a Connection, device: i64, field: Option<RecordId>) -> Result<Self, StoreError> {
        Ok(Self {
            connection,
            device,
            before: i64::MAX,
            undone: BTreeSet::new(),
            edits_left: if field.is_some() { FAR_BACK_EDITS } else { usize::MAX },
            field: field.map(|field| same_field::members(connection, field)).transpose()?,
            tops: BTreeMap::new(),
        })
    }

    /// The save that can be taken back first. One of which nothing is left to take back is passed over.
    fn undoable(mut self) -> Result<Option<Save>, StoreError> {
        while let Some(save) = self.next()? {
            if save.undoes.is_none() && has_something(self.connection, self.device, &save)? {
                return Ok(Some(save));
            }
        }
        Ok(None)
    }

    /// The undo that can be taken back first; nothing where something else was saved since.
    fn redoable(mut self) -> Result<Option<Save>, StoreError> {
        while let Some(save) = self.next()? {
            let Some(undone) = save.undoes else { return Ok(None) };
            let is_redo = undoes(self.connection, self.device, undone)?.is_some();
            if !is_redo && has_something(self.connection, self.device, &save)? {
                return Ok(Some(save));
            }
        }
        Ok(None)
    }

    /// The next save back that stands and is of the field.
    fn next(&mut self) -> Result<Option<Save>, StoreError> {
        while let Some(save) = Save::before(self.connection, self.device, self.before)? {
            self.before = save.first_sequence;
            self.edits_left = self.edits_left.saturating_sub(save.edits.len());
            if self.edits_left == 0 {
                return Ok(None);
            }
            if self.undone.contains(&save.first_sequence) {
                continue;
            }
            self.undone.extend(save.undoes);
            if self.is_of_the_field(&save)? {
                return Ok(Some(save));
            }
        }
        Ok(None)
    }

    fn is_of_the_field(&mut self, save: &Save) -> Result<bool, StoreError> {
        let Some(field) = &self.field else { return Ok(true) };
        for edit in &save.edits {
            let top = match self.tops.get(&edit.record) {
                Some(top) => *top,
                None => path_of(self.connection, edit.record)?.first().map(|(top, _)| *top),
            };
            self.tops.insert(edit.record, top);
            if top.is_some_and(|top| field.contains(&top)) {
                return Ok(true);
            }
        }
        Ok(false)
    }
}

impl Save {
    /// The last save that began before a sequence.
    fn before(connection: &Connection, device: i64, sequence: i64) -> Result<Option<Self>, StoreError> {
        const EDITS: &str = "SELECT sequence, record, field, predecessors, clock FROM log
            WHERE device = ?1 AND sequence < ?2 ORDER BY sequence DESC";
        let Some((clock, undoes)) = last(connection, device, sequence)? else { return Ok(None) };
        let mut save = Self { first_sequence: sequence, clock, undoes, edits: Vec::new() };
        let mut statement = connection.prepare_cached(EDITS)?;
        let mut rows = statement.query([device, sequence])?;
        while let Some(row) = rows.next()? {
            if row.get::<_, i64>(4)? != clock {
                break;
            }
            save.first_sequence = row.get(0)?;
            save.edits.push(Edit {
                record: record_id(row.get(1)?)?,
                cell: Cell(row.get(2)?),
                predecessors: decode_names(&row.get::<_, Vec<u8>>(3)?)?,
            });
        }
        Ok(Some(save))
    }

    /// The records that it made.
    fn made(&self) -> HashSet<RecordId> {
        let is_making = |edit: &&Edit| edit.cell == Cell::KIND && edit.predecessors.is_empty();
        self.edits.iter().filter(is_making).map(|edit| edit.record).collect()
    }
}

/// Clock of the last save that began before a sequence, and the first sequence of the save that it took back.
fn last(
    connection: &Connection,
    device: i64,
    sequence: i64,
) -> Result<Option<(i64, Option<i64>)>, StoreError> {
    const LAST: &str = "SELECT clock, undoes FROM log WHERE device = ?1 AND sequence < ?2
        ORDER BY sequence DESC LIMIT 1";
    let mut statement = connection.prepare_cached(LAST)?;
    Ok(statement.query_row([device, sequence], |row| Ok((row.get(0)?, row.get(1)?))).optional()?)
}

/// First sequence of the save that the one which began at that sequence took back.
fn undoes(connection: &Connection, device: i64, first_sequence: i64) -> Result<Option<i64>, StoreError> {
    const UNDOES: &str = "SELECT undoes FROM log WHERE device = ?1 AND sequence = ?2";
    let mut statement = connection.prepare_cached(UNDOES)?;
    Ok(statement.query_row([device, first_sequence], |row| row.get(0)).optional()?.flatten())
}

/// Returns whether there is anything left to take back of a save: somebody may have gone on from all of it.
fn has_something(connection: &Connection, device: i64, save: &Save) -> Result<bool, StoreError> {
    if !save.made().is_empty() {
        return Ok(true);
    }
    for edit in &save.edits {
        let is_ours = |name: &EditName| name.0 == device;
        if edit.cell == Cell::DELETED
            || Heads::load(connection, edit.record)?.names(edit.cell).iter().any(is_ours)
        {
            return Ok(true);
        }
    }
    Ok(false)
}

/// Takes back a save, an undo too.
fn taken_back(mut batch: Batch, save: &Save) -> Result<Undone, StoreError> {
    batch.undoing(save.first_sequence);
    let was_read = match save.undoes {
        None => sources::forget(&batch.transaction, batch.device, save.first_sequence)?,
        Some(undone) => {
            sources::remember_again(&batch.transaction, batch.device, undone)?;
            false
        }
    };
    take_back(&mut batch, save, was_read)?;
    Ok(Undone { changes: batch.commit()?, saved_ms: clock::unix_ms(save.clock) })
}

/// `was_read`: the save was the reading of a file, which may have known less than was here.
fn take_back(batch: &mut Batch, save: &Save, was_read: bool) -> Result<(), StoreError> {
    let made = save.made();
    let mut seen = HashSet::new();
    for edit in save.edits.iter().rev() {
        // A cell that was written twice in one save had its earlier value before the first of the two.
        if !seen.insert((edit.record, edit.cell)) {
            continue;
        }
        // A record that the save made is deleted as a whole; its cells stay for whoever wrote to it meanwhile.
        let (cell, value) = match (made.contains(&edit.record), edit.cell) {
            (true, Cell::KIND) => (Cell::DELETED, encode(Some(&true.into()))),
            (true, _) => continue,
            (false, cell) => (cell, value_of(&batch.transaction, edit.record, cell, &edit.predecessors)?),
        };
        // Only over what this device wrote: with no head of ours left, somebody has gone on from here.
        let heads = Heads::load(&batch.transaction, edit.record)?;
        let (ours, others): (Vec<_>, Vec<_>) =
            heads.names(cell).into_iter().partition(|name| name.0 == batch.device);
        if was_read
            && !ours.is_empty()
            && cell != Cell::DELETED
            && wrote_over(&batch.transaction, edit, &others)?
        {
            // Somebody else wrote in place of the same value as the save did: what they wrote is left.
            let theirs = value_of(&batch.transaction, edit.record, cell, &others)?;
            batch.replace_value(&heads, cell, &theirs)?;
        } else if cell == Cell::DELETED || !ours.is_empty() {
            let mut named = ours;
            if made.contains(&edit.record) {
                named.extend(all_heads(&batch.transaction, edit.record)?);
            }
            batch.edit(edit.record, cell, &named, &value)?;
            if !others.is_empty() {
                batch.show_latest(edit.record, cell)?;
            }
        }
    }
    Ok(())
}

/// Returns whether heads of others stand in the place of the value that an edit replaced.
fn wrote_over(connection: &Connection, edit: &Edit, others: &[EditName]) -> Result<bool, StoreError> {
    const EDIT: &str =
        "SELECT predecessors FROM log WHERE device = ?1 AND sequence = ?2 AND record = ?3 AND field = ?4";
    let (mut next, mut seen) = (others.to_vec(), HashSet::new());
    while let Some(name) = next.pop() {
        if edit.predecessors.contains(&name) {
            return Ok(true);
        }
        if seen.insert(name) {
            let key = params![name.0, name.1, edit.record.as_bytes(), edit.cell.number()];
            let mut statement = connection.prepare_cached(EDIT)?;
            let before: Option<Vec<u8>> = statement.query_row(key, |row| row.get(0)).optional()?;
            next.extend(before.map(|names| decode_names(&names)).transpose()?.into_iter().flatten());
        }
    }
    Ok(false)
}
