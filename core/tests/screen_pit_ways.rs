//! What the screens of a pit ask at a time, where they lead, and how one comes back.

use crate::screen_pit_support;

use pitface_core::picture::photo::PhotoSize;
use pitface_core::picture::{Point, Role, Shape};
use pitface_core::reading::read_field;
use pitface_core::record::{ComesAway, FaceMoisture, Photo, PlaceKind, RecordId, RollOutcome, Unknown};
use pitface_core::screen::{Ask, Block, Button, Does, Headline, Place, ScreenKind, Stand};
use pitface_core::words::{Language, PitText};
use screen_pit_support::pit::{SEEN, dug, field_with_reference, kind, looked, sentence, walked};
use screen_pit_support::{Phone, answers, texts};

#[test]
fn the_most_used_answer_of_the_walk_is_the_strong_one() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    phone.tap("Crumbs");
    let screen = phone.screen();
    let strong: Vec<_> = screen.buttons().filter(|button| button.strong).collect();
    assert_eq!(strong.iter().map(|button| button.label.as_str()).collect::<Vec<_>>(), ["Same as above"]);
    assert!(answers(&screen).iter().all(|button| button.enabled));
}

#[test]
fn a_screen_of_a_pit_asks_one_thing_and_the_walk_two() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    let asked = |phone: &Phone| {
        let screen = phone.screen();
        let questions = screen.blocks.iter().filter_map(|block| match block {
            Block::Question { answers, .. } => Some(answers.len()),
            _ => None,
        });
        assert!(screen.answer.is_some(), "{:?}", screen.kind);
        questions.collect::<Vec<_>>()
    };
    phone.place = Place::StartPit { field: phone.fields[0].field.id, pit: None };
    assert_eq!(asked(&phone), [6], "kinds of place");
    phone.tap("Wheeling");
    assert_eq!(asked(&phone), [3], "the hole is dug: dry, moist, wet");
    phone.tap("Moist");
    assert_eq!(asked(&phone), [6, 4], "at the surface nothing is the same as above");
    phone.tap("Crumbs");
    assert_eq!(asked(&phone), [6, 4, 1]);
    phone.tap("Undo");
    walked(&mut phone);
    assert_eq!(kind(&phone), ScreenKind::NextLook);
    assert!(matches!(asked(&phone)[..], [3..=6]));
    looked(&mut phone);
    assert_eq!((kind(&phone), asked(&phone)), (ScreenKind::Roll, vec![4]));
    phone.tap("Crumbles");
    assert_eq!((kind(&phone), asked(&phone)), (ScreenKind::Roll, vec![4]));
    phone.tap("Crumbles");
    assert_eq!((kind(&phone), asked(&phone)), (ScreenKind::Call, vec![]));
}

#[test]
fn the_walk_shows_its_step_on_the_face_beside_it() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    assert_eq!(sentence(&phone.screen()), "0–5\u{a0}cm");
    let picture = phone.screen().picture.unwrap();
    assert_eq!((picture.stand, picture.touches.len()), (Stand::Strip, 0));
    phone.tap("Crumbs");
    phone.tap("Same as above");
    phone.tap("Flat plates");
    let screen = phone.screen();
    assert_eq!(sentence(&screen), "15–20\u{a0}cm");
    let picture = screen.picture.as_ref().unwrap();
    let labels: Vec<_> = picture.touches.iter().map(|touch| touch.label.clone()).collect();
    assert_eq!(labels.len(), 2, "{labels:?}");
    for touch in &picture.touches {
        let row = screen.rows().find(|row| row.does == touch.does);
        assert_eq!(row.map(|row| &row.title), Some(&touch.label), "a row does what a touch does");
    }
    let Does::Act(act) = picture.touches[1].does.clone() else { panic!() };
    phone.touch(&act, Point::new(50.0, 100.0));
    assert!(matches!(phone.place, Place::Layers { layer: Some(1), clue: None, .. }));
    phone.back();
    assert_eq!(kind(&phone), ScreenKind::KnifeWalk);
}

