//! Phones that note, hand over and take in.

use pitface_core::merge::{Bundle, Content, DeviceId, FileWriter, KeyFromSeed, PartKind, Signer, read_file};
use pitface_core::record::{ComesAway, Field, Pit, PlaceKind, RecordId, Step, Unknown};
use pitface_core::store::{Cell, Sealer, Store, TakenIn, Vouched, Vouching};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::atomic::{AtomicU64, Ordering};
use tempfile::TempDir;

/// Copies made so far: each makes ids of its own.
static COPIES: AtomicU64 = AtomicU64::new(1);

/// A store with its key and its clock.
pub struct Phone {
    pub store: Store,
    pub seed: u8,
    folder: TempDir,
    clock_ms: u64,
    ids: u64,
    /// Whether its walker says yes whenever one device answers for another.
    pub credulous: bool,
}

impl Phone {
    pub fn new(seed: u8) -> Self {
        Self::over(tempfile::tempdir().unwrap(), seed, 1_760_000_000_000)
    }

    /// As [`Self::new`], in a folder in memory where the system has one: a disk is not what is tested.
    pub fn in_memory(seed: u8) -> Self {
        Self::over(folder(), seed, 1_760_000_000_000)
    }

    fn over(folder: TempDir, seed: u8, clock_ms: u64) -> Self {
        let store = Store::create_or_open(&folder.path().join("notes.pitface"), key(seed).device()).unwrap();
        Self { store, seed, folder, clock_ms, ids: 0, credulous: false }
    }

    /// Two phones that know each other; the second's clock is a minute ahead.
    pub fn pair() -> (Self, Self) {
        let (mut ann, mut ben) = (Self::new(1), Self::new(2));
        ben.clock_ms += 60_000;
        Self::trust_all(&mut [&mut ann, &mut ben]);
        (ann, ben)
    }

    pub fn trust_all(phones: &mut [&mut Self]) {
        let seeds: Vec<u8> = phones.iter().map(|phone| phone.seed).collect();
        for phone in phones {
            for seed in &seeds {
                phone.trust(*seed);
            }
        }
    }

    pub fn trust(&mut self, seed: u8) {
        let now = self.now();
        self.store.accept_key(&key(seed).public_key(), "", now).unwrap();
    }

    pub fn id(&self) -> DeviceId {
        key(self.seed).device()
    }

    /// Sets the clock forward, or back.
    pub fn set_clock(&mut self, by_ms: i64) {
        self.clock_ms = self.clock_ms.saturating_add_signed(by_ms);
    }

    pub fn now(&mut self) -> u64 {
        self.clock_ms += 1000;
        self.clock_ms
    }

    pub fn new_id(&mut self) -> RecordId {
        self.ids += 1;
        let mut random = [self.seed; 10];
        random[..8].copy_from_slice(&(self.ids ^ u64::from(self.seed) << 56).to_be_bytes());
        RecordId::new(self.clock_ms, random)
    }

    pub fn new_field(&mut self, name: &str) -> RecordId {
        let field = Field::new(self.new_id(), name);
        let now = self.now();
        self.store.save_field(&field, now).unwrap();
        field.id
    }

    pub fn rename(&mut self, field: RecordId, name: &str) {
        let mut notes = self.store.load_notes(field).unwrap();
        name.clone_into(&mut notes.field.name);
        let now = self.now();
        self.store.save_field(&notes.field, now).unwrap();
    }

    pub fn step(&mut self, pit: RecordId, to_mm: u32) -> RecordId {
        let step = new_step(self, to_mm);
        let now = self.now();
        self.store.save_step(pit, &step, now).unwrap();
        step.id
    }

    pub fn seal(&mut self) {
        let signer = key(self.seed);
        let now_ms = self.now();
        self.store.seal(&sealer(&signer, now_ms)).unwrap();
    }

    pub fn redact(&mut self, record: RecordId, cell: Cell) -> u64 {
        let signer = key(self.seed);
        let now_ms = self.now();
        self.store.redact(record, cell, &sealer(&signer, now_ms)).unwrap()
    }

    /// All it has, as a file.
    pub fn hand_over(&mut self) -> Vec<u8> {
        self.seal();
        let mut file = FileWriter::new(Vec::new());
        self.store.hand_over(None, &mut file).unwrap();
        file.end().unwrap()
    }

    /// Returns what another is not known to have.
    pub fn hand_over_to(&mut self, to: DeviceId) -> Vec<u8> {
        self.seal();
        let mut file = FileWriter::new(Vec::new());
        self.store.hand_over(Some(to), &mut file).unwrap();
        file.end().unwrap()
    }

    /// All it has that is not in an earlier file.
    pub fn hand_over_what(&mut self, lacks: &[u8]) -> Vec<u8> {
        let all = self.hand_over();
        let known: Vec<_> = read_file(lacks).unwrap().into_iter().map(|part| part.hash).collect();
        let mut file = FileWriter::new(Vec::new());
        for part in read_file(&all).unwrap() {
            if !known.contains(&part.hash) {
                file.add(part.bytes).unwrap();
            }
        }
        file.end().unwrap()
    }

    pub fn take_in(&mut self, file: &[u8]) -> TakenIn {
        let now = self.now();
        let taken = self.store.take_in(file, now).unwrap();
        if self.credulous {
            self.believe_all();
        }
        taken
    }

    /// A device's key is gone: what it signed is believed, but others may answer for it.
    pub fn lost(&mut self, seed: u8) {
        self.store.refuse(key(seed).device(), Some(u64::MAX)).unwrap();
    }

