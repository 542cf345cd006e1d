//! A shape in the bytes of a GeoPackage: its header (clause 2.1.3), then well-known binary, everything little-endian,
//! longitude before latitude.

use crate::tables::Shape;

/// Least and most longitude, least and most latitude, in degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent(pub [f64; 4]);

impl Extent {
    /// That of both together.
    pub fn with(self, other: Self) -> Self {
        let ([west, east, south, north], further) = (self.0, other.0);
        Self([west.min(further[0]), east.max(further[1]), south.min(further[2]), north.max(further[3])])
    }
}

/// Codes of the kinds of geometry (OGC 06-103r4, table 7).
const POINT: u32 = 1;
const LINE: u32 = 2;
const POLYGON: u32 = 3;
const MANY_LINES: u32 = 5;
const MANY_POLYGONS: u32 = 6;

/// Flags of the header: little-endian; with an extent before the geometry.
const LITTLE_ENDIAN: u8 = 1;
const WITH_EXTENT: u8 = 1 << 1;

/// The extent of a shape.
pub fn extent(shape: &Shape) -> Option<Extent> {
    let of = |places: &[[f64; 2]]| {
        places.iter().map(|&[east, north]| Extent([east, east, north, north])).reduce(Extent::with)
    };
    match shape {
        Shape::Point(place) => of(&[*place]),
        Shape::Line(pieces) => pieces.iter().filter_map(|piece| of(piece)).reduce(Extent::with),
        Shape::Ground(pieces) => pieces.iter().flatten().filter_map(|ring| of(ring)).reduce(Extent::with),
    }
}

/// The shape as a blob; a place has no extent before it, it would say the same.
pub fn blob(shape: &Shape, reference: i32) -> Vec<u8> {
    let around = extent(shape).filter(|_| !matches!(shape, Shape::Point(_)));
    let flags = LITTLE_ENDIAN | if around.is_some() { WITH_EXTENT } else { 0 };
    let mut bytes = vec![b'G', b'P', 0, flags];
    bytes.extend(reference.to_le_bytes());
    for degrees in around.iter().flat_map(|around| around.0) {
        bytes.extend(degrees.to_le_bytes());
    }
    match shape {
        Shape::Point(place) => {
            begin(POINT, &mut bytes);
            put(*place, &mut bytes);
        }
        Shape::Line(pieces) => {
            begin(MANY_LINES, &mut bytes);
            count(pieces.len(), &mut bytes);
            for piece in pieces {
                begin(LINE, &mut bytes);
                places(piece, &mut bytes);
            }
        }
        Shape::Ground(pieces) => {
            begin(MANY_POLYGONS, &mut bytes);
            count(pieces.len(), &mut bytes);
            for rings in pieces {
                begin(POLYGON, &mut bytes);
                count(rings.len(), &mut bytes);
                for ring in rings {
                    places(ring, &mut bytes);
                }
            }
        }
    }
    bytes
}

fn begin(kind: u32, bytes: &mut Vec<u8>) {
    bytes.push(LITTLE_ENDIAN);
    bytes.extend(kind.to_le_bytes());
}

fn count(count: usize, bytes: &mut Vec<u8>) {
    bytes.extend(u32::try_from(count).unwrap_or(u32::MAX).to_le_bytes());
}

fn places(places: &[[f64; 2]], bytes: &mut Vec<u8>) {
    count(places.len(), bytes);
    for place in places {
        put(*place, bytes);
    }
}

fn put([longitude, latitude]: [f64; 2], bytes: &mut Vec<u8>) {
    bytes.extend(longitude.to_le_bytes());
    bytes.extend(latitude.to_le_bytes());
}
