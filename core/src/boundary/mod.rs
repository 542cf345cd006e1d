//! Outlines and lines in files of other programs: bytes and a file's name in; rings and lines of WGS 84 positions out, each with
//! its name and size to choose from, or one fault that says what is wrong and guesses why.
//!
//! Pure. A file is known by how it begins; its name only tells apart what begins alike. Every count in a file is believed only as
//! far as the bytes behind it go, so that none makes this room ask for more memory than a few times the file.
//!
//! | module | what |
//! |---|---|
//! | `gathered` | how polygons and lines of any file become areas and lines |
//! | `geojson`, `kml`, `gpx`, `shapefile` with `dbase`, `wkb` | a format each |
//! | `archive` | zipped files, with limits |
//! | `system`, `wkt`, `mercator` | from the coordinates of a file to WGS 84 |
//! | `trouble` | which kind of trouble a file is, for a phone |
//! | `fits` | whether what was found lies where the field is, and which mix-up would bring it there |

mod archive;
mod dbase;
mod fits;
mod gathered;
mod geojson;
mod gpx;
mod kml;
mod mercator;
mod named;
mod shapefile;
mod system;
mod trouble;
mod wkb;
mod wkt;
mod xml;

pub use fits::{Misplaced, away_m, lies_swapped, misplaced, places_of};
pub(crate) use gathered::Gathered;
pub(crate) use named::of as name_of;
pub use system::{Metres, System};
pub use trouble::{Trouble, begins};
pub(crate) use wkb::geopackage_shape;
pub(crate) use wkt::system as system_of_text;

use crate::error::Fault;
use crate::place::{Outline, OutlineFault};
use crate::record::codes::codes;

/// The largest file that is read, and the most that a zipped one may hold. Our judgement: a county's fields are smaller.
pub const LARGEST_BYTES: usize = 16 << 20;
/// The most places of one ring: comparing every side with every other takes half a second then. Our judgement.
pub const MOST_CORNERS: usize = 20_000;

codes!(
    /// A kind of file.
    Format {
        /// GeoJSON (RFC 7946), and the older form with a reference system.
        GeoJson = "geojson",
        Kml = "kml",
        /// A zipped KML.
        Kmz = "kmz",
        Gpx = "gpx",
        /// A zipped shapefile.
        Shapefile = "shapefile",
        GeoPackage = "geopackage",
    }
);

/// What a file holds.
#[derive(Debug, Clone, PartialEq)]
pub struct FromFile {
    /// Its kind.
    pub format: Format,
    /// The system its coordinates were in; several layers of a file may differ, then that of the last.
    pub system: System,
    /// Whether the file said so; else degrees were taken for WGS 84.
    pub system_stated: bool,
    /// Its areas, in the order of the file; each polygon of several in one record is one.
    pub areas: Vec<Area>,
    /// Its lines.
    pub lines: Vec<Course>,
    /// How many single points there were, which mark no ground and are left out.
    pub points: usize,
}

/// An area.
#[derive(Debug, Clone, PartialEq)]
pub struct Area {
    /// What the file calls it.
    pub name: Option<String>,
    /// Where a record has several polygons: which one this is, from 1, and of how many.
    pub part: Option<(usize, usize)>,
    /// Its ring of `[longitude, latitude]` in degrees, without the closing repeat, at least three places.
    pub ring: Vec<[f64; 2]>,
    /// Area within the ring, holes in it counted, m² on the ellipsoid.
    pub area_m2: f64,
    /// The holes in it, which an outline does not have: how many, and their area.
    pub holes: usize,
    /// Area of the holes, m².
    pub holes_m2: f64,
    /// Whether it is a line that runs round and comes back, such as the track of a walk.
    pub from_line: bool,
}

/// A line.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// What the file calls it.
    pub name: Option<String>,
    /// Its places, at least two.
    pub along: Vec<[f64; 2]>,
    /// Its length in metres.
    pub length_m: f64,
}

