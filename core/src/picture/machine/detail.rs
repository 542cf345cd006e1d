//! The ground of the section and what runs in it.

use super::super::hatch::{hatch, roles};
use super::super::layout::Area;
use super::super::pieces::{dashed, dimension, frame, level, rectangle};
use super::super::shape::{Point, Role, Shape};
use super::SectionPicture;
use crate::advice::machine::Model;
use crate::record::Condition;

/// How the layer to be broken is hatched.
pub(super) const LAYER: Condition = Condition::Tight;

/// Between the strokes of what hangs on the slope, points, large and in the strip, and how far they stay off its edges: as seen at
/// phone width.
pub(super) const STROKES: f64 = 4.5;
const SMALL_STROKES: f64 = 3.0;
const CLEAR: f64 = 1.2;

/// How far a side of this slope runs out for each millimetre that it rises.
fn cot(degrees: f64) -> f64 {
    1.0 / degrees.to_radians().tan()
}

/// Some legs at a scale.
pub(super) struct View {
    pub left: f64,
    pub surface: f64,
    pub points_per_mm: f64,
    pub legs: u32,
    pub depth_mm: f64,
}

/// One tine's loosened ground: its edge from the surface (or where it meets its neighbour) to the same on the other
/// side.
struct Trench {
    edge: Vec<Point>,
    left: f64,
    right: f64,
}

impl View {
    pub fn x(&self, across_mm: f64) -> f64 {
        self.left + across_mm * self.points_per_mm
    }

    pub fn y(&self, depth_mm: f64) -> f64 {
        self.surface + depth_mm * self.points_per_mm
    }

    fn area(&self, picture: &SectionPicture) -> Area {
        let right = self.x(f64::from(self.legs) * picture.spacing());
        Area { left: self.left, top: self.surface, right, bottom: self.y(self.depth_mm) }
    }

    /// Middles of the legs, mm across.
    fn middles(&self, picture: &SectionPicture) -> Vec<f64> {
        (0..self.legs).map(|leg| (f64::from(leg) + 0.5) * picture.spacing()).collect()
    }

    /// The large drawing.
    pub fn draw(&self, picture: &SectionPicture, shapes: &mut Vec<Shape>) {
        let area = self.area(picture);
        self.ground(picture, area, shapes);
        self.hanging(picture, STROKES, shapes);
        let trenches = self.trenches(picture);
        self.fill(&trenches, shapes);
        for trench in &trenches {
            trench.dots(self.surface, shapes);
            trench.outline(picture, shapes);
        }
        let tip = self.y(picture.tip_mm.into());
        self.critical(picture, area, shapes);
        for role in [Role::Casing, Role::Tip] {
            let (from, to) = (Point::new(area.left, tip), Point::new(area.right, tip));
            shapes.push(Shape::Line { role, from, to });
        }
        self.ridge(picture, tip, shapes);
        shapes.push(frame(area));
        self.machine(picture, area, shapes);
    }

    /// The whole machine, small.
    pub fn draw_strip(&self, picture: &SectionPicture, shapes: &mut Vec<Shape>) {
        let area = self.area(picture);
        self.ground(picture, area, shapes);
        self.hanging(picture, SMALL_STROKES, shapes);
        let trenches = self.trenches(picture);
        self.fill(&trenches, shapes);
        for trench in &trenches {
            trench.outline(picture, shapes);
        }
        shapes.push(frame(area));
        let beam = self.surface - 9.0;
        let middles = self.middles(picture);
        let mut line = |from: (f64, f64), to: (f64, f64)| {
            let (from, to) = (Point::new(from.0, from.1), Point::new(to.0, to.1));
            shapes.push(Shape::Line { role: Role::Outline, from, to });
        };
        for x in middles.iter().map(|&middle| self.x(middle)) {
            let tip = self.y(picture.tip_mm.into());
            line((x, beam), (x, tip));
            let half = f64::from(picture.lifting_mm()) / 2.0 * self.points_per_mm;
            line((x - half, tip), (x + half, tip));
        }
        if let [first, .., last] = middles[..] {
            line((self.x(first), beam), (self.x(last), beam));
        }
    }

    fn ground(&self, picture: &SectionPicture, area: Area, shapes: &mut Vec<Shape>) {
        shapes.push(rectangle(Role::SoilPlain, area));
        let Some(layer) = picture.layer.filter(|layer| layer.top_mm < layer.bottom_mm) else { return };
        let bottom = self.y(layer.bottom_mm.into()).min(area.bottom);
        let band = Area { top: self.y(layer.top_mm.into()).min(bottom), bottom, ..area };
        shapes.push(rectangle(roles(LAYER).0, band));
        hatch(LAYER, band, shapes);
        for y in [band.top, band.bottom] {
            let (from, to) = (Point::new(area.left, y), Point::new(area.right, y));
            shapes.push(Shape::Line { role: Role::Boundary, from, to });
        }
    }

