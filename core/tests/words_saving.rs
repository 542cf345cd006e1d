//! What is told of a save: in both languages, each kind once.

use pitface_core::error::Fault;
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, NotSaved, Words};

fn words(language: Language) -> Words {
    Words::new(language, LengthUnit::Centimetres)
}

#[test]
fn an_undo_of_nothing_says_so() {
    let (english, german) = (words(Language::English), words(Language::German));
    assert_eq!(english.undone(None), "There is nothing to take back.");
    assert_eq!(german.redone(None), "Es ist nichts zurückgenommen, was wieder stehen könnte.");
}

#[test]
fn a_failed_save_says_what_to_do() {
    assert_eq!(
        words(Language::English).not_saved(NotSaved::Full),
        "Not saved: the phone is full. Free some space and tap again."
    );
}

#[test]
fn the_first_faults_of_a_file_are_told_and_the_rest_counted() {
    let faults: Vec<_> =
        (1..=7).map(|pit| Fault::new(format!("pits[{pit}].place"), "is missing", "give it")).collect();
    let told = words(Language::English).not_taken_in(&faults);
    assert!(
        told.starts_with("Not taken in: there are faults in the file. pits[1].place: is missing; give it. ")
    );
    assert!(told.ends_with("pits[5].place: is missing; give it. And 2 more."), "{told}");
    assert!(words(Language::German).not_taken_in(&faults[..1]).ends_with("give it."));
}
