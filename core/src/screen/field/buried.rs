//! Lines of drains, cables and pipes: walked place by place, or moved about on the plan.

use super::super::bar::{act_button, asked, choice, empty, gone};
use super::super::drawn::plan_of;
use super::super::part::{choices, go};
use super::super::step::COARSE;
use super::super::{
    Act, Ask, Button, Does, Doing, Done, Edit, Known, Place, Row, Screen, ScreenKind, Size, World,
};
use super::{FieldAct, degrees};
use crate::error::Fault;
use crate::place::{Compass, FieldMap, Plane, walk};
use crate::record::notes::length::{self, Length};
use crate::record::{Buried, BuriedLine, Field, FieldNotes, RecordId, Unknown};
use crate::words::{Caption, Detail, DetailText, PitText, Words};
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LineAct {
    /// Marks another line, with no place yet.
    New(Buried),
    /// It begins, bends or ends where one stands.
    Here,
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
    /// There is no such line.
    Remove,
}

impl From<LineAct> for Act {
    fn from(act: LineAct) -> Self {
        Self::Field(FieldAct::Line(act))
    }
}

/// Steps on the plan, metres: long and short, as for a pit.
const STEPS_M: [u16; 2] = [25, 5];
/// The ways a step goes.
const WAYS: [Compass; 4] = [Compass::North, Compass::South, Compass::West, Compass::East];
/// Two places nearer than this are one: positions are no better. Our judgement.
const SAME_M: f64 = 2.0;
/// Depths offered, millimetres: common practice, no source.
const DEPTHS_MM: [u32; 4] = [400, 600, 800, 1_000];

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
    let mut shown = empty(place, ScreenKind::Field, words.label(DetailText::Lines), world);
    shown.known.push(match field.lines.len() {
        0 => Known::Sentence(words.of(DetailText::NoLine)),
        count => Known::Sentence(words.lines_marked(count)),
    });
    shown.known.push(Known::Line(words.of(DetailText::LinesWhy)));
    if !field.lines.is_empty() {
        let row = |line: &BuriedLine| Row {
            title: words.buried_line(line),
            lines: is_short(line).then(|| words.of(DetailText::LineShort)).into_iter().collect(),
            does: Does::Act(Act::Go(Place::Lines { field: field.id, line: Some(line.id) })),
        };
        shown.known.push(Known::Rows(field.lines.iter().map(row).collect()));
    }
    let kinds = Buried::ALL.iter().map(|&kind| act_button(words.label(kind), LineAct::New(kind)));
    shown.doing = asked(words.label(DetailText::NewLine), 3, kinds.collect());
    let done = go(words.label(DetailText::ToDetails), Place::Details { field: field.id });
    shown.bar.main = Some(done.sized(Size::Large));
    shown
}

/// A line with fewer places than a notes file may hold.
pub(in crate::screen) fn is_short(line: &BuriedLine) -> bool {
    !line.faults().is_empty()
}

fn one(notes: &FieldNotes, line: &BuriedLine, world: &World) -> Screen {
    let (field, words) = (notes.field.id, world.words);
    let place = Place::Lines { field, line: Some(line.id) };
    let mut shown = empty(place, ScreenKind::Field, words.label(line.kind), world);
    shown.wants_position = true;
    shown.awake = true;
    let plan = plan_of(words, &world.answer_of(notes));
    shown.known.extend(plan.map(Known::Drawing));
    shown.known.push(Known::Sentence(words.buried_line(line)));
    let empty = line.along.is_empty();
    let next = if empty { DetailText::LineEmpty } else { DetailText::LineOn };
    shown.known.push(Known::Line(words.of(next)));
    shown.known.push(Known::Line(match world.fix {
        Some(fix) => words.position_so_far(fix),
        None if world.position_refused => words.of(PitText::PositionRefused),
        None => words.of(PitText::NoPosition),
    }));
    let mut small = vec![act_button(words.label(DetailText::RemoveLine), LineAct::Remove)];
    if !empty {
        small.push(act_button(words.label(DetailText::DropPlace), LineAct::Drop));
    }
    if world.position_refused {
        small.push(Button::new(words.label(PitText::AllowPosition), Does::Ask(Ask::AllowPosition)));
    }
    let small: Vec<Button> = small.into_iter().map(|button| button.sized(Size::Small)).collect();
    shown.doing.push(choices(small.len() as u8, small));
    shown.doing.extend(deep(line, words));
    if !empty {
        shown.doing.push(Doing::Question(words.label(DetailText::MoveLast)));
        for metres in STEPS_M {
            let step = |way: Compass| Button {
                note: words.distance(f64::from(metres)),
                ..act_button(words.label(way), LineAct::Step { way, metres }).sized(Size::Small)
            };
            shown.doing.push(choices(4, WAYS.map(step).to_vec()));
        }
    }
    let on_plan = if empty { DetailText::BeginOnPlan } else { DetailText::GoOnByHand };
    let can_begin = !empty || start(notes, &world.answer_of(notes).map).is_some();
    let on_plan = act_button(words.label(on_plan), LineAct::OnPlan).enabled_if(can_begin);
    shown.doing.push(choices(1, vec![on_plan]));
    let here = if empty { DetailText::LineBegins } else { DetailText::Another };
    let here = act_button(words.label(here), LineAct::Here).sized(Size::Large);
    shown.bar.main = Some(here.enabled_if(world.fix.is_some()));
    shown
}

