//! Lines of which it is known what they are: how near a tip may come, over which strip the legs are lifted, and what needs
//! its owner's leave. The figures stand in `advice::KNOWN` with their sources.

use crate::advice_fixture;

use advice_fixture::{fit_to_loosen, id, open, says};
use chrono::NaiveDate;
use pitface_core::advice::{Caution, Obstacle, UNASKED_DEEPEST_MM, What, ZoneCall};
use pitface_core::record::{Buried, BuriedLine, Call, Field, FieldNotes, LineSort, Unknown};

/// A line from west to east, `north_m` metres north of the field's southern edge.
fn line(sort: LineSort, depth_mm: Option<u32>, north_m: f64) -> BuriedLine {
    let latitude = 54.5 + north_m / 111_300.0;
    BuriedLine {
        id: id(70),
        kind: sort.kind(),
        along: vec![[2.499, latitude], [2.506, latitude]],
        depth_mm,
        sort: Some(sort),
        unknown: Unknown::new(),
    }
}

/// A field of some 300 by 450 m that is fit to loosen at 305 to 330 mm, with lines.
fn with(lines: Vec<BuriedLine>, set: impl Fn(&mut Field)) -> FieldNotes {
    let mut notes = fit_to_loosen();
    notes.field.outline = vec![[2.5, 54.5], [2.505, 54.5], [2.505, 54.504], [2.5, 54.504]];
    notes.field.lines = lines;
    set(&mut notes.field);
    notes
}

fn over(sort: LineSort, depth_mm: Option<u32>) -> ZoneCall {
    open(&with(vec![line(sort, depth_mm, 200.0)], |_| {}))
}

fn leave(field: &mut Field) {
    field.services_asked = Some("the owner".into());
    field.services_asked_on = NaiveDate::from_ymd_opt(2025, 3, 1);
    field.services_leave = Some(true);
}

/// 150 mm above a pipe in stone, 200 mm above one without (our judgement); of unknown depth both are taken at 500 mm.
#[test]
fn a_drain_in_stone_lets_the_tip_nearer_than_a_bare_one() {
    for (sort, above_mm) in [(LineSort::DrainInStone, 150), (LineSort::BareDrain, 200)] {
        let call = |depth_mm| over(sort, Some(depth_mm)).call;
        assert_eq!(call(304 + above_mm), Call::AskSpecialist, "{sort:?}");
        assert_eq!(call(305 + above_mm), Call::Loosen, "{sort:?}");
        assert_eq!(over(sort, Some(315 + above_mm)).tip.unwrap().hi_mm, 315, "the deep end is drawn up");
    }
    assert_eq!(over(LineSort::DrainInStone, None).call, Call::Loosen, "305 mm, and 350 would do");
    let bare = over(LineSort::BareDrain, None);
    assert_eq!(bare.reasons[0].what, What::DepthUnknown { obstacle: Obstacle::BareDrains });
}

/// 600 mm of clear soil above a fuel pipe (British Pipeline Agency), and 30 m on each side (Canada Energy Regulator).
#[test]
fn over_gas_oil_and_power_nothing_is_loosened_without_leave() {
    for (sort, obstacle) in
        [(LineSort::GasOrOil, Obstacle::GasOrOil), (LineSort::PowerCable, Obstacle::PowerCables)]
    {
        let needs = What::NeedsLeave { obstacle, within_m: 30 };
        let at = |depth_mm, north_m, set: &dyn Fn(&mut Field)| {
            open(&with(vec![line(sort, depth_mm, north_m)], |field| set(field)))
        };
        let none = at(Some(2_000), 200.0, &|_| {});
        assert_eq!((none.call, &none.reasons[0].what), (Call::AskSpecialist, &needs), "however deep it lies");
        assert_eq!(at(None, -29.0, &|_| {}).reasons[0].what, needs, "29 m outside");
        assert_eq!(at(None, -31.0, &|_| {}).call, Call::Loosen, "31 m outside");
        assert_eq!(at(Some(904), 200.0, &leave).call, Call::AskSpecialist);
        assert_eq!(at(Some(905), 200.0, &leave).call, Call::Loosen);
        let unknown = at(None, -29.0, &leave);
        assert_eq!(unknown.reasons[0].what, What::DepthUnknown { obstacle }, "leave tells no depth");
        let refused = |field: &mut Field| {
            leave(field);
            field.services_leave = Some(false);
        };
        assert_eq!(at(Some(2_000), 200.0, &refused).call, Call::AskSpecialist);
    }
}

