//! What a cell can hold, and how that is written: deterministic CBOR (RFC 8949 4.2: shortest
//! integers, shortest exact floats, definite lengths), so that equal values are equal bytes.

use super::cells::Kind;
use crate::record::{
    Buried, ChannelsSeen, ClodInWater, Clods, ComesAway, Drive, Extent, FaceMoisture, FeetSeen, LeadingTines,
    Lift, LineSort, OrganicMatter, OrganicMatterLevel, PartShape, Patches, PhotoMark, PlaceKind, PlatesLeft,
    PoresSeen, Position, Profile, RecordId, Resistance, RollOutcome, RootsSeen, Smear, Smell, SpeedRange,
    TextureNote, Tractor, Unknown, Wings, Zone,
};
use crate::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use chrono::{DateTime, FixedOffset, NaiveDate};
use ciborium::Value;

/// CBOR `null`: the cell is absent.
pub(super) const ABSENT: &[u8] = &[0xf6];

/// A type that a cell can hold.
pub(super) trait CellValue: Sized {
    /// The value to write; `None` = absent.
    fn to_value(&self) -> Option<Value>;
    /// From what stands in the cell, `None` if nothing does. Result `None`: not readable as this type.
    fn from_value(value: Option<&Value>) -> Option<Self>;
}

/// The bytes of a cell.
pub(super) fn encode(value: Option<&Value>) -> Vec<u8> {
    let mut bytes = Vec::new();
    // Writing to memory does not fail.
    if let Some(value) = value {
        let _ = ciborium::into_writer(value, &mut bytes);
    } else {
        bytes.extend_from_slice(ABSENT);
    }
    bytes
}

/// Returns what the bytes of a cell say; absent if they are no CBOR.
pub(super) fn decode(bytes: &[u8]) -> Option<Value> {
    ciborium::from_reader(bytes).ok().filter(|value| *value != Value::Null)
}

/// A value read from the bytes of a cell.
pub(super) fn read<T: CellValue>(bytes: Option<&[u8]>) -> Option<T> {
    T::from_value(bytes.and_then(decode).as_ref())
}

impl<T: CellValue> CellValue for Option<T> {
    fn to_value(&self) -> Option<Value> {
        self.as_ref().and_then(T::to_value)
    }
    fn from_value(value: Option<&Value>) -> Option<Self> {
        Some(value.and_then(|value| T::from_value(Some(value))))
    }
}

