//! Medians of two things measured in turn, so that whatever slows the machine slows both.

use std::time::{Duration, Instant};

/// What was measured beside its floor.
pub struct Measured {
    /// Median of ours.
    pub ours: Duration,
    /// Median of the floor.
    pub floor: Duration,
}

impl Measured {
    /// How many times the floor ours takes.
    pub fn ratio(&self) -> f64 {
        self.ours.as_secs_f64() / self.floor.as_secs_f64()
    }
}

/// Runs both in turn, changing who goes first, after a tenth as many rounds to warm up.
pub fn interleaved(rounds: usize, mut ours: impl FnMut(), mut floor: impl FnMut()) -> Measured {
    in_turn(rounds, || timed(&mut ours), || timed(&mut floor))
}

/// The same for calls that tell themselves what they took.
pub fn in_turn(
    rounds: usize,
    mut ours: impl FnMut() -> Duration,
    mut floor: impl FnMut() -> Duration,
) -> Measured {
    let warm_up = rounds / 10 + 1;
    let (mut ours_took, mut floor_took) = (Vec::with_capacity(rounds), Vec::with_capacity(rounds));
    for round in 0..warm_up + rounds {
        let (first, second) = if round % 2 == 0 {
            let first = ours();
            (first, floor())
        } else {
            let second = floor();
            (ours(), second)
        };
        if round >= warm_up {
            ours_took.push(first);
            floor_took.push(second);
        }
    }
    Measured { ours: median(ours_took), floor: median(floor_took) }
}

/// Returns what a call takes.
pub fn timed(run: &mut impl FnMut()) -> Duration {
    let start = Instant::now();
    run();
    start.elapsed()
}

fn median(mut took: Vec<Duration>) -> Duration {
    took.sort_unstable();
    took[took.len() / 2]
}
