//! A sender whose name, program and field are made to deceive: whatever they hold, the lines are those of a sender with a plain name.

use crate::hostile;
use crate::support;

use hostile::{FORGED, file_of, names};
use support::walker::STORE;
use support::{ONE_PIT, Place};

/// Returns what the commands say of a file whose sender calls everything `name`, all lines in order.
fn told(name: &str) -> Vec<String> {
    let place = Place::new();
    let fingerprint = file_of(name, ONE_PIT, place.folder.path(), "theirs.pitb");
    let mut lines = Vec::new();
    for arguments in [
        &["look", "theirs.pitb"][..],
        &["take-in", STORE, "theirs.pitb"],
        &["partners", STORE],
        &["take-in", STORE, "--accept", &fingerprint],
        &["fields", STORE],
        &["settle", STORE],
    ] {
        let said = place.good(arguments);
        if !matches!(arguments[0], "fields" | "settle") && !arguments.contains(&"--accept") {
            assert!(said.lines().any(|line| line.trim() == fingerprint), "{arguments:?} {name:?}: {said}");
        }
        lines.extend(said.lines().map(str::to_owned));
    }
    // Every run has a device of its own to take in.
    let partners = place.json(&["partners", STORE]);
    let own =
        partners["partners"].as_array().unwrap().iter().find(|partner| partner["this"] == true).unwrap();
    let own = own["device"].as_str().unwrap();
    lines.iter().map(|line| line.replace(own, "this device")).collect()
}

#[test]
fn whatever_a_sender_is_called_no_other_line_is_touched() {
    let plain = told("Ann");
    for name in names() {
        let told = told(&name);
        assert_eq!(told.len(), plain.len(), "{name:?}: {told:#?}");
        for (line, plain) in told.iter().zip(&plain) {
            // Only how much waits follows from how long they are.
            let is_size = plain.ends_with("kB.") && line.starts_with("Waiting here") && line.ends_with("kB.");
            assert!(line == plain || is_size || plain.contains("Ann"), "{name:?}: {line:?} for {plain:?}");
            assert!(
                line.chars().count() <= plain.chars().count() + 2 * 80,
                "{} letters for {plain:?}: {line:?}",
                line.chars().count()
            );
            assert!(!line.trim_start().starts_with(FORGED), "{name:?}: {line:?}");
            let is_seen = |sign: char| {
                !sign.is_control() && !"\u{200b}\u{200f}\u{202e}\u{2028}\u{2029}\u{2060}\u{2067}\u{61c}\u{feff}\u{ad}\u{e0041}".contains(sign)
            };
            assert!(line.chars().all(is_seen), "{name:?}: {line:?}");
        }
    }
}
