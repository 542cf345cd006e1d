//! `pitface sample`: what a weighed ring of soil and a pushed cone say, and what they do not.

use super::class::class_json;
use crate::Answer;
use crate::argument::{Shown, code_of, millimetres};
use crate::trouble::Trouble;
use clap::{ArgGroup, Args};
use pitface_core::error::Fault;
use pitface_core::record::FaceMoisture;
use pitface_core::soil::density::{AERATION_LIMIT, ParticleSize, ROOT_LIMITS_SOURCE};
use pitface_core::soil::resistance::{Cone, ConeReading, LOOSENING_SOURCE, SubsoilTexture, mpa_from_psi};
use pitface_core::soil::ring::{MadeOf, Ring, RingReading};
use pitface_core::soil::texture::Fractions;
use serde_json::{Value, json};
use std::path::Path;

/// What was weighed and pushed.
#[derive(Args)]
#[command(group = ArgGroup::new("inside").args(["ring", "volume"]).requires("dry"))]
#[command(group = ArgGroup::new("measured").args(["dry", "cone"]).multiple(true).required(true))]
pub struct Sample {
    /// Inner diameter and height of the ring: 50, 50mm, 5cm or 2in each.
    #[arg(long, num_args = 2, value_names = ["DIAMETER", "HEIGHT"], value_parser = millimetres)]
    ring: Option<Vec<u32>>,
    /// Inside of the ring in cubic centimetres, in place of its measures.
    #[arg(long, value_name = "CM3")]
    volume: Option<f64>,
    /// Soil as taken, in grams without ring and tin.
    #[arg(long, value_name = "GRAMS", requires = "dry")]
    wet: Option<f64>,
    /// The same soil dried at 105 °C.
    #[arg(long, value_name = "GRAMS", requires = "inside")]
    dry: Option<f64>,
    /// Of the dry soil, stones of 2 mm and more.
    #[arg(long, value_name = "GRAMS", requires = "dry")]
    stones: Option<f64>,
    /// Sand in percent by mass, 2 to 0.05 mm.
    #[arg(long, value_name = "PERCENT", requires = "silt", requires = "clay", requires = "dry")]
    sand: Option<f64>,
    /// Silt in percent by mass, 0.05 to 0.002 mm.
    #[arg(long, value_name = "PERCENT", requires = "sand")]
    silt: Option<f64>,
    /// Clay in percent by mass.
    #[arg(long, value_name = "PERCENT", requires = "sand")]
    clay: Option<f64>,
    /// Particle-size class of USDA, where sand, silt and clay were not measured, or very fine sand was.
    #[arg(long, value_name = "CODE", requires = "dry", value_parser = code_of!(ParticleSize))]
    particle_size: Option<ParticleSize>,
    /// Resistance of a cone, of several pushes the median: 2.4 or 2.4MPa, 2400kPa, 350psi.
    #[arg(long, value_name = "PRESSURE", value_parser = megapascals)]
    cone: Option<f64>,
    /// How moist the soil was; moist is a day or two after it was wetted through.
    #[arg(long, value_name = "CODE", requires = "cone", value_parser = code_of!(FaceMoisture))]
    moisture: Option<FaceMoisture>,
    /// The cone stood on stones.
    #[arg(long, requires = "cone")]
    stony: bool,
    /// Texture just under the plough layer (a German scheme), where it was pushed there in spring.
    #[arg(long, value_name = "CODE", requires = "cone", value_parser = code_of!(SubsoilTexture))]
    subsoil: Option<SubsoilTexture>,
}

/// Hardest push that is read; a number above it was meant in another unit.
const HARDEST_MPA: f64 = 20.0;

fn megapascals(text: &str) -> Result<f64, String> {
    let text = text.trim();
    let with = |unit: &str| text.strip_suffix(unit).map(|number| number.trim_end().parse::<f64>());
    let kilo = |kpa: f64| kpa / 1_000.0;
    let number = with("MPa")
        .or_else(|| with("kPa").map(|number| number.map(kilo)))
        .or_else(|| with("psi").map(|number| number.map(mpa_from_psi)))
        .unwrap_or_else(|| text.parse());
    let mpa = number.map_err(|_| "not a pressure; write 2.4MPa, 2400kPa or 350psi".to_owned())?;
    if (0.0..=HARDEST_MPA).contains(&mpa) {
        Ok(mpa)
    } else {
        Err("no pressure between 0 and 20 MPa; a bare number is read as megapascals, or write 350psi".into())
    }
}

