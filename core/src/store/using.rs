//! Putting bundles of others to use: their edits into log and cells, and what they say has been seen.

use super::StoreError;
use super::lines::Lines;
use super::packed::Packed;
use super::redacting::Redacted;
use super::taking::Arrived;
use super::writing::EditWriter;
use crate::merge::plan::{self, Line};
use crate::merge::{Bundle, Edit, Header, Part};
use rusqlite::{Connection, OptionalExtension, params};

/// Puts bundles of others to use.
pub(super) struct Using<'a> {
    pub(super) connection: &'a Connection,
    pub(super) lines: &'a [Line],
    /// The row of each line.
    pub(super) rows: &'a [i64],
    /// The latest clock that can be right.
    pub(super) latest_believed: i64,
    pub(super) edits: EditWriter<'a>,
}

impl Using<'_> {
    /// Writes a bundle's edits from a sequence on. Tells whether one of them is from the future.
    pub(super) fn write(
        &mut self,
        arrived: &mut Arrived,
        line: usize,
        from: u64,
        witness: &[usize],
    ) -> Result<bool, StoreError> {
        const PART: &str = "UPDATE parts SET line = ?2 WHERE hash = ?1";
        // Smaller cuts of the same edits, and earlier word of what was seen, are no longer needed.
        // A redaction in another's name stands in for nothing that one signed itself.
        const COVERED: &str = "DELETE FROM parts WHERE line = ?1 AND hash <> ?2 AND kind = 1
            AND ((first > last AND signer = ?5 AND last <= ?4)
                OR (?3 <= ?4 AND first <= last AND first >= ?3 AND last <= ?4 AND (?6 = 0 OR signer <> ?7)))";
        const NEEDLESS: &str = "DELETE FROM parts WHERE hash = ?1 AND first <= last AND EXISTS (SELECT 1
            FROM parts AS other WHERE other.line = ?2 AND other.hash <> ?1 AND other.first <= ?3 AND other.last >= ?4
                AND (parts.signer <> ?5 OR other.redacts = 0 OR other.signer = ?5
                    OR EXISTS (SELECT 1 FROM devices WHERE number = ?2 AND own = 1)))";
        const LINE: &str = "UPDATE devices SET last = ?2, chain = ?3, clock = max(clock, ?4)
            WHERE number = ?1 AND last < ?2";
        let header = &arrived.header;
        let row = self.rows[line];
        let (first, last) = (header.first.cast_signed(), header.last.cast_signed());
        self.connection.prepare_cached(PART)?.execute(params![arrived.hash, row])?;
        self.connection.prepare_cached(COVERED)?.execute(params![
            row,
            arrived.hash,
            first,
            last,
            header.signer().0,
            arrived.redacts && header.signer() != header.device,
            header.device.0
        ])?;
        let rows = |sequence| self.rows[plan::line_at(self.lines, line, sequence)];
        let redacted = Redacted { connection: self.connection, hash: arrived.hash, header, row: &rows };
        if from > header.first {
            // What has just come may be among what is here already.
            self.edits.write()?;
        }
        if from > header.first && (arrived.redacts || redacted.may_come_back(from)?) {
            let edits = read_again(self.connection, arrived.hash)?;
            (header.first..from)
                .zip(edits)
                .try_for_each(|(sequence, edit)| redacted.follow(sequence, &edit))?;
        }
        if from > header.last {
            let needless = params![arrived.hash, row, first, last, header.device.0];
            self.connection.prepare_cached(NEEDLESS)?.execute(needless)?;
            return Ok(false);
        }
        let edits = match arrived.edits.take() {
            Some(edits) => edits,
            None => Packed::new(read_again(self.connection, arrived.hash)?),
        };
        let known = (from - header.first) as usize;
        let newest = edits.newest_clock(known);
        self.edits.add(line, header.first, known, edits, witness)?;
        self.connection.prepare_cached(LINE)?.execute(params![row, last, header.after.0, newest])?;
        Ok(newest > self.latest_believed)
    }

    /// Returns what a signer says it has.
    pub(super) fn note_seen(&self, header: &Header, line: usize) -> Result<(), StoreError> {
        const SEEN: &str = "INSERT INTO seen (observer, line, sequence) VALUES (?1, ?2, ?3)
            ON CONFLICT (observer, line) DO UPDATE SET sequence = max(sequence, ?3)";
        let mut statement = self.connection.prepare_cached(SEEN)?;
        let signer = header.signer().0;
        statement.execute(params![signer, self.rows[line], header.last.cast_signed()])?;
        if header.seen.is_empty() {
            return Ok(());
        }
        let lines = Lines::load(self.connection)?;
        for seen in &header.seen {
            let sequence = seen.name.sequence;
            let of_device: Vec<usize> =
                (0..self.lines.len()).filter(|at| self.lines[*at].device == seen.name.device).collect();
            for at in &of_device {
                let here = lines.place(self.rows[*at])?;
                let is_it = if sequence <= lines.all[here].last {
                    lines.chain_at(self.connection, here, sequence)? == seen.chain
                } else {
                    // It has more of it than is here; with one copy known, of that.
                    of_device.len() == 1
                };
                if is_it {
                    statement.execute(params![signer, self.rows[*at], sequence.cast_signed()])?;
                }
            }
        }
        Ok(())
    }
}

fn read_again(connection: &Connection, hash: [u8; 32]) -> Result<Vec<Edit>, StoreError> {
    const SQL: &str = "SELECT bytes FROM parts WHERE hash = ?1";
    let bytes: Option<Vec<u8>> = connection.query_row(SQL, [hash], |row| row.get(0)).optional()?;
    let gone = || StoreError::Corrupt("a bundle in it is gone".into());
    let bytes = bytes.ok_or_else(gone)?;
    let (part, _) = Part::first_of(&bytes)?;
    Ok(Bundle::edits_again(part.content)?)
}
