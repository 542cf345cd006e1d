//! A pass and the hole behind it by taps alone: eight readings in few taps, what is seen, what it says.

#![allow(clippy::unwrap_used, reason = "a test may fail")]

mod screen_machine_support;

use pitface_core::record::{Clods, FieldNotes, Profile, Smear, Zone};
use pitface_core::screen::Place;
use pitface_core::screen::behind::READINGS;
use pitface_core::units::LengthUnit;
use pitface_core::words::Language;
use screen_machine_support::{Phone, answers, asks, demo, plain, said, screen_is_sound};

fn phone(fields: Vec<FieldNotes>) -> Phone {
    let place = Place::Pass { field: fields[0].field.id, pass: None };
    Phone::at(place, fields, Language::English, LengthUnit::Centimetres)
}

/// The depths offered for the next reading, centimetres.
fn offered(phone: &Phone) -> Vec<u32> {
    let screen = phone.screen(&phone.words());
    answers(&screen)
        .iter()
        .map(|button| plain(&button.label).trim_end_matches(" cm").parse().unwrap())
        .collect()
}

/// Takes a reading: the nearest button, then steps of a centimetre. Gives the taps.
fn read(phone: &mut Phone, cm: u32) -> usize {
    let nearest = offered(phone).into_iter().min_by_key(|offered| offered.abs_diff(cm)).unwrap();
    phone.press("Reading", &format!("{nearest} cm"));
    let step = if nearest > cm { "− 1 cm" } else { "+ 1 cm" };
    let steps = nearest.abs_diff(cm) as usize;
    (0..steps).for_each(|_| phone.press("The last reading", step));
    1 + steps
}

fn new_dig(phone: &mut Phone) {
    phone.press_main();
    phone.press("Which machine?", "winged feet, 50 cm apart");
    phone.press("Over which zone?", "Headland");
    phone.press("Depth of the tips", "33 cm");
    phone.press("Speed", "6 km/h");
    phone.press("Which day?", "Today");
    phone.press("How much of it?", "Trial strip");
    phone.press("Soil from the depth of the tips", "Cracks into short lengths");
    phone.press_main();
}

#[test]
fn eight_readings_take_twelve_taps_at_most() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    let (mut taps, mut offered_at) = (0, Vec::new());
    for (index, cm) in [33, 33, 30, 26, 25, 29, 33, 34].into_iter().enumerate() {
        let screen = phone.screen(&phone.words());
        screen_is_sound(&screen);
        assert!(screen.wants_position && screen.awake);
        let drawn = screen.picture.is_some();
        assert_eq!(drawn, index > 0, "the section fills from the first reading on");
        offered_at = offered(&phone);
        taps += read(&mut phone, cm);
    }
    println!("{READINGS} readings in {taps} taps; {offered_at:?}");
    assert!(taps <= 12, "{taps}");
    let dig = &phone.fields[0].passes.last().unwrap().after_digs[0];
    assert_eq!(dig.firm_mm, [330, 330, 300, 260, 250, 290, 330, 340]);
    assert_eq!(dig.by.as_deref(), Some("walker"));
    let screen = phone.screen(&phone.words());
    let said = said(&screen);
    println!("{said:#?}");
    assert!(said[0].starts_with("Done:"), "{said:?}");
    assert!(!screen.wants_position);
}

#[test]
fn a_hole_half_read_says_nothing_of_the_pass() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    for cm in [33, 33, 33, 33] {
        read(&mut phone, cm);
    }
    let first = said(&phone.screen(&phone.words()));
    assert!(first.iter().any(|line| line.contains("4 to go")), "{first:?}");
    assert!(first.iter().all(|line| !line.contains("Done")), "{first:?}");
    phone.press_main();
    let after = said(&phone.screen(&phone.words()));
    assert!(after.iter().all(|line| !line.contains("loose")), "{after:?}");
    // The day after it is taken as all there is, and says so.
    phone.now += chrono::TimeDelta::days(1);
    let pass = phone.fields[0].passes.last().unwrap();
    phone.place =
        Place::AfterDig { field: phone.fields[0].field.id, pass: pass.id, dig: pass.after_digs[0].id };
    let after = said(&phone.screen(&phone.words()));
    assert!(after.iter().any(|line| line.contains("few readings")), "{after:?}");
}

