//! What lies buried under the ground that would be worked: how near a tip may come, and where it runs.
//!
//! No clearance makes a work safe. Plans give neither place nor depth for certain; whoever owns it is asked first, and the
//! tool says who was asked and when, never that nothing is there.

use super::call::{Obstacle, TipDepth, What};
use crate::place::{FieldMap, Plane};
use crate::record::{Buried, BuriedLine, Field, Pit, Position, Zone};
use chrono::{Days, NaiveDate};
use geo::{Distance, Euclidean, LineString, Point};

/// How near the deepest tip may come to what lies there, where nothing else was set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Clearance {
    /// What lies there.
    pub kind: Buried,
    /// Kept above its top.
    pub above_mm: u32,
    /// Deepest tip where it runs and its depth is not known; `None`: none.
    pub deepest_mm: Option<u32>,
    /// Where the figures come from.
    pub source: &'static str,
}

/// The clearances, a row a kind. Some 50 mm of wander of the tip are within each.
pub const CLEARANCES: [Clearance; 3] = [
    Clearance {
        kind: Buried::Drain,
        above_mm: 200,
        deepest_mm: Some(300),
        source: "our judgement: no published figure was found; a stone or root carries the push down to a pipe without \
                 gravel; of unknown depth it is taken at 500 mm, as old hand-laid drains lie (value from memory)",
    },
    Clearance {
        kind: Buried::MoleDrain,
        above_mm: 100,
        deepest_mm: Some(250),
        source: "our judgement: 50 mm of wander and 50 mm of smear above the roof; of unknown depth it is taken at the \
                 shallowest published, 400 mm (Agriculture Victoria)",
    },
    Clearance {
        kind: Buried::Service,
        above_mm: 600,
        deepest_mm: None,
        source: "600 mm of clear soil above a fuel pipe (British Pipeline Agency, Know What's Below); taken over for \
                 cables and for pipes of which it is not known what they carry: our judgement",
    },
];
/// Without its owner's leave no clearance above a service is less than this: our judgement, as is usual above farm water
/// pipes and fibre; 300 mm is also the strictest depth published below which nobody may assume leave (Gas Networks
/// Ireland, First Gas, Colonial Pipeline).
pub const SERVICE_FLOOR_MM: u32 = 300;
/// Days after which an answer of an owner lapses: a year. Our judgement.
pub const ASKED_HOLDS_DAYS: u64 = 365;
/// A depth so near to the clearance that a measurement may tip it. Our judgement: as far as a tip wanders.
pub const HANGS_ON_MM: u32 = 50;
/// Steps in which a line is followed to see through which zones it runs, metres. Our judgement: narrower than a headland.
const FOLLOWED_M: f64 = 4.0;

/// The row of a kind.
pub fn clearance_of(kind: Buried) -> Clearance {
    let row = CLEARANCES.iter().find(|row| row.kind == kind);
    row.copied().unwrap_or(CLEARANCES[CLEARANCES.len() - 1])
}

/// Clearance kept above what lies buried in a field on a day: as set for it, else the usual one.
pub fn kept_mm(field: &Field, kind: Buried, today: Option<NaiveDate>) -> u32 {
    let usual = clearance_of(kind).above_mm;
    if kind != Buried::Service {
        return field.clearance_mm.unwrap_or(usual);
    }
    let set = field.services_clearance_mm.unwrap_or(usual);
    if leave_holds(field, today) { set } else { set.max(SERVICE_FLOOR_MM) }
}

/// Whether the owner of what lies there was asked and gave leave, and the answer has not lapsed.
fn leave_holds(field: &Field, today: Option<NaiveDate>) -> bool {
    field.services_leave == Some(true) && asked_holds(field, today)
}

/// Whether somebody was asked, on a known day that is not too long ago. Of a field that is read without a day no answer
/// has lapsed.
pub fn asked_holds(field: &Field, today: Option<NaiveDate>) -> bool {
    let until = field.services_asked_on.and_then(|on| on.checked_add_days(Days::new(ASKED_HOLDS_DAYS)));
    until.is_some_and(|until| today.is_none_or(|today| today <= until))
}

const fn obstacle(kind: Buried) -> Obstacle {
    match kind {
        Buried::Drain => Obstacle::Drains,
        Buried::MoleDrain => Obstacle::MoleDrains,
        Buried::Service => Obstacle::Services,
    }
}

/// What is known of one kind under a zone.
struct Under {
    kind: Buried,
    /// Depth to the shallowest of them that has one.
    depth_mm: Option<u32>,
    /// One is marked whose depth nobody knows.
    unknown: bool,
}

/// What lies under a zone: noted for the field, or a line that runs through it.
fn under(field: &Field, map: &FieldMap, zone: Zone) -> Vec<Under> {
    let of_kind = |kind: Buried| {
        let noted = match kind {
            Buried::Drain => field.drains_mm,
            Buried::MoleDrain => field.mole_drains_mm,
            Buried::Service => field.services_mm,
        };
        let lines: Vec<&BuriedLine> =
            field.lines.iter().filter(|line| line.kind == kind && runs_through(line, map, zone)).collect();
        let depth_mm = lines.iter().filter_map(|line| line.depth_mm).chain(noted).min();
        let unknown = noted.is_none() && lines.iter().any(|line| line.depth_mm.is_none());
        Under { kind, depth_mm, unknown }
    };
    CLEARANCES.iter().map(|row| of_kind(row.kind)).collect()
}

