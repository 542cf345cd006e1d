//! Tables for other programs: whole in each format, and nothing in them that was not noted.

mod maps;

use geo::{GeodesicArea, Polygon, Validation};
use pitface_core::answer::FieldAnswer;
use pitface_core::place::{Rings, circle_of, ground_of, line_of, on_grid};
use pitface_core::record::{Field, FieldNotes, Pit, PlaceKind, Position, RecordId};
use pitface_core::store::{Packed, StoreError, write_geopackage};
use pitface_core::tables::{Cell, DECIMALS, FieldTold, Holds, Shape, Table, csv, geojson, tables};
use proptest::prelude::*;
use serde_json::Value;

fn id(number: u8) -> RecordId {
    RecordId::new(1_700_000_000_000, [number; 10])
}

fn told(all: &[FieldNotes], lasts: bool) -> Vec<Table> {
    let answers: Vec<FieldAnswer> = all.iter().map(|notes| FieldAnswer::of(notes.clone(), None)).collect();
    let lasts = |_: RecordId| lasts;
    let fields: Vec<FieldTold> = answers.iter().map(|answer| FieldTold { answer, lasts: &lasts }).collect();
    tables(&fields)
}

fn table<'a>(all: &'a [Table], name: &str) -> &'a Table {
    all.iter().find(|table| table.name == name).unwrap()
}

fn pit_at(longitude_deg: f64, latitude_deg: f64) -> Pit {
    let at = Position { longitude_deg, latitude_deg, accuracy_m: Some(9_007_199_254_740_992.0) };
    Pit { at: Some(at), dug_to_mm: Some(u32::MAX), ..Pit::new(id(2), PlaceKind::Open) }
}

#[test]
fn a_field_of_which_only_the_name_is_known_has_every_table() {
    let all = told(&[FieldNotes::new(Field::new(id(1), "Long Sedge"), Vec::new())], true);
    let names: Vec<_> = all.iter().map(|table| table.name).collect();
    let wanted = "fields zones parts lines pits steps layers rolls passes after_digs";
    assert_eq!(names.join(" "), wanted);
    for table in &all {
        assert_eq!(table.rows.len(), usize::from(table.name == "fields"), "{}", table.name);
        let lines = String::from_utf8(csv(table)).unwrap();
        assert!(lines.starts_with("field_number,field,field_id") && lines.ends_with("\r\n"), "{lines}");
    }
    let features: Value = serde_json::from_str(&geojson(&all)).unwrap();
    assert_eq!(features["features"].as_array().map(Vec::len), Some(1));
    assert_eq!(features["features"][0]["geometry"], Value::Null);
    assert_eq!(features["features"][0]["properties"]["headland_mm"], Value::Null);
}

#[test]
fn no_fields_are_an_empty_collection() {
    let features: Value = serde_json::from_str(&geojson(&told(&[], true))).unwrap();
    assert_eq!(features["features"], Value::Array(Vec::new()));
}

#[test]
fn a_column_holds_what_it_says_in_every_row() {
    let mut notes = FieldNotes::new(Field::new(id(1), "Long Sedge"), vec![pit_at(2.5, 54.5)]);
    notes.pits.push(Pit::new(id(3), PlaceKind::Reference));
    for table in told(&[notes], true) {
        for row in &table.rows {
            assert_eq!(row.cells.len(), table.columns.len());
            for (column, cell) in table.columns.iter().zip(&row.cells) {
                let right = matches!(
                    (column.holds, cell),
                    (_, Cell::Empty)
                        | (Holds::Text | Holds::Day, Cell::Text(_))
                        | (Holds::Whole, Cell::Whole(_))
                        | (Holds::Number, Cell::Number(_))
                        | (Holds::Flag, Cell::Flag(_))
                        | (Holds::Lengths, Cell::Lengths(_))
                );
                assert!(right, "{}.{}: {cell:?}", table.name, column.name);
            }
        }
    }
}

