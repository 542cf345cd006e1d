//! The log is the truth: the current cells made anew from it, and both compared.

use super::log::{EditName, decode_names};
use super::{Store, StoreError};
use rusqlite::{Connection, TransactionBehavior, params};
use std::collections::{BTreeMap, HashSet};

/// What a sound store holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Checked {
    /// Edits in the log.
    pub edits: usize,
    /// Current cells, each head counted.
    pub cells: usize,
}

/// A row of `cells`: its key, then clock and value.
type Cells = BTreeMap<([u8; 16], u16, EditName), (i64, Vec<u8>)>;

impl Store {
    /// Goes over the whole file: the pages, each device's unbroken sequence and rising clock, and the current
    /// cells against the log. Reads everything, so it takes its time with a large store.
    ///
    /// # Errors
    /// [`StoreError::Corrupt`] with what was found.
    pub fn check(&self) -> Result<Checked, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let found: String = connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
        if found != "ok" {
            return Err(StoreError::Corrupt(found));
        }
        if connection.prepare("PRAGMA foreign_key_check")?.exists([])? {
            return Err(StoreError::Corrupt("an edit is of a device the store does not know".into()));
        }
        let edits = check_order(connection)?;
        let (kept, folded) = (read_cells(connection)?, fold(connection)?);
        if kept != folded {
            return Err(StoreError::Corrupt(
                "the current cells are not those of the log (rebuild mends it)".into(),
            ));
        }
        Ok(Checked { edits, cells: kept.len() })
    }

    /// Makes the current cells anew from the log.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn rebuild(&mut self) -> Result<(), StoreError> {
        const KEEP: &str = "INSERT INTO cells
            (record, field, device, sequence, clock, value) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let cells = fold(&transaction)?;
        transaction.execute("DELETE FROM cells", [])?;
        for ((record, field, name), (clock, value)) in cells {
            transaction
                .prepare_cached(KEEP)?
                .execute(params![record, field, name.0, name.1, clock, value])?;
        }
        Ok(transaction.commit()?)
    }
}

/// Counts the edits; an error if a device's sequence has a gap or its clock goes back.
fn check_order(connection: &Connection) -> Result<usize, StoreError> {
    let mut statement =
        connection.prepare("SELECT device, sequence, clock FROM log ORDER BY device, sequence")?;
    let mut rows = statement.query([])?;
    let (mut edits, mut last) = (0, (0, 0, 0));
    while let Some(row) = rows.next()? {
        let (device, sequence, clock): (i64, i64, i64) = (row.get(0)?, row.get(1)?, row.get(2)?);
        let before = if device == last.0 { last } else { (device, 0, 0) };
        if sequence != before.1 + 1 || clock < before.2 {
            let what = format!("edit {sequence} of device {device} does not follow edit {} of it", before.1);
            return Err(StoreError::Corrupt(what));
        }
        (edits, last) = (edits + 1, (device, sequence, clock));
    }
    Ok(edits)
}

/// The cells as the log gives them: every edit that none of the same cell names as predecessor.
fn fold(connection: &Connection) -> Result<Cells, StoreError> {
    let mut cells = Cells::new();
    let mut superseded = HashSet::new();
    let mut statement =
        connection.prepare("SELECT record, field, device, sequence, clock, value, predecessors FROM log")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let (record, field): ([u8; 16], u16) = (row.get(0)?, row.get(1)?);
        cells.insert((record, field, (row.get(2)?, row.get(3)?)), (row.get(4)?, row.get(5)?));
        let predecessors = decode_names(&row.get::<_, Vec<u8>>(6)?)?;
        superseded.extend(predecessors.into_iter().map(|name| (record, field, name)));
    }
    cells.retain(|key, _| !superseded.contains(key));
    Ok(cells)
}

fn read_cells(connection: &Connection) -> Result<Cells, StoreError> {
    let mut statement =
        connection.prepare("SELECT record, field, device, sequence, clock, value FROM cells")?;
    let rows = statement.query_map([], |row| {
        Ok(((row.get(0)?, row.get(1)?, (row.get(2)?, row.get(3)?)), (row.get(4)?, row.get(5)?)))
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}
