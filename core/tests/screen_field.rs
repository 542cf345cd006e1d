//! A field on a phone: what to do with it in one short sentence, its plan by calls, and what a finger on it does.

#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test may fail by it; a place is the very same or another"
)]

use crate::screen_names;
use crate::screen_pit_support;

use pitface_core::picture::{Drawing, Point, Role, Shape};
use pitface_core::place::{FieldMap, walk};
use pitface_core::record::{Field, FieldNotes, Pit, PlaceKind, RecordId};
use pitface_core::screen::field::listed::listed;
use pitface_core::screen::field::{FieldAct, Sought};
use pitface_core::screen::own::Setting;
use pitface_core::screen::{Act, Ask, Block, Does, Input, Place, Screen, tap};
use pitface_core::words::Language;
use screen_names::assert_told_apart;
use screen_pit_support::{Phone, demo, drawings, fix_at, is_finite, texts};

/// Letters of a headline that stand in three lines at display size on a narrow phone: the screens' own limit.
const MOST: [(Language, usize); 2] = [(Language::English, 60), (Language::German, 75)];

fn named(name: &str) -> FieldNotes {
    demo().into_iter().find(|notes| notes.field.name == name).unwrap()
}

fn at_field(notes: FieldNotes) -> Phone {
    let mut phone = Phone::new(Language::English, vec![notes]);
    phone.place = Place::Field { field: phone.fields[0].field.id };
    phone
}

fn headline(phone: &Phone) -> String {
    phone.screen().answer.unwrap().text.replace('\u{a0}', " ")
}

/// Lines of a role whose both ends lie in a box: a hatching leaves many.
fn lines(drawing: &Drawing, role: Role) -> usize {
    drawing
        .shapes
        .iter()
        .filter(|shape| matches!(shape, Shape::Line { role: its, .. } if *its == role))
        .count()
}

/// Sends an act of a picture with the point where the finger was lifted, as a shell does.
fn touch(phone: &mut Phone, act: &Act, point: Point) {
    let act: Act = serde_json::from_str(&serde_json::to_string(act).unwrap()).unwrap();
    let mut new_id = || panic!("nothing new");
    let done = tap(phone.place, &act, Input::at(point), &phone.world(), &mut new_id).unwrap();
    let edits = done.edits.clone();
    phone.told = done.told;
    for edit in edits {
        match edit {
            pitface_core::screen::Edit::Field(field) => phone.fields[0].field = field,
            pitface_core::screen::Edit::Pit { pit, .. } => {
                let its = phone.fields[0].pits.iter_mut().find(|its| its.id == pit.id).unwrap();
                *its = pit;
            }
            other => panic!("{other:?}"),
        }
    }
    phone.place = done.place;
}

#[test]
fn every_field_says_what_to_do_in_one_short_sentence_and_is_sound() {
    for (language, most) in MOST {
        let mut phone = Phone::new(language, demo());
        for notes in demo() {
            let field = notes.field.id;
            for place in [Place::Field { field }, Place::Pits { field }, Place::Outline { field }] {
                phone.place = place;
                let screen = phone.screen();
                let answer = screen.answer.clone().unwrap();
                assert!(answer.text.chars().count() <= most, "{}", answer.text);
                assert!(drawings(&screen).into_iter().all(is_finite));
                assert!(
                    texts(&screen).iter().all(|text| !text.contains(['{', '}', '_'])),
                    "{:?}",
                    texts(&screen)
                );
                assert_told_apart(&screen);
            }
        }
    }
}

#[test]
fn work_leads_and_the_rest_is_left() {
    let sluice = at_field(named("Sluice Ground"));
    assert_eq!(headline(&sluice), "Ask before working the headland; leave the rest.");
    // Wheelings of Lapwing Ground are not dug: nothing is said of them.
    let lapwing = at_field(named("Lapwing Ground"));
    assert_eq!(headline(&lapwing), "Loosen the gateway once fit; leave the rest so far.");
    let sedge = at_field(named("Long Sedge"));
    assert_eq!(headline(&sedge), "Leave the whole field as it is.");
}

