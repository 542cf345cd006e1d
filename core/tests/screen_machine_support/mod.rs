//! A phone without its shell: screens shown, buttons tapped, edits kept in notes.

use chrono::{DateTime, FixedOffset};
use pitface_core::answer::Answers;
use pitface_core::error::Fault;
use pitface_core::picture::{Drawing, Point, Shape};
use pitface_core::record::{FieldNotes, Photo, RecordId, notes};
use pitface_core::screen::partners::Partners;
use pitface_core::screen::{
    Act, Ask, Block, Button, Does, Done, Edit, Input, Own, Place, Row, Screen, Section, World, show, tap,
};
use pitface_core::store::DeviceId;
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use std::collections::{BTreeMap, BTreeSet};

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
            light: pitface_core::screen::own::Light::Phone,
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
            went_away: &[],
            boundary: None,
            partners: &Partners::none(DeviceId([1; 16])),
            letters: 1.0,
            photo_size: None,
            back: None,
            passed_over: const { &BTreeMap::new() },
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
        // A shell sends where the finger was with every act of a picture.
        let input = Input { text, point: Some(Point { x: 90.0, y: 90.0 }) };
        let Done { edits, own, decided: _, place, told, .. } =
            self.with(words, |world| tap(self.place, act, input, world, &mut new_id))?;
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
        let asked = screen.answer.as_ref().map_or("", |answer| answer.text.as_str());
        let found = screen.blocks.iter().rev().find_map(|block| match block {
            Block::Question { text, answers, .. }
                if (if text.is_empty() { asked } else { text }).starts_with(question) =>
            {
                answers.iter().find(|button| plain(&button.label) == label)
            }
            _ => None,
        });
        let button = found.unwrap_or_else(|| panic!("no {label} under {question}: {:#?}", screen.blocks));
        assert!(button.enabled, "{label}");
        let Does::Act(act) = &button.does else { panic!("{label} asks the platform") };
        self.tap(act, None, &words);
    }

    /// Taps the row with this title.
    pub fn open(&mut self, title: &str) {
        let words = self.words();
        let screen = self.screen(&words);
        let row = screen.rows().find(|row| plain(&row.title) == title);
        let row = row.unwrap_or_else(|| panic!("no {title} among {:#?}", screen.rows().collect::<Vec<_>>()));
        let Does::Act(act) = &row.does else { panic!("{title} asks the platform") };
        self.tap(act, None, &words);
    }

    /// Taps the tool with this label.
    pub fn use_tool(&mut self, label: &str) {
        let words = self.words();
        let screen = self.screen(&words);
        let tool = screen.tools.iter().find(|tool| plain(&tool.label) == label);
        let tool = tool.unwrap_or_else(|| panic!("no {label} among {:#?}", screen.tools));
        assert!(tool.enabled, "{label}");
        let Does::Act(act) = &tool.does else { panic!("{label} asks the platform") };
        self.tap(act, None, &words);
    }

    /// Taps the main action.
    pub fn press_main(&mut self) {
        let words = self.words();
        let main = self.screen(&words).next.unwrap();
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
                pass.after_digs.retain(|dig| dig.id != record);
            }
            for notes in fields {
                notes.pits.retain(|pit| pit.id != record);
                notes.passes.retain(|pass| pass.id != record);
                notes.machines.retain(|machine| machine.id != record);
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
        if let Does::Act(act) = does
            // The next step enters what is typed where it has the line's act.
            && !acts.contains(&(act.clone(), true))
        {
            acts.push((act.clone(), typed));
        }
    };
    for row in screen.rows() {
        add(&row.does, false);
    }
    for block in &screen.blocks {
        if let Block::Typing { act, .. } = block {
            add(&Does::Act(act.clone()), true);
        }
    }
    for button in screen.buttons().filter(|button| button.enabled && !of_many(screen, button)) {
        add(&button.does, false);
    }
    for picture in screen.pictures() {
        picture.touches.iter().for_each(|touch| add(&touch.does, false));
        picture.anywhere.iter().for_each(|act| add(&Does::Act(act.clone()), false));
    }
    acts
}

