//! A save by the one record that it is named after: what it wrote, where that lies and what stood there before.

use super::cells::{Cell, Kind};
use super::log::{EditName, Heads, decode_names, record_id, value_of};
use super::regretted::{field_name, path_of};
use super::value::{ABSENT, Hangs, read};
use super::{StoreError, clock, same_field};
use crate::record::RecordId;
use rusqlite::Connection;
use std::collections::BTreeMap;

/// What a save wrote, as far as it takes to name it in one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LastSave {
    /// When, Unix milliseconds by the hybrid clock.
    pub saved_ms: u64,
    /// What became of the record that it is named after.
    pub did: Did,
    /// That record.
    pub of: Named,
    /// What it wrote into it, in the order written; neither what it is nor where it hangs.
    pub wrote: Vec<Written>,
    /// How many other records it wrote that do not hang on this one.
    pub others: usize,
}

/// What became of a record. The first of these that a save did is what it is named after.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Did {
    /// It was deleted.
    Deleted,
    /// It was joined with another field, or taken apart.
    Joined,
    /// It was brought back.
    BroughtBack,
    /// It was made.
    Made,
    /// Something in it was changed.
    Changed,
}

/// A record as people find it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// The record.
    pub record: RecordId,
    /// What it is.
    pub kind: Kind,
    /// Name of its field; empty of what is of no field.
    pub field: String,
    /// Number of its pit, from 1. Of a deleted pit the one that it would have.
    pub pit: Option<usize>,
    /// Number of its pass, likewise.
    pub pass: Option<usize>,
    /// Number of its after-dig among those of all passes, likewise.
    pub after_dig: Option<usize>,
    /// Its own name, of a machine, a part or a person; else empty.
    pub name: String,
    /// Depth of its top, of a step, a layer, a roll test or a photo.
    pub top_mm: Option<u32>,
    /// Depth of its bottom, of a step or a layer.
    pub bottom_mm: Option<u32>,
}

/// A cell that was written. Values are items of CBOR, `null` = absent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// The cell.
    pub cell: Cell,
    /// What stood there before.
    pub before: Vec<u8>,
    /// What was written.
    pub after: Vec<u8>,
}

impl Written {
    /// Returns what stood there before and what was written, as JSON; `null` also for what JSON cannot say.
    pub fn to_json(&self) -> [serde_json::Value; 2] {
        [&self.before, &self.after].map(|value| ciborium::from_reader(value.as_slice()).unwrap_or_default())
    }
}

/// The edits of a save on one record.
struct OfRecord {
    record: RecordId,
    did: Did,
    wrote: Vec<Written>,
}

/// The save of a device that began at a sequence; `None` if it wrote nothing that this version knows.
pub(super) fn named(
    connection: &Connection,
    device: i64,
    first_sequence: i64,
) -> Result<Option<LastSave>, StoreError> {
    let (clock, mut all) = records(connection, device, first_sequence)?;
    let mut paths = BTreeMap::new();
    for of in &all {
        paths.insert(of.record, path_of(connection, of.record)?);
    }
    all.retain(|of| paths.get(&of.record).is_some_and(|path| !path.is_empty()));
    // What hangs on a record that came or went came or went with it.
    let whole: Vec<RecordId> = all.iter().filter(|of| of.did != Did::Changed).map(|of| of.record).collect();
    all.retain(|of| {
        let above = paths.get(&of.record).into_iter().flatten().map(|(above, _)| above);
        !above.into_iter().any(|above| *above != of.record && whole.contains(above))
    });
    let Some(main) =
        all.iter().enumerate().min_by_key(|(order, of)| (of.did, *order)).map(|(order, _)| order)
    else {
        return Ok(None);
    };
    let others = all.len() - 1;
    let OfRecord { record, did, wrote } = all.swap_remove(main);
    let of = place(connection, record, &paths.remove(&record).unwrap_or_default(), &wrote)?;
    Ok(of.map(|of| LastSave { saved_ms: clock::unix_ms(clock), did, of, wrote, others }))
}

