//! A phone without its shell: shows screens, taps what is on them, and keeps what is saved.

pub mod pit;

use chrono::{DateTime, FixedOffset};
use pitface_core::answer::Answers;
use pitface_core::picture::photo::PhotoSize;
use pitface_core::picture::{Drawing, Point, Shape};
use pitface_core::place::AveragedFix;
use pitface_core::record::{FieldNotes, Pit, Position, RecordId, notes};
use pitface_core::screen::partners::Partners;
use pitface_core::screen::pit::Skipped;
use pitface_core::screen::{
    Act, Block, Button, Does, Edit, Input, Own, Place, Screen, Section, Trail, World, show, tap,
};
use pitface_core::store::{DeviceId, WentAway};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

pub struct Phone {
    pub own: Own,
    pub words: Words,
    pub fields: Vec<FieldNotes>,
    pub answers: Answers,
    pub place: Place,
    pub fix: Option<AveragedFix>,
    pub refused: bool,
    pub now: DateTime<FixedOffset>,
    /// What was kept before each save.
    pub before: Vec<Vec<FieldNotes>>,
    /// Everything that was to be saved, in order.
    pub edits: Vec<Edit>,
    pub taps: usize,
    pub told: String,
    pub photos_missing: BTreeSet<String>,
    pub partners: Partners,
    pub photo_size: Option<PhotoSize>,
    pub trail: Trail,
    pub passed_over: BTreeMap<RecordId, Skipped>,
    pub went_away: Vec<WentAway>,
    made: u64,
}

pub fn fix_at(longitude_deg: f64, latitude_deg: f64) -> AveragedFix {
    AveragedFix {
        position: Position { longitude_deg, latitude_deg, accuracy_m: Some(3.6) },
        fixes: 31,
        left_out: 0,
        span_s: 31.0,
        spread_m: 1.0,
        last_ms: 0,
    }
}

impl Phone {
    pub fn new(language: Language, fields: Vec<FieldNotes>) -> Self {
        Self {
            own: Own {
                name: "walker".into(),
                left_handed: false,
                volume_keys: false,
                language: Some(language),
                unit: LengthUnit::Centimetres,
                light: pitface_core::screen::own::Light::Phone,
            },
            words: Words::new(language, LengthUnit::Centimetres),
            fields,
            answers: Answers::default(),
            place: Place::Fields,
            fix: Some(fix_at(2.503, 54.501)),
            refused: false,
            now: DateTime::parse_from_rfc3339("2026-09-12T10:00:00+01:00").unwrap(),
            before: Vec::new(),
            edits: Vec::new(),
            taps: 0,
            told: String::new(),
            photos_missing: BTreeSet::new(),
            partners: Partners::none(DeviceId([1; 16])),
            photo_size: None,
            trail: Trail::default(),
            passed_over: BTreeMap::new(),
            went_away: Vec::new(),
            made: 0,
        }
    }

