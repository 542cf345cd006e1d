//! What must always hold of holes behind the machine, and where a figure must never be given.

use crate::after_dig_support;

use after_dig_support::{Given, behind, hole, id};
use pitface_core::advice::after_dig::{DigAdvice, LikelyCause, Verdict};
use pitface_core::advice::machine::{CriticalDepth, CriticalPlace, Model, WhyNot};
use pitface_core::record::{Clods, FeetSeen, Lift, PlatesLeft, Profile, Roll, RollOutcome, Smear, Unknown};
use proptest::prelude::*;
use serde_json::json;

fn any_code(codes: &'static [&'static str]) -> impl Strategy<Value = Option<String>> {
    prop::option::of(prop::sample::select(codes).prop_map(str::to_owned))
}

fn machine() -> impl Strategy<Value = serde_json::Value> {
    (2u32..8, 300u32..1_100, 40u32..120, prop::option::of(120u32..400)).prop_map(
        |(legs, spacing_mm, foot_width_mm, wings_mm)| {
            json!({
                "legs": legs, "spacing_mm": spacing_mm, "foot_width_mm": foot_width_mm, "wings_mm": wings_mm,
                "speed_kmh": [4.0, 7.0],
            })
        },
    )
}

prop_compose! {
    fn looks()(
        profile in any_code(Profile::CODES), smear in any_code(Smear::CODES), lift in any_code(Lift::CODES),
        clods in any_code(Clods::CODES), plates in any_code(PlatesLeft::CODES), feet in any_code(FeetSeen::CODES),
        roll in any_code(RollOutcome::CODES), subsoil_up: Option<bool>, old_slots: Option<bool>,
        speed_kmh in prop::option::of(1.0f64..12.0),
    ) -> Given {
        Given { profile, smear, lift, clods, subsoil_up, plates, feet, old_slots, roll, speed_kmh, ..Given::default() }
    }
}

prop_compose! {
    fn given()(
        looks in looks(), tip_mm in prop::option::of(200u32..600),
        layer_bottom_mm in prop::option::of(180u32..560),
        firm_mm in prop::collection::vec(0u32..650, 0..12), slots_mm in prop::collection::vec(100u32..650, 0..6),
        machine in prop::option::of(machine()), sand in prop::bool::weighted(0.1),
    ) -> Given {
        let machine = machine.map(|machine| serde_json::from_value(machine).expect("a machine"));
        Given { tip_mm, layer_bottom_mm, firm_mm, slots_mm, sand, machine, ..looks }
    }
}

fn shares(causes: &[LikelyCause]) -> Vec<(&'static str, f64)> {
    causes.iter().map(|cause| (cause.cause.code(), cause.share)).collect()
}

