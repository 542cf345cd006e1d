//! The ground of a field for its next pit, taken from its notes.

use crate::advice_fixture;

use advice_fixture::{id, notes, pan_pit, reference, sound_pit};
use pitface_core::advice::sampling::{At, Count, DIG_CLEARANCE_M, Ground, Next, Plan, ZoneGround, next_pit};
use pitface_core::answer::FieldAnswer;
use pitface_core::place::{FieldMap, Plane, walk};
use pitface_core::reading::read_field;
use pitface_core::record::{
    AfterDig, Buried, BuriedLine, Field, FieldNotes, Part, PartShape, Pass, Pit, PlaceKind, Position,
    Unknown, Zone,
};

const MIDDLE: [f64; 2] = [2.5, 54.5];

fn at(east_m: f64, north_m: f64) -> [f64; 2] {
    Plane::at(MIDDLE).place([east_m, north_m])
}

fn position(east_m: f64, north_m: f64) -> Position {
    let [longitude_deg, latitude_deg] = at(east_m, north_m);
    Position { longitude_deg, latitude_deg, accuracy_m: Some(3.0) }
}

fn part(number: u64, zone: Zone, shape: PartShape) -> Part {
    Part { id: id(number), name: None, zone, shape, unknown: Unknown::new() }
}

fn circle(east_m: f64, north_m: f64, radius_m: f64) -> PartShape {
    PartShape::Circle { middle: at(east_m, north_m), radius_m }
}

/// 400 m by 200 m with a headland of 12 m, tramlines, a gateway in the south and two patches.
fn mapped(pits: Vec<Pit>) -> FieldNotes {
    let mut notes = notes(pits);
    notes.field = Field {
        outline: vec![at(-200.0, -100.0), at(200.0, -100.0), at(200.0, 100.0), at(-200.0, 100.0)],
        headland_mm: Some(12_000),
        tramline_mm: Some(24_000),
        wheel_track_mm: Some(1_800),
        tyre_mm: Some(480),
        parts: vec![
            part(40, Zone::Gateway, circle(0.0, -100.0, 15.0)),
            part(41, Zone::Patch, circle(-120.0, 0.0, 25.0)),
            part(42, Zone::Patch, circle(120.0, 0.0, 25.0)),
        ],
        lines: vec![BuriedLine {
            id: id(43),
            kind: Buried::Drain,
            along: vec![at(-200.0, 50.0), at(200.0, 50.0)],
            depth_mm: Some(800),
            sort: None,
            unknown: Unknown::new(),
        }],
        ..notes.field
    };
    notes
}

fn ground(notes: &FieldNotes) -> Ground {
    Ground::of(notes, &read_field(notes))
}

fn zone(ground: &Ground, sought: Zone) -> &ZoneGround {
    ground.zones.iter().find(|its| its.zone == sought).expect("the zone is there")
}

#[test]
fn zones_without_a_pit_are_there_with_their_ground() {
    let notes = mapped(vec![reference(), sound_pit(1, PlaceKind::Open)]);
    let ground = ground(&notes);
    let zones: Vec<_> = ground.zones.iter().map(|its| (its.zone, its.count, its.rings.len())).collect();
    let none = Count::new(0, 0);
    assert_eq!(
        zones,
        [
            (Zone::Open, Count::new(1, 0), 0),
            (Zone::Headland, none, 0),
            (Zone::Wheelings, none, 0),
            (Zone::Gateway, none, 1),
            (Zone::Patch, none, 2),
        ]
    );
    let sum: f64 = ground.zones.iter().filter_map(|its| its.area_ha).sum();
    assert!((sum - 8.0).abs() < 1e-4, "{sum}");
    // 15 m around a place on the edge: half of it lies in the field.
    let gateway = zone(&ground, Zone::Gateway).area_ha.unwrap();
    assert!((gateway - 0.5 * 225.0 * std::f64::consts::PI / 10_000.0).abs() < 1e-6);
}

#[test]
fn a_pit_noted_as_open_counts_where_it_lies() {
    let moved = Pit { at: Some(position(-194.0, 0.0)), ..pan_pit(1, PlaceKind::Open, 320) };
    let ground = ground(&mapped(vec![reference(), moved]));
    assert_eq!(zone(&ground, Zone::Headland).count, Count::new(1, 1));
    assert_eq!(zone(&ground, Zone::Open).count, Count::new(0, 0));
}

