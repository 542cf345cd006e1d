//! Where a pit lies, by hand on the plan.

use super::bar::{act_button, asked, empty, gone, main_button};
use super::{Act, Button, Done, Draft, Edit, Known, Pictured, Place, ScreenKind, World};
use crate::answer::FieldAnswer;
use crate::error::Fault;
use crate::picture::plan::{PlanKeyLine, PlanMark, PlanPicture, plan};
use crate::place::{Compass, FieldMap, Plane, Walk, walk};
use crate::record::{FieldNotes, Pit, Position, RecordId, Zone};
use crate::words::{Caption, PlanTold, Words, ZoneTold};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OnPlanAct {
    /// It lies where the plan has it.
    Here,
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
/// Steps, metres: long and short.
const STEPS_M: [f64; 2] = [25.0, 5.0];
/// The ways a step goes.
const WAYS: [Compass; 4] = [Compass::North, Compass::South, Compass::West, Compass::East];
/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

impl From<OnPlanAct> for Act {
    fn from(act: OnPlanAct) -> Self {
        Self::OnPlan(act)
    }
}

const fn degrees(position: Position) -> [f64; 2] {
    [position.longitude_deg, position.latitude_deg]
}

/// Where the plan has a pit: at its place, else where the last other pit was dug, else in the middle of the field.
fn start(notes: &FieldNotes, map: &FieldMap, pit: &Pit) -> Option<[f64; 2]> {
    let others = notes.pits.iter().enumerate().filter(|(_, other)| other.id != pit.id);
    let placed = others.filter_map(|(index, other)| Some((other.dug, index, other.at?)));
    let last = placed.max_by_key(|(dug, index, _)| (*dug, *index)).map(|(_, _, at)| at);
    pit.at.or(last).map(degrees).or_else(|| middle(map))
}

fn middle(map: &FieldMap) -> Option<[f64; 2]> {
    map.plane().map(|plane| plane.place([0.0, 0.0]))
}

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Draft> {
    let (answer, words) = (world.answer(field)?, world.words);
    let notes = &answer.notes;
    let index = notes.pits.iter().position(|its| its.id == pit)?;
    let pit = &notes.pits[index];
    let place = Place::OnPlan { field, pit: pit.id };
    let mut screen = empty(place, ScreenKind::OnPlan, words.label(Caption::OnPlan), world);
    let Some(at) = start(notes, &answer.map, pit) else {
        screen.known.push(Known::Sentence(words.label(Caption::NoPlan)));
        return Some(screen);
    };
    let way = middle(&answer.map).map(|middle| walk(middle, at));
    screen.known.extend(way.map(|way| Known::Sentence(words.pit_from_middle(index + 1, way))));
    screen.known.push(Known::Drawing(drawn(&answer, index, (at, way), words)));
    screen.known.extend(pit.at.is_none().then(|| Known::Line(words.label(Caption::PlanStart))));
    screen.known.push(Known::Line(words.label(Caption::PlanKept)));
    for (caption, metres) in [Caption::MoveFar, Caption::MoveNear].into_iter().zip(STEPS_M) {
        let button = |way: Compass| Button {
            note: words.distance(metres),
            ..act_button(words.label(way), OnPlanAct::Step { way, metres })
        };
        screen.doing.extend(asked(words.label(caption), 4, WAYS.map(button).to_vec()));
    }
    screen.bar.main = Some(main_button(words.label(Caption::PlanHere), OnPlanAct::Here));
    Some(screen)
}

/// The plan with the pit as a cross.
fn drawn(answer: &FieldAnswer, index: usize, (at, way): ([f64; 2], Option<Walk>), words: &Words) -> Pictured {
    let (notes, map) = (&answer.notes, &answer.map);
    let mut picture = PlanPicture::of(notes, &answer.reading, map, None);
    picture.pits.remove(index);
    let areas = map.areas();
    let zones: Vec<ZoneTold> = Zone::ALL
        .iter()
        .filter_map(|&zone| areas.iter().find(|area| area.zone == zone))
        .map(|area| ZoneTold { zone: area.zone, hectares: Some(area.area_m2 / HECTARE_M2), call: None })
        .collect();
    for part in &mut picture.parts {
        let name = Some(part.label.as_str()).filter(|name| !name.is_empty());
        part.label = words.plan_part(part.zone, name, None);
    }
    let hectares = map.whole_m2().map(|m2| m2 / HECTARE_M2);
    let told = PlanTold { field: &notes.field.name, hectares, zones: &zones, next_from: None };
    picture.words = words.plan_words(&picture, &told);
    let field = words.describe_plan(&picture, &told);
    let here = way.map(|way| words.pit_from_middle(index + 1, way));
    picture.next = Some(flat(notes, map, at));
    picture.words.next = words.of(Caption::PlanPit);
    let cross = PlanKeyLine { mark: PlanMark::Next, text: words.label(Caption::PlanPit) };
    picture.words.key.push(cross);
    Pictured {
        drawing: plan(&picture),
        title: words.plan_title(&notes.field.name),
        description: here.into_iter().chain([field]).collect::<Vec<_>>().join(" "),
    }
}

/// A place on the plane the plan is drawn on: that of the map, else around the first pit that has a place.
fn flat(notes: &FieldNotes, map: &FieldMap, at: [f64; 2]) -> [f64; 2] {
    let first = notes.pits.iter().find_map(|pit| pit.at).map_or(at, degrees);
    map.plane().unwrap_or_else(|| Plane::at(first)).flat(at)
}

pub(super) fn tap(place: Place, act: &OnPlanAct, world: &World) -> Result<Done, Fault> {
    let gone = || gone(world.words);
    let Place::OnPlan { field, pit } = place else { return Err(gone()) };
    let notes = world.notes(field).ok_or_else(gone)?;
    let pit = notes.pits.iter().find(|its| its.id == pit).ok_or_else(gone)?;
    let at = start(notes, &FieldMap::of(&notes.field), pit).ok_or_else(gone)?;
    let (at, told, then) = match *act {
        OnPlanAct::Here => (at, String::new(), place.above().unwrap_or(place)),
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
