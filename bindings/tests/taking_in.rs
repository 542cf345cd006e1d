//! The same file taken in twice, and two fields of one name handed over.

use crate::support;

use pitface_bindings::{ScreenKind, Session};
use serde_json::Value;
use std::path::Path;
use support::{field_id, noted, open, rows, tap, texts};

/// A session with English chosen.
fn started(folder: &Path) -> std::sync::Arc<Session> {
    let session = open(folder).unwrap();
    let screen = session.screen().unwrap();
    tap(&session, &screen, "English");
    session
}

/// The titles of the list of fields.
fn fields(session: &Session) -> Vec<String> {
    let screen = session.tap(r#"{"go":"fields"}"#.into()).unwrap();
    assert_eq!(screen.kind, ScreenKind::Fields);
    rows(&screen).into_iter().map(|row| row.title).collect()
}

const PLAIN: &str = r#"{"pitface": 1, "field": {"name": "Fen Piece", "drains_mm": 700},
    "pits": [
        {"place": "reference", "layers": [{"top_mm": 0, "bottom_mm": 300}, {"top_mm": 300, "bottom_mm": 500}]},
        {"place": "open", "layers": [{"top_mm": 0, "bottom_mm": 400}]}
    ],
    "machines": [{"name": "Yard subsoiler", "legs": 3, "spacing_mm": 700, "foot_width_mm": 60}],
    "passes": [{"machine": "Yard subsoiler", "zone": "open", "extent": "zone"}]}"#;

