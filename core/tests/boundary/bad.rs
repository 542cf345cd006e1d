//! Files from which nothing can be taken, each with the sentence that says why.

use super::{folder, triangle, zipped};
use pitface_core::boundary::{LARGEST_BYTES, MOST_CORNERS, Trouble, is_geopackage, read};
use pitface_core::error::Fault;
use pitface_core::store::read_geopackage;
use std::collections::BTreeSet;

/// A bad file: its name, its bytes, and a part of what is told.
struct Bad(String, Vec<u8>, &'static str);

fn text(name: &str, text: impl Into<String>, said: &'static str) -> Bad {
    Bad(name.to_owned(), text.into().into_bytes(), said)
}

fn collection(inner: &str) -> String {
    format!(r#"{{"type": "FeatureCollection", "features": [{inner}]}}"#)
}

fn kml(coordinates: &str) -> String {
    format!(
        "<kml><Placemark><LineString><coordinates>{coordinates}</coordinates></LineString></Placemark></kml>"
    )
}

fn in_system(name: &str) -> String {
    let crs = format!(r#"{{"crs": {{"type": "name", "properties": {{"name": "{name}"}}}}, "#);
    triangle([[10.2, 52.1], [10.21, 52.1], [10.2, 52.11]]).replacen('{', &crs, 1)
}

fn texts() -> Vec<Bad> {
    let point = r#"{"type": "Feature", "geometry": {"type": "Point", "coordinates": [2.5, 54.5]}}"#;
    let metres = |x: f64, y: f64| triangle([[x, y], [x + 100.0, y], [x, y + 100.0]]);
    let corners: Vec<String> =
        (0..=MOST_CORNERS).map(|at| format!("[2.5, {}]", 50.0 + at as f64 * 1e-5)).collect();
    let long = format!(r#"{{"type": "LineString", "coordinates": [{}]}}"#, corners.join(","));
    let deep = format!("<kml>{}{}</kml>", "<Folder>".repeat(5_000), "</Folder>".repeat(5_000));
    vec![
        text("letter.txt", "Dear neighbour", "none of the kinds of file that are read here"),
        text("empty.json", "", "none of the kinds"),
        text("fields.dbf", "\u{3}~\u{1}", "zip the .shp, .dbf and .prj of one name together"),
        text("cut.json", "{", "this is no JSON"),
        text("nothing.json", "{}", "nothing says what it is"),
        text("topo.json", r#"{"type": "Topology"}"#, "TopoJSON"),
        text("list.json", r#"{"type": "FeatureCollection"}"#, "the list of features is missing"),
        text("circle.json", r#"{"type": "Circle", "coordinates": []}"#, "`Circle` is no kind of geometry"),
        text("bare.json", r#"{"type": "Polygon"}"#, "no list of coordinates stands here"),
        text(
            "quoted.json",
            r#"{"type": "Polygon", "coordinates": [[["2.5", "54.5"]]]}"#,
            "is not a position",
        ),
        text("none.json", collection(""), "there is no area and no line in it"),
        text("points.json", collection(point), "there are 1 points in it, but no area and no line"),
        text("long.json", long, "simplify it in the program it comes from"),
        text("gauss.json", in_system("urn:ogc:def:crs:EPSG::31467"), "EPSG::31467` is not read here"),
        text("utm.json", metres(582_195.5, 5_772_839.8), "a map grid such as UTM, whose zone cannot be told"),
        text("zone.json", metres(32_582_195.5, 5_772_839.8), "UTM zone 32 with the zone's digits in front"),
        text("web.json", metres(1_135_458.8, 6_818_227.0), "metres of a map grid"),
        text("space.json", metres(1e12, 5.0), "no coordinates of the earth"),
        text("swapped.json", triangle([[54.5, 102.5], [54.51, 102.5], [54.51, 102.51]]), "take them swapped"),
        text("page.html", "<html></html>", "XML of another kind (`html`)"),
        text("open.kml", "<kml><Placemark></kml>", "no XML that can be read (expected"),
        text(
            "entity.kml",
            "<!DOCTYPE k [<!ENTITY a 'b'>]><kml>&a;</kml>",
            "no XML that can be read (XML with DTD",
        ),
        text("deep.kml", deep, "nested deeper than any program nests them"),
        text("link.kml", "<kml><NetworkLink/></kml>", "links to a file that lies elsewhere"),
        text("comma.kml", kml("2,5,54,5 2,6,54,5"), "decimals with a point, not a comma"),
        text("half.kml", kml("2.5 54.5"), "`2.5` is no place"),
        text(
            "comma.gpx",
            "<gpx><trk><trkseg><trkpt lat='54,5' lon='2'/></trkseg></trk></gpx>",
            "`54,5` is no lat",
        ),
    ]
}

fn binaries() -> Vec<Bad> {
    let bad = |name: &str, bytes: Vec<u8>, said| Bad(name.to_owned(), bytes, said);
    let shapes = |bytes: &[u8]| zipped("a.shp", bytes);
    let mut locked = zipped("a.kml", b"<kml/>");
    // The first byte of what is packed: behind the head and the name.
    locked[30 + "a.kml".len()] = 0xff;
    vec![
        bad("ansi.txt", vec![b'{', 0xfc, 0xe4], "neither UTF-8 text nor a zipped file"),
        bad("a.shp", vec![0, 0, 0x27, 0x0a, 0], "this is a part of a shapefile"),
        bad("large.json", vec![b' '; LARGEST_BYTES + 1], "more than 16 MiB"),
        bad("cut.zip", b"PK\x03\x04 and no more".to_vec(), "this zipped file is broken off or damaged"),
        bad(
            "letter.zip",
            zipped("letter.txt", b"Dear neighbour"),
            "nothing in this zipped file is read here",
        ),
        bad("locked.zip", locked, "this file within is damaged, or has a password"),
        bad("short.zip", shapes(&[0; 50]), "this shapefile is broken off"),
        bad("torn.zip", shapes(&[1; 120]), "the shapefile is broken off or damaged here"),
    ]
}

/// What spoils the sound GeoPackage of the vectors, and what is told.
const SPOILT: [(&str, &str); 5] = [
    ("DELETE FROM gpkg_spatial_ref_sys WHERE srs_id = 4326", "nothing says in which reference system it is"),
    (
        "UPDATE gpkg_spatial_ref_sys SET organization = 'X', definition = 'none', srs_name = 'Old grid' WHERE srs_id = 4326",
        "its reference system (Old grid) is not read here",
    ),
    ("UPDATE gpkg_geometry_columns SET column_name = 'gone'", "its column of geometries is missing"),
    ("UPDATE TABLE SET COLUMN = 'a text'", "no geometry stands in this row"),
    ("UPDATE TABLE SET COLUMN = x'4750'", "the geometry of this row cannot be read"),
];

fn spoilt(how: &str) -> Fault {
    let kept = tempfile::tempdir().unwrap();
    let path = kept.path().join("spoilt.gpkg");
    std::fs::copy(folder().join("degrees.gpkg"), &path).unwrap();
    let base = rusqlite::Connection::open(&path).unwrap();
    let (table, column): (String, String) = base
        .query_row("SELECT table_name, column_name FROM gpkg_geometry_columns", [], |row| {
            Ok((row.get(0)?, row.get(1)?))
        })
        .unwrap();
    // The triggers of another program's index would need its functions.
    let triggers: Vec<String> = base
        .prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'")
        .unwrap()
        .query_map([], |row| row.get(0))
        .unwrap()
        .map(Result::unwrap)
        .collect();
    for trigger in triggers {
        base.execute_batch(&format!("DROP TRIGGER \"{trigger}\"")).unwrap();
    }
    base.pragma_update(None, "foreign_keys", false).unwrap();
    base.execute_batch(&how.replace("TABLE", &table).replace("COLUMN", &column)).unwrap();
    base.close().unwrap();
    read_geopackage(&path, false).unwrap_err()
}

#[test]
fn each_kind_of_bad_file_has_its_sentence() {
    let mut sentences = BTreeSet::new();
    let mut kinds = BTreeSet::new();
    for Bad(name, bytes, said) in texts().into_iter().chain(binaries()) {
        assert!(!is_geopackage(&bytes));
        let fault = read(&name, &bytes, false).unwrap_err();
        assert!(fault.to_string().contains(said), "{name}: {fault}");
        assert!(!fault.todo.is_empty(), "{name}");
        kinds.insert(Trouble::of(&name, &bytes, &fault));
        sentences.insert(said);
    }
    for (how, said) in SPOILT {
        let fault = spoilt(how);
        assert!(fault.to_string().contains(said) && !fault.todo.is_empty(), "{how}: {fault}");
        sentences.insert(said);
    }
    assert!(sentences.len() >= 38, "{} sentences", sentences.len());
    assert_eq!(kinds.len(), Trouble::ALL.len(), "and each sentence of a phone is told of one of them");
}
