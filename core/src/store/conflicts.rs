//! Cells that two devices wrote without knowing of each other, and records that one deleted while another went on.

use super::cells::Cell;
use super::lines::content;
use super::log::{EditName, decode_names, record_id};
use super::value::Hangs;
use super::{Saved, Store, StoreError, clock};
use crate::merge::{Content, DeviceId};
use crate::record::RecordId;
use rusqlite::{Connection, params};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

/// One of the values that a cell has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Version {
    /// Who wrote it.
    pub device: DeviceId,
    /// How its holder calls themselves; empty if not said.
    pub holder: String,
    /// When, Unix milliseconds by that device's clock.
    pub written_ms: u64,
    /// What: one item of CBOR, `null` = absent.
    pub value: Vec<u8>,
}

impl Version {
    /// The value as JSON; `null` also for what JSON cannot say.
    pub fn to_json(&self) -> serde_json::Value {
        ciborium::from_reader(self.value.as_slice()).unwrap_or_default()
    }
}

/// A cell with several values; the first is the one shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Conflict {
    /// The record.
    pub record: RecordId,
    /// Its cell.
    pub cell: Cell,
    /// The values, latest first; each once.
    pub versions: Vec<Version>,
}

impl Store {
    /// All cells with several values, in the order of their records. Equal values are no conflict, nor is a place in a list.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn conflicts(&self) -> Result<Vec<Conflict>, StoreError> {
        const OPEN: &str = "SELECT record, field FROM cells GROUP BY record, field HAVING count(*) > 1";
        let connection = &*self.connection.unchecked_transaction()?;
        let mut statement = connection.prepare(OPEN)?;
        let open: Vec<([u8; 16], u16)> =
            statement.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?.collect::<Result<_, _>>()?;
        let mut conflicts = Vec::new();
        for (record, field) in open {
            let (record, cell) = (record_id(record)?, Cell(field));
            let versions = versions(connection, record, cell)?;
            if versions.len() > 1 && matters(cell, &versions) {
                conflicts.push(Conflict { record, cell, versions });
            }
        }
        Ok(conflicts)
    }

    /// Settles a conflict: one of its versions stands from now on, in place of all of them.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if the cell has no such version.
    pub fn settle(
        &mut self,
        record: RecordId,
        cell: Cell,
        value: &[u8],
        now_ms: u64,
    ) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.settle(record, cell, value))
    }

    /// Records that were deleted while another device, not knowing of it, wrote to them or put something into them.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn deleted_but_edited(&self) -> Result<BTreeSet<RecordId>, StoreError> {
        const DELETED: &str =
            "SELECT record, predecessors FROM cells JOIN log USING (record, field, device, sequence)
            WHERE field = ?1 AND shown = 1 AND cells.value = x'f5'";
        let connection = &*self.connection.unchecked_transaction()?;
        let mut statement = connection.prepare(DELETED)?;
        let mut rows = statement.query([Cell::DELETED.0])?;
        let mut found = BTreeSet::new();
        while let Some(row) = rows.next()? {
            let record = record_id(row.get(0)?)?;
            let known: BTreeSet<EditName> = decode_names(&row.get::<_, Vec<u8>>(1)?)?.into_iter().collect();
            // Deletions of versions before merging name nothing; they were of one device.
            if !known.is_empty() && !all_heads(connection, record)?.is_subset(&known) {
                found.insert(record);
            }
        }
        Ok(found)
    }

    /// Brings a deleted record back.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if it is not there or not deleted.
    pub fn bring_back(&mut self, record: RecordId, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.bring_back(record))
    }

    /// A hash over all current cells with all their versions: equal on two devices if, and only if, they have the same.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn digest(&self) -> Result<[u8; 32], StoreError> {
        const SQL: &str = "SELECT record, field, cells.clock, base, value, shown
            FROM cells JOIN devices ON number = device
            ORDER BY record, field, cells.clock, base, value, shown";
        let mut statement = self.connection.prepare(SQL)?;
        let mut rows = statement.query([])?;
        let mut hash = Sha256::new();
        while let Some(row) = rows.next()? {
            hash.update(row.get_ref(0)?.as_blob().unwrap_or_default());
            hash.update(row.get::<_, u16>(1)?.to_be_bytes());
            hash.update(row.get::<_, i64>(2)?.to_be_bytes());
            hash.update(row.get_ref(3)?.as_blob().unwrap_or_default());
            let value = row.get_ref(4)?.as_blob().unwrap_or_default();
            hash.update((value.len() as u64).to_be_bytes());
            hash.update(value);
            hash.update([u8::from(row.get::<_, bool>(5)?)]);
        }
        Ok(hash.finalize().into())
    }
}

