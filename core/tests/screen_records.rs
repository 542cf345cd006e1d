//! Deleting with what goes along, and the list of fields as data. Source of all: our own rules; distances are told by `place::walk`, which
//! `tests/outside` holds against geographiclib.

use crate::screen_pit_support;

use pitface_core::record::{Call, FieldNotes, RecordId, notes};
use pitface_core::screen::field::Sought;
use pitface_core::screen::field::listed::{FieldListed, Work, listed};
use pitface_core::screen::{Act, Does, Edit, Input, Place, hanging, tap};
use pitface_core::store::{Kind, Named, WentAway};
use pitface_core::words::{Language, Words};
use screen_pit_support::{Phone, fix_at};

fn demo(text: &str, number: u64) -> FieldNotes {
    let mut made = 0;
    let mut new_id = || {
        made += 1;
        RecordId::new(number, [u8::try_from(made).unwrap(); 10])
    };
    notes::read(text, &mut new_id).unwrap().notes
}

fn lapwing() -> FieldNotes {
    demo(include_str!("../../bindings/cli/demo/lapwing_ground.notes.json"), 1)
}

fn mere() -> FieldNotes {
    demo(include_str!("../../bindings/cli/demo/mere_piece.notes.json"), 2)
}

fn phone(fields: Vec<FieldNotes>) -> Phone {
    Phone::new(Language::English, fields)
}

fn told(words: &Words, notes: &FieldNotes, record: RecordId) -> Vec<String> {
    words.would_go(&hanging(notes, record).unwrap())
}

#[test]
fn what_goes_along_is_told_before_anything_goes() {
    let notes = lapwing();
    let phone = phone(vec![notes.clone()]);
    let (pit, words) = (&notes.pits[1], &phone.words);
    let first = told(words, &notes, pit.id).remove(0);
    assert!(
        first.starts_with("Pit 2 goes, with ") && first.ends_with(" Undo brings all of it back."),
        "{first}"
    );
    assert!(first.contains(&format!("{} steps", pit.walk.len())), "{first}");
    let field = told(words, &notes, notes.field.id).remove(0);
    assert!(field.starts_with("Lapwing Ground goes, with 8 pits"), "{field}");
    assert!(field.contains("3 passes, 4 holes behind the machine, "), "{field}");
    let step = &pit.walk[1];
    let alone = told(words, &notes, step.id);
    let depths = words.depth_range(pit.walk[0].to_mm, step.to_mm);
    assert_eq!(alone, [format!("Pit 2, {depths} goes. Undo brings it back.")]);
    // Every record of a field is found, but for a list that the field has not.
    let digs = notes.passes.iter().flat_map(|pass| &pass.after_digs);
    let last = digs.clone().last().unwrap();
    assert_eq!(told(words, &notes, last.id), ["After-dig A4 goes. Undo brings it back."]);
    assert_eq!(hanging(&notes, RecordId::new(99, [9; 10])), None);
    let compared = digs.clone().find_map(|dig| dig.before).unwrap();
    assert!(told(words, &notes, compared)[1].contains("compared with it"));
}

#[test]
fn a_machine_that_a_pass_was_made_with_stays_and_says_so() {
    let notes = lapwing();
    let phone = phone(vec![notes.clone()]);
    let winged = notes.passes[1].machine.unwrap();
    let field = notes.field.id;
    let place = Place::Machine { field, machine: Some(winged) };
    let mut new_id = || RecordId::new(7, [7; 10]);
    let act = Act::Delete { record: winged };
    let kept = tap(place, &act, Input::default(), &phone.world(), &mut new_id).unwrap_err();
    let said = "Machine winged feet, 50 cm apart stays: passes 2 and 3 were made with it and keep it. Delete those passes first.";
    assert_eq!(kept.wrong, said);

    // One that no pass names goes.
    let mut without = notes;
    without.passes.clear();
    let phone = self::phone(vec![without]);
    let done = tap(place, &act, Input::default(), &phone.world(), &mut new_id).unwrap();
    assert_eq!(
        (done.edits, done.place),
        (vec![Edit::Delete { record: winged }], Place::Machine { field, machine: None })
    );
    assert_eq!(done.told, "Machine winged feet, 50 cm apart is deleted. Undo brings it back.");
}

