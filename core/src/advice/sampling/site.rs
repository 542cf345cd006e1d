//! Where in a zone the next pit is dug: a clear place far from earlier pits.

use super::next_pit::{At, Ground, ZoneGround};
use crate::place::Plane;
use crate::record::Zone;
use geo::{BoundingRect, Contains, Distance, Euclidean, LineString, Point, Polygon};

/// Most places weighed in one ring for one pit.
const CANDIDATES: f64 = 2_500.0;
/// A place in the headland keeps this share of its width from both sides.
const STRIP_MARGIN: f64 = 0.2;

/// Which part of a ring a zone is.
#[derive(Clone, Copy)]
enum Part {
    /// All of it.
    Ring,
    /// What lies further than this from its edge.
    Inside(f64),
    /// What lies within this of its edge.
    Strip(f64),
}

impl Part {
    /// How well inside a place at this distance from the edge is; `None` outside the part. In a strip every place
    /// is near an edge, so there nearness to it says nothing.
    fn room_m(self, edge_m: f64) -> Option<f64> {
        let room = match self {
            Self::Ring => edge_m,
            Self::Inside(width) => edge_m - width,
            Self::Strip(width) => {
                let between = width * STRIP_MARGIN..=width * (1.0 - STRIP_MARGIN);
                return between.contains(&edge_m).then_some(f64::INFINITY);
            }
        };
        (room > 0.0).then_some(room)
    }
}

/// The clear place of a zone farthest from every pit, and half as far from the zone's edge; of equal ones the most
/// southerly, then the most westerly, in the first of its rings.
pub(in crate::advice) fn place_in(zone: &ZoneGround, ground: &Ground) -> At {
    let width_m = ground.headland_mm.map_or(0.0, |width| f64::from(width) / 1000.0);
    let marked = zone.rings.iter().any(|ring| is_ring(ring));
    let part = match zone.zone {
        _ if marked => Part::Ring,
        Zone::Open | Zone::Wheelings => Part::Inside(width_m),
        Zone::Headland if width_m > 0.0 => Part::Strip(width_m),
        Zone::Whole => Part::Ring,
        Zone::Headland | Zone::Gateway | Zone::Patch => return At::ByEye,
    };
    let rings = if marked { zone.rings.as_slice() } else { std::slice::from_ref(&ground.outline) };
    let Some(&corner) = rings.iter().find(|ring| is_ring(ring)).and_then(|ring| ring.first()) else {
        return At::ByEye;
    };

    let plane = Plane::at(corner);
    let flat = |places: &[[f64; 2]]| -> LineString {
        places.iter().map(|&place| plane.flat(place)).collect::<Vec<_>>().into()
    };
    let polygon = |ring: &Vec<[f64; 2]>| is_ring(ring).then(|| Polygon::new(flat(ring), Vec::new()));
    let taken: Vec<Polygon> =
        before(zone.zone, ground).flat_map(|its| &its.rings).filter_map(polygon).collect();
    let outline = polygon(&ground.outline).filter(|_| marked);
    let dug: Vec<Point> = ground.dug.iter().map(|&place| plane.flat(place).into()).collect();
    let buried: Vec<LineString> = ground.buried.iter().map(|line| flat(line)).collect();
    let clear = |place: Point| {
        buried.iter().all(|line| match line.0.as_slice() {
            [] => true,
            [only] => Euclidean.distance(place, Point::from(*only)) > ground.clearance_m,
            _ => Euclidean.distance(&place, line) > ground.clearance_m,
        })
    };

    let mut best: Option<(f64, Point)> = None;
    for ring in rings.iter().filter_map(polygon) {
        for place in lattice(&ring) {
            if !ring.contains(&place) || outline.as_ref().is_some_and(|outline| !outline.contains(&place)) {
                continue;
            }
            let Some(room_m) = part.room_m(Euclidean.distance(&place, ring.exterior())) else { continue };
            // None inside a part of another zone, for there it would stand for that zone.
            let room_m = taken.iter().map(|its| Euclidean.distance(&place, its)).fold(room_m, f64::min);
            let nearest_m =
                dug.iter().map(|&pit| Euclidean.distance(place, pit)).fold(f64::INFINITY, f64::min);
            let far_m = nearest_m.min(2.0 * room_m);
            if room_m > 0.0 && best.is_none_or(|(most, _)| far_m > most) && clear(place) {
                best = Some((far_m, place));
            }
        }
    }
    best.map_or(At::NowhereClear, |(_, place)| At::Place(plane.place(place.into())))
}

fn is_ring(places: &[[f64; 2]]) -> bool {
    places.len() >= 3
}

/// The marked zones that come before this one where they overlap it.
fn before(zone: Zone, ground: &Ground) -> impl Iterator<Item = &ZoneGround> {
    ground.zones.iter().filter(move |its| match its.zone {
        Zone::Gateway => zone != Zone::Gateway,
        Zone::Patch => !matches!(zone, Zone::Gateway | Zone::Patch),
        _ => false,
    })
}

/// Places in even rows over the box around a ring, from south to north, in each row from west to east.
fn lattice(field: &Polygon) -> impl Iterator<Item = Point> {
    let around = field.bounding_rect();
    let (origin, wide, high) =
        around.map_or((geo::Coord { x: 0.0, y: 0.0 }, 0.0, 0.0), |it| (it.min(), it.width(), it.height()));
    let step = (wide * high / CANDIDATES).sqrt().max(0.1);
    let count = move |length: f64| (length / step).ceil() as u32;
    let at = move |index: u32| (f64::from(index) + 0.5) * step;
    (0..count(high)).flat_map(move |row| {
        (0..count(wide)).map(move |column| Point::new(origin.x + at(column), origin.y + at(row)))
    })
}
