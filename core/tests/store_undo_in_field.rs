//! Undo and redo within a field: what they are named after, and that they leave other fields alone. Source of all: our own rules of undo.

use crate::store_support;

use pitface_core::record::{ComesAway, FieldNotes, Machine, PlaceKind};
use pitface_core::record::{Field, Pit, RecordId};
use pitface_core::store::{DeviceId, Did, NotesFile, Store};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use store_support::{DEVICE, NOW_MS, ellmoor, id, new_store, place, step};

fn english() -> Words {
    Words::new(Language::English, LengthUnit::Centimetres)
}

fn undo_named(store: &Store, field: RecordId) -> Option<String> {
    store.last_save_in(Some(field)).unwrap().map(|save| english().save_named(&save))
}

fn redo_named(store: &Store, field: RecordId) -> Option<String> {
    store.last_undone_in(Some(field)).unwrap().map(|save| english().save_named(&save))
}

/// A second field, with a pit.
fn other_field(store: &mut Store) -> (RecordId, RecordId) {
    let notes = FieldNotes::new(Field::new(id(700), "Mere Piece"), vec![Pit::new(id(701), PlaceKind::Open)]);
    store.save_notes(&notes, NOW_MS).unwrap();
    (notes.field.id, notes.pits[0].id)
}

#[test]
fn an_undo_names_where_and_what_it_takes_back() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    let (field, pit) = (notes.field.id, notes.pits[0].id);
    store.save_notes(&notes, NOW_MS).unwrap();
    assert_eq!(undo_named(&store, field).unwrap(), "Long Acre: new");

    store.save_step(pit, &step(50, 350, ComesAway::FlatPlates), NOW_MS).unwrap();
    assert_eq!(undo_named(&store, field).unwrap(), "pit 1, 30–35\u{a0}cm: flat plates");

    store.save_step(pit, &step(50, 350, ComesAway::OneMass), NOW_MS).unwrap();
    let save = store.last_save_in(Some(field)).unwrap().unwrap();
    assert_eq!(
        (save.did, save.of.pit, save.of.top_mm, save.of.bottom_mm),
        (Did::Changed, Some(1), Some(300), Some(350))
    );
    assert_eq!(save.wrote[0].to_json(), ["flat_plates".into(), serde_json::Value::from("one_mass")]);
    assert_eq!(english().undo(&save), "Take back: pit 1, 30–35\u{a0}cm: one mass");

    let mut layer = notes.pits[0].layers[0].clone();
    layer.signs.pores = None;
    store.save_layer(pit, &layer, NOW_MS).unwrap();
    assert_eq!(undo_named(&store, field).unwrap(), "pit 1, 24–30\u{a0}cm: pores: not looked");

    store.delete_record(notes.pits[1].id, NOW_MS).unwrap();
    assert_eq!(undo_named(&store, field).unwrap(), "pit 2: deleted");

    let machine = Machine { id: id(720), name: "Long legs".into(), ..notes.machines[0].clone() };
    store.save_machine(field, &machine, NOW_MS).unwrap();
    let german = Words::new(Language::German, LengthUnit::Centimetres);
    let save = store.last_save_in(Some(field)).unwrap().unwrap();
    assert_eq!(german.save_named_with_field(&save), "Long Acre, Maschine Long legs: neu");

    let mut whole = notes.field.clone();
    whole.remark = Some("x".repeat(900));
    store.save_field(&whole, NOW_MS).unwrap();
    assert_eq!(undo_named(&store, field).unwrap(), format!("Long Acre: remark: {}…", "x".repeat(40)));
}

#[test]
fn an_undo_in_a_field_leaves_what_was_saved_in_others() {
    let (_folder, path) = place();
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    let notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    let (field, pit) = (notes.field.id, notes.pits[0].id);
    let (other, other_pit) = other_field(&mut store);
    store.save_step(pit, &step(50, 350, ComesAway::FlatPlates), NOW_MS).unwrap();
    store.save_step(other_pit, &step(60, 100, ComesAway::Crumbs), NOW_MS).unwrap();
    let of_other = store.load_notes(other).unwrap();

    store.undo_in(Some(field), NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(field).unwrap(), notes);
    assert_eq!(store.load_notes(other).unwrap(), of_other, "the other field stays as it is");
    assert_eq!(undo_named(&store, other).unwrap(), "pit 1, 0–10\u{a0}cm: crumbs");

    // The store that is opened anew goes on there; what lies between in the other field is not passed over.
    drop(store);
    let mut store = Store::open_existing(&path, DEVICE).unwrap();
    assert_eq!(undo_named(&store, field).unwrap(), "Long Acre: new");
    store.undo_in(Some(other), NOW_MS).unwrap().unwrap();
    store.undo_in(Some(other), NOW_MS).unwrap().unwrap();
    assert_eq!(
        store.undo_in(Some(other), NOW_MS).unwrap(),
        None,
        "nothing of the other field is left, and no other is touched"
    );
    assert_eq!(store.load_notes(field).unwrap(), notes);
    // In all that is noted the same saves are taken back once.
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(store.undo(NOW_MS).unwrap(), None);
    store.check().unwrap();
}

