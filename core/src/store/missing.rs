//! What a notes file brought and no longer says: told, and removed only at the word of somebody who saw it listed.

use super::cells::{Cell, Kind};
use super::log::{Batch, Heads};
use super::regretted::path_of;
use super::said::digest;
use super::sources::Base;
use super::value::{ABSENT, encode};
use super::{Change, StoreError, Version, conflicts, photo_name, same_field};
use crate::error::Fault;
use crate::record::RecordId;
use rusqlite::Connection;
use sha2::{Digest as _, Sha256};
use std::collections::{BTreeMap, BTreeSet};

/// Hex digits of the word that stands for a list.
const WORD_DIGITS: usize = 6;

/// What a file brought earlier and no longer says, and what stands here still.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Missing {
    /// Records, without those that hang on one of them.
    pub records: Vec<MissingRecord>,
    /// Cells of records that the file still has, and whether they are as the file left them.
    pub cells: Vec<(Change, bool)>,
}

/// A record that a file no longer has.
#[derive(Debug, Clone, PartialEq)]
pub struct MissingRecord {
    /// The record.
    pub record: RecordId,
    /// Who made it, and when.
    pub made: Version,
    /// Whether it is as the file left it, and nothing that stays names it: then it may be removed.
    pub removable: bool,
}

impl Missing {
    /// Returns whether there is anything.
    pub fn is_empty(&self) -> bool {
        self.records.is_empty() && self.cells.is_empty()
    }

    /// Returns what stands for all that can be removed; `None` if there is nothing. Another list has another word, so that nobody removes
    /// what they have not seen.
    pub fn word(&self) -> Option<String> {
        let mut hash = Sha256::new();
        for record in self.removable() {
            hash.update(record.as_bytes());
        }
        for Change { record, cell } in self.removable_cells() {
            hash.update(record.as_bytes());
            hash.update(cell.number().to_be_bytes());
        }
        let any = self.removable().next().is_some() || self.removable_cells().next().is_some();
        any.then(|| photo_name(&hash.finalize().into())[..WORD_DIGITS].to_owned())
    }

    fn removable(&self) -> impl Iterator<Item = RecordId> {
        self.records.iter().filter(|missing| missing.removable).map(|missing| missing.record)
    }

    pub(super) fn removable_cells(&self) -> impl Iterator<Item = Change> {
        self.cells.iter().filter(|(_, untouched)| *untouched).map(|(cell, _)| *cell)
    }

    /// An error unless the word is that of this list.
    pub(super) fn agreed(&self, word: &str) -> Result<(), StoreError> {
        let Some(right) = self.word() else {
            let todo = "read the file without it";
            return Err(Fault::new("missing", "there is nothing that may be removed", todo).into());
        };
        if right == word.trim() {
            return Ok(());
        }
        let wrong = format!("`{word}` does not stand for what is missing now");
        Err(Fault::new("missing", wrong, "read the file without it first: the list comes with its word")
            .into())
    }
}

/// Looks for what the file brought, no longer has, and is not deleted.
pub(super) fn find(
    connection: &Connection,
    field: RecordId,
    base: &Base,
    still: &BTreeSet<RecordId>,
    missing: &mut Missing,
) -> Result<(), StoreError> {
    let gone: BTreeSet<RecordId> =
        base.records.keys().copied().filter(|record| !still.contains(record)).collect();
    let mut tops = Vec::new();
    for record in &gone {
        let path = path_of(connection, *record)?;
        let (_, above) = path.split_last().unwrap_or((&(*record, Kind::Field), &[]));
        let mut deleted = false;
        for (record, _) in &path {
            deleted |= Heads::load_marks(connection, *record)?.deleted();
        }
        if !deleted && !above.iter().any(|(above, _)| gone.contains(above)) {
            tops.push(*record);
        }
    }
    let mut untouched = BTreeSet::new();
    for record in &tops {
        if is_untouched(connection, base, &gone, *record)? {
            untouched.insert(*record);
        }
    }
    let named = named_by_others(connection, field, &untouched)?;
    for record in tops {
        let kind = conflicts::versions(connection, record, Cell::KIND)?;
        missing.records.push(MissingRecord {
            record,
            made: kind
                .into_iter()
                .next_back()
                .ok_or(StoreError::RecordNotFound { record, kind: "record" })?,
            removable: untouched.contains(&record) && !named.contains(&record),
        });
    }
    missing.records.sort_by_key(|missing| missing.record);
    Ok(())
}

/// Returns whether a record and all that hangs on it stand as the file last said them.
fn is_untouched(
    connection: &Connection,
    base: &Base,
    gone: &BTreeSet<RecordId>,
    record: RecordId,
) -> Result<bool, StoreError> {
    let heads = Heads::load(connection, record)?;
    let Some(known) = base.records.get(&record).filter(|_| gone.contains(&record)) else { return Ok(false) };
    let said: BTreeMap<u16, _> = heads
        .said()
        .map(|(cell, value)| (cell.number(), digest(value)))
        .chain(known.cells.get_key_value(&Cell::PARENT.number()).map(|(cell, digest)| (*cell, *digest)))
        .collect();
    if said != known.cells || heads.is_disputed() {
        return Ok(false);
    }
    for child in Heads::load_children(connection, Some(record))? {
        if !is_untouched(connection, base, gone, child.record)? {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Which of these records something names that stays: a pass its machine, an after-dig the pit before it.
fn named_by_others(
    connection: &Connection,
    field: RecordId,
    removed: &BTreeSet<RecordId>,
) -> Result<BTreeSet<RecordId>, StoreError> {
    let mut named = BTreeSet::new();
    for member in same_field::members(connection, field)? {
        for pass in Heads::load_children(connection, Some(member))? {
            if pass.kind() != Some(Kind::Pass) || removed.contains(&pass.record) {
                continue;
            }
            named.extend(pass.read::<Option<RecordId>>(Cell::PASS_MACHINE).ok().flatten());
            for dig in Heads::load_children(connection, Some(pass.record))? {
                if !removed.contains(&dig.record) && dig.kind() == Some(Kind::AfterDig) {
                    named.extend(dig.read::<Option<RecordId>>(Cell::AFTER_DIG_BEFORE).ok().flatten());
                }
            }
        }
    }
    Ok(named)
}

/// Removes what may be; tells every record that is gone with it.
pub(super) fn remove(batch: &mut Batch, missing: &Missing) -> Result<Vec<RecordId>, StoreError> {
    let mut gone: Vec<RecordId> = missing.removable().collect();
    for record in &gone {
        let heads = Heads::load(&batch.transaction, *record)?;
        batch.delete(&heads)?;
    }
    for Change { record, cell } in missing.removable_cells() {
        let heads = Heads::load(&batch.transaction, record)?;
        batch.edit(record, cell, &heads.names(cell), &encode(None))?;
    }
    let mut at = 0;
    while let Some(record) = gone.get(at) {
        let children = Heads::load_children(&batch.transaction, Some(*record))?;
        gone.extend(children.iter().map(|child| child.record));
        at += 1;
    }
    debug_assert_eq!(encode(None), ABSENT);
    Ok(gone)
}
