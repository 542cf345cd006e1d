//! The numbers of all cells: one list, the only place where a number meets a name.
//!
//! A number once released is never given another meaning and never reused; a field of a record that is
//! dropped leaves its number empty for ever. New fields take the next free number of their hundred.

use super::kept::kept;
use crate::record::{
    AfterDig, BuriedLine, Field, Layer, Machine, Part, Pass, Person, Photo, Pit, Roll, Signs, Step,
};
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
    /// Another field that is the same field, in the eyes of whoever said so. The index `same` knows this number.
    pub const SAME_AS: Self = Self(6);
    /// The name of a field.
    pub const FIELD_NAME: Self = Self(100);
    /// The hash of a photo.
    pub const PHOTO_HASH: Self = Self(600);
    /// The name of a machine.
    pub(super) const MACHINE_NAME: Self = Self(800);
    /// The machine of a pass.
    pub(super) const PASS_MACHINE: Self = Self(900);
    /// The pit that was dug where an after-dig is, before the pass.
    pub(super) const AFTER_DIG_BEFORE: Self = Self(1003);

    /// Lower end of a step of the knife walk.
    pub(super) const STEP_TO: Self = Self(300);
    /// Top and bottom of a layer.
    pub(super) const LAYER_DEPTHS: [Self; 2] = [Self(400), Self(401)];
    /// Depth of a roll test, and of what a photo shows.
    pub(super) const ROLL_DEPTH: Self = Self(500);
    /// See [`Self::ROLL_DEPTH`].
    pub(super) const PHOTO_DEPTH: Self = Self(604);
    /// The name of a marked part.
    pub(super) const PART_NAME: Self = Self(1100);
    /// The name of a person.
    pub(super) const PERSON_NAME: Self = Self(700);

    /// The cell of a number, also of one that this version does not know.
    pub(crate) const fn from_number(number: u16) -> Self {
        Self(number)
    }

    /// The cell of a number; `None` if this version does not know it.
    pub fn known(number: u16) -> Option<Self> {
        Some(Self(number)).filter(|cell| cell.name().is_some())
    }

    /// The number under which it stands in the store.
    pub fn number(self) -> u16 {
        self.0
    }

    /// Returns whether a record is shown without it where this version cannot read it: what is noted of a field, for nothing of it is
    /// shown without the field, and keys that nobody knows.
    pub(super) fn is_shown_without(self) -> bool {
        matches!(self, Self::UNKNOWN_KEYS | Self::NOTES_UNKNOWN_KEYS) || matches!(self.0, 100..200)
    }

    /// Returns whether it tells something of the record, and not what it is and where it hangs.
    pub(super) fn is_said(self) -> bool {
        !matches!(self, Self::KIND | Self::PARENT | Self::DELETED | Self::SAME_AS)
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
        6 same_as,
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
        130 services_clearance_mm,
        131 services_asked,
        132 services_asked_on,
        133 services_leave,
        134 last_rain,
        140 tillage_mm,
        141 stony,
        142 plates_soft,
        143 next_crop,
        144 next_sown,
        145 slope_percent,
        150 controlled_traffic,
        160 remark,
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
        207 remark,
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
        403 remark,
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
    /// A roll test, in a pit or of the day of a pass.
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
        605 marks,
    }
    /// A person, at the top.
    Person "person" = 7 {
        700 name,
        701 left_handed,
    }
    /// A machine as it is set, in a field.
    Machine "machine" = 8 {
        800 name,
        801 legs,
        802 spacing_mm,
        803 foot_width_mm,
        804 wings,
        805 leading,
        806 working_width_mm,
        807 speed,
        808 reach_mm,
        809 tractor,
        810 tractor_mass_kg,
    }
    /// A pass, in a field.
    Pass "pass" = 9 {
        900 machine,
        901 zone,
        902 extent,
        903 done,
        904 tip_mm,
        905 speed_kmh,
        906 driven_on,
        907 remark,
        children: rolls, after_digs,
    }
    /// A hole dug behind a machine, in a pass.
    AfterDig "after_dig" = 10 {
        1000 at,
        1001 dug,
        1002 by,
        1003 before,
        1004 firm_mm,
        1005 slots_mm,
        1006 profile,
        1007 smear,
        1008 lift,
        1009 clods,
        1010 subsoil_up,
        1011 plates,
        1012 feet,
        1013 old_slots,
        1014 roots,
    }
    /// A gateway or patch as marked, in a field.
    Part "part" = 11 {
        1100 name,
        1101 zone,
        1102 shape,
    }
    /// A line of drains or services as marked, in a field.
    BuriedLine "line" = 12 {
        1200 kind,
        1201 along,
        1202 depth_mm,
        1203 sort,
    }
}
