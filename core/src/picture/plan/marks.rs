//! Pits, after-digs and the next place to dig: where each mark and its text stand, and how they look.

use super::frame::Frame;
use super::room::{Room, Side, around, middle, nearby};
use super::{PlanPicture, PlanPit, text_room};
use crate::picture::hatch::{roles, small_hatch};
use crate::picture::layout::Area;
use crate::picture::pieces::{frame, rectangle};
use crate::picture::shape::{Point, Role, Shape};
use crate::record::{Condition, PlaceKind};

/// Up to this many pits and after-digs every one has its number; of more, those that find room.
const NUMBERED: usize = 20;
/// More than these are drawn where they are, even over each other.
const MOVED: usize = 120;
/// How far a mark moves for others where there are more than have their numbers, points.
const MOVED_BY: f64 = 60.0;
/// Side of a pit's square, points: with all numbers, and where there are more.
const SQUARE: (f64, f64) = (22.0, 16.0);
/// Between the frames of a reference pit; its outer one stands outside the square.
pub(super) const DOUBLE: f64 = 3.0;
/// Radius of the dot where a mark belongs that stands elsewhere.
const DOT: f64 = 2.6;
const AFTER_DIG: (f64, f64) = (22.0, 12.0);
pub(super) const NEXT: f64 = 22.0;

/// What a mark is of.
#[derive(Clone, Copy)]
enum Of<'a> {
    /// A pit with its place in the list.
    Pit(usize, &'a PlanPit),
    AfterDig,
    Next,
}

/// A mark that has found its place.
pub(super) struct Mark<'a> {
    of: Of<'a>,
    /// Where it belongs.
    at: Point,
    /// Where it stands.
    pub area: Area,
    pub label: Option<(Area, &'a str)>,
}

impl Mark<'_> {
    /// The pit it is of, by its place in the list.
    pub const fn pit(&self) -> Option<usize> {
        match self.of {
            Of::Pit(index, _) => Some(index),
            Of::AfterDig | Of::Next => None,
        }
    }
}

struct Wanted<'a> {
    of: Of<'a>,
    at: Point,
    size: (f64, f64),
    label: &'a str,
    label_size: (f64, f64),
}

/// Finds a place for every mark; says whether all have their text that should.
pub(super) fn place<'a>(
    picture: &'a PlanPicture,
    frame: &Frame,
    type_size: f64,
    room: &mut Room,
) -> (Vec<Mark<'a>>, bool) {
    let holes = holes(picture);
    let many = holes > NUMBERED;
    let farthest = if !many {
        frame.area.width() + frame.area.height()
    } else if holes <= MOVED {
        MOVED_BY
    } else {
        0.0
    };
    // First those that can stand where they belong, then their texts, then the others around them.
    let (mut stay, mut moved) = (Vec::new(), Vec::new());
    for mark in wanted(picture, frame, type_size) {
        let area = inside(around(mark.at, mark.size), frame.area);
        if room.claim(area) {
            stay.push((mark, area));
        } else {
            moved.push(mark);
        }
    }
    let mut marks = Vec::new();
    for (mark, area) in stay {
        let label = label_beside(&mark, area, room);
        if label.is_none() && !many && !mark.label.is_empty() && !matches!(mark.of, Of::Next) {
            room.give_back(area);
            moved.push(mark);
        } else {
            marks.push(Mark { of: mark.of, at: mark.at, area, label });
        }
    }
    for mark in moved {
        let (area, label) = move_aside(&mark, farthest, frame, room);
        room.take(area);
        if let Some((label, _)) = label {
            room.take(label);
        }
        marks.push(Mark { of: mark.of, at: mark.at, area, label });
    }
    // The place to dig next needs no text to be known by.
    let all_told = marks.iter().all(|mark| mark.label.is_some() || matches!(mark.of, Of::Next));
    (marks, all_told || many)
}

/// The nearest place with room for a mark and its text, else for the mark alone, else where it belongs.
fn move_aside<'a>(
    mark: &Wanted<'a>,
    farthest: f64,
    frame: &Frame,
    room: &Room,
) -> (Area, Option<(Area, &'a str)>) {
    let tried = || {
        let points = std::iter::once(mark.at).chain(nearby(mark.at, farthest));
        points.map(|at| around(at, mark.size)).filter(|&area| room.is_free(area))
    };
    let with_label = |area: Area| {
        let mut labels = Side::ALL.iter().map(|side| side.beside(area, mark.label_size));
        labels.find(|&label| room.is_free(label)).map(|label| (area, Some((label, mark.label))))
    };
    let alone = || tried().next().unwrap_or_else(|| inside(around(mark.at, mark.size), frame.area));
    tried().find_map(with_label).unwrap_or_else(|| (alone(), None))
}

fn wanted<'a>(picture: &'a PlanPicture, frame: &Frame, type_size: f64) -> Vec<Wanted<'a>> {
    let one = |of, at, size, label: &'a str| {
        let (width, height) = text_room(label, type_size, true);
        Wanted { of, at: frame.point(at), size, label, label_size: (width + 2.0, height) }
    };
    let pits = picture.pits.iter().enumerate();
    let pits = pits.filter_map(|(index, pit)| Some((index, pit, picture.shown(pit.at)?)));
    let digs = picture.after_digs.iter().filter_map(|dig| Some((dig, picture.shown(dig.at)?)));
    let single = if holes(picture) > NUMBERED { SQUARE.1 } else { SQUARE.0 };
    let next = picture.shown(picture.next).map(|at| one(Of::Next, at, (NEXT, NEXT), &picture.words.next));
    let pits = pits.map(|(index, pit, at)| {
        let width = if pit.place == PlaceKind::Reference { single + 2.0 * DOUBLE } else { single };
        one(Of::Pit(index, pit), at, (width, width), &pit.number)
    });
    let digs = digs.map(|(dig, at)| one(Of::AfterDig, at, AFTER_DIG, &dig.label));
    next.into_iter().chain(pits).chain(digs).collect()
}

