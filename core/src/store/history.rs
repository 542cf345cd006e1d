//! What happened here, by whom and when: saves, and what is deleted.

use super::cells::{Cell, Kind};
use super::conflicts::versions;
use super::last_save::{LastSave, named};
use super::log::{Heads, record_id};
use super::regretted::path_of;
use super::value::{ABSENT, encode};
use super::{DeviceId, Store, StoreError, Version, clock};
use crate::record::RecordId;
use rusqlite::params;
use std::collections::{BTreeMap, BTreeSet};

/// One save: what one tap, one reading of a file or one undo wrote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaveTold {
    /// Who saved.
    pub device: DeviceId,
    /// How its holder calls themselves; empty if not said.
    pub holder: String,
    /// When, Unix milliseconds by that device's clock.
    pub saved_ms: u64,
    /// A record of each field in it (of people none).
    pub records: Vec<RecordId>,
    /// How many records of each kind it made.
    pub made: BTreeMap<Kind, usize>,
    /// Of which records that were there it changed something, by kind.
    pub changed: BTreeMap<Kind, usize>,
    /// How many it deleted.
    pub deleted: BTreeMap<Kind, usize>,
    /// How many it brought back.
    pub brought_back: BTreeMap<Kind, usize>,
    /// It joined fields, or took them apart.
    pub joined: bool,
    /// It took back an earlier save; known of those made here.
    pub undid: bool,
    /// What it wrote by the record that it is named after; of an undo what that took back.
    pub named: Option<LastSave>,
}

/// A record that is deleted, with all that hangs on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deleted {
    /// The record.
    pub record: RecordId,
    /// Who deleted it, and when.
    pub by: Version,
}

/// One save as the log has it.
struct Row {
    device: i64,
    first: i64,
    last: i64,
    undoes: Option<i64>,
    told: SaveTold,
}

impl Store {
    /// The last saves of all devices, the latest first.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn saves(&self, most: usize) -> Result<Vec<SaveTold>, StoreError> {
        const SAVES: &str = "SELECT device, min(sequence), max(sequence), log.clock, max(undoes), base,
            coalesce(holder, '') FROM log JOIN devices ON number = device LEFT JOIN signers ON signers.id = base
            GROUP BY device, log.clock ORDER BY log.clock DESC, base DESC LIMIT ?1";
        let connection = &*self.connection.unchecked_transaction()?;
        let mut statement = connection.prepare(SAVES)?;
        let rows = statement.query_map([i64::try_from(most).unwrap_or(i64::MAX)], |row| {
            let told = SaveTold {
                device: DeviceId(row.get(5)?),
                holder: row.get(6)?,
                saved_ms: clock::unix_ms(row.get(3)?),
                records: Vec::new(),
                made: BTreeMap::new(),
                changed: BTreeMap::new(),
                deleted: BTreeMap::new(),
                brought_back: BTreeMap::new(),
                joined: false,
                undid: row.get::<_, Option<i64>>(4)?.is_some(),
                named: None,
            };
            let undoes = row.get(4)?;
            Ok(Row { device: row.get(0)?, first: row.get(1)?, last: row.get(2)?, undoes, told })
        })?;
        let rows: Vec<Row> = rows.collect::<Result<_, _>>()?;
        rows.into_iter().map(|row| self.told(row)).collect()
    }

    /// Everything that is deleted, what was deleted first before the rest. What hangs on a deleted record comes back with it, and is
    /// listed only once that one is back.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn deleted(&self) -> Result<Vec<Deleted>, StoreError> {
        const DELETED: &str = "SELECT record FROM cells INDEXED BY deleted
            WHERE field = 3 AND shown = 1 AND value = x'f5'";
        let connection = &*self.connection.unchecked_transaction()?;
        let mut statement = connection.prepare(DELETED)?;
        let records = statement.query_map([], |row| row.get(0))?.collect::<Result<Vec<[u8; 16]>, _>>()?;
        let records = records.into_iter().map(record_id).collect::<Result<BTreeSet<_>, _>>()?;
        let mut deleted = Vec::new();
        for record in &records {
            let path = path_of(connection, *record)?;
            let above = path.iter().filter(|(above, _)| above != record);
            if path.is_empty() || above.into_iter().any(|(above, _)| records.contains(above)) {
                continue;
            }
            let yes = encode(Some(&true.into()));
            let by = versions(connection, *record, Cell::DELETED)?.into_iter().find(|by| by.value == yes);
            deleted.extend(by.map(|by| Deleted { record: *record, by }));
        }
        deleted.sort_by_key(|deleted| (deleted.by.written_ms, deleted.record));
        Ok(deleted)
    }

    fn told(&self, row: Row) -> Result<SaveTold, StoreError> {
        const EDITS: &str = "SELECT record, field, length(predecessors) = 1, value FROM log
            WHERE device = ?1 AND sequence BETWEEN ?2 AND ?3 ORDER BY sequence";
        let Row { device, first, last, undoes, mut told } = row;
        told.named = named(&self.connection, device, undoes.unwrap_or(first))?;
        let mut statement = self.connection.prepare_cached(EDITS)?;
        let mut edits = statement.query(params![device, first, last])?;
        let (mut made, mut changed, mut fields) = (BTreeSet::new(), BTreeSet::new(), BTreeSet::new());
        while let Some(edit) = edits.next()? {
            let (record, cell) = (record_id(edit.get(0)?)?, Cell::from_number(edit.get(1)?));
            let is_absent = edit.get_ref(3)?.as_blob().is_ok_and(|value| value == ABSENT);
            let heads = Heads::load_marks(&self.connection, record)?;
            let Some(kind) = heads.kind() else { continue };
            let count = match cell {
                Cell::KIND if edit.get(2)? && made.insert(record) => &mut told.made,
                Cell::DELETED if is_absent => &mut told.brought_back,
                Cell::DELETED => &mut told.deleted,
                Cell::SAME_AS => {
                    told.joined = true;
                    continue;
                }
                _ if !made.contains(&record) && changed.insert(record) => &mut told.changed,
                _ => continue,
            };
            *count.entry(kind).or_default() += 1;
            let top = path_of(&self.connection, record)?.first().copied();
            if let Some((top, _)) = top
                && fields.insert(top)
            {
                told.records.push(top);
            }
        }
        if told.joined && told.records.is_empty() {
            const JOINED: &str = "SELECT record FROM log WHERE device = ?1 AND sequence = ?2";
            let record = self.connection.query_row(JOINED, params![device, first], |row| row.get(0))?;
            told.records.push(record_id(record)?);
        }
        Ok(told)
    }
}
