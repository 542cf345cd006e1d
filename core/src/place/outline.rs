//! The outline of a field: what makes it valid, its area, its headland strip.

use super::Plane;
use geo::{Area, Buffer, Centroid, GeodesicArea, LineString, MapCoords, Polygon};
use std::fmt;

/// Largest field believed; a larger ring has a wrong point in it. Our judgement.
const LARGEST_FIELD_M2: f64 = 50_000_000.0;

/// A ring of at least three places that does not cross itself.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    ring: Polygon,
}

/// What is wrong with an outline. Points count from 0 as given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OutlineFault {
    /// Fewer than three different points.
    TooFew {
        /// How many there are.
        points: usize,
    },
    /// A point is not on the globe though its numbers swapped would be.
    Swapped {
        /// Place of the point.
        point: usize,
    },
    /// A point is not on the globe.
    OffTheGlobe {
        /// Place of the point.
        point: usize,
    },
    /// Two sides cross.
    Crosses {
        /// First point of one side.
        side: usize,
        /// First point of the other.
        other: usize,
    },
    /// The ring holds more ground than any field.
    TooLarge {
        /// Area in hectares.
        area_ha: f64,
    },
}

impl OutlineFault {
    /// Returns what is wrong.
    pub fn wrong(&self) -> String {
        match *self {
            Self::TooFew { points: 1 } => "1 point encloses no field".into(),
            Self::TooFew { points } => format!("{points} different points enclose no field"),
            Self::Swapped { point } | Self::OffTheGlobe { point } => {
                format!("point {point} is not on the globe")
            }
            Self::Crosses { side, other } => {
                format!("the side from point {side} crosses the side from point {other}")
            }
            Self::TooLarge { area_ha } => format!("the outline holds {area_ha:.0} ha, more than any field"),
        }
    }

    /// Returns what to do about it.
    pub const fn todo(&self) -> &'static str {
        match self {
            Self::TooFew { .. } => "give at least three in walking order, or leave the outline out",
            Self::Swapped { .. } => "give longitude first, then latitude",
            Self::OffTheGlobe { .. } => "longitude goes from -180 to 180, latitude from -90 to 90",
            Self::Crosses { .. } => "give the points in walking order",
            Self::TooLarge { .. } => "one of its points lies far off: mend it",
        }
    }
}

impl fmt::Display for OutlineFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}", self.wrong(), self.todo())
    }
}

impl std::error::Error for OutlineFault {}

impl Outline {
    /// From `[longitude, latitude]` in degrees, in walking order either way round, open or closed.
    ///
    /// # Errors
    /// The first thing wrong with it.
    pub fn new(points: &[[f64; 2]]) -> Result<Self, OutlineFault> {
        for (point, &[longitude, latitude]) in points.iter().enumerate() {
            let on_globe = |longitude: f64, latitude: f64| longitude.abs() <= 180.0 && latitude.abs() <= 90.0;
            if !on_globe(longitude, latitude) {
                return Err(if on_globe(latitude, longitude) {
                    OutlineFault::Swapped { point }
                } else {
                    OutlineFault::OffTheGlobe { point }
                });
            }
        }
        let mut open = points.to_vec();
        open.dedup();
        if open.len() > 1 && open.first() == open.last() {
            open.pop();
        }
        let mut different = open.clone();
        crate::order::sort_by(&mut different, |one, other| {
            one[0].total_cmp(&other[0]).then(one[1].total_cmp(&other[1]))
        });
        different.dedup();
        if different.len() < 3 {
            return Err(OutlineFault::TooFew { points: different.len() });
        }
        if let Some((side, other)) = crossing(&unrolled(&open)) {
            return Err(OutlineFault::Crosses { side, other });
        }
        let ring = Polygon::new(LineString::from(open), Vec::new());
        let outline = Self { ring };
        if outline.area_m2() > LARGEST_FIELD_M2 {
            return Err(OutlineFault::TooLarge { area_ha: outline.area_m2() / 10_000.0 });
        }
        Ok(outline)
    }

    /// Area on the WGS 84 ellipsoid in square metres.
    pub fn area_m2(&self) -> f64 {
        self.ring.geodesic_area_signed().abs()
    }

    /// The plane that touches in its middle.
    pub(super) fn plane(&self) -> Option<Plane> {
        // The middle is taken on a plane, so that a field across the antimeridian has one as well.
        let near = Plane::at((*self.ring.exterior().coords().next()?).into());
        self.flat(near).centroid().map(|middle| Plane::at(near.place(middle.into())))
    }

    /// The ring on a plane.
    pub(super) fn flat(&self, plane: Plane) -> Polygon {
        self.ring.map_coords(|place| plane.flat(place.into()).into())
    }

    /// Area of the strip of a width along the inside of the outline, in square metres; the whole area where the
    /// strip meets itself everywhere.
    pub fn headland_m2(&self, width_mm: u32) -> f64 {
        let Some(plane) = self.plane() else { return 0.0 };
        let flat = self.flat(plane);
        let whole = flat.unsigned_area();
        let inner = flat.buffer(-f64::from(width_mm) / 1000.0).unsigned_area();
        // The share is taken in the plane, the area on the ellipsoid: the projection's error falls out.
        self.area_m2() * (1.0 - inner / whole)
    }
}

/// The ring with longitudes that run on across the antimeridian.
fn unrolled(ring: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let start = ring[0][0];
    let near = |longitude: f64| longitude - ((longitude - start) / 360.0).round() * 360.0;
    ring.iter().map(|&[longitude, latitude]| [near(longitude), latitude]).collect()
}

/// The first two sides that cross or touch beyond the corner they share.
fn crossing(ring: &[[f64; 2]]) -> Option<(usize, usize)> {
    let count = ring.len();
    let side = |at: usize| (ring[at], ring[(at + 1) % count]);
    (0..count).find_map(|first| {
        (first + 1..count)
            .filter(|other| {
                let neighbours = *other == first + 1 || (first == 0 && *other == count - 1);
                !neighbours && crosses(side(first), side(*other))
            })
            .map(|other| (first, other))
            .next()
    })
}

fn crosses((a, b): ([f64; 2], [f64; 2]), (c, d): ([f64; 2], [f64; 2])) -> bool {
    let turn = |p: [f64; 2], q: [f64; 2], r: [f64; 2]| {
        ((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])).total_cmp(&0.0)
    };
    // Most sides lie far apart: that shows at once, and a walked outline has many.
    let apart = |axis: usize| {
        a[axis].max(b[axis]) < c[axis].min(d[axis]) || c[axis].max(d[axis]) < a[axis].min(b[axis])
    };
    !apart(0) && !apart(1) && turn(a, b, c) != turn(a, b, d) && turn(c, d, a) != turn(c, d, b)
}
