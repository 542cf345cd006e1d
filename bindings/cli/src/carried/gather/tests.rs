//! Stopped anywhere, beside others of its kind, with files of all sorts about: the folder never has less than before.

use super::{Found, Proven, Written, gather, in_folder};
use crate::carried::files::Bundles;
use crate::carried::new_file::NewFile;
use crate::carried::team_word::{Lock, TeamWord};
use pitface_core::merge::{DeviceId, FileWriter, Part, PartKind, PhotoPiece};
use pitface_core::store::bundle_name;
use proptest::prelude::*;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

const OWN: DeviceId = DeviceId([0xa1; 16]);
const OTHER: DeviceId = DeviceId([0xb2; 16]);

fn word() -> TeamWord {
    TeamWord::of("turf lark beet mill")
}

/// A part that holds a number, or a piece of a photo.
fn part(number: u8) -> Vec<u8> {
    if number.is_multiple_of(3) {
        let bytes = [number; 40];
        PhotoPiece { sha256: [number; 32], size_bytes: 40, offset: 0, bytes: &bytes }.write()
    } else {
        Part::write(PartKind::Other(0x8001), &[number])
    }
}

/// A file of a device with these parts.
fn put(folder: &Path, device: DeviceId, numbers: &[u8], word: Option<&TeamWord>) -> PathBuf {
    let mut file = FileWriter::new(NewFile::begin(folder, word.map(Lock::with)).unwrap());
    for number in numbers {
        file.add(&part(*number)).unwrap();
    }
    file.end().unwrap().put_named(device).unwrap()
}

/// The hashes of all parts in the sound files of a folder.
fn parts(folder: &Path) -> BTreeSet<[u8; 32]> {
    let word = word();
    let files = in_folder(folder).unwrap();
    let files: Vec<Bundles> = files.iter().filter_map(|file| Bundles::read(file, Some(&word)).ok()).collect();
    files.iter().flat_map(|file| &file.parts).map(|part| part.hash).collect()
}

fn count(folder: &Path) -> usize {
    in_folder(folder).unwrap().len()
}

/// A folder with three files of this device, which share some parts, and one of another.
fn shared() -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    put(folder.path(), OWN, &[1, 2, 3], None);
    put(folder.path(), OWN, &[3, 4], None);
    put(folder.path(), OWN, &[6, 5], None);
    put(folder.path(), OTHER, &[1, 9], None);
    folder
}

#[test]
fn stopped_between_any_two_steps_nothing_is_lost() {
    // Reading, writing, comparing, and three removals.
    for stop in 0..=6 {
        let folder = shared();
        let (folder, before) = (folder.path(), parts(folder.path()));
        let mut runner = Runner::Begins;
        for _ in 0..stop {
            runner = runner.step(folder, None);
            assert!(parts(folder).is_superset(&before), "{stop}");
        }
        drop(runner);
        assert_eq!(count(folder), [4, 4, 5, 5, 4, 3, 2][stop]);
        // The next run ends it.
        let gathered = gather(folder, OWN, None).unwrap();
        assert_eq!(parts(folder), before);
        assert_eq!(count(folder), 2, "{stop}");
        assert_eq!(gathered.file.is_some(), stop < 6);
    }
}

#[test]
fn one_file_is_left_as_it_is_and_the_same_parts_give_the_same_file() {
    let folder = shared();
    let file = gather(folder.path(), OWN, None).unwrap().file.unwrap();
    assert_eq!(gather(folder.path(), OWN, None).unwrap().file, None);
    assert!(file.exists());
    // The same parts once more: the file that is there already has them.
    put(folder.path(), OWN, &[6, 4, 2], None);
    let again = gather(folder.path(), OWN, None).unwrap();
    assert_eq!((again.file.as_ref(), again.removed), (Some(&file), 1));
    assert_eq!(count(folder.path()), 2);
}

#[test]
fn what_is_not_known_to_be_its_own_is_left_alone() {
    let folder = shared();
    let folder = folder.path();
    let own = put(folder, OWN, &[7, 8], None);
    let sound = fs::read(&own).unwrap();
    let mut damaged = sound.clone();
    damaged[20] ^= 1;
    // Damaged on the way, still being copied, renamed by a program that found two versions, changed by somebody, hidden, no bundle.
    let left: Vec<(String, Vec<u8>)> = vec![
        (bundle_name(OWN, &[1; 32]), damaged),
        (bundle_name(OWN, &[2; 32]), sound[..30].to_vec()),
        (bundle_name(OWN, &[3; 32]).replace(".pitb", " (2).pitb"), sound.clone()),
        (bundle_name(OWN, &[4; 32]), sound.clone()),
        (format!(".{}", bundle_name(OWN, &[5; 32])), sound.clone()),
        (bundle_name(OWN, &[6; 32]).replace(".pitb", ".txt"), sound.clone()),
        (bundle_name(OTHER, &[7; 32]), sound.clone()),
        ("a1a1a1a1.pitb".to_owned(), sound),
    ];
    for (name, bytes) in &left {
        fs::write(folder.join(name), bytes).unwrap();
    }
    let other = put(folder, OTHER, &[1, 9], None);
    let before = parts(folder);
    assert_eq!(gather(folder, OWN, None).unwrap().removed, 4);
    for (name, bytes) in &left {
        assert_eq!(fs::read(folder.join(name)).unwrap(), *bytes, "{name}");
    }
    assert!(other.exists() && !own.exists());
    assert_eq!(parts(folder), before);
}

