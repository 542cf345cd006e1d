//! How much of the ground a measured depth covers, with nothing assumed of how the depths are spread: the
//! distribution-free tolerance limit (Wilks 1941).

/// Confidence that the depth at `rank` (1 = shallowest) of `pits` depths is at least as deep as `share` of the
/// ground: the chance that fewer than `rank` of the pits hit that share, P(Bin(pits, share) ≤ rank - 1).
/// For the deepest of n it is 1 - shareⁿ. `share` is taken into 0 to 1; rank 0 covers nothing.
pub fn confidence(pits: usize, rank: usize, share: f64) -> f64 {
    if rank == 0 || share.is_nan() {
        return 0.0;
    }
    if rank >= pits {
        return 1.0 - share.clamp(0.0, 1.0).powf(pits as f64);
    }
    confidences(pits, share).nth(rank - 1).unwrap_or(1.0)
}

/// The same for one rank after the other, from the shallowest down to the last before the deepest: each adds one term to the one before.
fn confidences(pits: usize, share: f64) -> impl Iterator<Item = f64> {
    let share = share.clamp(0.0, 1.0);
    let (inside, outside) = (share.ln(), (1.0 - share).ln());
    let (mut ways, mut sum) = (0.0, 0.0);
    (0..pits.saturating_sub(1)).map(move |hits| {
        if hits > 0 {
            ways += ((pits - hits + 1) as f64 / hits as f64).ln();
        }
        // 0 · ln 0 is 0 here: none of a share that cannot be hit.
        let log = |times: usize, chance: f64| if times == 0 { 0.0 } else { times as f64 * chance };
        sum += (ways + log(hits, inside) + log(pits - hits, outside)).exp();
        f64::min(sum, 1.0)
    })
}

/// Smallest rank that covers `share` of the ground with at least `sure`; the deepest where none does.
pub fn rank_covering(pits: usize, share: f64, sure: f64) -> usize {
    if share.is_nan() {
        return pits;
    }
    confidences(pits, share).position(|confidence| confidence >= sure).map_or(pits, |before| before + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_deepest_of_n_covers_with_one_less_the_share_to_the_nth() {
        for (pits, percent) in [(1, 20.0), (5, 67.2), (7, 79.0), (8, 83.2), (14, 95.6)] {
            assert!((confidence(pits, pits, 0.8) * 100.0 - percent).abs() < 0.05, "{pits} pits");
        }
    }

    /// 59 and 93 samples: first and second deepest for 95 % of the ground at 95 % confidence, the sample sizes of
    /// Wilks 1941 as commonly tabled (value from memory).
    #[test]
    fn the_sample_sizes_of_the_usual_tables_come_out() {
        let smallest = |from_deepest: usize| {
            (from_deepest..200).find(|&pits| confidence(pits, pits + 1 - from_deepest, 0.95) >= 0.95)
        };
        assert_eq!(smallest(1), Some(59));
        assert_eq!(smallest(2), Some(93));
    }

    #[test]
    fn with_many_pits_the_deepest_is_not_needed() {
        assert_eq!(rank_covering(5, 0.8, 0.8), 5);
        assert_eq!(rank_covering(8, 0.8, 0.8), 8);
        let rank = rank_covering(40, 0.8, 0.8);
        assert!((33..40).contains(&rank), "{rank}");
        assert!(confidence(40, rank, 0.8) >= 0.8 && confidence(40, rank - 1, 0.8) < 0.8);
    }

    #[test]
    fn the_rank_is_the_first_whose_confidence_is_enough() {
        for pits in [2, 9, 40, 300] {
            for (share, sure) in [(0.8, 0.8), (0.5, 0.95), (0.95, 0.2), (0.0, 0.5), (1.0, 0.5)] {
                let first = (1..pits).find(|&rank| confidence(pits, rank, share) >= sure).unwrap_or(pits);
                assert_eq!(rank_covering(pits, share, sure), first, "{pits} pits, {share}, {sure}");
            }
        }
    }

    #[test]
    fn the_edges_hold() {
        assert!(confidence(0, 0, 0.8).abs() < f64::EPSILON);
        assert!((confidence(3, 1, 0.0) - 1.0).abs() < 1e-12);
        assert!(confidence(3, 2, 1.0).abs() < 1e-12);
        assert_eq!(rank_covering(0, 0.8, 0.8), 0);
    }
}
