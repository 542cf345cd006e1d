//! Redacting: a value is taken out of the log for privacy, here and, with the next file, wherever it was carried. That it was written, when and by
//! whom stays, and so does its hash, so that the chain still holds. (A hash hides a name no better than a list of all names lets it.)

use super::cells::Cell;
use super::lines::{Lines, content, to_log};
use super::sealing::Sealing;
use super::value::ABSENT;
use super::{Sealer, Store, StoreError};
use crate::merge::{Content, Edit};
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
        const PARTS: &str = "SELECT first, last FROM parts
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
            let parts = parts.query_map([line, sequence], |row| Ok((line, row.get(0)?, row.get(1)?)))?;
            opened.extend(parts.collect::<Result<Vec<(i64, i64, i64)>, _>>()?);
            count += 1;
        }
        let lines = Lines::load(&transaction)?;
        let sealing = Sealing { connection: &transaction, lines: &lines, sealer };
        for (line, first, last) in opened {
            const OLD: &str = "DELETE FROM parts WHERE kind = 1 AND line = ?1 AND first = ?2 AND last = ?3";
            transaction.execute(OLD, [line, first, last])?;
            // What an earlier cut had seen is said again, so that nothing of it is lost.
            let seen = sealing.seen()?;
            sealing.write(lines.place(line)?, first.cast_unsigned(), last.cast_unsigned(), &seen, true)?;
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

/// Takes out of the log what came redacted, where it still stands.
pub(super) fn follow(
    connection: &Connection,
    line: impl Fn(u64) -> i64,
    edits: &[(u64, Edit)],
) -> Result<(), StoreError> {
    const STANDS: &str = "SELECT value FROM log WHERE device = ?1 AND sequence = ?2";
    for (sequence, edit) in edits {
        let Content::Redacted(_) = edit.content else { continue };
        let name = (line(*sequence), sequence.cast_signed());
        let value: Vec<u8> =
            connection.prepare_cached(STANDS)?.query_row([name.0, name.1], |row| row.get(0))?;
        take_out(connection, name.0, name.1, &content(value))?;
    }
    Ok(())
}

/// Leaves only the hash of a value in log and cells.
fn take_out(connection: &Connection, line: i64, sequence: i64, value: &Content) -> Result<(), StoreError> {
    const LOG: &str = "UPDATE log SET value = ?3 WHERE device = ?1 AND sequence = ?2 AND value <> ?3";
    const CELLS: &str = "UPDATE cells SET value = ?3 WHERE device = ?1 AND sequence = ?2
        AND (record, field) = (SELECT record, field FROM log WHERE device = ?1 AND sequence = ?2)";
    let left = to_log(Content::Redacted(value.hash()));
    connection.prepare_cached(LOG)?.execute(params![line, sequence, left])?;
    connection.prepare_cached(CELLS)?.execute(params![line, sequence, left])?;
    Ok(())
}
