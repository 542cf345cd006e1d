//! Sealing: what was written here is signed, in bundles that are kept and handed on as they are.

use super::lines::Lines;
use super::log::LARGEST_VALUE;
use super::looking::look;
use super::{Store, StoreError};
use crate::merge::columns::MOST_PREDECESSORS;
use crate::merge::{Bundle, Chain, Edit, EditName, Header, Part, Signer, Witness, plan, seal};
use rusqlite::{Connection, TransactionBehavior, params};
use std::collections::BTreeMap;

/// How large a bundle is that is written here.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
struct Size {
    edits: u64,
    predecessors: u64,
    /// Bytes of the values.
    bytes: u64,
}

impl Size {
    /// No larger than this, unless one edit alone is: a reader takes twice the bytes.
    const MOST: Self = Self { edits: 50_000, predecessors: MOST_PREDECESSORS, bytes: LARGEST_VALUE as u64 };

    fn and(self, other: Self) -> Self {
        Self {
            edits: self.edits + other.edits,
            predecessors: self.predecessors + other.predecessors,
            bytes: self.bytes + other.bytes,
        }
    }

    fn fits(self) -> bool {
        let most = Self::MOST;
        self.edits <= most.edits && self.predecessors <= most.predecessors && self.bytes <= most.bytes
    }
}

/// Where edits of these sizes are cut into bundles: how many go into each.
fn cut(sizes: impl IntoIterator<Item = Size>) -> Vec<u64> {
    let mut cuts: Vec<Size> = Vec::new();
    for size in sizes {
        match cuts.last_mut() {
            Some(last) if last.and(size).fits() => *last = last.and(size),
            _ => cuts.push(size),
        }
    }
    cuts.into_iter().map(|cut| cut.edits).collect()
}

/// Who seals, and when.
#[derive(Clone, Copy)]
pub struct Sealer<'a> {
    /// The key of this device.
    pub signer: &'a dyn Signer,
    /// How whoever holds it calls themselves; may be empty.
    pub holder: &'a str,
    /// Program and version.
    pub written_by: &'a str,
    /// Unix milliseconds by this device's clock.
    pub now_ms: u64,
    /// How far that clock is ahead of satellite time, milliseconds, if known.
    pub ahead_ms: Option<i64>,
}

impl Store {
    /// Seals all that was written here since the last time: by this device, and by earlier ones whose store this was (their keys are lost;
    /// this device vouches for them). Where there is nothing of its own to say, but others' edits were taken in, it
    /// says that it has seen them. Tells how many edits were sealed.
    ///
    /// # Errors
    /// [`StoreError::NotAsWritten`] if the chain kept beside the log is not that of its edits; [`StoreError::NoKey`] if the key cannot be used; whatever the disk reports. Nothing was changed then.
    pub fn seal(&mut self, sealer: &Sealer) -> Result<u64, StoreError> {
        let own = self.device;
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        accept_self(&transaction, sealer)?;
        let lines = Lines::load(&transaction)?;
        look(&transaction, &lines)?;
        let sealing = Sealing { connection: &transaction, lines: &lines, sealer };
        let own = lines.place(own)?;
        let mut count = 0;
        for place in (0..lines.all.len()).filter(|at| lines.own[*at] && *at != own) {
            count += sealing.line(place, &[])?;
        }
        // What it has seen of the others goes with what it says itself.
        let seen = sealing.seen_since()?;
        let said = sealing.line(own, &seen)?;
        if said == 0 && !seen.is_empty() {
            let last = lines.all[own].last;
            // On its own it may replace an earlier word, so it says all.
            sealing.write(own, last + 1, last, &sealing.seen()?, false)?;
        }
        transaction.commit()?;
        Ok(count + said)
    }
}

/// A device trusts itself.
fn accept_self(connection: &Connection, sealer: &Sealer) -> Result<(), StoreError> {
    // How its holder is called is said here, and by no bundle that comes back.
    const SQL: &str =
        "INSERT INTO signers (id, key, holder, accepted, holder_last) VALUES (?1, ?2, ?3, 1, ?4)
        ON CONFLICT (id) DO UPDATE SET accepted = 1, refused_ms = NULL, holder = ?3, holder_last = ?4";
    let key = sealer.signer.public_key();
    connection.execute(SQL, params![sealer.signer.device().0, key, sealer.holder, i64::MAX])?;
    Ok(())
}

