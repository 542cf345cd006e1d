//! For the farmer: one sentence and one drawing, large; nothing to operate.

use super::bar::empty;
use super::behind::last_drawn;
use super::{Draft, Known, Pictured, Place, ScreenKind, World};
use crate::advice::{TipDepth, ZoneCall, stands_for};
use crate::answer::FieldAnswer;
use crate::picture::{Face, FacePicture, Ruler, Tip, face};
use crate::reading::{PitReading, is_readable};
use crate::record::{Condition, Pit, PlaceKind, RecordId};
use crate::words::{Caption, Words};

/// Size of text against the usual one: to be read by two, at arm's length. Our judgement.
const TEXT_SCALE: f64 = 1.5;

pub(in crate::screen) fn show(field: RecordId, pit: Option<RecordId>, world: &World) -> Option<Draft> {
    let (answer, words) = (world.answer(field)?, world.words);
    let mut screen = empty(Place::Show { field, pit }, ScreenKind::Show, words.label(Caption::Show), world);
    screen.bar.undo = None;
    screen.awake = true;
    screen.known = match pit {
        Some(pit) => beside_reference(&answer, pit_of(&answer, pit)?, words),
        None => before_and_after(&answer, world)
            .or_else(|| {
                let whole = Known::Sentence(words.whole_sentence(&answer.advice));
                let drawn = beside_reference(&answer, worst(&answer)?, words).into_iter().skip(1);
                Some([whole].into_iter().chain(drawn).collect())
            })
            .unwrap_or_else(|| vec![Known::Sentence(words.label(Caption::NothingToShow))]),
    };
    Some(screen)
}

/// A pit with its reading.
type Read<'a> = (&'a Pit, &'a PitReading);

fn pits(answer: &FieldAnswer) -> impl Iterator<Item = Read<'_>> {
    answer.notes.pits.iter().zip(&answer.reading.pits)
}

fn pit_of(answer: &FieldAnswer, pit: RecordId) -> Option<Read<'_>> {
    pits(answer).find(|(its, _)| its.id == pit)
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

/// The last hole behind the machine beside the pit before it.
fn before_and_after(answer: &FieldAnswer, world: &World) -> Option<Vec<Known>> {
    let (words, today) = (world.words, world.now.date_naive());
    let passes = answer.notes.passes.iter().zip(&answer.passes);
    let drawn = passes.filter_map(|pass| last_drawn(answer, pass, today, TEXT_SCALE, words));
    let (said, drawn) = drawn.last()?;
    Some(vec![Known::Sentence(words.after_dig_sentence(said)), Known::Drawing(drawn)])
}

/// The call and the face, the reference pit on its left where there is one.
fn beside_reference(answer: &FieldAnswer, (pit, read): Read, words: &Words) -> Vec<Known> {
    let call = call_of(answer, pit);
    let sentence =
        call.map_or_else(|| words.whole_sentence(&answer.advice), |call| words.call_sentence(call));
    let tip = call.and_then(|call| call.tip.as_ref());
    let is_reference = pit.place == PlaceKind::Reference;
    let reference = pits(answer)
        .filter(|_| !is_reference)
        .find(|(pit, read)| pit.place == PlaceKind::Reference && is_readable(pit) && !read.layers.is_empty());
    let drawn = |(pit, read): Read, tip| // Few words leave room for the two beside each other; causes and depths are told by the call.
        Face::of(read, words.pit(pit.place), tip, |layer| (words.layer_label(layer).0, Vec::new()));
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
    vec![Known::Sentence(sentence), Known::Drawing(pictured)]
}
