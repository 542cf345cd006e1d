//! What a phone shows of a sender who wants to deceive is, text by text, what it shows of one with a plain name.
#![allow(clippy::unwrap_used, reason = "a test may fail")]

#[path = "../cli/tests/support/hostile.rs"]
mod hostile;
mod support;

use hostile::{FORGED, file_of, names};
use pitface_bindings::{Session, ShownDoes, ShownKnown, ShownScreen};
use serde_json::json;
use support::{demo, tap};

/// Each text of a screen that is drawn by itself.
fn texts(screen: &ShownScreen) -> Vec<String> {
    let known = screen.known.iter().flat_map(|known| match known {
        ShownKnown::Sentence { text } | ShownKnown::Line { text } => vec![text.clone()],
        ShownKnown::Section { heading, lines } => [vec![heading.clone()], lines.clone()].concat(),
        ShownKnown::Rows { rows } => {
            rows.iter().flat_map(|row| [vec![row.title.clone()], row.lines.clone()].concat()).collect()
        }
        ShownKnown::Picture { .. } => Vec::new(),
    });
    let main = screen.main.iter().map(|button| button.label.clone());
    known.chain(main).chain([screen.title.clone(), screen.told.clone()]).collect()
}

/// The screens of the partners and of the stranger, before and after accepting, with the fields.
fn shown(name: &str) -> Vec<String> {
    let folder = tempfile::tempdir().unwrap();
    let path = |part: &str| folder.path().join(part).display().to_string();
    for part in ["notes", "key"] {
        std::fs::create_dir(path(part)).unwrap();
    }
    let session = Session::open(path("notes"), path("key"), Some("en-GB".to_owned()), 60).unwrap();
    tap(&session, &session.screen().unwrap(), "English");
    let field = std::fs::read_to_string(demo("mere_piece")).unwrap();
    let fingerprint = file_of(name, &field, folder.path(), "theirs.pitb");
    let mut all = texts(&session.import_file(path("theirs.pitb")).unwrap());
    let go = |place: &str| session.tap(json!({ "go": place }).to_string()).unwrap();
    let partners = go("partners");
    let row = partners.known.iter().find_map(|known| match known {
        ShownKnown::Rows { rows } => rows.iter().find(|row| row.title.contains(&fingerprint)).cloned(),
        _ => None,
    });
    let ShownDoes::Act { act } = row.unwrap().does else { panic!("a row that leads nowhere") };
    let stranger = session.tap(act).unwrap();
    let alone = |known: &ShownKnown| matches!(known, ShownKnown::Sentence { text } if *text == fingerprint);
    assert!(stranger.known.iter().any(alone), "{name:?}: {:?}", stranger.known);
    let accepted = tap(&session, &stranger, &stranger.main.clone().unwrap().label);
    for screen in [&partners, &stranger, &accepted, &go("partners"), &go("fields")] {
        all.extend(texts(screen));
    }
    // Every phone has a key of its own.
    let own = all.iter().find(|text| is_fingerprint(text) && **text != fingerprint).cloned();
    all.iter().map(|text| own.as_ref().map_or_else(|| text.clone(), |own| text.replace(own, "own"))).collect()
}

fn is_fingerprint(text: &str) -> bool {
    text.len() == FORGED.len() && text.split('-').count() == 5
}

#[test]
fn whatever_a_sender_is_called_no_other_text_is_touched() {
    let plain = shown("Ann");
    for name in names() {
        let shown = shown(&name);
        assert_eq!(shown.len(), plain.len(), "{name:?}: {shown:#?}");
        for (text, plain) in shown.iter().zip(&plain) {
            let is_size = plain.ends_with("kB.") && text.ends_with("kB.");
            assert!(text == plain || is_size || plain.contains("Ann"), "{name:?}: {text:?} for {plain:?}");
            assert!(text.chars().count() <= plain.chars().count() + 2 * 80, "{plain:?}: {text:?}");
            let is_unseen =
                |sign: char| sign.is_control() || "\u{200b}\u{202e}\u{2028}\u{2029}\u{2067}".contains(sign);
            assert!(plain.contains('\n') || !text.contains(is_unseen), "{name:?}: {text:?}");
        }
    }
}
