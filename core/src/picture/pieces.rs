//! Pieces that several drawings share: areas with an edge, strokes with a pattern, strokes to be seen on any hatching.

use super::layout::Area;
use super::shape::{Point, Role, Shape};

/// A line in dashes, from point to point; every piece begins anew, so that corners are always drawn.
pub(super) fn dashed(role: Role, points: &[Point], dash: f64, gap: f64, shapes: &mut Vec<Shape>) {
    for pair in points.windows(2) {
        patterned(role, pair, &[dash, gap], shapes);
    }
}

/// A line in a pattern that runs on round its corners: lengths of dash, gap, dash, gap … in points.
pub(super) fn patterned(role: Role, points: &[Point], pattern: &[f64], shapes: &mut Vec<Shape>) {
    let (mut index, mut left) = (0, pattern.first().copied().unwrap_or(f64::INFINITY));
    for pair in points.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let length = (to.x - from.x).hypot(to.y - from.y);
        let at = |along: f64| {
            let share = (along / length).min(1.0);
            Point::new(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share)
        };
        let mut along = 0.0;
        while along < length {
            let next = (along + left).min(length);
            if index % 2 == 0 {
                shapes.push(Shape::Line { role, from: at(along), to: at(next) });
            }
            left -= next - along;
            if left <= 1e-9 {
                index += 1;
                left = pattern[index % pattern.len()];
            }
            along = next;
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

/// An area filled.
pub(super) fn rectangle(role: Role, area: Area) -> Shape {
    Shape::Rectangle { role, left: area.left, top: area.top, width: area.width(), height: area.height() }
}

/// The edge of an area.
pub(super) fn frame(area: Area) -> Shape {
    let Area { left, top, right, bottom } = area;
    let corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)];
    let points = corners.map(|(x, y)| Point::new(x, y)).to_vec();
    Shape::Polyline { role: Role::Outline, points }
}

/// A shape made larger or smaller about the upper left corner, which then stands elsewhere.
pub(super) fn moved(shape: Shape, to: Point, scale: f64) -> Shape {
    let at = |from: Point| Point::new(to.x + from.x * scale, to.y + from.y * scale);
    let all = |points: Vec<Point>| points.into_iter().map(at).collect();
    match shape {
        Shape::Rectangle { role, left, top, width, height } => {
            let corner = at(Point::new(left, top));
            let (width, height) = (width * scale, height * scale);
            Shape::Rectangle { role, left: corner.x, top: corner.y, width, height }
        }
        Shape::Circle { role, centre, radius } => {
            Shape::Circle { role, centre: at(centre), radius: radius * scale }
        }
        Shape::Polygon { role, points } => Shape::Polygon { role, points: all(points) },
        Shape::Line { role, from, to } => Shape::Line { role, from: at(from), to: at(to) },
        Shape::Polyline { role, points } => Shape::Polyline { role, points: all(points) },
        Shape::Text { role, at: from, anchor, size, strong, text } => {
            Shape::Text { role, at: at(from), anchor, size: size * scale, strong, text }
        }
    }
}
