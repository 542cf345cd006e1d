//! Values that a newer version wrote and this one cannot read: the rest of the field is shown, the record is told, and no save
//! touches it.

use crate::store_support;

use pitface_core::record::FieldNotes;
use pitface_core::record::ids::ids;
use pitface_core::store::{Cell, Kind, NAME_NOT_READABLE, NotShown, Store, StoreError, WhyNotShown};
use rusqlite::{Connection, params};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use store_support::{DEVICE, NOW_MS, ellmoor, id};
use tempfile::TempDir;

/// CBOR that no cell of this version holds: tag 4711 of null.
const NEWER: &[u8] = &[0xd9, 0x12, 0x67, 0xf6];

/// Every cell of the store, by record and number.
type Cells = BTreeMap<([u8; 16], u16), Vec<u8>>;

fn cells(path: &Path) -> Cells {
    let connection = Connection::open(path).unwrap();
    let mut statement = connection.prepare("SELECT record, field, value FROM cells").unwrap();
    let rows = statement.query_map([], |row| Ok(((row.get(0)?, row.get(1)?), row.get(2)?))).unwrap();
    rows.collect::<Result<_, _>>().unwrap()
}

fn set(path: &Path, (record, field): ([u8; 16], u16), value: &[u8]) {
    const SET: &str = "UPDATE cells SET value = ?3 WHERE record = ?1 AND field = ?2";
    let connection = Connection::open(path).unwrap();
    assert_eq!(connection.execute(SET, params![record, field, value]).unwrap(), 1);
}

fn ellmoor_store() -> (TempDir, PathBuf) {
    // In memory where the system has that: it is opened and saved to once a cell.
    let folder = tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).unwrap();
    let path = folder.path().join("ellmoor.store");
    Store::create_or_open(&path, DEVICE).unwrap().save_notes(&ellmoor(), NOW_MS).unwrap();
    (folder, path)
}

fn open(path: &Path) -> Store {
    Store::open_existing(path, DEVICE).unwrap()
}

/// Whatever cell of whatever record is of a newer version: the field loads, the record is shown or told, and saving all that
/// is shown with something new beside it leaves the cell as it is.
#[test]
fn one_new_value_hides_no_field_and_no_save_touches_it() {
    let (_folder, path) = ellmoor_store();
    let before = cells(&path);
    let field = *id(1).as_bytes();
    let (mut hidden, mut now) = (0, NOW_MS);
    for (&cell, was) in &before {
        let name = Cell::known(cell.1).unwrap();
        let own = cell.0 == field && (name == Cell::KIND || name == Cell::PARENT);
        if own || was == &[0xf6] {
            continue;
        }
        set(&path, cell, NEWER);
        let mut store = open(&path);
        assert_eq!(store.fields().unwrap().len(), 1, "{name}");
        let mut notes = store.load_notes(id(1)).unwrap();
        let left_out = store.not_shown(id(1)).unwrap();
        let is_shown = ids(&notes).any(|shown| *shown.as_bytes() == cell.0) || cell.0 == field;
        if name == Cell::PARENT {
            // Nothing tells which field it belongs to.
            assert!(left_out.is_empty() && !is_shown);
            let anywhere = store.not_shown_anywhere().unwrap();
            assert_eq!(anywhere.len(), 1);
            assert_eq!((*anywhere[0].record.as_bytes(), anywhere[0].why), (cell.0, WhyNotShown::NewPlace));
        } else {
            assert_eq!(store.not_shown_anywhere().unwrap(), left_out);
            let told: Vec<_> = left_out.iter().map(|one| (*one.record.as_bytes(), one.why)).collect();
            let why = if name == Cell::KIND { WhyNotShown::NewKind } else { WhyNotShown::NewValue(name) };
            assert_eq!(told, if is_shown { vec![] } else { vec![(cell.0, why)] }, "{name}");
        }
        hidden += usize::from(!is_shown);
        now += 1_000;
        notes.field.crop_now = Some(format!("crop of {now}"));
        let saved = store.save_notes(&notes, now).unwrap();
        let crop_is_newer = cell == (field, 106);
        assert_eq!(saved.changes.len(), 1, "{name}: {saved:?}");
        drop(store);
        let after = cells(&path);
        assert!(crop_is_newer || after[&cell] == NEWER, "{name}");
        assert_eq!(after.len(), before.len());
        // After the update it is all there again.
        if !crop_is_newer {
            set(&path, cell, was);
        }
        let mut all = ellmoor();
        all.field.crop_now = notes.field.crop_now;
        let store = open(&path);
        assert_eq!(store.load_notes(id(1)).unwrap(), all, "{name}");
        assert_eq!(store.not_shown_anywhere().unwrap(), []);
    }
    assert!(hidden > 50, "only {hidden} cells hid a record");
}

