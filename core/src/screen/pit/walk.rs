//! The knife walk: one tap a step, from the surface down.
//!
//! A step is open while only what the knife meets is noted of it: the next answer completes it. So resistance is tapped
//! where it changes, before the step it changes in, and every tap is saved.

use super::super::bar::act_button;
use super::super::part::{answers, choices, go};
use super::super::{Button, Doing, Done, Draft, Edit, Keys, Known, Place, ScreenKind, Size, World};
use super::{Act, AtPit, PitAct};
use crate::picture::answer;
use crate::reading::Clue;
use crate::record::{ComesAway, FaceMoisture, FieldNotes, Pit, RecordId, Resistance, Step, Unknown};
use crate::words::{Heading, PitText};

/// A hole ends no higher than this, as notes files have it: one step more than a slip of the thumb.
const SHALLOWEST_MM: u32 = 100;
/// Height of a step.
const STEP_MM: u32 = 50;
/// No pit is walked deeper than this: whoever reads a face does not stand in a shaft. Our judgement.
const DEEPEST_MM: u32 = 2_000;

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Draft> {
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let place = Place::KnifeWalk { field, pit };
    let mut shown = at.screen(place, ScreenKind::KnifeWalk, &words.of(Heading::KnifeWalk), world);
    shown.known.extend(at.face(None, false, world));
    let (done, _) = parted(at.pit);
    let from_mm = done.last().map_or(0, |step| step.to_mm);
    shown.known.push(Known::Sentence(words.depth_range(from_mm, from_mm.saturating_add(STEP_MM))));
    if at.pit.face.is_none() {
        shown.doing.extend(face_question(None, Size::Usual, world));
    }
    let ways = vec![
        go(words.label(PitText::Place), Place::StartPit { field, pit: Some(pit) }),
        go(words.label(PitText::ByHand), layers_of(field, pit)),
        go(words.label(PitText::CallSoFar), Place::Call { field, pit }),
    ];
    shown.doing.push(choices(3, ways.into_iter().map(|way| way.sized(Size::Small)).collect()));
    if from_mm < DEEPEST_MM {
        shown.doing.extend(step_questions(at.pit, from_mm, world));
        shown.keys = keys(from_mm, world);
    }
    let bottom = act_button(words.label(PitText::BottomOfHole), PitAct::Bottom);
    shown.bar.main = Some(bottom.enabled_if(bottom_mm(at.pit).is_some()));
    Some(shown)
}

/// What the volume keys do, where they are to answer: the most used answer, and taking it back.
fn keys(from_mm: u32, world: &World) -> Option<Keys> {
    let answer = world.own.volume_keys && from_mm > 0;
    answer.then(|| Keys { up: PitAct::Same.into(), down: Act::Undo })
}

/// What is asked of a step, the most used answer last.
fn step_questions(pit: &Pit, from_mm: u32, world: &World) -> Vec<Doing> {
    let words = world.words;
    let drawing = |clue: Clue, value: usize| answer(clue, value);
    let in_force = pit.walk.iter().rev().find_map(|step| step.resistance);
    let knife = Resistance::ALL.iter().map(|&met| {
        act_button(words.label(met), PitAct::Knife(met))
            .drawn(drawing(Clue::Resistance, met as usize))
            .chosen_if(in_force == Some(met))
    });
    let away = ComesAway::ALL.iter().map(|&away| {
        act_button(words.label(away), PitAct::Away(away)).drawn(drawing(Clue::ComesAway, away as usize))
    });
    let mut doing = vec![
        Doing::Question(words.of(PitText::ResistanceQuestion)),
        choices(4, knife.collect()),
        Doing::Question(words.step_question(from_mm, from_mm.saturating_add(STEP_MM))),
        answers(away.collect()),
    ];
    if from_mm > 0 {
        let same = act_button(words.label(PitText::SameAsAbove), PitAct::Same).sized(Size::Large);
        let key = if world.own.volume_keys { words.of(PitText::OrKeyUp) } else { String::new() };
        doing.push(choices(1, vec![Button { note: key, ..same }]));
    }
    doing
}

/// Asks for the moisture of the face.
pub(super) fn face_question(chosen: Option<FaceMoisture>, size: Size, world: &World) -> [Doing; 2] {
    let button = |&face: &FaceMoisture| -> Button {
        act_button(world.words.label(face), PitAct::Face(face)).sized(size).chosen_if(chosen == Some(face))
    };
    [
        Doing::Question(world.words.of(PitText::FaceQuestion)),
        choices(3, FaceMoisture::ALL.iter().map(button).collect()),
    ]
}

