//! Machines, passes, after-digs, parts and lines in the store: how their values are written, tap by tap, and what a
//! newer version may have put there.

use crate::store_support;

use pitface_core::record::{AfterDig, PartShape, Pass, RecordId, Smear};
use pitface_core::store::{Kind, Store};
use rusqlite::{Connection, params};
use std::path::Path;
use store_support::{DEVICE, NOW_MS, ellmoor, id, new_store, place};

fn value(path: &Path, record: RecordId, cell: u16) -> Vec<u8> {
    let find = "SELECT value FROM cells WHERE record = ?1 AND field = ?2";
    let connection = Connection::open(path).unwrap();
    connection.query_row(find, params![record.as_bytes(), cell], |row| row.get(0)).unwrap()
}

fn edits(store: &Store) -> usize {
    store.check().unwrap().edits
}

/// Bytes once written are read for ever; by hand from RFC 8949.
#[test]
fn values_are_written_in_deterministic_cbor() {
    let (_folder, path) = place();
    let notes = ellmoor();
    Store::create_or_open(&path, DEVICE).unwrap().save_notes(&notes, NOW_MS).unwrap();
    let [machine, bare] = [0, 1].map(|index| notes.machines[index].id);
    let (pass, dig) = (notes.passes[0].id, notes.passes[0].after_digs[0].id);
    let [ring, circle] = [0, 1].map(|index| notes.field.parts[index].id);
    let with = |head: &[u8], rest: &[u8]| [head, rest].concat();
    let longitude = with(&[0xfb], &(-4.245_f64).to_be_bytes());
    let cases: &[(RecordId, u16, Vec<u8>)] = &[
        (machine, 1, vec![0x08]),
        (pass, 1, vec![0x09]),
        (dig, 1, vec![0x0a]),
        (ring, 1, vec![0x0b]),
        (notes.field.lines[0].id, 1, vec![0x0c]),
        // [300, 60] and [280, null]
        (machine, 804, vec![0x82, 0x19, 0x01, 0x2c, 0x18, 0x3c]),
        (bare, 804, vec![0x82, 0x19, 0x01, 0x18, 0xf6]),
        // [200] and [null]
        (machine, 805, vec![0x81, 0x18, 0xc8]),
        (bare, 805, vec![0x81, 0xf6]),
        // [4.5, 6.0], each in the shortest float that is exact
        (machine, 807, vec![0x82, 0xf9, 0x44, 0x80, 0xf9, 0x46, 0x00]),
        // [132.0, "front_assist"]
        (machine, 809, with(&[0x82, 0xf9, 0x58, 0x20, 0x6c], b"front_assist")),
        // The machine by its 16 bytes
        (pass, 900, with(&[0x50], machine.as_bytes())),
        (pass, 902, with(&[0x6b], b"trial_strip")),
        (pass, 903, with(&[0x6a], b"2026-09-22")),
        (dig, 1003, with(&[0x50], notes.pits[0].id.as_bytes())),
        // [380, 340, 0, 330, 375]
        (dig, 1004, vec![0x85, 0x19, 0x01, 0x7c, 0x19, 0x01, 0x54, 0, 0x19, 0x01, 0x4a, 0x19, 0x01, 0x77]),
        // "none" is an answer
        (dig, 1011, with(&[0x64], b"none")),
        // ["circle", [-4.25, 54.5], 12.5]
        (circle, 1102, with(&[0x83, 0x66], b"circle\x82\xf9\xc4\x40\xf9\x52\xd0\xf9\x4a\x40")),
    ];
    for (record, cell, bytes) in cases {
        assert_eq!(value(&path, *record, *cell), *bytes, "cell {cell}");
    }
    let drawn = value(&path, ring, 1102);
    assert!(drawn.starts_with(&with(b"\x82\x64ring\x83\x82", &longitude)), "{drawn:x?}");
}

