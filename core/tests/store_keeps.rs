//! What is saved is there, to the bit, and nothing else is touched.

use crate::store_support;

use pitface_core::record::{ComesAway, Zone};
use pitface_core::store::{Cell, Store, StoreError};
use rusqlite::{Connection, params};
use store_support::{DEVICE, NOW_MS, ellmoor, id, is_missing, new_store, person, place, step};

fn rows(path: &std::path::Path, table: &str) -> i64 {
    let connection = Connection::open(path).unwrap();
    connection.query_row(&format!("SELECT count(*) FROM {table}"), [], |row| row.get(0)).unwrap()
}

#[test]
fn notes_come_back_as_saved_from_a_reopened_file() {
    let (_folder, path) = place();
    let notes = ellmoor();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    let saved = store.save_notes(&notes, NOW_MS).unwrap();
    assert!(saved.changes.iter().any(|change| change.cell.name() == Some("layer.signs.roots")));
    drop(store);
    let store = Store::open_existing(&path, DEVICE).unwrap();
    let loaded = store.load_notes(notes.field.id).unwrap();
    assert_eq!(loaded, notes);
    // Key order is not part of equality, yet is kept.
    let json = |keys| serde_json::to_string(keys).unwrap();
    assert_eq!(json(&loaded.field.unknown), json(&notes.field.unknown));
    assert_eq!(store.check().unwrap().edits, saved.changes.len());
}

#[test]
fn saving_the_same_again_writes_nothing() {
    let (_folder, mut store) = new_store();
    store.save_notes(&ellmoor(), NOW_MS).unwrap();
    let before = store.check().unwrap();
    assert_eq!(store.save_notes(&ellmoor(), NOW_MS + 1).unwrap().changes, []);
    assert_eq!(store.check().unwrap(), before);
}

#[test]
fn a_tap_on_a_step_is_one_edit() {
    let (_folder, mut store) = new_store();
    let mut notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    let before = store.check().unwrap();
    notes.pits[0].walk[0].comes_away = Some(ComesAway::OneMass);
    let saved = store.save_step(notes.pits[0].id, &notes.pits[0].walk[0], NOW_MS).unwrap();
    let told: Vec<_> = saved.changes.iter().map(|change| (change.record, change.cell.to_string())).collect();
    assert_eq!(told, [(notes.pits[0].walk[0].id, "step.comes_away".to_owned())]);
    let after = store.check().unwrap();
    assert_eq!((after.edits, after.cells), (before.edits + 1, before.cells));
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
}

#[test]
fn a_new_step_goes_to_the_end_of_the_walk() {
    let (_folder, mut store) = new_store();
    let mut notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    // An id below all others: the order is that of saving.
    let new = step(2, 350, ComesAway::SharpBlocks);
    let cells: Vec<_> = {
        let saved = store.save_step(notes.pits[0].id, &new, NOW_MS).unwrap();
        saved.changes.iter().map(|change| change.cell.to_string()).collect()
    };
    assert_eq!(cells, ["kind", "parent", "step.to_mm", "step.comes_away"]);
    notes.pits[0].walk.push(new);
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
}

#[test]
fn lists_are_read_back_in_the_order_last_saved() {
    let (_folder, mut store) = new_store();
    let mut notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    notes.pits.reverse();
    notes.pits[1].walk.insert(1, step(30, 220, ComesAway::RoundedLumps));
    notes.pits[1].walk.insert(0, step(31, 50, ComesAway::Crumbs));
    store.save_notes(&notes, NOW_MS).unwrap();
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
}

#[test]
fn what_vanished_from_the_notes_stays_until_deleted() {
    let (_folder, mut store) = new_store();
    let whole = ellmoor();
    store.save_notes(&whole, NOW_MS).unwrap();
    let mut fewer = whole.clone();
    let gone = fewer.pits[0].walk.remove(0);
    assert_eq!(store.save_notes(&fewer, NOW_MS).unwrap().changes, []);
    assert_eq!(store.load_notes(whole.field.id).unwrap(), whole);
    store.delete_record(gone.id, NOW_MS).unwrap();
    assert_eq!(store.load_notes(whole.field.id).unwrap(), fewer);
    assert!(matches!(store.delete_record(gone.id, NOW_MS), Err(StoreError::RecordNotFound { .. })));
    // Saved again, it is back in its place.
    store.save_step(whole.pits[0].id, &gone, NOW_MS).unwrap();
    assert_eq!(store.load_notes(whole.field.id).unwrap(), whole);
}

