//! One hole from its records to everything that is told of it.

use super::across::Section;
use super::codes::Verdict;
use super::evidence::{Evidence, Scene, roll_at_tip};
use super::ground::{PitBefore, Wanted, wanted};
use super::table::CauseTable;
use super::verdict::{Measured, judge};
use super::{DigAdvice, PASS_MARK, SEASON_DAYS, cause};
use crate::advice::FieldAdvice;
use crate::advice::machine::{
    CriticalDepth, CriticalPlace, Model, SIDE_SLOPE_DEGREES, TinesRange, WhyNot, broken_share, left_mm,
    measured_ridge_mm, section_share,
};
use crate::place::FieldMap;
use crate::reading::FieldReading;
use crate::record::{AfterDig, FieldNotes, Machine, Pass, RollOutcome};

/// Fewest readings that show anything between two tine lines.
const FEWEST_READINGS: usize = 3;

/// Everything told of one hole.
pub fn read(
    notes: &FieldNotes,
    map: &FieldMap,
    pass: &Pass,
    dig: &AfterDig,
    reading: &FieldReading,
    advice: &FieldAdvice,
    table: &CauseTable,
) -> DigAdvice {
    let before = PitBefore::of(dig, pass, (notes, map), reading);
    let wanted = wanted(pass, before.as_ref(), advice);
    let machine = pass.machine.and_then(|id| notes.machines.iter().find(|machine| machine.id == id));
    let readings_mm = Some(dig.firm_mm.as_slice()).filter(|readings| readings.len() >= FEWEST_READINGS);
    let section =
        readings_mm.zip(mark_mm(wanted)).map(|(readings_mm, mark_mm)| Section { readings_mm, mark_mm });
    let share = given(readings_mm, wanted.depth_mm, WhyNot::NotGiven, section_share);
    let layer_left_mm: Model<f64> = match wanted.layer_top_mm.zip(wanted.layer_bottom_mm) {
        None => Model::DoesNotApply(WhyNot::NoLayer),
        Some((top_mm, bottom_mm)) => readings_mm
            .and_then(|readings_mm| left_mm(readings_mm, top_mm, bottom_mm))
            .ok_or(WhyNot::NotGiven)
            .into(),
    };
    let layer_broken =
        given(readings_mm, wanted.layer_bottom_mm, WhyNot::NoLayer, |readings_mm, bottom_mm| {
            match wanted.layer_top_mm {
                Some(top_mm) => section_share(&below(readings_mm, top_mm), bottom_mm.saturating_sub(top_mm)),
                None => broken_share(readings_mm, bottom_mm),
            }
        });
    let figure = wanted.depth_mm.map_or(Err(WhyNot::NotGiven).into(), |tip_mm| {
        let rolled = roll_at_tip(pass, &notes.field, tip_mm);
        figure(machine, tip_mm, rolled)
    });
    let firm_now_mm = readings_mm.map(mean_mm);
    let measured = section.zip(firm_now_mm).map(|(section, firm_mm)| Measured {
        section,
        layer_broken: layer_broken.value().copied(),
        share: share.value().copied(),
        firm_mm,
    });
    let season_on = is_season_on(pass, dig);
    let scene = Scene { notes, pass, dig, machine, wanted, section, tines: figure.value().copied() };
    let evidence = Evidence::of(&scene);
    let firm_before_mm = before.as_ref().and_then(PitBefore::firm_mm);
    let (verdict, why) = judge(dig, measured, firm_before_mm, &evidence);
    let failed = matches!(verdict, Verdict::Partly | Verdict::NotDone | Verdict::Worse);
    DigAdvice {
        dig: dig.id,
        season_on,
        target_mm: wanted.depth_mm,
        layer_top_mm: wanted.layer_top_mm,
        layer_bottom_mm: wanted.layer_bottom_mm,
        share,
        layer_broken,
        layer_left_mm,
        ridge_mm: readings_mm.and_then(measured_ridge_mm).ok_or(WhyNot::NotGiven).into(),
        figure: figure.map(|tines| tines.loosened()),
        firm_at: section.map(|section| section.firm_at(machine.map(|it| it.spacing_mm))).unwrap_or_default(),
        verdict,
        why,
        causes: if failed && !season_on { cause::rank(&evidence, &scene, table) } else { Vec::new() },
        pair: before.and_then(|before| before.pair(firm_now_mm)),
    }
}

/// Depth from which a reading counts as loosened through: the layer's bottom, else our share of the depth wanted.
fn mark_mm(wanted: Wanted) -> Option<u32> {
    let of_depth = |depth_mm: u32| (f64::from(depth_mm) * PASS_MARK).round() as u32;
    wanted.layer_bottom_mm.or(wanted.depth_mm.map(of_depth))
}

/// Readings counted from a depth on.
fn below(readings_mm: &[u32], top_mm: u32) -> Vec<u32> {
    readings_mm.iter().map(|mm| mm.saturating_sub(top_mm)).collect()
}

/// A measured share: it stands on readings and the depth they are held against.
fn given(
    readings_mm: Option<&[u32]>,
    against_mm: Option<u32>,
    missing: WhyNot,
    share: impl Fn(&[u32], u32) -> Option<f64>,
) -> Model<f64> {
    let against_mm = against_mm.ok_or(missing);
    let share = against_mm.and_then(|against_mm| {
        readings_mm.and_then(|readings_mm| share(readings_mm, against_mm)).ok_or(WhyNot::NotGiven)
    });
    share.into()
}

/// The tines whose figure holds: soil that breaks, lifted from above critical depth.
fn figure(machine: Option<&Machine>, tip_mm: u32, rolled: Option<RollOutcome>) -> Model<TinesRange> {
    let Some(machine) = machine else { return Model::DoesNotApply(WhyNot::NotGiven) };
    let tines = TinesRange::of(machine, tip_mm, SIDE_SLOPE_DEGREES);
    match (rolled, CriticalDepth::of(machine).place(tip_mm)) {
        (Some(RollOutcome::Thread), _) => Model::DoesNotApply(WhyNot::TooWet),
        (_, CriticalPlace::Above) => Model::Applies(tines),
        (_, CriticalPlace::Uncertain) => Model::AppliesIfAboveCritical(tines),
        (_, CriticalPlace::Below) => Model::DoesNotApply(WhyNot::BelowCriticalDepth),
    }
}

/// Mean depth to firm soil by the trapezoid rule.
fn mean_mm(readings_mm: &[u32]) -> u32 {
    let deepest_mm = readings_mm.iter().copied().max().unwrap_or(0);
    let share = section_share(readings_mm, deepest_mm).unwrap_or(0.0);
    (share * f64::from(deepest_mm)).round() as u32
}

/// Returns whether a hole was dug long enough after the pass to tell whether it has held.
fn is_season_on(pass: &Pass, dig: &AfterDig) -> bool {
    pass.done
        .zip(dig.dug)
        .is_some_and(|(done, dug)| dug.date_naive().signed_duration_since(done).num_days() >= SEASON_DAYS)
}
