//! What wet signs of a pit say: water that stands through the profile, or water that a pressed layer holds up.
//!
//! Colours tell of water, not of wheels (WRB 2022, stagnic and gleyic). Signs above and in the layer over clean ground
//! are the layer's own doing; signs that go on down to where nobody looked further, with roots that suffer, are not.

use super::call::What;
use crate::reading::{LayerReading, PitReading};
use crate::record::{Patches, RootsSeen, Signs, Smell};

/// Share of the depth seen that must be wet for water to stand through the profile. Our judgement.
const THROUGH_SHARE: f64 = 0.5;

/// Returns whether a layer shows clear rust or grey, or smells sour.
fn is_wet(signs: Signs) -> bool {
    signs.patches == Some(Patches::Clear) || signs.smell == Some(Smell::Sour)
}

/// Returns whether wet signs were looked for.
fn was_looked_at(signs: Signs) -> bool {
    signs.patches.is_some() || signs.smell.is_some()
}

/// How many facts of now a layer shows: clear colours, a sour smell, roots that turn or end. Colours alone stay when the
/// water has gone (WRB 2022 on relict colours), and one fact alone is no more than a question.
fn facts(signs: Signs) -> usize {
    let suffering = matches!(signs.roots, Some(RootsSeen::Sideways | RootsSeen::Stopped));
    let told = [signs.patches == Some(Patches::Clear), signs.smell == Some(Smell::Sour), suffering];
    told.iter().filter(|&&told| told).count()
}

/// Water that stands through the profile, with the depths that show it: half of what was seen and more, down to the
/// lowest layer that was looked at for it, and two facts of now in one of its layers.
pub fn stands_through(pit: &PitReading) -> Option<What> {
    let looked = pit.layers.iter().rfind(|layer| was_looked_at(layer.signs))?;
    let wet: Vec<&LayerReading> = pit.layers.iter().filter(|layer| is_wet(layer.signs)).collect();
    let thick_mm: u32 = wet.iter().map(|layer| layer.bottom_mm - layer.top_mm).sum();
    let seen_mm = pit.layers.last().map_or(0, |layer| layer.bottom_mm);
    let facts = wet.iter().map(|layer| facts(layer.signs)).max()?;
    let through = is_wet(looked.signs) && f64::from(thick_mm) >= THROUGH_SHARE * f64::from(seen_mm);
    (through && facts >= 2).then(|| What::WaterStands {
        top_mm: wet[0].top_mm,
        bottom_mm: looked.bottom_mm,
        facts,
    })
}

/// Water that a pressed layer holds up: wet signs in it or above it, and clean ground below, looked at.
pub fn held_up(pit: &PitReading, layer: &LayerReading) -> Option<What> {
    let wet_mm = pit
        .layers
        .iter()
        .filter(|wet| is_wet(wet.signs) && wet.bottom_mm <= layer.bottom_mm)
        .map(|wet| wet.top_mm)
        .min()?;
    let mut below = pit.layers.iter().filter(|under| under.top_mm >= layer.bottom_mm);
    let clean = below.next().is_some_and(|under| was_looked_at(under.signs) && !is_wet(under.signs));
    clean.then_some(What::WaterHeldUp { top_mm: wet_mm, bottom_mm: layer.bottom_mm })
}