/// Pits and after-digs shown.
fn holes(picture: &PlanPicture) -> usize {
    let places = picture.pits.iter().map(|pit| pit.at).chain(picture.after_digs.iter().map(|dig| dig.at));
    places.filter(|&at| picture.shown(at).is_some()).count()
}

fn label_beside<'a>(mark: &Wanted<'a>, area: Area, room: &mut Room) -> Option<(Area, &'a str)> {
    let sides = Side::ALL.into_iter().map(|side| side.beside(area, mark.label_size));
    let label = sides.filter(|_| !mark.label.is_empty()).find(|&label| room.is_free(label))?;
    room.take(label);
    Some((label, mark.label))
}

/// The box moved so far that it lies inside the other.
fn inside(area: Area, outer: Area) -> Area {
    let at = middle(area);
    let (half_x, half_y) = (area.width() / 2.0, area.height() / 2.0);
    let x = at.x.clamp(outer.left + half_x, outer.right - half_x);
    let y = at.y.clamp(outer.top + half_y, outer.bottom - half_y);
    around(Point::new(x, y), (area.width(), area.height()))
}

/// Draws the marks: first what leads to those that do not stand where they belong.
pub(super) fn draw(marks: &[Mark], shapes: &mut Vec<Shape>) {
    for mark in marks {
        let (to, near) = (middle(mark.area), inset(mark.area, -DOT));
        let covered =
            (near.left..=near.right).contains(&mark.at.x) && (near.top..=near.bottom).contains(&mark.at.y);
        if !covered {
            for role in [Role::Casing, Role::Ink] {
                shapes.push(Shape::Line { role, from: mark.at, to });
            }
            shapes.push(Shape::Circle { role: Role::Ink, centre: mark.at, radius: DOT });
        }
    }
    for mark in marks {
        match mark.of {
            Of::Pit(_, pit) => square(mark.area, pit.condition, pit.place == PlaceKind::Reference, shapes),
            Of::AfterDig => after_dig(mark.area, shapes),
            Of::Next => next(middle(mark.area), mark.area.width() / 2.0, shapes),
        }
    }
}

/// A pit: filled with the hatching of its condition, empty where it is not judged.
pub(super) fn square(area: Area, condition: Option<Condition>, reference: bool, shapes: &mut Vec<Shape>) {
    let by = Role::Outline.stroke_width() / 2.0;
    let outer = inset(area, by);
    let inner = if reference { inset(outer, DOUBLE) } else { outer };
    shapes.push(rectangle(Role::Paper, area));
    if let Some(condition) = condition {
        let field = inset(inner, by);
        shapes.push(rectangle(roles(condition).0, field));
        small_hatch(condition, field, shapes);
    }
    shapes.push(frame(outer));
    if reference {
        shapes.push(frame(inner));
    }
}

/// A stroke from tine line to tine line.
pub(super) fn after_dig(area: Area, shapes: &mut Vec<Shape>) {
    let (at, inset) = (middle(area), Role::Casing.stroke_width() / 2.0);
    let (left, right) = (area.left + inset, area.right - inset);
    let (top, bottom) = (area.top + inset, area.bottom - inset);
    for role in [Role::Casing, Role::Ink] {
        let mut line = |from: (f64, f64), to: (f64, f64)| {
            let (from, to) = (Point::new(from.0, from.1), Point::new(to.0, to.1));
            shapes.push(Shape::Line { role, from, to });
        };
        line((left, at.y), (right, at.y));
        for x in [left, at.x, right] {
            line((x, top), (x, bottom));
        }
    }
}

/// A cross in a ring.
pub(super) fn next(at: Point, half: f64, shapes: &mut Vec<Shape>) {
    let radius = half - Role::Tip.stroke_width() / 2.0;
    shapes.push(Shape::Circle { role: Role::Paper, centre: at, radius });
    shapes.push(Shape::Polyline { role: Role::Tip, points: ring(at, radius) });
    let arm = radius * 0.6;
    for (from, to) in [((-arm, 0.0), (arm, 0.0)), ((0.0, -arm), (0.0, arm))] {
        let end = |(right, down): (f64, f64)| Point::new(at.x + right, at.y + down);
        shapes.push(Shape::Line { role: Role::Tip, from: end(from), to: end(to) });
    }
}

/// Where one stands: a dot in a ring.
pub(super) fn own(at: Point, shapes: &mut Vec<Shape>) {
    shapes.push(Shape::Circle { role: Role::Casing, centre: at, radius: OWN });
    shapes.push(Shape::Polyline { role: Role::Tip, points: ring(at, OWN - 2.0) });
    shapes.push(Shape::Circle { role: Role::Ink, centre: at, radius: OWN / 2.0 - 0.5 });
}

/// Radius of the ring around where one stands.
const OWN: f64 = 9.0;

fn ring(at: Point, radius: f64) -> Vec<Point> {
    let points = (0..=32_u32).map(|step| {
        let (down, right) = (std::f64::consts::TAU * f64::from(step) / 32.0).sin_cos();
        Point::new(at.x + radius * right, at.y + radius * down)
    });
    points.collect()
}

fn inset(area: Area, by: f64) -> Area {
    Area { left: area.left + by, top: area.top + by, right: area.right - by, bottom: area.bottom - by }
}
