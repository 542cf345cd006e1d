//! Rows fitted to whoever reads them, styles of map programs, and what a terminal is told.

use super::{id, pit_at, table, told};
use pitface_core::answer::FieldAnswer;
use pitface_core::boundary::{is_geopackage, read};
use pitface_core::place::walk;
use pitface_core::record::{Call, Field, FieldNotes, Position, RecordId, notes};
use pitface_core::store::{Packed, PitPhoto, read_geopackage, write_geopackage};
use pitface_core::tables::{
    COARSE_DEG, Cell, Cells, LayerStyle, Positions, Shape, Table, cells, csv, geojson, in_units, labelled,
    placed, prescribed, styles,
};
use pitface_core::units::{INCH_MM, LengthUnit, UnitSystem};
use pitface_core::words::{LISTS, Language, Words};
use std::collections::BTreeSet;
use std::path::Path;

fn estate() -> Vec<FieldNotes> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../bindings/cli/demo");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    files.sort();
    files.retain(|file| file.to_string_lossy().ends_with(".notes.json"));
    let mut count = 0;
    let mut next = || {
        count += 1;
        RecordId::new(count, [0; 10])
    };
    let read = |file| notes::read(&std::fs::read_to_string(file).unwrap(), &mut next).unwrap().notes;
    files.iter().map(read).collect()
}

fn with_labels(words: &Words) -> Vec<Table> {
    let mut all = told(&estate(), true);
    labelled(&mut all, |list, code| words.of_code(list, code));
    all
}

#[test]
fn every_code_has_its_word_beside_it() {
    for table in told(&[], true) {
        for list in table.columns.iter().flat_map(|column| column.lists) {
            assert!(LISTS.iter().any(|(name, _)| name == list), "{}: {list}", table.name);
        }
    }
    for &language in Language::ALL {
        let (mut words, mut codes) = (BTreeSet::new(), BTreeSet::new());
        for table in with_labels(&Words::new(language, LengthUnit::Centimetres)) {
            for (at, column) in
                table.columns.iter().enumerate().filter(|(_, column)| !column.lists.is_empty())
            {
                assert_eq!(table.columns[at + 1].name, format!("{}_label", column.name));
                for row in &table.rows {
                    match (&row.cells[at], &row.cells[at + 1]) {
                        (Cell::Text(code), Cell::Text(word)) => {
                            codes.insert(code.clone());
                            words.insert(word.clone());
                        }
                        (Cell::Empty, Cell::Empty) => {}
                        other => panic!("{}.{}: {other:?}", table.name, column.name),
                    }
                }
            }
        }
        assert!(words.len() > 30 && words.is_disjoint(&codes), "{words:?}");
    }
}

