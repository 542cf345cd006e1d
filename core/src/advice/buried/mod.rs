//! What lies buried under the ground that would be worked: how near a tip may come, and where it runs.
//!
//! No clearance makes a work safe. Plans give neither place nor depth for certain; whoever owns it is asked first, and the
//! tool says who was asked and when, never that nothing is there.

mod clearance;
mod course;

pub use clearance::{
    ASKED_HOLDS_DAYS, CLEARANCES, Clearance, KNOWN, Known, Over, SERVICE_FLOOR_MM, UNASKED_DEEPEST_MM,
    asked_holds, clearance_of, known_of,
};

use super::call::{Obstacle, TipDepth, What};
use crate::place::FieldMap;
use crate::record::{Buried, BuriedLine, Field, LineSort, Pit, Zone};
use chrono::NaiveDate;
use clearance::{kept_above_known_mm, kept_mm, leave_holds, obstacle, obstacle_known};
use course::{nearest_m, runs_through, runs_within};

/// A depth so near to the clearance that a measurement may tip it. Our judgement: as far as a tip wanders.
const HANGS_ON_MM: u32 = 50;

/// A tip range as far as it fits over what lies buried under a zone, and what is to be said of that.
#[derive(Debug)]
pub struct Fitted {
    /// Its deep end is drawn up where the shallow one still keeps clear.
    pub tip: TipDepth,
    /// What stands in the way, the shallowest first; what needs leave and what nobody knows the depth of before all.
    pub in_the_way: Vec<What>,
    /// Depths on which the call hangs.
    pub close: Vec<What>,
    /// Strips over which the legs are lifted.
    pub lifted: Vec<What>,
}

/// What is known of one kind under a zone.
struct Under {
    kind: Buried,
    /// Depth to the shallowest of them that has one.
    depth_mm: Option<u32>,
    /// One is marked whose depth nobody knows.
    unknown: bool,
}

fn noted_mm(field: &Field, kind: Buried) -> Option<u32> {
    match kind {
        Buried::Drain => field.drains_mm,
        Buried::MoleDrain => field.mole_drains_mm,
        Buried::Service => field.services_mm,
    }
}

const fn noted_in(field: &mut Field, kind: Buried) -> &mut Option<u32> {
    match kind {
        Buried::Drain => &mut field.drains_mm,
        Buried::MoleDrain => &mut field.mole_drains_mm,
        Buried::Service => &mut field.services_mm,
    }
}

/// Returns what lies under a zone of which no more is known than its kind: noted for the field, or a line that runs through it.
fn under(field: &Field, map: &FieldMap, zone: Zone) -> Vec<Under> {
    let of_kind = |kind: Buried| {
        let noted = noted_mm(field, kind);
        let here =
            |line: &&BuriedLine| line.kind == kind && line.known().is_none() && runs_through(line, map, zone);
        let lines: Vec<&BuriedLine> = field.lines.iter().filter(here).collect();
        let depth_mm = lines.iter().filter_map(|line| line.depth_mm).chain(noted).min();
        let unknown = noted.is_none() && lines.iter().any(|line| line.depth_mm.is_none());
        Under { kind, depth_mm, unknown }
    };
    CLEARANCES.iter().map(|row| of_kind(row.kind)).collect()
}

