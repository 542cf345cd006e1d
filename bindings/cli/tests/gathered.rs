//! A folder that several share, over many rounds: files of one device are made one, files arrive in pieces, programs are killed.

use crate::support;

use pitface_core::merge::read_file;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::process::Stdio;
use std::time::Duration;
use support::Place;
use support::walker::{STORE, Walker, dug_to, pair, with_photo};

/// The files of a folder that are no longer being written.
fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let shown = entries.filter(|name| !name.starts_with('.'));
    shown.map(|name| (name.clone(), fs::read(folder.join(name)).unwrap())).collect()
}

/// Lays files into a folder.
fn lay(files: &BTreeMap<String, Vec<u8>>, place: &Place) {
    for (name, bytes) in files {
        fs::write(place.path(name), bytes).unwrap();
    }
}

/// The parts in the whole files of a folder.
fn parts(folder: &Path) -> BTreeSet<[u8; 32]> {
    let files = files(folder);
    files.values().flat_map(|bytes| read_file(bytes).unwrap_or_default()).map(|part| part.hash).collect()
}

/// The files of one walker.
fn of<'a>(walker: &Walker, names: impl Iterator<Item = &'a String>) -> Vec<String> {
    let begins = walker.fingerprint().replace('-', "");
    names.filter(|name| name.starts_with(&begins[..8])).cloned().collect()
}

/// A folder into which Ann put several files and a photo, Ben some.
fn shared() -> (Walker, Walker, Place) {
    let (ann, ben) = pair();
    let shared = Place::new();
    let folder = shared.path("").display().to_string();
    for mm in [460, 470, 480] {
        ann.notes(&dug_to(mm));
        ann.share(&folder);
        ben.share(&folder);
    }
    with_photo(&ann);
    ann.share(&folder);
    ben.notes(&dug_to(490));
    ben.share(&folder);
    (ann, ben, shared)
}

#[test]
fn gathering_makes_one_file_of_those_of_this_device() {
    let (ann, ben, shared) = shared();
    let folder = shared.path("").display().to_string();
    let (before, parts_before) = (files(shared.folder.path()), parts(shared.folder.path()));
    assert!(of(&ann, before.keys()).len() >= 4 && of(&ben, before.keys()).len() >= 2);
    let told = ann.place.json(&["hand-over", STORE, "--folder", &folder, "--gather"]);
    let after = files(shared.folder.path());
    assert!(parts(shared.folder.path()).is_superset(&parts_before));
    assert_eq!(of(&ann, after.keys()).len(), 1);
    assert!(told["gathered"].as_str().unwrap().ends_with(&of(&ann, after.keys())[0]));
    // Ann took in what Ben had and added word of it, so that file was gathered too.
    let added = u64::from(!told["written"].is_null());
    assert_eq!(told["files_removed"], of(&ann, before.keys()).len() as u64 + added);
    for name in of(&ben, before.keys()) {
        assert_eq!(before[&name], after[&name]);
    }
    let again = ann.place.good(&["hand-over", STORE, "--folder", &folder, "--gather"]);
    assert!(again.contains("no more than one file"), "{again}");
    assert_eq!(files(shared.folder.path()), after);

    // Somebody new finds everything, the photo too.
    let cat = Walker::new("Cat");
    let store = ["take-in", STORE];
    let paths: Vec<String> = after.keys().map(|name| shared.path(name).display().to_string()).collect();
    let paths: Vec<&str> = paths.iter().map(String::as_str).collect();
    let (ann_is, ben_is) = (ann.fingerprint(), ben.fingerprint());
    cat.place.good(&[&store, &paths[..], &["--accept", &ann_is, "--accept", &ben_is]].concat());
    let told = cat.place.json(&[&store[..], &paths[..]].concat());
    assert_eq!(told["missing"], serde_json::json!([]));
    assert_eq!(cat.digest(), ann.digest());
    assert_eq!(cat.place.json(&["partners", STORE])["photos_here"], 1);
    cat.place.good(&["check", STORE]);
    // Without a folder there is nothing to gather.
    assert!(ann.place.bad(&["hand-over", STORE, "--out", "all.pitb", "--gather"]).contains("--gather"));
}

#[test]
fn killed_at_any_moment_it_loses_nothing() {
    const KILLS: u32 = 40;
    let (ann, ben, shared) = shared();
    ann.share(&shared.path("").display().to_string());
    let (original, before) = (files(shared.folder.path()), parts(shared.folder.path()));
    let foreign = of(&ben, original.keys());
    let start = std::time::Instant::now();
    let fresh = || {
        let place = Place::new();
        lay(&original, &place);
        place
    };
    let whole = fresh();
    let gather = |place: &Place| {
        let folder = place.path("").display().to_string();
        ann.place.command(&["hand-over", STORE, "--folder", &folder, "--gather"])
    };
    assert!(gather(&whole).output().unwrap().status.success());
    let takes = start.elapsed().max(Duration::from_millis(4));
    let (mut cut_short, mut done) = (0, 0);
    for kill in 0..KILLS {
        let place = fresh();
        let mut child = gather(&place).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        std::thread::sleep(takes * kill / KILLS);
        let _ = child.kill();
        let status = child.wait().unwrap();
        *if status.success() { &mut done } else { &mut cut_short } += 1;
        assert!(parts(place.folder.path()).is_superset(&before), "kill {kill}");
        assert!(gather(&place).output().unwrap().status.success());
        let after = files(place.folder.path());
        assert!(parts(place.folder.path()).is_superset(&before), "after kill {kill}");
        assert_eq!(of(&ann, after.keys()).len(), 1, "after kill {kill}");
        assert!(foreign.iter().all(|name| after[name] == original[name]));
    }
    assert!(cut_short > 0, "{cut_short} killed, {done} done");
}

