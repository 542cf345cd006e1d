//! The first start, a restart, and files that are missing, broken or held by somebody else.

use crate::support;

use pitface_bindings::{PitfaceError, ScreenKind, Session};
use support::{open, tap, with_field};

#[test]
fn the_first_screen_asks_for_the_language_in_that_of_the_phone() {
    for (tag, language) in [(Some("de-AT"), "de"), (Some("DE_ch"), "de"), (Some("fr"), "en"), (None, "en")] {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().display().to_string();
        let screen = Session::open(path.clone(), path, tag.map(str::to_owned), 60).unwrap().screen().unwrap();
        assert_eq!((screen.kind, screen.language.as_str()), (ScreenKind::Welcome, language), "{tag:?}");
    }
}

#[test]
fn a_restart_comes_back_to_the_same_screen_with_the_same_settings() {
    let (folder, session) = with_field("mere_piece");
    let field = session.screen().unwrap();
    assert_eq!(field.kind, ScreenKind::Field);
    let deeper = support::acts(&field).into_iter().find_map(|(_, act)| {
        let shown = session.tap(act).unwrap();
        (shown.kind != ScreenKind::Field && shown.kind != ScreenKind::Fields).then_some(shown)
    });
    let (mut before, after) = (deeper.unwrap(), {
        drop(session);
        open(folder.path()).unwrap().screen().unwrap()
    });
    (before.told, before.saved) = (String::new(), false);
    assert_eq!(after, before);
}

#[test]
fn broken_files_read_as_their_defaults_and_the_notes_stay() {
    let (folder, session) = with_field("mere_piece");
    let field = support::field_id(&session);
    let noted = support::noted(&session, &field);
    drop(session);
    let broken: [&[u8]; 5] =
        [b"", b"{", b"[1, 2]", b"{\"unit\": 3, \"left_handed\": \"yes\", \"language\": \"xx\"}", &[0xff; 9]];
    for content in broken {
        for file in ["own.json", "place.json", "key"] {
            std::fs::write(folder.path().join(file), content).unwrap();
        }
        let session = open(folder.path()).unwrap();
        assert_eq!(session.screen().unwrap().kind, ScreenKind::Welcome);
        assert_eq!(support::noted(&session, &field), noted);
        let screen = session.screen().unwrap();
        assert_eq!(tap(&session, &screen, "English").kind, ScreenKind::Fields);
    }
}

#[test]
fn half_a_setting_that_is_sound_is_kept() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("own.json"), r#"{"language": "de", "left_handed": true, "unit": 7}"#)
        .unwrap();
    let screen = open(folder.path()).unwrap().screen().unwrap();
    assert_eq!((screen.kind, screen.language.as_str(), screen.left_handed), (ScreenKind::Fields, "de", true));
}

#[test]
fn a_place_in_a_field_that_is_gone_becomes_the_list() {
    let (folder, session) = with_field("mere_piece");
    drop(session);
    let elsewhere = r#"{"field":{"field":"01990000-0000-7000-8000-000000000001"}}"#;
    std::fs::write(folder.path().join("place.json"), elsewhere).unwrap();
    let screen = open(folder.path()).unwrap().screen().unwrap();
    assert_eq!(screen.kind, ScreenKind::Fields);
    assert!(support::acts(&screen).iter().any(|(label, _)| label == "Mere Piece"), "the list is not empty");
}

#[test]
fn one_session_at_a_time_holds_a_folder() {
    let folder = tempfile::tempdir().unwrap();
    let session = open(folder.path()).unwrap();
    assert_eq!(open(folder.path()).err(), Some(PitfaceError::Conflict));
    drop(session);
    assert!(open(folder.path()).is_ok());
}

#[test]
fn what_cannot_be_opened_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let missing = open(&folder.path().join("nowhere"));
    assert!(matches!(missing.err(), Some(PitfaceError::NotFound { .. })));
    let path = folder.path().display().to_string();
    let keyless = Session::open(path.clone(), "nowhere".to_owned(), None, 60);
    assert!(matches!(keyless.err(), Some(PitfaceError::NotFound { .. })));
    assert!(matches!(
        Session::open(path.clone(), path, None, 1440).err(),
        Some(PitfaceError::Invalid { .. })
    ));
    std::fs::write(folder.path().join("notes.pitface"), "this is no store at all").unwrap();
    assert!(matches!(open(folder.path()).err(), Some(PitfaceError::Storage { .. })));
    assert_eq!(std::fs::read(folder.path().join("notes.pitface")).unwrap(), b"this is no store at all");
}

#[test]
fn settings_that_cannot_be_kept_are_told_and_nothing_goes_on() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("own.json")).unwrap();
    let session = open(folder.path()).unwrap();
    let screen = tap(&session, &session.screen().unwrap(), "English");
    assert_eq!((screen.kind, screen.saved), (ScreenKind::Welcome, false));
    assert!(screen.told.starts_with("Not saved: the phone could not write it."), "{}", screen.told);
    std::fs::remove_dir(folder.path().join("own.json")).unwrap();
    assert_eq!(tap(&session, &screen, "English").kind, ScreenKind::Fields);
}

#[test]
fn the_example_is_looked_at_and_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let session = open(folder.path()).unwrap();
    let empty = tap(&session, &session.screen().unwrap(), "English");
    let field = tap(&session, &empty, "Look at an example");
    assert_eq!((field.kind, field.title.starts_with("Example: Lapwing Ground")), (ScreenKind::Field, true));
    // A restart comes back to it, as to any screen.
    drop(session);
    let session = open(folder.path()).unwrap();
    assert_eq!(session.screen().unwrap().title, field.title);
    let id = pitface_core::screen::example::FIELD.to_string();
    let refused = session.export_field(id, folder.path().display().to_string());
    assert!(matches!(refused, Err(PitfaceError::NotFound { .. })), "{refused:?}");
    assert_eq!(session.back().unwrap().unwrap().blocks, empty.blocks);
    assert!(!session.screen().unwrap().title.contains("Example"));
}
