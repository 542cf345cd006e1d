//! The closed lists of answers, with the codes written in files and JSON (design 3.1).

/// Declares a closed list: the enum, its codes, and the way between the two.
macro_rules! codes {
    ($(#[$meta:meta])* $name:ident { $($(#[$vmeta:meta])* $variant:ident = $code:literal,)+ }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $name { $($(#[$vmeta])* #[doc = concat!("`", $code, "`")] $variant,)+ }

        impl $name {
            /// Every value, in the order of the list.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];
            /// The code of every value, in the same order.
            pub const CODES: &'static [&'static str] = &[$($code,)+];

            /// The code written in files.
            pub const fn code(self) -> &'static str {
                Self::CODES[self as usize]
            }

            /// The value of a code, if the list has it.
            pub fn from_code(code: &str) -> Option<Self> {
                crate::record::codes::place_of(code, Self::CODES).map(|place| Self::ALL[place])
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let code = <std::borrow::Cow<'de, str>>::deserialize(deserializer)?;
                Self::from_code(&code).ok_or_else(|| serde::de::Error::unknown_variant(&code, Self::CODES))
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.code())
            }
        }
    };
}
pub(crate) use codes;

/// The place of a code in its list: one search for all lists.
pub(crate) fn place_of(code: &str, codes: &[&str]) -> Option<usize> {
    codes.iter().position(|own| *own == code)
}

codes!(
    /// What kind of place a pit is dug in.
    PlaceKind {
        /// A place that looks good, away from wheels and edges: what the others are compared with.
        Reference = "reference",
        /// Open ground between the wheelings.
        Open = "open",
        /// In a wheeling.
        Wheeling = "wheeling",
        /// On the headland.
        Headland = "headland",
        /// In a gateway.
        Gateway = "gateway",
        /// Another patch of concern.
        Other = "other",
    }
);
codes!(
    /// Moisture of the face: only a moist one can be read.
    FaceMoisture { Dry = "dry", Moist = "moist", Wet = "wet", }
);
codes!(
    /// How the soil comes away before the knife.
    ComesAway {
        Crumbs = "crumbs",
        RoundedLumps = "rounded_lumps",
        SharpBlocks = "sharp_blocks",
        FlatPlates = "flat_plates",
        OneMass = "one_mass",
        LooseGrains = "loose_grains",
    }
);
codes!(
    /// What the knife meets; each worse for roots than the one before.
    Resistance { SlipsIn = "slips_in", FirmPush = "firm_push", HardPush = "hard_push", Stops = "stops", }
);
codes!(
    /// Pores seen on a broken face; each worse for roots than the one before.
    PoresSeen { Many = "many", Some = "some", Few = "few", None = "none", }
);
codes!(
    /// Channels of worms and old roots.
    ChannelsSeen { Many = "many", Some = "some", None = "none", CutOff = "cut_off", }
);
codes!(
    /// What the roots do; the first four each worse than the one before.
    RootsSeen {
        Through = "through",
        InCracks = "in_cracks",
        Sideways = "sideways",
        Stopped = "stopped",
        /// No roots there to judge by.
        NoneToJudge = "none_to_judge",
    }
);
codes!(
    /// Rust or grey patches; each worse than the one before.
    Patches { None = "none", Few = "few", Clear = "clear", }
);
codes!(
    /// Smell of a fresh piece; each worse than the one before.
    Smell { Earthy = "earthy", None = "none", Sour = "sour", }
);
codes!(
    /// An air-dry piece laid in water.
    ClodInWater { FallsApart = "falls_apart", Holds = "holds", }
);
codes!(
    /// The roll test: soil kneaded and rolled between the hands towards a 3 mm thread.
    RollOutcome {
        Thread = "thread",
        ShortLengths = "short_lengths",
        Crumbles = "crumbles",
        WillNotHold = "will_not_hold",
    }
);
codes!(
    /// How a layer lets roots, air and water through; each worse than the one before.
    Condition { Open = "open", Firm = "firm", Tight = "tight", Shut = "shut", }
);
codes!(
    /// Why a layer is as it is.
    Cause {
        /// By wheels or tillage.
        Pressed = "pressed",
        /// By itself.
        Settled = "settled",
        Cemented = "cemented",
        /// Normal for that soil.
        Natural = "natural",
        /// No cause reaches the mark.
        Unclear = "unclear",
    }
);
codes!(
    /// What is to be done.
    Call {
        LeaveIt = "leave_it",
        RootsFirst = "roots_first",
        Loosen = "loosen",
        Wait = "wait",
        DrainFirst = "drain_first",
        DigAgain = "dig_again",
        AskSpecialist = "ask_specialist",
    }
);
codes!(
    /// The part of a field a call is for.
    Zone {
        Open = "open",
        Headland = "headland",
        Wheelings = "wheelings",
        Gateway = "gateway",
        Patch = "patch",
        Whole = "whole",
    }
);
codes!(
    /// Organic matter of the topsoil by class.
    OrganicMatterLevel { Low = "low", Medium = "medium", High = "high", }
);
