//! Machines, passes, after-digs, parts and lines through the notes file and back, and how passes refer to others.

use crate::notes_support;

use chrono::{DateTime, NaiveDate};
use notes_support::{counting_ids, read};
use pitface_core::harmless::typed_name;
use pitface_core::record::{
    AfterDig, Buried, BuriedLine, Clods, Drive, Extent, FeetSeen, Field, FieldNotes, LeadingTines, Lift,
    LineSort, Machine, Part, PartShape, Pass, Pit, PlaceKind, PlatesLeft, Position, Profile, RecordId, Roll,
    RollOutcome, RootsSeen, Smear, SpeedRange, Tractor, Unknown, Wings, Zone, notes,
};
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

fn id(number: u64) -> RecordId {
    RecordId::new(1_000_000 + number, [7; 10])
}

fn keys() -> impl Strategy<Value = Unknown> {
    of(any::<i64>())
        .prop_map(|value| value.map(|value| ("of_another".into(), value.into())).into_iter().collect())
}

/// Places on the estate, so that none lies far away.
fn spot() -> impl Strategy<Value = [f64; 2]> {
    (2.5..2.6, 54.5..54.6).prop_map(|(longitude, latitude)| [longitude, latitude])
}

fn machine(number: u64) -> impl Strategy<Value = Machine> {
    let width = (1_u32..=40, 100_u32..=3_000, 10_u32..=500);
    let wings = of((500_u32..=1_500, of(1_u32..=300)))
        .prop_map(|wings| wings.map(|(width_mm, lift_mm)| Wings { width_mm, lift_mm }));
    let leading = of(of(20_u32..=900)).prop_map(|leading| leading.map(|depth_mm| LeadingTines { depth_mm }));
    let speed = of((0.1..=10.0_f64, 0.0..=10.0_f64))
        .prop_map(|speed| speed.map(|(lo_kmh, more)| SpeedRange { lo_kmh, hi_kmh: lo_kmh + more }));
    let tractor = of((5.0..=800.0_f64, select(Drive::ALL)))
        .prop_map(|tractor| tractor.map(|(power_kw, drive)| Tractor { power_kw, drive }));
    // Few names, so that some stand twice, and one that is an id.
    let name = select(vec!["Long legs".to_owned(), " Single ".into(), "Löffel".into(), id(100).to_string()]);
    let more = (of(100_u32..=20_000), of(100_u32..=1_200));
    (name, width, wings, leading, speed, tractor, more, keys()).prop_map(
        move |(name, (legs, spacing_mm, foot_width_mm), wings, leading, speed, tractor, more, unknown)| {
            Machine {
                id: id(number),
                name,
                legs,
                spacing_mm,
                foot_width_mm,
                wings,
                leading,
                working_width_mm: more.0,
                speed,
                reach_mm: more.1,
                tractor,
                tractor_mass_kg: tractor
                    .and_then(|tractor: Tractor| (tractor.power_kw > 60.0).then_some(7_400)),
                unknown,
            }
        },
    )
}

fn after_dig() -> impl Strategy<Value = AfterDig> {
    let at = of((spot(), of(0.1..50.0_f64))).prop_map(|at| {
        at.map(|([longitude_deg, latitude_deg], accuracy_m)| Position {
            longitude_deg,
            latitude_deg,
            accuracy_m,
        })
    });
    let readings = prop_oneof![Just(Vec::new()), vec(60_u32..=1_500, 3..12)];
    let first =
        (at, of(0..2_000_000_000_i64), of(name()), of(1_u64..6), readings, vec(100_u32..=1_200, 0..5));
    let seen = (
        of(select(Profile::ALL)),
        of(select(Smear::ALL)),
        of(select(Lift::ALL)),
        of(select(Clods::ALL)),
        of(select(PlatesLeft::ALL)),
        of(select(FeetSeen::ALL)),
        of(select(RootsSeen::ALL)),
    );
    (first, seen, of(any::<bool>()), of(any::<bool>()), keys()).prop_map(
        |((at, dug, by, before, firm_mm, slots_mm), seen, subsoil_up, old_slots, unknown)| {
            let (profile, smear, lift, clods, plates, feet, roots) = seen;
            let dug =
                dug.and_then(|seconds| DateTime::from_timestamp(seconds, 0)).map(|dug| dug.fixed_offset());
            AfterDig {
                at,
                dug,
                by,
                before: before.map(id),
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
                ..AfterDig::new(id(0))
            }
        },
    )
}

fn pass() -> impl Strategy<Value = Pass> {
    let day = |days: u64| NaiveDate::from_ymd_opt(2025, 9, 1).map(|day| day + chrono::Days::new(days));
    let days = of((0_u64..400, of(0_u64..400)));
    let set = (of(100_u32..=1_200), of(0.1..=20.0_f64));
    let rolls = vec((0_u32..=3_000, select(RollOutcome::ALL)), 0..3);
    let codes = (of(select(Zone::ALL)), of(select(Extent::ALL)));
    (of(100_u64..105), codes, days, set, rolls, vec(after_dig(), 0..4), keys()).prop_map(
        move |(machine, (zone, extent), days, (tip_mm, speed_kmh), rolls, after_digs, unknown)| Pass {
            machine: machine.map(id),
            zone,
            extent,
            done: days.and_then(|(done, _)| day(done)),
            tip_mm,
            speed_kmh,
            driven_on: days.and_then(|(done, later)| day(done + later?)),
            rolls: rolls
                .into_iter()
                .map(|(depth_mm, roll)| Roll { id: id(0), depth_mm, roll, unknown: Unknown::new() })
                .collect(),
            after_digs,
            unknown,
            ..Pass::new(id(0))
        },
    )
}