proptest! {
    #[test]
    fn shares_of_causes_are_shares(given in given()) {
        let dig = hole(&given);
        let sum: f64 = dig.causes.iter().map(|cause| cause.share).sum();
        prop_assert!(dig.causes.is_empty() || (sum - 1.0).abs() < 1e-9);
        prop_assert!(dig.causes.windows(2).all(|pair| pair[0].share >= pair[1].share));
        let blamed = matches!(dig.verdict, Verdict::Partly | Verdict::NotDone | Verdict::Worse);
        prop_assert_eq!(blamed, !dig.causes.is_empty());
    }

    #[test]
    fn a_deeper_reading_never_lowers_a_share_nor_worsens_the_verdict(
        given in given(), at in 0usize..12, deeper in 1u32..200,
    ) {
        prop_assume!(!given.firm_mm.is_empty());
        let mut deepened = given.clone();
        let at = at % given.firm_mm.len();
        deepened.firm_mm[at] += deeper;
        let (one, other) = (hole(&given), hole(&deepened));
        prop_assert!(other.share.value() >= one.share.value());
        prop_assert!(other.layer_broken.value() >= one.layer_broken.value());
        prop_assert!(other.verdict <= one.verdict);
    }

    #[test]
    fn from_the_other_side_it_is_the_same_hole(given in given()) {
        let mut mirrored = given.clone();
        mirrored.firm_mm.reverse();
        mirrored.slots_mm.reverse();
        let (one, other) = (hole(&given), hole(&mirrored));
        prop_assert_eq!(one.verdict, other.verdict);
        prop_assert_eq!(shares(&one.causes), shares(&other.causes));
        let near = |one: &Model<f64>, other: &Model<f64>| match (one.value(), other.value()) {
            (Some(one), Some(other)) => (one - other).abs() < 1e-12,
            (one, other) => one == other,
        };
        prop_assert!(near(&one.share, &other.share) && near(&one.layer_broken, &other.layer_broken));
    }

    /// Reasons are given of what was noted and of nothing else; a roll that does not apply is as if not rolled.
    #[test]
    fn what_was_not_looked_at_says_nothing(given in given()) {
        let dig = hole(&given);
        let blank = |clue: &str| match clue {
            "profile" => given.profile.is_none(),
            "smear" => given.smear.is_none(),
            "lift" => given.lift.is_none(),
            "clods" => given.clods.is_none(),
            "plates" => given.plates.is_none(),
            "feet" => given.feet.is_none(),
            "subsoil_up" => given.subsoil_up.is_none(),
            "old_slots" => given.old_slots.is_none(),
            "speed" => given.speed_kmh.is_none() || given.machine.is_none(),
            "spacing" | "critical" => given.machine.is_none(),
            "depth" | "slots" => given.slots_mm.is_empty(),
            "roll" => given.roll.as_deref().is_none_or(|roll| roll == "will_not_hold"),
            "pattern" | "ridge" => given.firm_mm.len() < 3,
            "loosened_before" => true,
            _ => false,
        };
        for reason in dig.causes.iter().flat_map(|cause| &cause.reasons) {
            prop_assert!(!blank(reason.clue.code()), "{}", reason.clue.code());
        }
        let unrolled = Given { roll: None, ..given.clone() };
        if given.roll.as_deref() == Some("will_not_hold") {
            prop_assert_eq!(shares(&hole(&unrolled).causes), shares(&dig.causes));
        }
    }

    /// The share of a cause is its prior times what every clue says of it: so no order of clues can matter, and none
    /// counts twice. Leaving one out and putting it back gives the same.
    #[test]
    fn each_clue_counts_once(given in given()) {
        let dig = hole(&given);
        for cause in &dig.causes {
            let mut clues: Vec<_> = cause.reasons.iter().map(|reason| reason.clue).collect();
            let all = clues.len();
            clues.sort_unstable();
            clues.dedup();
            prop_assert_eq!(clues.len(), all);
            let mut others: Vec<_> = dig.causes[0].reasons.iter().map(|reason| reason.clue).collect();
            others.sort_unstable();
            prop_assert_eq!(clues, others);
        }
    }

    #[test]
    fn the_order_of_holes_rolls_and_passes_changes_nothing(
        looks in prop::collection::vec(given(), 2..5), rolls in prop::collection::vec((0u32..500, 0usize..4), 0..4),
    ) {
        let mut notes = Given { slots_mm: Vec::new(), ..looks[0].clone() }.notes();
        let roll = |(number, (depth_mm, roll)): (usize, &(u32, usize))| Roll {
            id: id(30 + number as u64), depth_mm: *depth_mm, roll: RollOutcome::ALL[*roll], unknown: Unknown::new(),
        };
        notes.passes[0].rolls = rolls.iter().enumerate().map(roll).collect();
        notes.passes[0].after_digs = looks
            .iter()
            .enumerate()
            .map(|(number, given)| pitface_core::record::AfterDig { id: id(50 + number as u64), ..given.dig() })
            .collect();
        let mut second = notes.passes[0].clone();
        second.id = id(80);
        notes.passes.push(second);
        let one = behind(&notes, Some(300));
        notes.passes.reverse();
        for pass in &mut notes.passes {
            pass.rolls.reverse();
            pass.after_digs.reverse();
        }
        let mut other = behind(&notes, Some(300));
        other.reverse();
        for pass in &mut other {
            pass.digs.reverse();
        }
        prop_assert_eq!(one, other);
    }

    #[test]
    fn a_figure_is_given_only_where_it_holds(given in given()) {
        let dig = hole(&given);
        let place = given.machine().zip(dig.target_mm).map(|(machine, tip_mm)| {
            CriticalDepth::of(&machine).place(tip_mm)
        });
        let thread = given.roll.as_deref() == Some("thread") && given.tip_mm.is_some();
        match dig.figure {
            Model::Applies(_) => prop_assert!(!thread && place == Some(CriticalPlace::Above)),
            Model::AppliesIfAboveCritical(_) => prop_assert!(!thread && place == Some(CriticalPlace::Uncertain)),
            Model::DoesNotApply(WhyNot::TooWet) => prop_assert!(thread),
            Model::DoesNotApply(WhyNot::BelowCriticalDepth) => prop_assert_eq!(place, Some(CriticalPlace::Below)),
            Model::DoesNotApply(why) => prop_assert!(why == WhyNot::NotGiven && place.is_none()),
        }
        let measured = given.firm_mm.len() >= 3;
        prop_assert_eq!(dig.share.value().is_some(), measured && dig.target_mm.is_some());
        prop_assert_eq!(dig.layer_broken.value().is_some(), measured && given.layer_bottom_mm.is_some());
        prop_assert_eq!(dig.ridge_mm.value().is_some(), measured);
        if given.layer_bottom_mm.is_none() {
            prop_assert_eq!(dig.layer_broken, Model::DoesNotApply(WhyNot::NoLayer));
        }
        if dig.share.value().is_none() && dig.layer_broken.value().is_none() {
            let signs = given.profile.as_deref() == Some("y") || given.smear.as_deref() == Some("smeared");
            prop_assert!(matches!(dig.verdict, Verdict::CannotSay | Verdict::Worse) || signs);
        }
    }
}

fn below_critical() -> Given {
    let machine = json!({
        "legs": 4, "spacing_mm": 700, "foot_width_mm": 50, "wings_mm": null, "speed_kmh": [4.0, 7.0],
    });
    Given {
        tip_mm: Some(400),
        layer_bottom_mm: Some(360),
        firm_mm: vec![400, 380, 300, 390, 400],
        machine: serde_json::from_value(machine).ok(),
        ..Given::default()
    }
}

#[test]
fn below_critical_depth_the_measured_share_stands_and_the_figure_does_not() {
    let dig: DigAdvice = hole(&below_critical());
    assert!(dig.share.value().is_some());
    assert_eq!(dig.figure, Model::DoesNotApply(WhyNot::BelowCriticalDepth));
}

#[test]
fn too_wet_there_is_no_figure() {
    let wet = Given { roll: Some("thread".into()), tip_mm: Some(240), ..below_critical() };
    assert_eq!(hole(&wet).figure, Model::DoesNotApply(WhyNot::TooWet));
}

#[test]
fn none_seen_is_not_the_same_as_not_looked() {
    let partly = Given { firm_mm: vec![400, 370, 200, 340, 400], ..below_critical() };
    let looked = Given { smear: Some("none".into()), ..partly.clone() };
    assert_ne!(shares(&hole(&partly).causes), shares(&hole(&looked).causes));
}
