//! A file with the edges of fields: what is in it, and one of it taken as the edge of a field, as a new field or as a line.

use super::bar::{act_button, blank, gone};
use super::field::degrees;
use super::part::{allow_position, ways};
use super::{Act, Block, Does, Done, Edit, Headline, Place, Row, Screen, ScreenKind, World};
use crate::boundary::{Area, Course, FromFile, away_m, misplaced, places_of};
use crate::error::Fault;
use crate::harmless::typed_name;
use crate::order;
use crate::picture::{Icon, icon};
use crate::place::Outline;
use crate::record::{Buried, BuriedLine, Field, FieldNotes, RecordId, Unknown};
use crate::words::Words;
use serde::{Deserialize, Serialize};

/// More areas than these are not shown: of a whole county's, only those near are looked for. Our judgement.
const MOST_AREAS: usize = 60;
/// More lines than these are not shown. Our judgement.
const MOST_LINES: usize = 60;

/// A file that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct InFile {
    /// Its name without the ending, for what has no name in it.
    pub name: String,
    /// What it holds.
    pub found: FromFile,
    /// Latitude stands before longitude in it, and was read so.
    pub swapped: bool,
}

/// One of what is in the file, by its number among its kind from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Chosen {
    /// An area.
    Area(u32),
    /// A line.
    Line(u32),
    /// All lines together.
    Lines,
}

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BoundaryAct {
    /// An area becomes the edge of the field, or a field of its own where none is open.
    TakeArea(u32),
    /// A line becomes a line of what lies buried.
    TakeLine {
        /// Its number.
        line: u32,
        /// What lies along it.
        kind: Buried,
    },
    /// All lines become lines of what lies buried.
    TakeLines(Buried),
}

impl From<BoundaryAct> for Act {
    fn from(act: BoundaryAct) -> Self {
        Self::Boundary(act)
    }
}

impl InFile {
    fn area(&self, number: u32) -> Option<&Area> {
        self.found.areas.get(number as usize)
    }

    /// The lines that were chosen, of which there is at least one.
    fn lines(&self, chosen: Option<u32>) -> Option<&[Course]> {
        let lines = &self.found.lines;
        match chosen {
            Some(number) => lines.get(number as usize).map(std::slice::from_ref),
            None => (!lines.is_empty()).then_some(lines),
        }
    }

    /// A name for a field that an area becomes; empty where neither it nor the file has one.
    fn name_of(&self, number: u32, area: &Area) -> String {
        let file = || typed_name(&self.name);
        let numbered =
            || if self.found.areas.len() > 1 { format!("{} {}", file(), number + 1) } else { file() };
        area.name.clone().unwrap_or_else(numbered).trim().to_owned()
    }
}

pub(super) fn show(field: Option<RecordId>, chosen: Option<Chosen>, world: &World) -> Option<Screen> {
    let file = world.boundary?;
    let notes = match field {
        Some(field) => Some(world.notes(field)?),
        None => None,
    };
    match (chosen, notes) {
        (None, notes) => Some(list(file, notes, world)),
        (Some(Chosen::Area(number)), Some(notes)) => Some(asked(notes, number, file.area(number)?, world)),
        (Some(Chosen::Line(number)), Some(notes)) => {
            Some(asked_lines(notes, Some(number), file.lines(Some(number))?, world))
        }
        (Some(Chosen::Lines), Some(notes)) => Some(asked_lines(notes, None, file.lines(None)?, world)),
        (Some(_), None) => None,
    }
}

fn screen(notes: Option<&FieldNotes>, chosen: Option<Chosen>, world: &World) -> Screen {
    let place = Place::Boundary { field: notes.map(|notes| notes.field.id), chosen };
    let kind = if notes.is_some() { ScreenKind::Field } else { ScreenKind::Fields };
    let title =
        notes.map_or_else(|| world.words.edge_from_file(), |notes| world.words.name(&notes.field.name));
    blank(place, kind, title, world)
}

