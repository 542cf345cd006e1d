//! A world of walkers: a plan of what happens to whom, run step by step, and what must be so at its end.

mod newer;
mod plan;

pub use newer::{New, Packed};
pub use plan::{Act, Plan};

use crate::merge_support::{Phone, text, texts};
use newer::{Critical, Writer};
use pitface_core::merge::{Bundle, Chain, PartKind, read_file};
use pitface_core::record::RecordId;
use pitface_core::store::Cell;
use std::collections::BTreeSet;

/// A file about, and the names that were written before it was.
struct Carried {
    bytes: Vec<u8>,
    names: BTreeSet<String>,
}

/// A phone, and the names that were saved on it or came to it.
struct Walker {
    phone: Phone,
    names: BTreeSet<String>,
    /// Who writes in its newer build, if it has that.
    newer: Option<Writer>,
    /// Files that it left alone, as a newer build reads them.
    held: Vec<Vec<u8>>,
    backup: Option<Box<Walker>>,
}

/// What happened that a test wants to know to have happened.
#[derive(Debug, Clone, Copy, Default)]
pub struct Tally {
    /// Bundles of newer builds.
    pub newer: usize,
    /// Files that an older build left alone.
    pub left_alone: usize,
    /// Records that are not shown in the end, by one phone of each plan.
    pub not_shown: usize,
}

/// The keys of those who write in a newer build.
const WRITERS: std::ops::RangeInclusive<u8> = 201..=209;

struct World {
    tally: Tally,
    critical: Critical,
    walkers: Vec<Walker>,
    files: Vec<Carried>,
    written: u64,
    /// How many phones there were at first, with keys from 1 on.
    first: u8,
    /// The last key of those that came later, from 101 on.
    keys: u8,
    /// Keys that are gone for good; others answer for them.
    lost: BTreeSet<u8>,
    /// Keys that two phones had, or that went back in time: nobody can say any more what they wrote last.
    doubled: BTreeSet<u8>,
}

/// Runs a plan to its end and tells the first thing that is not as it must be.
pub fn run(plan: &Plan) -> Result<Tally, String> {
    let walkers = plan.skews_ms.iter().zip(1..).map(|(skew, seed)| {
        let mut phone = Phone::in_memory(seed);
        phone.set_clock(*skew);
        phone.credulous = true;
        Walker { phone, names: BTreeSet::new(), newer: None, held: Vec::new(), backup: None }
    });
    let mut world = World {
        tally: Tally::default(),
        critical: Critical::default(),
        walkers: walkers.collect(),
        files: Vec::new(),
        written: 0,
        first: plan.skews_ms.len() as u8,
        keys: 100,
        lost: BTreeSet::new(),
        doubled: BTreeSet::new(),
    };
    for phone in 0..world.walkers.len() {
        for seed in (1..=world.first).chain(WRITERS) {
            world.walkers[phone].phone.trust(seed);
        }
    }
    for (at, act) in plan.acts.iter().enumerate() {
        world.happens(*act).map_err(|wrong| format!("at act {at}, {act:?}: {wrong}"))?;
    }
    world.end()
}