#[test]
fn two_at_once_lose_nothing() {
    let (ann, _, shared) = shared();
    ann.share(&shared.path("").display().to_string());
    // The same device with a second store: one store lets only one in.
    fs::copy(ann.place.path(STORE), ann.place.path("second.pitface")).unwrap();
    let (original, before) = (files(shared.folder.path()), parts(shared.folder.path()));
    for round in 0..10 {
        let place = Place::new();
        lay(&original, &place);
        let folder = place.path("").display().to_string();
        let run = |store| {
            let arguments = ["hand-over", store, "--folder", &folder, "--gather"];
            ann.place.command(&arguments).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
        };
        // One of them may be told that a file has gone while it read.
        let (mut one, mut other) = (run(STORE), run("second.pitface"));
        one.wait().unwrap();
        other.wait().unwrap();
        assert!(parts(place.folder.path()).is_superset(&before), "round {round}");
        assert!(run(STORE).wait().unwrap().success());
        assert!(parts(place.folder.path()).is_superset(&before), "round {round}");
        assert_eq!(of(&ann, files(place.folder.path()).keys()).len(), 1, "round {round}");
    }
}

/// A program that keeps two folders alike carries a walker's files over: how much of each new one has come is said.
fn carry(from: &Path, to: &Path, walker: &Walker, much: impl Fn(usize) -> usize) {
    let source = files(from);
    for name in of(walker, source.keys()) {
        let bytes = &source[&name];
        let there = fs::read(to.join(&name)).is_ok_and(|there| there == *bytes);
        if !there {
            fs::write(to.join(&name), &bytes[..much(bytes.len())]).unwrap();
        }
    }
}

/// It carries over that files are gone.
fn carry_removals(from: &Path, to: &Path, walker: &Walker) {
    let (source, there) = (files(from), files(to));
    for name in of(walker, there.keys()).iter().filter(|name| !source.contains_key(*name)) {
        fs::remove_file(to.join(name)).unwrap();
    }
}

#[test]
fn in_turns_over_folders_that_are_kept_alike_all_end_alike() {
    let (ann, ben) = pair();
    let (at_ann, at_ben) = (Place::new(), Place::new());
    let (here, there) = (at_ann.folder.path(), at_ben.folder.path());
    let turn = |walker: &Walker, place: &Place, more: &[&str]| {
        let folder = place.path("").display().to_string();
        let ran = walker.place.run(&[&["hand-over", STORE, "--folder", &folder], more].concat());
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        ran.err
    };
    let mut cut_off = 0;
    for round in 0..6_usize {
        // Every other round files are gathered, and the removals come over before the new file does.
        let more: &[&str] = if round % 2 == 1 { &["--gather"] } else { &[] };
        ann.notes(&dug_to(460 + round as u32));
        turn(&ann, &at_ann, more);
        carry_removals(here, there, &ann);
        for share in [0, 1, 3, 4] {
            carry(here, there, &ann, |length| length * share / 4);
            let told = turn(&ben, &at_ben, &[]);
            cut_off += usize::from(told.contains("ends in the middle") || told.contains("is no bundle"));
        }
        ben.notes(&dug_to(480 + round as u32));
        turn(&ben, &at_ben, more);
        carry_removals(there, here, &ben);
        for share in [2, 4] {
            carry(there, here, &ben, |length| length * share / 4);
            turn(&ann, &at_ann, &[]);
        }
        // What is cut off is never taken for the whole, so after each round both have the same.
        turn(&ann, &at_ann, &[]);
        carry(here, there, &ann, |length| length);
        turn(&ben, &at_ben, &[]);
        assert_eq!(ann.digest(), ben.digest(), "round {round}");
    }
    assert!(cut_off >= 12, "{cut_off}");
    let told = ben.place.json(&["settle", STORE]);
    assert_eq!(told["versions"], serde_json::json!([]));
    for walker in [&ann, &ben] {
        walker.place.good(&["check", STORE]);
    }
    // At rest the folders are alike, and of each device there is at most what came after its last gathering.
    for _ in 0..3 {
        turn(&ann, &at_ann, &["--gather"]);
        turn(&ben, &at_ben, &["--gather"]);
        carry(here, there, &ann, |length| length);
        carry(there, here, &ben, |length| length);
        carry_removals(here, there, &ann);
        carry_removals(there, here, &ben);
    }
    assert_eq!(files(here), files(there));
    assert_eq!(files(here).len(), 2);
}

