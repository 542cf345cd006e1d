//! What people are told of records that were deleted while another device went on with them, and where records belong.

use super::cells::{Cell, Kind};
use super::conflicts::all_heads;
use super::log::{EditName, Heads, decode_names};
use super::{Store, StoreError, Version, clock};
use crate::merge::DeviceId;
use crate::record::RecordId;
use rusqlite::{Connection, Row, params};
use std::collections::BTreeMap;

/// Records hang in records no deeper than this; a damaged store may have them hang in a ring.
const DEEPEST: usize = 8;

/// A record that was deleted while others, not knowing of it, wrote to it or put something into it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Regretted {
    /// The record.
    pub record: RecordId,
    /// Who deleted it, and when.
    pub deleted: Version,
    /// What each of the others wrote last.
    pub edited: Vec<(Cell, Version)>,
}

impl Store {
    /// The records of [`Store::deleted_but_edited`], with who did what and when.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn regretted(&self) -> Result<Vec<Regretted>, StoreError> {
        self.deleted_but_edited()?.into_iter().map(|record| regretted(&self.connection, record)).collect()
    }

    /// Where a record hangs: from the top (mostly a field) down to itself, each with its kind. Deleted ones too; empty if there
    /// is no such record, and only what this version knows.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn path_of(&self, record: RecordId) -> Result<Vec<(RecordId, Kind)>, StoreError> {
        path_of(&self.connection, record)
    }

    /// The name of a field, also of a deleted one; `None` if there is no such field.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn field_name(&self, field: RecordId) -> Result<Option<String>, StoreError> {
        field_name(&self.connection, field)
    }
}

pub(super) fn path_of(
    connection: &Connection,
    record: RecordId,
) -> Result<Vec<(RecordId, Kind)>, StoreError> {
    let mut path = Vec::new();
    let mut next = Some(record);
    while let Some(record) = next
        && path.len() < DEEPEST
    {
        let heads = Heads::load_marks(connection, record)?;
        path.extend(heads.kind().map(|kind| (record, kind)));
        next = heads.hangs().and_then(|hangs| hangs.parent);
    }
    path.reverse();
    Ok(path)
}

pub(super) fn field_name(connection: &Connection, field: RecordId) -> Result<Option<String>, StoreError> {
    let heads = Heads::load(connection, field)?;
    if heads.kind() == Some(Kind::Field) { heads.read(Cell::FIELD_NAME).map(Some) } else { Ok(None) }
}

fn regretted(connection: &Connection, record: RecordId) -> Result<Regretted, StoreError> {
    const DELETED: &str = "SELECT field, log.clock, base, log.value, coalesce(holder, ''), predecessors
        FROM cells JOIN log USING (record, field, device, sequence)
        JOIN devices ON number = device LEFT JOIN signers ON signers.id = base
        WHERE record = ?1 AND field = ?2 AND shown = 1";
    const EDIT: &str = "SELECT field, log.clock, base, value, coalesce(holder, '')
        FROM log JOIN devices ON number = device LEFT JOIN signers ON signers.id = base
        WHERE device = ?1 AND sequence = ?2";
    let (deleted, known): (Version, Vec<u8>) = connection
        .prepare_cached(DELETED)?
        .query_row(params![record.as_bytes(), Cell::DELETED.number()], |row| {
            Ok((version(row)?, row.get(5)?))
        })?;
    let known: Vec<EditName> = decode_names(&known)?;
    let mut last: BTreeMap<DeviceId, (Cell, Version)> = BTreeMap::new();
    for (device, sequence) in all_heads(connection, record)? {
        if known.contains(&(device, sequence)) {
            continue;
        }
        let edit = connection
            .prepare_cached(EDIT)?
            .query_row([device, sequence], |row| Ok((Cell::from_number(row.get(0)?), version(row)?)))?;
        let of_device = last.entry(edit.1.device).or_insert_with(|| edit.clone());
        if of_device.1.written_ms < edit.1.written_ms {
            *of_device = edit;
        }
    }
    Ok(Regretted { record, deleted, edited: last.into_values().collect() })
}

fn version(row: &Row) -> rusqlite::Result<Version> {
    Ok(Version {
        written_ms: clock::unix_ms(row.get(1)?),
        device: DeviceId(row.get(2)?),
        value: row.get(3)?,
        holder: row.get(4)?,
    })
}
