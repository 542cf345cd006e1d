//! Limits of the call, a millimetre or a day on either side: each was found by changing the number by hand and seeing no test
//! fail.

use crate::advice_fixture;

use advice_fixture::{
    fit_to_loosen, good, layer, notes, open, pan, pan_pit, pit, reference, roll, says, sound_subsoil,
};
use chrono::{DateTime, NaiveDate};
use pitface_core::advice::{Readiness, What};
use pitface_core::record::{Call, PlaceKind, RollOutcome};

/// A roll counts for the tips within 75 mm of their range, 305 to 330 mm here (our judgement).
#[test]
fn a_roll_from_deeper_than_the_tips_counts_within_its_reach() {
    let rolled_at = |depth_mm| {
        let mut notes = fit_to_loosen();
        notes.pits[1].rolls = vec![roll(depth_mm, RollOutcome::ShortLengths)];
        open(&notes).readiness
    };
    assert_eq!(rolled_at(405), Readiness::Fit);
    assert_eq!(rolled_at(406), Readiness::RollFirst { depth_mm: 330 });
}

/// Trodden ground under grass mends down to 150 mm (Drewry 2006).
#[test]
fn under_grass_a_layer_that_ends_at_150_mm_is_left_to_rest() {
    let ends_at = |bottom_mm| {
        let layers = vec![
            layer(0, 60, good()),
            layer(60, bottom_mm, pan()),
            layer(bottom_mm, 250, good()),
            layer(250, 450, sound_subsoil()),
        ];
        let mut notes = notes(vec![reference(), pit(1, PlaceKind::Open, layers)]);
        notes.field.crop_now = Some("permanent ryegrass, grazed".into());
        open(&notes)
    };
    let rests = |call: &_| says(call, |what| matches!(what, What::UnderGrass { .. }));
    assert!(rests(&ends_at(150)) && !rests(&ends_at(151)));
}

/// 150 mm of the ground under a harmed layer must be seen where a hole is shallower than 400 mm (our judgement).
#[test]
fn a_shallow_hole_must_show_the_ground_below_the_layer() {
    let dug_to = |dug_to_mm| {
        let mut harmed = pan_pit(1, PlaceKind::Open, 245);
        harmed.layers[2].bottom_mm = dug_to_mm;
        harmed.dug_to_mm = Some(dug_to_mm);
        open(&notes(vec![reference(), harmed])).call
    };
    assert_eq!((dug_to(395), dug_to(394)), (Call::Loosen, Call::DigAgain));
}

/// Loosening lasts about three seasons (DPIRD): a harmed layer found within them means that it did not.
#[test]
fn within_three_years_a_loosening_did_not_last() {
    let loosened = |day: &str| {
        let mut notes = fit_to_loosen();
        notes.pits[1].dug = DateTime::parse_from_rfc3339("2026-05-12T10:00:00+01:00").ok();
        notes.field.last_loosened = day.parse::<NaiveDate>().ok();
        says(&open(&notes), |what| matches!(what, What::DidNotLast { .. }))
    };
    assert!(loosened("2023-05-13"), "1,095 days");
    assert!(!loosened("2023-05-12"), "1,096 days");
}
