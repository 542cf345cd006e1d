//! Lines of drains, cables and pipes: walked place by place, or moved about on the plan.

use super::super::bar::{act_button, blank, gone, tool};
use super::super::deleting::entry;
use super::super::drawn::{Beside, OnGround, plan_on_screen};
use super::super::part::{allow_position, position_line, way, ways};
use super::super::{
    Act, Block, Does, Done, Edit, Headline, Input, Picture, Place, Row, Screen, ScreenKind, World,
};
use super::{FieldAct, degrees, line};
use crate::error::Fault;
use crate::picture::{Icon, icon};
use crate::place::{Compass, FieldMap, Plane, walk};
use crate::record::{Buried, BuriedLine, Field, FieldNotes, LineSort, RecordId, Unknown};
use crate::words::{DetailText, PitText};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LineAct {
    /// Marks another line, with no place yet.
    New(Buried),
    /// It begins, bends or ends where one stands.
    Here,
    /// The same where the finger was, on a plan that lies so.
    At(OnGround),
    /// The same on the plan: at first where the last pit was dug or in the middle of the field, then a step further on.
    OnPlan,
    /// Its last place lies a step from there.
    Step {
        /// The way.
        way: Compass,
        /// How far, metres.
        metres: u16,
    },
    /// Its last place is taken away.
    Drop,
    /// How deep its top lies; `None` where that is not known.
    Deep(Option<u32>),
    /// What it is made of or carries; `None` where that is not known.
    Sort(Option<LineSort>),
}

impl From<LineAct> for Act {
    fn from(act: LineAct) -> Self {
        Self::Field(FieldAct::Line(act))
    }
}

/// Steps on the plan, metres: short and long, as for a pit.
pub(super) const STEPS_M: [u16; 2] = [5, 25];
/// So much ground is shown to each side in a field without an edge, metres. Our judgement.
const AROUND_M: f64 = 150.0;
/// Two places nearer than this are one: positions are no better. Our judgement.
const SAME_M: f64 = 2.0;

pub(in crate::screen) fn show(field: RecordId, line: Option<RecordId>, world: &World) -> Option<Screen> {
    let notes = world.notes(field)?;
    match line {
        None => Some(list(notes, world)),
        Some(line) => {
            let line = notes.field.lines.iter().find(|its| its.id == line)?;
            Some(one(notes, line, world))
        }
    }
}

fn list(notes: &FieldNotes, world: &World) -> Screen {
    let (field, words) = (&notes.field, world.words);
    let place = Place::Lines { field: field.id, line: None };
    let mut shown = blank(place, ScreenKind::Field, words.name(&field.name), world);
    let text = match field.lines.len() {
        0 => words.of(DetailText::NoLine),
        count => words.lines_marked(count),
    };
    shown.answer = Some(Headline { line: words.of(DetailText::LinesShort), ..Headline::new(text) });
    let row = |line: &BuriedLine| {
        let short = if is_short(line) { words.of(DetailText::LineShort) } else { String::new() };
        let place = Place::Lines { field: field.id, line: Some(line.id) };
        way(Some(Icon::Buried), words.buried_line(line), short, place)
    };
    shown.blocks = ways(field.lines.iter().map(row));
    let kinds = Buried::ALL.iter().map(|&kind| act_button(words.label(kind), LineAct::New(kind)));
    shown.blocks.push(Block::Question {
        text: words.label(DetailText::NewLine),
        columns: 3,
        answers: kinds.collect(),
    });
    shown.blocks.push(Block::Text(words.of(DetailText::LinesWhy)));
    shown
}

/// A line with fewer places than a notes file may hold.
pub(in crate::screen) fn is_short(line: &BuriedLine) -> bool {
    !line.faults().is_empty()
}

fn one(notes: &FieldNotes, line: &BuriedLine, world: &World) -> Screen {
    let (field, words) = (notes.field.id, world.words);
    let place = Place::Lines { field, line: Some(line.id) };
    let mut shown = blank(place, ScreenKind::Field, words.label(line.kind), world);
    shown.wants_position = true;
    shown.awake = true;
    let empty = line.along.is_empty();
    let next = if empty { DetailText::LineEmpty } else { DetailText::LineOn };
    shown.answer = Some(Headline { line: words.of(next), ..Headline::new(words.buried_line(line)) });
    let begin = begin(notes, world);
    shown.picture = plan(notes, line, world);
    let on_plan = if empty { DetailText::BeginOnPlan } else { DetailText::GoOnByHand };
    shown.blocks.extend(ways((!empty || begin.is_some()).then(|| Row {
        icon: Some(icon(Icon::Plan)),
        title: words.label(on_plan),
        lines: Vec::new(),
        does: Does::Act(LineAct::OnPlan.into()),
    })));
    shown.blocks.extend(ways(line::rows(field, line, words)));
    shown.blocks.extend(allow_position(world));
    shown.blocks.push(Block::Text(position_line(world)));
    let here = if empty { DetailText::LineBegins } else { DetailText::Another };
    let here = act_button(words.label(here), LineAct::Here);
    shown.next = Some(here.enabled_if(world.fix.is_some()));
    if !empty {
        shown.tools.push(tool(Icon::Delete, words.label(DetailText::DropPlace), LineAct::Drop));
    }
    shown.menu = entry(notes, line.id, world).into_iter().collect();
    shown
}

