//! The closed lists that have a word for each value.

use super::{
    Caption, Detail, DetailText, FaceText, FieldText, Heading, Language, NotSaved, PageText, PartnerText,
    PitText, WorkText,
};
use crate::advice::after_dig::{
    Across, Check, FailureCause, Lasting, NextStep, PairBy, PassClue, Remedy, Verdict,
};
use crate::advice::machine::{
    CriticalPlace, CriticalShift, FuelFormula, Measure, SpacingFit, TractorFit, WhyNot,
};
use crate::advice::sampling::Settled;
use crate::advice::{BearsOn, Caution, FieldInput, FollowUp, Lacks, Obstacle, Sureness};
use crate::place::Compass;
use crate::reading::{Below, Clue, Lies, Versus};
use crate::record::{
    Buried, Call, Cause, ChannelsSeen, ClodInWater, Clods, ComesAway, Condition, Drive, Extent, FaceMoisture,
    FeetSeen, Lift, LineSort, OrganicMatterLevel, Patches, PlaceKind, PlatesLeft, PoresSeen, Profile,
    Resistance, RollOutcome, RootsSeen, Smear, Smell, Zone,
};
use crate::screen::field::listed::Work;
use crate::soil::density::{PackingFormula, ParticleSize};
use crate::soil::resistance::LooseningNeed;
use crate::soil::texture::{TextureClass, TextureGroup, TextureScheme};

/// A value of a closed list that has a word.
pub trait Listed: Copy {
    /// Name of the list in message ids. A list that answers a [`Clue`] goes by that clue's code.
    const LIST: &'static str;

    /// Code of the value.
    fn code(self) -> &'static str;

    /// Id of its message.
    fn id(self) -> String {
        format!("{}-{}", Self::LIST, self.code())
    }
}

macro_rules! listed {
    ($($list:ident = $name:literal,)+) => {
        $(impl Listed for $list {
            const LIST: &'static str = $name;
            fn code(self) -> &'static str {
                Self::code(self)
            }
        })+

        /// Every list that has words: its name in message ids, and its codes.
        pub const LISTS: &[(&str, &[&str])] = &[$(($name, $list::CODES),)+];
    };
}

listed! {
    Across = "across",
    BearsOn = "bears_on",
    Below = "below",
    Buried = "buried",
    Call = "call",
    Cause = "cause",
    Caption = "caption",
    Caution = "caution",
    ChannelsSeen = "channels",
    Check = "check",
    ClodInWater = "clod_in_water",
    Clods = "clods",
    Clue = "clue",
    ComesAway = "comes_away",
    Compass = "compass",
    Condition = "condition",
    CriticalPlace = "critical",
    CriticalShift = "critical_shift",
    Detail = "detail",
    DetailText = "detail_text",
    Drive = "drive",
    Extent = "extent",
    FaceMoisture = "face",
    FaceText = "face_text",
    FailureCause = "failure_cause",
    FeetSeen = "feet",
    FieldInput = "field_input",
    FieldText = "field_text",
    FollowUp = "follow_up",
    FuelFormula = "fuel_formula",
    Heading = "heading",
    Lacks = "lacks",
    LineSort = "line_sort",
    Language = "language",
    Lasting = "lasting",
    Lies = "lies",
    Lift = "lift",
    LooseningNeed = "loosening_need",
    Measure = "measure",
    NextStep = "next_step",
    NotSaved = "not_saved",
    Obstacle = "obstacle",
    OrganicMatterLevel = "organic_matter",
    PackingFormula = "packing_formula",
    PageText = "page_text",
    PairBy = "pair_by",
    ParticleSize = "particle_size",
    PartnerText = "partner_text",
    PassClue = "pass_clue",
    Patches = "patches",
    PitText = "pit_text",
    PlaceKind = "place",
    PlatesLeft = "plates",
    PoresSeen = "pores",
    Profile = "profile",
    Remedy = "remedy",
    Resistance = "resistance",
    RollOutcome = "roll",
    RootsSeen = "roots",
    Settled = "settled",
    Smear = "smear",
    Smell = "smell",
    SpacingFit = "spacing_fit",
    Sureness = "sureness",
    TextureClass = "texture_class",
    TextureGroup = "texture",
    TextureScheme = "texture_scheme",
    TractorFit = "tractor_fit",
    Verdict = "verdict",
    Versus = "reference",
    WhyNot = "why_not",
    Work = "work",
    WorkText = "work_text",
    Zone = "zone",
}