fn cell(record: u64, name: &str) -> ([u8; 16], u16) {
    let (number, _) = *Cell::ALL.iter().find(|(_, known)| *known == name).unwrap();
    (*id(record).as_bytes(), number)
}

#[test]
fn a_new_kind_of_place_leaves_out_its_pit_alone() {
    let (_folder, path) = ellmoor_store();
    set(&path, cell(10, "pit.place"), b"\x64moon");
    let store = open(&path);
    let notes = store.load_notes(id(1)).unwrap();
    assert_eq!(notes.pits, ellmoor().pits[1..]);
    assert_eq!((notes.passes, notes.machines), (ellmoor().passes, ellmoor().machines));
    let why = WhyNotShown::NewValue(Cell::known(200).unwrap());
    let left_out = store.not_shown(id(1)).unwrap();
    assert_eq!(left_out, [NotShown { record: id(10), kind: Some(Kind::Pit), why }]);
    assert_eq!(NotShown::by_kind(&left_out), BTreeMap::from([(Some(Kind::Pit), 1)]));
    assert_eq!(store.fields().unwrap()[0].pits, 2, "it is there");
    let error = store.load_pit(id(10)).unwrap_err();
    assert!(matches!(error, StoreError::Unreadable { .. }), "{error:?}");
    let told = error.to_string();
    assert!(told.contains("pit.place of record") && told.contains("update the program"), "{told}");
}

#[test]
fn a_field_whose_name_cannot_be_read_is_shown_and_can_be_named_anew() {
    let (_folder, path) = ellmoor_store();
    set(&path, cell(1, "field.name"), NEWER);
    set(&path, cell(1, "field.outline"), NEWER);
    let mut store = open(&path);
    assert_eq!(store.fields().unwrap()[0].name, NAME_NOT_READABLE);
    assert_eq!(store.field_name(id(1)).unwrap().as_deref(), Some(NAME_NOT_READABLE));
    let mut notes: FieldNotes = store.load_notes(id(1)).unwrap();
    assert_eq!((notes.field.name.as_str(), notes.field.outline.len()), (NAME_NOT_READABLE, 0));
    assert_eq!(notes.pits, ellmoor().pits);
    assert_eq!(store.save_field(&notes.field, NOW_MS + 1).unwrap().changes, []);
    notes.field.name = "Short Acre".into();
    assert_eq!(store.save_field(&notes.field, NOW_MS + 2).unwrap().changes.len(), 1);
    assert_eq!(store.fields().unwrap()[0].name, "Short Acre");
    drop(store);
    assert_eq!(cells(&path)[&cell(1, "field.outline")], NEWER);
}

/// What was redacted is told apart from what is new: no update brings it back.
#[test]
fn a_redacted_value_is_told_as_such() {
    let (_folder, path) = ellmoor_store();
    set(&path, cell(15, "photo.sha256"), &[&[0xff_u8], [7; 32].as_slice()].concat());
    let left_out = open(&path).not_shown(id(1)).unwrap();
    let why = WhyNotShown::Redacted(Cell::PHOTO_HASH);
    assert_eq!(left_out, [NotShown { record: id(15), kind: Some(Kind::Photo), why }]);
}

/// A known kind where none is looked for is told as well, and what is deleted is not.
#[test]
fn a_record_in_a_new_place_is_told() {
    let (_folder, path) = ellmoor_store();
    // The roll test of a pit hangs on the field now, in the list of rolls.
    let hangs = [&[0x83, 0x50], id(1).as_bytes().as_slice(), &[5, 0]].concat();
    set(&path, cell(14, "parent"), &hangs);
    let mut store = open(&path);
    let told = [NotShown { record: id(14), kind: Some(Kind::Roll), why: WhyNotShown::NewPlace }];
    assert_eq!(store.not_shown(id(1)).unwrap(), told);
    assert_eq!(store.not_shown_anywhere().unwrap(), told);
    store.delete_record(id(14), NOW_MS + 1).unwrap();
    assert_eq!(store.not_shown_anywhere().unwrap(), []);
}
