//! A phone without its shell: screens shown, buttons tapped, edits kept in notes.
#![allow(dead_code, reason = "each test file uses its part")]
#![allow(clippy::unwrap_used, reason = "a test may fail")]

use chrono::{DateTime, FixedOffset};
use pitface_core::answer::Answers;
use pitface_core::error::Fault;
use pitface_core::picture::{Drawing, Shape};
use pitface_core::record::{FieldNotes, Photo, RecordId, notes};
use pitface_core::screen::partners::Partners;
use pitface_core::screen::{
    Act, Ask, Bar, Button, Does, Doing, Done, Edit, Known, Own, Place, Row, Screen, World, show, tap,
};
use pitface_core::store::DeviceId;
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use std::collections::BTreeSet;

/// The notes of two demo fields that have machines and passes, the first pit of each with a photo.
pub fn demo() -> Vec<FieldNotes> {
    let texts = [
        include_str!("../../../bindings/cli/demo/lapwing_ground.notes.json"),
        include_str!("../../../bindings/cli/demo/mere_piece.notes.json"),
    ];
    let mut count = 0;
    let mut new_id = || {
        count += 1;
        RecordId::new(count, [0; 10])
    };
    let mut fields: Vec<FieldNotes> =
        texts.iter().map(|text| notes::read(text, &mut new_id).unwrap().notes).collect();
    for field in &mut fields {
        let photo = Photo {
            id: new_id(),
            sha256: "0".repeat(64),
            size_bytes: 2_345_678,
            media_type: "image/jpeg".into(),
            taken: field.pits[0].dug,
            depth_mm: None,
            marks: Vec::new(),
            unknown: serde_json::Map::default(),
        };
        field.pits[0].photos.push(photo);
    }
    fields
}

/// Somebody's phone.
#[derive(Clone)]
pub struct Phone {
    pub own: Own,
    pub fields: Vec<FieldNotes>,
    pub answers: Answers,
    pub place: Place,
    pub told: String,
    pub photos_missing: BTreeSet<String>,
    pub now: DateTime<FixedOffset>,
    made: u64,
}

impl Phone {
    pub fn at(place: Place, fields: Vec<FieldNotes>, language: Language, unit: LengthUnit) -> Self {
        let own = Own {
            name: "walker".into(),
            left_handed: false,
            volume_keys: false,
            language: Some(language),
            unit,
        };
        let now = DateTime::parse_from_rfc3339("2026-09-10T09:00:00+01:00").unwrap();
        Self {
            own,
            fields,
            answers: Answers::default(),
            place,
            told: String::new(),
            photos_missing: BTreeSet::new(),
            now,
            made: 1_000_000,
        }
    }

    pub fn words(&self) -> Words {
        Words::new(self.own.language.unwrap_or(Language::English), self.own.unit)
    }

    fn with<T>(&self, words: &Words, look: impl FnOnce(&World) -> T) -> T {
        look(&World {
            own: &self.own,
            words,
            fields: &self.fields,
            answers: &self.answers,
            fix: None,
            position_refused: false,
            now: self.now,
            photos_missing: &self.photos_missing,
            incoming: None,
            partners: &Partners::none(DeviceId([1; 16])),
            undo: Some(&A_SAVE),
            redo: None,
        })
    }

    pub fn screen(&self, words: &Words) -> Screen {
        self.with(words, |world| show(self.place, world))
    }

    /// Taps: what comes of it is kept, as a store would.
    pub fn try_tap(&mut self, act: &Act, text: Option<&str>, words: &Words) -> Result<(), Fault> {
        let mut made = self.made;
        let mut new_id = || {
            made += 1;
            RecordId::new(made, [1; 10])
        };
        let Done { edits, own, decided: _, place, told, .. } =
            self.with(words, |world| tap(self.place, act, text, world, &mut new_id))?;
        self.made = made;
        let told_of = matches!(act, Act::Machine(_) | Act::Behind(_));
        assert!(edits.is_empty() || !told_of || told.ends_with('.'), "{act:?} tells {told:?}");
        for edit in edits {
            keep(&mut self.fields, edit);
        }
        self.own = own.unwrap_or_else(|| self.own.clone());
        (self.place, self.told) = (place, told);
        Ok(())
    }

    /// The same where it must not fail.
    pub fn tap(&mut self, act: &Act, text: Option<&str>, words: &Words) {
        self.try_tap(act, text, words).unwrap_or_else(|fault| panic!("{act:?}: {fault}"));
    }

