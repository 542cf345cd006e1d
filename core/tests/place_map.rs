//! A field laid out: the zone of a position, the ground of each zone, what is said of where a pit lies.

use crate::common;

use pitface_core::place::{FieldMap, Located, Outline, PlaceRemark, Plane, UNSTATED_ACCURACY_M};
use pitface_core::record::{Field, Part, PartShape, Pit, PlaceKind, Position, Unknown, Zone};
use proptest::prelude::*;

const MIDDLE: [f64; 2] = [2.5, 54.5];

/// A place so many metres east and north of the middle.
fn at(east_m: f64, north_m: f64) -> [f64; 2] {
    Plane::at(MIDDLE).place([east_m, north_m])
}

fn position([longitude_deg, latitude_deg]: [f64; 2], accuracy_m: Option<f64>) -> Position {
    Position { longitude_deg, latitude_deg, accuracy_m }
}

fn part(zone: Zone, shape: PartShape) -> Part {
    Part { id: common::id(), name: None, zone, shape, unknown: Unknown::new() }
}

fn ring(corners: &[[f64; 2]]) -> PartShape {
    PartShape::Ring(corners.iter().map(|&[east, north]| at(east, north)).collect())
}

/// A circle so many metres east and north of the middle.
fn circle(east_m: f64, north_m: f64, radius_m: f64) -> PartShape {
    PartShape::Circle { middle: at(east_m, north_m), radius_m }
}

fn rectangle(wide_m: f64, high_m: f64) -> Vec<[f64; 2]> {
    let (east, north) = (wide_m / 2.0, high_m / 2.0);
    vec![at(-east, -north), at(east, -north), at(east, north), at(-east, north)]
}

/// 400 m by 200 m, a headland of 12 m, a gateway of 20 m radius in the middle of its southern side, and a patch 60 m by
/// 40 m east of its middle.
fn field() -> Field {
    Field {
        outline: rectangle(400.0, 200.0),
        headland_mm: Some(12_000),
        parts: vec![
            part(Zone::Gateway, circle(0.0, -100.0, 20.0)),
            part(Zone::Patch, ring(&[[100.0, -20.0], [160.0, -20.0], [160.0, 20.0], [100.0, 20.0]])),
        ],
        ..common::field()
    }
}

fn pit(place: PlaceKind, east_m: f64, north_m: f64, accuracy_m: Option<f64>) -> Pit {
    Pit { at: Some(position(at(east_m, north_m), accuracy_m)), ..common::pit(place) }
}

fn located(field: &Field, east_m: f64, north_m: f64) -> Located {
    FieldMap::of(field).locate(&position(at(east_m, north_m), Some(1.0)))
}

#[test]
fn a_position_lies_in_the_first_zone_that_holds_it() {
    let field = field();
    for (east, north, zone) in [
        (0.0, 0.0, Zone::Open),
        (-194.0, 0.0, Zone::Headland),
        (0.0, -94.0, Zone::Gateway),
        (0.0, -84.0, Zone::Gateway),
        (130.0, 0.0, Zone::Patch),
    ] {
        assert_eq!(located(&field, east, north).zone, Some(zone), "{east} {north}");
    }
    let outside = located(&field, 0.0, -110.0);
    assert_eq!(outside.zone, None);
    assert!((outside.outside_m.unwrap() - 10.0).abs() < 0.01);
}

#[test]
fn a_gateway_comes_before_a_patch_drawn_over_it() {
    let mut field = field();
    field.parts.push(part(Zone::Patch, circle(0.0, -90.0, 50.0)));
    assert_eq!(located(&field, 0.0, -94.0).zone, Some(Zone::Gateway));
    assert_eq!(located(&field, 30.0, -95.0).zone, Some(Zone::Patch));
}

#[test]
fn the_nearest_edge_is_told_with_the_zone_behind_it() {
    let map = FieldMap::of(&field());
    let near = |east, north| map.locate(&position(at(east, north), Some(8.0))).edge;
    for (east, north, distance_m, other) in [
        (-185.0, 0.0, 3.0, Zone::Headland),
        (-190.0, 0.0, 2.0, Zone::Open),
        (0.0, -78.0, 2.0, Zone::Gateway),
        (0.0, -83.0, 3.0, Zone::Open),
        (104.0, 0.0, 4.0, Zone::Open),
        // In a corner of the headland the way to open ground is the diagonal.
        (-191.0, 91.0, 3.0 * 2.0_f64.sqrt(), Zone::Open),
    ] {
        let edge = near(east, north).expect("an edge within 8 m");
        assert!((edge.distance_m - distance_m).abs() < 0.01, "{east} {north} {edge:?}");
        assert_eq!(edge.other, Some(other), "{east} {north}");
    }
    assert_eq!(near(0.0, 0.0), None);
    // The outline itself is no edge between zones.
    assert_eq!(map.locate(&position(at(-199.0, 0.0), Some(8.0))).edge, None);
}

