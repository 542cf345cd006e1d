//! What `--store` keeps, and what becomes of files when something goes wrong.

use crate::support;

use pitface_core::store::{DeviceId, Store};
use serde_json::{Map, Value};
use support::{ONE_PIT, Place, without_ids};

/// Edits and pits in a store.
fn counted(place: &Place, store: &str) -> (usize, Vec<(String, u32)>) {
    let store = Store::open_existing(&place.path(store), DeviceId([9; 16])).unwrap();
    let fields = store.fields().unwrap().into_iter().map(|field| (field.name, field.pits)).collect();
    (store.check().unwrap().edits, fields)
}

/// Returns what is read, without what the file brought.
fn read_only(mut answer: Value) -> Value {
    answer["fields"][0].as_object_mut().unwrap().remove("read_in").unwrap();
    answer
}

#[test]
fn reading_twice_keeps_it_once() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let first = place.json(&["read", &notes, "--store", "kept.pitface"]);
    let before = counted(&place, "kept.pitface");
    assert_eq!(before.1, [("Mere Piece".to_owned(), 6)]);
    let second = place.json(&["read", &notes, "--store", "kept.pitface"]);
    assert_eq!(second["fields"][0]["read_in"]["added"], Value::Object(Map::new()));
    assert_eq!(read_only(first.clone()), read_only(second));
    assert_eq!(counted(&place, "kept.pitface"), before);
    let passing = place.json(&["read", &notes]);
    assert_eq!(without_ids(read_only(first)), without_ids(passing), "the same as through a passing store");
}

#[test]
fn a_changed_file_edits_what_was_kept() {
    let place = Place::new();
    let notes = place.file("a.notes.json", ONE_PIT);
    place.good(&["read", &notes, "--store", "kept.pitface"]);
    let (before, _) = counted(&place, "kept.pitface");
    place.file("a.notes.json", &ONE_PIT.replace("\"crumbs\"", "\"one_mass\""));
    let edited = place.json(&["read", &notes, "--store", "kept.pitface"]);
    assert_eq!(counted(&place, "kept.pitface").0, before + 1, "one tap's worth");
    // A step taken out of the file stays, is told, and goes at the word of who saw it listed.
    let shorter = ONE_PIT.replace(r#"{"to_mm": 200, "comes_away": "crumbs", "resistance": "slips_in"},"#, "");
    place.file("a.notes.json", &shorter);
    let cut = place.json(&["read", &notes, "--store", "kept.pitface"]);
    assert_eq!(read_only(edited), read_only(cut.clone()));
    let word = cut["fields"][0]["read_in"]["missing"]["word"].as_str().unwrap();
    let told = place.bad(&["read", &notes, "--store", "kept.pitface", "--remove-missing", "123456"]);
    assert!(told.contains("does not stand for what is missing now"), "{told}");
    let gone = place.json(&["read", &notes, "--store", "kept.pitface", "--remove-missing", word]);
    assert_eq!(gone["fields"][0]["read_in"]["missing"]["removed"], true);
    assert_eq!(without_ids(read_only(gone)), without_ids(place.json(&["read", &notes])));
}

/// A sound notes file without ids that has machines, passes, parts and lines.
const WITH_PASSES: &str = r#"{"pitface": 1,
    "field": {"name": "Long Sedge",
        "parts": [{"zone": "gateway", "at": [2.5, 54.5], "radius_m": 12}, {"zone": "patch", "at": [2.501, 54.5], "radius_m": 9}],
        "lines": [{"kind": "drain", "along": [[2.5, 54.5], [2.506, 54.5]], "depth_mm": 800}]},
    "pits": [{"place": "open", "dug_to_mm": 450}, {"place": "reference", "dug_to_mm": 450}],
    "machines": [{"name": "Single", "legs": 1, "spacing_mm": 900, "foot_width_mm": 60},
        {"name": "Long legs", "legs": 3, "spacing_mm": 750, "foot_width_mm": 70}],
    "passes": [{"machine": "Long legs", "tip_mm": 380, "rolls": [{"depth_mm": 380, "roll": "crumbles"}],
        "after_digs": [{"before": 1, "slots_mm": [380]}, {"before": 2, "firm_mm": [380, 300, 375]}]}]}"#;

