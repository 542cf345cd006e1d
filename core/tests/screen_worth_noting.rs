//! What is worth noting of a field is asked on its screen and on that of the call it bears on, and nowhere else; and what a
//! line is, said on its screen, changes what the call says.

use crate::advice_fixture;
use crate::screen_pit_support;

use advice_fixture::{fit_to_loosen, good, id, layer, notes, reference, signs, sound_pit, sound_subsoil};
use pitface_core::record::{Buried, BuriedLine, Call, FieldNotes, LineSort, PlaceKind, Sign, Unknown};
use pitface_core::screen::field::line::LineAsked;
use pitface_core::screen::{Act, Does, Place, Screen};
use pitface_core::words::{Detail, Language};
use screen_pit_support::{Phone, demo};

fn at_field(notes: FieldNotes) -> Phone {
    let mut phone = Phone::new(Language::English, vec![notes]);
    phone.place = Place::Field { field: phone.fields[0].field.id };
    phone
}

/// The details that ways of a screen lead to.
fn asked(screen: &Screen) -> Vec<Detail> {
    let detail = |does: &Does| match does {
        Does::Act(Act::Go(Place::Detail { detail, .. })) => Some(*detail),
        _ => None,
    };
    screen.rows().filter_map(|row| detail(&row.does)).collect()
}

fn named(name: &str) -> FieldNotes {
    demo().into_iter().find(|notes| notes.field.name == name).unwrap()
}

#[test]
fn a_field_to_be_loosened_asks_its_slope_until_it_is_noted() {
    let mut notes = fit_to_loosen();
    notes.field.stony = Some(false);
    notes.field.tillage_mm = Some(200);
    notes.field.plates_soft = Some(false);
    let mut phone = at_field(notes);
    let screen = phone.screen();
    assert_eq!(asked(&screen), [Detail::Slope, Detail::NextSown]);
    let row = screen.rows().find(|row| row.title == "Slope of the ground?").unwrap();
    assert_eq!(row.lines, ["Not noted yet; it can change what to mind on the open ground."]);
    phone.tap("Slope of the ground?");
    phone.tap("9\u{a0}%");
    assert_eq!(phone.fields[0].field.slope_percent, Some(9));
    phone.place = Place::Field { field: phone.fields[0].field.id };
    phone.tap("Day the next crop is sown?");
    phone.tap("In 2 weeks");
    assert_eq!(phone.fields[0].field.next_sown.unwrap().to_string(), "2026-09-26", "from 12 September on");
    phone.place = Place::Field { field: phone.fields[0].field.id };
    assert!(!asked(&phone.screen()).iter().any(|its| [Detail::Slope, Detail::NextSown].contains(its)));
}

#[test]
fn a_field_left_as_it_is_asks_neither_slope_nor_sowing_and_at_most_two_at_once() {
    let sound = at_field(notes(vec![reference(), sound_pit(1, PlaceKind::Open)]));
    let none = asked(&sound.screen());
    assert!(!none.contains(&Detail::Slope) && !none.contains(&Detail::NextSown), "{none:?}");
    for notes in demo() {
        let ways = asked(&at_field(notes.clone()).screen());
        assert!(ways.len() <= 2 && (!notes.pits.is_empty() || ways.is_empty()), "{ways:?}");
    }
}

#[test]
fn the_call_shows_its_first_caution_of_now_and_all_of_them_folded_once() {
    let mut seen = 0;
    for notes in demo() {
        let field = notes.field.id;
        let mut phone = at_field(notes.clone());
        let answer = phone.world().answer(field).unwrap();
        for (index, pit) in notes.pits.iter().enumerate().filter(|(_, pit)| pit.place != PlaceKind::Reference)
        {
            phone.place = Place::Call { field, pit: pit.id };
            let screen = phone.screen();
            let Some(call) = answer.call_at(index).filter(|_| !screen.caution.is_empty()) else { continue };
            assert_eq!(screen.caution, phone.words.of(call.cautions_now()[0]));
            for &caution in &call.cautions {
                let text = phone.words.of(caution);
                let lines = screen.more.iter().flat_map(|section| &section.lines);
                assert_eq!(lines.filter(|line| **line == text).count(), 1, "{text}");
            }
            let here = answer.worth_asking().iter().filter(|worth| worth.zones.contains(&call.zone));
            assert_eq!(asked(&screen).len(), here.count().min(2), "only what bears on this call");
            seen += 1;
        }
    }
    assert!(seen > 3, "{seen}");
}

