//! A field and everything noted about it.

use super::{Buried, BuriedLine, Machine, OrganicMatterLevel, Part, Pass, Pit, RecordId, Unknown};
use crate::soil::texture::{Texture, TextureGroup};
use chrono::NaiveDate;

/// One field with its pits: what a notes file holds.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldNotes {
    /// The field itself.
    pub field: Field,
    /// Its pits, in the order noted (the order carries no meaning).
    pub pits: Vec<Pit>,
    /// Machines as set for it; a machine set anew is another one.
    pub machines: Vec<Machine>,
    /// Passes over it, with what was dug behind them.
    pub passes: Vec<Pass>,
    /// Unknown keys at the top of the file.
    pub unknown: Unknown,
}

impl FieldNotes {
    /// A field and its pits, nothing else noted.
    pub fn new(field: Field, pits: Vec<Pit>) -> Self {
        Self { field, pits, machines: Vec::new(), passes: Vec::new(), unknown: Unknown::new() }
    }
}

/// A field as a whole.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// Identity.
    pub id: RecordId,
    /// Name the farm uses; never empty.
    pub name: String,
    /// Ring of `[longitude, latitude]` in degrees, without the closing repeat; empty = not walked.
    pub outline: Vec<[f64; 2]>,
    /// Width of the headland.
    pub headland_mm: Option<u32>,
    /// Spacing of the tramlines.
    pub tramline_mm: Option<u32>,
    /// Distance between the middles of the wheels that run in the tramlines.
    pub wheel_track_mm: Option<u32>,
    /// Width of their tyres.
    pub tyre_mm: Option<u32>,
    /// Gateways and patches as marked.
    pub parts: Vec<Part>,
    /// Lines of drains and services as marked.
    pub lines: Vec<BuriedLine>,
    /// Topsoil texture.
    pub texture: Option<TextureNote>,
    /// Topsoil organic matter.
    pub organic_matter: Option<OrganicMatter>,
    /// Crop standing now, in plain words.
    pub crop_now: Option<String>,
    /// Crop before it.
    pub last_crop: Option<String>,
    /// Day of the last loosening.
    pub last_loosened: Option<NaiveDate>,
    /// Day heavy wheels last ran over the field.
    pub last_traffic: Option<NaiveDate>,
    /// Depth to the top of the pipe drains or their permeable fill.
    pub drains_mm: Option<u32>,
    /// Depth to the top of the mole drains.
    pub mole_drains_mm: Option<u32>,
    /// Depth to the shallowest cable or pipe.
    pub services_mm: Option<u32>,
    /// Clearance to keep above drains and moles; the usual ones where not set.
    pub clearance_mm: Option<u32>,
    /// Clearance to keep above cables and pipes; the usual one where not set, and never less than the floor without leave.
    pub services_clearance_mm: Option<u32>,
    /// Who was asked what lies buried.
    pub services_asked: Option<String>,
    /// When; an answer lapses.
    pub services_asked_on: Option<NaiveDate>,
    /// Whether the owner gave leave to work above it.
    pub services_leave: Option<bool>,
    /// Day of the last rain that wetted the soil.
    pub last_rain: Option<NaiveDate>,
    /// Deepest tip depth the machine at hand reaches.
    pub reach_mm: Option<u32>,
    /// Depth to which the field is tilled every year, as the implement is set.
    pub tillage_mm: Option<u32>,
    /// So stony that the knife is stopped by stones.
    pub stony: Option<bool>,
    /// The plates near the surface part at a touch and lie in the reference too: frost made them.
    pub plates_soft: Option<bool>,
    /// What is sown next.
    pub next_crop: Option<String>,
    /// The day it is sown.
    pub next_sown: Option<NaiveDate>,
    /// Steepest slope of the ground that is worked, in percent.
    pub slope_percent: Option<u32>,
    /// Whether wheels run in the same lanes year after year and nowhere else.
    pub controlled_traffic: Option<bool>,
    /// The user holds to loosening deep clay against the advice.
    pub deep_clay_anyway: Option<bool>,
    /// What else is to be said of it, in plain words; see [`super::remark`].
    pub remark: Option<String>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// Texture as noted: a class of a named scheme, or only the group.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TextureNote {
    /// A class of a scheme (`sandy_loam` in `usda` or `uk`).
    Class(Texture),
    /// `light`, `medium` or `heavy` only.
    Group(TextureGroup),
}

impl TextureNote {
    /// The group that readings use.
    pub fn group(self) -> TextureGroup {
        match self {
            Self::Class(texture) => texture.group(),
            Self::Group(group) => group,
        }
    }
}

/// Organic matter as noted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OrganicMatter {
    /// By class.
    Level(OrganicMatterLevel),
    /// In percent by mass, 0 to 100.
    Percent(f64),
}

impl Field {
    /// A field of which only the name is known.
    pub fn new(id: RecordId, name: impl Into<String>) -> Self {
        Self {
            id,
            name: name.into(),
            outline: Vec::new(),
            headland_mm: None,
            tramline_mm: None,
            wheel_track_mm: None,
            tyre_mm: None,
            parts: Vec::new(),
            lines: Vec::new(),
            texture: None,
            organic_matter: None,
            crop_now: None,
            last_crop: None,
            last_loosened: None,
            last_traffic: None,
            drains_mm: None,
            mole_drains_mm: None,
            services_mm: None,
            clearance_mm: None,
            services_clearance_mm: None,
            services_asked: None,
            services_asked_on: None,
            services_leave: None,
            last_rain: None,
            reach_mm: None,
            tillage_mm: None,
            stony: None,
            plates_soft: None,
            next_crop: None,
            next_sown: None,
            slope_percent: None,
            controlled_traffic: None,
            deep_clay_anyway: None,
            remark: None,
            unknown: Unknown::new(),
        }
    }

    /// Depth to the shallowest of what lies buried: as noted for the field, or of a line with a depth.
    pub fn shallowest_mm(&self, kind: Buried) -> Option<u32> {
        let noted = match kind {
            Buried::Drain => self.drains_mm,
            Buried::MoleDrain => self.mole_drains_mm,
            Buried::Service => self.services_mm,
        };
        let lines = self.lines.iter().filter(|line| line.kind == kind).filter_map(|line| line.depth_mm);
        lines.chain(noted).min()
    }
}
