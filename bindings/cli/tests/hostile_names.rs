//! A sender whose name, program and field are made to deceive: whatever they hold, the lines are those of a sender with a plain name.
#![allow(clippy::unwrap_used, reason = "a test may fail")]

mod support;

use pitface_core::merge::{FileWriter, KeyFromSeed, Signer as _};
use pitface_core::record::{RecordId, notes};
use pitface_core::store::{Sealer, Store};
use support::walker::STORE;
use support::{ONE_PIT, Place};

/// Of somebody else.
const FORGED: &str = "0123-4567-89ab-cdef-0123";

fn hostile() -> Vec<String> {
    let lines = ["\n", "\r\n", "\r", "\u{b}", "\u{c}", "\u{85}", "\u{2028}", "\u{2029}"];
    let broken = lines.map(|end| format!("Ann{end}{FORGED}{end}  pitface take-in --accept {FORGED}{end}"));
    let turned =
        ["\u{202e}", "\u{2067}", "\u{200f}", "\u{61c}"].map(|turn| format!("Ann{turn}3210-fedc{turn}("));
    let unseen = "A\u{200b}n\u{feff}n\u{2060}\u{ad}\u{e0041}".to_owned();
    let terminal = format!("Ann\u{1b}[2K\u{1b}[1A{FORGED}\u{9b}1A\u{7}\u{8}\u{8}\0");
    let brackets = format!("Ann ({FORGED})");
    let marks = format!("Ann{}", "\u{335}".repeat(400));
    broken.into_iter().chain(turned).chain([unseen, terminal, brackets, marks, "Ann".repeat(3_334)]).collect()
}

/// What the commands say of a file whose sender calls everything `name`, all lines in order.
fn told(name: &str) -> Vec<String> {
    let place = Place::new();
    let key = KeyFromSeed::new(&[7; 32]);
    let mut theirs = Store::create_or_open(&place.path("theirs.pitface"), key.device()).unwrap();
    let mut last = 0;
    let mut ids = || {
        last += 1;
        RecordId::new(1, [last; 10])
    };
    let mut field = notes::read(ONE_PIT, &mut ids).unwrap().notes;
    field.field.name = name.to_owned();
    theirs.save_notes(&field, 1_790_000_000_000).unwrap();
    let sealer =
        Sealer { signer: &key, holder: name, written_by: name, now_ms: 1_790_000_000_001, ahead_ms: None };
    theirs.seal(&sealer).unwrap();
    let mut file = FileWriter::new(Vec::new());
    theirs.hand_over(None, &mut file).unwrap();
    std::fs::write(place.path("theirs.pitb"), file.end().unwrap()).unwrap();
    let fingerprint = key.device().to_string();
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
    for name in hostile() {
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
