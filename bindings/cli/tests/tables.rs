//! `pitface tables`: what it writes, and that it writes it whole or not at all.
#![allow(clippy::expect_used, reason = "a test may fail")]

mod support;

use support::{ONE_PIT, Place};

const FILES: [&str; 12] = [
    "after_digs.csv",
    "fields.csv",
    "fields.geojson",
    "fields.gpkg",
    "layers.csv",
    "lines.csv",
    "parts.csv",
    "passes.csv",
    "pits.csv",
    "rolls.csv",
    "steps.csv",
    "zones.csv",
];

#[test]
fn it_says_what_it_wrote_and_writes_nothing_else() {
    let place = Place::new();
    let notes = place.file("one.notes.json", ONE_PIT);
    let said = place.good(&["tables", &notes, "--out", "made"]);
    assert!(
        said.starts_with("Written for other programs: one field with one pit.\nOne pit has no position"),
        "{said}"
    );
    assert_eq!(place.names("made"), FILES);
    let german = place.good(&["tables", &notes, "--out", "made", "--language", "de"]);
    assert!(
        german.starts_with("Für andere Programme geschrieben: ein Schlag mit einer Grube.\n"),
        "{german}"
    );
    let said = place.json(&["tables", &notes, "--out", "made"]);
    assert_eq!(said["written"].as_array().map(Vec::len), Some(FILES.len()));
    let field = &said["fields"][0];
    assert_eq!((&field["pits"], &field["pits_without_place"]), (&1.into(), &1.into()));
    assert_eq!(place.names("made"), FILES);
}

#[test]
fn where_one_file_is_at_fault_nothing_is_written() {
    let place = Place::new();
    let good = place.file("good.notes.json", ONE_PIT);
    let bad = place.file("bad.notes.json", &ONE_PIT.replace("moist", "damp"));
    assert!(place.bad(&["tables", &good, &bad, "--out", "made"]).contains("damp"));
    assert!(!place.path("made").exists());
}

#[test]
fn a_folder_in_the_way_is_told_and_the_rest_stays_as_it_was() {
    let place = Place::new();
    let notes = place.file("one.notes.json", ONE_PIT);
    std::fs::create_dir_all(place.path("made/fields.gpkg")).expect("a folder");
    std::fs::write(place.path("made/pits.csv"), "mine").expect("a file");
    assert!(place.bad(&["tables", &notes, "--out", "made"]).contains("a folder stands"));
    assert_eq!(place.names("made"), ["fields.gpkg", "pits.csv"]);
    assert_eq!(std::fs::read_to_string(place.path("made/pits.csv")).expect("the file"), "mine");
}

#[test]
fn a_store_is_written_whole_without_files() {
    let place = Place::new();
    let both = [place.notes("mere_piece"), place.notes("lapwing_ground")];
    place.good(&["read", &both[0], &both[1], "--store", "kept.pitface"]);
    let said = place.json(&["tables", "--store", "kept.pitface", "--out", "made"]);
    assert_eq!(said["fields"].as_array().map(Vec::len), Some(2));
    assert!(place.bad(&["tables", "--store", "none.pitface", "--out", "other"]).contains("none.pitface"));
    assert!(!place.path("other").exists() && !place.path("none.pitface").exists());
    assert!(place.bad(&["tables", "--out", "other"]).contains("FIELD.notes.json"));
}
