//! A store as what one works with: asked about, listed, written as notes files.

use crate::support;

use serde_json::{Value, json};
use std::fs;
use support::{ONE_PIT, Place, without_ids};

/// A store with three fields, two of one name.
fn kept() -> (Place, Vec<Value>) {
    let place = Place::new();
    let other = ONE_PIT.replace(
        "\"name\": \"Long Sedge\"",
        "\"id\": \"01890000-0000-7000-8000-000000000001\", \"name\": \"Long Sedge\"",
    );
    let third = other.replace("000000000001", "000000000002").replace("crumbs", "one_mass");
    let files = [
        place.notes("lapwing_ground"),
        place.file("b.notes.json", &other),
        place.file("c.notes.json", &third),
    ];
    for file in &files {
        place.good(&["read", file, "--store", "kept.pitface"]);
    }
    let fields = place.json(&["fields", "kept.pitface"])["fields"].as_array().unwrap().clone();
    (place, fields)
}

#[test]
fn every_question_about_a_file_can_be_asked_of_a_store() {
    let (place, fields) = kept();
    let id = fields[0]["field_id"].as_str().unwrap();
    let machine = "winged feet, 50 cm apart";
    let questions: [&[&str]; 5] =
        [&["read"], &["next"], &["where"], &["behind"], &["ground", "--machine", machine]];
    for question in questions {
        let of_file = place.json(&[question, &["lapwing_ground.notes.json"]].concat());
        for field in ["Lapwing Ground", id] {
            let of_store = place.json(&[question, &["--store", "kept.pitface", "--field", field]].concat());
            assert_eq!(of_store["fields"][0]["field_id"], id);
            assert_eq!(without_ids(of_store), without_ids(of_file.clone()), "{question:?}");
        }
    }
    let set =
        |from: &[&str]| place.json(&[&["set"], from, &["--machine", machine, "--zone", "gateway"]].concat());
    assert_eq!(
        set(&["--from", "lapwing_ground.notes.json"]),
        set(&["--store", "kept.pitface", "--field", "Lapwing Ground"])
    );
    place.good(&["draw", "--store", "kept.pitface", "--field", "Lapwing Ground", "--out", "drawn"]);
    assert!(place.path("drawn/Lapwing_Ground-pit-1.svg").exists());
    let said = place.json(&["tables", "--store", "kept.pitface", "--field", id, "--out", "made"]);
    assert_eq!(said["fields"].as_array().map(Vec::len), Some(1));
    let all = place.json(&["read", "--store", "kept.pitface"]);
    assert_eq!(all["fields"].as_array().map(Vec::len), Some(3));
}

#[test]
fn a_question_changes_nothing_in_the_store() {
    let (place, fields) = kept();
    let edits = || place.json(&["check", "kept.pitface"])["edits"].clone();
    let before = edits();
    place.good(&["read", "--store", "kept.pitface"]);
    place.good(&["next", "--store", "kept.pitface", "--field", "Lapwing Ground"]);
    assert_eq!(
        (edits(), place.json(&["fields", "kept.pitface"])["fields"].as_array()),
        (before, Some(&fields))
    );
}

#[test]
fn a_name_that_several_have_lists_their_ids() {
    let (place, _) = kept();
    let told = place.bad(&["next", "--store", "kept.pitface", "--field", "Long Sedge"]);
    assert!(
        told.contains("2 fields are called Long Sedge") && told.contains("000000000001 (1 pit)"),
        "{told}"
    );
    let told = place.bad(&["next", "--store", "kept.pitface"]);
    assert!(told.contains("several fields") && told.contains("Lapwing Ground, Long Sedge"), "{told}");
    let told = place.bad(&["next", "--store", "kept.pitface", "--field", "Short Sedge"]);
    assert!(told.contains("no field called Short Sedge"), "{told}");
    let told = place.bad(&["next", "lapwing_ground.notes.json", "--store", "kept.pitface"]);
    assert!(told.contains("cannot be used with"), "{told}");
    let told = place.bad(&["next", "lapwing_ground.notes.json", "--field", "Lapwing Ground"]);
    assert!(told.contains("cannot be used with"), "{told}");
    let told = place.bad(&["next", "--store", "nowhere.pitface"]);
    assert!(told.starts_with("nowhere.pitface: "), "{told}");
    assert!(!place.path("nowhere.pitface").exists());
}

