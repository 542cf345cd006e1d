//! Details of a field and lines of what lies buried: every button leads to a sound screen, a tap is one save, and what is
//! noted so can be handed over.

use crate::screen_pit_support;

use pitface_core::record::{Buried, Field, FieldNotes, OrganicMatter, RecordId, TextureNote, notes};
use pitface_core::screen::field::FieldAct;
use pitface_core::screen::{Act, Ask, Block, Does, Edit, Input, Place, Screen, show, tap};
use pitface_core::soil::texture::TextureGroup;
use pitface_core::units::LengthUnit;
use pitface_core::words::{Detail, Language, Words};
use screen_pit_support::{Phone, buttons, demo, drawings, fix_at, is_finite, texts};
use std::collections::{HashSet, VecDeque};

fn bare() -> FieldNotes {
    FieldNotes::new(Field::new(RecordId::new(1, [7; 10]), "Long Acre"), Vec::new())
}

/// A phone at a place of its first field.
fn phone_at(place: impl Fn(RecordId) -> Place, fields: Vec<FieldNotes>) -> Phone {
    let mut phone = Phone::new(Language::English, fields);
    phone.place = place(phone.fields[0].field.id);
    phone
}

fn field(phone: &Phone) -> &Field {
    &phone.fields[0].field
}

fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// Taps a button by its label, no-break spaces as plain ones.
fn press(phone: &mut Phone, label: &str) {
    let found = buttons(&phone.screen()).into_iter().rfind(|(its, ..)| plain(its) == label);
    let (its, ..) = found.unwrap_or_else(|| panic!("no {label} on {:#?}", phone.screen()));
    phone.tap(&its);
}

/// Goes to a detail by its row.
fn open(phone: &mut Phone, detail: Detail) {
    phone.place = Place::Details { field: field(phone).id };
    let title = phone.words.label(detail);
    press(phone, &title);
    assert_eq!(phone.place, Place::Detail { field: field(phone).id, detail });
}

fn acts(screen: &Screen) -> Vec<(Act, bool)> {
    let typing = screen.blocks.iter().filter_map(|block| match block {
        Block::Typing { act, .. } => Some((act.clone(), true)),
        _ => None,
    });
    let tapped = buttons(screen).into_iter().filter(|(.., enabled)| *enabled).map(|(_, act, _)| (act, false));
    typing.chain(tapped).collect()
}

#[track_caller]
fn assert_sound(screen: &Screen) {
    for text in texts(screen) {
        assert!(!text.trim().is_empty() && !text.contains(['{', '}', '_']), "{:?}: {text:?}", screen.place);
    }
    assert!(drawings(screen).into_iter().all(is_finite), "{:?}", screen.place);
    assert_eq!(screen.back.is_some(), screen.place.above().is_some());
}

const fn is_here(place: Place) -> bool {
    matches!(
        place,
        Place::Details { .. }
            | Place::Detail { .. }
            | Place::Lines { .. }
            | Place::Line { .. }
            | Place::HandOver { .. }
    )
}

