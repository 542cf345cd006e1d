//! The bundles that are kept: each as it came, noted as what it is, and of others all that is needed to hand them on.

use super::{DeviceId, StoreError};
use crate::merge::{Header, Part, PartKind};
use rusqlite::{Connection, Row};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;

/// A row of `parts` as it is noted, but for its bytes.
struct Noted {
    hash: [u8; 32],
    kind: u16,
    first: i64,
    last: i64,
    before: Option<[u8; 32]>,
    after: Option<[u8; 32]>,
    signer: Option<[u8; 16]>,
    /// The device of the line that it was used in, and how far that line is here.
    used: Option<([u8; 16], i64)>,
}

impl Noted {
    fn read(row: &Row) -> rusqlite::Result<Self> {
        let used = match row.get(7)? {
            Some(base) => Some((base, row.get(8)?)),
            None => None,
        };
        Ok(Self {
            hash: row.get(0)?,
            kind: row.get(1)?,
            first: row.get(2)?,
            last: row.get(3)?,
            before: row.get(4)?,
            after: row.get(5)?,
            signer: row.get(6)?,
            used,
        })
    }

    /// Returns whether the bytes are those that came, and say of themselves what is noted.
    fn fits(&self, bytes: &[u8]) -> bool {
        let Ok((part, [])) = Part::first_of(bytes) else { return false };
        if part.hash != self.hash {
            return false;
        }
        match part.kind {
            PartKind::Edits => {
                self.kind == 1
                    && Header::of_content(part.content).is_ok_and(|header| self.fits_header(&header))
            }
            PartKind::Other(kind) => self.kind == kind && (self.first, self.last) == (0, 0),
            PartKind::PhotoPiece | PartKind::End => false,
        }
    }

    fn fits_header(&self, header: &Header) -> bool {
        (header.first.cast_signed(), header.last.cast_signed()) == (self.first, self.last)
            && self.before == Some(header.before.0)
            && self.after == Some(header.after.0)
            && self.signer == Some(header.signer().0)
            && self.used.is_none_or(|(device, here)| device == header.device.0 && self.last <= here)
    }

    /// How it is told which one it is.
    fn name(&self) -> String {
        match (self.used, self.signer) {
            (Some((device, _)), _) if self.first <= self.last => {
                format!("edits {} to {} of device {}", self.first, self.last, DeviceId(device))
            }
            (_, Some(signer)) => format!("what device {} signed", DeviceId(signer)),
            _ => "something that is only handed on".into(),
        }
    }
}

/// An error if a bundle is not as it came or noted as something else, or if one is missing of another's edits.
pub(super) fn check_parts(connection: &Connection) -> Result<(), StoreError> {
    const ALL: &str =
        "SELECT hash, kind, parts.first, parts.last, before, after, signer, base, devices.last, bytes
        FROM parts LEFT JOIN devices ON number = line";
    const UNKNOWN: &str = "SELECT id, key FROM signers";
    let mut statement = connection.prepare(ALL)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let noted = Noted::read(row)?;
        if !noted.fits(row.get_ref(9)?.as_blob().unwrap_or_default()) {
            return Err(StoreError::Corrupt(format!("the bundle with {} is not as it came", noted.name())));
        }
    }
    let mut statement = connection.prepare(UNKNOWN)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let device = DeviceId(row.get(0)?);
        if DeviceId::of_key(&row.get(1)?) != device {
            return Err(StoreError::Corrupt(format!("the key of device {device} is not its own")));
        }
    }
    check_held(connection)?;
    check_cover(connection)
}

/// An error if a file that waits for a newer version is not as it came.
fn check_held(connection: &Connection) -> Result<(), StoreError> {
    let mut statement = connection.prepare("SELECT hash, bytes FROM held")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let hash: Vec<u8> = row.get(0)?;
        if Sha256::digest(row.get_ref(1)?.as_blob().unwrap_or_default())[..] != hash {
            let what = "a file that waits for an update is not as it came (taking it in again mends it)";
            return Err(StoreError::Corrupt(what.into()));
        }
    }
    Ok(())
}

/// An error if edits of others are here that no bundle hands on.
fn check_cover(connection: &Connection) -> Result<(), StoreError> {
    const LINES: &str = "SELECT number, base, first, last FROM devices WHERE own = 0";
    const PARTS: &str = "SELECT first, last FROM parts
        WHERE line = ?1 AND kind = 1 AND first <= last ORDER BY first";
    let mut lines = connection.prepare(LINES)?;
    let mut parts = connection.prepare(PARTS)?;
    let mut rows = lines.query([])?;
    while let Some(row) = rows.next()? {
        let (number, first, last): (i64, i64, i64) = (row.get(0)?, row.get(2)?, row.get(3)?);
        let mut next = first;
        let mut rows = parts.query([number])?;
        while let Some(part) = rows.next()? {
            let (from, to): (i64, i64) = (part.get(0)?, part.get(1)?);
            if from <= next {
                next = next.max(to + 1);
            }
        }
        if next <= last {
            let device = DeviceId(row.get(1)?);
            return Err(StoreError::Corrupt(format!(
                "the bundle with edits {next} to {last} of device {device} is missing"
            )));
        }
    }
    Ok(())
}

/// The chain of a line after each of its bundles, by the last sequence.
pub(super) fn chains_of_parts(
    connection: &Connection,
    line: i64,
) -> Result<BTreeMap<u64, [u8; 32]>, StoreError> {
    const SQL: &str = "SELECT last, after FROM parts WHERE line = ?1 AND kind = 1";
    let mut statement = connection.prepare_cached(SQL)?;
    let rows = statement.query_map([line], |row| Ok((row.get::<_, i64>(0)?.cast_unsigned(), row.get(1)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}
