//! What somebody did not want to look at, or could not, on one visit to a pit.

use crate::reading::Clue;
use serde::{Deserialize, Serialize};

/// Depth that has a row of its own: one step of the knife walk.
const ROW_MM: u32 = 50;
/// Rows; all ground below the last is one.
const ROWS: usize = 16;

/// Clues that are not to be asked again, by the depth of the layer's top.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Skipped([u16; ROWS]);

impl Skipped {
    /// Nothing yet.
    pub const NONE: Self = Self([0; ROWS]);

    /// With one more; a clue of the whole field is not asked of any layer any more.
    #[must_use]
    pub fn with(mut self, top_mm: u32, clue: Clue) -> Self {
        let own = row(top_mm);
        for (index, clues) in self.0.iter_mut().enumerate() {
            if index == own || is_of_field(clue) {
                *clues |= bit(clue);
            }
        }
        self
    }

    /// Whether it was skipped.
    pub fn has(self, top_mm: u32, clue: Clue) -> bool {
        self.0[row(top_mm)] & bit(clue) != 0
    }
}

fn row(top_mm: u32) -> usize {
    ((top_mm / ROW_MM) as usize).min(ROWS - 1)
}

const fn bit(clue: Clue) -> u16 {
    1 << clue as u16
}

/// Whether the answer holds for the field and not for one layer.
pub(super) const fn is_of_field(clue: Clue) -> bool {
    matches!(clue, Clue::Texture | Clue::OrganicMatter | Clue::LastLoosened | Clue::LastTraffic)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sign_is_skipped_in_its_layer_and_a_clue_of_the_field_in_all() {
        let skipped = Skipped::NONE.with(200, Clue::Roots).with(300, Clue::Texture);
        assert!(skipped.has(200, Clue::Roots) && !skipped.has(250, Clue::Roots));
        assert!(!skipped.has(200, Clue::Pores));
        assert!(skipped.has(0, Clue::Texture) && skipped.has(5_000, Clue::Texture));
    }

    #[test]
    fn every_clue_has_a_bit_of_its_own() {
        let bits = Clue::ALL.iter().fold(0, |bits, &clue| bits | bit(clue));
        assert_eq!(bits.count_ones() as usize, Clue::ALL.len());
    }

    #[test]
    fn it_survives_as_text() {
        let skipped = Skipped::NONE.with(750, Clue::LastTraffic).with(100, Clue::Smell);
        let text = serde_json::to_string(&skipped).unwrap();
        assert_eq!(serde_json::from_str::<Skipped>(&text).unwrap(), skipped);
    }
}
