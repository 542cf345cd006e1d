//! What is asked of a field as a whole is asked only where an answer changes something.

use crate::advice_fixture;

use advice_fixture::{fit_to_loosen, notes, open, pan_pit, reference, sound_pit};
use chrono::{DateTime, NaiveDate};
use pitface_core::advice::{BearsOn, Caution, FieldInput, WorthAsking};
use pitface_core::answer::FieldAnswer;
use pitface_core::record::{Call, FieldNotes, PlaceKind, TextureNote, Zone};
use pitface_core::soil::texture::TextureGroup;

fn dug_in_may(mut notes: FieldNotes) -> FieldNotes {
    for pit in &mut notes.pits {
        pit.dug = DateTime::parse_from_rfc3339("2026-05-12T10:00:00+01:00").ok();
    }
    notes
}

fn worth(notes: &FieldNotes) -> Vec<WorthAsking> {
    FieldAnswer::of(notes.clone(), None).worth_asking().to_vec()
}

fn asked(notes: &FieldNotes) -> Vec<FieldInput> {
    worth(notes).iter().map(|worth| worth.input).collect()
}

#[test]
fn a_sound_field_is_asked_nothing_about_slope_or_sowing() {
    let sound = dug_in_may(notes(vec![reference(), sound_pit(1, PlaceKind::Open)]));
    assert_eq!(open(&sound).call, Call::LeaveIt);
    let asked = asked(&sound);
    assert!(!asked.contains(&FieldInput::Slope) && !asked.contains(&FieldInput::NextSown), "{asked:?}");
}

#[test]
fn a_field_to_be_loosened_is_asked_about_slope_and_sowing_until_it_has_answered() {
    let mut harmed = dug_in_may(fit_to_loosen());
    let told = worth(&harmed);
    for input in [FieldInput::Slope, FieldInput::NextSown] {
        let wanted = WorthAsking { input, bears_on: BearsOn::Caution, zones: vec![Zone::Open] };
        assert!(told.contains(&wanted), "{told:?}");
    }
    assert!(told.is_sorted_by_key(|worth| worth.bears_on), "the weightiest first");
    harmed.field.slope_percent = Some(0);
    harmed.field.next_sown = NaiveDate::from_ymd_opt(2026, 10, 1);
    let left = asked(&harmed);
    assert!(!left.contains(&FieldInput::Slope) && !left.contains(&FieldInput::NextSown), "{left:?}");
}

/// Contour working from 3 % on, and little help of it from 9 % on (Wischmeier & Smith 1978, table 13, value from memory).
#[test]
fn the_slope_bears_on_which_way_the_legs_run() {
    let at = |percent| {
        let mut notes = fit_to_loosen();
        notes.field.slope_percent = percent;
        open(&notes).cautions_now().to_vec()
    };
    let says = |percent, caution| at(percent).contains(&caution);
    for percent in [None, Some(0), Some(2)] {
        assert!(!says(percent, Caution::AcrossSlope) && !says(percent, Caution::SlopeWashes));
    }
    assert!(says(Some(3), Caution::AcrossSlope) && !says(Some(8), Caution::SlopeWashes));
    assert!(says(Some(9), Caution::AcrossSlope) && says(Some(9), Caution::SlopeWashes));
}

/// Four weeks to settle, two months for roots (our judgement; common practice, no source).
#[test]
fn the_day_of_sowing_says_whether_there_is_time() {
    let pits_of = |heavy: bool, sown: Option<NaiveDate>| {
        let mut notes = dug_in_may(fit_to_loosen());
        if heavy {
            notes.pits[1].layers = pan_pit(1, PlaceKind::Open, 330).layers;
            notes.pits[1].dug_to_mm = Some(500);
            notes.field.texture = Some(TextureNote::Group(TextureGroup::Heavy));
        }
        notes.field.next_sown = sown;
        notes
    };
    let day = |month, day| NaiveDate::from_ymd_opt(2026, month, day);
    let has = |heavy, sown, caution| open(&pits_of(heavy, sown)).cautions_now().contains(&caution);
    assert!(has(false, day(6, 8), Caution::ShortToSettle), "27 days");
    assert!(!has(false, day(6, 9), Caution::ShortToSettle), "28 days");
    assert!(!has(false, day(5, 11), Caution::ShortToSettle), "sown already");
    assert_eq!(open(&pits_of(true, None)).call, Call::RootsFirst);
    assert!(has(true, day(7, 10), Caution::ShortForRoots), "59 days");
    assert!(!has(true, day(7, 11), Caution::ShortForRoots), "60 days");
    let mut ley = pits_of(true, day(6, 1));
    assert!(asked(&ley).contains(&FieldInput::NextCrop), "what is sown decides");
    ley.field.next_crop = Some("grass ley".into());
    assert!(!open(&ley).cautions.contains(&Caution::ShortForRoots), "it roots itself");
}

/// A pan that lies under the yearly tillage is a tool's work; where it lies deeper or shallower the same signs say less.
#[test]
fn the_depth_of_tillage_is_asked_for_only_where_it_decides() {
    let settled = dug_in_may(notes(vec![reference(), sound_pit(1, PlaceKind::Open)]));
    assert!(!asked(&settled).contains(&FieldInput::Tillage), "nothing hangs on it");
    let told: Vec<WorthAsking> = worth(&dug_in_may(fit_to_loosen()));
    assert!(
        told.iter().all(|worth| worth.bears_on != BearsOn::Caution || worth.input > FieldInput::PlatesSoft)
    );
}