impl World {
    #[expect(clippy::too_many_lines, reason = "one arm an act")]
    fn happens(&mut self, act: Act) -> Result<(), String> {
        let count = self.walkers.len();
        self.written += 1;
        let name = format!("name {}", self.written);
        match act {
            Act::Field(who) => {
                let walker = &mut self.walkers[who % count];
                walker.phone.new_field(&name);
                walker.names.insert(name);
            }
            Act::Rename(who, field) => {
                let walker = &mut self.walkers[who % count];
                if let Some(field) = walker.field(field) {
                    walker.phone.rename(field, &name);
                    walker.names.insert(name);
                }
            }
            Act::Pit(who, field) => {
                let walker = &mut self.walkers[who % count];
                if let Some(field) = walker.field(field) {
                    crate::merge_support::pit(&mut walker.phone, field, 300);
                }
            }
            Act::Step(who, field, pit) => {
                let walker = &mut self.walkers[who % count];
                if let Some(pit) = walker.pit(field, pit) {
                    walker.phone.step(pit, 100 + pit_depth(field));
                }
            }
            Act::Delete(who, field, whole) => {
                let walker = &mut self.walkers[who % count];
                let gone = if whole { walker.field(field) } else { walker.pit(field, 0) };
                if let Some(gone) = gone {
                    let now = walker.phone.now();
                    walker.phone.store.delete_record(gone, now).map_err(|error| error.to_string())?;
                }
            }
            Act::Undo(who) => {
                let phone = &mut self.walkers[who % count].phone;
                let now = phone.now();
                phone.store.undo(now).map_err(|error| error.to_string())?;
            }
            Act::Settle(who) => {
                let phone = &mut self.walkers[who % count].phone;
                let conflicts = phone.store.conflicts().map_err(|error| error.to_string())?;
                if let Some(conflict) = conflicts.first() {
                    let (now, kept) = (phone.now(), &conflict.versions[1].value);
                    phone
                        .store
                        .settle(conflict.record, conflict.cell, kept, now)
                        .map_err(|error| error.to_string())?;
                }
            }
            Act::BringBack(who) => {
                let phone = &mut self.walkers[who % count].phone;
                let deleted = phone.store.deleted_but_edited().map_err(|error| error.to_string())?;
                if let Some(record) = deleted.first() {
                    let now = phone.now();
                    phone.store.bring_back(*record, now).map_err(|error| error.to_string())?;
                }
            }
            Act::HandOver(who) => {
                let walker = &mut self.walkers[who % count];
                let bytes = self.critical.packed(&walker.phone.hand_over());
                self.files.push(Carried { bytes, names: walker.names.clone() });
            }
            Act::HandOverTo(who, whom) => {
                let to = self.walkers[whom % count].phone.id();
                let walker = &mut self.walkers[who % count];
                let bytes = self.critical.packed(&walker.phone.hand_over_to(to));
                // What the other is said to have is not in it, so nothing is expected of it alone.
                self.files.push(Carried { bytes, names: BTreeSet::new() });
            }
            Act::TakeIn(who, file) => {
                let walker = &mut self.walkers[who % count];
                if !self.files.is_empty() {
                    let file = &self.files[file % self.files.len()];
                    walker.takes_in(file, &self.critical)?;
                }
            }
            Act::Lose(file) => {
                // Lost is late: it turns up at the end, or its like.
                let last = self.files.len().saturating_sub(1);
                if last > 0 {
                    self.files.swap(file % last, last);
                }
            }
            Act::Jump(who, hours) => self.walkers[who % count].phone.set_clock(hours * 3_600_000),
            Act::Backup(who) => {
                let walker = &mut self.walkers[who % count];
                walker.backup = Some(Box::new(walker.copied()));
            }
            Act::Restore(who, same_key) => {
                let who = who % count;
                if let Some(copy) = self.walkers[who].backup.take() {
                    let is_newer = self.walkers[who].newer.is_some();
                    self.walkers[who] = *copy;
                    // Whom it came to trust since then it does not know.
                    self.trusts_all(who);
                    // A new key only where it is known what the old one wrote: nobody could be asked to believe anything else.
                    let key = self.walkers[who].phone.seed;
                    if same_key || self.doubled.contains(&key) {
                        self.doubled.insert(key);
                    } else {
                        self.new_key(who);
                    }
                    if is_newer {
                        self.update(who)?;
                    }
                }
            }
            Act::Clone(who) => {
                if count < 9 {
                    let copy = self.walkers[who % count].copied();
                    self.doubled.insert(copy.phone.seed);
                    self.walkers.push(copy);
                }
            }
            Act::Update(who) => self.update(who % count)?,
            Act::Refuse(who, whom) => {
                let refused = self.walkers[whom % count].phone.id();
                let phone = &mut self.walkers[who % count].phone;
                if refused != phone.id() {
                    phone.store.refuse(refused, None).map_err(|error| error.to_string())?;
                }
            }
            Act::Accept(who) => self.trusts_all(who % count),
            Act::Newer(who, field, new, packed) => {
                let newer = (0..count).filter(|at| self.walkers[*at].newer.is_some());
                let newer: Vec<usize> = newer.collect();
                if !newer.is_empty() {
                    self.writes_newer(newer[who % newer.len()], field, new, packed)?;
                }
            }
            Act::SaveAll(who, field) => self.walkers[who % count].saves_all(field, name)?,
            Act::Check(who) => {
                let store = &self.walkers[who % count].phone.store;
                store.check().map_err(|error| error.to_string())?;
            }
        }
        Ok(())
    }

