//! A hole behind the machine as a drawing: beside the pit dug before where there is one.

use super::super::Pictured;
use crate::advice::after_dig::DigAdvice;
use crate::advice::machine::LayerDepths;
use crate::picture::machine::{BehindPicture, BehindWords, KeyLine, KeyMark, behind, behind_so_far, pair};
use crate::picture::{Face, Ruler};
use crate::reading::FieldReading;
use crate::record::{AfterDig, FieldNotes, Machine, Pass};
use crate::words::{Caption, Words};

/// A hole as it is drawn: the pass and the hole as noted, what the hole says, and the size of text against the usual one.
#[derive(Clone, Copy)]
pub struct Hole<'a> {
    /// The field.
    pub notes: &'a FieldNotes,
    /// It read.
    pub reading: &'a FieldReading,
    /// The pass.
    pub pass: &'a Pass,
    /// The hole.
    pub dig: &'a AfterDig,
    /// What the hole says.
    pub said: &'a DigAdvice,
    /// Size of text, 1.0 to 2.0.
    pub text_scale: f64,
}

/// The machine of a pass.
pub fn machine_of<'a>(notes: &'a FieldNotes, pass: &Pass) -> Option<&'a Machine> {
    notes.machines.iter().find(|machine| Some(machine.id) == pass.machine)
}

impl Hole<'_> {
    /// The hole, beside the pit before; `None` without two readings, without a machine to tell how far the lines lie
    /// apart, or without a depth wanted.
    pub fn drawn(&self, title: String, words: &Words) -> Option<Pictured> {
        let mut picture = self.picture(&self.dig.firm_mm, words)?;
        if picture.readings_mm.len() < 2 {
            return None;
        }
        picture.words = words.behind_words(&picture);
        let described = words.describe_behind(&picture);
        let before = self.said.pair.map(|pair| pair.before);
        let pits = self.notes.pits.iter().zip(&self.reading.pits);
        let Some((noted, read)) = pits.into_iter().find(|(pit, _)| Some(pit.id) == before) else {
            picture.ruler = ruler(picture.depth_mm(), words);
            return Some(Pictured { drawing: behind(&picture), title, description: described });
        };
        let face = Face::of(read, words.pit(noted.place), None, |layer| words.layer_label(layer));
        picture.ruler = ruler(picture.depth_mm().max(face.dug_to_mm), words);
        let description = words.describe_pair(&words.describe(noted.place, read, None, None), &described);
        Some(Pictured { drawing: pair(&face, &picture, &words.pair_words()), title, description })
    }

    /// A hole of which only the first readings are taken, of `all`: what is not read yet stands as firm ground.
    pub(in crate::screen) fn filling(&self, all: usize, words: &Words) -> Option<Pictured> {
        let read = &self.dig.firm_mm;
        let mut readings_mm = read.clone();
        readings_mm.resize(all.max(read.len()), 0);
        let mut picture = self.picture(&readings_mm, words)?;
        let numbers = words.behind_words(&picture).numbers.into_iter().take(read.len());
        let note = KeyLine { mark: KeyMark::Note, text: words.label(Caption::NotRead) };
        picture.words = BehindWords { numbers: numbers.collect(), narrower: String::new(), key: vec![note] };
        picture.ruler = ruler(picture.depth_mm(), words);
        Some(Pictured {
            drawing: behind_so_far(&picture, read.len()),
            title: words.behind_title(),
            description: words.read_so_far(read, all.saturating_sub(read.len())),
        })
    }

    fn picture(&self, readings_mm: &[u32], words: &Words) -> Option<BehindPicture> {
        let layer = self.said.pair;
        Some(BehindPicture {
            readings_mm: readings_mm.to_vec(),
            spacing_mm: machine_of(self.notes, self.pass)?.spacing_mm,
            tip_mm: self.pass.tip_mm,
            target_mm: self.said.target_mm?,
            layer: layer.map(|pair| LayerDepths { top_mm: pair.top_mm, bottom_mm: pair.bottom_mm }),
            slots_mm: self.dig.slots_mm.clone(),
            ruler: ruler(0, words),
            text_scale: self.text_scale,
            words: BehindWords::default(),
        })
    }
}

fn ruler(depth_mm: u32, words: &Words) -> Ruler {
    Ruler::down_to(depth_mm, words.unit(), words.unit_sign())
}
