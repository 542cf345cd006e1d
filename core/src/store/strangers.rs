//! Whom to believe: devices that are accepted, those that are not known yet and wait, and those that are refused.

use super::taking::{TakenIn, finish, without_foreign_keys};
use super::{Store, StoreError};
use crate::harmless::typed_name;
use crate::merge::{DeviceId, FINGERPRINT_BYTES, Header, Part};
use rusqlite::{Connection, OptionalExtension, TransactionBehavior, params};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

/// Most bytes of one device that is not accepted that wait here, and of all of them together. Our judgement: ten years of notes
/// of one walker are some 5 MB; and nobody who was not accepted fills the disk.
const MOST_OF_ONE_BYTES: i64 = 16 << 20;
const MOST_OF_ALL_BYTES: i64 = 64 << 20;
/// Most bytes of files of newer versions, of which nobody can say yet whose they are. Our judgement.
const MOST_HELD_BYTES: i64 = 64 << 20;

/// Files in shared folders may hold what was not kept when they were read.
const READ_AGAIN: &str = "DELETE FROM shared_files";

/// What waits here for somebody's word or an update.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Waiting {
    /// Bundles of devices that are neither accepted nor refused.
    pub bundles: u64,
    /// Files of a newer version.
    pub files: u64,
    /// Bytes of both.
    pub bytes: u64,
}

impl Store {
    /// Accepts a device: what it signs is taken in from now on, and what waits for it is. Nobody else answers for it any more.
    ///
    /// # Errors
    /// [`StoreError::SameFingerprint`] if another device that is known shows the same fingerprint; whatever the disk reports.
    pub fn accept(&mut self, device: DeviceId, now_ms: u64) -> Result<TakenIn, StoreError> {
        const ALIKE: &str = "SELECT 1 FROM (SELECT id FROM signers UNION SELECT base FROM devices)
            WHERE substr(id, 1, ?2) = substr(?1, 1, ?2) AND id <> ?1";
        if self.connection.prepare_cached(ALIKE)?.exists(params![device.0, FINGERPRINT_BYTES])? {
            return Err(StoreError::SameFingerprint(device));
        }
        let own = self.device;
        without_foreign_keys(&mut self.connection, |connection| {
            let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            if let Standing::Refused(_) = standing(&transaction, device)? {
                transaction.execute(READ_AGAIN, [])?;
            }
            transaction
                .execute("UPDATE signers SET accepted = 1, refused_ms = NULL WHERE id = ?1", [device.0])?;
            transaction.execute("DELETE FROM believed WHERE device = ?1", [device.0])?;
            finish(transaction, own, Vec::new(), TakenIn::default(), now_ms)
        })
    }

    /// Accepts a device before anything of it came, by the public key it showed.
    ///
    /// # Errors
    /// As [`Store::accept`].
    pub fn accept_key(&mut self, key: &[u8; 32], holder: &str, now_ms: u64) -> Result<TakenIn, StoreError> {
        const SIGNER: &str =
            "INSERT OR IGNORE INTO signers (id, key, holder, accepted) VALUES (?1, ?2, ?3, 0)";
        let device = DeviceId::of_key(key);
        self.connection.execute(SIGNER, params![device.0, key, typed_name(holder)])?;
        self.accept(device, now_ms)
    }

