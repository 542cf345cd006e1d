//! A machine described and set by taps alone, and the small screens: own details, photos, handing over, the plan.

use crate::screen_machine_support;

use pitface_core::place::walk;
use pitface_core::record::{Drive, FieldNotes, Tractor};
use pitface_core::screen::behind::{BehindAct, PassSaid};
use pitface_core::screen::machine::{MachineAct, Measured};
use pitface_core::screen::on_plan::BY_HAND_M;
use pitface_core::screen::own::{Light, OwnAct, Setting};
use pitface_core::screen::{Act, Ask, Place, Screen};
use pitface_core::units::LengthUnit;
use pitface_core::words::Language;
use screen_machine_support::{Phone, answers, asks, demo, plain, said, screen_is_sound};

fn phone(place: impl Fn(&FieldNotes) -> Place, language: Language) -> Phone {
    let fields = demo();
    Phone::at(place(&fields[0]), fields, language, LengthUnit::Centimetres)
}

fn machines(notes: &FieldNotes) -> Place {
    Place::Machine { field: notes.field.id, machine: None }
}

fn known(screen: &Screen) -> String {
    said(screen).join("\n")
}

#[test]
fn a_machine_described_by_taps_alone_ends_in_a_setting() {
    let mut phone = phone(machines, Language::English);
    let before = phone.fields.clone();
    phone.use_tool("Describe a machine");
    phone.press("How many legs", "3");
    phone.press("How far is it from leg to leg?", "60");
    assert_eq!(phone.fields, before, "nothing is kept before the third measure");
    phone.press("How wide is the foot", "8");
    assert!(matches!(phone.place, Place::Machine { machine: Some(_), .. }));
    phone.open("From leg to leg");
    phone.press("How far is it from leg to leg?", "55");
    phone.open("Legs");
    phone.press("How many legs", "4");
    phone.open("Foot, without wings");
    phone.press("How wide is the foot", "7");
    phone.open("Wings");
    phone.press("How wide is it over both wings?", "29");
    phone.press("How far do the wings lift?", "6");
    phone.open("Shallow tines before the legs");
    phone.press("Do shallow tines run", "Fitted");
    phone.press("How deep do the shallow tines run?", "15");
    phone.open("Deepest tips");
    phone.press("How deep can the tips be set?", "45");
    phone.open("Speed");
    phone.press("How slow", "4");
    phone.press("How fast", "7.5");
    phone.open("Tractor");
    phone.press("What power", "130 kW");
    phone.press("What pulls", "Rear wheels with smaller front wheels");
    phone.open("Tractor");
    phone.use_tool("+ 5 kW");
    let machine = phone.fields[0].machines.last().unwrap().clone();
    assert_eq!(machine.name, "4 legs, 55 cm apart", "a name nobody typed goes with the measures");
    assert_eq!((machine.legs, machine.spacing_mm, machine.foot_width_mm), (4, 550, 70));
    assert_eq!(machine.wings.map(|wings| (wings.width_mm, wings.lift_mm)), Some((290, Some(60))));
    assert_eq!(machine.leading.and_then(|leading| leading.depth_mm), Some(150));
    assert_eq!(machine.speed.map(|speed| (speed.lo_kmh, speed.hi_kmh)), Some((4.0, 7.5)));
    assert_eq!(machine.tractor, Some(Tractor { power_kw: 135.0, drive: Drive::FrontAssist }));
    let screen = phone.screen(&phone.words());
    screen_is_sound(&screen);
    let said = known(&screen);
    println!("{said}");
    for told in ["Set the tips to", "tips at", "The spacing: ", "The layer: ", "[Section across the machine]"]
    {
        assert!(said.contains(told), "{told} in {said}");
    }
}

#[test]
fn what_does_not_fit_is_the_headline() {
    let mut phone = phone(machines, Language::English);
    let field = phone.fields[0].field.id;
    let machine = phone.fields[0].machines[0].id;
    phone.place = Place::Machine { field, machine: Some(machine) };
    let headline = |phone: &Phone| plain(&phone.screen(&phone.words()).answer.unwrap().text);
    println!("{}", headline(&phone));
    // Invented: a machine that reaches a hand's width less than is wanted.
    phone.fields[0].machines[0].reach_mm = Some(200);
    assert!(headline(&phone).starts_with("It does not reach"), "{}", headline(&phone));
    phone.fields[0].field.texture = None;
    assert_eq!(headline(&phone), "It cannot be set yet");
    let screen = phone.screen(&phone.words());
    assert_eq!(screen.next.unwrap().label, "Say the texture of the soil");
    // No pit, nothing to loosen.
    phone.fields[0].pits.clear();
    assert_eq!(headline(&phone), "Nothing is to be loosened here");
}

