//! Whether another pit is worth digging, and where: until each zone's call is settled.

use super::call::{FieldAdvice, Sureness, ZoneCall};
use crate::record::{Call, Zone};

/// Pits of a zone that say the same settle its call: Wald's sequential test (1945) of a fifth of the ground harmed
/// against three fifths, at a risk of one in five each way. A harmed pit makes the latter 3 times as likely, a sound
/// one half as likely; it ends at 4 or 1/4. Shares and risks are our judgement.
const ALIKE_PITS: usize = 2;
/// A tip depth less sure than this to clear the share it is meant to wants more pits. Our judgement.
const DEPTH_SURE_ENOUGH: f64 = 0.5;

/// What a zone still lacks, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Lacks {
    Call,
    Sureness,
    SecondPit,
    Depth,
}

/// The zone where another pit would tell most; `None` where more would not change the call.
pub fn another_pit(advice: &FieldAdvice) -> Option<Zone> {
    let zones = if advice.zones.is_empty() { std::slice::from_ref(&advice.whole) } else { &advice.zones };
    zones
        .iter()
        .filter_map(|call| Some((lacks(call)?, call.zone)))
        .min_by_key(|(lacks, _)| *lacks)
        .map(|(_, zone)| zone)
}

fn lacks(call: &ZoneCall) -> Option<Lacks> {
    if call.call == Call::DigAgain {
        Some(Lacks::Call)
    } else if call.sure == Sureness::CannotSay {
        Some(Lacks::Sureness)
    } else if call.pits < ALIKE_PITS {
        Some(Lacks::SecondPit)
    } else {
        call.tip.filter(|tip| tip.confidence < DEPTH_SURE_ENOUGH).map(|_| Lacks::Depth)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::{Readiness, tip_depth};

    fn zone(zone: Zone, call: Call, pits: usize, bottoms_mm: &[u32]) -> ZoneCall {
        ZoneCall {
            zone,
            call,
            readiness: Readiness::Fit,
            share: 0.9,
            sure: if call == Call::DigAgain { Sureness::CannotSay } else { Sureness::Sure },
            tip: tip_depth(bottoms_mm, 0.8),
            pits,
            reasons: Vec::new(),
            cautions: Vec::new(),
            would_change: Vec::new(),
            follow_up: Vec::new(),
            rooting_loss: None,
        }
    }

    fn field(zones: Vec<ZoneCall>) -> FieldAdvice {
        FieldAdvice { zones, whole: zone(Zone::Whole, Call::DigAgain, 0, &[]) }
    }

    #[test]
    fn two_alike_pits_settle_a_zone() {
        let with = |pits| another_pit(&field(vec![zone(Zone::Open, Call::LeaveIt, pits, &[])]));
        assert_eq!(with(1), Some(Zone::Open));
        assert_eq!(with(2), None);
    }

    #[test]
    fn a_depth_from_three_pits_wants_a_fourth() {
        let with = |bottoms: &[u32]| {
            another_pit(&field(vec![zone(Zone::Headland, Call::Loosen, bottoms.len(), bottoms)]))
        };
        assert_eq!(with(&[280, 300, 310]), Some(Zone::Headland));
        assert_eq!(with(&[280, 300, 310, 290]), None);
    }

    #[test]
    fn a_zone_without_a_call_comes_first_and_a_field_without_pits_wants_one() {
        let zones =
            vec![zone(Zone::Open, Call::LeaveIt, 1, &[]), zone(Zone::Gateway, Call::DigAgain, 3, &[])];
        assert_eq!(another_pit(&field(zones)), Some(Zone::Gateway));
        assert_eq!(another_pit(&field(Vec::new())), Some(Zone::Whole));
    }
}
