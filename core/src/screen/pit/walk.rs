//! The knife walk: one tap a step, from the surface down.
//!
//! A step is open while only what the knife meets is noted of it: the next answer completes it. So resistance is tapped
//! where it changes, before the step it changes in, and every tap is saved.

use super::super::bar::{act_button, tool};
use super::super::{
    Act, Block, Button, Does, Done, Edit, Headline, Keys, Place, Row, Screen, ScreenKind, World,
};
use super::faces::strip_face;
use super::remark::remark_tool;
use super::{AtPit, PitAct, moisture};
use crate::picture::{Icon, answer, icon};
use crate::reading::Clue;
use crate::record::{ComesAway, FieldNotes, Pit, RecordId, Resistance, Step, Unknown};
use crate::words::{FaceText, Heading, PitText};

/// A hole ends no higher than this, as notes files have it: one step more than a slip of the thumb.
const SHALLOWEST_MM: u32 = 100;
/// Height of a step.
const STEP_MM: u32 = 50;
/// No pit is walked deeper than this: whoever reads a face does not stand in a shaft. Our judgement.
const DEEPEST_MM: u32 = 2_000;

/// The walk at the step in hand. `ends`: the bottom of the hole was tapped where it lies higher than is wanted.
pub(in crate::screen) fn show(field: RecordId, pit: RecordId, ends: bool, world: &World) -> Option<Screen> {
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let bottom_mm = bottom_mm(at.pit);
    let wanted_mm = super::start::deep_enough_mm(&at);
    let shallow_mm = bottom_mm.filter(|bottom_mm| *bottom_mm < wanted_mm);
    let ends = shallow_mm.filter(|_| ends);
    let walk = Place::KnifeWalk { field, pit };
    let place = if ends.is_some() { Place::HoleEnds { field, pit } } else { walk };
    if is_untouched(at.pit) && at.pit.face.is_none() && !world.passed_over(pit).has_moisture() {
        return Some(moisture::asked(&at, walk, world));
    }
    let mut shown = at.screen(place, ScreenKind::KnifeWalk, world);
    let (from_mm, to_mm) = next_depths(at.pit);
    let more = to_mm <= DEEPEST_MM;
    shown.answer = Some(Headline::new(if more {
        words.depth_range(from_mm, to_mm)
    } else {
        words.of(FaceText::DeepEnough)
    }));
    shown.picture = Some(strip_face(&at, more.then_some((from_mm, to_mm)), world));
    if more {
        shown.blocks = step_questions(at.pit, from_mm, world);
        shown.keys = keys(from_mm, world);
    }
    shown.blocks.push(ways(&at, world));
    // The knife spoils the face: a photo comes before it.
    if is_untouched(at.pit) && at.pit.photos.is_empty() {
        let label = words.label(FaceText::PhotoFirst);
        shown.next = Some(Button {
            drawing: Some(icon(Icon::Photo)),
            ..Button::new(label, Does::Ask(at.take_photo()))
        });
    }
    if let Some(ends_mm) = ends {
        shown.caution = words.hole_ends(ends_mm, wanted_mm);
    }
    shown.tools.push(remark_tool(&at, None, world));
    let note = match (ends, shallow_mm) {
        (Some(_), _) => words.of(FaceText::TapAgain),
        (None, Some(_)) => words.wanted(wanted_mm),
        (None, None) => String::new(),
    };
    let bottom = tool(Icon::Pit, words.label(FaceText::Bottom), PitAct::Bottom);
    shown.tools.push(Button { note, ..bottom }.enabled_if(bottom_mm.is_some()));
    Some(shown)
}

/// Returns whether nothing of the face is noted yet.
fn is_untouched(pit: &Pit) -> bool {
    pit.walk.is_empty() && pit.layers.is_empty()
}

/// Returns what the volume keys do, where they are to answer: the most used answer, and taking it back.
fn keys(from_mm: u32, world: &World) -> Option<Keys> {
    let answer = world.own.volume_keys && from_mm > 0;
    answer.then(|| Keys { up: PitAct::Same.into(), down: Act::Undo })
}

