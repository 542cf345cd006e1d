//! A notes file read into a store adds and changes; it never takes away what somebody noted.

use crate::merge_support;

use merge_support::Phone;
use pitface_core::merge::Signer as _;
use pitface_core::record::{FieldNotes, RecordId, notes};
use pitface_core::store::{NotesFile, ReadIn, Store, StoreError};
use std::collections::BTreeSet;

/// A pit dug to a depth, with two steps, as a file without ids has it.
fn pit(place: &str, dug_to_mm: u32) -> String {
    format!(
        r#"{{"place": "{place}", "dug_to_mm": {dug_to_mm}, "walk": [
            {{"to_mm": 200, "comes_away": "crumbs", "resistance": "slips_in"}},
            {{"to_mm": {dug_to_mm}, "comes_away": "flat_plates", "resistance": "hard_push"}}]}}"#
    )
}

fn file(name: &str, pits: &[String]) -> String {
    format!(
        r#"{{"pitface": 1, "field": {{"name": "{name}", "texture": "loam"}}, "pits": [{}]}}"#,
        pits.join(",")
    )
}

fn parsed(phone: &mut Phone, text: &str) -> (FieldNotes, BTreeSet<RecordId>) {
    let mut made = BTreeSet::new();
    let read = notes::read(text, &mut || {
        let id = phone.new_id();
        made.insert(id);
        id
    });
    (read.unwrap().notes, made)
}

fn try_read(phone: &mut Phone, source: &str, text: &str, remove: Option<&str>) -> Result<ReadIn, StoreError> {
    let (mut notes, made) = parsed(phone, text);
    let now = phone.now();
    phone.store.read_in(&mut notes, &NotesFile { source: Some(source), made: &made, remove }, now)
}

fn read(phone: &mut Phone, source: &str, text: &str) -> ReadIn {
    try_read(phone, source, text, None).unwrap()
}

fn depths(phone: &Phone, field: RecordId) -> Vec<u32> {
    phone.store.load_notes(field).unwrap().pits.iter().filter_map(|pit| pit.dug_to_mm).collect()
}

fn edits(phone: &Phone) -> usize {
    phone.store.check().unwrap().edits
}

/// Both take in what the other has.
fn exchange(one: &mut Phone, other: &mut Phone) {
    let (ours, theirs) = (one.hand_over(), other.hand_over());
    let now = one.now();
    one.store.take_in(&theirs, now).unwrap();
    let now = other.now();
    other.store.take_in(&ours, now).unwrap();
}

#[test]
fn an_unchanged_file_writes_nothing() {
    let mut ann = Phone::new(1);
    let text = file("Home Field", &[pit("open", 400), pit("headland", 450)]);
    let first = read(&mut ann, "a", &text);
    assert_eq!((first.added.len(), first.changed.len()), (7, 0));
    let before = edits(&ann);
    let again = read(&mut ann, "a", &text);
    assert!(again.is_nothing_new() && again.field == first.field, "{again:?}");
    assert_eq!(edits(&ann), before);
}

#[test]
fn a_colleagues_pits_stay_whoever_reads_his_own_file_again() {
    // Case (a): both fields called alike, no ids.
    let (mut ann, mut ben) = Phone::pair();
    let anns = file("Home Field", &[pit("open", 400)]);
    let bens = file("Home Field", &[pit("wheeling", 500), pit("headland", 450)]);
    let of_ann = read(&mut ann, "home.notes.json", &anns).field;
    let of_ben = read(&mut ben, "home.notes.json", &bens).field;
    exchange(&mut ann, &mut ben);
    for _ in 0..2 {
        assert!(read(&mut ann, "home.notes.json", &anns).is_nothing_new());
        assert!(read(&mut ben, "home.notes.json", &bens).is_nothing_new());
        exchange(&mut ann, &mut ben);
    }
    for phone in [&ann, &ben] {
        assert_eq!(depths(phone, of_ann), [400]);
        assert_eq!(depths(phone, of_ben), [500, 450]);
        assert!(phone.store.conflicts().unwrap().is_empty());
    }
    assert_eq!(read(&mut ann, "home.notes.json", &anns).same_name, [of_ben]);
}

