//! How near a tip may come to what lies buried: tables, a row a kind, with their sources.

use crate::advice::call::Obstacle;
use crate::record::{Buried, Field, LineSort};
use chrono::{Days, NaiveDate};

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

/// The clearances where no more is known than the kind, a row a kind. Some 50 mm of wander of the tip are within each.
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

/// What holds over a line of which it is known what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// The ground is worked; where its depth is not known, no deeper than this.
    Worked {
        /// Deepest tip over one of unknown depth.
        deepest_mm: u32,
    },
    /// Where a tip would come too near, the legs are lifted over a strip.
    LiftOut {
        /// Strip on each side where its depth was measured.
        found_m: u32,
        /// Strip on each side where nobody measured it.
        sought_m: u32,
    },
    /// The legs are lifted over a strip until its owner gives leave.
    LiftOutUntilLeave {
        /// Strip on each side.
        side_m: u32,
    },
    /// Nothing within this distance is loosened until its owner gives leave.
    StopUntilLeave {
        /// Distance on each side.
        within_m: u32,
    },
}

/// How near the deepest tip may come to a line of which it is known what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Known {
    /// What it is.
    pub sort: LineSort,
    /// Kept above its top, where it may be worked over.
    pub above_mm: u32,
    /// What holds over it.
    pub over: Over,
    /// Where the figures come from.
    pub source: &'static str,
}

/// The clearances of lines of which it is known what they are, a row each.
pub const KNOWN: [Known; LineSort::ALL.len()] = [
    Known {
        sort: LineSort::DrainInStone,
        above_mm: 150,
        over: Over::Worked { deepest_mm: 350 },
        source: "the leg may touch the stone and spares the pipe (Irish Farmers Journal); 150 mm, and 500 mm taken for a \
                 depth not known: our judgement",
    },
    Known {
        sort: LineSort::BareDrain,
        above_mm: 200,
        over: Over::Worked { deepest_mm: 300 },
        source: "our judgement, as for any drain: old ones break easily; 500 mm taken for a depth not known",
    },
    Known {
        sort: LineSort::PowerCable,
        above_mm: 600,
        over: Over::StopUntilLeave { within_m: 30 },
        source: "taken over from gas and oil: our judgement; farm ground has 910 mm of cover and a tape up to 250 mm above \
                 the cable (a network's cable handling sheet)",
    },
    Known {
        sort: LineSort::GasOrOil,
        above_mm: 600,
        over: Over::StopUntilLeave { within_m: 30 },
        source: "600 mm of clear soil (British Pipeline Agency, Know What's Below); 30 m on each side (Canada Energy \
                 Regulator, agricultural activities near pipelines)",
    },
    Known {
        sort: LineSort::WaterMain,
        above_mm: 600,
        over: Over::LiftOutUntilLeave { side_m: 5 },
        source: "nothing is built within 3 to 4.5 m of a main (Bournemouth Water); 5 m, and 600 mm with leave: our judgement",
    },
    Known {
        sort: LineSort::FarmWater,
        above_mm: 300,
        over: Over::LiftOut { found_m: 2, sought_m: 5 },
        source: "our judgement; a service pipe is laid at 750 mm at least (Water Supply (Water Fittings) Regulations 1999, as \
                 quoted), one to a trough often much shallower (value from memory)",
    },
    Known {
        sort: LineSort::Telephone,
        above_mm: 300,
        over: Over::LiftOut { found_m: 2, sought_m: 5 },
        source: "our judgement; rural fibre lies at 0.6 to 1.2 m in worked land (a community scheme's page for landowners)",
    },
];

/// Without its owner's leave no clearance above a service is less than this: our judgement, as is usual above farm water
/// pipes and fibre; 300 mm is also the strictest depth published below which nobody may assume leave (Gas Networks
/// Ireland, First Gas, Colonial Pipeline).
pub const SERVICE_FLOOR_MM: u32 = 300;
/// Where nobody was asked what lies under a field, a tip deeper than this goes with a caution that leads: the strictest
/// depth published for ordinary farm work over pipes (Gas Networks Ireland, First Gas, Tasmanian Department of Justice).
pub const UNASKED_DEEPEST_MM: u32 = 300;
/// Days after which an answer of an owner lapses: a year. Our judgement.
pub const ASKED_HOLDS_DAYS: u64 = 365;

/// The row of a kind.
pub fn clearance_of(kind: Buried) -> Clearance {
    let row = CLEARANCES.iter().find(|row| row.kind == kind);
    row.copied().unwrap_or(CLEARANCES[CLEARANCES.len() - 1])
}

/// The row of what a line is known to be.
pub fn known_of(sort: LineSort) -> Known {
    KNOWN[sort as usize]
}

/// Clearance kept above what lies buried in a field on a day: as set for it, else the usual one.
pub fn kept_mm(field: &Field, kind: Buried, today: Option<NaiveDate>) -> u32 {
    kept_above(field, kind, clearance_of(kind).above_mm, today)
}

/// The same of a line of which it is known what it is.
pub fn kept_above_known_mm(field: &Field, sort: LineSort, today: Option<NaiveDate>) -> u32 {
    kept_above(field, sort.kind(), known_of(sort).above_mm, today)
}

fn kept_above(field: &Field, kind: Buried, usual_mm: u32, today: Option<NaiveDate>) -> u32 {
    if kind != Buried::Service {
        return field.clearance_mm.unwrap_or(usual_mm);
    }
    let set = field.services_clearance_mm.unwrap_or(usual_mm);
    if leave_holds(field, today) { set } else { set.max(SERVICE_FLOOR_MM) }
}

/// Returns whether the owner of what lies there was asked and gave leave, and the answer has not lapsed.
pub fn leave_holds(field: &Field, today: Option<NaiveDate>) -> bool {
    field.services_leave == Some(true) && asked_holds(field, today)
}

/// Returns whether somebody was asked, on a known day that is not too long ago. Of a field that is read without a day no answer
/// has lapsed.
pub fn asked_holds(field: &Field, today: Option<NaiveDate>) -> bool {
    let until = field.services_asked_on.and_then(|on| on.checked_add_days(Days::new(ASKED_HOLDS_DAYS)));
    until.is_some_and(|until| today.is_none_or(|today| today <= until))
}

/// Returns what stands in the way, where no more is known than the kind.
pub const fn obstacle(kind: Buried) -> Obstacle {
    match kind {
        Buried::Drain => Obstacle::Drains,
        Buried::MoleDrain => Obstacle::MoleDrains,
        Buried::Service => Obstacle::Services,
    }
}

/// Returns what stands in the way, where it is known what it is.
pub const fn obstacle_known(sort: LineSort) -> Obstacle {
    match sort {
        LineSort::DrainInStone => Obstacle::DrainsInStone,
        LineSort::BareDrain => Obstacle::BareDrains,
        LineSort::PowerCable => Obstacle::PowerCables,
        LineSort::GasOrOil => Obstacle::GasOrOil,
        LineSort::WaterMain => Obstacle::WaterMains,
        LineSort::FarmWater => Obstacle::FarmWater,
        LineSort::Telephone => Obstacle::Telephone,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_stands_in_its_place_and_has_a_source() {
        for (row, &sort) in KNOWN.iter().zip(LineSort::ALL) {
            assert_eq!(row.sort, sort);
            assert!(!row.source.is_empty());
        }
    }
}
