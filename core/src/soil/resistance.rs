//! Penetration resistance: hard for roots is not yet a reason to loosen.

use super::class::{self, ClassOf};
use crate::error::Fault;
use crate::record::FaceMoisture;
use crate::record::codes::codes;

/// Steps in one megapascal that a resistance is read to: what is shown then contradicts no limit. Our judgement.
const MPA_STEP: f64 = 100.0;

/// Where [`LOOSENING_NEED_MPA`] comes from.
pub const LOOSENING_SOURCE: &str = "Petelkau & Rogasik 1994, east German moraine, as quoted by HU Berlin";

/// Resistance from which roots are commonly held back: the start of "high" in USDA (the mark as such: value
/// from memory).
pub const ROOT_MARK_MPA: f64 = 2.0;

/// One pound-force per square inch in megapascals, from the pound and inch of 1959 and standard gravity.
const PSI_MPA: f64 = 0.006_894_757_293;

/// Megapascals from pounds per square inch.
pub fn mpa_from_psi(psi: f64) -> f64 {
    psi * PSI_MPA
}

/// Pounds per square inch from megapascals.
pub fn psi_from_mpa(mpa: f64) -> f64 {
    mpa / PSI_MPA
}

codes!(
    /// Texture of a subsoil, in the classes of Petelkau & Rogasik (German scheme; not converted from any
    /// other).
    SubsoilTexture {
        Sand = "sand",
        SiltyLoamySand = "silty_loamy_sand",
        SlightlyLoamySand = "slightly_loamy_sand",
        VeryLoamySand = "very_loamy_sand",
        SandyLoamOrLoam = "sandy_loam_or_loam",
    }
);

/// Resistance (megapascals) just under the plough layer, at spring moisture, from which loosening is needed:
/// from the lower to the upper limit. Petelkau & Rogasik 1994, east German moraine, as quoted by HU Berlin.
/// By [`SubsoilTexture`].
const LOOSENING_NEED_MPA: [(f64, f64); SubsoilTexture::ALL.len()] =
    [(4.3, 4.8), (4.0, 4.6), (3.7, 4.4), (3.5, 4.2), (3.2, 4.0)];

codes!(
    /// What resistance alone says of the need for loosening.
    LooseningNeed {
        /// Below the limits.
        NotIndicated = "not_indicated",
        /// Between the limits.
        Open = "open",
        /// Above the limits.
        Indicated = "indicated",
    }
);

codes!(
    /// What a resistance says of roots, or why it says nothing.
    ConeSays {
        /// Roots are held back.
        HardForRoots = "hard_for_roots",
        /// Roots can push in.
        RootsCanPush = "roots_can_push",
        /// Nothing: dry soil is hard whatever its structure.
        TooDry = "too_dry",
        /// Nothing: wet soil gives way whatever its structure.
        TooWet = "too_wet",
        /// Nothing: the cone stands on stones.
        Stony = "stony",
        /// Nothing: how moist it was is not known.
        MoistureNotKnown = "moisture_not_known",
    }
);

/// A cone pushed into the soil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cone {
    /// Resistance, megapascals; of several pushes the median.
    pub mpa: f64,
    /// How moist the soil was; moist is near field capacity, a day or two after it was wetted through.
    pub moisture: Option<FaceMoisture>,
    /// Whether it stands on stones.
    pub stony: bool,
    /// Texture, where it was measured just under the plough layer in spring: then the need for loosening is told too.
    pub subsoil: Option<SubsoilTexture>,
}

/// A resistance against roots and against the need for loosening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ConeReading {
    /// Resistance, megapascals to hundredths.
    pub mpa: f64,
    /// Its class by USDA.
    pub class: ClassOf,
    /// What it says of roots.
    pub says: ConeSays,
    /// What it says of loosening, by itself; only of moist soil without stones.
    pub loosening: Option<Loosening>,
}

/// A resistance against the need for loosening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Loosening {
    /// What it says.
    pub need: LooseningNeed,
    /// The limits it was held against, megapascals (Petelkau & Rogasik 1994).
    pub limits_mpa: (f64, f64),
}

impl Cone {
    /// Returns what the resistance says. Soft is sure only of soil that is not wet, hard only of soil that is not dry: water makes it soft
    /// and drying hard, and nothing makes it the other way round.
    ///
    /// # Errors
    /// A resistance that is no number or negative.
    pub fn reading(&self) -> Result<ConeReading, Fault> {
        let mpa = (self.mpa * MPA_STEP).round() / MPA_STEP;
        let class = class::of("penetration_usda", mpa)?;
        let hard = mpa >= ROOT_MARK_MPA;
        let says = match self.moisture {
            _ if self.stony => ConeSays::Stony,
            None => ConeSays::MoistureNotKnown,
            Some(FaceMoisture::Dry) if hard => ConeSays::TooDry,
            Some(FaceMoisture::Wet) if !hard => ConeSays::TooWet,
            Some(_) if hard => ConeSays::HardForRoots,
            Some(_) => ConeSays::RootsCanPush,
        };
        let moist = self.moisture == Some(FaceMoisture::Moist) && !self.stony;
        Ok(ConeReading {
            mpa,
            class,
            says,
            loosening: self.subsoil.filter(|_| moist).map(|texture| loosening(texture, mpa)),
        })
    }
}

fn loosening(texture: SubsoilTexture, mpa: f64) -> Loosening {
    let limits_mpa = LOOSENING_NEED_MPA[texture as usize];
    let need = if mpa < limits_mpa.0 {
        LooseningNeed::NotIndicated
    } else if mpa <= limits_mpa.1 {
        LooseningNeed::Open
    } else {
        LooseningNeed::Indicated
    };
    Loosening { need, limits_mpa }
}
