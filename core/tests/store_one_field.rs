//! Two records that are one field, because somebody said so.

use crate::merge_support;

use merge_support::Phone;
use pitface_core::record::{Pit, PlaceKind, RecordId};

/// A field with one pit, and the pit.
fn walked(phone: &mut Phone, name: &str) -> (RecordId, RecordId) {
    let field = phone.new_field(name);
    let pit = Pit::new(phone.new_id(), PlaceKind::Open);
    let now = phone.now();
    phone.store.save_pit(field, &pit, now).unwrap();
    (field, pit.id)
}

fn pits(phone: &Phone, field: RecordId) -> Vec<RecordId> {
    phone.store.load_notes(field).unwrap().pits.iter().map(|pit| pit.id).collect()
}

fn carry(from: &mut Phone, to: &mut Phone) {
    let (file, now) = (from.hand_over(), to.now());
    to.store.take_in(&file, now).unwrap();
}

#[test]
fn both_peoples_pits_are_one_field_and_undo_takes_it_apart() {
    let (mut ann, mut ben) = Phone::pair();
    let (of_ann, pit_of_ann) = walked(&mut ann, "Home Field");
    let (of_ben, pit_of_ben) = walked(&mut ben, "Home field");
    carry(&mut ben, &mut ann);
    assert_eq!(ann.store.fields().unwrap().len(), 2);
    let now = ann.now();
    ann.store.join(of_ben, of_ann, now).unwrap();
    let fields = ann.store.fields().unwrap();
    assert_eq!((fields.len(), fields[0].pits), (1, 2));
    let one = of_ann.min(of_ben);
    for field in [of_ann, of_ben] {
        assert_eq!(ann.store.load_notes(field).unwrap().field.id, one);
        assert_eq!(pits(&ann, field).len(), 2);
    }
    assert_eq!(ann.store.belongs(pit_of_ben).unwrap().field, Some(one));
    // A tap on a pit leaves it where it was noted, and nothing is copied from one record to the other.
    let notes = ann.store.load_notes(one).unwrap();
    let edits = ann.store.check().unwrap().edits;
    let now = ann.now();
    ann.store
        .save_together(now, |saving| {
            saving.field(&notes.field)?;
            notes.pits.iter().try_for_each(|pit| saving.pit(one, pit))
        })
        .unwrap();
    assert_eq!(ann.store.check().unwrap().edits, edits);
    carry(&mut ann, &mut ben);
    assert_eq!(pits(&ben, one), pits(&ann, one));
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    assert_eq!((pits(&ann, of_ann), pits(&ann, of_ben)), (vec![pit_of_ann], vec![pit_of_ben]));
}

#[test]
fn whoever_joins_what_all_come_to_the_same() {
    let mut phones = [Phone::new(1), Phone::new(2), Phone::new(3)];
    let [one, two, three] = &mut phones;
    Phone::trust_all(&mut [&mut *one, &mut *two, &mut *three]);
    let fields = [walked(one, "Home").0, walked(two, "Home").0, walked(three, "Home").0];
    for (from, to) in [(0, 1), (1, 2), (2, 0), (0, 1)] {
        between(&mut phones, from, to);
    }
    // Three joins without knowing of each other: in either direction, and of the one record with both others.
    for (phone, [a, b]) in phones.iter_mut().zip([[0, 1], [1, 0], [2, 0]]) {
        let now = phone.now();
        phone.store.join(fields[a], fields[b], now).unwrap();
    }
    for (from, to) in [(0, 1), (1, 2), (2, 0), (0, 1), (1, 2)] {
        between(&mut phones, from, to);
    }
    for phone in &phones {
        assert_eq!(phone.store.fields().unwrap().len(), 1);
        assert_eq!(pits(phone, fields[2]).len(), 3);
        assert!(phone.store.conflicts().unwrap().is_empty());
        assert_eq!(phone.store.digest().unwrap(), phones[0].store.digest().unwrap());
        phone.store.check().unwrap();
    }
    let now = phones[1].now();
    phones[1].store.part(fields[0], now).unwrap();
    assert_eq!(phones[1].store.fields().unwrap().len(), 3);
}

fn between(phones: &mut [Phone], from: usize, to: usize) {
    let file = phones[from].hand_over();
    let now = phones[to].now();
    phones[to].store.take_in(&file, now).unwrap();
}

#[test]
fn a_joined_field_is_deleted_as_a_whole_and_comes_back_as_one() {
    let mut ann = Phone::new(1);
    let (one, other) = (walked(&mut ann, "North").0, walked(&mut ann, "South").0);
    let now = ann.now();
    ann.store.join(one, other, now).unwrap();
    let now = ann.now();
    ann.store.delete_record(one, now).unwrap();
    assert!(ann.store.fields().unwrap().is_empty());
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    assert_eq!(pits(&ann, one).len(), 2);
}

#[test]
fn what_one_record_does_not_say_the_other_does() {
    let mut ann = Phone::new(1);
    let (one, other) = (walked(&mut ann, "North").0, walked(&mut ann, "South").0);
    let mut notes = ann.store.load_notes(other).unwrap();
    notes.field.drains_mm = Some(800);
    let now = ann.now();
    ann.store.save_field(&notes.field, now).unwrap();
    let now = ann.now();
    ann.store.join(one, other, now).unwrap();
    let mut joined = ann.store.load_notes(one).unwrap().field;
    assert_eq!((joined.name.as_str(), joined.drains_mm), ("North", Some(800)));
    joined.drains_mm = None;
    let now = ann.now();
    ann.store.save_field(&joined, now).unwrap();
    assert_eq!(ann.store.load_notes(one).unwrap().field.drains_mm, None);
}
