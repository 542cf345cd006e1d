//! Redacting: a value is taken out of the log for privacy, here and, with the next file, wherever it was carried. That it was written, when and by
//! whom stays, and so does its hash, so that the chain still holds. (A hash hides a name no better than a list of all names lets it.)

use super::cells::Cell;
use super::lines::{Lines, content, to_log};
use super::log::show_latest;
use super::looking::{as_written, look};
use super::sealing::Sealing;
use super::value::ABSENT;
use super::{Sealer, Store, StoreError};
use crate::merge::{Chain, Content, Edit, Header};
use crate::record::RecordId;
use rusqlite::{Connection, TransactionBehavior, params};
use std::collections::BTreeSet;

impl Store {
    /// Takes all values out of the log that this device, or an earlier one of this store, ever put into a cell. What others put there they
    /// have to redact themselves. Tells how many values that were.
    ///
    /// # Errors
    /// [`StoreError::NoKey`] if the key cannot be used; whatever the disk reports. Nothing was changed then.
    pub fn redact(&mut self, record: RecordId, cell: Cell, sealer: &Sealer) -> Result<u64, StoreError> {
        const OWN: &str = "SELECT device, sequence, value FROM log JOIN devices ON number = device
            WHERE own = 1 AND record = ?1 AND field = ?2";
        const PARTS: &str = "SELECT first, last, before, after FROM parts
            WHERE kind = 1 AND line = ?1 AND first <= ?2 AND last >= ?2";
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let written: Vec<(i64, i64, Vec<u8>)> = transaction
            .prepare(OWN)?
            .query_map(params![record.as_bytes(), cell.0], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
            .collect::<Result<_, _>>()?;
        let (mut count, mut opened) = (0, BTreeSet::new());
        for (line, sequence, value) in written {
            if value == ABSENT || matches!(content(value.clone()), Content::Redacted(_)) {
                continue;
            }
            take_out(&transaction, line, sequence, &Content::Value(value))?;
            let mut parts = transaction.prepare_cached(PARTS)?;
            let parts = parts.query_map([line, sequence], |row| {
                Ok((line, row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
            })?;
            opened.extend(parts.collect::<Result<Vec<(i64, i64, i64, _, _)>, _>>()?);
            count += 1;
        }
        let lines = Lines::load(&transaction)?;
        let sealing = Sealing { connection: &transaction, lines: &lines, sealer };
        look(&transaction, &lines)?;
        for (line, first, last, before, after) in opened {
            const OLD: &str = "DELETE FROM parts WHERE kind = 1 AND line = ?1 AND first = ?2 AND last = ?3";
            let (place, from, to) = (lines.place(line)?, first.cast_unsigned(), last.cast_unsigned());
            // It is signed again.
            as_written(&transaction, &lines, place, from - 1, Chain(before), to, Chain(after))?;
            transaction.execute(OLD, [line, first, last])?;
            // What an earlier cut had seen is said again, so that nothing of it is lost.
            let seen = sealing.seen()?;
            sealing.write(place, from, to, &seen, true)?;
        }
        transaction.commit()?;
        empty_write_ahead_log(&self.connection)?;
        Ok(count)
    }
}

/// Moves all into the file itself, so that what was there before is not found beside it.
pub(super) fn empty_write_ahead_log(connection: &Connection) -> Result<(), StoreError> {
    Ok(connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()))?)
}

/// Values of edits that are here already, and of which a bundle comes again.
pub(super) struct Redacted<'a> {
    pub(super) connection: &'a Connection,
    pub(super) hash: [u8; 32],
    pub(super) header: &'a Header,
    /// The row of the line that an edit is in.
    pub(super) row: &'a dyn Fn(u64) -> i64,
}