#[test]
fn open_ground_is_refined_by_a_position_that_is_sure_enough() {
    let map = FieldMap::of(&field());
    for (east, north, accuracy_m, zone) in [
        (-194.0, 0.0, Some(4.0), Zone::Headland),
        (-194.0, 0.0, Some(7.0), Zone::Open),
        (-194.0, 0.0, None, Zone::Headland),
        (-190.0, 0.0, None, Zone::Open),
        (0.0, -94.0, Some(4.0), Zone::Gateway),
        (130.0, 0.0, Some(4.0), Zone::Patch),
        (0.0, 0.0, Some(4.0), Zone::Open),
        (0.0, -130.0, Some(4.0), Zone::Open),
    ] {
        let pit = pit(PlaceKind::Open, east, north, accuracy_m);
        assert_eq!(map.zone_of(&pit), Some(zone), "{east} {north} {accuracy_m:?}");
    }
    const { assert!(UNSTATED_ACCURACY_M > 2.0 && UNSTATED_ACCURACY_M < 6.0) };
}

#[test]
fn what_was_said_stands_whatever_the_position() {
    let map = FieldMap::of(&field());
    for (place, zone) in [
        (PlaceKind::Wheeling, Some(Zone::Wheelings)),
        (PlaceKind::Headland, Some(Zone::Headland)),
        (PlaceKind::Gateway, Some(Zone::Gateway)),
        (PlaceKind::Other, Some(Zone::Patch)),
        (PlaceKind::Reference, None),
    ] {
        for (east, north) in [(0.0, 0.0), (-194.0, 0.0), (0.0, -94.0), (130.0, 0.0), (900.0, 0.0)] {
            assert_eq!(map.zone_of(&pit(place, east, north, Some(2.0))), zone, "{place:?} {east} {north}");
        }
    }
    let noted = Pit { zone: Some(Zone::Patch), ..pit(PlaceKind::Open, -194.0, 0.0, Some(2.0)) };
    assert_eq!(map.zone_of(&noted), Some(Zone::Patch));
    assert_eq!(map.remarks(&noted), []);
}

/// The code of what is said, and the zone it names.
fn said(map: &FieldMap, pit: &Pit) -> Option<(&'static str, Option<Zone>)> {
    map.remarks(pit).first().map(|remark| match *remark {
        PlaceRemark::Outside { .. } => (remark.code(), None),
        PlaceRemark::NearEdge { zone, .. }
        | PlaceRemark::DiffersFromPlace { zone }
        | PlaceRemark::MovedTo { zone } => (remark.code(), Some(zone)),
    })
}

#[test]
fn each_remark_is_made_where_it_is_due() {
    use PlaceKind::{Gateway, Headland, Open, Other, Reference, Wheeling};
    let map = FieldMap::of(&field());
    for (place, east, north, accuracy_m, remark) in [
        (Open, 0.0, 0.0, 4.0, None),
        (Open, -194.0, 0.0, 4.0, Some(("moved_to", Some(Zone::Headland)))),
        (Open, -190.0, 0.0, 4.0, Some(("near_edge", Some(Zone::Headland)))),
        (Open, -186.0, 0.0, 4.0, Some(("near_edge", Some(Zone::Headland)))),
        (Headland, -194.0, 0.0, 4.0, None),
        (Headland, -190.0, 0.0, 4.0, None),
        (Headland, -186.0, 0.0, 4.0, Some(("near_edge", Some(Zone::Open)))),
        (Headland, 0.0, 0.0, 4.0, Some(("differs_from_place", Some(Zone::Open)))),
        (Headland, 0.0, -94.0, 4.0, Some(("differs_from_place", Some(Zone::Gateway)))),
        (Gateway, -194.0, 0.0, 4.0, Some(("differs_from_place", Some(Zone::Headland)))),
        (Other, 0.0, 0.0, 4.0, Some(("differs_from_place", Some(Zone::Open)))),
        (Wheeling, 0.0, 0.0, 4.0, None),
        (Wheeling, -194.0, 0.0, 4.0, Some(("differs_from_place", Some(Zone::Headland)))),
        (Reference, -194.0, 0.0, 4.0, None),
        (Reference, -230.0, 0.0, 4.0, Some(("outside", None))),
        (Open, -230.0, 0.0, 4.0, Some(("outside", None))),
    ] {
        let pit = pit(place, east, north, Some(accuracy_m));
        assert_eq!(said(&map, &pit), remark, "{place:?} {east} {north}");
    }
    let [PlaceRemark::Outside { distance_m, accuracy_m }] = map.remarks(&pit(Open, -230.0, 0.0, None))[..]
    else {
        panic!("not told that it lies outside");
    };
    assert!((distance_m - 30.0).abs() < 0.01 && (accuracy_m - UNSTATED_ACCURACY_M).abs() < 1e-12);
}

