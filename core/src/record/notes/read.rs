//! Reads a notes file: everything in it, or every fault in it.

use super::cursor::{Cursor, Gathered};
use super::{VERSION, check};
use crate::error::Fault;
use crate::record::{
    Field, FieldNotes, Layer, OrganicMatter, OrganicMatterLevel, Photo, Pit, PlaceKind, Position, RecordId,
    Roll, RollOutcome, Signs, Step, TextureNote,
};
use crate::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use serde_json::Value;
use std::ops::RangeInclusive;

/// What a notes file gives.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// The field and its pits.
    pub notes: FieldNotes,
    /// Places of keys nobody knows, e.g. `pits[1].colour`: kept, never fatal.
    pub unknown_keys: Vec<String>,
}

/// Lengths that can be meant, in millimetres. Outside them a unit was mixed up. Our judgement, wide on purpose.
mod plausible {
    use std::ops::RangeInclusive;
    /// Depths in a pit dug by hand.
    pub const DEPTH: RangeInclusive<u32> = 1..=3_000;
    /// The hole itself: less than a spade's blade is no pit.
    pub const HOLE: RangeInclusive<u32> = 100..=3_000;
    /// Tops of layers and depths of rolls, the surface included.
    pub const FROM_SURFACE: RangeInclusive<u32> = 0..=3_000;
    /// Pipe drains, cables.
    pub const BURIED: RangeInclusive<u32> = 100..=5_000;
    /// Mole drains: a published page gives centimetres for millimetres, so nothing over a metre is believed.
    pub const MOLES: RangeInclusive<u32> = 100..=1_000;
    /// Clearance above buried things.
    pub const CLEARANCE: RangeInclusive<u32> = 0..=1_000;
    /// Tip depth a machine reaches.
    pub const REACH: RangeInclusive<u32> = 50..=2_000;
    /// Widths of headlands and between tramlines.
    pub const WIDTH: RangeInclusive<u32> = 500..=200_000;
}

/// Greatest accuracy radius that says anything, in metres. Our judgement.
const ACCURACY_M: RangeInclusive<f64> = 0.001..=100_000.0;

/// Reads a notes file. `new_id` makes an id for each record that has none in the file.
///
/// # Errors
/// Every fault found, each with its place; nothing is half-read.
pub fn read(text: &str, new_id: &mut dyn FnMut() -> RecordId) -> Result<Read, Vec<Fault>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value: Value = serde_json::from_str(text).map_err(|error| {
        let at = format!("line {}, column {}", error.line(), error.column());
        let wrong = error.to_string();
        let wrong = wrong.split(" at line").next().unwrap_or_default();
        vec![Fault::new(at, format!("this is not JSON: {wrong}"), "mend the text there")]
    })?;
    let mut gathered = Gathered::new(new_id);
    let notes = file(value, &mut gathered);
    match notes {
        Some(notes) if gathered.faults.is_empty() => Ok(Read { notes, unknown_keys: gathered.unknown_keys }),
        _ => Err(gathered.faults),
    }
}

fn file(value: Value, gathered: &mut Gathered) -> Option<FieldNotes> {
    let mut cursor = Cursor::new(value, "", gathered)?;
    match cursor.need("pitface", "the version of the notes file", gathered)?.as_u64() {
        Some(1..=VERSION) => {}
        Some(newer @ 2..) => {
            gathered.fault(
                "pitface",
                format!("version {newer} is newer than this program"),
                "update the program",
            );
            return None;
        }
        _ => gathered.fault("pitface", "this is no version", format!("write \"pitface\": {VERSION}")),
    }
    let field = cursor
        .need("field", "the field", gathered)
        .and_then(|value| Cursor::new(value, "field", gathered))
        .map(|cursor| read_field(cursor, gathered));
    if !cursor.has("pits") {
        gathered.fault("pits", "the pits are missing", "give \"pits\": [ … ], empty if none is dug yet");
    }
    let pits: Vec<Pit> =
        cursor.list("pits", gathered).into_iter().filter_map(|pit| read_pit(pit, gathered)).collect();
    let unknown = cursor.rest(gathered);
    Some(FieldNotes { field: field?, pits, unknown })
}

fn read_field(mut cursor: Cursor, gathered: &mut Gathered) -> Field {
    let id = cursor.id(gathered);
    let name = match cursor.need("name", "the field's name", gathered) {
        Some(value) => value.as_str().map(str::trim).unwrap_or_default().to_owned(),
        None => "?".into(),
    };
    if name.is_empty() {
        gathered.fault("field.name", "the name is empty", "give the name the farm uses");
    }
    Field {
        id,
        name,
        outline: outline(&mut cursor, gathered),
        headland_mm: cursor.mm("headland_mm", &plausible::WIDTH, gathered),
        tramline_mm: cursor.mm("tramline_mm", &plausible::WIDTH, gathered),
        texture: texture(&mut cursor, gathered),
        organic_matter: organic_matter(&mut cursor, gathered),
        crop_now: cursor.text("crop_now", gathered),
        last_crop: cursor.text("last_crop", gathered),
        last_loosened: cursor.date("last_loosened", gathered),
        last_traffic: cursor.date("last_traffic", gathered),
        drains_mm: cursor.mm("drains_mm", &plausible::BURIED, gathered),
        mole_drains_mm: cursor.mm("mole_drains_mm", &plausible::MOLES, gathered),
        services_mm: cursor.mm("services_mm", &plausible::BURIED, gathered),
        clearance_mm: cursor.mm("clearance_mm", &plausible::CLEARANCE, gathered),
        reach_mm: cursor.mm("reach_mm", &plausible::REACH, gathered),
        deep_clay_anyway: cursor.boolean("deep_clay_anyway", gathered),
        unknown: cursor.rest(gathered),
    }
}

