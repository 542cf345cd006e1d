//! A phone takes an outline and a line out of files of other programs.

use crate::support;

use pitface_bindings::{BoundaryTaken, PitfaceError};
use serde_json::Value;
use std::path::Path;
use support::{field_id, noted, with_field};

/// A file that a general library wrote (`tests/outside/test_boundary.py`).
fn file(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors/boundary");
    folder.join(name).display().to_string()
}

const OUTLINE: BoundaryTaken =
    BoundaryTaken { number: 1, line_kind: None, depth_mm: None, swapped: false, anyway: false };

#[test]
fn an_outline_and_a_drain_are_taken_and_undone() {
    let (_folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let found = session.boundaries_in(file("simple.kmz"), false).unwrap();
    let labels: Vec<&str> = found.choices.iter().map(|choice| choice.label.as_str()).collect();
    assert!(labels[0].starts_with("Mere Piece, 21.9\u{a0}ha, 5 corners, one hole of"), "{labels:?}");
    assert_eq!(found.choices.iter().filter(|choice| choice.is_line).count(), 1);
    assert_eq!(found.said, "KMZ, degrees on WGS 84.");

    let screen = session.take_boundary(field.clone(), file("simple.kmz"), OUTLINE).unwrap();
    assert!(screen.told.starts_with("Outline of Mere Piece taken: 21.9"), "{}", screen.told);
    let drain = BoundaryTaken { line_kind: Some("drain".into()), depth_mm: Some(800), ..OUTLINE };
    session.take_boundary(field.clone(), file("degrees.gpkg"), drain.clone()).unwrap();
    let notes: Value = serde_json::from_str(&noted(&session, &field)).unwrap();
    assert_eq!(notes["field"]["outline"].as_array().unwrap().len(), 5);
    let lines = notes["field"]["lines"].as_array().unwrap();
    assert_eq!(
        (&lines.last().unwrap()["kind"], &lines.last().unwrap()["depth_mm"]),
        (&"drain".into(), &800.into())
    );

    let no_line =
        session.take_boundary(field.clone(), file("simple.kmz"), BoundaryTaken { number: 9, ..drain });
    assert!(matches!(no_line, Err(PitfaceError::Invalid { .. })));
}

#[test]
fn what_is_of_no_use_or_lies_elsewhere_is_told_and_not_saved() {
    let (folder, session) = with_field("mere_piece");
    let field = field_id(&session);
    let letter = folder.path().join("letter.txt");
    std::fs::write(&letter, "Dear neighbour").unwrap();
    let found = session.boundaries_in(letter.display().to_string(), false).unwrap();
    assert!(found.choices.is_empty() && found.said.contains("none of the kinds of file"), "{}", found.said);
    let gone = session.boundaries_in("nowhere.kml".into(), false).unwrap();
    assert!(gone.choices.is_empty() && !gone.said.is_empty());

    session.take_boundary(field.clone(), file("rfc.geojson"), OUTLINE).unwrap();
    let before = noted(&session, &field);
    let swapped = BoundaryTaken { swapped: true, ..OUTLINE };
    let screen = session.take_boundary(field.clone(), file("rfc.geojson"), swapped.clone()).unwrap();
    assert!(screen.told.contains("take them swapped"), "{}", screen.told);
    assert_eq!(noted(&session, &field), before);
    session
        .take_boundary(field.clone(), file("rfc.geojson"), BoundaryTaken { anyway: true, ..swapped })
        .unwrap();
    assert_ne!(noted(&session, &field), before);
}
