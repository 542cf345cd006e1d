//! Writes a notes file: keys in the order of the description, unknown ones behind, short things on one line.

use super::VERSION;
use crate::record::{
    ComesAway, FaceMoisture, Field, FieldNotes, Layer, OrganicMatter, Photo, Pit, RecordId, Resistance, Roll,
    Sign, Step, TextureNote, Unknown, Zone,
};
use chrono::{DateTime, FixedOffset};
use serde_json::{Map, Value};

/// Widest line, save where one value alone is wider.
const WIDTH: usize = 120;
/// Spaces a level.
const INDENT: usize = 2;

/// The notes as a file; [`super::read`] gives the same back.
pub fn write(notes: &FieldNotes) -> String {
    let pits: Vec<Value> = notes.pits.iter().map(pit).collect();
    let file = Keys::new()
        .put("pitface", VERSION)
        .put("field", field(&notes.field))
        .put("pits", pits)
        .close(&notes.unknown);
    let mut text = String::new();
    lay_out(&file, 0, 0, &mut text);
    text.push('\n');
    text
}

/// An object in the making.
struct Keys(Map<String, Value>);

impl Keys {
    fn new() -> Self {
        Self(Map::new())
    }

    fn of(id: RecordId) -> Self {
        Self::new().put("id", id.to_string())
    }

    fn put(mut self, key: &str, value: impl Into<Value>) -> Self {
        self.0.insert(key.into(), value.into());
        self
    }

    /// A key that is left out where nobody looked.
    fn may(self, key: &str, value: Option<impl Into<Value>>) -> Self {
        match value {
            Some(value) => self.put(key, value),
            None => self,
        }
    }

    /// A list that is left out where it is empty.
    fn list(self, key: &str, values: Vec<Value>) -> Self {
        if values.is_empty() { self } else { self.put(key, values) }
    }

    fn time(self, key: &str, time: Option<DateTime<FixedOffset>>) -> Self {
        self.may(key, time.map(|time| time.to_rfc3339()))
    }

    fn texture(self, note: Option<TextureNote>) -> Self {
        match note {
            None => self,
            Some(TextureNote::Group(group)) => self.put("texture", group.code()),
            Some(TextureNote::Class(texture)) => {
                self.put("texture", texture.class.code()).put("texture_scheme", texture.scheme.code())
            }
        }
    }

    fn close(mut self, unknown: &Unknown) -> Value {
        for (key, value) in unknown {
            self.0.entry(key.clone()).or_insert_with(|| value.clone());
        }
        self.0.into()
    }
}

fn field(field: &Field) -> Value {
    let organic_matter = field.organic_matter.map(|matter| match matter {
        OrganicMatter::Level(level) => Value::from(level.code()),
        OrganicMatter::Percent(percent) => percent.into(),
    });
    Keys::of(field.id)
        .put("name", field.name.as_str())
        .list("outline", field.outline.iter().map(|point| point.to_vec().into()).collect())
        .may("headland_mm", field.headland_mm)
        .may("tramline_mm", field.tramline_mm)
        .may("wheel_track_mm", field.wheel_track_mm)
        .may("tyre_mm", field.tyre_mm)
        .texture(field.texture)
        .may("organic_matter", organic_matter)
        .may("crop_now", field.crop_now.as_deref())
        .may("last_crop", field.last_crop.as_deref())
        .may("last_loosened", field.last_loosened.map(|day| day.to_string()))
        .may("last_traffic", field.last_traffic.map(|day| day.to_string()))
        .may("drains_mm", field.drains_mm)
        .may("mole_drains_mm", field.mole_drains_mm)
        .may("services_mm", field.services_mm)
        .may("clearance_mm", field.clearance_mm)
        .may("reach_mm", field.reach_mm)
        .may("deep_clay_anyway", field.deep_clay_anyway)
        .close(&field.unknown)
}