#[test]
fn a_machine_that_has_worked_is_set_anew_as_another_one() {
    let mut phone = phone(
        |notes| Place::Machine { field: notes.field.id, machine: Some(notes.machines[0].id) },
        Language::German,
    );
    let before = phone.fields[0].clone();
    phone.open("Zinkenabstand");
    phone.press("Wie groß ist der Zinkenabstand?", "70");
    assert_eq!(&phone.fields[0].machines[..2], &before.machines[..]);
    assert_eq!(phone.fields[0].passes, before.passes);
    let anew = phone.fields[0].machines[2].clone();
    assert_eq!((anew.spacing_mm, anew.name), (700, format!("{} 2", before.machines[0].name)));
    assert!(!phone.told.is_empty());
    // From now on it is its own.
    phone.open("Zinkenabstand");
    phone.press("Wie groß ist der Zinkenabstand?", "65");
    assert_eq!(phone.fields[0].machines.len(), 3);
    assert_eq!(phone.fields[0].machines[2].spacing_mm, 650);
}

#[test]
fn a_machine_of_another_field_is_taken_over() {
    let mut phone = phone(machines, Language::English);
    // Mere Piece has the machine of Lapwing Ground, so there is nothing to take over.
    assert!(!known(&phone.screen(&phone.words())).contains("Mere Piece: "));
    phone.fields[1].machines[0].legs = 7;
    let screen = phone.screen(&phone.words());
    assert!(known(&screen).contains("Mere Piece: "));
    let from = phone.fields[1].field.id;
    let machine = phone.fields[1].machines[0].clone();
    let copy = MachineAct::Copy { from, machine: machine.id };
    phone.tap(&Act::Machine(copy), None, &phone.words());
    let taken = phone.fields[0].machines.last().unwrap();
    assert_eq!((taken.legs, &taken.name), (7, &format!("{} 2", machine.name)), "one goes by that name here");
    assert_ne!(taken.id, machine.id);
}

#[test]
fn a_name_has_to_be_one() {
    let mut phone = phone(
        |notes| Place::Machine { field: notes.field.id, machine: Some(notes.machines[0].id) },
        Language::German,
    );
    let words = phone.words();
    phone.tap(&Act::Machine(MachineAct::Name), Some("  Hofgrubber "), &words);
    assert_eq!(phone.fields[0].machines[0].name, "Hofgrubber");
    for act in [Act::Machine(MachineAct::Name), Act::Own(OwnAct::Name)] {
        let before = phone.clone();
        let fault = phone.try_tap(&act, Some("  "), &words).unwrap_err();
        assert_eq!(fault.wrong, "Es fehlt noch ein Name.");
        assert_eq!((&phone.fields, &phone.own), (&before.fields, &before.own));
    }
}

#[test]
fn the_first_start_asks_for_the_language_and_own_details_are_one_question_a_screen() {
    let mut phone = Phone::at(Place::Welcome, Vec::new(), Language::English, LengthUnit::Centimetres);
    phone.own.language = None;
    let screen = phone.screen(&phone.words());
    let labels: Vec<&str> = answers(&screen).iter().map(|button| button.label.as_str()).collect();
    assert_eq!(labels, ["English", "Deutsch"]);
    phone.tap(&Act::Own(OwnAct::Language(Language::German)), None, &phone.words());
    assert_eq!((phone.own.language, phone.place), (Some(Language::German), Place::Fields));

    for (setting, label) in
        [(Setting::Hand, "Linken Hand"), (Setting::Units, "Zoll"), (Setting::Light, "Dunkel")]
    {
        phone.place = Place::Setting { setting };
        phone.press("", label);
        assert_eq!(phone.place, Place::Own);
    }
    assert!(phone.own.left_handed && phone.own.unit == LengthUnit::Inches);
    assert_eq!(phone.own.light, Light::Dark);
}