pub(super) const fn layers_of(field: RecordId, pit: RecordId) -> Place {
    Place::Layers { field, pit, layer: None, clue: None }
}

/// The steps that are done, and the open one.
fn parted(pit: &Pit) -> (&[Step], Option<&Step>) {
    match pit.walk.split_last() {
        Some((open, done)) if open.comes_away.is_none() => (done, Some(open)),
        _ => (&pit.walk, None),
    }
}

/// Depths of the step that is being walked.
pub(super) fn next_depths(pit: &Pit) -> (u32, u32) {
    let (done, open) = parted(pit);
    let from_mm = done.last().map_or(0, |step| step.to_mm);
    (from_mm, open.map_or(from_mm.saturating_add(STEP_MM), |step| step.to_mm))
}

/// How the soil of the last step came away.
pub(super) fn above(pit: &Pit) -> Option<ComesAway> {
    parted(pit).0.last()?.comes_away
}

/// The step that is being walked: the open one, or a new one below the last.
fn next_step(pit: &Pit, new_id: &mut dyn FnMut() -> RecordId) -> Step {
    let (done, open) = parted(pit);
    open.cloned().unwrap_or_else(|| Step {
        id: new_id(),
        to_mm: done.last().map_or(0, |step| step.to_mm).saturating_add(STEP_MM),
        comes_away: None,
        resistance: None,
        unknown: Unknown::new(),
    })
}

/// Saves a step. Where the hole was said to end above it, the hole is deeper now.
fn saved(field: RecordId, pit: &Pit, step: Step, place: Place) -> Done {
    if pit.dug_to_mm.is_none_or(|dug_to_mm| dug_to_mm >= step.to_mm) {
        return Done::save(Edit::Step { pit: pit.id, step }, place);
    }
    let mut pit = pit.clone();
    pit.dug_to_mm = Some(step.to_mm);
    match pit.walk.iter_mut().find(|own| own.id == step.id) {
        Some(own) => *own = step,
        None => pit.walk.push(step),
    }
    Done::save(Edit::Pit { field, pit }, place)
}

/// How the soil of the next step comes away; `None` = as in the step above.
pub(super) fn step(
    field: RecordId,
    pit: &Pit,
    away: Option<ComesAway>,
    place: Place,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let comes_away = away.or_else(|| above(pit));
    let step = Step { comes_away, ..next_step(pit, new_id) };
    if comes_away.is_none() || step.to_mm > DEEPEST_MM {
        return Done::go(place);
    }
    saved(field, pit, step, place)
}

/// What the knife meets from the next step on; nothing is saved where it meets the same as before.
pub(super) fn knife(
    field: RecordId,
    pit: &Pit,
    met: Resistance,
    place: Place,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let (done, open) = parted(pit);
    let before = done.iter().rev().find_map(|step| step.resistance);
    match open {
        Some(open) if before == Some(met) => Done::save(Edit::Delete { record: open.id }, place),
        None if before == Some(met) => Done::go(place),
        _ => {
            let step = Step { resistance: Some(met), ..next_step(pit, new_id) };
            if step.to_mm > DEEPEST_MM { Done::go(place) } else { saved(field, pit, step, place) }
        }
    }
}

/// Where the hole ends if the walk does: no higher than what was looked at by hand.
pub(super) fn bottom_mm(pit: &Pit) -> Option<u32> {
    let walked_mm = pit.walk.last()?.to_mm;
    let bottom_mm = pit.layers.iter().map(|layer| layer.bottom_mm).fold(walked_mm, u32::max);
    (bottom_mm >= SHALLOWEST_MM).then_some(bottom_mm)
}

/// The hole ends where the walk does.
pub(super) fn bottom(notes: &FieldNotes, pit: &Pit) -> Done {
    let field = notes.field.id;
    let Some(bottom_mm) = bottom_mm(pit) else { return Done::go(Place::KnifeWalk { field, pit: pit.id }) };
    let pit = Pit { dug_to_mm: Some(bottom_mm), ..pit.clone() };
    super::look::then(notes, Edit::Pit { field, pit: pit.clone() }, &pit, super::Skipped::NONE)
}
