//! What is noted in the field: plain data, no judgement.
//!
//! Every field that may be absent is an `Option`: absent means *not looked*, which is never the
//! same as "none". Lengths are whole millimetres below the surface, positions WGS 84, times UTC with
//! the local offset. Keys this version does not know are kept in `unknown` and written back.

pub(crate) mod codes;
pub mod depth;
mod field;
mod ground;
mod id;
pub mod ids;
mod machine;
pub mod notes;
mod pass;
mod pit;
pub mod remark;
mod signs;

pub use codes::{
    Call, Cause, ChannelsSeen, ClodInWater, ComesAway, Condition, FaceMoisture, OrganicMatterLevel, Patches,
    PlaceKind, PoresSeen, Resistance, RollOutcome, RootsSeen, Smell, Zone,
};
pub use field::{Field, FieldNotes, OrganicMatter, TextureNote};
pub use ground::{Buried, BuriedLine, LineSort, Part, PartShape};
pub use id::RecordId;
pub use machine::{Drive, Foot, LeadingTines, Machine, SpeedRange, Tractor, Wings};
pub use pass::{AfterDig, Clods, Extent, FeetSeen, Lift, Pass, PlatesLeft, Profile, Smear};
pub use pit::{Layer, Person, Photo, PhotoMark, Pit, Position, Roll, Step};
pub use signs::{Sign, Signs};

/// Keys and values of a newer or foreign program, kept as they came.
pub type Unknown = serde_json::Map<String, serde_json::Value>;
