//! Shapes as other programs take them: rings closed, outer ones counter-clockwise, cut at 180 degrees (RFC 7946,
//! sections 3.1.6 and 3.1.9).

use super::shape::{COARSE, Shape, corners};
use super::{FieldMap, Plane};
use crate::record::Zone;
use geo::{
    Area, BooleanOps, BoundingRect, Coord, Geodesic, InterpolatePoint, LineString, MapCoords, MultiPolygon,
    Point, Polygon, Rect,
};

/// A piece of ground as closed rings of `[longitude, latitude]` in degrees: the edge, then that of each hole.
pub type Rings = Vec<Vec<[f64; 2]>>;

/// Halvings until the place where a side meets the antimeridian is known to the last digit.
const HALVINGS: u32 = 60;

/// Ground within one ring of `[longitude, latitude]`, open or closed, either way round: one piece, or several where
/// the antimeridian cuts it. Its corners stay as they are; those that the cut adds lie on the shortest line between
/// two. Empty for fewer than three places.
pub fn ground_of(ring: &[[f64; 2]]) -> Vec<Rings> {
    cut(&Polygon::new(ring.iter().map(|&place| Coord::from(place)).collect(), Vec::new()))
}

/// A line of `[longitude, latitude]`: one piece, or several where the antimeridian cuts it.
pub fn line_of(along: &[[f64; 2]]) -> Vec<Vec<[f64; 2]>> {
    let mut pieces: Vec<Vec<[f64; 2]>> = Vec::new();
    for &place in along {
        match pieces.last_mut().and_then(|piece| Some((*piece.last()?, piece))) {
            None => pieces.push(vec![place]),
            Some((before, piece)) => {
                let next = [near(before[0], place[0]), place[1]];
                let Some(seam) = seam_beyond(next[0]) else {
                    // Either sign names the antimeridian itself; the one of this side is written.
                    piece.push(if next[0].abs() < 180.0 { place } else { next });
                    continue;
                };
                let latitude = meets(before, place, seam);
                piece.push([seam, latitude]);
                pieces.push(vec![[-seam, latitude], place]);
            }
        }
    }
    pieces.iter_mut().for_each(Vec::dedup);
    pieces.retain(|piece| piece.len() > 1);
    pieces
}

/// The ring that stands for a circle: its corners lie so that it has the circle's area.
pub fn circle_of(middle: [f64; 2], radius_m: f64) -> Vec<[f64; 2]> {
    let plane = Plane::at(middle);
    let circle = Shape::Circle { middle: Point::new(0.0, 0.0), radius_m };
    corners(circle.polygon(COARSE).exterior()).into_iter().map(|corner| plane.place(corner)).collect()
}

/// What is narrower than this is no ground. Ours: a hundred times what the plane can tell, far below a blade of grass.
const NO_WIDTH_M: f64 = 1e-4;
/// About the same in degrees.
const NO_WIDTH_DEG: f64 = 1e-9;

impl FieldMap {
    /// The ground of each zone, no ground in two of them, in the order of [`Zone::ALL`]; wheelings lie in open ground.
    /// Edges between two zones are computed on the field's plane.
    pub fn zones_on_globe(&self) -> Vec<(Zone, Vec<Rings>)> {
        let Some(plane) = self.plane() else { return Vec::new() };
        let on_globe = |ground: MultiPolygon| {
            let tidy = ground.iter().filter_map(tidy);
            let to_degrees = |spot: Coord| Coord::from(on_seam_if_near(plane.place(spot.into())));
            tidy.flat_map(|piece| cut(&piece.map_coords(to_degrees))).collect()
        };
        self.split().zones.into_iter().map(|(zone, ground)| (zone, on_globe(ground))).collect()
    }
}