#[test]
fn what_is_not_marked_is_no_reason_to_doubt() {
    let bare = Field { outline: rectangle(400.0, 200.0), ..common::field() };
    let map = FieldMap::of(&bare);
    for place in [PlaceKind::Wheeling, PlaceKind::Headland, PlaceKind::Gateway, PlaceKind::Other] {
        assert_eq!(map.remarks(&pit(place, 0.0, 0.0, Some(1.0))), [], "{place:?}");
    }
}

#[test]
fn without_an_outline_the_marked_parts_still_hold() {
    let map = FieldMap::of(&Field { outline: Vec::new(), ..field() });
    assert!(!map.has_outline() && map.whole_m2().is_none());
    assert_eq!(map.zone_of(&pit(PlaceKind::Open, 0.0, -94.0, Some(2.0))), Some(Zone::Gateway));
    assert_eq!(map.zone_of(&pit(PlaceKind::Open, -194.0, 0.0, Some(2.0))), Some(Zone::Open));
    assert_eq!(map.locate(&position(at(-194.0, 0.0), None)).zone, None);
    let [gateway, patch] = map.areas()[..] else { panic!("{:?}", map.areas()) };
    assert!((gateway.area_m2 / (400.0 * std::f64::consts::PI) - 1.0).abs() < 1e-6);
    assert!((patch.area_m2 / 2400.0 - 1.0).abs() < 1e-6);
}

#[test]
fn a_field_of_which_nothing_is_known_gives_the_zone_of_the_place() {
    let map = FieldMap::of(&common::field());
    assert!(map.plane().is_none() && map.areas().is_empty() && map.tramlines_flat().is_empty());
    assert_eq!(map.zone_of(&pit(PlaceKind::Open, 0.0, 0.0, None)), Some(Zone::Open));
    assert_eq!(map.remarks(&pit(PlaceKind::Headland, 0.0, 0.0, None)), []);
}

#[test]
fn a_part_that_cannot_be_is_left_out() {
    let crossed = ring(&[[0.0, 0.0], [50.0, 50.0], [50.0, 0.0], [0.0, 50.0]]);
    let parts = vec![
        part(Zone::Patch, crossed),
        part(Zone::Open, circle(0.0, 0.0, 20.0)),
        part(Zone::Gateway, circle(0.0, 0.0, -3.0)),
    ];
    let map = FieldMap::of(&Field { parts, ..field() });
    assert!(map.parts_flat().is_empty());
    assert_eq!(map.areas().iter().map(|it| it.zone).collect::<Vec<_>>(), [Zone::Open, Zone::Headland]);
}

/// By hand: 400 × 200 m, a strip of 12 m; half a circle of 20 m takes its share of the strip and of open ground, the
/// patch lies in open ground; tyres of 0.5 m every 20 m press a twentieth of what is left of it.
#[test]
fn zones_hold_the_ground_reckoned_by_hand() {
    let field =
        Field { tramline_mm: Some(20_000), wheel_track_mm: Some(1_800), tyre_mm: Some(500), ..field() };
    let map = FieldMap::of(&field);
    let half_circle = 200.0 * std::f64::consts::PI;
    // The piece of the circle further than 12 m from its middle.
    let beyond = 400.0 * 0.6_f64.acos() - 12.0 * 16.0;
    let open = 376.0 * 176.0 - beyond - 2_400.0;
    let strip = 80_000.0 - 376.0 * 176.0 - (half_circle - beyond);
    for (zone, expected) in [
        (Zone::Open, open * 0.95),
        (Zone::Wheelings, open * 0.05),
        (Zone::Headland, strip),
        (Zone::Gateway, half_circle),
        (Zone::Patch, 2_400.0),
        (Zone::Whole, 80_000.0),
    ] {
        let found = map.area_m2(zone).unwrap();
        assert!((found / expected - 1.0).abs() < 1e-5, "{zone:?}: {found}, not {expected}");
    }
}

