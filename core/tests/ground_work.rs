//! Working only the harmed ground: hectares, hours, fuel, money, and what is saved.

use crate::advice_fixture;

use advice_fixture::{calls, fit_to_loosen, id, pan_pit, roll, sound_pit};
use pitface_core::advice::ground::{Areas, GroundWork, ground_work};
use pitface_core::advice::machine::{Model, Price, Terms, WhyNot, set, work_in_zone};
use pitface_core::place::ZoneArea;
use pitface_core::record::{
    Call, Drive, FieldNotes, Machine, PlaceKind, RollOutcome, Tractor, Unknown, Wings, Zone,
};
use proptest::prelude::*;

fn machine() -> Machine {
    Machine {
        id: id(50),
        name: "three legs".into(),
        legs: 3,
        spacing_mm: 600,
        foot_width_mm: 80,
        wings: Some(Wings { width_mm: 300, lift_mm: Some(60) }),
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm: None,
        tractor: Some(Tractor { power_kw: 130.0, drive: Drive::FrontAssist }),
        tractor_mass_kg: None,
        unknown: Unknown::new(),
    }
}

/// A harmed headland beside sound open ground.
fn harmed_headland() -> FieldNotes {
    let mut notes = fit_to_loosen();
    let rolls = [roll(0, RollOutcome::ShortLengths), roll(310, RollOutcome::ShortLengths)];
    notes.pits.truncate(1);
    for number in 1..=3 {
        let mut pit = pan_pit(number, PlaceKind::Headland, 280);
        pit.rolls = rolls.to_vec();
        notes.pits.extend([pit, sound_pit(number + 10, PlaceKind::Open)]);
    }
    notes
}

fn areas(open_ha: f64, headland_ha: f64) -> Areas {
    let area = |zone, ha: f64| ZoneArea { zone, area_m2: ha * 1e4 };
    let zones = vec![area(Zone::Open, open_ha), area(Zone::Headland, headland_ha)];
    Areas { whole_m2: Some((open_ha + headland_ha) * 1e4), zones }
}

fn paid_by_area() -> Terms {
    // Contractor's rate of the NAAC guide 2025-26, as reported by Farmers Weekly.
    Terms { price: Some(Price::PerHectare { cost: 79.47 }), ..Terms::default() }
}

fn worked(notes: &FieldNotes, areas: &Areas, machine: Option<&Machine>) -> GroundWork {
    ground_work(&notes.field, &calls(notes), areas, machine, &paid_by_area()).unwrap()
}

#[test]
fn only_the_harmed_headland_is_worked_and_paid_for() {
    let notes = harmed_headland();
    let work = worked(&notes, &areas(10.0, 2.0), Some(&machine()));
    let called: Vec<_> = work.zones.iter().map(|zone| (zone.zone, zone.call)).collect();
    assert_eq!(called, [(Zone::Open, Some(Call::LeaveIt)), (Zone::Headland, Some(Call::Loosen))]);
    let [harmed, all, saved] = [work.harmed, work.everything, work.saved].map(Option::unwrap);
    assert!((harmed.area_ha - 2.0).abs() < 1e-9 && (all.area_ha - 12.0).abs() < 1e-9);
    assert!((saved.area_ha - 10.0).abs() < 1e-9);
    assert!((saved.cost.value().unwrap().mid - 794.7).abs() < 1e-6);
    // Hours and fuel are those of the setting for the headland.
    let advice = calls(&notes);
    let call = advice.zones.iter().find(|call| call.zone == Zone::Headland).unwrap();
    let setting =
        set(&machine(), &work_in_zone(&notes.field, call, &machine(), &paid_by_area()).unwrap()).unwrap();
    assert!((harmed.hours.value().unwrap() - 2.0 / setting.ha_per_hour.value().unwrap().mid).abs() < 1e-9);
    let litres = setting.fuel.value().unwrap().litres_per_ha;
    assert!((harmed.fuel_l.value().unwrap().hi - 2.0 * litres.hi).abs() < 1e-9);
}

#[test]
fn the_work_of_a_zone_takes_depth_layer_and_roll_from_its_call() {
    let notes = fit_to_loosen();
    let advice = calls(&notes);
    let work = work_in_zone(&notes.field, &advice.zones[0], &machine(), &Terms::default()).unwrap();
    // 280 mm and 25 to 50 mm (USDA Forest Service 0834-2828, p. 4).
    assert_eq!(work.tip_mm, 320);
    let layer = work.layer.unwrap();
    assert_eq!((layer.top_mm, layer.bottom_mm), (220, 280));
    assert_eq!(work.roll, Some(RollOutcome::ShortLengths));
}

#[test]
fn what_is_missing_is_said_instead_of_guessed() {
    let mut notes = harmed_headland();
    let without_machine = worked(&notes, &areas(10.0, 2.0), None).harmed.unwrap();
    assert_eq!(without_machine.hours, Model::DoesNotApply(WhyNot::NoMachine));
    notes.field.texture = None;
    let without_texture = worked(&notes, &areas(10.0, 2.0), Some(&machine())).harmed.unwrap();
    assert_eq!(without_texture.fuel_l, Model::DoesNotApply(WhyNot::NoTexture));
    let nothing = Areas { whole_m2: None, zones: Vec::new() };
    let unmeasured = worked(&notes, &nothing, Some(&machine()));
    assert_eq!((unmeasured.whole_ha, unmeasured.harmed, unmeasured.saved), (None, None, None));
}

#[test]
fn ground_not_dug_yet_counts_as_worked() {
    let mut notes = harmed_headland();
    notes.pits.retain(|pit| pit.place != PlaceKind::Open);
    let work = worked(&notes, &areas(10.0, 2.0), Some(&machine()));
    assert!((work.unknown_ha - 10.0).abs() < 1e-9);
    let saved = work.saved.unwrap();
    assert!(saved.area_ha.abs() < 1e-9 && saved.cost.value().unwrap().mid.abs() < 1e-6, "{saved:?}");
}

#[test]
fn where_nothing_is_harmed_nothing_is_worked() {
    let mut notes = harmed_headland();
    notes.pits.retain(|pit| pit.place != PlaceKind::Headland);
    let work = worked(&notes, &areas(12.0, 0.0), Some(&machine()));
    assert!(work.harmed.is_none() && work.zones.iter().all(|zone| zone.spent.is_none()), "{work:?}");
}

proptest! {
    /// Harmed and saved are together everything, whatever the areas.
    #[test]
    fn the_parts_are_the_whole(open_ha in 0.1f64..60.0, headland_ha in 0.1f64..20.0) {
        let work = worked(&harmed_headland(), &areas(open_ha, headland_ha), Some(&machine()));
        let [harmed, all, saved] = [work.harmed, work.everything, work.saved].map(Option::unwrap);
        let sum = harmed.area_ha + saved.area_ha;
        prop_assert!((sum / all.area_ha - 1.0).abs() < 1e-9);
        let hours = harmed.hours.value().unwrap() + saved.hours.value().unwrap();
        prop_assert!((hours / all.hours.value().unwrap() - 1.0).abs() < 1e-9);
        let cost = harmed.cost.value().unwrap().mid + saved.cost.value().unwrap().mid;
        prop_assert!((cost / all.cost.value().unwrap().mid - 1.0).abs() < 1e-9);
    }
}