#[test]
fn what_is_seen_is_one_tap_and_a_second_takes_it_back() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    for cm in [33, 20, 20, 20, 20, 20, 20, 33] {
        read(&mut phone, cm);
    }
    phone.press("Form of the loosened ground", "Open above, a narrow slot below");
    phone.press("Walls of the slot", "Smeared");
    phone.press("Lumps", "Larger than a fist");
    phone.press("Is there a slot", "No");
    phone.press("Bottom of the slot", "33 cm");
    phone.press("Bottom of the slot", "35 cm");
    let dig = phone.fields[0].passes.last().unwrap().after_digs[0].clone();
    assert_eq!(dig.profile, Some(Profile::Y));
    assert_eq!(dig.smear, Some(Smear::Smeared));
    assert_eq!(dig.clods, Some(Clods::Large));
    assert_eq!(dig.old_slots, Some(false));
    assert_eq!(dig.slots_mm, [330, 350]);
    assert_eq!((dig.lift, dig.plates, dig.subsoil_up, dig.feet), (None, None, None, None));
    let screen = phone.screen(&phone.words());
    let headings = said(&screen);
    assert!(headings.iter().any(|said| said.starts_with("Likely causes")), "{headings:?}");
    phone.press("Walls of the slot", "Smeared");
    assert_eq!(phone.fields[0].passes.last().unwrap().after_digs[0].smear, None);
    // Whoever goes to the feet is told first.
    let feet = said(&screen).into_iter().find(|said| said.starts_with("Feet and wings"));
    assert!(feet.unwrap().contains("keys out"));
}

#[test]
fn a_pass_is_noted_tap_by_tap() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    let notes = &phone.fields[0];
    let pass = notes.passes.last().unwrap();
    assert_eq!(pass.zone, Some(Zone::Headland));
    assert_eq!((pass.tip_mm, pass.speed_kmh), (Some(330), Some(6.0)));
    assert_eq!(pass.done, Some(phone.now.date_naive()));
    assert_eq!((pass.rolls.len(), pass.rolls[0].depth_mm), (1, 330));
    phone.place = phone.place.above().unwrap();
    phone.press("Depth of the tips", "+ 1 cm");
    phone.press("Speed", "− 0.5 km/h");
    phone.press("Have heavy wheels", "Yes, today");
    let pass = phone.fields[0].passes.last().unwrap().clone();
    assert_eq!((pass.tip_mm, pass.speed_kmh), (Some(340), Some(5.5)));
    assert_eq!(pass.driven_on, pass.done);
    let said = said(&phone.screen(&phone.words()));
    assert!(said.iter().any(|line| line.contains("on the day it was loosened")), "{said:?}");
}

#[test]
fn the_farmer_sees_before_and_after_and_has_nothing_to_operate() {
    let fields = demo();
    let field = fields[0].field.id;
    let pit = fields[0].pits[1].id;
    let bare = FieldNotes { passes: Vec::new(), ..fields[0].clone() };
    for (notes, pit) in [(fields[0].clone(), None), (fields[0].clone(), Some(pit)), (bare, None)] {
        let place = Place::Show { field, pit };
        let phone = Phone::at(place, vec![notes], Language::English, LengthUnit::Centimetres);
        let screen = phone.screen(&phone.words());
        println!("{:?}", said(&screen));
        assert!(screen.answer.is_some() && screen.picture.is_some());
        assert!(screen.blocks.is_empty() && screen.tools.is_empty() && screen.next.is_none());
        assert!(screen.back.is_some() && asks(&screen).is_empty());
    }
}
