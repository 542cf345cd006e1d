//! Edits of others into log and cells. A store that meets another after a year takes in a hundred thousand of them, so
//! they are written cell by cell: what was replaced before it came never gets a row among the cells, and rows
//! that lie side by side are written one after the other.

use super::StoreError;
use super::lines::to_log;
use super::log::{EditName, encode_names, show_latest};
use crate::merge::Edit;
use crate::merge::plan::{self, Line};
use rusqlite::{CachedStatement, Connection, params};
use std::collections::{HashMap, HashSet};

/// A record and the number of a field.
type CellName = ([u8; 16], u16);

/// Puts edits into log and cells.
pub(super) struct EditWriter<'a> {
    connection: &'a Connection,
    lines: &'a [Line],
    rows: &'a [i64],
    /// How far each line (by its row) is in the log.
    here: HashMap<i64, i64>,
    /// Edits of cells that were replaced before they came.
    replaced: HashSet<(CellName, EditName)>,
    /// Cells of which the head to show may be another now.
    open: HashSet<CellName>,
    log: CachedStatement<'a>,
    heads: CachedStatement<'a>,
    drop: CachedStatement<'a>,
    keep: CachedStatement<'a>,
}

/// An edit that is in the log and not yet among the cells.
struct Logged {
    cell: CellName,
    name: EditName,
    clock: i64,
    predecessors: Vec<EditName>,
    value: Vec<u8>,
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
        const HEADS: &str = "SELECT device, sequence FROM cells WHERE record = ?1 AND field = ?2";
        const DROP: &str =
            "DELETE FROM cells WHERE record = ?1 AND field = ?2 AND device = ?3 AND sequence = ?4";
        const KEEP: &str = "INSERT INTO cells (record, field, device, sequence, clock, value)
            VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
        let here = rows.iter().copied().zip(known.iter().map(|line| line.last.cast_signed())).collect();
        Ok(Self {
            connection,
            lines,
            rows,
            here,
            replaced: HashSet::new(),
            open: HashSet::new(),
            log: connection.prepare_cached(LOG)?,
            heads: connection.prepare_cached(HEADS)?,
            drop: connection.prepare_cached(DROP)?,
            keep: connection.prepare_cached(KEEP)?,
        })
    }

    /// Writes edits of a line that follow one another, the first with sequence `from`. `witness`: the lines that their predecessors
    /// name.
    pub(super) fn write(
        &mut self,
        line: usize,
        from: u64,
        edits: impl Iterator<Item = Edit>,
        witness: &[usize],
    ) -> Result<(), StoreError> {
        let row = self.rows[line];
        let mut logged = Vec::with_capacity(edits.size_hint().0);
        for (edit, sequence) in edits.zip(from..) {
            let one = Logged {
                cell: (edit.record, edit.field),
                name: (row, sequence.cast_signed()),
                clock: edit.clock.cast_signed(),
                predecessors: self.predecessors(&edit, line, witness),
                value: to_log(edit.content),
            };
            let (record, field) = one.cell;
            let names = encode_names(&one.predecessors);
            let (device, sequence) = one.name;
            self.log.execute(params![device, sequence, one.clock, record, field, names, one.value])?;
            self.here.insert(row, sequence);
            logged.push(one);
        }
        // Stable: the edits of a cell stay in their order.
        logged.sort_by_key(|edit| edit.cell);
        logged.chunk_by(|edit, next| edit.cell == next.cell).try_for_each(|edits| self.cell(edits))
    }

    fn predecessors(&self, edit: &Edit, line: usize, witness: &[usize]) -> Vec<EditName> {
        let row = |named: &crate::merge::Predecessor| {
            let line = named.line.checked_sub(1).map_or(line, |at| witness[at as usize]);
            let sequence = named.name.sequence;
            (self.rows[plan::line_at(self.lines, line, sequence)], sequence.cast_signed())
        };
        edit.predecessors.iter().map(row).collect()
    }

    /// Brings one cell from the heads it had to those it has after `edits`.
    fn cell(&mut self, edits: &[Logged]) -> Result<(), StoreError> {
        let cell = edits[0].cell;
        let (record, field) = cell;
        let mut old: Vec<EditName> = self
            .heads
            .query_map(params![record, field], |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect::<Result<_, _>>()?;
        let mut new: Vec<&Logged> = Vec::new();
        for edit in edits {
            for &name in &edit.predecessors {
                if let Some(at) = old.iter().position(|head| *head == name) {
                    old.swap_remove(at);
                    self.drop.execute(params![record, field, name.0, name.1])?;
                } else if let Some(at) = new.iter().position(|head| head.name == name) {
                    new.swap_remove(at);
                } else if self.here.get(&name.0).is_none_or(|last| *last < name.1) {
                    self.replaced.insert((cell, name));
                }
            }
            if !self.replaced.remove(&(cell, edit.name)) {
                new.push(edit);
            }
        }
        if !old.is_empty() || new.len() > 1 {
            self.open.insert(cell);
        }
        for Logged { name, clock, value, .. } in new {
            self.keep.execute(params![record, field, name.0, name.1, clock, value])?;
        }
        Ok(())
    }

    /// Of cells with several heads, shows the latest.
    pub(super) fn end(self) -> Result<(), StoreError> {
        let mut open: Vec<CellName> = self.open.into_iter().collect();
        open.sort_unstable();
        open.iter().try_for_each(|(record, field)| show_latest(self.connection, record, *field))
    }
}
