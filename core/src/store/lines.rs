//! Lines of edits in the log: a device's, or that of another copy of it; and the chain over them.

use super::StoreError;
use super::log::{EditName as RowName, decode_names};
use crate::merge::{Chain, Content, DeviceId, Edit, EditName, Predecessor, plan};
use rusqlite::{Connection, OptionalExtension, Row, params};
use std::collections::HashMap;

/// The first byte of a value that was redacted, before its hash: no item of CBOR begins so (RFC 8949, 3.2.1).
const REDACTED: u8 = 0xff;

/// All lines, in the order of their rows.
pub(super) struct Lines {
    /// Row numbers.
    pub(super) rows: Vec<i64>,
    /// The lines, `from` as a place in these lists.
    pub(super) all: Vec<plan::Line>,
    /// Whether this store wrote them.
    pub(super) own: Vec<bool>,
    chains: Vec<Option<Chain>>,
    place: HashMap<i64, usize>,
}

impl Lines {
    pub(super) fn load(connection: &Connection) -> Result<Self, StoreError> {
        const SQL: &str = "SELECT number, base, parent, first, last, own, chain FROM devices ORDER BY number";
        type Found = (i64, [u8; 16], Option<i64>, i64, i64, bool, Option<[u8; 32]>);
        let read = |row: &Row| -> rusqlite::Result<Found> {
            Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?, row.get(4)?, row.get(5)?, row.get(6)?))
        };
        let mut statement = connection.prepare_cached(SQL)?;
        let found: Vec<Found> = statement.query_map([], read)?.collect::<Result<_, _>>()?;
        let place: HashMap<i64, usize> = found.iter().map(|row| row.0).zip(0..).collect();
        let line = |&(number, base, parent, first, last, ..): &Found| {
            // A line parts from one that was there before it, and begins at 1 or later.
            let follows = parent.is_none_or(|parent| parent < number && place.contains_key(&parent));
            if !follows || first < 1 || last < first - 1 {
                return Err(StoreError::Corrupt(unfit(DeviceId(base))));
            }
            Ok(plan::Line {
                device: DeviceId(base),
                from: parent.and_then(|parent| place.get(&parent).copied()),
                first: first.cast_unsigned(),
                last: last.cast_unsigned(),
            })
        };
        Ok(Self {
            rows: found.iter().map(|row| row.0).collect(),
            all: found.iter().map(line).collect::<Result<_, _>>()?,
            own: found.iter().map(|row| row.5).collect(),
            chains: found.iter().map(|row| row.6.map(Chain)).collect(),
            place,
        })
    }

    /// The place of a row.
    pub(super) fn place(&self, row: i64) -> Result<usize, StoreError> {
        let unknown = || StoreError::Corrupt("an edit is of a device the store does not know".into());
        self.place.get(&row).copied().ok_or_else(unknown)
    }

    /// The chain of a line at one of its own sequences, or right before the first of them.
    pub(super) fn chain_at(
        &self,
        connection: &Connection,
        line: usize,
        sequence: u64,
    ) -> Result<Chain, StoreError> {
        // The nearest place before it where the chain is known without asking the log.
        const BEFORE: &str = "SELECT last, after FROM parts
            WHERE line = ?1 AND last <= ?2 AND last >= ?3 ORDER BY last DESC LIMIT 1";
        let plan::Line { device, from, first, last } = self.all[line];
        if let (true, Some(chain)) = (sequence == last, self.chains[line]) {
            return Ok(chain);
        }
        if sequence < first {
            return from.map_or(Ok(Chain::start(device)), |from| self.chain_at(connection, from, sequence));
        }
        let known: Option<(i64, [u8; 32])> = connection
            .prepare_cached(BEFORE)?
            .query_row(params![self.rows[line], sequence.cast_signed(), first.cast_signed()], |row| {
                Ok((row.get(0)?, row.get(1)?))
            })
            .optional()?;
        let (known, chain) = match known {
            Some((known, chain)) => (known.cast_unsigned(), Chain(chain)),
            None => (first - 1, self.chain_at(connection, line, first - 1)?),
        };
        self.made(connection, line, known, chain, sequence)
    }

    /// The chain at a sequence, made from the log after a place where it is known.
    pub(super) fn made(
        &self,
        connection: &Connection,
        line: usize,
        known: u64,
        chain: Chain,
        sequence: u64,
    ) -> Result<Chain, StoreError> {
        let mut chain = chain;
        self.each_edit(connection, line, known + 1, sequence, |sequence, edit| {
            chain = chain.then(sequence, &edit);
            Ok(())
        })?;
        Ok(chain)
    }

    /// Goes over edits of a line, from its own first at the earliest. A predecessor's `line` is the place of its line in these lists.
    pub(super) fn each_edit(
        &self,
        connection: &Connection,
        line: usize,
        from: u64,
        to: u64,
        mut each: impl FnMut(u64, Edit) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        const SQL: &str = "SELECT sequence, clock, record, field, predecessors, value FROM log
            WHERE device = ?1 AND sequence BETWEEN ?2 AND ?3 ORDER BY sequence";
        let mut statement = connection.prepare_cached(SQL)?;
        let mut rows = statement.query(params![self.rows[line], from.cast_signed(), to.cast_signed()])?;
        let mut next = from;
        let device = self.all[line].device;
        // Whatever is damaged here is told by the edits that it is of.
        let of_edits = |next: u64, error: StoreError| match error {
            StoreError::Corrupt(what) => {
                StoreError::Corrupt(format!("edits {next} to {to} of device {device} cannot be read: {what}"))
            }
            error => error,
        };
        while let Some(row) = rows.next().map_err(|error| of_edits(next, error.into()))? {
            let (sequence, edit) = self.edit(row).map_err(|error| of_edits(next, error))?;
            if sequence != next {
                break;
            }
            next += 1;
            each(sequence, edit)?;
        }
        if next == to + 1 {
            return Ok(());
        }
        Err(StoreError::Corrupt(format!("edit {next} of device {device} is missing")))
    }

    /// An edit and its sequence.
    fn edit(&self, row: &Row) -> Result<(u64, Edit), StoreError> {
        let edit = Edit {
            clock: row.get::<_, i64>(1)?.cast_unsigned(),
            record: row.get(2)?,
            field: row.get(3)?,
            predecessors: self.predecessors(decode_names(&row.get::<_, Vec<u8>>(4)?)?)?,
            content: content(row.get(5)?),
        };
        Ok((row.get::<_, i64>(0)?.cast_unsigned(), edit))
    }

    fn predecessors(&self, names: Vec<RowName>) -> Result<Vec<Predecessor>, StoreError> {
        let mut predecessors = Vec::with_capacity(names.len());
        for (row, sequence) in names {
            let place = self.place(row)?;
            let name = EditName { device: self.all[place].device, sequence: sequence.cast_unsigned() };
            predecessors.push(Predecessor { name, line: u32::try_from(place).unwrap_or(u32::MAX) });
        }
        predecessors.sort_unstable();
        Ok(predecessors)
    }
}

/// Returns what is told where the row of a device cannot be right.
pub(super) fn unfit(device: DeviceId) -> String {
    format!("what is noted of device {device} does not fit its edits")
}

/// A value from the log.
pub(super) fn content(value: Vec<u8>) -> Content {
    match <[u8; 33]>::try_from(value.as_slice()) {
        Ok([REDACTED, hash @ ..]) => Content::Redacted(hash),
        _ => Content::Value(value),
    }
}

/// A value as the log has it.
pub(super) fn to_log(content: Content) -> Vec<u8> {
    match content {
        Content::Value(value) => value,
        Content::Redacted(hash) => [&[REDACTED], hash.as_slice()].concat(),
    }
}
