//! A machine set for a depth: two answers where there are two, and no figure where its model does not hold.

use pitface_core::advice::machine::{
    CriticalPlace, DraughtSoil, LayerDepths, Model, Price, SpacingFit, TractorFit, WhyNot, Work, compare,
    needed_for, set,
};
use pitface_core::record::{
    Drive, Foot, LeadingTines, Machine, RecordId, RollOutcome, SpeedRange, Tractor, Wings,
};
use proptest::prelude::*;

fn machine() -> Machine {
    Machine {
        id: RecordId::new(0, [0; 10]),
        name: "Yard subsoiler".into(),
        legs: 5,
        spacing_mm: 600,
        foot_width_mm: 80,
        wings: Some(Wings { width_mm: 300, lift_mm: Some(60) }),
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm: None,
        tractor: None,
        tractor_mass_kg: None,
        unknown: serde_json::Map::default(),
    }
}

fn work(tip_mm: u32) -> Work {
    let layer = Some(LayerDepths { top_mm: 200, bottom_mm: 300 });
    Work { layer, ..Work::new(tip_mm, DraughtSoil::Medium, 6.0) }
}

#[test]
fn below_critical_depth_no_share_no_spacing_and_no_layer_is_told() {
    let setting = set(&Machine { foot_width_mm: 40, wings: None, ..machine() }, &work(350)).unwrap();
    assert_eq!(setting.place, CriticalPlace::Below);
    assert_eq!(setting.not_to_be_worked, [WhyNot::BelowCriticalDepth]);
    assert_eq!(setting.ground, Model::DoesNotApply(WhyNot::BelowCriticalDepth));
    assert_eq!(setting.spacing, Model::DoesNotApply(WhyNot::BelowCriticalDepth));
    assert_eq!(setting.layer, Model::DoesNotApply(WhyNot::BelowCriticalDepth));
}

#[test]
fn within_the_range_of_critical_depth_everything_hangs_on_the_trial_strip() {
    let setting = set(&Machine { foot_width_mm: 60, ..machine() }, &work(350)).unwrap();
    assert!(matches!(setting.ground, Model::AppliesIfAboveCritical(_)));
    assert!(matches!(setting.layer, Model::AppliesIfAboveCritical(_)));
    assert!(matches!(set(&machine(), &work(350)).unwrap().ground, Model::Applies(_)));
}

#[test]
fn without_a_layer_nothing_is_said_to_be_broken() {
    let setting = set(&machine(), &Work { layer: None, ..work(350) }).unwrap();
    assert_eq!(setting.layer, Model::DoesNotApply(WhyNot::NoLayer));
    assert_eq!(needed_for(&Work { layer: None, ..work(350) }, Foot::Winged, 300).full_width_spacing_mm, None);
}

#[test]
fn a_tip_that_does_not_run_below_the_layer_breaks_no_layer() {
    for tip_mm in [250, 300] {
        let setting = set(&machine(), &work(tip_mm)).unwrap();
        assert_eq!(setting.layer, Model::DoesNotApply(WhyNot::TipAboveLayerBottom));
    }
}

#[test]
fn soil_that_rolls_to_a_thread_gives_no_figure_of_what_is_loosened() {
    let setting = set(&machine(), &Work { roll: Some(RollOutcome::Thread), ..work(350) }).unwrap();
    assert_eq!(setting.ground, Model::DoesNotApply(WhyNot::TooWet));
    assert_eq!(setting.spacing, Model::DoesNotApply(WhyNot::TooWet));
    assert_eq!(setting.layer, Model::DoesNotApply(WhyNot::TooWet));
}

#[test]
fn plain_tines_with_leading_ones_get_no_invented_spacing() {
    let leading = Some(LeadingTines { depth_mm: Some(150) });
    let setting = set(&Machine { wings: None, leading, ..machine() }, &work(350)).unwrap();
    assert_eq!(setting.spacing, Model::DoesNotApply(WhyNot::NoPublishedRange));
    assert!(setting.ground.value().is_some(), "the figure does not need that range");
    assert_eq!(setting.leading.unwrap().map(|range| range.within), [Some(true), Some(false)]);
}

#[test]
fn no_tip_below_critical_depth_is_proposed_to_break_the_layer() {
    let narrow = Machine { wings: None, spacing_mm: 900, foot_width_mm: 70, ..machine() };
    let layer = *set(&narrow, &work(350)).unwrap().layer.value().unwrap();
    assert_eq!((layer.full_width, layer.shallowest_tip_mm), (false, None));
    let close = Machine { spacing_mm: 400, ..machine() };
    assert_eq!(set(&close, &work(350)).unwrap().layer.value().unwrap().shallowest_tip_mm, Some(387));
}

#[test]
fn spacing_and_full_width_are_two_answers() {
    let setting = set(&machine(), &work(350)).unwrap();
    assert_eq!(setting.spacing.value().unwrap().fit, SpacingFit::Fits);
    assert!(!setting.layer.value().unwrap().full_width);
}