/// Values with a simple way there and back.
macro_rules! plain {
    ($($type:ty: $to:expr, $from:expr;)+) => {$(
        impl CellValue for $type {
            fn to_value(&self) -> Option<Value> {
                let to: fn(&Self) -> Value = $to;
                Some(to(self))
            }
            fn from_value(value: Option<&Value>) -> Option<Self> {
                let from: fn(&Value) -> Option<Self> = $from;
                from(value?)
            }
        }
    )+};
}
plain! {
    bool: |is| Value::from(*is), Value::as_bool;
    u32: |number| Value::from(*number), |value| value.as_integer()?.try_into().ok();
    u64: |number| Value::from(*number), |value| value.as_integer()?.try_into().ok();
    f64: |number| Value::from(*number), Value::as_float;
    // 16 bytes.
    RecordId: |id| Value::Bytes(id.as_bytes().to_vec()),
        |value| Self::from_bytes(value.as_bytes()?.as_slice().try_into().ok()?);
    String: |text| Value::from(text.as_str()), |value| value.as_text().map(str::to_owned);
    // ISO 8601.
    NaiveDate: |date| Value::from(date.to_string()), |value| value.as_text()?.parse().ok();
    // [Unix seconds, nanoseconds, offset in seconds].
    DateTime<FixedOffset>: |time| numbers([
        time.timestamp(),
        i64::from(time.timestamp_subsec_nanos()),
        i64::from(time.offset().local_minus_utc()),
    ]), |value| {
        let [seconds, nanoseconds, offset] = items(value)?;
        let offset = FixedOffset::east_opt(offset.as_integer()?.try_into().ok()?)?;
        let (seconds, nanoseconds) = (seconds.as_integer()?, nanoseconds.as_integer()?);
        Some(DateTime::from_timestamp(seconds.try_into().ok()?, nanoseconds.try_into().ok()?)?.with_timezone(&offset))
    };
    // [degrees east, degrees north, metres or null].
    Position: |at| Value::Array(vec![
        at.longitude_deg.into(),
        at.latitude_deg.into(),
        at.accuracy_m.map_or(Value::Null, Value::from),
    ]), |value| {
        let [longitude, latitude, accuracy] = items(value)?;
        Some(Self {
            longitude_deg: longitude.as_float()?,
            latitude_deg: latitude.as_float()?,
            accuracy_m: accuracy.as_float(),
        })
    };
    // [width, lift or null], millimetres.
    Wings: |wings| Value::Array(vec![wings.width_mm.into(), wings.lift_mm.map_or(Value::Null, Value::from)]),
        |value| {
            let [width, lift] = items(value)?;
            Some(Self { width_mm: u32::from_value(Some(width))?, lift_mm: CellValue::from_value(Some(lift))? })
        };
    // [depth or null], millimetres.
    LeadingTines: |leading| Value::Array(vec![leading.depth_mm.map_or(Value::Null, Value::from)]), |value| {
        let [depth] = items(value)?;
        Some(Self { depth_mm: CellValue::from_value(Some(depth))? })
    };
    // [slowest, fastest], km/h.
    SpeedRange: |speed| Value::Array(vec![speed.lo_kmh.into(), speed.hi_kmh.into()]), |value| {
        let [lo, hi] = items(value)?;
        Some(Self { lo_kmh: lo.as_float()?, hi_kmh: hi.as_float()? })
    };
    // [kW, drive].
    Tractor: |tractor| Value::Array(vec![tractor.power_kw.into(), tractor.drive.code().into()]), |value| {
        let [power, drive] = items(value)?;
        Some(Self { power_kw: power.as_float()?, drive: Drive::from_code(drive.as_text()?)? })
    };
    // ["ring", positions], or ["circle", position, metres].
    PartShape: |shape| Value::Array(match shape {
        Self::Ring(ring) => vec!["ring".into(), places_to_value(ring)],
        Self::Circle { middle, radius_m } => vec!["circle".into(), place_to_value(middle), (*radius_m).into()],
    }), |value| match value.as_array()?.as_slice() {
        [form, ring] if form.as_text() == Some("ring") => Some(Self::Ring(places_from_value(ring)?)),
        [form, middle, radius_m] if form.as_text() == Some("circle") => {
            Some(Self::Circle { middle: place_from_value(middle)?, radius_m: radius_m.as_float()? })
        }
        _ => None,
    };
    // A class [scheme, class], or a group by its code.
    TextureNote: |note| match note {
        Self::Class(texture) => Value::Array(vec![texture.scheme.code().into(), texture.class.code().into()]),
        Self::Group(group) => group.code().into(),
    }, |value| {
        if let Some(code) = value.as_text() {
            return TextureGroup::from_code(code).map(Self::Group);
        }
        let [scheme, class] = items(value)?;
        Some(Self::Class(Texture {
            scheme: TextureScheme::from_code(scheme.as_text()?)?,
            class: TextureClass::from_code(class.as_text()?)?,
        }))
    };
    // A level by its code, or a number in percent.
    OrganicMatter: |matter| match matter {
        Self::Level(level) => level.code().into(),
        Self::Percent(percent) => (*percent).into(),
    }, |value| match value {
        Value::Text(code) => OrganicMatterLevel::from_code(code).map(Self::Level),
        Value::Float(percent) => Some(Self::Percent(*percent)),
        _ => None,
    };
}

/// Codes are written as text, so that a list may grow.
macro_rules! by_code {
    ($($list:ty,)+) => {
        plain! { $($list: |value| value.code().into(), |value| Self::from_code(value.as_text()?);)+ }
    };
}
by_code! {
    PlaceKind, Zone, FaceMoisture, ComesAway, Resistance, PoresSeen, ChannelsSeen, RootsSeen, Patches,
    Smell, ClodInWater, RollOutcome, Extent, Profile, Smear, Lift, Clods, PlatesLeft, FeetSeen, Buried, LineSort,
}

/// A list of positions; none is an absent cell.
impl CellValue for Vec<[f64; 2]> {
    fn to_value(&self) -> Option<Value> {
        (!self.is_empty()).then(|| places_to_value(self))
    }
    fn from_value(value: Option<&Value>) -> Option<Self> {
        value.map_or(Some(Self::new()), places_from_value)
    }
}

