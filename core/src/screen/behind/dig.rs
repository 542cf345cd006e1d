//! One hole behind the machine: depths to firm ground from tine line to tine line, then what is seen in it.

use super::super::bar::{act_button, asked, empty, main_button};
use super::super::step::FINE;
use super::super::{Act, Doing, Draft, Known, Place, ScreenKind, Size, World};
use super::looks::looks;
use super::pass::{causes, title};
use super::readings::{across_mm, offered_mm};
use super::{BehindAct, Hole, machine_of};
use crate::advice::after_dig::DigAdvice;
use crate::advice::after_dig::{READINGS, unfinished};
use crate::record::{AfterDig, FieldNotes, Pass, RecordId};
use crate::words::{Caption, Heading, Words};

/// Deepest firm ground that can be read.
const DEEPEST_MM: u32 = 1_200;
/// Depths side by side.
const IN_A_ROW: u8 = 4;
/// Slots measured where the legs are not known. Our judgement.
const SLOTS: usize = 3;

pub(in crate::screen) fn show(
    field: RecordId,
    pass: RecordId,
    dig: RecordId,
    world: &World,
) -> Option<Draft> {
    let (answer, words) = (world.answer(field)?, world.words);
    let today = world.now.date_naive();
    let (pass, said) = answer.notes.passes.iter().zip(&answer.passes).find(|(its, _)| its.id == pass)?;
    let holes = pass.after_digs.iter().zip(&said.digs).enumerate();
    let (index, (dig, said)) = holes.into_iter().find(|(_, (its, _))| its.id == dig)?;
    let place = Place::AfterDig { field, pass: pass.id, dig: dig.id };
    let mut screen = empty(place, ScreenKind::AfterDig, title(index, dig, words), world);
    let hole = Hole { notes: &answer.notes, reading: &answer.reading, pass, dig, said, text_scale: 1.0 };
    let reading_on = dig.firm_mm.is_empty() || unfinished(dig, today);
    screen.known = if reading_on { begun(&hole, words) } else { read(&hole, words) };
    if machine_of(&answer.notes, pass).is_none() {
        screen.known.push(Known::Line(words.label(Caption::NoMachineNoSection)));
    }
    if dig.firm_mm.is_empty() || !reading_on {
        screen.known.push(Known::Line(words.label(Caption::Skip)));
        screen.doing.extend(looks(dig, said.season_on, words));
        screen.doing.extend(slots(&answer.notes, pass, dig, said, words));
    }
    screen.doing.extend(last_reading(dig, words));
    if reading_on {
        screen.doing.extend(next_reading(&answer.notes, pass, dig, said, words));
    }
    let back = Act::Go(Place::Pass { field, pass: Some(pass.id) });
    screen.bar.main = Some(main_button(words.label(Caption::HoleRead), back));
    screen.awake = true;
    screen.known_first = !reading_on;
    screen.wants_position = reading_on && dig.at.is_none();
    Some(screen)
}

/// While readings are taken: the section as it fills.
fn begun(hole: &Hole, words: &Words) -> Vec<Known> {
    let read = &hole.dig.firm_mm;
    if read.is_empty() {
        return vec![Known::Sentence(words.label(Caption::NoReadings))];
    }
    let so_far = words.read_so_far(read, READINGS.saturating_sub(read.len()));
    let drawn = hole.filling(READINGS, words).map(Known::Drawing);
    drawn.into_iter().chain([Known::Line(so_far)]).collect()
}

/// A hole that is read: what the pass did here, and why.
fn read(hole: &Hole, words: &Words) -> Vec<Known> {
    let said = hole.said;
    let mut known = vec![Known::Sentence(words.after_dig_sentence(said))];
    if hole.dig.firm_mm.len() < READINGS {
        known.push(Known::Line(words.label(Caption::FewReadings)));
    }
    known.extend(hole.drawn(words.behind_title(), words).map(Known::Drawing));
    known.extend(causes(said, words));
    let lines: Vec<String> = said.why.iter().map(|why| words.verdict_reason(why)).collect();
    if !lines.is_empty() {
        known.push(Known::Section { heading: words.label(Heading::Why), lines });
    }
    known.extend(said.pair.iter().map(|pair| Known::Line(words.pair_sentences(pair))));
    known
}

fn next_reading(
    notes: &FieldNotes,
    pass: &Pass,
    dig: &AfterDig,
    said: &DigAdvice,
    words: &Words,
) -> Vec<Doing> {
    let read = dig.firm_mm.len();
    let across = machine_of(notes, pass).map(|machine| across_mm(read, machine.spacing_mm));
    let buttons = offered_mm(pass, said, words.unit())
        .into_iter()
        .map(|mm| act_button(words.depth(mm), BehindAct::Read(mm)).sized(Size::Large))
        .map(|button| button.about(words.reading_number(read + 1)));
    asked(words.reading_asked(read + 1, READINGS, across), IN_A_ROW, buttons.collect())
}

/// The last reading, to be put right by a centimetre or half an inch.
fn last_reading(dig: &AfterDig, words: &Words) -> Vec<Doing> {
    let Some(&mm) = dig.firm_mm.last() else { return Vec::new() };
    let step = words.depth(FINE.step_mm(words.unit()));
    let [less, more] = FINE.around(mm, words.unit(), 0..=DEEPEST_MM);
    let to = |label: String, mm: u32| act_button(label, BehindAct::LastReading(mm));
    let less = less.map(|mm| to(words.step_less(&step), mm));
    let more = more.map(|mm| to(words.step_more(&step), mm));
    let question = words.asked(&words.label(Caption::CorrectLast), &words.depth(mm));
    asked(question, 2, [less, more].into_iter().flatten().collect())
}

/// Bottoms of the slots, leg by leg, until every leg has one.
fn slots(notes: &FieldNotes, pass: &Pass, dig: &AfterDig, said: &DigAdvice, words: &Words) -> Vec<Doing> {
    let legs = machine_of(notes, pass).map_or(SLOTS, |machine| machine.legs as usize);
    let question = words.slots_measured(&dig.slots_mm);
    if dig.slots_mm.len() >= legs {
        return vec![Doing::Question(question)];
    }
    let offered = offered_mm(pass, said, words.unit());
    let number = dig.slots_mm.len() + 1;
    let button = |mm| act_button(words.depth(mm), BehindAct::Slot(mm)).about(words.slot_number(number));
    asked(question, IN_A_ROW, offered.into_iter().map(button).collect())
}
