//! `pitface where`, `ground`, `behind` and `set --from`: the second half of a day, from notes files.

use crate::support;

use serde_json::{Value, json};
use support::{ONE_PIT, Place};

fn lapwing() -> (Place, String) {
    let place = Place::new();
    let notes = place.notes("lapwing_ground");
    (place, notes)
}

/// The same before a machine ran over it.
fn unworked() -> (Place, String) {
    let (place, notes) = lapwing();
    let text = std::fs::read_to_string(place.path(&notes)).unwrap();
    let mut field: Value = serde_json::from_str(&text).unwrap();
    field["passes"] = json!([]);
    let notes = place.file("unworked.notes.json", &field.to_string());
    (place, notes)
}

const WINGED: &str = "winged feet, 50 cm apart";

#[test]
fn the_next_pit_is_told_with_distance_and_bearing() {
    let (place, notes) = lapwing();
    let told = place.good(&["where", &notes]).replace('\u{a0}', " ");
    assert!(told.contains("Dig next in the wheelings") && told.contains("from pit 8"), "{told}");
    assert!(told.contains("3 of 3 pits harmed, so 46 % to 100 % of it with 80 % confidence"), "{told}");
    let here = place.good(&["where", &notes, "--at", "2.5160", "54.4960", "--language", "de"]);
    assert!(here.contains("von hier aus"), "{here}");
    let answer = place.field(&["where", &notes]);
    assert_eq!(answer["next"]["zone"], "wheelings");
    assert!(answer["next"]["distance_m"].as_f64().unwrap() > 10.0);
    // Clopper and Pearson 1934: three of three, 80 %: lower end 0.1 to the third root.
    let headland =
        answer["zones"].as_array().unwrap().iter().find(|zone| zone["zone"] == "headland").unwrap();
    assert!((headland["share"]["lo"].as_f64().unwrap() - 0.1_f64.cbrt()).abs() < 1e-6);
    assert_eq!(headland["settled"], "worth_loosening");
}

#[test]
fn share_and_errors_can_be_set() {
    let (place, notes) = lapwing();
    let settled = |more: &[&str]| -> Value {
        place.field(&[&["where", notes.as_str()], more].concat())["zones"][1]["settled"].clone()
    };
    assert_eq!(settled(&[]), "worth_loosening");
    let strict = ["--loosened-wrongly", "0.001", "--left-wrongly", "0.001", "--pit-costs", "0"];
    assert_eq!(settled(&strict), "dig_on");
    let told = place.bad(&["where", &notes, "--sound", "0.9"]);
    assert!(told.contains("sound_share below worth_share"), "{told}");
    let told = place.bad(&["where", &notes, "--at", "254", "54"]);
    assert!(told.contains("longitude"), "{told}");
}

#[test]
fn a_field_without_reference_asks_for_it_first() {
    let place = Place::new();
    let notes = place.file("one.notes.json", ONE_PIT);
    assert!(place.good(&["where", &notes]).contains("reference pit first"));
    assert_eq!(place.field(&["where", &notes])["next"], json!({ "dig": "reference", "why": "reference" }));
}

#[test]
fn working_only_the_harmed_ground_is_told_with_what_it_saves() {
    let (place, notes) = unworked();
    let told = place.good(&["ground", &notes, "--machine", WINGED, "--cost", "79.47"]).replace('\u{a0}', " ");
    for part in
        ["With winged feet", "Headland, 1.97 ha: Loosen", "Saved by leaving the rest alone", "not dug yet"]
    {
        assert!(told.contains(part), "{part} is missing in\n{told}");
    }
    let answer = place.field(&["ground", &notes, "--machine", WINGED, "--cost", "79.47"]);
    let ha = |part: &str| answer[part]["area_ha"].as_f64().unwrap();
    let sum = ha("harmed") + ha("saved") + answer["unknown_ha"].as_f64().unwrap();
    assert!((sum - answer["whole_ha"].as_f64().unwrap()).abs() < 1e-9);
    let cost = answer["harmed"]["cost"]["value"]["mid"].as_f64().unwrap();
    assert!((cost - 79.47 * ha("harmed")).abs() < 1e-6);
}

#[test]
fn without_a_machine_the_ground_says_what_is_missing() {
    let (place, notes) = unworked();
    let told = place.good(&["ground", &notes]);
    assert!(told.contains("no machine is given"), "{told}");
    let told = place.bad(&["ground", &notes, "--machine", "the blue one"]);
    assert!(told.contains("the blue one") && told.contains(WINGED), "{told}");
    let bare = place.file("one.notes.json", ONE_PIT);
    assert!(place.good(&["ground", &bare]).contains("Without an outline there are no hectares"));
}