fn pit(pit: &Pit) -> Value {
    Keys::of(pit.id)
        .put("place", pit.place.code())
        .may("zone", pit.zone.map(Zone::code))
        .may("at", pit.at.map(|at| vec![at.longitude_deg, at.latitude_deg]))
        .may("accuracy_m", pit.at.and_then(|at| at.accuracy_m))
        .time("dug", pit.dug)
        .may("by", pit.by.as_deref())
        .may("dug_to_mm", pit.dug_to_mm)
        .may("face", pit.face.map(FaceMoisture::code))
        .list("walk", pit.walk.iter().map(step).collect())
        .list("layers", pit.layers.iter().map(layer).collect())
        .list("rolls", pit.rolls.iter().map(roll).collect())
        .list("photos", pit.photos.iter().map(photo).collect())
        .close(&pit.unknown)
}

fn step(step: &Step) -> Value {
    Keys::of(step.id)
        .put("to_mm", step.to_mm)
        .may("comes_away", step.comes_away.map(ComesAway::code))
        .may("resistance", step.resistance.map(Resistance::code))
        .close(&step.unknown)
}

fn layer(layer: &Layer) -> Value {
    let span = Keys::of(layer.id).put("top_mm", layer.top_mm).put("bottom_mm", layer.bottom_mm);
    let code = |sign: Sign| layer.signs.get(sign).map(|answer| sign.answers()[answer]);
    let signs = Sign::ALL.iter().fold(span, |keys, &sign| keys.may(sign.code(), code(sign)));
    signs.texture(layer.texture).close(&layer.unknown)
}

fn roll(roll: &Roll) -> Value {
    Keys::of(roll.id).put("depth_mm", roll.depth_mm).put("roll", roll.roll.code()).close(&roll.unknown)
}

fn photo(photo: &Photo) -> Value {
    Keys::of(photo.id)
        .put("sha256", photo.sha256.as_str())
        .put("size_bytes", photo.size_bytes)
        .put("media_type", photo.media_type.as_str())
        .time("taken", photo.taken)
        .may("depth_mm", photo.depth_mm)
        .close(&photo.unknown)
}

/// Writes a value: on one line where it fits behind what stands there already, else its members a line each.
fn lay_out(value: &Value, level: usize, used: usize, text: &mut String) {
    let mut line = String::new();
    one_line(value, &mut line);
    let (open, close, members): (char, char, Vec<(String, &Value)>) = match value {
        Value::Array(list) if !list.is_empty() => {
            ('[', ']', list.iter().map(|member| (String::new(), member)).collect())
        }
        Value::Object(map) if !map.is_empty() => {
            ('{', '}', map.iter().map(|(key, member)| (quoted(key), member)).collect())
        }
        _ => return text.push_str(&line),
    };
    if level > 0 && used + line.chars().count() <= WIDTH {
        return text.push_str(&line);
    }
    let inner = (level + 1) * INDENT;
    text.push(open);
    for (place, (key, member)) in members.into_iter().enumerate() {
        text.push_str(if place == 0 { "\n" } else { ",\n" });
        text.push_str(&" ".repeat(inner));
        text.push_str(&key);
        lay_out(member, level + 1, inner + key.chars().count(), text);
    }
    text.push('\n');
    text.push_str(&" ".repeat(level * INDENT));
    text.push(close);
}

fn quoted(key: &str) -> String {
    format!("{}: ", Value::from(key))
}

fn one_line(value: &Value, text: &mut String) {
    match value {
        Value::Array(list) => {
            text.push('[');
            for (place, member) in list.iter().enumerate() {
                text.push_str(if place == 0 { "" } else { ", " });
                one_line(member, text);
            }
            text.push(']');
        }
        Value::Object(map) => {
            text.push('{');
            for (place, (key, member)) in map.iter().enumerate() {
                text.push_str(if place == 0 { "" } else { ", " });
                text.push_str(&quoted(key));
                one_line(member, text);
            }
            text.push('}');
        }
        other => text.push_str(&other.to_string()),
    }
}
