//! Names and positions are taken out of every copy.

use crate::support;

use support::ONE_PIT;
use support::walker::{STORE, Walker, pair};

/// Returns whether anything a walker has on the disk, or hands over, holds a text.
fn holds(walker: &Walker, text: &str) -> bool {
    let bundle = walker.hand_over("looked_through.pitb", &[]);
    let bundle = pitface_core::merge::read_file(&std::fs::read(&bundle).unwrap())
        .unwrap()
        .iter()
        .filter_map(|part| pitface_core::merge::Bundle::read(part.content).ok())
        .flat_map(|bundle| bundle.edits)
        .filter_map(|edit| match edit.content {
            pitface_core::merge::Content::Value(value) => Some(value),
            pitface_core::merge::Content::Redacted(_) => None,
        })
        .collect::<Vec<_>>()
        .concat();
    let store = std::fs::read(walker.place.path(STORE)).unwrap();
    [bundle, store].iter().any(|bytes| bytes.windows(text.len()).any(|window| window == text.as_bytes()))
}

#[test]
fn a_name_and_a_position_go_out_of_every_copy() {
    let (ann, ben) = pair();
    let named = |name: &str| {
        let pit = r#"{"place": "open", "at": [2.5160, 54.4960], "by": "Mrs Reed","#;
        ONE_PIT.replace("Long Sedge", name).replace(r#"{"place": "open","#, pit)
    };
    ann.notes(&named("Mrs Reed's garden"));
    let file = ann.hand_over("all.pitb", &[]);
    ben.place.good(&["take-in", STORE, &file]);
    assert!(holds(&ben, "Mrs Reed"));

    let told = ann.place.good(&["redact", STORE]);
    assert!(told.contains("is gone from here for ever") && told.contains("It does not reach"), "{told}");
    let listed = ann.place.json(&["redact", STORE]);
    let listed = listed["personal"].as_array().unwrap();
    let wanted = ["field.name", "pit.at", "pit.by"];
    let numbers: Vec<String> = (1..)
        .zip(listed)
        .filter(|(_, of)| {
            of["field"] == "Mrs Reed's garden" && wanted.contains(&of["cell"].as_str().unwrap())
        })
        .map(|(number, _): (usize, _)| number.to_string())
        .collect();
    assert_eq!(numbers.len(), 3, "{listed:?}");
    let numbers: Vec<&str> = numbers.iter().map(String::as_str).collect();
    // Ben may not: he did not write it.
    let told = ben.place.bad(&[&["redact", STORE, "--take-out"], &numbers[..1]].concat());
    assert!(told.contains("was written by others, who alone can take it out"), "{told}");
    let told = ann.place.good(&[&["redact", STORE, "--take-out"], &numbers[..]].concat());
    assert!(told.contains("Taken out: ") && told.contains("Hand over to the others"), "{told}");
    assert!(!holds(&ann, "Mrs Reed"));

    let file = ann.hand_over("after.pitb", &[]);
    ben.place.good(&["take-in", STORE, &file]);
    assert!(!holds(&ben, "Mrs Reed"));
    assert_eq!(ann.digest(), ben.digest());
    for walker in [&ann, &ben] {
        walker.place.good(&["check", STORE]);
        let pits: Vec<_> = walker.place.json(&["redact", STORE])["personal"].as_array().unwrap().clone();
        assert!(pits.iter().all(|of| of["cell"] != "pit.at" && of["cell"] != "pit.by"), "{pits:?}");
        // The field and its pit are still there.
        let fields = walker.place.good(&["fields", STORE]);
        assert!(fields.contains('?'), "{fields}");
    }
    let told = ann.place.bad(&["redact", STORE, "--take-out", "99"]);
    assert!(told.contains("there is no 99"), "{told}");
}
