//! Vouching: a device signs for another whose key is lost. Nobody but a person can know whether it was so: what one device says in the name of another is
//! used only after somebody said yes to it here, and who said it stays visible.

use super::lines::Lines;
use super::strangers::{Standing, is_this, standing};
use super::taking::{Arrived, TakenIn, finish, unpack, without_foreign_keys};
use super::{Store, StoreError};
use crate::merge::{DeviceId, Header};
use rusqlite::{Connection, TransactionBehavior, params};
use std::collections::BTreeMap;

/// What one device says in the name of another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Vouching {
    /// Who says it.
    pub signer: DeviceId,
    /// In whose name.
    pub device: DeviceId,
    /// Up to which edit.
    pub last: u64,
    /// Whether it is believed.
    pub standing: Vouched,
}

/// Whether what a device says in the name of another is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Vouched {
    /// Somebody said yes; or it was used by an earlier version, which did not ask.
    Believed,
    /// It waits for somebody's yes.
    Asks,
    /// Never: the other is this device.
    ThisDevice,
    /// Not as long as the other is accepted here: it can speak for itself.
    Accepted,
    /// Never: the other went on itself, otherwise or further.
    WentOn,
}

impl Store {
    /// All that devices say in the names of others: what waits, and what was used.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn vouchings(&self) -> Result<Vec<Vouching>, StoreError> {
        const USED: &str = "SELECT signer, base, max(parts.last) FROM parts JOIN devices ON number = line
            WHERE kind = 1 AND parts.first <= parts.last AND signer <> base
                AND signer NOT IN (SELECT id FROM devices WHERE own = 1) GROUP BY signer, base";
        let mut statement = self.connection.prepare(USED)?;
        let used = statement.query_map([], |row| {
            Ok(Vouching {
                signer: DeviceId(row.get(0)?),
                device: DeviceId(row.get(1)?),
                last: row.get::<_, i64>(2)?.cast_unsigned(),
                standing: Vouched::Believed,
            })
        })?;
        let mut all: Vec<Vouching> = used.collect::<Result<_, _>>()?;
        all.extend(waiting(&self.connection, self.device)?.into_values());
        Ok(all)
    }

    /// Somebody says yes to what a device says in the name of another, as far as it is here; it is used now. What it says
    /// beyond that asks again.
    ///
    /// # Errors
    /// [`StoreError::NotToBelieve`] unless it [asks](Vouched::Asks); whatever the disk reports.
    pub fn believe(
        &mut self,
        signer: DeviceId,
        device: DeviceId,
        now_ms: u64,
    ) -> Result<TakenIn, StoreError> {
        const YES: &str = "INSERT INTO believed (signer, device, last) VALUES (?1, ?2, ?3)
            ON CONFLICT (signer, device) DO UPDATE SET last = max(last, ?3)";
        let own = self.device;
        let asked = waiting(&self.connection, own)?.get(&(signer, device)).copied();
        let last = match asked {
            Some(Vouching { standing: Vouched::Asks, last, .. }) => last,
            asked => return Err(StoreError::NotToBelieve(asked.map(|asked| asked.standing))),
        };
        without_foreign_keys(&mut self.connection, |connection| {
            let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            transaction.execute(YES, params![signer.0, device.0, last.cast_signed()])?;
            finish(transaction, own, Vec::new(), TakenIn::default(), now_ms)
        })
    }
}

/// Returns what waits because one device says it in the name of another; by the two.
pub(super) fn waiting(
    connection: &Connection,
    own: i64,
) -> Result<BTreeMap<(DeviceId, DeviceId), Vouching>, StoreError> {
    const SQL: &str = "SELECT hash, bytes FROM parts JOIN signers ON id = signer
        WHERE kind = 1 AND line IS NULL AND (accepted = 1 OR refused_ms IS NOT NULL)";
    let lines = Lines::load(connection)?;
    let mut all: BTreeMap<(DeviceId, DeviceId), Vouching> = BTreeMap::new();
    let mut statement = connection.prepare(SQL)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let arrived = unpack(row.get(0)?, &row.get::<_, Vec<u8>>(1)?, &mut 0)?;
        let Header { device, last, .. } = arrived.header;
        let signer = arrived.header.signer();
        if may_speak(connection, own, &lines, &arrived)? {
            continue;
        }
        let standing = standing_of(connection, own, &arrived)?;
        let one = all.entry((signer, device)).or_insert(Vouching { signer, device, last, standing });
        one.last = one.last.max(last);
        one.standing = one.standing.max(standing);
    }
    Ok(all)
}

/// Returns whether a bundle may be used: its signer speaks for itself, brings nothing that is not here, or is believed.
pub(super) fn may_speak(
    connection: &Connection,
    own: i64,
    lines: &Lines,
    arrived: &Arrived,
) -> Result<bool, StoreError> {
    const BELIEVED: &str = "SELECT 1 FROM believed WHERE signer = ?1 AND device = ?2 AND last >= ?3";
    let header = &arrived.header;
    let (signer, device) = (header.signer(), header.device);
    if signer == device || (!arrived.redacts && is_here(connection, lines, header)?) {
        return Ok(true);
    }
    if is_this(connection, own, device)? || standing(connection, device)? == Standing::Accepted {
        return Ok(false);
    }
    let key = params![signer.0, device.0, header.last.cast_signed()];
    Ok(connection.prepare_cached(BELIEVED)?.exists(key)?)
}

/// Returns whether all edits of a bundle are here, and the same.
fn is_here(connection: &Connection, lines: &Lines, header: &Header) -> Result<bool, StoreError> {
    for (place, line) in lines.all.iter().enumerate() {
        let reaches = line.device == header.device && line.last >= header.last;
        if reaches && lines.chain_at(connection, place, header.last)? == header.after {
            return Ok(true);
        }
    }
    Ok(false)
}

/// Why it is not used.
fn standing_of(connection: &Connection, own: i64, arrived: &Arrived) -> Result<Vouched, StoreError> {
    const ITSELF: &str =
        "SELECT last, after FROM parts WHERE kind = 1 AND signer = ?1 AND first <= last AND last >= ?2
        AND (line IS NULL OR line IN (SELECT number FROM devices WHERE base = ?1))";
    let Header { device, first, .. } = arrived.header;
    if is_this(connection, own, device)? {
        return Ok(Vouched::ThisDevice);
    }
    let mut statement = connection.prepare_cached(ITSELF)?;
    let mut rows = statement.query(params![device.0, first.cast_signed()])?;
    while let Some(row) = rows.next()? {
        let (last, after): (i64, [u8; 32]) = (row.get(0)?, row.get(1)?);
        if arrived.chain_at(last.cast_unsigned()).is_none_or(|chain| chain.0 != after) {
            return Ok(Vouched::WentOn);
        }
    }
    if standing(connection, device)? == Standing::Accepted {
        return Ok(Vouched::Accepted);
    }
    Ok(Vouched::Asks)
}