#[test]
fn after_a_deletion_one_is_where_what_is_gone_was_listed() {
    let notes = lapwing();
    let phone = phone(vec![notes.clone()]);
    let (field, pit, pass) = (notes.field.id, notes.pits[0].id, notes.passes[0].id);
    let dig = notes.passes[0].after_digs[0].id;
    let mut new_id = || RecordId::new(7, [7; 10]);
    for (place, record, left) in [
        (Place::Call { field, pit }, pit, Place::Field { field }),
        (Place::Field { field }, field, Place::Fields),
        (Place::Pass { field, pass: Some(pass) }, pass, Place::Pass { field, pass: None }),
        (Place::AfterDig { field, pass, dig }, dig, Place::Pass { field, pass: Some(pass) }),
    ] {
        let done =
            tap(place, &Act::Delete { record }, Input::default(), &phone.world(), &mut new_id).unwrap();
        assert_eq!((done.place, done.edits), (left, vec![Edit::Delete { record }]));
        assert!(done.told.contains("is deleted"), "{}", done.told);
    }
}

#[test]
fn the_last_entry_of_a_menu_asks_before_anything_goes() {
    let notes = lapwing();
    let (field, pit, pass) = (notes.field.id, notes.pits[1].id, notes.passes[0].id);
    let dig = notes.passes[0].after_digs[0].id;
    let (layer, roll) = (notes.pits[1].layers[1].id, notes.pits[1].rolls[1].id);
    let (part, line) = (notes.field.parts[0].id, notes.field.lines[1].id);
    let layers = |layer: Option<u16>| Place::Layers { field, pit, layer, clue: None };
    for (language, asked) in [(Language::English, "Delete "), (Language::German, " löschen")] {
        for (place, record, left) in [
            (Place::Field { field }, field, Place::Fields),
            (Place::Call { field, pit }, pit, Place::Field { field }),
            (Place::StartPit { field, pit: Some(pit) }, pit, Place::Field { field }),
            (Place::Pass { field, pass: Some(pass) }, pass, Place::Pass { field, pass: None }),
            (Place::AfterDig { field, pass, dig }, dig, Place::Pass { field, pass: Some(pass) }),
            (layers(Some(1)), layer, layers(None)),
            (Place::RollOf { field, pit, surface: false }, roll, Place::Call { field, pit }),
            (Place::Outline { field }, part, Place::Outline { field }),
            (Place::Lines { field, line: Some(line) }, line, Place::Lines { field, line: None }),
        ] {
            let mut phone = Phone::new(language, vec![notes.clone()]);
            phone.place = place;
            let entry = phone.screen().menu.pop().unwrap();
            assert!(entry.label.contains(asked) && entry.label.ends_with('…'), "{}", entry.label);
            phone.tap(&entry.label);
            assert_eq!(phone.place, Place::Deleting { field, record });
            let screen = phone.screen();
            let answer = screen.answer.unwrap();
            assert!(answer.text.contains(asked) && answer.text.ends_with('?'), "{}", answer.text);
            assert_eq!(answer.line, told(&phone.words, &notes, record)[0]);
            assert_eq!(screen.next.as_ref().unwrap().does, Does::Act(Act::Delete { record }));
            // Back leaves it as it was.
            phone.back();
            assert_eq!((phone.place, phone.edits.len()), (place, 0));
            phone.tap(&entry.label);
            phone.tap(&screen.next.unwrap().label);
            assert_eq!((phone.place, &phone.edits[..]), (left, &[Edit::Delete { record }][..]));
            assert!(phone.fields.first().is_none_or(|notes| hanging(notes, record).is_none()));
            let undo = phone.screen().tools.remove(0);
            assert!(undo.enabled && undo.does == Does::Act(Act::Undo), "{undo:?}");
            phone.tap(&undo.label);
            assert_eq!(phone.fields, std::slice::from_ref(&notes));
        }
    }
}

#[test]
fn a_machine_in_use_is_asked_about_and_cannot_go() {
    let notes = lapwing();
    let (field, machine) = (notes.field.id, notes.passes[1].machine.unwrap());
    let mut phone = phone(vec![notes]);
    phone.place = Place::Machine { field, machine: Some(machine) };
    let entry = phone.screen().menu.pop().unwrap();
    phone.tap(&entry.label);
    let screen = phone.screen();
    let answer = screen.answer.unwrap();
    assert_eq!((answer.text.as_str(), screen.next), ("It is in use and stays.", None));
    assert!(answer.line.contains("passes 2 and 3 were made with it"), "{}", answer.line);
}

