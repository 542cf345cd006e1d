//! A machine described: the three measures every one has, one question after the other, nothing filled in. The third
//! saves it.

use super::MachineAct;
use crate::record::RecordId;
use crate::screen::bar::{act_button, blank};
use crate::screen::step::{COARSE, FINE, Notch};
use crate::screen::{Act, Block, Button, Headline, Place, Screen, ScreenKind, World};
use crate::words::{Caption, WorkText};

/// Legs offered.
const LEGS: std::ops::RangeInclusive<u32> = 1..=12;
/// Spacings offered, in steps of five centimetres from so much on. Our judgement.
const SPACINGS: (Notch, u32, u32) = (COARSE, 250, 18);
/// Foot widths offered, in steps of one centimetre, likewise.
const FEET: (Notch, u32, u32) = (FINE, 30, 18);

pub(in crate::screen) fn show(field: RecordId, given: [Option<u32>; 3], world: &World) -> Option<Screen> {
    let words = world.words;
    world.notes(field)?;
    let [legs, spacing_mm, foot_width_mm] = given;
    let place = |legs, spacing_mm| Place::NewMachine { field, legs, spacing_mm, foot_width_mm: None };
    let here = Place::NewMachine { field, legs, spacing_mm, foot_width_mm };
    let title = words.label(Caption::DescribeMachine);
    let mut screen = blank(here, ScreenKind::Machine, title, world);
    let lengths = |(notch, from_mm, count): (Notch, u32, u32), act: &dyn Fn(u32) -> Act| -> Vec<Button> {
        let unit = words.unit();
        let first = notch.whole(from_mm, unit);
        let lengths = (first..first + count).map(|steps| notch.at(steps, unit));
        lengths.map(|mm| act_button(words.length_number(mm), act(mm)).about(words.depth(mm))).collect()
    };
    let (asked, line, answers) = match (legs, spacing_mm) {
        (None, _) => {
            let legs =
                LEGS.map(|legs| act_button(legs.to_string(), Act::Go(place(Some(legs), None)))).collect();
            (WorkText::LegsQuestion, String::new(), legs)
        }
        (Some(legs), None) => {
            let act = |mm| Act::Go(place(Some(legs), Some(mm)));
            (WorkText::SpacingQuestion, words.in_unit(), lengths(SPACINGS, &act))
        }
        (Some(legs), Some(spacing_mm)) => {
            let act = |foot_width_mm| MachineAct::Keep { legs, spacing_mm, foot_width_mm }.into();
            (WorkText::FootQuestion, words.in_unit(), lengths(FEET, &act))
        }
    };
    screen.answer = Some(Headline { line, ..Headline::new(words.label(asked)) });
    screen.blocks = vec![Block::Question { text: String::new(), columns: 6, answers }];
    screen.caution = words.label(WorkText::MeasureStopped);
    Some(screen)
}
