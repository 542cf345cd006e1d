//! Finding pits that say the same without comparing each with each: only those are compared of which what tells pits apart is equal.

use super::are_twins;
use crate::record::{Pit, Sign};
use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};

/// Pits seen so far, by what they say.
#[derive(Default)]
pub(super) struct Seen<'a> {
    alike: HashMap<u64, Vec<&'a Pit>>,
}

impl<'a> Seen<'a> {
    /// Remembers a pit; whether it is the first that says what it says.
    pub fn is_first(&mut self, pit: &'a Pit) -> bool {
        let alike = self.alike.entry(said(pit)).or_default();
        let first = !alike.iter().any(|seen| are_twins(seen, pit));
        if first {
            alike.push(pit);
        }
        first
    }
}

/// A number for what a pit says: equal for twins, for others seldom.
fn said(pit: &Pit) -> u64 {
    let mut hasher = DefaultHasher::new();
    // Nought of either sign is one place.
    let place = pit.at.map(|at| [at.longitude_deg, at.latitude_deg].map(|degrees| (degrees + 0.0).to_bits()));
    (pit.place, place, pit.dug, &pit.by, pit.dug_to_mm).hash(&mut hasher);
    for step in &pit.walk {
        (step.to_mm, step.comes_away, step.resistance).hash(&mut hasher);
    }
    for layer in &pit.layers {
        (layer.top_mm, layer.bottom_mm).hash(&mut hasher);
        for &sign in Sign::ALL {
            layer.signs.get(sign).hash(&mut hasher);
        }
    }
    hasher.finish()
}