#[test]
fn the_machine_shows_first_what_the_ground_asks_for() {
    let mut notes = named("Mere Piece");
    notes.field.slope_percent = Some(9);
    let field = notes.field.id;
    let mut phone = at_field(notes);
    let answer = phone.world().answer(field).unwrap();
    let call = answer.to_loosen().next().unwrap();
    let machine = Some(answer.notes.machines[0].id);
    phone.place = Place::Machine { field, machine };
    let screen = phone.screen();
    assert_eq!(screen.caution, phone.words.of(call.cautions_now()[0]));
    for &caution in call.cautions_now() {
        let text = phone.words.of(caution);
        let lines = screen.more.iter().flat_map(|section| &section.lines);
        assert_eq!(lines.filter(|line| **line == text).count(), 1, "{text}");
    }
}

/// Of unknown depth a drain in stone is taken at 500 mm with 150 mm kept above it, a bare one with 200 mm (our judgement):
/// the tip of 305 mm goes over the one and not over the other.
#[test]
fn what_a_drain_is_laid_in_changes_the_call() {
    let mut notes = fit_to_loosen();
    notes.field.outline = vec![[2.5, 54.5], [2.505, 54.5], [2.505, 54.504], [2.5, 54.504]];
    let along = vec![[2.499, 54.502], [2.506, 54.502]];
    let drain = BuriedLine {
        id: id(70),
        kind: Buried::Drain,
        along,
        depth_mm: None,
        sort: None,
        unknown: Unknown::new(),
    };
    notes.field.lines = vec![drain];
    let field = notes.field.id;
    let mut phone = at_field(notes);
    for (label, sort, call) in [
        ("Drain in stone", Some(LineSort::DrainInStone), Call::Loosen),
        ("Drain without stone", Some(LineSort::BareDrain), Call::AskSpecialist),
    ] {
        phone.place = Place::Line { field, line: id(70), asked: LineAsked::Sort };
        phone.tap(label);
        assert_eq!(
            phone.place,
            Place::Lines { field, line: Some(id(70)) },
            "an answer leads back to the line"
        );
        assert_eq!(phone.fields[0].field.lines[0].sort, sort);
        assert_eq!(phone.told, format!("{label}, 2 places"));
        phone.place = Place::Field { field };
        let called = phone.words.label(call);
        assert!(phone.screen().rows().next().unwrap().title.contains(&called), "{called}");
    }
    phone.place = Place::Line { field, line: id(70), asked: LineAsked::Sort };
    let power = phone.words.label(LineSort::PowerCable);
    assert!(!phone.screen().buttons().any(|button| button.label == power), "a drain carries no power");
}

#[test]
fn a_day_gone_by_or_far_ahead_is_no_day_of_the_next_sowing() {
    let mut phone = at_field(fit_to_loosen());
    let field = phone.fields[0].field.id;
    for (text, day) in
        [("2026-09-11", None), ("2062-10-01", None), ("12.10.2026", Some("2026-10-12".to_owned()))]
    {
        phone.place = Place::Detail { field, detail: Detail::NextSown };
        phone.type_in(text);
        assert_eq!(phone.fields[0].field.next_sown.map(|day| day.to_string()), day, "{}", phone.told);
    }
}

/// A layer that only the knife tells of: where stones stop it, that is no sign of harm.
#[test]
fn a_field_whose_call_hangs_on_stones_asks_for_them() {
    let mut notes = fit_to_loosen();
    let hard = signs(&[(Sign::Resistance, "hard_push")]);
    notes.pits[1].layers =
        vec![layer(0, 220, good()), layer(220, 280, hard), layer(280, 450, sound_subsoil())];
    let mut phone = at_field(notes);
    let field = phone.fields[0].field.id;
    assert_eq!(asked(&phone.screen()), [Detail::Stony]);
    let row = phone.screen().rows().find(|row| row.title == "Many stones?").cloned().unwrap();
    assert_eq!(row.lines, ["Not noted yet; it can change the call on the open ground."]);
    let mut calls = Vec::new();
    for stony in ["No", "Yes"] {
        phone.place = Place::Detail { field, detail: Detail::Stony };
        phone.tap(stony);
        phone.place = Place::Field { field };
        assert!(asked(&phone.screen()).is_empty(), "it has answered");
        calls.push(phone.world().answer(field).unwrap().advice.zones[0].call);
    }
    assert_ne!(calls[0], calls[1]);
    assert!(asked(&at_field(named("Long Sedge")).screen()).is_empty(), "nothing can change there");
}
