//! Stores of earlier versions open, keep everything, and can do what the new version can.
//!
//! `tests/vectors/store/version_1.sql` is a store as version 1 wrote it, as SQL text: the notes of
//! `store_support::ellmoor` as far as version 1 knew them, then the first step tapped to 145 mm, a step 900 mm added and deleted again, and a cell
//! 309 of a newer version on the second step.
//!
//! `version_3.sql` is Ann's store as version 3 wrote it: a field with one pit dug to 450 mm, handed over to Ben and accepted both ways, 460 mm
//! noted by Ben and taken in, then 470 mm noted by Ann and not handed over.
//!
//! `version_3_two_fields.sql` is another one of version 3: Ann read a notes file of a "Home Field" with pits dug to 410 and 420 mm, accepted Ben, and
//! took in his field of that name with a pit dug to 510 mm.

use crate::store_support;

use pitface_core::record::{Field, FieldNotes};
use pitface_core::store::{DeviceId, SCHEMA_VERSION, Store};
use rusqlite::Connection;
use std::path::Path;
use store_support::{DEVICE, NOW_MS, ellmoor, id, is_missing, place};

fn version_1(path: &Path) {
    let connection = Connection::open(path).unwrap();
    connection.execute_batch(include_str!("../../tests/vectors/store/version_1.sql")).unwrap();
}

fn read<T: rusqlite::types::FromSql>(path: &Path, sql: &str) -> T {
    Connection::open(path).unwrap().query_row(sql, [], |row| row.get(0)).unwrap()
}

fn schema(path: &Path) -> String {
    read(path, "SELECT group_concat(sql, char(10)) FROM (SELECT sql FROM sqlite_schema ORDER BY name)")
}

/// Returns what version 1 could hold of [`ellmoor`]: no machines, no passes, nothing marked on the field.
fn ellmoor_of_version_1() -> FieldNotes {
    let whole = ellmoor();
    let field = Field {
        wheel_track_mm: None,
        tyre_mm: None,
        parts: vec![],
        lines: vec![],
        services_clearance_mm: None,
        services_asked: None,
        services_asked_on: None,
        services_leave: None,
        last_rain: None,
        tillage_mm: None,
        stony: None,
        plates_soft: None,
        next_crop: None,
        next_sown: None,
        slope_percent: None,
        controlled_traffic: None,
        remark: None,
        ..whole.field
    };
    let mut pits = whole.pits;
    for pit in &mut pits {
        pit.remark = None;
        pit.layers.iter_mut().for_each(|layer| layer.remark = None);
        pit.photos.iter_mut().for_each(|photo| photo.marks.clear());
    }
    FieldNotes { field, pits, machines: vec![], passes: vec![], unknown: whole.unknown }
}

#[test]
fn version_1_is_brought_up_to_date_with_everything_in_it() {
    let (_folder, path) = place();
    version_1(&path);
    assert_eq!(read::<i64>(&path, "PRAGMA user_version"), 1);
    let edits: i64 = read(&path, "SELECT count(*) FROM log");

    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    let mut notes = ellmoor_of_version_1();
    notes.pits[0].walk[0].to_mm = 145;
    assert_eq!(store.load_notes(id(1)).unwrap(), notes);
    let fields = store.fields().unwrap();
    assert_eq!((fields.len(), fields[0].pits), (1, 2));
    let sound = store.check().unwrap();
    assert_eq!(sound.edits, usize::try_from(edits).unwrap());
    store.rebuild().unwrap();
    assert_eq!(store.check().unwrap(), sound);

    // What only this version knows is kept beside it, and taken back.
    store.save_notes(&ellmoor(), NOW_MS).unwrap();
    assert_eq!(store.load_notes(id(1)).unwrap(), ellmoor());
    store.check().unwrap();
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(id(1)).unwrap(), notes);

    // Saves made by version 1 can be taken back too: the deletion, the added step, the tap, the notes.
    let walk = |store: &Store| -> Vec<u32> {
        store.load_notes(id(1)).unwrap().pits[0].walk.iter().map(|step| step.to_mm).collect()
    };
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(walk(&store), [145, 300, 900]);
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(walk(&store), [145, 300]);
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(id(1)).unwrap(), ellmoor_of_version_1());
    store.undo(NOW_MS).unwrap().unwrap();
    assert!(is_missing(&store.load_notes(id(1))));
    assert_eq!(store.undo(NOW_MS).unwrap(), None);
    drop(store);
    let newer_cell: Vec<u8> = read(&path, "SELECT value FROM cells WHERE field = 309");
    assert_eq!(newer_cell, b"\x65later");
}