#[test]
fn behind_the_machine_a_strip_that_failed_one_that_did_it_and_the_ground_a_season_on() {
    let (place, notes) = lapwing();
    let told = place.good(&["behind", &notes]);
    for part in [
        "loosened in places only",
        "spacing too wide",
        "set the legs closer",
        "keys out",
        "go on with the zone as set",
        "It has held: 100",
        "ours is 75",
        "75–80",
    ] {
        assert!(told.contains(part), "{part} is missing in\n{told}");
    }
    let answer = place.field(&["behind", &notes]);
    let verdicts: Vec<&Value> =
        answer["passes"].as_array().unwrap().iter().map(|pass| &pass["verdict"]).collect();
    assert_eq!(verdicts, ["partly", "done", "done"]);
    assert_eq!(answer["passes"][0]["digs"][0]["causes"][0]["cause"], "spacing_too_wide");
    assert_eq!(answer["passes"][2]["held"]["lasting"], "held");
}

#[test]
fn wheels_on_loosened_ground_are_warned_of() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let told = place.good(&["behind", &notes]);
    assert!(
        told.contains("too wet") && told.contains("8 days after") && told.contains("soilandwater"),
        "{told}"
    );
    let german = place.good(&["behind", &notes, "--language", "de"]);
    assert!(german.contains("zu nass") && german.contains("Probestreifen"), "{german}");
}

#[test]
fn a_field_without_passes_says_how_to_note_one() {
    let place = Place::new();
    let notes = place.file("one.notes.json", ONE_PIT);
    let told = place.bad(&["behind", &notes]);
    assert!(told.contains("no pass") && told.contains("after_digs"), "{told}");
}

#[test]
fn a_machine_is_set_from_a_notes_file() {
    let (place, notes) = unworked();
    let from = ["set", "--from", notes.as_str(), "--machine", WINGED];
    let answer = place.json(&[&from[..], &["--zone", "headland"]].concat());
    assert_eq!(answer["setting"]["tip_mm"], 330);
    // With wings nobody knows where critical depth ends.
    assert_eq!(answer["setting"]["critical"], json!({ "lo_mm": 400, "hi_mm": null }));
    // What is given beside the file goes before it.
    let answer =
        place.json(&[&from[..], &["--zone", "headland", "--tip", "40cm", "--wings", "25cm"]].concat());
    assert_eq!(answer["setting"]["tip_mm"], 400);
    let told = place.bad(&from);
    assert!(told.contains("--zone: headland, gateway"), "{told}");
    let told = place.bad(&["set", "--from", notes.as_str(), "--zone", "headland"]);
    assert!(told.contains("several machines") && told.contains("plain feet"), "{told}");
    let told = place.bad(&[&from[..], &["--zone", "open"]].concat());
    assert!(told.contains("no tip depth"), "{told}");
}

/// The headland was worked and proved done: every command says so.
#[test]
fn ground_that_was_worked_and_proved_done_is_no_longer_worked() {
    let (place, notes) = lapwing();
    let call = |answer: &Value| answer["zones"]["headland"]["call"].clone();
    assert_eq!(call(&place.field(&["read", &notes])), "leave_it");
    let ground = place.field(&["ground", &notes, "--machine", WINGED]);
    let headland =
        ground["zones"].as_array().unwrap().iter().find(|zone| zone["zone"] == "headland").unwrap();
    assert_eq!((&headland["call"], &headland["tip"]), (&json!("leave_it"), &Value::Null));
    let told = place.bad(&["set", "--from", &notes, "--machine", WINGED, "--zone", "headland"]);
    assert!(told.contains("no tip depth"), "{told}");
    let told = place.good(&["read", &notes]);
    assert!(told.contains("All of it was worked since"), "{told}");
}

#[test]
fn plan_and_holes_are_drawn_with_the_pits() {
    let (place, notes) = lapwing();
    place.good(&["draw", &notes, "--out", "drawn", "--theme", "print"]);
    let names = place.names("drawn");
    for name in
        ["lapwing_ground-plan.svg", "lapwing_ground-after-dig-1.svg", "lapwing_ground-after-dig-4.svg"]
    {
        assert!(names.iter().any(|its| its == name), "{name} is not among {names:?}");
    }
    let page = std::fs::read_to_string(place.path("drawn/lapwing_ground.html")).unwrap();
    assert!(page.contains("Plan of Lapwing Ground") && page.contains("Trial strip on the headland"));
}
