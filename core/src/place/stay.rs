//! The last place a receiver lay still at, out of fixes that were also taken on the way there.

use super::fixes::is_fix;
use super::{Fix, LONGEST_S, walk};

/// Two fixes of one stay lie no further apart than this many times the coarser of their accuracies: beyond it they are
/// rather two places than one (each accuracy holds 68 % of the cases, and neighbouring fixes err alike). Our judgement.
const APART: f64 = 2.0;
/// Metres that are no move, however accurate the fixes claim to be: a phone is carried about the hole. Our judgement.
const ABOUT_M: f64 = 3.0;

/// The fixes since the receiver was last moved: from the last one back to the first that lies elsewhere, and no longer
/// than [`LONGEST_S`]; what is no fix is left out. In the order of their times.
pub fn stay(fixes: &[Fix]) -> Vec<Fix> {
    let mut fixes: Vec<Fix> = fixes.iter().copied().filter(is_fix).collect();
    crate::order::sort_by_key(&mut fixes, |fix| fix.time_ms);
    let Some(last) = fixes.last().copied() else { return fixes };
    let of_it = |fix: &&Fix| {
        let age_s = last.time_ms.saturating_sub(fix.time_ms) as f64 / 1000.0;
        let reach_m = (APART * fix.accuracy_m.max(last.accuracy_m)).max(ABOUT_M);
        age_s <= LONGEST_S && walk(fix.at, last.at).distance_m <= reach_m
    };
    let first = fixes.len() - fixes.iter().rev().take_while(of_it).count();
    fixes.split_off(first)
}
