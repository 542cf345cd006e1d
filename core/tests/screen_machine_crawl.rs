//! Every button of the screens of machine, pass, after-dig, show, photos, handing over, plan and own details: what it
//! leads to is sound, in both languages.

use crate::screen_machine_support;
use crate::screen_names;

use pitface_core::record::{Field, FieldNotes, Pit, PlaceKind, RecordId};
use pitface_core::screen::behind::BehindAct;
use pitface_core::screen::{Act, Place, Screen};
use pitface_core::units::LengthUnit;
use pitface_core::words::Language;
use screen_machine_support::{Phone, acts, demo, screen_is_sound};
use screen_names::assert_told_apart;
use std::collections::{HashSet, VecDeque};

/// Returns whether a place is shown by one of these screens.
fn is_here(place: Place) -> bool {
    match place {
        Place::Welcome
        | Place::Own
        | Place::Setting { .. }
        | Place::OnPlan { .. }
        | Place::Photos { .. }
        | Place::Photo { .. }
        | Place::PhotoScale { .. }
        | Place::Machine { .. }
        | Place::NewMachine { .. }
        | Place::SetFor { .. }
        | Place::Measure { .. }
        | Place::Pass { .. }
        | Place::NewPass { .. }
        | Place::PassDetail { .. }
        | Place::InHole { .. }
        | Place::AfterDig { .. }
        | Place::Show { .. }
        | Place::HandOver { .. }
        | Place::Partners
        | Place::Partner { .. }
        | Place::Versions { .. }
        | Place::Personal { .. }
        | Place::Incoming
        | Place::Boundary { .. }
        | Place::OneField { .. }
        | Place::Deleting { .. }
        | Place::WentAway
        | Place::Regretted { .. } => true,
        Place::Fields
        | Place::FoundFields { .. }
        | Place::StartField
        | Place::Outline { .. }
        | Place::Field { .. }
        | Place::Pits { .. }
        | Place::Details { .. }
        | Place::Detail { .. }
        | Place::Lines { .. }
        | Place::Line { .. }
        | Place::StartPit { .. }
        | Place::KnifeWalk { .. }
        | Place::HoleEnds { .. }
        | Place::Moisture { .. }
        | Place::NextLook { .. }
        | Place::Layers { .. }
        | Place::Roll { .. }
        | Place::RollOf { .. }
        | Place::Remark { .. }
        | Place::Call { .. } => false,
    }
}

/// Where these screens are entered from elsewhere.
fn entries(fields: &[FieldNotes]) -> Vec<Place> {
    let mut places = vec![Place::Welcome, Place::Own];
    for notes in fields {
        let field = notes.field.id;
        places.extend([
            Place::Machine { field, machine: None },
            Place::Pass { field, pass: None },
            Place::Show { field, pit: None },
            Place::HandOver { field },
        ]);
        for pit in notes.pits.iter().map(|pit| pit.id) {
            places.extend([
                Place::Show { field, pit: Some(pit) },
                Place::Photos { field, pit },
                Place::OnPlan { field, pit },
            ]);
        }
    }
    places
}

/// A field of which nothing is known but a pit just begun.
fn bare() -> FieldNotes {
    let id = |number| RecordId::new(number, [7; 10]);
    FieldNotes::new(Field::new(id(1), "Long Acre"), vec![Pit::new(id(2), PlaceKind::Open)])
}

/// How many saves in a row the crawl goes on after; the screen after one more is looked at, too.
const SAVES: usize = 1;
/// How many screens it goes on to after a save: what a save changes shows near it.
const ON: usize = 1;

/// Returns what tells one state of the crawl from another: the place, and of a machine being described only which of its
/// measures are there.
fn state(screen: &Screen) -> String {
    if let Place::NewMachine { field, legs, spacing_mm, foot_width_mm } = screen.place {
        let given = [legs, spacing_mm, foot_width_mm].map(|measure| measure.is_some());
        return format!("{field} {given:?}");
    }
    if let Place::Measure { from_mm: Some(_), .. }
    | Place::PassDetail { from_mm: Some(_), .. }
    | Place::InHole { from_mm: Some(_), .. } = screen.place
    {
        // Numbers moved once are like numbers moved twice.
        return format!("{:?} moved", screen.place.above());
    }
    // What is offered tells more than the place alone.
    let acts: Vec<Act> = acts(screen).into_iter().map(|(act, _)| act).collect();
    format!("{} {}", serde_json::to_string(&screen.place).unwrap(), serde_json::to_string(&acts).unwrap())
}

/// Goes through everything from the entries, breadth first; gives the number of screens and of taps.
fn crawl(fields: &[FieldNotes], language: Language, unit: LengthUnit) -> (usize, usize) {
    let mut queue: VecDeque<(Phone, usize, usize)> = entries(fields)
        .into_iter()
        .map(|place| (Phone::at(place, fields.to_vec(), language, unit), 0, 0))
        .collect();
    let mut seen: HashSet<(String, usize)> = HashSet::new();
    let (mut screens, mut taps) = (0, 0);
    while let Some((phone, saves, on)) = queue.pop_front() {
        if !is_here(phone.place) {
            continue;
        }
        let words = phone.words();
        let screen = phone.screen(&words);
        if !seen.insert((state(&screen), saves)) {
            continue;
        }
        screen_is_sound(&screen);
        assert_told_apart(&screen);
        assert_eq!(screen.place, phone.place, "a screen of a place that is there shows that place");
        screens += 1;
        for (act, typed) in acts(&screen) {
            let mut next = phone.clone();
            next.tap(&act, typed.then_some(" Yard subsoiler "), &words);
            taps += 1;
            let saved = !matches!(act, Act::Go(_) | Act::Undo);
            let (count, on) = (saves + usize::from(saved), on + usize::from(!saved && saves > 0));
            if count <= SAVES && on <= ON && !matches!(act, Act::Undo) {
                queue.push_back((next, count, on));
            } else if is_here(next.place) {
                let screen = next.screen(&next.words());
                screen_is_sound(&screen);
                assert_told_apart(&screen);
            }
        }
    }
    (screens, taps)
}

fn crawl_all(language: Language, unit: LengthUnit) {
    let fields = [demo(), vec![bare()]].concat();
    let (screens, taps) = crawl(&fields, language, unit);
    println!("{language:?} {unit:?}: {screens} screens, {taps} taps");
    assert!(screens > 100 && taps > 1_000, "{screens} {taps}");
}

#[test]
fn every_button_leads_to_a_sound_screen_in_english() {
    crawl_all(Language::English, LengthUnit::Centimetres);
}

#[test]
fn every_button_leads_to_a_sound_screen_in_german_and_inches() {
    crawl_all(Language::German, LengthUnit::Inches);
}

#[test]
fn a_record_that_is_gone_is_said_so_and_nothing_is_saved() {
    let fields = demo();
    let gone = RecordId::new(77_777, [9; 10]);
    let place = Place::AfterDig { field: fields[0].field.id, pass: fields[0].passes[0].id, dig: gone };
    let mut phone = Phone::at(place, fields.clone(), Language::German, LengthUnit::Centimetres);
    let words = phone.words();
    let fault = phone.try_tap(&Act::Behind(BehindAct::Read(300)), None, &words).unwrap_err();
    assert_eq!(fault.wrong, words.gone()[0]);
    assert_eq!(phone.fields, fields);
    // The place above it is shown in its stead.
    assert_eq!(phone.screen(&words).place, place.above().unwrap());
}
