//! A pit from its place to its call, tapped on its screens.

#![allow(clippy::unwrap_used, reason = "a test may fail by it")]

mod screen_pit_support;

use pitface_core::advice::advise;
use pitface_core::picture::Point;
use pitface_core::reading::{Clue, read_field};
use pitface_core::record::{
    Call, ComesAway, FaceMoisture, Field, FieldNotes, PlaceKind, RecordId, Resistance, RollOutcome, depth,
    notes,
};
use pitface_core::screen::own::OwnAct;
use pitface_core::screen::{Act, Ask, Block, Button, Does, Headline, Place, Screen, ScreenKind, Stand};
use pitface_core::words::{Language, PitText};
use screen_pit_support::{Phone, answers, demo, fix_at};

/// A field with its reference pit dug.
fn field_with_reference() -> Vec<FieldNotes> {
    let mut notes = demo().into_iter().find(|notes| notes.field.name == "Long Sedge").unwrap();
    notes.pits.truncate(1);
    vec![notes]
}

fn kind(phone: &Phone) -> ScreenKind {
    phone.screen().kind
}

/// Begins a pit in a wheeling, digs the hole and looks at its face: two taps.
fn dug(phone: &mut Phone) {
    phone.place = Place::StartPit { field: phone.fields[0].field.id, pit: None };
    phone.tap("Wheeling");
    phone.tap("Moist");
}

/// Walks down a pan: crumbs to 20 cm, plates to 30 cm, rounded lumps to 50 cm.
fn walked(phone: &mut Phone) {
    phone.tap("Slips in");
    phone.tap("Crumbs");
    for _ in 0..3 {
        phone.tap("Same as above");
    }
    phone.tap("Hard push");
    phone.tap("Flat plates");
    phone.tap("Same as above");
    phone.tap("Firm push");
    phone.tap("Rounded lumps");
    for _ in 0..3 {
        phone.tap("Same as above");
    }
    phone.tap("Bottom of hole");
}

/// What there is to see in the sound ground on top, in the pan, and below it.
const SEEN: [(&str, [&str; 6]); 3] = [
    ("0–20", ["Slips in", "Go right through", "Many", "Earthy", "Falls apart", "None"]),
    ("20–30", ["Hard push", "Turned sideways", "Cut off", "None", "No smell", "Falls apart"]),
    ("30–50", ["Firm push", "Go right through", "Some", "Earthy", "Falls apart", "None"]),
];

/// Answers every look by what there is to see; how many.
fn looked(phone: &mut Phone) -> usize {
    let mut count = 0;
    while kind(phone) == ScreenKind::NextLook {
        let screen = phone.screen();
        let buttons = answers(&screen);
        let question = question(&screen);
        let (_, seen) = SEEN.iter().find(|(depths, _)| question.starts_with(depths)).unwrap();
        let answer = seen.iter().find(|seen| buttons.iter().any(|button| button.label == **seen));
        phone.tap(answer.unwrap_or_else(|| panic!("{question}")));
        count += 1;
        assert!(count < 20, "the asking does not end");
    }
    count
}

/// What a screen asks.
fn question(screen: &Screen) -> String {
    sentence(screen)
}

/// What a screen says first.
fn sentence(screen: &Screen) -> String {
    screen.answer.clone().unwrap().text
}

#[test]
fn a_pit_of_three_layers_takes_at_most_25_taps_with_the_one_that_begins_it() {
    let mut phone = Phone::new(Language::English, field_with_reference());
    phone.place = Place::Field { field: phone.fields[0].field.id };
    phone.tap("Dig a pit");
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
        let question = question(&phone.screen());
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
    phone.tap("Dig a pit");
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
    phone.tap("Walk the edge of the field");
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
        |phone: &Phone| phone.screen().rows().next().map(|row| (row.title.clone(), row.lines[0].clone()));
    assert_eq!(first(&phone), Some(("Long Sedge".into(), "You stand in this field.".into())));
    phone.fix = None;
    assert_ne!(first(&phone).unwrap().1, "You stand in this field.");
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