#[test]
fn with_ids_everywhere_the_others_pits_stay_too() {
    // Case (b).
    let (mut ann, mut ben) = Phone::pair();
    let field = read(&mut ann, "a", &file("Home Field", &[pit("open", 400)])).field;
    let of_ann = notes::write(&ann.store.load_notes(field).unwrap());
    exchange(&mut ann, &mut ben);
    let (with_two, _) = parsed(&mut ben, &file("Home Field", &[pit("open", 400), pit("headland", 450)]));
    let mut of_ben = ben.store.load_notes(field).unwrap();
    of_ben.pits.push(with_two.pits[1].clone());
    read(&mut ben, "b", &notes::write(&of_ben));
    exchange(&mut ann, &mut ben);
    let came = read(&mut ann, "c", &of_ann);
    assert!(came.is_nothing_new() && came.missing.is_empty(), "it never brought that pit: {came:?}");
    assert_eq!(depths(&ann, field), [400, 450]);
}

#[test]
fn two_fields_of_one_name_stay_two_and_are_told() {
    // Case (c).
    let mut ann = Phone::new(1);
    let north = read(&mut ann, "north/home.notes.json", &file("Home Field", &[pit("open", 400)]));
    let south = read(&mut ann, "south/home.notes.json", &file("home field ", &[pit("open", 500)]));
    assert_ne!(north.field, south.field);
    assert_eq!(south.same_name, [north.field]);
    assert_eq!((depths(&ann, north.field), depths(&ann, south.field)), (vec![400], vec![500]));
}

#[test]
fn what_a_file_no_longer_says_stays_until_somebody_saw_it_listed() {
    // Case (d).
    let mut ann = Phone::new(1);
    let eight: Vec<String> = (1..=8).map(|pit_number| pit("open", 300 + 10 * pit_number)).collect();
    let field = read(&mut ann, "a", &file("Home Field", &eight)).field;
    let before = edits(&ann);
    let none = file("Home Field", &[]);
    let came = read(&mut ann, "a", &none);
    assert_eq!((came.missing.records.len(), depths(&ann, field).len(), edits(&ann)), (8, 8, before));
    let word = came.missing.word().unwrap();
    // Another list has another word.
    let less = file("Home Field", &eight[..1]);
    assert!(matches!(try_read(&mut ann, "a", &less, Some(&word)), Err(StoreError::InvalidValue(_))));
    assert_eq!(edits(&ann), before);
    let gone = try_read(&mut ann, "a", &none, Some(&word)).unwrap();
    assert!(gone.removed && depths(&ann, field).is_empty());
    assert_eq!(edits(&ann), before + 8, "one edit a pit");
    assert!(read(&mut ann, "a", &none).missing.is_empty());
    // Back with one undo, and the file brings nothing twice.
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    assert_eq!(depths(&ann, field).len(), 8);
    assert!(read(&mut ann, "a", &file("Home Field", &eight)).is_nothing_new());
}

#[test]
fn what_somebody_else_touched_is_not_removed() {
    let mut ann = Phone::new(1);
    let field = read(&mut ann, "a", &file("Home Field", &[pit("open", 400), pit("headland", 450)])).field;
    let touched = ann.store.load_notes(field).unwrap().pits[0].id;
    ann.step(touched, 600);
    let none = file("Home Field", &[]);
    let came = read(&mut ann, "a", &none);
    let removable: Vec<bool> = came.missing.records.iter().map(|missing| missing.removable).collect();
    assert_eq!(removable, [false, true]);
    try_read(&mut ann, "a", &none, came.missing.word().as_deref()).unwrap();
    assert_eq!(depths(&ann, field), [400]);
}

