//! Five walkers with stores and notes files of their own do whatever walkers do, in any order. No record that somebody noted disappears
//! from any store unless somebody who saw it removed it, none is turned into another, and everything comes back.

use crate::merge_support;

use merge_support::Phone;
use pitface_core::record::ids::ids;
use pitface_core::record::{RecordId, notes};
use pitface_core::store::{Cell, NotesFile, ReadIn, StoreError};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

const WALKERS: usize = 5;
const ACTS: usize = 80;

/// A notes file on somebody's laptop.
struct File {
    source: String,
    says: Value,
}

struct Walker {
    phone: Phone,
    files: Vec<File>,
    /// Every record that was ever shown here.
    seen: BTreeSet<RecordId>,
}

/// Chance from a seed (splitmix64; Steele, Lea and Flood 2014).
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ self.0 >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ mixed >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ mixed >> 31) % most.max(1) as u64) as usize
    }
}

struct World {
    chance: Chance,
    walkers: Vec<Walker>,
    /// What somebody removed who saw it: deleted by tap, at a file's word, by taking back one's own save.
    removed: BTreeSet<RecordId>,
    /// Who dug each pit: nobody ever changes that.
    dug_by: BTreeMap<RecordId, String>,
    pits: u32,
    done: BTreeMap<&'static str, usize>,
}

impl World {
    fn new(seed: u64) -> Self {
        let mut phones: Vec<Phone> = (1..=5).map(Phone::in_memory).collect();
        Phone::trust_all(&mut phones.iter_mut().collect::<Vec<_>>());
        let walker = |phone| Walker { phone, files: Vec::new(), seen: BTreeSet::new() };
        let mut world = Self {
            chance: Chance(seed),
            walkers: phones.into_iter().map(walker).collect(),
            removed: BTreeSet::new(),
            dug_by: BTreeMap::new(),
            pits: 0,
            done: BTreeMap::new(),
        };
        for who in 0..WALKERS {
            for number in 0..2 {
                // All farms have a Home Field.
                let name = if number == 0 { "Home Field".to_owned() } else { format!("Field {who}") };
                let pits: Vec<Value> = (0..3).map(|_| world.pit(who)).collect();
                let says = json!({"pitface": 1, "field": {"name": name, "texture": "loam"}, "pits": pits});
                world.walkers[who].files.push(File { source: format!("field{number}.notes.json"), says });
            }
        }
        world
    }

    fn below(&mut self, most: usize) -> usize {
        self.chance.below(most)
    }

    /// A new pit, unlike any other.
    fn pit(&mut self, who: usize) -> Value {
        self.pits += 1;
        let number = self.pits;
        json!({
            "place": "open", "by": format!("walker {who}, pit {number}"), "dug_to_mm": 400 + number,
            "at": [2.5 + f64::from(number) / 10_000.0, 54.5], "walk": [{"to_mm": 400 + number, "comes_away": "crumbs"}],
        })
    }

    fn count(&mut self, what: &'static str) {
        *self.done.entry(what).or_default() += 1;
    }

    fn act(&mut self) {
        let who = self.below(WALKERS);
        match self.below(16) {
            0..=3 => self.reads(who),
            4 | 5 => self.edits_a_file(who),
            6 | 7 => self.taps(who),
            8..=10 => self.hands_over(who),
            11 => self.settles(who),
            12 => self.joins(who),
            13 => self.undoes(who),
            14 => self.removes(who),
            _ => self.writes_a_file(who),
        }
        self.holds();
    }

    fn reads(&mut self, who: usize) {
        let file = self.below(self.walkers[who].files.len());
        self.reads_file(who, file);
    }

    fn reads_file(&mut self, who: usize, file: usize) {
        let walker = &mut self.walkers[who];
        let File { source, says } = &walker.files[file];
        let (source, says) = (source.clone(), says.to_string());
        let came = read(&mut walker.phone, &source, &says, None);
        // Of what is listed as missing, sometimes all is removed, at the word that came with the list.
        if let Ok(came) = came {
            self.count("read");
            if let Some(word) = came.missing.word()
                && self.below(3) > 0
            {
                let listed = came.missing.records.iter().filter(|missing| missing.removable);
                self.removed.extend(listed.map(|missing| missing.record));
                let gone = read(&mut self.walkers[who].phone, &source, &says, Some(&word)).unwrap();
                assert!(gone.removed);
                self.count("removed at a word");
            }
        }
    }

