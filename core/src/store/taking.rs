//! Taking in: what others wrote comes into the log, all of a file or nothing of it.

use super::lines::Lines;
use super::packed::Packed;
use super::redacting::empty_write_ahead_log;
use super::using::Using;
use super::writing::EditWriter;
use super::{Store, StoreError, clock};
use crate::merge::plan::{self, Arrival, Fate, Line, Missing};
use crate::merge::{Bundle, Chain, Content, Damage, DeviceId, Header, Part, PartKind, read_file};
use rusqlite::{Connection, Transaction, TransactionBehavior, params};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

/// Bytes of edits that are kept between checking and using them; of more, the bundles are unpacked again.
const MOST_KEPT_BYTES: usize = 8 << 20;

/// What taking in came to; it is on the disk.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct TakenIn {
    /// Edits that are new here.
    pub edits: u64,
    /// Bundles of the file that were here already.
    pub known: u32,
    /// Edits without which some of what came cannot be used yet.
    pub missing: BTreeSet<Missing>,
    /// Devices whose bundles wait until they are accepted.
    pub strangers: BTreeSet<DeviceId>,
    /// Devices that turn out to have been copied: two went on under one name. What both wrote is kept.
    pub copied: BTreeSet<DeviceId>,
    /// Devices whose clock is more than a day ahead.
    pub clock_wrong: BTreeSet<DeviceId>,
    /// The file is of a newer version: it is kept as it is, to be taken in after an update.
    pub held: bool,
}

/// A bundle on its way in.
pub(super) struct Arrived {
    pub(super) hash: [u8; 32],
    pub(super) header: Header,
    chains: Vec<Chain>,
    /// `None`: to be unpacked again.
    pub(super) edits: Option<Packed>,
    /// Whether values were taken out of it.
    pub(super) redacts: bool,
}

impl Store {
    /// Takes in a file of bundles: checked as a whole, then written in one transaction. Bundles of devices that were not accepted
    /// wait, and so do those that need others first; [`Store::accept`] and later files bring them in.
    ///
    /// # Errors
    /// [`StoreError::Bundle`] if any bit of it is not as it was written; whatever the disk reports. Nothing was changed then.
    pub fn take_in(&mut self, file: &[u8], now_ms: u64) -> Result<TakenIn, StoreError> {
        match read_all(file) {
            Ok((parts, arrived)) => self.take_in_parts(&parts, arrived, now_ms),
            Err(Damage::Newer(_)) => {
                const HOLD: &str = "INSERT OR REPLACE INTO held (hash, bytes) VALUES (?1, ?2)";
                self.connection.execute(HOLD, params![Sha256::digest(file).as_slice(), file])?;
                Ok(TakenIn { held: true, ..TakenIn::default() })
            }
            Err(damage) => Err(damage.into()),
        }
    }