#[test]
fn a_photo_is_offered_before_the_knife_spoils_the_face() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    let screen = phone.screen();
    let next = screen.next.unwrap();
    assert_eq!(next.label, "Photo of the face first");
    assert!(matches!(next.does, Does::Ask(Ask::TakePhoto { depth_mm: None, .. })));
    phone.tap("Crumbs");
    let screen = phone.screen();
    assert_eq!(screen.next, None, "answering skips it");
    assert!(screen.tools.iter().any(|tool| tool.label == "Photo"), "it can be taken all the same");
}

#[test]
fn a_hole_that_ends_too_high_is_told_and_the_second_tap_does_it() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    phone.tap("Flat plates");
    phone.tap("Same as above");
    phone.tap("Same as above");
    let bottom = |phone: &Phone| {
        phone.screen().tools.iter().find(|tool| tool.label == "Bottom of hole").unwrap().note.clone()
    };
    assert_eq!(bottom(&phone), "40\u{a0}cm wanted");
    let saves = phone.before.len();
    phone.tap("Bottom of hole");
    assert_eq!(phone.before.len(), saves, "nothing is saved by the first tap");
    assert!(phone.told.contains("15\u{a0}cm") && phone.told.contains("40\u{a0}cm"), "{}", phone.told);
    assert_eq!((kind(&phone), bottom(&phone)), (ScreenKind::KnifeWalk, "tap again".into()));
    assert!(phone.screen().caution.contains("40\u{a0}cm"));
    // Whoever digs on has not ended the hole.
    phone.tap("Same as above");
    assert_eq!(phone.pit().dug_to_mm, None);
    phone.tap("Bottom of hole");
    phone.tap("Bottom of hole");
    assert_eq!(phone.pit().dug_to_mm, Some(200));
}

#[test]
fn the_moisture_of_the_face_is_asked_alone_and_can_be_passed_over() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    phone.place = Place::StartPit { field: phone.fields[0].field.id, pit: None };
    phone.tap("Wheeling");
    phone.tap("The hole is dug");
    assert_eq!(sentence(&phone.screen()), "How moist is the face?");
    phone.tap("Not looked");
    assert_eq!(phone.pit().face, None, "not looked at is not said");
    assert_eq!(sentence(&phone.screen()), "0–5\u{a0}cm");
    phone.back();
    phone.tap("The hole is dug");
    assert_eq!(sentence(&phone.screen()), "0–5\u{a0}cm", "what was passed over stays passed over");
}

#[test]
fn what_is_passed_over_stays_passed_over_and_four_are_enough() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    walked(&mut phone);
    let before = phone.fields.clone();
    let mut asked = Vec::new();
    while kind(&phone) == ScreenKind::NextLook {
        let question = sentence(&phone.screen());
        assert!(!asked.contains(&question), "asked twice: {question}");
        asked.push(question);
        phone.tap("Not looked");
        let at = phone.place;
        if kind(&phone) == ScreenKind::NextLook {
            phone.tap("The answer so far");
            assert_eq!(kind(&phone), ScreenKind::Call);
            phone.back();
            assert_eq!(kind(&phone), ScreenKind::KnifeWalk, "back into the pit");
            phone.go(at);
        }
    }
    assert!((2..=4).contains(&asked.len()), "{asked:?}");
    assert_eq!(phone.fields, before, "nothing is noted of what was not looked at");
    assert_eq!(kind(&phone), ScreenKind::Roll);
}

