//! What is done with a store while it is recorded, and what was in it after each act.

use crate::shim::{Watch, watch};
use crate::{Change, Content, DEVICE, Disk, Fate, Fault, Files, Phone, Tape};
use pitface_core::store::StoreError;
use std::ops::Range;
use std::path::Path;
use tempfile::TempDir;

/// More than are done before it is recorded.
const FIRST_ACTS: usize = 100;

/// The other phone.
const OTHER: u8 = 2;

/// One call that a person's tap, or the program, makes.
#[derive(Debug, Clone)]
pub enum Act {
    /// Open the store, or make it.
    Open,
    /// Close it.
    Close,
    /// A field with a pit.
    Begin,
    /// A tap on a step: its number, and how deep it is.
    Tap(u32, u32),
    /// Several new steps in one save.
    Taps(Range<u32>),
    /// A save of that many bytes.
    Large(usize),
    /// Take back the last save.
    Undo,
    /// Seal what is new.
    Seal,
    /// Trust the other phone.
    Trust,
    /// Take in a file.
    TakeIn(Vec<u8>),
    /// Make the cells anew.
    Rebuild,
}

impl Act {
    /// Does it, as the `number`th act.
    pub fn go(&self, phone: &mut Phone, number: usize) -> Result<(), StoreError> {
        phone.set_time(number as u64 * 10);
        match self {
            Self::Open => phone.open(),
            Self::Close => {
                phone.store = None;
                Ok(())
            }
            Self::Begin => phone.begin("Long Sedge"),
            Self::Tap(step, to_mm) => phone.tap(*step, *to_mm),
            Self::Taps(steps) => phone.taps(steps.clone()),
            Self::Large(bytes) => phone.large(*bytes),
            Self::Undo => phone.undo(),
            Self::Seal => phone.seal(),
            Self::Trust => phone.trust(OTHER),
            Self::TakeIn(file) => phone.take_in(file),
            Self::Rebuild => phone.store().rebuild(),
        }
    }
}

/// What is done, and from where.
#[derive(Debug, Clone, Default)]
pub struct Scenario {
    /// What lies in the folder before.
    pub before: Files,
    /// What is done before it is recorded.
    pub first: Vec<Act>,
    /// What is done while it is recorded.
    pub acts: Vec<Act>,
}

/// What came of it.
pub struct Recording {
    /// Every change of the files.
    pub tape: Tape,
    /// What was in the store after each act.
    pub contents: Vec<Content>,
    /// The length of the tape when each act returned.
    pub ends: Vec<usize>,
}

/// A folder in memory where the system has one: what a disk keeps is played, not tried.
pub fn folder() -> TempDir {
    tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).expect("a folder can be made")
}

/// Puts files in a folder in place of those there.
pub fn put(folder: &Path, files: &Files) {
    for entry in std::fs::read_dir(folder).expect("it is there") {
        let path = entry.expect("it can be read").path();
        std::fs::remove_file(path).expect("a file can be removed");
    }
    for (name, bytes) in files {
        std::fs::write(folder.join(name), bytes).expect("a file can be written");
    }
}

impl Scenario {
    /// The files when it begins to be recorded.
    pub fn begin(&self) -> Files {
        let folder = folder();
        put(folder.path(), &self.before);
        let mut phone = Phone::new(folder.path(), DEVICE);
        for (number, act) in self.first.iter().enumerate() {
            act.go(&mut phone, number).expect("nothing fails");
        }
        drop(phone);
        crate::shim::files(folder.path())
    }

    /// Does it all and records it.
    pub fn record(&self, full_for_normal: bool) -> Recording {
        let folder = folder();
        put(folder.path(), &self.begin());
        let (_watch, tape): (Watch, Tape) = watch(folder.path());
        if full_for_normal {
            tape.take_full_for_normal();
        }
        let mut phone = Phone::new(folder.path(), DEVICE);
        let (mut contents, mut ends) = (Vec::new(), Vec::new());
        for (number, act) in self.acts.iter().enumerate() {
            act.go(&mut phone, FIRST_ACTS + number).expect("nothing fails");
            ends.push(tape.length());
            let same = contents.last().copied();
            contents.push(match (&phone.store, same) {
                (None, Some(same)) => same,
                _ => phone.content().expect("it can be read"),
            });
        }
        drop(phone);
        Recording { tape, contents, ends }
    }

