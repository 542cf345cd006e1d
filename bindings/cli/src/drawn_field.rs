//! The plan of a field and the holes behind the machine as drawings.

use crate::field::FieldRead;
use crate::told_passes::dig_name;
use pitface_core::advice::after_dig::DigAdvice;
use pitface_core::advice::machine::LayerDepths;
use pitface_core::picture::machine::{BehindPicture, BehindWords, behind, pair};
use pitface_core::picture::{Drawing, Face, Ruler, Spoken, Theme, svg};
use pitface_core::record::{AfterDig, Machine, Pass};
use pitface_core::screen::{Pictured, drawn};
use pitface_core::words::Words;

/// A drawing with what is said of it.
pub struct Drawn {
    drawing: Drawing,
    /// Its title.
    pub title: String,
    description: String,
}

impl Drawn {
    /// As an SVG file.
    pub fn svg(&self, words: &Words, theme: Theme) -> String {
        let spoken =
            Spoken { language: words.language().code(), title: &self.title, description: &self.description };
        svg(&self.drawing, theme, &spoken)
    }
}

/// The plan of a field; `None` where nothing of it has a place.
pub fn plan_of(words: &Words, field: &FieldRead) -> Option<Drawn> {
    let FieldRead { notes, map, reading, advice, .. } = field;
    let Pictured { drawing, title, description } = drawn::plan_of(words, notes, map, reading, advice)?;
    Some(Drawn { drawing, title, description })
}

/// Every hole behind the machine, in the order of its number: beside the pit dug before where there is one. A hole
/// without readings has no drawing.
pub fn after_digs(words: &Words, field: &FieldRead) -> Vec<Option<Drawn>> {
    let both = field.notes.passes.iter().zip(&field.passes);
    let holes = both.flat_map(|(pass, said)| {
        pass.after_digs.iter().zip(&said.digs).map(move |(dig, said)| (pass, dig, said))
    });
    holes
        .enumerate()
        .map(|(index, (pass, dig, said))| hole(words, field, (pass, dig, said), dig_name(words, index)))
        .collect()
}

fn hole(
    words: &Words,
    field: &FieldRead,
    (pass, dig, said): (&Pass, &AfterDig, &DigAdvice),
    title: String,
) -> Option<Drawn> {
    let named = |id| field.notes.machines.iter().find(|machine| machine.id == id);
    let spacing_mm = pass.machine.and_then(named).map(|machine: &Machine| machine.spacing_mm)?;
    let mut picture = BehindPicture {
        readings_mm: dig.firm_mm.clone(),
        spacing_mm,
        tip_mm: pass.tip_mm,
        target_mm: said.target_mm?,
        layer: said.pair.map(|pair| LayerDepths { top_mm: pair.top_mm, bottom_mm: pair.bottom_mm }),
        slots_mm: dig.slots_mm.clone(),
        ruler: Ruler::down_to(0, words.unit(), words.unit_sign()),
        text_scale: 1.0,
        words: BehindWords { numbers: Vec::new(), narrower: String::new(), key: Vec::new() },
    };
    if picture.readings_mm.len() < 2 {
        return None;
    }
    picture.words = words.behind_words(&picture);
    let before = said.pair.and_then(|pair| field.notes.pits.iter().position(|pit| pit.id == pair.before));
    let described = words.describe_behind(&picture);
    let Some(before) = before else {
        picture.ruler = Ruler::down_to(picture.depth_mm(), words.unit(), words.unit_sign());
        return Some(Drawn { drawing: behind(&picture), title, description: described });
    };
    let (noted, read) = (&field.notes.pits[before], &field.reading.pits[before]);
    let face = Face::of(read, words.pit(noted.place), None, |layer| words.layer_label(layer));
    let deepest_mm = picture.depth_mm().max(face.dug_to_mm);
    picture.ruler = Ruler::down_to(deepest_mm, words.unit(), words.unit_sign());
    let description = words.describe_pair(&words.describe(noted.place, read, None, None), &described);
    Some(Drawn { drawing: pair(&face, &picture, &words.pair_words()), title, description })
}
