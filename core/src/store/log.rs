//! Reading and adding to the two tables. Every other file of this room goes through here for edits.

use super::cells::{Cell, Kind};
use super::kept::read_cell;
use super::lines::{Lines, content};
use super::value::{ABSENT, CellValue, Hangs, encode, read};
use super::{Change, StoreError, clock};
use crate::error::Fault;
use crate::merge::columns::MOST_PREDECESSORS;
use crate::merge::{self, Chain, Content, DeviceId, Edit, Predecessor};
use crate::record::RecordId;
use rusqlite::{Connection, OptionalExtension, Row, Transaction, params};

/// Most bytes that a value may have: half of what a bundle may hold.
pub(super) const LARGEST_VALUE: usize = 32 << 20;

/// Names an edit: the device's row number and its sequence.
pub(super) type EditName = (i64, i64);

/// An edit that no other edit of its cell has superseded.
struct Head {
    cell: Cell,
    name: EditName,
    /// Whether it is the one to show, if there are several.
    shown: bool,
    value: Vec<u8>,
}

/// The heads of all cells of one record.
pub(super) struct Heads {
    pub(super) record: RecordId,
    heads: Vec<Head>,
}

impl Heads {
    pub(super) fn load(connection: &Connection, record: RecordId) -> Result<Self, StoreError> {
        Self::load_up_to(connection, record, Cell(u16::MAX))
    }

    /// Only what is needed to tell what the record is and where it hangs.
    pub(super) fn load_marks(connection: &Connection, record: RecordId) -> Result<Self, StoreError> {
        Self::load_up_to(connection, record, Cell::DELETED)
    }

    fn load_up_to(connection: &Connection, record: RecordId, last: Cell) -> Result<Self, StoreError> {
        const SQL: &str =
            "SELECT field, device, sequence, shown, value FROM cells WHERE record = ?1 AND field <= ?2";
        let mut statement = connection.prepare_cached(SQL)?;
        let rows = statement.query_map(params![record.as_bytes(), last.0], head)?;
        Ok(Self { record, heads: rows.collect::<Result<_, _>>()? })
    }

    /// Those of the records in the lists of `parent` (at the top, if `None`) that are not deleted, list after list, each in
    /// the order of its ranks.
    pub(super) fn load_children(
        connection: &Connection,
        parent: Option<RecordId>,
    ) -> Result<Vec<Self>, StoreError> {
        const SQL: &str = "SELECT own.field, own.device, own.sequence, own.shown, own.value, own.record
            FROM cells AS child INDEXED BY children CROSS JOIN cells AS own ON own.record = child.record
            WHERE child.field = 2 AND child.shown = 1 AND child.value >= ?1 AND child.value < ?2
            AND NOT EXISTS (SELECT 1 FROM cells AS gone INDEXED BY deleted WHERE gone.record = child.record
                AND gone.field = 3 AND gone.shown = 1 AND gone.value = x'f5')
            ORDER BY child.value, child.record, own.field";
        let mut statement = connection.prepare_cached(SQL)?;
        let mut rows = statement.query(Hangs::range(parent, None))?;
        let mut found: Vec<Self> = Vec::new();
        while let Some(row) = rows.next()? {
            let record = record_id(row.get(5)?)?;
            match found.last_mut() {
                Some(last) if last.record == record => last.heads.push(head(row)?),
                _ => found.push(Self { record, heads: vec![head(row)?] }),
            }
        }
        Ok(found)
    }

    /// The edits that are the heads of one cell.
    pub(super) fn names(&self, cell: Cell) -> Vec<EditName> {
        self.heads.iter().filter(|head| head.cell == cell).map(|head| head.name).collect()
    }

    /// The bytes shown for a cell.
    pub(super) fn value(&self, cell: Cell) -> Option<&[u8]> {
        self.heads.iter().find(|head| head.cell == cell && head.shown).map(|head| head.value.as_slice())
    }

    /// The value shown for a cell.
    pub(super) fn read<T: CellValue>(&self, cell: Cell) -> Result<T, StoreError> {
        read_cell(cell, self.value(cell)).ok_or(StoreError::Unreadable { record: self.record, cell })
    }

