//! Photos kept by their content, notes files out and in, and the published cases across the border.

use crate::support;

use pitface_bindings::{PitfaceError, ScreenKind, Session, ShownBlock, ShownDoes, check_notes, read_field};
use pitface_core::harmless::LONGEST_NAME;
use serde_json::Value;
use std::path::Path;
use support::{demo, field_id, noted, open, tap, with_field};

/// SHA-256 of the three letters `abc` (FIPS 180-4, its first example).
const ABC: &str = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

fn first_pit(session: &Session, field: &str) -> String {
    let notes: Value = serde_json::from_str(&noted(session, field)).unwrap();
    notes["pits"][0]["id"].as_str().unwrap().to_owned()
}

fn files(folder: &Path) -> Vec<String> {
    let Ok(files) = std::fs::read_dir(folder) else { return Vec::new() };
    files.map(|file| file.unwrap().file_name().into_string().unwrap()).collect()
}

#[test]
fn a_photo_lies_under_its_hash_and_its_row_names_it() {
    let (folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let pit = first_pit(&session, &field);
    let taken = folder.path().join("taken.jpg");
    let photos = folder.path().join("photos");
    let keep = |depth_mm| {
        std::fs::write(&taken, "abc").unwrap();
        let path = taken.display().to_string();
        session.photo_taken(field.clone(), pit.clone(), depth_mm, path, "image/jpeg".into()).unwrap()
    };
    let screen = keep(Some(250));
    assert!(screen.saved);
    assert_eq!(screen.told, "Photo saved.");
    assert_eq!(files(&photos), [ABC]);
    assert_eq!(std::fs::read(photos.join(ABC)).unwrap(), b"abc");
    let notes: Value = serde_json::from_str(&noted(&session, &field)).unwrap();
    let photo = notes["pits"][0]["photos"].as_array().unwrap().last().unwrap();
    assert_eq!(photo["sha256"], ABC);
    assert_eq!((&photo["size_bytes"], &photo["depth_mm"]), (&3.into(), &250.into()));
    assert!(photo["taken"].as_str().unwrap().ends_with("+01:00"), "local time: {}", photo["taken"]);

    keep(None);
    assert_eq!(files(&photos), [ABC], "the same picture is kept once");
    assert_eq!(session.tap(r#""undo""#.into()).unwrap().told, "Taken back: Mere Piece, pit 1, photo: new.");
}

#[test]
fn a_photo_that_cannot_be_kept_is_told_and_leaves_nothing() {
    let (folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let pit = first_pit(&session, &field);
    let before = noted(&session, &field);
    let photos = folder.path().join("photos");
    let missing = folder.path().join("missing.jpg").display().to_string();
    let empty = folder.path().join("empty.jpg");
    std::fs::write(&empty, "").unwrap();
    for path in [missing, empty.display().to_string(), folder.path().display().to_string()] {
        let screen =
            session.photo_taken(field.clone(), pit.clone(), None, path, "image/jpeg".into()).unwrap();
        assert_eq!(
            (screen.told.as_str(), screen.saved),
            ("Photo not saved: its file cannot be read.", false)
        );
    }
    std::fs::write(&empty, "abc").unwrap();
    let path = empty.display().to_string();
    // A pit that is none: the field's own id.
    let screen =
        session.photo_taken(field.clone(), field.clone(), None, path.clone(), "image/jpeg".into()).unwrap();
    assert_eq!(screen.told, "Not saved: what it belongs to is no longer there.");
    assert_eq!(files(&photos), [""; 0]);
    let error = session.photo_taken("7".into(), pit, None, path, "image/jpeg".into()).unwrap_err();
    assert!(matches!(error, PitfaceError::Invalid { .. }));
    assert_eq!(noted(&session, &field), before);
}

#[test]
fn a_field_handed_over_is_taken_in_as_it_was() {
    let (folder, session) = with_field("heron_close");
    let field = field_id(&session);
    let out = folder.path().join("out");
    assert!(matches!(
        session.export_field(field.clone(), out.display().to_string()),
        Err(PitfaceError::NotFound { .. })
    ));
    std::fs::create_dir(&out).unwrap();
    let path = session.export_field(field.clone(), out.display().to_string()).unwrap();
    assert!(path.ends_with("out/Heron_Close.notes.json"), "{path}");
    assert_eq!(files(&out), ["Heron_Close.notes.json"]);

    let elsewhere = tempfile::tempdir().unwrap();
    let other = open(elsewhere.path()).unwrap();
    let screen = tap(&other, &other.screen().unwrap(), "English");
    assert_eq!(screen.kind, ScreenKind::Fields);
    for told in ["Taken in: Heron Close.", "Heron Close: the file says nothing that is not here."] {
        let screen = support::take_in(&other, Path::new(&path));
        assert_eq!((screen.kind, screen.title.as_str()), (ScreenKind::Field, "Heron Close, 10.6\u{a0}ha"));
        assert!(screen.told.starts_with(told), "{}", screen.told);
        assert_eq!(noted(&other, &field), noted(&session, &field));
    }
    other.tap(r#""undo""#.into()).unwrap();
    assert!(matches!(
        other.export_field(field, out.display().to_string()),
        Err(PitfaceError::NotFound { .. })
    ));
}

#[test]
fn the_pages_of_a_field_are_written_for_others_to_read() {
    let (folder, session) = with_field("mere_piece");
    let (field, out) = (field_id(&session), folder.path().display().to_string());
    let sheet = session.export_page(field.clone(), false, out.clone()).unwrap();
    assert!(sheet.ends_with("/Mere_Piece.html"), "{sheet}");
    let page = std::fs::read_to_string(sheet).unwrap();
    assert!(page.contains("<h1>Mere Piece</h1>") && page.contains("<html lang=\"en\">"));
    let card = session.export_page(field.clone(), true, out.clone()).unwrap();
    assert!(card.ends_with("/Mere_Piece-card.html"), "{card}");
    assert!(std::fs::read_to_string(card).unwrap().contains("Driver's card"));
    let nowhere = session.export_page(field.clone(), false, format!("{out}/not there"));
    assert!(matches!(nowhere, Err(PitfaceError::NotFound { .. })));

    // A way to both stands where the field is handed over.
    let screen = session.tap(format!(r#"{{"go":{{"hand_over":{{"field":"{field}"}}}}}}"#)).unwrap();
    let rows = screen.blocks.iter().filter_map(|block| match block {
        ShownBlock::Ways { rows, .. } => Some(rows),
        _ => None,
    });
    let asked = |wanted: bool| {
        let does = ShownDoes::SharePage { field: field.clone(), card: wanted };
        rows.clone().flatten().any(|row| row.does == does)
    };
    assert!(asked(false) && asked(true));

    let (folder, session) = with_field("long_sedge");
    let card = session.export_page(field_id(&session), true, folder.path().display().to_string());
    assert!(matches!(card, Err(PitfaceError::NotFound { .. })), "nothing is to be loosened there");
}

#[test]
fn the_name_of_a_file_holds_nothing_that_leads_elsewhere() {
    let folder = tempfile::tempdir().unwrap();
    let session = open(folder.path()).unwrap();
    let out = folder.path().join("out");
    std::fs::create_dir(&out).unwrap();
    for (name, file) in [
        ("../Über dem Bach/2", "Über_dem_Bach_2.notes.json"),
        ("...", "field.notes.json"),
        (&"a".repeat(LONGEST_NAME), &format!("{}.notes.json", "a".repeat(60))),
    ] {
        let notes = folder.path().join("named.json");
        let text = std::fs::read_to_string(demo("mere_piece")).unwrap().replacen("Mere Piece", name, 1);
        std::fs::write(&notes, text).unwrap();
        support::take_in(&session, &notes);
        let path = session.export_field(field_id(&session), out.display().to_string()).unwrap();
        assert_eq!(Path::new(&path), out.join(file));
    }
}

#[test]
fn a_file_with_faults_is_told_and_nothing_of_it_is_taken() {
    let (folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let before = noted(&session, &field);
    let path = folder.path().join("bad.json");
    let bad: [(&[u8], &str); 3] = [
        (&[0xff, 0xfe, 0x00], "Not taken in: the file cannot be read."),
        (b"{}", "Not taken in: there are faults in the file. "),
        (
            br#"{"pitface": 1, "field": {"name": "Fen"}, "pits": [{"place": "lawn"}]}"#,
            "Not taken in: there are faults",
        ),
    ];
    for (content, told) in bad {
        std::fs::write(&path, content).unwrap();
        let screen = session.import_file(path.display().to_string()).unwrap();
        assert!(screen.told.starts_with(told) && !screen.saved, "{}", screen.told);
        assert_eq!(screen.kind, ScreenKind::Field);
    }
    let screen = session.import_file(folder.path().join("missing").display().to_string()).unwrap();
    assert_eq!(screen.told, "Not taken in: the file cannot be read.");
    assert_eq!(noted(&session, &field), before);
}

fn vectors(name: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors").join(name);
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

#[test]
fn faults_come_across_as_they_are() {
    let mut compared = 0;
    for case in vectors("bad_inputs.json")["cases"].as_array().unwrap() {
        let Some(text) = case["text"].as_str() else { continue };
        let told: Value = serde_json::from_str(&check_notes(text.to_owned()).unwrap()).unwrap();
        assert_eq!(told, case["faults"], "{}", case["name"]);
        assert!(matches!(read_field(text.to_owned()), Err(PitfaceError::Invalid { .. })));
        compared += 1;
    }
    assert!(compared > 3, "{compared}");
    assert_eq!(check_notes(std::fs::read_to_string(demo("mere_piece")).unwrap()).unwrap(), "[]");
}

#[test]
fn calls_come_across_as_the_published_cases_say() {
    let cases = vectors("decisions.json");
    for case in cases.as_array().unwrap() {
        let file = case["file"].as_str().unwrap();
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors").join(file);
        let read = read_field(std::fs::read_to_string(path).unwrap()).unwrap();
        let read: Value = serde_json::from_str(&read).unwrap();
        let zone = case["zone"].as_str().unwrap();
        let zone = if zone == "whole" { &read["whole"] } else { &read["zones"][zone] };
        assert_eq!(zone["call"], case["call"], "{}", case["id"]);
        if let Some(range) = case["tip_mm"].as_array() {
            let tip = zone["tip_mm"].as_array().unwrap();
            assert!(range[0].as_u64() <= tip[0].as_u64() && tip[1].as_u64() <= range[1].as_u64(), "{zone}");
        }
        if let Some(code) = case["reason"].as_str() {
            let reasons = zone["reasons"].as_array().unwrap();
            assert!(reasons.iter().any(|reason| reason["what"] == code), "{zone}");
        }
    }
}