#[test]
fn what_was_deleted_here_is_brought_back_from_its_list() {
    let mut phone = phone(vec![lapwing()]);
    phone.place = Place::Own;
    phone.tap("Deleted here");
    assert_eq!(phone.screen().answer.unwrap().text, "Nothing is deleted on this phone.");
    phone.back();
    assert_eq!(phone.place, Place::Own);
    phone.place = Place::Fields;
    phone.tap("Deleted here");
    let record = RecordId::new(5, [5; 10]);
    let of = Named {
        record,
        kind: Kind::Pit,
        field: "Long Sedge".into(),
        pit: Some(3),
        pass: None,
        after_dig: None,
        name: String::new(),
        top_mm: None,
        bottom_mm: None,
    };
    // 12 September 2026, 09:30 of world time: an hour later on the clock of this phone.
    phone.went_away = vec![WentAway { of, deleted_ms: 1_789_205_400_000 }];
    let screen = phone.screen();
    let row = screen.rows().next().unwrap();
    assert!(row.title.starts_with("Long Sedge, pit 3, deleted on "), "{}", row.title);
    assert!(row.title.contains("10:30"), "{}", row.title);
    let Does::Act(act) = &row.does else { panic!("{row:?}") };
    let mut new_id = || panic!("nothing new");
    let done = tap(Place::WentAway, act, Input::default(), &phone.world(), &mut new_id).unwrap();
    assert_eq!((done.place, done.edits), (Place::WentAway, vec![Edit::BringBack { record }]));
    assert_eq!(done.told, "Long Sedge, pit 3: back again.");
}

fn named<'a>(all: &'a [FieldListed], name: &str) -> &'a FieldListed {
    all.iter().find(|field| field.name == name).unwrap()
}

#[test]
fn the_list_tells_how_far_each_field_is_and_how_far_its_work_has_come() {
    let mut empty = lapwing();
    (empty.field.id, empty.field.name) = (RecordId::new(3, [3; 10]), "Nobody's Corner".into());
    (empty.field.outline, empty.pits, empty.passes) = (Vec::new(), Vec::new(), Vec::new());
    empty.field.parts.clear();
    let mut undug = lapwing();
    (undug.field.id, undug.field.name) = (RecordId::new(4, [4; 10]), "Lapwing undug".into());
    undug.passes.clear();
    let mut phone = phone(vec![empty, mere(), lapwing(), undug]);
    // In the middle of Lapwing Ground.
    phone.fix = Some(fix_at(2.518, 54.497));
    let all = listed(&phone.world());
    assert!(all[0].here && all[1].here && all[0].name.starts_with("Lapwing"));
    assert_eq!(all[3].name, "Nobody's Corner", "what has no place comes last");
    let mere = named(&all, "Mere Piece");
    // Mere Piece lies some 1.5 km west of it.
    assert!(
        mere.distance_m.is_some_and(|metres| (300.0..5_000.0).contains(&metres)),
        "{:?}",
        mere.distance_m
    );
    let corner = named(&all, "Nobody's Corner");
    assert_eq!((corner.call, corner.work, corner.pits, corner.distance_m), (None, Work::NotBegun, 0, None));
    assert_eq!(mere.call, Some(Call::Loosen));
    assert!(mere.pits_wanted >= mere.pits);
    let undug = named(&all, "Lapwing undug");
    assert!(matches!(undug.work, Work::Digging | Work::Called), "{:?}", undug.work);
    let done = named(&all, "Lapwing Ground");
    assert_eq!(
        (done.passes, done.work),
        (3, Work::Digging),
        "the headland is worked and proved; other ground wants pits"
    );
    // Without the run over the whole headland nothing proves the two strips.
    let mut strips = self::lapwing();
    strips.passes.pop();
    phone.fields = vec![strips];
    assert_eq!(listed(&phone.world())[0].work, Work::Worked);

    phone.fix = None;
    assert!(listed(&phone.world()).iter().all(|field| field.distance_m.is_none() && !field.here));
}

#[test]
fn a_field_is_found_by_words_of_its_name() {
    let mut phone = phone(vec![mere(), lapwing()]);
    phone.fix = None;
    let found = |typed: &str| -> Vec<String> {
        let sought = Sought::of(typed);
        let all = listed(&phone.world()).into_iter().map(|field| field.name);
        all.filter(|name| sought.is_none_or(|sought| sought.is_in(name))).collect()
    };
    assert_eq!(found("ground LAP"), ["Lapwing Ground"]);
    assert_eq!(found("  "), ["Lapwing Ground", "Mere Piece"]);
    assert_eq!(found("mere ground"), [] as [&str; 0]);
}