#[test]
fn a_pit_is_moved_on_the_plan_by_taps() {
    let mut phone =
        phone(|notes| Place::OnPlan { field: notes.field.id, pit: notes.pits[1].id }, Language::English);
    let at = |phone: &Phone| {
        let at = phone.fields[0].pits[1].at.unwrap();
        ([at.longitude_deg, at.latitude_deg], at.accuracy_m)
    };
    let (from, _) = at(&phone);
    for label in ["North", "East", "East"] {
        phone.press("In long steps", label);
    }
    phone.press("In short steps", "South");
    let (to, accuracy_m) = at(&phone);
    assert_eq!(accuracy_m, Some(BY_HAND_M));
    let way = walk(from, to);
    assert!((way.distance_m - f64::hypot(50.0, 20.0)).abs() < 0.05, "{way:?}");
    assert!((way.bearing_deg - f64::atan2(50.0, 20.0).to_degrees()).abs() < 0.2, "{way:?}");
    assert_eq!(phone.told, "Moved 5\u{a0}m to the south.");

    // A pit without a place stands where the last one was dug; keeping it there saves that.
    phone.fields[0].pits[1].at = None;
    let screen = phone.screen(&phone.words());
    screen_is_sound(&screen);
    phone.press_main();
    let last = phone.fields[0].pits.iter().filter(|pit| pit.id != phone.fields[0].pits[1].id);
    let last = last.max_by_key(|pit| pit.dug).unwrap().at.unwrap();
    assert!(walk(at(&phone).0, [last.longitude_deg, last.latitude_deg]).distance_m < 0.01);
    assert!(matches!(phone.place, Place::StartPit { .. }));
}

#[test]
fn a_field_of_which_nothing_has_a_place_has_no_plan() {
    let mut fields = demo();
    let field = &mut fields[0];
    field.field.outline.clear();
    field.field.parts.clear();
    field.field.lines.clear();
    field.pits.iter_mut().for_each(|pit| pit.at = None);
    let place = Place::OnPlan { field: field.field.id, pit: field.pits[0].id };
    let mut phone = Phone::at(place, fields, Language::German, LengthUnit::Inches);
    let screen = phone.screen(&phone.words());
    screen_is_sound(&screen);
    // It leads to where a place comes from.
    let edge = Place::Outline { field: phone.fields[0].field.id };
    assert_eq!(screen.next.unwrap().does, pitface_core::screen::Does::Act(Act::Go(edge)));
    assert!(screen.picture.is_none());
    // With one pit placed there is a plan around it.
    phone.fields[0].pits[1].at = demo()[0].pits[1].at;
    let screen = phone.screen(&phone.words());
    screen_is_sound(&screen);
    assert!(screen.next.is_some() && known(&screen).contains("[Plan"));
}

#[test]
fn handing_over_says_that_positions_leave() {
    let phone = phone(|notes| Place::HandOver { field: notes.field.id }, Language::English);
    let screen = phone.screen(&phone.words());
    let said = known(&screen);
    println!("{said}");
    assert!(said.contains("Lapwing Ground: 8 pits, 3 passes.") && said.contains("Positions leave"));
    let field = phone.fields[0].field.id;
    assert!(asks(&screen).contains(&&Ask::ShareField { field }));
    assert!(screen.next.unwrap().enabled);
}

#[test]
fn handing_everything_over_says_so_too_and_takes_in() {
    let phone = phone(|_| Place::Partners, Language::English);
    let screen = phone.screen(&phone.words());
    assert!(known(&screen).contains("Positions leave"));
    for with_photos in [true, false] {
        assert!(asks(&screen).contains(&&Ask::ShareBundle { to: None, with_photos }));
    }
    assert!(asks(&screen).contains(&&Ask::OpenFile));
}

#[test]
fn a_hole_only_begun_keeps_a_field_from_leaving() {
    let mut phone = phone(|notes| Place::HandOver { field: notes.field.id }, Language::German);
    phone.fields[0].passes[0].after_digs[0].firm_mm.truncate(2);
    let screen = phone.screen(&phone.words());
    screen_is_sound(&screen);
    assert!(!screen.next.as_ref().unwrap().enabled);
    assert!(screen.rows().next().is_some());
}

#[test]
fn acts_are_written_as_plain_json() {
    let acts = [
        (
            Act::Machine(MachineAct::Measured(Measured::SpacingMm(500))),
            r#"{"machine":{"measured":{"spacing_mm":500}}}"#,
        ),
        (Act::Behind(BehindAct::Read(330)), r#"{"behind":{"read":330}}"#),
        (Act::Behind(BehindAct::Pass(PassSaid::TipMm(None))), r#"{"behind":{"pass":{"tip_mm":null}}}"#),
        (Act::Own(OwnAct::LeftHanded(true)), r#"{"own":{"left_handed":true}}"#),
    ];
    for (act, written) in acts {
        assert_eq!(serde_json::to_string(&act).unwrap(), written);
        assert_eq!(serde_json::from_str::<Act>(written).unwrap(), act);
    }
}