/// Returns whether a button is one of many numbers side by side, and neither the first nor the last of them.
fn of_many(screen: &Screen, button: &Button) -> bool {
    screen.blocks.iter().any(|block| match block {
        Block::Question { answers, .. } if answers.len() > 8 => {
            answers[1..answers.len() - 1].iter().any(|answer| std::ptr::eq(answer, button))
        }
        _ => false,
    })
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

/// Everything that is said on a screen, from the headline on, a line each; a drawing by its title in brackets.
pub fn said(screen: &Screen) -> Vec<String> {
    let mut said: Vec<String> =
        screen.answer.iter().flat_map(|answer| [answer.text.clone(), answer.line.clone()]).collect();
    said.extend(screen.picture.iter().map(|picture| format!("[{}]", picture.title)));
    for block in &screen.blocks {
        match block {
            Block::Question { text, .. } | Block::Text(text) => said.push(text.clone()),
            Block::Ways { rows, .. } => {
                said.extend(
                    rows.iter().flat_map(|row| [vec![row.title.clone()], row.lines.clone()].concat()),
                );
            }
            Block::Section(section) => said.push(format!("{}: {}", section.heading, section.lines.join(" "))),
            Block::Drawing(picture) => said.push(format!("[{}]", picture.title)),
            Block::Photos(photos) => said.extend(photos.iter().map(|photo| photo.label.clone())),
            Block::Typing { label, .. } => said.push(label.clone()),
        }
    }
    said.push(screen.caution.clone());
    said.extend(
        screen.more.iter().map(|section| format!("{}: {}", section.heading, section.lines.join(" "))),
    );
    said.into_iter().filter(|said| !said.is_empty()).map(|said| plain(&said)).collect()
}

/// The answers to the last question of a screen.
pub fn answers(screen: &Screen) -> &[Button] {
    let asked = screen.blocks.iter().rev().find_map(|block| match block {
        Block::Question { answers, .. } => Some(answers.as_slice()),
        _ => None,
    });
    asked.unwrap_or(&[])
}

/// Everything that must hold of every screen.
#[track_caller]
pub fn screen_is_sound(screen: &Screen) {
    text(&screen.title);
    let written = serde_json::to_string(&screen.place).unwrap();
    assert_eq!(serde_json::from_str::<Place>(&written).unwrap(), screen.place);
    assert!(screen.answer.is_some() || !screen.blocks.is_empty(), "{:?} is empty", screen.place);
    if let Some(answer) = &screen.answer {
        text(&answer.text);
        answer.sign.iter().for_each(sound);
    }
    for picture in screen.pictures() {
        sound(&picture.drawing);
        text(&picture.title);
        text(&picture.description);
        picture.touches.iter().for_each(|touch| text(&touch.label));
    }
    for block in &screen.blocks {
        match block {
            Block::Question { columns, answers, .. } => {
                assert!((1..=6).contains(columns) && !answers.is_empty());
            }
            Block::Ways { rows, .. } => {
                assert!(!rows.is_empty());
                for Row { title, lines, .. } in rows {
                    text(title);
                    for line in lines {
                        text(line);
                    }
                }
            }
            Block::Photos(photos) => photos.iter().for_each(|photo| text(&photo.label)),
            Block::Drawing(_) => {}
            Block::Text(said) => text(said),
            Block::Section(section) => section_is_sound(section),
            Block::Typing { label, .. } => text(label),
        }
    }
    screen.more.iter().for_each(section_is_sound);
    screen.buttons().for_each(button_is_sound);
    assert_eq!(screen.back.is_some(), screen.place.above().is_some(), "{:?}", screen.place);
}

#[track_caller]
fn section_is_sound(section: &Section) {
    assert!(!section.lines.is_empty(), "nothing under {}", section.heading);
    for line in &section.lines {
        text(line);
    }
}

/// Returns what the platform is asked for on a screen.
pub fn asks(screen: &Screen) -> Vec<&Ask> {
    let does = screen.buttons().map(|button| &button.does).chain(screen.rows().map(|row| &row.does));
    does.filter_map(|does| match does {
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