impl Redacted<'_> {
    /// Returns whether the bundle may bring back values of its edits before a sequence: it is of the device itself, and they were taken out.
    pub(super) fn may_come_back(&self, before: u64) -> Result<bool, StoreError> {
        const SQL: &str = "SELECT 1 FROM log JOIN devices ON number = device WHERE base = ?1 AND own = 0
            AND sequence >= ?2 AND sequence < ?3 AND length(value) = 33 AND substr(value, 1, 1) = x'ff'";
        let Header { device, first, .. } = *self.header;
        let range = params![device.0, first.cast_signed(), before.cast_signed()];
        Ok(self.header.signer() == device && self.connection.prepare_cached(SQL)?.exists(range)?)
    }

    /// Takes out of the log what came redacted, where it still stands, and brings back what somebody else took out in the device's name:
    /// it does not matter which of the two came first.
    pub(super) fn follow(&self, sequence: u64, edit: &Edit) -> Result<(), StoreError> {
        const STANDS: &str = "SELECT value FROM log WHERE device = ?1 AND sequence = ?2";
        let (row, at) = ((self.row)(sequence), sequence.cast_signed());
        let stands: Vec<u8> =
            self.connection.prepare_cached(STANDS)?.query_row([row, at], |row| row.get(0))?;
        let by_itself = self.header.signer() == self.header.device;
        match (content(stands), &edit.content) {
            (Content::Value(value), Content::Redacted(_)) if by_itself || !self.said_itself(at, false)? => {
                take_out(self.connection, row, at, &Content::Value(value))
            }
            (Content::Redacted(hash), Content::Value(value))
                if by_itself && edit.content.hash() == hash && !self.said_itself(at, true)? =>
            {
                bring_back(self.connection, row, at, value)
            }
            _ => Ok(()),
        }
    }

    /// Returns whether another bundle with an edit is here that the device signed itself; `redacts`: one from which it took values.
    fn said_itself(&self, sequence: i64, redacts: bool) -> Result<bool, StoreError> {
        const SQL: &str =
            "SELECT 1 FROM parts JOIN devices ON number = line WHERE kind = 1 AND base = ?1 AND signer = ?1
            AND hash <> ?2 AND parts.first <= ?3 AND parts.last >= ?3 AND (redacts = 1 OR ?4 = 0)";
        let key = params![self.header.device.0, self.hash, sequence, redacts];
        Ok(self.connection.prepare_cached(SQL)?.exists(key)?)
    }
}

/// Leaves only the hash of a value in log and cells.
fn take_out(connection: &Connection, line: i64, sequence: i64, value: &Content) -> Result<(), StoreError> {
    const LOG: &str = "UPDATE log SET value = ?3 WHERE device = ?1 AND sequence = ?2 AND value <> ?3";
    let left = to_log(Content::Redacted(value.hash()));
    connection.prepare_cached(LOG)?.execute(params![line, sequence, left])?;
    in_cells(connection, line, sequence, &left)
}

/// Puts a value in the place of its hash again. The log lets no row be changed so; it has to be written anew.
fn bring_back(connection: &Connection, line: i64, sequence: i64, value: &[u8]) -> Result<(), StoreError> {
    const LOG: &str = "REPLACE INTO log (device, sequence, clock, record, field, predecessors, value, undoes)
        SELECT device, sequence, clock, record, field, predecessors, ?3, undoes FROM log
        WHERE device = ?1 AND sequence = ?2";
    connection.prepare_cached(LOG)?.execute(params![line, sequence, value])?;
    in_cells(connection, line, sequence, value)
}

/// The same among the cells, if it stands there; of equal clocks the value decides which is shown.
fn in_cells(connection: &Connection, line: i64, sequence: i64, value: &[u8]) -> Result<(), StoreError> {
    const CELL: &str = "SELECT record, field FROM log WHERE device = ?1 AND sequence = ?2";
    const CELLS: &str = "UPDATE cells SET value = ?5
        WHERE record = ?1 AND field = ?2 AND device = ?3 AND sequence = ?4";
    let (record, field): ([u8; 16], u16) =
        connection.prepare_cached(CELL)?.query_row([line, sequence], |row| Ok((row.get(0)?, row.get(1)?)))?;
    let changed = connection.prepare_cached(CELLS)?.execute(params![record, field, line, sequence, value])?;
    if changed > 0 { show_latest(connection, &record, field) } else { Ok(()) }
}
