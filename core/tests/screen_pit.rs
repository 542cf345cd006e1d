//! A pit from its place to its call, tapped on its screens.

use crate::screen_pit_support;

use pitface_core::advice::advise;
use pitface_core::reading::{Clue, read_field};
use pitface_core::record::{
    Call, ComesAway, FaceMoisture, Field, RecordId, Resistance, RollOutcome, depth, notes,
};
use pitface_core::screen::own::OwnAct;
use pitface_core::screen::{Act, Place, ScreenKind};
use pitface_core::words::Language;
use screen_pit_support::pit::{dug, field_with_reference, kind, looked, sentence, walked};
use screen_pit_support::{Phone, demo, fix_at};

#[test]
fn a_pit_of_three_layers_takes_at_most_25_taps_with_the_one_that_begins_it() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    phone.place = Place::Field { field: phone.fields[0].field.id };
    phone.tap("Dig on the open ground");
    dug(&mut phone);
    walked(&mut phone);
    let looks = looked(&mut phone);
    assert_eq!(kind(&phone), ScreenKind::Roll);
    phone.tap_about("35", "Cracks into short lengths");
    phone.tap_about("surface", "Crumbles");
    assert_eq!(kind(&phone), ScreenKind::Call);
    println!("a pit of three layers: {} taps, {looks} of them looks", phone.taps);
    assert!(phone.taps <= 25, "{} taps, {looks} looks", phone.taps);

    let pit = phone.pit();
    assert_eq!(pit.walk.len(), 10);
    assert_eq!(pit.dug_to_mm, Some(500));
    assert_eq!(pit.walk[4].resistance, Some(Resistance::HardPush));
    assert_eq!(pit.walk[5].resistance, None, "noted only where it changes");
    assert_eq!(
        pit.rolls.iter().map(|roll| (roll.depth_mm, roll.roll)).collect::<Vec<_>>(),
        [(350, RollOutcome::ShortLengths), (0, RollOutcome::Crumbles)]
    );
    assert_eq!(pit.by.as_deref(), Some("walker"));
    let notes = &phone.fields[0];
    let advice = advise(notes, &read_field(notes));
    assert_eq!(advice.zones[0].call, Call::Loosen);
    assert_eq!(sentence(&phone.screen()), phone.words.call_headline(&advice.zones[0]));
    assert_can_be_handed_over(&phone);
}

/// What the screens noted is a notes file without a fault.
#[track_caller]
fn assert_can_be_handed_over(phone: &Phone) {
    for field in &phone.fields {
        let text = notes::write(field);
        let mut new_id = || panic!("every record has an id");
        let read = notes::read(&text, &mut new_id).unwrap_or_else(|faults| panic!("{faults:?}\n{text}"));
        assert_eq!(read.notes.pits.len(), field.pits.len());
    }
}

#[test]
fn every_tap_can_be_taken_back_one_by_one() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    let at_first = phone.fields.clone();
    dug(&mut phone);
    walked(&mut phone);
    looked(&mut phone);
    let saves = phone.before.len();
    assert_eq!(saves, phone.taps, "one save a tap");
    for _ in 0..saves {
        phone.tap("Undo");
    }
    assert_eq!(phone.fields, at_first);
}

#[test]
fn resistance_is_kept_in_the_step_it_changes_in() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    phone.tap("Firm push");
    assert_eq!(phone.pit().walk.len(), 1, "saved at once");
    phone.tap("Hard push");
    phone.tap("Crumbs");
    let walk = &phone.pit().walk;
    assert_eq!((walk.len(), walk[0].comes_away), (1, Some(ComesAway::Crumbs)));
    assert_eq!(walk[0].resistance, Some(Resistance::HardPush));

    phone.tap("Stops");
    phone.tap("Hard push");
    assert_eq!(phone.pit().walk.len(), 1, "the same as before is no change");
    phone.tap("Hard push");
    assert_eq!(phone.pit().walk.len(), 1);
}

#[test]
fn walking_on_below_the_bottom_makes_the_hole_deeper() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    walked(&mut phone);
    phone.place = Place::KnifeWalk { field: phone.fields[0].field.id, pit: phone.pit().id };
    phone.tap("Same as above");
    assert_eq!((phone.pit().dug_to_mm, phone.pit().walk.len()), (Some(550), 11));
}

