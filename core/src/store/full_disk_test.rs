//! A full disk, simulated: SQLite is told that the file may have no more pages. It gives the same error as for a
//! real one, which `tests/store_full_disk.rs` has where a small file system can be mounted.

use super::{DeviceId, Store, StoreError};
use crate::record::{Person, RecordId, Unknown};
use std::path::Path;

fn person(number: u8, letters: usize) -> Person {
    let id = RecordId::new(1, [number; 10]);
    Person { id, name: "w".repeat(letters), left_handed: None, unknown: Unknown::new() }
}

fn files(path: &Path) -> [Vec<u8>; 2] {
    ["", "-wal"].map(|ending| std::fs::read(format!("{}{ending}", path.display())).unwrap())
}

#[test]
fn full_disk_leaves_all_as_it_was_and_saves_again_once_there_is_room() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ellmoor.store");
    let mut store = Store::create_or_open(&path, DeviceId([1; 16])).unwrap();
    store.save_person(&person(1, 10), 1).unwrap();
    let (before, pages) =
        (files(&path), store.connection.pragma_query_value(None, "page_count", |row| row.get(0)));
    let pages: i64 = pages.unwrap();
    store.connection.pragma_update(None, "max_page_count", pages).unwrap();

    let error = store.save_person(&person(2, 100_000), 2).unwrap_err();
    assert!(matches!(error, StoreError::DiskFull), "{error:?}");
    assert!(error.to_string().contains("free some space"), "{error}");
    assert!(files(&path) == before, "the files have changed");
    assert_eq!(store.persons().unwrap(), [person(1, 10)]);
    // What fits is still saved.
    store.save_person(&person(1, 11), 3).unwrap();

    store.connection.pragma_update(None, "max_page_count", 1_000_000).unwrap();
    store.save_person(&person(2, 100_000), 4).unwrap();
    assert_eq!(store.persons().unwrap(), [person(1, 11), person(2, 100_000)]);
    store.check().unwrap();
}
