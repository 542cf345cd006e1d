//! How far long work has come, for somebody who waits at a terminal.

use indicatif::{ProgressBar, ProgressDrawTarget};
use std::cell::Cell;
use std::io::{self, IsTerminal as _};
use std::time::{Duration, Instant};

/// What is done sooner needs no bar. Our judgement.
const PATIENCE: Duration = Duration::from_millis(500);

/// A bar on standard error that comes up when it takes long; none where nobody looks at it, or where the answer runs by on the same
/// terminal.
pub struct Progress {
    bar: ProgressBar,
    began: Instant,
    shown: Cell<bool>,
    is_watched: bool,
}

impl Progress {
    /// Over so many steps.
    pub fn over(count: usize) -> Self {
        let bar = ProgressBar::with_draw_target(Some(count as u64), ProgressDrawTarget::hidden());
        let is_watched = io::stderr().is_terminal() && !io::stdout().is_terminal();
        Self { bar, began: Instant::now(), shown: Cell::new(false), is_watched }
    }

    /// One more is done.
    pub fn step(&self) {
        if self.is_watched && !self.shown.get() && self.began.elapsed() > PATIENCE {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
            self.shown.set(true);
        }
        self.bar.inc(1);
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
