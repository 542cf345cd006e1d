//! Shapes on a field's plane: what is inside, and how far from the edge.

use geo::{Contains, Distance, Euclidean, LineString, Point, Polygon};
use std::f64::consts::TAU;

/// Corners of the polygon that stands for a circle where areas are taken: cut anywhere, its area is within a millionth.
pub(super) const FINE: u32 = 360;
/// The same where it is drawn or walked to: within a thousandth of the radius.
pub(super) const COARSE: u32 = 72;

/// A marked part on the plane.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Shape {
    /// As drawn.
    Ring(Polygon),
    /// Around a middle.
    Circle {
        /// Its middle.
        middle: Point,
        /// Its radius.
        radius_m: f64,
    },
}

impl Shape {
    /// How deep inside a place lies, in metres to the edge; below zero outside.
    pub(super) fn depth_m(&self, place: Point) -> f64 {
        match self {
            Self::Ring(ring) => depth_in(ring, place),
            Self::Circle { middle, radius_m } => radius_m - Euclidean.distance(*middle, place),
        }
    }

    /// As a polygon. That of a circle has this many corners and the circle's area, so they lie a little outside it.
    pub(super) fn polygon(&self, count: u32) -> Polygon {
        match self {
            Self::Ring(ring) => ring.clone(),
            Self::Circle { middle, radius_m } => {
                let step = TAU / f64::from(count);
                let reach_m = radius_m * (step / step.sin()).sqrt();
                let corner = |at: u32| {
                    let angle = step * f64::from(at);
                    (middle.x() + reach_m * angle.cos(), middle.y() + reach_m * angle.sin())
                };
                Polygon::new((0..count).map(corner).collect::<Vec<_>>().into(), Vec::new())
            }
        }
    }
}

/// How deep inside a ring a place lies, in metres to its edge; below zero outside.
pub(super) fn depth_in(ring: &Polygon, place: Point) -> f64 {
    let edge_m = Euclidean.distance(&place, ring.exterior());
    if ring.contains(&place) { edge_m } else { -edge_m }
}

/// A line string as `[east, north]`, without a closing repeat.
pub(super) fn corners(line: &LineString) -> Vec<[f64; 2]> {
    let mut corners: Vec<[f64; 2]> = line.coords().map(|&corner| corner.into()).collect();
    if line.is_closed() {
        corners.pop();
    }
    corners
}
