//! Averaged fixes.

use pitface_core::place::{COARSE, Fix, LONGEST_S, Plane, average, walk};
use pitface_core::record::Position;
use proptest::prelude::*;

const MIDDLE: [f64; 2] = [2.5, 54.5];

/// A fix so many metres from a middle, so many seconds after the first.
fn fix_near(middle: [f64; 2], offset_m: [f64; 2], accuracy_m: f64, after_s: f64) -> Fix {
    let time_ms = 1_790_000_000_000 + (after_s * 1000.0) as i64;
    Fix { at: Plane::at(middle).place(offset_m), accuracy_m, time_ms }
}

fn fix(offset_m: [f64; 2], accuracy_m: f64, after_s: f64) -> Fix {
    fix_near(MIDDLE, offset_m, accuracy_m, after_s)
}

fn away_m(position: &Position, place: [f64; 2]) -> f64 {
    walk(place, [position.longitude_deg, position.latitude_deg]).distance_m
}

/// Any stay of a minute: some fixes near each other with the accuracies that phones claim.
fn any_stay() -> impl Strategy<Value = Vec<Fix>> {
    prop::collection::vec((-15.0..15.0_f64, -15.0..15.0_f64, 1.0..40.0_f64, 0.0..90.0_f64), 1..25).prop_map(
        |fixes| {
            fixes
                .into_iter()
                .map(|(east, north, accuracy, after)| fix([east, north], accuracy, after))
                .collect()
        },
    )
}

#[test]
fn no_fix_gives_no_position() {
    assert_eq!(average(&[]), None);
    let none = Fix { accuracy_m: f64::NAN, ..fix([0.0, 0.0], 1.0, 0.0) };
    assert_eq!(average(&[none, Fix { at: [2.5, 154.5], accuracy_m: 3.0, ..none }]), None);
}

#[test]
fn one_fix_gives_itself_also_when_it_is_repeated() {
    let only = fix([3.0, 4.0], 6.0, 0.0);
    for fixes in [vec![only], vec![only, only, only]] {
        let averaged = average(&fixes).unwrap();
        let Position { longitude_deg, latitude_deg, accuracy_m } = averaged.position;
        assert_eq!(([longitude_deg, latitude_deg], accuracy_m), (only.at, Some(6.0)));
        assert_eq!((averaged.fixes, averaged.left_out), (1, fixes.len() - 1));
        assert!(averaged.span_s.abs() < 1e-9 && averaged.spread_m.abs() < 1e-9 && !averaged.long_enough());
    }
}

/// Weights 1 and 1/4: the mean lies a fifth of the way to the coarser fix.
#[test]
fn a_fix_twice_as_coarse_weighs_a_quarter() {
    let averaged = average(&[fix([0.0, 0.0], 4.0, 0.0), fix([10.0, 0.0], 8.0, 40.0)]).unwrap();
    assert!(away_m(&averaged.position, Plane::at(MIDDLE).place([2.0, 0.0])) < 1e-6);
    // 68 % of two fixes are both; the farther one lies 8 m off, further than the 6 m claimed on the middle.
    assert!((averaged.spread_m - 8.0).abs() < 1e-6);
    assert!((averaged.position.accuracy_m.unwrap() - 8.0).abs() < 1e-6);
    assert!((averaged.span_s - 40.0).abs() < 1e-9 && averaged.long_enough());
    assert!((averaged.age_s(averaged.last_ms + 90_000) - 90.0).abs() < 1e-9);
}

/// A hundred alike do not make it better: their errors have the same causes.
#[test]
fn many_fixes_claim_no_more_than_one() {
    let stay: Vec<Fix> = (0..50).map(|second| fix([0.0, 0.0], 5.0, f64::from(second))).collect();
    let averaged = average(&stay).unwrap();
    assert!((averaged.position.accuracy_m.unwrap() - 5.0).abs() < 1e-9);
    assert_eq!(averaged.fixes, 50);
}

#[test]
fn coarse_and_early_fixes_are_left_out() {
    let good = fix([0.0, 0.0], 4.0, 100.0);
    let coarse = fix([90.0, 0.0], 4.0 * COARSE + 0.1, 99.0);
    let early = fix([0.0, 90.0], 2.0, 99.0 - LONGEST_S);
    let averaged = average(&[coarse, good, early]).unwrap();
    assert_eq!((averaged.fixes, averaged.left_out), (1, 2));
    assert!(away_m(&averaged.position, good.at) < 1e-6);
}

proptest! {
    #[test]
    fn the_order_of_the_fixes_changes_nothing(mut stay in any_stay(), turn in any::<prop::sample::Index>()) {
        let before = average(&stay);
        let turn = turn.index(stay.len());
        stay.rotate_left(turn);
        prop_assert_eq!(average(&stay), before);
        stay.reverse();
        prop_assert_eq!(average(&stay), before);
    }

    #[test]
    fn the_error_is_never_below_what_was_claimed_nor_below_the_spread(stay in any_stay()) {
        let averaged = average(&stay).unwrap();
        let smallest = stay.iter().map(|fix| fix.accuracy_m).fold(f64::INFINITY, f64::min);
        let error_m = averaged.position.accuracy_m.unwrap();
        prop_assert!(error_m >= smallest && error_m >= averaged.spread_m);
    }

    /// The mean lies among the fixes, and within the spread of it lie 68 % of those it was taken from.
    #[test]
    fn the_spread_holds_two_thirds_of_the_fixes(stay in any_stay()) {
        let averaged = average(&stay).unwrap();
        let within =
            stay.iter().filter(|fix| away_m(&averaged.position, fix.at) <= averaged.spread_m + 1e-6).count();
        prop_assert!(within as f64 >= 0.68 * averaged.fixes as f64);
        prop_assert_eq!(averaged.fixes + averaged.left_out, stay.len());
        prop_assert!(away_m(&averaged.position, MIDDLE) <= 15.0 * 2.0_f64.sqrt() + 1e-6);
    }

    #[test]
    fn a_stay_across_the_antimeridian_is_like_any_other(stay in any_stay(), latitude in -60.0..60.0_f64) {
        let (here, there) = ([100.0, latitude], [180.0, latitude]);
        let moved = |to: [f64; 2]| -> Vec<Fix> {
            let flat = Plane::at(MIDDLE);
            stay.iter().map(|fix| Fix { at: Plane::at(to).place(flat.flat(fix.at)), ..*fix }).collect()
        };
        let (here, there) = (average(&moved(here)).unwrap(), average(&moved(there)).unwrap());
        let way = |to: [f64; 2], averaged: &pitface_core::place::AveragedFix| away_m(&averaged.position, to);
        prop_assert!((way([100.0, latitude], &here) - way([180.0, latitude], &there)).abs() < 1e-3);
        prop_assert!((here.spread_m - there.spread_m).abs() < 1e-3);
    }
}