#[test]
fn looks_are_counted_and_begin_with_what_a_moist_face_can_show() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    walked(&mut phone);
    let mut dry_piece = false;
    let mut counts = Vec::new();
    while kind(&phone) == ScreenKind::NextLook {
        let screen = phone.screen();
        let Headline { text, line, .. } = screen.answer.clone().unwrap();
        counts.push(line.split(" more to see").next().and_then(|count| count.parse::<usize>().ok()));
        dry_piece |= text.contains("air-dry");
        assert!(!dry_piece || text.contains("air-dry"), "a dry piece comes last: {text}");
        let (_, seen) = SEEN.iter().find(|(depths, _)| text.starts_with(depths)).unwrap();
        let buttons = answers(&screen);
        phone.tap(seen.iter().find(|seen| buttons.iter().any(|button| button.label == **seen)).unwrap());
    }
    assert!(counts[0].is_some_and(|count| (1..=8).contains(&count)), "{counts:?}");
    assert_eq!(counts.last(), Some(&None), "the last one says no number: {counts:?}");
}

#[test]
fn back_from_the_answer_so_far_returns_into_the_walk() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    let field = Place::Field { field: phone.fields[0].field.id };
    phone.go(field);
    phone.tap("Dig on the open ground");
    phone.tap("Wheeling");
    phone.tap("Moist");
    phone.tap("Crumbs");
    phone.tap("The answer so far");
    assert_eq!(kind(&phone), ScreenKind::Call);
    phone.back();
    assert_eq!((kind(&phone), sentence(&phone.screen())), (ScreenKind::KnifeWalk, "5–10\u{a0}cm".into()));
    phone.back();
    assert_eq!(kind(&phone), ScreenKind::StartPit);
    phone.back();
    assert_eq!(phone.place, field);
}

#[test]
fn a_pit_without_a_knife_answer_says_what_is_missing() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    let (field, pit) = (phone.fields[0].field.id, phone.pit().id);
    phone.place = Place::Call { field, pit };
    let screen = phone.screen();
    assert_eq!(sentence(&screen), "No answer yet: go down the face with the knife.");
    assert_eq!(screen.next.unwrap().label, "Knife walk");
    assert!(screen.more.iter().all(|section| section.heading != "How sure"));
}

#[test]
fn without_a_reference_pit_the_next_step_offers_it_and_the_sentence_does_not_send_back_here() {
    for (language, dig, reference) in [
        (Language::English, "Dig again", "Dig the reference pit"),
        (Language::German, "neu graben", "Vergleichsgrube graben"),
    ] {
        let mut fields = field_with_reference();
        fields[0].pits.clear();
        let mut phone = Phone::new(language, fields);
        let label = |phone: &Phone, kind: PlaceKind| phone.words.label(kind);
        phone.place = Place::StartPit { field: phone.fields[0].field.id, pit: None };
        let screen = phone.screen();
        assert!(screen.answer.as_ref().unwrap().line.contains(&phone.words.of(PlaceKind::Reference)));
        let strong: Vec<_> = screen.buttons().filter(|button| button.strong).collect();
        assert_eq!(strong[0].label, label(&phone, PlaceKind::Reference));
        phone.tap(&label(&phone, PlaceKind::Wheeling));
        phone.tap(&phone.words.label(FaceMoisture::Moist));
        let (crumbs, same) = (phone.words.label(ComesAway::Crumbs), phone.words.label(PitText::SameAsAbove));
        phone.tap(&crumbs);
        for _ in 0..9 {
            phone.tap(&same);
        }
        let (field, pit) = (phone.fields[0].field.id, phone.pit().id);
        phone.place = Place::Call { field, pit };
        let said = sentence(&phone.screen());
        assert!(!said.contains(dig), "{said}");
        phone.now += chrono::TimeDelta::days(1);
        let next = phone.screen().next.unwrap();
        assert_eq!(next.label, reference, "{said}");
    }
}

