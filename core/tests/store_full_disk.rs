//! A disk that is really full: a file system of 256 kB, in a mount namespace of its own. Needs Linux and the right to
//! mount; where that is missing the test says so and only the simulation in `src/store/full_disk_test.rs` is left.
#![cfg(target_os = "linux")]

use crate::store_support;

use pitface_core::record::{Person, Unknown};
use pitface_core::store::{Store, StoreError};
use std::process::Command;
use store_support::{DEVICE, NOW_MS, id, place};

const FOLDER: &str = "PITFACE_TEST_FULL_DISK";

#[test]
fn a_full_disk_keeps_all_that_was_saved_and_nothing_half() {
    let (folder, _) = place();
    let folder = folder.path().to_str().unwrap();
    let mounted = |command: &str| {
        let script = format!("mount -t tmpfs -o size=256k none '{folder}' && {command}");
        Command::new("unshare").args(["--mount", "sh", "-c", &script]).env(FOLDER, folder).output()
    };
    if !mounted("true").is_ok_and(|done| done.status.success()) {
        eprintln!("may not mount here: only the simulated full disk was tested");
        return;
    }
    let this = std::env::current_exe().unwrap();
    let done = mounted(&format!(
        "'{}' --ignored --exact store_full_disk::on_the_small_disk --nocapture",
        this.display()
    ))
    .unwrap();
    let said = String::from_utf8_lossy(&done.stdout) + String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success() && said.contains("1 passed"), "{said}");
}

#[test]
#[ignore = "run by the test above, on its small disk"]
fn on_the_small_disk() {
    let folder = std::path::PathBuf::from(std::env::var(FOLDER).unwrap());
    let path = folder.join("ellmoor.store");
    let filler = folder.join("filler");
    let person = |number: u64| Person {
        id: id(number),
        name: "walker ".repeat(200),
        left_handed: None,
        unknown: Unknown::new(),
    };

    // No room to create one: no file is left behind.
    std::fs::write(&filler, vec![0; 250_000]).unwrap();
    let error = Store::create_or_open(&path, DEVICE).unwrap_err();
    assert!(matches!(error, StoreError::DiskFull), "{error:?}");
    assert!(!path.exists());

    std::fs::remove_file(&filler).unwrap();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    std::fs::write(&filler, vec![0; 20_000]).unwrap();
    let mut kept = Vec::new();
    let error = loop {
        let next = person(kept.len() as u64);
        match store.save_person(&next, NOW_MS) {
            Ok(_) => kept.push(next),
            Err(error) => break error,
        }
    };
    assert!(matches!(error, StoreError::DiskFull), "{error:?}");
    assert!(kept.len() > 3);
    let main_file = std::fs::read(&path).unwrap();
    store.save_person(&person(999), NOW_MS).unwrap_err();
    assert!(std::fs::read(&path).unwrap() == main_file, "the file has changed");
    assert_eq!(store.persons().unwrap(), kept);
    store.check().unwrap();

    // With room again the same store goes on, and so does one that was closed on the full disk.
    drop(store);
    let store = Store::open_existing(&path, DEVICE).map(|store| store.persons().unwrap());
    assert!(store.is_ok_and(|persons| persons == kept));
    std::fs::remove_file(&filler).unwrap();
    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    store.save_person(&person(999), NOW_MS).unwrap();
    kept.push(person(999));
    assert_eq!(store.persons().unwrap(), kept);
    store.check().unwrap();
}
