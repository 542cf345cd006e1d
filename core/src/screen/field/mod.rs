//! The list of fields, and one field.

pub mod buried;
pub mod detail;
pub(super) mod details;
pub mod line;
pub(super) mod list;
pub mod listed;
pub(super) mod outline;
mod pits;
mod sought;
mod start;
mod worth;

pub(super) use pits::show as show_pits;
pub use sought::Sought;
pub(super) use worth::ways_to_note;

use super::bar::{blank, gone, tool};
use super::deleting::entry;
use super::drawn::{Beside, OnGround, PlanOnScreen, has_places, plan_on_screen};
use super::part::{go, more, ways};
use super::{
    Act, Button, Does, Done, Headline, Input, Picture, Place, Row, Screen, ScreenKind, Touch, World,
};
use crate::advice::sampling::{At, Next};
use crate::advice::{NextDig, ZoneCall, stands_for};
use crate::answer::FieldAnswer;
use crate::error::Fault;
use crate::picture::{Icon, icon};
use crate::place::{Walk, walk};
use crate::record::{Call, Position, RecordId, Zone};
use crate::words::{Caption, Detail, DetailText, FieldText, Heading, PitText, WalkFrom};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FieldAct {
    /// Starts a field by the name that was typed.
    Start,
    /// Finds fields by what was typed.
    Find,
    /// A corner of the edge is where one stands.
    Corner,
    /// A corner of the edge is where the finger was, on a plan that lies so.
    CornerAt(OnGround),
    /// The last corner is taken away.
    DropCorner,
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

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;
/// Half the width of the place on a plan that opens a pit, points: a finger's.
const FINGER: f64 = 24.0;
/// More pits than these are folded behind one row.
const FEW_PITS: usize = 4;

pub(super) fn show(field: RecordId, world: &World) -> Option<Screen> {
    let words = world.words;
    let answer = world.answer(field)?;
    let notes = &answer.notes;
    let hectares = answer.map.whole_m2().map(|m2| m2 / HECTARE_M2);
    let title = words.field_title(&notes.field.name, hectares);
    let mut shown = blank(Place::Field { field }, ScreenKind::Field, title, world);
    shown.wants_position = true;
    let dig = answer.next();
    shown.answer = Some(headline(&answer, dig.as_ref(), world));
    let plan = has_places(&answer).then(|| Beside { by_calls: true, ..Beside::default() });
    let plan = plan.and_then(|beside| plan_on_screen(world, &answer, beside));
    shown.picture = plan.map(|plan| touched(plan, &answer, world));
    shown.blocks.extend(ways(zone_rows(&answer, world)));
    shown.blocks.extend(ways_to_note(&answer, None, world));
    shown.blocks.extend(pits::block(&answer, FEW_PITS, world));
    let step = dig.as_ref().and_then(|dig| next_step(&answer, dig, world));
    let digs =
        step.as_ref().is_some_and(|step| matches!(step.does, Does::Act(Act::Go(Place::StartPit { .. }))));
    if !digs {
        let dig = Row {
            icon: Some(icon(Icon::Pit)),
            title: words.label(PitText::DigPit),
            lines: Vec::new(),
            does: Does::Act(Act::Go(Place::StartPit { field, pit: None })),
        };
        shown.blocks.extend(ways([dig]));
    }
    shown.next = step;
    let tools = [
        (Icon::Show, words.label(PitText::Show), Place::Show { field, pit: None }),
        (Icon::Machine, words.label(PitText::Machine), Place::Machine { field, machine: None }),
        (Icon::Behind, words.label(Caption::Passes), Place::Pass { field, pass: None }),
    ];
    // Nothing is to be shown, set or dug behind before the first pit.
    let tools = tools.into_iter().filter(|_| !notes.pits.is_empty() || !notes.passes.is_empty());
    shown.tools.extend(tools.map(|(icon, label, place)| tool(icon, label, Act::Go(place))));
    shown.menu = vec![
        go(words.label(FieldText::Edge), Place::Outline { field }),
        go(words.label(DetailText::Details), Place::Details { field }),
        go(words.label(DetailText::Lines), Place::Lines { field, line: None }),
        go(words.label(PitText::HandOver), Place::HandOver { field }),
    ];
    shown.menu.extend(entry(notes, field, world));
    shown.more = folded(&answer, dig.as_ref(), world);
    Some(shown)
}

/// Returns what to do with the field. Where nothing can be told for want of a reference pit, that one is what to do.
fn headline(answer: &FieldAnswer, dig: Option<&NextDig>, world: &World) -> Headline {
    let words = world.words;
    let zones = &answer.advice.zones;
    let first = matches!(dig, Some(NextDig { next: Next::Reference, .. }));
    if zones.is_empty() || first && zones.iter().all(|zone| zone.call == Call::DigAgain) {
        return Headline {
            text: words.of(FieldText::DigFirst),
            sign: Some(icon(Icon::Reference)),
            line: words.of(FieldText::DigFirstLine),
        };
    }
    let all_dug = zones_not_dug(answer).is_empty();
    Headline {
        text: words.headline(&answer.advice, all_dug),
        sign: lead(answer).map(|call| icon(Icon::from(call.call))),
        line: dig.map(|dig| lacking(answer, dig, world)).unwrap_or_default(),
    }
}

/// Returns what is still missing, and where.
fn lacking(answer: &FieldAnswer, dig: &NextDig, world: &World) -> String {
    let words = world.words;
    match (dig.next, dig.why) {
        (Next::Pit { zone, .. }, _) if answer.call_of(zone).is_none() => words.zone_not_dug(zone),
        (Next::Pit { zone, .. } | Next::Behind { zone }, Some(why)) => {
            words.named(&words.label(zone), &words.of(why))
        }
        (_, why) => why.map(|why| words.of(why)).unwrap_or_default(),
    }
}

/// The call that leads: work before what waits, and that before what is left alone.
fn lead(answer: &FieldAnswer) -> Option<&ZoneCall> {
    answer.advice.zones.iter().min_by_key(|zone| match zone.call {
        Call::Loosen => 0,
        Call::LeaveIt => 2,
        _ => 1,
    })
}

/// Zones that have ground on the map and no pit.
fn zones_not_dug(answer: &FieldAnswer) -> Vec<Zone> {
    let areas = answer.map.areas();
    areas.iter().map(|area| area.zone).filter(|zone| answer.call_of(*zone).is_none()).collect()
}

/// The plan with what a finger on it does.
fn touched(plan: PlanOnScreen, answer: &FieldAnswer, world: &World) -> Picture {
    let touch = |mark: &crate::picture::plan::MarkOn| Touch {
        left: mark.at.x - FINGER,
        top: mark.at.y - FINGER,
        width: 2.0 * FINGER,
        height: 2.0 * FINGER,
        label: world.words.pit_numbered(mark.pit + 1, answer.notes.pits[mark.pit].place),
        does: Does::Act(Act::Go(super::pit::where_left(answer, mark.pit, world))),
        drags: false,
    };
    let touches = plan.laid_out.pits.iter().map(touch).collect();
    Picture { touches, zooms: true, ..Picture::from(plan.pictured) }
}

/// Returns what to do in each zone; each row leads to the pit that decides it, or to digging there.
fn zone_rows(answer: &FieldAnswer, world: &World) -> Vec<Row> {
    let words = world.words;
    let areas = answer.map.areas();
    let hectares = |zone: Zone| {
        let area = areas.iter().find(|area| area.zone == zone);
        area.map(|area| area.area_m2 / HECTARE_M2)
    };
    let called = answer.advice.zones.iter().map(|call| Row {
        icon: Some(icon(if call.lacks_reference() { Icon::Reference } else { Icon::from(call.call) })),
        title: words.zone_call(call),
        lines: vec![words.zone_line_below(hectares(call.zone), Some(call))],
        does: Does::Act(Act::Go(deciding(answer, call.zone, world))),
    });
    let start = Place::StartPit { field: answer.notes.field.id, pit: None };
    let not_dug = zones_not_dug(answer).into_iter().map(|zone| Row {
        icon: Some(icon(Icon::Pit)),
        title: words.zone_not_dug(zone),
        lines: hectares(zone)
            .map(|hectares| words.zone_line_below(Some(hectares), None))
            .into_iter()
            .collect(),
        does: Does::Act(Act::Go(start)),
    });
    // Of a field without a pit there is nothing to tell zone from zone.
    if answer.notes.pits.is_empty() { Vec::new() } else { called.chain(not_dug).collect() }
}

/// The pit that decides a zone: the one with its worst layer.
fn deciding(answer: &FieldAnswer, zone: Zone, world: &World) -> Place {
    let pits = answer.notes.pits.iter().zip(&answer.reading.pits).enumerate();
    let of_zone = pits.filter(|(_, (pit, _))| stands_for(&answer.map, pit) == Some(zone));
    let worst = of_zone.max_by_key(|(index, (_, read))| {
        (read.layers.iter().map(|layer| layer.condition).max(), std::cmp::Reverse(*index))
    });
    worst.map_or(Place::StartPit { field: answer.notes.field.id, pit: None }, |(index, _)| {
        super::pit::where_left(answer, index, world)
    })
}

/// The one step worth doing; none where no more is to be dug and nothing is to be worked.
fn next_step(answer: &FieldAnswer, dig: &NextDig, world: &World) -> Option<Button> {
    let (words, field) = (world.words, answer.notes.field.id);
    let pit = Place::StartPit { field, pit: None };
    Some(match &dig.next {
        Next::Reference => go(words.label(FieldText::DigBest), pit),
        Next::Pit { at: At::NowhereClear, .. } => return None,
        Next::Pit { zone, .. } => {
            let walk = way(answer, &dig.next, world).map(|(_, walk)| walk);
            Button { note: words.dig_where(walk), ..go(words.dig_on(*zone), pit) }
        }
        Next::Behind { zone } => {
            let passes = answer.notes.passes.iter();
            let pass = passes.filter(|pass| pass.zone == Some(*zone)).max_by_key(|pass| pass.done);
            let pass = pass.map(|pass| pass.id);
            go(words.label(FieldText::DigBehind), Place::Pass { field, pass })
        }
        Next::Stop => {
            answer.to_loosen().next()?;
            go(words.label(FieldText::SetMachine), Place::Machine { field, machine: None })
        }
    })
}

/// Returns what is folded: how sure each zone is, what to know of the next pit, holes that several read.
fn folded(answer: &FieldAnswer, dig: Option<&NextDig>, world: &World) -> Vec<super::Section> {
    let words = world.words;
    let sure =
        answer.advice.zones.iter().map(|call| words.named(&words.label(call.zone), &words.how_sure(call)));
    let next = dig.map(|dig| {
        let told = told_next(answer, dig, world);
        [told].into_iter().chain(words.next_pit_details(&dig.next)).collect::<Vec<_>>()
    });
    let several = answer.readers();
    let readers =
        several.map(|several| words.several_readers(several, &answer.notes.pits)).unwrap_or_default();
    let parts = [
        more(world, Heading::HowSure, sure.collect()),
        more(world, FieldText::NextPit, next.unwrap_or_default()),
        more(world, Heading::Note, readers),
    ];
    parts.into_iter().flatten().collect()
}

/// Returns what to dig next, and why.
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
pub(in crate::screen) const fn degrees(position: Position) -> [f64; 2] {
    [position.longitude_deg, position.latitude_deg]
}

pub(super) fn tap(
    place: Place,
    act: FieldAct,
    input: Input,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let words = world.words;
    let text = input.text;
    match act {
        FieldAct::Start => return Ok(list::begin(text, place, world, new_id)),
        FieldAct::Find => return Ok(list::find(text)),
        _ => {}
    }
    let notes = place.field().and_then(|field| world.notes(field));
    let notes = notes.ok_or_else(|| gone(words))?;
    Ok(match act {
        FieldAct::Detail { detail, to } => {
            return detail::tap(&notes.field, (detail, to), text, place, world);
        }
        FieldAct::Line(act) => return buried::tap(notes, act, (place, input), world, new_id),
        FieldAct::OutlineAnew => outline::anew(&notes.field, place, world),
        FieldAct::DropCorner => outline::drop_last(&notes.field, place, world),
        FieldAct::CornerAt(ground) => {
            let at = input.point.and_then(|point| ground.place(point)).ok_or_else(|| gone(words))?;
            outline::corner(&notes.field, at, place, world)
        }
        FieldAct::Start | FieldAct::Find | FieldAct::Corner => outline::here(&notes.field, place, world),
    })
}
