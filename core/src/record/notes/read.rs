//! Reads a notes file: everything in it, or every fault in it.

use super::cursor::{Book, Object, found};
use super::value::Node;
use super::{VERSION, depths, json, length};
use crate::error::Fault;
use crate::place::Outline;
use crate::record::{
    FaceMoisture, Field, FieldNotes, Layer, OrganicMatter, OrganicMatterLevel, Photo, Pit, PlaceKind,
    Position, RecordId, Roll, RollOutcome, Sign, Signs, Step, TextureNote, Zone,
};
use crate::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use serde_json::Value;

/// What a notes file gives.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// The field and its pits.
    pub notes: FieldNotes,
    /// Places of keys nobody knows, e.g. `pits[1].colour`: kept, never fatal.
    pub unknown_keys: Vec<String>,
}

/// Reads a notes file. `new_id` makes an id for each record that has none in the file.
///
/// # Errors
/// Every fault found, each with its place such as `pits[2].walk[3].to_mm`, or line and column where the text is
/// not JSON; nothing is half-read.
pub fn read(text: &str, new_id: &mut dyn FnMut() -> RecordId) -> Result<Read, Vec<Fault>> {
    let value = json::parse(text)?;
    let book = Book::new(new_id);
    let notes = file(value, &book);
    let (faults, unknown_keys) = book.close();
    match notes {
        Some(notes) if faults.is_empty() => Ok(Read { notes, unknown_keys }),
        _ => Err(faults),
    }
}

fn file<'a>(value: Value, book: &'a Book<'a>) -> Option<FieldNotes> {
    if value.is_array() {
        let todo = "write one object {\"pitface\": 1, …}, and each field in a file of its own";
        book.fault("", "a list stands where the file's one object belongs", todo);
        return None;
    }
    let mut file = Node::new(String::new(), value, book).object()?;
    if !file.has("pitface") && !file.has("field") {
        let todo = "give a file that begins {\"pitface\": 1, \"field\": {…}, \"pits\": […]}";
        book.fault(
            "",
            "this is JSON, but not a notes file: neither \"pitface\" nor \"field\" is there",
            todo,
        );
        return None;
    }
    if let Some(version) = file.need("pitface", "the version of the notes file") {
        match version.value.as_u64() {
            Some(VERSION) => {}
            Some(newer) if newer > VERSION => {
                let wrong = format!("version {newer} is newer than this program, which reads {VERSION}");
                version.fault(wrong, "bring the program up to date; nothing was read");
                return None;
            }
            _ => version.fault(
                format!("`{}` is not a version of the notes file", version.value),
                format!("write \"pitface\": {VERSION}"),
            ),
        }
    }
    let read = file.need("field", "the field").and_then(Node::object).map(|object| field(object, book));
    let (field, scheme) = read.unzip();
    let scheme = scheme.unwrap_or(TextureScheme::Usda);
    let pits = file.objects("pits").into_iter().filter_map(|object| pit(object, scheme, book)).collect();
    let notes = field.map(|field| FieldNotes { unknown: file.rest(), ..FieldNotes::new(field, pits) })?;
    depths::far_away(&notes, book);
    Some(notes)
}

/// The field, and the texture scheme its layers are in where they do not say.
fn field<'a>(mut field: Object<'a>, book: &'a Book<'a>) -> (Field, TextureScheme) {
    let (texture, scheme) = texture(&mut field, TextureScheme::Usda);
    let read = Field {
        id: field.id(),
        name: field.need("name", "the field's name").and_then(Node::needed_text).unwrap_or_default(),
        outline: field.take("outline").map(|node| outline(node, book)).unwrap_or_default(),
        headland_mm: field.take("headland_mm").and_then(|node| node.mm(&length::WIDTH)),
        tramline_mm: field.take("tramline_mm").and_then(|node| node.mm(&length::WIDTH)),
        wheel_track_mm: field.take("wheel_track_mm").and_then(|node| node.mm(&length::WHEEL_TRACK)),
        tyre_mm: field.take("tyre_mm").and_then(|node| node.mm(&length::TYRE)),
        parts: Vec::new(),
        lines: Vec::new(),
        texture,
        organic_matter: field.take("organic_matter").and_then(|node| organic_matter(&node)),
        crop_now: field.take("crop_now").and_then(Node::text),
        last_crop: field.take("last_crop").and_then(Node::text),
        last_loosened: field.take("last_loosened").and_then(Node::day),
        last_traffic: field.take("last_traffic").and_then(Node::day),
        drains_mm: field.take("drains_mm").and_then(|node| node.mm(&length::DRAINS)),
        mole_drains_mm: field.take("mole_drains_mm").and_then(|node| node.mm(&length::MOLE_DRAINS)),
        services_mm: field.take("services_mm").and_then(|node| node.mm(&length::SERVICES)),
        clearance_mm: field.take("clearance_mm").and_then(|node| node.mm(&length::CLEARANCE)),
        reach_mm: field.take("reach_mm").and_then(|node| node.mm(&length::REACH)),
        deep_clay_anyway: field.take("deep_clay_anyway").and_then(Node::flag),
        unknown: field.rest(),
    };
    (read, scheme)
}

