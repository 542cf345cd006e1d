//! A pit from its place to the hole dug.

use super::super::bar::{act_button, blank};
use super::super::deleting::entry;
use super::super::{
    Act, Ask, Block, Button, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, Section, World,
};
use super::{AtPit, PitAct, moisture};
use crate::advice::sampling::Next;
use crate::advice::{Caution, DEEP_ENOUGH_MM};
use crate::picture::{Icon, icon};
use crate::record::{FaceMoisture, FieldNotes, Pit, PlaceKind, RecordId, Zone};
use crate::words::{FaceText, Heading, PitText};

/// Depths told are rounded up to this: a spade is no finer.
const SPADE_MM: u32 = 50;
/// What is to be known before a hole is dug.
const BEFORE: [Caution; 4] =
    [Caution::AskBeforeDigging, Caution::DeepPit, Caution::KnifeAway, Caution::FillHole];

pub(in crate::screen) fn show(field: RecordId, pit: Option<RecordId>, world: &World) -> Option<Screen> {
    let place = Place::StartPit { field, pit };
    let Some(pit) = pit else { return begin_screen(place, field, world) };
    let at = AtPit::of(field, pit, world)?;
    let words = world.words;
    let mut shown = at.screen(place, ScreenKind::StartPit, world);
    shown.menu.extend(entry(&at.answer.notes, pit, world));
    shown.wants_position = true;
    let to_dig = words.dig_down_to(deep_enough_mm(&at));
    shown.answer = Some(Headline { line: position_line(at.pit, world), ..Headline::new(to_dig) });
    let untouched = at.pit.walk.is_empty() && at.pit.layers.is_empty();
    if untouched {
        shown.blocks.push(moisture::answers(at.pit.face, PitAct::Dug, words.of(PitText::DugQuestion), world));
    }
    shown.blocks.push(Block::Ways { heading: String::new(), rows: position_rows(&at, world) });
    shown.blocks.push(kinds(at.pit.place, world));
    shown.caution = words.of(Caution::AskBeforeDigging);
    let next = if untouched { PitText::HoleDug } else { PitText::WalkOn };
    shown.next = Some(act_button(words.label(next), PitAct::HoleDug));
    shown.more = before(world);
    Some(shown)
}

/// Where a pit that is not begun yet is to be dug.
fn begin_screen(place: Place, field: RecordId, world: &World) -> Option<Screen> {
    let notes = world.notes(field)?;
    let words = world.words;
    let mut shown = blank(place, ScreenKind::StartPit, words.name(&notes.field.name), world);
    shown.wants_position = true;
    shown.awake = true;
    let answer = world.answer_of(notes);
    let next = answer.next();
    let line = next.map(|dig| match dig.next {
        Next::Reference => words.of(FaceText::ReferenceFirst),
        _ => super::super::field::told_next(&answer, &dig, world),
    });
    let line = line.unwrap_or_default();
    shown.answer = Some(Headline { line, ..Headline::new(words.of(PitText::Where)) });
    let wanted = next.and_then(|dig| wanted_kind(dig.next));
    let button = |&kind: &PlaceKind| {
        let button = act_button(words.label(kind), PitAct::Begin(kind));
        let note = match kind {
            PlaceKind::Reference => words.of(FaceText::BestCrop),
            _ => String::new(),
        };
        Button { note, strong: wanted == Some(kind), ..button }
    };
    let answers = PlaceKind::ALL.iter().map(button).collect();
    shown.blocks.push(Block::Question { text: String::new(), columns: 2, answers });
    shown.caution = words.of(Caution::AskBeforeDigging);
    shown.more = before(world);
    Some(shown)
}

/// The kind of place that is worth digging at next, where one is.
const fn wanted_kind(next: Next) -> Option<PlaceKind> {
    match next {
        Next::Reference => Some(PlaceKind::Reference),
        Next::Pit { zone, .. } => match zone {
            Zone::Open => Some(PlaceKind::Open),
            Zone::Wheelings => Some(PlaceKind::Wheeling),
            Zone::Headland => Some(PlaceKind::Headland),
            Zone::Gateway => Some(PlaceKind::Gateway),
            Zone::Patch => Some(PlaceKind::Other),
            Zone::Whole => None,
        },
        Next::Behind { .. } | Next::Stop => None,
    }
}

/// Returns what is to be known before a hole is dug, folded.
fn before(world: &World) -> Vec<Section> {
    let words = world.words;
    let mut lines = vec![words.of(PitText::TwoFaces)];
    lines.extend(BEFORE.map(|caution| words.of(caution)));
    vec![Section { heading: words.label(Heading::Cautions), lines }]
}

/// The kinds of place, below what is asked: a pit whose place was tapped by mistake.
fn kinds(chosen: PlaceKind, world: &World) -> Block {
    let row = |&kind: &PlaceKind| Row {
        icon: None,
        title: world.words.label(kind),
        lines: if kind == chosen { vec![world.words.of(FaceText::StandsSo)] } else { Vec::new() },
        does: Does::Act(PitAct::Begin(kind).into()),
    };
    let rows = PlaceKind::ALL.iter().map(row).collect();
    Block::Ways { heading: world.words.label(FaceText::KindOfPlace), rows }
}

/// Where the position stands, in one line.
fn position_line(pit: &Pit, world: &World) -> String {
    let words = world.words;
    match (pit.at, world.fix) {
        (Some(at), _) => words.position_noted(at.accuracy_m),
        (None, Some(fix)) => {
            let still = if fix.long_enough() { PitText::PositionHeld } else { PitText::PositionSettling };
            format!("{} {}", words.position_so_far(fix), words.of(still))
        }
        (None, None) if world.position_refused => words.of(PitText::PositionRefused),
        (None, None) => words.of(PitText::NoPosition),
    }
}

fn position_rows(at: &AtPit, world: &World) -> Vec<Row> {
    let words = world.words;
    let row = |of: Icon, title: PitText, does: Does| Row {
        icon: Some(icon(of)),
        title: words.label(title),
        lines: Vec::new(),
        does,
    };
    let by_hand = Place::OnPlan { field: at.field, pit: at.pit.id };
    let anew = world.fix.filter(|_| at.pit.at.is_some()).map(|fix| Row {
        lines: vec![words.position_so_far(fix)],
        ..row(Icon::Undo, PitText::TakePosition, Does::Act(PitAct::TakePosition.into()))
    });
    let allow = world
        .position_refused
        .then(|| row(Icon::Plan, PitText::AllowPosition, Does::Ask(Ask::AllowPosition)));
    let by_hand = row(Icon::Plan, PitText::OnPlan, Does::Act(Act::Go(by_hand)));
    [Some(by_hand), anew, allow].into_iter().flatten().collect()
}

/// How deep to dig: deep enough to be judged, and below whatever the field's calls would work.
pub(super) fn deep_enough_mm(at: &AtPit) -> u32 {
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