#[test]
fn a_machine_that_a_pass_of_somebody_else_names_is_not_removed() {
    let mut ann = Phone::new(1);
    let with = r#"{"pitface": 1, "field": {"name": "Home Field"}, "pits": [],
        "machines": [{"name": "winged feet", "legs": 3, "spacing_mm": 600, "foot_width_mm": 80}]}"#;
    let field = read(&mut ann, "a", with).field;
    let mut notes = ann.store.load_notes(field).unwrap();
    let (other, _) =
        parsed(&mut ann, &with.replace("]}", r#"], "passes": [{"machine": "winged feet", "tip_mm": 330}]}"#));
    let mut pass = other.passes[0].clone();
    pass.machine = Some(notes.machines[0].id);
    notes.passes.push(pass.clone());
    let now = ann.now();
    ann.store.save_pass(field, &pass, now).unwrap();
    let came = read(&mut ann, "a", r#"{"pitface": 1, "field": {"name": "Home Field"}, "pits": []}"#);
    assert_eq!(came.missing.records.iter().map(|missing| missing.removable).collect::<Vec<_>>(), [false]);
    assert_eq!(came.missing.word(), None);
}

#[test]
fn a_read_is_one_save_and_one_undo() {
    // Case (e).
    let mut ann = Phone::new(1);
    let (one, two) =
        (file("Home Field", &[pit("open", 400)]), file("Home Field", &[pit("open", 450), pit("other", 500)]));
    let field = read(&mut ann, "a", &one).field;
    let before = ann.store.load_notes(field).unwrap();
    read(&mut ann, "a", &two);
    assert_eq!(depths(&ann, field), [450, 500]);
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    assert_eq!(ann.store.load_notes(field).unwrap(), before);
    // What was taken back may be read again.
    assert_eq!(read(&mut ann, "a", &two).field, field);
    assert_eq!(depths(&ann, field), [450, 500]);
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    assert!(ann.store.fields().unwrap().is_empty());
    // All that was taken back comes back together, and goes again; the pit of the other two saves was taken back apart.
    let deleted = ann.store.deleted().unwrap();
    assert_eq!(deleted.len(), 1);
    let now = ann.now();
    ann.store.bring_back(deleted[0].record, now).unwrap();
    assert_eq!((depths(&ann, field), ann.store.deleted().unwrap().len()), (vec![400], 2));
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    assert_eq!(read(&mut ann, "a", &one).added.len(), 4);
    assert_eq!(ann.store.fields().unwrap().len(), 1);
}

#[test]
fn only_what_the_file_changed_is_written() {
    let (mut ann, mut ben) = Phone::pair();
    let text = file("Home Field", &[pit("open", 400)]);
    let field = read(&mut ann, "a", &text).field;
    exchange(&mut ann, &mut ben);
    // Ben changes the depth and the texture, Ann's file the texture alone.
    let mut notes = ben.store.load_notes(field).unwrap();
    notes.pits[0].dug_to_mm = Some(600);
    notes.field.texture = parsed(&mut ben, &text.replace("loam", "clay")).0.field.texture;
    let now = ben.now();
    ben.store.save_notes(&notes, now).unwrap();
    exchange(&mut ann, &mut ben);
    let theirs = notes.field.texture;
    let came = read(&mut ann, "a", &text.replace("loam", "sandy_loam"));
    let cells = |changes: &[pitface_core::store::Change]| -> Vec<String> {
        changes.iter().map(|change| change.cell.to_string()).collect()
    };
    assert_eq!((cells(&came.changed), cells(&came.versions)), (vec![], vec!["field.texture".to_owned()]));
    assert_eq!(depths(&ann, field), [600], "what the file did not change stays as Ben has it");
    let ours = ann.store.load_notes(field).unwrap().field.texture;
    assert_ne!(ours, theirs);
    let conflicts = ann.store.conflicts().unwrap();
    assert_eq!((conflicts.len(), conflicts[0].versions.len()), (1, 2), "both texture values are kept");
    exchange(&mut ann, &mut ben);
    assert_eq!(ann.store.digest().unwrap(), ben.store.digest().unwrap());
    assert_eq!(ben.store.conflicts().unwrap(), conflicts);
    // Taken back, Ben's value stands alone.
    let now = ann.now();
    ann.store.undo(now).unwrap().unwrap();
    assert_eq!(ann.store.load_notes(field).unwrap().field.texture, theirs);
    assert!(ann.store.conflicts().unwrap().is_empty());
    ann.store.check().unwrap();
}

#[test]
fn a_file_written_from_a_store_rolls_nothing_back() {
    let (mut ann, mut ben) = Phone::pair();
    let field = read(&mut ann, "a", &file("Home Field", &[pit("open", 400)])).field;
    exchange(&mut ann, &mut ben);
    let notes = ann.store.load_notes(field).unwrap();
    ann.store.wrote_file("written", &notes).unwrap();
    ann.store.wrote_file("written", &notes).unwrap();
    let mut changed = notes.clone();
    changed.pits[0].dug_to_mm = Some(600);
    let now = ben.now();
    ben.store.save_notes(&changed, now).unwrap();
    exchange(&mut ann, &mut ben);
    let written = notes::write(&notes);
    assert!(read(&mut ann, "written", &written).is_nothing_new());
    assert_eq!(depths(&ann, field), [600], "Ben's depth, though the file has the old one");
    let came = read(&mut ann, "written", &written.replace("\"texture\": \"loam\"", "\"texture\": \"clay\""));
    assert_eq!((came.changed.len(), depths(&ann, field)), (1, vec![600]));
    // Of a file that was never written or read here, nobody can tell.
    assert_eq!(read(&mut ann, "elsewhere", &written).changed.len(), 2);
}

#[test]
fn a_value_that_is_no_longer_said_stays_and_is_told() {
    let mut ann = Phone::new(1);
    let text = file("Home Field", &[pit("open", 400)]);
    let field = read(&mut ann, "a", &text).field;
    let less = text.replace(r#", "texture": "loam""#, "");
    let came = read(&mut ann, "a", &less);
    assert_eq!(came.missing.cells.len(), 1);
    assert!(ann.store.load_notes(field).unwrap().field.texture.is_some());
    try_read(&mut ann, "a", &less, came.missing.word().as_deref()).unwrap();
    assert_eq!(ann.store.load_notes(field).unwrap().field.texture, None);
    assert!(read(&mut ann, "a", &less).missing.is_empty());
    assert_eq!(read(&mut ann, "a", &text).changed.len(), 1, "said again, it is there again");
}

#[test]
fn pits_are_found_again_wherever_they_stand_in_the_file() {
    let mut ann = Phone::new(1);
    let pits = [pit("open", 400), pit("headland", 450), pit("other", 500)];
    let field = read(&mut ann, "a", &file("Home Field", &pits)).field;
    let ids = |ann: &Phone| -> Vec<RecordId> {
        ann.store.load_notes(field).unwrap().pits.iter().map(|pit| pit.id).collect()
    };
    let before = ids(&ann);
    // A new one first, the second changed in one step, the third out of the file.
    let changed = pits[1].replace("hard_push", "firm_push");
    let came = read(&mut ann, "a", &file("Home Field", &[pit("gateway", 350), pits[0].clone(), changed]));
    assert_eq!((came.added.len(), came.changed.len(), came.missing.records.len()), (3, 1, 1));
    let after = ids(&ann);
    assert_eq!((after[1..].to_vec(), after.len()), (before, 4));
}

#[test]
fn a_deleted_record_is_not_brought_back_by_a_file() {
    let mut ann = Phone::new(1);
    let text = file("Home Field", &[pit("open", 400), pit("headland", 450)]);
    let field = read(&mut ann, "a", &text).field;
    let gone = ann.store.load_notes(field).unwrap().pits[1].id;
    let now = ann.now();
    ann.store.delete_record(gone, now).unwrap();
    let came = read(&mut ann, "a", &text);
    assert!(came.is_nothing_new() && came.deleted.contains(&gone), "{came:?}");
    assert_eq!(depths(&ann, field), [400]);
    let now = ann.now();
    ann.store.delete_record(field, now).unwrap();
    assert!(matches!(try_read(&mut ann, "a", &text, None), Err(StoreError::FieldDeleted { .. })));
}

#[test]
fn a_record_of_another_field_is_not_moved() {
    let mut ann = Phone::new(1);
    let north = read(&mut ann, "a", &file("North", &[pit("open", 400)])).field;
    let south = read(&mut ann, "b", &file("South", &[])).field;
    let mut notes = ann.store.load_notes(south).unwrap();
    notes.pits = ann.store.load_notes(north).unwrap().pits;
    assert!(matches!(try_read(&mut ann, "b", &notes::write(&notes), None), Err(StoreError::InvalidValue(_))));
    assert_eq!(depths(&ann, north), [400]);
}

#[test]
fn what_would_come_is_told_without_a_trace() {
    let mut ann = Phone::new(1);
    let text = file("Home Field", &[pit("open", 400)]);
    read(&mut ann, "a", &text);
    let before = (edits(&ann), ann.store.digest().unwrap());
    let (mut notes, made) = parsed(&mut ann, &file("Home Field", &[pit("open", 410), pit("other", 500)]));
    let now = ann.now();
    let shown = NotesFile { source: Some("a"), made: &made, remove: None };
    let came = ann.store.would_read_in(&mut notes, &shown, now).unwrap();
    assert_eq!((came.added.len(), came.changed.len()), (3, 2));
    assert_eq!((edits(&ann), ann.store.digest().unwrap()), before);
}

#[test]
fn a_read_that_is_killed_anywhere_is_whole_or_absent() {
    let mut ann = Phone::in_memory(1);
    let depths: Vec<String> = (1..=20).map(|number| pit("open", 300 + 10 * number)).collect();
    let field = read(&mut ann, "a", &file("Home Field", &depths)).field;
    let (folder, path) = ann.closed();
    let device = merge_support::key(1).device();
    let mut store = Store::open_existing(&path, device).unwrap();
    let before = store.load_notes(field).unwrap();
    let mut reader = Phone::in_memory(2);
    let (mut notes, made) =
        parsed(&mut reader, &file("Home Field", &[pit("headland", 600), pit("open", 310)]));
    let word = {
        let shown = NotesFile { source: Some("a"), made: &made, remove: None };
        store.would_read_in(&mut notes.clone(), &shown, 1_770_000_000_000).unwrap().missing.word()
    };
    // One read that adds a pit and removes nineteen.
    let shown = NotesFile { source: Some("a"), made: &made, remove: word.as_deref() };
    store.read_in(&mut notes, &shown, 1_770_000_000_000).unwrap();
    let after = store.load_notes(field).unwrap();
    assert_eq!((before.pits.len(), after.pits.len()), (20, 2));
    let log = path.with_file_name("notes.pitface-wal");
    let (whole, written) = (std::fs::read(&path).unwrap(), std::fs::read(&log).unwrap());
    let mut seen = BTreeSet::new();
    for length in (0..=written.len()).step_by(997).chain([written.len()]) {
        let copy = folder.path().join("cut.pitface");
        std::fs::write(&copy, &whole).unwrap();
        std::fs::write(folder.path().join("cut.pitface-wal"), &written[..length]).unwrap();
        let mut cut = Store::open_existing(&copy, device).unwrap();
        let found = cut.load_notes(field).unwrap();
        assert!(found == before || found == after, "{length} of {}", written.len());
        seen.insert(found == after);
        // Read once more, it is there.
        let again = NotesFile { source: Some("a"), made: &made, remove: None };
        let came = cut.would_read_in(&mut notes.clone(), &again, 1_770_000_000_001).unwrap();
        assert_eq!(came.is_nothing_new(), found == after);
    }
    assert_eq!(seen.len(), 2, "some cuts came before its end, some after");
}
