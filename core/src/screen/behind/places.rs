//! Where one is among passes and holes: which pass, which question of it, which step of a hole.

use super::super::Place;
use crate::record::codes::codes;
use crate::record::{RecordId, Zone};
use serde::{Deserialize, Serialize};

codes!(
    /// One question about a pass.
    PassDetail {
        Machine = "machine",
        Zone = "zone",
        Extent = "extent",
        Tip = "tip",
        Speed = "speed",
        Day = "day",
        /// Heavy wheels over it since.
        Wheels = "wheels",
        /// The roll test at the depth of the tips.
        Roll = "roll",
    }
);

codes!(
    /// Something to be looked at in a hole, in the order of their list.
    HoleLook {
        Form = "form",
        Smear = "smear",
        Clods = "clods",
        Plates = "plates",
        SubsoilUp = "subsoil_up",
        Lift = "lift",
        OldSlots = "old_slots",
        Feet = "feet",
        /// A season on.
        Roots = "roots",
    }
);

/// A pass, or one that its first answer saves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OfPass {
    /// One that is saved.
    Noted(RecordId),
    /// One that is not.
    New {
        /// Its machine, where that is known.
        machine: Option<RecordId>,
        /// Its zone, likewise.
        zone: Option<Zone>,
    },
}

impl OfPass {
    /// Its screen.
    pub(in crate::screen) const fn place(self, field: RecordId) -> Place {
        match self {
            Self::Noted(pass) => Place::Pass { field, pass: Some(pass) },
            Self::New { machine, zone } => Place::NewPass { field, machine, zone },
        }
    }
}

/// A step in a hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HoleStep {
    /// A depth to firm ground by its number from 0: one that is taken, else the next.
    Reading(u16),
    /// All of them, to put one right.
    Readings,
    /// The bottom of a slot, likewise.
    Slot(u16),
    /// Something seen; `queued` goes on to the next that is worth a look.
    Look {
        /// What.
        look: HoleLook,
        /// One after the other.
        queued: bool,
    },
    /// Everything to be looked at.
    Looks,
}

impl HoleStep {
    /// The place above.
    pub(in crate::screen) const fn above(
        self,
        field: RecordId,
        pass: RecordId,
        dig: Option<RecordId>,
    ) -> Place {
        let Some(dig) = dig else { return Place::Pass { field, pass: Some(pass) } };
        match self {
            Self::Slot(_) | Self::Look { queued: false, .. } => {
                Place::InHole { field, pass, dig: Some(dig), step: Self::Looks, from_mm: None }
            }
            _ => Place::AfterDig { field, pass, dig },
        }
    }
}
