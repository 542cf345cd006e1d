//! A field's shapes as `[east, north]` in metres on the plane of its map, for drawing.

use super::FieldMap;
use super::shape::corners;
use crate::record::{Buried, RecordId, Zone};
use geo::{BooleanOps, BoundingRect, LineString, MultiLineString, Polygon, Rotate, Simplify};

/// Walked sides that bend by less than this are one side. Our judgement: what a phone's position wavers.
const STRAIGHT_M: f64 = 3.0;
/// Tramlines drawn at most.
const MOST_TRAMLINES: f64 = 1_000.0;

/// A gateway or patch to be drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct PartFlat {
    /// Identity of the part.
    pub id: RecordId,
    /// What the farm calls it.
    pub name: Option<String>,
    /// Gateway or patch.
    pub zone: Zone,
    /// Its edge, without a closing repeat.
    pub edge: Vec<[f64; 2]>,
}

/// A line of drains or services to be drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct LineFlat {
    /// Identity of the line.
    pub id: RecordId,
    /// What lies there.
    pub kind: Buried,
    /// Its course.
    pub along: Vec<[f64; 2]>,
}

impl FieldMap {
    /// The outline without a closing repeat; empty where there is none.
    pub fn outline_flat(&self) -> Vec<[f64; 2]> {
        self.ground.as_ref().map_or_else(Vec::new, |ground| corners(ground.ring.exterior()))
    }

    /// The inner edge of the headland: a ring around each piece of ground that it leaves. Empty where there is no
    /// headland, and where it leaves nothing.
    pub fn headland_inner_flat(&self) -> Vec<Vec<[f64; 2]>> {
        let ground = self.ground.as_ref().filter(|ground| ground.headland_m.is_some());
        ground
            .map_or_else(Vec::new, |ground| ground.inner().iter().map(|it| corners(it.exterior())).collect())
    }

    /// Gateways and patches as marked, not cut at the outline.
    pub fn parts_flat(&self) -> Vec<PartFlat> {
        let flat = |part: &super::map::MarkedPart| PartFlat {
            id: part.id,
            name: part.name.clone(),
            zone: part.zone,
            edge: part.edge(),
        };
        self.parts.iter().map(flat).collect()
    }

    /// Lines of drains and services as marked.
    pub fn lines_flat(&self) -> Vec<LineFlat> {
        let Some(plane) = self.plane else { return Vec::new() };
        self.lines
            .iter()
            .map(|line| LineFlat {
                id: line.id,
                kind: line.kind,
                along: line.along.iter().map(|&place| plane.flat(place)).collect(),
            })
            .collect()
    }

    /// Tramlines as they may lie: a sketch, for nobody noted where the first one runs. They are parallel to the longest
    /// side, the first at half a spacing from it, and end where open ground ends.
    pub fn tramlines_flat(&self) -> Vec<Vec<[f64; 2]>> {
        let Some((ground, spacing_m)) = self.ground.as_ref().zip(self.tramline_m) else { return Vec::new() };
        let Some((middle, degrees)) = longest_side(&ground.ring) else { return Vec::new() };
        // Turned so that the longest side runs east, the lines are level.
        let turned = ground.ring.rotate_around_point(-degrees, middle);
        let Some(around) = turned.bounding_rect() else { return Vec::new() };
        if around.height() / spacing_m > MOST_TRAMLINES {
            return Vec::new();
        }
        let first = ((around.min().y - middle.y()) / spacing_m - 0.5).ceil() as i32;
        let last = ((around.max().y - middle.y()) / spacing_m - 0.5).floor() as i32;
        let level = (first..=last).map(|at| {
            let north = middle.y() + (f64::from(at) + 0.5) * spacing_m;
            LineString::from(vec![(around.min().x - 1.0, north), (around.max().x + 1.0, north)])
        });
        let lines = MultiLineString::new(level.collect()).rotate_around_point(degrees, middle);
        let split = self.split();
        let open = split.zones.into_iter().find(|(zone, _)| *zone == Zone::Open);
        open.map_or_else(Vec::new, |(_, open)| open.clip(&lines, false).iter().map(corners).collect())
    }
}

/// The middle of the longest side, and its direction in degrees against east.
fn longest_side(ring: &Polygon) -> Option<(geo::Point, f64)> {
    let straight = ring.simplify(STRAIGHT_M);
    let sides = straight.exterior().lines();
    let longest = sides.max_by(|one, other| length(one).total_cmp(&length(other)))?;
    Some((
        geo::Point::from((longest.start + longest.end) / 2.0),
        longest.dy().atan2(longest.dx()).to_degrees(),
    ))
}

fn length(line: &geo::Line) -> f64 {
    line.dx().hypot(line.dy())
}
