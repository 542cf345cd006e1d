//! Edits of others into log and cells. A store that meets another after a year takes in a hundred thousand of them, so
//! they are put among the cells together, in the order of the keys: what was replaced before it came never gets a row there,
//! each record is read once, and rows that lie side by side are written one after the other.

use super::StoreError;
use super::log::{EditName, NO_NAMES, encode_names};
use super::packed::{Packed, PackedEdit};
use super::rows::{MANY, Rows};
use crate::merge::DeviceId;
use crate::merge::plan::{self, Line};
use rusqlite::types::{ToSqlOutput, ValueRef};
use rusqlite::{CachedStatement, Connection, params};
use std::borrow::Cow;
use std::collections::{BTreeMap, HashSet};

/// Most bytes of edits that are kept in memory until they are written.
const MOST_BYTES: usize = 8 << 20;

/// Puts edits into log and cells.
pub(super) struct EditWriter<'a> {
    lines: &'a [Line],
    rows: &'a [i64],
    /// By its row, whose each line is and how far it is in the log.
    here: BTreeMap<i64, (DeviceId, i64)>,
    new: Vec<New>,
    /// Edits that were replaced before they came, by the cell of what replaced them.
    replaced: HashSet<(u128, u16, EditName)>,
    log: Rows<'a, 7>,
    heads: CachedStatement<'a>,
    drop: CachedStatement<'a>,
    keep: Rows<'a, 7>,
    show: CachedStatement<'a>,
}

/// Edits that are to be written, all but the first few.
struct New {
    row: i64,
    /// Sequence of the first of all.
    first: i64,
    known: usize,
    edits: Packed,
}

/// Which of the new edits, in the order of the cells: record, field, the place of its [`New`], and its own in there.
type Place = (u128, u16, u32, u32);

/// An edit that is or may become a head of its cell.
struct Head<'a> {
    field: u16,
    name: EditName,
    clock: i64,
    value: Cow<'a, [u8]>,
    standing: Standing,
}

/// Where a head stands.
#[derive(Clone, Copy)]
enum Standing {
    /// Among the cells, and whether it is shown.
    Kept {
        shown: bool,
    },
    New(Place),
}

impl<'a> EditWriter<'a> {
    /// `rows`: those of `lines`; `known`: the lines as they are in the log now, the first of `lines`.
    pub(super) fn new(
        connection: &'a Connection,
        lines: &'a [Line],
        rows: &'a [i64],
        known: &[Line],
    ) -> Result<Self, StoreError> {
        const LOG: &str =
            "INSERT OR ROLLBACK INTO log (device, sequence, clock, record, field, predecessors, value)";
        const HEADS: &str = "SELECT field, device, sequence, clock, value, shown FROM cells
            WHERE record = ?1 AND field BETWEEN ?2 AND ?3";
        const DROP: &str =
            "DELETE FROM cells WHERE record = ?1 AND field = ?2 AND device = ?3 AND sequence = ?4";
        const KEEP: &str =
            "INSERT OR ROLLBACK INTO cells (record, field, device, sequence, clock, value, shown)";
        const SHOW: &str = "UPDATE cells SET shown = ?5
            WHERE record = ?1 AND field = ?2 AND device = ?3 AND sequence = ?4";
        let last = known.iter().map(|line| line.last.cast_signed()).chain(std::iter::repeat(0));
        let here = lines.iter().zip(last).map(|(line, last)| (line.device, last));
        Ok(Self {
            lines,
            rows,
            here: rows.iter().copied().zip(here).collect(),
            new: Vec::new(),
            replaced: HashSet::new(),
            log: Rows::new(connection, LOG)?,
            heads: connection.prepare_cached(HEADS)?,
            drop: connection.prepare_cached(DROP)?,
            keep: Rows::new(connection, KEEP)?,
            show: connection.prepare_cached(SHOW)?,
        })
    }

    /// Adds the edits of a bundle but the first few, which are `known`. `first`: the sequence of its first; `witness`: the lines that
    /// predecessors name.
    pub(super) fn add(
        &mut self,
        line: usize,
        first: u64,
        known: usize,
        mut edits: Packed,
        witness: &[usize],
    ) -> Result<(), StoreError> {
        edits.rename(|(named, sequence)| {
            let line = usize::try_from(named - 1).map_or(line, |at| witness[at]);
            (self.rows[plan::line_at(self.lines, line, sequence.cast_unsigned())], sequence)
        });
        let (row, first) = (self.rows[line], first.cast_signed());
        if let Some((_, last)) = self.here.get_mut(&row) {
            *last = first + edits.count().cast_signed() as i64 - 1;
        }
        self.new.push(New { row, first, known, edits });
        if self.new.iter().map(|new| new.edits.bytes()).sum::<usize>() > MOST_BYTES {
            self.write()?;
        }
        Ok(())
    }

