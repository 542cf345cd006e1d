//! Layers for which a tine is no remedy, whatever pressed them.

use super::call::What;
use crate::reading::LayerReading;
use crate::record::{Field, OrganicMatter};
use crate::soil::rooting;
use crate::soil::texture::TextureGroup;

/// A layer that ends here or higher is a crust or trodden ground: broken before drilling, spiked or slit, never with a
/// deep tine (AHDB on capping and slumping; AHDB field drainage: the limit of slit machines).
const NEAR_SURFACE_MM: u32 = 100;
/// Under grass, trodden ground down to here mends by itself when it is rested (Drewry 2006: no deeper than 10 to 15 cm).
const UNDER_GRASS_MM: u32 = 150;
/// In clay a layer with its bottom below this is mostly not worth loosening (Tasmanian state guide on deep ripping:
/// over 300 mm in clayey soils).
pub const DEEP_CLAY_MM: u32 = 300;

/// From this organic matter on, in percent by mass, the soil is peaty or peat (12 to 20 % organic carbon, by clay: WRB
/// 2022; times 1.72, value from memory): its blocks and plates come of drainage and age (Ilnicki & Zeitz 2003).
const PEAT_PERCENT: f64 = 20.0;

/// A layer's bottom is known to half a step of the knife walk. Our judgement.
const HALF_A_STEP_MM: u32 = 25;

/// The depth at which a layer would begin or cease to be one for a tine, where its bottom lies so near to it that measuring
/// again may tip it.
pub fn limit_near(layer: &LayerReading, field: &Field) -> Option<u32> {
    let grass = field.crop_now.as_deref().is_some_and(rooting::is_grass);
    let clay = layer.texture == Some(TextureGroup::Heavy) && field.deep_clay_anyway != Some(true);
    let limits = [Some(if grass { UNDER_GRASS_MM } else { NEAR_SURFACE_MM }), clay.then_some(DEEP_CLAY_MM)];
    limits.into_iter().flatten().find(|limit_mm| layer.bottom_mm.abs_diff(*limit_mm) <= HALF_A_STEP_MM)
}

/// Why a tine is no remedy for a layer; `None` where it may be one.
pub fn ruled_out(layer: &LayerReading, field: &Field) -> Option<What> {
    let (top_mm, bottom_mm) = (layer.top_mm, layer.bottom_mm);
    let grass = field.crop_now.as_deref().is_some_and(rooting::is_grass);
    let peat = match field.organic_matter {
        Some(OrganicMatter::Percent(percent)) => percent >= PEAT_PERCENT,
        Some(OrganicMatter::Level(_)) | None => false,
    };
    if peat {
        Some(What::Peat { top_mm, bottom_mm })
    } else if bottom_mm <= NEAR_SURFACE_MM {
        Some(What::NearSurface { top_mm, bottom_mm })
    } else if grass && bottom_mm <= UNDER_GRASS_MM {
        Some(What::UnderGrass { top_mm, bottom_mm })
    } else {
        let clay = layer.texture == Some(TextureGroup::Heavy) && field.deep_clay_anyway != Some(true);
        (clay && bottom_mm > DEEP_CLAY_MM).then_some(What::DeepClay { bottom_mm })
    }
}