    /// Refuses a device: what it sealed after `since_ms` (by its own clock; `None`: whatever is not here yet) is not taken in from now on, and
    /// what waits of that goes. What was taken in stays; the log takes nothing back. Tells how many bundles went.
    ///
    /// Whoever has the key of a lost device can set its clock back: with a time told, what it sealed before is believed all the same.
    ///
    /// # Errors
    /// [`StoreError::OwnDevice`] if it is this one; whatever the disk reports.
    pub fn refuse(&mut self, device: DeviceId, since_ms: Option<u64>) -> Result<u64, StoreError> {
        const SIGNER: &str = "UPDATE signers SET accepted = 0, refused_ms = ?2 WHERE id = ?1";
        const WAITING: &str = "SELECT hash, bytes FROM parts WHERE signer = ?1 AND line IS NULL";
        let refused_ms = since_ms.map_or(0, |ms| i64::try_from(ms).unwrap_or(i64::MAX));
        if is_this(&self.connection, self.device, device)? {
            return Err(StoreError::OwnDevice);
        }
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        transaction.execute(SIGNER, params![device.0, refused_ms])?;
        let mut gone = Vec::new();
        {
            let mut statement = transaction.prepare(WAITING)?;
            let mut rows = statement.query([device.0])?;
            while let Some(row) = rows.next()? {
                let bytes: Vec<u8> = row.get(1)?;
                let (part, _) = Part::first_of(&bytes)?;
                if is_later(&Header::of_content(part.content)?, refused_ms) {
                    gone.push(row.get::<_, [u8; 32]>(0)?);
                }
            }
        }
        for hash in &gone {
            transaction.execute("DELETE FROM parts WHERE hash = ?1", [hash])?;
        }
        transaction.commit()?;
        Ok(gone.len() as u64)
    }

    /// How much waits here for somebody's word or an update.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn waiting(&self) -> Result<Waiting, StoreError> {
        const SQL: &str = "SELECT count(*), coalesce(sum(length(bytes)), 0) FROM ";
        let count = |what: &str| -> Result<(i64, i64), StoreError> {
            let sql = format!("{SQL}{what}");
            Ok(self.connection.query_row(&sql, [], |row| Ok((row.get(0)?, row.get(1)?)))?)
        };
        let (bundles, of_strangers) = count(OF_STRANGERS)?;
        let (files, held) = count("held")?;
        let [bundles, files, bytes] = [bundles, files, of_strangers + held].map(i64::cast_unsigned);
        Ok(Waiting { bundles, files, bytes })
    }

    /// Throws away what waits: bundles of devices that are not accepted, and files of newer versions. They can be taken in again.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn empty_waiting(&mut self) -> Result<Waiting, StoreError> {
        let waited = self.waiting()?;
        let gone = format!("DELETE FROM parts WHERE hash IN (SELECT hash FROM {OF_STRANGERS})");
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        transaction.execute(&gone, [])?;
        transaction.execute("DELETE FROM held", [])?;
        transaction.execute(READ_AGAIN, [])?;
        transaction.commit()?;
        Ok(waited)
    }
}

/// Bundles of devices that are neither accepted nor refused. (Parts of kinds nobody knows came with no signature; earlier versions kept them.)
const OF_STRANGERS: &str = "(SELECT hash, bytes, signer FROM parts LEFT JOIN signers ON id = signer
    WHERE line IS NULL AND (kind <> 1 OR (accepted = 0 AND refused_ms IS NULL)))";

/// Returns whether there is room for bytes of a device that is not accepted.
pub(super) fn has_room(connection: &Connection, signer: DeviceId, bytes: usize) -> Result<bool, StoreError> {
    let sql = format!(
        "SELECT coalesce(sum(length(bytes)), 0), coalesce(sum(length(bytes)) FILTER (WHERE signer = ?1), 0)
        FROM {OF_STRANGERS}"
    );
    let (all, one): (i64, i64) =
        connection.prepare_cached(&sql)?.query_row([signer.0], |row| Ok((row.get(0)?, row.get(1)?)))?;
    let bytes = i64::try_from(bytes).unwrap_or(i64::MAX);
    Ok(one.saturating_add(bytes) <= MOST_OF_ONE_BYTES && all.saturating_add(bytes) <= MOST_OF_ALL_BYTES)
}

