//! The Fluent files: sound, complete in both languages, nothing in them unused, nothing said that we do not say.

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use pitface_core::advice::after_dig::PassClue;
use pitface_core::reading::Clue;
use pitface_core::words::{LISTS, Language};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// One text: its words without what is filled in, and the names of what is filled in.
#[derive(Default)]
struct Text {
    words: String,
    variables: BTreeSet<String>,
}

impl Text {
    fn of(pattern: &Pattern<&str>) -> Self {
        let mut text = Self::default();
        text.add(pattern);
        text
    }

    fn add(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => self.words.push_str(value),
                PatternElement::Placeable { expression } => self.add_expression(expression),
            }
        }
    }

    fn add_expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.add_inline(inline),
            Expression::Select { selector, variants } => {
                self.add_inline(selector);
                for variant in variants {
                    self.add(&variant.value);
                }
            }
        }
    }

    fn add_inline(&mut self, inline: &InlineExpression<&str>) {
        match inline {
            InlineExpression::VariableReference { id } => {
                self.variables.insert(id.name.to_owned());
            }
            InlineExpression::Placeable { expression } => self.add_expression(expression),
            InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => {}
            other => panic!("no references or functions in our files: {other:?}"),
        }
    }
}

/// Every text of a language by its id, `message` or `message.attribute`.
fn texts(language: Language) -> BTreeMap<String, Text> {
    let mut texts = BTreeMap::new();
    let mut add = |id: String, pattern: &Pattern<&str>| {
        assert!(texts.insert(id.clone(), Text::of(pattern)).is_none(), "{language:?} says {id} twice");
    };
    for (name, file) in language.files() {
        let file = fluent_syntax::parser::parse(*file)
            .unwrap_or_else(|(_, faults)| panic!("{language:?} {name}.ftl: {faults:?}"));
        for entry in &file.body {
            match entry {
                Entry::Message(message) => {
                    let id = message.id.name;
                    let Some(value) = &message.value else { panic!("{language:?} {id} is empty") };
                    add(id.to_owned(), value);
                    for attribute in &message.attributes {
                        add(format!("{id}.{}", attribute.id.name), &attribute.value);
                    }
                }
                Entry::Comment(_) | Entry::GroupComment(_) | Entry::ResourceComment(_) => {}
                Entry::Term(_) | Entry::Junk { .. } => panic!("{language:?} {name}.ftl: {entry:?}"),
            }
        }
    }
    texts
}

/// The Rust of the room, where ids are named; code only, since what a comment names is not used.
fn sources() -> std::io::Result<String> {
    let mut code = String::new();
    for file in std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("src/words"))? {
        for line in std::fs::read_to_string(file?.path())?.lines() {
            if !line.trim_start().starts_with("//") {
                code.push_str(line);
                code.push('\n');
            }
        }
    }
    Ok(code)
}

/// Every list with its codes; the answers to a clue, and those to a clue of a pass, are lists too.
fn lists() -> impl Iterator<Item = (String, &'static [&'static str])> {
    let own = LISTS.iter().map(|&(list, codes)| (list.to_owned(), codes));
    let answers = Clue::ALL.iter().map(|clue| (clue.code().to_owned(), clue.answers()));
    let behind = PassClue::ALL.iter().map(|clue| (format!("behind_{}", clue.code()), clue.answers()));
    own.chain(answers).chain(behind)
}

/// The ids of all values of all lists.
fn listed() -> BTreeSet<String> {
    lists().flat_map(|(list, codes)| codes.iter().map(move |code| format!("{list}-{code}"))).collect()
}

#[test]
fn both_languages_have_the_same_texts_with_the_same_things_filled_in() {
    let (english, german) = (texts(Language::English), texts(Language::German));
    assert_eq!(english.keys().collect::<Vec<_>>(), german.keys().collect::<Vec<_>>());
    for (id, text) in &english {
        assert_eq!(text.variables, german[id].variables, "{id}");
    }
}

#[test]
fn the_files_of_both_languages_have_the_same_messages_in_the_same_order() {
    let ids = |text: &str| -> Vec<String> {
        let lines = text.lines().filter(|line| line.starts_with(|first: char| first.is_ascii_lowercase()));
        lines.filter_map(|line| Some(line.split_once(" =")?.0.to_owned())).collect()
    };
    for ((name, english), (other, german)) in Language::English.files().iter().zip(Language::German.files()) {
        assert_eq!((name, ids(english)), (other, ids(german)));
    }
}