/// Ground on the plane without what taking one piece off another leaves over: strips of no width along an edge. `None` where
/// nothing else is left.
fn tidy(ground: &Polygon) -> Option<Polygon> {
    let ring = |ring: &LineString| {
        let mut corners: Vec<Coord> = ring.coords().skip(1).copied().collect();
        // A corner without which the edge encloses the same goes, then perhaps its neighbour.
        while let Some(idle) = (0..corners.len()).find(|&at| is_idle(&corners, at)) {
            corners.remove(idle);
        }
        Polygon::new(corners.into(), Vec::new())
    };
    let has_ground = |ring: &Polygon| ring.unsigned_area() > NO_WIDTH_M;
    let edge = Some(ring(ground.exterior())).filter(has_ground)?;
    let holes = ground.interiors().iter().map(ring).filter(has_ground);
    Some(Polygon::new(edge.exterior().clone(), holes.map(|hole| hole.exterior().clone()).collect()))
}

/// Returns whether the edge comes to a corner and goes back the way it came, or stays where it is.
fn is_idle(corners: &[Coord], at: usize) -> bool {
    let count = corners.len();
    let (before, here, after) = (corners[(at + count - 1) % count], corners[at], corners[(at + 1) % count]);
    let (come, go) = (before - here, after - here);
    let (come_m, go_m) = (come.x.hypot(come.y), go.x.hypot(go.y));
    if come_m < NO_WIDTH_M || go_m < NO_WIDTH_M {
        return true;
    }
    let apart_m = (come.x * go.y - come.y * go.x).abs() / come_m.max(go_m);
    apart_m < NO_WIDTH_M && come.x * go.x + come.y * go.y > 0.0
}

/// A computed place, on the antimeridian itself where the plane cannot tell it from there: a strip of no width beyond would be
/// a piece of its own.
fn on_seam_if_near([longitude, latitude]: [f64; 2]) -> [f64; 2] {
    let near = (longitude.abs() - 180.0).abs() < NO_WIDTH_DEG;
    [if near { 180.0 } else { longitude }, latitude]
}

/// A longitude as it runs on from another, beyond 180 degrees if need be.
fn near(from: f64, longitude: f64) -> f64 {
    longitude - ((longitude - from) / 360.0).round() * 360.0
}

/// The antimeridian (180 or -180) that a longitude lies beyond.
fn seam_beyond(longitude: f64) -> Option<f64> {
    (longitude.abs() > 180.0).then(|| 180.0_f64.copysign(longitude))
}

/// Latitude at which the shortest line between two places on either side of a seam meets it.
fn meets(one: [f64; 2], other: [f64; 2], seam: f64) -> f64 {
    let (from, to) = (Point::from(one), Point::from(other));
    let start = near(seam, one[0]) - seam;
    if is_on_seam(one[0]) {
        return one[1];
    }
    let beyond = |share: f64| {
        let at = Geodesic.point_at_ratio_between(from, to, share);
        (near(seam, at.x()) - seam) * start <= 0.0
    };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if beyond(middle) { high = middle } else { low = middle }
    }
    Geodesic.point_at_ratio_between(from, to, high).y()
}

/// A corner as it runs on from the first one of its polygon, and as it is written.
#[derive(Clone, Copy)]
pub(super) struct Corner {
    pub(super) on: [f64; 2],
    pub(super) written: [f64; 2],
}

/// The same place, whichever sign its longitude is written with.
impl PartialEq for Corner {
    fn eq(&self, other: &Self) -> bool {
        self.on.as_slice() == other.on.as_slice()
    }
}

/// Returns whether a longitude is the antimeridian itself.
fn is_on_seam(longitude: f64) -> bool {
    longitude.abs().total_cmp(&180.0).is_eq()
}

fn cut(polygon: &Polygon) -> Vec<Rings> {
    let Some(first) = polygon.exterior().coords().next() else { return Vec::new() };
    let rings = std::iter::once(polygon.exterior()).chain(polygon.interiors());
    let rings: Vec<Vec<Corner>> = rings.map(|ring| run_on(ring, first.x)).collect();
    if rings[0].len() < 3 {
        return Vec::new();
    }
    let seam = rings.iter().flatten().find_map(|corner| seam_beyond(corner.on[0]));
    let Some(seam) = seam else { return vec![wound(&rings)] };
    let rings: Vec<Vec<Corner>> = rings.iter().map(|ring| with_seam(ring, seam)).collect();
    [false, true].into_iter().flat_map(|beyond| half(&rings, seam, beyond)).collect()
}

