//! Machines, passes and what is marked on a field: some written out, and any by chance.

use super::{any_day, any_keys, any_name, any_position, any_roll, any_time, code, id, keys};
use chrono::{DateTime, NaiveDate};
use pitface_core::record::{
    AfterDig, Buried, BuriedLine, Clods, Drive, Extent, FeetSeen, LeadingTines, Lift, LineSort, Machine,
    Part, PartShape, Pass, PlatesLeft, Position, Profile, Roll, RollOutcome, RootsSeen, Smear, SpeedRange,
    Tractor, Unknown, Wings, Zone,
};
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

pub fn parts() -> Vec<Part> {
    let ring = PartShape::Ring(vec![[-4.245, 54.501], [-4.244, 54.501], [-4.244, 54.502]]);
    let circle = PartShape::Circle { middle: [-4.25, 54.5], radius_m: 12.5 };
    vec![
        Part {
            id: id(440),
            name: Some("the wet corner".into()),
            zone: Zone::Patch,
            shape: ring,
            unknown: keys("{}"),
        },
        Part { id: id(441), name: None, zone: Zone::Gateway, shape: circle, unknown: keys(r#"{"gate": 4}"#) },
    ]
}

pub fn lines() -> Vec<BuriedLine> {
    let along = vec![[-4.25, 54.502], [-4.24, 54.503]];
    vec![BuriedLine {
        id: id(442),
        kind: Buried::MoleDrain,
        along,
        depth_mm: Some(550),
        sort: Some(LineSort::BareDrain),
        unknown: keys(r#"{"laid": 1974}"#),
    }]
}

pub fn machines() -> Vec<Machine> {
    let whole = Machine {
        id: id(450),
        name: "Long legs".into(),
        legs: 3,
        spacing_mm: 750,
        foot_width_mm: 70,
        wings: Some(Wings { width_mm: 300, lift_mm: Some(60) }),
        leading: Some(LeadingTines { depth_mm: Some(200) }),
        working_width_mm: Some(2_250),
        speed: Some(SpeedRange { lo_kmh: 4.5, hi_kmh: 6.0 }),
        reach_mm: Some(500),
        tractor: Some(Tractor { power_kw: 132.0, drive: Drive::FrontAssist }),
        tractor_mass_kg: Some(7_400),
        unknown: keys(r#"{"wings": {"hard_facing": "new"}}"#),
    };
    let bare = Machine {
        id: id(451),
        wings: Some(Wings { width_mm: 280, lift_mm: None }),
        leading: Some(LeadingTines { depth_mm: None }),
        working_width_mm: None,
        speed: None,
        reach_mm: None,
        tractor: None,
        tractor_mass_kg: None,
        unknown: Unknown::new(),
        ..whole.clone()
    };
    vec![whole, bare]
}

pub fn passes() -> Vec<Pass> {
    let dig = AfterDig {
        id: id(462),
        at: Some(Position { longitude_deg: -4.241, latitude_deg: 54.501, accuracy_m: Some(2.0) }),
        dug: DateTime::parse_from_rfc3339("2026-09-23T15:04:05+02:00").ok(),
        by: Some("walker".into()),
        before: Some(id(10)),
        firm_mm: vec![380, 340, 0, 330, 375],
        slots_mm: vec![380, 365],
        profile: Some(Profile::Y),
        smear: Some(Smear::Smeared),
        lift: Some(Lift::Furrows),
        clods: Some(Clods::Large),
        subsoil_up: Some(false),
        plates: Some(PlatesLeft::None),
        feet: Some(FeetSeen::Worn),
        old_slots: Some(true),
        roots: Some(RootsSeen::NoneToJudge),
        unknown: keys(r#"{"colour": "brown"}"#),
    };
    let roll = Roll { id: id(461), depth_mm: 380, roll: RollOutcome::Crumbles, unknown: Unknown::new() };
    let whole = Pass {
        id: id(460),
        machine: Some(id(450)),
        zone: Some(Zone::Wheelings),
        extent: Some(Extent::TrialStrip),
        done: NaiveDate::from_ymd_opt(2026, 9, 22),
        tip_mm: Some(380),
        speed_kmh: Some(5.5),
        driven_on: NaiveDate::from_ymd_opt(2026, 9, 22),
        remark: Some("third gear, shallow at the hedge".into()),
        rolls: vec![roll],
        after_digs: vec![dig, AfterDig::new(id(463))],
        unknown: keys(r#"{"wind": "west"}"#),
    };
    vec![whole, Pass::new(id(464))]
}

pub fn any_machine() -> impl Strategy<Value = Machine> {
    let widths = (1_u32..=40, 100_u32..=3_000, 10_u32..=500);
    let parts = (of((500_u32..=1_500, of(1_u32..=300))), of(of(20_u32..=900)));
    let speed = of((0.1..=10.0_f64, 0.0..=10.0_f64));
    let more = (of(100_u32..=20_000), of(100_u32..=1_200), of((5.0..=800.0_f64, select(Drive::ALL))));
    (any_name(), widths, parts, speed, more, any_keys()).prop_map(
        |(name, (legs, spacing_mm, foot_width_mm), (wings, leading), speed, more, unknown)| {
            let (working_width_mm, reach_mm, tractor) = more;
            Machine {
                id: id(0),
                name,
                legs,
                spacing_mm,
                foot_width_mm,
                wings: wings.map(|(width_mm, lift_mm)| Wings { width_mm, lift_mm }),
                leading: leading.map(|depth_mm| LeadingTines { depth_mm }),
                working_width_mm,
                speed: speed.map(|(lo_kmh, more)| SpeedRange { lo_kmh, hi_kmh: lo_kmh + more }),
                reach_mm,
                tractor: tractor.map(|(power_kw, drive)| Tractor { power_kw, drive }),
                tractor_mass_kg: tractor.map(|(power_kw, _)| 500 + power_kw as u32),
                unknown,
            }
        },
    )
}

fn any_id() -> impl Strategy<Value = pitface_core::record::RecordId> {
    any::<u64>().prop_map(id)
}

pub fn any_pass() -> impl Strategy<Value = Pass> {
    let said = (of(any_id()), code(Zone::ALL), code(Extent::ALL), any_day(), of(0_u64..1_000));
    let set = (of(any::<u32>()), of(0.01..=20.0_f64));
    let lists = (vec(any_roll(), 0..3), vec(any_after_dig(), 0..3));
    (said, set, lists, any_keys()).prop_map(|(said, (tip_mm, speed_kmh), (rolls, after_digs), unknown)| {
        let (machine, zone, extent, done, later) = said;
        // Without a day of the pass any day will do.
        let after = done.or_else(|| NaiveDate::from_ymd_opt(2026, 9, 22));
        let driven_on =
            after.zip(later).and_then(|(day, later)| day.checked_add_days(chrono::Days::new(later)));
        Pass {
            id: id(0),
            machine,
            zone,
            extent,
            done,
            tip_mm,
            speed_kmh,
            driven_on,
            remark: None,
            rolls,
            after_digs,
            unknown,
        }
    })
}

pub fn any_after_dig() -> impl Strategy<Value = AfterDig> {
    let head = (of(any_position()), of(any_time()), of(any::<String>()), of(any_id()));
    let readings = (vec(any::<u32>(), 0..6), vec(any::<u32>(), 0..4));
    let seen = (code(Profile::ALL), code(Smear::ALL), code(Lift::ALL), code(Clods::ALL));
    let more = (of(any::<bool>()), code(PlatesLeft::ALL), code(FeetSeen::ALL), of(any::<bool>()));
    (head, readings, seen, more, code(RootsSeen::ALL), any_keys()).prop_map(
        |((at, dug, by, before), (firm_mm, slots_mm), seen, more, roots, unknown)| {
            let (profile, smear, lift, clods) = seen;
            let (subsoil_up, plates, feet, old_slots) = more;
            AfterDig {
                id: id(0),
                at,
                dug,
                by,
                before,
                firm_mm,
                slots_mm,
                profile,
                smear,
                lift,
                clods,
                subsoil_up,
                plates,
                feet,
                old_slots,
                roots,
                unknown,
            }
        },
    )
}

fn any_places() -> impl Strategy<Value = Vec<[f64; 2]>> {
    vec((-180.0..=180.0, -90.0..=90.0).prop_map(|(longitude, latitude)| [longitude, latitude]), 0..5)
}

pub fn any_part() -> impl Strategy<Value = Part> {
    let circle =
        (-180.0..=180.0, -90.0..=90.0, 0.01..=500.0_f64).prop_map(|(longitude, latitude, radius_m)| {
            PartShape::Circle { middle: [longitude, latitude], radius_m }
        });
    let shape = prop_oneof![any_places().prop_map(PartShape::Ring), circle];
    (of(any::<String>()), select(vec![Zone::Gateway, Zone::Patch]), shape, any_keys())
        .prop_map(|(name, zone, shape, unknown)| Part { id: id(0), name, zone, shape, unknown })
}

pub fn any_line() -> impl Strategy<Value = BuriedLine> {
    (select(Buried::ALL), any_places(), of(any::<u32>()), of(select(LineSort::ALL)), any_keys()).prop_map(
        |(kind, along, depth_mm, sort, unknown)| BuriedLine {
            id: id(0),
            kind,
            along,
            depth_mm,
            sort,
            unknown,
        },
    )
}
