//! The edge of a field, corner by corner: where one stands, or where the plan is touched.

use super::super::bar::{act_button, blank, tool};
use super::super::deleting::entry;
use super::super::drawn::{Beside, plan_on_screen};
use super::super::part::{allow_position, position_line, ways};
use super::super::{Ask, Does, Done, Edit, Headline, Picture, Place, Row, Screen, ScreenKind, World};
use super::{FieldAct, degrees};
use crate::answer::FieldAnswer;
use crate::picture::{Icon, icon};
use crate::place::{Outline, OutlineFault, walk};
use crate::record::{Field, RecordId};
use crate::words::{FieldText, PitText};

/// Two corners nearer than this are one: positions are no better. Our judgement.
const SAME_M: f64 = 2.0;
/// So much ground is shown to each side while the edge is not closed, metres: a field of some 25 ha. Our judgement.
const AROUND_M: f64 = 250.0;

pub(in crate::screen) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let mut shown = blank(Place::Outline { field }, ScreenKind::Field, words.label(FieldText::Edge), world);
    shown.wants_position = true;
    shown.awake = true;
    let outline = &answer.notes.field.outline;
    let closed = answer.map.has_outline();
    let text = match outline.len() {
        0 => words.of(FieldText::EdgeAsked),
        _ if closed => words.of(FieldText::EdgeWhole),
        count => words.corners(count),
    };
    let line = if outline.is_empty() { words.of(FieldText::EdgeHow) } else { position_line(world) };
    shown.answer = Some(Headline { text, sign: None, line });
    let around = middle(&answer, world).filter(|_| !closed).map(|at| (at, AROUND_M));
    if let Some(plan) = plan_on_screen(world, &answer, Beside { around, ..Beside::default() }) {
        let anywhere = Some(FieldAct::CornerAt(plan.ground).into());
        shown.picture = Some(Picture { anywhere, zooms: true, ..Picture::from(plan.pictured) });
    }
    let begun = !outline.is_empty();
    shown.blocks.extend(ways([Row {
        icon: Some(icon(Icon::OpenFile)),
        title: words.edge_from_file(),
        lines: Vec::new(),
        does: Does::Ask(Ask::OpenFile),
    }]));
    shown.blocks.extend(allow_position(world));
    let here = act_button(words.label(PitText::AnotherCorner), FieldAct::Corner);
    shown.next = Some(here.enabled_if(world.fix.is_some()));
    if !closed && begun {
        // Greyed out without a position: what is missing is said.
        shown.caution = if world.fix.is_none() { position_line(world) } else { String::new() };
    }
    if begun {
        shown.tools.push(tool(Icon::Delete, words.label(FieldText::DropCorner), FieldAct::DropCorner));
        shown.menu = vec![act_button(words.label(PitText::OutlineAnew), FieldAct::OutlineAnew)];
    }
    let notes = &answer.notes;
    shown.menu.extend(notes.field.parts.iter().filter_map(|part| entry(notes, part.id, world)));
    Some(shown)
}

/// The middle of what is shown while the edge is not closed: its last corner, a pit, or where one stands.
fn middle(answer: &FieldAnswer, world: &World) -> Option<[f64; 2]> {
    let corner = answer.notes.field.outline.last().copied();
    corner
        .or_else(|| world.fix.map(|fix| degrees(fix.position)))
        .or_else(|| answer.last_pit().map(|(_, at)| at))
}

/// Notes a corner where one stands.
pub(super) fn here(field: &Field, place: Place, world: &World) -> Done {
    match world.fix {
        Some(fix) => corner(field, degrees(fix.position), place, world),
        None => Done { told: world.words.of(PitText::NoPosition), ..Done::go(place) },
    }
}

/// Notes a corner at a place.
pub(super) fn corner(field: &Field, at: [f64; 2], place: Place, world: &World) -> Done {
    let words = world.words;
    let refuse = |text: PitText| Done { told: words.of(text), ..Done::go(place) };
    if field.outline.last().is_some_and(|&last| walk(last, at).distance_m < SAME_M) {
        return refuse(PitText::CornerSame);
    }
    let mut field = field.clone();
    field.outline.push(at);
    // The side back to the first corner is not walked yet: in a field with a bay it may cross others for a while.
    let closing = field.outline.len() - 1;
    match Outline::new(&field.outline) {
        Ok(_) | Err(OutlineFault::TooFew { .. }) => {}
        Err(OutlineFault::Crosses { side, other }) if side == closing || other == closing => {}
        Err(_) => return refuse(PitText::CornerCrosses),
    }
    let told = words.corner_noted(field.outline.len());
    Done { told, ..Done::save(Edit::Field(field), place) }
}

/// Takes the last corner away.
pub(super) fn drop_last(field: &Field, place: Place, world: &World) -> Done {
    let mut field = field.clone();
    if field.outline.pop().is_none() {
        return Done::go(place);
    }
    let told = world.words.of(FieldText::CornerDropped);
    Done { told, ..Done::save(Edit::Field(field), place) }
}

/// Takes the edge back, to be walked anew.
pub(super) fn anew(field: &Field, place: Place, world: &World) -> Done {
    let field = Field { outline: Vec::new(), ..field.clone() };
    let told = world.words.of(PitText::OutlineGone);
    Done { told, ..Done::save(Edit::Field(field), place) }
}
