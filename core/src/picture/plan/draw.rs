//! The plan put together: the field, the scale and the north arrow below it, notes and key.

use super::frame::Frame;
use super::ground::{self, draw_labels};
use super::marks;
use super::room::{Room, middle};
use super::{PlanPicture, key, text, text_room};
use crate::picture::face::PHONE_WIDTH;
use crate::picture::layout::{LINE_HEIGHT, wrap};
use crate::picture::shape::{Drawing, Point, Role, Shape};

// Lengths in points, our judgement, by eye at phone width.
const MARGIN: f64 = 8.0;
/// Least height of the field.
const LEAST: f64 = 150.0;
/// How much taller the plan is made, and how often, until every pit has its number.
const TALLER: (f64, u32) = (70.0, 4);
const SIZE: f64 = 13.0;
const GAP: f64 = 8.0;

/// A plan with where things lie on it.
#[derive(Debug, Clone, PartialEq)]
pub struct LaidOut {
    /// The plan.
    pub drawing: Drawing,
    /// Where `[0, 0]` of the plane lies on it.
    pub origin: Point,
    /// Points a metre.
    pub points_per_m: f64,
    /// The marks of pits.
    pub pits: Vec<MarkOn>,
}

/// The mark of a pit: where it stands, which may be beside where it belongs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MarkOn {
    /// Place of the pit in the picture's list.
    pub pit: usize,
    /// Middle of its mark.
    pub at: Point,
}

/// Draws the plan of a field.
pub fn plan(picture: &PlanPicture) -> Drawing {
    lay_out(picture).drawing
}

/// Draws the plan of a field and says where things lie on it.
pub fn lay_out(picture: &PlanPicture) -> LaidOut {
    let size = SIZE * picture.scale_of_text();
    let mut shapes = Vec::new();
    let (frame, pits) = draw_field(picture, size, &mut shapes);
    let mut bottom = frame.area.bottom + GAP;
    bottom = draw_scale(picture, &frame, bottom, size, &mut shapes) + GAP;
    for note in &picture.words.notes {
        for line in wrap(note, size, false, PHONE_WIDTH - 2.0 * MARGIN) {
            shapes.push(text(Role::Ink, MARGIN, bottom, size, false, &line));
            bottom += size * LINE_HEIGHT;
        }
        bottom += GAP / 2.0;
    }
    let height = key::draw(picture, MARGIN, bottom, size, &mut shapes) + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    LaidOut {
        drawing: Drawing { width: PHONE_WIDTH, height, shapes },
        origin: frame.origin(),
        points_per_m: frame.points_per_m,
        pits,
    }
}

/// Draws the field; gives its frame, and where the pits' marks stand.
fn draw_field(picture: &PlanPicture, size: f64, shapes: &mut Vec<Shape>) -> (Frame, Vec<MarkOn>) {
    let mut least = LEAST;
    let (frame, mut room, placed) = (0..=TALLER.1)
        .find_map(|times| {
            let frame =
                Frame::of(picture, MARGIN, MARGIN, PHONE_WIDTH - 2.0 * MARGIN, picture.tallest, least);
            let mut room = Room::new(frame.area);
            let (placed, all_told) = marks::place(picture, &frame, size, &mut room);
            least = frame.area.height() + TALLER.0;
            let enough = all_told || times == TALLER.1;
            enough.then_some((frame, room, placed))
        })
        .unwrap_or_else(|| unreachable!("the last try is always enough"));
    let letters = ground::letters(picture, &frame, size, &mut room);
    ground::keep_off(picture, &frame, &mut room);
    let parts = ground::part_labels(picture, &frame, size, &mut room);
    let zones = ground::zone_labels(picture, &frame, size, &mut room);

    ground::draw(picture, &frame, shapes);
    marks::draw(&placed, shapes);
    draw_labels(&letters, Role::Ink, size, true, shapes);
    ground::draw_signed(&parts, size, false, shapes);
    ground::draw_signed(&zones, size, true, shapes);
    let of_marks: Vec<_> = placed.iter().filter_map(|mark| mark.label).collect();
    let of_marks: Vec<_> = of_marks.into_iter().map(|(area, text)| (area, text.to_owned())).collect();
    draw_labels(&of_marks, Role::Ink, size, true, shapes);
    if let Some(own) = picture.shown(picture.own) {
        marks::own(frame.point(own), shapes);
    }
    let pits = placed.iter().filter_map(|mark| Some(MarkOn { pit: mark.pit()?, at: middle(mark.area) }));
    let pits = pits.collect();
    (frame, pits)
}

/// Draws scale bar and north arrow beside each other from `top` down; gives their bottom.
fn draw_scale(picture: &PlanPicture, frame: &Frame, top: f64, size: f64, shapes: &mut Vec<Shape>) -> f64 {
    let (unit, metres) = &picture.words.unit;
    let number = round_below(LONGEST_BAR / frame.points_per_m / metres);
    let (length, middle) = (number * metres * frame.points_per_m, top + size * LINE_HEIGHT / 2.0);
    let (left, right) = (MARGIN + 1.0, MARGIN + 1.0 + length);
    let mut line = |from: (f64, f64), to: (f64, f64)| {
        let (from, to) = (Point::new(from.0, from.1), Point::new(to.0, to.1));
        shapes.push(Shape::Line { role: Role::Ruler, from, to });
    };
    line((left, middle), (right, middle));
    for x in [left, f64::midpoint(left, right), right] {
        line((x, middle - 4.0), (x, middle + 4.0));
    }
    // Held together like every number with its unit.
    let said = format!("{number}\u{a0}{unit}");
    shapes.push(text(Role::Ink, right + 6.0, top, size, false, &said));
    let north = &picture.words.north;
    if !north.is_empty() {
        let (width, height) = text_room(north, size, true);
        let x = PHONE_WIDTH - MARGIN - width - 14.0;
        let arrow = [(0.0, -0.5), (5.0, 0.5), (0.0, 0.25), (-5.0, 0.5)];
        let points = arrow.map(|(right, down)| Point::new(x + right, middle + down * height)).to_vec();
        shapes.push(Shape::Polygon { role: Role::Ink, points });
        shapes.push(text(Role::Ink, x + 10.0, top, size, true, north));
    }
    top + size * LINE_HEIGHT
}

/// Longest scale bar, points.
const LONGEST_BAR: f64 = 120.0;

/// The largest of 1, 2 and 5 times a power of ten that is not above `most`.
fn round_below(most: f64) -> f64 {
    let power = 10.0_f64.powf(most.log10().floor());
    [5.0, 2.0, 1.0].into_iter().map(|step| step * power).find(|&step| step <= most).unwrap_or(power)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_has_a_round_number() {
        for (most, bar) in [(99.0, 50.0), (100.0, 100.0), (260.0, 200.0), (7.3, 5.0), (1.0, 1.0)] {
            assert!((round_below(most) - bar).abs() < 1e-9, "{most}");
        }
    }
}