    pub fn world(&self) -> World<'_> {
        World {
            own: &self.own,
            words: &self.words,
            fields: &self.fields,
            answers: &self.answers,
            fix: self.fix.as_ref(),
            position_refused: self.refused,
            now: self.now,
            photos_missing: &self.photos_missing,
            incoming: None,
            went_away: &self.went_away,
            boundary: None,
            partners: &self.partners,
            letters: 1.0,
            photo_size: self.photo_size,
            back: self.trail.back(self.place),
            passed_over: &self.passed_over,
            undo: (!self.before.is_empty()).then_some(&*A_SAVE),
            redo: None,
        }
    }

    pub fn screen(&self) -> Screen {
        show(self.place, &self.world())
    }

    /// Goes to a place, as a session does.
    pub fn go(&mut self, place: Place) {
        self.trail.went(self.place, place);
        self.place = place;
    }

    /// The way back of the screen.
    pub fn back(&mut self) {
        let Some(Button { does: Does::Act(act), .. }) = self.screen().back else { panic!("no way back") };
        self.act(&act, None);
    }

    /// Taps: the act goes through text, as with a shell.
    pub fn act(&mut self, act: &Act, text: Option<&str>) {
        self.act_with(act, Input { text, point: None });
    }

    /// A finger on a picture.
    pub fn touch(&mut self, act: &Act, point: Point) {
        self.act_with(act, Input::at(point));
    }

    fn act_with(&mut self, act: &Act, input: Input) {
        let written = serde_json::to_string(act).unwrap();
        let read: Act = serde_json::from_str(&written).unwrap();
        assert_eq!(&read, act, "{written}");
        let place = self.screen().place;
        if place != self.place {
            self.trail.fell_back(place);
            self.place = place;
        }
        let mut made = self.made;
        let mut new_id = || {
            made += 1;
            RecordId::new(1_000_000 + made, [9; 10])
        };
        let done = tap(place, &read, input, &self.world(), &mut new_id)
            .unwrap_or_else(|fault| panic!("{place:?} {act:?}: {fault}"));
        self.made = made;
        let saves = done.edits.iter().any(|edit| !matches!(edit, Edit::Undo));
        if saves && matches!(read, Act::Pit(_) | Act::Own(_)) {
            assert!(done.told.ends_with('.'), "{read:?} tells {:?}", done.told);
        }
        for edit in &done.edits {
            self.edits.push(edit.clone());
            self.save(edit);
            // What changes nothing is no save that could be taken back.
            if self.before.last() == Some(&self.fields) {
                self.before.pop();
            }
        }
        self.own = done.own.unwrap_or_else(|| self.own.clone());
        self.go(done.place);
        self.passed_over.extend(done.passed_over);
        self.told = done.told;
        self.taps += 1;
    }

    /// Taps the button, row or bar with this label.
    pub fn tap(&mut self, label: &str) {
        let screen = self.screen();
        let all = buttons(&screen);
        // Of two that are called alike the one nearer to the thumb.
        let found = all.iter().rfind(|(its, ..)| its == label);
        let Some((_, act, enabled)) = found else {
            panic!(
                "no {label:?} on {:?}: {:?}",
                screen.title,
                all.iter().map(|its| &its.0).collect::<Vec<_>>()
            )
        };
        assert!(enabled, "{label:?} cannot be tapped");
        self.act(act, None);
    }

    /// Taps the button with this label that is about this.
    pub fn tap_about(&mut self, about: &str, label: &str) {
        let screen = self.screen();
        let found = screen.buttons().find(|button| button.about.contains(about) && button.label == label);
        let Some(Button { does: Does::Act(act), .. }) = found else { panic!("no {label:?} about {about:?}") };
        self.act(act, None);
    }

    pub fn type_in(&mut self, text: &str) {
        let screen = self.screen();
        self.act(&typing(&screen).unwrap(), Some(text));
    }

    pub fn pit(&self) -> &Pit {
        self.fields[0].pits.last().unwrap()
    }

    fn save(&mut self, edit: &Edit) {
        if matches!(edit, Edit::Undo) {
            self.fields = self.before.pop().unwrap();
            return;
        }
        self.before.push(self.fields.clone());
        let pit_of = |fields: &mut Vec<FieldNotes>, id: RecordId| {
            let at = fields.iter().position(|notes| notes.pits.iter().any(|pit| pit.id == id)).unwrap();
            let index = fields[at].pits.iter().position(|pit| pit.id == id).unwrap();
            (at, index)
        };
        match edit {
            Edit::Field(field) => match self.fields.iter_mut().find(|notes| notes.field.id == field.id) {
                Some(notes) => notes.field = field.clone(),
                None => self.fields.push(FieldNotes::new(field.clone(), Vec::new())),
            },
            Edit::Pit { field, pit } => {
                let notes = self.fields.iter_mut().find(|notes| notes.field.id == *field).unwrap();
                put(&mut notes.pits, pit, |its| its.id);
            }
            Edit::Step { pit, step } => {
                let (at, index) = pit_of(&mut self.fields, *pit);
                put(&mut self.fields[at].pits[index].walk, step, |its| its.id);
            }
            Edit::Layer { pit, layer } => {
                let (at, index) = pit_of(&mut self.fields, *pit);
                let layers = &mut self.fields[at].pits[index].layers;
                put(layers, layer, |its| its.id);
            }
            Edit::Roll { parent, roll } => {
                let (at, index) = pit_of(&mut self.fields, *parent);
                put(&mut self.fields[at].pits[index].rolls, roll, |its| its.id);
            }
            Edit::Delete { record } => {
                for pit in self.fields.iter_mut().flat_map(|notes| &mut notes.pits) {
                    pit.walk.retain(|step| step.id != *record);
                    pit.photos.retain(|photo| photo.id != *record);
                    pit.layers.retain(|layer| layer.id != *record);
                    pit.rolls.retain(|roll| roll.id != *record);
                }
                self.fields.retain(|notes| notes.field.id != *record);
                for notes in &mut self.fields {
                    notes.field.lines.retain(|line| line.id != *record);
                    notes.field.parts.retain(|part| part.id != *record);
                    notes.pits.retain(|pit| pit.id != *record);
                    notes.machines.retain(|machine| machine.id != *record);
                    notes.passes.retain(|pass| pass.id != *record);
                    for pass in &mut notes.passes {
                        pass.after_digs.retain(|dig| dig.id != *record);
                    }
                }
            }
            Edit::Photo { pit, photo } => {
                let (at, index) = pit_of(&mut self.fields, *pit);
                put(&mut self.fields[at].pits[index].photos, photo, |its| its.id);
            }
            other => panic!("not of a field or pit: {other:?}"),
        }
    }
}

