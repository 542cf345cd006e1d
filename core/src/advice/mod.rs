//! From read pits to calls: gates, least expected regret, zones, tip depth, cautions, follow-up.
//!
//! [`advise`] goes pit by pit ([`pit_view`]), zone by zone ([`zones`]) and, where loosening is justified, through the
//! gates of the field ([`gates`]). It is pure and asks nothing; what other answers would change is asked
//! by [`changes`], when a call is shown.

pub mod after_dig;
pub mod agreement;
mod belongs;
mod buried;
mod call;
mod change;
mod gates;
pub mod ground;
mod in_time;
mod lever;
pub mod machine;
mod next_dig;
mod pit_view;
pub mod readers;
pub mod regret;
pub mod sampling;
mod steel;
mod sureness;
mod tip;
mod tolerance;
mod twins;
mod water;
mod worth_asking;
mod zones;

pub use buried::{
    ASKED_HOLDS_DAYS, CLEARANCES, Clearance, KNOWN, Known, Over, SERVICE_FLOOR_MM, UNASKED_DEEPEST_MM,
    clearance_of, known_of,
};
pub use call::{
    Caution, Change, ChangedAnswer, FieldAdvice, FollowUp, Obstacle, OfGround, Readiness, RootingLoss,
    Stance, Sureness, TipDepth, WaterHeld, What, Why, ZoneCall,
};
pub use change::changes;
pub(crate) use change::changes_on;
pub use gates::{ROLL_HOLDS_DAYS, fitted};
pub(crate) use in_time::{covers, last_day, recent_loosening};
pub use next_dig::{Lacks, NextDig, next_dig};
pub use pit_view::DEEP_ENOUGH_MM;
pub use regret::{LAYER_CALLS, REGRET, REGRET_WITHOUT_STEEL, RegretTable};
pub use tip::{CLEARED_SHARE, TIP_BELOW_LEAST_MM, TIP_BELOW_MOST_MM, tip_depth};
pub use tolerance::{confidence, rank_covering};
pub(crate) use worth_asking::worth_asking;
pub use worth_asking::{BearsOn, FieldInput, WorthAsking};

use crate::place::FieldMap;
use crate::reading::{Clue, FieldReading, LayerReading, NextLook, PitReading, Table, next_look_except};
use crate::record::{Field, FieldNotes, Pit, Zone};
use after_dig::{PassAdvice, look_behind_as_of};
use chrono::NaiveDate;
use pit_view::PitView;
use twins::Seen;
use zones::{Ground, judge, whole};

/// The calls of a field. `reading` is that of the same notes, pit by pit in the same order.
pub fn advise(notes: &FieldNotes, reading: &FieldReading) -> FieldAdvice {
    advise_on(notes, reading, &FieldMap::of(&notes.field), None).0
}

/// The calls of a field that is laid out already, as they stand on a day, and what the holes behind the machine say of each
/// pass. Without a day, on the last one that is noted.
pub(crate) fn advise_on(
    notes: &FieldNotes,
    reading: &FieldReading,
    map: &FieldMap,
    today: Option<NaiveDate>,
) -> (FieldAdvice, Vec<PassAdvice>) {
    // The map is asked once for each pit: that costs more than all else that is asked of it here.
    let stands = all_stand_for(map, notes);
    let sorted = Sorted::of(notes, reading, &stands);
    let ground = Ground::of(notes, reading, map, today.or_else(|| in_time::last_day(notes)));
    let dug = by_pits(&sorted, &ground);
    let passes = look_behind_as_of(notes, reading, &dug, map, today);
    (in_time::as_of(notes, &stands, dug, &passes), passes)
}

/// Returns what the pits say.
fn by_pits(sorted: &Sorted<'_>, ground: &Ground<'_>) -> FieldAdvice {
    let zones: Vec<ZoneCall> = Zone::ALL
        .iter()
        .filter_map(|&zone| {
            let (views, twins) = sorted.of_zone(zone)?;
            Some(judge(zone, &views, twins, ground))
        })
        .collect();
    let (views, twins) = sorted.all();
    let whole = whole(&zones, &views, twins, ground);
    FieldAdvice { zones, whole }
}

