//! A pit and what was seen in it.

use super::{FaceMoisture, PlaceKind, RecordId, RollOutcome, Signs, TextureNote, Unknown, Zone};
use chrono::{DateTime, FixedOffset};

/// One hand-dug pit.
#[derive(Debug, Clone, PartialEq)]
pub struct Pit {
    /// Identity.
    pub id: RecordId,
    /// Kind of place.
    pub place: PlaceKind,
    /// Zone it stands for, where that differs from what the place gives.
    pub zone: Option<Zone>,
    /// Where it was dug.
    pub at: Option<Position>,
    /// When it was dug, with the local offset.
    pub dug: Option<DateTime<FixedOffset>>,
    /// Who dug it.
    pub by: Option<String>,
    /// Depth of the hole's bottom.
    pub dug_to_mm: Option<u32>,
    /// Moisture of the face.
    pub face: Option<FaceMoisture>,
    /// Knife walk, from the surface down: each step ends at its `to_mm`.
    pub walk: Vec<Step>,
    /// Layers given or corrected by hand.
    pub layers: Vec<Layer>,
    /// Roll tests.
    pub rolls: Vec<Roll>,
    /// Photos taken of it (metadata).
    pub photos: Vec<Photo>,
    /// What else is to be said of it, in plain words; see [`super::remark`].
    pub remark: Option<String>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// A WGS 84 position.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Position {
    /// Degrees east, -180 to 180.
    pub longitude_deg: f64,
    /// Degrees north, -90 to 90.
    pub latitude_deg: f64,
    /// Radius that holds the true place in 68 of 100 cases, metres.
    pub accuracy_m: Option<f64>,
}

/// One step of the knife walk. Resistance is noted where it changes; a step without it goes on with the last.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Identity.
    pub id: RecordId,
    /// Depth of the step's bottom; its top is the bottom of the step before.
    pub to_mm: u32,
    /// How the soil comes away.
    pub comes_away: Option<super::ComesAway>,
    /// What the knife meets.
    pub resistance: Option<super::Resistance>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// One layer given by hand, or the looks taken at a layer the walk gave.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// Identity.
    pub id: RecordId,
    /// Depth of its top.
    pub top_mm: u32,
    /// Depth of its bottom, below the top.
    pub bottom_mm: u32,
    /// What was seen in it.
    pub signs: Signs,
    /// Texture of this layer where it differs from the field's.
    pub texture: Option<TextureNote>,
    /// What else is to be said of it, in plain words; see [`super::remark`].
    pub remark: Option<String>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// One roll test.
#[derive(Debug, Clone, PartialEq)]
pub struct Roll {
    /// Identity.
    pub id: RecordId,
    /// Depth the soil came from; 0 is the surface.
    pub depth_mm: u32,
    /// What it did.
    pub roll: RollOutcome,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// What is known of a photo; the picture itself lies in the photo store under its hash.
#[derive(Debug, Clone, PartialEq)]
pub struct Photo {
    /// Identity.
    pub id: RecordId,
    /// SHA-256 of the stored bytes, 64 lower-case hex digits.
    pub sha256: String,
    /// Size of the stored bytes.
    pub size_bytes: u64,
    /// Media type, e.g. `image/jpeg`.
    pub media_type: String,
    /// When it was taken.
    pub taken: Option<DateTime<FixedOffset>>,
    /// Depth on the face its middle shows.
    pub depth_mm: Option<u32>,
    /// Places in the picture whose depth is known, in the order touched; empty = no scale. See [`PhotoMark`].
    pub marks: Vec<PhotoMark>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// A place in a photo whose depth on the face is known. Two of them, along one plumb line such as a tape, give scale
/// and tilt; four, the first two along one plumb line and the other two along another, give the perspective as well
/// ([`crate::picture::photo`]).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PhotoMark {
    /// From the left edge of the upright picture, in ten-thousandths of its width, 0 to 10000.
    pub from_left: u32,
    /// From its upper edge, in ten-thousandths of its height, 0 to 10000.
    pub from_top: u32,
    /// Depth below the surface that it shows; 0 is the surface.
    pub depth_mm: u32,
}

impl PhotoMark {
    /// A whole side of the picture, in the parts that marks count in.
    pub const WHOLE: u32 = 10_000;
    /// As many marks as a scale can use.
    pub const MOST: usize = 4;
}

/// Somebody who digs; named by role or as they like.
#[derive(Debug, Clone, PartialEq)]
pub struct Person {
    /// Identity.
    pub id: RecordId,
    /// Name shown.
    pub name: String,
    /// Which hand holds the phone.
    pub left_handed: Option<bool>,
    /// Unknown keys.
    pub unknown: Unknown,
}

impl Pit {
    /// A pit just begun: only its kind of place is known.
    pub fn new(id: RecordId, place: PlaceKind) -> Self {
        Self {
            id,
            place,
            zone: None,
            at: None,
            dug: None,
            by: None,
            dug_to_mm: None,
            face: None,
            walk: Vec::new(),
            layers: Vec::new(),
            rolls: Vec::new(),
            photos: Vec::new(),
            remark: None,
            unknown: Unknown::new(),
        }
    }
}
