//! What somebody did not want to look at, or could not: kept for each pit beside the settings, for it is no finding.

use crate::reading::Clue;
use serde::{Deserialize, Serialize};

/// Depth that has a row of its own: one step of the knife walk.
const ROW_MM: u32 = 50;
/// Rows; all ground below the last is one.
const ROWS: usize = 16;
/// What is asked of the whole pit has its bits in the first row, above those of the clues.
const MOISTURE: u32 = 1 << 31;
const ROLL_AT_DEPTH: u32 = 1 << 30;
const ROLL_AT_SURFACE: u32 = 1 << 29;

/// Clues that are not to be asked again, by the depth of the layer's top, and what else was passed over. Written as text
/// (JSON) a list of numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Skipped([u32; ROWS]);

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

    /// Returns whether it was skipped.
    pub fn has(self, top_mm: u32, clue: Clue) -> bool {
        self.0[row(top_mm)] & bit(clue) != 0
    }

    /// With the moisture of the face.
    #[must_use]
    pub const fn with_moisture(mut self) -> Self {
        self.0[0] |= MOISTURE;
        self
    }

    /// Returns whether the moisture of the face was passed over.
    pub const fn has_moisture(self) -> bool {
        self.0[0] & MOISTURE != 0
    }

    /// With a roll test of soil from the surface, or from the depth to be worked.
    #[must_use]
    pub const fn with_roll(mut self, surface: bool) -> Self {
        self.0[0] |= roll_bit(surface);
        self
    }

    /// Returns whether that roll test was passed over.
    pub const fn has_roll(self, surface: bool) -> bool {
        self.0[0] & roll_bit(surface) != 0
    }

    /// How many looks were passed over.
    pub fn looks(self) -> usize {
        let of = |clue: &&Clue| self.0.iter().filter(|row| **row & bit(**clue) != 0).count();
        let counted = |clue: &Clue| if is_of_field(*clue) { of(&clue).min(1) } else { of(&clue) };
        Clue::ALL.iter().map(counted).sum()
    }
}

fn row(top_mm: u32) -> usize {
    ((top_mm / ROW_MM) as usize).min(ROWS - 1)
}

const fn bit(clue: Clue) -> u32 {
    1 << clue as u32
}

const fn roll_bit(surface: bool) -> u32 {
    if surface { ROLL_AT_SURFACE } else { ROLL_AT_DEPTH }
}

/// Returns whether the answer holds for the field and not for one layer.
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
        assert_eq!(skipped.looks(), 2);
    }

    #[test]
    fn everything_has_a_bit_of_its_own() {
        let bits = Clue::ALL.iter().fold(0, |bits, &clue| bits | bit(clue));
        let bits = bits | MOISTURE | ROLL_AT_DEPTH | ROLL_AT_SURFACE;
        assert_eq!(bits.count_ones() as usize, Clue::ALL.len() + 3);
    }

    #[test]
    fn what_is_asked_of_the_pit_is_no_look() {
        let skipped = Skipped::NONE.with_moisture().with_roll(true);
        assert!(skipped.has_moisture() && skipped.has_roll(true) && !skipped.has_roll(false));
        assert_eq!(skipped.looks(), 0);
    }

    #[test]
    fn it_survives_as_text() {
        let skipped = Skipped::NONE.with(750, Clue::LastTraffic).with(100, Clue::Smell).with_moisture();
        let text = serde_json::to_string(&skipped).unwrap();
        assert_eq!(serde_json::from_str::<Skipped>(&text).unwrap(), skipped);
    }
}