#[test]
fn an_undo_can_be_taken_back_until_something_else_is_saved_in_the_field() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    let (field, pit) = (notes.field.id, notes.pits[0].id);
    let (_, other_pit) = other_field(&mut store);
    assert_eq!(redo_named(&store, field), None);
    store.save_step(pit, &step(50, 350, ComesAway::FlatPlates), NOW_MS).unwrap();
    let one = store.load_notes(field).unwrap();
    store.save_step(pit, &step(51, 400, ComesAway::Crumbs), NOW_MS).unwrap();
    let two = store.load_notes(field).unwrap();

    store.undo_in(Some(field), NOW_MS).unwrap().unwrap();
    assert_eq!(redo_named(&store, field).unwrap(), "pit 1, 35–40\u{a0}cm: crumbs");
    store.undo_in(Some(field), NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(field).unwrap(), notes);
    // What is saved in another field is no reason to forget it.
    store.save_step(other_pit, &step(60, 100, ComesAway::Crumbs), NOW_MS).unwrap();
    assert_eq!(redo_named(&store, field).unwrap(), "pit 1, 30–35\u{a0}cm: flat plates");
    store.redo_in(Some(field), NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(field).unwrap(), one);
    store.redo_in(Some(field), NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(field).unwrap(), two);
    assert_eq!(store.redo_in(Some(field), NOW_MS).unwrap(), None);

    // Back and forth as often as one likes.
    for _ in 0..3 {
        store.undo_in(Some(field), NOW_MS).unwrap().unwrap();
        assert_eq!(store.load_notes(field).unwrap(), one);
        store.redo_in(Some(field), NOW_MS).unwrap().unwrap();
        assert_eq!(store.load_notes(field).unwrap(), two);
    }
    store.undo_in(Some(field), NOW_MS).unwrap().unwrap();
    store.save_step(pit, &step(52, 380, ComesAway::OneMass), NOW_MS).unwrap();
    assert_eq!(redo_named(&store, field), None, "another save took its place");
    store.rebuild().unwrap();
    store.check().unwrap();
}

#[test]
fn a_deleted_pit_comes_back_with_its_layers_and_goes_again() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    let field = notes.field.id;
    store.delete_record(notes.pits[0].id, NOW_MS).unwrap();
    let without = store.load_notes(field).unwrap();
    store.undo_in(Some(field), NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(field).unwrap(), notes);
    store.redo_in(Some(field), NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(field).unwrap(), without);
    assert_eq!(undo_named(&store, field).unwrap(), "pit 1: deleted");
}

#[test]
fn what_another_device_went_on_from_is_passed_over_and_not_named() {
    let (_folder, path) = place();
    let notes = ellmoor();
    let (field, pit) = (notes.field.id, notes.pits[0].id);
    let mut store = Store::create_or_open(&path, DEVICE).unwrap();
    store.save_notes(&notes, NOW_MS).unwrap();
    store.save_step(pit, &step(11, 160, ComesAway::Crumbs), NOW_MS).unwrap();
    drop(store);
    let mut other = Store::create_or_open(&path, DeviceId([7; 16])).unwrap();
    other.save_step(pit, &step(11, 140, ComesAway::Crumbs), NOW_MS).unwrap();
    assert_eq!(undo_named(&other, field).unwrap(), "pit 1, 0–14\u{a0}cm: lower end of the step: 14\u{a0}cm");
    drop(other);
    let store = Store::open_existing(&path, DEVICE).unwrap();
    assert_eq!(undo_named(&store, field).unwrap(), "Long Acre: new");
}

#[test]
fn a_file_whose_reading_was_taken_back_and_stands_again_brings_nothing_twice() {
    let (_folder, mut store) = new_store();
    let text =
        r#"{"pitface": 1, "field": {"name": "Home Field"}, "pits": [{"place": "open", "dug_to_mm": 410}]}"#;
    let mut made = 800;
    let mut read = |store: &mut Store| {
        let mut new_id = || {
            made += 1;
            id(made)
        };
        let mut ids = std::collections::BTreeSet::new();
        let mut new_id = || {
            let id = new_id();
            ids.insert(id);
            id
        };
        let mut notes = pitface_core::record::notes::read(text, &mut new_id).unwrap().notes;
        let file = NotesFile { made: &ids, source: Some("home_field.notes.json"), remove: None };
        store.read_in(&mut notes, &file, NOW_MS).unwrap();
        (store.fields().unwrap().len(), store.fields().unwrap().first().map_or(0, |field| field.pits))
    };
    assert_eq!(read(&mut store), (1, 1));
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(store.fields().unwrap().len(), 0);
    store.redo_in(None, NOW_MS).unwrap().unwrap();
    assert_eq!(read(&mut store), (1, 1), "it is known again");
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(read(&mut store), (1, 1), "taken back, the file may bring it again");
}
