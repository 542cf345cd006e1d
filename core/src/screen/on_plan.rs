//! Where a pit lies, by hand on the plan.

use super::bar::{act_button, blank, gone};
use super::drawn::{Beside, OnGround, plan_on_screen};
use super::part::{allow_position, go};
use super::{Act, Block, Button, Done, Edit, Headline, Input, Picture, Place, Screen, ScreenKind, World};
use crate::error::Fault;
use crate::place::{Compass, FieldMap, Plane, walk};
use crate::record::{FieldNotes, Pit, Position, RecordId};
use crate::words::{Caption, FieldText};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OnPlanAct {
    /// It lies where the plan has it.
    Here,
    /// It lies where the finger was, on a plan that lies so.
    Touched(OnGround),
    /// A step from there.
    Step {
        /// The way.
        way: Compass,
        /// How far, metres.
        metres: f64,
    },
}

/// How well a place by hand is known, metres. Our judgement: a finger on a plan, between two tramlines.
pub const BY_HAND_M: f64 = 10.0;
/// Steps, metres: short and long.
const STEPS_M: [f64; 2] = [5.0, 25.0];
/// So much ground is shown to each side in a field without an edge, metres. Our judgement.
const AROUND_M: f64 = 100.0;
/// The ways a step goes.
const WAYS: [Compass; 4] = [Compass::North, Compass::South, Compass::West, Compass::East];

impl From<OnPlanAct> for Act {
    fn from(act: OnPlanAct) -> Self {
        Self::OnPlan(act)
    }
}

const fn degrees(position: Position) -> [f64; 2] {
    [position.longitude_deg, position.latitude_deg]
}

/// Where the plan has a pit: at its place, else where the last other pit was dug, else in the middle of the field, else where
/// one stands.
fn start(notes: &FieldNotes, map: &FieldMap, pit: &Pit, world: &World) -> Option<[f64; 2]> {
    let others = notes.pits.iter().enumerate().filter(|(_, other)| other.id != pit.id);
    let placed = others.filter_map(|(index, other)| Some((other.dug, index, other.at?)));
    let last = placed.max_by_key(|(dug, index, _)| (*dug, *index)).map(|(_, _, at)| at);
    let known = pit.at.or(last).map(degrees).or_else(|| middle(map));
    known.or_else(|| world.fix.map(|fix| degrees(fix.position)))
}

fn middle(map: &FieldMap) -> Option<[f64; 2]> {
    map.plane().map(|plane| plane.place([0.0, 0.0]))
}

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let notes = &answer.notes;
    let index = notes.pits.iter().position(|its| its.id == pit)?;
    let pit = &notes.pits[index];
    let place = Place::OnPlan { field, pit: pit.id };
    let mut screen = blank(place, ScreenKind::OnPlan, words.label(Caption::OnPlan), world);
    screen.wants_position = true;
    let Some(at) = start(notes, &answer.map, pit, world) else {
        screen.answer = Some(Headline {
            line: words.of(FieldText::NoPlaceLine),
            ..Headline::new(words.of(FieldText::NoPlaceYet))
        });
        screen.blocks = allow_position(world);
        screen.next = Some(go(words.label(FieldText::Edge), Place::Outline { field }));
        return Some(screen);
    };
    let line = match middle(&answer.map).map(|middle| walk(middle, at)) {
        Some(way) => words.pit_from_middle(index + 1, way),
        None => words.label(Caption::PlanKept),
    };
    screen.answer = Some(Headline { line, ..Headline::new(words.pit_place_asked(index + 1)) });
    let around = (!answer.map.has_outline()).then_some((at, AROUND_M));
    let plan = plan_on_screen(world, &answer, Beside { cross: Some((index, at)), around, by_calls: false })?;
    screen.picture = Some(Picture {
        anywhere: Some(OnPlanAct::Touched(plan.ground).into()),
        zooms: true,
        ..Picture::from(plan.pictured)
    });
    for (text, metres) in [FieldText::ShortSteps, FieldText::LongSteps].into_iter().zip(STEPS_M) {
        let button = |way: Compass| Button {
            note: words.distance(metres),
            ..act_button(words.label(way), OnPlanAct::Step { way, metres })
        };
        let answers = WAYS.map(button).to_vec();
        screen.blocks.push(Block::Question { text: words.label(text), columns: 4, answers });
    }
    let told = if pit.at.is_none() { Caption::PlanStart } else { Caption::PlanKept };
    screen.blocks.push(Block::Text(words.label(told)));
    screen.next = Some(act_button(words.label(Caption::PlanHere), OnPlanAct::Here));
    Some(screen)
}

pub(super) fn tap(place: Place, act: &OnPlanAct, input: Input, world: &World) -> Result<Done, Fault> {
    let gone = || gone(world.words);
    let Place::OnPlan { field, pit } = place else { return Err(gone()) };
    let notes = world.notes(field).ok_or_else(gone)?;
    let pit = notes.pits.iter().find(|its| its.id == pit).ok_or_else(gone)?;
    let at = start(notes, &FieldMap::of(&notes.field), pit, world).ok_or_else(gone)?;
    let (at, told, then) = match *act {
        OnPlanAct::Here => (at, String::new(), place.above().unwrap_or(place)),
        OnPlanAct::Touched(ground) => {
            let touched = input.point.and_then(|point| ground.place(point)).ok_or_else(gone)?;
            let way = walk(at, touched);
            (touched, world.words.moved(way.distance_m, Compass::of(way.bearing_deg)), place)
        }
        OnPlanAct::Step { way, metres } => {
            // The points of the compass stand in their order, an eighth of a turn apart.
            let bearing = (f64::from(way as u8) * 45.0).to_radians();
            let moved = Plane::at(at).place([metres * bearing.sin(), metres * bearing.cos()]);
            (moved, world.words.moved(metres, way), place)
        }
    };
    // A place read by the phone that is only looked at stays as well known as it was.
    if matches!(act, OnPlanAct::Here) && pit.at.is_some() {
        return Ok(Done::go(then));
    }
    let at = Position { longitude_deg: at[0], latitude_deg: at[1], accuracy_m: Some(BY_HAND_M) };
    let edit = Edit::Pit { field, pit: Pit { at: Some(at), ..pit.clone() } };
    Ok(Done { told, ..Done::save(edit, then) })
}
