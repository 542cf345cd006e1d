//! Two and three phones hand over and take in: what each of the rules looks like in an example.

use crate::merge_support;

use merge_support::{Phone, name, pit, texts};
use pitface_core::merge::plan::Missing;
use pitface_core::merge::read_file;
use pitface_core::record::{Pit, PlaceKind};
use pitface_core::store::{Cell, NobodyElse, StoreError, Vouched};

#[test]
fn what_one_noted_the_other_has_after_taking_in() {
    let (mut ann, mut ben) = (Phone::new(1), Phone::new(2));
    let field = ann.new_field("Long Sedge");
    pit(&mut ann, field, 300);
    let file = ann.hand_over();
    let came = ben.take_in(&file);
    assert_eq!(came.edits, 0);
    assert_eq!(came.strangers.iter().collect::<Vec<_>>(), [&ann.id()], "unknown devices wait");
    assert!(ben.store.fields().unwrap().is_empty());
    let came = ben.accept(&ann);
    assert!(came.edits > 0 && came.strangers.is_empty());
    assert_eq!(ben.store.load_notes(field).unwrap(), ann.store.load_notes(field).unwrap());
    assert_eq!(ben.store.digest().unwrap(), ann.store.digest().unwrap());
    ben.store.check().unwrap();
    let again = ben.take_in(&file);
    assert_eq!((again.edits, again.known), (0, 1), "the same file again changes nothing");
}

#[test]
fn both_versions_stand_until_somebody_settles() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    ann.rename(field, "Long Sedge west");
    ben.rename(field, "Long Sedge east");
    ben.take_in(&ann.hand_over());
    ann.take_in(&ben.hand_over());
    for phone in [&ann, &ben] {
        let conflicts = phone.store.conflicts().unwrap();
        assert_eq!(conflicts.len(), 1);
        assert_eq!(conflicts[0].cell, Cell::FIELD_NAME);
        let values: Vec<_> = conflicts[0].versions.iter().map(|version| version.value.clone()).collect();
        assert_eq!(values, [name("Long Sedge east"), name("Long Sedge west")], "the later one first");
        assert_eq!(phone.store.load_notes(field).unwrap().field.name, "Long Sedge east");
    }
    let now = ann.now();
    ann.store.settle(field, Cell::FIELD_NAME, &name("Long Sedge west"), now).unwrap();
    ben.take_in(&ann.hand_over());
    for phone in [&ann, &ben] {
        assert_eq!(phone.store.conflicts().unwrap(), []);
        assert_eq!(phone.store.load_notes(field).unwrap().field.name, "Long Sedge west");
    }
}

#[test]
fn equal_values_are_no_conflict() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    ann.rename(field, "Short Sedge");
    ben.rename(field, "Short Sedge");
    ben.take_in(&ann.hand_over());
    assert_eq!(ben.store.conflicts().unwrap(), []);
}

#[test]
fn what_was_deleted_while_another_went_on_is_listed() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    let gone = pit(&mut ann, field, 300);
    let quiet = pit(&mut ann, field, 400);
    ben.take_in(&ann.hand_over());
    let now = ann.now();
    ann.store.delete_record(gone, now).unwrap();
    ann.store.delete_record(quiet, now).unwrap();
    ben.step(gone, 350);
    ann.take_in(&ben.hand_over());
    assert_eq!(ann.store.deleted_but_edited().unwrap().into_iter().collect::<Vec<_>>(), [gone]);
    ann.store.bring_back(gone, now).unwrap();
    assert!(ann.store.deleted_but_edited().unwrap().is_empty());
    assert_eq!(ann.store.load_notes(field).unwrap().pits.len(), 1);
}

#[test]
fn a_gap_waits_and_is_named() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    let first = ann.hand_over();
    ann.rename(field, "Sedge");
    let second = ann.hand_over_what(&first);
    let came = ben.take_in(&second);
    assert_eq!(came.edits, 0);
    let edits = ann.store.check().unwrap().edits as u64;
    let missing = Missing { device: ann.id(), first: 1, last: edits - 1 };
    assert_eq!(came.missing.into_iter().collect::<Vec<_>>(), [missing]);
    assert_eq!(ben.store.missing().unwrap().into_iter().collect::<Vec<_>>(), [missing]);
    assert_eq!(ben.take_in(&first).edits, edits);
    assert!(ben.store.missing().unwrap().is_empty());
    assert_eq!(ben.store.digest().unwrap(), ann.store.digest().unwrap());
}