    /// Says yes to all that asks for it.
    pub fn believe_all(&mut self) {
        while let Some(Vouching { signer, device, .. }) =
            self.store.vouchings().unwrap().into_iter().find(|one| one.standing == Vouched::Asks)
        {
            let now = self.now();
            self.store.believe(signer, device, now).unwrap();
        }
    }

    pub fn accept(&mut self, other: &Self) -> TakenIn {
        let now = self.now();
        self.store.accept(other.id(), now).unwrap()
    }

    /// Another phone with a copy of this one's folder, key included.
    pub fn copied(&mut self) -> Self {
        self.restored_with_key(self.seed)
    }

    /// Another phone with a copy of this one's folder, and a key of its own.
    pub fn restored_with_key(&mut self, seed: u8) -> Self {
        let folder = folder();
        self.close();
        for file in std::fs::read_dir(self.folder.path()).unwrap() {
            let file = file.unwrap();
            std::fs::copy(file.path(), folder.path().join(file.file_name())).unwrap();
        }
        self.open();
        let mut copy = Self::over(folder, seed, self.clock_ms);
        copy.credulous = self.credulous;
        copy.ids = self.ids + (COPIES.fetch_add(1, Ordering::Relaxed) << 20);
        copy
    }

    /// Its folder and its store, closed.
    pub fn closed(self) -> (TempDir, PathBuf) {
        let path = self.path();
        drop(self.store);
        (self.folder, path)
    }

    /// Gets a newer build, which reads `understood` in place of the files that were left alone, and takes them in.
    pub fn update(&mut self, understood: impl Fn(&[u8]) -> Vec<u8>) -> Vec<TakenIn> {
        self.close();
        let connection = rusqlite::Connection::open(self.path()).unwrap();
        let mut statement = connection.prepare("SELECT bytes FROM held").unwrap();
        let rows = statement.query_map([], |row| row.get(0)).unwrap();
        let held: Vec<Vec<u8>> = rows.collect::<Result<_, _>>().unwrap();
        connection.execute("DELETE FROM held", []).unwrap();
        for bytes in held.iter().map(|bytes| understood(bytes)) {
            let hash: [u8; 32] = Sha256::digest(&bytes).into();
            let row = rusqlite::params![hash, bytes];
            connection.execute("INSERT OR IGNORE INTO held (hash, bytes) VALUES (?1, ?2)", row).unwrap();
        }
        drop(statement);
        drop(connection);
        self.open();
        let now = self.now();
        let taken = self.store.take_in_held(now).unwrap();
        if self.credulous {
            self.believe_all();
        }
        taken
    }

    fn path(&self) -> PathBuf {
        self.folder.path().join("notes.pitface")
    }

    fn close(&mut self) {
        let elsewhere = Store::create_or_open(&self.folder.path().join("closed"), self.id()).unwrap();
        drop(std::mem::replace(&mut self.store, elsewhere));
        for name in ["closed-wal", "closed-shm"] {
            let _ = std::fs::remove_file(self.folder.path().join(name));
        }
    }

    fn open(&mut self) {
        self.store = Store::create_or_open(&self.path(), self.id()).unwrap();
        std::fs::remove_file(self.folder.path().join("closed")).unwrap();
    }

    /// Returns what lies in its folder, byte for byte.
    pub fn bytes(&self) -> Vec<(String, Vec<u8>)> {
        let mut files: Vec<_> = std::fs::read_dir(self.folder.path())
            .unwrap()
            .map(|file| file.unwrap())
            .map(|file| (file.file_name().into_string().unwrap(), std::fs::read(file.path()).unwrap()))
            .filter(|(name, _)| !name.ends_with("-shm"))
            .collect();
        files.sort();
        files
    }
}

/// All texts that the edits of a file write, and the bytes of what is no text.
pub fn texts(file: &[u8]) -> BTreeSet<String> {
    let mut texts = BTreeSet::new();
    for part in read_file(file).unwrap().iter().filter(|part| part.kind == PartKind::Edits) {
        for edit in Bundle::read(part.content).unwrap().edits {
            texts.extend(text(&edit.content));
        }
    }
    texts
}

/// The text that an edit writes; the bytes of what is none.
pub fn text(content: &Content) -> Option<String> {
    let Content::Value(bytes) = content else { return None };
    let value: ciborium::Value = ciborium::from_reader(bytes.as_slice()).unwrap();
    Some(value.as_text().map_or_else(|| format!("{bytes:02x?}"), str::to_owned))
}

pub fn sealer(signer: &KeyFromSeed, now_ms: u64) -> Sealer<'_> {
    Sealer { signer, holder: "", written_by: "tests", now_ms, ahead_ms: None }
}

pub fn folder() -> TempDir {
    tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).unwrap()
}

pub fn key(seed: u8) -> KeyFromSeed {
    KeyFromSeed::new(&[seed; 32])
}

pub fn pit(phone: &mut Phone, field: RecordId, to_mm: u32) -> RecordId {
    let mut pit = Pit::new(phone.new_id(), PlaceKind::Open);
    pit.walk = vec![new_step(phone, to_mm)];
    let now = phone.now();
    phone.store.save_pit(field, &pit, now).unwrap();
    pit.id
}

fn new_step(phone: &mut Phone, to_mm: u32) -> Step {
    Step {
        id: phone.new_id(),
        to_mm,
        comes_away: Some(ComesAway::Crumbs),
        resistance: None,
        unknown: Unknown::new(),
    }
}

/// A text as a cell has it.
pub fn name(text: &str) -> Vec<u8> {
    let mut bytes = Vec::new();
    ciborium::into_writer(&ciborium::Value::from(text), &mut bytes).unwrap();
    bytes
}