/// Keeps a file of a newer version for later, if there is room for it.
pub(super) fn hold(connection: &Connection, file: &[u8]) -> Result<(), StoreError> {
    const HELD: &str = "SELECT coalesce(sum(length(bytes)), 0) FROM held WHERE hash <> ?1";
    const HOLD: &str = "INSERT OR REPLACE INTO held (hash, bytes) VALUES (?1, ?2)";
    let hash = Sha256::digest(file);
    let held: i64 = connection.query_row(HELD, [hash.as_slice()], |row| row.get(0))?;
    let bytes = i64::try_from(file.len()).unwrap_or(i64::MAX);
    if held.saturating_add(bytes) > MOST_HELD_BYTES {
        return Err(StoreError::TooMuchWaits);
    }
    connection.execute(HOLD, params![hash.as_slice(), file])?;
    Ok(())
}

/// What is known of who signs.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Standing {
    Accepted,
    /// Nobody said anything yet.
    Stranger,
    /// What it sealed after that time is refused.
    Refused(i64),
}

pub(super) fn standing(connection: &Connection, device: DeviceId) -> Result<Standing, StoreError> {
    // Earlier devices of this store are believed from the start.
    const SQL: &str = "SELECT accepted, refused_ms FROM signers WHERE id = ?1
        UNION ALL SELECT 1, NULL FROM devices WHERE id = ?1 AND own = 1 LIMIT 1";
    let found = connection
        .prepare_cached(SQL)?
        .query_row([device.0], |row| Ok((row.get::<_, bool>(0)?, row.get::<_, Option<i64>>(1)?)))
        .optional()?;
    Ok(match found {
        Some((true, _)) => Standing::Accepted,
        Some((_, Some(refused_ms))) => Standing::Refused(refused_ms),
        _ => Standing::Stranger,
    })
}

/// Returns whether a bundle was sealed after a time.
pub(super) fn is_later(header: &Header, refused_ms: i64) -> bool {
    i64::try_from(header.sealed_ms).unwrap_or(i64::MAX) > refused_ms || refused_ms == 0
}

/// Keeps who signed a bundle, and how they call themselves. An old bundle brings back no earlier name: it counts how far the
/// device's own edits went, and then when it sealed.
pub(super) fn keep_signer(connection: &Connection, header: &Header) -> Result<(), StoreError> {
    const SIGNER: &str = "INSERT INTO signers (id, key, holder, accepted, ahead_ms, holder_last, holder_ms)
        VALUES (?1, ?2, ?3, EXISTS (SELECT 1 FROM devices WHERE id = ?1 AND own = 1), ?4, ?5, ?6)
        ON CONFLICT (id) DO UPDATE SET ahead_ms = ?4, holder_last = ?5, holder_ms = ?6,
            holder = CASE ?3 WHEN '' THEN holder ELSE ?3 END
        WHERE (?5, ?6) >= (holder_last, holder_ms)";
    let signer = header.signer();
    let last = if signer == header.device { header.last.cast_signed() } else { 0 };
    let sealed_ms = i64::try_from(header.sealed_ms).unwrap_or(i64::MAX);
    connection.prepare_cached(SIGNER)?.execute(params![
        signer.0,
        header.key,
        typed_name(&header.holder),
        header.ahead_ms,
        last,
        sealed_ms
    ])?;
    Ok(())
}

/// Returns whether a device is the one that writes here now; `own` is its row.
pub(super) fn is_this(connection: &Connection, own: i64, device: DeviceId) -> Result<bool, StoreError> {
    const SQL: &str = "SELECT 1 FROM devices WHERE number = ?1 AND id = ?2";
    Ok(connection.prepare_cached(SQL)?.exists(params![own, device.0])?)
}

/// Devices whose bundles wait to be accepted.
pub(super) fn strangers(connection: &Connection) -> Result<BTreeSet<DeviceId>, StoreError> {
    const SQL: &str = "SELECT DISTINCT id FROM parts JOIN signers ON id = signer
        WHERE line IS NULL AND accepted = 0 AND refused_ms IS NULL";
    let mut statement = connection.prepare_cached(SQL)?;
    let found = statement.query_map([], |row| row.get(0).map(DeviceId))?.collect::<Result<_, _>>()?;
    Ok(found)
}
