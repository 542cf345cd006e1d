//! Edits of others into log and cells. A store that meets another after a year takes in a hundred thousand of them, so
//! they are put among the cells together, in the order of the keys: what was replaced before it came never gets a row there,
//! each record is read once, and rows that lie side by side are written one after the other.

use super::StoreError;
use super::lines::to_log;
use super::log::{EditName, encode_names};
use crate::merge::plan::{self, Line};
use crate::merge::{DeviceId, Edit};
use rusqlite::{CachedStatement, Connection, params};
use std::collections::{HashMap, HashSet};

/// A record and the number of a field.
type CellName = ([u8; 16], u16);

/// Most edits that are kept in memory until they are put among the cells.
const MOST_NEW: usize = 100_000;

/// Puts edits into log and cells.
pub(super) struct EditWriter<'a> {
    lines: &'a [Line],
    rows: &'a [i64],
    /// By its row, whose each line is and how far it is in the log.
    here: HashMap<i64, (DeviceId, i64)>,
    /// Edits that are in the log and not yet among the cells, and what they replace.
    new: Vec<Head>,
    names: Vec<(CellName, EditName)>,
    /// Edits of cells that were replaced before they came.
    replaced: HashSet<(CellName, EditName)>,
    log: CachedStatement<'a>,
    heads: CachedStatement<'a>,
    drop: CachedStatement<'a>,
    keep: CachedStatement<'a>,
    show: CachedStatement<'a>,
}

/// An edit that is or may become a head of its cell.
struct Head {
    cell: CellName,
    name: EditName,
    clock: i64,
    value: Vec<u8>,
    /// Whether it is shown; `None` if it is not among the cells yet.
    shown: Option<bool>,
}

impl<'a> EditWriter<'a> {
    /// `rows`: those of `lines`; `known`: the lines as they are in the log now, the first of `lines`.
    pub(super) fn new(
        connection: &'a Connection,
        lines: &'a [Line],
        rows: &'a [i64],
        known: &[Line],
    ) -> Result<Self, StoreError> {
        const LOG: &str = "INSERT INTO log (device, sequence, clock, record, field, predecessors, value)
            VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
        const HEADS: &str = "SELECT field, device, sequence, clock, value, shown FROM cells
            WHERE record = ?1 AND field BETWEEN ?2 AND ?3";
        const DROP: &str =
            "DELETE FROM cells WHERE record = ?1 AND field = ?2 AND device = ?3 AND sequence = ?4";
        const KEEP: &str = "INSERT INTO cells (record, field, device, sequence, clock, value, shown)
            VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
        const SHOW: &str = "UPDATE cells SET shown = ?5
            WHERE record = ?1 AND field = ?2 AND device = ?3 AND sequence = ?4";
        let last = known.iter().map(|line| line.last.cast_signed()).chain(std::iter::repeat(0));
        let here = lines.iter().zip(last).map(|(line, last)| (line.device, last));
        Ok(Self {
            lines,
            rows,
            here: rows.iter().copied().zip(here).collect(),
            new: Vec::new(),
            names: Vec::new(),
            replaced: HashSet::new(),
            log: connection.prepare_cached(LOG)?,
            heads: connection.prepare_cached(HEADS)?,
            drop: connection.prepare_cached(DROP)?,
            keep: connection.prepare_cached(KEEP)?,
            show: connection.prepare_cached(SHOW)?,
        })
    }

