//! What no other device is known to have, counted as people count it; and what was deleted here.

use super::cells::Kind;
use super::last_save::{Named, found};
use super::log::record_id;
use super::regretted::path_of;
use super::{Store, StoreError, clock, same_field};
use crate::record::RecordId;
use std::collections::BTreeSet;

/// What holds something that was written here and that no other device is known to have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct NobodyElse {
    /// When the first of it was written, Unix milliseconds; `None` where there is nothing.
    pub since_ms: Option<u64>,
    /// Fields.
    pub fields: usize,
    /// Pits, deleted ones too: that somebody deleted one is news.
    pub pits: usize,
    /// Passes, likewise.
    pub passes: usize,
}

/// A record that was deleted on this device.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WentAway {
    /// The record, as people find it; with the number that it would have.
    pub of: Named,
    /// When, Unix milliseconds.
    pub deleted_ms: u64,
}

impl Store {
    /// Returns what nobody else has.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn nobody_else(&self) -> Result<NobodyElse, StoreError> {
        // The lines written here, beyond what any other device said it has seen of them.
        const ALONE: &str = "SELECT record, min(log.clock) FROM log JOIN devices ON number = device
            WHERE own = 1 AND log.sequence >= first AND log.sequence > coalesce((SELECT max(sequence) FROM seen
                WHERE line = number AND observer NOT IN (SELECT id FROM devices WHERE own = 1)), 0)
            GROUP BY record";
        let connection = &*self.connection.unchecked_transaction()?;
        let mut statement = connection.prepare(ALONE)?;
        let rows = statement.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
        let rows: Vec<([u8; 16], i64)> = rows.collect::<Result<_, _>>()?;
        let mut of_kind: [BTreeSet<RecordId>; 3] = Default::default();
        let mut since: Option<i64> = None;
        for (record, clock) in rows {
            let path = path_of(connection, record_id(record)?)?;
            // What is of no field is nothing that anybody asked for: a person's name, say.
            if path.first().is_none_or(|(_, kind)| *kind != Kind::Field) {
                continue;
            }
            since = Some(since.map_or(clock, |since| since.min(clock)));
            for (kind, all) in [Kind::Field, Kind::Pit, Kind::Pass].into_iter().zip(&mut of_kind) {
                all.extend(path.iter().filter(|(_, its)| *its == kind).map(|(record, _)| *record));
            }
        }
        let fields = of_kind[0].iter().map(|field| same_field::oldest(connection, *field));
        let fields: BTreeSet<RecordId> = fields.collect::<Result<_, _>>()?;
        let [_, pits, passes] = of_kind.map(|all| all.len());
        Ok(NobodyElse { since_ms: since.map(clock::unix_ms), fields: fields.len(), pits, passes })
    }

    /// Returns what was deleted on this device and is not back, what was deleted last before the rest. [`Store::bring_back`] brings one back with
    /// what hangs on it.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn went_away(&self) -> Result<Vec<WentAway>, StoreError> {
        const OWN: &str = "SELECT base FROM devices WHERE own = 1";
        let mut statement = self.connection.prepare(OWN)?;
        let own: BTreeSet<[u8; 16]> = statement.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
        let mut all = Vec::new();
        for deleted in self.deleted()?.into_iter().rev().filter(|deleted| own.contains(&deleted.by.device.0))
        {
            let of = found(&self.connection, deleted.record)?;
            all.extend(of.map(|of| WentAway { of, deleted_ms: deleted.by.written_ms }));
        }
        Ok(all)
    }
}
