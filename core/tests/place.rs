//! Distances, outlines and strips.

use crate::common;

use pitface_core::place::{FieldMap, MixUp, Outline, OutlineFault, guess_mix_up, walk};
use pitface_core::record::Field;
use proptest::prelude::*;
use serde_json::Value;

const CASES: &str = include_str!("../../tests/vectors/place.json");

fn cases(list: &str) -> Vec<Value> {
    let cases: Value = serde_json::from_str(CASES).expect("the vectors are JSON");
    cases[list].as_array().expect("a list").clone()
}

fn point(value: &Value) -> [f64; 2] {
    [0, 1].map(|at| value[at].as_f64().expect("a number"))
}

#[test]
fn walks_agree_with_published_ones() {
    for case in cases("walks") {
        let way = walk(point(&case["from"]), point(&case["to"]));
        assert!((way.distance_m - case["distance_m"].as_f64().unwrap()).abs() < 0.001, "{case} {way:?}");
        assert!((way.bearing_deg - case["bearing_deg"].as_f64().unwrap()).abs() < 1e-7, "{case} {way:?}");
    }
}

#[test]
fn each_bad_outline_has_its_own_fault() {
    for case in cases("faults") {
        let points: Vec<[f64; 2]> = case["outline"].as_array().unwrap().iter().map(point).collect();
        let fault = match Outline::new(&points) {
            Ok(outline) => panic!("{case} was taken: {outline:?}"),
            Err(OutlineFault::TooFew { .. }) => "too_few",
            Err(OutlineFault::Swapped { .. }) => "swapped",
            Err(OutlineFault::OffTheGlobe { .. }) => "off_the_globe",
            Err(OutlineFault::Crosses { .. }) => "crosses",
            Err(OutlineFault::TooLarge { .. }) => "too_large",
        };
        assert_eq!(case["fault"], fault, "{case}");
    }
}

#[test]
fn wheelings_take_the_share_reckoned_by_hand() {
    for case in cases("wheelings") {
        let length = |key: &str| case[key].as_u64().map(|mm| mm as u32);
        let field = Field {
            tramline_mm: length("tramline_mm"),
            wheel_track_mm: length("wheel_track_mm"),
            tyre_mm: length("tyre_mm"),
            ..common::field()
        };
        let (found, expected) = (FieldMap::of(&field).wheelings_share(), case["share"].as_f64());
        assert_eq!(found.is_some(), expected.is_some(), "{case}");
        assert!((found.unwrap_or(0.0) - expected.unwrap_or(0.0)).abs() < 1e-12, "{case} {found:?}");
    }
}

#[test]
fn mix_ups_of_degrees_are_guessed() {
    for case in cases("mix_ups") {
        let points = |key: &str| case[key].as_array().unwrap().iter().map(point).collect::<Vec<[f64; 2]>>();
        let guess = guess_mix_up(&points("outline"), &points("places")).map(|mix_up| match mix_up {
            MixUp::Swapped => "swapped",
            MixUp::EastWest => "east_west",
            MixUp::NorthSouth => "north_south",
            MixUp::Both => "both",
        });
        assert_eq!(case["guess"].as_str(), guess, "{case}");
    }
}

/// A field of many sides around a middle, its corners between 60 and 300 m away.
fn any_field() -> impl Strategy<Value = Vec<[f64; 2]>> {
    (-170.0..170.0_f64, -60.0..60.0_f64, prop::collection::vec(60.0..300.0_f64, 3..12)).prop_map(
        |(longitude, latitude, radii)| {
            let count = radii.len() as f64;
            let corner = |(at, radius_m): (usize, &f64)| {
                let angle = at as f64 / count * std::f64::consts::TAU;
                let degree_m = 111_000.0;
                let north = radius_m * angle.sin() / degree_m;
                let east = radius_m * angle.cos() / degree_m / latitude.to_radians().cos();
                [longitude + east, latitude + north]
            };
            radii.iter().enumerate().map(corner).collect()
        },
    )
}

proptest! {
    #[test]
    fn a_field_reads_the_same_open_closed_or_walked_the_other_way(points in any_field()) {
        let outline = Outline::new(&points).unwrap();
        let mut closed = points.clone();
        closed.push(points[0]);
        prop_assert_eq!(&outline, &Outline::new(&closed).unwrap());
        let mut back = points.clone();
        back.reverse();
        let other = Outline::new(&back).unwrap();
        prop_assert!((other.area_m2() / outline.area_m2() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_wider_headland_holds_more_and_never_more_than_the_field(points in any_field(), width_m in 1_u32..40) {
        let outline = Outline::new(&points).unwrap();
        let narrow = outline.headland_m2(width_m * 1000);
        let wide = outline.headland_m2(width_m * 2000);
        prop_assert!(0.0 < narrow && narrow <= wide * (1.0 + 1e-9));
        prop_assert!(wide <= outline.area_m2() * (1.0 + 1e-9));
    }
}

#[test]
fn a_strip_as_wide_as_the_field_is_the_field() {
    let outline = Outline::new(&[[2.5, 54.5], [2.502, 54.5], [2.502, 54.501], [2.5, 54.501]]).unwrap();
    assert!((outline.headland_m2(500_000) - outline.area_m2()).abs() < 1e-6);
}
