//! A notes file read and written is the same again: unknown keys, zeros, and what nobody looked at included.

use crate::notes_support;

use notes_support::{counting_ids, read};
use pitface_core::record::{FieldNotes, RecordId, Sign, notes};
use proptest::prelude::*;
use serde_json::{Map, Value, json};

/// Every key there is, every sort of value, and keys nobody knows at every level.
const FULL: &str = include_str!("../../tests/vectors/notes_full.json");

#[test]
fn a_full_file_comes_back_key_by_key() {
    let read = read(FULL);
    let written: Value = serde_json::from_str(&notes::write(&read.notes)).unwrap();
    assert_eq!(written, serde_json::from_str::<Value>(FULL).unwrap());
    assert_eq!(notes::write(&read.notes), FULL, "key order and layout as well");
    assert_eq!(
        read.unknown_keys,
        [
            "field.parts[0].seen_from",
            "field.lines[0].laid",
            "field.soil_map_unit",
            "pits[0].walk[1].pores",
            "pits[0].layers[1].colour",
            "pits[0].rolls[0].rolled_by",
            "pits[0].photos[0].lens_mm",
            "pits[0].weather",
            "machines[0].wings.hard_facing",
            "machines[0].shear_bolts",
            "passes[0].after_digs[0].colour",
            "passes[0].wind",
            "season",
        ]
    );
}

#[test]
fn not_looked_differs_from_none_and_from_zero() {
    let text = r#"{"pitface": 1, "field": {"name": "Kiln Ground", "organic_matter": 0, "clearance_mm": 0},
        "pits": [{"place": "open", "layers": [{"top_mm": 0, "bottom_mm": 200, "patches": "none", "pores": "none"}],
                  "rolls": [{"depth_mm": 0, "roll": "crumbles"}]}]}"#;
    let first = read(text);
    let again = read(&notes::write(&first.notes));
    assert_eq!(first, again);
    let signs = again.notes.pits[0].layers[0].signs;
    assert_eq!(signs.get(Sign::Patches), Some(0));
    assert_eq!((signs.get(Sign::Smell), signs.get(Sign::Channels)), (None, None));
    assert_eq!(again.notes.field.clearance_mm, Some(0));
    assert_eq!(again.notes.field.services_mm, None);
}

/// A store may hold texts that a file does not take: an earlier version wrote them, or another program.
#[test]
fn a_text_that_would_be_refused_is_left_out_and_the_rest_is_read() {
    let text = r#"{"pitface": 1, "field": {"name": "Kiln Ground", "last_crop": "oats"}, "pits": [{"place": "open"}]}"#;
    let mut notes = read(text).notes;
    for refused in ["", "  ", "a\nb", &"x".repeat(500)] {
        notes.field.crop_now = Some(refused.into());
        notes.field.services_asked = Some(refused.into());
        notes.pits[0].by = Some(refused.into());
        notes.pits[0].remark = Some(String::new());
        let again = read(&notes::write(&notes)).notes;
        assert_eq!((again.field.crop_now, again.field.services_asked), (None, None), "{refused:?}");
        assert_eq!((again.pits[0].by.as_ref(), again.pits[0].remark.as_ref()), (None, None));
        assert_eq!(again.field.last_crop.as_deref(), Some("oats"));
    }
}

#[test]
fn a_byte_order_mark_closed_rings_and_whole_floats_are_taken() {
    let text = "\u{feff}".to_owned()
        + r#"{"pitface": 1, "field": {"name": "Mere Piece", "headland_mm": 12000.0,
            "outline": [[2.5, 54.5], [2.51, 54.5], [2.51, 54.51], [2.5, 54.5]]}}"#;
    let field = read(&text).notes.field;
    assert_eq!((field.outline.len(), field.headland_mm), (3, Some(12_000)));
    let short = r#"{"pitface": 1, "field": {"name": "Mere Piece"},
        "pits": [{"place": "open", "dug": "2025-10-02T09:15+01:00"}]}"#;
    assert_eq!(read(short).notes.pits[0].dug.unwrap().to_rfc3339(), "2025-10-02T09:15:00+01:00");
}