/// A class name of a scheme, or a group.
fn texture(cursor: &mut Cursor, gathered: &mut Gathered) -> Option<TextureNote> {
    let scheme: Option<TextureScheme> = cursor.code("texture_scheme", gathered);
    let at = cursor.at("texture");
    let word = cursor.text("texture", gathered)?;
    let group = match word.as_str() {
        "light" => Some(TextureGroup::Light),
        "medium" => Some(TextureGroup::Medium),
        "heavy" => Some(TextureGroup::Heavy),
        _ => None,
    };
    if let Some(group) = group {
        return Some(TextureNote::Group(group));
    }
    let scheme = scheme.unwrap_or(TextureScheme::Usda);
    let texture = Texture::parse(scheme, &word);
    if texture.is_none() {
        let todo = format!("use light, medium, heavy or one of {}", class_names(scheme).join(", "));
        gathered.fault(at, format!("\"{word}\" is no texture class of the scheme {}", scheme.code()), todo);
    }
    texture.map(TextureNote::Class)
}

fn class_names(scheme: TextureScheme) -> Vec<&'static str> {
    TextureClass::CODES.iter().copied().filter(|name| Texture::parse(scheme, name).is_some()).collect()
}

fn organic_matter(cursor: &mut Cursor, gathered: &mut Gathered) -> Option<OrganicMatter> {
    let at = cursor.at("organic_matter");
    let value = cursor.take("organic_matter")?;
    let percent =
        value.as_f64().filter(|percent| (0.0..=100.0).contains(percent)).map(OrganicMatter::Percent);
    let level = value.as_str().and_then(OrganicMatterLevel::from_code).map(OrganicMatter::Level);
    let matter = percent.or(level);
    if matter.is_none() {
        let todo = "use low, medium, high, or percent by mass from 0 to 100";
        gathered.fault(at, format!("{value} is no amount of organic matter"), todo);
    }
    matter
}

/// The ring as `[longitude, latitude]` pairs, the closing repeat dropped.
fn outline(cursor: &mut Cursor, gathered: &mut Gathered) -> Vec<[f64; 2]> {
    let at = cursor.at("outline");
    let Some(value) = cursor.take("outline") else { return Vec::new() };
    let Some(points) = value.as_array() else {
        gathered.fault(at, "the outline is no list", "write [[longitude, latitude], …]");
        return Vec::new();
    };
    let mut ring: Vec<[f64; 2]> = Vec::with_capacity(points.len());
    for (index, point) in points.iter().enumerate() {
        match check::longitude_latitude(point) {
            Ok(point) => ring.push(point),
            Err((wrong, todo)) => gathered.fault(format!("{at}[{index}]"), wrong, todo),
        }
    }
    if ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    if ring.len() == points.len() || ring.len() + 1 == points.len() {
        check::ring(&ring, &at, gathered);
    }
    ring
}

fn read_pit(mut cursor: Cursor, gathered: &mut Gathered) -> Option<Pit> {
    let before = gathered.faults.len();
    let id = cursor.id(gathered);
    let place: Option<PlaceKind> = cursor.code("place", gathered);
    if place.is_none() && gathered.faults.len() == before {
        let todo = format!("give \"place\": one of {}", PlaceKind::CODES.join(", "));
        gathered.fault(cursor.at("place"), "the kind of place is missing", todo);
    }
    let zone = cursor.code("zone", gathered);
    let at = position(&mut cursor, gathered);
    let dug_to_mm = cursor.mm("dug_to_mm", &plausible::HOLE, gathered);
    let walk_at = cursor.at("walk");
    // With one broken step the rest cannot be judged: its own fault is told already.
    let steps: Vec<_> =
        cursor.list("walk", gathered).into_iter().map(|step| read_step(step, gathered)).collect();
    let walk = steps.into_iter().collect::<Option<Vec<_>>>().unwrap_or_default();
    let layers_at = cursor.at("layers");
    let layers = check::layers(
        cursor.list("layers", gathered).into_iter().map(|layer| read_layer(layer, gathered)).collect(),
        &layers_at,
        gathered,
    );
    let pit = Pit {
        id,
        place: place.unwrap_or(PlaceKind::Other),
        zone,
        at,
        dug: cursor.time("dug", gathered),
        by: cursor.text("by", gathered),
        dug_to_mm,
        face: cursor.code("face", gathered),
        walk,
        layers,
        rolls: cursor
            .list("rolls", gathered)
            .into_iter()
            .filter_map(|roll| read_roll(roll, gathered))
            .collect(),
        photos: cursor.list("photos", gathered).into_iter().map(|one| read_photo(one, gathered)).collect(),
        unknown: cursor.rest(gathered),
    };
    check::depths(&pit, &walk_at, &layers_at, gathered);
    place.map(|_| pit)
}

