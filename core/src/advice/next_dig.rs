//! What to dig next: one place, one reason, one stop, for whoever asks.

use super::call::{FieldAdvice, Stance, Sureness, What, ZoneCall};
use super::sampling::{Ground, Next, Plan, PlanFault, Settled, ZoneGround, place_in};
use crate::record::Call;
use crate::record::codes::codes;

/// A tip depth less sure than this to clear the share it is meant to wants more pits. Our judgement.
const DEPTH_SURE_ENOUGH: f64 = 0.5;

codes!(
    /// What a field or a zone still lacks; the first is mended first.
    Lacks {
        /// A reference pit: nothing can be held against it.
        Reference = "reference",
        /// It was worked since its pits were dug, and nobody has looked behind the machine.
        Behind = "behind",
        /// Its pits give no call.
        Call = "call",
        /// Its call is not sure enough to act on.
        Sureness = "sureness",
        /// Its pits do not settle yet how much of the ground is harmed.
        Share = "share",
        /// Its tip depth rests on too few pits.
        Depth = "depth",
    }
);

/// What to dig next, and why.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NextDig {
    /// What, and where.
    pub next: Next,
    /// Why; `None` where no more is to be dug.
    pub why: Option<Lacks>,
}

/// Returns what to dig next: of the zones that lack the same, the one with most at stake. `ground` and `advice` are those of the
/// same notes.
///
/// # Errors
/// A figure of the plan that cannot be worked with.
pub fn next_dig(ground: &Ground, advice: &FieldAdvice, plan: &Plan) -> Result<NextDig, PlanFault> {
    plan.check()?;
    let stake = |zone: &ZoneGround| plan.regret_ha(zone.count, zone.area_ha()).least();
    let mut best: Option<(Lacks, &ZoneGround)> = None;
    for zone in &ground.zones {
        let call = advice.zones.iter().find(|call| call.zone == zone.zone);
        let Some(lacks) = lacks(call, zone.verdict(plan)) else { continue };
        let sooner = |&(before, other): &(Lacks, &ZoneGround)| {
            (lacks as u8, -stake(zone)) < (before as u8, -stake(other))
        };
        if best.as_ref().is_none_or(sooner) {
            best = Some((lacks, zone));
        }
    }
    // A field whose every zone is settled misses no reference: it is sound by itself.
    if !ground.reference_dug && best.is_some() {
        return Ok(NextDig { next: Next::Reference, why: Some(Lacks::Reference) });
    }
    Ok(best.map_or(NextDig { next: Next::Stop, why: None }, |(lacks, zone)| {
        let next = if lacks == Lacks::Behind {
            Next::Behind { zone: zone.zone }
        } else {
            Next::Pit {
                zone: zone.zone,
                at: place_in(zone, ground),
                at_stake_ha: stake(zone),
                still_expected: plan.still_expected(zone.count, zone.area_ha()).max(1.0),
            }
        };
        NextDig { next, why: Some(lacks) }
    }))
}

fn lacks(call: Option<&ZoneCall>, settles: Settled) -> Option<Lacks> {
    let open = settles == Settled::DigOn;
    let Some(call) = call else { return open.then_some(Lacks::Share) };
    let behind = |what: &What| matches!(what, What::Behind { .. });
    if call.call == Call::DigAgain {
        let worked = call.reasons.iter().any(|why| why.stance == Stance::For && behind(&why.what));
        Some(if worked { Lacks::Behind } else { Lacks::Call })
    } else if call.reasons.iter().any(|why| why.stance == Stance::For && behind(&why.what)) {
        // The holes behind the machine speak; pits from before it would settle nothing.
        None
    } else if call.sure == Sureness::CannotSay {
        Some(Lacks::Sureness)
    } else if open {
        Some(Lacks::Share)
    } else {
        call.tip.filter(|tip| tip.confidence < DEPTH_SURE_ENOUGH).map(|_| Lacks::Depth)
    }
}
