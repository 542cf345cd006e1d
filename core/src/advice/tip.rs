//! Depth at which the feet should run: just below the harmed layers of a zone, no deeper.

use super::call::TipDepth;
use super::tolerance::{confidence, rank_covering};

/// Shallowest tip below the layer's bottom (USDA Forest Service 0834-2828, p. 4: 1 to 2 inches).
pub const TIP_BELOW_LEAST_MM: u32 = 25;
/// Deepest tip below the layer's bottom, same source.
pub const TIP_BELOW_MOST_MM: u32 = 50;
/// Share of the ground that a depth is meant to clear unless another is wanted. Our judgement.
pub const CLEARED_SHARE: f64 = 0.8;
/// How sure it should be that it clears that share. Our judgement.
const SURE_ENOUGH: f64 = 0.8;

/// No more pits than this are ever said to do.
const MOST_PITS: usize = 1_000;

/// Tip depth from the bottoms of the harmed layers, one a pit: the shallowest that clears `share` of the ground
/// at 80 % confidence, else the deepest. `None` without a layer to break.
pub fn tip_depth(bottoms_mm: &[u32], share: f64) -> Option<TipDepth> {
    let mut bottoms_mm = bottoms_mm.to_vec();
    crate::order::sort_by(&mut bottoms_mm, Ord::cmp);
    let pits = bottoms_mm.len();
    let rank = rank_covering(pits, share, SURE_ENOUGH);
    let cleared_mm = *bottoms_mm.get(rank.checked_sub(1)?)?;
    Some(TipDepth {
        lo_mm: cleared_mm.saturating_add(TIP_BELOW_LEAST_MM),
        hi_mm: cleared_mm.saturating_add(TIP_BELOW_MOST_MM),
        bottom_mm: cleared_mm,
        cleared_share: share,
        pits,
        confidence: confidence(pits, rank, share),
    })
}

impl TipDepth {
    /// How many pits would do: of so many alike, the deepest clears the share with 80 % confidence.
    pub fn enough_pits(&self) -> usize {
        (1..=MOST_PITS)
            .find(|&pits| confidence(pits, pits, self.cleared_share) >= SURE_ENOUGH)
            .unwrap_or(MOST_PITS)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_tip_runs_one_to_two_inches_below_the_pan() {
        let tip = tip_depth(&[300], CLEARED_SHARE).unwrap();
        assert_eq!((tip.lo_mm, tip.hi_mm, tip.bottom_mm), (325, 350, 300));
    }

    #[test]
    fn five_pits_clear_four_of_five_places_sure_to_67_percent() {
        let tip = tip_depth(&[280, 300, 270, 290, 310], CLEARED_SHARE).unwrap();
        assert_eq!((tip.bottom_mm, tip.pits), (310, 5));
        assert!((tip.confidence - 0.672).abs() < 0.001);
    }

    /// 1 - 0.8^7 is 0.790 and 1 - 0.8^8 is 0.832.
    #[test]
    fn eight_pits_would_do_for_four_of_five_places() {
        assert_eq!(tip_depth(&[280], CLEARED_SHARE).unwrap().enough_pits(), 8);
    }

    #[test]
    fn without_a_layer_to_break_there_is_no_depth() {
        assert_eq!(tip_depth(&[], CLEARED_SHARE), None);
    }

    proptest! {
        #[test]
        fn deeper_bottoms_never_give_a_shallower_tip(
            pairs in prop::collection::vec((1u32..900, 0u32..200), 1..40), share in 0.05f64..0.95,
        ) {
            let before: Vec<u32> = pairs.iter().map(|(bottom, _)| *bottom).collect();
            let after: Vec<u32> = pairs.iter().map(|(bottom, deeper)| bottom + deeper).collect();
            let [before, after] = [before, after].map(|bottoms| tip_depth(&bottoms, share).unwrap());
            prop_assert!(after.lo_mm >= before.lo_mm && after.hi_mm >= before.hi_mm);
        }

        #[test]
        fn the_order_of_the_pits_changes_nothing(mut bottoms in prop::collection::vec(1u32..900, 1..20)) {
            let before = tip_depth(&bottoms, CLEARED_SHARE);
            bottoms.reverse();
            prop_assert_eq!(tip_depth(&bottoms, CLEARED_SHARE), before);
        }
    }
}
