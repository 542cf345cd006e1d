//! A machine that loosens below the ploughed soil, as it stands in the yard.

use super::codes::codes;
use super::{RecordId, Unknown};
use crate::error::Fault;
use std::ops::RangeInclusive;

codes!(
    /// Which wheels of the tractor pull.
    Drive {
        /// The rear wheels only.
        TwoWheel = "two_wheel",
        /// Front wheels help; they are smaller than the rear ones.
        FrontAssist = "front_assist",
        /// Four wheels of the same size.
        FourWheel = "four_wheel",
        Tracks = "tracks",
    }
);
codes!(
    /// What runs in the ground, as far as spacing goes.
    Foot {
        Plain = "plain",
        /// Plain, with shallow tines running before it.
        PlainLeading = "plain_leading",
        Winged = "winged",
        /// Winged, with shallow tines running before it.
        WingedLeading = "winged_leading",
    }
);

/// A machine as it is set, with the tractor before it.
#[derive(Debug, Clone, PartialEq)]
pub struct Machine {
    /// Identity.
    pub id: RecordId,
    /// What it is called on the farm; never empty.
    pub name: String,
    /// Number of legs in the ground.
    pub legs: u32,
    /// Distance from one leg to the next, across the machine; for a single leg, from one run to the next.
    pub spacing_mm: u32,
    /// Width of the foot without wings, as it is worn.
    pub foot_width_mm: u32,
    /// Wings on the foot.
    pub wings: Option<Wings>,
    /// Shallow tines before the legs.
    pub leading: Option<LeadingTines>,
    /// Width worked in one run; legs times spacing where not given.
    pub working_width_mm: Option<u32>,
    /// Speeds it is worked at.
    pub speed: Option<SpeedRange>,
    /// Deepest tip depth it reaches.
    pub reach_mm: Option<u32>,
    /// The tractor before it.
    pub tractor: Option<Tractor>,
    /// Mass of the tractor as it works, ballast and driver with it.
    pub tractor_mass_kg: Option<u32>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// Wings of a foot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wings {
    /// Width over both wings.
    pub width_mm: u32,
    /// How far they lift the soil.
    pub lift_mm: Option<u32>,
}

/// Shallow tines before the legs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LeadingTines {
    /// Depth of their tips below the surface; `None` = not measured.
    pub depth_mm: Option<u32>,
}

/// Speeds over the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpeedRange {
    /// Slowest, km/h.
    pub lo_kmh: f64,
    /// Fastest, km/h.
    pub hi_kmh: f64,
}

/// A tractor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tractor {
    /// Rated power of the engine at the flywheel, kW.
    pub power_kw: f64,
    /// What pulls.
    pub drive: Drive,
}

/// What a whole number of a machine may be, millimetres, legs or kilograms. Our judgement: a number outside was meant in
/// another unit.
const WHOLE: [(&str, RangeInclusive<u32>); 8] = [
    ("legs", 1..=40),
    ("spacing_mm", 100..=3_000),
    ("foot_width_mm", 10..=500),
    ("wings.width_mm", 20..=1_500),
    ("wings.lift_mm", 1..=300),
    ("leading.depth_mm", 20..=900),
    ("reach_mm", 100..=1_200),
    ("tractor.mass_kg", 500..=40_000),
];

impl Machine {
    /// Returns what runs in the ground.
    pub const fn foot(&self) -> Foot {
        match (self.wings.is_some(), self.leading.is_some()) {
            (false, false) => Foot::Plain,
            (false, true) => Foot::PlainLeading,
            (true, false) => Foot::Winged,
            (true, true) => Foot::WingedLeading,
        }
    }

    /// Width that lifts the soil: over the wings, else of the foot.
    pub fn lifting_width_mm(&self) -> u32 {
        self.wings.map_or(self.foot_width_mm, |wings| wings.width_mm.max(self.foot_width_mm))
    }

    /// Width worked in one run.
    pub fn width_mm(&self) -> u32 {
        self.working_width_mm.unwrap_or_else(|| self.legs.saturating_mul(self.spacing_mm))
    }

    /// Everything that cannot be so.
    pub fn faults(&self) -> Vec<Fault> {
        let values = [
            Some(self.legs),
            Some(self.spacing_mm),
            Some(self.foot_width_mm),
            self.wings.map(|wings| wings.width_mm),
            self.wings.and_then(|wings| wings.lift_mm),
            self.leading.and_then(|leading| leading.depth_mm),
            self.reach_mm,
            self.tractor_mass_kg,
        ];
        let mut faults: Vec<Fault> = WHOLE
            .iter()
            .zip(values)
            .filter_map(|((at, fits), value)| Some((at, fits, value.filter(|value| !fits.contains(value))?)))
            .map(|(at, fits, value)| {
                let todo = format!("give a whole number from {} to {}", fits.start(), fits.end());
                Fault::new(*at, format!("{value} cannot be so"), todo)
            })
            .collect();
        if self.name.trim().is_empty() {
            faults.push(Fault::new("name", "the name is empty", "give the machine a name"));
        }
        if self.wings.is_some_and(|wings| wings.width_mm < self.foot_width_mm) {
            let wrong = "the wings are narrower than the foot";
            faults.push(Fault::new("wings.width_mm", wrong, "give the width over both wings"));
        }
        if self.working_width_mm.is_some_and(|width_mm| !(100..=20_000).contains(&width_mm)) {
            let todo = "give a whole number from 100 to 20000, or leave it out";
            faults.push(Fault::new("working_width_mm", "this cannot be so", todo));
        }
        if self.speed.is_some_and(|speed| {
            !(0.0 < speed.lo_kmh && speed.lo_kmh <= speed.hi_kmh && speed.hi_kmh <= 20.0)
        }) {
            let todo = "give the slower speed first, both in km/h, above 0 and up to 20";
            faults.push(Fault::new("speed", "this is no range of speeds", todo));
        }
        if self.tractor.is_some_and(|tractor| !(5.0..=800.0).contains(&tractor.power_kw)) {
            faults.push(Fault::new("tractor.power_kw", "this cannot be so", "give 5 to 800 kW"));
        }
        faults
    }
}