    fn edits_a_file(&mut self, who: usize) {
        let file = self.below(self.walkers[who].files.len());
        let (what, new) = (self.below(5), self.pit(who));
        let pits = self.walkers[who].files[file].says["pits"].as_array().unwrap().len();
        let at = self.below(pits);
        let says = &mut self.walkers[who].files[file].says;
        let list = says["pits"].as_array_mut().unwrap();
        match what {
            0 => list.insert(at, new),
            1 | 2 if pits > 0 => drop(list.remove(at)),
            3 if pits > 0 => list[at]["face"] = json!("moist"),
            _ => says["field"]["texture"] = json!(if at.is_multiple_of(2) { "clay" } else { "sandy_loam" }),
        }
        self.count("file edited");
        if self.below(2) == 0 {
            self.reads_file(who, file);
        }
    }

    /// From a store, with its ids.
    fn writes_a_file(&mut self, who: usize) {
        let Some(field) = self.any_field(who) else { return };
        let walker = &mut self.walkers[who];
        let text = notes::write(&walker.phone.store.load_notes(field).unwrap());
        let source = format!("written{}.notes.json", walker.files.len() % 3);
        walker.files.retain(|file| file.source != source);
        walker.files.push(File { source, says: serde_json::from_str(&text).unwrap() });
        self.count("file written");
    }

    fn any_field(&mut self, who: usize) -> Option<RecordId> {
        let fields = self.walkers[who].phone.store.fields().unwrap();
        let at = self.below(fields.len());
        fields.get(at).map(|field| field.id)
    }

    fn taps(&mut self, who: usize) {
        let Some(field) = self.any_field(who) else { return };
        let (what, new) = (self.below(4), self.pit(who));
        let walker = &mut self.walkers[who];
        let mut notes = walker.phone.store.load_notes(field).unwrap();
        let now = walker.phone.now();
        let at = notes.pits.len() / 2;
        match what {
            0 => {
                let new = json!({"pitface": 1, "field": {"name": "x"}, "pits": [new]});
                let (parsed, _) = parsed(&mut walker.phone, &new.to_string());
                walker.phone.store.save_pit(field, &parsed.pits[0], now).unwrap();
            }
            1 if !notes.pits.is_empty() => {
                let gone = notes.pits[at].id;
                walker.phone.store.delete_record(gone, now).unwrap();
                self.removed.insert(gone);
            }
            2 if !notes.pits.is_empty() => {
                notes.pits[at].dug_to_mm = notes.pits[at].dug_to_mm.map(|mm| mm + 5);
                walker.phone.store.save_pit(field, &notes.pits[at], now).unwrap();
            }
            _ => {
                notes.field.reach_mm = Some(400 + self.pits);
                walker.phone.store.save_field(&notes.field, now).unwrap();
            }
        }
        self.count("tap");
    }

    fn hands_over(&mut self, who: usize) {
        let to = (who + 1 + self.below(WALKERS - 1)) % WALKERS;
        let file = self.walkers[who].phone.hand_over();
        self.walkers[to].phone.take_in(&file);
        self.count("handed over");
    }

    fn settles(&mut self, who: usize) {
        let phone = &mut self.walkers[who].phone;
        let now = phone.now();
        let conflicts = phone.store.conflicts().unwrap();
        if let Some(conflict) = conflicts.into_iter().find(|conflict| conflict.cell != Cell::DELETED) {
            let value = &conflict.versions.last().unwrap().value;
            phone.store.settle(conflict.record, conflict.cell, value, now).unwrap();
            self.count("settled");
        }
    }

    fn joins(&mut self, who: usize) {
        let (Some(one), Some(other)) = (self.any_field(who), self.any_field(who)) else { return };
        let apart = self.below(4) == 0;
        let phone = &mut self.walkers[who].phone;
        let now = phone.now();
        if apart {
            phone.store.part(one, now).unwrap();
        } else if one != other {
            phone.store.join(one, other, now).unwrap();
            self.count("joined");
        }
    }

    fn undoes(&mut self, who: usize) {
        let phone = &mut self.walkers[who].phone;
        let now = phone.now();
        let Some(undone) = phone.store.undo(now).unwrap() else { return };
        // What the save had made is gone with it; the person saw what they took back.
        let gone = undone.changes.iter().filter(|change| change.cell == Cell::DELETED);
        self.removed.extend(gone.map(|change| change.record));
        self.count("undone");
    }