/// The look most worth taking in a pit of a field: by what each of its layers may call for. `left_out` says of a layer
/// and a clue that it was skipped or cannot be looked at.
pub fn next_look_in(
    pit: &PitReading,
    field: &Field,
    left_out: impl Fn(&LayerReading, Clue) -> bool,
) -> Option<NextLook> {
    next_look_except(pit, |layer| pit_view::regrets_of(layer, field), Table::standard(), left_out)
}

/// The pits that stand for a zone, with the twins among them set aside.
struct Sorted<'a> {
    views: Vec<(Zone, PitView<'a>)>,
    twins: Vec<Zone>,
}

impl<'a> Sorted<'a> {
    /// `stands` is the zone that each pit stands for.
    fn of(notes: &'a FieldNotes, reading: &'a FieldReading, stands: &[Option<Zone>]) -> Self {
        let pits = notes.pits.iter().zip(&reading.pits).zip(stands);
        let mut pits: Vec<_> = pits.filter_map(|((pit, read), zone)| Some(((*zone)?, pit, read))).collect();
        crate::order::sort_by_key(&mut pits, |(_, pit, _)| pit.id);
        let mut sorted = Self { views: Vec::with_capacity(pits.len()), twins: Vec::new() };
        let past: Vec<_> = Zone::ALL.iter().map(|&zone| in_time::past_until(notes, stands, zone)).collect();
        let mut seen = Seen::default();
        for (zone, pit, read) in pits {
            let day = pit.dug.map(|dug| dug.date_naive());
            if past[zone as usize].is_some_and(|past| day.is_none_or(|day| day <= past)) {
                continue;
            }
            if seen.is_first(pit) {
                sorted.views.push((zone, PitView::of(pit, read, &notes.field)));
            } else {
                sorted.twins.push(zone);
            }
        }
        let number_of = |pit: &Pit| notes.pits.iter().position(|own| own.id == pit.id).map_or(0, |at| at + 1);
        readers::bar_where_they_differ(&mut sorted.views, number_of);
        sorted
    }

    /// The pits of a zone and the number of twins left out; `None` for a zone without pits.
    fn of_zone(&self, zone: Zone) -> Option<(Vec<&PitView<'a>>, usize)> {
        let views: Vec<_> =
            self.views.iter().filter(|(stands, _)| *stands == zone).map(|(_, view)| view).collect();
        let twins = self.twins.iter().filter(|twin| **twin == zone).count();
        (!views.is_empty()).then_some((views, twins))
    }

    fn all(&self) -> (Vec<&PitView<'a>>, usize) {
        (self.views.iter().map(|(_, view)| view).collect(), self.twins.len())
    }
}

/// The zone whose call a pit bears on; one noted for the whole field stands for open ground, a reference for none.
pub fn stands_for(map: &FieldMap, pit: &Pit) -> Option<Zone> {
    map.zone_of(pit).map(|zone| if zone == Zone::Whole { Zone::Open } else { zone })
}

/// The same of each pit.
fn all_stand_for(map: &FieldMap, notes: &FieldNotes) -> Vec<Option<Zone>> {
    notes.pits.iter().map(|pit| stands_for(map, pit)).collect()
}

/// Returns whether two pits say the same in all that counts: the same pit taken in twice, whatever its ids.
fn are_twins(one: &Pit, other: &Pit) -> bool {
    one.place == other.place
        && one.zone == other.zone
        && one.at == other.at
        && one.dug == other.dug
        && one.by == other.by
        && one.dug_to_mm == other.dug_to_mm
        && one.face == other.face
        && one
            .walk
            .iter()
            .map(|step| (step.to_mm, step.comes_away, step.resistance))
            .eq(other.walk.iter().map(|step| (step.to_mm, step.comes_away, step.resistance)))
        && one
            .layers
            .iter()
            .map(|layer| (layer.top_mm, layer.bottom_mm, layer.signs, layer.texture))
            .eq(other.layers.iter().map(|layer| (layer.top_mm, layer.bottom_mm, layer.signs, layer.texture)))
        && one
            .rolls
            .iter()
            .map(|roll| (roll.depth_mm, roll.roll))
            .eq(other.rolls.iter().map(|roll| (roll.depth_mm, roll.roll)))
}