/// 300 mm above; else the legs are lifted, 2 m on each side where the depth was measured and 5 m where not (our judgement).
#[test]
fn over_a_farm_water_pipe_or_telephone_line_the_legs_are_lifted() {
    for (sort, obstacle) in
        [(LineSort::FarmWater, Obstacle::FarmWater), (LineSort::Telephone, Obstacle::Telephone)]
    {
        let strip = |side_m| What::LiftOut { obstacle, side_m };
        for (depth_mm, side_m) in [(None, 5), (Some(604), 2)] {
            let call = over(sort, depth_mm);
            assert_eq!(call.call, Call::Loosen, "{sort:?}");
            assert!(says(&call, |what| *what == strip(side_m)), "{depth_mm:?}: {:?}", call.reasons);
            assert!(call.cautions_now().contains(&Caution::LiftOut));
        }
        let deep = over(sort, Some(605));
        assert!(!says(&deep, |what| matches!(what, What::LiftOut { .. })), "{:?}", deep.reasons);
        assert_eq!((deep.tip.unwrap().hi_mm, deep.cautions.contains(&Caution::LiftOut)), (305, false));
        let beside = |north_m| open(&with(vec![line(sort, None, north_m)], |_| {}));
        assert!(says(&beside(-4.0), |what| *what == strip(5)), "4 m outside");
        assert!(!says(&beside(-6.0), |what| *what == strip(5)), "6 m outside");
    }
    let two = vec![line(LineSort::FarmWater, Some(400), 100.0), line(LineSort::FarmWater, None, 200.0)];
    let call = open(&with(two, |_| {}));
    let strips = call.reasons.iter().filter(|why| matches!(why.what, What::LiftOut { .. }));
    assert_eq!(strips.count(), 1, "of two strips the wider is told, once");
    assert!(says(&call, |what| *what == What::LiftOut { obstacle: Obstacle::FarmWater, side_m: 5 }));
}

/// Only as the water company says; 5 m until it has (our judgement).
#[test]
fn a_water_main_is_worked_over_with_leave_alone() {
    let main = |depth_mm, set: &dyn Fn(&mut Field)| {
        open(&with(vec![line(LineSort::WaterMain, depth_mm, 200.0)], |field| set(field)))
    };
    let strip = What::LiftOut { obstacle: Obstacle::WaterMains, side_m: 5 };
    for depth_mm in [None, Some(3_000)] {
        assert!(says(&main(depth_mm, &|_| {}), |what| *what == strip), "however deep it lies");
    }
    let given = main(Some(905), &leave);
    assert!(given.call == Call::Loosen && !says(&given, |what| *what == strip), "{:?}", given.reasons);
    assert_eq!(main(Some(904), &leave).call, Call::AskSpecialist);
    assert_eq!(main(None, &leave).call, Call::AskSpecialist);
}

/// A sort that does not go with the kind says nothing: the rule of the kind holds.
#[test]
fn a_stray_sort_leaves_the_rule_of_the_kind() {
    let mut stray = line(LineSort::FarmWater, Some(700), 200.0);
    stray.kind = Buried::Drain;
    assert_eq!(
        open(&with(vec![stray.clone()], |_| {})).call,
        Call::Loosen,
        "700 mm is deep enough for a drain"
    );
    stray.depth_mm = Some(500);
    let call = open(&with(vec![stray], |_| {}));
    assert!(matches!(call.reasons[0].what, What::TooNear { obstacle: Obstacle::Drains, .. }), "{call:?}");
}

/// 300 mm is the strictest depth published for ordinary farm work over pipes (Gas Networks Ireland, First Gas).
#[test]
fn where_nobody_was_asked_a_deeper_tip_goes_with_a_caution_that_leads() {
    let asked = |set: &dyn Fn(&mut Field)| open(&with(Vec::new(), |field| set(field)));
    let nobody = asked(&|_| {});
    assert!(nobody.tip.unwrap().hi_mm > UNASKED_DEEPEST_MM);
    assert_eq!((nobody.call, nobody.cautions[0]), (Call::Loosen, Caution::NobodyAsked), "no gate");
    let said = |field: &mut Field| {
        leave(field);
        field.services_leave = None;
    };
    let call = asked(&said);
    assert!(!call.cautions.contains(&Caution::NobodyAsked) && !call.cautions.contains(&Caution::AskAnew));
    let undated = asked(&|field: &mut Field| field.services_asked = Some("the owner".into()));
    assert_eq!(undated.cautions[0], Caution::AskAnew);
    let shallow = asked(&|field: &mut Field| field.drains_mm = Some(500));
    assert_eq!(shallow.call, Call::AskSpecialist);
    assert!(!shallow.cautions.contains(&Caution::NobodyAsked), "nothing is loosened");
}

/// What bears on the machine comes before what bears on a hole when it goes in, and after it when a hole is dug.
#[test]
fn cautions_that_bear_on_what_is_done_now_come_first() {
    let loosen = open(&fit_to_loosen());
    let now = loosen.cautions_now();
    assert!(now.contains(&Caution::MachineStopped) && !now.contains(&Caution::KnifeAway), "{now:?}");
    assert!(loosen.cautions.contains(&Caution::KnifeAway));
    let mut unread = fit_to_loosen();
    unread.pits.remove(0);
    let again = open(&unread);
    assert_eq!(again.call, Call::DigAgain);
    assert!(again.cautions_now().starts_with(&[Caution::AskBeforeDigging, Caution::FillHole]), "{again:?}");
    for call in [&loosen, &again] {
        let mut once = call.cautions.clone();
        once.sort();
        once.dedup();
        assert_eq!(once.len(), call.cautions.len());
    }
}