#[test]
fn a_third_phone_carries_what_it_did_not_write() {
    let (mut ann, mut ben, mut cat) = (Phone::new(1), Phone::new(2), Phone::new(3));
    Phone::trust_all(&mut [&mut ann, &mut ben, &mut cat]);
    let field = ann.new_field("Long Sedge");
    let (pit, now) = (Pit::new(ann.new_id(), PlaceKind::Open), ann.now());
    ann.store.save_pit(field, &pit, now).unwrap();
    let pit = pit.id;
    ben.take_in(&ann.hand_over());
    ben.rename(field, "Sedge");
    cat.take_in(&ben.hand_over());
    assert_eq!(cat.store.digest().unwrap(), ben.store.digest().unwrap());
    assert!(ann.store.not_carried().unwrap() > 0, "Ann has not heard that anybody has it");
    let alone = ann.store.nobody_else().unwrap();
    assert_eq!((alone.fields, alone.pits, alone.passes), (1, 1, 0));
    assert!(alone.since_ms.is_some());
    ann.take_in(&cat.hand_over());
    assert_eq!(ann.store.not_carried().unwrap(), 0);
    assert_eq!(ann.store.nobody_else().unwrap(), NobodyElse::default());
    // A pit that is deleted here is news again, and stands in the list of what can come back.
    let now = ann.now();
    ann.store.delete_record(pit, now).unwrap();
    let alone = ann.store.nobody_else().unwrap();
    assert_eq!((alone.fields, alone.pits), (1, 1));
    let gone = ann.store.went_away().unwrap();
    assert_eq!((gone.len(), gone[0].of.record, gone[0].of.pit), (1, pit, Some(1)));
    assert_eq!(cat.store.went_away().unwrap(), []);
    ann.store.bring_back(pit, now).unwrap();
    assert_eq!(ann.store.went_away().unwrap(), []);
    ben.take_in(&ann.hand_over());
    cat.take_in(&ben.hand_over());
    assert_eq!(ann.store.digest().unwrap(), cat.store.digest().unwrap());
}

#[test]
fn a_copied_phone_loses_nothing_and_is_told() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    let mut copy = ann.copied();
    ann.rename(field, "by the first");
    copy.rename(field, "by the second");
    let came = ben.take_in(&ann.hand_over());
    assert!(came.copied.is_empty());
    let came = ben.take_in(&copy.hand_over());
    assert_eq!(came.copied.into_iter().collect::<Vec<_>>(), [ann.id()]);
    let conflict = &ben.store.conflicts().unwrap()[0];
    assert_eq!(conflict.versions.len(), 2);
    // The other way round, and through a third: the same.
    ann.take_in(&copy.hand_over());
    copy.take_in(&ben.hand_over());
    for phone in [&ann, &copy] {
        assert_eq!(phone.store.digest().unwrap(), ben.store.digest().unwrap());
        phone.store.check().unwrap();
    }
}

#[test]
fn a_restored_phone_begins_anew_and_vouches_for_what_the_old_one_left() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    ann.rename(field, "never handed over");
    let mut restored = ann.restored_with_key(9);
    restored.rename(field, "after the restore");
    ben.trust(9);
    ben.lost(1);
    let asks = ben.take_in(&restored.hand_over()).vouchings;
    assert_eq!(asks.len(), 1);
    assert_eq!((asks[0].signer, asks[0].device, asks[0].standing), (restored.id(), ann.id(), Vouched::Asks));
    assert_eq!(ben.store.load_notes(field).unwrap().field.name, "Long Sedge", "nobody has said yes");
    assert!(ben.store.missing().unwrap().is_empty(), "it is here, and waits");
    ben.believe_all();
    assert_eq!(ben.store.load_notes(field).unwrap().field.name, "after the restore");
    assert_eq!(ben.store.conflicts().unwrap(), []);
    assert_eq!(ben.store.digest().unwrap(), restored.store.digest().unwrap());
}

