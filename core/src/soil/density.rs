//! Bulk density: packing, pores, where roots stop and where loosened soil settles.

use super::class::{self, ClassOf};
use super::texture::{Fractions, Placed, TextureClass, TextureScheme, place};
use crate::error::Fault;
use crate::record::codes::codes;

/// Density of mineral particles, g/cm³ (the usual 2.65).
pub const PARTICLE_DENSITY: f64 = 2.65;

/// Air-filled share of the volume below which roots lack air (value from memory).
pub const AERATION_LIMIT: f64 = 0.10;

codes!(
    /// The two formulas of packing density; their values and classes are not comparable.
    PackingFormula {
        /// Bulk density + 0.009 · clay % (Jones, Spoor & Thomasson 2003, after Renger 1970).
        Clay = "packing_density_clay",
        /// Bulk density + 0.005 · clay % + 0.001 · silt % (newer German form, as quoted by forst-rast.de).
        ClaySilt = "packing_density_clay_silt",
    }
);

impl PackingFormula {
    /// Returns what one percent of clay and of silt add, g/cm³.
    const fn weights(self) -> (f64, f64) {
        match self {
            Self::Clay => (0.009, 0.0),
            Self::ClaySilt => (0.005, 0.001),
        }
    }
}

/// A packing density with the formula it is by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Packing {
    /// The formula.
    pub formula: PackingFormula,
    /// Packing density, g/cm³.
    pub g_per_cm3: f64,
    /// Its class, in the formula's own classes.
    pub class: ClassOf,
}

/// Packing density of a soil of this dry bulk density (g/cm³), clay and silt (percent by mass).
///
/// # Errors
/// A density that no soil has, or shares outside 0 to 100.
pub fn packing(formula: PackingFormula, bulk_density: f64, clay: f64, silt: f64) -> Result<Packing, Fault> {
    check_density(bulk_density)?;
    for (name, percent) in [("clay", clay), ("silt", silt), ("clay and silt", clay + silt)] {
        if !(0.0..=100.0).contains(&percent) {
            let wrong = format!("{percent} is no share in percent");
            return Err(Fault::new(name, wrong, "give a number from 0 to 100"));
        }
    }
    let (per_clay, per_silt) = formula.weights();
    let sum = bulk_density + per_clay * clay + per_silt * silt;
    // The sum of binary fractions may miss a class limit by a hair.
    let g_per_cm3 = (sum * 1e6).round() / 1e6;
    Ok(Packing { formula, g_per_cm3, class: class::of(formula.code(), g_per_cm3)? })
}

/// Share of the volume that is not particles, 0 to 1, of a soil of this dry bulk density (g/cm³).
///
/// # Errors
/// A density that no soil has.
pub fn total_porosity(bulk_density: f64) -> Result<f64, Fault> {
    check_density(bulk_density)?;
    Ok(1.0 - bulk_density / PARTICLE_DENSITY)
}

/// Air in the soil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirFilled {
    /// Share of the volume, 0 to 1.
    pub share: f64,
    /// Whether it is below [`AERATION_LIMIT`].
    pub roots_lack_air: bool,
}

impl AirFilled {
    /// So much of the volume.
    pub fn of(share: f64) -> Self {
        Self { share, roots_lack_air: share < AERATION_LIMIT }
    }
}

/// Air-filled share of the volume, from dry bulk density (g/cm³) and water by volume (0 to 1).
///
/// # Errors
/// A density that no soil has, or more water than there are pores.
pub fn air_filled(bulk_density: f64, water_by_volume: f64) -> Result<AirFilled, Fault> {
    let pores = total_porosity(bulk_density)?;
    if !(0.0..=pores).contains(&water_by_volume) {
        return Err(Fault::new(
            "water",
            format!("{water_by_volume} of the volume is water, but {pores:.3} of it is pores"),
            "give water as a share of the volume, and the dry bulk density in g/cm3",
        ));
    }
    Ok(AirFilled::of(pores - water_by_volume))
}

codes!(
    /// Particle-size classes of USDA, by which it sets limits to bulk density.
    ParticleSize {
        Sandy = "sandy",
        CoarseLoamy = "coarse_loamy",
        FineLoamy = "fine_loamy",
        CoarseSilty = "coarse_silty",
        FineSilty = "fine_silty",
        /// 35 to 45 % clay.
        Clayey = "clayey",
        /// More than 45 % clay.
        VeryClayey = "very_clayey",
    }
);