#[test]
fn a_tap_is_one_edit_and_new_records_go_to_the_end_of_their_lists() {
    let (_folder, mut store) = new_store();
    let mut notes = ellmoor();
    let (field, pass) = (notes.field.id, notes.passes[0].id);
    store.save_notes(&notes, NOW_MS).unwrap();
    let before = edits(&store);

    notes.passes[0].after_digs[1].firm_mm.push(360);
    store.save_after_dig(pass, &notes.passes[0].after_digs[1], NOW_MS).unwrap();
    notes.machines[1].wings = None;
    store.save_machine(field, &notes.machines[1], NOW_MS).unwrap();
    notes.field.lines[0].along.push([-4.23, 54.5]);
    store.save_line(field, &notes.field.lines[0], NOW_MS).unwrap();
    notes.field.parts[0].shape = PartShape::Ring(vec![[-4.245, 54.501]]);
    store.save_part(field, &notes.field.parts[0], NOW_MS).unwrap();
    notes.passes[0].speed_kmh = None;
    store.save_pass(field, &notes.passes[0], NOW_MS).unwrap();
    notes.field.parts[1].name = Some("by the road".into());
    store.save_field(&notes.field, NOW_MS).unwrap();
    assert_eq!(edits(&store), before + 6);

    // Ids below all others: the order is that of saving.
    let dig = AfterDig { smear: Some(Smear::None), ..AfterDig::new(id(2)) };
    store.save_after_dig(pass, &dig, NOW_MS).unwrap();
    notes.passes[0].after_digs.push(dig);
    let roll = pitface_core::record::Roll { id: id(3), depth_mm: 0, ..notes.passes[0].rolls[0].clone() };
    store.save_roll(pass, &roll, NOW_MS).unwrap();
    notes.passes[0].rolls.push(roll);
    let next = Pass { machine: Some(id(77)), ..Pass::new(id(4)) };
    store.save_pass(field, &next, NOW_MS).unwrap();
    notes.passes.push(next);
    assert_eq!(store.load_notes(field).unwrap(), notes);
}

#[test]
fn what_is_deleted_goes_with_what_hangs_on_it_and_comes_back_by_undo() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    for gone in [notes.passes[0].id, notes.machines[0].id, notes.field.parts[0].id, notes.field.lines[0].id] {
        store.delete_record(gone, NOW_MS).unwrap();
    }
    let left = store.load_notes(notes.field.id).unwrap();
    assert_eq!((left.passes.len(), left.machines.len()), (1, 1));
    assert_eq!((left.field.parts.len(), left.field.lines.len()), (1, 0));
    (0..4).for_each(|_| drop(store.undo(NOW_MS).unwrap().unwrap()));
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
}

#[test]
fn values_of_a_newer_version_read_as_not_looked_and_stay() {
    let (_folder, path) = place();
    let notes = ellmoor();
    Store::create_or_open(&path, DEVICE).unwrap().save_notes(&notes, NOW_MS).unwrap();
    let (machine, dig) = (notes.machines[0].id, notes.passes[0].after_digs[0].id);
    // Wings with a third number, a smear by a code nobody knows yet.
    let newer: [(RecordId, u16, &[u8]); 2] =
        [(machine, 804, b"\x83\x19\x01\x2c\x18\x3c\x05"), (dig, 1007, b"\x65glaze")];
    let connection = Connection::open(&path).unwrap();
    for (record, cell, bytes) in newer {
        let set = "UPDATE cells SET value = ?3 WHERE record = ?1 AND field = ?2";
        assert_eq!(connection.execute(set, params![record.as_bytes(), cell, bytes]).unwrap(), 1);
    }
    drop(connection);
    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    let mut read = store.load_notes(notes.field.id).unwrap();
    assert_eq!((read.machines[0].wings, read.passes[0].after_digs[0].smear), (None, None));
    read.machines[0].legs = 4;
    assert_eq!(store.save_notes(&read, NOW_MS).unwrap().changes.len(), 1);
    drop(store);
    for (record, cell, bytes) in newer {
        assert_eq!(value(&path, record, cell), bytes);
    }
}

#[test]
fn kinds_keep_their_numbers() {
    let kinds = [Kind::Machine, Kind::Pass, Kind::AfterDig, Kind::Part, Kind::BuriedLine];
    assert_eq!(kinds.map(|kind| kind as u32), [8, 9, 10, 11, 12]);
}