    /// The kind; `None` if there is no such record or this version does not know its kind.
    pub(super) fn kind(&self) -> Option<Kind> {
        read(self.value(Cell::KIND)).and_then(Kind::from_number)
    }

    /// Returns what it says: the cells that are its own, as they are shown; not what it is and where it hangs.
    pub(super) fn said(&self) -> impl Iterator<Item = (Cell, &[u8])> {
        let shown =
            self.heads.iter().filter(|head| head.shown && head.value != ABSENT && head.cell.is_said());
        shown.map(|head| (head.cell, head.value.as_slice()))
    }

    /// Returns whether several stand for one of its cells.
    pub(super) fn is_disputed(&self) -> bool {
        self.heads.iter().any(|head| !head.shown)
    }

    /// Takes over what another says and this one does not.
    pub(super) fn fill(&mut self, other: Self) {
        for head in other.heads {
            let absent = self.value(head.cell).is_none_or(|value| value == ABSENT);
            if head.shown && head.cell.is_said() && absent {
                self.heads.retain(|own| own.cell != head.cell);
                self.heads.push(head);
            }
        }
    }

    pub(super) fn hangs(&self) -> Option<Hangs> {
        read(self.value(Cell::PARENT))
    }

    pub(super) fn deleted(&self) -> bool {
        read(self.value(Cell::DELETED)).unwrap_or(false)
    }

    /// An error unless the record is there, not deleted, and of that kind.
    pub(super) fn require(&self, kind: Kind) -> Result<(), StoreError> {
        if self.kind() == Some(kind) && !self.deleted() {
            return Ok(());
        }
        Err(StoreError::RecordNotFound { record: self.record, kind: kind.name() })
    }
}

fn head(row: &Row) -> rusqlite::Result<Head> {
    let name = (row.get(1)?, row.get(2)?);
    Ok(Head { cell: Cell(row.get(0)?), name, shown: row.get(3)?, value: row.get(4)? })
}

/// How many records a list has that are not deleted; the indexes alone tell.
pub(super) fn count(connection: &Connection, parent: RecordId, list: Kind) -> Result<u32, StoreError> {
    const SQL: &str = "SELECT count(*) FROM cells AS child INDEXED BY children
        WHERE child.field = 2 AND child.shown = 1 AND child.value >= ?1 AND child.value < ?2
        AND NOT EXISTS (SELECT 1 FROM cells AS gone INDEXED BY deleted WHERE gone.record = child.record
            AND gone.field = 3 AND gone.shown = 1 AND gone.value = x'f5')";
    let mut statement = connection.prepare_cached(SQL)?;
    Ok(statement.query_row(Hangs::range(Some(parent), Some(list)), |row| row.get(0))?)
}

/// The rank after that of the last record in a list, deleted or not.
pub(super) fn next_rank(
    connection: &Connection,
    parent: Option<RecordId>,
    list: Kind,
) -> Result<u64, StoreError> {
    const SQL: &str = "SELECT value FROM cells WHERE field = 2 AND shown = 1 AND value >= ?1 AND value < ?2
        ORDER BY value DESC LIMIT 1";
    let mut statement = connection.prepare_cached(SQL)?;
    let bytes: Option<Vec<u8>> =
        statement.query_row(Hangs::range(parent, Some(list)), |row| row.get(0)).optional()?;
    let hangs: Option<Hangs> = bytes.and_then(|bytes| read(Some(&bytes)));
    Ok(hangs.map_or(0, |hangs| hangs.rank.saturating_add(1)))
}

pub(super) fn record_id(bytes: [u8; 16]) -> Result<RecordId, StoreError> {
    RecordId::from_bytes(bytes)
        .ok_or_else(|| StoreError::Corrupt("a record's id is no UUID version 7".into()))
}

/// The edits of one save, in one transaction: they share a clock and follow each other in sequence.
pub(super) struct Batch<'store> {
    pub(super) transaction: Transaction<'store>,
    pub(super) device: i64,
    sequence: i64,
    clock: i64,
    chain: Chain,
    /// First sequence of the save that this one takes back.
    undoes: Option<i64>,
    pub(super) changes: Vec<Change>,
}

