//! One position from many fixes of a satellite receiver that lay still, with an honest error.

use super::Plane;
use crate::record::Position;
use std::cmp::Ordering;

/// How long a receiver should lie still: errors of one fix and the next are much alike, so fewer seconds tell little.
/// Facts on satellite positions gathered for merging: 30 to 60 s.
pub const ENOUGH_S: f64 = 30.0;
/// Fixes longer than this before the last one were taken elsewhere, or tell no more. Same source.
pub const LONGEST_S: f64 = 60.0;
/// A fix whose claimed accuracy is this many times worse than the best is left out: the receiver had not settled.
/// Our judgement.
pub const COARSE: f64 = 3.0;
/// The share of cases that an accuracy holds: it is claimed as the radius of 68 %.
const HELD: f64 = 0.68;

/// One fix.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fix {
    /// `[longitude, latitude]` in degrees.
    pub at: [f64; 2],
    /// Radius that is claimed to hold the true place in 68 of 100 cases, metres.
    pub accuracy_m: f64,
    /// Satellite time in milliseconds since 1970.
    pub time_ms: i64,
}

/// A position averaged from fixes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AveragedFix {
    /// The position, with the error that can be stood by.
    pub position: Position,
    /// Fixes it was averaged from.
    pub fixes: usize,
    /// Fixes left out: coarse ones, early ones, repeated ones, and those that are none.
    pub left_out: usize,
    /// Time from the first to the last of them.
    pub span_s: f64,
    /// Radius around the position that holds 68 % of them, metres.
    pub spread_m: f64,
    /// Satellite time of the last of them, milliseconds since 1970.
    pub last_ms: i64,
}

impl AveragedFix {
    /// Returns whether the receiver lay still for long enough ([`ENOUGH_S`]).
    pub fn long_enough(&self) -> bool {
        self.span_s >= ENOUGH_S
    }

    /// Seconds from the last fix to `now_ms` (milliseconds since 1970); below zero where the clock is behind the
    /// satellites.
    pub fn age_s(&self, now_ms: i64) -> f64 {
        seconds(self.last_ms, now_ms)
    }
}

/// The mean of the fixes of one stay, each weighted by the inverse square of its accuracy; `None` where none is a fix.
///
/// Left out are fixes longer than [`LONGEST_S`] before the last, repeated ones, and those more than [`COARSE`] times
/// coarser than the best. The error is the larger of the median of the claimed accuracies and the radius that holds
/// 68 % of the fixes. It is never divided by the root of their number: the errors of neighbouring fixes have the same
/// causes, so a hundred of them tell hardly more than one.
pub fn average(fixes: &[Fix]) -> Option<AveragedFix> {
    let mut kept: Vec<Fix> = fixes.iter().copied().filter(is_fix).collect();
    crate::order::sort_by(&mut kept, order);
    kept.dedup();
    let last_ms = kept.last()?.time_ms;
    kept.retain(|fix| seconds(fix.time_ms, last_ms) <= LONGEST_S);
    let best_m = kept.iter().map(|fix| fix.accuracy_m).fold(f64::INFINITY, f64::min);
    kept.retain(|fix| fix.accuracy_m <= best_m * COARSE);
    let (first, last) = (kept.first()?, kept.last()?);

    let plane = Plane::at(first.at);
    let places: Vec<[f64; 2]> = kept.iter().map(|fix| plane.flat(fix.at)).collect();
    // Weights against the best fix, so that no accuracy is too small or too large to be squared.
    let weights: Vec<f64> = kept.iter().map(|fix| (best_m / fix.accuracy_m).powi(2)).collect();
    let sum: f64 = weights.iter().sum();
    let mean = [0, 1].map(|axis| {
        places.iter().zip(&weights).map(|(place, weight)| place[axis] * weight).sum::<f64>() / sum
    });
    let mut ways_m: Vec<f64> =
        places.iter().map(|place| (place[0] - mean[0]).hypot(place[1] - mean[1])).collect();
    crate::order::sort_numbers(&mut ways_m);
    let spread_m = ways_m[(HELD * kept.len() as f64).ceil() as usize - 1];
    let at = if kept.len() == 1 { first.at } else { plane.place(mean) };
    Some(AveragedFix {
        position: Position {
            longitude_deg: at[0],
            latitude_deg: at[1],
            accuracy_m: Some(median_accuracy_m(&kept).max(spread_m)),
        },
        fixes: kept.len(),
        left_out: fixes.len() - kept.len(),
        span_s: seconds(first.time_ms, last.time_ms),
        spread_m,
        last_ms: last.time_ms,
    })
}

pub(super) fn is_fix(fix: &Fix) -> bool {
    let [longitude, latitude] = fix.at;
    longitude.abs() <= 180.0 && latitude.abs() <= 90.0 && fix.accuracy_m.is_finite() && fix.accuracy_m > 0.0
}

/// By time; fixes of one time in an order of their own, so that the order they came in changes nothing.
fn order(one: &Fix, other: &Fix) -> Ordering {
    one.time_ms
        .cmp(&other.time_ms)
        .then(one.at[0].total_cmp(&other.at[0]))
        .then(one.at[1].total_cmp(&other.at[1]))
        .then(one.accuracy_m.total_cmp(&other.accuracy_m))
}

fn median_accuracy_m(fixes: &[Fix]) -> f64 {
    let mut claimed: Vec<f64> = fixes.iter().map(|fix| fix.accuracy_m).collect();
    crate::order::sort_numbers(&mut claimed);
    let half = claimed.len() / 2;
    if claimed.len() % 2 == 1 { claimed[half] } else { f64::midpoint(claimed[half - 1], claimed[half]) }
}

fn seconds(from_ms: i64, to_ms: i64) -> f64 {
    to_ms.saturating_sub(from_ms) as f64 / 1000.0
}
