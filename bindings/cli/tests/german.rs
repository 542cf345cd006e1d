//! Nothing in a German answer is left over from the English one.

use crate::support;

use support::Place;

/// Lines that both answers have, apart from names and numbers.
fn left_over(english: &str, german: &str) -> Vec<String> {
    let lines: Vec<&str> = english.lines().map(str::trim).collect();
    let is_sentence = |line: &&str| {
        line.split_whitespace().filter(|word| word.chars().all(char::is_alphabetic)).count() > 2
    };
    german
        .lines()
        .map(str::trim)
        .filter(is_sentence)
        .filter(|line| lines.contains(line))
        .map(str::to_owned)
        .collect()
}

const FRACTIONS: [&str; 6] = ["--sand", "40", "--silt", "42", "--clay", "18"];

#[test]
fn no_english_sentence_is_left_in_a_german_answer() {
    let place = Place::new();
    let notes = [place.notes("mere_piece"), place.notes("withy_bottom"), place.notes("far_drove")];
    let notes: Vec<&str> = notes.iter().map(String::as_str).collect();
    let commands: [Vec<&str>; 9] = [
        [&["read"], &notes[..]].concat(),
        vec!["next", notes[0]],
        vec!["tip", "280", "--drains", "35cm", "--reach", "30cm"],
        vec!["roll", "--surface", "crumbles", "--at-depth", "thread"],
        [&["sample", "--ring", "50", "51", "--wet", "188", "--dry", "155"], &FRACTIONS[..]].concat(),
        vec!["sample", "--volume", "250", "--dry", "412.5", "--stones", "132.5", "--cone", "300psi"],
        vec!["sample", "--cone", "3MPa", "--moisture", "moist", "--subsoil", "sand"],
        vec!["texture", "--sand", "40", "--silt", "42", "--clay", "18", "--scheme", "uk"],
        vec!["texture", "--feel", "ribbon", "--ribbon-mm", "30", "--grit", "neither"],
    ];
    for command in commands {
        let english = place.good(&command);
        let german = place.good(&[&command[..], &["--language", "de"]].concat());
        assert_ne!(english, german);
        assert_eq!(left_over(&english, &german), Vec::<String>::new(), "{command:?}");
        let words = ["the", "and", "with", "reads", "soil", "is", "of"];
        let english_word =
            german.split(|letter: char| !letter.is_alphabetic()).find(|word| words.contains(word));
        assert_eq!(english_word, None, "{german}");
        assert!(!german.contains('{'), "{german}");
    }
}

#[test]
fn a_german_page_says_so() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    place.good(&["draw", &notes, "--out", "out", "--language", "de"]);
    let page = std::fs::read_to_string(place.path("out/mere_piece.html")).unwrap();
    assert!(page.contains("<html lang=\"de\">") && page.contains("Vorgewende"));
}