#[test]
fn every_value_of_every_list_has_a_word_and_every_other_message_is_named_in_rust() {
    let (texts, listed, sources) = (texts(Language::English), listed(), sources().unwrap());
    let missing: Vec<_> = listed.iter().filter(|id| !texts.contains_key(*id)).collect();
    assert!(missing.is_empty(), "no word for {missing:?}");
    let unused: Vec<_> = texts
        .keys()
        .filter(|id| match id.split_once('.') {
            Some((_, form)) => {
                !sources.contains(&format!("\"{form}\"")) && !sources.contains(&format!(".{form}\""))
            }
            None => !listed.contains(*id) && !sources.contains(&format!("\"{id}\"")),
        })
        .collect();
    assert!(unused.is_empty(), "nobody says {unused:?}");
}

#[test]
fn every_message_named_in_rust_exists() {
    let (texts, sources) = (texts(Language::English), sources().unwrap());
    let is_id = |literal: &&str| {
        literal.contains('-')
            && literal.chars().all(|letter| letter.is_ascii_lowercase() || "-_.".contains(letter))
    };
    let named: Vec<&str> = sources.split('"').filter(is_id).collect();
    assert!(named.len() > 60, "the sources no longer look as this test expects: {named:?}");
    for id in named {
        assert!(texts.contains_key(id), "{id} has no text");
    }
}

#[test]
fn no_list_says_the_same_of_two_values() {
    for language in Language::ALL {
        let texts = texts(*language);
        for (list, codes) in lists() {
            let mut forms: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
            for code in codes {
                let id = format!("{list}-{code}");
                for (key, text) in texts.range(id.clone()..).take_while(|(key, _)| key.starts_with(&id)) {
                    let form = match key.strip_prefix(&id) {
                        Some("") => "",
                        Some(form) if form.starts_with('.') => form,
                        _ => continue,
                    };
                    assert!(!text.words.trim().is_empty(), "{language:?} {key} is empty");
                    assert!(
                        forms.entry(form).or_default().insert(&text.words),
                        "{language:?} {key}: {}",
                        text.words
                    );
                }
            }
        }
    }
}

#[test]
fn every_answer_can_stand_among_reasons_and_after_if() {
    let texts = texts(Language::English);
    for clue in Clue::ALL {
        assert!(texts.contains_key(&format!("clue-{}.question", clue.code())));
        for code in clue.answers() {
            for form in ["clause", "if"] {
                assert!(
                    texts.contains_key(&format!("{}-{code}.{form}", clue.code())),
                    "{clue:?} {code} {form}"
                );
            }
        }
    }
}

/// Texts that are rightly the same in both languages.
const SAME: &[&str] = &["sample-g_per_cm3", "unit-centimetres", "water-mm"];

#[test]
fn no_german_text_is_left_in_english() {
    let (english, german) = (texts(Language::English), texts(Language::German));
    let has_words = |text: &Text| text.words.chars().any(char::is_alphabetic);
    for (id, text) in english.iter().filter(|(_, text)| has_words(text)) {
        assert_eq!(text.words == german[id].words, SAME.contains(&id.as_str()), "{id}: {}", text.words);
    }
    let english_words = ["the", "and", "of", "soil", "layer", "pit", "with", "roots", "dig", "first", "not"];
    for (id, text) in &german {
        // A source keeps its name.
        let own = text.words.replace("National Soil Survey Handbook", "");
        let found = words(&own).find(|word| english_words.contains(&word.as_str()));
        assert_eq!(found, None, "{id}: {}", text.words);
    }
}

fn words(text: &str) -> impl Iterator<Item = String> + '_ {
    text.split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
}

#[test]
fn nothing_is_rated() {
    let never = [
        // English.
        "score",
        "scores",
        "scored",
        "grade",
        "grades",
        "graded",
        "rating",
        "rate",
        "rated",
        "index",
        "points",
        "good",
        "moderate",
        "poor",
        "bad",
        "excellent",
        "red",
        "amber",
        "green",
        "yellow",
        "stars",
        "star",
        // German.
        "note",
        "noten",
        "bewertung",
        "punkte",
        "punktzahl",
        "wertung",
        "gut",
        "mäßig",
        "schlecht",
        "mangelhaft",
        "rot",
        "gelb",
        "grün",
        "ampel",
        "sterne",
    ];
    for language in Language::ALL {
        for (id, text) in texts(*language) {
            let found = words(&text.words).find(|word| never.contains(&word.as_str()));
            assert_eq!(found, None, "{language:?} {id}: {}", text.words);
            for scale in ["out of 5", "out of 10", "of 5", "of 10 ", "von 5", "/5", "/10"] {
                assert!(!text.words.contains(scale), "{language:?} {id}: {}", text.words);
            }
        }
    }
}

#[test]
fn sentences_are_short() {
    for language in Language::ALL {
        for (id, text) in texts(*language) {
            let count = words(&text.words).count();
            assert!(count <= 40, "{language:?} {id} has {count} words: {}", text.words);
        }
    }
}