#[test]
fn a_roll_test_can_be_mended_and_passed_over() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    walked(&mut phone);
    looked(&mut phone);
    phone.tap_about("35", "Crumbles");
    assert!(phone.told.contains("35"), "{}", phone.told);
    assert_eq!(sentence(&phone.screen()), "Soil from the surface, rolled: what does it do?");
    phone.tap("Not looked");
    assert_eq!(kind(&phone), ScreenKind::Call);
    assert_eq!(phone.pit().rolls.len(), 1, "what was passed over is not noted");
    phone.tap("Soil from 35\u{a0}cm");
    let chosen: Vec<_> =
        phone.screen().buttons().filter(|button| button.chosen).map(Button::spoken).collect();
    assert_eq!(chosen, ["Crumbles. Soil from 35\u{a0}cm"]);
    phone.tap("Cracks into short lengths");
    assert_eq!(kind(&phone), ScreenKind::Call, "mended, and back");
    assert_eq!((phone.pit().rolls.len(), phone.pit().rolls[0].roll), (1, RollOutcome::ShortLengths));
}

#[test]
fn a_boundary_follows_the_finger_and_the_buttons() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    walked(&mut phone);
    phone.tap("Layers");
    let boundaries = |phone: &Phone| {
        let read = &read_field(&phone.fields[0]).pits[1];
        read.layers.iter().map(|layer| layer.bottom_mm).collect::<Vec<_>>()
    };
    assert_eq!(boundaries(&phone), [200, 300, 500]);
    let picture = phone.screen().picture.unwrap();
    let grip = picture.touches.iter().find(|touch| touch.drags).unwrap().clone();
    assert_eq!(grip.label, "Boundary at 20\u{a0}cm");
    let Does::Act(act) = grip.does else { panic!() };
    // Layers touch over their whole height: it tells the scale.
    let layer = &picture.touches[0];
    let points_per_mm = layer.height / 200.0;
    phone.touch(&act, Point::new(60.0, layer.top + 231.0 * points_per_mm));
    assert_eq!(boundaries(&phone), [230, 300, 500], "to the centimetre");
    assert_eq!(phone.told, "The boundary is at 23\u{a0}cm now. Saved.");
    let saves = phone.before.len();
    let Does::Act(act) = phone.screen().picture.unwrap().touches[3].does.clone() else { panic!() };
    phone.touch(&act, Point::new(60.0, 9_999.0));
    assert_eq!((boundaries(&phone), phone.before.len()), (vec![230, 300, 500], saves), "not past another");
    phone.tap("23–30\u{a0}cm: tight, pressed");
    phone.tap("1\u{a0}cm higher");
    assert_eq!(boundaries(&phone), [230, 290, 500]);
}

/// A photo of a face.
fn photo() -> Photo {
    Photo {
        id: RecordId::new(50, [4; 10]),
        sha256: "ab".repeat(32),
        size_bytes: 2_300_000,
        media_type: "image/jpeg".into(),
        taken: None,
        depth_mm: Some(300),
        marks: Vec::new(),
        unknown: Unknown::new(),
    }
}

#[test]
fn a_photo_is_seen_small_and_large_gets_its_place_and_goes_with_undo() {
    let mut fields = field_with_reference();
    fields[0].pits[0].photos.push(photo());
    let mut phone = Phone::new(Language::English, fields);
    let field = phone.fields[0].field.id;
    let pit = phone.fields[0].pits[0].clone();
    let photos = Place::Photos { field, pit: pit.id };
    for place in [Place::Call { field, pit: pit.id }, photos] {
        phone.go(place);
        let screen = phone.screen();
        let small = screen.blocks.iter().find_map(|block| match block {
            Block::Photos(small) => Some(small.clone()),
            _ => None,
        });
        assert_eq!(small.unwrap()[0].photo, pit.photos[0].sha256, "{place:?}");
    }
    let next = phone.screen().next.unwrap();
    assert!(matches!(next.does, Does::Ask(Ask::TakePhoto { depth_mm: None, .. })));
    phone.go(Place::Photo { field, pit: pit.id, photo: pit.photos[0].id });
    let picture = phone.screen().picture.unwrap();
    assert!(picture.photo.as_ref() == Some(&pit.photos[0].sha256) && picture.zooms);
    phone.tap("Whole face");
    let noted =
        |phone: &Phone| phone.fields[0].pits.iter().find(|its| its.id == pit.id).unwrap().photos.clone();
    assert_eq!(noted(&phone)[0].depth_mm, None);
    phone.tap("Delete");
    assert_eq!((noted(&phone).len(), phone.place), (pit.photos.len() - 1, photos));
    phone.tap("Undo");
    assert_eq!(noted(&phone).len(), pit.photos.len());
}