/// The marks on a photo, each `[from left, from top, depth in mm]`; none is an absent cell.
impl CellValue for Vec<PhotoMark> {
    fn to_value(&self) -> Option<Value> {
        let mark =
            |mark: &PhotoMark| [mark.from_left, mark.from_top, mark.depth_mm].map(Value::from).to_vec();
        (!self.is_empty()).then(|| Value::Array(self.iter().map(mark).map(Value::Array).collect()))
    }
    fn from_value(value: Option<&Value>) -> Option<Self> {
        let mark = |mark: &Value| {
            let [from_left, from_top, depth] = items(mark)?;
            Some(PhotoMark {
                from_left: u32::from_value(Some(from_left))?,
                from_top: u32::from_value(Some(from_top))?,
                depth_mm: u32::from_value(Some(depth))?,
            })
        };
        value.map_or(Some(Self::new()), |list| list.as_array()?.iter().map(mark).collect())
    }
}

/// A list of lengths; none is an absent cell.
impl CellValue for Vec<u32> {
    fn to_value(&self) -> Option<Value> {
        (!self.is_empty()).then(|| Value::Array(self.iter().copied().map(Value::from).collect()))
    }
    fn from_value(value: Option<&Value>) -> Option<Self> {
        let length = |length: &Value| u32::from_value(Some(length));
        value.map_or(Some(Self::new()), |list| list.as_array()?.iter().map(length).collect())
    }
}

fn place_to_value(at: &[f64; 2]) -> Value {
    Value::Array(at.iter().copied().map(Value::from).collect())
}

fn places_to_value(places: &[[f64; 2]]) -> Value {
    Value::Array(places.iter().map(place_to_value).collect())
}

fn place_from_value(value: &Value) -> Option<[f64; 2]> {
    let [longitude, latitude] = items(value)?;
    Some([longitude.as_float()?, latitude.as_float()?])
}

fn places_from_value(value: &Value) -> Option<Vec<[f64; 2]>> {
    value.as_array()?.iter().map(place_from_value).collect()
}

/// Keys that came with a record; none is an absent cell.
impl CellValue for Unknown {
    fn to_value(&self) -> Option<Value> {
        if self.is_empty() { None } else { Value::serialized(self).ok() }
    }
    fn from_value(value: Option<&Value>) -> Option<Self> {
        value.map_or(Some(Self::new()), |map| map.deserialized().ok())
    }
}

/// Where a record hangs: in which list of which parent (`None` at the top), and its rank there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Hangs {
    pub(super) parent: Option<RecordId>,
    /// Number of the kind that the list holds.
    pub(super) list: u32,
    pub(super) rank: u64,
}

impl Hangs {
    /// The bytes of parent cells from, and up to but without: all lists of `parent`, or one of them.
    pub(super) fn range(parent: Option<RecordId>, list: Option<Kind>) -> [Vec<u8>; 2] {
        let parent = parent.map_or(Value::Null, |id| Value::Bytes(id.as_bytes().to_vec()));
        // The head of an array of three, and what of its items is known.
        let mut first = vec![0x83];
        first.extend(encode(Some(&parent)));
        if let Some(kind) = list {
            first.extend(encode(Some(&Value::from(kind as u32))));
        }
        let past = [first.as_slice(), &[0xff]].concat();
        [first, past]
    }
}

plain! {
    Hangs: |hangs| {
        let parent = hangs.parent.map_or(Value::Null, |id| Value::Bytes(id.as_bytes().to_vec()));
        Value::Array(vec![parent, hangs.list.into(), hangs.rank.into()])
    }, |value| {
        let [parent, list, rank] = items(value)?;
        let parent = match parent {
            Value::Null => None,
            id => Some(RecordId::from_bytes(id.as_bytes()?.as_slice().try_into().ok()?)?),
        };
        Some(Self { parent, list: list.as_integer()?.try_into().ok()?, rank: rank.as_integer()?.try_into().ok()? })
    };
}

/// The items of an array of exactly `N`.
fn items<const N: usize>(value: &Value) -> Option<&[Value; N]> {
    value.as_array()?.as_slice().try_into().ok()
}

fn numbers<const N: usize>(numbers: [i64; N]) -> Value {
    Value::Array(numbers.into_iter().map(Value::from).collect())
}
