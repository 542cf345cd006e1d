//! Everything that can be tapped on the screens of fields and pits can be tapped, and is said whole.

use crate::screen_names;
use crate::screen_pit_support;

use pitface_core::record::{FieldNotes, RecordId, depth, notes};
use pitface_core::screen::{Act, Block, Edit, Input, Place, Screen, ScreenKind, tap};
use pitface_core::store::{DeviceId, Store};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use screen_names::assert_told_apart;
use screen_pit_support::{Phone, buttons, demo, drawings, is_finite, texts, typing};
use std::collections::{BTreeMap, BTreeSet};

/// Taps of one crawl.
const TAPS: usize = 1_500;

/// Numbers that look random and are the same in every run (a linear congruential generator, Knuth).
struct Dice(u64);

impl Dice {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % limit
    }
}

/// Returns whether an act stays among the screens of fields and pits.
fn is_ours(act: &Act) -> bool {
    match act {
        Act::Undo | Act::Field(_) | Act::Pit(_) => true,
        Act::Go(place) => matches!(
            place,
            Place::Fields
                | Place::StartField
                | Place::Field { .. }
                | Place::Outline { .. }
                | Place::StartPit { .. }
                | Place::KnifeWalk { .. }
                | Place::NextLook { .. }
                | Place::Layers { .. }
                | Place::HoleEnds { .. }
                | Place::Moisture { .. }
                | Place::Roll { .. }
                | Place::RollOf { .. }
                | Place::Remark { .. }
                | Place::Call { .. }
        ),
        _ => false,
    }
}

#[track_caller]
fn assert_whole(screen: &Screen) {
    for text in texts(screen) {
        let whole = !text.trim().is_empty() && !text.contains(['{', '}', '_']);
        assert!(whole, "{:?}: {text:?}", screen.kind);
        for slip in ["  ", " ,", " .", "..", "()", ": ;"] {
            assert!(!text.contains(slip), "{:?} {slip:?}: {text}", screen.kind);
        }
    }
    for drawing in drawings(screen) {
        assert!(is_finite(drawing), "{:?}", screen.kind);
    }
    for block in &screen.blocks {
        if let Block::Question { columns, answers, .. } = block {
            assert!((1..=6).contains(columns) && !answers.is_empty(), "{:?}", screen.kind);
        }
    }
    let place = serde_json::to_string(&screen.place).unwrap();
    assert_eq!(serde_json::from_str::<Place>(&place).unwrap(), screen.place);
}

/// What must hold of whatever was noted.
#[track_caller]
fn assert_sound(fields: &[FieldNotes]) {
    for pit in fields.iter().flat_map(|field| &field.pits) {
        let steps: Vec<u32> = pit.walk.iter().map(|step| step.to_mm).collect();
        assert!(steps.is_sorted_by(|above, below| above < below), "{steps:?}");
        let layers: Vec<_> = pit.layers.iter().map(|layer| (layer.top_mm, Some(layer.bottom_mm))).collect();
        assert_eq!(depth::check(&layers), Ok(()), "{layers:?}");
    }
}

/// What was to be saved, saved in a store: it gives the same back.
fn assert_kept(at_first: &[FieldNotes], phone: &Phone) {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::create_or_open(&folder.path().join("store"), DeviceId([5; 16])).unwrap();
    for notes in at_first {
        store.save_notes(notes, NOW_MS).unwrap();
    }
    for edit in &phone.edits {
        match edit {
            Edit::Field(field) => drop(store.save_field(field, NOW_MS).unwrap()),
            Edit::Pit { field, pit } => drop(store.save_pit(*field, pit, NOW_MS).unwrap()),
            Edit::Step { pit, step } => drop(store.save_step(*pit, step, NOW_MS).unwrap()),
            Edit::Layer { pit, layer } => drop(store.save_layer(*pit, layer, NOW_MS).unwrap()),
            Edit::Roll { parent, roll } => drop(store.save_roll(*parent, roll, NOW_MS).unwrap()),
            Edit::Delete { record } => drop(store.delete_record(*record, NOW_MS).unwrap()),
            Edit::Undo => drop(store.undo(NOW_MS).unwrap().unwrap()),
            other => panic!("not of a field or pit: {other:?}"),
        }
    }
    for field in &phone.fields {
        let mut kept = store.load_notes(field.field.id).unwrap();
        let mut noted = field.clone();
        for pit in kept.pits.iter_mut().chain(&mut noted.pits) {
            pit.layers.sort_by_key(|layer| layer.top_mm);
        }
        assert_eq!(kept, noted);
    }
}

