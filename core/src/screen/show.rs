//! For the farmer: one sentence and one drawing, large; nothing to operate.

use super::bar::blank;
use super::behind::{key_below, last_drawn};
use super::drawn::plan_of;
use super::pit::{AtPit, headline, next_label};
use super::{Block, Headline, Picture, Pictured, Place, Screen, ScreenKind, World};
use crate::advice::{TipDepth, ZoneCall, stands_for};
use crate::answer::FieldAnswer;
use crate::picture::{Face, FacePicture, Ruler, Tip, face};
use crate::reading::{PitReading, is_readable};
use crate::record::{Condition, Pit, PlaceKind, RecordId};
use crate::words::{Caption, Words};

/// Size of text against the usual one: to be read by two, at arm's length, words of 24 points. Our judgement.
const TEXT_SCALE: f64 = 1.72;

pub(in crate::screen) fn show(field: RecordId, pit: Option<RecordId>, world: &World) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let title = words.label(Caption::Show);
    let mut screen = blank(Place::Show { field, pit }, ScreenKind::Show, title, world);
    screen.tools.clear();
    screen.awake = true;
    match pit {
        Some(pit) => of_pit(&mut screen, &AtPit::of(field, pit, world)?, world),
        None => of_field(&mut screen, &answer, world),
    }
    Some(screen)
}

/// A pit: its sentence, field and day, the face beside the reference, why, and what comes next.
fn of_pit(screen: &mut Screen, at: &AtPit, world: &World) {
    let words = world.words;
    let said = headline(at, world);
    let day = at.pit.dug.unwrap_or(world.now).date_naive();
    let line = words.field_on_day(&at.answer.notes.field.name, day);
    let why = said.line.clone();
    screen.answer = Some(Headline { line, ..said });
    let read = (at.pit, at.reading());
    screen.picture = Some(beside_reference(&at.answer, read, words));
    let next = words.next_line(&next_label(at, world));
    screen.blocks = [why, next].into_iter().filter(|line| !line.is_empty()).map(Block::Text).collect();
}

/// A field: what the last hole behind the machine says, else its plan with the calls, else its worst pit.
fn of_field(screen: &mut Screen, answer: &FieldAnswer, world: &World) {
    let words = world.words;
    let line = words.field_on_day(&answer.notes.field.name, world.now.date_naive());
    let mut key = None;
    let (said, picture) = match before_and_after(answer, world) {
        Some((said, drawn, below)) => {
            key = Some(below);
            (said, Some(drawn.into()))
        }
        None if answer.notes.pits.is_empty() => (words.label(Caption::NothingToShow), None),
        None => {
            let face = || worst(answer).map(|worst| beside_reference(answer, worst, words));
            let plan = plan_of(words, answer).map(Picture::from);
            (words.whole_sentence(&answer.advice), plan.or_else(face))
        }
    };
    screen.answer = Some(Headline { line, ..Headline::new(said) });
    screen.picture = picture;
    let next = answer.next().map(|dig| super::field::told_next(answer, &dig, world));
    screen.blocks = next.into_iter().map(Block::Text).chain(key).collect();
}

/// A pit with its reading.
type Read<'a> = (&'a Pit, &'a PitReading);

fn pits(answer: &FieldAnswer) -> impl Iterator<Item = Read<'_>> {
    answer.notes.pits.iter().zip(&answer.reading.pits)
}

/// The pit with the worst layer; of several, one of a zone that is to be loosened, then the first.
fn worst(answer: &FieldAnswer) -> Option<Read<'_>> {
    let loosened = |pit: &Pit| call_of(answer, pit).is_some_and(|call| call.tip.is_some());
    let condition =
        |read: &PitReading| -> Option<Condition> { read.layers.iter().map(|layer| layer.condition).max() };
    let concern = pits(answer).filter(|(pit, _)| pit.place != PlaceKind::Reference);
    let order = |(pit, read): &Read| (loosened(pit), condition(read));
    concern.reduce(|one, next| if order(&next) > order(&one) { next } else { one })
}

/// The call of the zone a pit stands for.
fn call_of<'a>(answer: &'a FieldAnswer, pit: &Pit) -> Option<&'a ZoneCall> {
    let zone = stands_for(&answer.map, pit)?;
    answer.advice.zones.iter().find(|call| call.zone == zone)
}

/// The last hole behind the machine beside the pit before it, and the key to both.
fn before_and_after(answer: &FieldAnswer, world: &World) -> Option<(String, Pictured, Block)> {
    let (words, today) = (world.words, world.now.date_naive());
    let passes = answer.notes.passes.iter().zip(&answer.passes);
    let drawn = passes.filter_map(|pass| last_drawn(answer, pass, today, TEXT_SCALE, words));
    let (said, drawn, key) = drawn.last()?;
    Some((words.after_dig_sentence(said), drawn, key_below(key, TEXT_SCALE, words)))
}

/// The face, the reference pit on its left where there is one.
fn beside_reference(answer: &FieldAnswer, (pit, read): Read, words: &Words) -> Picture {
    let tip = call_of(answer, pit).and_then(|call| call.tip.as_ref());
    let is_reference = pit.place == PlaceKind::Reference;
    let reference = pits(answer)
        .filter(|_| !is_reference)
        .find(|(pit, read)| pit.place == PlaceKind::Reference && is_readable(pit) && !read.layers.is_empty());
    // Few words leave room for the two beside each other; causes and depths are told by the sentence.
    let drawn = |(pit, read): Read, tip| {
        Face::of(read, words.pit(pit.place), tip, |layer| (words.layer_label(layer).0, Vec::new()))
    };
    // Number and unit may part here: two faces beside each other leave little room.
    let label = |tip: &TipDepth| words.tip_label(tip).replace('\u{a0}', " ");
    let line = tip.map(|tip| Tip { lo_mm: tip.lo_mm, hi_mm: tip.hi_mm, label: label(tip) });
    let faces: Vec<Face> = reference
        .map(|reference| drawn(reference, None))
        .into_iter()
        .chain([drawn((pit, read), line)])
        .collect();
    let deepest_mm = faces.iter().map(|face| face.dug_to_mm).chain(tip.map(|tip| tip.hi_mm)).max();
    let ruler = Ruler::down_to(deepest_mm.unwrap_or(0), words.unit(), words.unit_sign());
    let pictured = Pictured {
        drawing: face(&FacePicture { faces, ruler, text_scale: TEXT_SCALE }),
        title: words.pit(pit.place),
        description: words.describe(pit.place, read, reference.map(|(_, read)| read), tip),
    };
    pictured.into()
}