#[test]
fn a_tractor_has_enough_is_tight_or_has_not_enough() {
    // 88.1 kW of PTO power in the middle of the estimate and 132.2 at its end take 97.9 and 146.9 kW of engine.
    let with = |power_kw| {
        let tractor = Some(Tractor { power_kw, drive: Drive::FrontAssist });
        set(&Machine { wings: None, tractor, ..machine() }, &work(400)).unwrap()
    };
    let fit = |power_kw| with(power_kw).traction.unwrap().fit;
    assert_eq!(
        [97.0, 99.0, 146.0, 148.0].map(fit),
        [TractorFit::NotEnough, TractorFit::Tight, TractorFit::Tight, TractorFit::Enough]
    );
    // Too little for 6 km/h is enough for less.
    let slower = with(97.0);
    let held = slower.traction.unwrap().held_kmh;
    assert!(held.lo < held.mid && held.mid < 6.0 && (held.hi - 6.0).abs() < 1e-9, "{held:?}");
    let (rate, free) =
        (slower.ha_per_hour.value().unwrap().mid, with(148.0).ha_per_hour.value().unwrap().mid);
    assert!((rate / free - held.mid / 6.0).abs() < 1e-9);
    assert!(slower.fuel.value().is_some());
    assert_eq!(with(20.0).fuel, Model::DoesNotApply(WhyNot::NotEnoughPower));
    assert_eq!(with(20.0).ha_per_hour, Model::DoesNotApply(WhyNot::NotEnoughPower));
    assert!(with(148.0).fuel.value().is_some());
    assert_eq!(set(&machine(), &work(400)).unwrap().fuel, Model::DoesNotApply(WhyNot::NoTractor));
}

/// Two kilometres an hour are the least that is work, where the machine's own speeds are not noted (GRDC: 2 km/h was far too slow;
/// the size is our judgement).
#[test]
fn slower_than_two_kilometres_an_hour_is_no_work() {
    let set_with = |power_kw| {
        let tractor = Some(Tractor { power_kw, drive: Drive::FrontAssist });
        set(&Machine { wings: None, tractor, speed: None, ..machine() }, &work(400)).unwrap()
    };
    let powers = (40..400).map(|quarters| f64::from(quarters) / 4.0);
    let works = powers.map(set_with).filter(|set| set.ha_per_hour.value().is_some());
    let held = works.filter_map(|set| set.traction).map(|traction| traction.held_kmh.mid);
    let least = held.fold(f64::INFINITY, f64::min);
    assert!((2.0..2.05).contains(&least), "{least}");
}

/// A pull of 27.5 kN in the middle and 41.2 at its end: a firm field gives 0.369 of the weight at the slip for best
/// traction, 0.598 at 20 % (Brixius 1987, read second-hand).
#[test]
fn the_pull_is_held_against_the_weight() {
    let with = |tractor_mass_kg| {
        let tractor = Some(Tractor { power_kw: 150.0, drive: Drive::FourWheel });
        let machine = Machine { tractor, tractor_mass_kg, legs: 3, ..machine() };
        set(&machine, &work(350)).unwrap().traction.unwrap().grip
    };
    assert_eq!(with(None), Model::DoesNotApply(WhyNot::NotWeighed));
    let fit = |mass_kg| with(Some(mass_kg)).value().unwrap().fit;
    assert_eq!(
        [4_500, 5_500, 11_000, 12_500].map(fit),
        [TractorFit::NotEnough, TractorFit::Tight, TractorFit::Tight, TractorFit::Enough]
    );
}

/// Nobody says how much deeper critical depth lies with wings: so no winged foot is ever said to run below it.
#[test]
fn winged_feet_are_never_said_to_run_below() {
    for foot_width_mm in [20, 40, 60] {
        let setting = set(&Machine { foot_width_mm, ..machine() }, &work(350)).unwrap();
        assert_eq!(setting.place, CriticalPlace::Uncertain);
        assert_eq!((setting.critical.hi_mm, setting.foot_width.least_mm), (None, None));
    }
}

#[test]
fn what_is_loosened_is_a_range_over_the_slope_of_the_sides() {
    let setting = set(&machine(), &work(350)).unwrap();
    let ground = *setting.ground.value().unwrap();
    // 1 − (600 − 300)² × tan / (4 × 600 × 350), with 60 and with 45 degrees.
    assert!((ground.least.share - 0.8144).abs() < 1e-4 && (ground.most.share - 0.8929).abs() < 1e-4);
    let wide = set(&Machine { spacing_mm: 380, ..machine() }, &work(350)).unwrap();
    let layer = *wide.layer.value().unwrap();
    assert_eq!((layer.full_width, layer.full_width_if_flat), (false, true));
    assert_eq!((layer.widest_spacing_mm, layer.widest_if_flat_mm), (357, 400));
}

