//! Reads a pit and everything in it.

use super::field::texture;
use crate::record::notes::cursor::{Book, Object};
use crate::record::notes::value::Node;
use crate::record::notes::{depths, length};
use crate::record::{
    FaceMoisture, Layer, Photo, PhotoMark, Pit, PlaceKind, Position, Roll, RollOutcome, Sign, Signs, Step,
    Zone,
};
use crate::soil::texture::TextureScheme;

/// A pit; `None` where what kind of place it is could not be read.
pub fn pit<'a>(mut pit: Object<'a>, scheme: TextureScheme, book: &'a Book<'a>) -> Option<Pit> {
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
    let remark = pit.take("remark").and_then(Node::remark);
    let unknown = pit.rest();
    let place = place?;
    Some(Pit { id, place, zone, at, dug, by, dug_to_mm, face, walk, layers, rolls, photos, remark, unknown })
}

/// Reads `at` and `accuracy_m` of a hole.
pub fn position<'a>(pit: &mut Object<'a>, book: &'a Book<'a>) -> Option<Position> {
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
    let remark = layer.take("remark").and_then(Node::remark);
    let unknown = layer.rest();
    let known = no_bottom || bottom_mm.is_some();
    let (top_mm, below_mm) = (top_mm?, bottom_mm.unwrap_or(0));
    let read = Layer { id, top_mm, bottom_mm: below_mm, signs, texture, remark, unknown };
    known.then_some((read, bottom_mm))
}

/// A roll test; `None` after a fault.
pub fn roll(mut roll: Object) -> Option<Roll> {
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
    let marks = marks(&mut photo);
    let unknown = photo.rest();
    let (sha256, size_bytes, media_type) = (sha256?, size?, media_type?);
    Some(Photo { id, sha256, size_bytes, media_type, taken, depth_mm, marks: marks?, unknown })
}

/// The marks of a photo; `None` after a fault.
fn marks(photo: &mut Object) -> Option<Vec<PhotoMark>> {
    let marks = photo.take("marks").map(Node::list).unwrap_or_default();
    if let Some(one_more) = marks.get(PhotoMark::MOST) {
        one_more.fault(
            "this is one mark too many",
            "give two along a tape, or four: two along each of two plumb lines",
        );
        return None;
    }
    let marks: Vec<Option<PhotoMark>> = marks.into_iter().map(Node::photo_mark).collect();
    marks.into_iter().collect()
}
