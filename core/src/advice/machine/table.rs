//! Every constant of the machine room, with its source a row. Not one of them is spread elsewhere.

use super::geometry::SideSlope;
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
    /// Share of the draught saved there, at most.
    pub draught_saved: Option<f64>,
    /// Share of the fuel saved there.
    pub fuel_saved: Option<f64>,
    /// Where from.
    pub source: &'static str,
}

/// Depths of leading tines, as a share of the tip depth.
pub const LEADING: [LeadingRow; 2] = [
    LeadingRow {
        least: 1.0 / 3.0,
        most: 0.5,
        draught_saved: Some(0.177),
        fuel_saved: None,
        source: "Hamza, Riethmuller and Anderson 2006: a third to a half of the main depth; one tine in line, up to 17.7 % less draught",
    },
    LeadingRow {
        least: 0.60,
        most: 0.75,
        draught_saved: None,
        fuel_saved: Some(1.0 - 11.5 / 13.6),
        source: "Hamza et al. 2013: 25 to 40 % shallower than the main tine; 13.6 to 11.5 l/ha at 330 mm in moist loamy sand",
    },
];

/// Side of the loosened ground against the level, degrees, flattest and steepest: 45 is the usual value of diagrams (value
/// from memory); Zaied et al. 2016 reckon 51.6 to 52.6; the areas measured by Spoor and Godwin 1978 (value from memory)
/// imply 57 to 60.
pub const SIDE_SLOPE_DEGREES: SideSlope = SideSlope { flat: 45.0, steep: 60.0 };

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

/// Width over the wings of the winged row (source as [`DRAUGHT`]).
pub const DRAUGHT_WINGS_MM: u32 = 300;

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

/// Wheel numeric of each surface, in the order of [`Surface::ALL`]; values from memory, none was found in print. 80 for hard
/// ground is that of ASABE D497 after Brixius 1987; the others are usual with the older numeric of Wismer and Luth 1974, and D497
/// gives no less: so a tractor is told to pull rather too little than too much.
pub const WHEEL_NUMERIC: [f64; Surface::ALL.len()] = [80.0, 30.0, 20.0, 15.0];
/// Slip for best traction, least and most, in the order of [`Surface::ALL`] (source as [`TRACTION`]).
pub const BEST_SLIP: [(f64, f64); Surface::ALL.len()] =
    [(0.04, 0.08), (0.08, 0.10), (0.11, 0.13), (0.14, 0.16)];
/// Slip above which wheels smear and dig themselves in rather than pull. Our judgement.
pub const MOST_SLIP: f64 = 0.20;
/// Share of a two-wheel drive's weight on the driven wheels (three quarters: common practice, no source).
pub const ON_REAR_WHEELS: f64 = 0.75;
/// Slowest speed that is work at all, km/h, where the machine's own is not known (GRDC Ground Cover: 2 km/h was far too
/// slow; size our judgement).
pub const SLOWEST_KMH: f64 = 2.0;

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
