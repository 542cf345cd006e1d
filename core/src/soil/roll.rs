//! What two roll tests say: one at the surface, one at the depth to be worked.
//!
//! Sources: Tasmania, "Testing if the soil's right to rip" (3 mm roll forms easily: too wet; cracks into
//! short lengths: right; crumbles: possible, but high draught and clods); AHDB, soil and metal (test the
//! surface and the working depth; what moulds is plastic and smears). That sands do not roll at any moisture,
//! so that the test says nothing of them: many sandy soils have no plastic limit.

use super::texture::TextureGroup;
use crate::record::RollOutcome;
use crate::record::codes::codes;

codes!(
    /// What a roll test says of working the soil.
    RollMeaning {
        /// Plastic: it would smear.
        TooWet = "too_wet",
        /// It breaks as it should.
        Right = "right",
        /// It may be worked, with high draught and clods.
        DryAllowed = "dry_allowed",
        /// The soil does not hold together, so the test can neither pass nor fail it: never "dry enough".
        NotApplicable = "not_applicable",
        /// Not rolled where it matters.
        NotTested = "not_tested",
    }
);

/// What two roll tests say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RollReading {
    /// At the surface.
    pub surface: RollMeaning,
    /// At the depth to be worked.
    pub at_depth: RollMeaning,
    /// Together.
    pub together: RollMeaning,
}

impl RollMeaning {
    /// Returns what one test says; `None` = not rolled. Sand and loamy sand do not hold together by themselves, but a
    /// thread is a thread: what was seen outweighs the texture noted.
    pub const fn of(texture: Option<TextureGroup>, roll: Option<RollOutcome>) -> Self {
        match (roll, texture) {
            (None, _) => Self::NotTested,
            (Some(RollOutcome::Thread), _) => Self::TooWet,
            (Some(RollOutcome::WillNotHold), _) | (Some(_), Some(TextureGroup::Sand)) => Self::NotApplicable,
            (Some(RollOutcome::ShortLengths), _) => Self::Right,
            (Some(RollOutcome::Crumbles), _) => Self::DryAllowed,
        }
    }
}

/// Returns what both tests say: plastic at either depth is too wet; otherwise the one at the working depth governs.
pub const fn reading(
    texture: Option<TextureGroup>,
    surface: Option<RollOutcome>,
    at_depth: Option<RollOutcome>,
) -> RollReading {
    let (surface, at_depth) = (RollMeaning::of(texture, surface), RollMeaning::of(texture, at_depth));
    let together = if matches!(surface, RollMeaning::TooWet) { surface } else { at_depth };
    RollReading { surface, at_depth, together }
}
