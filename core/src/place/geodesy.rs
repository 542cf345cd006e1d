//! Distance and bearing to walk.

use geo::{Bearing, Distance, Geodesic, Point};

/// Way from one place to another along the shortest line on the WGS 84 ellipsoid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Walk {
    /// Length in metres.
    pub distance_m: f64,
    /// Direction at the start, degrees clockwise from true north, 0 to below 360; 0 where the places are one.
    pub bearing_deg: f64,
}

/// The way between two `[longitude, latitude]` in degrees.
pub fn walk(from: [f64; 2], to: [f64; 2]) -> Walk {
    let (from, to) = (Point::from(from), Point::from(to));
    let distance_m = Geodesic.distance(from, to);
    let bearing_deg = if distance_m == 0.0 { 0.0 } else { Geodesic.bearing(from, to).rem_euclid(360.0) };
    Walk { distance_m, bearing_deg }
}