/// Now, as far as the store is concerned.
const NOW_MS: u64 = 1_789_000_000_000;

/// Taps on, now here, now there; what was tapped least comes first.
fn crawl(language: Language, unit: LengthUnit, fields: Vec<FieldNotes>, seed: u64) {
    let mut phone = Phone::new(language, fields);
    phone.words = Words::new(language, unit);
    let at_first = phone.fields.clone();
    let mut dice = Dice(seed);
    let mut tapped: BTreeMap<String, usize> = BTreeMap::new();
    let mut kinds = BTreeSet::new();
    for round in 0..TAPS {
        phone.fix = (dice.below(4) > 0).then(|| {
            let offset = |dice: &mut Dice| dice.below(400) as f64 / 100_000.0;
            screen_pit_support::fix_at(2.5 + offset(&mut dice), 54.5 + offset(&mut dice))
        });
        phone.refused = dice.below(5) == 0;
        let screen = phone.screen();
        assert_whole(&screen);
        assert_told_apart(&screen);
        kinds.insert(screen.kind.code());
        if let Some(act) = typing(&screen) {
            phone.act(&act, Some(&format!("Field {round}")));
            continue;
        }
        let acts: Vec<Act> = buttons(&screen)
            .into_iter()
            .filter(|(_, act, enabled)| *enabled && is_ours(act))
            .map(|(_, act, _)| act)
            .collect();
        // What was tapped least on such a screen; of those one by the dice.
        let name = |act: &Act| {
            let written = serde_json::to_string(act).unwrap();
            let letters = written.chars().filter(|letter| !letter.is_ascii_digit());
            format!("{} {}", screen.kind.code(), letters.collect::<String>())
        };
        let count = |act: &Act| tapped.get(&name(act)).copied().unwrap_or(0);
        let least = acts.iter().map(count).min().unwrap();
        let fresh: Vec<&Act> = acts.iter().filter(|act| count(act) <= least + 2).collect();
        let act = fresh[dice.below(fresh.len())].clone();
        *tapped.entry(name(&act)).or_default() += 1;
        if round % 6 == 0 {
            for act in &acts {
                let mut new_id = || RecordId::new(1, [8; 10]);
                let done = tap(screen.place, act, Input::default(), &phone.world(), &mut new_id);
                assert!(done.is_ok(), "{:?} {act:?}: {done:?}", screen.place);
            }
        }
        phone.act(&act, None);
        assert_sound(&phone.fields);
        assert!(!phone.told.contains(['{', '}', '_']), "{}", phone.told);
    }
    for kind in [
        ScreenKind::Fields,
        ScreenKind::Field,
        ScreenKind::StartPit,
        ScreenKind::KnifeWalk,
        ScreenKind::NextLook,
        ScreenKind::Layers,
        ScreenKind::Roll,
        ScreenKind::Call,
    ] {
        assert!(kinds.contains(kind.code()), "{} was never reached: {kinds:?}", kind.code());
    }
    for field in &phone.fields {
        let text = notes::write(field);
        let read = notes::read(&text, &mut || panic!("every record has an id"));
        assert!(read.is_ok(), "{:?}\n{text}", read.err());
    }
    assert_kept(&at_first, &phone);
    println!("{} kinds of tap on {} kinds of screen", tapped.len(), kinds.len());
}

#[test]
fn from_an_empty_phone_in_english() {
    crawl(Language::English, LengthUnit::Inches, Vec::new(), 1);
}

#[test]
fn from_an_empty_phone_in_german() {
    crawl(Language::German, LengthUnit::Centimetres, Vec::new(), 2);
}

#[test]
fn from_the_demo_estate_in_english() {
    crawl(Language::English, LengthUnit::Centimetres, demo(), 3);
}

#[test]
fn from_the_demo_estate_in_german() {
    crawl(Language::German, LengthUnit::Inches, demo(), 4);
}
