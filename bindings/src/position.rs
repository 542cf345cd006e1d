//! The position as averaged so far.

use pitface_core::place::{AveragedFix, Fix, average, stay};

/// More than a stay has at ten fixes a second; the oldest go first.
const MOST: usize = 1000;

/// The fixes of this stay.
#[derive(Default)]
pub(crate) struct Fixes {
    taken: Vec<Fix>,
    averaged: Option<AveragedFix>,
    pub refused: bool,
}

impl Fixes {
    pub fn add(&mut self, fix: Fix) {
        self.refused = false;
        self.taken.push(fix);
        self.taken = stay(&self.taken);
        let surplus = self.taken.len().saturating_sub(MOST);
        self.taken.drain(..surplus);
        self.averaged = average(&self.taken);
    }

    pub fn averaged(&self) -> Option<&AveragedFix> {
        self.averaged.as_ref()
    }

    /// The receiver is carried elsewhere.
    pub fn forget(&mut self) {
        self.taken.clear();
        self.averaged = None;
    }
}
