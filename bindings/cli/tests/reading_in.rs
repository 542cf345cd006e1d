//! A read never takes away, whoever reads what; what happened can be seen, taken back and brought back.

use crate::support;

use serde_json::Value;
use support::walker::{STORE, Walker, dug_to};
use support::{ONE_PIT, Place};

/// The field of everybody, with pits dug to these depths.
fn file(depths: &[u32]) -> String {
    let pits = depths.iter().map(|mm| {
        format!(
            r#"{{"place": "open", "dug_to_mm": {mm}, "walk": [{{"to_mm": {mm}, "comes_away": "crumbs"}}]}}"#
        )
    });
    let pits: Vec<String> = pits.collect();
    format!(r#"{{"pitface": 1, "field": {{"name": "Home Field"}}, "pits": [{}]}}"#, pits.join(","))
}

fn read(place: &Place, name: &str) -> Value {
    place.json(&["read", name, "--store", STORE])
}

/// Depths of all pits of all fields of a store, as its tables have them.
fn depths(place: &Place) -> Vec<u32> {
    place.good(&["tables", "--store", STORE, "--out", "tables"]);
    let csv = std::fs::read_to_string(place.path("tables/pits.csv")).unwrap();
    let mut lines = csv.lines();
    let column = lines.next().unwrap().split(',').position(|name| name.ends_with("dug_to_mm")).unwrap();
    let mut depths: Vec<u32> =
        lines.map(|line| line.split(',').nth(column).unwrap().parse().unwrap()).collect();
    depths.sort_unstable();
    depths
}

fn fields(place: &Place) -> usize {
    place.json(&["tables", "--store", STORE, "--out", "tables"])["fields"].as_array().unwrap().len()
}

#[test]
fn walkers_with_files_of_one_name_keep_each_others_pits() {
    let (ann, ben) = (Walker::new("Ann"), Walker::new("Ben"));
    ann.notes(&file(&[410, 420]));
    ben.notes(&file(&[510]));
    let (of_ann, of_ben) = (ann.fingerprint(), ben.fingerprint());
    for (to, from, file) in
        [(&ben, &of_ann, ann.hand_over("a.pitb", &[])), (&ann, &of_ben, ben.hand_over("b.pitb", &[]))]
    {
        to.place.good(&["take-in", STORE, &file, "--accept", from]);
    }
    for walker in [&ann, &ben] {
        let again = read(&walker.place, "field.notes.json");
        assert_eq!(again["fields"][0]["read_in"]["same_name"].as_array().unwrap().len(), 1);
        assert!(walker.place.good(&["next", "field.notes.json"]).contains("Home Field"));
        assert_eq!(depths(&walker.place), [410, 420, 510]);
    }
    // They are one field, says Ben; Ann takes it in.
    let told = ben.place.good(&["join", STORE, "home field"]);
    assert!(told.starts_with("These are one field now: Home Field, with 3 pits."), "{told}");
    let file = ben.hand_over("c.pitb", &[]);
    ann.place.good(&["take-in", STORE, &file]);
    assert_eq!(fields(&ann.place), 1);
    for walker in [&ann, &ben] {
        assert_eq!(read(&walker.place, "field.notes.json")["fields"][0]["pits"].as_array().unwrap().len(), 3);
        assert_eq!(depths(&walker.place), [410, 420, 510]);
    }
    assert!(ben.place.good(&["undo", STORE]).starts_with("Taken back: "));
    assert_eq!(fields(&ben.place), 2);
}

#[test]
fn what_is_gone_from_a_file_is_listed_removed_at_its_word_and_brought_back() {
    let place = Place::new();
    place.file("a.notes.json", &file(&[410, 420, 430]));
    read(&place, "a.notes.json");
    place.file("a.notes.json", &file(&[420]));
    let told = place.good(&["read", "a.notes.json", "--store", STORE]);
    assert!(told.contains("The file said this earlier and no longer does. It stays:"), "{told}");
    let word = told.lines().find_map(|line| line.split_once("--remove-missing ")).unwrap().1;
    assert_eq!(depths(&place), [410, 420, 430]);
    place.good(&["read", "a.notes.json", "--store", STORE, "--remove-missing", word]);
    assert_eq!(depths(&place), [420]);
    let listed = place.json(&["bring-back", STORE]);
    assert_eq!(listed["deleted"].as_array().unwrap().len(), 2);
    let told = place.bad(&["bring-back", STORE, "3"]);
    assert!(told.contains("there is no 3"), "{told}");
    let told = place.good(&["bring-back", STORE, "2"]);
    assert!(told.contains(" is back.") && told.contains("One record is deleted"), "{told}");
    assert_eq!(depths(&place).len(), 2);
    // Two reads and what came back: three saves, the last of which is taken back.
    let saves = place.json(&["history", STORE]);
    assert_eq!(saves["saves"].as_array().unwrap().len(), 3);
    assert_eq!(saves["saves"][1]["deleted"]["pit"], 2);
    assert_eq!(saves["saves"][2]["made"], serde_json::json!({"field": 1, "pit": 3, "step": 3}));
    let told = place.good(&["history", STORE]);
    assert!(told.contains("Home Field: new one field, 3 pits and 3 steps"), "{told}");
    place.good(&["undo", STORE]);
    assert_eq!(depths(&place), [420]);
    assert_eq!(place.json(&["history", STORE, "--last", "1"])["saves"][0]["undid"], true);
    place.good(&["undo", STORE]);
    assert_eq!(depths(&place), [410, 420, 430]);
}

#[test]
fn files_of_two_farms_stay_two_fields() {
    let place = Place::new();
    for farm in ["north", "south"] {
        std::fs::create_dir(place.path(farm)).unwrap();
    }
    place.file("north/home.notes.json", &file(&[400]));
    place.file("south/home.notes.json", &file(&[500]));
    read(&place, "north/home.notes.json");
    let told = place.good(&["read", "south/home.notes.json", "--store", STORE]);
    assert!(told.contains("Another field is called Home Field too. They stay two"), "{told}");
    assert_eq!(depths(&place), [400, 500]);
    // From elsewhere it is still the same file.
    let mut command = place.command(&["read", "home.notes.json", "--store", "../notes.pitface"]);
    command.current_dir(place.path("north"));
    assert_eq!(support::Ran::of(&mut command).code, Some(0));
    assert_eq!(depths(&place), [400, 500]);
    let told = place.bad(&["join", STORE, "Home"]);
    assert!(told.contains("name the other field too"), "{told}");
    place.good(&["join", STORE, "Home Field"]);
    let told = place.good(&["join", STORE, "Home Field", "--apart"]);
    assert_eq!(told, "Taken apart: 2 fields again.\n");
}

#[test]
fn several_files_are_all_taken_in_or_none() {
    let place = Place::new();
    place.file("a.notes.json", ONE_PIT);
    read(&place, "a.notes.json");
    place.file("a.notes.json", &dug_to(500));
    // The second takes a pit that is of the first.
    let id = place.json(&["history", STORE]);
    assert_eq!(id["saves"].as_array().unwrap().len(), 1);
    let store =
        pitface_core::store::Store::open_existing(&place.path(STORE), pitface_core::store::DeviceId([9; 16]))
            .unwrap();
    let pit = store.load_notes(store.fields().unwrap()[0].id).unwrap().pits[0].id;
    drop(store);
    let taken = ONE_PIT
        .replace("Long Sedge", "Other")
        .replace(r#"{"place""#, &format!(r#"{{"id": "{pit}", "place""#));
    place.file("b.notes.json", &taken);
    let told = place.bad(&["read", "a.notes.json", "b.notes.json", "--store", STORE]);
    assert!(told.contains("b.notes.json: ") && told.contains("already in another record"), "{told}");
    assert_eq!(depths(&place), [450], "nothing of the first either");
}
