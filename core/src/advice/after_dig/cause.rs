//! Causes ranked by the clues, with what speaks for and against each.

use super::clue::PassClue;
use super::codes::{Check, FailureCause};
use super::evidence::{Evidence, Scene};
use super::table::{CauseTable, PerCause};
use super::{CauseReason, LikelyCause};
use crate::soil::texture::TextureGroup;

/// The causes, the likeliest first; equal ones in the order of [`FailureCause::ALL`].
pub fn rank(evidence: &Evidence, scene: &Scene, table: &CauseTable) -> Vec<LikelyCause> {
    let shares = shares(evidence, table);
    let mut causes: Vec<LikelyCause> = FailureCause::ALL
        .iter()
        .map(|&cause| LikelyCause {
            cause,
            share: shares[cause as usize],
            reasons: reasons(evidence, table, cause),
            check: check(cause, evidence, scene),
            remedy: cause.remedy(),
        })
        .collect();
    crate::order::sort_by(&mut causes, |one, other| other.share.total_cmp(&one.share));
    causes
}

/// Share of each cause given the clues.
fn shares(evidence: &Evidence, table: &CauseTable) -> PerCause {
    let chances = evidence.known().filter_map(|(clue, answer)| table.chances(clue, answer));
    let mut shares = chances.fold(table.prior, |mut shares, chances| {
        for (share, chance) in shares.iter_mut().zip(chances) {
            *share *= chance;
        }
        shares
    });
    let sum: f64 = shares.iter().sum();
    for share in &mut shares {
        *share /= sum;
    }
    shares
}

/// Returns what each known clue says of a cause: 10 · log10 of how likely its answer is under the cause against the other
/// causes, these weighted by their prior (Good 1950, value from memory).
fn reasons(evidence: &Evidence, table: &CauseTable, cause: FailureCause) -> Vec<CauseReason> {
    let own = cause as usize;
    let mut reasons: Vec<CauseReason> = evidence
        .known()
        .filter_map(|(clue, answer)| {
            let chances = table.chances(clue, answer)?;
            let others = chances.iter().zip(&table.prior).enumerate().filter(|(at, _)| *at != own);
            let (sum, weight) = others.fold((0.0, 0.0), |(sum, weight), (_, (chance, prior))| {
                (sum + chance * prior, weight + prior)
            });
            Some(CauseReason { clue, answer, decibans: 10.0 * (chances[own] / (sum / weight)).log10() })
        })
        .collect();
    crate::order::sort_by(&mut reasons, |one, other| other.decibans.abs().total_cmp(&one.decibans.abs()));
    reasons
}

/// The check that is still to be made: the roll before a change that wants one, then the cause's own.
fn check(cause: FailureCause, evidence: &Evidence, scene: &Scene) -> Option<Check> {
    let roll = Some(Check::RollAtTip).filter(|_| cause.remedy().wants_a_roll());
    roll.into_iter().chain([cause.check()]).find(|check| !is_made(*check, evidence, scene))
}

/// Returns whether a check has been made; one that cannot tell anything here counts as made.
fn is_made(check: Check, evidence: &Evidence, scene: &Scene) -> bool {
    match check {
        Check::RollAtTip => {
            let texture = scene.notes.field.texture.map(crate::record::TextureNote::group);
            evidence.has(PassClue::Roll) || texture == Some(TextureGroup::Sand)
        }
        Check::MeasureSlots => evidence.has(PassClue::Depth),
        Check::LookAtWalls => evidence.has(PassClue::Profile) && evidence.has(PassClue::Smear),
        Check::ReadAcross => evidence.has(PassClue::Pattern) && scene.machine.is_some(),
        Check::TimeTheRun => scene.pass.speed_kmh.is_some(),
        Check::LookAtFeet => evidence.has(PassClue::Feet),
        Check::SlotsAcross => evidence.has(PassClue::Slots),
        Check::LookForOldSlots => evidence.has(PassClue::OldSlots),
    }
}
