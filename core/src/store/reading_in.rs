//! A notes file taken in: it adds and changes, and deletes nothing unless it is told to in so many words. All of it is one
//! save.
//!
//! The file is compared with what it said when it was last read here (three ways: then, now, and what stands): only what the
//! *file* changed is written. What somebody else changed meanwhile stays; where both did, both versions do, for somebody to settle.

use super::cells::{Cell, Kind};
use super::kept::Wanted;
use super::log::{Batch, EditName, Heads, decode_names};
use super::matching::matched;
use super::missing::{self, Missing};
use super::said::{Digest, Digests, Said, digest, said};
use super::save::Place;
use super::sources::{Base, ReadNow};
use super::value::ABSENT;
use super::{Change, Store, StoreError, same_field, valid};
use crate::error::Fault;
use crate::record::ids::rename;
use crate::record::{FieldNotes, RecordId};
use rusqlite::{Connection, OptionalExtension, TransactionBehavior, params};
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

/// A notes file on its way in.
#[derive(Debug, Clone, Copy)]
pub struct NotesFile<'a> {
    /// Where it lies (or what a phone calls it), always the same for one file; `None` for what comes from nowhere.
    pub source: Option<&'a str>,
    /// The ids that the file does not say, made for this reading.
    pub made: &'a BTreeSet<RecordId>,
    /// What the file brought and no longer says is removed, if this is [`Missing::word`]: of what was seen listed.
    pub remove: Option<&'a str>,
}

/// What a notes file brought, or would bring.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadIn {
    /// The field that it is of here.
    pub field: RecordId,
    /// Records that are new here, each after the one it hangs on.
    pub added: Vec<(RecordId, Kind)>,
    /// Cells of records that were here already which now have another value.
    pub changed: Vec<Change>,
    /// Cells that the file changed and somebody else too: both values are kept.
    pub versions: Vec<Change>,
    /// Records of the file that were deleted here, and stay so.
    pub deleted: Vec<RecordId>,
    /// What the file brought earlier and no longer says.
    pub missing: Missing,
    /// It was removed.
    pub removed: bool,
    /// Other fields of this name, which stay apart.
    pub same_name: Vec<RecordId>,
}

impl ReadIn {
    /// Returns whether the file says nothing that was not here.
    pub fn is_nothing_new(&self) -> bool {
        self.added.is_empty() && self.changed.is_empty() && self.versions.is_empty() && !self.removed
    }
}

impl Store {
    /// Takes in a notes file in one save. Its records without ids become those that the same source brought earlier, where it did.
    ///
    /// # Errors
    /// [`StoreError::InvalidValue`] for a value no record may have, an id that is of something else, or a word that is not that of
    /// what is missing; [`StoreError::FieldDeleted`]; whatever the disk reports. Nothing has changed then.
    pub fn read_in(
        &mut self,
        notes: &mut FieldNotes,
        file: &NotesFile,
        now_ms: u64,
    ) -> Result<ReadIn, StoreError> {
        let mut batch = self.batch(now_ms)?;
        let came = read_in(&mut batch, notes, file)?;
        batch.commit()?;
        Ok(came)
    }

    /// Returns what [`Store::read_in`] would do, without doing it.
    ///
    /// # Errors
    /// As [`Store::read_in`].
    pub fn would_read_in(
        &mut self,
        notes: &mut FieldNotes,
        file: &NotesFile,
        now_ms: u64,
    ) -> Result<ReadIn, StoreError> {
        read_in(&mut self.batch(now_ms)?, notes, file)
    }
}

impl Store {
    /// A notes file was written from what stands here. Read later, it changes only what was changed in it, whatever others have noted meanwhile.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn wrote_file(&mut self, source: &str, notes: &FieldNotes) -> Result<(), StoreError> {
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let (base, field) = (Base::load(&transaction, source)?, notes.field.id);
        let mut says: BTreeMap<RecordId, Digests> =
            said(notes).iter().map(|said| (said.record, said.digests())).collect();
        // What an earlier file of that name brought is not in this one.
        for record in base.records.keys() {
            says.entry(*record).or_default();
        }
        says.retain(|record, digests| base.records.get(record).is_none_or(|known| known.cells != *digests));
        if !says.is_empty() || base.field != Some(field) {
            ReadNow { source, field, save: None, said: &says }.remember(&transaction)?;
        }
        Ok(transaction.commit()?)
    }
}