#[test]
fn numbers_keep_their_digits_and_places_have_seven() {
    let notes = FieldNotes::new(
        Field::new(id(1), "Long Sedge"),
        vec![
            pit_at(180.0, 90.0),
            pit_at(-180.0, -90.0),
            pit_at(-1e-9, 0.123_456_789),
            Pit::new(id(3), PlaceKind::Open),
        ],
    );
    let all = told(&[notes], true);
    let pits = String::from_utf8(csv(table(&all, "pits"))).unwrap();
    let ends: Vec<_> =
        pits.lines().skip(1).map(|line| line.rsplitn(3, ',').take(2).collect::<Vec<_>>()).collect();
    assert_eq!(ends, [["90", "180"], ["-90", "-180"], ["0.1234568", "0"], ["", ""]]);
    assert!(pits.contains(",9007199254740992,") && pits.contains(",4294967295,"), "{pits}");
    let text = geojson(&all);
    assert!(text.contains("\"coordinates\":[0.0,0.1234568]"), "{text}");
    assert!(text.contains("\"accuracy_m\":9007199254740992.0") && text.contains("\"dug_to_mm\":4294967295"));
    let exact: Vec<_> = table(&all, "pits").rows.iter().map(|row| row.shape.clone()).collect();
    assert_eq!(exact[2], Some(Shape::Point([-1e-9, 0.123_456_789])));
    assert_eq!(exact[3], None);
}

#[test]
fn an_id_that_does_not_last_is_not_told() {
    let notes = || FieldNotes::new(Field::new(id(1), "Long Sedge"), vec![pit_at(2.5, 54.5)]);
    assert!(geojson(&told(&[notes()], true)).contains(&id(2).to_string()));
    let text = geojson(&told(&[notes()], false));
    assert!(!text.contains("\"id\"") && text.contains("\"pit_id\":null"), "{text}");
}

#[test]
fn a_geopackage_is_not_written_over_something() {
    let folder = tempfile::tempdir().unwrap();
    let (there, fresh) = (folder.path().join("there.gpkg"), folder.path().join("fresh.gpkg"));
    std::fs::write(&there, "something").unwrap();
    let all = told(&[FieldNotes::new(Field::new(id(1), "Long Sedge"), Vec::new())], true);
    let at = chrono::DateTime::UNIX_EPOCH;
    let write = |path: &std::path::Path| {
        let packed = Packed { tables: &all, styles: &[], photos: &mut std::iter::empty() };
        write_geopackage(path, packed, at)
    };
    assert!(matches!(write(&there), Err(StoreError::NotAStore(_))));
    assert_eq!(std::fs::read(&there).unwrap(), b"something");
    write(&fresh).unwrap();
    let names: Vec<_> =
        std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(names.len(), 2, "nothing beside it: {names:?}");
    let again = folder.path().join("again.gpkg");
    write(&again).unwrap();
    assert_eq!(std::fs::read(&again).unwrap(), std::fs::read(&fresh).unwrap(), "the same comes out the same");
}

#[test]
fn a_line_across_the_antimeridian_is_cut_where_it_crosses() {
    let pieces = line_of(&[[179.0, 10.0], [-179.0, 10.0], [-178.0, 10.0]]);
    // The shortest line between two places of one latitude bends towards the pole.
    let [[seam, north], [other, same]] = [pieces[0][1], pieces[1][0]];
    assert_eq!((seam, other, north.to_bits()), (180.0, -180.0, same.to_bits()));
    assert!((10.0..10.01).contains(&north), "{north}");
    assert_eq!([pieces[0][0], pieces[1][1], pieces[1][2]], [[179.0, 10.0], [-179.0, 10.0], [-178.0, 10.0]]);
    assert_eq!(line_of(&[[2.5, 54.5], [2.6, 54.5]]), [[[2.5, 54.5], [2.6, 54.5]]]);
    assert_eq!(line_of(&[[180.0, 1.0], [-179.0, 1.0]]).len(), 1);
    assert!(line_of(&[[2.5, 54.5]]).is_empty());
}

fn polygon(rings: &Rings) -> Polygon {
    let ring = |ring: &Vec<[f64; 2]>| ring.iter().map(|&place| geo::Coord::from(place)).collect();
    Polygon::new(ring(&rings[0]), rings[1..].iter().map(ring).collect())
}

fn area_m2(pieces: &[Rings]) -> f64 {
    pieces.iter().map(|rings| polygon(rings).geodesic_area_signed()).sum()
}