    /// Returns what the steepest sides loosen: that much is certain where the model holds.
    fn trenches(&self, picture: &SectionPicture) -> Vec<Trench> {
        let Some(slope) = picture.loosened.value() else { return Vec::new() };
        let (cot, tip) = (cot(slope.steep), f64::from(picture.tip_mm));
        let (half_bottom, half_gap) = (f64::from(picture.lifting_mm()) / 2.0, picture.spacing() / 2.0);
        // Sides run up to the surface, or to where the neighbour's come.
        let half_top = (half_bottom + tip * cot).min(half_gap);
        let half_bottom = half_bottom.min(half_gap);
        let top = tip - (half_top - half_bottom) / cot;
        let trench = |middle: f64| {
            let corners = [(-half_top, top), (-half_bottom, tip), (half_bottom, tip), (half_top, top)];
            let edge = corners.map(|(across, depth)| Point::new(self.x(middle + across), self.y(depth)));
            Trench { left: edge[0].x, right: edge[3].x, edge: edge.to_vec() }
        };
        self.middles(picture).into_iter().map(trench).collect()
    }

    /// What only sides flatter than the steepest loosen: upright strokes, over whatever is there, since it may stay, down to a
    /// dotted edge.
    fn hanging(&self, picture: &SectionPicture, spacing: f64, shapes: &mut Vec<Shape>) {
        let Some(slope) = picture.loosened.value().filter(|slope| slope.flat < slope.steep) else { return };
        let half_gap = picture.spacing() / 2.0;
        let floor = |degrees: f64, across: f64| picture.floor_mm(degrees, across);
        let steps = (half_gap * self.points_per_mm / spacing).floor().max(1.0) as u32;
        for middle in self.middles(picture) {
            for side in [-1.0, 1.0] {
                let at = |across: f64| self.x(middle + side * across);
                for step in 0..steps {
                    let across = (f64::from(step) + 0.5) / f64::from(steps) * half_gap;
                    let [top, bottom] =
                        [slope.steep, slope.flat].map(|degrees| self.y(floor(degrees, across)));
                    let (top, bottom) = (top + CLEAR, bottom - CLEAR);
                    if bottom - top > CLEAR {
                        let (from, to) = (Point::new(at(across), top), Point::new(at(across), bottom));
                        shapes.push(Shape::Line { role: Role::Boundary, from, to });
                    }
                }
                let tip = f64::from(picture.tip_mm);
                let inner = (f64::from(picture.lifting_mm()) / 2.0).min(half_gap);
                let outer = (inner + tip * cot(slope.flat)).min(half_gap);
                let edge =
                    [inner, outer].map(|across| Point::new(at(across), self.y(floor(slope.flat, across))));
                dashed(Role::Boundary, &edge, 1.5, 3.0, shapes);
            }
        }
    }

    /// All loosened ground as one area: no seam where neighbours meet.
    fn fill(&self, trenches: &[Trench], shapes: &mut Vec<Shape>) {
        let (Some(first), Some(last)) = (trenches.first(), trenches.last()) else { return };
        let mut points: Vec<Point> = trenches.iter().flat_map(|trench| trench.edge.iter().copied()).collect();
        points.extend([Point::new(last.right, self.surface), Point::new(first.left, self.surface)]);
        shapes.push(Shape::Polygon { role: Role::SoilOpen, points });
    }

    fn critical(&self, picture: &SectionPicture, area: Area, shapes: &mut Vec<Shape>) {
        let (lo, hi) = picture.critical_mm;
        let lo = self.y(lo.into());
        let hi = hi.map_or(f64::INFINITY, |mm| self.y(mm.into()));
        for y in [lo, hi].into_iter().filter(|&y| y < area.bottom) {
            level(Role::Outline, y, area.left, area.right, shapes);
        }
        if lo < area.bottom {
            // Open below where the range goes on.
            let (x, end) = (area.right + 8.0, hi.min(area.bottom));
            let mut points = vec![(x - 4.0, lo), (x, lo), (x, end)];
            points.extend((hi < area.bottom).then_some((x - 4.0, end)));
            let points = points.into_iter().map(|(x, y)| Point::new(x, y)).collect();
            shapes.push(Shape::Polyline { role: Role::Outline, points });
        }
    }

    /// How high the ridge stands between the first two legs, or beside a single one.
    fn ridge(&self, picture: &SectionPicture, tip: f64, shapes: &mut Vec<Shape>) {
        let Some(top) = self.trenches(picture).first().map(|trench| trench.edge[3].y) else { return };
        if self.legs > 1 && tip - top > 6.0 {
            let x = self.x(picture.spacing());
            dimension(Role::Outline, x, top, tip, shapes);
            let flat = picture.loosened.value().map_or(0.0, |slope| slope.flat);
            let lowest = self.y(picture.floor_mm(flat, picture.spacing() / 2.0));
            if lowest - top > 4.0 && tip - lowest > 4.0 {
                let (from, to) = (Point::new(x - 4.0, lowest), Point::new(x + 4.0, lowest));
                shapes.push(Shape::Line { role: Role::Outline, from, to });
            }
        }
    }