#[test]
fn a_field_without_a_reference_is_dug_first_where_the_crop_looks_best() {
    let bare = FieldNotes::new(Field::new(RecordId::new(1, [7; 10]), "Long Acre"), Vec::new());
    for notes in [bare, named("Far Drove")] {
        let phone = at_field(notes);
        let field = phone.fields[0].field.id;
        assert_eq!(headline(&phone), "Dig first where the crop looks best.");
        let next = phone.screen().next.unwrap();
        assert_eq!(next.does, Does::Act(Act::Go(Place::StartPit { field, pit: None })));
    }
}

/// Far Drove has a pit, and no reference pit to hold it against: its zone lacks that pit, not another of its own.
#[test]
fn a_zone_whose_reference_is_missing_says_so_and_never_to_dig_again() {
    for (language, missing, again) in [
        (Language::English, "Reference pit missing", "Dig again"),
        (Language::German, "Vergleichsgrube fehlt", "graben"),
    ] {
        let mut phone = at_field(named("Far Drove"));
        phone.words = pitface_core::words::Words::new(language, phone.words.unit());
        let rows: Vec<String> = phone.screen().rows().map(|row| row.title.clone()).collect();
        let row = rows.iter().find(|row| row.contains(missing)).unwrap_or_else(|| panic!("{rows:?}"));
        assert!(!row.contains(again), "{row}");
        phone.place = Place::Fields;
        let listed = phone.screen().rows().next().unwrap().lines[0].clone();
        phone.place = Place::Field { field: phone.fields[0].field.id };
        assert_eq!(listed, phone.screen().answer.unwrap().text, "the list says what the field says");
    }
}

#[test]
fn the_next_step_says_where_and_how_far() {
    let mut phone = at_field(named("Fox Heath"));
    let outline = phone.fields[0].field.outline.clone();
    phone.fix = Some(fix_at(outline[0][0], outline[0][1]));
    let next = phone.screen().next.unwrap();
    assert_eq!(next.label, "Dig on the headland");
    let note = next.note.replace('\u{a0}', " ");
    assert!(note.contains(" m to the "), "{note}");
    // Where no more is to be dug and nothing worked there is no step, and a pit can be dug all the same.
    let phone = at_field(named("Long Sedge"));
    let screen = phone.screen();
    assert!(screen.next.is_none());
    assert!(screen.rows().any(|row| row.title == "Dig a pit"));
}

#[test]
fn zones_are_filled_by_their_calls_and_each_has_a_row() {
    // Drained first is drawn in level lines, loosened in heavy slanting ones, left alone bare.
    let drained = at_field(named("Withy Bottom")).screen().picture.unwrap().drawing;
    let loosened = at_field(named("Mere Piece")).screen().picture.unwrap().drawing;
    let left = at_field(named("Long Sedge")).screen().picture.unwrap().drawing;
    assert!(lines(&drained, Role::HatchFirm) > lines(&left, Role::HatchFirm) + 20);
    assert!(lines(&loosened, Role::HatchTight) > lines(&left, Role::HatchTight) + 20);
    let screen = at_field(named("Withy Bottom")).screen();
    let rows: Vec<&str> = screen.rows().map(|row| row.title.as_str()).take(3).collect();
    assert_eq!(rows, ["Open ground: Drain first", "Marked patch: Leave it", "Headland: not dug yet"]);
    assert!(screen.rows().take(3).all(|row| row.icon.is_some()));
}

#[test]
fn a_finger_on_a_pit_opens_it() {
    let phone = at_field(named("Mere Piece"));
    let picture = phone.screen().picture.unwrap();
    assert_eq!(picture.touches.len(), phone.fields[0].pits.len());
    for (touch, pit) in picture.touches.iter().zip(&phone.fields[0].pits) {
        let Does::Act(Act::Go(place)) = touch.does else { panic!("{touch:?}") };
        let field = phone.fields[0].field.id;
        assert_eq!(place, Place::Call { field, pit: pit.id }, "{}", touch.label);
    }
}

