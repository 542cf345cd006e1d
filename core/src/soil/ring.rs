//! A ring pushed into the soil, weighed as it came and dried: density, pores, the air in them, and what that means for roots.

use super::class::{self, ClassOf};
use super::density::{
    self, AirFilled, PARTICLE_DENSITY, Packing, PackingFormula, ParticleSize, RootLimits, RootRoom,
};
use super::texture::Fractions;
use crate::error::Fault;

/// A weighed ring. Masses are of the soil alone: ring and tin are taken off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ring {
    /// Inside of the ring, cubic centimetres.
    pub volume_cm3: f64,
    /// Mass as taken, grams; without it nothing is said of water and air.
    pub wet_g: Option<f64>,
    /// Mass dried at 105 °C, grams.
    pub dry_g: f64,
    /// Of that, stones sieved out at 2 mm, grams.
    pub stones_g: Option<f64>,
}

/// What the soil in it is made of, as far as known.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct MadeOf {
    /// Sand, silt and clay (USDA's cuts).
    pub fractions: Option<Fractions>,
    /// Particle-size class, where it is known from elsewhere; goes before what the fractions give.
    pub particle_size: Option<ParticleSize>,
}

/// What a ring says. Shares are of the volume of the fine earth, 0 to 1, but where another is named.
#[derive(Debug, Clone, PartialEq)]
pub struct RingReading {
    /// Dry bulk density of all that was in the ring, g/cm³.
    pub whole_g_per_cm3: f64,
    /// Dry bulk density of the fine earth between the stones, g/cm³: what roots meet, and what all that follows is read off.
    pub fine_g_per_cm3: f64,
    /// Its class, in a scheme for density alone.
    pub class: ClassOf,
    /// Share of the ring taken by stones.
    pub stones: Option<Stones>,
    /// Water and air, where it was weighed wet.
    pub moisture: Option<Moisture>,
    /// Pores, full or empty.
    pub pores: f64,
    /// What the density means for roots, where the particle-size class is known.
    pub roots: Option<RootReading>,
    /// Packing density by every formula that its clay and silt allow.
    pub packing: Vec<Packing>,
    /// Whether so much of it is clay that density can look harmless while the structure is bad.
    pub clay_may_hide: bool,
}

/// Stones in a ring.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stones {
    /// Share of the ring's volume.
    pub share: f64,
    /// Its class.
    pub class: ClassOf,
}

/// Water in a ring as it came.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moisture {
    /// Mass of water over mass of dry fine earth.
    pub by_mass: f64,
    /// Share of the volume.
    pub by_volume: f64,
    /// Air beside it.
    pub air: AirFilled,
}

/// A density against roots.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RootReading {
    /// By which limits.
    pub particle_size: ParticleSize,
    /// What it means.
    pub room: RootRoom,
    /// The limits.
    pub limits: RootLimits,
    /// Whether ground as loose settles by itself when wetted without any load.
    pub settles_when_wetted: bool,
}

/// Water may exceed the pores by so much of the volume and is then held to fill them: ring, scales and the round figure for
/// the density of particles are no better. Our judgement.
const MORE_WATER_THAN_PORES: f64 = 0.03;

/// Clay from which a harmless density proves nothing, percent by mass: above 30 structure was bad where density did not show
/// it (Mueller and others 2013, seven countries).
const CLAY_HIDES_ABOVE: f64 = 30.0;

impl Ring {
    /// The inside of a round ring, cubic centimetres.
    pub fn round_cm3(diameter_mm: u32, height_mm: u32) -> f64 {
        let radius_cm = f64::from(diameter_mm) / 20.0;
        std::f64::consts::PI * radius_cm * radius_cm * f64::from(height_mm) / 10.0
    }

    /// Returns what the ring says.
    ///
    /// # Errors
    /// Every measure that cannot be, or that does not go with the others.
    pub fn reading(&self, made_of: MadeOf) -> Result<RingReading, Vec<Fault>> {
        self.check()?;
        self.read(made_of).map_err(|fault| vec![fault])
    }

