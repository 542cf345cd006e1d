//! Broken, foreign and locked stores, and values no record may have: each with the message it gets, and the
//! bytes on the disk the same before and after.

use crate::store_support;

use pitface_core::record::{FieldNotes, OrganicMatter, PartShape, Pit, Position, Zone};
use pitface_core::store::{DeviceId, SCHEMA_VERSION, Store, StoreError};
use rusqlite::Connection;
use rusqlite::config::DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use store_support::{DEVICE, NOW_MS, ellmoor, id, place, step};

/// Every file beside the store, and the store, with its bytes.
fn snapshot(path: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let files = std::fs::read_dir(path.parent().unwrap()).unwrap().map(|entry| entry.unwrap().path());
    files.filter(|file| file.is_file()).map(|file| (file.clone(), std::fs::read(file).unwrap())).collect()
}

fn ellmoor_store(path: &Path) {
    Store::create_or_open(path, DEVICE).unwrap().save_notes(&ellmoor(), NOW_MS).unwrap();
}

fn overwrite(path: &Path, range: std::ops::Range<usize>, byte: u8) {
    let mut bytes = std::fs::read(path).unwrap();
    bytes[range].fill(byte);
    std::fs::write(path, bytes).unwrap();
}

fn execute(path: &Path, sql: &str) {
    Connection::open(path).unwrap().execute_batch(sql).unwrap();
}

/// A name, how the file at the path comes to be, and what the message must say.
type Case = (&'static str, fn(&Path), &'static str);

type Opener = fn(&Path, DeviceId) -> Result<Store, StoreError>;