#[test]
fn lists_fields_and_people() {
    let (_folder, mut store) = new_store();
    let mut second = ellmoor();
    second.field.id = id(800);
    second.field.name = "Hangar Piece".into();
    second.pits.clear();
    store.save_notes(&second, NOW_MS).unwrap();
    store.save_person(&person(), NOW_MS).unwrap();
    store.save_notes(&ellmoor(), NOW_MS).unwrap();
    let list = |store: &Store| -> Vec<_> {
        store.fields().unwrap().into_iter().map(|field| (field.name, field.pits)).collect()
    };
    assert_eq!(list(&store), [("Hangar Piece".to_owned(), 0), ("Long Acre".to_owned(), 2)]);
    assert_eq!(store.persons().unwrap(), [person()]);
    store.delete_record(id(10), NOW_MS).unwrap();
    store.delete_record(id(800), NOW_MS).unwrap();
    assert_eq!(list(&store), [("Long Acre".to_owned(), 1)]);
    assert!(is_missing(&store.load_notes(id(800))));
}

#[test]
fn cells_and_codes_of_a_newer_version_stay_as_they_are() {
    let (_folder, path) = place();
    let notes = ellmoor();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    store.save_notes(&notes, NOW_MS).unwrap();
    drop(store);
    // Another device with a newer version: a cell no one here knows, and a new code for the soil that comes away.
    let newer_cell: &[u8] = &[0xd8, 0x20, 0x63, b'a', b':', b'b'];
    let newer_code: &[u8] = &[0x65, b'm', b'u', b's', b'h', b'y'];
    let own_code: (i64, Vec<u8>) = {
        let connection = Connection::open(&path).unwrap();
        connection
            .execute(
                "INSERT INTO devices (number, id, base, last, own) VALUES (2, zeroblob(16), zeroblob(16), 2, 1)",
                [],
            )
            .unwrap();
        let first = notes.pits[0].walk[0].id;
        let own = connection
            .query_row(
                "SELECT sequence, value FROM log WHERE record = ?1 AND field = 301",
                [first.as_bytes()],
                |row| Ok((row.get(0)?, row.get(1)?)),
            )
            .unwrap();
        let insert = "INSERT INTO log VALUES (2, ?1, ?2, ?3, ?4, ?5, ?6, NULL)";
        let later = i64::try_from((NOW_MS + 1) << 16).unwrap();
        let mut predecessors = Vec::new();
        ciborium::into_writer(&[(1, own.0)], &mut predecessors).unwrap();
        connection.execute(insert, params![1, later, first.as_bytes(), 309, [0x80_u8], newer_cell]).unwrap();
        connection
            .execute(insert, params![2, later, first.as_bytes(), 301, predecessors, newer_code])
            .unwrap();
        connection.execute("UPDATE devices SET clock = ?1 WHERE number = 2", [later]).unwrap();
        own
    };
    assert_eq!(own_code.1, [0x66, b'c', b'r', b'u', b'm', b'b', b's']);
    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    let stale = store.check().unwrap_err().to_string();
    assert!(stale.contains("rebuild"), "{stale}");
    store.rebuild().unwrap();
    store.check().unwrap();
    let mut read = store.load_notes(notes.field.id).unwrap();
    assert_eq!(read.pits[0].walk[0].comes_away, None);
    read.pits[0].walk[0].to_mm = 155;
    let saved = store.save_notes(&read, NOW_MS + 2).unwrap();
    assert_eq!(saved.changes.len(), 1);
    store.check().unwrap();
    drop(store);
    let connection = Connection::open(&path).unwrap();
    let value = |cell: i64| -> Vec<u8> {
        let find = "SELECT value FROM cells WHERE record = ?1 AND field = ?2";
        let record = notes.pits[0].walk[0].id;
        connection.query_row(find, params![record.as_bytes(), cell], |row| row.get(0)).unwrap()
    };
    assert_eq!(value(309), newer_cell);
    assert_eq!(value(301), newer_code);
}

