//! The plan of a field, its pits and the holes behind the machine as drawings.

use crate::field::FieldRead;
use crate::told;
use pitface_core::picture::{Drawing, Spoken, Theme, svg};
use pitface_core::report::holes_behind;
use pitface_core::screen::{Pictured, drawn};
use pitface_core::words::Words;

/// A drawing with what is said of it.
pub struct Drawn {
    drawing: Drawing,
    title: String,
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

/// Every hole behind the machine; one without readings has no drawing.
pub fn after_digs(words: &Words, field: &FieldRead) -> Vec<Option<Drawn>> {
    holes_behind(words, field).into_iter().map(|hole| hole.map(Drawn::from)).collect()
}