    /// Accepts a device: what it signs is taken in from now on, and what waits for it is.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn accept(&mut self, device: DeviceId, now_ms: u64) -> Result<TakenIn, StoreError> {
        without_foreign_keys(&mut self.connection, |connection| {
            let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            transaction.execute("UPDATE signers SET accepted = 1 WHERE id = ?1", [device.0])?;
            finish(transaction, Vec::new(), TakenIn::default(), now_ms)
        })
    }

    /// Accepts a device before anything of it came, by the public key it showed.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn accept_key(&mut self, key: &[u8; 32], holder: &str, now_ms: u64) -> Result<TakenIn, StoreError> {
        const SIGNER: &str =
            "INSERT OR IGNORE INTO signers (id, key, holder, accepted) VALUES (?1, ?2, ?3, 0)";
        let device = DeviceId::of_key(key);
        self.connection.execute(SIGNER, params![device.0, key, holder])?;
        self.accept(device, now_ms)
    }

    /// Tries again the files that were kept because they are of a newer version than the program was then. Those that
    /// turn out to be damaged are dropped.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn take_in_held(&mut self, now_ms: u64) -> Result<Vec<TakenIn>, StoreError> {
        const ALL: &str = "SELECT hash, bytes FROM held";
        let found: Vec<(Vec<u8>, Vec<u8>)> = self
            .connection
            .prepare(ALL)?
            .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect::<Result<_, _>>()?;
        let mut taken = Vec::new();
        for (hash, bytes) in found {
            match self.take_in(&bytes, now_ms) {
                Ok(came) if came.held => continue,
                Ok(came) => taken.push(came),
                // That it was damaged too could not be seen before; it is of no use, and must not stop the others.
                Err(StoreError::Bundle(_)) => {}
                Err(error) => return Err(error),
            }
            self.connection.execute("DELETE FROM held WHERE hash = ?1", [hash])?;
        }
        Ok(taken)
    }

    /// Devices whose bundles wait to be accepted.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn strangers(&self) -> Result<BTreeSet<DeviceId>, StoreError> {
        strangers(&self.connection)
    }

    fn take_in_parts(
        &mut self,
        parts: &[Part],
        arrived: Vec<Option<Arrived>>,
        now_ms: u64,
    ) -> Result<TakenIn, StoreError> {
        let redacts = arrived.iter().flatten().any(|arrived| arrived.redacts);
        let taken = without_foreign_keys(&mut self.connection, |connection| {
            let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let (mut taken, mut new) = (TakenIn::default(), Vec::new());
            for (part, arrived) in parts.iter().zip(arrived) {
                match arrived {
                    None => keep_unknown(&transaction, part)?,
                    Some(arrived) if keep(&transaction, part, &arrived)? => new.push(arrived),
                    Some(_) => taken.known += 1,
                }
            }
            finish(transaction, new, taken, now_ms)
        })?;
        if redacts {
            empty_write_ahead_log(&self.connection)?;
        }
        Ok(taken)
    }
}

/// All parts of a file, and what those with edits hold.
fn read_all(file: &[u8]) -> Result<(Vec<Part<'_>>, Vec<Option<Arrived>>), Damage> {
    let parts: Vec<Part> =
        read_file(file)?.into_iter().filter(|part| part.kind != PartKind::PhotoPiece).collect();
    let mut kept_bytes = 0;
    let mut arrived = Vec::with_capacity(parts.len());
    for part in &parts {
        arrived.push(match part.kind {
            PartKind::Edits => Some(Arrived::read(part.hash, part.content, &mut kept_bytes)?),
            _ => None,
        });
    }
    Ok((parts, arrived))
}

impl Arrived {
    /// `kept_bytes`: how much is kept of the edits of all so far.
    fn read(hash: [u8; 32], content: &[u8], kept_bytes: &mut usize) -> Result<Self, Damage> {
        let Bundle { header, edits, chains } = Bundle::read(content)?;
        let redacts = edits.iter().any(|edit| matches!(edit.content, Content::Redacted(_)));
        let edits = Some(Packed::new(edits)).filter(|edits| *kept_bytes + edits.bytes() <= MOST_KEPT_BYTES);
        *kept_bytes += edits.as_ref().map_or(0, Packed::bytes);
        Ok(Self { hash, header, chains, edits, redacts })
    }
}

/// Does something for which foreign keys need not be looked up: all that is taken in is of lines whose rows were read or made in the
/// same transaction. [`Store::check`] looks them up.
fn without_foreign_keys<T>(
    connection: &mut Connection,
    work: impl FnOnce(&mut Connection) -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    connection.pragma_update(None, "foreign_keys", false)?;
    let came = work(connection);
    connection.pragma_update(None, "foreign_keys", true)?;
    came
}