#[test]
fn a_file_without_ids_taken_in_twice_is_one_field() {
    let folder = tempfile::tempdir().unwrap();
    let session = started(folder.path());
    let path = folder.path().join("plain.json");
    std::fs::write(&path, PLAIN).unwrap();
    let take = || support::take_in(&session, &path);
    let screen = take();
    assert_eq!(screen.told, "Taken in: Fen Piece.");
    let field = field_id(&session);
    let before = noted(&session, &field);

    let screen = take();
    assert_eq!(screen.told, "Fen Piece: the file says nothing that is not here.");
    assert_eq!(noted(&session, &field), before, "the same file says the same");
    // There is no way back into a file that is taken in.
    let above = session.back().unwrap().unwrap();
    assert_eq!(above.kind, ScreenKind::Fields);
    assert!(rows(&above).iter().any(|row| row.title == "Fen Piece"), "{above:?}");
    assert_eq!(fields(&session), ["Fen Piece"]);

    // What the file says otherwise now is an edit of the same records, taken back in one tap.
    std::fs::write(&path, PLAIN.replace("400", "450").replace("700, \"foot", "750, \"foot")).unwrap();
    take();
    let (old, new): (Value, Value) =
        (serde_json::from_str(&before).unwrap(), serde_json::from_str(&noted(&session, &field)).unwrap());
    assert_eq!(new["pits"][1]["id"], old["pits"][1]["id"]);
    assert_eq!(new["pits"][1]["layers"][0]["bottom_mm"], 450);
    assert_eq!(new["machines"].as_array().unwrap().len(), 1);
    assert_eq!(
        (&new["machines"][0]["id"], &new["machines"][0]["spacing_mm"]),
        (&old["machines"][0]["id"], &750.into())
    );
    assert_eq!(new["passes"].as_array().unwrap().len(), 1);
    session.tap(r#""undo""#.into()).unwrap();
    assert_eq!(noted(&session, &field), before);
}

#[test]
fn a_file_is_shown_before_anything_of_it_is_taken_in() {
    let folder = tempfile::tempdir().unwrap();
    let session = started(folder.path());
    let path = folder.path().join("plain.json");
    std::fs::write(&path, PLAIN).unwrap();
    support::take_in(&session, &path);
    let field = field_id(&session);
    let before = noted(&session, &field);
    std::fs::write(&path, PLAIN.replace("400", "450")).unwrap();
    let screen = session.import_file(path.display().to_string()).unwrap();
    let said = texts(&screen);
    assert_eq!(said[0], "Fen Piece: the file would add nothing; values it would change: 1.");
    assert_eq!(said[2], "Fen Piece, pit 2, layer: bottom of the layer as the file has it.");
    assert_eq!(noted(&session, &field), before);
    // Left alone, nothing of it comes; the place outlives the app, the file does not.
    session.back().unwrap();
    assert_eq!(noted(&session, &field), before);
    session.import_file(path.display().to_string()).unwrap();
    drop(session);
    let session = open(folder.path()).unwrap();
    assert_eq!(session.screen().unwrap().kind, ScreenKind::Fields);
    assert_eq!(noted(&session, &field), before);
    // Opened again, a tap takes it in.
    let screen = session.import_file(path.display().to_string()).unwrap();
    let screen = tap(&session, &screen, "Take it in");
    assert!(screen.saved && noted(&session, &field) != before);
}

#[test]
fn two_fields_of_one_name_can_be_said_to_be_one() {
    let folder = tempfile::tempdir().unwrap();
    let session = started(folder.path());
    for name in ["north.json", "south.json"] {
        let path = folder.path().join(name);
        std::fs::write(&path, PLAIN).unwrap();
        support::take_in(&session, &path);
    }
    assert_eq!(fields(&session), ["Fen Piece", "Fen Piece", "Two fields are called Fen Piece"]);
    let screen = session.screen().unwrap();
    let screen = tap(&session, &screen, "Two fields are called Fen Piece");
    let screen = tap(&session, &screen, "They are one field");
    assert!(screen.told.starts_with("These are one field now: Fen Piece, with 4 pits."), "{}", screen.told);
    assert_eq!(fields(&session), ["Fen Piece"]);
    session.tap(r#""undo""#.into()).unwrap();
    assert_eq!(fields(&session).len(), 3);
}

#[test]
fn what_was_noted_here_and_is_not_in_the_file_stays() {
    let folder = tempfile::tempdir().unwrap();
    let session = started(folder.path());
    let path = folder.path().join("plain.json");
    std::fs::write(&path, PLAIN).unwrap();
    support::take_in(&session, &path);
    let field = field_id(&session);
    let mut shorter: Value = serde_json::from_str(PLAIN).unwrap();
    shorter["pits"].as_array_mut().unwrap().pop();
    std::fs::write(&path, shorter.to_string()).unwrap();
    support::take_in(&session, &path);
    let notes: Value = serde_json::from_str(&noted(&session, &field)).unwrap();
    assert_eq!(notes["pits"].as_array().unwrap().len(), 2);
}

#[test]
fn two_fields_of_one_name_have_files_of_their_own() {
    let folder = tempfile::tempdir().unwrap();
    let session = started(folder.path());
    let out = folder.path().join("out");
    std::fs::create_dir(&out).unwrap();
    let ids = ["01890000-0000-7000-8000-00000000000a", "01890000-0000-7000-8000-0000000b000b"];
    let names = ["Fen Piece", "fen piece?"];
    let path = folder.path().join("named.json");
    let export = |id: &str| {
        let path = session.export_field(id.to_owned(), out.display().to_string()).unwrap();
        Path::new(&path).file_name().unwrap().to_str().unwrap().to_owned()
    };
    for (id, name) in ids.iter().zip(names) {
        let text = format!(r#"{{"pitface": 1, "field": {{"id": "{id}", "name": "{name}"}}, "pits": []}}"#);
        std::fs::write(&path, text).unwrap();
        support::take_in(&session, &path);
        if *id == ids[0] {
            assert_eq!(export(id), "Fen_Piece.notes.json", "alone under its name");
        }
    }
    for _ in 0..2 {
        assert_eq!(ids.map(export), ["Fen_Piece-0000000a.notes.json", "fen_piece-000b000b.notes.json"]);
    }
    for (file, name) in ["Fen_Piece-0000000a.notes.json", "fen_piece-000b000b.notes.json"].iter().zip(names) {
        let text = std::fs::read_to_string(out.join(file)).unwrap();
        assert_eq!(serde_json::from_str::<Value>(&text).unwrap()["field"]["name"], name);
    }
}

#[test]
fn a_long_name_in_any_script_makes_a_name_a_disk_takes() {
    let folder = tempfile::tempdir().unwrap();
    let session = started(folder.path());
    let path = folder.path().join("named.json");
    for _ in 0..2 {
        let id = uuid::Uuid::now_v7();
        let text = format!(
            r#"{{"pitface": 1, "field": {{"id": "{id}", "name": "{}"}}, "pits": []}}"#,
            "\u{20000}".repeat(80)
        );
        std::fs::write(&path, text).unwrap();
        support::take_in(&session, &path);
        noted(&session, &id.to_string());
    }
}