    fn new_key(&mut self, who: usize) {
        self.keys += 1;
        self.lost.insert(self.walkers[who].phone.seed);
        let phone = self.walkers[who].phone.restored_with_key(self.keys);
        self.walkers[who].phone = phone;
        for who in 0..self.walkers.len() {
            self.trusts_all(who);
        }
    }

    /// Somebody accepts all that there are, but for those whose keys are gone.
    fn trusts_all(&mut self, who: usize) {
        for key in (1..=self.first).chain(101..=self.keys).chain(WRITERS) {
            let phone = &mut self.walkers[who].phone;
            phone.trust(key);
            if self.lost.contains(&key) {
                phone.lost(key);
            }
        }
        self.walkers[who].phone.believe_all();
    }

    /// A phone gets the newer build; what it had to leave alone is taken in.
    fn update(&mut self, who: usize) -> Result<(), String> {
        let walker = &mut self.walkers[who];
        if walker.newer.is_none() {
            walker.newer = Some(Writer::new(WRITERS.start() + who as u8));
        }
        if walker.held.is_empty() {
            return Ok(());
        }
        self.tally.left_alone += walker.held.len();
        let taken = walker.phone.update(|file| self.critical.understood(file));
        let held: BTreeSet<Vec<u8>> = walker.held.drain(..).collect();
        if taken.len() != held.len() || taken.iter().any(|taken| taken.held) {
            return Err(format!("of {} files left alone {taken:?} came in", held.len()));
        }
        let there = chains(&walker.phone.hand_over());
        if held.iter().any(|file| !chains(file).is_subset(&there)) {
            return Err("a file that was left alone did not come in as a whole".to_owned());
        }
        Ok(())
    }

    /// Somebody's newer build writes what this version does not know, and takes it in.
    fn writes_newer(&mut self, who: usize, field: usize, new: New, packed: Packed) -> Result<(), String> {
        let walker = &mut self.walkers[who];
        let (Some(field), Some(writer)) = (walker.field(field), &mut walker.newer) else { return Ok(()) };
        let Some(written) = writer.write(&mut walker.phone, field, new, packed, self.written) else {
            return Ok(());
        };
        let taken = walker.phone.take_in(&written.file);
        self.tally.newer += 1;
        walker.names.extend(written.names);
        if let Some(critical) = written.critical {
            // It is handed over at once, so that some leave it alone.
            self.critical.add(written.part, critical);
            let bytes = self.critical.packed(&walker.phone.hand_over());
            self.files.push(Carried { bytes, names: walker.names.clone() });
        }
        if taken.held { Err("a newer build did not understand itself".to_owned()) } else { Ok(()) }
    }

