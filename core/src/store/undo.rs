//! Undo: an edit that gives cells back the value they had before the last save of this device.

use super::cells::Cell;
use super::conflicts::all_heads;
use super::log::{Batch, EditName, Heads, decode_names, record_id, value_of};
use super::value::encode;
use super::{Store, StoreError, Undone, clock, sources};
use crate::record::RecordId;
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::HashSet;

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
    /// What another device wrote over such a save in the meantime stays.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn undo(&mut self, now_ms: u64) -> Result<Option<Undone>, StoreError> {
        let mut batch = self.batch(now_ms)?;
        let mut before = i64::MAX;
        while let Some(save) = Save::before(&batch.transaction, batch.device, before)? {
            if let Some(first_sequence) = save.undoes {
                before = first_sequence;
                continue;
            }
            before = save.first_sequence;
            batch.undoing(save.first_sequence);
            let was_read = sources::forget(&batch.transaction, batch.device, save.first_sequence)?;
            take_back(&mut batch, &save, was_read)?;
            if !batch.changes.is_empty() {
                let changes = batch.commit()?;
                return Ok(Some(Undone { changes, saved_ms: clock::unix_ms(save.clock) }));
            }
        }
        Ok(None)
    }

    /// Whether this device has a save that is not taken back. Should another device have written over all of it,
    /// [`Store::undo`] may still find nothing to do.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn can_undo(&self) -> Result<bool, StoreError> {
        let mut before = i64::MAX;
        while let Some((_, undoes)) = last(&self.connection, self.device, before)? {
            match undoes {
                Some(first_sequence) => before = first_sequence,
                None => return Ok(true),
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

/// `was_read`: the save was the reading of a file, which may have known less than was here.
fn take_back(batch: &mut Batch, save: &Save, was_read: bool) -> Result<(), StoreError> {
    let is_making = |edit: &&Edit| edit.cell == Cell::KIND && edit.predecessors.is_empty();
    let made: HashSet<_> = save.edits.iter().filter(is_making).map(|edit| edit.record).collect();
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

/// Whether heads of others stand in the place of the value that an edit replaced.
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
