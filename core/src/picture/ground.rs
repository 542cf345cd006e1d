//! The ground of a face: layers with their hatching and life, the surface, the tip depth.

use super::face::{Face, FaceLayer, Tip};
use super::hatch::{hatch, roles};
use super::layout::Area;
use super::living::{Life, lanes, life};
use super::shape::{Point, Role, Shape};

/// Height of the tufts on the surface, points.
pub(super) const TUFT: f64 = 9.0;

/// Where a depth lies on the drawing.
pub(super) struct Scale {
    pub surface: f64,
    pub points_per_mm: f64,
}

impl Scale {
    pub fn y(&self, depth_mm: f64) -> f64 {
        self.surface + depth_mm * self.points_per_mm
    }
}

/// The soil of a face, its life and its tip depth.
pub(super) fn draw_ground(face: &Face, scale: &Scale, left: f64, right: f64, shapes: &mut Vec<Shape>) {
    let ground = Area { left, top: scale.surface, right, bottom: scale.y(face.depth_mm().into()) };
    let layers: Vec<(&FaceLayer, Area)> = face
        .layers
        .iter()
        .filter(|layer| layer.bottom_mm > layer.top_mm)
        .map(|layer| {
            let (top, bottom) = (scale.y(layer.top_mm.into()), scale.y(layer.bottom_mm.into()));
            (layer, Area { left, top, right, bottom })
        })
        .collect();
    let (width, height) = (ground.width(), ground.height());
    shapes.push(Shape::Rectangle { role: Role::SoilPlain, left, top: ground.top, width, height });
    for &(layer, area) in &layers {
        let tone = layer.condition.map_or(Role::SoilPlain, |condition| roles(condition).0);
        let (width, height) = (area.width(), area.height());
        shapes.push(Shape::Rectangle { role: tone, left, top: area.top, width, height });
        if let Some(condition) = layer.condition {
            hatch(condition, area, shapes);
        }
    }
    for y in layers.iter().flat_map(|(_, area)| [area.top, area.bottom]) {
        let (from, to) = (Point::new(left, y), Point::new(right, y));
        shapes.push(Shape::Line { role: Role::Boundary, from, to });
    }
    tufts(ground, shapes);
    let mut above = Life::default();
    let mut room_above = TUFT;
    let mut roots = Vec::new();
    for &(layer, area) in &layers {
        let here = Life { roots: layer.roots, channels: layer.channels, patches: layer.patches };
        life(here, above, area, room_above, shapes, &mut roots);
        above = here;
        room_above = area.height();
    }
    shapes.append(&mut roots);
    let corners = [(left, ground.top), (right, ground.top), (right, ground.bottom), (left, ground.bottom)];
    let mut edge: Vec<Point> = corners.iter().map(|&(x, y)| Point::new(x, y)).collect();
    edge.push(edge[0]);
    shapes.push(Shape::Polyline { role: Role::Outline, points: edge });
    if let Some(tip) = &face.tip {
        draw_tip(tip, scale, left, right, shapes);
    }
}

/// What grows on the surface, over every root.
fn tufts(ground: Area, shapes: &mut Vec<Shape>) {
    for x in lanes(ground) {
        for (right, up) in [(-4.0, 0.7), (0.0, 1.0), (3.5, 0.75)] {
            let (from, to) = (Point::new(x, ground.top), Point::new(x + right, ground.top - up * TUFT));
            shapes.push(Shape::Line { role: Role::FaintInk, from, to });
        }
    }
}

fn draw_tip(tip: &Tip, scale: &Scale, left: f64, right: f64, shapes: &mut Vec<Shape>) {
    let (lo, hi) = (scale.y(tip.lo_mm.min(tip.hi_mm).into()), scale.y(tip.lo_mm.max(tip.hi_mm).into()));
    let depths = if tip.lo_mm == tip.hi_mm { vec![lo] } else { vec![lo, hi] };
    for role in [Role::Casing, Role::Tip] {
        for &y in &depths {
            shapes.push(Shape::Line { role, from: Point::new(left, y), to: Point::new(right + 3.0, y) });
        }
    }
    let (from, to) = (Point::new(right + 3.0, lo), Point::new(right + 3.0, hi));
    shapes.push(Shape::Line { role: Role::Tip, from, to });
}
