//! The list of fields, and one field.

pub mod buried;
pub mod detail;
pub(super) mod details;
pub mod listed;
pub(super) mod outline;

use super::bar::{empty, gone};
use super::drawn::plan_of;
use super::incoming::same_names;
use super::part::{choices, go, section};
use super::partners::{not_carried_note, versions_line};
use super::photos::missing;
use super::pit::where_left;
use super::{Act, Does, Doing, Done, Edit, Known, Place, Row, Screen, ScreenKind, Size, World};
use crate::advice::NextDig;
use crate::advice::sampling::{At, Next};
use crate::answer::FieldAnswer;
use crate::error::Fault;
use crate::place::{FieldMap, Walk, walk};
use crate::record::{Condition, Field, FieldNotes, Position, RecordId};
use crate::words::{Detail, DetailText, Heading, PitText, WalkFrom};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FieldAct {
    /// Starts a field by the name that was typed.
    Start,
    /// A corner of the edge is where one stands.
    Corner,
    /// The edge is walked anew.
    OutlineAnew,
    /// A detail of the field is set.
    Detail {
        /// Which.
        detail: Detail,
        /// To what.
        to: detail::DetailSet,
    },
    /// Something of a line of what lies buried.
    Line(buried::LineAct),
}

impl From<FieldAct> for Act {
    fn from(act: FieldAct) -> Self {
        Self::Field(act)
    }
}

pub(super) fn list(world: &World) -> Screen {
    let words = world.words;
    let mut shown = empty(Place::Fields, ScreenKind::Fields, words.label(PitText::AllFields), world);
    shown.wants_position = true;
    let mut fields: Vec<(bool, &FieldNotes)> =
        world.fields.iter().map(|notes| (stands_in(&notes.field, world), notes)).collect();
    fields.sort_by_key(|(here, notes)| (!here, notes.field.name.to_lowercase(), notes.field.id));
    if fields.is_empty() {
        shown.known.push(Known::Sentence(words.of(PitText::NoFields)));
    } else {
        shown
            .known
            .push(Known::Rows(fields.into_iter().map(|(here, notes)| row(here, notes, world)).collect()));
    }
    let same = same_names(world);
    shown.known.extend((!same.is_empty()).then_some(Known::Rows(same)));
    let own = go(words.label(PitText::Own), Place::Own);
    shown.doing =
        vec![choices(2, [own, not_carried_note(world)].map(|button| button.sized(Size::Small)).into())];
    shown.bar.main = Some(go(words.label(PitText::StartField), Place::StartField));
    shown
}

/// Whether the position lies in a field.
fn stands_in(field: &Field, world: &World) -> bool {
    world.fix.is_some_and(|fix| {
        let map = FieldMap::of(field);
        map.has_outline() && map.locate(&fix.position).outside_m.is_none()
    })
}

fn row(here: bool, notes: &FieldNotes, world: &World) -> Row {
    let words = world.words;
    let answer = world.answer_of(notes);
    let calls = answer.advice.zones.iter().map(|call| words.zone_call(call));
    let last = notes.pits.iter().filter_map(|pit| pit.dug).max().map(|dug| dug.date_naive());
    let pits =
        if notes.pits.is_empty() { words.of(PitText::NoPit) } else { words.last_dug(notes.pits.len(), last) };
    let here = here.then(|| words.of(PitText::YouAreHere));
    Row {
        title: world.words.name(&notes.field.name),
        lines: here.into_iter().chain(calls).chain([pits]).collect(),
        does: Does::Act(Act::Go(Place::Field { field: notes.field.id })),
    }
}

/// Asks for the name of a new field.
pub(super) fn start(world: &World) -> Screen {
    let words = world.words;
    let title = words.label(PitText::StartField);
    let mut shown = empty(Place::StartField, ScreenKind::Fields, title, world);
    let label = words.of(PitText::FieldName);
    shown.doing.push(Doing::Typing { label, value: String::new(), act: FieldAct::Start.into() });
    shown
}

