//! Critical depth: the depth below which a foot no longer lifts the soil but presses it aside.

use super::table::CRITICAL_RATIO;
use crate::record::codes::codes;
use crate::record::{Foot, Machine};

codes!(
    /// Where a tip depth lies against critical depth.
    CriticalPlace {
        /// Not deeper than its shallowest estimate.
        Above = "above",
        /// Within the range: a trial strip, dug behind the machine, tells.
        Uncertain = "uncertain",
        /// Deeper than its deepest estimate.
        Below = "below",
    }
);
codes!(
    /// What moves critical depth. Only the direction is known; no number is given for any of them (Spoor and Godwin
    /// 1978, Godwin 2007; directions from memory).
    CriticalShift {
        /// Wetter soil: shallower.
        Wetter = "wetter",
        /// A worn foot: shallower.
        WornFoot = "worn_foot",
        /// Wings: deeper.
        Wings = "wings",
        /// Leading tines, which relieve the surface: deeper.
        LeadingTines = "leading_tines",
    }
);

impl CriticalShift {
    /// Returns whether it makes critical depth lie deeper.
    pub const fn deeper(self) -> bool {
        matches!(self, Self::Wings | Self::LeadingTines)
    }
}

/// Critical depth of a foot, as the range it is known to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct CriticalDepth {
    /// Shallowest estimate: the deepest tip that is held to stay above it.
    pub lo_mm: u32,
    /// Deepest estimate; `None` for winged feet: wings make it lie deeper, and nobody says by how much.
    pub hi_mm: Option<u32>,
}

impl CriticalDepth {
    /// Of a plain foot of this width.
    pub const fn of_foot(foot_width_mm: u32) -> Self {
        let (least, most) = CRITICAL_RATIO;
        Self { lo_mm: foot_width_mm.saturating_mul(least), hi_mm: Some(foot_width_mm.saturating_mul(most)) }
    }

    /// Of the feet of a machine.
    pub const fn of(machine: &Machine) -> Self {
        let plain = Self::of_foot(machine.foot_width_mm);
        if machine.wings.is_some() { Self { hi_mm: None, ..plain } } else { plain }
    }

    /// Where a tip depth lies.
    pub const fn place(self, tip_mm: u32) -> CriticalPlace {
        match self.hi_mm {
            _ if tip_mm <= self.lo_mm => CriticalPlace::Above,
            Some(hi_mm) if tip_mm > hi_mm => CriticalPlace::Below,
            _ => CriticalPlace::Uncertain,
        }
    }
}

/// Returns what bears on critical depth for this machine: weather and wear always do, the rest if it is fitted.
pub fn critical_shifts(machine: &Machine) -> Vec<CriticalShift> {
    let fitted = |shift: &CriticalShift| match shift {
        CriticalShift::Wetter | CriticalShift::WornFoot => true,
        CriticalShift::Wings => machine.wings.is_some(),
        CriticalShift::LeadingTines => machine.leading.is_some(),
    };
    CriticalShift::ALL.iter().copied().filter(fitted).collect()
}

/// The deepest tip of a machine that is held to stay above critical depth and is within its reach.
pub fn deepest_above_critical_mm(machine: &Machine) -> u32 {
    CriticalDepth::of(machine).lo_mm.min(machine.reach_mm.unwrap_or(u32::MAX))
}

/// Foot widths for a tip depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct FootWidth {
    /// A narrower plain foot runs below critical depth; `None` for winged ones, see [`CriticalDepth::hi_mm`].
    pub least_mm: Option<u32>,
    /// From this width on the foot is held to stay above it.
    pub sure_mm: u32,
}

/// The foot width a tip depth takes.
pub const fn foot_width_for(tip_mm: u32, foot: Foot) -> FootWidth {
    let (least, most) = CRITICAL_RATIO;
    let least_mm = match foot {
        Foot::Plain | Foot::PlainLeading => Some(tip_mm.div_ceil(most)),
        Foot::Winged | Foot::WingedLeading => None,
    };
    FootWidth { least_mm, sure_mm: tip_mm.div_ceil(least) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_foot_asked_for_is_the_narrowest_that_does(tip_mm in 7u32..1_200) {
            let need = foot_width_for(tip_mm, Foot::Plain);
            let least_mm = need.least_mm.unwrap_or_default();
            let place = |width_mm| CriticalDepth::of_foot(width_mm).place(tip_mm);
            prop_assert_eq!(place(need.sure_mm), CriticalPlace::Above);
            prop_assert_ne!(place(need.sure_mm - 1), CriticalPlace::Above);
            prop_assert_ne!(place(least_mm), CriticalPlace::Below);
            prop_assert_eq!(place(least_mm - 1), CriticalPlace::Below);
        }

        #[test]
        fn one_millimetre_more_than_the_deepest_tip_is_no_longer_held_to_be_above(foot_mm in 1u32..400) {
            let critical = CriticalDepth::of_foot(foot_mm);
            prop_assert_eq!(critical.place(critical.lo_mm), CriticalPlace::Above);
            prop_assert_eq!(critical.place(critical.lo_mm + 1), CriticalPlace::Uncertain);
            let hi_mm = critical.hi_mm.unwrap_or_default();
            prop_assert_eq!(critical.place(hi_mm), CriticalPlace::Uncertain);
            prop_assert_eq!(critical.place(hi_mm + 1), CriticalPlace::Below);
            let winged = CriticalDepth { hi_mm: None, ..critical };
            prop_assert_eq!(winged.place(critical.lo_mm), CriticalPlace::Above);
            prop_assert_eq!(winged.place(hi_mm + 1), CriticalPlace::Uncertain);
        }
    }
}