    /// Does it all with a failing disk; an act that fails is done again on a mended one. Tells whether any call failed; an error if
    /// after a failed act the store in use has changed, if a copy opened then has neither what was before nor what comes after, if done
    /// again something else comes of it, or if after a failed sync a power cut loses what was told as done.
    pub fn with_fault(&self, begin: &Files, fault: Fault, contents: &[Content]) -> Result<bool, String> {
        let folder = folder();
        put(folder.path(), begin);
        let (_watch, tape) = watch(folder.path());
        let mut phone = Phone::new(folder.path(), DEVICE);
        tape.fail(fault);
        let mut ends = Vec::new();
        for (number, act) in self.acts.iter().enumerate() {
            let told = |what: &str| format!("{fault:?}, act {number} {}: {what}", short(act));
            if matches!(act, Act::Open) {
                written_again(folder.path(), &tape);
            }
            if let Err(error) = act.go(&mut phone, FIRST_ACTS + number) {
                if tape.failed() == 0 {
                    return Err(told(&format!("failed by itself: {error}")));
                }
                tape.mend();
                if phone.store.is_some() {
                    let now = phone.check().map_err(|error| told(&format!("check: {error}")))?;
                    if number == 0 || now != contents[number - 1] {
                        return Err(told("the store in use has changed"));
                    }
                }
                // As after a power cut right then: a copy of the files is opened.
                let copy = copy(folder.path(), &told("copied"))?;
                let was = number.checked_sub(1).map(|before| contents[before]);
                if Some(copy) != was && copy != contents[number] {
                    return Err(told("opened anew, it has something else"));
                }
                if matches!(act, Act::Open) {
                    written_again(folder.path(), &tape);
                }
                act.go(&mut phone, FIRST_ACTS + number).map_err(|error| told(&format!("again: {error}")))?;
            }
            ends.push(tape.length());
            if phone.store.is_some() {
                // Reading is not to be told from writing here.
                let failed = tape.failed();
                let now = match phone.content() {
                    Err(_) if tape.failed() > failed => {
                        tape.mend();
                        phone.content()
                    }
                    now => now,
                };
                if now.map_err(|error| told(&format!("read: {error}")))? != contents[number] {
                    return Err(told("something else came of it"));
                }
            }
        }
        let hit = tape.failed() > 0;
        tape.mend();
        drop(phone);
        let last = self.acts.len() - 1;
        let now = copy(folder.path(), &format!("{fault:?}, in the end"))?;
        cut_after_each(&tape, &ends, contents).map_err(|error| format!("{fault:?}: {error}"))?;
        if now == contents[last] {
            Ok(hit)
        } else {
            Err(format!("{fault:?}: in the end it has something else"))
        }
    }
}

/// Records what the store does past SQLite when it is opened: it writes a log that was left behind again, and syncs it
/// (`store::open` has a test that it does).
fn written_again(folder: &Path, tape: &Tape) {
    let name = "notes.pitface-wal".to_owned();
    if let Some(bytes) = std::fs::read(folder.join(&name)).ok().filter(|bytes| !bytes.is_empty()) {
        tape.record(Change::Write { name: name.clone(), at: 0, bytes });
        tape.record(Change::Sync(name));
    }
}

/// An error if a power cut right after an act that returned loses it, where a sync had failed.
fn cut_after_each(tape: &Tape, ends: &[usize], contents: &[Content]) -> Result<(), String> {
    let changes = tape.changes();
    if !changes.iter().any(|change| matches!(change, Change::SyncFailed(_))) {
        return Ok(());
    }
    let (mut disk, folder) = (Disk::before(tape), folder());
    for (at, change) in changes.iter().enumerate() {
        disk.play(change);
        let Some(act) = ends.iter().rposition(|end| *end == at + 1) else { continue };
        for fate in [Fate::Dropped, Fate::Kept] {
            put(folder.path(), &disk.cut(|_| fate));
            let mut phone = Phone::new(folder.path(), DEVICE);
            let now = phone.open().and_then(|()| phone.check());
            let now = now.map_err(|error| format!("power cut after act {act}: {error}"))?;
            if now != contents[act] {
                return Err(format!("power cut after act {act}, unsynced {fate:?}: it has something else"));
            }
        }
    }
    Ok(())
}

/// Returns what a copy of a folder has when it is opened.
fn copy(from: &Path, told: &str) -> Result<Content, String> {
    let folder = folder();
    put(folder.path(), &crate::shim::files(from));
    let mut phone = Phone::new(folder.path(), DEVICE);
    phone.open().and_then(|()| phone.check()).map_err(|error| format!("{told}: {error}"))
}

fn short(act: &Act) -> String {
    match act {
        Act::TakeIn(file) => format!("TakeIn({} bytes)", file.len()),
        act => format!("{act:?}"),
    }
}

/// Files that the other phone hands over: the first with everything to begin with, each later one all it has then.
pub fn others_files(steps_each: &[u32]) -> Vec<Vec<u8>> {
    let folder = folder();
    let mut phone = Phone::new(folder.path(), OTHER);
    let mut next = 0;
    let mut file = |(number, steps): (usize, &u32)| -> Result<Vec<u8>, StoreError> {
        if number == 0 {
            phone.open()?;
            phone.begin("Short Sedge")?;
        }
        phone.taps(next..next + steps)?;
        next += steps;
        phone.hand_over()
    };
    steps_each.iter().enumerate().map(|one| file(one).expect("nothing fails")).collect()
}
