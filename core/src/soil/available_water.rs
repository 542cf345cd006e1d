//! Water used up by the crop, judged by feel and appearance (USDA-NRCS).

use super::texture::TextureClass;
use crate::record::codes::codes;

codes!(
    /// Texture groups of the table.
    WaterGroup {
        /// Fine sand, loamy fine sand.
        Sand = "sand",
        /// Sandy loam, fine sandy loam.
        SandyLoam = "sandy_loam",
        /// Sandy clay loam, loam, silt loam.
        Loam = "loam",
        /// Clay, clay loam, silty clay loam.
        Clay = "clay",
    }
);

codes!(
    /// How much of the available water is left, by feel.
    WaterLeft {
        To25 = "0_to_25_percent",
        To50 = "25_to_50_percent",
        To75 = "50_to_75_percent",
        To100 = "75_to_100_percent",
    }
);

/// Available water a soil can hold, tenths of an inch per foot of soil, from and to; by [`WaterGroup`].
/// USDA-NRCS, Estimating Soil Moisture by Feel and Appearance: loam and clay as published by NRCS Wyoming,
/// the sandy rows by the guideline of that name.
const HOLDS_TENTHS: [(u32, u32); WaterGroup::ALL.len()] = [(6, 12), (13, 17), (15, 21), (16, 24)];

/// One inch of water per foot of soil in millimetres per metre (1000 / 12).
const MM_PER_M: f64 = 1000.0 / 12.0;

/// Water missing to field capacity.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Depletion {
    /// The most, tenths of an inch per foot.
    pub upper_tenths: u32,
    /// The least, tenths of an inch per foot.
    pub lower_tenths: u32,
}

impl Depletion {
    /// The most and the least in millimetres of water per metre of soil.
    pub fn mm_per_m(self) -> (f64, f64) {
        let to_mm = |tenths: u32| f64::from(tenths) / 10.0 * MM_PER_M;
        (to_mm(self.upper_tenths), to_mm(self.lower_tenths))
    }
}

/// Water missing: the most is what the best-holding soil of the group has lost at the lower end of the class,
/// the least what the poorest has lost at its upper end; rounded half up to a tenth, in whole numbers because
/// the table has ties. This reproduces every published cell (practised accuracy about 5 %).
pub fn depletion(group: WaterGroup, left: WaterLeft) -> Depletion {
    let (least, most) = HOLDS_TENTHS[group as usize];
    let quarter = left as u32;
    let quarters_half_up = |quarters: u32| (quarters + 2) / 4;
    Depletion {
        upper_tenths: quarters_half_up(most * (4 - quarter)),
        lower_tenths: quarters_half_up(least * (3 - quarter)),
    }
}

impl WaterGroup {
    /// The group of a texture class. Silt, sandy silt loam, sandy clay and silty clay are not in the table:
    /// put with their nearest (our judgement).
    pub const fn of(class: TextureClass) -> Self {
        match class {
            TextureClass::Sand | TextureClass::LoamySand => Self::Sand,
            TextureClass::SandyLoam => Self::SandyLoam,
            TextureClass::Loam
            | TextureClass::SiltLoam
            | TextureClass::Silt
            | TextureClass::SandySiltLoam
            | TextureClass::SandyClayLoam => Self::Loam,
            TextureClass::ClayLoam
            | TextureClass::SiltyClayLoam
            | TextureClass::SandyClay
            | TextureClass::SiltyClay
            | TextureClass::Clay => Self::Clay,
        }
    }
}
