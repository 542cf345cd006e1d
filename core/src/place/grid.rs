//! Ground on places with few decimals, still without sides that cross.

use super::Rings;
use super::globe::{Corner, wound};
use geo::{Area, BooleanOps, Coord, LineString, MapCoords, MultiPolygon, Polygon, Validation};

/// Times that ground is put right at most; it takes one or two.
const ROUNDS: usize = 8;

/// A piece of ground with so many decimals of a degree. Where two sides cross by rounding, their places are put right by
/// as little; what has no ground left is left out. Rings come out closed, edges counter-clockwise.
pub fn on_grid(rings: &Rings, decimals: i32) -> Vec<Rings> {
    let scale = 10_f64.powi(decimals);
    let Some(first) = rings.first().and_then(|edge| edge.first()) else { return Vec::new() };
    // In whole numbers counted from one corner, so that nothing is lost on the way.
    let origin = first.map(|degrees| (degrees * scale).round());
    let whole = |ring: &Vec<[f64; 2]>| {
        let places = ring.iter().map(|place| {
            Coord::from(((place[0] * scale).round() - origin[0], (place[1] * scale).round() - origin[1]))
        });
        places.collect::<LineString>()
    };
    let polygon = Polygon::new(whole(&rings[0]), rings[1..].iter().map(whole).collect());
    let mut pieces: Vec<Polygon> = apart(&polygon).into_iter().collect();
    for _ in 0..ROUNDS {
        if pieces.iter().all(Validation::is_valid) {
            break;
        }
        // Inside is what an odd number of sides lies around: which way round a ring runs is not sure where its sides cross.
        let ground = MultiPolygon::new(pieces).union(&MultiPolygon::new(Vec::new()));
        let right = ground.map_coords(|place| (place.x.round(), place.y.round()).into());
        pieces = right.iter().filter_map(apart).collect();
    }
    let written = |places: &LineString| {
        let corner = |place: &Coord| Corner {
            on: [place.x, place.y],
            // Plus zero: a place just west of Greenwich is not `-0.0`.
            written: [(place.x + origin[0]) / scale + 0.0, (place.y + origin[1]) / scale + 0.0],
        };
        places.coords().skip(1).map(corner).collect::<Vec<Corner>>()
    };
    let rings_of = |piece: &Polygon| -> Rings {
        let rings = std::iter::once(piece.exterior()).chain(piece.interiors());
        wound(&rings.map(written).collect::<Vec<_>>())
    };
    pieces.iter().map(rings_of).collect()
}

/// The ground with neighbours that have become one place written once; `None` where none is left.
fn apart(ground: &Polygon) -> Option<Polygon> {
    let ring = |ring: &LineString| {
        let mut places: Vec<Coord> = ring.coords().copied().collect();
        places.dedup();
        Polygon::new(places.into(), Vec::new())
    };
    let has_ground = |ring: &Polygon| ring.exterior().0.len() > 3 && ring.unsigned_area() > 0.0;
    let edge = Some(ring(ground.exterior())).filter(has_ground)?;
    let holes = ground.interiors().iter().map(ring).filter(has_ground);
    Some(Polygon::new(edge.exterior().clone(), holes.map(|hole| hole.exterior().clone()).collect()))
}
