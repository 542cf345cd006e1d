//! Depths to firm ground from one tine line to the next: how many are taken, and which depths a tap offers.

use crate::advice::after_dig::{DigAdvice, READINGS};
use crate::record::Pass;
use crate::screen::step::FINE;
use crate::units::LengthUnit;

/// Depths offered for a reading: two rows on a phone.
const OFFERED: usize = 8;
/// Depths offered where nothing of the ground is known, and those that fill up. Our judgement.
const USUAL_MM: [u32; 8] = [250, 350, 300, 200, 400, 150, 450, 100];
/// How far below the tips a slot is still looked for: a sight deeper, and clearly deeper.
const BELOW_TIP_MM: [u32; 2] = [20, 70];

/// Depths for a reading, from the top down: around the layer and the tips where they are known.
pub fn offered_mm(pass: &Pass, said: &DigAdvice, unit: LengthUnit) -> Vec<u32> {
    let layer =
        said.pair.map(|pair| [pair.bottom_mm, pair.top_mm, u32::midpoint(pair.top_mm, pair.bottom_mm)]);
    let layer = layer.into_iter().flatten().chain(said.layer_bottom_mm);
    let tip_mm = pass.tip_mm.or(said.target_mm);
    let tip = tip_mm.into_iter().flat_map(|tip_mm| {
        let [sight, clear] = BELOW_TIP_MM.map(|below_mm| tip_mm + below_mm);
        [tip_mm, sight, clear]
    });
    let mut offered: Vec<u32> = Vec::with_capacity(OFFERED);
    for mm in tip.chain(layer).chain(USUAL_MM) {
        let mm = FINE.nearest(mm, unit);
        if offered.len() < OFFERED && mm > 0 && !offered.contains(&mm) {
            offered.push(mm);
        }
    }
    offered.sort_unstable();
    offered
}

/// Where across from the first tine line a reading is taken, from 0, if the lines lie so far apart.
pub fn across_mm(reading: usize, spacing_mm: u32) -> u32 {
    let share = reading as f64 / (READINGS - 1) as f64;
    (f64::from(spacing_mm) * share).round() as u32
}
