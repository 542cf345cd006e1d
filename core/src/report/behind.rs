//! The holes behind the machine as drawings.

use crate::answer::FieldAnswer;
use crate::screen::Pictured;
use crate::screen::behind::Hole;
use crate::words::{Heading, Words};

/// What a hole behind the machine is called: `After-dig A2`; numbered from 0 over all passes of the field.
pub fn hole_name(words: &Words, index: usize) -> String {
    format!("{} A{}", words.label(Heading::AfterDig), index + 1)
}

/// Every hole behind the machine, in the order of its number: beside the pit dug before where there is one. A hole
/// without readings has no drawing.
pub fn holes_behind(words: &Words, answer: &FieldAnswer) -> Vec<Option<Pictured>> {
    let FieldAnswer { notes, reading, passes, .. } = answer;
    let holes = notes.passes.iter().zip(passes).flat_map(|(pass, said)| {
        pass.after_digs.iter().zip(&said.digs).map(move |(dig, said)| (pass, dig, said))
    });
    holes
        .enumerate()
        .map(|(index, (pass, dig, said))| {
            Hole { notes, reading, pass, dig, said, text_scale: 1.0 }.drawn(hole_name(words, index), words)
        })
        .collect()
}