/// The ring without its closing repeat.
fn outline(node: Node, book: &Book) -> Vec<[f64; 2]> {
    let (at, count) = (node.at.clone(), node.value.as_array().map_or(0, Vec::len));
    let mut ring: Vec<[f64; 2]> = node.list().into_iter().filter_map(Node::position).collect();
    let all_good = ring.len() == count;
    if ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    if all_good
        && count > 0
        && let Err(fault) = Outline::new(&ring)
    {
        book.fault(at, fault.wrong(), fault.todo());
    }
    ring
}

/// Reads `texture` and `texture_scheme`; also gives the scheme in force.
fn texture(object: &mut Object, default: TextureScheme) -> (Option<TextureNote>, TextureScheme) {
    let scheme = object.take("texture_scheme");
    let scheme =
        scheme.and_then(|node| node.choice(TextureScheme::CODES, TextureScheme::ALL)).unwrap_or(default);
    let note = object.take("texture").and_then(|node| {
        let word = node.value.as_str().unwrap_or_default();
        let group = TextureGroup::from_code(word).filter(|_| GROUPS.contains(&word)).map(TextureNote::Group);
        let note = group.or(Texture::parse(scheme, word).map(TextureNote::Class));
        if note.is_none() {
            let classes = TextureClass::ALL.iter().filter(|&&class| scheme.has(class));
            let words: Vec<_> = classes.map(|class| class.code()).chain(GROUPS).collect();
            if TextureClass::CODES.contains(&word) {
                let wrong = format!("`{word}` is not a class of the scheme {}", scheme.code());
                let todo = format!("set \"texture_scheme\", or use one of: {}", words.join(", "));
                node.fault(wrong, todo);
            } else {
                node.not_one_of(&words);
            }
        }
        note
    });
    (note, scheme)
}

/// The groups that may stand for a class.
const GROUPS: [&str; 3] =
    [TextureGroup::Light.code(), TextureGroup::Medium.code(), TextureGroup::Heavy.code()];

fn organic_matter(node: &Node) -> Option<OrganicMatter> {
    let Some(percent) = node.value.as_f64() else {
        let level = node.value.as_str().and_then(OrganicMatterLevel::from_code);
        if level.is_none() {
            let todo =
                format!("use one of: {}; or a number in percent", OrganicMatterLevel::CODES.join(", "));
            node.fault(format!("{} is no amount of organic matter", found(&node.value)), todo);
        }
        return level.map(OrganicMatter::Level);
    };
    if (0.0..=100.0).contains(&percent) {
        return Some(OrganicMatter::Percent(percent));
    }
    node.fault(format!("{percent} percent of organic matter cannot be"), "write percent by mass, 0 to 100");
    None
}

fn pit<'a>(mut pit: Object<'a>, scheme: TextureScheme, book: &'a Book<'a>) -> Option<Pit> {
    let id = pit.id();
    let place = pit.need("place", "the kind of place");
    let place = place.and_then(|node| node.choice(PlaceKind::CODES, PlaceKind::ALL));
    let zone = pit.take("zone").and_then(|node| node.choice(Zone::CODES, Zone::ALL));
    let at = position(&mut pit, book);
    let dug = pit.take("dug").and_then(Node::time);
    let by = pit.take("by").and_then(Node::text);
    let dug_to_mm = pit.take("dug_to_mm").and_then(|node| node.mm(&length::HOLE));
    let face = pit.take("face").and_then(|node| node.choice(FaceMoisture::CODES, FaceMoisture::ALL));
    let steps = pit.objects("walk").into_iter().map(|object| (object.at.clone(), step(object)));
    let walk = depths::walk(steps.collect(), dug_to_mm, book);
    let layers = pit.objects("layers").into_iter().map(|object| (object.at.clone(), layer(object, scheme)));
    let layers = depths::layers(layers.collect(), dug_to_mm, book);
    let rolls = pit.objects("rolls").into_iter().filter_map(roll).collect();
    let photos = pit.objects("photos").into_iter().filter_map(photo).collect();
    let unknown = pit.rest();
    let place = place?;
    Some(Pit { id, place, zone, at, dug, by, dug_to_mm, face, walk, layers, rolls, photos, unknown })
}

