//! A store's file, damaged: opening, checking, loading and rebuilding it tells what is wrong and never panics. An
//! input is the file itself or, more telling, bytes to be changed in a good one: four for where, one for what.
#![no_main]

use libfuzzer_sys::fuzz_target;
use pitface_core::merge::DeviceId;
use pitface_core::record::{Field, Pit, PlaceKind, RecordId};
use pitface_core::store::Store;
use std::sync::LazyLock;
use tempfile::TempDir;

const DEVICE: DeviceId = DeviceId([7; 16]);

static FOLDER: LazyLock<TempDir> = LazyLock::new(|| tempfile::tempdir().unwrap());

static GOOD: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let path = FOLDER.path().join("good.pitface");
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    let field = Field::new(RecordId::new(1, [1; 10]), "Long Sedge");
    store.save_field(&field, 1).unwrap();
    for number in 2..6 {
        store.save_pit(field.id, &Pit::new(RecordId::new(number, [2; 10]), PlaceKind::Open), number).unwrap();
    }
    drop(store);
    std::fs::read(path).unwrap()
});

fuzz_target!(|bytes: &[u8]| {
    let Some((way, bytes)) = bytes.split_first() else { return };
    let file = if *way == 0 { bytes.to_vec() } else { changed(bytes) };
    for left in std::fs::read_dir(FOLDER.path()).unwrap() {
        std::fs::remove_file(left.unwrap().path()).unwrap();
    }
    let path = FOLDER.path().join("notes.pitface");
    std::fs::write(&path, file).unwrap();
    let Ok(mut store) = Store::open_existing(&path, DEVICE) else { return };
    let _ = store.check();
    let _ = store.conflicts();
    let _ = store.missing();
    let _ = store.digest();
    let _ = store.not_shown_anywhere();
    for field in store.fields().unwrap_or_default() {
        let _ = store.load_notes(field.id);
    }
    let _ = store.rebuild();
});

fn changed(bytes: &[u8]) -> Vec<u8> {
    let mut file = GOOD.clone();
    for change in bytes.as_chunks::<5>().0 {
        let [a, b, c, d, new] = *change;
        let at = u32::from_be_bytes([a, b, c, d]) as usize % file.len();
        file[at] = new;
    }
    file
}