#[test]
fn inches_give_the_millimetres_back() {
    let metric = told(&estate(), true);
    let mut customary = metric.clone();
    in_units(&mut customary, UnitSystem::UsCustomary);
    let mut seen = 0;
    for (table, other) in metric.iter().zip(&customary) {
        for (at, (column, its)) in table.columns.iter().zip(&other.columns).enumerate() {
            let metric = ["_mm", "_m", "_m2", "_kmh"].iter().any(|end| column.name.ends_with(end));
            assert_eq!(metric, column.name != its.name, "{}.{}", table.name, column.name);
            for (row, other) in table.rows.iter().zip(&other.rows) {
                if let (Cell::Whole(mm), Cell::Number(inches)) = (&row.cells[at], &other.cells[at]) {
                    assert_eq!((inches * INCH_MM).round() as i64, *mm, "{}", its.name);
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 100);
    // 10 hectares are 24.71 acres, 6 km/h 3.73 mph (NIST Handbook 44, appendix C).
    let mut fields = told(&estate(), true);
    let area = |tables: &[Table], name: &str| {
        let fields = table(tables, "fields");
        let at = fields.columns.iter().position(|column| column.name == name).unwrap();
        match fields.rows[0].cells[at] {
            Cell::Number(number) => number,
            ref other => panic!("{other:?}"),
        }
    };
    let hectares = area(&fields, "area_m2") / 10_000.0;
    in_units(&mut fields, UnitSystem::UsCustomary);
    assert!((area(&fields, "area_acres") - hectares * 2.471_053_8).abs() < 0.005);
}

#[test]
fn places_are_told_only_as_exactly_as_wanted() {
    let mut notes = FieldNotes::new(Field::new(id(1), "Long Sedge"), vec![pit_at(2.504_999, 54.496_1)]);
    notes.field.outline = vec![[2.5, 54.49], [2.51, 54.49], [2.51, 54.5]];
    for positions in Positions::ALL {
        let mut all = told(&[notes.clone()], true);
        placed(&mut all, *positions);
        let pit = &table(&all, "pits").rows[0];
        let wanted = match positions {
            Positions::Exact => Some(Shape::Point([2.504_999, 54.496_1])),
            Positions::Coarse => Some(Shape::Point([2.5, 54.5])),
            Positions::None => None,
        };
        assert_eq!(pit.shape, wanted);
        let told = *positions == Positions::Exact;
        assert_eq!(table(&all, "fields").rows[0].shape.is_some(), told);
        assert_eq!(geojson(&all).contains("54.49"), told);
        assert_eq!(String::from_utf8(csv(table(&all, "pits"))).unwrap().contains("9007199254740992"), told);
    }
    assert!((walk([2.5, 54.5], [2.5, 54.5 + COARSE_DEG]).distance_m - 1113.0).abs() < 1.0);
}

fn drawn(words: &Words) -> Vec<LayerStyle> {
    styles(|list, code| words.of_code(list, code), &words.not_dug(), words.unit().into())
}

#[test]
fn a_style_draws_each_call_apart_and_names_only_columns_that_are_there() {
    for (language, unit) in
        [(Language::English, LengthUnit::Centimetres), (Language::German, LengthUnit::Inches)]
    {
        let words = Words::new(language, unit);
        let mut all = with_labels(&words);
        in_units(&mut all, unit.into());
        for LayerStyle { table: name, qml } in drawn(&words) {
            let options = roxmltree::ParsingOptions { allow_dtd: true, ..Default::default() };
            let document = roxmltree::Document::parse_with_options(&qml, options).unwrap();
            let columns: Vec<&str> = table(&all, name).columns.iter().map(|column| &*column.name).collect();
            let words_of = document.descendants().find(|node| node.has_tag_name("text-style")).unwrap();
            let expression = words_of.attribute("fieldName").unwrap();
            for column in expression.split('"').skip(1).step_by(2) {
                assert!(columns.contains(&column), "{name}: {column} of {expression}");
            }
            let renderer = document.descendants().find(|node| node.has_tag_name("renderer-v2")).unwrap();
            assert!(renderer.attribute("attr").is_none_or(|column| columns.contains(&column)));
        }
        let zones = drawn(&words).into_iter().find(|style| style.table == "zones").unwrap().qml;
        let document = roxmltree::Document::parse_with_options(
            &zones,
            roxmltree::ParsingOptions { allow_dtd: true, ..Default::default() },
        )
        .unwrap();
        let codes: Vec<_> = document.descendants().filter(|node| node.has_tag_name("category")).collect();
        let wanted: Vec<&str> = Call::CODES.iter().copied().chain([""]).collect();
        assert_eq!(codes.iter().map(|node| node.attribute("value").unwrap()).collect::<Vec<_>>(), wanted);
        assert_eq!(codes[2].attribute("label"), Some(&*words.label(Call::Loosen)));
        // In black and white each call that asks for something is another hatching; bare are what is left alone and what is not dug.
        let symbols = document.descendants().find(|node| node.has_tag_name("symbols")).unwrap();
        let symbols: Vec<_> = symbols.children().filter(roxmltree::Node::is_element).collect();
        assert_eq!(symbols.len(), codes.len());
        let hatched: BTreeSet<String> = symbols
            .iter()
            .map(|symbol| {
                let options = symbol.descendants().filter(|node| node.has_tag_name("Option"));
                options.filter_map(|node| node.attribute("value")).collect::<Vec<_>>().join(" ")
            })
            .collect();
        assert_eq!(hatched.len(), Call::ALL.len());
    }
}

#[test]
fn a_geopackage_holds_styles_and_photos() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("fields.gpkg");
    let words = Words::new(Language::German, LengthUnit::Centimetres);
    let (all, drawn) = (with_labels(&words), drawn(&words));
    let photo = |pit_row| PitPhoto {
        pit_row,
        id: None,
        media_type: "image/jpeg",
        taken: None,
        depth_mm: Some(300),
        bytes: vec![0xff, 0xd8, pit_row as u8],
    };
    let packed = Packed { tables: &all, styles: &drawn, photos: &mut [2, 0].map(photo).into_iter() };
    write_geopackage(&path, packed, chrono::DateTime::UNIX_EPOCH).unwrap();
    assert!(is_geopackage(&std::fs::read(&path).unwrap()));
    let base = rusqlite::Connection::open(&path).unwrap();
    let one = |text: &str| base.query_row(text, [], |row| row.get::<_, String>(0)).unwrap();
    // QGIS finds a style only by this.
    let styled = "SELECT group_concat(f_table_name) FROM layer_styles WHERE f_table_schema = '' AND f_geometry_column = 'shape' \
        AND useAsDefault = 1 AND length(update_time) > 0";
    assert_eq!(one(styled), "fields,zones,parts,lines,pits,after_digs");
    let related = "SELECT group_concat(p.pit || ':' || hex(m.data)) FROM pits_photos r JOIN pits p ON p.fid = r.base_id \
        JOIN photos m ON m.id = r.related_id";
    assert_eq!(one(related), "3:FFD802,1:FFD800");
}

#[test]
fn what_goes_out_comes_in_within_a_centimetre() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("fields.gpkg");
    let notes = estate();
    let all = told(&notes, true);
    let packed = Packed { tables: &all, styles: &[], photos: &mut std::iter::empty() };
    write_geopackage(&path, packed, chrono::DateTime::UNIX_EPOCH).unwrap();
    let text = geojson(&all);
    for (file, most_m) in
        [(read_geopackage(&path, false), 1e-9), (read("fields.geojson", text.as_bytes(), false), 0.01)]
    {
        let file = file.unwrap();
        for one in notes.iter().filter(|one| !one.field.outline.is_empty()) {
            let field = &one.field.name;
            let area = file.areas.iter().find(|area| area.name.as_ref() == Some(field)).unwrap();
            assert_eq!(area.ring.len(), one.field.outline.len(), "{field}");
            for corner in &one.field.outline {
                let away = area.ring.iter().map(|place| walk(*corner, *place).distance_m);
                assert!(away.fold(f64::INFINITY, f64::min) <= most_m, "{field}");
            }
            for line in &one.field.lines {
                let same = |along: &[[f64; 2]]| {
                    along.len() == line.along.len()
                        && along
                            .iter()
                            .zip(&line.along)
                            .all(|(one, other)| walk(*one, *other).distance_m <= most_m)
                };
                assert!(file.lines.iter().any(|course| same(&course.along)), "{field}");
            }
        }
    }
}

fn gridded(notes: FieldNotes) -> (FieldAnswer, Option<Cells>) {
    let answer = FieldAnswer::of(notes, None);
    let grid = cells(&answer, &prescribed(&answer));
    (answer, grid)
}

#[test]
fn a_cell_is_loosened_no_deeper_than_any_ground_it_reaches() {
    let mut fields = 0;
    for notes in estate() {
        let mut loosened = 0;
        let (answer, grid) = gridded(notes);
        let (zones, grid) = (prescribed(&answer), grid.unwrap());
        assert_eq!(grid.zones.len(), grid.columns * grid.rows);
        for zone in &zones {
            if let (Some(depth_mm), Some(call)) = (zone.depth_mm, zone.call) {
                let tip = call.tip.unwrap();
                assert!(call.call == Call::Loosen && (tip.lo_mm..=tip.hi_mm).contains(&depth_mm));
                assert_eq!(depth_mm % 10, 0, "whole centimetres");
            }
        }
        for (at, zone) in grid.zones.iter().enumerate() {
            let Some(zone) = zone else { continue };
            loosened += 1;
            let (column, row) = ((at % grid.columns) as f64, (at / grid.columns) as f64);
            for (east, north) in [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0), (0.5, 0.5)] {
                let spot = Position {
                    longitude_deg: grid.corner[0] + (column + east) * grid.cell[0],
                    latitude_deg: grid.corner[1] + (row + north) * grid.cell[1],
                    accuracy_m: Some(0.0),
                };
                let Some(its) = answer.map.locate(&spot).zone else { continue };
                let there = zones.iter().find(|zone| zone.zone == its).unwrap();
                assert!(there.depth_mm >= zones[*zone].depth_mm, "{its:?}");
            }
        }
        // Cells are about five metres wide and high.
        let [west, south] = grid.corner;
        let side_m = walk([west, south], [west + grid.cell[0], south]).distance_m;
        assert!((4.5..=5.01).contains(&side_m), "{side_m}");
        // Of the ground only cells along its edges are left out.
        let areas = answer.map.areas().into_iter();
        let wanted =
            areas.filter(|area| zones.iter().any(|its| its.zone == area.zone && its.depth_mm.is_some()));
        let area_m2: f64 = wanted.map(|area| area.area_m2).sum();
        let cells_m2 =
            f64::from(loosened) * side_m * walk([west, south], [west, south + grid.cell[1]]).distance_m;
        assert!(cells_m2 <= area_m2 && cells_m2 >= area_m2 * 0.5, "{cells_m2} of {area_m2}");
        fields += usize::from(loosened > 0);
    }
    assert_eq!(fields, 2);
}

#[test]
fn a_field_without_an_edge_or_across_the_antimeridian_has_no_cells() {
    let mut notes = FieldNotes::new(Field::new(id(1), "Long Sedge"), Vec::new());
    assert_eq!(gridded(notes.clone()).1, None);
    notes.field.outline = vec![[179.999, 10.0], [-179.999, 10.0], [-179.999, 10.002]];
    assert_eq!(gridded(notes.clone()).1, None);
    notes.field.outline = vec![[2.5, 54.5], [2.51, 54.5], [2.51, 54.51]];
    let grid = gridded(notes).1.unwrap();
    assert!(grid.zones.iter().all(Option::is_none) && grid.columns > 100);
}