fn position<'a>(pit: &mut Object<'a>, book: &'a Book<'a>) -> Option<Position> {
    if pit.has("accuracy_m") && !pit.has("at") {
        let todo = "add \"at\": [longitude, latitude], or remove it";
        book.fault(pit.below("accuracy_m"), "an accuracy without a position", todo);
    }
    let place = pit.take("at").and_then(Node::position);
    let accuracy_m = pit.take("accuracy_m").and_then(Node::radius_m);
    place.map(|[longitude_deg, latitude_deg]| Position { longitude_deg, latitude_deg, accuracy_m })
}

fn step(mut step: Object) -> Option<Step> {
    let id = step.id();
    let to_mm = step.need("to_mm", "the depth of the step's bottom").and_then(|node| node.mm(&length::DEPTH));
    let signs = signs(&mut step, &[Sign::ComesAway, Sign::Resistance]);
    let (comes_away, resistance) = (signs.comes_away, signs.resistance);
    let unknown = step.rest();
    Some(Step { id, to_mm: to_mm?, comes_away, resistance, unknown })
}

fn signs(object: &mut Object, wanted: &[Sign]) -> Signs {
    let mut signs = Signs::default();
    for &sign in wanted {
        let places: Vec<usize> = (0..sign.answers().len()).collect();
        let answer = object.take(sign.code()).and_then(|node| node.choice(sign.answers(), &places));
        signs.set(sign, answer);
    }
    signs
}

/// A layer whose bottom may be missing; how that is told is the depth logic's matter.
fn layer(mut layer: Object, scheme: TextureScheme) -> Option<depths::Noted> {
    let id = layer.id();
    let top = layer.need("top_mm", "the depth of the layer's top");
    let top_mm = top.and_then(|node| node.mm(&length::DEPTH_FROM_SURFACE));
    let no_bottom = !layer.has("bottom_mm");
    let bottom_mm = layer.take("bottom_mm").and_then(|node| node.mm(&length::DEPTH));
    let signs = signs(&mut layer, Sign::ALL);
    let (texture, _) = texture(&mut layer, scheme);
    let unknown = layer.rest();
    let known = no_bottom || bottom_mm.is_some();
    let read = Layer { id, top_mm: top_mm?, bottom_mm: bottom_mm.unwrap_or(0), signs, texture, unknown };
    known.then_some((read, bottom_mm))
}

fn roll(mut roll: Object) -> Option<Roll> {
    let id = roll.id();
    let depth = roll.need("depth_mm", "the depth the soil came from");
    let depth_mm = depth.and_then(|node| node.mm(&length::DEPTH_FROM_SURFACE));
    let outcome = roll.need("roll", "what the roll did");
    let outcome = outcome.and_then(|node| node.choice(RollOutcome::CODES, RollOutcome::ALL));
    let unknown = roll.rest();
    Some(Roll { id, depth_mm: depth_mm?, roll: outcome?, unknown })
}

fn photo(mut photo: Object) -> Option<Photo> {
    let id = photo.id();
    let sha256 = photo.need("sha256", "the photo's SHA-256").and_then(Node::sha256);
    let size = photo.need("size_bytes", "the photo's size").and_then(|node| node.count("a size in bytes"));
    let media_type = photo.need("media_type", "the photo's media type").and_then(Node::needed_text);
    let taken = photo.take("taken").and_then(Node::time);
    let depth_mm = photo.take("depth_mm").and_then(|node| node.mm(&length::DEPTH_FROM_SURFACE));
    let unknown = photo.rest();
    Some(Photo { id, sha256: sha256?, size_bytes: size?, media_type: media_type?, taken, depth_mm, unknown })
}