#[test]
fn two_devices_that_did_not_know_of_each_other_leave_two_heads_and_the_next_save_joins_them() {
    // The other device's id and how much later it wrote: the later is shown, of equal clocks the higher id.
    for (other, later, theirs_shown) in [([0; 16], 1, true), ([0; 16], 0, false), ([255; 16], 0, true)] {
        let (_folder, path) = place();
        let mut notes = ellmoor();
        let mut store = Store::create_or_open(&path, DEVICE).unwrap();
        store.save_notes(&notes, NOW_MS).unwrap();
        let one_head_each = store.check().unwrap().cells;
        drop(store);
        let connection = Connection::open(&path).unwrap();
        connection
            .execute("INSERT INTO devices (number, id, base, last, own) VALUES (2, ?1, ?1, 1, 1)", [other])
            .unwrap();
        let pit = notes.pits[0].id.as_bytes();
        let theirs = "INSERT INTO log SELECT 2, 1, clock + ?1, ?2, 201, x'80', x'646f70656e', NULL
            FROM log WHERE record = ?2 AND field = 201";
        connection.execute(theirs, params![later, pit]).unwrap();
        let clock = "UPDATE devices SET clock = (SELECT clock FROM log WHERE device = 2) WHERE number = 2";
        connection.execute(clock, []).unwrap();
        drop(connection);

        let mut store = Store::open_existing(&path, DEVICE).unwrap();
        store.rebuild().unwrap();
        assert_eq!(store.check().unwrap().cells, one_head_each + 1);
        notes.pits[0].zone = Some(if theirs_shown { Zone::Open } else { Zone::Patch });
        assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
        notes.pits[0].zone = None;
        store.save_notes(&notes, NOW_MS).unwrap();
        assert_eq!(store.check().unwrap().cells, one_head_each);
        assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
    }
}

#[test]
fn nothing_in_the_log_is_changed_or_cut() {
    let (_folder, path) = place();
    Store::create_or_open(&path, DEVICE).unwrap().save_notes(&ellmoor(), NOW_MS).unwrap();
    let edits = rows(&path, "log");
    let connection = Connection::open(&path).unwrap();
    connection.execute("UPDATE log SET value = x'f6'", []).unwrap_err();
    connection.execute("DELETE FROM log", []).unwrap_err();
    assert_eq!(rows(&path, "log"), edits);
}

#[test]
fn a_path_is_always_a_file() {
    Store::create_or_open(std::path::Path::new(""), DEVICE).unwrap_err();
    let (folder, _) = place();
    let path = folder.path().join(":memory:");
    Store::create_or_open(&path, DEVICE).unwrap().save_notes(&ellmoor(), NOW_MS).unwrap();
    assert_eq!(Store::open_existing(&path, DEVICE).unwrap().load_notes(id(1)).unwrap(), ellmoor());
}

#[test]
fn works_as_promised_on_the_disk() {
    let (_folder, path) = place();
    drop(Store::create_or_open(&path, DEVICE).unwrap());
    let bytes = std::fs::read(&path).unwrap();
    assert_eq!(&bytes[18..20], [2, 2], "write-ahead log");
    assert_eq!(&bytes[68..72], b"PITF");
    let left: Vec<_> = std::fs::read_dir(path.parent().unwrap()).unwrap().collect();
    assert_eq!(left.len(), 1, "a closed store is one file: {left:?}");
}

/// Numbers once given are given for ever: this list is only ever added to.
#[test]
fn numbers_of_cells_are_those_released() {
    let released: Vec<(u16, String)> =
        serde_json::from_str(include_str!("../../tests/vectors/store/cells.json")).unwrap();
    let known: Vec<_> = Cell::ALL.iter().map(|(number, name)| (*number, (*name).to_owned())).collect();
    assert_eq!(known, released);
    let distinct: std::collections::BTreeSet<_> = known.iter().map(|(number, _)| number).collect();
    assert_eq!(distinct.len(), known.len());
}