/// Returns what is in the file: areas, the nearest first, then lines.
fn list(file: &InFile, notes: Option<&FieldNotes>, world: &World) -> Screen {
    let (words, field) = (world.words, notes.map(|notes| notes.field.id));
    let mut shown = screen(notes, None, world);
    shown.wants_position = true;
    if file.swapped {
        shown.caution = words.edge_swapped();
    }
    let count = file.found.areas.len();
    let line =
        if count == 0 { String::new() } else { words.edge_how(notes.map(|notes| notes.field.name.as_str())) };
    shown.answer = Some(Headline { line, ..Headline::new(words.edges_in_file(count)) });
    let away = |area: &Area| world.fix.map(|fix| away_m(&area.ring, degrees(fix.position)));
    let mut areas: Vec<(u32, &Area, Option<f64>)> =
        (0..).zip(&file.found.areas).map(|(number, area)| (number, area, away(area))).collect();
    // Without a position they stay as in the file.
    order::sort_by(&mut areas, |(_, _, one), (_, _, other)| {
        let metres = |away: &Option<f64>| away.unwrap_or(f64::INFINITY);
        metres(one).total_cmp(&metres(other))
    });
    let asks = notes.is_some_and(|notes| asks_first(notes).0);
    let known = notes.map(places_of).unwrap_or_default();
    let row = |(number, area, away): (u32, &Area, Option<f64>)| {
        let asks = asks || misplaced(&area.ring, &known).is_some();
        let chosen = Some(Chosen::Area(number));
        Row {
            icon: Some(icon(Icon::Edge)),
            title: words.edge_named(&file.name_of(number, area), area),
            lines: away.map(|metres| words.edge_away(metres)).into_iter().collect(),
            does: Does::Act(if asks {
                Act::Go(Place::Boundary { field, chosen })
            } else {
                BoundaryAct::TakeArea(number).into()
            }),
        }
    };
    shown.blocks = ways(areas.into_iter().take(MOST_AREAS).map(row));
    if count > MOST_AREAS {
        shown.blocks.push(Block::Text(words.edges_left_out(MOST_AREAS, count)));
    }
    let lines = &file.found.lines;
    if let (None, false) = (notes, lines.is_empty()) {
        shown.blocks.push(Block::Text(words.lines_need_a_field(lines.len())));
    } else {
        let row = |(number, line): (u32, &Course)| Row {
            icon: Some(icon(Icon::Buried)),
            title: words.boundary_line(line),
            lines: Vec::new(),
            does: Does::Act(Act::Go(Place::Boundary { field, chosen: Some(Chosen::Line(number)) })),
        };
        if (2..=MOST_LINES).contains(&lines.len()) {
            let chosen = Some(Chosen::Lines);
            shown.blocks.extend(ways([Row {
                icon: Some(icon(Icon::Buried)),
                title: words.all_lines(lines),
                lines: Vec::new(),
                does: Does::Act(Act::Go(Place::Boundary { field, chosen })),
            }]));
        }
        shown.blocks.extend(ways((0..).zip(lines).take(MOST_LINES).map(row)));
        if lines.len() > MOST_LINES {
            shown.blocks.push(Block::Text(words.edges_left_out(MOST_LINES, lines.len())));
        }
    }
    shown.blocks.extend(allow_position(world));
    shown
}

/// Places `[longitude, latitude]` that what is in a file can be held against: those noted of the field that is open, else where one stands.
pub fn known(field: Option<RecordId>, world: &World) -> Vec<[f64; 2]> {
    let known = field.and_then(|field| world.notes(field)).map(places_of).unwrap_or_default();
    if known.is_empty() { world.fix.map(|fix| degrees(fix.position)).into_iter().collect() } else { known }
}

/// Returns whether a field has an edge, or the beginning of one, that would be lost; and what the edge encloses.
fn asks_first(notes: &FieldNotes) -> (bool, Option<f64>) {
    let outline = &notes.field.outline;
    (!outline.is_empty(), Outline::new(outline).ok().map(|outline| outline.area_m2()))
}

