//! The other devices: whom to trust, what is missing from them, what they lack, and what of this one nobody else has.

use super::lines::Lines;
use super::{Store, StoreError};
use crate::merge::plan::Missing;
use crate::merge::{DeviceId, FileWriter, Header, Part};
use rusqlite::{OptionalExtension, params};
use std::collections::{BTreeSet, HashSet};
use std::io::Write;

/// A device that this one knows of.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(clippy::struct_excessive_bools, reason = "each says another thing of a device, in any mixture")]
pub struct Partner {
    /// Its identity, shown as a short fingerprint.
    pub device: DeviceId,
    /// How its holder calls themselves; empty if not said.
    pub holder: String,
    /// Whether what it signs is taken in.
    pub accepted: bool,
    /// What it sealed later than this by its own clock, Unix milliseconds, is refused; 0: whatever is not here; `None`: it is not refused.
    pub refused_ms: Option<u64>,
    /// Edits of it that are here.
    pub edits: u64,
    /// Whether it was copied, so that two devices went on under its name.
    pub copied: bool,
    /// Whether it wrote with a clock more than a day ahead.
    pub clock_wrong: bool,
    /// Whether it is this device, now or before its store was restored.
    pub own: bool,
}

impl Store {
    /// All devices whose edits or bundles are here, in the order of their ids.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn partners(&self) -> Result<Vec<Partner>, StoreError> {
        const SQL: &str = "SELECT id, coalesce(holder, ''), coalesce(accepted, 0),
                (SELECT coalesce(sum(last + 1 - first), 0) FROM devices WHERE base = all_devices.id),
                EXISTS (SELECT 1 FROM devices WHERE base = all_devices.id AND parent IS NOT NULL),
                coalesce(clock_wrong, 0),
                EXISTS (SELECT 1 FROM devices WHERE id = all_devices.id AND own = 1), refused_ms
            FROM (SELECT id FROM signers UNION SELECT base FROM devices) AS all_devices
            LEFT JOIN signers USING (id) ORDER BY id";
        let mut statement = self.connection.prepare(SQL)?;
        let rows = statement.query_map([], |row| {
            Ok(Partner {
                device: DeviceId(row.get(0)?),
                holder: row.get(1)?,
                accepted: row.get(2)?,
                edits: row.get::<_, i64>(3)?.cast_unsigned(),
                copied: row.get(4)?,
                clock_wrong: row.get(5)?,
                own: row.get(6)?,
                refused_ms: row.get::<_, Option<i64>>(7)?.map(i64::cast_unsigned),
            })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// How many edits written here no other device is known to have.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn not_carried(&self) -> Result<u64, StoreError> {
        const SQL: &str =
            "SELECT coalesce(sum(last + 1 - max(first, 1 + coalesce((SELECT max(sequence) FROM seen
                WHERE line = number AND observer NOT IN (SELECT id FROM devices WHERE own = 1)), 0))), 0)
            FROM devices WHERE own = 1 AND last >= first AND last > coalesce((SELECT max(sequence) FROM seen
                WHERE line = number AND observer NOT IN (SELECT id FROM devices WHERE own = 1)), 0)";
        Ok(self.connection.query_row(SQL, [], |row| row.get::<_, i64>(0))?.cast_unsigned())
    }

    /// Writes a file with all that is here of accepted devices and all that was taken in, this one first sealed ([`Store::seal`]); of `to`, if told, what that
    /// device said it has is left out. Tells how many bundles it holds.
    ///
    /// # Errors
    /// Whatever the disk or the writer reports.
    pub fn hand_over<W: Write>(
        &self,
        to: Option<DeviceId>,
        file: &mut FileWriter<W>,
    ) -> Result<u64, StoreError> {
        let mut count = 0;
        self.each_part_for(to, &HashSet::new(), |part| {
            count += 1;
            Ok(file.add(part)?)
        })?;
        Ok(count)
    }

    /// Goes over the parts that are handed over, but those whose hash is `there`, in the order in which they are best taken in.
    pub(super) fn each_part_for(
        &self,
        to: Option<DeviceId>,
        there: &HashSet<[u8; 32]>,
        mut each: impl FnMut(&[u8]) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        // A device's edits after each other.
        const PARTS: &str = "SELECT hash FROM parts LEFT JOIN signers ON id = signer
            WHERE kind = 1 AND (accepted = 1 OR refused_ms IS NOT NULL OR line IS NOT NULL)
            ORDER BY line, first, hash";
        const HAS: &str = "SELECT 1 FROM parts JOIN seen USING (line)
            WHERE hash = ?1 AND redacts = 0 AND observer = ?2 AND sequence >= last
                AND (first <= last OR signer = ?2)";
        const BYTES: &str = "SELECT bytes FROM parts WHERE hash = ?1";
        let mut statement = self.connection.prepare(PARTS)?;
        let hashes: Vec<[u8; 32]> = statement.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
        for hash in hashes.into_iter().filter(|hash| !there.contains(hash)) {
            if let Some(to) = to
                && self.connection.prepare_cached(HAS)?.exists(params![hash, to.0])?
            {
                continue;
            }
            let bytes: Vec<u8> =
                self.connection.prepare_cached(BYTES)?.query_row([hash], |row| row.get(0))?;
            each(&bytes)?;
        }
        Ok(())
    }

    /// Edits without which some bundles that are here cannot be used: exactly those that none of the bundles brings.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn missing(&self) -> Result<BTreeSet<Missing>, StoreError> {
        const WAITING: &str = "SELECT bytes FROM parts JOIN signers ON id = signer
            WHERE kind = 1 AND line IS NULL AND (accepted = 1 OR refused_ms IS NOT NULL)";
        let lines = Lines::load(&self.connection)?;
        let mut statement = self.connection.prepare(WAITING)?;
        let mut rows = statement.query([])?;
        let mut headers = Vec::new();
        while let Some(row) = rows.next()? {
            let bytes: Vec<u8> = row.get(0)?;
            let (part, _) = Part::first_of(&bytes)?;
            headers.push(Header::of_content(part.content)?);
        }
        Ok(lacking(&lines, &headers))
    }

    /// The holder a device gave, if it is known and gave one.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn holder(&self, device: DeviceId) -> Result<Option<String>, StoreError> {
        const SQL: &str = "SELECT holder FROM signers WHERE id = ?1 AND holder <> ''";
        Ok(self.connection.query_row(SQL, [device.0], |row| row.get(0)).optional()?)
    }
}

