//! Of the fixes taken on a walk only those of the last stay count.

use pitface_core::place::{Fix, LONGEST_S, Plane, average, stay, walk};
use proptest::prelude::*;

const MIDDLE: [f64; 2] = [2.5, 54.5];

fn fix(east_m: f64, accuracy_m: f64, after_s: f64) -> Fix {
    let time_ms = 1_790_000_000_000 + (after_s * 1000.0) as i64;
    Fix { at: Plane::at(MIDDLE).place([east_m, 0.0]), accuracy_m, time_ms }
}

/// 40 m at a walk of 1.3 m/s with a fix a second, then so long in one place.
fn walked_then_still(still_s: u32) -> Vec<Fix> {
    let walked = (0..31).map(|second| fix(-1.3 * f64::from(30 - second), 4.0, f64::from(second)));
    let still = (1..=still_s).map(|second| {
        let sway_m = if second % 2 == 0 { 0.8 } else { -0.8 };
        fix(sway_m, 4.0, f64::from(30 + second))
    });
    walked.chain(still).collect()
}

#[test]
fn the_way_there_is_left_behind() {
    let away_m = |fixes: &[Fix]| {
        let position = average(fixes).unwrap().position;
        walk([position.longitude_deg, position.latitude_deg], MIDDLE).distance_m
    };
    let fixes = walked_then_still(25);
    assert!(away_m(&fixes) > 8.0, "with the way there: {} m off", away_m(&fixes));
    assert!(away_m(&stay(&fixes)) < 2.0, "{} m off", away_m(&stay(&fixes)));
    // Just arrived: nearly all of it is on the way, and yet no more than the claimed accuracy.
    assert!(away_m(&stay(&walked_then_still(1))) < 4.0);
}

#[test]
fn a_stay_is_as_long_as_one_stands_and_no_longer_than_counts() {
    for (still_s, kept_s) in [(10, 16.0), (40, 46.0), (200, LONGEST_S)] {
        let kept = stay(&walked_then_still(still_s));
        let span_s = (kept[kept.len() - 1].time_ms - kept[0].time_ms) as f64 / 1000.0;
        assert!((span_s - kept_s).abs() <= 1.5, "{still_s} s still: {span_s} s");
    }
}

#[test]
fn a_coarse_fix_between_does_not_end_it_and_what_is_none_is_left_out() {
    let nowhere = Fix { at: [2.5, 154.5], ..fix(0.0, 3.0, 6.0) };
    let fixes = [fix(0.0, 3.0, 0.0), fix(80.0, 60.0, 5.0), nowhere, fix(1.0, 3.0, 10.0)];
    assert_eq!(stay(&fixes), [fixes[0], fixes[1], fixes[3]]);
    assert_eq!(stay(&[nowhere]), []);
}

proptest! {
    #[test]
    fn always_ends_with_the_last_and_twice_is_once(
        places in prop::collection::vec((-60.0..60.0_f64, 1.0..30.0_f64, 0.0..120.0_f64), 1..30)
    ) {
        let fixes: Vec<Fix> = places.iter().map(|&(east, accuracy, after)| fix(east, accuracy, after)).collect();
        let kept = stay(&fixes);
        let last_ms = fixes.iter().map(|fix| fix.time_ms).max();
        prop_assert_eq!(kept.last().map(|fix| fix.time_ms), last_ms);
        prop_assert_eq!(&stay(&kept), &kept);
    }
}