/// The records of a save with what it did to each, in the order written, and its clock.
fn records(
    connection: &Connection,
    device: i64,
    first_sequence: i64,
) -> Result<(i64, Vec<OfRecord>), StoreError> {
    const EDITS: &str = "SELECT record, field, predecessors, value, clock FROM log
        WHERE device = ?1 AND sequence >= ?2 ORDER BY sequence";
    let mut statement = connection.prepare_cached(EDITS)?;
    let mut rows = statement.query([device, first_sequence])?;
    let (mut clock, mut all) = (None, Vec::<OfRecord>::new());
    while let Some(row) = rows.next()? {
        let its: i64 = row.get(4)?;
        if *clock.get_or_insert(its) != its {
            break;
        }
        let (record, cell, after) = (record_id(row.get(0)?)?, Cell(row.get(1)?), row.get::<_, Vec<u8>>(3)?);
        let names: Vec<EditName> = decode_names(&row.get::<_, Vec<u8>>(2)?)?;
        let did = match cell {
            Cell::KIND if names.is_empty() => Did::Made,
            Cell::DELETED if after == ABSENT => Did::BroughtBack,
            Cell::DELETED => Did::Deleted,
            Cell::SAME_AS => Did::Joined,
            _ => Did::Changed,
        };
        let at = all.iter().position(|of| of.record == record).unwrap_or_else(|| {
            all.push(OfRecord { record, did, wrote: Vec::new() });
            all.len() - 1
        });
        let of = &mut all[at];
        of.did = of.did.min(did);
        if cell.is_said() && cell != Cell::UNKNOWN_KEYS && cell != Cell::NOTES_UNKNOWN_KEYS {
            let before = value_of(connection, record, cell, &names)?;
            match of.wrote.iter_mut().find(|written| written.cell == cell) {
                Some(written) => written.after = after,
                None => of.wrote.push(Written { cell, before, after }),
            }
        }
    }
    Ok((clock.unwrap_or(0), all))
}

/// Where a record lies, whether it is deleted or not; `None` if there is no such record, or none that this version knows.
pub(super) fn found(connection: &Connection, record: RecordId) -> Result<Option<Named>, StoreError> {
    place(connection, record, &path_of(connection, record)?, &[])
}

/// Where a record lies, whether it is deleted or not. Of what the save wrote the written values count.
fn place(
    connection: &Connection,
    record: RecordId,
    path: &[(RecordId, Kind)],
    wrote: &[Written],
) -> Result<Option<Named>, StoreError> {
    let (Some(&(_, kind)), Some(&(top, _))) = (path.last(), path.first()) else { return Ok(None) };
    let of_kind = |kind| path.iter().find(|(_, other)| *other == kind).map(|(record, _)| *record);
    let heads = Heads::load(connection, record)?;
    let value = |cell: Cell| {
        let written = wrote.iter().find(|written| written.cell == cell);
        let after = written.map(|written| written.after.as_slice()).filter(|after| *after != ABSENT);
        after.or_else(|| heads.value(cell))
    };
    let mm = |cell: Cell| read::<Option<u32>>(value(cell)).flatten();
    let name = |cell: Cell| read::<Option<String>>(value(cell)).flatten().unwrap_or_default();
    let [top_cell, bottom_cell] = Cell::LAYER_DEPTHS;
    let (top_mm, bottom_mm) = match kind {
        Kind::Step => {
            let to_mm = mm(Cell::STEP_TO);
            (above(connection, record, &heads, to_mm)?, to_mm)
        }
        Kind::Layer => (mm(top_cell), mm(bottom_cell)),
        Kind::Roll => (mm(Cell::ROLL_DEPTH), None),
        Kind::Photo => (mm(Cell::PHOTO_DEPTH), None),
        _ => (None, None),
    };
    let number = |of: Option<RecordId>, list: Kind| {
        of.map(|of| number(connection, of, list)).transpose().map(Option::flatten)
    };
    Ok(Some(Named {
        record,
        kind,
        field: field_name(connection, same_field::oldest(connection, top)?)?.unwrap_or_default(),
        pit: number(of_kind(Kind::Pit), Kind::Pit)?,
        pass: number(of_kind(Kind::Pass), Kind::Pass)?,
        after_dig: of_kind(Kind::AfterDig).map(|dig| dig_number(connection, dig)).transpose()?.flatten(),
        name: match kind {
            Kind::Machine => name(Cell::MACHINE_NAME),
            Kind::Part => name(Cell::PART_NAME),
            Kind::Person => name(Cell::PERSON_NAME),
            _ => String::new(),
        },
        top_mm,
        bottom_mm,
    }))
}

