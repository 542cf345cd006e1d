//! Several records in one save: all or nothing, and one undo takes all of it back.

use crate::store_support;

use pitface_core::record::{ComesAway, Pit, PlaceKind};
use pitface_core::store::{Kind, StoreError};
use store_support::{NOW_MS, ellmoor, id, new_store, step};

#[test]
fn one_undo_takes_back_all_of_it() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    let (field, old) = (notes.field.id, notes.pits[0].id);
    store.save_notes(&notes, NOW_MS).unwrap();

    let new = Pit::new(id(70), PlaceKind::Open);
    let mut moved = notes.field.clone();
    moved.name = "Ellmoor, north end".to_owned();
    let saved = store.save_together(NOW_MS, |saving| {
        saving.pit(field, &new)?;
        saving.step(new.id, &step(71, 100, ComesAway::Crumbs))?;
        saving.field(&moved)?;
        saving.delete(old)
    });
    assert!(!saved.unwrap().changes.is_empty());
    let now = store.load_notes(field).unwrap();
    assert_eq!(now.field.name, moved.name);
    assert_eq!(now.pits.last().unwrap().walk.len(), 1, "a step in a pit made by the same save");
    assert!(now.pits.iter().all(|pit| pit.id != old));

    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(field).unwrap(), notes);
    store.check().unwrap();
}

#[test]
fn one_that_fails_leaves_nothing_of_the_others() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    let before = store.check().unwrap();
    let failed = store.save_together(NOW_MS, |saving| {
        saving.pit(notes.field.id, &Pit::new(id(70), PlaceKind::Open))?;
        saving.step(id(99), &step(71, 100, ComesAway::Crumbs))
    });
    assert!(matches!(failed, Err(StoreError::RecordNotFound { kind: "pit", .. })), "{failed:?}");
    assert_eq!(store.check().unwrap(), before);
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
}

#[test]
fn a_record_saved_twice_in_one_save_goes_back_to_what_it_was_before_both() {
    let (_folder, mut store) = new_store();
    let notes = ellmoor();
    let pit = notes.pits[0].id;
    store.save_notes(&notes, NOW_MS).unwrap();
    let first = &notes.pits[0].walk[0];
    store
        .save_together(NOW_MS, |saving| {
            for to_mm in [7, 8, 9] {
                let mut step = first.clone();
                step.to_mm = to_mm;
                saving.step(pit, &step)?;
            }
            Ok(())
        })
        .unwrap();
    assert_eq!(store.load_notes(notes.field.id).unwrap().pits[0].walk[0].to_mm, 9);
    store.undo(NOW_MS).unwrap().unwrap();
    assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
    store.check().unwrap();
}

#[test]
fn tells_whether_there_is_something_to_take_back_and_what_a_record_is() {
    let (_folder, mut store) = new_store();
    assert!(!store.can_undo().unwrap());
    let notes = ellmoor();
    store.save_notes(&notes, NOW_MS).unwrap();
    store.save_step(notes.pits[0].id, &step(50, 400, ComesAway::OneMass), NOW_MS).unwrap();
    for _ in 0..2 {
        assert!(store.can_undo().unwrap());
        store.undo(NOW_MS).unwrap().unwrap();
    }
    assert!(!store.can_undo().unwrap());
    assert!(store.undo(NOW_MS).unwrap().is_none());
    assert_eq!(store.kind_of(id(50)).unwrap(), Some(Kind::Step), "deleted, and still known");
    assert_eq!(store.kind_of(id(98)).unwrap(), None);
}
