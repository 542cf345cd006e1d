//! A machine's run over the ground, and what was seen in the holes dug behind it.

use super::codes::codes;
use super::{Position, RecordId, Roll, RootsSeen, Unknown, Zone};
use crate::error::Fault;
use chrono::{DateTime, FixedOffset, NaiveDate};

codes!(
    /// How much of the zone was worked.
    Extent {
        /// One run or two, to be dug behind before the rest.
        TrialStrip = "trial_strip",
        /// All of the zone.
        Zone = "zone",
    }
);
codes!(
    /// Form of the ground a tine loosened.
    Profile {
        /// Open to the surface with straight sides.
        V = "v",
        /// Open above, a narrow slot below.
        Y = "y",
    }
);
codes!(
    /// Walls and floor of the slot at the tip; each worse than the one before.
    Smear { None = "none", Smeared = "smeared", }
);
codes!(
    /// The surface behind the machine.
    Lift {
        /// No higher than before.
        None = "none",
        /// Slightly raised, and evenly.
        Even = "even",
        /// Thrown up into furrows.
        Furrows = "furrows",
    }
);
codes!(
    /// Lumps in the loosened ground.
    Clods {
        /// Small enough for roots to pass between.
        Small = "small",
        /// Larger than a fist.
        Large = "large",
    }
);
codes!(
    /// What is left of the plates of the layer, in the loosened ground; each worse than the one before.
    PlatesLeft { None = "none", Some = "some", Most = "most", }
);
codes!(
    /// Feet and wings looked at after the run, machine stopped and keys out.
    FeetSeen {
        /// As wide as the record of the machine says.
        AsNoted = "as_noted",
        /// Worn narrower.
        Worn = "worn",
        /// A wing or a foot is gone.
        Lost = "lost",
    }
);

/// One run of a machine over a zone or a strip of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Pass {
    /// Identity.
    pub id: RecordId,
    /// The machine as it was set: one of the field's.
    pub machine: Option<RecordId>,
    /// The zone it was run over.
    pub zone: Option<Zone>,
    /// How much of the zone.
    pub extent: Option<Extent>,
    /// The day.
    pub done: Option<NaiveDate>,
    /// Tip depth the machine was set to.
    pub tip_mm: Option<u32>,
    /// Speed over the ground, km/h.
    pub speed_kmh: Option<f64>,
    /// First day heavy wheels ran over the loosened ground.
    pub driven_on: Option<NaiveDate>,
    /// What else is to be said of it, in plain words; see [`super::remark`].
    pub remark: Option<String>,
    /// Roll tests of that day.
    pub rolls: Vec<Roll>,
    /// Holes dug behind the machine, then or later.
    pub after_digs: Vec<AfterDig>,
    /// Unknown keys.
    pub unknown: Unknown,
}

/// One hole across the run of two neighbouring tines.
#[derive(Debug, Clone, PartialEq)]
pub struct AfterDig {
    /// Identity.
    pub id: RecordId,
    /// Where it was dug.
    pub at: Option<Position>,
    /// When it was dug, with the local offset.
    pub dug: Option<DateTime<FixedOffset>>,
    /// Who dug it.
    pub by: Option<String>,
    /// The pit dug before the machine that it is compared with.
    pub before: Option<RecordId>,
    /// Depth to firm soil at equal steps across, the first and the last in a tine line.
    pub firm_mm: Vec<u32>,
    /// Depth of the slot's bottom behind several legs, from left to right.
    pub slots_mm: Vec<u32>,
    /// Form of the loosened ground.
    pub profile: Option<Profile>,
    /// Smear at the tip.
    pub smear: Option<Smear>,
    /// The surface.
    pub lift: Option<Lift>,
    /// Lumps.
    pub clods: Option<Clods>,
    /// Whether subsoil lies on the surface.
    pub subsoil_up: Option<bool>,
    /// Plates left.
    pub plates: Option<PlatesLeft>,
    /// Feet and wings, looked at after the run.
    pub feet: Option<FeetSeen>,
    /// Whether there is loose ground or a slot in the hole that no tine of this pass made.
    pub old_slots: Option<bool>,
    /// What roots do in the loosened ground, a season on.
    pub roots: Option<RootsSeen>,
    /// Unknown keys.
    pub unknown: Unknown,
}

impl Pass {
    /// A pass of which nothing is known yet.
    pub fn new(id: RecordId) -> Self {
        Self {
            id,
            machine: None,
            zone: None,
            extent: None,
            done: None,
            tip_mm: None,
            speed_kmh: None,
            driven_on: None,
            remark: None,
            rolls: Vec::new(),
            after_digs: Vec::new(),
            unknown: Unknown::new(),
        }
    }

    /// Everything of itself that cannot be so; its after-digs have their own.
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        if self.speed_kmh.is_some_and(|kmh| !(kmh > 0.0 && kmh <= 20.0)) {
            faults.push(Fault::new("speed_kmh", "this is no speed", "give km/h, above 0 and up to 20"));
        }
        if self.done.zip(self.driven_on).is_some_and(|(done, driven_on)| driven_on < done) {
            let todo = "give the first day wheels ran over it after the pass, or leave it out";
            faults.push(Fault::new("driven_on", "this day lies before the pass", todo));
        }
        faults
    }
}

impl AfterDig {
    /// A hole of which nothing is known yet.
    pub fn new(id: RecordId) -> Self {
        Self {
            id,
            at: None,
            dug: None,
            by: None,
            before: None,
            firm_mm: Vec::new(),
            slots_mm: Vec::new(),
            profile: None,
            smear: None,
            lift: None,
            clods: None,
            subsoil_up: None,
            plates: None,
            feet: None,
            old_slots: None,
            roots: None,
            unknown: Unknown::new(),
        }
    }

    /// Everything that cannot be so.
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        if (1..3).contains(&self.firm_mm.len()) {
            let wrong = format!("{} readings do not reach from tine line to tine line", self.firm_mm.len());
            let todo = "give at least three at equal steps, the first and the last in a tine line";
            faults.push(Fault::new("firm_mm", wrong, todo));
        }
        faults
    }
}