    /// Everybody hands everything to everybody; then all must be alike, and nothing that was saved may be gone.
    fn end(mut self) -> Result<Tally, String> {
        for who in 0..self.walkers.len() {
            self.trusts_all(who);
            self.update(who)?;
        }
        for file in &mut self.files {
            file.bytes = self.critical.understood(&file.bytes);
        }
        for _ in 0..2 {
            for who in 0..self.walkers.len() {
                let walker = &mut self.walkers[who];
                let bytes = walker.phone.hand_over();
                self.files.push(Carried { bytes, names: walker.names.clone() });
            }
            for walker in &mut self.walkers {
                for file in self.files.iter().rev() {
                    walker.phone.take_in(&file.bytes);
                }
            }
        }
        let mut names: BTreeSet<String> = BTreeSet::new();
        self.files.iter().for_each(|file| names.extend(file.names.iter().cloned()));
        let mut first = None;
        for (who, walker) in self.walkers.iter_mut().enumerate() {
            let store = &walker.phone.store;
            store.check().map_err(|error| format!("phone {who}: {error}"))?;
            let missing = store.missing().map_err(|error| error.to_string())?;
            if !missing.is_empty() {
                return Err(format!("phone {who} says that {missing:?} is missing"));
            }
            let digest = store.digest().map_err(|error| error.to_string())?;
            let file = walker.phone.hand_over();
            let store = &walker.phone.store;
            let (held, mut texts) = (chains(&file), texts(&file));
            texts.extend(newer::parts(&file));
            if let Some(name) = names.iter().find(|name| !texts.contains(*name)) {
                return Err(format!("phone {who} has lost {name:?}"));
            }
            let (first_digest, first_held) = first.get_or_insert_with(|| (digest, held.clone()));
            if held != *first_held {
                return Err(format!("phone {who} has other edits than phone 0"));
            }
            if digest != *first_digest {
                return Err(format!("phone {who} shows something else than phone 0 of the same edits"));
            }
            for field in store.fields().map_err(|error| error.to_string())? {
                store.load_notes(field.id).map_err(|error| error.to_string())?;
            }
            self.tally.not_shown = store.not_shown_anywhere().map_err(|error| error.to_string())?.len();
        }
        Ok(self.tally)
    }
}

impl Walker {
    /// Another with a copy of all.
    fn copied(&mut self) -> Self {
        let phone = self.phone.copied();
        let (names, newer, held) = (self.names.clone(), self.newer.clone(), self.held.clone());
        Self { phone, names, newer, held, backup: None }
    }

    /// Takes in a file, or leaves it alone: an older build does where a newer one packed it so.
    fn takes_in(&mut self, file: &Carried, critical: &Critical) -> Result<(), String> {
        let understood = critical.understood(&file.bytes);
        let bytes = if self.newer.is_some() { &understood } else { &file.bytes };
        let leaves_alone = *bytes != understood;
        if self.phone.take_in(bytes).held != leaves_alone {
            return Err(format!("a file was to be left alone: {leaves_alone}"));
        }
        if leaves_alone {
            self.held.push(understood);
        } else {
            self.names.extend(file.names.iter().cloned());
        }
        Ok(())
    }

    /// Saves a field as it is shown, under another name. Nothing else is to change, least of all what is not shown.
    fn saves_all(&mut self, field: usize, name: String) -> Result<(), String> {
        let Some(field) = self.field(field) else { return Ok(()) };
        let mut notes = self.phone.store.load_notes(field).map_err(|error| error.to_string())?;
        notes.field.name.clone_from(&name);
        let now = self.phone.now();
        let saved = self.phone.store.save_notes(&notes, now).map_err(|error| error.to_string())?;
        self.names.insert(name);
        // Records that two phones put in one place get places of their own.
        let meant = [Cell::FIELD_NAME, Cell::PARENT];
        let other = saved.changes.iter().find(|change| !meant.contains(&change.cell));
        other.map_or(Ok(()), |change| Err(format!("saving what is shown changed {change:?}")))
    }

    fn field(&self, at: usize) -> Option<RecordId> {
        let fields = self.phone.store.fields().unwrap();
        (!fields.is_empty()).then(|| fields[at % fields.len()].id)
    }

    fn pit(&self, field: usize, at: usize) -> Option<RecordId> {
        let notes = self.phone.store.load_notes(self.field(field)?).unwrap();
        (!notes.pits.is_empty()).then(|| notes.pits[at % notes.pits.len()].id)
    }
}

/// The chain at every edit of a file: which edits there are.
fn chains(file: &[u8]) -> BTreeSet<Chain> {
    let parts = read_file(file).unwrap();
    let edits = parts.iter().filter(|part| part.kind == PartKind::Edits);
    edits.flat_map(|part| Bundle::read(part.content).unwrap().chains).collect()
}

fn pit_depth(field: usize) -> u32 {
    u32::try_from(field % 300).unwrap()
}
