//! The call of a pit: drawing, sentence, reasons.

use super::super::part::{choices, go, section};
use super::super::{Button, Draft, Known, Place, ScreenKind, Size, World};
use super::AtPit;
use crate::advice::{Stance, ZoneCall};
use crate::record::RecordId;
use crate::words::{Heading, PitText};

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Draft> {
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let place = Place::Call { field, pit };
    let mut shown = at.screen(place, ScreenKind::Call, &words.of(Heading::Call), world);
    shown.awake = false;
    shown.known_first = true;
    let call = at.answer.call_at(at.index);
    shown.known.extend(at.face(call.and_then(|call| call.tip), true, world));
    match call {
        Some(call) => shown.known.extend(told(call, &at, world)),
        None => shown.known.extend(told_of_reference(&at, world)),
    }
    shown.known.extend(remarks(&at, world).into_iter().map(Known::Line));
    shown.doing = vec![choices(3, ways(&at, world))];
    let show = Place::Show { field, pit: Some(pit) };
    shown.bar.main = Some(go(words.label(PitText::Show), show));
    Some(shown)
}

/// The call with everything that belongs to it, the sentence first.
fn told(call: &ZoneCall, at: &AtPit, world: &World) -> Vec<Known> {
    let words = world.words;
    let sure = words.named(&words.label(Heading::HowSure), &words.how_sure(call));
    let lines = [Some(sure), call.tip.map(|tip| words.tip_sentences(&tip))];
    let mut known = vec![Known::Sentence(words.call_sentence(call))];
    known.extend(lines.into_iter().flatten().map(Known::Line));
    let reasons = [Stance::For, Stance::Against, Stance::Note].into_iter().filter_map(|stance| {
        let whys = call.reasons.iter().filter(|why| why.stance == stance).map(|why| words.why(why));
        section(world, Heading::from(stance), whys)
    });
    known.extend(reasons);
    known.extend(call.rooting_loss.as_ref().map(|loss| Known::Line(words.rooting_loss(loss))));
    let change = at.answer.changes(call.zone);
    known.extend(section(world, Heading::WouldChange, change.iter().map(|change| words.change(change))));
    known.extend(section(world, Heading::Cautions, call.cautions.iter().map(|&caution| words.of(caution))));
    known.extend(section(world, Heading::FollowUp, call.follow_up.iter().map(|&step| words.of(step))));
    known
}

/// A reference pit has no call: what it reads as, layer by layer.
fn told_of_reference(at: &AtPit, world: &World) -> Vec<Known> {
    let words = world.words;
    let layers = at.reading().layers.iter().map(|layer| words.describe_layer(layer));
    let known =
        [Some(Known::Sentence(words.of(PitText::ReferenceStands))), section(world, Heading::Layers, layers)];
    known.into_iter().flatten().collect()
}

/// What is to be said of where it lies, of other people who read the same hole, and of pictures that are not here.
fn remarks(at: &AtPit, world: &World) -> Vec<String> {
    let words = world.words;
    let lies = at.answer.map.remarks(at.pit);
    let lies = lies.iter().map(|remark| words.place_remark(at.number(), at.pit.place, remark));
    let several = at.answer.readers();
    let here = several.filter(|several| several.holes.iter().any(|hole| hole.contains(&at.index)));
    let readers = here.map(|several| words.several_readers(several, &at.answer.notes.pits));
    let pictures = super::super::photos::missing(at.pit, world);
    lies.chain(readers.into_iter().flatten()).chain(pictures).collect()
}

fn ways(at: &AtPit, world: &World) -> Vec<Button> {
    let words = world.words;
    let (field, pit) = (at.field, at.pit.id);
    let small = |text: PitText, place: Place| go(words.label(text), place).sized(Size::Small);
    vec![
        small(PitText::WalkOn, Place::KnifeWalk { field, pit }),
        small(PitText::ByHand, super::walk::layers_of(field, pit)),
        go(words.label(Heading::RollTest), Place::Roll { field, pit }).sized(Size::Small),
        small(PitText::Photos, Place::Photos { field, pit }),
        small(PitText::Machine, Place::Machine { field, machine: None }),
        small(PitText::DigNext, Place::StartPit { field, pit: None }),
    ]
}
