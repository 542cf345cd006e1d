//! A world of walkers: a plan of what happens to whom, run step by step, and what must be so at its end.
#![allow(clippy::unwrap_used, reason = "a test fails by it")]

use crate::merge_support::{Phone, texts};
use pitface_core::merge::{Bundle, Chain, PartKind, read_file};
use pitface_core::record::RecordId;
use std::collections::BTreeSet;

/// Something that happens. Numbers are taken modulo what is there, so that a plan stays one when parts of it are left out.
#[derive(Debug, Clone, Copy)]
pub enum Act {
    /// Somebody begins a field.
    Field(usize),
    /// Somebody renames a field.
    Rename(usize, usize),
    /// Somebody digs a pit in a field.
    Pit(usize, usize),
    /// Somebody adds a step to the walk of a pit of a field.
    Step(usize, usize, usize),
    /// Somebody deletes a pit, or a field.
    Delete(usize, usize, bool),
    /// Somebody takes back the last save.
    Undo(usize),
    /// Somebody settles the first conflict.
    Settle(usize),
    /// Somebody brings back what was deleted while others went on.
    BringBack(usize),
    /// Somebody hands all over to whom it may concern.
    HandOver(usize),
    /// Somebody hands over to one other what that one is not known to have.
    HandOverTo(usize, usize),
    /// Somebody takes in one of the files about.
    TakeIn(usize, usize),
    /// A file is lost for now.
    Lose(usize),
    /// A phone's clock jumps by hours.
    Jump(usize, i64),
    /// A copy of the phone is put away.
    Backup(usize),
    /// The phone is lost, and another begins from the copy: with the same key, or with a new one.
    Restore(usize, bool),
    /// The phone is copied, and both go on.
    Clone(usize),
    /// The phone is looked over.
    Check(usize),
}

/// A source of numbers that a seed fixes (`SplitMix64`, Steele and others 2014).
pub struct Dice(pub u64);

impl Dice {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn between(&mut self, least: i64, most: i64) -> i64 {
        least.saturating_add_unsigned(self.next() % most.abs_diff(least).saturating_add(1))
    }

    pub fn below(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }
}

/// A plan: how far each phone's clock is off, and what happens.
#[derive(Debug, Clone)]
pub struct Plan {
    pub skews_ms: Vec<i64>,
    pub acts: Vec<Act>,
}

impl Plan {
    /// The plan of a seed: two to seven phones, thirty to ninety acts.
    pub fn of(seed: u64) -> Self {
        const YEAR_MS: i64 = 365 * 86_400_000;
        let mut dice = Dice(seed);
        let phones = 2 + dice.below(6);
        let skews_ms = (0..phones)
            .map(|_| match dice.below(4) {
                0 => (dice.between(-20, 20)) * YEAR_MS,
                1 => 0,
                _ => dice.between(-60_000, 59_999),
            })
            .collect();
        let count = 30 + dice.below(61);
        Self { skews_ms, acts: (0..count).map(|_| act(&mut dice)).collect() }
    }
}

fn act(dice: &mut Dice) -> Act {
    let (who, a, b) = (dice.below(1 << 16), dice.below(1 << 16), dice.below(1 << 16));
    match dice.below(100) {
        0..8 => Act::Field(who),
        8..22 => Act::Rename(who, a),
        22..34 => Act::Pit(who, a),
        34..46 => Act::Step(who, a, b),
        46..51 => Act::Delete(who, a, b % 4 == 0),
        51..56 => Act::Undo(who),
        56..59 => Act::Settle(who),
        59..61 => Act::BringBack(who),
        61..69 => Act::HandOver(who),
        69..75 => Act::HandOverTo(who, a),
        75..90 => Act::TakeIn(who, a),
        90..92 => Act::Lose(a),
        92..94 => Act::Jump(who, dice.between(-36, 35)),
        94..95 => Act::Backup(who),
        95..97 => Act::Restore(who, b % 2 == 0),
        97..98 => Act::Clone(who),
        _ => Act::Check(who),
    }
}

/// A file about, and the names that were written before it was.
struct Carried {
    bytes: Vec<u8>,
    names: BTreeSet<String>,
}

/// A phone, and the names that were saved on it or came to it.
struct Walker {
    phone: Phone,
    names: BTreeSet<String>,
    backup: Option<(Phone, BTreeSet<String>)>,
}

struct World {
    walkers: Vec<Walker>,
    files: Vec<Carried>,
    written: u64,
    /// How many phones there were at first, with keys from 1 on.
    first: u8,
    /// The last key of those that came later, from 101 on.
    keys: u8,
}

/// Runs a plan to its end and tells the first thing that is not as it must be.
pub fn run(plan: &Plan) -> Result<(), String> {
    let walkers = plan.skews_ms.iter().zip(1..).map(|(skew, seed)| {
        let mut phone = Phone::in_memory(seed);
        phone.set_clock(*skew);
        Walker { phone, names: BTreeSet::new(), backup: None }
    });
    let mut world = World {
        walkers: walkers.collect(),
        files: Vec::new(),
        written: 0,
        first: plan.skews_ms.len() as u8,
        keys: 100,
    };
    for phone in 0..world.walkers.len() {
        for seed in 1..=plan.skews_ms.len() as u8 {
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
                let bytes = walker.phone.hand_over();
                self.files.push(Carried { bytes, names: walker.names.clone() });
            }
            Act::HandOverTo(who, whom) => {
                let to = self.walkers[whom % count].phone.id();
                let walker = &mut self.walkers[who % count];
                let bytes = walker.phone.hand_over_to(to);
                // What the other is said to have is not in it, so nothing is expected of it alone.
                self.files.push(Carried { bytes, names: BTreeSet::new() });
            }
            Act::TakeIn(who, file) => {
                let walker = &mut self.walkers[who % count];
                if !self.files.is_empty() {
                    let file = &self.files[file % self.files.len()];
                    walker.phone.take_in(&file.bytes);
                    walker.names.extend(file.names.iter().cloned());
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
                walker.backup = Some((walker.phone.copied(), walker.names.clone()));
            }
            Act::Restore(who, same_key) => {
                let walker = &mut self.walkers[who % count];
                if let Some((phone, names)) = walker.backup.take() {
                    walker.names = names;
                    walker.phone = phone;
                    // Whom it came to trust since then it does not know.
                    for key in (1..=self.first).chain(101..=self.keys) {
                        walker.phone.trust(key);
                    }
                    if !same_key {
                        self.new_key(who % count);
                    }
                }
            }
            Act::Clone(who) => {
                if count < 9 {
                    let walker = &mut self.walkers[who % count];
                    let (phone, names) = (walker.phone.copied(), walker.names.clone());
                    self.walkers.push(Walker { phone, names, backup: None });
                }
            }
            Act::Check(who) => {
                let store = &self.walkers[who % count].phone.store;
                store.check().map_err(|error| error.to_string())?;
            }
        }
        Ok(())
    }

    fn new_key(&mut self, who: usize) {
        self.keys += 1;
        let phone = self.walkers[who].phone.restored_with_key(self.keys);
        self.walkers[who].phone = phone;
        for walker in &mut self.walkers {
            walker.phone.trust(self.keys);
        }
    }

    /// Everybody hands everything to everybody; then all must be alike, and nothing that was saved may be gone.
    fn end(mut self) -> Result<(), String> {
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
            let (held, texts) = (chains(&file), texts(&file));
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
        }
        Ok(())
    }
}

impl Walker {
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