/// Returns what the lines and the waiting bundles together do not have of what the bundles need.
fn lacking(lines: &Lines, waiting: &[Header]) -> BTreeSet<Missing> {
    let mut needed: std::collections::BTreeMap<DeviceId, u64> = std::collections::BTreeMap::new();
    for header in waiting {
        let before = (header.device, header.first - 1);
        let named = header.witness.iter().map(|witness| (witness.name.device, witness.name.sequence));
        for (device, sequence) in named.chain([before]) {
            let furthest = needed.entry(device).or_default();
            *furthest = sequence.max(*furthest);
        }
    }
    let mut missing = BTreeSet::new();
    for (device, to) in needed {
        let here = lines.all.iter().filter(|line| line.device == device).map(|line| line.last).max();
        let mut next = here.unwrap_or(0) + 1;
        let mut ranges: Vec<(u64, u64)> = waiting
            .iter()
            .filter(|header| header.device == device && header.count() > 0)
            .map(|header| (header.first, header.last))
            .collect();
        ranges.sort_unstable();
        for (first, last) in ranges.into_iter().chain([(to + 1, to)]) {
            if next < first && next <= to {
                missing.insert(Missing { device, first: next, last: to.min(first - 1) });
            }
            next = next.max(last + 1);
        }
    }
    missing
}
