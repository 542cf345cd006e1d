//! A store with its key, and what is in it.

use pitface_core::merge::{DeviceId, FileWriter, KeyFromSeed, Signer};
use pitface_core::record::{ComesAway, Field, Person, Pit, PlaceKind, RecordId, Step, Unknown};
use pitface_core::store::{Sealer, Store, StoreError};
use sha2::{Digest, Sha256};
use std::path::{Path, PathBuf};

/// The seed of the phone under test.
pub const DEVICE: u8 = 1;

/// Any time; each call is a second later.
const BEGIN_MS: u64 = 1_760_000_000_000;

/// All that can be told of a store from outside: equal for equal content.
pub type Content = [u8; 32];

/// A store, its key and its clock.
pub struct Phone {
    /// `None` while it is closed.
    pub store: Option<Store>,
    path: PathBuf,
    seed: u8,
    /// Seconds since the beginning.
    time: u64,
}

impl Phone {
    /// A phone whose store is not opened yet.
    pub fn new(folder: &Path, seed: u8) -> Self {
        Self { store: None, path: folder.join("notes.pitface"), seed, time: 0 }
    }

    /// Opens the store, or makes it.
    pub fn open(&mut self) -> Result<(), StoreError> {
        self.store = Some(Store::create_or_open(&self.path, self.id())?);
        Ok(())
    }

    /// Which device it is.
    pub fn id(&self) -> DeviceId {
        key(self.seed).device()
    }

    /// The open store.
    pub fn store(&mut self) -> &mut Store {
        self.store.as_mut().expect("it is open")
    }

    /// Sets the clock to so many seconds after the beginning: an act done again is done at the same time.
    pub fn set_time(&mut self, time: u64) {
        self.time = time;
    }

    fn now(&mut self) -> u64 {
        self.time += 1;
        BEGIN_MS + self.time * 1000
    }

    /// A field with a pit.
    pub fn begin(&mut self, name: &str) -> Result<(), StoreError> {
        let (field, pit) = (Field::new(id(self.seed, 1), name), Pit::new(id(self.seed, 2), PlaceKind::Open));
        let now = self.now();
        self.store().save_together(now, |saving| {
            saving.field(&field)?;
            saving.pit(field.id, &pit)
        })?;
        Ok(())
    }

    /// A tap: a step of the knife walk, or another answer in one that is there.
    pub fn tap(&mut self, step: u32, to_mm: u32) -> Result<(), StoreError> {
        let pit = id(self.seed, 2);
        let comes_away =
            Some(if to_mm.is_multiple_of(2) { ComesAway::Crumbs } else { ComesAway::FlatPlates });
        let id = id(self.seed, 100 + u64::from(step));
        let step = Step { id, to_mm, comes_away, resistance: None, unknown: Unknown::new() };
        let now = self.now();
        self.store().save_step(pit, &step, now)?;
        Ok(())
    }

    /// Several taps in one save.
    pub fn taps(&mut self, steps: std::ops::Range<u32>) -> Result<(), StoreError> {
        let (pit, seed, now) = (id(self.seed, 2), self.seed, self.now());
        self.store().save_together(now, |saving| {
            for step in steps {
                let id = id(seed, 100 + u64::from(step));
                let (to_mm, unknown) = (step + 1, Unknown::new());
                let comes_away = Some(ComesAway::Crumbs);
                saving.step(pit, &Step { id, to_mm, comes_away, resistance: None, unknown })?;
            }
            Ok(())
        })?;
        Ok(())
    }

    /// A save of that many bytes.
    pub fn large(&mut self, bytes: usize) -> Result<(), StoreError> {
        let person = Person {
            id: id(self.seed, 3),
            name: "w".repeat(bytes),
            left_handed: None,
            unknown: Unknown::new(),
        };
        let now = self.now();
        self.store().save_person(&person, now)?;
        Ok(())
    }

    /// Takes back the last save.
    pub fn undo(&mut self) -> Result<(), StoreError> {
        let now = self.now();
        self.store().undo(now)?;
        Ok(())
    }

    /// Trusts another phone.
    pub fn trust(&mut self, seed: u8) -> Result<(), StoreError> {
        let now = self.now();
        self.store().accept_key(&key(seed).public_key(), "", now)?;
        Ok(())
    }

    /// Seals what is new.
    pub fn seal(&mut self) -> Result<(), StoreError> {
        let signer = key(self.seed);
        let now_ms = self.now();
        let sealer = Sealer { signer: &signer, holder: "", written_by: "tests", now_ms, ahead_ms: None };
        self.store().seal(&sealer)?;
        Ok(())
    }

    /// Seals, and gives all it has as a file.
    pub fn hand_over(&mut self) -> Result<Vec<u8>, StoreError> {
        self.seal()?;
        self.file()
    }

    fn file(&mut self) -> Result<Vec<u8>, StoreError> {
        let mut file = FileWriter::new(Vec::new());
        self.store().hand_over(None, &mut file)?;
        Ok(file.end()?)
    }

    /// Takes in a file.
    pub fn take_in(&mut self, file: &[u8]) -> Result<(), StoreError> {
        let now = self.now();
        self.store().take_in(file, now)?;
        Ok(())
    }

    /// Goes over the store, and tells what is in it.
    pub fn check(&mut self) -> Result<Content, StoreError> {
        self.store().check()?;
        self.content()
    }

    /// Returns what is in the store: cells, log, bundles, whom it knows, what is missing and who has seen what.
    pub fn content(&mut self) -> Result<Content, StoreError> {
        let file = self.file()?;
        let store = self.store();
        let told = format!(
            "{:?} {:?} {:?} {:?} {}",
            store.digest()?,
            store.partners()?,
            store.missing()?,
            store.conflicts()?,
            store.not_carried()?
        );
        Ok(Sha256::new().chain_update(told).chain_update(file).finalize().into())
    }
}

fn key(seed: u8) -> KeyFromSeed {
    KeyFromSeed::new(&[seed; 32])
}

fn id(seed: u8, number: u64) -> RecordId {
    let mut random = [seed; 10];
    random[2..].copy_from_slice(&number.to_be_bytes());
    RecordId::new(BEGIN_MS, random)
}
