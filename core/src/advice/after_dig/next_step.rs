//! From the holes of a pass to what comes next.

use super::codes::{Check, Lasting, NextStep, Remedy, Verdict};
use super::evidence::Rolled;
use super::{DigAdvice, Held, LikelyCause};
use crate::record::{Extent, Pass, Zone};

/// From this share on the likeliest cause is acted upon without the check. Our judgement.
const CLEAR: f64 = 0.6;
/// Among how many of the first causes a check is still worth making.
const CANDIDATES: usize = 2;

/// What comes next, with the check or the change it is about.
pub type Next = (NextStep, Option<Check>, Option<Remedy>);

/// The worst verdict of the holes of the same season that can say.
pub fn verdict(digs: &[DigAdvice]) -> Option<Verdict> {
    let fresh = || digs.iter().filter(|dig| !dig.season_on).map(|dig| dig.verdict);
    fresh().filter(|verdict| *verdict != Verdict::CannotSay).max().or_else(|| fresh().next())
}

/// Returns what comes next. `rolled`: soil from the depth of the tip, that day.
pub fn next(pass: &Pass, digs: &[DigAdvice], held: Option<Held>, rolled: Rolled) -> Next {
    if let Some(held) = held {
        let lost = held.lasting == Lasting::Lost;
        return (if lost { NextStep::StopLoosening } else { NextStep::KeepOff }, None, None);
    }
    let whole = pass.extent == Some(Extent::Zone);
    match verdict(digs) {
        Some(Verdict::Done) if whole => (NextStep::KeepOff, None, None),
        Some(Verdict::Worse) if whole => (NextStep::StopLoosening, None, None),
        // Whatever the strip looks like, soil that rolls at the tip is not to be loosened (Tasmania, DAFWA 2017).
        _ if rolled == Rolled::Thread => (NextStep::Wait, None, Some(Remedy::WaitForDrier)),
        None | Some(Verdict::CannotSay) => (NextStep::DigBehind, None, None),
        Some(Verdict::Done) => (NextStep::GoOn, None, None),
        Some(worst) => {
            // Of equally bad holes the one whose cause stands out most, whatever their order.
            let bad = digs.iter().filter(|dig| !dig.season_on && dig.verdict == worst);
            let clearest = bad.max_by(|one, other| {
                let share = |dig: &DigAdvice| dig.causes.first().map_or(0.0, |cause| cause.share);
                share(one).total_cmp(&share(other)).then_with(|| other.dig.cmp(&one.dig))
            });
            clearest.map_or((NextStep::DigBehind, None, None), |dig| by_causes(&dig.causes, rolled))
        }
    }
}

fn by_causes(causes: &[LikelyCause], rolled: Rolled) -> Next {
    let Some(first) = causes.first() else { return (NextStep::DigBehind, None, None) };
    if rolled == Rolled::NotYet && first.remedy.wants_a_roll() {
        return (NextStep::CheckFirst, Some(Check::RollAtTip), None);
    }
    let check = causes.iter().take(CANDIDATES).find_map(|cause| cause.check);
    if first.share < CLEAR && check.is_some() {
        return (NextStep::CheckFirst, check, None);
    }
    let waits = matches!(first.remedy, Remedy::WaitForDrier | Remedy::WaitForMoister);
    (if waits { NextStep::Wait } else { NextStep::ChangeAndTry }, None, Some(first.remedy))
}

/// Returns whether a pass over a whole zone had no trial strip before it that was found done. A strip without a day counts as
/// earlier; for the whole field a strip in any zone counts.
pub fn no_strip_before(pass: &Pass, others: &[(&Pass, Option<Verdict>)]) -> bool {
    let whole_field = |zone: Option<Zone>| matches!(zone, None | Some(Zone::Whole));
    let serves = |strip: &Pass| {
        strip.id != pass.id
            && strip.extent == Some(Extent::TrialStrip)
            && (strip.zone == pass.zone || whole_field(pass.zone))
            && strip.done.zip(pass.done).is_none_or(|(strip, pass)| strip <= pass)
    };
    pass.extent == Some(Extent::Zone)
        && !others.iter().any(|(strip, verdict)| serves(strip) && *verdict == Some(Verdict::Done))
}
