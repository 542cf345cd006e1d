//! A file with the edges of fields on a phone: the nearest area first, an area no field can have told, and each file known by how it begins.
#![allow(clippy::unwrap_used, reason = "a test may fail by it")]

mod screen_pit_support;

use pitface_core::boundary::{Trouble, away_m, begins, lies_swapped, read};
use pitface_core::screen::boundary::{BoundaryAct, InFile};
use pitface_core::screen::{Act, Input, Place, Screen, World, show, tap};
use pitface_core::words::Language;
use screen_pit_support::{Phone, fix_at};
use serde_json::{Value, json};

fn ring([west, south]: [f64; 2]) -> Vec<[f64; 2]> {
    let (east, north) = (west + 0.002, south + 0.001);
    vec![[west, south], [east, south], [east, north], [west, north], [west, south]]
}

fn feature(name: &str, ring: &[[f64; 2]]) -> Value {
    json!({ "type": "Feature", "properties": { "name": name }, "geometry": { "type": "Polygon", "coordinates": [ring] } })
}

fn file(features: &[Value]) -> InFile {
    let text = json!({ "type": "FeatureCollection", "features": features }).to_string();
    let found = read("holding.json", text.as_bytes(), false).unwrap();
    InFile { name: "holding".into(), found, swapped: false }
}

const NOWHERE: Place = Place::Boundary { field: None, chosen: None };

fn shown(phone: &Phone, file: &InFile) -> Screen {
    show(NOWHERE, &World { boundary: Some(file), ..phone.world() })
}

fn titles(screen: &Screen) -> Vec<&str> {
    screen.rows().map(|row| row.title.split(',').next().unwrap()).collect()
}

#[test]
fn the_nearest_area_stands_first_and_the_order_of_the_file_without_a_position() {
    let areas = [("Far", [2.2, 54.5]), ("Here", [2.502, 54.5]), ("Near", [2.51, 54.5])];
    let file = file(&areas.map(|(name, corner)| feature(name, &ring(corner))));
    let mut phone = Phone::new(Language::English, Vec::new());
    phone.fix = Some(fix_at(2.503, 54.5005));
    let screen = shown(&phone, &file);
    assert_eq!(titles(&screen), ["Here", "Near", "Far"]);
    assert_eq!(screen.rows().next().unwrap().lines, ["You are in it."]);
    phone.fix = None;
    assert_eq!(titles(&shown(&phone, &file)), ["Far", "Here", "Near"]);
}

/// One thousandth of a degree of latitude at 54.5° N is 111.3 m on WGS 84 (meridian radius a(1 − e²)/(1 − e² sin² φ)^1.5).
#[test]
fn how_far_an_area_lies_is_told_from_its_nearest_corner() {
    let area = ring([2.5, 54.5]);
    let away = away_m(&area[..4], [2.5, 54.499]);
    assert!((away - 111.3).abs() < 0.1, "{away}");
    assert!(away_m(&area[..4], [2.501, 54.5005]) <= 0.0);
}

#[test]
fn an_area_whose_sides_cross_is_told_and_not_taken() {
    let bow = [[2.5, 54.5], [2.502, 54.501], [2.502, 54.5], [2.5, 54.501], [2.5, 54.5]];
    let file = file(&[feature("Bow", &bow)]);
    let phone = Phone::new(Language::German, Vec::new());
    let act = Act::from(BoundaryAct::TakeArea(0));
    let world = World { boundary: Some(&file), ..phone.world() };
    let mut new_id = || panic!("nothing new");
    let done = tap(NOWHERE, &act, Input::default(), &world, &mut new_id).unwrap();
    assert!(done.edits.is_empty() && done.told.contains("kreuzen"), "{}", done.told);
}

#[test]
fn of_a_county_only_the_first_are_shown_and_the_rest_is_told() {
    let many: Vec<Value> =
        (0..200).map(|at| feature(&format!("F{at}"), &ring([2.0 + f64::from(at) * 0.01, 54.5]))).collect();
    let phone = Phone::new(Language::English, Vec::new());
    let screen = shown(&phone, &file(&many));
    assert_eq!(screen.rows().count(), 60);
    assert!(screen_pit_support::texts(&screen).contains(&"60 of 200 are shown.".to_owned()));
}

#[test]
fn a_file_is_known_by_how_it_begins() {
    for text in [
        r#"{"type":"Polygon","coordinates":[]}"#,
        r#" {"features":[],"type":"FeatureCollection"}"#,
        "<kml/>",
        "PK\u{3}\u{4}",
    ] {
        assert!(begins(text.as_bytes()), "{text}");
    }
    let notes = r#"{"pitface":1,"field":{"name":"A","type":"x","coordinates":[]}}"#;
    for text in [notes, "Dear neighbour", "", "{}"] {
        assert!(!begins(text.as_bytes()), "{text}");
    }
    let swapped =
        feature("Swapped", &[[54.5, 170.0], [54.5, 170.1], [54.6, 170.1], [54.5, 170.0]]).to_string();
    let fault = read("a.json", swapped.as_bytes(), false).unwrap_err();
    assert_eq!(Trouble::of("a.json", swapped.as_bytes(), &fault), Trouble::Swapped);
}

fn latitude_first(ring: &[[f64; 2]]) -> Vec<[f64; 2]> {
    ring.iter().map(|[east, north]| [*north, *east]).collect()
}

#[test]
fn a_file_lies_swapped_where_only_that_brings_something_of_it_near() {
    let (here, far) = (ring([2.5, 54.5]), ring([9.0, 48.0]));
    let lies = |features: &[Value], known: &[[f64; 2]]| lies_swapped(&file(features).found, known);
    let there = [[2.503, 54.501]];
    assert!(lies(&[feature("A", &latitude_first(&far)), feature("B", &latitude_first(&here))], &there));
    assert!(!lies(&[feature("A", &latitude_first(&here)), feature("B", &here)], &there), "one lies right");
    assert!(!lies(&[feature("A", &far)], &there), "elsewhere, but not swapped");
    assert!(!lies(&[feature("A", &latitude_first(&here))], &[]), "nothing to hold it against");
}

#[test]
fn a_file_that_was_read_swapped_says_so() {
    let phone = Phone::new(Language::English, Vec::new());
    let right = file(&[feature("A", &ring([2.5, 54.5]))]);
    assert_eq!(shown(&phone, &right).caution, "");
    let caution = shown(&phone, &InFile { swapped: true, ..right }).caution;
    assert!(caution.starts_with("Latitude and longitude are swapped in this file."), "{caution}");
}