#[test]
fn a_pit_and_its_layers_carry_remarks() {
    let mut phone = Phone::new(Language::German, field_with_reference());
    let (field, pit) = (phone.fields[0].field.id, phone.fields[0].pits[0].id);
    let layer = Place::Layers { field, pit, layer: Some(1), clue: None };
    for (place, text) in [(Place::Call { field, pit }, "alter Fahrweg,\nbis 1998"), (layer, "Asche darin")] {
        phone.go(place);
        phone.tap("Bemerkung");
        phone.type_in(text);
        assert_eq!((phone.place, phone.told.as_str()), (place, "Bemerkung. Gespeichert."));
        let said = texts(&phone.screen());
        assert!(said.iter().any(|said| said.contains(text.lines().next().unwrap())), "{said:?}");
    }
    let noted = &phone.fields[0].pits[0];
    assert_eq!(noted.remark.as_deref(), Some("alter Fahrweg,\nbis 1998"));
    assert!(noted.layers.iter().any(|layer| layer.remark.as_deref() == Some("Asche darin")));
}

/// A photo of 1200 by 1600 pixels is drawn 360 points wide and 480 high; a tape stands upright in it with 0 at 48 points and
/// 50 cm at 432 from the top, so that 20 cm lies at 48 + 0.4 * 384 = 201.6.
#[test]
fn two_touches_on_the_tape_give_a_photo_its_scale_and_the_layers_lie_over_it() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    dug(&mut phone);
    walked(&mut phone);
    let (field, pit) = (phone.fields[0].field.id, phone.pit().id);
    let photo = photo();
    phone.fields[0].pits[1].photos.push(photo.clone());
    phone.photo_size = Some(PhotoSize { width_px: 1_200, height_px: 1_600 });
    let large = Place::Photo { field, pit, photo: photo.id };
    phone.go(large);
    assert!(phone.screen().picture.unwrap().drawing.shapes.is_empty());
    phone.tap("Scale by the tape");
    let touch = |phone: &mut Phone, y: f64| {
        let picture = phone.screen().picture.unwrap();
        assert_eq!((picture.drawing.width, picture.drawing.height), (360.0, 480.0));
        phone.touch(&picture.anywhere.unwrap(), Point::new(180.0, y));
    };
    assert_eq!(sentence(&phone.screen()), "Touch 0 on the tape.");
    touch(&mut phone, 48.0);
    assert_eq!(sentence(&phone.screen()), "Touch 50\u{a0}cm on the tape.");
    touch(&mut phone, 50.0);
    assert!(phone.told.contains("too close"), "{}", phone.told);
    assert_eq!(sentence(&phone.screen()), "Touch 0 on the tape.", "both anew");
    touch(&mut phone, 48.0);
    touch(&mut phone, 432.0);
    assert_eq!((phone.place, phone.pit().photos[0].marks.len()), (large, 2));
    let over = phone.screen().picture.unwrap().drawing;
    let boundary = over.shapes.iter().any(|shape| match shape {
        Shape::Line { role: Role::Boundary, from, to } => {
            (from.y - 201.6).abs() < 0.2 && (to.y - 201.6).abs() < 0.2
        }
        Shape::Polyline { role: Role::Boundary, points } => {
            points.iter().all(|at| (at.y - 201.6).abs() < 0.2)
        }
        _ => false,
    });
    assert!(boundary, "{:?}", over.shapes);
    phone.tap("Undo");
    assert!(phone.pit().photos[0].marks.is_empty());
}