fn position(cursor: &mut Cursor, gathered: &mut Gathered) -> Option<Position> {
    let accuracy_m = cursor.number("accuracy_m", &ACCURACY_M, "the radius in metres", gathered);
    let at = cursor.at("at");
    match check::longitude_latitude(&cursor.take("at")?) {
        Ok([longitude_deg, latitude_deg]) => Some(Position { longitude_deg, latitude_deg, accuracy_m }),
        Err((wrong, todo)) => {
            gathered.fault(at, wrong, todo);
            None
        }
    }
}

fn read_step(mut cursor: Cursor, gathered: &mut Gathered) -> Option<Step> {
    let id = cursor.id(gathered);
    needed(&cursor, "to_mm", "the depth of the step's bottom", gathered);
    let to_mm = cursor.mm("to_mm", &plausible::DEPTH, gathered);
    let comes_away = cursor.code("comes_away", gathered);
    let resistance = cursor.code("resistance", gathered);
    let unknown = cursor.rest(gathered);
    Some(Step { id, to_mm: to_mm?, comes_away, resistance, unknown })
}

/// A layer with the bottom it may lack; depths are judged when all are read.
fn read_layer(mut cursor: Cursor, gathered: &mut Gathered) -> Option<(Layer, bool)> {
    let id = cursor.id(gathered);
    needed(&cursor, "top_mm", "the depth of the layer's top", gathered);
    let before = gathered.faults.len();
    let top_mm = cursor.mm("top_mm", &plausible::FROM_SURFACE, gathered);
    let bottom_mm = cursor.mm("bottom_mm", &plausible::FROM_SURFACE, gathered);
    let broken = gathered.faults.len() > before;
    let signs = Signs {
        comes_away: cursor.code("comes_away", gathered),
        resistance: cursor.code("resistance", gathered),
        pores: cursor.code("pores", gathered),
        channels: cursor.code("channels", gathered),
        roots: cursor.code("roots", gathered),
        patches: cursor.code("patches", gathered),
        smell: cursor.code("smell", gathered),
        clod_in_water: cursor.code("clod_in_water", gathered),
    };
    let texture = texture(&mut cursor, gathered);
    let unknown = cursor.rest(gathered);
    if broken {
        return None;
    }
    Some((
        Layer { id, top_mm: top_mm?, bottom_mm: bottom_mm.unwrap_or(0), signs, texture, unknown },
        bottom_mm.is_some(),
    ))
}

fn read_roll(mut cursor: Cursor, gathered: &mut Gathered) -> Option<Roll> {
    let id = cursor.id(gathered);
    needed(&cursor, "depth_mm", "the depth the soil came from", gathered);
    needed(&cursor, "roll", "what the soil did when rolled", gathered);
    let depth_mm = cursor.mm("depth_mm", &plausible::FROM_SURFACE, gathered);
    let roll: Option<RollOutcome> = cursor.code("roll", gathered);
    let unknown = cursor.rest(gathered);
    Some(Roll { id, depth_mm: depth_mm?, roll: roll?, unknown })
}

fn read_photo(mut cursor: Cursor, gathered: &mut Gathered) -> Photo {
    let id = cursor.id(gathered);
    needed(&cursor, "sha256", "the hash of the photo", gathered);
    let at = cursor.at("sha256");
    let sha256 = cursor.text("sha256", gathered);
    if let Some(hash) = &sha256
        && !(hash.len() == 64 && hash.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f')))
    {
        gathered.fault(at, format!("\"{hash}\" is no SHA-256"), "give 64 lower-case hex digits");
    }
    Photo {
        id,
        sha256: sha256.unwrap_or_default(),
        size_bytes: cursor.number("size_bytes", &(1.0..=1e12), "the size in bytes", gathered).unwrap_or(0.0)
            as u64,
        media_type: cursor.text("media_type", gathered).unwrap_or_else(|| "image/jpeg".into()),
        taken: cursor.time("taken", gathered),
        depth_mm: cursor.mm("depth_mm", &plausible::FROM_SURFACE, gathered),
        unknown: cursor.rest(gathered),
    }
}

/// A fault where a key is absent that a record cannot do without.
fn needed(cursor: &Cursor, key: &str, what: &str, gathered: &mut Gathered) {
    if !cursor.has(key) {
        gathered.fault(cursor.at(key), format!("{what} is missing"), format!("give \"{key}\""));
    }
}