/// A tip range fitted over all that lies under a zone.
pub fn fitted_under(
    field: &Field,
    map: &FieldMap,
    zone: Zone,
    tip: TipDepth,
    today: Option<NaiveDate>,
) -> Fitted {
    let mut fitting = Fitting { tip, in_the_way: Vec::new(), close: Vec::new(), lifted: Vec::new() };
    for Under { kind, depth_mm, unknown } in under(field, map, zone) {
        if let Some(depth_mm) = depth_mm {
            fitting.over(obstacle(kind), depth_mm, kept_mm(field, kind, today));
        }
        if unknown {
            fitting.over_unknown(obstacle(kind), clearance_of(kind).deepest_mm);
        }
    }
    for (line, sort) in field.lines.iter().filter_map(|line| Some((line, line.known()?))) {
        let depth_mm = line.depth_mm.or(noted_mm(field, line.kind));
        let clearance_mm = kept_above_known_mm(field, sort, today);
        fitting.over_known((line, sort, depth_mm), clearance_mm, leave_holds(field, today), map, zone);
    }
    let Fitting { tip, mut in_the_way, close, lifted } = fitting;
    crate::order::sort_by_key(&mut in_the_way, |(depth_mm, _)| *depth_mm);
    Fitted {
        tip,
        in_the_way: once(in_the_way.into_iter().map(|(_, what)| what).collect()),
        close: once(close),
        lifted: widest(lifted),
    }
}

/// Several lines may say the same; it is told once.
fn once(told: Vec<What>) -> Vec<What> {
    let mut all: Vec<What> = Vec::with_capacity(told.len());
    for what in told {
        if !all.contains(&what) {
            all.push(what);
        }
    }
    all
}

/// Of several strips over the same, the widest.
fn widest(strips: Vec<(Obstacle, u32)>) -> Vec<What> {
    let mut all: Vec<(Obstacle, u32)> = Vec::new();
    for (obstacle, side_m) in strips {
        match all.iter_mut().find(|(its, _)| *its == obstacle) {
            Some((_, widest_m)) => *widest_m = side_m.max(*widest_m),
            None => all.push((obstacle, side_m)),
        }
    }
    all.into_iter().map(|(obstacle, side_m)| What::LiftOut { obstacle, side_m }).collect()
}

/// A tip range while it is fitted. Each thing in the way goes with its depth, nought where that is not known.
struct Fitting {
    tip: TipDepth,
    in_the_way: Vec<(u32, What)>,
    close: Vec<What>,
    lifted: Vec<(Obstacle, u32)>,
}

impl Fitting {
    /// Keeps clear above something at a depth that is known.
    fn over(&mut self, obstacle: Obstacle, depth_mm: u32, clearance_mm: u32) {
        let deepest_mm = depth_mm.saturating_sub(clearance_mm);
        if self.tip.lo_mm > deepest_mm {
            let tip_mm = self.tip.lo_mm;
            self.in_the_way.push((depth_mm, What::TooNear { obstacle, depth_mm, tip_mm, clearance_mm }));
        } else {
            self.tip.hi_mm = self.tip.hi_mm.min(deepest_mm);
        }
        if self.tip.lo_mm.abs_diff(deepest_mm) <= HANGS_ON_MM {
            let needs_mm = self.tip.lo_mm + clearance_mm;
            self.close.push(What::HangsOnDepth { obstacle, depth_mm, needs_mm });
        }
    }

    /// Keeps above something whose depth nobody knows.
    fn over_unknown(&mut self, obstacle: Obstacle, deepest_mm: Option<u32>) {
        if deepest_mm.is_none_or(|deepest_mm| self.tip.lo_mm > deepest_mm) {
            self.in_the_way.push((0, What::DepthUnknown { obstacle }));
        }
    }