#[test]
fn damage_is_refused_and_changes_nothing() {
    let (mut ann, mut ben) = Phone::pair();
    ann.new_field("Long Sedge");
    let mut file = ann.hand_over();
    let middle = file.len() / 2;
    file[middle] ^= 1;
    let before = ben.bytes();
    let now = ben.now();
    assert!(matches!(ben.store.take_in(&file, now), Err(StoreError::Bundle(_))));
    assert_eq!(ben.bytes(), before);
}

#[test]
fn a_redacted_value_goes_wherever_it_was_carried() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Mrs Reed's garden");
    let old = ann.hand_over();
    ben.take_in(&old);
    ben.rename(field, "Long Sedge");
    ann.take_in(&ben.hand_over());
    assert_eq!(ann.redact(field, Cell::FIELD_NAME), 1);
    ann.store.check().unwrap();
    let to = ben.id();
    ben.take_in(&ann.hand_over_to(to));
    for phone in [&mut ann, &mut ben] {
        phone.store.check().unwrap();
        assert!(!texts(&phone.hand_over()).contains("Mrs Reed's garden"));
        let on_disk: Vec<u8> = phone.bytes().into_iter().flat_map(|(_, bytes)| bytes).collect();
        assert!(!on_disk.windows(8).any(|bytes| bytes == b"Mrs Reed"), "not even in what SQLite left behind");
        assert_eq!(phone.store.load_notes(field).unwrap().field.name, "Long Sedge");
    }
    assert_eq!(ann.store.digest().unwrap(), ben.store.digest().unwrap());
    // An old file does not bring it back.
    ben.take_in(&old);
    assert!(!texts(&ben.hand_over()).contains("Mrs Reed's garden"));
    ben.store.check().unwrap();
}

#[test]
fn nobody_redacts_what_another_device_wrote() {
    let (mut ann, mut ben, mut cat) = (Phone::new(1), Phone::new(2), Phone::new(3));
    Phone::trust_all(&mut [&mut ann, &mut ben, &mut cat]);
    let field = ann.new_field("Long Sedge");
    cat.take_in(&ann.hand_over());
    // Ben's key over a copy of Ann's store: to others he vouches for her.
    let mut other = ann.restored_with_key(2);
    assert_eq!(other.redact(field, Cell::FIELD_NAME), 1);
    cat.take_in(&other.hand_over());
    assert_eq!(cat.store.load_notes(field).unwrap().field.name, "Long Sedge");
    assert!(texts(&cat.hand_over()).contains("Long Sedge"));
    cat.store.check().unwrap();
}

/// It does not matter who comes first: what the device itself signed has the values.
#[test]
fn what_another_took_out_in_a_device_s_name_comes_back_with_its_own_word() {
    let (mut ann, mut cat) = (Phone::new(1), Phone::new(3));
    for phone in [&mut ann, &mut cat] {
        (1..=4).for_each(|seed| phone.trust(seed));
    }
    let field = ann.new_field("Long Sedge");
    let first = ann.hand_over();
    ann.rename(field, "Sedge");
    let both = ann.hand_over();
    let mut other = ann.restored_with_key(2);
    assert_eq!(other.redact(field, Cell::FIELD_NAME), 2);
    let vouched = other.hand_over();
    let together = [both.as_slice(), vouched.as_slice()].concat();
    let together_otherwise = [vouched.as_slice(), both.as_slice()].concat();
    cat.take_in(&both);
    let digest = cat.store.digest().unwrap();
    for (at, files) in [
        vec![&vouched, &both],
        vec![&vouched, &first, &both],
        vec![&first, &vouched, &both],
        vec![&together],
        vec![&together_otherwise],
        vec![&vouched, &first, &vouched, &both, &first],
    ]
    .into_iter()
    .enumerate()
    {
        let mut ben = Phone::new(4);
        (1..=3).for_each(|seed| ben.trust(seed));
        ben.lost(1);
        ben.credulous = true;
        for file in files {
            ben.take_in(file);
            ben.store.check().unwrap();
        }
        assert_eq!(ben.store.fields().unwrap()[0].name, "Sedge", "order {at}");
        assert_eq!(ben.store.digest().unwrap(), digest, "order {at}");
        let texts = texts(&ben.hand_over());
        assert!(texts.contains("Long Sedge") && texts.contains("Sedge"), "order {at}");
        ben.store.rebuild().unwrap();
        assert_eq!(ben.store.digest().unwrap(), digest, "order {at}");
        // And it goes on from there.
        let mut dan = Phone::new(5);
        (1..=4).for_each(|seed| dan.trust(seed));
        dan.lost(1);
        dan.credulous = true;
        dan.take_in(&ben.hand_over());
        dan.store.check().unwrap();
        assert_eq!(dan.store.digest().unwrap(), digest, "order {at}");
    }
}