    /// Taps the button with this label under this question.
    pub fn press(&mut self, question: &str, label: &str) {
        let words = self.words();
        let screen = self.screen(&words);
        let mut asked = String::new();
        let mut found = None;
        for doing in &screen.doing {
            match doing {
                Doing::Question(question) => asked.clone_from(question),
                Doing::Choices { buttons, .. } => {
                    let button = buttons.iter().find(|button| plain(&button.label) == label);
                    if asked.starts_with(question) && button.is_some() {
                        found = button;
                    }
                }
                Doing::Typing { .. } => {}
            }
        }
        let button = found.unwrap_or_else(|| panic!("no {label} under {question}: {:#?}", screen.doing));
        assert!(button.enabled, "{label}");
        let Does::Act(act) = &button.does else { panic!("{label} asks the platform") };
        self.tap(act, None, &words);
    }

    /// Taps the main action.
    pub fn press_main(&mut self) {
        let words = self.words();
        let main = self.screen(&words).bar.main.unwrap();
        let Does::Act(act) = &main.does else { panic!("{} asks the platform", main.label) };
        self.tap(act, None, &words);
    }
}

/// No-break spaces as plain ones.
pub fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// Puts a record in place of that with its id, or at the end.
fn put<T>(list: &mut Vec<T>, record: T, id: fn(&T) -> RecordId) {
    match list.iter_mut().find(|its| id(its) == id(&record)) {
        Some(its) => *its = record,
        None => list.push(record),
    }
}

fn keep(fields: &mut [FieldNotes], edit: Edit) {
    fn named(fields: &mut [FieldNotes], field: RecordId) -> &mut FieldNotes {
        fields.iter_mut().find(|its| its.field.id == field).unwrap()
    }
    match edit {
        Edit::Pit { field, pit } => put(&mut named(fields, field).pits, pit, |pit| pit.id),
        Edit::Machine { field, machine } => {
            assert_eq!(machine.faults(), []);
            put(&mut named(fields, field).machines, machine, |machine| machine.id);
        }
        Edit::Pass { field, pass } => {
            assert_eq!(pass.faults(), []);
            put(&mut named(fields, field).passes, pass, |pass| pass.id);
        }
        Edit::AfterDig { pass, dig } => {
            let mut passes = fields.iter_mut().flat_map(|notes| &mut notes.passes);
            let pass = passes.find(|its| its.id == pass).unwrap();
            put(&mut pass.after_digs, dig, |dig| dig.id);
        }
        Edit::Roll { parent, roll } => {
            let mut passes = fields.iter_mut().flat_map(|notes| &mut notes.passes);
            let pass = passes.find(|its| its.id == parent).unwrap();
            put(&mut pass.rolls, roll, |roll| roll.id);
        }
        Edit::Photo { pit, photo } => {
            let mut pits = fields.iter_mut().flat_map(|notes| &mut notes.pits);
            let pit = pits.find(|its| its.id == pit).unwrap();
            put(&mut pit.photos, photo, |photo| photo.id);
        }
        Edit::Delete { record } => {
            for pass in fields.iter_mut().flat_map(|notes| &mut notes.passes) {
                pass.rolls.retain(|roll| roll.id != record);
            }
        }
        Edit::Undo | Edit::Redo => {}
        Edit::Field(_)
        | Edit::Step { .. }
        | Edit::Layer { .. }
        | Edit::Settle { .. }
        | Edit::BringBack { .. }
        | Edit::StayDeleted { .. }
        | Edit::Join { .. } => panic!("none of these screens does that"),
    }
}

/// Every button and row of a screen that goes to the core: what it does, and whether it takes text.
pub fn acts(screen: &Screen) -> Vec<(Act, bool)> {
    let mut acts = Vec::new();
    let mut add = |does: &Does, typed: bool| {
        if let Does::Act(act) = does {
            acts.push((act.clone(), typed));
        }
    };
    for known in &screen.known {
        if let Known::Rows(rows) = known {
            for row in rows {
                add(&row.does, false);
            }
        }
    }
    for doing in &screen.doing {
        match doing {
            Doing::Question(_) => {}
            Doing::Choices { buttons, .. } => {
                for button in buttons.iter().filter(|button| button.enabled) {
                    add(&button.does, false);
                }
            }
            Doing::Typing { act, .. } => add(&Does::Act(act.clone()), true),
        }
    }
    for button in bar(&screen.bar) {
        add(&button.does, false);
    }
    acts
}

