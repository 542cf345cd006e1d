//! Outlines and lines in files of other programs: what files in the wild get wrong, each with the guess that is told, and files that general
//! libraries wrote (`tests/vectors/boundary`, see `tests/outside/test_boundary.py`), whole and broken.

#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test may fail; places are written as they were read"
)]

mod bad;

use pitface_core::boundary::{FromFile, LARGEST_BYTES, Misplaced, System, misplaced, read};
use pitface_core::place::{MixUp, OutlineFault};
use pitface_core::store::read_geopackage;
use proptest::prelude::*;
use proptest::sample::Index;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors/boundary")
}

fn files() -> Vec<(String, Vec<u8>)> {
    let mut names: Vec<PathBuf> =
        std::fs::read_dir(folder()).unwrap().map(|file| file.unwrap().path()).collect();
    names.sort();
    let read = |path: PathBuf| {
        (path.file_name().unwrap().to_string_lossy().into_owned(), std::fs::read(&path).unwrap())
    };
    names.into_iter().map(read).collect()
}

fn good(text: &str) -> FromFile {
    read("file", text.as_bytes(), false).unwrap()
}

fn fault(text: &str) -> String {
    read("file", text.as_bytes(), false).unwrap_err().to_string()
}

/// A triangle of GeoJSON.
fn triangle(places: [[f64; 2]; 3]) -> String {
    let [a, b, c] = places;
    format!(r#"{{"type": "Polygon", "coordinates": [[{a:?}, {b:?}, {c:?}, {a:?}]]}}"#)
}

#[test]
fn files_of_other_libraries_are_read() {
    for (name, bytes) in files() {
        let file = if name.ends_with("gpkg") {
            read_geopackage(&folder().join(&name), false).unwrap()
        } else {
            read(&name, &bytes, false).unwrap()
        };
        let first = file.areas.iter().find(|area| area.part.is_none()).unwrap();
        assert_eq!(first.ring.len() - usize::from(first.from_line), 5, "{name}");
        // 21.9296 ha by GeographicLib 2.1; the walk ends 3 m beside its beginning.
        assert!((first.area_m2 - 219_296.0).abs() < 50.0, "{name}: {}", first.area_m2);
        first.outline().unwrap();
    }
}

#[test]
fn heights_closing_repeats_and_byte_order_marks_do_no_harm() {
    let text = r#"{"type": "Feature", "properties": {"fid": 7, "Name": " Mere Piece "}, "geometry":
        {"type": "Polygon", "coordinates": [[[2.5, 54.5, 3], [2.5, 54.5], [2.51, 54.5, 3], [2.51, 54.51, 3], [2.5, 54.5, 3]]]}}"#;
    for begin in ["", "\u{feff}", "\n \t"] {
        let file = good(&format!("{begin}{text}"));
        let [area] = file.areas.as_slice() else { panic!("{file:?}") };
        assert_eq!(area.ring, [[2.5, 54.5], [2.51, 54.5], [2.51, 54.51]]);
        assert_eq!(area.name.as_deref(), Some("Mere Piece"), "the likeliest column, not the first");
    }
    let wide: Vec<u8> = [0xfeff].into_iter().chain(text.encode_utf16()).flat_map(u16::to_le_bytes).collect();
    assert_eq!(read("file", &wide, false).unwrap().areas.len(), 1);
}

#[test]
fn numbers_that_are_no_degrees_are_told_with_a_guess() {
    // Numbers of one place in several grids, by GDAL 3.6.2: 10.2 E, 52.1 N.
    let near = |x: f64, y: f64| fault(&triangle([[x, y], [x + 100.0, y], [x, y + 100.0]]));
    assert!(near(582_195.5, 5_772_839.8).contains("a map grid such as UTM, whose zone cannot be told"));
    assert!(near(32_582_195.5, 5_772_839.8).contains("UTM zone 32 with the zone's digits in front"));
    assert!(near(1_135_458.8, 6_818_227.0).contains("metres of a map grid"));
    assert!(near(1e12, 5.0).contains("no coordinates of the earth"));
    assert!(fault(&triangle([[54.5, 102.5], [54.51, 102.5], [54.51, 102.51]])).contains("take them swapped"));
    let swapped =
        read("file", triangle([[54.5, 2.5], [54.51, 2.5], [54.51, 2.51]]).as_bytes(), true).unwrap();
    assert_eq!(swapped.areas[0].ring[0], [2.5, 54.5]);
}

