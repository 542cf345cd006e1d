//! Pictures that are not on this phone are told wherever their pit is.

use crate::support;

use pitface_bindings::{ScreenKind, Session, ShownScreen};
use serde_json::Value;
use std::path::Path;
use support::{field_id, noted, open, tap, texts, with_field};

const ONE: &str = "One picture is not on this phone.";

fn go(session: &Session, place: &str, field: &str, pit: &str) -> ShownScreen {
    session.tap(format!(r#"{{"go":{{"{place}":{{"field":"{field}","pit":"{pit}"}}}}}}"#)).unwrap()
}

/// The screens of a field that tell of a pit's pictures: the field, the pit, its photos.
fn screens(session: &Session, field: &str, pit: &str) -> [ShownScreen; 3] {
    let at_field = session.tap(format!(r#"{{"go":{{"field":{{"field":"{field}"}}}}}}"#)).unwrap();
    let screens = [at_field, go(session, "call", field, pit), go(session, "photos", field, pit)];
    let kinds = [0, 1, 2].map(|index: usize| screens[index].kind);
    assert_eq!(kinds, [ScreenKind::Field, ScreenKind::Call, ScreenKind::Photos]);
    screens
}

#[test]
fn a_picture_that_is_gone_or_cut_short_is_told_on_every_screen_of_its_pit() {
    let (folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let pits: Value = serde_json::from_str(&noted(&session, &field)).unwrap();
    let pit = pits["pits"][0]["id"].as_str().unwrap();
    let taken = folder.path().join("taken.jpg");
    for content in ["abc", "another"] {
        std::fs::write(&taken, content).unwrap();
        let path = taken.display().to_string();
        session.photo_taken(field.clone(), pit.into(), None, path, "image/jpeg".into()).unwrap();
    }
    let tells = |what: &str| {
        screens(&session, &field, pit).map(|screen| texts(&screen).iter().any(|text| text == what))
    };
    assert_eq!(tells(ONE), [false; 3]);

    let photos: Vec<_> =
        std::fs::read_dir(folder.path().join("photos")).unwrap().map(Result::unwrap).collect();
    let [first, second] = photos.as_slice() else { panic!("{photos:?}") };
    std::fs::remove_file(first.path()).unwrap();
    assert_eq!(tells(ONE), [true; 3]);
    let lines = texts(&go(&session, "photos", &field, pit));
    let marked = lines.iter().filter(|line| line.ends_with("picture not on this phone")).count();
    assert_eq!(marked, 1, "{lines:?}");

    std::fs::write(second.path(), "a").unwrap();
    assert_eq!(tells("2 pictures are not on this phone."), [true; 3]);

    // Taken anew it is here again.
    std::fs::write(&taken, "abc").unwrap();
    for content in ["abc", "another"] {
        std::fs::write(&taken, content).unwrap();
        let path = taken.display().to_string();
        session.photo_taken(field.clone(), pit.into(), None, path, "image/jpeg".into()).unwrap();
    }
    assert_eq!(tells("2 pictures are not on this phone."), [false; 3]);
    assert_eq!(tells(ONE), [false; 3]);
}

#[test]
fn pictures_stay_behind_when_a_field_is_handed_over_and_that_is_told() {
    let (folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let pits: Value = serde_json::from_str(&noted(&session, &field)).unwrap();
    let pit = pits["pits"][0]["id"].as_str().unwrap();
    let taken = folder.path().join("taken.jpg");
    std::fs::write(&taken, "abc").unwrap();
    let path = taken.display().to_string();
    session.photo_taken(field.clone(), pit.into(), None, path, "image/jpeg".into()).unwrap();
    let file = session.export_field(field.clone(), folder.path().display().to_string()).unwrap();

    let elsewhere = tempfile::tempdir().unwrap();
    let other = open(elsewhere.path()).unwrap();
    tap(&other, &other.screen().unwrap(), "English");
    let screen = support::take_in(&other, Path::new(&file));
    assert!(texts(&screen).contains(&ONE.to_owned()), "{:?}", texts(&screen));
    assert!(screens(&other, &field, pit).iter().all(|screen| texts(screen).contains(&ONE.to_owned())));
}
