//! Whether another pit is worth digging, and where: until each zone's call is settled.

use super::call::{FieldAdvice, Sureness, ZoneCall};
use super::sampling::{Count, Plan, Settled, counts_on, usual_area_ha};
use crate::place::{FieldMap, ZoneArea};
use crate::reading::FieldReading;
use crate::record::{Call, FieldNotes, Zone};

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
    let map = FieldMap::of(&notes.field);
    let areas = map.areas();
    let counts = counts_on(notes, reading, &map);
    let count_of = |zone: Zone| {
        counts.iter().find(|(counted, _)| *counted == zone).map_or(Count::new(0, 0), |(_, count)| *count)
    };
    zones
        .iter()
        .filter_map(|call| {
            let settles = Plan::default().verdict(count_of(call.zone), area_ha(&map, &areas, call.zone));
            Some((lacks(call, settles)?, call.zone))
        })
        .min_by_key(|(lacks, _)| *lacks)
        .map(|(_, zone)| zone)
}

fn lacks(call: &ZoneCall, settles: Settled) -> Option<Lacks> {
    if call.call == Call::DigAgain {
        Some(Lacks::Call)
    } else if call.sure == Sureness::CannotSay {
        Some(Lacks::Sureness)
    } else if settles == Settled::DigOn {
        Some(Lacks::Pits)
    } else {
        call.tip.filter(|tip| tip.confidence < DEPTH_SURE_ENOUGH).map(|_| Lacks::Depth)
    }
}

/// Area of a zone: from the map where it gives one, else the usual one.
fn area_ha(map: &FieldMap, areas: &[ZoneArea], zone: Zone) -> f64 {
    let known_m2 = match zone {
        Zone::Whole => map.whole_m2(),
        zone => areas.iter().find(|area| area.zone == zone).map(|area| area.area_m2),
    };
    known_m2.map_or_else(|| usual_area_ha(zone), |area_m2| area_m2 / HECTARE_M2)
}
