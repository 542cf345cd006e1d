//! The holes behind the machine as drawings.

use crate::answer::FieldAnswer;
use crate::picture::machine::key;
use crate::screen::Pictured;
use crate::screen::behind::Hole;
use crate::screen::drawn::SMALL_LETTERS;
use crate::words::{Heading, PageText, Words};

/// Returns what a hole behind the machine is called: `After-dig A2`; numbered from 0 over all passes of the field.
pub fn hole_name(words: &Words, index: usize) -> String {
    format!("{} A{}", words.label(Heading::AfterDig), index + 1)
}

/// Every hole behind the machine, in the order of its number: beside the pit dug before where there is one. A hole
/// without readings has no drawing.
pub fn holes_behind(words: &Words, answer: &FieldAnswer) -> Vec<Option<Pictured>> {
    let holes = holes(answer, 1.0).enumerate();
    holes.map(|(index, hole)| hole.drawn(hole_name(words, index), words)).collect()
}

/// The same with larger letters and the key as a drawing of its own, to stand beside each other.
pub(super) fn holes_and_keys(words: &Words, answer: &FieldAnswer) -> Vec<(Pictured, Pictured)> {
    let drawn = holes(answer, SMALL_LETTERS).enumerate().filter_map(|(index, hole)| {
        let (drawn, lines) = hole.drawn_and_key(hole_name(words, index), words)?;
        let told: Vec<&str> = lines.iter().map(|line| line.text.as_str()).collect();
        let key = Pictured {
            title: words.label(PageText::Key),
            description: told.join("; "),
            drawing: key(&lines, SMALL_LETTERS),
        };
        Some((drawn, key))
    });
    drawn.collect()
}

/// The holes of all passes, to be drawn with letters of this size.
fn holes(answer: &FieldAnswer, text_scale: f64) -> impl Iterator<Item = Hole<'_>> {
    let FieldAnswer { notes, reading, passes, .. } = answer;
    let of_passes = notes.passes.iter().zip(passes).flat_map(|(pass, said)| {
        pass.after_digs.iter().zip(&said.digs).map(move |(dig, said)| (pass, dig, said))
    });
    of_passes.map(move |(pass, dig, said)| Hole { notes, reading, pass, dig, said, text_scale })
}
