//! What a notes file says, record by record, and what is remembered of it: of each value no more than a short hash, so that
//! a value that is taken out of the log stands nowhere else.

use super::cells::{Cell, Kind};
use super::kept::{Kept, Wanted};
use super::value::ABSENT;
use crate::record::{FieldNotes, RecordId};
use sha2::{Digest as _, Sha256};
use std::collections::BTreeMap;

/// The first bytes of the SHA-256 of a value. Two values of one cell that share them would pass for one.
pub(super) type Digest = [u8; DIGEST_BYTES];
const DIGEST_BYTES: usize = 8;
/// One cell and its digest, as they are remembered.
const ROW_BYTES: usize = 2 + DIGEST_BYTES;

/// The digests of the cells of a record that say something. Under [`Cell::PARENT`] stands whom it follows in its list.
pub(super) type Digests = BTreeMap<u16, Digest>;

/// A record as the file has it.
pub(super) struct Said {
    pub(super) record: RecordId,
    pub(super) kind: Kind,
    /// `None` of the field.
    pub(super) parent: Option<RecordId>,
    /// The one before it in its list.
    pub(super) follows: Option<RecordId>,
    /// All its cells, those too of which nothing is said.
    pub(super) cells: Vec<Wanted>,
}

impl Said {
    /// Returns what is remembered of it.
    pub(super) fn digests(&self) -> Digests {
        let said = self.cells.iter().filter(|wanted| wanted.value != ABSENT);
        let mut digests: Digests = said.map(|wanted| (wanted.cell.number(), digest(&wanted.value))).collect();
        let follows = self.follows.map_or_else(Vec::new, |before| before.as_bytes().to_vec());
        digests.insert(Cell::PARENT.number(), digest(&follows));
        digests
    }
}

/// The records of a notes file, each after the one it hangs on, and in the order of its list.
pub(super) fn said(notes: &FieldNotes) -> Vec<Said> {
    let (field, mut all) = (&notes.field, All(Vec::new()));
    all.list(std::slice::from_ref(field), None);
    if let Some(field) = all.0.first_mut() {
        field.cells.push(Wanted::new(Cell::NOTES_UNKNOWN_KEYS, &notes.unknown));
    }
    all.list(&field.parts, Some(field.id));
    all.list(&field.lines, Some(field.id));
    all.list(&notes.pits, Some(field.id));
    for pit in &notes.pits {
        all.list(&pit.walk, Some(pit.id));
        all.list(&pit.layers, Some(pit.id));
        all.list(&pit.rolls, Some(pit.id));
        all.list(&pit.photos, Some(pit.id));
    }
    all.list(&notes.machines, Some(field.id));
    all.list(&notes.passes, Some(field.id));
    for pass in &notes.passes {
        all.list(&pass.rolls, Some(pass.id));
        all.list(&pass.after_digs, Some(pass.id));
    }
    all.0
}

struct All(Vec<Said>);

impl All {
    fn list<R: Kept>(&mut self, list: &[R], parent: Option<RecordId>) {
        let mut follows = None;
        for record in list {
            let said = Said { record: record.id(), kind: R::KIND, parent, follows, cells: record.cells() };
            follows = Some(said.record);
            self.0.push(said);
        }
    }
}

pub(super) fn digest(value: &[u8]) -> Digest {
    let mut digest = Digest::default();
    digest.copy_from_slice(&Sha256::digest(value)[..DIGEST_BYTES]);
    digest
}

/// Digests as they are remembered: cell and digest, one after the other.
pub(super) fn to_bytes(digests: &Digests) -> Vec<u8> {
    digests.iter().flat_map(|(cell, digest)| cell.to_be_bytes().into_iter().chain(*digest)).collect()
}

/// Digests as they are remembered; what is damaged counts as never said.
pub(super) fn from_bytes(bytes: &[u8]) -> Digests {
    let row = |row: &[u8]| {
        let (cell, digest) = row.split_at(2);
        Some((u16::from_be_bytes(cell.try_into().ok()?), digest.try_into().ok()?))
    };
    bytes.chunks_exact(ROW_BYTES).filter_map(row).collect()
}