#[test]
fn a_finger_on_the_plan_sets_where_a_pit_lies() {
    let mut phone = at_field(named("Mere Piece"));
    let (field, pit) = (phone.fields[0].field.id, phone.fields[0].pits[1].id);
    let place = |phone: &Phone| {
        let at = phone.fields[0].pits[1].at.unwrap();
        [at.longitude_deg, at.latitude_deg]
    };
    phone.place = Place::OnPlan { field, pit };
    let (from, shown) = (place(&phone), phone.screen().picture.unwrap());
    // The scale bar tells how many points a metre has.
    let bar = shown.drawing.shapes.iter().find_map(|shape| match shape {
        Shape::Line { role: Role::Ruler, from, to } => Some(to.x - from.x),
        _ => None,
    });
    let points_per_m = bar.unwrap() / 100.0;
    let act = shown.anywhere.unwrap();
    let first = Point::new(150.0, 150.0);
    touch(&mut phone, &act, first);
    assert_ne!(place(&phone), from);
    let before = place(&phone);
    assert!(phone.told.starts_with("Moved "), "{}", phone.told);
    // A touch 60 points to the right and 80 up lies 100 points away, to the north-east; also with the act of the plan as
    // it was drawn first.
    touch(&mut phone, &act, Point::new(first.x + 60.0, first.y - 80.0));
    let way = walk(before, place(&phone));
    assert!((way.distance_m - 100.0 / points_per_m).abs() < 0.5, "{way:?} {points_per_m}");
    assert!((way.bearing_deg - 60.0_f64.atan2(80.0).to_degrees()).abs() < 0.2, "{way:?}");
    assert_eq!(phone.place, Place::OnPlan { field, pit });
}

#[test]
fn without_an_edge_a_pit_is_pointed_out_around_where_one_stands() {
    let id = |number| RecordId::new(number, [7; 10]);
    let pit = Pit::new(id(2), PlaceKind::Open);
    let mut phone = at_field(FieldNotes::new(Field::new(id(1), "Long Acre"), vec![pit]));
    phone.place = Place::OnPlan { field: id(1), pit: id(2) };
    let screen = phone.screen();
    let middle = Point::new(screen.picture.as_ref().unwrap().drawing.width / 2.0, 120.0);
    touch(&mut phone, &screen.picture.unwrap().anywhere.unwrap(), middle);
    let fix = phone.fix.as_ref().unwrap().position;
    let at = phone.fields[0].pits[0].at.unwrap();
    let away = walk([fix.longitude_deg, fix.latitude_deg], [at.longitude_deg, at.latitude_deg]);
    assert!(away.distance_m < 100.0, "{away:?}");
    // Without a position either, it says what to do and leads there.
    phone.fields[0].pits[0].at = None;
    phone.fix = None;
    let screen = phone.screen();
    assert!(screen.picture.is_none());
    assert_eq!(screen.next.unwrap().does, Does::Act(Act::Go(Place::Outline { field: id(1) })));
}

#[test]
fn an_edge_is_touched_on_the_plan_and_its_last_corner_taken_away() {
    let mut phone = at_field(FieldNotes::new(Field::new(RecordId::new(1, [7; 10]), "Long Acre"), Vec::new()));
    phone.place = Place::Outline { field: phone.fields[0].field.id };
    let act = phone.screen().picture.unwrap().anywhere.unwrap();
    let corners = [(100.0, 80.0), (260.0, 80.0), (260.0, 200.0), (100.0, 200.0)];
    for (x, y) in corners {
        touch(&mut phone, &act, Point::new(x, y));
    }
    assert_eq!(phone.told, "Corner 4 is noted.");
    let map = FieldMap::of(&phone.fields[0].field);
    // 160 by 120 points of 500 m to some 226 points: our own reckoning, to a twentieth.
    assert!(map.has_outline());
    assert_eq!(headline(&phone), "The edge is closed.");
    phone.act(&FieldAct::DropCorner.into(), None);
    assert_eq!(phone.fields[0].field.outline.len(), 3);
    // A corner that crosses a side is told and not noted.
    let before = phone.fields.clone();
    touch(&mut phone, &act, Point::new(300.0, 140.0));
    touch(&mut phone, &act, Point::new(180.0, 60.0));
    touch(&mut phone, &act, Point::new(180.0, 300.0));
    assert!(phone.told.starts_with("Not noted"), "{}", phone.told);
    assert_ne!(phone.fields, before);
}

