//! The numbers of all cells: one list, the only place where a number meets a name.
//!
//! A number once released is never given another meaning and never reused; a field of a record that is
//! dropped leaves its number empty for ever. New fields take the next free number of their hundred.

use super::kept::kept;
use crate::record::{Field, Layer, Person, Photo, Pit, Roll, Signs, Step};
use std::fmt;

/// A cell of a record, by its number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Cell(pub(super) u16);

impl Cell {
    /// Which [`Kind`] the record is.
    pub const KIND: Self = Self(1);
    /// Its parent and its rank among the siblings. The index `children` knows this number.
    pub const PARENT: Self = Self(2);
    /// Whether it is deleted.
    pub const DELETED: Self = Self(3);
    /// Keys of it that this version does not know.
    pub const UNKNOWN_KEYS: Self = Self(4);
    /// Keys at the top of a field's notes file that this version does not know.
    pub const NOTES_UNKNOWN_KEYS: Self = Self(5);
    /// The name of a field.
    pub const FIELD_NAME: Self = Self(100);

    /// The number under which it stands in the store.
    pub fn number(self) -> u16 {
        self.0
    }

    /// Its name, e.g. `step.to_mm`; `None` if this version does not know the number.
    pub fn name(self) -> Option<&'static str> {
        Self::ALL.iter().find(|(number, _)| *number == self.0).map(|(_, name)| *name)
    }
}

impl fmt::Display for Cell {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.name() {
            Some(name) => f.write_str(name),
            None => write!(f, "cell {} of a newer version", self.0),
        }
    }
}

kept! {
    common {
        1 kind,
        2 parent,
        3 deleted,
        4 unknown_keys,
        5 notes_unknown_keys,
    }
    /// A field, at the top.
    Field "field" = 1 {
        100 name,
        101 outline,
        102 headland_mm,
        103 tramline_mm,
        104 texture,
        105 organic_matter,
        106 crop_now,
        107 last_crop,
        108 last_loosened,
        109 last_traffic,
        110 drains_mm,
        111 mole_drains_mm,
        112 services_mm,
        113 clearance_mm,
        114 reach_mm,
        115 deep_clay_anyway,
        116 wheel_track_mm,
        117 tyre_mm,
        children: parts, lines,
    }
    /// A pit, in a field.
    Pit "pit" = 2 {
        200 place,
        201 zone,
        202 at,
        203 dug,
        204 by,
        205 dug_to_mm,
        206 face,
        children: walk, layers, rolls, photos,
    }
    /// A step of the knife walk, in a pit.
    Step "step" = 3 {
        300 to_mm,
        301 comes_away,
        302 resistance,
    }
    /// A layer, in a pit.
    Layer "layer" = 4 {
        400 top_mm,
        401 bottom_mm,
        402 texture,
        in signs Signs:
        410 comes_away,
        411 resistance,
        412 pores,
        413 channels,
        414 roots,
        415 patches,
        416 smell,
        417 clod_in_water,
    }
    /// A roll test, in a pit.
    Roll "roll" = 5 {
        500 depth_mm,
        501 roll,
    }
    /// A photo, in a pit.
    Photo "photo" = 6 {
        600 sha256,
        601 size_bytes,
        602 media_type,
        603 taken,
        604 depth_mm,
    }
    /// A person, at the top.
    Person "person" = 7 {
        700 name,
        701 left_handed,
    }
}
