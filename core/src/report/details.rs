//! The back of a field's sheet: every pit with its face and its layers, its zones over the years, and the holes behind the
//! machine.

use super::html::Html;
use super::sheet::PhotoFile;
use super::{behind::holes_and_keys, on_photo::photo_of, seasons::over_the_years};
use crate::answer::FieldAnswer;
use crate::reading::{Kind, LayerReading};
use crate::record::{Condition, Pit, remark};
use crate::screen::drawn::small_face_of;
use crate::words::{PageText, Words};

/// Pits whose faces are drawn; of more the layers are told alone, so that a page stays small enough to be sent.
const DRAWN: usize = 12;

pub(super) fn details(html: &mut Html, words: &Words, answer: &FieldAnswer, photo: PhotoFile) {
    if answer.notes.pits.is_empty() {
        return;
    }
    html.within("article", "details", |html| {
        html.text("h2", "", &words.label(PageText::Details));
        html.within("div", "pits", |html| {
            for index in 0..answer.notes.pits.len() {
                html.within("section", "", |html| pit(html, words, answer, index, photo));
            }
            for (years, caption) in over_the_years(words, answer) {
                html.within("section", "years", |html| {
                    html.text("h3", "", &years.title);
                    html.figure(words, &years, &caption);
                });
            }
            let holes = holes_and_keys(words, answer);
            // One alone has its key beside it, several stand beside each other.
            let class = if holes.len() == 1 { "hole alone" } else { "hole" };
            for (hole, key) in &holes {
                html.within("section", class, |html| {
                    html.text("h3", "", &hole.title);
                    html.figure(words, hole, "");
                    html.figure(words, key, "");
                });
            }
        });
    });
}

fn pit(html: &mut Html, words: &Words, answer: &FieldAnswer, index: usize, photo: PhotoFile) {
    let (noted, read) = (&answer.notes.pits[index], &answer.reading.pits[index]);
    html.text("h3", "", &words.pit_numbered(index + 1, noted.place));
    let tip = answer.call_at(index).and_then(|call| call.tip);
    let face = small_face_of(words, answer, index, tip).filter(|_| index < DRAWN);
    if let Some(face) = &face {
        html.figure(words, face, "");
    }
    // What is sound stands on the drawing; where all is sound, or nothing drawn, it says why.
    let harmed = |read: &&LayerReading| read.condition >= Condition::Tight;
    let all = face.is_none() || !read.layers.iter().any(|read| harmed(&read));
    let told = read.layers.iter().filter(|read| all || harmed(read)).map(|read| layer(words, noted, read));
    html.list(&told.collect::<Vec<_>>());
    html.text("p", "", &noted.remark.as_deref().map(|text| words.remark(text)).unwrap_or_default());
    if let Some((svg, title)) = photo_of(words, answer, index, photo) {
        html.figure_of(&svg, &title);
    }
}

/// A layer in a line: its depths, its kind, what speaks for it.
fn layer(words: &Words, pit: &Pit, read: &LayerReading) -> String {
    let kind = words.kind(Kind { condition: read.condition, cause: read.cause });
    let depths = words.depth_range(read.top_mm, read.bottom_mm);
    let reasons = words.reasons_for(&read.reasons);
    let told = if reasons.is_empty() { kind } else { format!("{kind} – {reasons}") };
    let remarks = remark::of_layer(pit, read.top_mm, read.bottom_mm).map(|text| words.remark(text));
    [words.says_of(&depths, &told)].into_iter().chain(remarks).collect::<Vec<_>>().join(" ")
}
