//! How far apart the legs may stand for the ground between them to be loosened too, and how deep leading tines run.

use super::table::{LEADING, LeadingRow, SPACING};
use crate::record::Foot;
use crate::record::codes::codes;

codes!(
    /// A fitted spacing against the published range.
    SpacingFit {
        /// Wider than the range: ridges stay between the tines.
        TooWide = "too_wide",
        Fits = "fits",
        /// Closer than the range: it loosens, at more draught than needed.
        CloserThanNeeded = "closer_than_needed",
    }
);

/// Published spacing at a tip depth. It says nothing of whether a layer is broken over the full width.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct SpacingRange {
    /// Closest.
    pub lo_mm: u32,
    /// Widest.
    pub hi_mm: u32,
    /// Where from.
    pub source: &'static str,
}

impl SpacingRange {
    /// The range for a foot; `None` where none is published.
    pub fn at(tip_mm: u32, foot: Foot) -> Option<Self> {
        let row = &SPACING[foot as usize];
        let (least, most) = row.tenths?;
        let of_depth = |tenths: u32| u64::from(tip_mm) * u64::from(tenths);
        Some(Self {
            lo_mm: of_depth(least).div_ceil(10) as u32,
            hi_mm: (of_depth(most) / 10) as u32,
            source: row.source,
        })
    }

    /// A fitted spacing against it.
    pub const fn fit(&self, spacing_mm: u32) -> SpacingFit {
        if spacing_mm > self.hi_mm {
            SpacingFit::TooWide
        } else if spacing_mm < self.lo_mm {
            SpacingFit::CloserThanNeeded
        } else {
            SpacingFit::Fits
        }
    }
}

/// One published depth for the tips of leading tines, and whether the fitted ones run there.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct LeadingRange {
    /// Shallowest.
    pub lo_mm: u32,
    /// Deepest.
    pub hi_mm: u32,
    /// Where from.
    pub source: &'static str,
    /// Whether the fitted depth lies in it; `None` if it is not known.
    pub within: Option<bool>,
    /// Share of the draught saved there, at most; it is not in any other figure.
    pub draught_saved: Option<f64>,
    /// Share of the fuel saved there, likewise.
    pub fuel_saved: Option<f64>,
}

/// The published depths of leading tines side by side. They differ; none is preferred.
pub fn leading_ranges(tip_mm: u32, fitted_mm: Option<u32>) -> [LeadingRange; LEADING.len()] {
    LEADING.map(|row| {
        let [lo_mm, hi_mm] = [row.least, row.most].map(|share| (f64::from(tip_mm) * share).round() as u32);
        let within = fitted_mm.map(|fitted_mm| (lo_mm..=hi_mm).contains(&fitted_mm));
        let LeadingRow { source, draught_saved, fuel_saved, .. } = row;
        LeadingRange { lo_mm, hi_mm, source, within, draught_saved, fuel_saved }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn plain_tines_with_leading_ones_have_no_published_range() {
        assert_eq!(SpacingRange::at(400, Foot::PlainLeading), None);
    }

    #[test]
    fn the_two_depths_of_leading_tines_stay_apart() {
        let [upper, lower] = leading_ranges(360, Some(150));
        assert_eq!((upper.lo_mm, upper.hi_mm, upper.within), (120, 180, Some(true)));
        assert_eq!((lower.lo_mm, lower.hi_mm, lower.within), (216, 270, Some(false)));
        assert_eq!(leading_ranges(360, None)[0].within, None);
    }

    proptest! {
        #[test]
        fn every_spacing_of_the_range_fits_and_a_millimetre_off_it_does_not(
            tip_mm in 50u32..1_200, index in 0..Foot::ALL.len(),
        ) {
            let Some(range) = SpacingRange::at(tip_mm, Foot::ALL[index]) else { return Ok(()) };
            prop_assert_eq!(range.fit(range.lo_mm), SpacingFit::Fits);
            prop_assert_eq!(range.fit(range.hi_mm), SpacingFit::Fits);
            prop_assert_eq!(range.fit(range.hi_mm + 1), SpacingFit::TooWide);
            prop_assert_eq!(range.fit(range.lo_mm - 1), SpacingFit::CloserThanNeeded);
        }

        #[test]
        fn deeper_never_takes_closer_legs(tip_mm in 50u32..1_200, index in 0..Foot::ALL.len()) {
            let at = |tip_mm| SpacingRange::at(tip_mm, Foot::ALL[index]).map(|range| (range.lo_mm, range.hi_mm));
            prop_assert!(at(tip_mm) <= at(tip_mm + 1));
        }
    }
}