#[test]
fn version_3_is_brought_up_to_date_with_what_others_handed_over() {
    let (_folder, path) = place();
    let connection = Connection::open(&path).unwrap();
    connection.execute_batch(include_str!("../../tests/vectors/store/version_3.sql")).unwrap();
    drop(connection);
    let ann: [u8; 16] = read(&path, "SELECT id FROM devices WHERE own = 1");
    let mut store = Store::open_existing(&path, DeviceId(ann)).unwrap();
    assert_eq!(read_pits(&store), [470]);
    assert_eq!(store.check().unwrap().edits, 23);
    assert_eq!(store.not_carried().unwrap(), 1);
    let accepted = store.partners().unwrap().iter().filter(|partner| partner.accepted).count();
    assert_eq!(accepted, 2);
    // What only this version keeps beside it.
    assert!(!store.folder_is_locked("/shared").unwrap());
    store.lock_folder("/shared").unwrap();
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(read_pits(&store), [460]);
}

/// How deep the pits of a store's one field were dug.
fn read_pits(store: &Store) -> Vec<u32> {
    let field = store.fields().unwrap()[0].id;
    store.load_notes(field).unwrap().pits.iter().filter_map(|pit| pit.dug_to_mm).collect()
}

#[test]
fn version_3_keeps_two_fields_of_one_name_and_can_join_them() {
    let (_folder, path) = place();
    let connection = Connection::open(&path).unwrap();
    connection.execute_batch(include_str!("../../tests/vectors/store/version_3_two_fields.sql")).unwrap();
    drop(connection);
    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    let fields = store.fields().unwrap();
    assert_eq!(fields.iter().map(|field| field.pits).collect::<Vec<_>>(), [2, 1]);
    assert_eq!(store.check().unwrap().edits, 44);
    store.join(fields[1].id, fields[0].id, NOW_MS).unwrap();
    let depths = |store: &Store| -> Vec<_> {
        store.load_notes(fields[0].id).unwrap().pits.iter().filter_map(|pit| pit.dug_to_mm).collect()
    };
    assert_eq!(depths(&store), [410, 420, 510]);
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(depths(&store), [410, 420]);
    drop(store);
    let new = path.with_extension("new");
    drop(Store::create_or_open(&new, DeviceId([3; 16])).unwrap());
    assert_eq!(schema(&path), schema(&new));
}

#[test]
fn a_migrated_store_has_the_tables_of_a_new_one() {
    let (_folder, path) = place();
    version_1(&path);
    drop(Store::open_existing(&path, DEVICE).unwrap());
    let new = path.with_extension("new");
    drop(Store::create_or_open(&new, DeviceId([3; 16])).unwrap());
    assert_eq!(schema(&path), schema(&new));
    assert_eq!(read::<i64>(&path, "PRAGMA user_version"), SCHEMA_VERSION);
}

#[test]
fn a_migration_that_fails_half_way_leaves_version_1() {
    let (_folder, path) = place();
    version_1(&path);
    // The second statement of the step cannot be done: the column is there.
    Connection::open(&path)
        .unwrap()
        .execute_batch(
            "ALTER TABLE cells ADD COLUMN shown INTEGER NOT NULL DEFAULT 1; PRAGMA wal_checkpoint(TRUNCATE)",
        )
        .unwrap();
    let before = std::fs::read(&path).unwrap();
    let error = Store::open_existing(&path, DEVICE).unwrap_err().to_string();
    assert!(error.contains("duplicate column"), "{error}");
    assert!(std::fs::read(&path).unwrap() == before, "the file has changed");
    assert_eq!(read::<i64>(&path, "PRAGMA user_version"), 1);
    assert!(!schema(&path).contains("undoes"));
}
