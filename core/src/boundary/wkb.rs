//! Well-known binary (OGC 06-103r4, clause 8, and its ISO form with heights), and the head that a GeoPackage puts before it
//! (OGC 12-128r19, clause 2.1.3).

use super::Gathered;
use crate::error::Fault;

/// Kinds of geometry (OGC 06-103r4, table 7); the thousands say what stands behind x and y.
const POINT: u32 = 1;
const LINE: u32 = 2;
const POLYGON: u32 = 3;
const MANY_POINTS: u32 = 4;
const MANY_LINES: u32 = 5;
const MANY_POLYGONS: u32 = 6;
const COLLECTION: u32 = 7;
const DIMENSIONS: u32 = 1000;
/// Flags of the older form that some databases write: heights, measures, a system of its own.
const HEIGHTS: u32 = 0x8000_0000;
const MEASURES: u32 = 0x4000_0000;
const OWN_SYSTEM: u32 = 0x2000_0000;
/// Collections in collections; nobody draws fields deeper.
const DEEPEST: usize = 8;

/// The head of a GeoPackage's geometry: how it begins, where its flags stand, and its length without an envelope.
const MAGIC: &[u8] = b"GP";
const FLAGS: usize = 3;
const HEAD: usize = 8;
/// Bytes of the envelope by its number in the flags.
const ENVELOPES: [usize; 5] = [0, 32, 48, 48, 64];

/// Bytes that are read from the front.
struct Rest<'a> {
    bytes: &'a [u8],
    little: bool,
}

/// Adds the geometry of a row of a GeoPackage.
///
/// # Errors
/// It is broken, or a place of it is off the globe; `at` is where it stands.
pub(crate) fn geopackage_shape(
    blob: &[u8],
    name: Option<&str>,
    at: &str,
    gathered: &mut Gathered,
) -> Result<(), Fault> {
    let broken = || {
        Fault::new(
            at,
            "the geometry of this row cannot be read",
            "save the GeoPackage anew from the program it comes from",
        )
    };
    let flags = blob.strip_prefix(MAGIC).and_then(|_| blob.get(FLAGS)).ok_or_else(broken)?;
    let envelope = ENVELOPES.get(usize::from(flags >> 1 & 7)).ok_or_else(broken)?;
    let bytes = blob.get(HEAD + envelope..).ok_or_else(broken)?;
    let mut rest = Rest { bytes, little: true };
    let mut found = Found::default();
    rest.geometry(0, &mut found).ok_or_else(broken)?;
    found.lines.iter().try_for_each(|line| gathered.line(name, line, at))?;
    gathered.points(found.points);
    gathered.polygons(name, &found.polygons, at)
}

/// What a geometry holds.
#[derive(Default)]
struct Found {
    polygons: Vec<Vec<Vec<[f64; 2]>>>,
    lines: Vec<Vec<[f64; 2]>>,
    points: usize,
}

impl Rest<'_> {
    fn take<const N: usize>(&mut self) -> Option<[u8; N]> {
        let (first, rest) = self.bytes.split_first_chunk()?;
        self.bytes = rest;
        Some(*first)
    }

    fn number(&mut self) -> Option<u32> {
        let bytes = self.take()?;
        Some(if self.little { u32::from_le_bytes(bytes) } else { u32::from_be_bytes(bytes) })
    }

    fn coordinate(&mut self) -> Option<f64> {
        let bytes = self.take()?;
        Some(if self.little { f64::from_le_bytes(bytes) } else { f64::from_be_bytes(bytes) })
    }

    /// A place of so many numbers, of which the first two count.
    fn place(&mut self, numbers: usize) -> Option<[f64; 2]> {
        let place = [self.coordinate()?, self.coordinate()?];
        for _ in 2..numbers {
            self.coordinate()?;
        }
        Some(place)
    }

    fn line(&mut self, numbers: usize) -> Option<Vec<[f64; 2]>> {
        let count = self.number()? as usize;
        // No more places than there are bytes for.
        (count <= self.bytes.len() / 16).then(|| (0..count).map(|_| self.place(numbers)).collect())?
    }

    fn geometry(&mut self, depth: usize, found: &mut Found) -> Option<()> {
        self.little = match self.take::<1>()? {
            [0] => false,
            [1] => true,
            _ => return None,
        };
        let kind = self.number()?;
        if kind & OWN_SYSTEM != 0 {
            self.number()?;
        }
        let flagged = usize::from(kind & HEIGHTS != 0) + usize::from(kind & MEASURES != 0);
        let kind = kind & !(HEIGHTS | MEASURES | OWN_SYSTEM);
        let numbers = 2 + match kind / DIMENSIONS {
            0 => flagged,
            1 | 2 => 1,
            3 => 2,
            _ => return None,
        };
        match kind % DIMENSIONS {
            POINT => {
                self.place(numbers)?;
                found.points += 1;
            }
            LINE => found.lines.push(self.line(numbers)?),
            POLYGON => {
                let rings = self.number()? as usize;
                let rings: Option<Vec<_>> = (rings <= self.bytes.len() / 4)
                    .then(|| (0..rings).map(|_| self.line(numbers)).collect())?;
                found.polygons.push(rings?);
            }
            MANY_POINTS | MANY_LINES | MANY_POLYGONS | COLLECTION if depth < DEEPEST => {
                for _ in 0..self.number()? {
                    self.geometry(depth + 1, found)?;
                }
            }
            _ => return None,
        }
        Some(())
    }
}