/// 200 m hold eight lines 24 m apart. The northern side is longer by the slant of the western one.
#[test]
fn tramlines_run_along_the_longest_side_and_stay_in_open_ground() {
    let outline = vec![at(-190.0, -100.0), at(200.0, -100.0), at(200.0, 100.0), at(-200.0, 100.0)];
    let field = Field { outline, tramline_mm: Some(24_000), ..field() };
    let map = FieldMap::of(&field);
    let plane = map.plane().unwrap();
    let north_m = map.outline_flat()[3][1];
    let lines = map.tramlines_flat();
    let mut rows = Vec::new();
    for line in &lines {
        assert!(line.len() == 2 && (line[0][1] - line[1][1]).abs() < 0.01, "{line:?}");
        let middle = [f64::midpoint(line[0][0], line[1][0]), f64::midpoint(line[0][1], line[1][1])];
        let from_side_m = north_m - middle[1];
        assert!(((from_side_m - 12.0) / 24.0).fract().abs() < 0.001 || from_side_m < 12.1, "{line:?}");
        rows.push((from_side_m / 24.0) as u32);
        let located = map.locate(&position(plane.place(middle), Some(0.01)));
        assert!(located.zone == Some(Zone::Open) || located.edge.is_some(), "{line:?} {located:?}");
    }
    rows.sort_unstable();
    rows.dedup();
    assert!(rows == [1, 2, 3, 4, 5, 6, 7] || rows == [0, 1, 2, 3, 4, 5, 6, 7], "{rows:?}");
    // The patch parts those that meet it.
    assert!(lines.len() > rows.len());
}

/// A field of many sides, its corners between 60 and 300 m from the middle.
fn any_outline() -> impl Strategy<Value = Vec<[f64; 2]>> {
    prop::collection::vec(60.0..300.0_f64, 3..12).prop_map(|radii| {
        let count = radii.len() as f64;
        let corner = |(number, radius_m): (usize, &f64)| {
            let angle = number as f64 / count * std::f64::consts::TAU;
            [radius_m * angle.cos(), radius_m * angle.sin()]
        };
        radii.iter().enumerate().map(corner).collect()
    })
}

fn any_part() -> impl Strategy<Value = (bool, bool, [f64; 2], f64)> {
    let middle = (-250.0..250.0_f64, -250.0..250.0_f64).prop_map(|(east, north)| [east, north]);
    (any::<bool>(), any::<bool>(), middle, 3.0..80.0_f64)
}

/// The field of corners and parts given in metres, everything drawn `scale` times as large.
fn drawn(
    outline: &[[f64; 2]],
    parts: &[(bool, bool, [f64; 2], f64)],
    headland_mm: Option<u32>,
    scale: f64,
) -> Field {
    let place = |[east, north]: [f64; 2]| at(east * scale, north * scale);
    let marked = parts.iter().map(|&(gateway, round, [east, north], size)| {
        let shape = if round {
            PartShape::Circle { middle: place([east, north]), radius_m: size * scale }
        } else {
            let corners =
                [[east, north], [east + size, north - size / 3.0], [east + size / 2.0, north + size]];
            PartShape::Ring(corners.map(place).to_vec())
        };
        part(if gateway { Zone::Gateway } else { Zone::Patch }, shape)
    });
    Field {
        outline: outline.iter().map(|&corner| place(corner)).collect(),
        headland_mm: headland_mm.map(|width| (f64::from(width) * scale) as u32),
        tramline_mm: Some(24_000),
        tyre_mm: Some(600),
        parts: marked.collect(),
        ..common::field()
    }
}