#[test]
fn the_first_start_says_what_this_is_and_how_to_begin() {
    let mut phone = Phone::new(Language::English, Vec::new());
    let screen = phone.screen();
    assert_eq!(screen.answer.as_ref().unwrap().text, "Dig, look at the face, know what to do.");
    assert!(screen.picture.is_some());
    let asks_file = |screen: &Screen| screen.rows().any(|row| row.does == Does::Ask(Ask::OpenFile));
    assert!(asks_file(&screen));
    phone.tap("Start a field");
    // The next step enters what is typed.
    let screen = phone.screen();
    let typing = screen.blocks.iter().find_map(|block| match block {
        Block::Typing { act, .. } => Some(act.clone()),
        _ => None,
    });
    let Does::Act(next) = screen.next.unwrap().does else { panic!("it asks the platform") };
    assert_eq!(Some(&next), typing.as_ref());
    phone.act(&next, Some(" Withy Holt "));
    assert_eq!(headline(&phone), "Dig first where the crop looks best.");
    // The language can be changed from the first screen and leads back to it.
    phone.fields.clear();
    phone.place = Place::Setting { setting: Setting::Language };
    phone.tap("Deutsch");
    assert_eq!((phone.place, phone.own.language), (Place::Fields, Some(Language::German)));
}

#[test]
fn a_row_of_the_list_says_how_far_the_work_has_come_and_where_the_field_lies() {
    let mut phone = Phone::new(Language::English, demo());
    phone.fields.push(FieldNotes::new(Field::new(RecordId::new(1, [7; 10]), "Nobody's Corner"), Vec::new()));
    let screen = phone.screen();
    let all = listed(&phone.world());
    let names: Vec<&String> = screen.rows().map(|row| &row.title).collect();
    assert_eq!(names, all.iter().map(|field| &field.name).collect::<Vec<_>>());
    for (row, field) in screen.rows().zip(&all) {
        assert!(row.lines[1].starts_with(&phone.words.label(field.work)), "{:?}", row.lines);
        assert_eq!(row.lines.len(), if field.distance_m.is_some() { 3 } else { 2 }, "{:?}", row.lines);
    }
    let none = screen.rows().last().unwrap();
    assert_eq!(none.lines, ["Dig first where the crop looks best.", "No pit yet"]);
    // Beside a pit of a field whose edge nobody walked one stands in it; 60 m off one does not.
    let mut open = named("Far Drove");
    (open.field.outline, open.field.parts) = (Vec::new(), Vec::new());
    let at = open.pits.iter().find_map(|pit| pit.at).unwrap();
    for pit in &mut open.pits {
        pit.at = Some(at);
    }
    phone.fields = vec![open];
    for (north_m, here) in [(45.0, true), (60.0, false)] {
        // A degree of latitude is 111.2 km here: general knowledge of the earth's size.
        phone.fix = Some(fix_at(at.longitude_deg, at.latitude_deg + north_m / 111_200.0));
        let field = listed(&phone.world()).remove(0);
        assert_eq!(field.here, here, "{:?}", field.distance_m);
        let last = phone.screen().rows().next().unwrap().lines.last().unwrap().clone();
        assert_eq!(last == "You stand in this field.", here, "{last}");
    }
}

#[test]
fn of_many_fields_one_is_found_by_its_name_and_the_nearest_stands_first() {
    let mut phone = Phone::new(Language::English, demo());
    let finds = |screen: &Screen| {
        screen
            .blocks
            .iter()
            .any(|block| matches!(block, Block::Typing { act, .. } if *act == FieldAct::Find.into()))
    };
    assert!(!finds(&phone.screen()), "nine fields are looked through faster");
    phone.fields.push(FieldNotes::new(Field::new(RecordId::new(1, [7; 10]), "Long Acre"), Vec::new()));
    assert!(finds(&phone.screen()));
    let far = phone.fields.iter().find(|notes| notes.field.name == "Far Drove").unwrap();
    let corner = far.field.outline[0];
    phone.fix = Some(fix_at(corner[0] + 1e-4, corner[1] + 1e-4));
    assert_eq!(phone.screen().rows().next().unwrap().title, "Far Drove");
    phone.type_in("LONG");
    let titles: Vec<String> = phone.screen().rows().map(|row| row.title.clone()).collect();
    assert_eq!(titles, ["Long Sedge", "Long Acre", "All fields again"]);
    phone.type_in("");
    assert_eq!(phone.place, Place::Fields);
    // Nothing is cut within a letter.
    let long = Sought::of("Äußere Grünlandfläche am Mühlenweg").unwrap();
    assert!("äußere grünlandfläche am mühlenweg".starts_with(long.text()), "{}", long.text());
}