/// Changes a byte of a file and leaves its size and time as they were, as a disk does that rots.
fn rot(path: &Path) {
    let time = fs::metadata(path).unwrap().modified().unwrap();
    let mut bytes = fs::read(path).unwrap();
    let at = bytes.len() / 2;
    bytes[at] ^= 1;
    fs::write(path, bytes).unwrap();
    fs::File::options().write(true).open(path).unwrap().set_modified(time).unwrap();
}

#[test]
fn what_is_known_is_not_read_again_and_a_lost_photo_still_comes_back() {
    let (ann, ben, shared) = shared();
    let folder = shared.path("").display().to_string();
    while ben.share(&folder) || ann.share(&folder) {}
    let share =
        |more: &[&str]| ben.place.run(&[&["hand-over", STORE, "--folder", &folder, "--json"], more].concat());
    let read = |out: &str| serde_json::from_str::<serde_json::Value>(out).unwrap()["files_read"].clone();
    let ran = share(&[]);
    assert_eq!((read(&ran.out), ran.err.as_str()), (0.into(), ""));
    let names = files(shared.folder.path());
    // What rots unseen is seen when all is read again.
    let rotten = of(&ann, names.keys())[0].clone();
    rot(&shared.path(&rotten));
    assert_eq!(share(&[]).err, "");
    let ran = share(&["--read-again"]);
    assert!(ran.err.contains(&rotten) && ran.err.contains("damaged"), "{}", ran.err);
    assert_eq!(read(&ran.out), names.len());
    // The picture is lost here; the file that has it is read once more.
    fs::remove_dir_all(ben.place.path("photos")).unwrap();
    let told = ben.place.json(&["hand-over", STORE, "--folder", &folder]);
    assert_eq!((&told["photos_here"], &told["photos_named"]), (&1.into(), &1.into()));
    // And a changed file is read, whatever is known of it; so is the rotten one, as long as it is there.
    fs::write(shared.path(&of(&ann, names.keys())[1]), b"PITB").unwrap();
    assert_eq!(read(&share(&[]).out), 2);
}

#[test]
fn photos_of_a_device_that_is_accepted_later_come_from_files_that_are_known() {
    let (ann, _, shared) = shared();
    let folder = shared.path("").display().to_string();
    let cat = Walker::new("Cat");
    let told = cat.place.json(&["hand-over", STORE, "--folder", &folder]);
    assert_eq!(told["taken_in"]["edits"], 0, "the store is made, and nobody is accepted yet");
    cat.accept(&ann);
    let told = cat.place.json(&["hand-over", STORE, "--folder", &folder]);
    assert_eq!((&told["files_read"], &told["photos_here"]), (&0.into(), &1.into()));
}

#[test]
fn a_damaged_file_of_ones_own_is_named_and_replaced() {
    let (ann, ben, shared) = shared();
    let folder = shared.path("").display().to_string();
    while ben.share(&folder) || ann.share(&folder) {}
    let names = files(shared.folder.path());
    let [own, foreign] = [&ann, &ben].map(|walker| of(walker, names.keys())[0].clone());
    for name in [&own, &foreign] {
        let mut bytes = names[name].clone();
        bytes.truncate(bytes.len() - 1);
        fs::write(shared.path(name), bytes).unwrap();
    }
    let ran = ann.place.run(&["hand-over", STORE, "--folder", &folder]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(ran.err.contains(&own) && ran.err.contains("is put into the folder anew"), "{}", ran.err);
    // Anew it may have the same name, but then the right bytes.
    assert!(fs::read(shared.path(&own)).ok().is_none_or(|bytes| bytes == names[&own]));
    assert!(shared.path(&foreign).exists(), "whose it is has to see to it");
    // Whoever comes anew still finds everything there.
    fs::remove_file(shared.path(&foreign)).unwrap();
    let cat = Walker::new("Cat");
    cat.share(&folder);
    cat.accept(&ann);
    cat.accept(&ben);
    cat.share(&folder);
    assert_eq!(cat.digest(), ann.digest());
    assert_eq!(cat.place.json(&["partners", STORE])["photos_here"], 1);
    let aside = shared.names(".").into_iter().find(|name| name.ends_with(".damaged")).unwrap();
    assert!(aside.starts_with(&own) && ran.err.contains(&aside), "{aside}");
}

#[test]
fn what_a_killed_run_left_is_gone_after_the_next() {
    let (ann, _, shared) = shared();
    let folder = shared.path("").display().to_string();
    let left = [
        shared.path(".pitface-0123456789abcdef.new"),
        ann.place.path("photos/.pitface-fedcba9876543210.new"),
    ];
    for path in &left {
        fs::write(path, b"half").unwrap();
    }
    ann.share(&folder);
    assert!(left.iter().all(|path| !path.exists()));
}
