//! The log is the truth: the current cells made anew from it, and both compared.

use super::check_parts::{chains_of_parts, check_parts};
use super::lines::{Lines, unfit};
use super::log::{EditName, decode_names};
use super::{DeviceId, Store, StoreError};
use crate::merge::Chain;
use crate::merge::plan::Missing;
use rusqlite::{Connection, TransactionBehavior, params};
use std::collections::{BTreeMap, HashMap, HashSet};

/// What a sound store holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Checked {
    /// Edits in the log.
    pub edits: usize,
    /// Current cells, each head counted.
    pub cells: usize,
}

/// The rows of `cells`.
type Cells = BTreeMap<Key, Content>;

/// Record, cell number, edit.
type Key = ([u8; 16], u16, EditName);

#[derive(Debug, PartialEq, Eq)]
struct Content {
    clock: i64,
    shown: bool,
    value: Vec<u8>,
}

impl Store {
    /// Goes over the whole file: the pages, the bundles against their hashes, each device's unbroken sequence of edits against its chain
    /// and its bundles, the current cells against the log; and over what a program that was cut off left in the write-ahead log.
    /// Reads everything, so it takes its time with a large store. What it finds it names by device and edits where it can.
    ///
    /// Nothing vouches for whether a device is accepted, its holder's name and how far its clock was ahead, for who has
    /// seen what, and for which of this device's saves an undo took back.
    ///
    /// # Errors
    /// [`StoreError::Corrupt`] with what was found.
    pub fn check(&self) -> Result<Checked, StoreError> {
        let connection = &*self.connection.unchecked_transaction()?;
        let found: String = connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
        if found != "ok" {
            // What it harms, where that can be told.
            let harmed = check_parts(connection).and_then(|()| check_lines(connection)).err();
            let harmed = harmed.map(|error| match error {
                StoreError::Corrupt(harmed) => format!("{harmed}; {found}"),
                error => format!("{error}; {found}"),
            });
            return Err(StoreError::Corrupt(harmed.unwrap_or(found)));
        }
        if connection.prepare("PRAGMA foreign_key_check")?.exists([])? {
            return Err(StoreError::Corrupt("an edit is of a device the store does not know".into()));
        }
        check_parts(connection)?;
        let edits = check_lines(connection)?;
        check_devices(connection)?;
        let (kept, folded) = (read_cells(connection)?, fold(connection)?);
        if kept != folded {
            return Err(StoreError::Corrupt(
                "the current cells are not those of the log (rebuild mends it)".into(),
            ));
        }
        if self.lost_saves {
            return Err(StoreError::Corrupt(
                "the last saves before the program was cut off cannot be read (write-ahead log)".into(),
            ));
        }
        Ok(Checked { edits, cells: kept.len() })
    }

    /// Which edits are not as they were written, as ranges between places where the chain is known. Empty where
    /// [`Store::check`] finds no fault with the log.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn damaged_edits(&self) -> Result<Vec<Missing>, StoreError> {
        const KNOWN: &str = "SELECT last, after FROM parts
            WHERE line = ?1 AND first <= last AND last BETWEEN ?2 AND ?3 ORDER BY last";
        let connection = &*self.connection.unchecked_transaction()?;
        let lines = Lines::load(connection)?;
        let mut damaged = Vec::new();
        for (place, line) in lines.all.iter().enumerate() {
            let range = params![lines.rows[place], line.first.cast_signed(), line.last.cast_signed()];
            let mut statement = connection.prepare_cached(KNOWN)?;
            let known = statement
                .query_map(range, |row| Ok((row.get::<_, i64>(0)?.cast_unsigned(), Chain(row.get(1)?))))?;
            let mut known: Vec<(u64, Chain)> = known.collect::<Result<_, _>>()?;
            known.push((line.last, lines.chain_at(connection, place, line.last)?));
            let mut at = (line.first - 1, lines.chain_at(connection, place, line.first - 1)?);
            for next in known {
                match lines.made(connection, place, at.0, at.1, next.0) {
                    Ok(chain) if chain == next.1 => {}
                    _ if at.0 == next.0 => {}
                    Ok(_) | Err(StoreError::Corrupt(_)) => {
                        damaged.push(Missing { device: line.device, first: at.0 + 1, last: next.0 });
                    }
                    Err(error) => return Err(error),
                }
                at = next;
            }
        }
        damaged.dedup();
        Ok(damaged)
    }

    /// Makes the current cells anew from the log.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn rebuild(&mut self) -> Result<(), StoreError> {
        const KEEP: &str = "INSERT INTO cells
            (record, field, device, sequence, clock, shown, value) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let cells = fold(&transaction)?;
        transaction.execute("DELETE FROM cells", [])?;
        let mut keep = transaction.prepare(KEEP)?;
        for ((record, field, name), cell) in cells {
            keep.execute(params![record, field, name.0, name.1, cell.clock, cell.shown, cell.value])?;
        }
        drop(keep);
        Ok(transaction.commit()?)
    }
}

