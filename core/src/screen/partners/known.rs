//! What is known of the other devices when a screen is shown.

use crate::merge::DeviceId;
use crate::merge::plan::Missing;
use crate::store::{
    Belongs, Conflict, NobodyElse, Partner, Personal, PhotoHash, Regretted, Vouching, Waiting,
};
use chrono::NaiveDate;
use std::collections::BTreeSet;

/// What is known of the other devices, and what came of taking in from them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Partners {
    /// This device.
    pub own: DeviceId,
    /// The others, and this one under earlier names.
    pub all: Vec<Partner>,
    /// Edits without which some of what came cannot be used yet.
    pub missing: BTreeSet<Missing>,
    /// What devices say in the names of others.
    pub vouchings: Vec<Vouching>,
    /// What waits for a word or an update.
    pub waiting: Waiting,
    /// What no other device is known to have.
    pub alone: NobodyElse,
    /// Since which day, in local time.
    pub alone_since: Option<NaiveDate>,
    /// Photos that records name: how many are here, and how many there are.
    pub photos: [usize; 2],
    /// Values of which several versions stand, and where each belongs.
    pub versions: Vec<(Belongs, Conflict)>,
    /// Records that were deleted while somebody else went on with them.
    pub regretted: Vec<(Belongs, Regretted)>,
    /// Records that hold what only a newer version can read: kept and handed on, but not shown.
    pub not_shown: usize,
    /// What the check of the files found.
    pub checkup: Checkup,
    /// Names and positions in the log, where they are asked for.
    pub personal: Vec<(Belongs, Personal)>,
    /// Whether a team word is set on this phone. The word itself is nothing for a screen.
    pub team_word: bool,
}

/// What a check of store and photos found wrong; by default nothing, or not checked yet.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Checkup {
    /// Edits that are not as they were written.
    pub damaged: Vec<Missing>,
    /// The store cannot be read in a way that names no edits.
    pub unreadable: bool,
    /// Current values were wrong, and were made anew from the edits.
    pub made_anew: bool,
    /// Photos whose bytes changed.
    pub photos: BTreeSet<PhotoHash>,
}

impl Partners {
    /// Nobody else is known.
    pub fn none(own: DeviceId) -> Self {
        Self {
            own,
            all: Vec::new(),
            missing: BTreeSet::new(),
            vouchings: Vec::new(),
            waiting: Waiting::default(),
            alone: NobodyElse::default(),
            alone_since: None,
            photos: [0, 0],
            versions: Vec::new(),
            regretted: Vec::new(),
            not_shown: 0,
            checkup: Checkup::default(),
            personal: Vec::new(),
            team_word: false,
        }
    }

    /// How the holder of a device calls themselves; empty if not said.
    pub fn holder(&self, device: DeviceId) -> &str {
        self.all.iter().find(|partner| partner.device == device).map_or("", |partner| &partner.holder)
    }
}
