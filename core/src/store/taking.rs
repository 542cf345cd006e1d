//! Taking in: what others wrote comes into the log, all of a file or nothing of it.

use super::lines::Lines;
use super::packed::Packed;
use super::redacting::empty_write_ahead_log;
use super::strangers::{Standing, has_room, hold, is_later, keep_signer, standing, strangers};
use super::using::Using;
use super::vouching::{self, Vouching, may_speak};
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
    /// Devices of which nothing was taken in that is not here already, because they are refused.
    pub refused: BTreeSet<DeviceId>,
    /// Devices that are not accepted and of which so much waits that no more was kept.
    pub no_room: BTreeSet<DeviceId>,
    /// What devices say in the names of others, and that waits for somebody's yes or never gets it.
    pub vouchings: Vec<Vouching>,
    /// Parts of kinds that this version does not know; nobody signs them, so they were not kept.
    pub unknown_parts: u32,
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
    /// [`StoreError::Bundle`] if any bit of it is not as it was written; [`StoreError::TooMuchWaits`]; whatever the disk reports. Nothing was changed then.
    pub fn take_in(&mut self, file: &[u8], now_ms: u64) -> Result<TakenIn, StoreError> {
        match read_all(file) {
            Ok((parts, arrived)) => self.take_in_parts(&parts, arrived, now_ms),
            Err(Damage::Newer(_)) => {
                hold(&self.connection, file)?;
                Ok(TakenIn { held: true, ..TakenIn::default() })
            }
            Err(damage) => Err(damage.into()),
        }
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
        let (own, redacts) = (self.device, arrived.iter().flatten().any(|arrived| arrived.redacts));
        let taken = without_foreign_keys(&mut self.connection, |connection| {
            let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let (mut taken, mut new) = (TakenIn::default(), Vec::new());
            for (part, arrived) in parts.iter().zip(arrived) {
                let Some(arrived) = arrived else {
                    taken.unknown_parts += 1;
                    continue;
                };
                let signer = arrived.header.signer();
                match keep(&transaction, part, &arrived)? {
                    Keeping::New => new.push(arrived),
                    Keeping::Known => taken.known += 1,
                    Keeping::Refused => drop(taken.refused.insert(signer)),
                    Keeping::NoRoom => drop(taken.no_room.insert(signer)),
                }
            }
            finish(transaction, own, new, taken, now_ms)
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
    /// The chain at a sequence, if it tells it.
    pub(super) fn chain_at(&self, sequence: u64) -> Option<Chain> {
        Arrival { header: &self.header, chains: &self.chains }.chain_at(sequence)
    }

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
pub(super) fn without_foreign_keys<T>(
    connection: &mut Connection,
    work: impl FnOnce(&mut Connection) -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    connection.pragma_update(None, "foreign_keys", false)?;
    let came = work(connection);
    connection.pragma_update(None, "foreign_keys", true)?;
    came
}

/// What became of a bundle that came.
enum Keeping {
    New,
    /// It was here, or brings nothing that is not.
    Known,
    Refused,
    /// Too much of its signer waits.
    NoRoom,
}

/// Keeps the bytes of a bundle and who signed it.
fn keep(connection: &Connection, part: &Part, arrived: &Arrived) -> Result<Keeping, StoreError> {
    const KNOWN: &str = "SELECT 1 FROM parts WHERE hash = ?1";
    const PART: &str = "INSERT INTO parts (hash, kind, first, last, before, after, signer, bytes, redacts)
        VALUES (?1, 1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
    const COVERED: &str = "SELECT 1 FROM parts JOIN devices ON number = line
        WHERE base = ?1 AND parts.last = ?3 AND parts.first <= ?2 AND after = ?4
        AND (?5 = 0 OR own = 1 OR redacts = 0 OR signer = base)";
    let header = &arrived.header;
    if connection.prepare_cached(KNOWN)?.exists([part.hash])? {
        return Ok(Keeping::Known);
    }
    match standing(connection, header.signer())? {
        Standing::Refused(since_ms) if is_later(header, since_ms) => return Ok(Keeping::Refused),
        Standing::Stranger if !has_room(connection, header.signer(), part.bytes.len())? => {
            return Ok(Keeping::NoRoom);
        }
        _ => keep_signer(connection, header)?,
    }
    if arrived.redacts && header.signer() != header.device && speaks_for_itself(connection, header.device)? {
        return Ok(Keeping::Known);
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
        return Ok(Keeping::Known);
    }
    connection.prepare_cached(PART)?.execute(params![
        part.hash,
        first,
        last,
        header.before.0,
        header.after.0,
        header.signer().0,
        part.bytes,
        arrived.redacts
    ])?;
    Ok(Keeping::New)
}

/// Returns whether something a device signed itself is here. Then nobody else takes values out of what it wrote.
fn speaks_for_itself(connection: &Connection, device: DeviceId) -> Result<bool, StoreError> {
    const SQL: &str = "SELECT 1 FROM parts JOIN devices ON number = line WHERE base = ?1 AND signer = ?1";
    Ok(connection.prepare_cached(SQL)?.exists([device.0])?)
}

/// Uses what can be used of everything that waits, and makes it last.
pub(super) fn finish(
    transaction: Transaction,
    own: i64,
    new: Vec<Arrived>,
    taken: TakenIn,
    now_ms: u64,
) -> Result<TakenIn, StoreError> {
    let mut taken = taken;
    let mut lines = Lines::load(&transaction)?;
    let arrived = usable(&transaction, own, &lines, new)?;
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
    taken.vouchings = vouching::waiting(&transaction, own)?.into_values().collect();
    // It is here, and waits.
    let asks = |missing: &Missing| taken.vouchings.iter().any(|asks| asks.device == missing.device);
    taken.missing.retain(|missing| !asks(missing));
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

/// All bundles that are not used yet and may be: of devices that are accepted, or were when they sealed them, and that speak for themselves or are
/// believed.
fn usable(
    connection: &Connection,
    own: i64,
    lines: &Lines,
    new: Vec<Arrived>,
) -> Result<Vec<Arrived>, StoreError> {
    const SQL: &str = "SELECT hash, bytes FROM parts JOIN signers ON id = signer
        WHERE kind = 1 AND line IS NULL AND (accepted = 1 OR refused_ms IS NOT NULL) ORDER BY hash";
    let mut arrived = Vec::new();
    let mut kept_bytes = new.iter().filter_map(|new| new.edits.as_ref()).map(Packed::bytes).sum();
    let mut new: std::collections::HashMap<[u8; 32], Arrived> =
        new.into_iter().map(|new| (new.hash, new)).collect();
    let mut statement = connection.prepare_cached(SQL)?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let hash = row.get(0)?;
        let one = match new.remove(&hash) {
            Some(new) => new,
            None => unpack(hash, &row.get::<_, Vec<u8>>(1)?, &mut kept_bytes)?,
        };
        if may_speak(connection, own, lines, &one)? {
            arrived.push(one);
        }
    }
    Ok(arrived)
}

pub(super) fn unpack(hash: [u8; 32], bytes: &[u8], kept_bytes: &mut usize) -> Result<Arrived, StoreError> {
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
