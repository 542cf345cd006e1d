//! A hole one stands at, noted or not yet, with the section on which its depths are entered.

use super::drawn::form;
use super::looks::season_on;
use super::readings::{Aim, slots};
use super::{Hole, HoleStep, READINGS, machine_of};
use crate::advice::after_dig::{DigAdvice, PassAdvice};
use crate::answer::FieldAnswer;
use crate::record::{AfterDig, Pass, RecordId};
use crate::screen::bar::blank;
use crate::screen::{Act, Does, Picture, Pictured, Place, Screen, ScreenKind, Touch, World};
use crate::words::{Words, WorkText};
use std::sync::Arc;

/// A hole of a pass; without `dig` one that its first answer saves.
pub(super) struct AtHole {
    pub field: RecordId,
    pub answer: Arc<FieldAnswer>,
    pass: usize,
    dig: Option<usize>,
}

impl AtHole {
    pub fn of(field: RecordId, pass: RecordId, dig: Option<RecordId>, world: &World) -> Option<Self> {
        let answer = world.answer(field)?;
        let pass = answer.notes.passes.iter().position(|its| its.id == pass)?;
        let digs = &answer.notes.passes[pass].after_digs;
        let dig = match dig {
            Some(dig) => Some(digs.iter().position(|its| its.id == dig)?),
            None => None,
        };
        Some(Self { field, answer, pass, dig })
    }

    pub fn pass(&self) -> &Pass {
        &self.answer.notes.passes[self.pass]
    }

    pub fn said_of_pass(&self) -> &PassAdvice {
        &self.answer.passes[self.pass]
    }

    pub fn dig(&self) -> Option<(&AfterDig, &DigAdvice)> {
        let index = self.dig?;
        Some((&self.pass().after_digs[index], &self.said_of_pass().digs[index]))
    }

    /// The hole, or one of which nothing is noted.
    pub fn dig_or_new(&self) -> AfterDig {
        self.dig().map_or_else(|| AfterDig::new(self.pass().id), |(dig, _)| dig.clone())
    }

    pub fn season_on(&self) -> bool {
        self.dig().is_some_and(|(dig, _)| season_on(self.pass(), dig))
    }

    pub fn slots(&self) -> usize {
        slots(&self.answer, self.pass())
    }

    pub fn aim(&self) -> Aim {
        Aim::of(&self.answer, self.pass(), self.dig().map(|(_, said)| said))
    }

    /// Where what the hole says stands; of one not saved, the pass.
    pub fn result(&self) -> Place {
        let pass = self.pass().id;
        match self.dig() {
            Some((dig, _)) => Place::AfterDig { field: self.field, pass, dig: dig.id },
            None => Place::Pass { field: self.field, pass: Some(pass) },
        }
    }

    pub fn place(&self, step: HoleStep, from_mm: Option<u32>) -> Place {
        let dig = self.dig().map(|(dig, _)| dig.id);
        Place::InHole { field: self.field, pass: self.pass().id, dig, step, from_mm }
    }

    /// Returns what the hole is called.
    pub fn title(&self, words: &Words) -> String {
        let number = self.dig.unwrap_or(self.pass().after_digs.len());
        let day = self.dig().and_then(|(dig, _)| dig.dug).map(|dug| dug.date_naive());
        words.hole_behind(number + 1, day)
    }

    /// A screen of this hole with nothing on it yet.
    pub fn screen(&self, step: HoleStep, from_mm: Option<u32>, world: &World) -> Screen {
        let place = self.place(step, from_mm);
        let mut screen = blank(place, ScreenKind::AfterDig, self.title(world.words), world);
        screen.awake = true;
        screen
    }

    pub fn hole(&self, world: &World) -> Option<Hole<'_>> {
        let (dig, said) = self.dig()?;
        let (notes, reading) = (&self.answer.notes, &self.answer.reading);
        Some(Hole { notes, reading, pass: self.pass(), dig, said, text_scale: world.letters })
    }

    /// The section as it fills, the reading in hand lit; a touch on one that is taken opens it.
    pub fn form(&self, in_hand: Option<usize>, world: &World) -> Option<Picture> {
        let words = world.words;
        let dig = self.dig_or_new();
        let read = dig.firm_mm.as_slice();
        let spacing_mm = machine_of(&self.answer.notes, self.pass())?.spacing_mm;
        let all = (read, READINGS.max(read.len()));
        let form = form(all, in_hand, (spacing_mm, self.pass(), self.aim()), world.letters, words)?;
        let touches = form.columns.iter().zip(read).enumerate().map(|(index, (column, mm))| {
            let [left, top, width, height] = *column;
            let label = words.named(&words.reading_number(index + 1), &words.depth(*mm));
            let act = Act::Go(self.place(HoleStep::Reading(index as u16), None));
            Touch { left, top, width, height, label, does: Does::Act(act), drags: false }
        });
        let description = if read.is_empty() {
            words.label(WorkText::NotRead)
        } else {
            words.named(&words.label(WorkText::Readings), &words.depths_read(read))
        };
        let touches = touches.collect();
        let pictured = Pictured { drawing: form.drawing, title: words.behind_title(), description };
        Some(Picture { touches, ..pictured.into() })
    }

    /// The section as read, while looks are made.
    pub fn seen_so_far(&self, world: &World) -> Option<Picture> {
        let read = self.dig().is_some_and(|(dig, _)| dig.firm_mm.len() > 1);
        let form = if read { self.form(None, world) } else { None };
        form.map(|picture| Picture { touches: Vec::new(), ..picture })
    }
}