impl<'store> Batch<'store> {
    pub(super) fn begin(
        transaction: Transaction<'store>,
        device: i64,
        now_ms: u64,
    ) -> Result<Self, StoreError> {
        const OWN: &str = "SELECT last, clock, chain FROM devices WHERE number = ?1";
        const OTHERS: &str = "SELECT coalesce(max(clock), 0) FROM devices WHERE number <> ?1";
        let (sequence, own, chain): (i64, i64, Option<[u8; 32]>) = transaction
            .prepare_cached(OWN)?
            .query_row([device], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?;
        let others = transaction.prepare_cached(OTHERS)?.query_row([device], |row| row.get(0))?;
        let clock = clock::next_among(own, others, now_ms)?;
        let chain = if let Some(chain) = chain {
            Chain(chain)
        } else {
            let lines = Lines::load(&transaction)?;
            lines.chain_at(&transaction, lines.place(device)?, sequence.cast_unsigned())?
        };
        Ok(Self { transaction, device, sequence, clock, chain, undoes: None, changes: Vec::new() })
    }

    /// Makes this save the undoing of the one that began at that sequence.
    pub(super) fn undoing(&mut self, first_sequence: i64) {
        self.undoes = Some(first_sequence);
    }

    /// Gives a cell a value in place of `predecessors`; with other heads left, see [`Self::show_latest`].
    pub(super) fn edit(
        &mut self,
        record: RecordId,
        cell: Cell,
        predecessors: &[EditName],
        value: &[u8],
    ) -> Result<(), StoreError> {
        const LOG: &str = "INSERT INTO log
            (device, sequence, clock, record, field, predecessors, value, undoes) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
        const DROP: &str =
            "DELETE FROM cells WHERE record = ?1 AND field = ?2 AND device = ?3 AND sequence = ?4";
        const KEEP: &str = "INSERT INTO cells
            (record, field, device, sequence, clock, value) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
        // What no bundle could carry is not saved: it would keep all that comes after it here.
        if predecessors.len() as u64 > MOST_PREDECESSORS || value.len() > LARGEST_VALUE {
            let wrong = format!("{} bytes in place of {} edits", value.len(), predecessors.len());
            return Err(Fault::new(cell.to_string(), wrong, "save less at once, part by part").into());
        }
        self.sequence += 1;
        let id = record.as_bytes();
        let names = encode_names(predecessors);
        let edit = Edit {
            clock: self.clock.cast_unsigned(),
            record: *id,
            field: cell.0,
            predecessors: self.named(predecessors)?,
            content: Content::Value(value.to_vec()),
        };
        self.chain = self.chain.then(self.sequence.cast_unsigned(), &edit);
        self.transaction.prepare_cached(LOG)?.execute(params![
            self.device,
            self.sequence,
            self.clock,
            id,
            cell.0,
            names,
            value,
            self.undoes
        ])?;
        let mut drop = self.transaction.prepare_cached(DROP)?;
        for (device, sequence) in predecessors {
            drop.execute(params![id, cell.0, device, sequence])?;
        }
        self.transaction.prepare_cached(KEEP)?.execute(params![
            id,
            cell.0,
            self.device,
            self.sequence,
            self.clock,
            value
        ])?;
        self.changes.push(Change { record, cell });
        Ok(())
    }

    /// Edits by the names they have outside.
    fn named(&self, names: &[EditName]) -> Result<Vec<Predecessor>, StoreError> {
        const BASE: &str = "SELECT base FROM devices WHERE number = ?1";
        let mut statement = self.transaction.prepare_cached(BASE)?;
        let name = |&(row, sequence): &EditName| {
            let device = DeviceId(statement.query_row([row], |row| row.get(0))?);
            let name = merge::EditName { device, sequence: sequence.cast_unsigned() };
            Ok(Predecessor { name, line: 0 })
        };
        let mut predecessors = names.iter().map(name).collect::<Result<Vec<_>, StoreError>>()?;
        predecessors.sort_unstable();
        Ok(predecessors)
    }

    /// Gives a cell a value in place of all that stands there now; `None` = absent.
    pub(super) fn replace<T: CellValue>(
        &mut self,
        heads: &Heads,
        cell: Cell,
        value: &T,
    ) -> Result<(), StoreError> {
        self.edit(heads.record, cell, &heads.names(cell), &encode(value.to_value().as_ref()))
    }

    /// The same with bytes as they are.
    pub(super) fn replace_value(
        &mut self,
        heads: &Heads,
        cell: Cell,
        value: &[u8],
    ) -> Result<(), StoreError> {
        self.edit(heads.record, cell, &heads.names(cell), value)
    }

    /// The sequence that the next edit will have.
    pub(super) fn next_sequence(&self) -> i64 {
        self.sequence + 1
    }

    /// Of several heads of a cell, shows the latest.
    pub(super) fn show_latest(&self, record: RecordId, cell: Cell) -> Result<(), StoreError> {
        show_latest(&self.transaction, record.as_bytes(), cell.0)
    }

    /// Makes it last; with nothing changed, nothing is written.
    pub(super) fn commit(self) -> Result<Vec<Change>, StoreError> {
        const LINE: &str = "UPDATE devices SET last = ?2, clock = ?3, chain = ?4 WHERE number = ?1";
        if !self.changes.is_empty() {
            let line = params![self.device, self.sequence, self.clock, self.chain.0];
            self.transaction.prepare_cached(LINE)?.execute(line)?;
        }
        self.transaction.commit()?;
        Ok(self.changes)
    }
}

/// Of several heads of a cell, shows the one that is latest by (clock, device, value): an order that all devices agree on,
/// whatever they call copies of a device among themselves. Which of two equal values of two copies is shown does not matter, and is said
/// only so that it is always the same here.
pub(super) fn show_latest(connection: &Connection, record: &[u8; 16], field: u16) -> Result<(), StoreError> {
    const SQL: &str = "UPDATE cells SET shown = (device, sequence) = (
        SELECT other.device, other.sequence FROM cells AS other JOIN devices ON number = other.device
        WHERE other.record = ?1 AND other.field = ?2 ORDER BY other.clock DESC, base DESC, value DESC, device DESC, sequence DESC LIMIT 1
        ) WHERE record = ?1 AND field = ?2";
    connection.prepare_cached(SQL)?.execute(params![record, field])?;
    Ok(())
}

