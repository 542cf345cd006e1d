//! A plane that touches the ground at one place, for work within one field.

use geo::{Destination, Geodesic, GeodesicBearing, Point};

/// Metres east and north of a middle: distance and bearing from it are kept (azimuthal equidistant).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plane {
    middle: Point,
}

impl Plane {
    /// The plane that touches at `middle`, `[longitude, latitude]` in degrees.
    pub fn at(middle: [f64; 2]) -> Self {
        Self { middle: Point::from(middle) }
    }

    /// A place, `[longitude, latitude]` in degrees, as `[east, north]` in metres.
    pub fn flat(&self, place: [f64; 2]) -> [f64; 2] {
        let (bearing, distance_m) = self.middle.geodesic_bearing_distance(Point::from(place));
        let bearing = bearing.to_radians();
        [distance_m * bearing.sin(), distance_m * bearing.cos()]
    }

    /// The place, `[longitude, latitude]` in degrees, of `[east, north]` in metres.
    pub fn place(&self, [east_m, north_m]: [f64; 2]) -> [f64; 2] {
        let bearing = east_m.atan2(north_m).to_degrees();
        Geodesic.destination(self.middle, bearing, east_m.hypot(north_m)).into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back_is_the_same_place() {
        let plane = Plane::at([2.5, 54.5]);
        for flat in [[0.0, 0.0], [300.0, -400.0], [-1200.0, 35.0]] {
            let back = plane.flat(plane.place(flat));
            assert!((back[0] - flat[0]).hypot(back[1] - flat[1]) < 1e-6, "{flat:?} {back:?}");
        }
    }
}
