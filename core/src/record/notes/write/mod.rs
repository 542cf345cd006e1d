//! Writes a notes file: keys in the order of the description, unknown ones behind, short things on one line.

mod layout;
mod machine;
mod pass;

use super::VERSION;
use crate::harmless::wrong_with_name;
use crate::place::Outline;
use crate::record::{
    BuriedLine, ComesAway, FaceMoisture, Field, FieldNotes, Layer, LineSort, OrganicMatter, Part, PartShape,
    Photo, PhotoMark, Pit, Position, RecordId, Resistance, Roll, Sign, Step, TextureNote, Unknown, Zone,
    remark,
};
use chrono::{DateTime, FixedOffset, NaiveDate};
pub(super) use layout::lay_out;
use serde_json::{Map, Value};

/// The notes as a file; [`super::read`] gives the same back.
pub fn write(notes: &FieldNotes) -> String {
    let pits: Vec<Value> = notes.pits.iter().map(pit).collect();
    let file = Keys::new()
        .put("pitface", VERSION)
        .put("field", field(&notes.field))
        .put("pits", pits)
        .list("machines", notes.machines.iter().map(machine::machine).collect())
        .list("passes", notes.passes.iter().map(|pass| pass::pass(pass, notes)).collect())
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

    /// A text of people. One that a notes file does not take (empty, too long, with what cannot be seen) is left out: with it the
    /// whole file could not be read.
    fn text(self, key: &str, text: Option<&str>) -> Self {
        self.may(key, text.filter(|text| !text.trim().is_empty() && wrong_with_name(text).is_none()))
    }

    /// Returns what else was said of a record, likewise.
    fn remark(self, text: Option<&str>) -> Self {
        self.may("remark", text.filter(|text| remark::wrong_with(text).is_none()))
    }

    /// A list that is left out where it is empty.
    fn list(self, key: &str, values: Vec<Value>) -> Self {
        if values.is_empty() { self } else { self.put(key, values) }
    }

    fn time(self, key: &str, time: Option<DateTime<FixedOffset>>) -> Self {
        self.may(key, time.map(|time| time.to_rfc3339()))
    }

    fn day(self, key: &str, day: Option<NaiveDate>) -> Self {
        self.may(key, day.map(|day| day.to_string()))
    }

    fn position(self, at: Option<Position>) -> Self {
        self.may("at", at.map(|at| vec![at.longitude_deg, at.latitude_deg]))
            .may("accuracy_m", at.and_then(|at| at.accuracy_m))
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
            match (self.0.get_mut(key), value) {
                (None, value) => {
                    self.0.insert(key.clone(), value.clone());
                }
                // Unknown keys of a part that is an object.
                (Some(Value::Object(known)), Value::Object(more)) => {
                    for (key, value) in more {
                        known.entry(key.clone()).or_insert_with(|| value.clone());
                    }
                }
                (Some(_), _) => {}
            }
        }
        self.0.into()
    }
}

/// An edge that is walked all round. One that is not yet encloses nothing, and a file with it would not be read.
fn walked(outline: &[[f64; 2]]) -> &[[f64; 2]] {
    if Outline::new(outline).is_ok() { outline } else { &[] }
}

fn field(field: &Field) -> Value {
    let organic_matter = field.organic_matter.map(|matter| match matter {
        OrganicMatter::Level(level) => Value::from(level.code()),
        OrganicMatter::Percent(percent) => percent.into(),
    });
    Keys::of(field.id)
        .put("name", field.name.as_str())
        .list("outline", places(walked(&field.outline)))
        .may("headland_mm", field.headland_mm)
        .may("tramline_mm", field.tramline_mm)
        .may("wheel_track_mm", field.wheel_track_mm)
        .may("tyre_mm", field.tyre_mm)
        .texture(field.texture)
        .may("organic_matter", organic_matter)
        .text("crop_now", field.crop_now.as_deref())
        .text("last_crop", field.last_crop.as_deref())
        .day("last_loosened", field.last_loosened)
        .day("last_traffic", field.last_traffic)
        .may("drains_mm", field.drains_mm)
        .may("mole_drains_mm", field.mole_drains_mm)
        .may("services_mm", field.services_mm)
        .may("clearance_mm", field.clearance_mm)
        .may("services_clearance_mm", field.services_clearance_mm)
        .text("services_asked", field.services_asked.as_deref())
        .day("services_asked_on", field.services_asked_on)
        .may("services_leave", field.services_leave)
        .day("last_rain", field.last_rain)
        .may("reach_mm", field.reach_mm)
        .may("tillage_mm", field.tillage_mm)
        .may("stony", field.stony)
        .may("plates_soft", field.plates_soft)
        .text("next_crop", field.next_crop.as_deref())
        .day("next_sown", field.next_sown)
        .may("slope_percent", field.slope_percent)
        .may("controlled_traffic", field.controlled_traffic)
        .may("deep_clay_anyway", field.deep_clay_anyway)
        .remark(field.remark.as_deref())
        .list("parts", field.parts.iter().map(part).collect())
        .list("lines", field.lines.iter().map(line).collect())
        .close(&field.unknown)
}

fn places(places: &[[f64; 2]]) -> Vec<Value> {
    places.iter().map(|place| place.to_vec().into()).collect()
}

fn part(part: &Part) -> Value {
    let keys = Keys::of(part.id).text("name", part.name.as_deref()).put("zone", part.zone.code());
    let keys = match &part.shape {
        PartShape::Ring(ring) => keys.put("ring", places(ring)),
        PartShape::Circle { middle, radius_m } => keys.put("at", middle.to_vec()).put("radius_m", *radius_m),
    };
    keys.close(&part.unknown)
}

fn line(line: &BuriedLine) -> Value {
    Keys::of(line.id)
        .put("kind", line.kind.code())
        .put("along", places(&line.along))
        .may("depth_mm", line.depth_mm)
        .may("sort", line.sort.map(LineSort::code))
        .close(&line.unknown)
}

fn pit(pit: &Pit) -> Value {
    Keys::of(pit.id)
        .put("place", pit.place.code())
        .may("zone", pit.zone.map(Zone::code))
        .position(pit.at)
        .time("dug", pit.dug)
        .text("by", pit.by.as_deref())
        .may("dug_to_mm", pit.dug_to_mm)
        .may("face", pit.face.map(FaceMoisture::code))
        .list("walk", pit.walk.iter().map(step).collect())
        .list("layers", pit.layers.iter().map(layer).collect())
        .list("rolls", pit.rolls.iter().map(roll).collect())
        .list("photos", pit.photos.iter().map(photo).collect())
        .remark(pit.remark.as_deref())
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
    signs.texture(layer.texture).remark(layer.remark.as_deref()).close(&layer.unknown)
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
        .list("marks", photo.marks.iter().map(mark).collect())
        .close(&photo.unknown)
}

fn mark(mark: &PhotoMark) -> Value {
    vec![mark.from_left, mark.from_top, mark.depth_mm].into()
}
