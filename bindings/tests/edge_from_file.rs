//! The edge of a field out of a file that was chosen on the phone: what is in it, one tap, one save.

use crate::support;

use pitface_bindings::{ScreenKind, Session, ShownScreen};
use serde_json::Value;
use std::path::Path;
use support::{buttons, field_id, noted, open, rows, tap, tappable, texts, with_field};

/// A file that a general library wrote (`tests/outside/test_boundary.py`).
fn vector(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors/boundary");
    folder.join(name).display().to_string()
}

/// A square of GeoJSON (RFC 7946, 3.1.6), some 200 m wide, from its south-western corner.
fn square(name: &str, [west, south]: [f64; 2]) -> Value {
    let (east, north) = (west + 0.003, south + 0.002);
    let ring = [[west, south], [east, south], [east, north], [west, north], [west, south]];
    let geometry = serde_json::json!({ "type": "Polygon", "coordinates": [ring] });
    serde_json::json!({ "type": "Feature", "properties": { "name": name }, "geometry": geometry })
}

fn collection(folder: &Path, features: &[Value]) -> String {
    let path = folder.join("holding.json");
    let file = serde_json::json!({ "type": "FeatureCollection", "features": features });
    std::fs::write(&path, file.to_string()).unwrap();
    path.display().to_string()
}

fn choose(session: &Session, path: &str) -> ShownScreen {
    session.import_file(path.to_owned()).unwrap()
}

fn outline(session: &Session, field: &str) -> Vec<Value> {
    let notes: Value = serde_json::from_str(&noted(session, field)).unwrap();
    notes["field"]["outline"].as_array().cloned().unwrap_or_default()
}

/// A new field of this name, at its edge.
fn at_new_edge(folder: &Path, language: &str) -> std::sync::Arc<Session> {
    let session = open(folder).unwrap();
    tap(&session, &session.screen().unwrap(), language);
    let act = serde_json::json!({ "go": "start_field" }).to_string();
    let screen = session.tap(act).unwrap();
    let screen = support::type_in(&session, &screen, "Long Sedge");
    let edge = if language == "English" { "Edge of the field" } else { "Rand des Schlags" };
    tap(&session, &screen, edge);
    session
}