#[test]
fn the_position_is_taken_when_the_hole_is_dug() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    phone.fix = None;
    dug(&mut phone);
    assert_eq!((phone.pit().at, kind(&phone)), (None, ScreenKind::KnifeWalk), "the work goes on without");
    phone.tap("Place and position");
    phone.fix = Some(fix_at(2.5031, 54.5012));
    phone.tap("The hole is dug");
    assert_eq!(phone.pit().at, Some(fix_at(2.5031, 54.5012).position));
    phone.fix = Some(fix_at(2.504, 54.502));
    phone.tap("Place and position");
    phone.tap("The hole is dug");
    assert_eq!(phone.pit().at, Some(fix_at(2.5031, 54.5012).position), "what is noted stands");
    phone.tap("Place and position");
    phone.tap("Take the position anew");
    assert_eq!(phone.pit().at, Some(fix_at(2.504, 54.502).position));
}

#[test]
fn a_pit_is_taken_up_where_it_was_left() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    let field = Place::Field { field: phone.fields[0].field.id };
    let name = "Pit 2, in a wheeling";
    let left_at = |phone: &mut Phone| {
        let place = phone.place;
        phone.place = field;
        phone.tap(name);
        let kind = kind(phone);
        phone.place = place;
        kind
    };
    phone.place = Place::StartPit { field: phone.fields[0].field.id, pit: None };
    phone.tap("Wheeling");
    assert_eq!(left_at(&mut phone), ScreenKind::StartPit);
    phone.tap("The hole is dug");
    phone.tap("Moist");
    phone.tap("Slips in");
    assert_eq!(left_at(&mut phone), ScreenKind::KnifeWalk);
    walked(&mut phone);
    assert_eq!(left_at(&mut phone), ScreenKind::NextLook);
    looked(&mut phone);
    assert_eq!(left_at(&mut phone), ScreenKind::Roll);
    phone.tap_about("35", "Crumbles");
    phone.tap_about("surface", "Crumbles");
    assert_eq!(left_at(&mut phone), ScreenKind::Call);
}

#[test]
fn the_hole_dug_and_its_face_are_one_tap_or_two() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    let face = phone.pit().face;
    assert_eq!((face, kind(&phone)), (Some(FaceMoisture::Moist), ScreenKind::KnifeWalk));
    assert!(phone.pit().at.is_some(), "with the position");
    assert!(phone.told.contains("moist") && phone.told.contains("Position noted"), "{}", phone.told);
    phone.place = Place::StartPit { field: phone.fields[0].field.id, pit: None };
    phone.tap("Wheeling");
    phone.tap("The hole is dug");
    assert_eq!((phone.pit().face, kind(&phone)), (None, ScreenKind::KnifeWalk), "not looked at is not said");
    phone.tap("Wet");
    assert_eq!(phone.pit().face, Some(FaceMoisture::Wet));
}

#[test]
fn volume_keys_answer_the_walk_only_where_they_are_to() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    phone.tap("Crumbs");
    assert_eq!(phone.screen().keys, None, "off until it is wanted");
    let walk = phone.place;
    phone.place = Place::Own;
    phone.act(&OwnAct::VolumeKeys(true).into(), None);
    assert!(phone.own.volume_keys && phone.screen().keys.is_none());
    phone.place = walk;
    let keys = phone.screen().keys.unwrap();
    phone.act(&keys.up, None);
    assert_eq!(phone.pit().walk.len(), 2);
    assert_eq!(phone.pit().walk[1].comes_away, Some(ComesAway::Crumbs));
    let keys = phone.screen().keys.unwrap();
    phone.act(&keys.down, None);
    assert_eq!(phone.pit().walk.len(), 1, "the upper key is taken back");
    phone.act(&keys.down, None);
    assert_eq!(phone.screen().keys, None, "at the surface nothing is the same as above");
    for place in [Place::Fields, phone.place.above().unwrap()] {
        phone.place = place;
        assert_eq!(phone.screen().keys, None, "{place:?}");
    }
}

#[test]
fn looks_by_hand_in_any_order_leave_no_gap() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    walked(&mut phone);
    let (field, pit) = (phone.fields[0].field.id, phone.pit().id);
    for (layer, clue, answer) in [(2, Clue::Roots, "Go right through"), (0, Clue::Smell, "Earthy")] {
        phone.place = Place::Layers { field, pit, layer: Some(layer), clue: Some(clue) };
        phone.tap(answer);
        assert_eq!(phone.place, Place::Layers { field, pit, layer: Some(layer), clue: None });
    }
    let depths: Vec<_> =
        phone.pit().layers.iter().map(|layer| (layer.top_mm, Some(layer.bottom_mm))).collect();
    assert_eq!(depths, [(0, Some(200)), (200, Some(300)), (300, Some(500))]);
    assert_eq!(depth::check(&depths), Ok(()));
    let read = &read_field(&phone.fields[0]).pits[1];
    assert_eq!(read.layers.len(), 3);
    assert_eq!(read.layers[1].signs.comes_away, Some(ComesAway::FlatPlates), "the walk still tells");

    phone.place = Place::Layers { field, pit, layer: Some(1), clue: None };
    phone.tap("1\u{a0}cm deeper");
    let read = &read_field(&phone.fields[0]).pits[1];
    let boundaries: Vec<u32> = read.layers.iter().map(|layer| layer.bottom_mm).collect();
    assert_eq!(boundaries, [200, 310, 500], "the lower boundary stands nearer to the thumb");
    phone.place = Place::Layers { field, pit, layer: Some(0), clue: Some(Clue::Smell) };
    phone.tap("Not looked");
    assert_eq!(read_field(&phone.fields[0]).pits[1].layers[0].signs.smell, None);
    assert_can_be_handed_over(&phone);
}

