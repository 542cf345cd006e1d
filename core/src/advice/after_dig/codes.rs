//! The closed lists an after-dig is told with.

use crate::record::codes::codes;

codes!(
    /// What a pass did to the ground, by the hole dug behind it; from `done` to `worse` each is worse than the one before.
    Verdict {
        /// What a loosening in good conditions gives.
        Done = "done",
        /// Loosened in places; [`super::DigAdvice::firm_at`] says where not.
        Partly = "partly",
        /// The layer stands as it was.
        NotDone = "not_done",
        /// Ground pressed round the slots, or subsoil and large clods thrown up.
        Worse = "worse",
        /// Too little was read.
        CannotSay = "cannot_say",
    }
);
codes!(
    /// What may have kept a pass from loosening.
    FailureCause {
        /// Soil that smears instead of breaking at the depth of the tip.
        TooWet = "too_wet",
        /// Soil too hard to be lifted in small lumps.
        TooDry = "too_dry",
        /// The tips ran less deep than was needed.
        TooShallow = "too_shallow",
        /// The tips ran below critical depth and pressed the soil aside.
        BelowCritical = "below_critical",
        /// The legs stand too far apart.
        SpacingTooWide = "spacing_too_wide",
        /// Too slow to lift and break.
        TooSlow = "too_slow",
        /// Too fast: thrown, not lifted.
        TooFast = "too_fast",
        /// Feet worn narrow, or wings lost.
        WornFeet = "worn_feet",
        /// The machine does not run level from side to side.
        NotLevel = "not_level",
        /// The tine lines lie beside slots of an older loosening, which take up the lift.
        OldLoosening = "old_loosening",
    }
);
codes!(
    /// What to look at to tell a cause from the others.
    Check {
        /// Roll soil from the depth of the tip.
        RollAtTip = "roll_at_tip",
        /// Measure the depth of the slots against the depth that was wanted.
        MeasureSlots = "measure_slots",
        /// Look at form and walls of the slot: Y below, pressed and shining.
        LookAtWalls = "look_at_walls",
        /// Read the depth to firm soil from one tine line to the next, and measure the legs' spacing.
        ReadAcross = "read_across",
        /// Time a measured run and compare it with the speeds of the machine.
        TimeTheRun = "time_the_run",
        /// Look at feet and wings, machine stopped and keys out.
        LookAtFeet = "look_at_feet",
        /// Measure the slots behind the outer legs on both sides.
        SlotsAcross = "slots_across",
        /// Look for slots or loose ground that no tine of this pass made.
        LookForOldSlots = "look_for_old_slots",
    }
);
codes!(
    /// What to change for the next trial strip.
    Remedy {
        /// Wait until soil from the depth of the tip no longer rolls.
        WaitForDrier = "wait_for_drier",
        /// Wait until it is moister.
        WaitForMoister = "wait_for_moister",
        Deeper = "deeper",
        /// Shallower, or a wider foot or wings.
        ShallowerOrWider = "shallower_or_wider",
        /// Legs closer together, or a second pass between.
        Closer = "closer",
        Faster = "faster",
        Slower = "slower",
        /// New feet or wings.
        NewFeet = "new_feet",
        /// Level the machine from side to side.
        LevelIt = "level_it",
        /// Shift the tine lines, or run at an angle to the old ones.
        ShiftLines = "shift_lines",
    }
);
codes!(
    /// What comes next after a pass.
    NextStep {
        /// Dig behind it (or, where that was too little, again) before anything else.
        DigBehind = "dig_behind",
        /// The trial strip did it: go on with the zone as set.
        GoOn = "go_on",
        /// Nothing more with steel: keep wheels off and roots in.
        KeepOff = "keep_off",
        /// The likely causes differ by a check that is still to be made: make it first.
        CheckFirst = "check_first",
        /// Change the setting and run another trial strip.
        ChangeAndTry = "change_and_try",
        /// Wait for other moisture.
        Wait = "wait",
        /// It made the ground worse, or the ground closed again: loosen no more before the cause is found and removed.
        StopLoosening = "stop_loosening",
    }
);
codes!(
    /// Whether loosened ground stayed so over a season.
    Lasting { Held = "held", Partly = "partly", Lost = "lost", CannotSay = "cannot_say", }
);
codes!(
    /// Where between two tine lines the ground stayed firm.
    Across {
        /// At a tine line and next to it.
        AtLine = "at_line",
        /// Between the lines.
        Between = "between",
        /// From line to line.
        Throughout = "throughout",
    }
);
codes!(
    /// How the pit before was found.
    PairBy {
        /// Named in the notes of the after-dig.
        Noted = "noted",
        /// The nearest of the zone's pits from before the pass.
        Nearest = "nearest",
        /// The last of them, positions not being known.
        Last = "last",
    }
);

impl Remedy {
    /// Returns whether it is not to be made before soil from the depth of the tips was rolled: deeper or once more in soil that
    /// smears does harm (Tasmania and DAFWA 2017: too wet, so do not rip).
    pub const fn wants_a_roll(self) -> bool {
        matches!(self, Self::Deeper | Self::Closer)
    }
}

impl FailureCause {
    /// The check that tells it from the others.
    pub const fn check(self) -> Check {
        match self {
            Self::TooWet | Self::TooDry => Check::RollAtTip,
            Self::TooShallow => Check::MeasureSlots,
            Self::BelowCritical => Check::LookAtWalls,
            Self::SpacingTooWide => Check::ReadAcross,
            Self::TooSlow | Self::TooFast => Check::TimeTheRun,
            Self::WornFeet => Check::LookAtFeet,
            Self::NotLevel => Check::SlotsAcross,
            Self::OldLoosening => Check::LookForOldSlots,
        }
    }

    /// The change to make; see [`Remedy::wants_a_roll`].
    pub const fn remedy(self) -> Remedy {
        match self {
            Self::TooWet => Remedy::WaitForDrier,
            Self::TooDry => Remedy::WaitForMoister,
            Self::TooShallow => Remedy::Deeper,
            Self::BelowCritical => Remedy::ShallowerOrWider,
            Self::SpacingTooWide => Remedy::Closer,
            Self::TooSlow => Remedy::Faster,
            Self::TooFast => Remedy::Slower,
            Self::WornFeet => Remedy::NewFeet,
            Self::NotLevel => Remedy::LevelIt,
            Self::OldLoosening => Remedy::ShiftLines,
        }
    }
}