/// Counts the edits; an error if a line has a gap, or its chain is not that of its edits, with the edits among which that is.
fn check_lines(connection: &Connection) -> Result<usize, StoreError> {
    let lines = Lines::load(connection)?;
    let mut edits = 0;
    for (place, line) in lines.all.iter().enumerate() {
        let known = chains_of_parts(connection, lines.rows[place])?;
        let mut chain = lines.chain_at(connection, place, line.first - 1)?;
        // Up to where all is as it was written.
        let mut sound = line.first - 1;
        let other = |sound: u64, last: u64| {
            let what = format!("edits {} to {last} of device {} are not as written", sound + 1, line.device);
            StoreError::Corrupt(what)
        };
        lines.each_edit(connection, place, line.first, line.last, |sequence, edit| {
            edits += 1;
            chain = chain.then(sequence, &edit);
            match known.get(&sequence) {
                Some(known) if *known != chain.0 => return Err(other(sound, sequence)),
                Some(_) => sound = sequence,
                None => {}
            }
            Ok(())
        })?;
        if lines.chain_at(connection, place, line.last)? != chain {
            return Err(other(sound, line.last));
        }
    }
    let logged: u32 = connection.query_row("SELECT count(*) FROM log", [], |row| row.get(0))?;
    if logged as usize == edits {
        Ok(edits)
    } else {
        Err(StoreError::Corrupt("the log has edits of no line".into()))
    }
}

/// Returns what follows for a device from its id and its edits.
fn check_devices(connection: &Connection) -> Result<(), StoreError> {
    const WRONG: &str = "SELECT base FROM devices WHERE (parent IS NULL AND id <> base)
        OR clock <> coalesce((SELECT max(clock) FROM log WHERE device = number), 0)";
    let mut statement = connection.prepare(WRONG)?;
    match statement.query([])?.next()? {
        Some(row) => Err(StoreError::Corrupt(unfit(DeviceId(row.get(0)?)))),
        None => Ok(()),
    }
}

/// The cells as the log gives them: every edit that none of the same cell names as predecessor; of several, the one
/// latest by (clock, device, value) is shown.
fn fold(connection: &Connection) -> Result<Cells, StoreError> {
    const SQL: &str = "SELECT record, field, device, sequence, log.clock, value, predecessors, base
        FROM log JOIN devices ON number = device";
    let mut cells = Cells::new();
    let mut superseded = HashSet::new();
    let mut devices: HashMap<i64, [u8; 16]> = HashMap::new();
    let mut statement = connection.prepare(SQL)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let (record, field, device) = (row.get(0)?, row.get(1)?, row.get(2)?);
        let content = Content { clock: row.get(4)?, shown: false, value: row.get(5)? };
        cells.insert((record, field, (device, row.get(3)?)), content);
        devices.insert(device, row.get(7)?);
        let predecessors = decode_names(&row.get::<_, Vec<u8>>(6)?)?;
        superseded.extend(predecessors.into_iter().map(|name| (record, field, name)));
    }
    cells.retain(|key, _| !superseded.contains(key));
    let mut latest = HashMap::new();
    for ((record, field, name), content) in &cells {
        let this = (content.clock, devices[&name.0], &content.value, *name);
        latest.entry((*record, *field)).and_modify(|other| *other = this.max(*other)).or_insert(this);
    }
    let shown: Vec<Key> =
        latest.into_iter().map(|((record, field), (.., name))| (record, field, name)).collect();
    for key in shown {
        if let Some(content) = cells.get_mut(&key) {
            content.shown = true;
        }
    }
    Ok(cells)
}

fn read_cells(connection: &Connection) -> Result<Cells, StoreError> {
    const SQL: &str = "SELECT record, field, device, sequence, clock, shown, value FROM cells";
    let mut statement = connection.prepare(SQL)?;
    let rows = statement.query_map([], |row| {
        let key = (row.get(0)?, row.get(1)?, (row.get(2)?, row.get(3)?));
        Ok((key, Content { clock: row.get(4)?, shown: row.get(5)?, value: row.get(6)? }))
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}