/// The different values of a cell, latest first.
pub(super) fn versions(
    connection: &Connection,
    record: RecordId,
    cell: Cell,
) -> Result<Vec<Version>, StoreError> {
    const SQL: &str = "SELECT cells.clock, base, value, coalesce(holder, '')
        FROM cells JOIN devices ON number = device LEFT JOIN signers ON signers.id = base
        WHERE record = ?1 AND field = ?2 ORDER BY cells.clock DESC, base DESC, value DESC";
    let mut statement = connection.prepare_cached(SQL)?;
    let rows = statement.query_map(params![record.as_bytes(), cell.0], |row| {
        Ok(Version {
            written_ms: clock::unix_ms(row.get(0)?),
            device: DeviceId(row.get(1)?),
            value: row.get(2)?,
            holder: row.get(3)?,
        })
    })?;
    let mut versions: Vec<Version> = Vec::new();
    for version in rows {
        let version = version?;
        if versions.iter().all(|other| other.value != version.value) {
            versions.push(version);
        }
    }
    Ok(versions)
}

/// Returns whether a person has to know. Two places in one list are none of their business; a redacted value is no version of anything.
fn matters(cell: Cell, versions: &[Version]) -> bool {
    // Both fields that two people named are joined.
    if cell == Cell::SAME_AS {
        return false;
    }
    if cell == Cell::PARENT {
        let parent =
            |version: &Version| super::value::read::<Hangs>(Some(&version.value)).map(|hangs| hangs.parent);
        return versions.iter().any(|version| parent(version) != parent(&versions[0]));
    }
    versions.iter().all(|version| matches!(content(version.value.clone()), Content::Value(_)))
}

/// The heads of all cells of a record, but for that of its deletion, and of all that hangs on it.
pub(super) fn all_heads(connection: &Connection, record: RecordId) -> Result<BTreeSet<EditName>, StoreError> {
    const HEADS: &str = "SELECT device, sequence FROM cells WHERE record = ?1 AND field <> ?2";
    let (mut heads, mut records) = (BTreeSet::new(), vec![record]);
    while let Some(record) = records.pop() {
        let names = [record.as_bytes().as_slice()];
        let mut statement = connection.prepare_cached(HEADS)?;
        let rows =
            statement.query_map(params![names[0], Cell::DELETED.0], |row| Ok((row.get(0)?, row.get(1)?)))?;
        for name in rows {
            heads.insert(name?);
        }
        records.extend(children(connection, record)?);
    }
    Ok(heads)
}

/// Returns what hangs on a record, deleted or not.
pub(super) fn children(connection: &Connection, record: RecordId) -> Result<Vec<RecordId>, StoreError> {
    const CHILDREN: &str = "SELECT record FROM cells INDEXED BY children
        WHERE field = 2 AND shown = 1 AND value >= ?1 AND value < ?2";
    let mut statement = connection.prepare_cached(CHILDREN)?;
    let rows = statement.query_map(Hangs::range(Some(record), None), |row| row.get(0))?;
    rows.map(|child| record_id(child?)).collect()
}
