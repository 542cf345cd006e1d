//! A hole behind the machine as a drawing: beside the pit dug before where there is one.

use super::super::{Block, Pictured};
use super::readings::Aim;
use crate::advice::after_dig::DigAdvice;
use crate::advice::machine::LayerDepths;
use crate::picture::machine::{
    BehindForm, BehindPicture, BehindWords, KeyLine, behind, behind_form, key, pair, pair_and_key,
};
use crate::picture::{Face, Ruler};
use crate::reading::FieldReading;
use crate::record::{AfterDig, FieldNotes, Machine, Pass};
use crate::words::Words;

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
        self.pictured(title, words, true).map(|(pictured, _)| pictured)
    }

    /// The same with its key apart, to be read at its own size below.
    pub(crate) fn drawn_and_key(&self, title: String, words: &Words) -> Option<(Pictured, Vec<KeyLine>)> {
        self.pictured(title, words, false)
    }

    fn pictured(&self, title: String, words: &Words, with_key: bool) -> Option<(Pictured, Vec<KeyLine>)> {
        let mut picture = self.picture()?;
        if picture.readings_mm.len() < 2 {
            return None;
        }
        picture.words = words.behind_words(&picture);
        let described = words.describe_behind(&picture);
        let key = if with_key { Vec::new() } else { std::mem::take(&mut picture.words.key) };
        let before = self.said.pair.map(|pair| pair.before);
        let pits = self.notes.pits.iter().zip(&self.reading.pits);
        let Some((noted, read)) = pits.into_iter().find(|(pit, _)| Some(pit.id) == before) else {
            picture.ruler = ruler(picture.depth_mm(), words);
            return Some((Pictured { drawing: behind(&picture), title, description: described }, key));
        };
        let face = Face::of(read, words.pit(noted.place), None, |layer| words.layer_label(layer));
        picture.ruler = ruler(picture.depth_mm().max(face.dug_to_mm), words);
        let description = words.describe_pair(&words.describe(noted.place, read, None, None), &described);
        let beside = words.pair_words();
        let (drawing, key) = if with_key {
            (pair(&face, &picture, &beside), Vec::new())
        } else {
            picture.words.key = key;
            pair_and_key(&face, &picture, &beside)
        };
        Some((Pictured { drawing, title, description }, key))
    }

    fn picture(&self) -> Option<BehindPicture> {
        let layer = self.said.pair;
        Some(BehindPicture {
            readings_mm: self.dig.firm_mm.clone(),
            spacing_mm: machine_of(self.notes, self.pass)?.spacing_mm,
            tip_mm: self.pass.tip_mm,
            target_mm: self.said.target_mm?,
            layer: layer.map(|pair| LayerDepths { top_mm: pair.top_mm, bottom_mm: pair.bottom_mm }),
            slots_mm: self.dig.slots_mm.clone(),
            ruler: Ruler { unit: String::new(), marks: Vec::new() },
            text_scale: self.text_scale,
            words: BehindWords::default(),
        })
    }
}

/// A key to be read at its own size, below the drawing it belongs to.
pub(in crate::screen) fn key_below(lines: Vec<KeyLine>, letters: f64, words: &Words) -> Block {
    let drawing = key(&lines, letters);
    let texts: Vec<String> = lines.into_iter().map(|line| line.text).collect();
    let pictured = Pictured { drawing, title: words.behind_title(), description: texts.join(". ") };
    Block::Drawing(pictured.into())
}

/// The section on which `all` readings are entered: those taken so far as measured, the rest as ground still whole.
pub(super) fn form(
    (read_mm, all): (&[u32], usize),
    in_hand: Option<usize>,
    (spacing_mm, pass, aim): (u32, &Pass, Aim),
    text_scale: f64,
    words: &Words,
) -> Option<BehindForm> {
    let mut readings_mm = read_mm.to_vec();
    readings_mm.resize(all.max(read_mm.len()), 0);
    let mut picture = BehindPicture {
        readings_mm,
        spacing_mm,
        tip_mm: pass.tip_mm,
        target_mm: aim.target_mm?,
        layer: aim.layer,
        slots_mm: Vec::new(),
        ruler: Ruler { unit: String::new(), marks: Vec::new() },
        text_scale,
        words: BehindWords::default(),
    };
    let numbers = words.behind_words(&picture).numbers.into_iter().take(read_mm.len());
    picture.words.numbers = numbers.collect();
    picture.ruler = ruler(picture.depth_mm(), words);
    Some(behind_form(&picture, read_mm.len(), in_hand))
}

fn ruler(depth_mm: u32, words: &Words) -> Ruler {
    Ruler::down_to(depth_mm, words.unit(), words.unit_sign())
}