#[test]
fn the_fields_of_a_store_are_listed() {
    let (place, fields) = kept();
    assert_eq!(fields[0]["field"], "Lapwing Ground");
    assert_eq!(
        fields[2],
        json!({"field": "Long Sedge", "field_id": "01890000-0000-7000-8000-000000000002", "pits": 1})
    );
    let told = place.good(&["fields", "kept.pitface"]);
    assert!(told.contains("Long Sedge: one pit\n  01890000-0000-7000-8000-000000000001\n"), "{told}");
}

#[test]
fn what_is_written_is_read_back_as_it_was() {
    let (place, fields) = kept();
    let said = place.json(&["write", "kept.pitface", "--out", "notes"]);
    let names = place.names("notes");
    assert_eq!(
        names,
        ["Lapwing_Ground.notes.json", "Long_Sedge-00000001.notes.json", "Long_Sedge-00000002.notes.json"]
    );
    assert_eq!(said["fields"][2]["written"], "notes/Long_Sedge-00000002.notes.json");
    let before = place.json(&["check", "kept.pitface"])["edits"].clone();
    for (name, field) in names.iter().zip(&fields) {
        let file = format!("notes/{name}");
        let mut read = place.field(&["read", &file, "--store", "kept.pitface"]);
        read.as_object_mut().unwrap().shift_remove("read_in").unwrap();
        assert_eq!(read["field_id"], field["field_id"]);
        assert_eq!(read, place.field(&["read", &file]), "the file has all ids");
    }
    assert_eq!(place.json(&["check", "kept.pitface"])["edits"], before, "nothing was new");
    // Written again over itself, but never over what somebody wrote into it.
    place.good(&["write", "kept.pitface", "--out", "notes"]);
    let changed = fs::read_to_string(place.path("notes/Lapwing_Ground.notes.json"))
        .unwrap()
        .replace("Lapwing", "Plover");
    fs::write(place.path("notes/Lapwing_Ground.notes.json"), &changed).unwrap();
    let told = place.bad(&["write", "kept.pitface", "--out", "notes"]);
    assert!(told.contains("a notes file stands where this file goes"), "{told}");
    assert_eq!(fs::read_to_string(place.path("notes/Lapwing_Ground.notes.json")).unwrap(), changed);
    let printed = place.good(&["write", "kept.pitface", "--field", "Lapwing Ground"]);
    assert_eq!(printed, changed.replace("Plover", "Lapwing"));
}

#[test]
fn a_new_file_is_sound_and_replaces_nothing() {
    let place = Place::new();
    place.good(&["new", "long_sedge.notes.json"]);
    let ran = place.run(&["--json", "read", "long_sedge.notes.json"]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "comments are not told of");
    assert_eq!(serde_json::from_str::<Value>(&ran.out).unwrap()["fields"][0]["field"], "long sedge");
    let told = place.bad(&["new", "long_sedge.notes.json"]);
    assert!(told.contains("there already"), "{told}");
    let printed = place.good(&["new", "--name", "Far Drove"]);
    assert!(printed.contains("\"name\": \"Far Drove\"") && printed.contains("\"// drains_mm\""), "{printed}");
}

#[test]
fn the_schema_is_that_of_the_notes_file() {
    let schema: Value = serde_json::from_str(&Place::new().good(&["schema"])).unwrap();
    assert_eq!(schema, serde_json::from_str::<Value>(pitface_core::record::notes::SCHEMA).unwrap());
}
