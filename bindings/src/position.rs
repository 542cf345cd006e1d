//! The position as averaged so far.

use pitface_core::place::{AveragedFix, Fix, average, stay};

/// More than a stay has at ten fixes a second; the oldest go first.
const MOST: usize = 1000;

/// The fixes of this stay.
#[derive(Default)]
pub(crate) struct Fixes {
    fixes: Vec<Fix>,
    averaged: Option<AveragedFix>,
    pub refused: bool,
}

impl Fixes {
    pub fn add(&mut self, fix: Fix) {
        self.refused = false;
        self.fixes.push(fix);
        self.fixes = stay(&self.fixes);
        let surplus = self.fixes.len().saturating_sub(MOST);
        self.fixes.drain(..surplus);
        self.averaged = average(&self.fixes);
    }

    pub fn averaged(&self) -> Option<&AveragedFix> {
        self.averaged.as_ref()
    }

    /// The receiver is carried elsewhere.
    pub fn forget(&mut self) {
        self.fixes.clear();
        self.averaged = None;
    }
}
