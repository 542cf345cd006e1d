//! What a pass was to reach, and the pit it is compared with.

use super::Pair;
use super::codes::PairBy;
use crate::advice::machine::layer_of;
use crate::advice::pit_view::PitView;
use crate::advice::{FieldAdvice, TIP_BELOW_LEAST_MM, TIP_BELOW_MOST_MM, ZoneCall, stands_for};
use crate::place::{FieldMap, walk};
use crate::reading::FieldReading;
use crate::record::{AfterDig, Condition, FieldNotes, Pass, Pit, Position, Zone};

/// What a pass was to reach at a hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(clippy::struct_field_names, reason = "names carry the unit")]
pub struct Wanted {
    /// Tip depth.
    pub depth_mm: Option<u32>,
    /// Bottom of the layer to be broken.
    pub layer_bottom_mm: Option<u32>,
    /// Its top, where that is known too.
    pub layer_top_mm: Option<u32>,
}

impl Wanted {
    /// Shallowest and deepest slot that do: those the layer calls for, else the tip depth itself.
    pub fn range_mm(self) -> Option<(u32, u32)> {
        match (self.layer_bottom_mm, self.depth_mm) {
            (Some(bottom_mm), _) => Some((
                bottom_mm.saturating_add(TIP_BELOW_LEAST_MM),
                bottom_mm.saturating_add(TIP_BELOW_MOST_MM),
            )),
            (None, depth) => depth.map(|depth_mm| (depth_mm, depth_mm)),
        }
    }
}

/// The pit before a hole, read.
#[derive(Debug, Clone)]
pub struct PitBefore<'a> {
    view: PitView<'a>,
    by: PairBy,
}

impl<'a> PitBefore<'a> {
    /// The pit named in the notes; else, of those of the pass's zone dug before it, the nearest, or the last where a
    /// position is missing.
    pub fn of(
        dig: &AfterDig,
        pass: &Pass,
        (notes, map): (&'a FieldNotes, &FieldMap),
        reading: &'a FieldReading,
    ) -> Option<Self> {
        let pits: Vec<_> = notes.pits.iter().zip(&reading.pits).collect();
        if let Some(before) = dig.before {
            let &(pit, read) = pits.iter().find(|(pit, _)| pit.id == before)?;
            return Some(Self { view: PitView::of(pit, read, &notes.field), by: PairBy::Noted });
        }
        let done = pass.done?;
        let day = |pit: &Pit| pit.dug.map(|dug| dug.date_naive());
        let in_zone = |pit: &Pit| match pass.zone {
            None | Some(Zone::Whole) => stands_for(map, pit).is_some(),
            zone => stands_for(map, pit) == zone,
        };
        let earlier =
            pits.into_iter().filter(|(pit, _)| in_zone(pit) && day(pit).is_some_and(|day| day <= done));
        let (near, other): (Vec<_>, Vec<_>) =
            earlier.partition(|(pit, _)| dig.at.is_some() && pit.at.is_some());
        let away_m = |pit: &Pit| {
            dig.at.zip(pit.at).map_or(f64::INFINITY, |(dig, pit)| walk(place(dig), place(pit)).distance_m)
        };
        let nearest = near.into_iter().min_by(|(one, _), (next, _)| {
            away_m(one).total_cmp(&away_m(next)).then_with(|| one.id.cmp(&next.id))
        });
        let last = || other.into_iter().max_by_key(|(pit, _)| (pit.dug, pit.id));
        let ((pit, read), by) = nearest
            .map(|found| (found, PairBy::Nearest))
            .or_else(|| last().map(|found| (found, PairBy::Last)))?;
        Some(Self { view: PitView::of(pit, read, &notes.field), by })
    }

    /// Depth to its first Tight or Shut layer.
    pub fn firm_mm(&self) -> Option<u32> {
        let layers = &self.view.reading.layers;
        layers.iter().find(|layer| layer.condition >= Condition::Tight).map(|layer| layer.top_mm)
    }

    /// It beside the hole; `None` where no face was noted.
    pub fn pair(&self, firm_now_mm: Option<u32>) -> Option<Pair> {
        let layers = &self.view.reading.layers;
        let worst =
            layers.iter().reduce(|one, next| if next.condition > one.condition { next } else { one })?;
        Some(Pair {
            before: self.view.pit.id,
            by: self.by,
            condition: worst.condition,
            top_mm: worst.top_mm,
            bottom_mm: worst.bottom_mm,
            firm_before_mm: self.firm_mm(),
            firm_now_mm,
        })
    }
}

const fn place(at: Position) -> [f64; 2] {
    [at.longitude_deg, at.latitude_deg]
}

/// The call for the zone of a pass.
fn zone_call<'a>(pass: &Pass, advice: &'a FieldAdvice) -> Option<&'a ZoneCall> {
    match pass.zone {
        None | Some(Zone::Whole) => Some(&advice.whole),
        Some(zone) => advice.zones.iter().find(|call| call.zone == zone),
    }
}

/// Returns what a pass was to reach: its own tip depth, else the zone's; the harmed layer of the pit before, else the zone's.
/// Where the pit named as the one before was read and has no harmed layer, there is none to break.
pub fn wanted(pass: &Pass, before: Option<&PitBefore>, advice: &FieldAdvice) -> Wanted {
    let tip = zone_call(pass, advice).and_then(|call| call.tip);
    let of_pit = before.and_then(|before| before.view.harmed_bottom_mm());
    let none_to_break =
        before.is_some_and(|before| before.by == PairBy::Noted && before.view.judged().is_some());
    let of_zone = tip.map(|tip| tip.bottom_mm).filter(|_| !none_to_break);
    let top_of_pit = of_pit.and_then(|_| before?.view.harmed_top_mm());
    let top_of_zone = || layer_of(zone_call(pass, advice)?).map(|layer| layer.top_mm);
    Wanted {
        depth_mm: pass.tip_mm.or(tip.map(|tip| tip.lo_mm)),
        layer_bottom_mm: of_pit.or(of_zone),
        layer_top_mm: if of_pit.is_some() { top_of_pit } else { of_zone.and_then(|_| top_of_zone()) },
    }
}