/// How far a line is here.
pub(super) struct Seen {
    place: usize,
    witness: Witness,
}

/// Seals lines of a store.
pub(super) struct Sealing<'a> {
    pub(super) connection: &'a Connection,
    pub(super) lines: &'a Lines,
    pub(super) sealer: &'a Sealer<'a>,
}

impl Sealing<'_> {
    /// Seals what is new in a line, and tells how many edits that is.
    fn line(&self, place: usize, seen: &[Seen]) -> Result<u64, StoreError> {
        let last = self.lines.all[place].last;
        let first = self.sealed_to(place)? + 1;
        let mut from = first;
        for count in cut(self.sizes(place, first, last)?) {
            let to = from + count - 1;
            self.write(place, from, to, if to == last { seen } else { &[] }, false)?;
            from = to + 1;
        }
        Ok(from - first)
    }

    /// How large the edits of a line are.
    fn sizes(&self, place: usize, first: u64, last: u64) -> Result<Vec<Size>, StoreError> {
        const SQL: &str = "SELECT length(predecessors), length(value) FROM log
            WHERE device = ?1 AND sequence BETWEEN ?2 AND ?3 ORDER BY sequence";
        // The shortest name of an edit is three bytes: two numbers in an array.
        const SHORTEST_NAME: u64 = 3;
        let mut statement = self.connection.prepare_cached(SQL)?;
        let line = params![self.lines.rows[place], first.cast_signed(), last.cast_signed()];
        let sizes = statement.query_map(line, |row| {
            let [names, bytes] = [row.get::<_, u32>(0)?, row.get(1)?].map(u64::from);
            Ok(Size { edits: 1, predecessors: names / SHORTEST_NAME, bytes })
        })?;
        Ok(sizes.collect::<Result<_, _>>()?)
    }

    /// Up to where a line is in bundles.
    fn sealed_to(&self, place: usize) -> Result<u64, StoreError> {
        const SQL: &str = "SELECT max(last) FROM parts WHERE line = ?1";
        let row = self.lines.rows[place];
        let last: Option<i64> = self.connection.query_row(SQL, [row], |row| row.get(0))?;
        Ok(last.map_or(self.lines.all[place].first - 1, i64::cast_unsigned))
    }

    /// How far the lines of others are here.
    pub(super) fn seen(&self) -> Result<Vec<Seen>, StoreError> {
        let signer = self.sealer.signer.device();
        let mut seen = Vec::new();
        for (place, line) in self.lines.all.iter().enumerate() {
            if line.device != signer && line.last >= line.first {
                seen.push(Seen { place, witness: self.witness(place, line.last)? });
            }
        }
        Ok(seen)
    }

    /// Those of [`Self::seen`] that go further than this device said before.
    fn seen_since(&self) -> Result<Vec<Seen>, StoreError> {
        const TOLD: &str = "SELECT 1 FROM seen WHERE observer = ?1 AND line = ?2 AND sequence >= ?3";
        let signer = self.sealer.signer.device().0;
        let mut seen = Vec::new();
        for one in self.seen()? {
            let sequence = one.witness.name.sequence.cast_signed();
            let row = self.lines.rows[one.place];
            if !self.connection.prepare_cached(TOLD)?.exists(params![signer, row, sequence])? {
                seen.push(one);
            }
        }
        Ok(seen)
    }

    fn witness(&self, place: usize, sequence: u64) -> Result<Witness, StoreError> {
        let name = EditName { device: self.lines.all[place].device, sequence };
        Ok(Witness { name, chain: self.lines.chain_at(self.connection, place, sequence)? })
    }

    /// Seals edits of a line. `redacts`: they were sealed before, with values that are taken out now.
    pub(super) fn write(
        &self,
        place: usize,
        first: u64,
        last: u64,
        seen: &[Seen],
        redacts: bool,
    ) -> Result<(), StoreError> {
        const PART: &str =
            "INSERT INTO parts (hash, kind, line, first, last, before, after, signer, bytes, redacts)
            VALUES (?1, 1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)";
        const EARLIER_WORD: &str = "DELETE FROM parts WHERE line = ?1 AND signer = ?2 AND first > last";
        const TOLD: &str = "INSERT INTO seen (observer, line, sequence) VALUES (?1, ?2, ?3)
            ON CONFLICT (observer, line) DO UPDATE SET sequence = max(sequence, ?3)";
        let (edits, witness) = self.edits(place, first, last)?;
        let header = Header {
            device: self.lines.all[place].device,
            first,
            before: self.lines.chain_at(self.connection, place, first - 1)?,
            witness,
            seen: seen.iter().map(|seen| seen.witness).collect(),
            written_by: self.sealer.written_by.to_owned(),
            sealed_ms: self.sealer.now_ms,
            ahead_ms: self.sealer.ahead_ms,
            holder: self.sealer.holder.to_owned(),
            // What follows from the edits and the key.
            key: [0; 32],
            last,
            after: Chain([0; 32]),
            sections: Vec::new(),
        };
        let bytes = seal(self.sealer.signer, header, &edits).ok_or(StoreError::NoKey)?;
        // Read back before it is believed: nobody else could mend it.
        let (part, _) = Part::first_of(&bytes)?;
        let header = Bundle::read(part.content)?.header;
        let (row, signer) = (self.lines.rows[place], self.sealer.signer.device().0);
        if first > last {
            self.connection.execute(EARLIER_WORD, params![row, signer])?;
        }
        self.connection.prepare_cached(PART)?.execute(params![
            part.hash,
            row,
            first.cast_signed(),
            last.cast_signed(),
            header.before.0,
            header.after.0,
            signer,
            bytes,
            redacts
        ])?;
        for seen in seen {
            let sequence = seen.witness.name.sequence.cast_signed();
            self.connection.prepare_cached(TOLD)?.execute(params![
                signer,
                self.lines.rows[seen.place],
                sequence
            ])?;
        }
        Ok(())
    }

    /// Edits as they are sealed, and the other lines that they name.
    fn edits(&self, place: usize, first: u64, last: u64) -> Result<(Vec<Edit>, Vec<Witness>), StoreError> {
        let mut edits = Vec::new();
        // Place of each line named, and how far.
        let mut named: BTreeMap<usize, u64> = BTreeMap::new();
        self.lines.each_edit(self.connection, place, first, last, |_, edit| {
            for predecessor in &edit.predecessors {
                let line = predecessor.line as usize;
                let sequence = predecessor.name.sequence;
                if plan::line_at(&self.lines.all, place, sequence) != line {
                    let furthest = named.entry(line).or_default();
                    *furthest = sequence.max(*furthest);
                }
            }
            edits.push(edit);
            Ok(())
        })?;
        let number: BTreeMap<usize, u32> = named.keys().copied().zip(1..).collect();
        for edit in &mut edits {
            for predecessor in &mut edit.predecessors {
                let line = predecessor.line as usize;
                let own = plan::line_at(&self.lines.all, place, predecessor.name.sequence) == line;
                predecessor.line = if own { 0 } else { number.get(&line).copied().unwrap_or(0) };
            }
            edit.predecessors.sort_unstable();
        }
        let witness = named.into_iter().map(|(place, sequence)| self.witness(place, sequence));
        Ok((edits, witness.collect::<Result<_, _>>()?))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn edits_are_cut_before_a_bundle_grows_too_large() {
        let small = Size { edits: 1, predecessors: 1, bytes: 6 };
        assert_eq!(cut([]), [0; 0]);
        assert_eq!(cut([small; 7]), [7]);
        assert_eq!(cut(std::iter::repeat_n(small, 120_000)), [50_000, 50_000, 20_000]);
        let naming = |predecessors| Size { predecessors, ..small };
        let half = MOST_PREDECESSORS / 2;
        assert_eq!(cut([small, naming(half), naming(half), small]), [2, 2]);
        assert_eq!(
            cut([small, naming(2 * half + 1), small]),
            [1, 1, 1],
            "one that is too large stands alone"
        );
        assert_eq!(cut([naming(half); 5]), [2, 2, 1]);
        let long = Size { bytes: Size::MOST.bytes / 3, ..small };
        assert_eq!(cut([long; 10]), [3, 3, 3, 1]);
    }
}
