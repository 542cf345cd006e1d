//! Several records that are one field, because somebody said so: two people walked it and each began a record of their own. One cell
//! of one of them names another. Whatever is so named, in either direction and over any number of steps, is one field, which bears the smallest
//! (so, the oldest) id; everything noted under any of them is shown under it. All heads of the cell count: two who join different records
//! without knowing of each other have both joined them. A deleted record joins nothing.

use super::cells::{Cell, Kind};
use super::log::{Heads, record_id};
use super::value::read;
use super::{Saved, Store, StoreError};
use crate::record::RecordId;
use rusqlite::Connection;
use std::collections::{BTreeMap, BTreeSet};

/// A cell in which two fields differ: the value that is shown once they are joined, and the other one.
pub type Difference = (Cell, [Vec<u8>; 2]);

impl Store {
    /// Says that two records are one field. What is noted under either is shown under the older from now on; nothing is moved.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if one of them is no field; whatever the disk reports.
    pub fn join(&mut self, one: RecordId, other: RecordId, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.join(one, other))
    }

    /// Takes a field apart again into the records that were joined.
    ///
    /// # Errors
    /// [`StoreError::RecordNotFound`] if it is no field; whatever the disk reports.
    pub fn part(&mut self, field: RecordId, now_ms: u64) -> Result<Saved, StoreError> {
        self.save_together(now_ms, |saving| saving.take_apart(field))
    }

    /// The cells in which two fields differ, with the value that is shown once they are joined and the other one.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn differences(&self, one: RecordId, other: RecordId) -> Result<Vec<Difference>, StoreError> {
        let connection = &self.connection;
        let (one, other) = (oldest(connection, one)?, oldest(connection, other)?);
        let (older, newer) = (one.min(other), one.max(other));
        let (Some(shown), Some(hidden)) = (
            heads(connection, &members(connection, older)?)?,
            heads(connection, &members(connection, newer)?)?,
        ) else {
            return Ok(Vec::new());
        };
        let said: BTreeMap<Cell, &[u8]> = shown.said().collect();
        let differs = hidden.said().filter_map(|(cell, value)| {
            let shown = said.get(&cell).filter(|shown| **shown != value)?;
            Some((cell, [shown.to_vec(), value.to_vec()]))
        });
        Ok(if older == newer { Vec::new() } else { differs.collect() })
    }

    /// The records that are one field with this one, the oldest first; itself, if it is alone.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn one_field(&self, field: RecordId) -> Result<Vec<RecordId>, StoreError> {
        members(&self.connection, field)
    }
}

/// The records that are one field with this one, the oldest first.
pub(super) fn members(connection: &Connection, field: RecordId) -> Result<Vec<RecordId>, StoreError> {
    let links = links(connection)?;
    let (mut members, mut next) = (BTreeSet::new(), vec![field]);
    while let Some(member) = next.pop() {
        if members.insert(member) {
            next.extend(links.get(&member).into_iter().flatten());
        }
    }
    Ok(members.into_iter().collect())
}

/// The oldest of the records that are one field with this one.
pub(super) fn oldest(connection: &Connection, field: RecordId) -> Result<RecordId, StoreError> {
    Ok(members(connection, field)?.first().copied().unwrap_or(field))
}

/// Returns whether two records are one field.
pub(super) fn are_one(connection: &Connection, one: RecordId, other: RecordId) -> Result<bool, StoreError> {
    Ok(one == other || members(connection, one)?.contains(&other))
}

/// Other fields of a name, the oldest record of each.
pub(super) fn of_name(
    connection: &Connection,
    field: RecordId,
    name: &str,
) -> Result<Vec<RecordId>, StoreError> {
    let (own, mut found) = (members(connection, field)?, BTreeSet::new());
    for heads in Heads::load_children(connection, None)? {
        if heads.kind() == Some(Kind::Field)
            && !own.contains(&heads.record)
            && heads.read::<String>(Cell::FIELD_NAME)?.trim().to_lowercase() == name.trim().to_lowercase()
        {
            found.insert(oldest(connection, heads.record)?);
        }
    }
    Ok(found.into_iter().collect())
}

/// The cells of a field: what its oldest record does not say is taken from the next that does.
pub(super) fn heads(connection: &Connection, members: &[RecordId]) -> Result<Option<Heads>, StoreError> {
    let mut joined: Option<Heads> = None;
    for member in members {
        let heads = Heads::load(connection, *member)?;
        match &mut joined {
            None => joined = Some(heads),
            Some(joined) => joined.fill(heads),
        }
    }
    Ok(joined)
}

/// Who is joined with whom, both ways.
fn links(connection: &Connection) -> Result<BTreeMap<RecordId, Vec<RecordId>>, StoreError> {
    const SQL: &str = "SELECT record, value FROM cells INDEXED BY same WHERE field = 6";
    let mut links: BTreeMap<RecordId, Vec<RecordId>> = BTreeMap::new();
    let is_field = |record| -> Result<bool, StoreError> {
        let heads = Heads::load_marks(connection, record)?;
        Ok(heads.kind() == Some(Kind::Field) && !heads.deleted())
    };
    let mut statement = connection.prepare_cached(SQL)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let (one, value) = (record_id(row.get(0)?)?, row.get_ref(1)?.as_blob().ok());
        if let Some(other) = read::<RecordId>(value)
            && is_field(one)?
            && is_field(other)?
        {
            links.entry(one).or_default().push(other);
            links.entry(other).or_default().push(one);
        }
    }
    Ok(links)
}
