//! Strokes that no other drawing needs.

use super::super::shape::{Point, Role, Shape};

/// A line in dashes, from point to point.
pub(super) fn dashed(role: Role, points: &[Point], dash: f64, gap: f64, shapes: &mut Vec<Shape>) {
    for pair in points.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let length = (to.x - from.x).hypot(to.y - from.y);
        let at = |along: f64| {
            let share = (along / length).min(1.0);
            Point::new(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share)
        };
        let count = (length / (dash + gap)).ceil();
        for index in 0..count as usize {
            let start = index as f64 * (dash + gap);
            shapes.push(Shape::Line { role, from: at(start), to: at(start + dash) });
        }
    }
}

/// A level line in dashes on a light band, to be seen on any hatching.
pub(super) fn level(role: Role, y: f64, left: f64, right: f64, shapes: &mut Vec<Shape>) {
    let ends = [Point::new(left, y), Point::new(right, y)];
    shapes.push(Shape::Line { role: Role::Casing, from: ends[0], to: ends[1] });
    dashed(role, &ends, 9.0, 5.0, shapes);
}

/// A line with a bar across each end, on a light band.
pub(super) fn dimension(role: Role, x: f64, top: f64, bottom: f64, shapes: &mut Vec<Shape>) {
    for role in [Role::Casing, role] {
        shapes.push(Shape::Line { role, from: Point::new(x, top), to: Point::new(x, bottom) });
        for y in [top, bottom] {
            shapes.push(Shape::Line { role, from: Point::new(x - 4.0, y), to: Point::new(x + 4.0, y) });
        }
    }
}