impl Sample {
    /// Says what it means.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let of_arguments = |faults| Trouble::of_file(Path::new("arguments"), faults);
        let ring = self.reading().map_err(of_arguments)?;
        let cone = self.cone.map(|mpa| {
            Cone { mpa, moisture: self.moisture, stony: self.stony, subsoil: self.subsoil }.reading()
        });
        let cone = cone.transpose().map_err(Trouble::of_arguments)?;
        let told = ring.iter().flat_map(|ring| words.ring(ring));
        let told = told.chain(cone.iter().flat_map(|cone| words.cone(cone)));
        let text: String = told.map(|line| line + "\n").collect();
        let json = json!({ "ring": ring.as_ref().map(ring_json), "cone": cone.as_ref().map(cone_json) });
        Ok(Answer::new(text, json))
    }

    /// Returns what the ring says, where one was weighed.
    fn reading(&self) -> Result<Option<RingReading>, Vec<Fault>> {
        let inside = self.volume.or_else(|| match self.ring.as_deref() {
            Some(&[diameter_mm, height_mm]) => Some(Ring::round_cm3(diameter_mm, height_mm)),
            _ => None,
        });
        let (Some(volume_cm3), Some(dry_g)) = (inside, self.dry) else { return Ok(None) };
        let fractions = match (self.sand, self.silt, self.clay) {
            (Some(sand), Some(silt), Some(clay)) => Some(Fractions::new(sand, silt, clay)),
            _ => None,
        };
        let fractions = fractions.transpose().map_err(|fault| vec![fault])?;
        let ring = Ring { volume_cm3, wet_g: self.wet, dry_g, stones_g: self.stones };
        ring.reading(MadeOf { fractions, particle_size: self.particle_size }).map(Some)
    }
}

fn ring_json(ring: &RingReading) -> Value {
    json!({
        "density_g_per_cm3": ring.whole_g_per_cm3,
        "fine_earth_density_g_per_cm3": ring.fine_g_per_cm3,
        "class": class_json(&ring.class),
        "stones": ring.stones.map(|stones| json!({ "share": stones.share, "class": class_json(&stones.class) })),
        "pores": ring.pores,
        "water": ring.moisture.map(|water| json!({ "by_mass": water.by_mass, "by_volume": water.by_volume })),
        "air": ring.moisture.map(|moisture| json!({
            "share": moisture.air.share,
            "roots_lack_air": moisture.air.roots_lack_air,
            "limit": AERATION_LIMIT,
        })),
        "roots": ring.roots.map(|roots| json!({
            "particle_size": roots.particle_size,
            "room": roots.room,
            "restricted_from": roots.limits.restricted_from,
            "limiting_above": roots.limits.limiting_above,
            "settles_when_wetted": roots.settles_when_wetted,
            "source": ROOT_LIMITS_SOURCE,
        })),
        "packing": ring.packing.iter().map(|packing| json!({
            "formula": packing.formula,
            "g_per_cm3": packing.g_per_cm3,
            "class": class_json(&packing.class),
        })).collect::<Vec<_>>(),
        "clay_may_hide": ring.clay_may_hide,
    })
}

fn cone_json(cone: &ConeReading) -> Value {
    json!({
        "mpa": cone.mpa,
        "class": class_json(&cone.class),
        "says": cone.says,
        "loosening": cone.loosening.map(|loosening| json!({
            "need": loosening.need,
            "from_mpa": loosening.limits_mpa.0,
            "to_mpa": loosening.limits_mpa.1,
            "source": LOOSENING_SOURCE,
        })),
    })
}

#[cfg(test)]
mod tests {
    use super::megapascals;

    #[test]
    fn a_pressure_is_read_with_its_unit() {
        assert_eq!(megapascals("2.4"), Ok(2.4));
        assert_eq!(megapascals("2.4 MPa"), Ok(2.4));
        assert_eq!(megapascals("2400kPa"), Ok(2.4));
        assert!(megapascals("300psi").is_ok_and(|mpa| (mpa - 2.068).abs() < 0.001));
    }

    #[test]
    fn what_is_no_pressure_is_refused() {
        for wrong in ["", "hard", "-1", "300", "NaN", "inf", "2.4 bar"] {
            assert!(megapascals(wrong).is_err(), "{wrong}");
        }
    }
}
