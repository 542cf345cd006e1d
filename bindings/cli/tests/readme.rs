//! What the README shows is what happens. Its commands are typed by `tests/run`.

use crate::support;

use support::Place;

const README: &str = include_str!("../../../README.md");

/// The text of the first fenced block of a kind.
fn block(kind: &str) -> &'static str {
    let (_, after) = README.split_once(&format!("```{kind}\n")).expect("a block of this kind");
    after.split("```").next().expect("its end")
}

#[test]
fn the_notes_file_shown_is_sound() {
    let place = Place::new();
    let notes = place.file("shown.notes.json", block("json"));
    assert_eq!(place.field(&["read", &notes])["zones"]["headland"]["call"], "loosen");
}

#[test]
fn the_answer_shown_is_the_answer_given() {
    let place = Place::new();
    // A no-break space holds a number to its unit; a README is typed with plain ones.
    let told = place.good(&["read", &place.notes("mere_piece")]).replace('\u{a0}', " ");
    let shown: Vec<&str> = block("text").lines().filter(|line| line.trim() != "…").collect();
    assert!(shown.len() > 5);
    for line in shown {
        assert!(told.lines().any(|told| told == line), "{line}");
    }
}
