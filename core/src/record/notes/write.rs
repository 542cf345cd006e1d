//! Writes a notes file, keys in the order a person would look for them. What was read comes out again, ids and
//! unknown keys included.

use super::VERSION;
use crate::record::{
    Field, FieldNotes, Layer, OrganicMatter, Photo, Pit, Roll, Sign, Step, TextureNote, Unknown,
};
use crate::soil::texture::TextureGroup;
use serde_json::{Map, Value, json};

/// Keys gathered in order; absent ones are left out.
#[derive(Default)]
struct Object(Map<String, Value>);

impl Object {
    fn put(mut self, key: &str, value: Option<impl Into<Value>>) -> Self {
        if let Some(value) = value {
            self.0.insert(key.into(), value.into());
        }
        self
    }

    fn list(self, key: &str, values: Vec<Value>) -> Self {
        let values = (!values.is_empty()).then_some(values);
        self.put(key, values)
    }

    fn end(mut self, unknown: &Unknown) -> Value {
        self.0.extend(unknown.clone());
        Value::Object(self.0)
    }
}

/// The notes as the text of a file.
pub fn write(notes: &FieldNotes) -> String {
    let file = Object::default()
        .put("pitface", Some(VERSION))
        .put("field", Some(field(&notes.field)))
        .put("pits", Some(notes.pits.iter().map(pit).collect::<Vec<_>>()))
        .end(&notes.unknown);
    format!("{file:#}\n")
}

fn field(field: &Field) -> Value {
    let outline = field.outline.iter().map(|point| json!(point)).collect();
    let matter = field.organic_matter.map(|matter| match matter {
        OrganicMatter::Level(level) => json!(level.code()),
        OrganicMatter::Percent(percent) => json!(percent),
    });
    texture(
        Object::default()
            .put("id", Some(field.id.to_string()))
            .put("name", Some(field.name.as_str()))
            .list("outline", outline)
            .put("headland_mm", field.headland_mm)
            .put("tramline_mm", field.tramline_mm),
        field.texture,
    )
    .put("organic_matter", matter)
    .put("crop_now", field.crop_now.as_deref())
    .put("last_crop", field.last_crop.as_deref())
    .put("last_loosened", field.last_loosened.map(|day| day.to_string()))
    .put("last_traffic", field.last_traffic.map(|day| day.to_string()))
    .put("drains_mm", field.drains_mm)
    .put("mole_drains_mm", field.mole_drains_mm)
    .put("services_mm", field.services_mm)
    .put("clearance_mm", field.clearance_mm)
    .put("reach_mm", field.reach_mm)
    .put("deep_clay_anyway", field.deep_clay_anyway)
    .end(&field.unknown)
}

fn texture(object: Object, texture: Option<TextureNote>) -> Object {
    match texture {
        None => object,
        // The file has three groups; the finer ones never come from a file.
        Some(TextureNote::Group(TextureGroup::Sand | TextureGroup::Silty | TextureGroup::Light)) => {
            object.put("texture", Some("light"))
        }
        Some(TextureNote::Group(group)) => object.put("texture", Some(group.code())),
        Some(TextureNote::Class(texture)) => object
            .put("texture", Some(texture.class.code()))
            .put("texture_scheme", Some(texture.scheme.code())),
    }
}

fn pit(pit: &Pit) -> Value {
    Object::default()
        .put("id", Some(pit.id.to_string()))
        .put("place", Some(pit.place.code()))
        .put("zone", pit.zone.map(super::super::codes::Zone::code))
        .put("at", pit.at.map(|at| json!([at.longitude_deg, at.latitude_deg])))
        .put("accuracy_m", pit.at.and_then(|at| at.accuracy_m))
        .put("dug", pit.dug.map(|time| time.to_rfc3339()))
        .put("by", pit.by.as_deref())
        .put("dug_to_mm", pit.dug_to_mm)
        .put("face", pit.face.map(super::super::codes::FaceMoisture::code))
        .list("walk", pit.walk.iter().map(step).collect())
        .list("layers", pit.layers.iter().map(layer).collect())
        .list("rolls", pit.rolls.iter().map(roll).collect())
        .list("photos", pit.photos.iter().map(photo).collect())
        .end(&pit.unknown)
}

fn step(step: &Step) -> Value {
    Object::default()
        .put("id", Some(step.id.to_string()))
        .put("to_mm", Some(step.to_mm))
        .put("comes_away", step.comes_away.map(super::super::codes::ComesAway::code))
        .put("resistance", step.resistance.map(super::super::codes::Resistance::code))
        .end(&step.unknown)
}

fn layer(layer: &Layer) -> Value {
    let depths = Object::default()
        .put("id", Some(layer.id.to_string()))
        .put("top_mm", Some(layer.top_mm))
        .put("bottom_mm", Some(layer.bottom_mm));
    let signs = Sign::ALL.iter().fold(depths, |object, &sign| {
        object.put(sign.code(), layer.signs.get(sign).map(|answer| sign.answers()[answer]))
    });
    texture(signs, layer.texture).end(&layer.unknown)
}

fn roll(roll: &Roll) -> Value {
    Object::default()
        .put("id", Some(roll.id.to_string()))
        .put("depth_mm", Some(roll.depth_mm))
        .put("roll", Some(roll.roll.code()))
        .end(&roll.unknown)
}

fn photo(photo: &Photo) -> Value {
    Object::default()
        .put("id", Some(photo.id.to_string()))
        .put("sha256", Some(photo.sha256.as_str()))
        .put("size_bytes", Some(photo.size_bytes))
        .put("media_type", Some(photo.media_type.as_str()))
        .put("taken", photo.taken.map(|time| time.to_rfc3339()))
        .put("depth_mm", photo.depth_mm)
        .end(&photo.unknown)
}