pub(super) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let notes = world.notes(field)?;
    let words = world.words;
    let answer = world.answer_of(notes);
    let mut shown = empty(Place::Field { field }, ScreenKind::Field, words.name(&notes.field.name), world);
    shown.wants_position = true;
    let plan = plan_of(words, &answer);
    shown.known.extend(plan.map(Known::Drawing));
    if !notes.pits.is_empty() {
        shown.known.push(Known::Sentence(words.whole_sentence(&answer.advice)));
    }
    let zones =
        answer.advice.zones.iter().map(|call| words.comma(&[words.zone_call(call), words.how_sure(call)]));
    let areas = answer.map.areas();
    let not_dug = areas.iter().map(|area| area.zone).filter(|zone| answer.call_of(*zone).is_none());
    let zones: Vec<String> = zones.chain(not_dug.map(|zone| words.zone_not_dug(zone))).collect();
    shown.known.extend(section(world, Heading::Zones, zones));
    let next = answer.next().map(|dig| told_next(&answer, &dig, world));
    shown.known.extend(next.map(Known::Line));
    let several = answer.readers();
    let readers = several.map(|several| words.several_readers(several, &notes.pits)).unwrap_or_default();
    shown.known.extend(section(world, Heading::Note, readers));
    if !notes.pits.is_empty() {
        shown.known.push(Known::Line(words.label(Heading::Pits)));
        shown
            .known
            .push(Known::Rows((0..notes.pits.len()).map(|index| pit_row(&answer, index, world)).collect()));
    }
    let ways = [
        (PitText::WalkEdge, Place::Outline { field }),
        (PitText::HandOver, Place::HandOver { field }),
        (PitText::Show, Place::Show { field, pit: None }),
        (PitText::Machine, Place::Machine { field, machine: None }),
        (PitText::Behind, Place::Pass { field, pass: None }),
    ];
    let button = |(text, place): (PitText, Place)| go(words.label(text), place);
    let [edge, others @ ..] = ways.map(button);
    let details = go(words.label(DetailText::Details), Place::Details { field });
    let rare = [edge, details].map(|button| button.sized(Size::Small));
    shown.doing = vec![choices(2, rare.into()), choices(2, others.into())];
    shown.bar.main = Some(go(words.label(PitText::DigPit), Place::StartPit { field, pit: None }));
    Some(shown)
}

fn pit_row(answer: &FieldAnswer, index: usize, world: &World) -> Row {
    let words = world.words;
    let (pit, read) = (&answer.notes.pits[index], &answer.reading.pits[index]);
    let worst = read.layers.iter().max_by_key(|layer| layer.condition);
    let worst = worst.map(|layer| match layer.condition {
        Condition::Open => words.label(layer.condition),
        _ => words.describe_layer_short(layer),
    });
    let dug = pit.dug.map(|dug| words.date(dug.date_naive()));
    Row {
        title: words.pit_numbered(index + 1, pit.place),
        lines: dug
            .into_iter()
            .chain(worst)
            .chain(missing(pit, world))
            .chain(versions_line(answer.notes.field.id, pit.id, world))
            .collect(),
        does: Does::Act(Act::Go(where_left(answer, index, world))),
    }
}

/// What to dig next, and why.
pub(super) fn told_next(answer: &FieldAnswer, dig: &NextDig, world: &World) -> String {
    let sentence = world.words.next_pit_sentence(&dig.next, way(answer, &dig.next, world));
    dig.why.map_or_else(|| sentence.clone(), |why| format!("{sentence} {}", world.words.of(why)))
}

/// The way to the next pit: from where one stands, else from the last pit that has a position.
fn way(answer: &FieldAnswer, next: &Next, world: &World) -> Option<(WalkFrom, Walk)> {
    let Next::Pit { at: At::Place(place), .. } = *next else { return None };
    if let Some(fix) = world.fix {
        return Some((WalkFrom::Here, walk(degrees(fix.position), place)));
    }
    let (number, from) = answer.last_pit()?;
    Some((WalkFrom::Pit(number), walk(from, place)))
}

/// A position as `[longitude, latitude]`.
const fn degrees(position: Position) -> [f64; 2] {
    [position.longitude_deg, position.latitude_deg]
}

pub(super) fn tap(
    place: Place,
    act: FieldAct,
    text: Option<&str>,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let words = world.words;
    if act == FieldAct::Start {
        let name = text.unwrap_or_default().trim();
        if name.is_empty() {
            return Ok(Done { told: words.of(PitText::FieldNameMissing), ..Done::go(place) });
        }
        let field = Field::new(new_id(), name);
        let place = Place::Field { field: field.id };
        return Ok(Done::save(Edit::Field(field), place));
    }
    let notes = place.field().and_then(|field| world.notes(field));
    let notes = notes.ok_or_else(|| gone(words))?;
    Ok(match act {
        FieldAct::Detail { detail, to } => {
            return detail::tap(&notes.field, (detail, to), text, place, world);
        }
        FieldAct::Line(act) => return buried::tap(notes, act, place, world, new_id),
        FieldAct::OutlineAnew => outline::anew(&notes.field, place, world),
        FieldAct::Start | FieldAct::Corner => outline::corner(&notes.field, place, world),
    })
}
