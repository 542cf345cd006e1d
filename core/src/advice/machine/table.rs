//! Every constant of the machine room, with its source a row. Not one of them is spread elsewhere.

use crate::record::codes::codes;
use crate::record::{Drive, Foot};
use crate::soil::texture::TextureGroup;

codes!(
    /// Soil as the draught table divides it (ASABE D497).
    DraughtSoil { Fine = "fine", Medium = "medium", Coarse = "coarse", }
);
codes!(
    /// Ground under the tractor's wheels.
    Surface { Concrete = "concrete", Firm = "firm", Tilled = "tilled", Soft = "soft", }
);

impl From<TextureGroup> for DraughtSoil {
    /// Our judgement: the divisions of field and table are matched by eye.
    fn from(group: TextureGroup) -> Self {
        match group {
            TextureGroup::Sand | TextureGroup::Light => Self::Coarse,
            TextureGroup::Medium | TextureGroup::Silty => Self::Medium,
            TextureGroup::Heavy => Self::Fine,
        }
    }
}

/// Critical depth over foot width, least and most (Gough, Hughes-Games and Nikkel, Soil Management Handbook,
/// Okanagan and Similkameen Valleys, section 4.3.1; the origin, Spoor and Godwin 1978, is value from memory).
pub const CRITICAL_RATIO: (u32, u32) = (5, 7);

/// Spacing over tip depth at which neighbouring tines work together.
pub struct SpacingRow {
    /// What runs in the ground.
    pub foot: Foot,
    /// Least and most, in tenths of the tip depth; `None` where nothing was found published.
    pub tenths: Option<(u32, u32)>,
    /// Where from.
    pub source: &'static str,
}

const SPACING_SOURCE: &str = "Tasmania DPIPWE, Deep ripping implements";

/// In the order of [`Foot::ALL`].
pub const SPACING: [SpacingRow; Foot::ALL.len()] = [
    SpacingRow { foot: Foot::Plain, tenths: Some((10, 15)), source: SPACING_SOURCE },
    SpacingRow { foot: Foot::PlainLeading, tenths: None, source: "no published range known" },
    SpacingRow { foot: Foot::Winged, tenths: Some((15, 20)), source: SPACING_SOURCE },
    SpacingRow { foot: Foot::WingedLeading, tenths: Some((20, 25)), source: SPACING_SOURCE },
];

/// A depth for leading tines. The two rows differ and are never merged.
pub struct LeadingRow {
    /// Least depth, hundredths of the tip depth.
    pub least: f64,
    /// Most, likewise.
    pub most: f64,
    /// Where from.
    pub source: &'static str,
}

/// Depths of leading tines, as a share of the tip depth.
pub const LEADING: [LeadingRow; 2] = [
    LeadingRow {
        least: 1.0 / 3.0,
        most: 0.5,
        source: "Hamza, Riethmuller and Anderson 2006: a third to a half of the main depth",
    },
    LeadingRow {
        least: 0.60,
        most: 0.75,
        source: "Hamza et al. 2013: 25 to 40 % shallower than the main tine",
    },
];

/// Side of the loosened ground against the level, degrees: the usual value of diagrams (value from memory).
pub const SIDE_SLOPE_DEGREES: f64 = 45.0;

/// Draught of one tool in newtons: `factor × (a + b × km/h + c × (km/h)²) × depth in cm`.
pub struct DraughtRow {
    /// Whether it has wings.
    pub winged: bool,
    /// Constant part, N per tool and cm.
    pub a: f64,
    /// Part that grows with speed.
    pub b: f64,
    /// Part that grows with the square of speed.
    pub c: f64,
    /// Where from.
    pub source: &'static str,
}

const DRAUGHT_SOURCE: &str = "ASABE D497, its table as reported second-hand";

/// Subsoiler rows: narrow point, and 30 cm winged point.
pub const DRAUGHT: [DraughtRow; 2] = [
    DraughtRow { winged: false, a: 226.0, b: 0.0, c: 1.8, source: DRAUGHT_SOURCE },
    DraughtRow { winged: true, a: 294.0, b: 0.0, c: 2.4, source: DRAUGHT_SOURCE },
];

/// Factor of the soil in the order of [`DraughtSoil::ALL`], both subsoiler rows alike (source as [`DRAUGHT`]).
pub const DRAUGHT_FACTOR: [f64; DraughtSoil::ALL.len()] = [1.0, 0.70, 0.45];
/// How far a single field may lie from the table, either way, as a share (source as [`DRAUGHT`]).
pub const DRAUGHT_SPREAD: f64 = 0.5;

/// Drawbar power over PTO power, surfaces in the order of [`Surface::ALL`].
pub struct TractionRow {
    /// What pulls.
    pub drive: Drive,
    /// The ratio on each surface.
    pub ratio: [f64; Surface::ALL.len()],
    /// Where from.
    pub source: &'static str,
}

const TRACTION_SOURCE: &str = "University of Arizona, agricultural machinery management";

/// In the order of [`Drive::ALL`].
pub const TRACTION: [TractionRow; Drive::ALL.len()] = [
    TractionRow { drive: Drive::TwoWheel, ratio: [0.87, 0.72, 0.67, 0.55], source: TRACTION_SOURCE },
    TractionRow { drive: Drive::FrontAssist, ratio: [0.87, 0.77, 0.73, 0.65], source: TRACTION_SOURCE },
    TractionRow { drive: Drive::FourWheel, ratio: [0.88, 0.78, 0.75, 0.70], source: TRACTION_SOURCE },
    // Firm below tilled looks like a slip in the source (0.82 from memory); kept as read.
    TractionRow { drive: Drive::Tracks, ratio: [0.88, 0.79, 0.80, 0.78], source: TRACTION_SOURCE },
];

/// PTO power over engine power at the flywheel (source as [`TRACTION`]).
pub const PTO_PER_ENGINE: f64 = 0.9;

/// Part-load fuel at full throttle, litres an hour: `(a × load + b) × rated PTO kW` (Grisso, Virginia Tech, for the
/// form; the two coefficients are values from memory).
pub const FUEL_PART_LOAD: (f64, f64) = (0.22, 0.096);
/// The older curve, litres per PTO kWh used: `a × load + b − c × √(d × load + e)` (ASAE D497 and EP496 before 2003;
/// value from memory).
pub const FUEL_OLDER: [f64; 5] = [2.64, 3.91, 0.203, 738.0, 173.0];

/// Speed where none is known, km/h: 5 mph (Iowa State University PM 696, 2001, all subsoiler rows).
pub const USUAL_SPEED_KMH: f64 = 8.0;

/// Share of the time in the field spent working: subsoilers (Iowa State University PM 696, 2001: 83 to 85 %).
pub const FIELD_EFFICIENCY: f64 = 0.85;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tables_stand_in_the_order_of_their_lists() {
        assert!(SPACING.iter().map(|row| row.foot).eq(Foot::ALL.iter().copied()));
        assert!(TRACTION.iter().map(|row| row.drive).eq(Drive::ALL.iter().copied()));
    }
}
