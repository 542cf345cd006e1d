//! How many pits, and where.

use crate::advice_fixture;

use advice_fixture::{notes, pan_pit, reference, sound_pit};
use pitface_core::advice::sampling::{
    At, Count, DIG_CLEARANCE_M, Ground, Next, Plan, PlanFault, Settled, ZoneGround, counts, next_pit,
};
use pitface_core::place::{Plane, walk};
use pitface_core::reading::read_field;
use pitface_core::record::{PlaceKind, Zone};
use proptest::prelude::*;
use serde_json::Value;

const CASES: &str = include_str!("../../tests/vectors/sampling.json");

fn cases(list: &str) -> Vec<Value> {
    let cases: Value = serde_json::from_str(CASES).expect("the vectors are JSON");
    cases[list].as_array().expect("a list").clone()
}

fn number(case: &Value, name: &str) -> f64 {
    case[name].as_f64().expect("a number")
}

fn count(case: &Value) -> Count {
    Count::new(number(case, "pits") as u32, number(case, "harmed") as u32)
}

#[test]
fn intervals_agree_with_published_ones() {
    for case in cases("intervals") {
        let share = count(&case).share(number(&case, "confidence"));
        assert!((share.lo - number(&case, "lo")).abs() < 5e-5, "{case} {share:?}");
        assert!((share.hi - number(&case, "hi")).abs() < 5e-5, "{case} {share:?}");
    }
}

#[test]
fn bounds_are_walds() {
    for case in cases("bounds") {
        let plan = Plan {
            loosened_wrongly: number(&case, "loosened_wrongly"),
            left_wrongly: number(&case, "left_wrongly"),
            ..Plan::default()
        };
        assert!((plan.bounds().lower - number(&case, "lower")).abs() < 1e-12, "{case}");
        assert!((plan.bounds().upper - number(&case, "upper")).abs() < 1e-12, "{case}");
    }
}

#[test]
fn zones_settle_as_reckoned_by_hand() {
    for case in cases("verdicts") {
        let verdict = Plan::default().verdict(count(&case), number(&case, "area_ha"));
        assert_eq!(case["verdict"], verdict.code(), "{case}");
    }
}

#[test]
fn each_figure_that_cannot_be_worked_with_is_told() {
    let plan = Plan::default();
    let faults = [
        (Plan { sound_share: 0.6, ..plan }, PlanFault::Shares),
        (Plan { harmed_share: 1.0, ..plan }, PlanFault::Shares),
        (Plan { worth_share: f64::NAN, ..plan }, PlanFault::Shares),
        (Plan { loosened_wrongly: 0.0, ..plan }, PlanFault::Errors),
        (Plan { left_wrongly: 0.5, ..plan }, PlanFault::Errors),
        (Plan { confidence: 1.0, ..plan }, PlanFault::Confidence),
        (Plan { pit_costs_ha: -1.0, ..plan }, PlanFault::Cost),
        (Plan { most_pits: 0, ..plan }, PlanFault::MostPits),
    ];
    for (plan, fault) in faults {
        assert_eq!(plan.check(), Err(fault));
        assert_eq!(next_pit(&field(), &plan), Err(fault));
    }
}

#[test]
fn a_settled_zone_expects_no_pit_and_an_open_one_at_least_one() {
    let plan = Plan::default();
    assert!(plan.still_expected(Count::new(2, 2), 8.0).abs() < 1e-12);
    let fresh = plan.still_expected(Count::default(), 8.0);
    assert!((2.0..4.0).contains(&fresh), "{fresh}");
    // One harmed pit of two: the ratio is back where it began, with fewer pits left to the limit.
    assert!(plan.still_expected(Count::new(2, 1), 8.0) >= 1.0);
}

/// A field of 400 by 250 m in open water with 12 m of headland, reference dug in its middle.
const MIDDLE: [f64; 2] = [2.5, 54.5];

fn at(east_m: f64, north_m: f64) -> [f64; 2] {
    Plane::at(MIDDLE).place([east_m, north_m])
}

fn field() -> Ground {
    let zone = |zone, area_ha| ZoneGround {
        zone,
        count: Count::default(),
        area_ha: Some(area_ha),
        rings: Vec::new(),
    };
    Ground {
        outline: vec![at(-200.0, -125.0), at(200.0, -125.0), at(200.0, 125.0), at(-200.0, 125.0)],
        headland_mm: Some(12_000),
        zones: vec![zone(Zone::Open, 8.0), zone(Zone::Headland, 1.5)],
        dug: vec![MIDDLE],
        reference_dug: true,
        buried: Vec::new(),
        clearance_m: DIG_CLEARANCE_M,
    }
}

fn next(ground: &Ground) -> Next {
    next_pit(ground, &Plan::default()).expect("the default plan is sound")
}

#[test]
fn the_first_pit_is_always_the_reference() {
    let ground = Ground { reference_dug: false, dug: Vec::new(), ..field() };
    assert_eq!(next(&ground), Next::Reference);
}

#[test]
fn the_zone_with_most_at_stake_comes_first_then_the_other_then_no_more() {
    let mut ground = field();
    assert!(matches!(next(&ground), Next::Pit { zone: Zone::Open, .. }));
    ground.zones[0].count = Count::new(2, 0);
    assert!(matches!(next(&ground), Next::Pit { zone: Zone::Headland, .. }));
    ground.zones[1].count = Count::new(2, 2);
    assert_eq!(next(&ground), Next::Stop);
}