/// The value a cell had before an edit with these predecessors: the latest of theirs.
pub(super) fn value_of(
    connection: &Connection,
    record: RecordId,
    cell: Cell,
    names: &[EditName],
) -> Result<Vec<u8>, StoreError> {
    // A deletion names edits of other cells too.
    const SQL: &str = "SELECT log.clock, base, value FROM log JOIN devices ON number = device
        WHERE device = ?1 AND sequence = ?2 AND record = ?3 AND field = ?4";
    let mut statement = connection.prepare_cached(SQL)?;
    let mut latest: Option<(i64, [u8; 16], Vec<u8>)> = None;
    for (row, sequence) in names {
        let key = params![row, sequence, record.as_bytes(), cell.0];
        let found = statement.query_row(key, |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)));
        latest = latest.max(found.optional()?);
    }
    // What was redacted does not come back.
    let value =
        latest.map(|(_, _, value)| value).filter(|value| matches!(content(value.clone()), Content::Value(_)));
    Ok(value.unwrap_or_else(|| ABSENT.to_vec()))
}

/// No predecessors, as they stand in the log.
pub(super) const NO_NAMES: &[u8] = &[0x80];

/// Predecessors as they stand in the log.
pub(super) fn encode_names(names: &[EditName]) -> Vec<u8> {
    // Most edits replace nothing.
    if names.is_empty() {
        return NO_NAMES.to_vec();
    }
    let mut bytes = Vec::with_capacity(16 * names.len());
    // Writing to memory does not fail.
    let _ = ciborium::into_writer(names, &mut bytes);
    bytes
}

/// Predecessors from the log.
pub(super) fn decode_names(bytes: &[u8]) -> Result<Vec<EditName>, StoreError> {
    ciborium::from_reader(bytes)
        .map_err(|_| StoreError::Corrupt("predecessors of an edit are no CBOR".into()))
}