proptest! {
    #[test]
    fn zones_add_up_to_the_field(
        outline in any_outline(),
        parts in prop::collection::vec(any_part(), 0..6),
        headland_mm in prop::option::of(1_000_u32..60_000),
    ) {
        let field = drawn(&outline, &parts, headland_mm, 1.0);
        let map = FieldMap::of(&field);
        let sum: f64 = map.areas().iter().map(|it| it.area_m2).sum();
        let whole = Outline::new(&field.outline).unwrap().area_m2();
        prop_assert!((sum / whole - 1.0).abs() < 1e-6, "{} of {}", sum, whole);
        prop_assert!(map.areas().iter().all(|it| it.area_m2 > 0.0));
    }

    #[test]
    fn a_field_drawn_larger_has_zones_larger_by_the_square(
        outline in any_outline(),
        parts in prop::collection::vec(any_part(), 0..4),
        scale in 1_u32..4,
    ) {
        let scale = f64::from(scale);
        let once = FieldMap::of(&drawn(&outline, &parts, Some(12_000), 1.0));
        let larger = FieldMap::of(&drawn(&outline, &parts, Some(12_000), scale));
        for area in once.areas().into_iter().filter(|area| area.area_m2 > 1.0) {
            let found = larger.area_m2(area.zone).unwrap_or(0.0);
            prop_assert!((found - area.area_m2 * scale * scale).abs() < 1e-4 * found + 0.1, "{:?} {}", area, found);
        }
    }

    /// A worse accuracy never moves a pit from one zone into another, only back to what was said.
    #[test]
    fn a_worse_accuracy_only_takes_back(
        east in -250.0..250.0_f64,
        north in -150.0..150.0_f64,
        accuracy_m in 0.1..30.0_f64,
        worse in 1.0..10.0_f64,
    ) {
        let map = FieldMap::of(&field());
        let zone = |accuracy_m| map.zone_of(&pit(PlaceKind::Open, east, north, Some(accuracy_m)));
        let (before, after) = (zone(accuracy_m), zone(accuracy_m * worse));
        prop_assert!(after == before || after == Some(Zone::Open), "{:?} {:?}", before, after);
    }

    #[test]
    fn a_place_far_inside_stays_where_it_is(
        east in -150.0..60.0_f64,
        north in -60.0..60.0_f64,
        accuracy_m in 0.1..10.0_f64,
    ) {
        let map = FieldMap::of(&field());
        let pit = pit(PlaceKind::Open, east, north, Some(accuracy_m));
        prop_assert_eq!(map.zone_of(&pit), Some(Zone::Open));
        prop_assert_eq!(map.remarks(&pit), []);
    }

    /// Two places in different zones have an edge between them: neither is further from its own than they are apart.
    #[test]
    fn no_edge_is_overlooked(
        east in -205.0..205.0_f64,
        north in -105.0..105.0_f64,
        angle in 0.0..std::f64::consts::TAU,
        way_m in 0.1..20.0_f64,
    ) {
        let map = FieldMap::of(&field());
        let one = map.locate(&position(at(east, north), Some(way_m + 0.01)));
        let there = at(east + way_m * angle.cos(), north + way_m * angle.sin());
        let other = map.locate(&position(there, Some(1.0)));
        if let (Some(one_zone), Some(other_zone)) = (one.zone, other.zone) && one_zone != other_zone {
            let edge = one.edge.expect("an edge on the way");
            prop_assert!(edge.distance_m <= way_m + 0.01, "{:?} {}", edge, way_m);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// That no ground is in two zones shows in places drawn at random: their shares are those of the areas.
    #[test]
    fn places_fall_into_zones_as_often_as_their_areas_say(
        outline in any_outline(),
        parts in prop::collection::vec(any_part(), 0..4),
    ) {
        let field = Field { tyre_mm: None, ..drawn(&outline, &parts, Some(12_000), 1.0) };
        let map = FieldMap::of(&field);
        // Spread evenly, and in no rows that the edge of a zone could run along: the additive recurrence of the plastic
        // number (Roberts 2018, value from memory).
        let (side_m, count) = (600.0, 22_500);
        let spread = |at: u32, step: f64| ((f64::from(at) * step).fract() - 0.5) * side_m;
        let places = (0..count).map(|place| at(spread(place, 0.754_877_666_2), spread(place, 0.569_840_291_0)));
        let zones: Vec<Zone> =
            places.filter_map(|place| map.locate(&position(place, Some(0.0))).zone).collect();
        let each_m2 = side_m * side_m / f64::from(count);
        for area in map.areas() {
            let met = zones.iter().filter(|zone| **zone == area.zone).count() as f64 * each_m2;
            // The edges of a zone pass between the places.
            let slack = 0.02 * map.whole_m2().unwrap() + 200.0;
            prop_assert!((met - area.area_m2).abs() < slack, "{:?} {} {}", area.zone, met, area.area_m2);
        }
    }
}