/// The depths that can be meant of what lies there.
const fn believed(kind: Buried) -> &'static Length {
    match kind {
        Buried::Drain => &length::DRAINS,
        Buried::MoleDrain => &length::MOLE_DRAINS,
        Buried::Service => &length::SERVICES,
    }
}

/// How deep it lies.
fn deep(line: &BuriedLine, words: &Words) -> Vec<Doing> {
    let (unit, range) = (words.unit(), believed(line.kind).believed());
    let usual = DEPTHS_MM.iter().map(|&mm| COARSE.nearest(mm, unit)).filter(|mm| range.contains(mm));
    let button = |mm: u32| choice(words.depth(mm), LineAct::Deep(Some(mm)), line.depth_mm == Some(mm));
    let mut doing = Vec::new();
    if let Some(mm) = line.depth_mm {
        let step = words.depth(COARSE.step_mm(unit));
        let labels = [words.step_less(&step), words.step_more(&step)];
        let sides = COARSE.around(mm, unit, range.clone());
        let side = |(label, to): (String, Option<u32>)| {
            act_button(label, LineAct::Deep(Some(to.unwrap_or(mm)))).enabled_if(to.is_some())
        };
        let mut steps: Vec<Button> = labels.into_iter().zip(sides).map(side).collect();
        steps.insert(1, act_button(words.label(Caption::NotNoted), LineAct::Deep(None)));
        doing.push(choices(3, steps));
    }
    let what = match line.kind {
        Buried::Drain => Detail::Drains,
        Buried::MoleDrain => Detail::MoleDrains,
        Buried::Service => Detail::Services,
    };
    let mut all = asked(words.label(what), 4, usual.map(button).collect());
    all.extend(doing);
    all
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
    let metres = f64::from(STEPS_M[0]);
    Some(Plane::at(last).place([metres * bearing.sin(), metres * bearing.cos()]))
}

pub(super) fn tap(
    notes: &FieldNotes,
    act: LineAct,
    place: Place,
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
    let Place::Lines { line: Some(line), .. } = place else { return Err(gone(words)) };
    let line = notes.field.lines.iter().find(|its| its.id == line).ok_or_else(|| gone(words))?;
    let mut line = line.clone();
    let refuse = |told: String| Ok(Done { told, ..Done::go(place) });
    let told = match act {
        LineAct::New(_) | LineAct::Remove => {
            let told = words.of(DetailText::LineGone);
            let edit = Edit::Delete { record: line.id };
            return Ok(Done { told, ..Done::save(edit, Place::Lines { field, line: None }) });
        }
        LineAct::Here => {
            let Some(fix) = world.fix else { return refuse(words.of(PitText::NoPosition)) };
            let here = degrees(fix.position);
            if line.along.last().is_some_and(|&last| walk(last, here).distance_m < SAME_M) {
                return refuse(words.of(DetailText::SamePlace));
            }
            line.along.push(here);
            words.line_place_noted(line.along.len())
        }
        LineAct::OnPlan => {
            let next = onward(&line.along).or_else(|| start(notes, &FieldMap::of(&notes.field)));
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
            if depth_mm.is_some_and(|mm| !believed(line.kind).believed().contains(&mm)) {
                return Err(gone(words));
            }
            line.depth_mm = depth_mm;
            words.buried_line(&line)
        }
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