#[test]
fn a_file_that_changed_meanwhile_stays() {
    let folder = shared();
    let folder = folder.path();
    let written = Found::read(folder, OWN, None).unwrap().unwrap().write(folder, OWN, None).unwrap();
    let changed = written.old[1].0.clone();
    fs::write(&changed, b"something else").unwrap();
    let mut proven = written.prove(None).unwrap();
    while proven.remove_one().unwrap() {}
    assert_eq!(proven.finish().unwrap().removed, 2);
    assert_eq!(fs::read(&changed).unwrap(), b"something else");
}

#[test]
fn nothing_goes_if_the_new_file_is_not_as_it_was_written() {
    for damage in ["gone", "short", "other"] {
        let folder = shared();
        let folder = folder.path();
        let before = parts(folder);
        let written = Found::read(folder, OWN, None).unwrap().unwrap().write(folder, OWN, None).unwrap();
        match damage {
            "gone" => fs::remove_file(&written.file).unwrap(),
            "short" => fs::write(&written.file, &fs::read(&written.file).unwrap()[..100]).unwrap(),
            _ => drop(fs::copy(put(folder, OTHER, &[11], None), &written.file).unwrap()),
        }
        assert!(written.prove(None).is_err(), "{damage}");
        assert!(parts(folder).is_superset(&before), "{damage}");
    }
}

#[test]
fn clear_files_go_into_a_locked_one_and_never_back() {
    let folder = shared();
    let (folder, word) = (folder.path(), word());
    let before = parts(folder);
    let locked = gather(folder, OWN, Some(&word)).unwrap();
    assert_eq!(locked.removed, 3);
    let file = locked.file.unwrap();
    assert!(Bundles::read(&file, None).is_err());
    assert_eq!(parts(folder), before);
    // A single clear one is locked, too.
    put(folder, OWN, &[10], None);
    assert_eq!(gather(folder, OWN, None).unwrap().file, None);
    assert_eq!(gather(folder, OWN, Some(&word)).unwrap().removed, 2);
    put(folder, OWN, &[13], None);
    put(folder, OWN, &[14], None);
    let clear = gather(folder, OWN, None).unwrap();
    assert_eq!(clear.removed, 2);
    assert_eq!(Bundles::read(&clear.file.unwrap(), None).unwrap().parts.len(), 2);
    // With another word the locked one stays.
    let another = TeamWord::of("another word of some length");
    gather(folder, OWN, Some(&another)).unwrap();
    assert!(parts(folder).is_superset(&before));
}

/// One that is at it, somewhere between two steps.
enum Runner {
    Begins,
    Found(Found),
    Written(Written),
    Proven(Proven),
    Over,
}

impl Runner {
    /// The next step; a refusal ends it.
    fn step(self, folder: &Path, word: Option<&TeamWord>) -> Self {
        match self {
            Self::Begins => Found::read(folder, OWN, word).ok().flatten().map_or(Self::Over, Self::Found),
            Self::Found(found) => found.write(folder, OWN, word).map_or(Self::Over, Self::Written),
            Self::Written(written) => written.prove(word).map_or(Self::Over, Self::Proven),
            Self::Proven(mut proven) => match proven.remove_one() {
                Ok(true) => Self::Proven(proven),
                _ => Self::Over,
            },
            Self::Over => Self::Begins,
        }
    }
}

/// Several at once, in any order of their steps, with new files coming in between: `chosen` says who goes on, or what comes.
fn several_at_once(chosen: &[u8], locks: bool) {
    let folder = shared();
    let (folder, word) = (folder.path(), word());
    let mut runners = [Runner::Begins, Runner::Begins, Runner::Begins];
    let mut before = parts(folder);
    for (step, who) in chosen.iter().enumerate() {
        let with = |who: usize| Some(&word).filter(|_| locks && who == 0);
        if let Some(runner) = runners.get_mut(usize::from(*who)) {
            *runner = std::mem::replace(runner, Runner::Over).step(folder, with(usize::from(*who)));
        } else {
            put(folder, OWN, &[*who, who / 2], with(usize::from(*who % 2)));
        }
        let now = parts(folder);
        assert!(now.is_superset(&before), "step {step} of {chosen:?}");
        before = now;
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]
    #[test]
    fn several_at_once_lose_nothing(chosen in prop::collection::vec(prop_oneof![6 => 0_u8..3, 1 => 3_u8..12], 0..60)) {
        several_at_once(&chosen, false);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3, max_shrink_iters: 20, ..ProptestConfig::default() })]
    #[test]
    fn several_at_once_of_whom_some_lock_lose_nothing(
        chosen in prop::collection::vec(prop_oneof![6 => 0_u8..3, 1 => 3_u8..12], 0..20),
    ) {
        several_at_once(&chosen, true);
    }
}