#[test]
fn layers_are_in_the_fields_texture_scheme_unless_they_say_otherwise() {
    let text = r#"{"pitface": 1, "field": {"name": "Mere Piece", "texture_scheme": "uk"}, "pits": [{"place": "open",
        "layers": [{"top_mm": 0, "bottom_mm": 200, "texture": "sandy_silt_loam"},
                   {"top_mm": 200, "bottom_mm": 400, "texture": "loam", "texture_scheme": "usda"},
                   {"top_mm": 400, "bottom_mm": 500, "texture": "heavy"}]}]}"#;
    let first = read(text);
    assert_eq!(first, read(&notes::write(&first.notes)));
    let textures = first.notes.pits[0].layers.iter().map(|layer| layer.texture.unwrap().group().code());
    assert_eq!(textures.collect::<Vec<_>>(), ["silty", "medium", "heavy"]);
}

#[test]
fn ids_are_made_only_where_the_file_has_none() {
    let id = RecordId::new(77, [1; 10]);
    let text = format!(
        r#"{{"pitface": 1, "field": {{"id": "{id}", "name": "Mere Piece"}}, "pits": [{{"place": "open"}}]}}"#
    );
    let read = notes::read(&text, &mut counting_ids()).unwrap();
    assert_eq!(read.notes.field.id, id);
    assert_eq!(read.notes.pits[0].id, counting_ids()());
    assert!(read.unknown_keys.is_empty());
}

/// Codes for every closed list of a pit, absent ones included.
fn code(codes: &'static [&'static str]) -> impl Strategy<Value = Option<&'static str>> {
    proptest::option::of(proptest::sample::select(codes))
}

prop_compose! {
    fn layer_signs()(
        answers in Sign::ALL.iter().map(|sign| code(sign.answers())).collect::<Vec<_>>(),
        thickness_mm in 1_u32..400,
        unknown in any::<Option<f64>>(),
    ) -> (u32, Map<String, Value>) {
        let seen = Sign::ALL.iter().zip(answers).filter_map(|(sign, code)| Some((sign.code().into(), code?.into())));
        let mut object: Map<String, Value> = seen.collect();
        if let Some(number) = unknown {
            object.insert("lab_value".into(), number.into());
        }
        (thickness_mm, object)
    }
}

proptest! {
    #[test]
    fn whatever_is_read_is_written_and_read_the_same(
        name in "\\PC*\\S\\PC*",
        longitude in -180.0..=180.0_f64,
        latitude in -90.0..=90.0_f64,
        accuracy_m in proptest::option::of(0.001..500.0_f64),
        percent in 0.0..=100.0_f64,
        layers in proptest::collection::vec(layer_signs(), 0..7),
    ) {
        let name = pitface_core::harmless::typed_name(&name);
        prop_assume!(!name.trim().is_empty());
        let mut top_mm = 0;
        let layers: Vec<Value> = layers.into_iter().map(|(thickness_mm, mut object)| {
            object.insert("top_mm".into(), top_mm.into());
            top_mm += thickness_mm;
            object.insert("bottom_mm".into(), top_mm.into());
            object.into()
        }).collect();
        let mut pit = json!({"place": "other", "at": [longitude, latitude], "layers": layers});
        if let Some(accuracy_m) = accuracy_m {
            pit["accuracy_m"] = accuracy_m.into();
        }
        let field = json!({"name": name, "organic_matter": percent});
        let text = json!({"pitface": 1, "field": field, "pits": [pit]}).to_string();
        let first: FieldNotes = read(&text).notes;
        let written = notes::write(&first);
        prop_assert_eq!(&read(&written).notes, &first);
        prop_assert_eq!(notes::write(&read(&written).notes), written);
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC*", cut in 0_usize..2_000, junk in "[\\[\\]{}:,\"0-9a-z]{0,6}") {
        let _ = notes::read(&text, &mut counting_ids());
        let cut = FULL.floor_char_boundary(cut.min(FULL.len()));
        let broken = format!("{}{junk}{}", &FULL[..cut], &FULL[cut..]);
        if let Err(faults) = notes::read(&broken, &mut counting_ids()) {
            prop_assert!(!faults.is_empty());
            prop_assert!(faults.iter().all(|fault| !fault.wrong.is_empty() && !fault.todo.is_empty()));
        }
    }
}
