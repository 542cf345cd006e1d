//! The sheet an answer is drawn on, and the pieces of soil that come up again and again.

use super::curve::{smooth, smooth_outline};
use super::layout::Area;
use super::shape::{Drawing, Point, Role, Shape};

/// Width of an answer's drawing, points.
pub const ANSWER_WIDTH: f64 = 96.0;
/// Height of an answer's drawing, points.
pub const ANSWER_HEIGHT: f64 = 64.0;

/// An irregular crumb about the origin, its farthest points at a distance of about 1.
const CRUMB: [(f64, f64); 9] = [
    (1.0, 0.15),
    (0.62, 0.62),
    (0.1, 1.0),
    (-0.7, 0.8),
    (-0.85, 0.1),
    (-0.95, -0.6),
    (-0.2, -0.85),
    (0.45, -1.0),
    (0.75, -0.35),
];

/// A sheet being drawn on.
#[derive(Default)]
pub(super) struct Sheet {
    pub shapes: Vec<Shape>,
}

impl Sheet {
    pub fn done(mut self) -> Drawing {
        let (width, height) = (ANSWER_WIDTH, ANSWER_HEIGHT);
        self.shapes.insert(0, Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width, height });
        Drawing { width, height, shapes: self.shapes }
    }

    /// A piece of soil: filled, with an edge.
    pub fn piece(&mut self, points: &[(f64, f64)]) {
        let mut points: Vec<Point> = points.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polygon { role: Role::SoilTight, points: points.clone() });
        points.extend(points.first().copied());
        self.shapes.push(Shape::Polyline { role: Role::Outline, points });
    }

    /// A piece without corners.
    pub fn round_piece(&mut self, points: &[(f64, f64)]) {
        let points: Vec<Point> = points.iter().map(|&(x, y)| Point::new(x, y)).collect();
        let round: Vec<(f64, f64)> = smooth_outline(&points).iter().map(|at| (at.x, at.y)).collect();
        self.piece(&round);
    }

    pub fn curve(&mut self, role: Role, points: &[(f64, f64)]) {
        let points: Vec<Point> = points.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polyline { role, points: smooth(&points) });
    }

    pub fn stroke(&mut self, role: Role, points: &[(f64, f64)]) {
        let points = points.iter().map(|&(x, y)| Point::new(x, y)).collect();
        self.shapes.push(Shape::Polyline { role, points });
    }

    /// Crumbs at `(x, y, size)`, each turned another way.
    pub fn crumbs(&mut self, crumbs: &[(f64, f64, f64)]) {
        for (index, &(x, y, size)) in crumbs.iter().enumerate() {
            let (flip, swap) = (if index % 2 == 0 { 1.0 } else { -1.0 }, index % 3 == 1);
            let points: Vec<(f64, f64)> = CRUMB
                .iter()
                .map(|&(right, down)| if swap { (down, right) } else { (right, down) })
                .map(|(right, down)| (x + size * right * flip, y + size * down * 0.9))
                .collect();
            self.round_piece(&points);
        }
    }

    /// Single grains at these places.
    pub fn grains(&mut self, grains: &[(f64, f64)]) {
        self.shapes.extend(grains.iter().enumerate().map(|(index, &(x, y))| Shape::Circle {
            role: Role::Outline,
            centre: Point::new(x, y),
            radius: [1.4, 1.8, 1.2][index % 3],
        }));
    }

    /// A heap of grains on a base line, `rows` high.
    pub fn heap(&mut self, middle: f64, base: f64, rows: usize) {
        /// Moves each grain a little off its row.
        const JITTER: [(f64, f64); 5] = [(0.0, 0.6), (1.1, -0.7), (-0.9, 0.2), (0.5, 0.9), (-0.4, -0.8)];
        let mut index = 0;
        for row in 0..rows {
            let count = 1 + 2 * (rows - 1 - row) + row % 2;
            for grain in 0..count {
                let (right, down) = JITTER[index % JITTER.len()];
                index += 1;
                let x = middle + (grain as f64 - (count as f64 - 1.0) / 2.0) * 5.6 + right;
                self.grains(&[(x, base - 5.2 * row as f64 + down)]);
            }
        }
    }

    pub fn ground(&mut self, area: Area) {
        let (left, top, width, height) = (area.left, area.top, area.width(), area.height());
        self.shapes.push(Shape::Rectangle { role: Role::SoilPlain, left, top, width, height });
    }

    pub fn frame(&mut self, area: Area) {
        let Area { left, top, right, bottom } = area;
        self.stroke(
            Role::Outline,
            &[(left, top), (right, top), (right, bottom), (left, bottom), (left, top)],
        );
    }

    /// A piece of a rolled thread, lying in the hand.
    pub fn rolled(&mut self, left: f64, right: f64, half: f64) {
        let lies = |x: f64| 42.5 - (x - 45.0) * (x - 45.0) / 300.0;
        let count = ((right - left) / 6.0).ceil().max(1.0);
        let along = |index: usize| left + (right - left) * index as f64 / count;
        let last = count as usize;
        let upper = (0..=last).map(|index| (along(index), lies(along(index)) - half));
        let lower = (0..=last).rev().map(|index| (along(index), lies(along(index)) + half));
        let (end, start) = ((right + 1.6, lies(right) - 0.4), (left - 0.8, lies(left) + 0.6));
        let points: Vec<(f64, f64)> = upper.chain([end]).chain(lower).chain([start]).collect();
        self.piece(&points);
    }

    /// The other hand, lying on what is in the first: wrist on the right, fingers on the left.
    pub fn hand_above(&mut self) {
        let lower = [(93.0, 31.5), (76.0, 35.0), (60.0, 37.5), (40.0, 37.5), (20.0, 34.0), (6.0, 29.0)];
        let upper =
            [(4.0, 26.5), (16.0, 24.0), (32.0, 22.5), (50.0, 20.5), (68.0, 19.5), (84.0, 21.0), (93.0, 22.0)];
        let edge: Vec<(f64, f64)> = lower.into_iter().chain(upper).collect();
        self.curve(Role::Outline, &edge);
        self.curve(Role::Boundary, &[(33.0, 30.0), (21.0, 29.5), (9.0, 27.5)]);
    }

    /// A way there and back, above everything.
    pub fn there_and_back(&mut self) {
        self.stroke(Role::Outline, &[(28.0, 9.0), (68.0, 9.0)]);
        self.stroke(Role::Outline, &[(34.0, 4.5), (28.0, 9.0), (34.0, 13.5)]);
        self.stroke(Role::Outline, &[(62.0, 4.5), (68.0, 9.0), (62.0, 13.5)]);
    }

    /// An open hand from the side: wrist on the left, fingers on the right.
    pub fn hand(&mut self) {
        let upper = [(3.0, 44.0), (20.0, 44.5), (40.0, 46.5), (60.0, 46.5), (78.0, 43.5), (91.0, 38.0)];
        let lower =
            [(93.5, 40.0), (82.0, 48.5), (66.0, 54.0), (48.0, 59.0), (30.0, 60.0), (14.0, 57.0), (3.0, 56.5)];
        let edge: Vec<(f64, f64)> = upper.into_iter().chain(lower).collect();
        self.curve(Role::Outline, &edge);
        self.curve(Role::Boundary, &[(64.0, 50.5), (76.0, 47.0), (87.0, 42.0)]);
    }
}
