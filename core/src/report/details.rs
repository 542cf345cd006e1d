//! The back of a field's sheet: every pit with its face and its layers, its zones over the years, and the holes behind the
//! machine.

use super::page::{Blocks, Group, Line};
use super::sheet::PhotoFile;
use super::{behind::holes_and_keys, on_photo::photo_of, seasons::over_the_years};
use crate::answer::FieldAnswer;
use crate::reading::{Kind, LayerReading};
use crate::record::{Condition, Pit, remark};
use crate::screen::drawn::small_face_of;
use crate::words::{PageText, Words};

/// Pits whose faces are drawn; of more the layers are told alone, so that a page stays small enough to be sent.
const DRAWN: usize = 12;

pub(super) fn details(page: &mut Blocks, words: &Words, answer: &FieldAnswer, photo: PhotoFile) {
    if answer.notes.pits.is_empty() {
        return;
    }
    page.within(Group::Details, |page| {
        page.text(Line::Heading, &words.label(PageText::Details));
        page.within(Group::Pits, |page| {
            for index in 0..answer.notes.pits.len() {
                page.within(Group::Section, |page| pit(page, words, answer, index, photo));
            }
            for (years, caption) in over_the_years(words, answer) {
                page.within(Group::Years, |page| {
                    page.text(Line::PitHeading, &years.title);
                    page.figure(years, &caption);
                });
            }
            let holes = holes_and_keys(words, answer);
            let alone = holes.len() == 1;
            for (hole, key) in holes {
                page.within(if alone { Group::HoleAlone } else { Group::Hole }, |page| {
                    page.text(Line::PitHeading, &hole.title);
                    page.figure(hole, "");
                    page.figure(key, "");
                });
            }
        });
    });
}

fn pit(page: &mut Blocks, words: &Words, answer: &FieldAnswer, index: usize, photo: PhotoFile) {
    let (noted, read) = (&answer.notes.pits[index], &answer.reading.pits[index]);
    page.text(Line::PitHeading, &words.pit_numbered(index + 1, noted.place));
    let tip = answer.call_at(index).and_then(|call| call.tip);
    let face = small_face_of(words, answer, index, tip).filter(|_| index < DRAWN);
    let drawn = face.is_some();
    if let Some(face) = face {
        page.figure(face, "");
    }
    // What is sound stands on the drawing; where all is sound, or nothing drawn, it says why.
    let harmed = |read: &&LayerReading| read.condition >= Condition::Tight;
    let all = !drawn || !read.layers.iter().any(|read| harmed(&read));
    let told = read.layers.iter().filter(|read| all || harmed(read)).map(|read| layer(words, noted, read));
    page.list(&told.collect::<Vec<_>>());
    page.text(Line::Plain, &noted.remark.as_deref().map(|text| words.remark(text)).unwrap_or_default());
    if let Some((drawn, photo)) = photo_of(words, answer, index, photo) {
        let title = drawn.title.clone();
        page.figure_of(drawn, Some(photo), &title);
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