fn read_in(batch: &mut Batch, notes: &mut FieldNotes, file: &NotesFile) -> Result<ReadIn, StoreError> {
    valid::notes(notes)?;
    let first = batch.next_sequence();
    let mut base =
        file.source.map_or_else(|| Ok(Base::default()), |source| Base::load(&batch.transaction, source))?;
    match matched(&said(notes), file.made, &base) {
        Some(given) => rename(notes, &given),
        None => base = Base::default(),
    }
    let field = notes.field.id;
    let all = said(notes);
    let heads = Heads::load_marks(&batch.transaction, field)?;
    if heads.deleted() {
        return Err(StoreError::FieldDeleted { field, name: notes.field.name.clone() });
    }
    let mut coming = Coming {
        batch,
        base: &base,
        came: ReadIn::of(field),
        ranks: HashMap::new(),
        pushed: HashSet::new(),
        remember: BTreeMap::new(),
    };
    for one in &all {
        coming.record(one)?;
    }
    let Coming { mut came, mut remember, .. } = coming;
    let still: BTreeSet<RecordId> = all.iter().map(|said| said.record).collect();
    missing::find(&batch.transaction, field, &base, &still, &mut came.missing)?;
    if let Some(word) = file.remove {
        came.missing.agreed(word)?;
        for record in missing::remove(batch, &came.missing)? {
            remember.insert(record, Digests::new());
        }
        for Change { record, cell } in came.missing.removable_cells() {
            let digests = remember.entry(record).or_insert_with(|| {
                base.records.get(&record).map(|known| known.cells.clone()).unwrap_or_default()
            });
            digests.remove(&cell.number());
        }
        came.removed = true;
    }
    came.same_name = same_field::of_name(&batch.transaction, field, &notes.field.name)?;
    if let Some(source) = file.source
        && !remember.is_empty()
    {
        let save = (!batch.changes.is_empty()).then_some((batch.device, first));
        ReadNow { source, field, save, said: &remember }.remember(&batch.transaction)?;
    }
    Ok(came)
}

impl ReadIn {
    fn of(field: RecordId) -> Self {
        Self {
            field,
            added: Vec::new(),
            changed: Vec::new(),
            versions: Vec::new(),
            deleted: Vec::new(),
            missing: Missing::default(),
            removed: false,
            same_name: Vec::new(),
        }
    }
}

struct Coming<'a, 'store> {
    batch: &'a mut Batch<'store>,
    base: &'a Base,
    came: ReadIn,
    /// The last rank of each list.
    ranks: HashMap<(Option<RecordId>, Kind), u64>,
    /// Lists in which a record got another rank.
    pushed: HashSet<(Option<RecordId>, Kind)>,
    /// What the file says otherwise than before.
    remember: BTreeMap<RecordId, Digests>,
}

impl Coming<'_, '_> {
    fn record(&mut self, said: &Said) -> Result<(), StoreError> {
        let heads = Heads::load(&self.batch.transaction, said.record)?;
        let known = self.base.records.get(&said.record);
        let mut digests = said.digests();
        let is_new = heads.value(Cell::KIND).is_none();
        if is_new {
            self.batch.replace(&heads, Cell::KIND, &(said.kind as u32))?;
            self.came.added.push((said.record, said.kind));
        } else {
            self.must_be(said, &heads)?;
        }
        let moved = known.is_none_or(|known| {
            known.cells.get(&Cell::PARENT.number()) != digests.get(&Cell::PARENT.number())
        });
        if heads.deleted() {
            self.came.deleted.push(said.record);
        } else {
            self.place(said, &heads, is_new || moved)?;
        }
        for wanted in &said.cells {
            let was = known.and_then(|known| known.cells.get(&wanted.cell.number())).copied();
            if wanted.value == ABSENT {
                // It is not said any more; it stays, unless somebody has it removed.
                if let Some(was) = was {
                    digests.insert(wanted.cell.number(), was);
                    if heads.value(wanted.cell).is_some_and(|stands| stands != ABSENT) {
                        let cell = Change { record: said.record, cell: wanted.cell };
                        let untouched = heads.value(wanted.cell).map(digest) == Some(was);
                        self.came.missing.cells.push((cell, untouched));
                    }
                }
            } else if is_new {
                self.batch.replace_value(&heads, wanted.cell, &wanted.value)?;
            } else if (known.is_some() || !heads.deleted()) && was != Some(digest(&wanted.value)) {
                self.cell(&heads, wanted, was)?;
            }
        }
        if known.is_none_or(|known| known.cells != digests) {
            self.remember.insert(said.record, digests);
        }
        Ok(())
    }