    /// Keeps clear of a line of which it is known what it is, by its row.
    fn over_known(
        &mut self,
        (line, sort, depth_mm): (&BuriedLine, LineSort, Option<u32>),
        clearance_mm: u32,
        leave: bool,
        map: &FieldMap,
        zone: Zone,
    ) {
        let obstacle = obstacle_known(sort);
        let clears = |mm: u32| self.tip.lo_mm <= mm.saturating_sub(clearance_mm);
        match known_of(sort).over {
            Over::Worked { deepest_mm } if runs_through(line, map, zone) => match depth_mm {
                Some(mm) => self.over(obstacle, mm, clearance_mm),
                None => self.over_unknown(obstacle, Some(deepest_mm)),
            },
            Over::LiftOut { found_m, sought_m } => {
                let side_m = if depth_mm.is_some() { found_m } else { sought_m };
                match depth_mm.filter(|&mm| clears(mm)) {
                    Some(mm) if runs_through(line, map, zone) => {
                        self.tip.hi_mm = self.tip.hi_mm.min(mm.saturating_sub(clearance_mm));
                    }
                    None if runs_within(line, map, zone, side_m) => self.lifted.push((obstacle, side_m)),
                    _ => {}
                }
            }
            Over::LiftOutUntilLeave { side_m } if !leave => {
                if runs_within(line, map, zone, side_m) {
                    self.lifted.push((obstacle, side_m));
                }
            }
            Over::StopUntilLeave { within_m } if !leave => {
                if runs_within(line, map, zone, within_m) {
                    self.in_the_way.push((0, What::NeedsLeave { obstacle, within_m }));
                }
            }
            Over::StopUntilLeave { within_m } if depth_mm.is_none() => {
                if runs_within(line, map, zone, within_m) {
                    self.over_unknown(obstacle, None);
                }
            }
            Over::LiftOutUntilLeave { .. } | Over::StopUntilLeave { .. } if runs_through(line, map, zone) => {
                match depth_mm {
                    Some(mm) => self.over(obstacle, mm, clearance_mm),
                    None => self.over_unknown(obstacle, None),
                }
            }
            Over::Worked { .. } | Over::LiftOutUntilLeave { .. } | Over::StopUntilLeave { .. } => {}
        }
    }
}

/// The clearance that is kept above what stands in the way.
pub fn kept_above_mm(field: &Field, obstacle: Obstacle, today: Option<NaiveDate>) -> u32 {
    match meant(obstacle) {
        (_, Some(sort)) => kept_above_known_mm(field, sort, today),
        (kind, None) => kept_mm(field, kind, today),
    }
}

/// A field in which all of what stands in the way lies at a depth or deeper.
pub fn set_deeper(field: &mut Field, obstacle: Obstacle, mm: u32) {
    let (kind, sort) = meant(obstacle);
    let noted = noted_mm(field, kind);
    for line in field.lines.iter_mut().filter(|line| line.kind == kind && line.known() == sort) {
        line.depth_mm = Some(line.depth_mm.or(noted).map_or(mm, |its| its.max(mm)));
    }
    if sort.is_none() {
        *noted_in(field, kind) = noted.map(|its| its.max(mm));
    }
}

/// A field in which some of it lies less deep.
pub fn set_shallower(field: &mut Field, obstacle: Obstacle, mm: u32) {
    let (kind, sort) = meant(obstacle);
    let depth_mm = Some(mm.saturating_sub(1));
    let line = field.lines.iter_mut().find(|line| line.kind == kind && line.known() == sort);
    match line {
        Some(line) => line.depth_mm = depth_mm,
        None => *noted_in(field, kind) = depth_mm,
    }
}

/// The kind and sort of what stands in the way.
fn meant(in_the_way: Obstacle) -> (Buried, Option<LineSort>) {
    let sort = LineSort::ALL.iter().copied().find(|&sort| obstacle_known(sort) == in_the_way);
    let kind = Buried::ALL.iter().copied().find(|&kind| obstacle(kind) == in_the_way);
    (sort.map(LineSort::kind).or(kind).unwrap_or(Buried::Service), sort)
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
            let obstacle = line.known().map_or(Obstacle::Services, obstacle_known);
            let depth_mm = line.depth_mm.or(field.services_mm);
            (here || away_m.is_some()).then_some(What::Service { obstacle, depth_mm, away_m })
        })
        .collect();
    if told.is_empty() {
        let obstacle = Obstacle::Services;
        let noted = |mm| What::Service { obstacle, depth_mm: Some(mm), away_m: None };
        told.extend(field.services_mm.map(noted));
    }
    if let Some(whom) = &field.services_asked {
        let lapsed = !asked_holds(field, today);
        let leave = field.services_leave;
        told.push(What::Asked { whom: whom.clone(), on: field.services_asked_on, leave, lapsed });
    }
    told
}