    fn check(&self) -> Result<(), Vec<Fault>> {
        let mut faults = Vec::new();
        let above_nought = |number: f64| number.is_finite() && number > 0.0;
        if !above_nought(self.volume_cm3) {
            faults.push(Fault::new(
                "ring",
                format!("it has no inside ({} cm3)", self.volume_cm3),
                "give its volume in cubic centimetres, or diameter and height",
            ));
        }
        if !above_nought(self.dry_g) {
            faults.push(Fault::new(
                "dry",
                format!("{} g is no mass", self.dry_g),
                "give the dried soil in grams, without ring and tin",
            ));
        }
        if let Some(wet_g) = self.wet_g.filter(|&wet_g| !(wet_g.is_finite() && wet_g >= self.dry_g)) {
            faults.push(Fault::new(
                "wet",
                format!("{wet_g} g is less than the {} g left when dry", self.dry_g),
                "give both in grams without ring and tin, and look whether they stand the wrong way round",
            ));
        }
        let no_part = |stones_g: &f64| !(0.0..self.dry_g).contains(stones_g);
        if let Some(stones_g) = self.stones_g.filter(no_part) {
            faults.push(Fault::new(
                "stones",
                format!("{stones_g} g of stones are not part of {} g of dry soil", self.dry_g),
                "give the stones that were dried and weighed with the rest, in grams",
            ));
        }
        if faults.is_empty() { Ok(()) } else { Err(faults) }
    }

    fn read(&self, made_of: MadeOf) -> Result<RingReading, Fault> {
        let stones_cm3 = self.stones_g.unwrap_or_default() / PARTICLE_DENSITY;
        let fine_cm3 = self.volume_cm3 - stones_cm3;
        if fine_cm3 <= 0.0 {
            return Err(Fault::new(
                "stones",
                format!("stones alone fill {stones_cm3:.0} of {} cm3", self.volume_cm3),
                "look at ring and stones again",
            ));
        }
        let fine_g = self.dry_g - self.stones_g.unwrap_or_default();
        let fine_g_per_cm3 = rounded(fine_g / fine_cm3, DENSITY_STEP);
        let pores = rounded(density::total_porosity(fine_g_per_cm3)?, SHARE_STEP);
        let moisture = self.wet_g.map(|wet_g| {
            // Stones are taken to hold none.
            let water = wet_g - self.dry_g;
            Ok(Moisture {
                by_mass: rounded(water / fine_g, SHARE_STEP),
                by_volume: rounded(water / fine_cm3, SHARE_STEP),
                air: air(pores, rounded(water / fine_cm3, SHARE_STEP))?,
            })
        });
        let stones = self.stones_g.map(|_| {
            let share = stones_cm3 / self.volume_cm3;
            Ok(Stones { share, class: class::of("fragment_amount_usda", share * 100.0)? })
        });
        let size = made_of.particle_size.or(made_of.fractions.map(ParticleSize::of));
        let roots = size.map(|particle_size| {
            Ok(RootReading {
                particle_size,
                room: density::root_room(particle_size, fine_g_per_cm3)?,
                limits: particle_size.root_limits(),
                settles_when_wetted: density::settles_when_wetted(particle_size, fine_g_per_cm3)?,
            })
        });
        let packing = made_of.fractions.map_or(Ok(Vec::new()), |fractions| {
            let by = |&formula| {
                density::packing(formula, fine_g_per_cm3, fractions.clay_percent(), fractions.silt_percent())
            };
            PackingFormula::ALL.iter().map(by).collect()
        })?;
        let clay_may_hide = match (made_of.fractions, made_of.particle_size) {
            (Some(fractions), _) => fractions.clay_percent() > CLAY_HIDES_ABOVE,
            (None, Some(size)) => matches!(size, ParticleSize::Clayey | ParticleSize::VeryClayey),
            (None, None) => false,
        };
        Ok(RingReading {
            whole_g_per_cm3: rounded(self.dry_g / self.volume_cm3, DENSITY_STEP),
            fine_g_per_cm3,
            class: class::of("dry_density_ka4", fine_g_per_cm3)?,
            stones: stones.transpose()?,
            moisture: moisture.transpose()?,
            pores,
            roots: roots.transpose()?,
            packing,
            clay_may_hide,
        })
    }
}

/// Steps in one g/cm³: results are kept no finer than ring and scales are, and no finer than is shown, so that nothing shown contradicts a limit beside it.
/// Our judgement.
const DENSITY_STEP: f64 = 100.0;
/// Likewise of shares: steps in one.
const SHARE_STEP: f64 = 1_000.0;

fn rounded(value: f64, steps: f64) -> f64 {
    (value * steps).round() / steps
}

fn air(pores: f64, water: f64) -> Result<AirFilled, Fault> {
    if water > pores + MORE_WATER_THAN_PORES {
        let [water, pores] = [water, pores].map(|share| (share * 100.0).round());
        return Err(Fault::new(
            "wet",
            format!("{water} % of the volume would be water, but only {pores} % of it is pores"),
            "look whether ring and tin were taken off, and whether the ring was full",
        ));
    }
    Ok(AirFilled::of(rounded((pores - water).max(0.0), SHARE_STEP)))
}
