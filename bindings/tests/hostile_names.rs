//! What a phone shows of a sender who wants to deceive is, text by text, what it shows of one with a plain name.

use crate::hostile;
use crate::support;

use hostile::{FORGED, file_of, names};
use pitface_bindings::{Session, ShownDoes, ShownScreen};
use serde_json::json;
use support::{demo, rows, tap};

/// Each text of a screen that is drawn by itself.
fn texts(screen: &ShownScreen) -> Vec<String> {
    let next = screen.next.iter().map(|button| button.label.clone());
    let said = support::texts(screen).into_iter().chain(next);
    said.chain([screen.title.clone(), screen.told.clone()]).collect()
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
    let row = rows(&partners).into_iter().find(|row| row.title.contains(&fingerprint));
    let ShownDoes::Act { act } = row.unwrap().does else { panic!("a row that leads nowhere") };
    let stranger = session.tap(act).unwrap();
    assert!(support::texts(&stranger).contains(&fingerprint), "{name:?}: {stranger:?}");
    let accepted = tap(&session, &stranger, &stranger.next.clone().unwrap().label);
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
