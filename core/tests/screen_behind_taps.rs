//! A pass and the hole behind it by taps alone: eight readings in few taps, what is seen, what it says.

use crate::screen_machine_support;

use pitface_core::record::{AfterDig, Clods, Extent, FieldNotes, Profile, Smear, Zone};
use pitface_core::screen::behind::HoleStep;
use pitface_core::screen::{Block, Does, Place};
use pitface_core::units::LengthUnit;
use pitface_core::words::Language;
use screen_machine_support::{Phone, answers, asks, demo, plain, said, screen_is_sound};

fn phone(fields: Vec<FieldNotes>) -> Phone {
    let place = Place::Pass { field: fields[0].field.id, pass: None };
    Phone::at(place, fields, Language::English, LengthUnit::Centimetres)
}

/// Begins a pass, answers what is asked of it, and goes to the hole behind it.
fn new_dig(phone: &mut Phone) {
    phone.use_tool("A new pass");
    phone.press_main();
    phone.press("Which machine?", "winged feet, 50 cm apart");
    phone.open("Ground");
    phone.press("Over which zone?", "Headland");
    phone.press("How much of it?", "Trial strip");
    phone.open("Tip depth");
    phone.press("How deep did the tips run?", "33");
    phone.open("Speed");
    phone.press("How fast did it run?", "6");
    phone.open("Day");
    phone.press("Which day?", "Today");
    phone.open("Soil from the tips, rolled");
    phone.press("What does soil from the tips do", "Cracks into short lengths");
    phone.press_main();
}

/// Takes a reading.
fn read(phone: &mut Phone, cm: u32) {
    phone.press("How deep to firm soil?", &cm.to_string());
}

fn last_dig(phone: &Phone) -> AfterDig {
    phone.fields[0].passes.last().unwrap().after_digs[0].clone()
}

#[test]
fn eight_readings_and_what_decides_take_twelve_taps() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    let cms = [33, 33, 30, 26, 25, 29, 33, 34];
    for (index, cm) in cms.into_iter().enumerate() {
        let screen = phone.screen(&phone.words());
        screen_is_sound(&screen);
        assert!(screen.wants_position && screen.awake);
        let picture = screen.picture.as_ref().unwrap();
        assert_eq!(picture.touches.len(), index, "every reading taken can be touched");
        assert_eq!(screen.rows().count(), index, "and each touch has a row that does the same");
        assert!(screen.answer.unwrap().line.starts_with(&format!("Reading {} of 8", index + 1)));
        read(&mut phone, cm);
    }
    assert_eq!(last_dig(&phone).firm_mm, cms.map(|cm| cm * 10));
    assert_eq!(last_dig(&phone).by.as_deref(), Some("walker"));
    let asked = [
        ("What form has the loosened ground?", "Open to the surface, straight sides"),
        ("Are the walls of the slot smeared?", "Not smeared"),
        ("How large are the lumps?", "Small"),
        ("Are plates of the layer left?", "None left"),
    ];
    for (question, answer) in asked {
        phone.press(question, answer);
    }
    assert!(cms.len() + asked.len() <= 12);
    let screen = phone.screen(&phone.words());
    screen_is_sound(&screen);
    let answer = screen.answer.as_ref().unwrap();
    println!("{answer:?}\n{:#?}", said(&screen));
    assert_eq!(answer.text, "Loosened as wanted");
    assert!(plain(&answer.line).contains("% of the layer is broken"), "{}", answer.line);
    // A strip that is done leads on to the zone.
    assert_eq!(screen.next.unwrap().label, "Record the pass over the zone");
    assert!(!screen.wants_position);
}

#[test]
fn nothing_is_saved_by_looking() {
    let mut phone = phone(demo());
    let before = phone.fields.clone();
    phone.use_tool("A new pass");
    for row in ["Machine", "Ground", "Tip depth", "Speed", "Day"] {
        let here = phone.place;
        phone.open(row);
        phone.place = phone.place.above().unwrap();
        assert_eq!(phone.place, here, "back leads to the pass that is not saved yet");
    }
    assert_eq!(phone.fields, before);
    phone.open("Tip depth");
    phone.press("How deep did the tips run?", "34");
    assert_eq!(phone.fields[0].passes.len(), before[0].passes.len() + 1);
    // The hole too begins with its first answer.
    let dig = Place::InHole {
        field: phone.fields[0].field.id,
        pass: phone.fields[0].passes.last().unwrap().id,
        dig: None,
        step: HoleStep::Reading(0),
        from_mm: None,
    };
    phone.place = dig;
    phone.use_tool("Deeper");
    phone.use_tool("Not read");
    assert_eq!(phone.fields[0].passes.last().unwrap().after_digs, []);
    phone.press("What form has the loosened ground?", "Open above, a narrow slot below");
    assert_eq!(last_dig(&phone).profile, Some(Profile::Y));
}

#[test]
fn an_earlier_reading_is_put_right_on_the_section() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    for cm in [33, 33, 30] {
        read(&mut phone, cm);
    }
    let words = phone.words();
    let screen = phone.screen(&words);
    let touch = screen.picture.unwrap().touches[1].clone();
    assert_eq!(plain(&touch.label), "Reading 2: 33 cm");
    let Does::Act(act) = touch.does else { panic!("{touch:?}") };
    phone.tap(&act, None, &words);
    let screen = phone.screen(&words);
    assert_eq!(answers(&screen).iter().filter(|button| button.chosen).count(), 1);
    read(&mut phone, 31);
    assert_eq!(last_dig(&phone).firm_mm, [330, 310, 300]);
    // And on with the fourth.
    assert!(phone.screen(&words).answer.unwrap().line.starts_with("Reading 4 of 8"));
    // A depth outside the numbers offered is reached by moving them.
    phone.use_tool("Deeper");
    read(&mut phone, 48);
    assert_eq!(last_dig(&phone).firm_mm, [330, 310, 300, 480]);
}

