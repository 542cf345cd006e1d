//! The position as averaged so far.

use pitface_core::place::{AveragedFix, Fix, average, stay};

/// More than a stay has at ten fixes a second; the oldest go first.
const MOST: usize = 1000;

/// The fixes of this stay.
#[derive(Default)]
pub(crate) struct Fixes {
    taken: Vec<Fix>,
    averaged: Option<AveragedFix>,
    /// How far this device's clock was ahead of satellite time at the freshest fix so far, milliseconds.
    ahead_ms: Option<i64>,
    pub refused: bool,
}

impl Fixes {
    pub fn add(&mut self, fix: Fix, now_ms: u64) {
        self.refused = false;
        // A fix arrives late, never early: the least difference is nearest to that of the clocks.
        let ahead = i64::try_from(now_ms).unwrap_or(i64::MAX).saturating_sub(fix.time_ms);
        self.ahead_ms = Some(self.ahead_ms.map_or(ahead, |least| least.min(ahead)));
        self.taken.push(fix);
        self.taken = stay(&self.taken);
        let surplus = self.taken.len().saturating_sub(MOST);
        self.taken.drain(..surplus);
        self.averaged = average(&self.taken);
    }

    pub fn averaged(&self) -> Option<&AveragedFix> {
        self.averaged.as_ref()
    }

    pub const fn ahead_ms(&self) -> Option<i64> {
        self.ahead_ms
    }

    /// The receiver is carried elsewhere.
    pub fn forget(&mut self) {
        self.taken.clear();
        self.averaged = None;
    }
}
