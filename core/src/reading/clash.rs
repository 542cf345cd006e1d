//! Signs that clash: answers which no one kind of layer explains together.

use super::Reason;
use super::clue::Clue;
use super::evidence::Evidence;
use super::kind::KINDS;
use super::table::{PerKind, Table};
use crate::record::{Condition, Sign};

/// From this conflict on the signs of a layer clash, in decibans: taken one by one its answers are four times as
/// likely as taken together. Of layers drawn from the table one in a hundred reaches it (`core/tests/clashes.rs`).
/// Our judgement.
pub const CLASH_DECIBANS: f64 = 6.0;

/// Conflict among the signs of a layer, in decibans: how much more likely its answers are if each came from a layer of
/// its own than if all came from one (Jensen, Chamberlain, Nordahl & Jensen 1990, the measure of conflict in a causal
/// network; value from memory). Signs that belong together give a negative number; no more than one sign gives 0.
pub fn conflict(evidence: &Evidence, table: &Table) -> f64 {
    let (mut apart, mut together) = (1.0, table.prior);
    for chances in Sign::ALL.iter().filter_map(|&sign| tells_how(sign, evidence, table)) {
        apart *= table.prior.iter().zip(chances).map(|(prior, chance)| prior * chance).sum::<f64>();
        for (weight, chance) in together.iter_mut().zip(chances) {
            *weight *= chance;
        }
    }
    10.0 * (apart / together.iter().sum::<f64>()).log10()
}

/// Returns what a sign's answer says of how the layer is; nothing of one that tells only why, or says nothing.
fn tells_how<'t>(sign: Sign, evidence: &Evidence, table: &'t Table) -> Option<&'t PerKind> {
    let clue = Clue::from(sign);
    let chances = table.chances(clue, evidence.get(clue)?, evidence.texture)?;
    (!table.only_cause(clue)).then_some(chances)
}

/// Returns what each sign of a layer says for sound soil (positive: Open or Firm) or for harm (negative: Tight or Shut), in
/// decibans, strongest first: the two camps of signs that clash.
pub fn camps(evidence: &Evidence, table: &Table) -> Vec<Reason> {
    let mean = |chances: &PerKind, sound: bool| {
        let camp = KINDS.iter().zip(chances).zip(&table.prior);
        let camp = camp.filter(|((kind, _), _)| (kind.condition <= Condition::Firm) == sound);
        let (sum, weight) = camp
            .fold((0.0, 0.0), |(sum, weight), ((_, chance), prior)| (sum + chance * prior, weight + prior));
        sum / weight
    };
    let mut camps: Vec<Reason> = Sign::ALL
        .iter()
        .filter_map(|&sign| {
            let chances = tells_how(sign, evidence, table)?;
            let (clue, decibans) =
                (Clue::from(sign), 10.0 * (mean(chances, true) / mean(chances, false)).log10());
            Some(Reason { clue, answer: evidence.get(clue)?, decibans })
        })
        .collect();
    crate::order::sort_by(&mut camps, |a, b| b.decibans.abs().total_cmp(&a.decibans.abs()));
    camps
}
