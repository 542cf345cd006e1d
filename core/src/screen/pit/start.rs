//! A pit from its place to the hole dug.

use super::super::bar::{act_button, empty};
use super::super::own;
use super::super::part::{choices, go, section};
use super::super::{Ask, Button, Does, Doing, Done, Draft, Edit, Known, Place, ScreenKind, Size, World};
use super::{AtPit, PitAct};
use crate::advice::{Caution, DEEP_ENOUGH_MM};
use crate::record::{FaceMoisture, FieldNotes, Pit, PlaceKind, RecordId};
use crate::words::{Heading, PitText};

/// Depths told are rounded up to this: a spade is no finer.
const SPADE_MM: u32 = 50;
/// What is to be known before a hole is dug.
const BEFORE: [Caution; 4] =
    [Caution::AskBeforeDigging, Caution::DeepPit, Caution::KnifeAway, Caution::FillHole];

pub(in crate::screen) fn show(field: RecordId, pit: Option<RecordId>, world: &World) -> Option<Draft> {
    let place = Place::StartPit { field, pit };
    let Some(pit) = pit else { return begin_screen(place, field, world) };
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::StartPit, &words.of(PitText::Place), world);
    shown.wants_position = true;
    shown.known.extend(position_lines(at.pit, world).into_iter().map(Known::Line));
    shown.known.push(Known::Sentence(words.dig_to(deep_enough_mm(&at))));
    shown.known.push(Known::Line(words.of(PitText::TwoFaces)));
    shown.known.extend(section(world, Heading::Cautions, BEFORE.map(|caution| words.of(caution))));
    if asks_who(&at, world) {
        shown.doing.extend(own::who(world));
        shown.doing.push(Doing::Question(words.of(PitText::Where)));
    }
    shown.doing.push(places(Some(at.pit.place), Size::Small, world));
    shown.doing.push(position_buttons(&at, world));
    if at.pit.face.is_none() && at.pit.walk.is_empty() {
        shown.doing.extend(dug_question(world));
    }
    shown.bar.main = Some(act_button(words.label(PitText::HoleDug), PitAct::HoleDug));
    Some(shown)
}

/// Where a pit that is not begun yet is to be dug.
fn begin_screen(place: Place, field: RecordId, world: &World) -> Option<Draft> {
    let notes = world.notes(field)?;
    let words = world.words;
    let mut shown = empty(place, ScreenKind::StartPit, words.label(PitText::StartPit), world);
    shown.wants_position = true;
    shown.awake = true;
    let answer = world.answer_of(notes);
    let next = answer.next().map(|dig| super::super::field::told_next(&answer, &dig, world));
    shown.known.extend(next.map(Known::Line));
    shown.known.push(Known::Line(words.of(Caution::AskBeforeDigging)));
    shown.doing = vec![Doing::Question(words.of(PitText::Where)), places(None, Size::Large, world)];
    Some(shown)
}

/// Whether it is asked who digs: where no name is given yet, at the first pit of the day. Nothing waits for the answer.
fn asks_who(at: &AtPit, world: &World) -> bool {
    let today = |pit: &&Pit| pit.dug.is_some_and(|dug| dug.date_naive() == world.now.date_naive());
    world.own.name.is_empty() && at.answer.notes.pits.iter().filter(today).all(|pit| pit.id == at.pit.id)
}

/// The hole dug and its face looked at, in one tap.
fn dug_question(world: &World) -> [Doing; 2] {
    let words = world.words;
    let button = |&face: &FaceMoisture| act_button(words.label(face), PitAct::Dug(face));
    [
        Doing::Question(words.of(PitText::DugQuestion)),
        choices(3, FaceMoisture::ALL.iter().map(button).collect()),
    ]
}

/// The kinds of place.
fn places(chosen: Option<PlaceKind>, size: Size, world: &World) -> Doing {
    let button = |&kind: &PlaceKind| {
        act_button(world.words.label(kind), PitAct::Begin(kind)).sized(size).chosen_if(chosen == Some(kind))
    };
    choices(if chosen.is_some() { 3 } else { 2 }, PlaceKind::ALL.iter().map(button).collect())
}

