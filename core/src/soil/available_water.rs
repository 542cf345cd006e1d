//! Water that a soil can hold for crops, by its texture (USDA-NRCS).

use super::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use crate::record::TextureNote;

/// Water between field capacity and wilting, millimetres in a metre of soil, as the range that a table gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Holds {
    /// The soil of the row that holds least.
    pub least_mm_per_m: f64,
    /// The one that holds most.
    pub most_mm_per_m: f64,
}

/// One inch of water in a foot of soil is 1000 / 12 mm in a metre.
const MM_PER_M: f64 = 1000.0 / 12.0;

/// Least and most, tenths of an inch in a foot, for fine sand and loamy fine sand; sandy loam; sandy clay loam, loam and silt loam;
/// clay, clay loam and silty clay loam: USDA-NRCS, Estimating Soil Moisture by Feel and Appearance, the heads of its columns.
const SAND: (u32, u32) = (6, 12);
const SANDY_LOAM: (u32, u32) = (13, 17);
const LOAM: (u32, u32) = (15, 21);
const CLAY: (u32, u32) = (16, 24);

/// The row of a class. Silt, sandy silt loam, sandy clay and silty clay are not in the table: put with their nearest (our
/// judgement).
const fn row(class: TextureClass) -> (u32, u32) {
    match class {
        TextureClass::Sand | TextureClass::LoamySand => SAND,
        TextureClass::SandyLoam => SANDY_LOAM,
        TextureClass::Loam
        | TextureClass::SiltLoam
        | TextureClass::Silt
        | TextureClass::SandySiltLoam
        | TextureClass::SandyClayLoam => LOAM,
        TextureClass::ClayLoam
        | TextureClass::SiltyClayLoam
        | TextureClass::SandyClay
        | TextureClass::SiltyClay
        | TextureClass::Clay => CLAY,
    }
}

/// Returns what soil of this texture holds; of a group, from the least to the most that any class of it does.
pub fn holds(texture: TextureNote) -> Holds {
    let in_group = |group: TextureGroup, class: TextureClass| {
        // A class falls into the same group in either scheme.
        Texture { scheme: TextureScheme::Usda, class }.group() == group
    };
    let (least, most) = match texture {
        TextureNote::Class(texture) => row(texture.class),
        TextureNote::Group(group) => TextureClass::ALL
            .iter()
            .filter(|&&class| in_group(group, class))
            .map(|&class| row(class))
            .fold((u32::MAX, 0), |all, row| (all.0.min(row.0), all.1.max(row.1))),
    };
    let mm_per_m = |tenths: u32| f64::from(tenths) / 10.0 * MM_PER_M;
    Holds { least_mm_per_m: mm_per_m(least), most_mm_per_m: mm_per_m(most) }
}