    /// Writes edits of a line that follow one another, the first with sequence `from`, into the log. `witness`: the lines that their
    /// predecessors name.
    pub(super) fn write(
        &mut self,
        line: usize,
        from: u64,
        edits: impl Iterator<Item = Edit>,
        witness: &[usize],
    ) -> Result<(), StoreError> {
        let row = self.rows[line];
        let mut names: Vec<EditName> = Vec::new();
        for (edit, sequence) in edits.zip(from..) {
            let Edit { clock, record, field, predecessors, content } = edit;
            names.clear();
            names.extend(predecessors.iter().map(|named| {
                let line = named.line.checked_sub(1).map_or(line, |at| witness[at as usize]);
                let sequence = named.name.sequence;
                (self.rows[plan::line_at(self.lines, line, sequence)], sequence.cast_signed())
            }));
            let (sequence, clock, value) = (sequence.cast_signed(), clock.cast_signed(), to_log(content));
            self.log.execute(params![row, sequence, clock, record, field, encode_names(&names), value])?;
            self.names.extend(names.iter().map(|name| ((record, field), *name)));
            self.new.push(Head { cell: (record, field), name: (row, sequence), clock, value, shown: None });
            if let Some((_, last)) = self.here.get_mut(&row) {
                *last = sequence;
            }
        }
        if self.new.len() > MOST_NEW { self.to_cells() } else { Ok(()) }
    }

    /// Brings the cells to where the log is.
    pub(super) fn to_cells(&mut self) -> Result<(), StoreError> {
        let (mut new, mut names) = (std::mem::take(&mut self.new), std::mem::take(&mut self.names));
        new.sort_unstable_by_key(|head| (head.cell, head.name));
        names.sort_unstable();
        for new in new.chunk_by(|head, next| head.cell.0 == next.cell.0) {
            self.record(new, &names)?;
        }
        let to_come = |(_, (row, sequence)): &(CellName, EditName)| {
            self.here.get(row).is_none_or(|(_, last)| last < sequence)
        };
        self.replaced.extend(names.into_iter().filter(to_come));
        Ok(())
    }

    /// Brings the cells of one record that have new edits from the heads they had to those they have now.
    fn record(&mut self, new: &[Head], names: &[(CellName, EditName)]) -> Result<(), StoreError> {
        let ((record, first), (_, last)) = (new[0].cell, new[new.len() - 1].cell);
        let old = self.heads.query_map(params![record, first, last], |row| {
            let (cell, name) = ((record, row.get(0)?), (row.get(1)?, row.get(2)?));
            Ok(Head { cell, name, clock: row.get(3)?, value: row.get(4)?, shown: Some(row.get(5)?) })
        })?;
        let old: Vec<Head> = old.collect::<Result<_, _>>()?;
        let mut heads: Vec<&Head> = old.iter().chain(new).collect();
        heads.sort_unstable_by_key(|head| (head.cell, head.name));
        for heads in heads.chunk_by(|head, next| head.cell == next.cell) {
            if heads.iter().any(|head| head.shown.is_none()) {
                self.cell(heads, names)?;
            }
        }
        Ok(())
    }

    /// Of old heads of a cell and new edits, keeps what no other replaces. Shown is the latest by (clock, device, value): an order that
    /// all devices agree on, see [`show_latest`](super::log::show_latest).
    fn cell(&mut self, heads: &[&Head], names: &[(CellName, EditName)]) -> Result<(), StoreError> {
        let (record, field) = heads[0].cell;
        let (mut left, mut latest) = (Vec::with_capacity(heads.len()), None);
        for &head in heads {
            let (row, sequence) = head.name;
            let name = (head.cell, head.name);
            if names.binary_search(&name).is_err() && !self.replaced.remove(&name) {
                left.push(head);
                let device = self.here.get(&row).map(|(device, _)| device);
                latest = latest.max(Some((head.clock, device, &head.value, head.name)));
            } else if head.shown.is_some() {
                self.drop.execute(params![record, field, row, sequence])?;
            }
        }
        for Head { name, clock, value, shown, .. } in left {
            let is_latest = latest.is_some_and(|(.., latest)| latest == *name);
            match shown {
                None => {
                    self.keep.execute(params![record, field, name.0, name.1, clock, value, is_latest])?
                }
                Some(shown) if *shown != is_latest => {
                    self.show.execute(params![record, field, name.0, name.1, is_latest])?
                }
                Some(_) => 0,
            };
        }
        Ok(())
    }
}