/// Everything from the details of a field on, breadth first, over as many saves as given; screens and taps. With more
/// than one save only lines are gone on with: their places come one after the other.
fn crawl(fields: &[FieldNotes], language: Language, unit: LengthUnit, most_saves: usize) -> (usize, usize) {
    let mut phone = Phone::new(language, Vec::new());
    phone.words = Words::new(language, unit);
    let first = Place::Details { field: fields[0].field.id };
    let mut queue = VecDeque::from([(first, fields.to_vec(), 0)]);
    let mut seen = HashSet::new();
    let mut taps = 0;
    while let Some((place, fields, saves)) = queue.pop_front() {
        (phone.place, phone.fields) = (place, fields.clone());
        let screen = phone.screen();
        if !is_here(screen.place) || !seen.insert(format!("{place:?} {:?}", fields[0].field)) {
            continue;
        }
        assert_sound(&screen);
        let text = notes::write(&fields[0]);
        let read = notes::read(&text, &mut || panic!("every record has an id"));
        // Whatever could not be taken in elsewhere cannot be handed over either.
        if read.is_err() {
            let screen = show(Place::HandOver { field: fields[0].field.id }, &phone.world());
            assert_sound(&screen);
            let main = screen.next.unwrap();
            assert!(matches!(main.does, Does::Ask(Ask::ShareField { .. })));
            assert!(!main.enabled, "{:?}\n{text}", read.err());
        }
        if saves > 0 && !matches!(place, Place::Lines { .. } | Place::Line { .. }) || saves == most_saves {
            continue;
        }
        for (act, typed) in acts(&screen) {
            if matches!(act, Act::Undo) {
                continue;
            }
            for text in if typed { &[Some("2.5"), Some(""), Some("2026-03-01")][..] } else { &[None] } {
                (phone.place, phone.fields) = (place, fields.clone());
                phone.before.clear();
                phone.act(&act, *text);
                taps += 1;
                assert!(phone.before.len() <= 1, "{act:?} is more than one save");
                assert!(!phone.told.contains(['{', '}', '_']), "{}", phone.told);
                queue.push_back((phone.place, phone.fields.clone(), saves + phone.before.len()));
            }
        }
    }
    (seen.len(), taps)
}

#[test]
fn every_button_leads_to_a_sound_screen_in_english() {
    let (screens, taps) = crawl(&[bare()], Language::English, LengthUnit::Centimetres, 3);
    println!("{screens} screens, {taps} taps");
    assert!(screens > 100 && taps > 200, "{screens} {taps}");
}

#[test]
fn every_button_leads_to_a_sound_screen_in_german_and_inches() {
    let drained = demo().into_iter().find(|notes| !notes.field.lines.is_empty());
    let mut drained = drained.unwrap();
    drained.pits.truncate(1);
    drained.passes.clear();
    let (screens, taps) = crawl(&[drained], Language::German, LengthUnit::Inches, 2);
    println!("{screens} screens, {taps} taps");
    assert!(screens > 100 && taps > 200, "{screens} {taps}");
}

#[test]
fn a_headland_is_set_by_a_usual_value_and_a_step_and_taken_back() {
    let mut phone = phone_at(|field| Place::Field { field }, vec![bare()]);
    press(&mut phone, "Details of the field");
    open(&mut phone, Detail::Headland);
    press(&mut phone, "24 m");
    assert_eq!(field(&phone).headland_mm, Some(24_000));
    assert_eq!(plain(&phone.told), "Width of the headland: 24 m");
    press(&mut phone, "+ 0.5 m");
    assert_eq!(field(&phone).headland_mm, Some(24_500));
    press(&mut phone, "Undo");
    assert_eq!(field(&phone).headland_mm, Some(24_000));
    press(&mut phone, "Not noted");
    assert_eq!(field(&phone).headland_mm, None);
}

#[test]
fn tramlines_give_the_share_of_the_ground_under_wheels() {
    let mut fields = demo();
    fields.retain(|notes| notes.field.name == "Long Sedge");
    let own = &mut fields[0].field;
    (own.tramline_mm, own.wheel_track_mm, own.tyre_mm) = (None, None, None);
    let mut phone = phone_at(|field| Place::Field { field }, fields);
    for (detail, label) in
        [(Detail::Tramline, "24 m"), (Detail::WheelTrack, "180 cm"), (Detail::Tyre, "60 cm")]
    {
        open(&mut phone, detail);
        press(&mut phone, label);
    }
    let own = field(&phone);
    assert_eq!((own.tramline_mm, own.wheel_track_mm, own.tyre_mm), (Some(24_000), Some(1_800), Some(600)));
    // Two tyres of 60 cm every 24 m.
    let map = pitface_core::place::FieldMap::of(own);
    let areas = map.areas();
    let of = |zone| areas.iter().find(|area| area.zone == zone).unwrap().area_m2;
    let (open, wheeled) = (of(pitface_core::record::Zone::Open), of(pitface_core::record::Zone::Wheelings));
    assert!((wheeled / (open + wheeled) - 0.05).abs() < 1e-9, "{wheeled} {open}");
}

