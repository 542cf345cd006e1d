//! What a tap on a measure of a machine has saved, in a short sentence.

use super::Measured;
use crate::words::{Caption, Words};

pub(super) fn told(measured: Measured, words: &Words) -> String {
    let depth = |what: Caption, mm: Option<u32>, none: Caption| {
        words.kept_as(&words.of(what), &mm.map_or_else(|| words.of(none), |mm| words.depth(mm)))
    };
    let not_noted = || words.of(Caption::NotNoted);
    match measured {
        Measured::Legs(legs) => words.kept_as(&words.of(Caption::Legs), &legs.to_string()),
        Measured::SpacingMm(mm) => depth(Caption::Spacing, Some(mm), Caption::NotNoted),
        Measured::FootWidthMm(mm) => depth(Caption::FootWidth, Some(mm), Caption::NotNoted),
        Measured::WingsMm(mm) => depth(Caption::Wings, mm, Caption::NoneFitted),
        Measured::LiftMm(mm) => depth(Caption::Lift, mm, Caption::NotNoted),
        Measured::ReachMm(mm) => depth(Caption::Reach, mm, Caption::NotNoted),
        Measured::Leading { fitted: true, depth_mm: Some(mm) } => {
            depth(Caption::LeadingDepth, Some(mm), Caption::NotNoted)
        }
        Measured::Leading { fitted, .. } => {
            let fitted = if fitted { Caption::Fitted } else { Caption::NoneFitted };
            words.kept_as(&words.of(Caption::Leading), &words.of(fitted))
        }
        Measured::SpeedKmh(speed) => {
            let speed = speed.map_or_else(not_noted, |[lo, hi]| words.speeds(lo, hi));
            words.kept_as(&words.of(Caption::PassSpeed), &speed)
        }
        Measured::Tractor { power_kw, drive } => {
            let tractor = words.comma(&[words.power_of(power_kw), words.of(drive)]);
            words.kept_as(&words.of(Caption::Power), &tractor)
        }
        Measured::MassKg(kg) => {
            let mass = kg.map_or_else(not_noted, |kg| words.mass_of(kg));
            words.kept_as(&words.of(Caption::TractorMass), &mass)
        }
        Measured::NoTractor => words.kept_as(&words.of(Caption::Power), &not_noted()),
    }
}