fn put<T: Clone>(list: &mut Vec<T>, record: &T, id: impl Fn(&T) -> RecordId) {
    match list.iter_mut().find(|its| id(its) == id(record)) {
        Some(its) => *its = record.clone(),
        None => list.push(record.clone()),
    }
}

/// Every act on a screen, with its label and whether it can be tapped.
pub fn buttons(screen: &Screen) -> Vec<(String, Act, bool)> {
    let of = |button: &Button| match &button.does {
        Does::Act(act) => Some((button.label.clone(), act.clone(), button.enabled)),
        Does::Ask(_) => None,
    };
    let rows = screen.rows().filter_map(|row| match &row.does {
        Does::Act(act) => Some((row.title.clone(), act.clone(), true)),
        Does::Ask(_) => None,
    });
    rows.chain(screen.buttons().filter_map(of)).collect()
}

/// The act of what is to be typed on a screen.
pub fn typing(screen: &Screen) -> Option<Act> {
    screen.blocks.iter().find_map(|block| match block {
        Block::Typing { act, .. } => Some(act.clone()),
        _ => None,
    })
}

/// The answers to the last question of a screen.
pub fn answers(screen: &Screen) -> &[Button] {
    let asked = screen.blocks.iter().rev().find_map(|block| match block {
        Block::Question { answers, .. } => Some(answers.as_slice()),
        _ => None,
    });
    asked.unwrap_or(&[])
}

/// Every text on a screen.
pub fn texts(screen: &Screen) -> Vec<String> {
    let mut texts = vec![screen.title.clone()];
    if let Some(answer) = &screen.answer {
        texts.push(answer.text.clone());
        texts.extend((!answer.line.is_empty()).then(|| answer.line.clone()));
    }
    for picture in screen.pictures() {
        texts.extend([picture.title.clone(), picture.description.clone()]);
        texts.extend(picture.touches.iter().map(|touch| touch.label.clone()));
    }
    for block in &screen.blocks {
        match block {
            Block::Question { text, .. } => texts.extend((!text.is_empty()).then(|| text.clone())),
            Block::Ways { heading, rows } => {
                texts.extend((!heading.is_empty()).then(|| heading.clone()));
                texts.extend(
                    rows.iter().flat_map(|row| [vec![row.title.clone()], row.lines.clone()].concat()),
                );
            }
            Block::Photos(photos) => texts.extend(photos.iter().map(|photo| photo.label.clone())),
            Block::Drawing(_) => {}
            Block::Text(text) => texts.push(text.clone()),
            Block::Section(section) => texts.extend(lines_of(section)),
            Block::Typing { label, .. } => texts.push(label.clone()),
        }
    }
    texts.extend((!screen.caution.is_empty()).then(|| screen.caution.clone()));
    texts.extend(screen.more.iter().flat_map(lines_of));
    texts.extend(screen.buttons().map(|button| button.label.clone()));
    texts
}

fn lines_of(section: &Section) -> Vec<String> {
    let heading = (!section.heading.is_empty()).then(|| section.heading.clone());
    heading.into_iter().chain(section.lines.iter().cloned()).collect()
}

/// Every drawing on a screen.
pub fn drawings(screen: &Screen) -> Vec<&Drawing> {
    let known = screen.pictures().map(|picture| &picture.drawing);
    let signs = screen.answer.iter().filter_map(|answer| answer.sign.as_ref());
    known.chain(signs).chain(screen.buttons().filter_map(|button| button.drawing.as_ref())).collect()
}

/// Returns whether every number of a drawing is one.
pub fn is_finite(drawing: &Drawing) -> bool {
    let shape = |shape: &Shape| match shape {
        Shape::Text { at, size, .. } => at.x.is_finite() && at.y.is_finite() && size.is_finite(),
        other => {
            let written = format!("{other:?}");
            !written.contains("NaN") && !written.contains("inf")
        }
    };
    drawing.width.is_finite() && drawing.height.is_finite() && drawing.shapes.iter().all(shape)
}

/// The notes of the demo estate.
pub fn demo() -> Vec<FieldNotes> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../bindings/cli/demo");
    let mut paths: Vec<_> = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    paths.sort();
    let mut made = 0;
    let mut new_id = || {
        made += 1;
        RecordId::new(made, [3; 10])
    };
    paths
        .iter()
        .map(|path| {
            let text = std::fs::read_to_string(path).unwrap();
            notes::read(&text, &mut new_id).unwrap().notes
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
