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

codes!(
    /// What a drain is made of, or a service carries, where that is known.
    LineSort {
        /// A pipe drain under stone or gravel.
        DrainInStone = "drain_in_stone",
        /// A pipe, tile or stone drain with nothing over it but soil.
        BareDrain = "bare_drain",
        /// A cable for power, of the network or the farm.
        PowerCable = "power_cable",
        /// A pipe for gas or oil.
        GasOrOil = "gas_or_oil",
        /// A main of a water company.
        WaterMain = "water_main",
        /// A farm's own water pipe, as to a trough.
        FarmWater = "farm_water",
        /// A telephone cable or fibre.
        Telephone = "telephone",
    }
);

impl LineSort {
    /// The kind of line it is said of.
    pub const fn kind(self) -> Buried {
        match self {
            Self::DrainInStone | Self::BareDrain => Buried::Drain,
            Self::PowerCable | Self::GasOrOil | Self::WaterMain | Self::FarmWater | Self::Telephone => {
                Buried::Service
            }
        }
    }
}

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
    /// Depth to its top, or to that of its permeable fill; of a drain that is noted to lie in stone, to the top of the pipe.
    pub depth_mm: Option<u32>,
    /// What it is made of or carries; what does not go with the kind says nothing.
    pub sort: Option<LineSort>,
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
    /// Returns what it is made of or carries, where that goes with its kind.
    pub fn known(&self) -> Option<LineSort> {
        self.sort.filter(|sort| sort.kind() == self.kind)
    }

    /// Everything that cannot be so.
    pub fn faults(&self) -> Vec<Fault> {
        let short = self.along.len() < 2;
        let fault =
            Fault::new("along", "a line needs two places at least", "give its course, place by place");
        let stray = self.sort.filter(|sort| sort.kind() != self.kind).map(|sort| {
            let wrong = format!(
                "{} is said of a {}, and this is a {}",
                sort.code(),
                sort.kind().code(),
                self.kind.code()
            );
            Fault::new("sort", wrong, "change it or the kind, or leave it out where it is not known")
        });
        short.then_some(fault).into_iter().chain(stray).collect()
    }
}