#[test]
fn a_field_without_an_edge_gets_one_with_a_tap_and_loses_it_with_undo() {
    let folder = tempfile::tempdir().unwrap();
    let session = at_new_edge(folder.path(), "English");
    let asks = tappable(&session.screen().unwrap());
    assert!(asks.iter().any(|(label, _)| label == "Edge from a file"), "{asks:?}");

    let files = tempfile::tempdir().unwrap();
    let path = collection(files.path(), &[square("North", [2.0, 52.01]), square("South", [2.0, 52.0])]);
    let screen = choose(&session, &path);
    assert_eq!((screen.kind, screen.saved), (ScreenKind::Field, false));
    let titles: Vec<String> = rows(&screen).into_iter().map(|row| row.title.replace('\u{a0}', " ")).collect();
    // 0.003° by 0.002° at 52° N is 205.9 m by 222.5 m on WGS 84: 4.58 ha.
    assert_eq!(titles, ["North, 4.58 ha", "South, 4.58 ha"]);

    let screen = tap(&session, &screen, &rows(&screen)[1].title);
    assert!(screen.saved && screen.told.starts_with("Outline of Long Sedge taken"), "{}", screen.told);
    let field = field_id(&session);
    assert_eq!(outline(&session, &field)[0], serde_json::json!([2.0, 52.0]));
    session.tap(r#""undo""#.to_owned()).unwrap();
    assert!(outline(&session, &field).is_empty(), "one save, one undo");
}

#[test]
fn an_edge_that_is_there_is_replaced_only_after_asking() {
    let (_folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let before = outline(&session, &field);
    let files = tempfile::tempdir().unwrap();
    let path = collection(files.path(), &[square("Elsewhere", [5.0, 52.0])]);
    let screen = choose(&session, &path);
    let screen = tap(&session, &screen, &rows(&screen)[0].title);
    assert_eq!((screen.saved, screen.answer.as_ref().unwrap().text.as_str()), (false, "Replace the edge?"));
    assert!(screen.caution.contains("from everything noted of Mere Piece"), "{}", screen.caution);
    assert_eq!(outline(&session, &field), before);
    let screen = tap(&session, &screen, "Replace the edge");
    assert!(screen.saved && screen.told.contains("in place of one of"), "{}", screen.told);
    assert_ne!(outline(&session, &field), before);
}

/// How many lines are marked in a field.
fn lines(session: &Session, field: &str) -> usize {
    let notes: Value = serde_json::from_str(&noted(session, field)).unwrap();
    notes["field"]["lines"].as_array().map_or(0, Vec::len)
}

#[test]
fn a_line_of_a_kml_file_asks_what_lies_along_it() {
    let (_folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let before = lines(&session, &field);
    let screen = choose(&session, &vector("simple.kml"));
    let line = rows(&screen).into_iter().find(|row| row.title.contains("places")).unwrap();
    let screen = tap(&session, &screen, &line.title);
    assert_eq!(screen.answer.as_ref().unwrap().text, "What lies along this line?");
    let drain = buttons(&screen).into_iter().find(|button| button.label.starts_with("Drain")).unwrap();
    let screen = tap(&session, &screen, &drain.label);
    assert!(screen.saved && screen.told.starts_with("Line taken into Mere Piece: drain"), "{}", screen.told);
    assert_eq!(lines(&session, &field), before + 1);
    assert!(rows(&screen).len() >= 2, "the rest of the file can still be taken");
}

fn line(name: &str, along: &[[f64; 2]]) -> Value {
    let geometry = serde_json::json!({ "type": "LineString", "coordinates": along });
    serde_json::json!({ "type": "Feature", "properties": { "name": name }, "geometry": geometry })
}

/// Lengths on WGS 84: 0.001° of longitude at 54.5° N is 64.8 m, 0.001° of latitude 111.3 m.
#[test]
fn a_drainage_plan_is_taken_whole_and_undone_whole() {
    let (_folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let before = lines(&session, &field);
    let files = tempfile::tempdir().unwrap();
    let drains = [[2.5, 54.5], [2.501, 54.5], [2.502, 54.5]]
        .map(|[east, north]| line("Drain", &[[east, north], [east, north + 0.001]]));
    let screen = choose(&session, &collection(files.path(), &drains));
    let all = rows(&screen)[0].title.replace('\u{a0}', " ");
    assert_eq!(all, "All 3 lines at once, 334 m");
    let screen = tap(&session, &screen, &rows(&screen)[0].title);
    assert_eq!(screen.answer.as_ref().unwrap().text, "What lies along these 3 lines?");
    assert_eq!(screen.caution, "");
    let drain = buttons(&screen).into_iter().find(|button| button.label.starts_with("Drain")).unwrap();
    let screen = tap(&session, &screen, &drain.label);
    assert!(
        screen.saved && screen.told.starts_with("3 lines taken into Mere Piece: drain"),
        "{}",
        screen.told
    );
    assert_eq!(lines(&session, &field), before + 3);
    session.tap(r#""undo""#.to_owned()).unwrap();
    assert_eq!(lines(&session, &field), before, "one save, one undo");
}

#[test]
fn a_swapped_file_is_read_the_right_way_round_and_says_so() {
    let (_folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let files = tempfile::tempdir().unwrap();
    let turned = |[west, south]: [f64; 2]| {
        let mut square = square("Turned", [west, south]);
        for corner in square["geometry"]["coordinates"][0].as_array_mut().unwrap() {
            corner.as_array_mut().unwrap().reverse();
        }
        square
    };
    let screen = choose(&session, &collection(files.path(), &[turned([2.5, 54.5])]));
    assert!(screen.caution.starts_with("Latitude and longitude are swapped"), "{}", screen.caution);
    let screen = tap(&session, &screen, &rows(&screen)[0].title);
    assert_eq!(screen.caution, "", "it lies where the field is");
    let screen = tap(&session, &screen, "Replace the edge");
    assert!(screen.saved, "{}", screen.told);
    assert_eq!(outline(&session, &field)[0], serde_json::json!([2.5, 54.5]));

    // Numbers that are on the globe only when swapped need no field to tell.
    session.tap(r#"{"go":"fields"}"#.to_owned()).unwrap();
    let screen = choose(&session, &collection(files.path(), &[turned([170.0, 54.5])]));
    assert!(screen.caution.starts_with("Latitude and longitude are swapped"), "{}", screen.caution);
}

#[test]
fn without_an_open_field_an_area_becomes_a_field_of_its_name() {
    let folder = tempfile::tempdir().unwrap();
    let session = open(folder.path()).unwrap();
    tap(&session, &session.screen().unwrap(), "English");
    let screen = choose(&session, &vector("rfc.geojson"));
    assert_eq!(screen.kind, ScreenKind::Fields);
    let title = rows(&screen)[0].title.clone();
    let screen = tap(&session, &screen, &title);
    assert!(screen.saved && screen.kind == ScreenKind::Field);
    assert!(screen.title.starts_with(title.split(',').next().unwrap()), "{title}: {}", screen.title);

    // A geometry alone has no name: the file's is taken.
    let bare = folder.path().join("home meadow.geojson");
    std::fs::write(&bare, square("", [2.0, 52.0])["geometry"].to_string()).unwrap();
    session.tap(r#"{"go":"fields"}"#.to_owned()).unwrap();
    let screen = choose(&session, &bare.display().to_string());
    let screen = tap(&session, &screen, &rows(&screen)[0].title);
    assert!(screen.title.starts_with("home meadow"), "{}", screen.title);
}

#[test]
fn what_is_wrong_with_a_file_is_one_sentence_of_the_readers_language() {
    let folder = tempfile::tempdir().unwrap();
    let files = tempfile::tempdir().unwrap();
    let whole = std::fs::read(vector("rfc.geojson")).unwrap();
    let far = square("Grid", [500_000.0, 5_700_000.0]).to_string();
    let point = r#"{"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[2,52]}}"#;
    let cases: [(&str, &[u8], &str, &str); 6] = [
        ("cut.geojson", &whole[..whole.len() / 2], "damaged or not complete", "beschädigt"),
        ("letter.txt", b"Dear neighbour", "no field boundaries", "keine lesbaren"),
        ("edge.dbf", b"\x03rest", "one part of a shapefile", "nur ein Teil"),
        ("point.geojson", point.as_bytes(), "no area and no line", "keine Fläche und keine Linie"),
        ("grid.geojson", far.as_bytes(), "cannot be followed", "nicht lesbar"),
        ("cut.kmz", b"PK\x03\x04cut", "damaged or not complete", "beschädigt"),
    ];
    for (language, german) in [("English", false), ("Deutsch", true)] {
        let home = folder.path().join(language);
        std::fs::create_dir(&home).unwrap();
        let session = at_new_edge(&home, language);
        let before = texts(&session.screen().unwrap());
        for (name, bytes, english, deutsch) in cases {
            let path = files.path().join(name);
            std::fs::write(&path, bytes).unwrap();
            let screen = choose(&session, &path.display().to_string());
            let expected = if german { deutsch } else { english };
            assert!(screen.told.contains(expected) && !screen.saved, "{name}: {}", screen.told);
            assert_eq!(texts(&screen), before, "{name}: one is where one was");
        }
    }
}

#[test]
fn a_file_that_was_left_is_gone_and_its_place_falls_back() {
    let folder = tempfile::tempdir().unwrap();
    let session = at_new_edge(folder.path(), "English");
    let screen = choose(&session, &vector("rfc.geojson"));
    let titles = |screen: &ShownScreen| rows(screen).into_iter().map(|row| row.title).collect::<Vec<_>>();
    let within = titles(&screen);
    drop(session);
    let session = open(folder.path()).unwrap();
    let again = session.screen().unwrap();
    assert_ne!(titles(&again), within, "the file is not kept over a restart");
    assert!(titles(&again).contains(&"Edge from a file".to_owned()));
    // A tap that is sent late finds nothing to take.
    let late = session.tap(r#"{"boundary":{"take_area":0}}"#.to_owned()).unwrap();
    assert!(!late.saved && !late.told.is_empty());
}
