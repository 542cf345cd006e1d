//! Which lengths can be meant. Outside them a unit was mixed up, and the message says which one most likely.

use serde_json::Number;
use std::ops::RangeInclusive;

/// A length that a notes file holds, in millimetres.
#[derive(Debug)]
pub struct Length {
    /// What is written.
    what: &'static str,
    /// What is believed.
    believed: RangeInclusive<u32>,
    /// What is usual: a guess at the unit must land here.
    usual: RangeInclusive<u32>,
}

const fn length(what: &'static str, believed: RangeInclusive<u32>, usual: RangeInclusive<u32>) -> Length {
    Length { what, believed, usual }
}

// Ranges: our judgement, wide on purpose, save where a source is named.
/// Bottom of a step or layer.
pub const DEPTH: Length = length("a depth in a pit dug by hand", 1..=3_000, 50..=1_500);
/// Top of a layer, depth of a roll or a photo; 0 is the surface.
pub const DEPTH_FROM_SURFACE: Length = length("a depth in a pit dug by hand", 0..=3_000, 50..=1_500);
/// Bottom of the hole; less than a hand's breadth is no pit.
pub const HOLE: Length = length("the depth of a pit dug by hand", 100..=3_000, 150..=1_500);
/// Top of pipe drains or their fill (UK pipes about 0.7-1.0 m with fill to 300-400 mm; value from memory).
pub const DRAINS: Length = length("the depth of pipe drains or their fill", 100..=3_000, 250..=2_000);
/// Top of mole drains: 400-600 mm (Tasmanian land drainage guide); more than 1 m is a unit error, since a state
/// page on moling prints cm for mm.
pub const MOLE_DRAINS: Length = length("the depth of mole drains", 100..=1_000, 300..=800);
/// Shallowest cable or pipe.
pub const SERVICES: Length = length("the depth of a cable or pipe", 10..=3_000, 200..=2_000);
/// Distance to keep above what is buried.
pub const CLEARANCE: Length = length("a clearance above buried things", 0..=1_000, 50..=500);
/// Clearance kept above cables and pipes.
pub const SERVICES_CLEARANCE: Length = length("a clearance above cables and pipes", 0..=2_000, 200..=1_000);
/// Depth of yearly tillage; direct drilling barely scratches, no plough goes deeper than half a metre.
pub const TILLAGE: Length = length("the depth of yearly tillage", 10..=600, 50..=400);
/// Deepest tip depth of a machine (most reach about 600 mm; trade source).
pub const REACH: Length = length("the reach of a loosening machine", 100..=2_000, 200..=1_000);
/// Middle to middle of the wheels of an axle.
pub const WHEEL_TRACK: Length = length("a wheel track", 1_000..=4_000, 1_400..=3_200);
/// Width of a tyre.
pub const TYRE: Length = length("the width of a tyre", 100..=1_500, 200..=1_100);
/// Distance from one leg of a machine to the next (usual 0.4-1 m; common practice, no source).
pub const SPACING: Length = length("the distance between two legs", 100..=3_000, 300..=1_500);
/// Width of a foot without wings.
pub const FOOT: Length = length("the width of a foot", 10..=500, 20..=150);
/// Width over both wings.
pub const WINGS: Length = length("the width over both wings", 20..=1_500, 100..=700);
/// How far the wings lift the soil.
pub const LIFT: Length = length("the lift of wings", 1..=300, 20..=150);
/// Tip depth of shallow tines before the legs.
pub const LEADING: Length = length("the depth of leading tines", 20..=900, 50..=500);
/// Width worked in one run.
pub const WORKING_WIDTH: Length = length("the width worked in one run", 100..=20_000, 500..=12_000);
/// Deepest tip depth of a machine as noted with it.
pub const MACHINE_REACH: Length = length("the reach of a loosening machine", 100..=1_200, 200..=1_000);
/// Tip depth of a pass, and the bottom of a slot behind it.
pub const TIP: Length = length("the depth of a tip", 100..=1_200, 150..=900);
/// Depth to firm soil behind the machine; 0 where nothing came loose.
pub const FIRM: Length = length("a depth to firm soil", 0..=1_500, 50..=900);
/// Headland and tramline widths.
pub const WIDTH: Length = length("a headland or tramline width", 1_000..=200_000, 2_000..=120_000);

impl Length {
    /// Returns what is believed, millimetres.
    pub fn believed(&self) -> RangeInclusive<u32> {
        self.believed.clone()
    }

    /// The whole millimetres a number stands for, or what is wrong and what to do.
    pub fn take(&self, number: &Number) -> Result<u32, (String, String)> {
        let mm = number.as_f64().unwrap_or(f64::INFINITY);
        let (least_mm, most_mm) = (f64::from(*self.believed.start()), f64::from(*self.believed.end()));
        if mm.fract() == 0.0 && (least_mm..=most_mm).contains(&mm) {
            return Ok(mm as u32);
        }
        let what = self.what;
        let wrong = if mm < 0.0 {
            format!("{number} mm is negative")
        } else if mm < least_mm {
            format!("{number} mm is too little for {what} (from {least_mm} mm)")
        } else if mm > most_mm {
            format!("{number} mm is too much for {what} (up to {most_mm} mm)")
        } else {
            format!("{number} is not a whole number of millimetres")
        };
        Err((wrong, self.todo(mm)))
    }

    fn todo(&self, mm: f64) -> String {
        let usual = |mm: f64| {
            (f64::from(*self.usual.start())..=f64::from(*self.usual.end()))
                .contains(&mm)
                .then_some(mm.round())
        };
        if mm < 0.0 {
            "count depths from the surface downwards and widths from 0 upwards".into()
        } else if mm > f64::from(*self.believed.end()) {
            usual(mm / 10.0).map_or_else(
                || "check the unit: lengths are whole millimetres".into(),
                |meant| format!("{mm} mm are {meant} cm: did you mean {meant} mm?"),
            )
        } else if let Some(meant) = usual(mm * 1_000.0) {
            format!("lengths are whole millimetres: did you mean {meant}, from {mm} m?")
        } else if let Some(meant) = usual(mm * 10.0) {
            format!("lengths are whole millimetres: did you mean {meant}, from {mm} cm?")
        } else if mm >= 1.0 && mm.fract() != 0.0 {
            format!("round it to the millimetre: {}", mm.round())
        } else {
            "check the unit: lengths are whole millimetres".into()
        }
    }
}