/// A name as one can be made: what a reader refuses is no name.
fn name() -> impl Strategy<Value = String> {
    "\\PC*\\S\\PC*".prop_map(|name| typed_name(&name)).prop_filter("empty", |name| !name.is_empty())
}

fn part() -> impl Strategy<Value = Part> {
    let ring = (spot(), 0.0001..0.01_f64).prop_map(|([x, y], size)| {
        PartShape::Ring(vec![[x, y], [x + size, y], [x + size, y + size], [x, y + 2.0 * size]])
    });
    let circle =
        (spot(), 0.1..=500.0_f64).prop_map(|(middle, radius_m)| PartShape::Circle { middle, radius_m });
    let zone = select(vec![Zone::Gateway, Zone::Patch]);
    (of(name()), zone, prop_oneof![ring, circle], keys()).prop_map(|(name, zone, shape, unknown)| Part {
        id: id(0),
        name,
        zone,
        shape,
        unknown,
    })
}

fn line() -> impl Strategy<Value = BuriedLine> {
    (select(Buried::ALL), vec(spot(), 2..6), of(100_u32..=1_000), of(select(LineSort::ALL)), keys()).prop_map(
        |(kind, along, depth_mm, sort, unknown)| {
            let sort = sort.filter(|sort| sort.kind() == kind);
            BuriedLine { id: id(0), kind, along, depth_mm, sort, unknown }
        },
    )
}

prop_compose! {
    fn notes_with_passes()(
        machines in (100_u64..104).map(machine).collect::<Vec<_>>(),
        fewer in 0_usize..=4,
        mut passes in vec(pass(), 0..4),
        mut parts in vec(part(), 0..3),
        mut lines in vec(line(), 0..3),
        pits in 0_u64..5,
    ) -> FieldNotes {
        let mut last = 200;
        let mut next = || {
            last += 1;
            id(last)
        };
        for pass in &mut passes {
            pass.id = next();
            pass.rolls.iter_mut().for_each(|roll| roll.id = next());
            pass.after_digs.iter_mut().for_each(|dig| dig.id = next());
        }
        for own in parts.iter_mut().map(|part| &mut part.id).chain(lines.iter_mut().map(|line| &mut line.id)) {
            *own = next();
        }
        let field = Field {
            outline: vec![[2.5, 54.5], [2.506, 54.5], [2.506, 54.504]],
            parts,
            lines,
            ..Field::new(id(0), "Long Sedge")
        };
        let pits = (1..=pits).map(|number| Pit::new(id(number), PlaceKind::Open)).collect();
        let machines = machines.into_iter().take(fewer).collect();
        FieldNotes { machines, passes, ..FieldNotes::new(field, pits) }
    }
}

proptest! {
    #[test]
    fn whatever_was_noted_of_machines_and_passes_comes_back(notes in notes_with_passes()) {
        let written = notes::write(&notes);
        let again = read(&written);
        prop_assert_eq!(&again.notes, &notes);
        prop_assert_eq!(notes::write(&again.notes), written);
    }
}

const TWO: &str = r#"{"pitface": 1, "field": {"name": "Long Sedge"}, "pits": [{"place": "open"}, {"place": "reference"}],
    "machines": [{"name": "Long legs", "legs": 3, "spacing_mm": 750, "foot_width_mm": 70, "leading": {"points": "new"}},
                 {"name": "Single", "legs": 1, "spacing_mm": 900, "foot_width_mm": 60}],
    "passes": [{"machine": " Single", "after_digs": [{"before": 2}]}]}"#;

#[test]
fn a_pass_finds_its_machine_by_name_and_the_pit_before_by_number() {
    let notes = read(TWO).notes;
    assert_eq!(notes.passes[0].machine, Some(notes.machines[1].id));
    assert_eq!(notes.passes[0].after_digs[0].before, Some(notes.pits[1].id));
    let written = notes::write(&notes);
    assert!(written.contains(r#""machine": "Single""#) && written.contains(r#""before": 2"#), "{written}");
}

#[test]
fn what_has_no_name_or_number_of_its_own_is_written_by_id() {
    let mut notes = read(TWO).notes;
    notes.machines[0].name = "Single".into();
    notes.pits.pop();
    let (machine, pit) = (notes.machines[1].id, notes.passes[0].after_digs[0].before.unwrap());
    let written = notes::write(&notes);
    assert!(written.contains(&format!(r#""machine": "{machine}""#)), "{written}");
    assert!(written.contains(&format!(r#""before": "{pit}""#)), "{written}");
    assert_eq!(read(&written).notes, notes);
    // The name alone does not tell which of the two is meant.
    let by_name = written.replace(&format!(r#""machine": "{machine}""#), r#""machine": "Single""#);
    let faults = notes::read(&by_name, &mut counting_ids()).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert_eq!(
        (faults[0].at.as_str(), faults[0].todo.as_str()),
        ("passes[0].machine", "write the id of the one that is meant")
    );
}

#[test]
fn unknown_keys_within_a_part_of_a_machine_are_kept_while_the_part_is_there() {
    let read_first = read(TWO);
    assert_eq!(read_first.unknown_keys, ["machines[0].leading.points"]);
    let mut notes = read_first.notes;
    assert!(notes::write(&notes).contains(r#""leading": {"points": "new"}"#));
    notes.machines[0].leading = None;
    assert!(!notes::write(&notes).contains("leading"));
}