#[test]
fn in_feet_usual_values_are_whole_numbers_of_half_feet() {
    let mut phone = phone_at(|field| Place::Detail { field, detail: Detail::Tramline }, vec![bare()]);
    phone.words = Words::new(Language::English, LengthUnit::Inches);
    press(&mut phone, "78.5 ft");
    assert_eq!(field(&phone).tramline_mm, Some(23_927));
    press(&mut phone, "− 0.5 ft");
    assert_eq!(phone.words.width(field(&phone).tramline_mm.unwrap()).replace('\u{a0}', " "), "78 ft");
}

#[test]
fn texture_organic_matter_crops_and_days_are_noted_without_a_pit() {
    let mut phone = phone_at(|field| Place::Details { field }, vec![bare()]);
    open(&mut phone, Detail::Texture);
    press(&mut phone, "Heavy");
    assert_eq!(field(&phone).texture, Some(TextureNote::Group(TextureGroup::Heavy)));
    open(&mut phone, Detail::OrganicMatter);
    phone.type_in("2,5 %");
    assert_eq!(field(&phone).organic_matter, Some(OrganicMatter::Percent(2.5)));
    phone.place = Place::Details { field: field(&phone).id };
    assert!(texts(&phone.screen()).iter().any(|text| plain(text) == "2.5 %"));
    open(&mut phone, Detail::LastCrop);
    phone.type_in(" winter wheat ");
    assert_eq!(field(&phone).last_crop.as_deref(), Some("winter wheat"));
    open(&mut phone, Detail::LastLoosened);
    press(&mut phone, "2024");
    assert_eq!(field(&phone).last_loosened.unwrap().to_string(), "2024-07-01");
    open(&mut phone, Detail::LastTraffic);
    press(&mut phone, "Today");
    assert_eq!(field(&phone).last_traffic, Some(phone.now.date_naive()));
}

#[test]
fn an_answered_detail_leads_back_to_where_it_was_asked() {
    let mut phone = phone_at(|field| Place::Field { field }, vec![bare()]);
    let id = field(&phone).id;
    for asked_at in [Place::Field { field: id }, Place::Details { field: id }] {
        phone.go(asked_at);
        phone.go(Place::Detail { field: id, detail: Detail::Texture });
        let heavy = phone.screen().buttons().next().unwrap().label.clone();
        press(&mut phone, &plain(&heavy));
        assert_eq!(phone.place, asked_at);
    }
}