/// Bottom of the step above; the surface where there is none.
fn above(
    connection: &Connection,
    step: RecordId,
    heads: &Heads,
    to_mm: Option<u32>,
) -> Result<Option<u32>, StoreError> {
    let (Some(to_mm), Some(pit)) = (to_mm, heads.hangs().and_then(|hangs| hangs.parent)) else {
        return Ok(None);
    };
    let mut bottom_mm = 0;
    for other in Heads::load_children(connection, Some(pit))? {
        if other.kind() == Some(Kind::Step) && other.record != step {
            let other_mm = other.read::<Option<u32>>(Cell::STEP_TO)?.filter(|other_mm| *other_mm < to_mm);
            bottom_mm = bottom_mm.max(other_mm.unwrap_or(0));
        }
    }
    Ok(Some(bottom_mm))
}

/// The number of a record among those of its list that are there, in the field with all records that it is.
fn number(connection: &Connection, record: RecordId, list: Kind) -> Result<Option<usize>, StoreError> {
    let Some((parent, own)) = hangs_at(connection, record)? else { return Ok(None) };
    let mut before = 0;
    for member in same_field::members(connection, parent)? {
        for other in Heads::load_children(connection, Some(member))? {
            let is_before = member < parent
                || member == parent && other.hangs().is_some_and(|hangs| (hangs.rank, other.record) < own);
            before += usize::from(other.kind() == Some(list) && is_before);
        }
    }
    Ok(Some(before + 1))
}

/// The number of an after-dig among those of all passes.
fn dig_number(connection: &Connection, dig: RecordId) -> Result<Option<usize>, StoreError> {
    let Some((pass, own)) = hangs_at(connection, dig)? else { return Ok(None) };
    let Some((field, own_pass)) = hangs_at(connection, pass)? else { return Ok(None) };
    let mut before = 0;
    for member in same_field::members(connection, field)? {
        for other in Heads::load_children(connection, Some(member))? {
            let rank = other.hangs().map(|hangs| (hangs.rank, other.record));
            let is_before = member < field || member == field && rank.is_some_and(|rank| rank < own_pass);
            if other.kind() != Some(Kind::Pass) || !is_before && other.record != pass {
                continue;
            }
            for hole in Heads::load_children(connection, Some(other.record))? {
                let is_own = other.record == pass;
                let is_before = hole.hangs().is_some_and(|hangs| (hangs.rank, hole.record) < own);
                before += usize::from(hole.kind() == Some(Kind::AfterDig) && (!is_own || is_before));
            }
        }
    }
    Ok(Some(before + 1))
}

/// By what a record is sorted among those of its list.
type Order = (u64, RecordId);

/// On what a record hangs, and by what it is sorted there.
fn hangs_at(connection: &Connection, record: RecordId) -> Result<Option<(RecordId, Order)>, StoreError> {
    let hangs: Option<Hangs> = Heads::load_marks(connection, record)?.hangs();
    Ok(hangs.and_then(|hangs| Some((hangs.parent?, (hangs.rank, record)))))
}
