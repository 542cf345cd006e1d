//! Undo is another edit, and tells what it took back.

use crate::store_support;

use pitface_core::record::ComesAway;
use pitface_core::store::{Cell, DeviceId, Store};
use rusqlite::{Connection, params};
use store_support::{DEVICE, NOW_MS, ellmoor, is_missing, new_store, place, step};

#[test]
fn takes_back_a_tap_and_tells_which() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    let (field, pit, first) = (notes.field.id, notes.pits[0].id, &notes.pits[0].walk[0]);
    store.save_notes(&notes, NOW_MS).unwrap();
    let mut tapped = first.clone();
    tapped.comes_away = None;
    store.save_step(pit, &tapped, NOW_MS + 5).unwrap();

    let edits = store.check().unwrap().edits;
    let undone = store.undo(NOW_MS + 9).unwrap().unwrap();
    let told: Vec<_> = undone.changes.iter().map(|change| (change.record, change.cell.to_string())).collect();
    assert_eq!(told, [(first.id, "step.comes_away".to_owned())]);
    assert_eq!(undone.saved_ms, NOW_MS + 5);
    assert_eq!(store.load_notes(field).unwrap(), notes);
    assert_eq!(store.check().unwrap().edits, edits + 1, "an edit more, none less");
}

#[test]
fn a_record_made_by_the_save_is_deleted_and_can_be_saved_again() {
    let (_folder, mut store) = new_store();
    let mut notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    let new = step(50, 400, ComesAway::OneMass);
    store.save_step(notes.pits[0].id, &new, NOW_MS).unwrap();
    let undone = store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(undone.changes.len(), 1);
    assert_eq!((undone.changes[0].record, undone.changes[0].cell), (new.id, Cell::DELETED));
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
    store.save_step(notes.pits[0].id, &new, NOW_MS).unwrap();
    notes.pits[0].walk.push(new);
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
}

#[test]
fn goes_on_where_it_left_off_after_reopening() {
    let (_folder, path) = place();
    let notes = ellmoor();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    store.save_notes(&notes, NOW_MS).unwrap();
    for to_mm in [1, 2, 3] {
        store.save_step(notes.pits[0].id, &step(11, to_mm, ComesAway::Crumbs), NOW_MS).unwrap();
    }
    for left in [Some(2), Some(1), Some(150), None] {
        assert!(store.undo(NOW_MS).unwrap().is_some());
        drop(store);
        store = Store::open_existing(&path, DEVICE).unwrap();
        let now = store.load_notes(notes.field.id).ok().map(|now| now.pits[0].walk[0].to_mm);
        assert_eq!(now, left);
    }
    assert!(is_missing(&store.load_notes(notes.field.id)));
    assert_eq!(store.undo(NOW_MS).unwrap(), None);
}

#[test]
fn is_of_this_device_only() {
    let (_folder, path) = place();
    let notes = ellmoor();
    Store::create_or_open(&path, DEVICE).unwrap().save_notes(&notes, NOW_MS).unwrap();
    let mut other = Store::create_or_open(&path, DeviceId([7; 16])).unwrap();
    assert_eq!(other.undo(NOW_MS).unwrap(), None);
    other.save_step(notes.pits[0].id, &step(11, 140, ComesAway::OneMass), NOW_MS).unwrap();
    drop(other);

    // The first device's save is undone but for the cells that the second has gone on from.
    let mut first = Store::open_existing(&path, DEVICE).unwrap();
    first.save_step(notes.pits[0].id, &step(12, 310, ComesAway::OneMass), NOW_MS).unwrap();
    drop(first);
    let mut other = Store::open_existing(&path, DeviceId([7; 16])).unwrap();
    other.save_step(notes.pits[0].id, &step(12, 320, ComesAway::OneMass), NOW_MS).unwrap();
    drop(other);
    let mut first = Store::open_existing(&path, DEVICE).unwrap();
    let cells: Vec<_> =
        first.undo(NOW_MS).unwrap().unwrap().changes.iter().map(|change| change.cell.to_string()).collect();
    assert_eq!(cells, ["step.comes_away", "step.resistance", "unknown_keys"]);
    let now = first.load_notes(notes.field.id).unwrap().pits[0].walk[1].clone();
    assert_eq!((now.to_mm, now.comes_away), (320, Some(ComesAway::FlatPlates)));
    first.check().unwrap();
}

#[test]
fn leaves_a_value_that_another_device_wrote_at_the_same_time() {
    let (_folder, path) = place();
    let notes = ellmoor();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    store.save_notes(&notes, NOW_MS).unwrap();
    store.save_step(notes.pits[0].id, &step(11, 160, ComesAway::Crumbs), NOW_MS).unwrap();
    drop(store);
    let connection = Connection::open(&path).unwrap();
    // 155 mm, written knowing the 150 of the first save but not the 160.
    let (sequence, record) = (
        "SELECT min(sequence) FROM log WHERE field = 300 AND record = ?1",
        notes.pits[0].walk[0].id.as_bytes(),
    );
    let known: i64 = connection.query_row(sequence, [record], |row| row.get(0)).unwrap();
    let mut predecessors = Vec::new();
    ciborium::into_writer(&[(1, known)], &mut predecessors).unwrap();
    let clock = i64::try_from((NOW_MS + 60_000) << 16).unwrap();
    let device = "INSERT INTO devices (number, id, base, last, clock, own) VALUES (2, zeroblob(16), zeroblob(16), 1, ?1, 1)";
    connection.execute(device, [clock]).unwrap();
    connection
        .execute(
            "INSERT INTO log VALUES (2, 1, ?1, ?2, 300, ?3, x'189b', NULL)",
            params![clock, record, predecessors],
        )
        .unwrap();
    drop(connection);

    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    store.rebuild().unwrap();
    let depth = |store: &Store| store.load_notes(notes.field.id).unwrap().pits[0].walk[0].to_mm;
    assert_eq!(depth(&store), 155);
    store.undo(NOW_MS).unwrap().unwrap();
    // The undo came later by the hybrid clock, so it is shown; the other value is kept beside it.
    assert_eq!(depth(&store), 150);
    let sound = store.check().unwrap();
    store.save_step(notes.pits[0].id, &notes.pits[0].walk[0], NOW_MS).unwrap();
    assert_eq!(store.check().unwrap(), sound, "nothing to write: it is what is shown");
}