#[test]
fn what_cannot_be_is_told_and_not_noted() {
    let mut phone = phone_at(|field| Place::Details { field }, vec![bare()]);
    for (detail, text, told) in [
        (Detail::OrganicMatter, "a lot", "Not noted: write a number from 0 to 100."),
        (Detail::OrganicMatter, "140", "Not noted: write a number from 0 to 100."),
        (
            Detail::LastLoosened,
            "2031-01-01",
            "Not noted: write the day as 2026-09-12, and none that is still to come.",
        ),
        (
            Detail::LastTraffic,
            "31.02.2026",
            "Not noted: write the day as 2026-09-12, and none that is still to come.",
        ),
        (Detail::Name, "  ", "Give the field a name."),
    ] {
        open(&mut phone, detail);
        let before = phone.fields.clone();
        phone.type_in(text);
        assert_eq!(phone.told, told);
        assert_eq!(phone.fields, before);
    }
    // A length no button offers.
    let act: Act =
        serde_json::from_str(r#"{"field":{"detail":{"detail":"tyre","to":{"millimetres":9}}}}"#).unwrap();
    let mut new_id = || panic!("nothing new");
    assert!(tap(phone.place, &act, Input::default(), &phone.world(), &mut new_id).is_err());
}

#[test]
fn a_line_is_walked_bent_and_measured() {
    let mut phone = phone_at(|field| Place::Lines { field, line: None }, vec![bare()]);
    press(&mut phone, "Drain");
    let line = field(&phone).lines[0].clone();
    assert_eq!((line.kind, line.along.len()), (Buried::Drain, 0));
    for east in 0..3 {
        phone.fix = Some(fix_at(2.5 + f64::from(east) * 0.001, 54.5));
        press(&mut phone, if east == 0 { "The line begins here" } else { "The line bends or ends here" });
    }
    assert_eq!(phone.told, "Place 3 of the line is noted.");
    press(&mut phone, "The line bends or ends here");
    assert_eq!(phone.told, "Not noted: this is where the last place is.");
    press(&mut phone, "Depth of the drains");
    press(&mut phone, "80 cm");
    phone.back();
    let line = &field(&phone).lines[0];
    assert_eq!(line.along, [[2.5, 54.5], [2.501, 54.5], [2.502, 54.5]]);
    assert_eq!(line.depth_mm, Some(800));
    press(&mut phone, "Take the last place away");
    assert_eq!(field(&phone).lines[0].along.len(), 2);
    assert_eq!(plain(&phone.told), "Drain, 80 cm deep, 2 places");
}

#[test]
fn a_line_is_drawn_by_hand_where_there_is_no_position() {
    let mut fields = demo();
    fields.retain(|notes| notes.field.name == "Long Sedge");
    fields[0].field.lines.clear();
    let mut phone = phone_at(|field| Place::Lines { field, line: None }, fields);
    phone.fix = None;
    press(&mut phone, "Service");
    press(&mut phone, "Begin it on the plan");
    press(&mut phone, "Another place on the plan");
    press(&mut phone, "Move its last place");
    press(&mut phone, "East");
    phone.back();
    let along = &field(&phone).lines[0].along;
    let way = pitface_core::place::walk(along[0], along[1]);
    // 25 m north, then the lower of the two buttons called so: 25 m east.
    assert!((way.distance_m - 1_250.0_f64.sqrt()).abs() < 0.1, "{way:?}");
    let delete = phone.screen().menu.pop().unwrap();
    press(&mut phone, &plain(&delete.label));
    press(&mut phone, "Delete");
    assert!(matches!(phone.edits.last(), Some(Edit::Delete { .. })));
    assert!(phone.told.ends_with("is deleted. Undo brings it back."), "{}", phone.told);
    assert_eq!(field(&phone).lines, []);
}

#[test]
fn a_line_only_begun_is_not_handed_over_and_says_why() {
    let mut phone = phone_at(|field| Place::Lines { field, line: None }, vec![bare()]);
    press(&mut phone, "Mole drain");
    phone.place = Place::HandOver { field: field(&phone).id };
    let screen = phone.screen();
    assert!(!screen.next.as_ref().unwrap().enabled);
    assert!(texts(&screen).iter().any(|text| text.starts_with("A line is only begun")));
    press(&mut phone, "Mole drain, no place yet");
    press(&mut phone, "The line begins here");
    press(&mut phone, "Another place on the plan");
    phone.place = Place::HandOver { field: field(&phone).id };
    assert!(phone.screen().next.unwrap().enabled);
    // Two corners enclose nothing.
    phone.fields[0].field.outline = vec![[2.5, 54.5], [2.51, 54.5]];
    assert!(!phone.screen().next.unwrap().enabled);
    press(&mut phone, "Walk the edge of the field");
    phone.act(&FieldAct::OutlineAnew.into(), None);
    phone.place = Place::HandOver { field: field(&phone).id };
    assert!(phone.screen().next.unwrap().enabled);
}
