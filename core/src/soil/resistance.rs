//! Penetration resistance: hard for roots is not yet a reason to loosen.

use super::class::{self, ClassOf};
use crate::error::Fault;
use crate::record::codes::codes;

/// Resistance from which roots are commonly held back: the start of "high" in USDA (the mark as such: value
/// from memory).
pub const ROOT_MARK_MPA: f64 = 2.0;

/// One pound-force per square inch in megapascals, from the pound and inch of 1959 and standard gravity.
const PSI_MPA: f64 = 0.006_894_757_293;

/// Megapascals from pounds per square inch.
pub fn mpa_from_psi(psi: f64) -> f64 {
    psi * PSI_MPA
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

/// A resistance against roots and against the need for loosening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ResistanceReading {
    /// Its class by USDA.
    pub class: ClassOf,
    /// Whether it reaches [`ROOT_MARK_MPA`].
    pub hard_for_roots: bool,
    /// What it says of loosening, by itself.
    pub need: LooseningNeed,
    /// The limits it was held against, megapascals (Petelkau & Rogasik 1994).
    pub limits_mpa: (f64, f64),
}

/// What a resistance in the subsoil just under the plough layer says, measured at spring moisture.
///
/// # Errors
/// A resistance that is no number or negative.
pub fn reading(texture: SubsoilTexture, mpa: f64) -> Result<ResistanceReading, Fault> {
    let class = class::of("penetration_usda", mpa)?;
    let limits_mpa = LOOSENING_NEED_MPA[texture as usize];
    let need = if mpa < limits_mpa.0 {
        LooseningNeed::NotIndicated
    } else if mpa <= limits_mpa.1 {
        LooseningNeed::Open
    } else {
        LooseningNeed::Indicated
    };
    Ok(ResistanceReading { class, hard_for_roots: mpa >= ROOT_MARK_MPA, need, limits_mpa })
}
