//! The key below the section.

use super::super::face::PHONE_WIDTH;
use super::super::hatch::{hatch, roles};
use super::super::layout::{Area, BASE_LINE, LINE_HEIGHT, wrap};
use super::super::pieces::{dashed, dimension, frame, level, rectangle};
use super::super::shape::{Anchor, Point, Role, Shape};
use super::behind::reading;
use super::detail::{LAYER, STROKES, leading_tip};
use super::{KeyLine, KeyMark, MARGIN};
use crate::record::Condition;

const SAMPLE: (f64, f64) = (34.0, 16.0);
const GAP: f64 = 6.0;

/// Draws the key from `top` down; gives its bottom.
pub(super) fn draw(key: &[KeyLine], top: f64, size: f64, shapes: &mut Vec<Shape>) -> f64 {
    let mut y = top;
    for line in key {
        let left = if line.mark == KeyMark::Note { MARGIN } else { MARGIN + SAMPLE.0 + 10.0 };
        let lines = wrap(&line.text, size, false, PHONE_WIDTH - MARGIN - left);
        let height = (lines.len() as f64 * size * LINE_HEIGHT).max(SAMPLE.1);
        // The sample stands beside the first line.
        let middle = y + (size * LINE_HEIGHT).max(SAMPLE.1) / 2.0;
        let sample = Area {
            left: MARGIN,
            top: middle - SAMPLE.1 / 2.0,
            right: MARGIN + SAMPLE.0,
            bottom: middle + SAMPLE.1 / 2.0,
        };
        draw_sample(line.mark, sample, shapes);
        let first = middle - size * LINE_HEIGHT / 2.0;
        for (index, text) in lines.into_iter().enumerate() {
            let at = Point::new(left, first + index as f64 * size * LINE_HEIGHT + size * BASE_LINE);
            let (role, anchor) = (Role::Ink, Anchor::Start);
            shapes.push(Shape::Text { role, at, anchor, size, strong: false, text });
        }
        y += height + GAP;
    }
    y
}

fn sample(condition: Condition, area: Area, shapes: &mut Vec<Shape>) {
    shapes.push(rectangle(roles(condition).0, area));
    hatch(condition, area, shapes);
    shapes.push(frame(area));
}

fn draw_sample(mark: KeyMark, area: Area, shapes: &mut Vec<Shape>) {
    let middle = Point::new(f64::midpoint(area.left, area.right), f64::midpoint(area.top, area.bottom));
    let Area { left, top, right, bottom } = area;
    let corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)];
    let edge = corners.map(|(x, y)| Point::new(x, y));
    match mark {
        KeyMark::Loosened | KeyMark::LoosenedIfAbove | KeyMark::Layer => {
            let condition = if mark == KeyMark::Layer { LAYER } else { Condition::Open };
            shapes.push(rectangle(roles(condition).0, area));
            hatch(condition, area, shapes);
            if mark == KeyMark::LoosenedIfAbove {
                dashed(Role::Outline, &edge, 5.0, 4.0, shapes);
            } else {
                shapes.push(Shape::Polyline { role: Role::Outline, points: edge.to_vec() });
            }
        }
        KeyMark::HangsOnSlope => {
            shapes.push(rectangle(Role::SoilPlain, area));
            let strokes = (area.width() / STROKES).floor();
            for stroke in 0..strokes as u32 {
                let x = left + (f64::from(stroke) + 0.5) / strokes * area.width();
                let (from, to) = (Point::new(x, top + 2.0), Point::new(x, bottom - 2.0));
                shapes.push(Shape::Line { role: Role::Boundary, from, to });
            }
            dashed(Role::Boundary, &edge, 1.5, 3.0, shapes);
        }
        KeyMark::Ridge => dimension(Role::Outline, middle.x, top + 2.0, bottom - 2.0, shapes),
        KeyMark::Critical => {
            for y in [top + 3.0, bottom - 3.0] {
                level(Role::Outline, y, left, right - 8.0, shapes);
            }
            let points = [
                (right - 4.0, top + 3.0),
                (right, top + 3.0),
                (right, bottom - 3.0),
                (right - 4.0, bottom - 3.0),
            ];
            let points = points.map(|(x, y)| Point::new(x, y)).to_vec();
            shapes.push(Shape::Polyline { role: Role::Outline, points });
        }
        KeyMark::Tip => {
            let (from, to) = (Point::new(left, middle.y), Point::new(right, middle.y));
            shapes.push(Shape::Line { role: Role::Tip, from, to });
        }
        KeyMark::Leading => leading_tip(Point::new(middle.x, bottom - 3.0), shapes),
        KeyMark::Floor => {
            let points = [(left + 4.0, top + 4.0), (middle.x, bottom - 4.0), (right - 4.0, top + 5.0)];
            let points: Vec<Point> = points.iter().map(|&(x, y)| Point::new(x, y)).collect();
            shapes.push(Shape::Polyline { role: Role::Measured, points: points.clone() });
            shapes.extend(points.into_iter().map(reading));
        }
        KeyMark::Stayed | KeyMark::WasFirm => sample(Condition::Firm, area, shapes),
        KeyMark::LayerLeft | KeyMark::WasTight => sample(Condition::Tight, area, shapes),
        KeyMark::WasOpen => sample(Condition::Open, area, shapes),
        KeyMark::WasShut => sample(Condition::Shut, area, shapes),
        KeyMark::Slots => {
            let slots = [(0.2, bottom), (0.5, bottom - 6.0), (0.8, bottom)];
            for (share, bottom) in slots {
                let x = left + share * area.width();
                let (from, to) = (Point::new(x, top + 1.5), Point::new(x, bottom - 1.5));
                shapes.push(Shape::Line { role: Role::Measured, from, to });
            }
        }
        KeyMark::Note => {}
    }
}
