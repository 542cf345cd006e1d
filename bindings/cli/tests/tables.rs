//! `pitface tables`: what it writes, and that it writes it whole or not at all.

use crate::support;

use support::{ONE_PIT, Place};

const FILES: [&str; 12] = [
    "after_digs.csv",
    "fields.csv",
    "fields.geojson",
    "fields.gpkg",
    "layers.csv",
    "lines.csv",
    "parts.csv",
    "passes.csv",
    "pits.csv",
    "rolls.csv",
    "steps.csv",
    "zones.csv",
];

#[test]
fn it_says_what_it_wrote_and_writes_nothing_else() {
    let place = Place::new();
    let notes = place.file("one.notes.json", ONE_PIT);
    let said = place.good(&["tables", &notes, "--out", "made"]);
    assert!(
        said.starts_with("Written for other programs: one field with one pit.\nOne pit has no position"),
        "{said}"
    );
    assert_eq!(place.names("made"), FILES);
    let german = place.good(&["tables", &notes, "--out", "made", "--language", "de"]);
    assert!(
        german.starts_with("Für andere Programme geschrieben: ein Schlag mit einer Grube.\n"),
        "{german}"
    );
    let said = place.json(&["tables", &notes, "--out", "made"]);
    assert_eq!(said["written"].as_array().map(Vec::len), Some(FILES.len()));
    let field = &said["fields"][0];
    assert_eq!((&field["pits"], &field["pits_without_place"]), (&1.into(), &1.into()));
    assert_eq!(place.names("made"), FILES);
}

#[test]
fn where_one_file_is_at_fault_nothing_is_written() {
    let place = Place::new();
    let good = place.file("good.notes.json", ONE_PIT);
    let bad = place.file("bad.notes.json", &ONE_PIT.replace("moist", "damp"));
    assert!(place.bad(&["tables", &good, &bad, "--out", "made"]).contains("damp"));
    assert!(!place.path("made").exists());
}

#[test]
fn a_folder_in_the_way_is_told_and_the_rest_stays_as_it_was() {
    let place = Place::new();
    let notes = place.file("one.notes.json", ONE_PIT);
    std::fs::create_dir_all(place.path("made/fields.gpkg")).expect("a folder");
    std::fs::write(place.path("made/pits.csv"), "mine").expect("a file");
    assert!(place.bad(&["tables", &notes, "--out", "made"]).contains("a folder stands"));
    assert_eq!(place.names("made"), ["fields.gpkg", "pits.csv"]);
    assert_eq!(std::fs::read_to_string(place.path("made/pits.csv")).expect("the file"), "mine");
}

#[test]
fn a_store_is_written_whole_without_files() {
    let place = Place::new();
    let both = [place.notes("mere_piece"), place.notes("lapwing_ground")];
    place.good(&["read", &both[0], &both[1], "--store", "kept.pitface"]);
    let said = place.json(&["tables", "--store", "kept.pitface", "--out", "made"]);
    assert_eq!(said["fields"].as_array().map(Vec::len), Some(2));
    assert!(place.bad(&["tables", "--store", "none.pitface", "--out", "other"]).contains("none.pitface"));
    assert!(!place.path("other").exists() && !place.path("none.pitface").exists());
    assert!(place.bad(&["tables", "--out", "other"]).contains("FIELD.notes.json"));
}

#[test]
fn files_for_a_terminal_are_written_again_and_read_back() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    for _ in 0..2 {
        let said = place.good(&["tables", &notes, "--out", "made", "--also", "shapefile,task-data"]);
        assert!(
            said.contains("It is advice, not leave to work") && said.contains("what lies under this field"),
            "{said}"
        );
    }
    // The ground to be loosened lies where the GeoJSON has it, within a centimetre.
    let ring = |file: &str, area: usize| place.json(&["boundary", file])["areas"][area]["ring"].clone();
    let number =
        |place: &serde_json::Value| [place[0].as_f64(), place[1].as_f64()].map(Option::unwrap_or_default);
    let loosened = ring("made/loosen.zip", 0);
    let all = place.json(&["boundary", "made/fields.geojson"]);
    let corners: Vec<[f64; 2]> = all["areas"]
        .as_array()
        .expect("areas")
        .iter()
        .flat_map(|area| area["ring"].as_array().expect("a ring").iter().map(number))
        .collect();
    let loosened = loosened.as_array().expect("a ring");
    assert!(loosened.len() > 3);
    for corner in loosened {
        let [longitude, latitude] = number(corner);
        // A degree is 64.7 km east and 111.3 km north there, by the radii of WGS 84.
        let near = |its: &[f64; 2]| {
            let (east_m, north_m) = ((its[0] - longitude) * 64_700.0, (its[1] - latitude) * 111_300.0);
            east_m.hypot(north_m) < 0.01
        };
        assert!(corners.iter().any(near), "{corner}");
    }
    std::fs::write(place.path("made/zones.zip"), b"PK\x03\x04 mine").expect("a file");
    assert!(place.bad(&["tables", &notes, "--out", "made", "--also", "shapefile"]).contains("zones.zip"));
}

#[test]
fn a_plan_of_drains_is_taken_whole() {
    let place = Place::new();
    let notes = place.file("one.notes.json", ONE_PIT);
    let line = |east: f64| {
        format!(
            r#"{{"type": "Feature", "geometry": {{"type": "LineString", "coordinates": [[{east}, 54.5], [{east}, 54.51]]}}}}"#
        )
    };
    let plan = format!(
        r#"{{"type": "FeatureCollection", "features": [{},{},{}]}}"#,
        line(2.5),
        line(2.501),
        line(2.502)
    );
    let plan = place.file("drains.geojson", &plan);
    let take = ["boundary", &plan, "--kind", "drain", "--depth", "80cm", "--into", &notes];
    let said = place.json(&[&take[..], &["--every-line"]].concat());
    assert_eq!(said["taken"]["lines"], 3);
    assert_eq!(said["notes"]["field"]["lines"].as_array().map(Vec::len), Some(3));
    assert_eq!(said["notes"]["field"]["lines"][2]["depth_mm"], 800);
    let said = place.json(&[&take[..], &["--line", "1,3"]].concat());
    assert_eq!(said["taken"]["lines"], 2);
    assert!(place.bad(&take).contains("nothing says which lines to take"));
    assert!(place.bad(&[&take[..], &["--line", "4"]].concat()).contains("there is no line 4 in it"));
}