    /// A record that is here is of that kind, and where the file has it.
    fn must_be(&self, said: &Said, heads: &Heads) -> Result<(), StoreError> {
        let fault = |is: String| {
            let wrong = format!("record {} is already {is}", said.record);
            Err(Fault::new(said.kind.name(), wrong, "give each record an id of its own").into())
        };
        if heads.kind() != Some(said.kind) {
            return fault(heads.kind().map_or("something of a newer version", Kind::name).to_owned());
        }
        match (heads.hangs().and_then(|hangs| hangs.parent), said.parent) {
            (is, wanted) if is == wanted => Ok(()),
            (Some(is), Some(wanted)) if same_field::are_one(&self.batch.transaction, is, wanted)? => Ok(()),
            (Some(is), _) => fault(format!("in another record, {is}")),
            (None, _) => fault("somewhere else".to_owned()),
        }
    }

    /// Its place in its list. What follows in the file on whom it did before stays where it is, unless one before it was moved there.
    fn place(&mut self, said: &Said, heads: &Heads, moved: bool) -> Result<(), StoreError> {
        let was = heads.hangs();
        let list = (was.map_or(said.parent, |hangs| hangs.parent), said.kind);
        let before = self.ranks.get(&list).copied();
        let rank = match was {
            Some(hangs) if said.parent.is_none() || !(moved || self.pushed.contains(&list)) => hangs.rank,
            _ if said.parent.is_none() => self.batch.hang(heads, None, said.kind, Place::Last)?,
            _ => self.batch.hang(heads, said.parent, said.kind, Place::After(before))?,
        };
        if was.is_none_or(|hangs| hangs.rank != rank) {
            self.pushed.insert(list);
        }
        self.ranks.insert(list, before.map_or(rank, |before| rank.max(before)));
        Ok(())
    }

    /// A cell that the file has otherwise than when it was last read (`was`).
    fn cell(&mut self, heads: &Heads, wanted: &Wanted, was: Option<Digest>) -> Result<(), StoreError> {
        let (record, cell) = (heads.record, wanted.cell);
        let stands = heads.value(cell).filter(|stands| *stands != ABSENT);
        if !wanted.differs(stands) {
            return Ok(());
        }
        let others = match (stands, was) {
            (Some(stands), Some(was)) => digest(stands) != was,
            _ => false,
        };
        if others {
            let known = before(&self.batch.transaction, heads, cell, was)?;
            self.batch.edit(record, cell, &known, &wanted.value)?;
            self.batch.show_latest(record, cell)?;
            self.came.versions.push(Change { record, cell });
        } else {
            self.batch.replace_value(heads, cell, &wanted.value)?;
            self.came.changed.push(Change { record, cell });
        }
        Ok(())
    }
}

/// The edits that gave a cell the value with this digest, before what stands there now; none, if they are not found.
fn before(
    connection: &Connection,
    heads: &Heads,
    cell: Cell,
    was: Option<Digest>,
) -> Result<Vec<EditName>, StoreError> {
    const EDIT: &str = "SELECT predecessors, value FROM log WHERE device = ?1 AND sequence = ?2 AND record = ?3 AND field = ?4";
    let (mut next, mut seen, mut found) = (heads.names(cell), BTreeSet::new(), Vec::new());
    while let Some(name) = next.pop() {
        if !seen.insert(name) {
            continue;
        }
        let key = params![name.0, name.1, heads.record.as_bytes(), cell.number()];
        let row: Option<(Vec<u8>, Vec<u8>)> = connection
            .prepare_cached(EDIT)?
            .query_row(key, |row| Ok((row.get(0)?, row.get(1)?)))
            .optional()?;
        match row {
            Some((_, value)) if Some(digest(&value)) == was => found.push(name),
            Some((predecessors, _)) => next.extend(decode_names(&predecessors)?),
            None => {}
        }
    }
    found.sort_unstable();
    Ok(found)
}