#[test]
fn sides_that_rounding_crosses_are_put_right() {
    // The sliver between the first and the last side is narrower than the grid.
    let sliver = vec![[0.0, 0.0], [4.0, 0.4], [8.0, 0.0], [8.0, 8.0], [3.6, 0.4], [0.0, 0.0]];
    let pieces = on_grid(&vec![sliver], 0);
    assert!(!pieces.is_empty());
    assert!(pieces.iter().flatten().flatten().flatten().all(|degrees| degrees.fract() == 0.0), "{pieces:?}");
    assert!(pieces.iter().all(|rings| polygon(rings).is_valid()), "{pieces:?}");
    // A ring smaller than the grid has no ground on it.
    assert!(on_grid(&vec![vec![[0.1, 0.1], [0.2, 0.1], [0.2, 0.2], [0.1, 0.1]]], 0).is_empty());
    assert!(on_grid(&Vec::new(), 7).is_empty());
}

proptest! {
    /// Corners so near each other that rounding moves them past each other.
    #[test]
    fn on_the_grid_no_sides_cross(reach in prop::collection::vec(0.05..6.0_f64, 5..40)) {
        let count = reach.len() as f64;
        let corner = |(at, reach): (usize, &f64)| {
            let angle = at as f64 / count * std::f64::consts::TAU;
            [2.5 + reach * angle.cos() * 1e-7, 54.5 + reach * angle.sin() * 1e-7]
        };
        let mut ring: Vec<[f64; 2]> = reach.iter().enumerate().map(corner).collect();
        ring.push(ring[0]);
        for rings in on_grid(&vec![ring], DECIMALS) {
            prop_assert!(polygon(&rings).is_valid(), "{rings:?}");
            for degrees in rings.iter().flatten().flatten() {
                let decimals = degrees.to_string().split_once('.').map_or(0, |(_, decimals)| decimals.len());
                prop_assert!(decimals <= 7, "{degrees}");
            }
        }
    }

    /// A ring round a middle anywhere, its corners at any distance, given either way round.
    #[test]
    fn a_cut_ring_has_its_ground_and_every_corner(
        east in -0.02..0.02_f64,
        middle_latitude in -70.0..70.0_f64,
        reach in prop::collection::vec(0.001..0.02_f64, 3..12),
        turned: bool,
    ) {
        let count = reach.len() as f64;
        let middle = 180.0 + east;
        let mut ring: Vec<[f64; 2]> = reach
            .iter()
            .enumerate()
            .map(|(at, reach)| {
                let angle = at as f64 / count * std::f64::consts::TAU;
                let longitude = middle + reach * angle.cos();
                let longitude = if longitude > 180.0 { longitude - 360.0 } else { longitude };
                [longitude, middle_latitude + reach * angle.sin()]
            })
            .collect();
        let whole = area_m2(&[vec![ring.clone()]]).abs();
        if turned {
            ring.reverse();
        }
        let pieces = ground_of(&ring);
        prop_assert!((area_m2(&pieces) - whole).abs() <= whole * 1e-7, "{} {whole}", area_m2(&pieces));
        for rings in &pieces {
            let edge = &rings[0];
            prop_assert_eq!(edge.first(), edge.last());
            prop_assert!(area_m2(&[vec![edge.clone()]]) > 0.0);
            prop_assert!(edge.iter().all(|place| place[0] > 0.0) || edge.iter().all(|place| place[0] < 0.0));
        }
        let corners: Vec<[f64; 2]> = pieces.iter().flatten().flatten().copied().collect();
        prop_assert!(ring.iter().all(|corner| corners.contains(corner)));
    }

    #[test]
    fn a_circle_has_its_area(longitude in -180.0..180.0_f64, latitude in -70.0..70.0_f64, radius_m in 1.0..500.0_f64) {
        let area = area_m2(&ground_of(&circle_of([longitude, latitude], radius_m)));
        let wanted = std::f64::consts::PI * radius_m * radius_m;
        // The area of a ring on the ellipsoid comes out to a tenth of a square centimetre or so, however small it is.
        prop_assert!((area - wanted).abs() < wanted * 1e-6 + 1e-3, "{area} {wanted}");
    }
}