fn position_lines(pit: &Pit, world: &World) -> Vec<String> {
    let words = world.words;
    let so_far = world.fix.map(|fix| {
        let still = if fix.long_enough() { PitText::PositionHeld } else { PitText::PositionSettling };
        (words.position_so_far(fix), words.of(still))
    });
    match (pit.at, so_far) {
        (Some(at), so_far) => {
            let noted = words.position_noted(at.accuracy_m);
            [noted].into_iter().chain(so_far.map(|(fix, _)| fix)).collect()
        }
        (None, Some((fix, still))) => vec![fix, still],
        (None, None) if world.position_refused => vec![words.of(PitText::PositionRefused)],
        (None, None) => vec![words.of(PitText::NoPosition)],
    }
}

fn position_buttons(at: &AtPit, world: &World) -> Doing {
    let words = world.words;
    let small = |button: Button| button.sized(Size::Small);
    let by_hand = go(words.label(PitText::OnPlan), Place::OnPlan { field: at.field, pit: at.pit.id });
    let anew = world
        .fix
        .filter(|_| at.pit.at.is_some())
        .map(|_| act_button(words.label(PitText::TakePosition), PitAct::TakePosition));
    let allow = world
        .position_refused
        .then(|| Button::new(words.label(PitText::AllowPosition), Does::Ask(Ask::AllowPosition)));
    let buttons: Vec<Button> = [Some(by_hand), anew, allow].into_iter().flatten().map(small).collect();
    choices(buttons.len() as u8, buttons)
}

/// How deep to dig: deep enough to be judged, and below whatever the field's calls would work.
fn deep_enough_mm(at: &AtPit) -> u32 {
    let tips = at.answer.advice.zones.iter().filter_map(|call| call.tip).map(|tip| tip.hi_mm);
    tips.fold(DEEP_ENOUGH_MM, u32::max).next_multiple_of(SPADE_MM)
}

/// A new pit: saved at once, so that nothing of it can be lost.
pub(super) fn begin(
    notes: &FieldNotes,
    kind: PlaceKind,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Done {
    let by = Some(world.own.name.trim()).filter(|name| !name.is_empty()).map(str::to_owned);
    let pit = Pit { dug: Some(world.now), by, ..Pit::new(new_id(), kind) };
    let field = notes.field.id;
    let told = world.words.pit_begun(notes.pits.len() + 1, kind);
    let place = Place::StartPit { field, pit: Some(pit.id) };
    Done { told, ..Done::save(Edit::Pit { field, pit }, place) }
}

pub(super) fn take_position(field: RecordId, pit: &Pit, place: Place, world: &World) -> Done {
    let Some(fix) = world.fix else {
        return Done { told: world.words.of(PitText::NoPosition), ..Done::go(place) };
    };
    let pit = Pit { at: Some(fix.position), ..pit.clone() };
    let told = world.words.position_noted(fix.position.accuracy_m);
    Done { told, ..Done::save(Edit::Pit { field, pit }, place) }
}

/// To the knife walk; a pit without a position takes the one there is by now.
pub(super) fn hole_dug(field: RecordId, pit: &Pit, face: Option<FaceMoisture>, world: &World) -> Done {
    let place = Place::KnifeWalk { field, pit: pit.id };
    let words = world.words;
    let taken = world.fix.map(|fix| fix.position).filter(|_| pit.at.is_none());
    let dug = Pit { at: pit.at.or(taken), face: face.or(pit.face), ..pit.clone() };
    if dug == *pit {
        return Done::go(place);
    }
    let told = [
        face.map(|face| words.face_kept(face, true)),
        taken.map(|position| words.position_noted(position.accuracy_m)),
    ];
    let told = told.into_iter().flatten().collect::<Vec<_>>().join(" ");
    Done { told, ..Done::save(Edit::Pit { field, pit: dug }, place) }
}