/// Keeps the bytes of a bundle and who signed it; `false` if they were here.
fn keep(connection: &Connection, part: &Part, arrived: &Arrived) -> Result<bool, StoreError> {
    const PART: &str =
        "INSERT OR IGNORE INTO parts (hash, kind, first, last, before, after, signer, bytes, redacts)
        VALUES (?1, 1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
    const COVERED: &str = "SELECT 1 FROM parts JOIN devices ON number = line
        WHERE base = ?1 AND parts.last = ?3 AND parts.first <= ?2 AND after = ?4
        AND (?5 = 0 OR own = 1 OR redacts = 0 OR signer = base)";
    const SIGNER: &str = "INSERT INTO signers (id, key, holder, accepted, ahead_ms)
        VALUES (?1, ?2, ?3, EXISTS (SELECT 1 FROM devices WHERE id = ?1 AND own = 1), ?4)
        ON CONFLICT (id) DO UPDATE SET ahead_ms = ?4, holder = CASE ?3 WHEN '' THEN holder ELSE ?3 END";
    let header = &arrived.header;
    connection.prepare_cached(SIGNER)?.execute(params![
        header.signer().0,
        header.key,
        header.holder,
        header.ahead_ms
    ])?;
    if arrived.redacts && header.signer() != header.device && speaks_for_itself(connection, header.device)? {
        return Ok(false);
    }
    let (first, last) = (header.first.cast_signed(), header.last.cast_signed());
    // The same edits cut anew, as part of what is here; but what another device signed itself has values that somebody took out in its name.
    if header.count() > 0
        && !arrived.redacts
        && connection.prepare_cached(COVERED)?.exists(params![
            header.device.0,
            first,
            last,
            header.after.0,
            header.signer() == header.device
        ])?
    {
        return Ok(false);
    }
    let written = connection.prepare_cached(PART)?.execute(params![
        part.hash,
        first,
        last,
        header.before.0,
        header.after.0,
        header.signer().0,
        part.bytes,
        arrived.redacts
    ])?;
    Ok(written > 0)
}

/// Whether something a device signed itself is here. Then nobody else takes values out of what it wrote.
fn speaks_for_itself(connection: &Connection, device: DeviceId) -> Result<bool, StoreError> {
    const SQL: &str = "SELECT 1 FROM parts JOIN devices ON number = line WHERE base = ?1 AND signer = ?1";
    Ok(connection.prepare_cached(SQL)?.exists([device.0])?)
}

/// Keeps a part that is only handed on.
fn keep_unknown(connection: &Connection, part: &Part) -> Result<(), StoreError> {
    const PART: &str =
        "INSERT OR IGNORE INTO parts (hash, kind, first, last, bytes) VALUES (?1, ?2, 0, 0, ?3)";
    let PartKind::Other(kind) = part.kind else { return Ok(()) };
    connection.prepare_cached(PART)?.execute(params![part.hash, kind, part.bytes])?;
    Ok(())
}

/// Uses what can be used of everything that waits, and makes it last.
fn finish(
    transaction: Transaction,
    new: Vec<Arrived>,
    taken: TakenIn,
    now_ms: u64,
) -> Result<TakenIn, StoreError> {
    let mut taken = taken;
    let arrived = waiting(&transaction, new)?;
    let mut lines = Lines::load(&transaction)?;
    let arrivals: Vec<Arrival> =
        arrived.iter().map(|arrived| Arrival { header: &arrived.header, chains: &arrived.chains }).collect();
    let plan =
        plan::plan(&lines.all, &arrivals, |line, sequence| lines.chain_at(&transaction, line, sequence))?;
    for place in lines.all.len()..plan.lines.len() {
        let line = plan.lines[place];
        let first = first_chain(&plan.fates, &arrived, place);
        if line.from.is_some() {
            taken.copied.insert(line.device);
        }
        lines.rows.push(begin_line(&transaction, line, first, &lines.rows)?);
    }
    use_bundles(&transaction, &lines, plan, arrived, &mut taken, clock::latest_believed(now_ms))?;
    taken.strangers = strangers(&transaction)?;
    transaction.commit()?;
    Ok(taken)
}

/// Writes what can be used into log and cells. `lines` has the rows of all lines of the plan.
fn use_bundles(
    connection: &Connection,
    lines: &Lines,
    plan: plan::Plan,
    arrived: Vec<Arrived>,
    taken: &mut TakenIn,
    latest_believed: i64,
) -> Result<(), StoreError> {
    let edits = EditWriter::new(connection, &plan.lines, &lines.rows, &lines.all)?;
    let mut using = Using { connection, lines: &plan.lines, rows: &lines.rows, latest_believed, edits };
    let mut used = Vec::new();
    for (arrived, fate) in arrived.into_iter().zip(plan.fates) {
        match fate {
            Fate::Waits(missing) => drop(taken.missing.insert(missing)),
            Fate::Used { line, from, witness } => used.push((line, from, witness, arrived)),
        }
    }
    // A line's edits in their order: at no time does it have a gap.
    used.sort_by_key(|(line, from, ..)| (*line, *from));
    for (line, from, witness, arrived) in &mut used {
        let signer = arrived.header.signer();
        taken.edits += (arrived.header.last + 1).saturating_sub(*from);
        if using.write(arrived, *line, *from, witness)? {
            taken.clock_wrong.insert(signer);
            connection.execute("UPDATE signers SET clock_wrong = 1 WHERE id = ?1", [signer.0])?;
        }
    }
    // Only then is all there that anybody may have seen.
    using.edits.write()?;
    for (line, _, _, arrived) in &used {
        using.note_seen(&arrived.header, *line)?;
    }
    Ok(())
}

/// All bundles of accepted devices that are not used yet.
fn waiting(connection: &Connection, new: Vec<Arrived>) -> Result<Vec<Arrived>, StoreError> {
    const SQL: &str = "SELECT hash, bytes FROM parts JOIN signers ON id = signer
        WHERE kind = 1 AND line IS NULL AND accepted = 1 ORDER BY hash";
    let mut arrived = Vec::new();
    let mut kept_bytes = new.iter().filter_map(|new| new.edits.as_ref()).map(Packed::bytes).sum();
    let mut new: std::collections::HashMap<[u8; 32], Arrived> =
        new.into_iter().map(|new| (new.hash, new)).collect();
    let mut statement = connection.prepare_cached(SQL)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let hash = row.get(0)?;
        arrived.push(match new.remove(&hash) {
            Some(new) => new,
            None => unpack(hash, &row.get::<_, Vec<u8>>(1)?, &mut kept_bytes)?,
        });
    }
    Ok(arrived)
}