fn begin(notes: &FieldNotes, world: &World) -> Option<[f64; 2]> {
    start(notes, &world.answer_of(notes).map).or_else(|| world.fix.map(|fix| degrees(fix.position)))
}

/// The plan on which a touch sets the next place of a line.
pub(super) fn plan(notes: &FieldNotes, line: &BuriedLine, world: &World) -> Option<Picture> {
    let answer = world.answer_of(notes);
    let around = line.along.last().copied().or_else(|| begin(notes, world));
    let around = around.filter(|_| !answer.map.has_outline()).map(|at| (at, AROUND_M));
    let plan = plan_on_screen(world, &answer, Beside { around, ..Beside::default() })?;
    let anywhere = Some(LineAct::At(plan.ground).into());
    Some(Picture { anywhere, zooms: true, ..Picture::from(plan.pictured) })
}

/// Where a line begins on the plan: where the last pit was dug, else in the middle of the field.
fn start(notes: &FieldNotes, map: &FieldMap) -> Option<[f64; 2]> {
    let last = crate::answer::last_pit(notes).map(|(_, at)| at);
    last.or_else(|| map.plane().map(|plane| plane.place([0.0, 0.0])))
}

/// A place some metres from another.
fn moved(from: [f64; 2], way: Compass, metres: f64) -> [f64; 2] {
    // The points of the compass stand in their order, an eighth of a turn apart.
    let bearing = (f64::from(way as u8) * 45.0).to_radians();
    Plane::at(from).place([metres * bearing.sin(), metres * bearing.cos()])
}

/// The place after the last on the plan: a long step on the way the line runs, to the north at first.
fn onward(along: &[[f64; 2]]) -> Option<[f64; 2]> {
    let &last = along.last()?;
    let before = along.len().checked_sub(2).and_then(|index| along.get(index));
    let bearing = before.map_or(0.0, |&before| walk(before, last).bearing_deg).to_radians();
    let metres = f64::from(STEPS_M[1]);
    Some(Plane::at(last).place([metres * bearing.sin(), metres * bearing.cos()]))
}

pub(super) fn tap(
    notes: &FieldNotes,
    act: LineAct,
    (place, input): (Place, Input),
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let words = world.words;
    let field = notes.field.id;
    if let LineAct::New(kind) = act {
        let line = BuriedLine {
            id: new_id(),
            kind,
            along: Vec::new(),
            depth_mm: None,
            sort: None,
            unknown: Unknown::new(),
        };
        let place = Place::Lines { field, line: Some(line.id) };
        return Ok(save(&notes.field, line, place, String::new()));
    }
    let (Place::Lines { line: Some(line), .. } | Place::Line { line, .. }) = place else {
        return Err(gone(words));
    };
    let line = notes.field.lines.iter().find(|its| its.id == line).ok_or_else(|| gone(words))?;
    let mut line = line.clone();
    let refuse = |told: String| Ok(Done { told, ..Done::go(place) });
    let told = match act {
        LineAct::New(_) => return Err(gone(words)),
        LineAct::Here | LineAct::At(_) => {
            let here = match act {
                LineAct::At(ground) => {
                    input.point.and_then(|point| ground.place(point)).ok_or_else(|| gone(words))?
                }
                _ => match world.fix {
                    Some(fix) => degrees(fix.position),
                    None => return refuse(words.of(PitText::NoPosition)),
                },
            };
            if line.along.last().is_some_and(|&last| walk(last, here).distance_m < SAME_M) {
                return refuse(words.of(DetailText::SamePlace));
            }
            line.along.push(here);
            words.line_place_noted(line.along.len())
        }
        LineAct::OnPlan => {
            let next = onward(&line.along).or_else(|| start(notes, &FieldMap::of(&notes.field)));
            let next = next.or_else(|| world.fix.map(|fix| degrees(fix.position)));
            line.along.push(next.ok_or_else(|| gone(words))?);
            words.line_place_noted(line.along.len())
        }
        LineAct::Step { way, metres } => {
            let last = line.along.last_mut().ok_or_else(|| gone(words))?;
            *last = moved(*last, way, f64::from(metres));
            words.moved(f64::from(metres), way)
        }
        LineAct::Drop => {
            line.along.pop().ok_or_else(|| gone(words))?;
            words.buried_line(&line)
        }
        LineAct::Deep(depth_mm) => {
            if depth_mm.is_some_and(|mm| !line::believed(line.kind).believed().contains(&mm)) {
                return Err(gone(words));
            }
            line.depth_mm = depth_mm;
            words.buried_line(&line)
        }
        LineAct::Sort(sort) => {
            if sort.is_some_and(|sort| sort.kind() != line.kind) {
                return Err(gone(words));
            }
            line.sort = sort;
            words.buried_line(&line)
        }
    };
    // An answer leads back to the line; steps may follow each other.
    let place = match act {
        LineAct::Sort(_) => Place::Lines { field, line: Some(line.id) },
        _ => place,
    };
    Ok(save(&notes.field, line, place, told))
}

/// The field with this line, new or changed.
fn save(field: &Field, line: BuriedLine, place: Place, told: String) -> Done {
    let mut field = field.clone();
    match field.lines.iter_mut().find(|its| its.id == line.id) {
        Some(its) => *its = line,
        None => field.lines.push(line),
    }
    Done { told, ..Done::save(Edit::Field(field), place) }
}