#[test]
fn reference_systems_of_older_geojson_are_heeded() {
    let with = |name: &str, places: [[f64; 2]; 3]| {
        let shape = triangle(places);
        let crs = format!(r#"{{"crs": {{"type": "name", "properties": {{"name": "{name}"}}}}, "#);
        shape.replacen('{', &crs, 1)
    };
    let metres = [[582_195.5, 5_772_839.8], [582_295.5, 5_772_839.8], [582_195.5, 5_772_939.8]];
    let file = good(&with("urn:ogc:def:crs:EPSG::25832", metres));
    let [longitude, latitude] = file.areas[0].ring[0];
    assert!((longitude - 10.2).abs() < 1e-6 && (latitude - 52.1).abs() < 1e-6, "{longitude} {latitude}");
    assert!(file.system.is_etrs() && file.system.is_metres() && file.system_stated);
    let degrees = [[10.2, 52.1], [10.21, 52.1], [10.2, 52.11]];
    assert_eq!(good(&with("urn:ogc:def:crs:OGC:1.3:CRS84", degrees)).system, System::Wgs84);
    assert_eq!(good(&with("EPSG:4258", degrees)).system, System::Etrs89);
    let refused = fault(&with("urn:ogc:def:crs:EPSG::31467", metres));
    assert!(refused.contains("EPSG::31467` is not read here") && refused.contains("EPSG:4326"), "{refused}");
}

#[test]
fn kml_as_people_type_it_is_read() {
    let ring = |text: &str| {
        let polygon = "<Polygon><outerBoundaryIs><LinearRing><coordinates>";
        let end = "</coordinates></LinearRing></outerBoundaryIs></Polygon>";
        format!(
            "<k:kml xmlns:k='x'><Document><Placemark><name>A &amp; B</name>{polygon}{text}{end}</Placemark></Document></k:kml>"
        )
    };
    // Blanks behind the commas, no closing repeat.
    let file = good(&ring("\n 2.5, 54.5, 0 2.51, 54.5, 0\n\t2.51 ,54.51,0 "));
    assert_eq!(file.areas[0].ring, [[2.5, 54.5], [2.51, 54.5], [2.51, 54.51]]);
    assert_eq!(file.areas[0].name.as_deref(), Some("A & B"));
    assert!(fault(&ring("2,5,54,5 2,6,54,5 2,6,54,6")).contains("decimals with a point"));
    assert!(fault(&ring("2.5 54.5")).contains("is no place"));
    let table = "<kml><Placemark><ExtendedData><SchemaData><SimpleData name='SCHLAG'>Lange Wand</SimpleData></SchemaData></ExtendedData>\
        <LineString><coordinates>2.5,54.5 2.6,54.5</coordinates></LineString></Placemark></kml>";
    assert_eq!(good(table).lines[0].name.as_deref(), Some("Lange Wand"));
}

#[test]
fn a_line_that_runs_round_is_an_area_too_and_one_that_crosses_itself_is_told() {
    let line = |places: &str| good(&format!(r#"{{"type": "LineString", "coordinates": [{places}]}}"#));
    let round = line("[2.5, 54.5], [2.51, 54.5], [2.51, 54.51], [2.5, 54.51], [2.5, 54.5001]");
    assert!(round.areas[0].from_line && round.lines.len() == 1);
    round.areas[0].outline().unwrap();
    assert!(line("[2.5, 54.5], [2.51, 54.5], [2.51, 54.51], [2.5, 54.51]").areas.is_empty(), "too far apart");
    let crossed = triangle([[2.5, 54.5], [2.51, 54.51], [2.51, 54.5]])
        .replace("[2.51, 54.5],", "[2.51, 54.5], [2.5, 54.51],");
    assert!(matches!(good(&crossed).areas[0].outline(), Err(OutlineFault::Crosses { .. })));
}

#[test]
fn a_field_on_the_antimeridian_keeps_its_area() {
    // The same field 20 degrees further west, by its own symmetry.
    let on = good(&triangle([[179.999, 10.0], [-179.999, 10.0], [-179.999, 10.002]]));
    let off = good(&triangle([[159.999, 10.0], [160.001, 10.0], [160.001, 10.002]]));
    assert!((on.areas[0].area_m2 - off.areas[0].area_m2).abs() < 1e-3, "{on:?}");
}

#[test]
fn what_lies_far_from_the_field_is_told_with_a_guess() {
    let ring = [[54.5, 2.5], [54.51, 2.5], [54.51, 2.51]];
    let pits = [[2.505, 54.505]];
    assert!(matches!(misplaced(&ring, &pits), Some(Misplaced { mix_up: Some(MixUp::Swapped), .. })));
    let far = misplaced(&[[3.5, 54.5]], &pits).unwrap();
    // A degree of longitude there, by the radius of that parallel on WGS 84.
    assert!(far.mix_up.is_none() && (far.distance_m - 64_500.0).abs() < 500.0, "{far:?}");
    assert_eq!(misplaced(&[[2.5, 54.5]], &pits), None);
    assert_eq!(misplaced(&ring, &[]), None, "nothing to compare");
}

/// A zipped file with one member.
fn zipped(name: &str, content: &[u8]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut archive = rawzip::ZipArchiveWriter::new(&mut bytes);
    let packed = miniz_oxide::deflate::compress_to_vec(content, 6);
    let (mut entry, config) =
        archive.new_file(name).compression_method(rawzip::CompressionMethod::DEFLATE).start().unwrap();
    let mut writer = config.wrap(std::io::sink());
    std::io::Write::write_all(&mut writer, content).unwrap();
    let (_, descriptor) = writer.finish().unwrap();
    std::io::Write::write_all(&mut entry, &packed).unwrap();
    entry.finish(descriptor).unwrap();
    archive.finish().unwrap();
    bytes
}

#[test]
fn a_zipped_file_unpacks_to_no_more_than_is_sensible() {
    let shape = triangle([[2.5, 54.5], [2.51, 54.5], [2.51, 54.51]]);
    assert_eq!(read("a.zip", &zipped("fields/A.GEOJSON", shape.as_bytes()), false).unwrap().areas.len(), 1);
    let bomb = zipped("doc.kml", &vec![b' '; LARGEST_BYTES + 1]);
    assert!(bomb.len() < 100_000);
    assert!(read("a.kmz", &bomb, false).unwrap_err().to_string().contains("more than 16 MiB"));
    let other = read("a.zip", &zipped("letter.txt", b"Dear neighbour"), false).unwrap_err();
    assert!(other.to_string().contains("nothing in this zipped file is read here"));
    let nested = zipped("a.zip", &zipped("doc.kml", b"<kml/>"));
    read("a.zip", &nested, false).unwrap_err();
}

#[test]
fn deep_nesting_breaks_nothing() {
    let depth = 100_000;
    let xml = format!("<kml>{}{}</kml>", "<Folder>".repeat(depth), "</Folder>".repeat(depth));
    read("deep.kml", xml.as_bytes(), false).unwrap_err();
    let json = format!(
        "{}{}",
        r#"{"type": "GeometryCollection", "geometries": ["#.repeat(depth),
        "]}".repeat(depth)
    );
    read("deep.json", json.as_bytes(), false).unwrap_err();
}

/// Where to break a file, and how.
type Break = (Index, u8, u8);

fn broken(bytes: &[u8], breaks: &[Break]) -> Vec<u8> {
    let mut bytes = bytes.to_vec();
    for (at, how, with) in breaks {
        if bytes.is_empty() {
            break;
        }
        let at = at.index(bytes.len());
        match how % 4 {
            0 => bytes[at] = *with,
            1 => bytes[at] ^= 1 << (with % 8),
            2 => bytes.truncate(at),
            _ => bytes.insert(at, *with),
        }
    }
    bytes
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, ..ProptestConfig::default() })]

    /// A broken file gives areas on the globe, or a fault that says what to do; never a panic.
    #[test]
    fn broken_files_break_nothing(
        which in any::<Index>(),
        breaks in prop::collection::vec((any::<Index>(), any::<u8>(), any::<u8>()), 1..8),
        swapped in any::<bool>(),
    ) {
        let files = files();
        let (name, bytes) = &files[which.index(files.len())];
        let bytes = broken(bytes, &breaks);
        let read = if name.ends_with("gpkg") {
            let folder = tempfile::tempdir().unwrap();
            let path = folder.path().join(name);
            std::fs::write(&path, &bytes).unwrap();
            read_geopackage(&path, swapped)
        } else {
            read(name, &bytes, swapped)
        };
        match read {
            Ok(file) => {
                for [longitude, latitude] in file.areas.iter().flat_map(|area| &area.ring) {
                    prop_assert!(longitude.abs() <= 180.0 && latitude.abs() <= 90.0);
                }
                for area in &file.areas {
                    prop_assert!(area.area_m2.is_finite() && area.ring.len() >= 3);
                    let _ = area.outline();
                }
            }
            Err(fault) => prop_assert!(!fault.wrong.is_empty() && !fault.todo.is_empty()),
        }
    }

    /// The unzipped parts of a shapefile, broken: deflate would hide most of it.
    #[test]
    fn broken_shapefiles_break_nothing(
        which in 0..4_usize,
        part in any::<Index>(),
        breaks in prop::collection::vec((any::<Index>(), any::<u8>(), any::<u8>()), 1..8),
    ) {
        let name = ["utm.zip", "etrs89.zip", "web.zip", "pyshp.zip"][which];
        let bytes = std::fs::read(folder().join(name)).unwrap();
        let archive = rawzip::ZipArchive::from_slice(&bytes).unwrap();
        let mut parts = Vec::new();
        let mut entries = archive.entries();
        while let Some(entry) = entries.next_entry().unwrap() {
            let name = String::from_utf8(entry.file_path().as_bytes().to_vec()).unwrap();
            let data = archive.get_entry(entry.wayfinder()).unwrap().data();
            parts.push((name, miniz_oxide::inflate::decompress_to_vec(data).unwrap()));
        }
        let at = part.index(parts.len());
        parts[at].1 = broken(&parts[at].1, &breaks);
        let mut again = Vec::new();
        let mut archive = rawzip::ZipArchiveWriter::new(&mut again);
        for (name, content) in &parts {
            let (mut entry, config) = archive.new_file(name).start().unwrap();
            let mut writer = config.wrap(&mut entry);
            std::io::Write::write_all(&mut writer, content).unwrap();
            let (_, descriptor) = writer.finish().unwrap();
            entry.finish(descriptor).unwrap();
        }
        archive.finish().unwrap();
        if let Err(fault) = read(name, &again, false) {
            prop_assert!(!fault.wrong.is_empty() && !fault.todo.is_empty());
        }
    }
}
