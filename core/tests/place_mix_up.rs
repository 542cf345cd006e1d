//! Longitude and latitude mixed up, and fields where the degrees begin again.

use pitface_core::place::{FieldMap, MixUp, Outline, Plane, guess_mix_up};
use pitface_core::record::{Field, Position, Zone};
use proptest::prelude::*;

use crate::common;

const ALL: [MixUp; 4] = [MixUp::Swapped, MixUp::EastWest, MixUp::NorthSouth, MixUp::Both];

fn square(middle: [f64; 2]) -> Vec<[f64; 2]> {
    let corner = |flat| Plane::at(middle).place(flat);
    [[-100.0, -100.0], [100.0, -100.0], [100.0, 100.0], [-100.0, 100.0]].map(corner).to_vec()
}

#[test]
fn each_mix_up_has_its_own_words() {
    for mix_up in ALL {
        assert!(!mix_up.wrong().is_empty() && !mix_up.todo().is_empty());
        let alike = ALL.iter().filter(|other| other.to_string() == mix_up.to_string()).count();
        assert_eq!(alike, 1, "{mix_up:?}");
    }
}

proptest! {
    /// Away from the lines where two of them come to the same.
    #[test]
    fn each_mix_up_is_guessed(
        longitude in 5.0..40.0_f64,
        latitude in 45.0..70.0_f64,
        west in any::<bool>(),
        south in any::<bool>(),
        east_m in -400.0..400.0_f64,
    ) {
        let middle = [if west { -longitude } else { longitude }, if south { -latitude } else { latitude }];
        let pits = [middle, Plane::at(middle).place([east_m, 30.0])];
        prop_assert_eq!(guess_mix_up(&square(middle), &pits), None);
        for mix_up in ALL {
            let outline: Vec<[f64; 2]> = square(middle).into_iter().map(|corner| mix_up.undone(corner)).collect();
            prop_assert_eq!(guess_mix_up(&outline, &pits), Some(mix_up));
            let back = mix_up.undone(mix_up.undone(middle));
            prop_assert!(pitface_core::place::walk(back, middle).distance_m < 1e-9);
        }
    }

    #[test]
    fn an_outline_elsewhere_is_no_mix_up(longitude in 5.0..40.0_f64, latitude in 45.0..70.0_f64) {
        let pits = [[longitude + 1.0, latitude]];
        prop_assert_eq!(guess_mix_up(&square([longitude, latitude]), &pits), None);
    }

    /// A field across the antimeridian is like the same field anywhere else.
    #[test]
    fn a_field_across_the_antimeridian_is_like_any_other(
        latitude in -60.0..60.0_f64,
        east_m in -120.0..120.0_f64,
        north_m in -120.0..120.0_f64,
    ) {
        let map = |middle: [f64; 2]| {
            let field = Field { outline: square(middle), headland_mm: Some(12_000), ..common::field() };
            FieldMap::of(&field)
        };
        let lies = |middle: [f64; 2]| {
            let [longitude_deg, latitude_deg] = Plane::at(middle).place([east_m, north_m]);
            map(middle).locate(&Position { longitude_deg, latitude_deg, accuracy_m: Some(0.0) }).zone
        };
        let (here, there) = ([100.0, latitude], [180.0, latitude]);
        prop_assert_eq!(lies(here), lies(there));
        for zone in [Zone::Open, Zone::Headland, Zone::Whole] {
            let (one, other) = (map(here).area_m2(zone).unwrap(), map(there).area_m2(zone).unwrap());
            prop_assert!((one / other - 1.0).abs() < 1e-6);
        }
    }
}

#[test]
fn one_stray_place_is_no_mix_up_and_none_is_nothing_to_compare() {
    let outline = square([2.5, 54.5]);
    assert_eq!(guess_mix_up(&outline, &[[54.5, 2.5], [2.5, 54.5]]), None);
    assert_eq!(guess_mix_up(&outline, &[[54.5, 2.5], [30.0, 30.0]]), None);
    assert_eq!(guess_mix_up(&outline, &[]), None);
    assert_eq!(guess_mix_up(&[], &[[2.5, 54.5]]), None);
}

/// A triangle that crosses the antimeridian has no side that crosses another.
#[test]
fn an_outline_across_the_antimeridian_is_taken() {
    let corners = [[-150.0, 0.0], [50.0, -120.0], [90.0, 10.0], [20.0, 100.0], [-30.0, 20.0]];
    let there: Vec<[f64; 2]> =
        corners.iter().map(|&corner| Plane::at([180.0, -17.0]).place(corner)).collect();
    let here: Vec<[f64; 2]> = corners.iter().map(|&corner| Plane::at([100.0, -17.0]).place(corner)).collect();
    let (there, here) = (Outline::new(&there).unwrap(), Outline::new(&here).unwrap());
    assert!((there.area_m2() / here.area_m2() - 1.0).abs() < 1e-6);
    assert!((there.headland_m2(12_000) / here.headland_m2(12_000) - 1.0).abs() < 1e-6);
}
