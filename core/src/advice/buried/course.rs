//! Where a line of what lies buried runs: through which zones, how near to them, how far from pits.

use crate::place::{FieldMap, Plane};
use crate::record::{BuriedLine, Pit, Position, Zone};
use geo::{Distance, Euclidean, LineString, Point};

/// Steps in which a line is followed to see through which zones it runs, metres. Our judgement: narrower than a headland.
const FOLLOWED_M: f64 = 4.0;

/// Returns whether a line runs through a zone; where the map cannot tell, it does.
pub fn runs_through(line: &BuriedLine, map: &FieldMap, zone: Zone) -> bool {
    if zone == Zone::Whole || !map.has_outline() {
        return true;
    }
    let Some(plane) = map.plane() else { return true };
    // Wheelings run through all of the open ground.
    let asked = if zone == Zone::Wheelings { Zone::Open } else { zone };
    let lies = |at: [f64; 2]| {
        let [longitude_deg, latitude_deg] = plane.place(at);
        map.locate(&Position { longitude_deg, latitude_deg, accuracy_m: Some(0.0) }).zone == Some(asked)
    };
    let flat: Vec<[f64; 2]> = line.along.iter().map(|&place| plane.flat(place)).collect();
    let between = |ends: &[[f64; 2]]| {
        let ([from, to], steps) = ([ends[0], ends[1]], steps_of(ends));
        (0..=steps).any(|step| {
            let share = f64::from(step) / f64::from(steps);
            lies([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share])
        })
    };
    flat.first().is_some_and(|&first| lies(first)) || flat.windows(2).any(between)
}

/// Steps along a straight piece; at most a thousand, however far away its end was marked.
fn steps_of(ends: &[[f64; 2]]) -> u32 {
    let long_m = (ends[1][0] - ends[0][0]).hypot(ends[1][1] - ends[0][1]);
    (long_m / FOLLOWED_M).ceil().clamp(1.0, 1_000.0) as u32
}

/// Returns whether a line runs within some metres of a zone; where the map cannot tell, it does. Headland, wheelings and open
/// ground are taken together, as the field: a line that runs through one of them does not end there.
pub fn runs_within(line: &BuriedLine, map: &FieldMap, zone: Zone, within_m: u32) -> bool {
    map.away_m(zone, &line.along).is_none_or(|away_m| away_m <= f64::from(within_m))
}

/// Metres from the nearest of some pits to a line.
pub fn nearest_m(line: &BuriedLine, pits: &[&Pit]) -> Option<u32> {
    let places = pits.iter().filter_map(|pit| pit.at).map(|at| [at.longitude_deg, at.latitude_deg]);
    let away = places.filter_map(|place| {
        let plane = Plane::at(place);
        let flat: LineString = line.along.iter().map(|&at| plane.flat(at)).collect::<Vec<_>>().into();
        match flat.0.as_slice() {
            [] => None,
            [only] => Some(only.x.hypot(only.y)),
            _ => Some(Euclidean.distance(&Point::new(0.0, 0.0), &flat)),
        }
    });
    away.min_by(f64::total_cmp).map(|metres| metres.round() as u32)
}