fn unpack(hash: [u8; 32], bytes: &[u8], kept_bytes: &mut usize) -> Result<Arrived, StoreError> {
    let rotten = |_| StoreError::Corrupt("a bundle in it is not as it came".into());
    let (part, _) = Part::first_of(bytes).map_err(rotten)?;
    Arrived::read(hash, part.content, kept_bytes).map_err(rotten)
}

/// The chain at the first edit of a line that begins.
fn first_chain(fates: &[Fate], arrived: &[Arrived], place: usize) -> Option<Chain> {
    fates.iter().zip(arrived).find_map(|(fate, arrived)| match fate {
        Fate::Used { line, from, .. } if *line == place => {
            arrived.chains.get((from - arrived.header.first) as usize).copied()
        }
        _ => None,
    })
}

/// A row for a line that begins.
fn begin_line(
    connection: &Connection,
    line: Line,
    first: Option<Chain>,
    rows: &[i64],
) -> Result<i64, StoreError> {
    const SQL: &str = "INSERT INTO devices (id, base, parent, first) VALUES (?1, ?2, ?3, ?4)
        ON CONFLICT (id) DO UPDATE SET base = base RETURNING number";
    let base = line.device.0;
    let id = match (line.from, first) {
        (Some(_), Some(first)) => {
            let named = Sha256::new().chain_update("pitb1 copy").chain_update(base).chain_update(first.0);
            named.finalize()[..16].to_vec()
        }
        _ => base.to_vec(),
    };
    let parent = line.from.map(|from| rows[from]);
    Ok(connection.query_row(SQL, params![id, base, parent, line.first.cast_signed()], |row| row.get(0))?)
}

/// Devices whose bundles wait to be accepted.
fn strangers(connection: &Connection) -> Result<BTreeSet<DeviceId>, StoreError> {
    const SQL: &str =
        "SELECT DISTINCT id FROM parts JOIN signers ON id = signer WHERE line IS NULL AND accepted = 0";
    let mut statement = connection.prepare_cached(SQL)?;
    let found = statement.query_map([], |row| row.get(0).map(DeviceId))?.collect::<Result<_, _>>()?;
    Ok(found)
}