#[test]
fn a_field_is_started_and_its_edge_walked() {
    let mut phone = Phone::new(Language::English, Vec::new());
    phone.tap("Start a field");
    phone.type_in("  ");
    assert_eq!(phone.told, "Give the field a name.");
    phone.type_in(" Withy Holt ");
    assert_eq!(phone.fields[0].field.name, "Withy Holt");
    phone.tap("Edge of the field");
    // A field with a bay: the side back to the first corner crosses others on the way.
    let corners = [
        [2.500, 54.500],
        [2.504, 54.500],
        [2.504, 54.503],
        [2.503, 54.503],
        [2.503, 54.501],
        [2.501, 54.501],
        [2.501, 54.503],
        [2.500, 54.503],
    ];
    for [longitude, latitude] in corners {
        phone.fix = Some(fix_at(longitude, latitude));
        phone.tap("A corner is here");
    }
    assert_eq!(phone.fields[0].field.outline, corners);
    phone.tap("A corner is here");
    assert_eq!(phone.fields[0].field.outline.len(), 8, "the same corner twice is one");
    phone.fix = Some(fix_at(2.502, 54.4995));
    phone.tap("A corner is here");
    assert!(phone.told.starts_with("Not noted"), "{}", phone.told);
    assert_eq!(phone.fields[0].field.outline, corners, "two sides would cross");
    phone.tap("Start the edge anew");
    assert!(phone.fields[0].field.outline.is_empty());
    phone.tap("Undo");
    assert_eq!(phone.fields[0].field.outline, corners);
    assert_can_be_handed_over(&phone);
}

#[test]
fn the_field_one_stands_in_comes_first() {
    let mut phone = Phone::new(Language::English, demo());
    let first =
        |phone: &Phone| phone.screen().rows().next().map(|row| (row.title.clone(), row.lines[2].clone()));
    assert_eq!(first(&phone), Some(("Long Sedge".into(), "You stand in this field.".into())));
    phone.fix = None;
    // Without a position they stand in the order of their names.
    assert_eq!(phone.screen().rows().next().unwrap().title, "Far Drove");
}

#[test]
fn a_place_whose_record_is_gone_shows_the_one_above() {
    let phone = Phone::new(Language::English, field_with_reference());
    let field = phone.fields[0].field.id;
    let gone = RecordId::new(77, [1; 10]);
    let mut phone = phone;
    for place in [
        Place::StartPit { field, pit: Some(gone) },
        Place::KnifeWalk { field, pit: gone },
        Place::NextLook { field, pit: gone },
        Place::HoleEnds { field, pit: gone },
        Place::Moisture { field, pit: gone },
        Place::RollOf { field, pit: gone, surface: true },
        Place::Layers { field, pit: gone, layer: Some(1), clue: Some(Clue::Roots) },
        Place::Roll { field, pit: gone },
        Place::Call { field, pit: gone },
    ] {
        phone.place = place;
        assert_eq!(phone.screen().place, Place::Field { field }, "{place:?}");
    }
    for place in [Place::Field { field: gone }, Place::Outline { field: gone }] {
        phone.place = place;
        assert_eq!(phone.screen().place, Place::Fields, "{place:?}");
    }
    let stale = Act::Pit(pitface_core::screen::pit::PitAct::Same);
    let result = pitface_core::screen::tap(
        Place::KnifeWalk { field, pit: gone },
        &stale,
        pitface_core::screen::Input::default(),
        &phone.world(),
        &mut || gone,
    );
    assert!(result.is_err(), "an act on what is gone saves nothing");
}

#[test]
fn an_older_place_without_the_newer_details_is_still_read() {
    let field = Field::new(RecordId::new(5, [1; 10]), "x").id;
    let text = format!("{{\"next_look\":{{\"field\":\"{field}\",\"pit\":\"{field}\",\"skipped\":[0]}}}}");
    assert!(serde_json::from_str::<Place>(&text).is_ok());
}
