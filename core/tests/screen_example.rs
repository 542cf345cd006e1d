//! The example of the first start: it can be looked at all over, and no tap in it saves anything.

use crate::screen_pit_support;

use pitface_core::record::FieldNotes;
use pitface_core::screen::{Act, Block, Done, Input, Place, Screen, example, tap};
use pitface_core::words::Language;
use screen_pit_support::{Phone, buttons, drawings, is_finite, texts};
use std::collections::{HashSet, VecDeque};

/// Screens looked at: from the field on, the nearest first.
const SCREENS: usize = 120;

fn typed(screen: &Screen) -> impl Iterator<Item = Act> {
    screen.blocks.iter().filter_map(|block| match block {
        Block::Typing { act, .. } => Some(act.clone()),
        _ => None,
    })
}

#[test]
fn the_list_offers_it_only_while_there_is_no_field_of_ones_own() {
    for (language, look) in
        [(Language::English, "Look at an example"), (Language::German, "Ein Beispiel ansehen")]
    {
        let mut phone = Phone::new(language, Vec::new());
        phone.tap(look);
        assert_eq!(phone.place, Place::Field { field: example::FIELD });
        let own = FieldNotes::new(
            pitface_core::record::Field::new(pitface_core::record::RecordId::new(1, [7; 10]), "Long Acre"),
            Vec::new(),
        );
        let phone = Phone::new(language, vec![own]);
        assert!(phone.screen().rows().all(|row| row.title != look));
    }
}

#[test]
fn no_tap_in_it_saves_anything_and_every_screen_is_sound() {
    let mut phone = Phone::new(Language::English, example::fields().to_vec());
    let mut queue = VecDeque::from([Place::Field { field: example::FIELD }]);
    let (mut seen, mut refused) = (HashSet::new(), 0);
    while let Some(place) = queue.pop_front().filter(|_| seen.len() < SCREENS) {
        phone.place = place;
        let screen = phone.screen();
        if !seen.insert(format!("{:?}", screen.place)) {
            continue;
        }
        assert!(screen.title.starts_with("Example: "), "{}", screen.title);
        assert!(texts(&screen).iter().all(|text| !text.contains(['{', '}', '_'])), "{:?}", texts(&screen));
        assert!(drawings(&screen).into_iter().all(is_finite));
        let taps = buttons(&screen).into_iter().filter(|(.., enabled)| *enabled).map(|(_, act, _)| act);
        for act in taps.chain(typed(&screen)) {
            let mut new_id = || pitface_core::record::RecordId::new(5, [5; 10]);
            let input = Input { text: Some("oats"), point: None };
            let done = tap(screen.place, &act, input, &phone.world(), &mut new_id);
            let Ok(done) = done else { continue };
            if example::is_in(done.place) {
                queue.push_back(done.place);
            }
            let stays =
                Done { told: "This is an example: nothing is saved.".into(), ..Done::go(screen.place) };
            assert!(done == stays || done == Done::go(done.place), "{act:?}: {done:?}");
            refused += usize::from(done == stays);
        }
    }
    assert!(seen.len() > 60 && refused > 100, "{} screens, {refused} taps that would save", seen.len());
}
