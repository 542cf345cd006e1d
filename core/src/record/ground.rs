//! What is marked on a field: parts of it, and lines of what is buried.

use super::codes::codes;
use super::{RecordId, Unknown, Zone};
use crate::error::Fault;

codes!(
    /// What lies buried along a line.
    Buried {
        /// A pipe drain.
        Drain = "drain",
        MoleDrain = "mole_drain",
        /// A cable, a gas or water pipe, or anything else that must not be cut.
        Service = "service",
    }
);

/// A part of a field with a call of its own.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Identity.
    pub id: RecordId,
    /// What the farm calls it.
    pub name: Option<String>,
    /// The zone it is: a gateway or a patch.
    pub zone: Zone,
    /// Where it lies.
    pub shape: PartShape,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// Where a part lies; places are `[longitude, latitude]` in degrees.
#[derive(Debug, Clone, PartialEq)]
pub enum PartShape {
    /// As drawn: a ring without the closing repeat.
    Ring(Vec<[f64; 2]>),
    /// A circle, such as round a gateway.
    Circle {
        /// Its middle.
        middle: [f64; 2],
        /// Its radius in metres.
        radius_m: f64,
    },
}

/// A line of drains or services as marked.
#[derive(Debug, Clone, PartialEq)]
pub struct BuriedLine {
    /// Identity.
    pub id: RecordId,
    /// What lies there.
    pub kind: Buried,
    /// Its course, `[longitude, latitude]` in degrees, two places at least.
    pub along: Vec<[f64; 2]>,
    /// Depth to its top, or to that of its permeable fill.
    pub depth_mm: Option<u32>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// Largest radius believed of a circle. Our judgement.
const LARGEST_RADIUS_M: f64 = 500.0;

impl Part {
    /// Everything of itself that cannot be so; a ring has the faults of an outline.
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        if !matches!(self.zone, Zone::Gateway | Zone::Patch) {
            let todo = "use gateway or patch: the other zones come from outline, headland and tramlines";
            faults.push(Fault::new("zone", "only a gateway or a patch is marked", todo));
        }
        if let PartShape::Circle { radius_m, .. } = self.shape
            && !(radius_m > 0.0 && radius_m <= LARGEST_RADIUS_M)
        {
            let todo = "give the radius in metres, above 0 and up to 500";
            faults.push(Fault::new("radius_m", "this is no radius of a part of a field", todo));
        }
        faults
    }
}

impl BuriedLine {
    /// Everything that cannot be so.
    pub fn faults(&self) -> Vec<Fault> {
        let short = self.along.len() < 2;
        let fault =
            Fault::new("along", "a line needs two places at least", "give its course, place by place");
        short.then_some(fault).into_iter().collect()
    }
}
