//! Where notes files lie that were read here, and what each said last. It stays on this device: no bundle has it.

use super::StoreError;
use super::cells::Kind;
use super::log::{Heads, record_id};
use super::said::{Digests, from_bytes, to_bytes};
use crate::record::RecordId;
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::BTreeMap;

/// A record that a file brought.
pub(super) struct Known {
    pub(super) kind: Kind,
    pub(super) parent: Option<RecordId>,
    pub(super) rank: u64,
    /// What the file said of it last.
    pub(super) cells: Digests,
}

/// What a file brought so far; nothing, if it was never read.
#[derive(Default)]
pub(super) struct Base {
    /// The field that it is of.
    pub(super) field: Option<RecordId>,
    pub(super) records: BTreeMap<RecordId, Known>,
}

impl Base {
    /// Returns what is remembered of a source.
    pub(super) fn load(connection: &Connection, source: &str) -> Result<Self, StoreError> {
        const FIELD: &str = "SELECT field FROM readings WHERE source = ?1 AND coalesce(first, 1) > 0
            ORDER BY number DESC LIMIT 1";
        // With max(), SQLite takes the other columns from the row that has it (sqlite.org/lang_select.html, 2.5).
        const SAID: &str = "SELECT record, cells, max(number) FROM said JOIN readings ON number = reading
            WHERE source = ?1 AND field = ?2 AND coalesce(first, 1) > 0 GROUP BY record";
        let field: Option<[u8; 16]> = connection.query_row(FIELD, [source], |row| row.get(0)).optional()?;
        let Some(field) = field else { return Ok(Self::default()) };
        let mut base = Self { field: Some(record_id(field)?), records: BTreeMap::new() };
        let mut statement = connection.prepare(SAID)?;
        let mut rows = statement.query(params![source, field])?;
        while let Some(row) = rows.next()? {
            let (record, cells) =
                (record_id(row.get(0)?)?, from_bytes(row.get_ref(1)?.as_blob().unwrap_or_default()));
            let heads = Heads::load_marks(connection, record)?;
            // One without digests was removed at the file's word.
            if let (Some(kind), Some(hangs), false) = (heads.kind(), heads.hangs(), cells.is_empty()) {
                base.records.insert(record, Known { kind, parent: hangs.parent, rank: hangs.rank, cells });
            }
        }
        Ok(base)
    }
}

/// One reading of a file.
pub(super) struct ReadNow<'a> {
    pub(super) source: &'a str,
    pub(super) field: RecordId,
    /// Row of the device that read it, and the first sequence of what it saved; `None` if it saved nothing.
    pub(super) save: Option<(i64, i64)>,
    /// What the file says now, of the records of which it said something else before.
    pub(super) said: &'a BTreeMap<RecordId, Digests>,
}

impl ReadNow<'_> {
    /// Remembers it, in the transaction of its save.
    pub(super) fn remember(&self, connection: &Connection) -> Result<(), StoreError> {
        const READING: &str =
            "INSERT INTO readings (source, field, device, first) VALUES (?1, ?2, ?3, ?4) RETURNING number";
        const SAID: &str = "INSERT INTO said (reading, record, cells) VALUES (?1, ?2, ?3)";
        let (device, first) = self.save.unzip();
        let row = params![self.source, self.field.as_bytes(), device, first];
        let number: i64 = connection.prepare_cached(READING)?.query_row(row, |row| row.get(0))?;
        let mut statement = connection.prepare_cached(SAID)?;
        for (record, digests) in self.said {
            statement.execute(params![number, record.as_bytes(), to_bytes(digests)])?;
        }
        Ok(())
    }
}

/// A save is taken back, and with it what is remembered of the reading that it was: the file may bring it again. It is put aside under the
/// negative of its sequence. Tells whether the save was a reading.
pub(super) fn forget(connection: &Connection, device: i64, first: i64) -> Result<bool, StoreError> {
    move_reading(connection, device, first, -first)
}

/// A reading that was put aside is remembered again: what it saved stands again.
pub(super) fn remember_again(connection: &Connection, device: i64, first: i64) -> Result<bool, StoreError> {
    move_reading(connection, device, -first, first)
}

fn move_reading(connection: &Connection, device: i64, from: i64, to: i64) -> Result<bool, StoreError> {
    const READING: &str = "UPDATE readings SET first = ?3 WHERE device = ?1 AND first = ?2";
    Ok(connection.prepare_cached(READING)?.execute([device, from, to])? > 0)
}