    /// Writes what was added.
    pub(super) fn write(&mut self) -> Result<(), StoreError> {
        let new = std::mem::take(&mut self.new);
        for new in &new {
            let places: Vec<usize> = (new.known..new.edits.count()).collect();
            self.log.write(&places, |at| new.log_row(*at))?;
        }
        let places = new.iter().zip(0..).flat_map(|(new, of)| {
            (new.known..new.edits.count()).map(move |at| {
                let PackedEdit { record, field, .. } = new.edits.edit(at);
                (u128::from_be_bytes(*record), field, of, at as u32)
            })
        });
        let mut places: Vec<Place> = places.collect();
        places.sort_unstable();
        let mut kept = Vec::new();
        for places in places.chunk_by(|place, next| place.0 == next.0) {
            self.record(&new, places, &mut kept)?;
            if kept.len() >= MANY {
                let whole = kept.len() / MANY * MANY;
                self.keep.write(&kept[..whole], |(place, shown)| cell_row(&new, *place, *shown))?;
                kept.drain(..whole);
            }
        }
        self.keep.write(&kept, |(place, shown)| cell_row(&new, *place, *shown))
    }

    /// Brings the cells of one record that have new edits from the heads they had to those they have now. What is to be added is put
    /// to `kept`, with whether it is shown.
    fn record(
        &mut self,
        new: &[New],
        places: &[Place],
        kept: &mut Vec<(Place, bool)>,
    ) -> Result<(), StoreError> {
        let ((record, first, ..), (_, last, ..)) = (places[0], places[places.len() - 1]);
        let old = self.heads.query_map(params![record.to_be_bytes(), first, last], |row| {
            let standing = Standing::Kept { shown: row.get(5)? };
            let (field, name, value) = (row.get(0)?, (row.get(1)?, row.get(2)?), Cow::Owned(row.get(4)?));
            Ok(Head { field, name, clock: row.get(3)?, value, standing })
        })?;
        let mut heads: Vec<Head> = old.collect::<Result<_, _>>()?;
        let mut names: Vec<(u16, EditName)> = Vec::new();
        for &place in places {
            let (edit, name) = (edit(new, place), name(new, place));
            names.extend(edit.names.iter().map(|name| (edit.field, *name)));
            let PackedEdit { field, clock, value, .. } = edit;
            heads.push(Head { field, name, clock, value: value.into(), standing: Standing::New(place) });
        }
        names.sort_unstable();
        heads.sort_unstable_by_key(|head| (head.field, head.name));
        for heads in heads.chunk_by(|head, next| head.field == next.field) {
            if heads.iter().any(|head| matches!(head.standing, Standing::New(_))) {
                self.cell(record, heads, &names, kept)?;
            }
        }
        let to_come = |(_, (row, sequence)): &(u16, EditName)| {
            self.here.get(row).is_none_or(|(_, last)| last < sequence)
        };
        self.replaced.extend(names.into_iter().filter(to_come).map(|(field, name)| (record, field, name)));
        Ok(())
    }

    /// Of old heads of a cell and new edits, keeps what no other replaces. Shown is the latest by (clock, device, value): an order that
    /// all devices agree on, see [`show_latest`](super::log::show_latest).
    fn cell(
        &mut self,
        record: u128,
        heads: &[Head],
        names: &[(u16, EditName)],
        kept: &mut Vec<(Place, bool)>,
    ) -> Result<(), StoreError> {
        let id = record.to_be_bytes();
        let (mut left, mut latest) = (Vec::with_capacity(heads.len()), None);
        for head in heads {
            let Head { field, name, .. } = *head;
            let is_named = names.binary_search(&(field, name)).is_ok();
            if !is_named && !self.replaced.remove(&(record, field, name)) {
                left.push(head);
                let device = self.here.get(&name.0).map(|(device, _)| device);
                latest = latest.max(Some((head.clock, device, &head.value, name)));
            } else if let Standing::Kept { .. } = head.standing {
                self.drop.execute(params![id, field, name.0, name.1])?;
            }
        }
        for Head { field, name, standing, .. } in left {
            let is_latest = latest.is_some_and(|(.., latest)| latest == *name);
            match standing {
                Standing::New(place) => kept.push((*place, is_latest)),
                Standing::Kept { shown } if *shown != is_latest => {
                    self.show.execute(params![id, field, name.0, name.1, is_latest])?;
                }
                Standing::Kept { .. } => {}
            }
        }
        Ok(())
    }
}

impl New {
    fn log_row(&self, at: usize) -> [ToSqlOutput<'_>; 7] {
        let PackedEdit { clock, record, field, names, value } = self.edits.edit(at);
        [
            self.row.into(),
            (self.first + at.cast_signed() as i64).into(),
            clock.into(),
            blob(record),
            field.into(),
            if names.is_empty() { blob(NO_NAMES) } else { encode_names(names).into() },
            blob(value),
        ]
    }
}

fn edit(new: &[New], (_, _, of, at): Place) -> PackedEdit<'_> {
    new[of as usize].edits.edit(at as usize)
}

fn name(new: &[New], (_, _, of, at): Place) -> EditName {
    let new = &new[of as usize];
    (new.row, new.first + i64::from(at))
}

fn cell_row(new: &[New], place: Place, shown: bool) -> [ToSqlOutput<'_>; 7] {
    let PackedEdit { clock, record, field, value, .. } = edit(new, place);
    let (row, sequence) = name(new, place);
    [blob(record), field.into(), row.into(), sequence.into(), clock.into(), blob(value), shown.into()]
}

fn blob(bytes: &[u8]) -> ToSqlOutput<'_> {
    ToSqlOutput::Borrowed(ValueRef::Blob(bytes))
}