#[test]
fn a_hole_half_read_says_nothing_of_the_pass() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    for cm in [33, 33, 33, 33] {
        read(&mut phone, cm);
    }
    let first = said(&phone.screen(&phone.words()));
    assert!(first.iter().any(|line| line.contains("Reading 5 of 8")), "{first:?}");
    assert!(first.iter().all(|line| !line.contains("Loosened")), "{first:?}");
    let field = phone.fields[0].field.id;
    let pass = phone.fields[0].passes.last().unwrap().id;
    phone.place = Place::Pass { field, pass: Some(pass) };
    let screen = phone.screen(&phone.words());
    assert!(said(&screen).iter().all(|line| !line.contains("Loosened")), "{:?}", said(&screen));
    assert_eq!(screen.next.unwrap().label, "Read on");
    // The day after it is taken as all there is, and says so.
    phone.now += chrono::TimeDelta::days(1);
    phone.place = Place::AfterDig { field, pass, dig: last_dig(&phone).id };
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
    phone.press("What form", "Open above, a narrow slot below");
    phone.press("Are the walls", "Smeared");
    phone.press("How large are the lumps?", "Larger than a fist");
    // Large lumps ask for subsoil among them; what is passed over is not asked again.
    phone.use_tool("Not looked");
    let screen = phone.screen(&phone.words());
    assert!(matches!(screen.place, Place::AfterDig { .. }));
    assert!(said(&screen).contains(&"5 not looked".to_owned()), "{:#?}", said(&screen));
    assert!(said(&screen).iter().any(|said| said.starts_with("Likely causes")));
    phone.open("What is seen in the hole");
    phone.open("Older slots");
    phone.press("Is there a slot", "No");
    phone.open("Bottoms of the slots");
    phone.press("How deep is the bottom of the slot?", "33");
    phone.press("How deep is the bottom of the slot?", "35");
    let dig = last_dig(&phone);
    assert_eq!(dig.profile, Some(Profile::Y));
    assert_eq!(dig.smear, Some(Smear::Smeared));
    assert_eq!(dig.clods, Some(Clods::Large));
    assert_eq!(dig.old_slots, Some(false));
    assert_eq!(dig.slots_mm, [330, 350]);
    assert_eq!((dig.lift, dig.plates, dig.subsoil_up, dig.feet), (None, None, None, None));
    phone.place = phone.place.above().unwrap();
    phone.open("Walls of the slot");
    phone.press("Are the walls", "Smeared");
    assert_eq!(last_dig(&phone).smear, None);
    // Whoever goes to the feet is told first.
    phone.place = phone.place.above().unwrap();
    phone.open("Feet and wings");
    assert!(phone.screen(&phone.words()).caution.contains("keys out"));
}

#[test]
fn a_pass_is_noted_tap_by_tap() {
    let mut phone = phone(demo());
    new_dig(&mut phone);
    let notes = &phone.fields[0];
    let pass = notes.passes.last().unwrap();
    assert_eq!((pass.zone, pass.extent), (Some(Zone::Headland), Some(Extent::TrialStrip)));
    assert_eq!((pass.tip_mm, pass.speed_kmh), (Some(330), Some(6.0)));
    assert_eq!(pass.done, Some(phone.now.date_naive()));
    assert_eq!((pass.rolls.len(), pass.rolls[0].depth_mm), (1, 330));
    phone.place = phone.place.above().unwrap();
    phone.open("Tip depth");
    phone.press("How deep did the tips run?", "34");
    phone.open("Speed");
    phone.press("How fast did it run?", "5.5");
    phone.open("Heavy wheels since");
    phone.press("Have heavy wheels", "Today");
    let pass = phone.fields[0].passes.last().unwrap().clone();
    assert_eq!((pass.tip_mm, pass.speed_kmh), (Some(340), Some(5.5)));
    assert_eq!(pass.driven_on, pass.done);
    let screen = phone.screen(&phone.words());
    assert!(screen.caution.contains("on the day it was loosened"), "{:?}", screen.caution);
    assert_eq!(screen.answer.unwrap().text, "No hole behind it yet");
    assert_eq!(screen.next.unwrap().label, "Dig behind it");
    // The same answer once more takes it back.
    phone.open("Speed");
    phone.press("How fast did it run?", "5.5");
    assert_eq!(phone.fields[0].passes.last().unwrap().speed_kmh, None);
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
        let silent = |block: &Block| match block {
            Block::Text(_) => true,
            Block::Drawing(drawn) => drawn.touches.is_empty() && drawn.anywhere.is_none(),
            _ => false,
        };
        assert!(screen.blocks.iter().all(silent), "nothing to operate");
        assert!(screen.tools.is_empty() && screen.next.is_none());
        assert!(screen.back.is_some() && asks(&screen).is_empty());
    }
}

/// Half of a screen of 360 by 640 is 320 points high: what is higher than it is wide shrinks there, its letters with it.
#[test]
fn the_key_of_before_and_after_stands_below_the_drawing() {
    let notes = demo()[0].clone();
    let place = Place::Show { field: notes.field.id, pit: None };
    let phone = Phone::at(place, vec![notes], Language::English, LengthUnit::Centimetres);
    let screen = phone.screen(&phone.words());
    let drawing = &screen.picture.as_ref().unwrap().drawing;
    assert!(drawing.height <= drawing.width, "{} by {}", drawing.width, drawing.height);
    assert!(matches!(screen.blocks.last(), Some(Block::Drawing(_))), "{:?}", said(&screen));
}