#[test]
fn a_pit_in_the_headland_lies_within_its_strip() {
    let mut ground = field();
    ground.zones.remove(0);
    let Next::Pit { at: At::Place(place), .. } = next(&ground) else { panic!("{:?}", next(&ground)) };
    let [east, north] = Plane::at(MIDDLE).flat(place);
    let edge_m = (200.0 - east.abs()).min(125.0 - north.abs());
    assert!((2.0..10.0).contains(&edge_m), "{edge_m}");
}

#[test]
fn where_a_zone_is_not_marked_its_place_is_chosen_by_eye() {
    let mut ground = field();
    ground.outline.clear();
    assert!(matches!(next(&ground), Next::Pit { at: At::ByEye, .. }));
    ground = field();
    ground.zones =
        vec![ZoneGround { zone: Zone::Patch, count: Count::default(), area_ha: None, rings: Vec::new() }];
    assert!(matches!(next(&ground), Next::Pit { zone: Zone::Patch, at: At::ByEye, .. }));
    ground.zones[0].rings = vec![vec![at(10.0, 10.0), at(50.0, 10.0), at(30.0, 60.0)]];
    let Next::Pit { at: At::Place(place), .. } = next(&ground) else { panic!("{:?}", next(&ground)) };
    let [east, north] = Plane::at(MIDDLE).flat(place);
    assert!((10.0..50.0).contains(&east) && (10.0..60.0).contains(&north));
}

#[test]
fn a_zone_full_of_drains_has_nowhere_clear() {
    let mut ground = field();
    ground.buried = (-30..=30)
        .map(|line| f64::from(line) * 7.0)
        .map(|east| vec![at(east, -140.0), at(east, 140.0)])
        .collect();
    assert!(matches!(next(&ground), Next::Pit { at: At::NowhereClear, .. }));
}

proptest! {
    #[test]
    fn a_place_is_inside_clear_of_what_is_buried_and_far_from_pits(
        dug in prop::collection::vec((-180.0..180.0_f64, -110.0..110.0_f64), 1..6),
        drains in prop::collection::vec(
            ((-200.0..200.0_f64, -125.0..125.0_f64), (-200.0..200.0_f64, -125.0..125.0_f64)), 0..6),
    ) {
        let mut ground = field();
        ground.dug = dug.iter().map(|&(east, north)| at(east, north)).collect();
        ground.buried = drains.iter().map(|(from, to)| vec![at(from.0, from.1), at(to.0, to.1)]).collect();
        let next = next(&ground);
        let Next::Pit { zone: Zone::Open, at: At::Place(place), .. } = next else {
            panic!("{next:?}")
        };
        let [east, north] = Plane::at(MIDDLE).flat(place);
        prop_assert!(east.abs() < 188.0 && north.abs() < 113.0);
        for &pit in &ground.dug {
            prop_assert!(walk(place, pit).distance_m > 30.0);
        }
        for (from, to) in drains {
            let along = [to.0 - from.0, to.1 - from.1];
            let length = along[0].hypot(along[1]).max(1e-9);
            let to_place = [east - from.0, north - from.1];
            let part = ((to_place[0] * along[0] + to_place[1] * along[1]) / (length * length)).clamp(0.0, 1.0);
            let off_m = (to_place[0] - part * along[0]).hypot(to_place[1] - part * along[1]);
            prop_assert!(off_m > DIG_CLEARANCE_M - 0.01, "{off_m}");
        }
    }

    #[test]
    fn an_interval_holds_what_was_found_and_narrows_with_confidence(pits in 1_u32..60, part in 0.0..1.0_f64) {
        let count = Count::new(pits, (f64::from(pits) * part) as u32);
        let (wide, narrow) = (count.share(0.95), count.share(0.5));
        let found = narrow.found.unwrap();
        prop_assert!(wide.lo <= narrow.lo && narrow.lo <= found && found <= narrow.hi && narrow.hi <= wide.hi);
    }

    #[test]
    fn the_settled_verdict_follows_the_pits(pits in 0_u32..30, harmed in 0_u32..30) {
        let (plan, count) = (Plan::default(), Count::new(pits, harmed));
        let lead = i64::from(count.harmed) - i64::from(count.sound());
        let expected = match lead {
            2.. => Some(Settled::WorthLoosening),
            ..=-2 => Some(Settled::NotWorthLoosening),
            _ => None,
        };
        prop_assert_eq!(plan.settled(count), expected);
    }
}

#[test]
fn counting_a_field_leaves_out_the_reference_and_pits_that_cannot_be_judged() {
    let mut shallow = pan_pit(5, PlaceKind::Open, 320);
    shallow.dug_to_mm = Some(200);
    let notes = notes(vec![
        reference(),
        pan_pit(2, PlaceKind::Open, 320),
        sound_pit(3, PlaceKind::Open),
        pan_pit(4, PlaceKind::Headland, 320),
        shallow,
    ]);
    let counted = counts(&notes, &read_field(&notes));
    assert_eq!(counted, [(Zone::Open, Count::new(2, 1)), (Zone::Headland, Count::new(1, 1))]);
}
