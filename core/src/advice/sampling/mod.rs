//! How many pits, and where: the share of ground harmed in each zone, when the pits dug settle the call, and where
//! the next one tells most.

mod ground;
mod next_pit;
mod sequential;
mod share;
mod site;

pub use next_pit::{At, DIG_CLEARANCE_M, Ground, Next, ZoneGround, next_pit};
pub use sequential::{Bounds, Plan, PlanFault, Settled, usual_area_ha};
pub use share::{Count, Regret, Share};
pub(in crate::advice) use site::place_in;

use super::{Sorted, all_stand_for};
use crate::place::FieldMap;
use crate::reading::FieldReading;
use crate::record::{FieldNotes, Zone};

/// The pits of each zone that can be judged and how many of them met a harmed layer, in the order of [`Zone::ALL`];
/// zones without a pit have none. Reference pits stand for no zone; alike twins count once. `reading` is that of the
/// same notes.
pub fn counts(notes: &FieldNotes, reading: &FieldReading) -> Vec<(Zone, Count)> {
    counts_on(notes, reading, &FieldMap::of(&notes.field))
}

/// The same for a field that is laid out already.
pub(super) fn counts_on(notes: &FieldNotes, reading: &FieldReading, map: &FieldMap) -> Vec<(Zone, Count)> {
    let sorted = Sorted::of(notes, reading, &all_stand_for(map, notes));
    let of = |zone: Zone| {
        let (views, _) = sorted.of_zone(zone)?;
        let judged: Vec<_> = views.iter().filter(|view| view.judged().is_some()).collect();
        let harmed = judged.iter().filter(|view| view.harmed_bottom_mm().is_some()).count();
        Some((zone, Count::new(judged.len() as u32, harmed as u32)))
    };
    Zone::ALL.iter().filter_map(|&zone| of(zone)).collect()
}