    /// Brings back what is deleted, or lets it stay so.
    fn removes(&mut self, who: usize) {
        let at = self.below(1 << 20);
        let phone = &mut self.walkers[who].phone;
        let now = phone.now();
        let deleted = phone.store.deleted().unwrap();
        if let Some(one) = deleted.get(at % deleted.len().max(1)) {
            phone.store.bring_back(one.record, now).unwrap();
            self.count("brought back");
        }
    }

    /// What must be true after every act.
    fn holds(&mut self) {
        for who in 0..WALKERS {
            let walker = &mut self.walkers[who];
            let store = &walker.phone.store;
            let mut shown = BTreeSet::new();
            for field in store.fields().unwrap() {
                let notes = store.load_notes(field.id).unwrap();
                shown.extend(ids(&notes));
                shown.extend(store.one_field(field.id).unwrap());
                for pit in &notes.pits {
                    let by = pit.by.clone().unwrap();
                    let first = self.dug_by.entry(pit.id).or_insert_with(|| by.clone());
                    assert_eq!(*first, by, "a pit was turned into another at walker {who}; {:?}", self.done);
                }
            }
            for record in walker.seen.iter().filter(|record| !shown.contains(record)) {
                let path = store.path_of(*record).unwrap();
                let removed = path.iter().any(|(record, _)| self.removed.contains(record));
                assert!(removed, "{path:?} disappeared at walker {who}; {:?}", self.done);
            }
            walker.seen.extend(shown);
        }
    }

    /// All meet all, until all have the same; then everything is brought back.
    fn ends(&mut self) {
        for round in 0..2 {
            for who in 0..WALKERS {
                let file = self.walkers[who].phone.hand_over();
                for to in (0..WALKERS).filter(|to| *to != who) {
                    self.walkers[to].phone.take_in(&file);
                }
            }
            self.holds();
            let _ = round;
        }
        let digests: BTreeSet<_> =
            self.walkers.iter().map(|walker| walker.phone.store.digest().unwrap()).collect();
        assert_eq!(digests.len(), 1);
        let seen: BTreeSet<RecordId> = self.walkers.iter().flat_map(|walker| walker.seen.clone()).collect();
        let phone = &mut self.walkers[0].phone;
        loop {
            let deleted = phone.store.deleted().unwrap();
            if deleted.is_empty() {
                break;
            }
            for one in deleted {
                let now = phone.now();
                phone.store.bring_back(one.record, now).unwrap();
            }
        }
        let mut shown = BTreeSet::new();
        for field in phone.store.fields().unwrap() {
            shown.extend(ids(&phone.store.load_notes(field.id).unwrap()));
            shown.extend(phone.store.one_field(field.id).unwrap());
        }
        assert!(seen.is_subset(&shown), "some does not come back");
        phone.store.check().unwrap();
    }
}

fn parsed(phone: &mut Phone, text: &str) -> (pitface_core::record::FieldNotes, BTreeSet<RecordId>) {
    let mut made = BTreeSet::new();
    let read = notes::read(text, &mut || {
        let id = phone.new_id();
        made.insert(id);
        id
    });
    (read.unwrap().notes, made)
}

fn read(phone: &mut Phone, source: &str, text: &str, remove: Option<&str>) -> Result<ReadIn, StoreError> {
    let (mut notes, made) = parsed(phone, text);
    let now = phone.now();
    phone.store.read_in(&mut notes, &NotesFile { source: Some(source), made: &made, remove }, now)
}

#[test]
fn nothing_that_somebody_noted_disappears_unasked() {
    let mut done: BTreeMap<&str, usize> = BTreeMap::new();
    for seed in 0..12 {
        let mut world = World::new(seed);
        for _ in 0..ACTS {
            world.act();
        }
        world.ends();
        for (what, count) in world.done {
            *done.entry(what).or_default() += count;
        }
    }
    println!("{done:?}");
    for what in [
        "read",
        "removed at a word",
        "file edited",
        "file written",
        "tap",
        "handed over",
        "joined",
        "undone",
        "brought back",
    ] {
        assert!(done.get(what).is_some_and(|count| *count > 5), "{what}: {done:?}");
    }
}