/// The same where what it signed itself is but a beginning of what another vouches for.
#[test]
fn a_device_s_own_word_brings_back_as_much_as_it_says() {
    let mut ann = Phone::new(1);
    let field = ann.new_field("Long Sedge");
    let first = ann.copied().hand_over();
    ann.rename(field, "Sedge");
    let mut other = ann.restored_with_key(2);
    other.seal();
    assert_eq!(other.redact(field, Cell::FIELD_NAME), 2);
    let vouched = other.hand_over();
    let mut ben = Phone::new(4);
    (1..=2).for_each(|seed| ben.trust(seed));
    ben.lost(1);
    ben.credulous = true;
    for file in [&vouched, &first, &vouched] {
        ben.take_in(file);
        ben.store.check().unwrap();
    }
    let on_the_way = ben.hand_over();
    assert!(texts(&on_the_way).contains("Long Sedge") && !texts(&on_the_way).contains("Sedge"));
    let mut dan = Phone::new(5);
    (1..=4).for_each(|seed| dan.trust(seed));
    dan.lost(1);
    dan.credulous = true;
    dan.take_in(&on_the_way);
    dan.store.check().unwrap();
    assert_eq!(dan.store.digest().unwrap(), ben.store.digest().unwrap());
    let all = ann.hand_over();
    for phone in [&mut ben, &mut dan] {
        phone.take_in(&all);
        phone.store.check().unwrap();
        assert_eq!(phone.store.digest().unwrap(), ann.store.digest().unwrap());
        assert_eq!(phone.store.fields().unwrap()[0].name, "Sedge");
    }
}

/// What the device took out itself stays out, whatever old files of it turn up, and so it does where it was written.
#[test]
fn what_a_device_took_out_itself_does_not_come_back() {
    let (mut ann, mut ben) = Phone::pair();
    ben.trust(2);
    let field = ann.new_field("Mrs Reed's garden");
    let first = ann.hand_over();
    ann.rename(field, "Long Sedge");
    let mut restored = ann.restored_with_key(9);
    let old = ann.hand_over();
    ann.redact(field, Cell::FIELD_NAME);
    ben.trust(9);
    ben.take_in(&ann.hand_over());
    for file in [&old, &first] {
        ben.take_in(file);
        ben.store.check().unwrap();
    }
    assert!(!texts(&ben.hand_over()).contains("Long Sedge"));
    assert!(!texts(&ben.hand_over()).contains("Mrs Reed's garden"));
    // Where it was written, by an earlier device of the same store.
    assert_eq!(restored.redact(field, Cell::FIELD_NAME), 2);
    restored.trust(1);
    for file in [&old, &first] {
        restored.take_in(file);
        restored.store.check().unwrap();
    }
    assert!(!texts(&restored.hand_over()).contains("Mrs Reed's garden"));
}

/// More than one bundle may hold is handed over in several; what none could hold is not saved.
#[test]
fn what_is_too_large_for_one_bundle_goes_in_several() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    let long = |letter: &str| letter.repeat(17 << 20);
    for letter in ["a", "b"] {
        ann.rename(field, &long(letter));
    }
    let file = ann.hand_over();
    assert_eq!(read_file(&file).unwrap().len(), 2);
    ben.take_in(&file);
    assert!(ben.store.fields().unwrap()[0].name == long("b"));
    assert_eq!(ann.store.digest().unwrap(), ben.store.digest().unwrap());
    let mut notes = ann.store.load_notes(field).unwrap();
    notes.field.name = "d".repeat(33 << 20);
    let refused = ann.store.save_field(&notes.field, 1_770_000_000_000).unwrap_err();
    assert!(matches!(refused, StoreError::InvalidValue(_)), "{refused}");
    ann.store.check().unwrap();
}