/// The corners of a ring, each once.
fn run_on(ring: &LineString, from: f64) -> Vec<Corner> {
    let mut corners: Vec<Corner> = ring
        .coords()
        .map(|place| Corner { on: [near(from, place.x), place.y], written: [place.x, place.y] })
        .collect();
    corners.dedup();
    if corners.len() > 1 && corners.first() == corners.last() {
        corners.pop();
    }
    // Either sign names the antimeridian itself: that of the side it is on is written.
    for corner in corners.iter_mut().filter(|corner| is_on_seam(corner.on[0])) {
        corner.written = corner.on;
    }
    corners
}

/// The ring with a corner wherever it meets the seam.
fn with_seam(ring: &[Corner], seam: f64) -> Vec<Corner> {
    let next = ring.iter().cycle().skip(1);
    ring.iter()
        .zip(next)
        .flat_map(|(one, other)| {
            let crosses = (one.on[0] - seam) * (other.on[0] - seam) < 0.0;
            let met = crosses.then(|| [seam, meets(one.written, other.written, seam)]);
            std::iter::once(*one).chain(met.map(|place| Corner { on: place, written: place }))
        })
        .collect()
}

/// Returns what lies on one side of the seam. The cut moves corners by less than it can tell; they are put back to where they were.
fn half(rings: &[Vec<Corner>], seam: f64, beyond: bool) -> Vec<Rings> {
    let line = |ring: &Vec<Corner>| ring.iter().map(|corner| Coord::from(corner.on)).collect::<LineString>();
    let polygon = Polygon::new(line(&rings[0]), rings[1..].iter().map(line).collect());
    let Some(around) = polygon.bounding_rect() else { return Vec::new() };
    let margin = around.width().max(around.height());
    let outward = margin.copysign(if beyond { seam } else { -seam });
    let window = Rect::new((seam, around.min().y - margin), (seam + 2.0 * outward, around.max().y + margin));
    let back = |place: Coord| {
        let away = |corner: &&Corner| (corner.on[0] - place.x).hypot(corner.on[1] - place.y);
        let here = rings.iter().flatten().filter(|corner| (corner.on[0] - seam) * outward >= 0.0);
        let corner = here.min_by(|one, other| away(one).total_cmp(&away(other)));
        let mut corner = corner.copied().unwrap_or(Corner { on: place.into(), written: place.into() });
        if beyond && is_on_seam(corner.on[0]) {
            corner.written[0] = -seam;
        }
        corner
    };
    let piece = |polygon: &Polygon| {
        let rings = std::iter::once(polygon.exterior()).chain(polygon.interiors());
        let rings = rings.map(|ring| {
            let mut corners: Vec<Corner> = ring.coords().map(|&place| back(place)).collect();
            corners.dedup();
            corners.pop();
            corners
        });
        let rings: Vec<Vec<Corner>> = rings.filter(|ring| ring.len() > 2).collect();
        (!rings.is_empty()).then(|| wound(&rings))
    };
    polygon.intersection(&window.to_polygon()).iter().filter_map(piece).collect()
}

/// Rings closed, the first counter-clockwise, the others clockwise.
pub(super) fn wound(rings: &[Vec<Corner>]) -> Rings {
    let wound = |(index, ring): (usize, &Vec<Corner>)| {
        let [east, north] = ring[0].on;
        // Taken from its first corner, so that no digit is lost on the way from Greenwich.
        let flat: LineString =
            ring.iter().map(|corner| Coord::from((corner.on[0] - east, corner.on[1] - north))).collect();
        let anticlockwise = Polygon::new(flat, Vec::new()).signed_area() > 0.0;
        let mut places: Vec<[f64; 2]> = ring.iter().map(|corner| corner.written).collect();
        if anticlockwise != (index == 0) {
            places[1..].reverse();
        }
        places.push(places[0]);
        places
    };
    rings.iter().enumerate().map(wound).collect()
}