impl Area {
    /// Returns whether its ring is an outline that a field can have.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn outline(&self) -> Result<Outline, OutlineFault> {
        Outline::new(&self.ring)
    }
}

/// How SQLite's files begin (sqlite.org/fileformat2.html, 1.3): a GeoPackage, which is read in `store`.
const SQLITE: &[u8] = b"SQLite format 3\0";
/// How zipped files begin.
const ZIPPED: &[u8] = b"PK";
/// How a shapefile begins that is not zipped (ESRI Shapefile Technical Description, July 1998, table 1).
const SHAPES: &[u8] = &[0, 0, 0x27, 0x0a];

/// Endings of the files beside a shapefile, which are nothing alone.
const BESIDE_SHAPES: [&str; 4] = ["dbf", "prj", "shx", "cpg"];
const ZIP_TOGETHER: &str = "zip the .shp, .dbf and .prj of one name together, and give the zipped file";

/// Returns whether bytes begin as a GeoPackage does: [`crate::store::read_geopackage`] reads it.
pub fn is_geopackage(bytes: &[u8]) -> bool {
    bytes.starts_with(SQLITE)
}

/// Returns what a file holds. `swapped` takes latitude for longitude and the other way round, where somebody knows that the file has them so.
///
/// # Errors
/// One fault: what is wrong, with a guess, and what to do.
pub fn read(name: &str, bytes: &[u8], swapped: bool) -> Result<FromFile, Fault> {
    if bytes.len() > LARGEST_BYTES {
        return Err(too_large());
    }
    let mut gathered = Gathered::new(swapped);
    let format = if bytes.starts_with(ZIPPED) {
        archive::read(bytes, &mut gathered)?
    } else if bytes.starts_with(SHAPES) {
        return Err(Fault::new("", "this is a part of a shapefile", ZIP_TOGETHER));
    } else if is_geopackage(bytes) {
        return Err(Fault::new("", "this is a GeoPackage, which is read as a file", "name the file itself"));
    } else {
        text(name, &as_text(bytes)?, &mut gathered)?
    };
    gathered.close(format)
}

/// A text by what it begins with.
fn text(name: &str, text: &str, gathered: &mut Gathered) -> Result<Format, Fault> {
    let begins = text.trim_start();
    if begins.starts_with('{') {
        geojson::read(begins, gathered).map(|()| Format::GeoJson)
    } else if begins.starts_with('<') {
        xml::read(begins, gathered)
    } else {
        let ending = name.rsplit_once('.').map(|(_, ending)| ending.to_lowercase()).unwrap_or_default();
        let wrong = "this is none of the kinds of file that are read here";
        let todo = if BESIDE_SHAPES.contains(&ending.as_str()) { ZIP_TOGETHER } else { KINDS };
        Err(Fault::new("", wrong, todo))
    }
}

const KINDS: &str = "give GeoJSON, KML, KMZ, GPX, a zipped shapefile or a GeoPackage";

/// Text in UTF-8, or in UTF-16 with its mark, as some programs for desks write it; without the mark.
fn as_text(bytes: &[u8]) -> Result<String, Fault> {
    let wide = |bytes: &[u8], from: fn([u8; 2]) -> u16| {
        let pairs = bytes.chunks_exact(2).map(|pair| from([pair[0], pair[1]]));
        char::decode_utf16(pairs).collect::<Result<String, _>>().ok()
    };
    let text = match bytes {
        [0xff, 0xfe, rest @ ..] => wide(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => wide(rest, u16::from_be_bytes),
        [0xef, 0xbb, 0xbf, rest @ ..] => String::from_utf8(rest.to_vec()).ok(),
        _ => String::from_utf8(bytes.to_vec()).ok(),
    };
    text.ok_or_else(|| Fault::new("", "this is neither UTF-8 text nor a zipped file", KINDS))
}

fn too_large() -> Fault {
    let wrong = format!("this holds more than {} MiB", LARGEST_BYTES >> 20);
    Fault::new("", wrong, "save only the fields that are wanted into a file of their own")
}
