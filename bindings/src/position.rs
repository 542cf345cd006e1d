//! The position as averaged so far.

use pitface_core::place::{AveragedFix, Fix, LONGEST_S, average};

/// More than one stay ever has at ten fixes a second; the oldest go first.
const MOST: usize = 1000;

/// The fixes of the last while.
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
        let last_ms = self.fixes.iter().map(|fix| fix.time_ms).max().unwrap_or(fix.time_ms);
        let longest_ms = (LONGEST_S * 1000.0) as i64;
        self.fixes.retain(|fix| last_ms.saturating_sub(fix.time_ms) <= longest_ms);
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
