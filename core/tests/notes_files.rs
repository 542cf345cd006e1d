//! The notes files that come with the project: the published decision cases and the invented estate. Every one is
//! read without a fault or an unknown key, and written back the same.

use crate::notes_support;

use notes_support::read;
use pitface_core::record::{FieldNotes, PlaceKind, notes};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// The notes files of a folder, by name.
fn files(folder: &str) -> BTreeMap<String, FieldNotes> {
    let paths = fs::read_dir(root().join(folder)).unwrap().map(|entry| entry.unwrap().path());
    let files = paths.map(|path| {
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        assert!(name.ends_with(".notes.json"), "{name}");
        let text = fs::read_to_string(path).unwrap();
        let good = read(&text);
        assert!(good.unknown_keys.is_empty(), "{name}: {:?}", good.unknown_keys);
        assert_eq!(read(&notes::write(&good.notes)).notes, good.notes, "{name}");
        (name, good.notes)
    });
    files.collect()
}

#[test]
fn every_decision_case_is_a_good_file() {
    assert!(files("tests/vectors/decisions").len() >= 11);
}

#[test]
fn the_invented_estate_is_all_there() {
    let estate = files("bindings/cli/demo");
    assert!(estate.len() >= 6, "{} fields", estate.len());
    let names: BTreeSet<&str> = estate.values().map(|notes| notes.field.name.as_str()).collect();
    assert_eq!(names.len(), estate.len(), "no name twice");
    let mut places = BTreeSet::new();
    for (name, notes) in &estate {
        assert!((3..=8).contains(&notes.pits.len()), "{name}");
        for pit in &notes.pits {
            places.insert(pit.place);
            let last = pit.walk.last().map(|step| step.to_mm);
            assert_eq!(last, pit.dug_to_mm, "{name}: the walk goes down to the hole's bottom");
            assert!(
                pit.walk.windows(2).all(|pair| pair[1].to_mm - pair[0].to_mm == 50),
                "{name}: 50 mm a step"
            );
            assert!(pit.at.is_some() && pit.dug.is_some() && pit.face.is_some(), "{name}");
        }
    }
    let all: BTreeSet<PlaceKind> = PlaceKind::ALL.iter().copied().collect();
    assert_eq!(places, all);
}

/// Metres a degree of longitude and of latitude on the estate.
const METRES: [f64; 2] = [64_770.0, 111_312.0];

/// Returns whether a point lies in a ring, and its distance from it in metres.
fn in_ring(ring: &[[f64; 2]], point: [f64; 2]) -> (bool, f64) {
    let flat = |point: [f64; 2]| [point[0] * METRES[0], point[1] * METRES[1]];
    let [x, y] = flat(point);
    let (mut inside, mut nearest) = (false, f64::INFINITY);
    for (index, &corner) in ring.iter().enumerate() {
        let ([ax, ay], [bx, by]) = (flat(corner), flat(ring[(index + 1) % ring.len()]));
        if (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax) {
            inside = !inside;
        }
        let along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax).powi(2) + (by - ay).powi(2));
        let along = along.clamp(0.0, 1.0);
        nearest = nearest.min((ax + along * (bx - ax) - x).hypot(ay + along * (by - ay) - y));
    }
    (inside, nearest)
}

#[test]
fn on_the_estate_every_pit_lies_where_its_place_says() {
    for (name, notes) in files("bindings/cli/demo") {
        let headland_m = f64::from(notes.field.headland_mm.unwrap()) / 1_000.0;
        for (index, pit) in notes.pits.iter().enumerate() {
            let at = pit.at.unwrap();
            let (inside, edge_m) = in_ring(&notes.field.outline, [at.longitude_deg, at.latitude_deg]);
            let on_headland = edge_m <= headland_m;
            let wanted = matches!(pit.place, PlaceKind::Headland | PlaceKind::Gateway);
            assert!(inside, "{name}: pit {index} lies in its field");
            assert_eq!(on_headland, wanted, "{name}: pit {index}, {edge_m:.1} m from the edge");
        }
    }
}
