//! Whether another pit is worth digging, and where: until each zone's call is settled.

use super::call::{FieldAdvice, Sureness, ZoneCall};
use super::sampling::{Count, Plan, Verdict, counts, usual_area_ha};
use crate::place::Outline;
use crate::reading::FieldReading;
use crate::record::{Call, Field, FieldNotes, Zone};

/// A tip depth less sure than this to clear the share it is meant to wants more pits. Our judgement.
const DEPTH_SURE_ENOUGH: f64 = 0.5;
/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// What a zone still lacks, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Lacks {
    Call,
    Sureness,
    /// The pits do not settle yet how much of the ground is harmed.
    Pits,
    Depth,
}

/// The zone where another pit would tell most; `None` where more would not change the call. `reading` and `advice`
/// are those of the same notes.
pub fn another_pit(notes: &FieldNotes, reading: &FieldReading, advice: &FieldAdvice) -> Option<Zone> {
    let zones = if advice.zones.is_empty() { std::slice::from_ref(&advice.whole) } else { &advice.zones };
    let counts = counts(notes, reading);
    let count_of = |zone: Zone| {
        counts.iter().find(|(counted, _)| *counted == zone).map_or(Count::new(0, 0), |(_, count)| *count)
    };
    zones
        .iter()
        .filter_map(|call| {
            let settles = Plan::default().verdict(count_of(call.zone), area_ha(&notes.field, call.zone));
            Some((lacks(call, settles)?, call.zone))
        })
        .min_by_key(|(lacks, _)| *lacks)
        .map(|(_, zone)| zone)
}

fn lacks(call: &ZoneCall, settles: Verdict) -> Option<Lacks> {
    if call.call == Call::DigAgain {
        Some(Lacks::Call)
    } else if call.sure == Sureness::CannotSay {
        Some(Lacks::Sureness)
    } else if settles == Verdict::DigOn {
        Some(Lacks::Pits)
    } else {
        call.tip.filter(|tip| tip.confidence < DEPTH_SURE_ENOUGH).map(|_| Lacks::Depth)
    }
}

/// Area of a zone: from the outline where it was walked, else the usual one.
fn area_ha(field: &Field, zone: Zone) -> f64 {
    let Ok(outline) = Outline::new(&field.outline) else { return usual_area_ha(zone) };
    let headland_m2 = field.headland_mm.map(|width_mm| outline.headland_m2(width_mm));
    match (zone, headland_m2) {
        (Zone::Headland, Some(headland_m2)) => headland_m2 / HECTARE_M2,
        (Zone::Open, headland_m2) => (outline.area_m2() - headland_m2.unwrap_or(0.0)) / HECTARE_M2,
        (Zone::Whole, _) => outline.area_m2() / HECTARE_M2,
        _ => usual_area_ha(zone),
    }
}