fn bar(bar: &Bar) -> impl Iterator<Item = &Button> {
    [&bar.undo, &bar.main, &bar.back].into_iter().flatten()
}

#[track_caller]
fn text(said: &str) {
    assert!(!said.trim().is_empty(), "nothing is said");
    assert!(!said.contains(['{', '}', '_']), "a mark is left: {said}");
}

#[track_caller]
fn sound(drawing: &Drawing) {
    assert!(drawing.width > 0.0 && drawing.height > 0.0, "{} {}", drawing.width, drawing.height);
    for shape in &drawing.shapes {
        let numbers = match shape {
            Shape::Rectangle { left, top, width, height, .. } => vec![*left, *top, *width, *height],
            Shape::Circle { centre, radius, .. } => vec![centre.x, centre.y, *radius],
            Shape::Polygon { points, .. } | Shape::Polyline { points, .. } => {
                points.iter().flat_map(|point| [point.x, point.y]).collect()
            }
            Shape::Line { from, to, .. } => vec![from.x, from.y, to.x, to.y],
            Shape::Text { at, size, text: said, .. } => {
                text(said);
                vec![at.x, at.y, *size]
            }
        };
        assert!(numbers.iter().all(|number| number.is_finite()), "{shape:?}");
    }
}

#[track_caller]
fn button_is_sound(button: &Button) {
    text(&button.label);
    assert!(!button.note.contains(['{', '}', '_']), "{}", button.note);
    button.drawing.iter().for_each(sound);
    if let Does::Act(act) = &button.does {
        let written = serde_json::to_string(act).unwrap();
        assert_eq!(&serde_json::from_str::<Act>(&written).unwrap(), act, "{written}");
    }
}

/// Everything that must hold of every screen.
#[track_caller]
pub fn screen_is_sound(screen: &Screen) {
    text(&screen.title);
    let written = serde_json::to_string(&screen.place).unwrap();
    assert_eq!(serde_json::from_str::<Place>(&written).unwrap(), screen.place);
    assert!(!screen.known.is_empty() || !screen.doing.is_empty(), "{:?} is empty", screen.place);
    for known in &screen.known {
        match known {
            Known::Sentence(said) | Known::Line(said) => text(said),
            Known::Drawing(pictured) => {
                sound(&pictured.drawing);
                text(&pictured.title);
                text(&pictured.description);
            }
            Known::Section { heading, lines } => {
                assert!(!lines.is_empty(), "nothing under {heading}");
                for line in lines {
                    text(line);
                }
            }
            Known::Rows(rows) => {
                assert!(!rows.is_empty());
                for Row { title, lines, .. } in rows {
                    text(title);
                    for line in lines {
                        text(line);
                    }
                }
            }
        }
    }
    for doing in &screen.doing {
        match doing {
            Doing::Question(said) => text(said),
            Doing::Choices { columns, buttons } => {
                assert!((1..=6).contains(columns) && !buttons.is_empty());
                buttons.iter().for_each(button_is_sound);
            }
            Doing::Typing { label, .. } => text(label),
        }
    }
    bar(&screen.bar).for_each(button_is_sound);
    assert_eq!(screen.bar.back.is_some(), screen.place.above().is_some(), "{:?}", screen.place);
}

/// What the platform is asked for on a screen.
pub fn asks(screen: &Screen) -> Vec<&Ask> {
    let choices = screen.doing.iter().flat_map(|doing| match doing {
        Doing::Choices { buttons, .. } => buttons.iter().collect(),
        Doing::Question(_) | Doing::Typing { .. } => Vec::new(),
    });
    let buttons = choices.chain(bar(&screen.bar));
    buttons
        .filter_map(|button| match &button.does {
            Does::Ask(ask) => Some(ask),
            Does::Act(_) => None,
        })
        .collect()
}

/// What stands for a save that could be taken back.
static A_SAVE: std::sync::LazyLock<pitface_core::store::LastSave> = std::sync::LazyLock::new(|| {
    use pitface_core::store::{Did, Kind, LastSave, Named};
    let of = Named {
        record: RecordId::new(1, [1; 10]),
        kind: Kind::Pit,
        field: "Long Sedge".into(),
        pit: Some(1),
        pass: None,
        after_dig: None,
        name: String::new(),
        top_mm: None,
        bottom_mm: None,
    };
    LastSave { saved_ms: 1, did: Did::Made, of, wrote: Vec::new(), others: 0 }
});