/// What makes notes wrong, and what the message must say.
type Spoiled = (fn(&mut FieldNotes), &'static str);

const NOT_TO_BE_OPENED: &[Case] = &[
    ("empty", |path| std::fs::write(path, "").unwrap(), "no Pitface store: the file is empty"),
    ("a folder", |path| std::fs::create_dir(path).unwrap(), "no Pitface store: it is not a file"),
    ("a text", |path| std::fs::write(path, "{\"pitface\": 1}").unwrap(), "no SQLite file"),
    ("long text", |path| std::fs::write(path, "soil ".repeat(900)).unwrap(), "no SQLite file"),
    ("torn header", |path| std::fs::write(path, "SQLite format 3\0").unwrap(), "no SQLite file"),
    ("another's SQLite", |path| execute(path, "CREATE TABLE t (x)"), "of another program"),
    (
        "a GeoPackage",
        |path| {
            execute(
                path,
                "PRAGMA journal_mode = WAL; PRAGMA application_id = 0x47504B47;
                     PRAGMA user_version = 10400; CREATE TABLE t (x)",
            );
        },
        "of another program",
    ),
    (
        "newer schema",
        |path| {
            ellmoor_store(path);
            execute(path, "PRAGMA user_version = 98");
        },
        "has schema 98, this version knows up to 4; update the program",
    ),
    (
        "newer schema, so far in the write-ahead log only",
        |path| {
            ellmoor_store(path);
            let connection = Connection::open(path).unwrap();
            connection.set_db_config(SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true).unwrap();
            connection.execute_batch("PRAGMA user_version = 99").unwrap();
            drop(connection);
            let _ = std::fs::remove_file(path.with_extension("store-shm"));
            assert!(std::fs::metadata(path.with_extension("store-wal")).unwrap().len() > 0);
            assert_eq!(std::fs::read(path).unwrap()[63], 4);
        },
        "has schema 99, this version knows up to 4; update the program",
    ),
    (
        "schema version 0",
        |path| {
            ellmoor_store(path);
            execute(path, "PRAGMA user_version = 0");
        },
        "damaged: its schema version is 0; keep the file as it is and restore a copy",
    ),
    (
        "cut short",
        |path| {
            ellmoor_store(path);
            let bytes = std::fs::read(path).unwrap();
            std::fs::write(path, &bytes[..bytes.len() - 5000]).unwrap();
        },
        "damaged",
    ),
    (
        "list of tables overwritten",
        |path| {
            ellmoor_store(path);
            overwrite(path, 100..4096, 0x55);
        },
        "damaged",
    ),
    (
        "all pages but the first overwritten",
        |path| {
            ellmoor_store(path);
            let end = std::fs::read(path).unwrap().len();
            overwrite(path, 4096..end, 0x55);
        },
        "damaged",
    ),
    (
        "a table is missing",
        |path| {
            ellmoor_store(path);
            execute(path, "DROP TABLE cells");
        },
        "damaged: tables are missing",
    ),
];

#[test]
fn what_cannot_be_opened_says_why_and_stays_as_it_is() {
    for (name, make, says) in NOT_TO_BE_OPENED {
        let (_folder, path) = place();
        make(&path);
        let before = snapshot(&path);
        let openers: &[Opener] = if *name == "empty" {
            &[Store::open_existing]
        } else {
            &[Store::open_existing, Store::create_or_open]
        };
        for open in openers {
            let error = open(&path, DeviceId([9; 16])).unwrap_err();
            assert!(error.to_string().contains(says), "{name}: {error}");
            let expected = match error {
                StoreError::NotAStore(_) => says.contains("no ") || says.contains("another"),
                StoreError::NewerSchema { known, .. } => known == SCHEMA_VERSION && says.contains("schema"),
                StoreError::Corrupt(_) => says.contains("damaged"),
                _ => false,
            };
            assert!(expected, "{name}: {error:?}");
            let after = snapshot(&path);
            let sizes = |files: &BTreeMap<PathBuf, Vec<u8>>| -> Vec<_> {
                files.iter().map(|(file, bytes)| (file.clone(), bytes.len())).collect()
            };
            assert!(after == before, "{name}: {:?} became {:?}", sizes(&before), sizes(&after));
        }
    }
}

#[test]
fn nothing_there_or_no_folder_for_it() {
    let (_folder, path) = place();
    let error = Store::open_existing(&path, DEVICE).unwrap_err();
    assert!(matches!(&error, StoreError::Missing(what) if *what == path), "{error:?}");
    assert!(error.to_string().contains("ellmoor.store; check the path"), "{error}");
    let error = Store::create_or_open(&path.join("deeper.store"), DEVICE).unwrap_err();
    assert!(matches!(&error, StoreError::Missing(what) if *what == path), "{error:?}");
    assert!(snapshot(&path).is_empty());
}

#[test]
fn an_empty_file_becomes_a_store_where_creating_is_asked_for() {
    let (_folder, path) = place();
    std::fs::write(&path, "").unwrap();
    ellmoor_store(&path);
    assert_eq!(Store::open_existing(&path, DEVICE).unwrap().load_notes(id(1)).unwrap(), ellmoor());
}

#[test]
fn a_power_cut_while_creating_is_rolled_back_and_created_anew() {
    let (_folder, path) = place();
    let cut_off = path.with_extension("cut");
    let connection = Connection::open(&path).unwrap();
    // A tiny cache, so that pages reach the file before the commit that never comes.
    connection
        .execute_batch(
            "PRAGMA cache_size = 1; BEGIN; CREATE TABLE t (x); INSERT INTO t VALUES (zeroblob(100000))",
        )
        .unwrap();
    std::fs::copy(&path, &cut_off).unwrap();
    std::fs::copy(path.with_extension("store-journal"), path.with_extension("cut-journal")).unwrap();
    assert!(std::fs::metadata(&cut_off).unwrap().len() > 0);
    assert!(std::fs::metadata(path.with_extension("cut-journal")).unwrap().len() > 0);
    ellmoor_store(&cut_off);
    Store::open_existing(&cut_off, DEVICE).unwrap().check().unwrap();
}

#[test]
fn a_second_writer_is_turned_away_and_the_first_goes_on() {
    let (_folder, path) = place();
    let mut first = Store::create_or_open(&path, DEVICE).unwrap();
    first.save_notes(&ellmoor(), NOW_MS).unwrap();
    let before = snapshot(&path);
    for open in [Store::create_or_open, Store::open_existing] {
        let error = open(&path, DeviceId([9; 16])).unwrap_err();
        assert!(matches!(error, StoreError::InUse), "{error:?}");
        assert!(error.to_string().contains("one writer at a time; close it there"), "{error}");
    }
    assert!(snapshot(&path) == before, "the files have changed");
    first.save_step(id(10), &step(11, 140, pitface_core::record::ComesAway::Crumbs), NOW_MS).unwrap();
    drop(first);
    Store::open_existing(&path, DeviceId([9; 16])).unwrap().check().unwrap();
}

#[test]
fn a_damaged_page_is_found_by_whoever_reads_it() {
    let (_folder, path) = place();
    ellmoor_store(&path);
    let page: u16 = {
        let connection = Connection::open(&path).unwrap();
        let root = "SELECT rootpage FROM sqlite_schema WHERE name = 'cells'";
        connection.query_row(root, [], |row| row.get(0)).unwrap()
    };
    let end = usize::from(page) * 4096;
    overwrite(&path, end - 4096..end, 0x55);
    let before = snapshot(&path);
    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    let found = [
        store.load_notes(id(1)).unwrap_err(),
        store.fields().unwrap_err(),
        store.check().unwrap_err(),
        store.save_notes(&ellmoor(), NOW_MS).unwrap_err(),
        store.delete_record(id(1), NOW_MS).unwrap_err(),
    ];
    for error in found {
        assert!(matches!(error, StoreError::Corrupt(_)), "{error:?}");
    }
    drop(store);
    assert!(snapshot(&path) == before, "the files have changed");
}

#[test]
fn check_finds_what_was_tampered_with() {
    let drop_guards = "DROP TRIGGER log_is_never_changed; DROP TRIGGER log_is_never_cut;";
    let cases = [
        ("UPDATE cells SET value = x'00' WHERE field = 300", "not those of the log"),
        ("DELETE FROM cells WHERE field = 300", "not those of the log"),
        ("DELETE FROM log WHERE sequence = 20", "is missing"),
        ("UPDATE log SET clock = 1 WHERE sequence = 20", "are not as written"),
        ("UPDATE log SET value = x'00' WHERE field = 300", "are not as written"),
        ("UPDATE log SET predecessors = x'ff' WHERE sequence = 20", "no CBOR"),
        ("PRAGMA foreign_keys = OFF; UPDATE devices SET number = 7", "a device the store does not know"),
    ];
    for (sql, says) in cases {
        let (_folder, path) = place();
        ellmoor_store(&path);
        execute(&path, &format!("{drop_guards} {sql}"));
        let error = Store::open_existing(&path, DeviceId([9; 16])).unwrap().check().unwrap_err();
        assert!(
            matches!(error, StoreError::Corrupt(_)) && error.to_string().contains(says),
            "{sql}: {error}"
        );
    }
}

#[test]
fn records_that_are_not_there() {
    let (_folder, path) = place();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    store.save_notes(&ellmoor(), NOW_MS).unwrap();
    let before = snapshot(&path);
    let notes = ellmoor();
    let walk = &notes.pits[0].walk[0];
    let found = [
        (store.load_notes(id(77)).map(drop), "no field"),
        (store.load_notes(notes.pits[0].id).map(drop), "no field"),
        (store.save_step(id(77), walk, NOW_MS).map(drop), "no pit"),
        (store.save_step(notes.field.id, walk, NOW_MS).map(drop), "no pit"),
        (store.save_pit(id(77), &notes.pits[0], NOW_MS).map(drop), "no field"),
        (store.save_machine(id(77), &notes.machines[0], NOW_MS).map(drop), "no field"),
        (store.save_pass(id(10), &notes.passes[0], NOW_MS).map(drop), "no field"),
        (store.save_part(id(10), &notes.field.parts[0], NOW_MS).map(drop), "no field"),
        (store.save_line(id(77), &notes.field.lines[0], NOW_MS).map(drop), "no field"),
        (store.save_after_dig(id(10), &notes.passes[0].after_digs[0], NOW_MS).map(drop), "no pass"),
        (store.save_roll(id(1), &notes.passes[0].rolls[0], NOW_MS).map(drop), "no pit"),
        (store.delete_record(id(77), NOW_MS).map(drop), "no record"),
    ];
    for (result, says) in found {
        let error = result.unwrap_err();
        assert!(matches!(error, StoreError::RecordNotFound { .. }), "{error:?}");
        assert!(error.to_string().contains(says), "{error}");
    }
    assert!(snapshot(&path) == before, "the files have changed");
}

#[test]
fn values_no_record_may_have() {
    let cases: &[Spoiled] = &[
        (|notes| notes.field.name.clear(), "field.name: the name is empty; give a name"),
        (|notes| notes.field.name = " \t".into(), "field.name: the name is empty"),
        (|notes| notes.field.outline[1] = [181.0, 0.0], "field.outline[1]: longitude 181"),
        (|notes| notes.field.outline[0] = [0.0, f64::NAN], "latitude NaN lies off the globe"),
        (|notes| notes.field.organic_matter = Some(OrganicMatter::Percent(120.0)), "120 is no percentage"),
        (|notes| notes.field.organic_matter = Some(OrganicMatter::Percent(f64::NAN)), "NaN is no percentage"),
        (|notes| at(&mut notes.pits[0]).latitude_deg = -90.5, "pits[0].at: longitude"),
        (|notes| at(&mut notes.pits[0]).accuracy_m = Some(-1.0), "pits[0].accuracy_m: -1 m is no radius"),
        (|notes| at(&mut notes.pits[0]).accuracy_m = Some(f64::INFINITY), "inf m is no radius"),
        (|notes| notes.pits[0].layers[0].bottom_mm = 240, "layers[0]: top and bottom are both 240 mm"),
        (|notes| notes.pits[0].layers[0].bottom_mm = 10, "pits[0].layers[0]: the bottom at 10 mm lies above"),
        (|notes| notes.pits[0].photos[0].sha256 = "AB".repeat(32), "pits[0].photos[0].sha256:"),
        (|notes| notes.pits[0].photos[0].sha256.truncate(63), "give 64 lower-case hex digits"),
        (|notes| notes.pits[0].walk[1].id = notes.pits[0].walk[0].id, "pits[0].walk[1]: the id"),
        (|notes| notes.pits[1].id = notes.field.id, "stands twice; give each record an id of its own"),
        (
            |notes| notes.field.parts[1].zone = Zone::Headland,
            "field.parts[1].zone: only a gateway or a patch",
        ),
        (
            |notes| notes.field.parts[0].shape = PartShape::Ring(vec![[0.0, 91.0]]),
            "field.parts[0].ring[0]: longitude 0, latitude 91",
        ),
        (
            |notes| notes.field.parts[1].shape = PartShape::Circle { middle: [0.0, 0.0], radius_m: f64::NAN },
            "field.parts[1].radius_m: this is no radius",
        ),
        (|notes| notes.field.lines[0].along[1][0] = -181.0, "field.lines[0].along[1]: longitude -181"),
        (|notes| notes.field.lines[0].id = notes.field.parts[0].id, "field.lines[0]: the id"),
        (|notes| notes.machines[1].name.clear(), "machines[1].name: the name is empty"),
        (|notes| notes.machines[0].foot_width_mm = 350, "machines[0].wings.width_mm: the wings are narrower"),
        (|notes| notes.machines[1].id = notes.pits[0].id, "machines[1]: the id"),
        (|notes| notes.passes[0].speed_kmh = Some(f64::NAN), "passes[0].speed_kmh: this is no speed"),
        (
            |notes| notes.passes[0].driven_on = notes.field.last_loosened,
            "passes[0].driven_on: this day lies before",
        ),
        (|notes| notes.passes[0].rolls[0].id = notes.passes[0].id, "passes[0].rolls[0]: the id"),
        (|notes| notes.passes[0].after_digs[1].id = notes.pits[1].id, "passes[0].after_digs[1]: the id"),
        (
            |notes| notes.passes[0].after_digs[0].at.as_mut().unwrap().accuracy_m = Some(-1.0),
            "passes[0].after_digs[0].accuracy_m: -1 m is no radius",
        ),
        (
            |notes| notes.pits[1].id = id(12),
            "pit: record 01a0c450-6c00-7000-8000-00000000000c is already step",
        ),
    ];
    let (_folder, path) = place();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    let mut sound = ellmoor();
    store.save_notes(&sound, NOW_MS).unwrap();
    sound.pits[0].walk.remove(1);
    let before = snapshot(&path);
    for (spoil, says) in cases {
        let mut notes = ellmoor();
        if says.contains("already") {
            notes = sound.clone();
        }
        // Something else to save first, so that half a save would show.
        notes.field.crop_now = Some("beans".into());
        spoil(&mut notes);
        let error = store.save_notes(&notes, NOW_MS).unwrap_err();
        assert!(matches!(error, StoreError::InvalidValue(_)), "{error:?}");
        assert!(error.to_string().contains(says), "{says} is not in: {error}");
    }
    let error = store.save_notes(&sound, 1 << 50).map(drop);
    assert!(error.is_err_and(|error| error.to_string().contains("set the device's clock")));
    assert!(snapshot(&path) == before, "the files have changed");
    assert_eq!(store.load_notes(id(1)).unwrap(), ellmoor());
}

fn at(pit: &mut Pit) -> &mut Position {
    pit.at.as_mut().unwrap()
}