#[test]
fn reading_machines_and_passes_twice_keeps_them_once() {
    let place = Place::new();
    let notes = place.file("a.notes.json", WITH_PASSES);
    let kept = || {
        let store = Store::open_existing(&place.path("kept.pitface"), DeviceId([9; 16])).unwrap();
        let field = store.fields().unwrap()[0].id;
        (store.check().unwrap().edits, store.load_notes(field).unwrap())
    };
    place.good(&["read", &notes, "--store", "kept.pitface"]);
    let (edits, first) = kept();
    let (pass, machine) = (&first.passes[0], &first.machines[1]);
    assert_eq!((pass.machine, machine.name.as_str()), (Some(machine.id), "Long legs"));
    assert_eq!(pass.after_digs[1].before, Some(first.pits[1].id));
    assert_eq!((first.field.parts.len(), first.field.lines.len(), pass.rolls.len()), (2, 1, 1));
    place.good(&["read", &notes, "--store", "kept.pitface"]);
    assert_eq!(kept(), (edits, first.clone()), "nothing is new, and everything refers to what it did");

    // A machine put before the others: they stay who they are, and the pass stays with its own.
    let new = r#""machines": [{"name": "Grass blade", "legs": 4, "spacing_mm": 600, "foot_width_mm": 50},"#;
    place.file("a.notes.json", &WITH_PASSES.replace(r#""machines": ["#, new));
    place.good(&["read", &notes, "--store", "kept.pitface"]);
    let (_, second) = kept();
    assert_eq!((second.machines.len(), &second.machines[1..]), (3, &first.machines[..]));
    assert_eq!(second.passes, first.passes);

    // What the file no longer says stays.
    let (before, _) = WITH_PASSES.split_once(",\n    \"machines\"").unwrap();
    let fewer = format!("{before}}}");
    place.file("a.notes.json", &fewer);
    place.good(&["read", &notes, "--store", "kept.pitface"]);
    let (_, third) = kept();
    assert_eq!(third, second);
}

#[test]
fn several_fields_share_a_store() {
    let place = Place::new();
    let (one, other) = (place.notes("mere_piece"), place.notes("fox_heath"));
    place.good(&["read", &one, "--store", "kept.pitface"]);
    place.good(&["read", &other, "--store", "kept.pitface"]);
    let names: Vec<String> = counted(&place, "kept.pitface").1.into_iter().map(|(name, _)| name).collect();
    assert_eq!(names, ["Mere Piece", "Fox Heath"]);
}

#[test]
fn questions_about_files_write_nothing() {
    let place = Place::new();
    let notes = place.notes("lapwing_ground");
    let machine = ["--machine", "winged feet, 50 cm apart"];
    for question in [&["read"][..], &["next"], &["where"], &["behind"], &["ground", machine[0], machine[1]]] {
        // With nowhere to put a passing file, and no place for a key.
        let mut command = place.command(&[question, &[&notes]].concat());
        command.env("TMPDIR", place.path("nowhere")).env("XDG_CONFIG_HOME", place.path("nowhere"));
        let ran = support::Ran::of(&mut command);
        assert_eq!(ran.code, Some(0), "{question:?}: {}", ran.err);
    }
    assert_eq!(place.names("."), ["lapwing_ground.notes.json"]);
}

#[test]
fn the_demo_can_be_run_again() {
    let place = Place::new();
    place.good(&["demo", "--out", "estate"]);
    let (before, names) = (counted(&place, "estate/estate.pitface"), place.names("estate"));
    std::fs::write(place.path("estate/mine.txt"), "mine").unwrap();
    place.good(&["demo", "--out", "estate"]);
    assert_eq!(counted(&place, "estate/estate.pitface"), before);
    assert_eq!(place.names("estate").len(), names.len() + 1);
    assert_eq!(std::fs::read_to_string(place.path("estate/mine.txt")).unwrap(), "mine");
}

#[test]
fn a_foreign_store_is_refused_and_left_alone() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let foreign = place.file("letter.txt", "Dear neighbour, the gateway is wet again.");
    let told = place.bad(&["read", &notes, "--store", &foreign]);
    assert!(told.starts_with("letter.txt: ") && told.contains("no Pitface store"), "{told}");
    assert!(std::fs::read_to_string(place.path("letter.txt")).unwrap().starts_with("Dear"));
}

#[test]
fn one_bad_file_keeps_all_out_of_the_store() {
    let place = Place::new();
    let (good, bad) = (place.notes("mere_piece"), place.file("bad.notes.json", "[]"));
    place.bad(&["read", &good, &bad, "--store", "kept.pitface"]);
    assert!(!place.path("kept.pitface").exists());
}

#[test]
fn where_no_folder_can_be_nothing_is_written() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let file = place.file("out", "a file");
    for arguments in [&["draw", &notes, "--out", &file][..], &["demo", "--out", &file]] {
        let told = place.bad(arguments);
        assert!(told.starts_with("out: ") && told.contains("name a folder"), "{told}");
    }
    assert_eq!(std::fs::read_to_string(place.path("out")).unwrap(), "a file");
    assert_eq!(place.names("."), ["mere_piece.notes.json", "out"]);
}

#[test]
fn where_one_file_cannot_be_placed_none_is() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    std::fs::create_dir_all(place.path("out/mere_piece-pit-4.svg")).unwrap();
    let told = place.bad(&["draw", &notes, "--out", "out"]);
    assert!(told.contains("mere_piece-pit-4.svg: "), "{told}");
    assert_eq!(place.names("out"), ["mere_piece-pit-4.svg"]);
}

#[test]
fn a_bad_field_is_not_drawn() {
    let place = Place::new();
    let bad = place.file("bad.notes.json", "{}");
    place.bad(&["draw", &bad, "--out", "out"]);
    assert_eq!(place.names("."), ["bad.notes.json"]);
}

#[test]
fn a_spoilt_key_is_told() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    std::fs::create_dir_all(place.path("settings/pitface")).unwrap();
    place.file("settings/pitface/key", "nobody");
    let told = place.bad(&["read", &notes, "--store", "kept.pitface"]);
    assert!(told.contains("key: ") && told.contains("delete the file"), "{told}");
    assert!(!place.path("kept.pitface").exists());
}
