//! The plan of a field, its pits and the holes behind the machine as drawings.

use crate::field::FieldRead;
use crate::told;
use crate::told_passes::dig_name;
use pitface_core::advice::after_dig::DigAdvice;
use pitface_core::picture::{Drawing, Spoken, Theme, svg};
use pitface_core::record::{AfterDig, Pass};
use pitface_core::screen::behind::Hole;
use pitface_core::screen::{Pictured, drawn};
use pitface_core::words::Words;

/// A drawing with what is said of it.
pub struct Drawn {
    drawing: Drawing,
    /// Its title.
    pub title: String,
    description: String,
}

impl From<Pictured> for Drawn {
    fn from(Pictured { drawing, title, description }: Pictured) -> Self {
        Self { drawing, title, description }
    }
}

impl Drawn {
    /// As an SVG file.
    pub fn svg(&self, words: &Words, theme: Theme) -> String {
        let spoken =
            Spoken { language: words.language().code(), title: &self.title, description: &self.description };
        svg(&self.drawing, theme, &spoken)
    }
}

/// A pit's face, the reference beside it.
pub fn face_of(words: &Words, field: &FieldRead, index: usize) -> Option<Drawn> {
    let tip = told::zone_call(field, index).and_then(|call| call.tip);
    drawn::face_of(words, field, index, tip, true).map(Drawn::from)
}

/// The plan of a field; `None` where nothing of it has a place.
pub fn plan_of(words: &Words, field: &FieldRead) -> Option<Drawn> {
    drawn::plan_of(words, field).map(Drawn::from)
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
    let hole = Hole { notes: &field.notes, reading: &field.reading, pass, dig, said, text_scale: 1.0 };
    hole.drawn(title, words).map(Drawn::from)
}
