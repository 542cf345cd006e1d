//! The JSON Schema beside the reader says the same as the code: every closed list, every key.

use crate::notes_support;

use notes_support::read;
use pitface_core::record::{
    Buried, Clods, Drive, Extent, FaceMoisture, FeetSeen, Lift, LineSort, OrganicMatterLevel, PlaceKind,
    PlatesLeft, Profile, RollOutcome, Sign, Smear, Zone, notes,
};
use pitface_core::soil::texture::{TextureClass, TextureScheme};
use serde_json::Value;
use std::collections::BTreeSet;

fn schema() -> Value {
    serde_json::from_str(notes::SCHEMA).unwrap()
}

fn listed(name: &str) -> Vec<String> {
    let list = schema()["$defs"][name]["enum"].clone();
    serde_json::from_value(list).unwrap_or_else(|_| panic!("the schema has no list {name}"))
}

#[test]
fn every_closed_list_is_the_one_of_the_code() {
    let mut lists = vec![
        ("place", PlaceKind::CODES),
        ("zone", Zone::CODES),
        ("face", FaceMoisture::CODES),
        ("roll", RollOutcome::CODES),
        ("organic_matter_level", OrganicMatterLevel::CODES),
        ("texture_scheme", TextureScheme::CODES),
        ("texture_group", &["light", "medium", "heavy"]),
        ("marked_zone", &["gateway", "patch"]),
        ("buried", Buried::CODES),
        ("line_sort", LineSort::CODES),
        ("drive", Drive::CODES),
        ("extent", Extent::CODES),
        ("profile", Profile::CODES),
        ("smear", Smear::CODES),
        ("lift", Lift::CODES),
        ("clods", Clods::CODES),
        ("plates", PlatesLeft::CODES),
        ("feet", FeetSeen::CODES),
    ];
    lists.extend(Sign::ALL.iter().map(|sign| (sign.code(), sign.answers())));
    for (name, codes) in &lists {
        assert_eq!(listed(name), *codes, "{name}");
    }
    let definitions = schema()["$defs"].as_object().unwrap().clone();
    let closed = definitions.iter().filter(|(_, definition)| definition.get("enum").is_some());
    assert_eq!(
        closed.count(),
        lists.len() + 3,
        "the texture classes come in the next test; no list is left over"
    );
}

#[test]
fn each_scheme_lists_the_texture_classes_that_are_read_in_it() {
    let sized = listed("texture_class_usda_sized");
    for scheme in TextureScheme::CODES {
        let is_read = |class: &&str| {
            let text = format!(
                r#"{{"pitface": 1, "field": {{"name": "x", "texture": "{class}", "texture_scheme": "{scheme}"}}}}"#
            );
            notes::read(&text, &mut notes_support::counting_ids()).is_ok()
        };
        let plain = listed(&format!("texture_class_{scheme}"));
        let read: BTreeSet<&str> = TextureClass::CODES.iter().copied().filter(is_read).collect();
        assert_eq!(read, plain.iter().map(String::as_str).collect(), "{scheme}");
        let sized_read = sized.iter().map(String::as_str).filter(is_read).count();
        assert!(
            *scheme == "usda" || sized_read == 0,
            "only USDA divides its classes by the size of the sand"
        );
    }
}

/// Keys that hold records or objects, and the definitions of these.
const MEMBERS: [(&str, &str); 15] = [
    ("field", "field"),
    ("pits", "pit"),
    ("walk", "step"),
    ("layers", "layer"),
    ("rolls", "roll_test"),
    ("photos", "photo"),
    ("parts", "part"),
    ("lines", "line"),
    ("machines", "machine"),
    ("wings", "wings"),
    ("leading", "leading"),
    ("speed", "speed"),
    ("tractor", "tractor"),
    ("passes", "pass"),
    ("after_digs", "after_dig"),
];

fn definition(key: &str) -> Option<&'static str> {
    MEMBERS.iter().find(|(held, _)| *held == key).map(|(_, definition)| *definition)
}

/// The keys of every object in a file, by the name of its definition.
fn keys(value: &Value, of: &str, found: &mut BTreeSet<(String, String)>) {
    for (key, value) in value.as_object().unwrap() {
        found.insert((of.into(), key.clone()));
        let Some(member) = definition(key) else { continue };
        match value {
            Value::Array(list) => list.iter().for_each(|value| keys(value, member, found)),
            one => keys(one, member, found),
        }
    }
}

#[test]
fn the_schema_describes_exactly_the_keys_that_are_known() {
    let full = include_str!("../../tests/vectors/notes_full.json");
    let mut known = BTreeSet::new();
    keys(&serde_json::from_str(full).unwrap(), "", &mut known);
    for place in read(full).unknown_keys {
        let (object, key) = place.rsplit_once('.').unwrap_or(("", &place));
        let list = object.rsplit('.').next().unwrap_or_default();
        let list = list.split('[').next().unwrap_or_default();
        let definition = definition(list).unwrap_or_default();
        assert!(known.remove(&(definition.into(), key.into())), "{place}");
    }
    let schema = schema();
    let mut described: BTreeSet<(String, String)> = BTreeSet::new();
    let definitions = schema["$defs"].as_object().unwrap().iter().map(|(name, one)| (name.as_str(), one));
    for (name, definition) in definitions.chain([("", &schema)]) {
        let properties = definition.get("properties").and_then(Value::as_object);
        for (key, property) in properties.into_iter().flatten() {
            let said = property.get("description").or_else(|| {
                let target = property["$ref"].as_str()?.strip_prefix("#/$defs/")?;
                schema["$defs"][target].get("description")
            });
            assert!(said.is_some(), "{name}.{key} is not described");
            described.insert((name.into(), key.clone()));
        }
    }
    assert_eq!(described, known);
}