/// An area that takes the place of an edge, or lies far off: whether it is to be.
fn asked(notes: &FieldNotes, number: u32, area: &Area, world: &World) -> Screen {
    let words = world.words;
    let mut shown = screen(Some(notes), Some(Chosen::Area(number)), world);
    let (has_edge, before_m2) = asks_first(notes);
    let text = words.edge_asked(has_edge);
    let line = words.edge_compared(area, before_m2);
    shown.answer = Some(Headline { line, ..Headline::new(text) });
    shown.caution = caution(notes, &area.ring, world);
    shown.blocks.push(Block::Text(words.boundary_area(area)));
    shown.next = Some(act_button(words.edge_take(has_edge), BoundaryAct::TakeArea(number)));
    shown
}

/// Lines: what lies along them.
fn asked_lines(notes: &FieldNotes, number: Option<u32>, lines: &[Course], world: &World) -> Screen {
    let words = world.words;
    let chosen = number.map_or(Chosen::Lines, Chosen::Line);
    let mut shown = screen(Some(notes), Some(chosen), world);
    let asked = Headline::new(words.line_asked(lines.len()));
    let line = number.map_or_else(|| words.all_lines(lines), |_| words.boundary_line(&lines[0]));
    shown.answer = Some(Headline { line, ..asked });
    let mut cautions = lines.iter().map(|line| caution(notes, &line.along, world));
    shown.caution = cautions.find(|caution| !caution.is_empty()).unwrap_or_default();
    let answer = |&kind: &Buried| {
        let act = number.map_or(BoundaryAct::TakeLines(kind), |line| BoundaryAct::TakeLine { line, kind });
        act_button(words.label(kind), act)
    };
    let answers = Buried::ALL.iter().map(answer).collect();
    shown.blocks.push(Block::Question { text: String::new(), columns: 3, answers });
    shown
}

/// How far off it lies, where it can hardly be of this field.
fn caution(notes: &FieldNotes, places: &[[f64; 2]], world: &World) -> String {
    let far = misplaced(places, &places_of(notes));
    far.map(|far| world.words.edge_far(&notes.field.name, far.distance_m)).unwrap_or_default()
}

pub(super) fn tap(
    place: Place,
    act: BoundaryAct,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let words = world.words;
    let (Place::Boundary { field, .. }, Some(file)) = (place, world.boundary) else {
        return Err(gone(words));
    };
    let notes = field.map(|field| world.notes(field).ok_or_else(|| gone(words))).transpose()?;
    match act {
        BoundaryAct::TakeArea(number) => {
            let area = file.area(number).ok_or_else(|| gone(words))?;
            if area.outline().is_err() {
                return Ok(Done { told: words.edge_crossed(), ..Done::go(place) });
            }
            let before_m2 = notes.and_then(|notes| asks_first(notes).1);
            let (field, to) = if let Some(notes) = notes {
                let field = notes.field.clone();
                let to = Place::Outline { field: field.id };
                (field, to)
            } else {
                let name = file.name_of(number, area);
                let name = if name.is_empty() { words.edge_from_file() } else { name };
                let field = Field::new(new_id(), name);
                let to = Place::Field { field: field.id };
                (field, to)
            };
            let told = words.boundary_outline_taken(&field.name, area, before_m2);
            let field = Field { outline: area.ring.clone(), ..field };
            Ok(Done { told, ..Done::save(Edit::Field(field), to) })
        }
        BoundaryAct::TakeLine { line, kind } => {
            take_lines(file.lines(Some(line)).zip(notes), kind, words, new_id)
        }
        BoundaryAct::TakeLines(kind) => take_lines(file.lines(None).zip(notes), kind, words, new_id),
    }
}

/// Lines become lines of what lies buried in a field, in one save.
fn take_lines(
    taken: Option<(&[Course], &FieldNotes)>,
    kind: Buried,
    words: &Words,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let (lines, notes) = taken.ok_or_else(|| gone(words))?;
    let mut field = notes.field.clone();
    field.lines.extend(lines.iter().map(|line| {
        let (along, unknown) = (line.along.clone(), Unknown::new());
        BuriedLine { id: new_id(), kind, along, depth_mm: None, sort: None, unknown }
    }));
    let told = words.boundary_lines_taken(&field.name, kind, lines);
    let list = Place::Boundary { field: Some(field.id), chosen: None };
    Ok(Done { told, ..Done::save(Edit::Field(field), list) })
}