#[test]
fn dug_places_and_buried_lines_come_from_the_notes() {
    let pit = Pit { at: Some(position(10.0, 20.0)), ..sound_pit(1, PlaceKind::Open) };
    let mut notes = mapped(vec![pit, sound_pit(2, PlaceKind::Open)]);
    let dig = AfterDig { at: Some(position(30.0, 40.0)), ..AfterDig::new(id(51)) };
    notes.passes = vec![Pass { after_digs: vec![dig, AfterDig::new(id(52))], ..Pass::new(id(50)) }];
    let ground = ground(&notes);
    assert_eq!(ground.dug, [at(10.0, 20.0), at(30.0, 40.0)]);
    assert_eq!(ground.buried, [vec![at(-200.0, 50.0), at(200.0, 50.0)]]);
    assert!((ground.clearance_m - DIG_CLEARANCE_M).abs() < 1e-12 && !ground.reference_dug);
    assert_eq!(next_pit(&ground, &Plan::default()), Ok(Next::Reference));
}

#[test]
fn without_a_map_the_zones_are_those_of_the_pits_and_open_ground() {
    let bare = ground(&notes(vec![reference(), pan_pit(1, PlaceKind::Headland, 320)]));
    let zones: Vec<_> = bare.zones.iter().map(|its| (its.zone, its.area_ha)).collect();
    assert_eq!(zones, [(Zone::Open, None), (Zone::Headland, None)]);
    assert!(bare.reference_dug && bare.outline.is_empty());
    let none = ground(&notes(Vec::new()));
    assert_eq!(none.zones.len(), 1);
}

/// Dug as proposed, each pit stands for the zone it was proposed in, off the drain, until nothing is left to settle.
#[test]
fn every_place_proposed_lies_in_its_zone_and_off_the_drain() {
    let mut notes = mapped(vec![reference()]);
    let map = FieldMap::of(&notes.field);
    let flat = Plane::at(MIDDLE);
    let mut zones = Vec::new();
    for number in 1..100 {
        let Next::Pit { zone, at: place, .. } = next_pit(&ground(&notes), &Plan::default()).unwrap() else {
            break;
        };
        let At::Place(place) = place else { panic!("{zone:?} {place:?}") };
        let position = Position { longitude_deg: place[0], latitude_deg: place[1], accuracy_m: Some(0.001) };
        let on_map = if zone == Zone::Wheelings { Zone::Open } else { zone };
        assert_eq!(map.locate(&position).zone, Some(on_map), "{place:?}");
        assert!((flat.flat(place)[1] - 50.0).abs() > DIG_CLEARANCE_M);
        for dug in notes.pits.iter().filter_map(|pit| pit.at) {
            assert!(walk([dug.longitude_deg, dug.latitude_deg], place).distance_m > 1.0);
        }
        let kind = match zone {
            Zone::Wheelings => PlaceKind::Wheeling,
            Zone::Gateway => PlaceKind::Gateway,
            _ => PlaceKind::Open,
        };
        zones.push(zone);
        notes.pits.push(Pit { at: Some(position), ..sound_pit(number, kind) });
    }
    for zone in [Zone::Open, Zone::Headland, Zone::Wheelings] {
        assert!(zones.contains(&zone), "{zones:?}");
    }
    assert!(zones.len() < 60, "{zones:?}");
}

/// Both patches lie open to a pit; with one dug, the next goes to the other.
#[test]
fn the_second_pit_of_a_zone_goes_to_its_other_part() {
    let mut ground = ground(&mapped(vec![reference()]));
    ground.zones.retain(|its| its.zone == Zone::Patch);
    ground.dug = vec![at(-120.0, 0.0)];
    let Ok(Next::Pit { at: At::Place(place), .. }) = next_pit(&ground, &Plan::default()) else {
        panic!("nothing proposed");
    };
    assert!(walk(place, at(120.0, 0.0)).distance_m < 2.0, "{place:?}");
}

/// The map's areas count: the same pits settle a small piece sooner than a large one.
#[test]
fn another_pit_pays_where_the_map_gives_it_ground() {
    let asked = |notes: &FieldNotes| match FieldAnswer::of(notes.clone(), None).next().unwrap().next {
        Next::Pit { zone, .. } => Some(zone),
        _ => None,
    };
    let square = |half_m: f64| {
        let mut notes = mapped(vec![reference(), sound_pit(1, PlaceKind::Open)]);
        notes.field.parts.clear();
        (notes.field.headland_mm, notes.field.tramline_mm) = (None, None);
        notes.field.outline =
            vec![at(-half_m, -half_m), at(half_m, -half_m), at(half_m, half_m), at(-half_m, half_m)];
        notes
    };
    assert_eq!(asked(&square(250.0)), Some(Zone::Open));
    assert_eq!(asked(&square(20.0)), None);
}
