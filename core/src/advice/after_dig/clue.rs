//! What an after-dig and its pass say of why a pass failed: every clue with its closed list of answers.

use crate::advice::machine::{CriticalPlace, SpacingFit};
use crate::record::codes::codes;
use crate::record::{Clods, FeetSeen, Lift, PlatesLeft, Profile, RollOutcome, Smear};

codes!(
    /// One clue.
    PassClue {
        /// Roll test at the depth of the tip, that day.
        Roll = "roll",
        /// Depth of the slots against the depth needed.
        Depth = "depth",
        /// Depth the machine was set to against the depth needed; where the slots were not measured.
        SetDepth = "set_depth",
        /// Slots from leg to leg.
        Slots = "slots",
        /// Depth against critical depth of the foot.
        Critical = "critical",
        /// Form of the loosened ground.
        Profile = "profile",
        /// Walls of the slot.
        Smear = "smear",
        /// The surface.
        Lift = "lift",
        /// Lumps.
        Clods = "clods",
        /// Subsoil on the surface.
        SubsoilUp = "subsoil_up",
        /// Plates left in the loosened ground.
        Plates = "plates",
        /// Readings from line to line.
        Pattern = "pattern",
        /// The ridge between the lines against that of the figure.
        Ridge = "ridge",
        /// Spacing of the legs against the published range.
        Spacing = "spacing",
        /// Speed against the speeds of the machine.
        Speed = "speed",
        /// Feet and wings.
        Feet = "feet",
        /// Slots no tine of this pass made.
        OldSlots = "old_slots",
        /// Time since the loosening before this one.
        LoosenedBefore = "loosened_before",
    }
);
codes!(
    /// A depth against the one needed.
    Reached {
        /// Less deep than needed.
        Short = "short",
        Right = "right",
        /// Deeper than the deepest tip the layer calls for.
        Deep = "deep",
    }
);
codes!(
    /// Slots behind several legs, from left to right.
    Evenness {
        Even = "even",
        /// Deeper from one side to the other.
        Sloping = "sloping",
        /// One or some off the others.
        Jagged = "jagged",
    }
);
codes!(
    /// Depths to firm soil from line to line.
    Pattern {
        /// Loose down to the mark nearly everywhere.
        Loose = "loose",
        /// Deep at the lines, with a ridge between.
        Ridge = "ridge",
        /// Deep in the slot only; firm right beside it.
        SlotOnly = "slot_only",
        /// Nowhere down to the mark.
        Shallow = "shallow",
        /// Deep on one side, firm on the other.
        OneSide = "one_side",
        /// Looser where no tine ran than in the tine lines.
        LooseBetween = "loose_between",
    }
);
codes!(
    /// The ridge found against the ridge reckoned.
    RidgeAgainst { Lower = "lower", AsReckoned = "as_reckoned", Higher = "higher", }
);
codes!(
    /// Speed against the speeds the machine is worked at.
    SpeedPlace { Below = "below", Within = "within", Above = "above", }
);
codes!(
    /// Whether something was there.
    YesNo { Yes = "yes", No = "no", }
);
codes!(
    /// The loosening before this pass.
    Before {
        /// Within the years a loosening lasts.
        Recent = "recent",
        LongAgo = "long_ago",
    }
);

impl PassClue {
    /// The codes of the answers this clue can have.
    pub const fn answers(self) -> &'static [&'static str] {
        match self {
            Self::Roll => RollOutcome::CODES,
            Self::Depth | Self::SetDepth => Reached::CODES,
            Self::Slots => Evenness::CODES,
            Self::Critical => CriticalPlace::CODES,
            Self::Profile => Profile::CODES,
            Self::Smear => Smear::CODES,
            Self::Lift => Lift::CODES,
            Self::Clods => Clods::CODES,
            Self::SubsoilUp | Self::OldSlots => YesNo::CODES,
            Self::Plates => PlatesLeft::CODES,
            Self::Pattern => Pattern::CODES,
            Self::Ridge => RidgeAgainst::CODES,
            Self::Spacing => SpacingFit::CODES,
            Self::Speed => SpeedPlace::CODES,
            Self::Feet => FeetSeen::CODES,
            Self::LoosenedBefore => Before::CODES,
        }
    }
}