/// Sand, silt and clay at which a particle-size class begins, percent: clay of the last two as USDA-NRCS divides them in figure
/// 618-A2; the rest by the particle-size classes of USDA, Keys to Soil Taxonomy (value from memory).
const VERY_CLAYEY_ABOVE: f64 = 45.0;
const CLAYEY_FROM: f64 = 35.0;
const FINE_FROM: f64 = 18.0;
const LOAMY_FROM_SAND: f64 = 15.0;

impl ParticleSize {
    /// The class of measured fractions. Sand as a whole stands for what the classes call fine sand and coarser (our judgement:
    /// very fine sand, which they count as silt, is seldom measured apart).
    pub fn of(fractions: Fractions) -> Self {
        let (sand, clay) = (fractions.sand_percent(), fractions.clay_percent());
        let texture = place(TextureScheme::Usda, fractions);
        let sandy = matches!(texture, Placed::Inside(TextureClass::Sand | TextureClass::LoamySand));
        match clay {
            _ if sandy => Self::Sandy,
            _ if clay > VERY_CLAYEY_ABOVE => Self::VeryClayey,
            CLAYEY_FROM.. => Self::Clayey,
            FINE_FROM.. if sand >= LOAMY_FROM_SAND => Self::FineLoamy,
            FINE_FROM.. => Self::FineSilty,
            _ if sand >= LOAMY_FROM_SAND => Self::CoarseLoamy,
            _ => Self::CoarseSilty,
        }
    }

    /// The densities that hold roots back in this class.
    pub const fn root_limits(self) -> RootLimits {
        NSSH_618_A[self as usize].roots
    }
}

/// Dry bulk densities that hold roots back, g/cm³.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct RootLimits {
    /// Roots are restricted from here on.
    pub restricted_from: f64,
    /// Roots stop above this.
    pub limiting_above: f64,
}

/// Bulk densities at which something begins, g/cm³.
struct Limits {
    roots: RootLimits,
    /// Without a load it settles by itself when wetted, below this.
    settles_below: f64,
}

const fn limits(restricted_from: f64, limiting_above: f64, settles_below: f64) -> Limits {
    Limits { roots: RootLimits { restricted_from, limiting_above }, settles_below }
}

/// Where figures [`NSSH_618_A`] come from.
pub const ROOT_LIMITS_SOURCE: &str =
    "USDA-NRCS, National Soil Survey Handbook, figures 618-A2 (at 1/3 bar) and 618-A3";

/// USDA-NRCS, National Soil Survey Handbook, figures 618-A2 (at 1/3 bar) and 618-A3; the latter has one
/// clayey class. Soils rich in iron oxides and volcanic ash may restrict at lower density. By
/// [`ParticleSize`], in its order.
const NSSH_618_A: [Limits; ParticleSize::ALL.len()] = [
    limits(1.69, 1.85, 1.60),
    limits(1.63, 1.80, 1.40),
    limits(1.60, 1.78, 1.40),
    limits(1.60, 1.79, 1.30),
    limits(1.54, 1.65, 1.40),
    limits(1.49, 1.58, 1.10),
    limits(1.39, 1.47, 1.10),
];

codes!(
    /// What a bulk density means for roots, by the National Soil Survey Handbook, figure 618-A2.
    RootRoom { Free = "free", Restricted = "restricted", Limiting = "limiting", }
);

/// Returns what a dry bulk density (g/cm³, at 1/3 bar) means for roots.
///
/// # Errors
/// A density that no soil has.
pub fn root_room(particle_size: ParticleSize, bulk_density: f64) -> Result<RootRoom, Fault> {
    check_density(bulk_density)?;
    let limits = particle_size.root_limits();
    Ok(if bulk_density > limits.limiting_above {
        RootRoom::Limiting
    } else if bulk_density >= limits.restricted_from {
        RootRoom::Restricted
    } else {
        RootRoom::Free
    })
}

/// Returns whether soil so loose (g/cm³, dry) settles by itself when wetted to field capacity without any load.
///
/// # Errors
/// A density that no soil has.
pub fn settles_when_wetted(particle_size: ParticleSize, bulk_density: f64) -> Result<bool, Fault> {
    check_density(bulk_density)?;
    Ok(bulk_density < NSSH_618_A[particle_size as usize].settles_below)
}

fn check_density(bulk_density: f64) -> Result<(), Fault> {
    if bulk_density > 0.0 && bulk_density < PARTICLE_DENSITY {
        return Ok(());
    }
    let wrong = format!("no soil has a dry bulk density of {bulk_density} g/cm3");
    Err(Fault::new("bulk density", wrong, format!("give g/cm3, above 0 and below {PARTICLE_DENSITY}")))
}