    fn machine(&self, picture: &SectionPicture, area: Area, shapes: &mut Vec<Shape>) {
        let beam = self.surface - 22.0;
        let tip = self.y(picture.tip_mm.into());
        let middles = self.middles(picture);
        let mm = |mm: u32| f64::from(mm) * self.points_per_mm;
        let foot = mm(picture.foot_width_mm).max(5.0);
        let leg = (foot * 0.4).clamp(3.0, 9.0);
        for x in middles.iter().map(|&middle| self.x(middle)) {
            let mut outline = vec![(-leg / 2.0, beam), (-leg / 2.0, tip - 0.9 * foot), (-foot / 2.0, tip)];
            if let Some((width, lift)) = picture.wings_mm {
                let (half, lift) = (mm(width) / 2.0, mm(lift).max(4.0));
                let shoulder = (leg / 2.0 + 1.0).min(half);
                outline = vec![
                    (-leg / 2.0, beam),
                    (-leg / 2.0, tip - lift - 3.0),
                    (-shoulder, tip - lift),
                    (-half, tip - 2.0),
                    (-half, tip),
                ];
            }
            let right: Vec<(f64, f64)> = outline.iter().rev().map(|&(x, y)| (-x, y)).collect();
            let points: Vec<Point> =
                outline.iter().chain(&right).map(|&(across, y)| Point::new(x + across, y)).collect();
            let mut edge = points.clone();
            edge.push(points[0]);
            shapes.push(Shape::Polyline { role: Role::Casing, points: edge });
            shapes.push(Shape::Polygon { role: Role::Outline, points });
            if let Some(leading) = picture.leading_mm {
                leading_tip(Point::new(x, self.y(leading.into())), shapes);
            }
        }
        let beam = Area { left: area.left + 4.0, top: beam - 6.0, right: area.right - 4.0, bottom: beam };
        shapes.push(rectangle(Role::Outline, beam));
    }
}

impl SectionPicture {
    /// Width that lifts.
    fn lifting_mm(&self) -> u32 {
        self.wings_mm.map_or(self.foot_width_mm, |(width, _)| width.max(self.foot_width_mm))
    }

    /// Depth to which sides of this slope loosen the ground so far across from the middle of a leg, mm.
    fn floor_mm(&self, degrees: f64, across_mm: f64) -> f64 {
        let beyond = (across_mm - f64::from(self.lifting_mm()) / 2.0).max(0.0);
        (f64::from(self.tip_mm) - beyond / cot(degrees)).max(0.0)
    }
}

impl Trench {
    /// The hatching of open soil, kept inside the edge.
    fn dots(&self, surface: f64, shapes: &mut Vec<Shape>) {
        let bottom = self.edge[1].y;
        let mut all = Vec::new();
        hatch(Condition::Open, Area { left: self.left, top: surface, right: self.right, bottom }, &mut all);
        shapes.extend(all.into_iter().filter(|shape| match shape {
            Shape::Circle { centre, radius, .. } => self.holds(*centre, *radius + 1.5),
            _ => false,
        }));
    }

    /// Returns whether a disc lies above the edge.
    fn holds(&self, centre: Point, radius: f64) -> bool {
        let side = |outer: Point, inner: Point| {
            let (across, down) = ((inner.x - outer.x).abs(), inner.y - outer.y);
            if down <= 0.0 {
                return 0.0;
            }
            // How far from the middle the slope leaves room at this depth.
            across * ((centre.y - outer.y) / down).clamp(0.0, 1.0)
        };
        let margin = radius * 1.5;
        centre.x - margin > self.left + side(self.edge[0], self.edge[1])
            && centre.x + margin < self.right - side(self.edge[3], self.edge[2])
            && centre.y + radius < self.edge[1].y
    }

    /// Solid where the model holds, dashed where a trial strip has to show it.
    fn outline(&self, picture: &SectionPicture, shapes: &mut Vec<Shape>) {
        match picture.loosened {
            Model::AppliesIfAboveCritical(_) => dashed(Role::Outline, &self.edge, 5.0, 4.0, shapes),
            _ => shapes.push(Shape::Polyline { role: Role::Outline, points: self.edge.clone() }),
        }
    }
}

/// The tip of a leading tine, before the leg.
pub(super) fn leading_tip(tip: Point, shapes: &mut Vec<Shape>) {
    let corners = [(0.0, 0.0), (-6.0, -9.0), (6.0, -9.0)];
    let points: Vec<Point> = corners.iter().map(|&(x, y)| Point::new(tip.x + x, tip.y + y)).collect();
    let mut edge = points.clone();
    edge.push(points[0]);
    shapes.push(Shape::Polygon { role: Role::Paper, points });
    shapes.push(Shape::Polyline { role: Role::Outline, points: edge });
}