/// Returns what is asked of a step, the most used answer last.
fn step_questions(pit: &Pit, from_mm: u32, world: &World) -> Vec<Block> {
    let words = world.words;
    let in_force = pit.walk.iter().rev().find_map(|step| step.resistance);
    let knife = Resistance::ALL.iter().map(|&met| {
        act_button(words.label(met), PitAct::Knife(met))
            .drawn(answer(Clue::Resistance, met as usize))
            .chosen_if(in_force == Some(met))
    });
    let away = ComesAway::ALL.iter().map(|&away| {
        act_button(words.label(away), PitAct::Away(away)).drawn(answer(Clue::ComesAway, away as usize))
    });
    let mut blocks = vec![
        Block::Question { text: words.of(FaceText::ComesAway), columns: 3, answers: away.collect() },
        Block::Question { text: words.of(PitText::ResistanceQuestion), columns: 4, answers: knife.collect() },
    ];
    if from_mm > 0 {
        let note = if world.own.volume_keys { words.of(PitText::OrKeyUp) } else { String::new() };
        let same = act_button(words.label(PitText::SameAsAbove), PitAct::Same);
        let same = Button { note, strong: true, ..same };
        blocks.push(Block::Question { text: String::new(), columns: 1, answers: vec![same] });
    }
    blocks
}

/// The answer so far, the place, and the layers as they are touched on the strip.
fn ways(at: &AtPit, world: &World) -> Block {
    let (words, field, pit) = (world.words, at.field, at.pit.id);
    let row = |of: Icon, title: String, lines: Vec<String>, place: Place| Row {
        icon: Some(icon(of)),
        title,
        lines,
        does: Does::Act(Act::Go(place)),
    };
    let mut rows = vec![
        row(Icon::Show, words.label(FaceText::AnswerSoFar), Vec::new(), Place::Call { field, pit }),
        row(
            Icon::Plan,
            words.label(PitText::Place),
            vec![words.label(at.pit.place)],
            Place::StartPit { field, pit: Some(pit) },
        ),
        row(Icon::Layers, words.label(Heading::Layers), Vec::new(), layers_of(field, pit)),
    ];
    rows.extend(super::faces::layer_rows(at, world));
    Block::Ways { heading: String::new(), rows }
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
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let place = Place::KnifeWalk { field, pit: pit.id };
    let comes_away = away.or_else(|| above(pit));
    let step = Step { comes_away, ..next_step(pit, new_id) };
    if comes_away.is_none() || step.to_mm > DEEPEST_MM {
        return Done::go(place);
    }
    saved(field, pit, step, place)
}

/// Returns what the knife meets from the next step on; nothing is saved where it meets the same as before.
pub(super) fn knife(
    field: RecordId,
    pit: &Pit,
    met: Resistance,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let place = Place::KnifeWalk { field, pit: pit.id };
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

/// Returns whether the knife has told anything of a face.
pub(in crate::screen) fn has_knife_answer(pit: &Pit) -> bool {
    let walked = |step: &Step| step.comes_away.is_some() || step.resistance.is_some();
    let looked = pit.layers.iter().map(|layer| &layer.signs);
    pit.walk.iter().any(walked)
        || looked.into_iter().any(|signs| signs.comes_away.is_some() || signs.resistance.is_some())
}

/// Where the hole ends if the walk does: no higher than what was looked at by hand.
pub(super) fn bottom_mm(pit: &Pit) -> Option<u32> {
    let walked_mm = pit.walk.last()?.to_mm;
    let bottom_mm = pit.layers.iter().map(|layer| layer.bottom_mm).fold(walked_mm, u32::max);
    (bottom_mm >= SHALLOWEST_MM).then_some(bottom_mm)
}

/// The hole ends where the walk does; a hole that is shallower than wanted only at the second tap.
pub(super) fn bottom(notes: &FieldNotes, pit: &Pit, place: Place, world: &World) -> Done {
    let field = notes.field.id;
    let Some(bottom_mm) = bottom_mm(pit) else { return Done::go(Place::KnifeWalk { field, pit: pit.id }) };
    let wanted_mm = AtPit::of(field, pit.id, world).map_or(0, |at| super::start::deep_enough_mm(&at));
    if bottom_mm < wanted_mm && matches!(place, Place::KnifeWalk { .. }) {
        let told = world.words.hole_ends(bottom_mm, wanted_mm);
        return Done { told, ..Done::go(Place::HoleEnds { field, pit: pit.id }) };
    }
    let pit = Pit { dug_to_mm: Some(bottom_mm), ..pit.clone() };
    super::look::then(notes, Edit::Pit { field, pit: pit.clone() }, &pit, world)
}
