//! What kind of trouble a file is, for whoever chose it on a phone: a sentence of their language says it instead of the fault.

use super::{BESIDE_SHAPES, LARGEST_BYTES, SHAPES, ZIPPED, as_text, gathered, is_geopackage, system};
use crate::error::Fault;
use crate::record::codes::codes;

/// So much of a text tells whether it is of another program, characters. Our judgement: what a file is stands at its beginning.
const HEAD: usize = 4096;
/// Key that every notes file begins with.
const NOTES_KEY: &str = "\"pitface\"";
/// Keys of which each GeoJSON has one, beside its `type` (RFC 7946, 3).
const GEOJSON_KEYS: [&str; 3] = ["\"features\"", "\"geometry\"", "\"coordinates\""];

codes!(
    /// Why nothing of a file can be taken.
    Trouble {
        /// It is none of the kinds that are read.
        UnknownKind = "unknown_kind",
        /// It is one of the several files of a shapefile.
        PartOfShapefile = "part_of_shapefile",
        /// It holds more than is read.
        TooLarge = "too_large",
        /// It has neither an area nor a line.
        Empty = "empty",
        /// Its coordinates are of a system that is not read.
        OtherSystem = "other_system",
        /// Latitude may stand before longitude in it.
        Swapped = "swapped",
        /// It does not hold to its kind: it is cut off or damaged.
        Damaged = "damaged",
    }
);

/// Returns whether bytes begin as a file with boundaries does, and not as notes: also one that is damaged further on.
pub fn begins(bytes: &[u8]) -> bool {
    if is_geopackage(bytes) || bytes.starts_with(ZIPPED) || bytes.starts_with(SHAPES) {
        return true;
    }
    let Ok(text) = as_text(bytes) else { return false };
    let text = text.trim_start();
    let head: String = text.chars().take(HEAD).collect();
    text.starts_with('<')
        || text.starts_with('{')
            && !head.contains(NOTES_KEY)
            && head.contains("\"type\"")
            && GEOJSON_KEYS.iter().any(|key| head.contains(key))
}

impl Trouble {
    /// The kind of trouble of a file by its name and bytes, and the fault that reading it gave.
    pub fn of(name: &str, bytes: &[u8], fault: &Fault) -> Self {
        let ending = name.rsplit_once('.').map(|(_, ending)| ending.to_lowercase()).unwrap_or_default();
        let known = begins(bytes) || as_text(bytes).is_ok_and(|text| text.trim_start().starts_with('{'));
        if bytes.len() > LARGEST_BYTES {
            Self::TooLarge
        } else if bytes.starts_with(SHAPES) || !known && BESIDE_SHAPES.contains(&ending.as_str()) {
            Self::PartOfShapefile
        } else if !known {
            Self::UnknownKind
        } else if fault.todo == gathered::NOTHING {
            Self::Empty
        } else if fault.todo == system::SWAPPED {
            Self::Swapped
        } else if fault.todo.contains(system::WANTED) {
            Self::OtherSystem
        } else {
            Self::Damaged
        }
    }
}
