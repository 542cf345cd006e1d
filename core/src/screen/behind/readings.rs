//! Depths to firm ground from one tine line to the next: how many are taken, and what they are held against.

use super::machine_of;
use crate::advice::after_dig::{DigAdvice, READINGS};
use crate::advice::machine::{LayerDepths, layer_of};
use crate::answer::FieldAnswer;
use crate::record::Pass;
use crate::screen::grid::Grid;
use crate::screen::step::FINE;
use crate::units::LengthUnit;

/// Deepest firm ground that can be read.
const DEEPEST_MM: u32 = 1_200;
/// Depth taken as likely where nothing is known of pass and zone. Our judgement.
const USUAL_MM: u32 = 340;
/// Slots measured where the legs are not known. Our judgement.
const SLOTS: usize = 3;

/// What the depths of a hole are held against.
#[derive(Debug, Clone, Copy)]
pub(super) struct Aim {
    /// Depth the ground was to be loosened to.
    pub target_mm: Option<u32>,
    /// The layer to be broken.
    pub layer: Option<LayerDepths>,
}

impl Aim {
    /// Of a hole that says something, else of the pass and its zone.
    pub fn of(answer: &FieldAnswer, pass: &Pass, said: Option<&DigAdvice>) -> Self {
        let call = answer.to_loosen().find(|call| pass.zone.is_none_or(|zone| call.zone == zone));
        let layer = said.and_then(|said| {
            let ends = said.pair.map(|pair| (pair.top_mm, pair.bottom_mm));
            let (top_mm, bottom_mm) = ends.or(said.layer_top_mm.zip(said.layer_bottom_mm))?;
            Some(LayerDepths { top_mm, bottom_mm })
        });
        let target_mm = said.and_then(|said| said.target_mm).or(pass.tip_mm);
        Self {
            target_mm: target_mm.or_else(|| call.and_then(|call| call.tip).map(|tip| tip.hi_mm)),
            layer: layer.or_else(|| call.and_then(layer_of)),
        }
    }

    /// The depths offered; around `given_mm`, or moved to `from_mm`.
    pub fn offered(&self, unit: LengthUnit, given_mm: Option<u32>, from_mm: Option<u32>) -> Grid {
        let likely_mm = self.target_mm.or(self.layer.map(|layer| layer.bottom_mm));
        Grid::new((FINE, unit), DEEPEST_MM, likely_mm.unwrap_or(USUAL_MM), given_mm, from_mm)
    }
}

/// Where across from the first tine line a reading is taken, from 0, if the lines lie so far apart.
pub(super) fn across_mm(reading: usize, spacing_mm: u32) -> u32 {
    let share = reading as f64 / (READINGS - 1) as f64;
    (f64::from(spacing_mm) * share).round() as u32
}

/// How many slots there are to be measured.
pub(super) fn slots(answer: &FieldAnswer, pass: &Pass) -> usize {
    machine_of(&answer.notes, pass).map_or(SLOTS, |machine| machine.legs as usize)
}