#[test]
fn the_saving_of_leading_tines_and_wings_wider_than_the_source_are_told() {
    let leading = Some(LeadingTines { depth_mm: Some(150) });
    let wings = Some(Wings { width_mm: 400, lift_mm: None });
    let setting = set(&Machine { leading, wings, ..machine() }, &work(350)).unwrap();
    let [early, late] = setting.leading.unwrap();
    assert_eq!((early.draught_saved, early.fuel_saved, early.within), (Some(0.177), None, Some(true)));
    // 13.6 to 11.5 l/ha.
    assert!((late.fuel_saved.unwrap() - 0.154).abs() < 0.001 && late.within == Some(false));
    assert_eq!(setting.wider_than_source_mm, Some(300));
    assert_eq!(set(&machine(), &work(350)).unwrap().wider_than_source_mm, None);
}

#[test]
fn fuel_of_a_ripper_lies_where_it_was_measured() {
    // 13.6 l/ha at 330 mm in loamy sand (Hamza et al. 2013).
    let tractor = Some(Tractor { power_kw: 120.0, drive: Drive::FourWheel });
    let ripper = Machine { wings: None, tractor, spacing_mm: 500, ..machine() };
    let fuel = set(&ripper, &Work::new(330, DraughtSoil::Coarse, 6.0)).unwrap().fuel;
    let litres = fuel.value().unwrap().litres_per_ha;
    assert!(litres.lo < 13.6 && 13.6 < litres.hi, "{litres:?}");
}

#[test]
fn two_settings_stand_side_by_side() {
    let price = Some(Price::PerHectare { cost: 79.47 });
    let priced = Work { price, grain_price_per_t: Some(160.0), ..work(350) };
    let one = set(&machine(), &priced).unwrap();
    let other = set(&Machine { spacing_mm: 400, ..machine() }, &work(350)).unwrap();
    let rows = compare(&one, &other);
    let codes: Vec<&str> = rows.iter().map(|row| row.measure.code()).collect();
    assert_eq!(codes, ["share", "ridge", "draught", "work_rate", "cost", "break_even"]);
    assert!(rows[0].one.value().unwrap().mid < rows[0].other.value().unwrap().mid);
    assert_eq!(rows[4].other, Model::DoesNotApply(WhyNot::NotGiven));
}

#[test]
fn reach_and_speed_are_held_against_the_machine() {
    let speed = Some(SpeedRange { lo_kmh: 4.0, hi_kmh: 5.5 });
    let limited = set(&Machine { reach_mm: Some(340), speed, ..machine() }, &work(350)).unwrap();
    assert_eq!((limited.within_reach, limited.within_speed), (Some(false), Some(false)));
    assert_eq!(limited.deepest_above_critical_mm, 340);
    let free = set(&machine(), &work(350)).unwrap();
    assert_eq!((free.within_reach, free.within_speed), (None, None));
}

#[test]
fn everything_that_cannot_be_so_is_told_at_once() {
    let wrong = Machine { legs: 0, foot_width_mm: 400, name: " ".into(), ..machine() };
    let layer = Some(LayerDepths { top_mm: 300, bottom_mm: 300 });
    let faults = set(&wrong, &Work { layer, speed_kmh: f64::NAN, ..work(20) }).unwrap_err();
    let places: Vec<&str> = faults.iter().map(|fault| fault.at.as_str()).collect();
    assert_eq!(places, ["legs", "name", "wings.width_mm", "tip_mm", "layer", "speed_kmh"]);
}

proptest! {
    /// Whatever is set: no figure of loosened ground below critical depth, and what is asked for is what is given.
    #[test]
    fn a_setting_holds_together(
        foot_width_mm in 10u32..150, tip_mm in 50u32..1_000, spacing_mm in 100u32..2_000, bottom_mm in 1u32..900,
    ) {
        let machine = Machine { foot_width_mm, spacing_mm, wings: None, ..machine() };
        let layer = Some(LayerDepths { top_mm: 0, bottom_mm });
        let setting = set(&machine, &Work { layer, ..work(tip_mm) }).unwrap();
        let below = setting.place == CriticalPlace::Below;
        prop_assert_eq!(setting.ground.value().is_none(), below);
        prop_assert_eq!(setting.layer.value().is_none(), below || bottom_mm >= tip_mm);
        prop_assert_eq!(tip_mm <= setting.deepest_above_critical_mm, setting.place == CriticalPlace::Above);
        let wide_enough = Machine { foot_width_mm: setting.foot_width.sure_mm.max(10), ..machine.clone() };
        prop_assert_eq!(set(&wide_enough, &work(tip_mm)).unwrap().place, CriticalPlace::Above);
        prop_assert!(setting.draught_kn.lo < setting.draught_kn.mid && setting.draught_kn.mid < setting.draught_kn.hi);
        if let Some(layer) = setting.layer.value() {
            let closer = Machine { spacing_mm: layer.widest_spacing_mm, ..machine.clone() };
            let closer = set(&closer, &Work { layer: Some(LayerDepths { top_mm: 0, bottom_mm }), ..work(tip_mm) });
            if let Ok(closer) = closer {
                prop_assert!(closer.layer.value().unwrap().full_width);
            }
        }
    }
}
