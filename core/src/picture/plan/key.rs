//! The key below the plan: short lines stand two beside each other.

use super::fill::{fill, tone};
use super::ground::{HEADLAND_EDGE, part_tone, pattern};
use super::marks::{DOUBLE, NEXT, after_dig, next, square};
use super::room::{around, middle};
use super::{PlanMark, PlanPicture, text, text_room};
use crate::picture::face::PHONE_WIDTH;
use crate::picture::layout::{Area, LINE_HEIGHT, wrap};
use crate::picture::pieces::{frame, patterned, rectangle};
use crate::picture::shape::{Point, Role, Shape};
use crate::record::{Buried, Call, Condition, Zone};

const SAMPLE: (f64, f64) = (36.0, NEXT + 2.0 * DOUBLE);
const GAP: f64 = 0.0;
const BESIDE: f64 = 8.0;

/// Draws the key from `top` down; gives its bottom.
pub(super) fn draw(picture: &PlanPicture, margin: f64, top: f64, size: f64, shapes: &mut Vec<Shape>) -> f64 {
    let key = &picture.words.key;
    let column = (PHONE_WIDTH - 2.0 * margin) / 2.0;
    let start = |mark: PlanMark| if mark == PlanMark::Note { 0.0 } else { SAMPLE.0 + BESIDE };
    let fits = |line: &super::PlanKeyLine| {
        line.mark != PlanMark::Note
            && text_room(&line.text, size, false).0 + start(line.mark) + BESIDE <= column
    };
    let (mut y, mut second) = (top, false);
    for (index, line) in key.iter().enumerate() {
        let half = fits(line) && (second || key.get(index + 1).is_some_and(fits));
        let left = margin + if half && second { column } else { 0.0 };
        let room = if half { column } else { 2.0 * column } - start(line.mark);
        let lines = wrap(&line.text, size, false, room);
        let sampled = if line.mark == PlanMark::Note { 0.0 } else { SAMPLE.1 };
        let spacing = size * LINE_HEIGHT;
        let first = spacing.max(sampled);
        // The first line stands in the middle of its sample, so the others end that much lower.
        let above = (first - spacing) / 2.0;
        let height = (above + lines.len() as f64 * spacing).max(first);
        let sample = around(Point::new(left + SAMPLE.0 / 2.0, y + first / 2.0), SAMPLE);
        match filled_by(picture, line.mark) {
            Some(zones) => {
                draw_filled(zones.iter().find_map(|zone| picture.call(*zone)), sample, shapes);
            }
            None => draw_sample(line.mark, sample, shapes),
        }
        for (index, told) in lines.iter().enumerate() {
            let edge = y + above + index as f64 * spacing;
            shapes.push(text(Role::Ink, left + start(line.mark), edge, size, false, told));
        }
        second = half && !second;
        if !second {
            y += height + GAP;
        }
    }
    y
}

/// The zones whose call fills the ground of a mark, where the plan is filled by calls: the first that has one.
fn filled_by(picture: &PlanPicture, mark: PlanMark) -> Option<&'static [Zone]> {
    picture.calls.as_ref()?;
    Some(match mark {
        PlanMark::Ground => &[Zone::Open, Zone::Whole],
        PlanMark::Headland => &[Zone::Headland],
        PlanMark::Gateway => &[Zone::Gateway],
        PlanMark::Patch => &[Zone::Patch],
        _ => return None,
    })
}

/// A piece of ground with its call.
fn draw_filled(call: Option<Call>, area: Area, shapes: &mut Vec<Shape>) {
    let ground = around(middle(area), (SAMPLE.0, 18.0));
    let Area { left, top, right, bottom } = ground;
    let corners = [(left, top), (right, top), (right, bottom), (left, bottom)];
    shapes.push(rectangle(tone(call), ground));
    fill(&[corners.map(|(x, y)| Point::new(x, y)).to_vec()], call, shapes);
    shapes.push(frame(ground));
}

fn draw_sample(mark: PlanMark, area: Area, shapes: &mut Vec<Shape>) {
    let at = middle(area);
    let pit = around(at, (NEXT, NEXT));
    let ground = around(at, (SAMPLE.0, 16.0));
    match mark {
        PlanMark::Ground => {
            shapes.push(rectangle(Role::Paper, ground));
            shapes.push(frame(ground));
        }
        PlanMark::Headland => {
            let strip = Area { bottom: at.y, ..ground };
            shapes.push(rectangle(Role::SoilPlain, strip));
            let ends = |y| [Point::new(ground.left, y), Point::new(ground.right, y)];
            let [from, to] = ends(strip.top);
            shapes.push(Shape::Line { role: Role::Outline, from, to });
            patterned(Role::Boundary, &ends(strip.bottom), &HEADLAND_EDGE, shapes);
        }
        PlanMark::Tramline => {
            for y in [at.y - 4.0, at.y + 4.0] {
                let (from, to) = (Point::new(area.left, y), Point::new(area.right, y));
                shapes.push(Shape::Line { role: Role::FaintInk, from, to });
            }
        }
        PlanMark::Gateway => part(Zone::Gateway, at, shapes),
        PlanMark::Patch => part(Zone::Patch, at, shapes),
        PlanMark::Drain => buried(Buried::Drain, area, shapes),
        PlanMark::MoleDrain => buried(Buried::MoleDrain, area, shapes),
        PlanMark::Service => buried(Buried::Service, area, shapes),
        PlanMark::Open => square(pit, Some(Condition::Open), false, shapes),
        PlanMark::Firm => square(pit, Some(Condition::Firm), false, shapes),
        PlanMark::Tight => square(pit, Some(Condition::Tight), false, shapes),
        PlanMark::Shut => square(pit, Some(Condition::Shut), false, shapes),
        PlanMark::NotJudged => square(pit, None, false, shapes),
        PlanMark::Reference => {
            let double = around(at, (NEXT + 2.0 * DOUBLE, NEXT + 2.0 * DOUBLE));
            square(double, None, true, shapes);
        }
        PlanMark::AfterDig => after_dig(around(at, (NEXT, 12.0)), shapes),
        PlanMark::Next => next(at, NEXT / 2.0, shapes),
        PlanMark::Note => {}
    }
}

fn part(zone: Zone, at: Point, shapes: &mut Vec<Shape>) {
    let points = if zone == Zone::Gateway {
        (0..=24_u32)
            .map(|step| {
                let (down, right) = (std::f64::consts::TAU * f64::from(step) / 24.0).sin_cos();
                Point::new(at.x + 9.0 * right, at.y + 9.0 * down)
            })
            .collect()
    } else {
        let corners = [
            (-16.0, -2.0),
            (-6.0, -8.0),
            (13.0, -6.0),
            (16.0, 4.0),
            (-2.0, 8.0),
            (-13.0, 6.0),
            (-16.0, -2.0),
        ];
        corners.map(|(right, down)| Point::new(at.x + right, at.y + down)).to_vec()
    };
    shapes.push(Shape::Polygon { role: part_tone(zone), points: points.clone() });
    shapes.push(Shape::Polyline { role: Role::Boundary, points });
}

fn buried(kind: Buried, area: Area, shapes: &mut Vec<Shape>) {
    let y = middle(area).y;
    patterned(Role::Ink, &[Point::new(area.left, y), Point::new(area.right, y)], pattern(kind), shapes);
}
