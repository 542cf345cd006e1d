//! Shares over the kinds of layer, given its clues.
//!
//! The table is used in two parts. Clues that tell *how* a layer is (signs seen in it, its place) give the
//! condition. Clues that tell only *why* (the reference pit, what lies below, texture, a piece in water) divide
//! each condition among its causes and never move weight from one condition to another: a layer that reads
//! the same in the reference pit is no more open for it.

use super::Reason;
use super::evidence::Evidence;
use super::kind::{KINDS, Kind};
use super::table::{PerKind, Table};
use crate::record::{Cause, Condition};

/// Share a cause must reach within its condition to be named. Our judgement.
pub const CAUSE_MARK: f64 = 0.55;

/// Products of the two parts, before they are put together.
#[derive(Debug, Clone, Copy)]
pub struct Weights {
    /// Prior and the clues that tell how.
    how: PerKind,
    /// Clues that tell only why.
    why: PerKind,
}

impl Weights {
    /// Weights from everything known of a layer.
    pub fn of(evidence: &Evidence, table: &Table) -> Self {
        evidence.known().fold(
            Self { how: table.prior, why: [1.0; KINDS.len()] },
            |weights, (clue, answer)| match table.chances(clue, answer, evidence.texture) {
                Some(chances) => weights.times(chances, table.only_cause(clue)),
                None => weights,
            },
        )
    }

    /// Weights with one more clue.
    #[must_use]
    pub fn times(mut self, chances: &PerKind, only_cause: bool) -> Self {
        let part = if only_cause { &mut self.why } else { &mut self.how };
        for (weight, chance) in part.iter_mut().zip(chances) {
            *weight *= chance;
        }
        self
    }

    /// Shares of the kinds: conditions by the first part alone, causes within each by both.
    pub fn shares(&self) -> PerKind {
        let mut shares = [0.0; KINDS.len()];
        let total: f64 = self.how.iter().sum();
        for (from, to) in CONDITION_RANGES {
            let of_condition: f64 = self.how[from..to].iter().sum::<f64>() / total;
            let both = |kind: usize| self.how[kind] * self.why[kind];
            let sum: f64 = (from..to).map(both).sum();
            for (kind, share) in shares.iter_mut().enumerate().take(to).skip(from) {
                *share = of_condition * both(kind) / sum;
            }
        }
        shares
    }
}

/// Where each condition's kinds stand in [`KINDS`].
const CONDITION_RANGES: [(usize, usize); 4] = [(0, 1), (1, 5), (5, 9), (9, 13)];

/// Shares of the kinds given the clues.
pub fn shares(evidence: &Evidence, table: &Table) -> PerKind {
    Weights::of(evidence, table).shares()
}

/// The kind shown for shares, and the share it stands for.
///
/// The condition is the one with the largest share; of equal ones the better. The cause is the one with the
/// largest share within it, [`Cause::Unclear`] below [`CAUSE_MARK`]; then the share is the condition's.
pub fn shown(shares: &PerKind) -> (Kind, f64) {
    let of = |(from, to): (usize, usize)| shares[from..to].iter().sum::<f64>();
    let mut best = 0;
    for (at, range) in CONDITION_RANGES.iter().enumerate() {
        if of(*range) > of(CONDITION_RANGES[best]) {
            best = at;
        }
    }
    let (from, to) = CONDITION_RANGES[best];
    let condition_share = of((from, to));
    let kind = (from..to).max_by(|a, b| shares[*a].total_cmp(&shares[*b])).unwrap_or(from);
    if shares[kind] < CAUSE_MARK * condition_share {
        return (Kind { condition: Condition::ALL[best], cause: Cause::Unclear }, condition_share);
    }
    (KINDS[kind], shares[kind])
}

/// Returns what each known clue says for (positive) or against (negative) the kind shown, strongest first: its weight of
/// evidence, 10 · log10 of how likely the answer is in that kind against the others, these weighted by their prior
/// (Good 1950, value from memory). The others are all other conditions for a clue that tells how, and the other
/// causes of the condition for one that tells only why; of an unclear cause the latter say nothing.
pub fn reasons(evidence: &Evidence, table: &Table, shown: Kind) -> Vec<Reason> {
    let is_shown = |kind: &Kind| {
        kind.condition == shown.condition && (shown.cause == Cause::Unclear || kind.cause == shown.cause)
    };
    let mut reasons: Vec<Reason> = evidence
        .known()
        .filter_map(|(clue, answer)| {
            let chances = table.chances(clue, answer, evidence.texture)?;
            let rivals_share_condition = table.only_cause(clue);
            let mean = |of_shown: bool| {
                let counted = KINDS.iter().zip(chances).zip(&table.prior).filter(|((kind, _), _)| {
                    is_shown(kind) == of_shown
                        && (of_shown || !rivals_share_condition || kind.condition == shown.condition)
                });
                let (sum, weight) = counted.fold((0.0, 0.0), |(sum, weight), ((_, chance), prior)| {
                    (sum + chance * prior, weight + prior)
                });
                (weight > 0.0).then(|| sum / weight)
            };
            let decibans = 10.0 * (mean(true)? / mean(false)?).log10();
            Some(Reason { clue, answer, decibans })
        })
        .collect();
    crate::order::sort_by(&mut reasons, |a, b| b.decibans.abs().total_cmp(&a.decibans.abs()));
    reasons
}