/// Whether a line runs through a zone; where the map cannot tell, it does.
fn runs_through(line: &BuriedLine, map: &FieldMap, zone: Zone) -> bool {
    if zone == Zone::Whole || !map.has_outline() {
        return true;
    }
    let Some(plane) = map.plane() else { return true };
    // Wheelings run through all of the open ground.
    let asked = if zone == Zone::Wheelings { Zone::Open } else { zone };
    let lies = |at: [f64; 2]| {
        let [longitude_deg, latitude_deg] = plane.place(at);
        map.locate(&Position { longitude_deg, latitude_deg, accuracy_m: Some(0.0) }).zone == Some(asked)
    };
    let flat: Vec<[f64; 2]> = line.along.iter().map(|&place| plane.flat(place)).collect();
    let between = |ends: &[[f64; 2]]| {
        let ([from, to], steps) = ([ends[0], ends[1]], steps_of(ends));
        (0..=steps).any(|step| {
            let share = f64::from(step) / f64::from(steps);
            lies([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share])
        })
    };
    flat.first().is_some_and(|&first| lies(first)) || flat.windows(2).any(between)
}

/// Steps along a straight piece; at most a thousand, however far away its end was marked.
fn steps_of(ends: &[[f64; 2]]) -> u32 {
    let long_m = (ends[1][0] - ends[0][0]).hypot(ends[1][1] - ends[0][1]);
    (long_m / FOLLOWED_M).ceil().clamp(1.0, 1_000.0) as u32
}

/// What stands in the way of a tip range under a zone, the shallowest first, and the range as far as it can be fitted: its
/// deep end is drawn up where the shallow one still keeps clear.
pub fn fitted_under(
    field: &Field,
    map: &FieldMap,
    zone: Zone,
    mut tip: TipDepth,
    today: Option<NaiveDate>,
) -> (TipDepth, Vec<What>, Vec<What>) {
    let (mut in_the_way, mut close) = (Vec::new(), Vec::new());
    for Under { kind, depth_mm, unknown } in under(field, map, zone) {
        let obstacle = obstacle(kind);
        let clearance_mm = kept_mm(field, kind, today);
        if let Some(depth_mm) = depth_mm {
            let deepest_mm = depth_mm.saturating_sub(clearance_mm);
            if tip.lo_mm > deepest_mm {
                let tip_mm = tip.lo_mm;
                in_the_way.push((depth_mm, What::TooNear { obstacle, depth_mm, tip_mm, clearance_mm }));
            } else {
                tip.hi_mm = tip.hi_mm.min(deepest_mm);
            }
            if tip.lo_mm.abs_diff(deepest_mm) <= HANGS_ON_MM {
                close.push(What::HangsOnDepth { obstacle, depth_mm, needs_mm: tip.lo_mm + clearance_mm });
            }
        }
        if unknown && clearance_of(kind).deepest_mm.is_none_or(|deepest_mm| tip.lo_mm > deepest_mm) {
            in_the_way.push((0, What::DepthUnknown { obstacle }));
        }
    }
    crate::order::sort_by_key(&mut in_the_way, |(depth_mm, _)| *depth_mm);
    (tip, in_the_way.into_iter().map(|(_, what)| what).collect(), close)
}

/// Every service that is noted where a zone would be worked, with how far from the zone's pits it runs; and who was asked.
pub fn services_told(
    field: &Field,
    map: &FieldMap,
    zone: Zone,
    pits: &[&Pit],
    today: Option<NaiveDate>,
) -> Vec<What> {
    let lines = field.lines.iter().filter(|line| line.kind == Buried::Service);
    let mut told: Vec<What> = lines
        .filter_map(|line| {
            let away_m = nearest_m(line, pits);
            let here = runs_through(line, map, zone);
            (here || away_m.is_some())
                .then_some(What::Service { depth_mm: line.depth_mm.or(field.services_mm), away_m })
        })
        .collect();
    if told.is_empty() {
        told.extend(field.services_mm.map(|mm| What::Service { depth_mm: Some(mm), away_m: None }));
    }
    if let Some(whom) = &field.services_asked {
        let lapsed = !asked_holds(field, today);
        let leave = field.services_leave;
        told.push(What::Asked { whom: whom.clone(), on: field.services_asked_on, leave, lapsed });
    }
    told
}

/// Metres from the nearest of some pits to a line.
fn nearest_m(line: &BuriedLine, pits: &[&Pit]) -> Option<u32> {
    let places = pits.iter().filter_map(|pit| pit.at).map(|at| [at.longitude_deg, at.latitude_deg]);
    let away = places.filter_map(|place| {
        let plane = Plane::at(place);
        let flat: LineString = line.along.iter().map(|&at| plane.flat(at)).collect::<Vec<_>>().into();
        match flat.0.as_slice() {
            [] => None,
            [only] => Some(only.x.hypot(only.y)),
            _ => Some(Euclidean.distance(&Point::new(0.0, 0.0), &flat)),
        }
    });
    away.min_by(f64::total_cmp).map(|metres| metres.round() as u32)
}
