//! Bad input: exit code 2, a line a fault with file, place, what is wrong and what to do, and nothing else.

mod support;

use serde_json::Value;
use support::{ONE_PIT, Place};

#[test]
fn every_fault_of_every_file_is_told_on_its_own_line() {
    let place = Place::new();
    let spoilt = ONE_PIT.replace("\"crumbs\"", "\"dust\"").replace("\"depth_mm\": 0", "\"depth_mm\": -5");
    let (one, other) = (place.file("one.notes.json", &spoilt), place.file("other.notes.json", "{"));
    let told = place.bad(&["read", &one, &other]);
    let lines: Vec<&str> = told.lines().collect();
    assert_eq!(lines.len(), 3, "{told}");
    assert!(
        lines.iter().any(|line| line.starts_with("one.notes.json: pits[0].walk[0].comes_away: ")),
        "{told}"
    );
    assert!(
        lines.iter().any(|line| line.starts_with("one.notes.json: pits[0].rolls[0].depth_mm: ")),
        "{told}"
    );
    assert!(lines.iter().any(|line| line.starts_with("other.notes.json: ")), "{told}");
    assert!(lines.iter().all(|line| line.contains("; ")), "each says what to do:\n{told}");
}

#[test]
fn faults_come_as_json_too() {
    let place = Place::new();
    let notes = place.file("one.notes.json", &ONE_PIT.replace("\"crumbs\"", "\"dust\""));
    let ran = place.run(&["read", &notes, "--json"]);
    assert_eq!(ran.code, Some(2));
    let told: Value = serde_json::from_str(&ran.out).unwrap();
    let error = &told["errors"][0];
    assert_eq!(error["file"], "one.notes.json");
    assert_eq!(error["place"], "pits[0].walk[0].comes_away");
    assert!(error["wrong"].as_str().is_some_and(|wrong| wrong.contains("dust")));
    assert!(error["todo"].as_str().is_some_and(|todo| todo.contains("crumbs")));
    assert!(ran.err.starts_with("one.notes.json: "));
}

#[test]
fn what_is_no_notes_file_is_refused_by_what_it_is() {
    let place = Place::new();
    std::fs::create_dir(place.path("folder")).unwrap();
    std::fs::write(place.path("latin.notes.json"), [0xff, 0xfe, b'{']).unwrap();
    let other = place.file("other.notes.json", r#"{"type": "FeatureCollection"}"#);
    assert!(place.bad(&["read", "nowhere.notes.json"]).starts_with("nowhere.notes.json: cannot be read"));
    assert!(place.bad(&["read", "folder"]).starts_with("folder: cannot be read"));
    assert!(place.bad(&["read", "latin.notes.json"]).contains("UTF-8"));
    assert!(place.bad(&["read", &other]).contains("not a notes file"));
}

#[test]
fn bad_arguments_are_one_line() {
    let place = Place::new();
    let cases: &[(&[&str], &str)] = &[
        (&["read"], "FIELD.notes.json"),
        (&["plough"], "plough"),
        (&["read", "a", "--units", "furlong"], "furlong"),
        (&["read", "a", "--language", "fr"], "fr"),
        (&["roll", "--surface", "mud", "--at-depth", "thread"], "mud"),
        (&["roll", "--surface", "thread"], "--at-depth"),
        (&["texture"], "--sand"),
        (&["texture", "--sand", "40"], "--silt"),
        (&["texture", "--sand", "40", "--silt", "40", "--clay", "40"], "100"),
        (&["texture", "--sand", "40", "--silt", "40", "--clay", "20", "--feel", "ball"], "--feel"),
        (&["texture", "--feel", "ribbon"], "--ribbon-mm"),
        (&["class", "penetration_usda"], "VALUE"),
        (&["class", "no_scheme", "3"], "penetration_usda"),
        (&["class", "penetration_usda", "-1"], "-1"),
        (&["class", "penetration_usda", "NaN"], "NaN"),
        (&["tip"], "BOTTOM"),
        (&["tip", "28"], "28cm"),
        (&["tip", "500cm"], "3 m"),
        (&["tip", "280", "--clear", "80"], "0.8"),
        (&["tip", "280", "--clear", "NaN"], "0.8"),
        (&["draw", "a"], "--out"),
    ];
    for (arguments, names) in cases {
        let told = place.bad(arguments);
        assert_eq!(told.lines().count(), 1, "{arguments:?}: {told}");
        assert!(told.starts_with("arguments: ") && told.contains("; "), "{arguments:?}: {told}");
        assert!(told.contains(names), "{arguments:?}: {told}");
    }
}

#[test]
fn help_and_version_are_no_fault() {
    let place = Place::new();
    for arguments in [&["help"][..], &["--help"], &["--version"], &["read", "--help"]] {
        place.good(arguments);
    }
}
