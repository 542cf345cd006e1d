//! What a terminal is told of a field: each zone with the depth to loosen it to, as ground and as a grid of cells.
//!
//! It is advice in numbers and carries no leave to work. Ground gets a depth only where its zone's call is to loosen; a cell that reaches into
//! other ground gets that of the shallower, or none.

use crate::advice::{Readiness, ZoneCall};
use crate::answer::FieldAnswer;
use crate::place::{Outline, Rings, walk};
use crate::record::{Call, Position, Zone};

/// Depths that a terminal is told, mm. Our judgement: what lies outside is a mistake, for no tine that loosens runs there.
const SENSIBLE_MM: std::ops::RangeInclusive<u32> = 50..=1000;
/// Terminals show and set whole centimetres.
const WHOLE_MM: u32 = 10;
/// Side of a cell, metres: about the width of a machine, and as far as a receiver may be off. Our judgement.
const CELL_M: f64 = 5.0;
/// As many cells as a grid has at most; those of a larger field are larger. Our judgement: a quarter of a megabyte for a terminal.
const MOST_CELLS: f64 = 250_000.0;
/// A field that reaches further lies across the antimeridian and has no grid.
const WIDEST_DEG: f64 = 1.0;

/// A zone with ground.
#[derive(Debug, Clone)]
pub struct Prescribed<'a> {
    /// Which.
    pub zone: Zone,
    /// Its pieces of ground.
    pub ground: Vec<Rings>,
    /// Its call, where it was dug.
    pub call: Option<&'a ZoneCall>,
    /// Depth to loosen it to; `None` = it is not to be loosened.
    pub depth_mm: Option<u32>,
}

/// The zones of a field that have ground, in the order of [`Zone::ALL`].
pub fn prescribed(answer: &FieldAnswer) -> Vec<Prescribed<'_>> {
    let zones = answer.map.zones_on_globe().into_iter().filter(|(_, ground)| !ground.is_empty());
    zones
        .map(|(zone, ground)| {
            let call = answer.advice.zones.iter().find(|call| call.zone == zone);
            Prescribed { zone, ground, call, depth_mm: call.and_then(depth_mm) }
        })
        .collect()
}

/// Returns whether a zone is to be loosened that has no ground among these, because nobody noted where it lies: wheelings run anywhere.
pub fn unmarked(answer: &FieldAnswer, prescribed: &[Prescribed]) -> bool {
    let loosened = answer.advice.zones.iter().filter(|call| depth_mm(call).is_some());
    loosened.into_iter().any(|call| !prescribed.iter().any(|its| its.zone == call.zone))
}

/// The whole centimetre in the middle of the tip's range, where the zone is to be loosened now.
fn depth_mm(call: &ZoneCall) -> Option<u32> {
    let tip = call.tip.filter(|_| call.call == Call::Loosen && call.readiness != Readiness::StripFirst)?;
    let middle_mm = u32::midpoint(tip.lo_mm, tip.hi_mm);
    let whole_mm = (middle_mm + WHOLE_MM / 2) / WHOLE_MM * WHOLE_MM;
    let depth_mm = if (tip.lo_mm..=tip.hi_mm).contains(&whole_mm) { whole_mm } else { middle_mm };
    SENSIBLE_MM.contains(&depth_mm).then_some(depth_mm)
}

/// A field as cells, rows from the south, each from the west.
#[derive(Debug, Clone, PartialEq)]
pub struct Cells {
    /// South-west corner, `[longitude, latitude]` in degrees.
    pub corner: [f64; 2],
    /// Width and height of a cell in degrees.
    pub cell: [f64; 2],
    /// Cells in a row.
    pub columns: usize,
    /// Rows.
    pub rows: usize,
    /// For each cell the place in the list of zones whose depth it has; `None` = it is not to be loosened.
    pub zones: Vec<Option<usize>>,
}

/// The cells of a field for these zones of it. `None` where it has no outline, or lies across the antimeridian.
pub fn cells(answer: &FieldAnswer, prescribed: &[Prescribed]) -> Option<Cells> {
    let ring = &answer.notes.field.outline;
    Outline::new(ring).ok()?;
    let extent = |axis: usize| {
        let along = ring.iter().map(|place| place[axis]);
        (along.clone().fold(f64::INFINITY, f64::min), along.fold(f64::NEG_INFINITY, f64::max))
    };
    let ((west, east), (south, north)) = (extent(0), extent(1));
    if east - west > WIDEST_DEG || north - south > WIDEST_DEG {
        return None;
    }
    let (wide_m, high_m) = (
        walk([west, south], [east, south]).distance_m.max(CELL_M),
        walk([west, south], [west, north]).distance_m.max(CELL_M),
    );
    let side_m = CELL_M.max((wide_m * high_m / MOST_CELLS).sqrt());
    let count = |length_m: f64| (length_m / side_m).ceil();
    let (columns, rows) = (count(wide_m), count(high_m));
    let cell = [(east - west) / columns, (north - south) / rows];
    let (columns, rows) = (columns as usize, rows as usize);
    // Outside the edge is no other ground, for nothing is worked there: the outer `None`.
    let at = |column: f64, row: f64| -> Option<Option<usize>> {
        let [longitude_deg, latitude_deg] = [west + column * cell[0], south + row * cell[1]];
        let zone = answer.map.locate(&Position { longitude_deg, latitude_deg, accuracy_m: Some(0.0) }).zone?;
        Some(prescribed.iter().position(|its| its.zone == zone && its.depth_mm.is_some()))
    };
    let corners = (0..=rows).flat_map(|row| (0..=columns).map(move |column| (column as f64, row as f64)));
    let corners: Vec<Option<Option<usize>>> = corners.map(|(column, row)| at(column, row)).collect();
    let shallower = |one: usize, other: usize| {
        if prescribed[other].depth_mm < prescribed[one].depth_mm { other } else { one }
    };
    let zone_of = |column: usize, row: usize| {
        let middle = at(column as f64 + 0.5, row as f64 + 0.5)??;
        [(0, 0), (1, 0), (0, 1), (1, 1)].into_iter().try_fold(middle, |zone, (east, north)| {
            let Some(other) = corners[(row + north) * (columns + 1) + column + east] else {
                return Some(zone);
            };
            other.map(|other| shallower(zone, other))
        })
    };
    let zones = (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row)));
    let zones = zones.map(|(column, row)| zone_of(column, row)).collect();
    Some(Cells { corner: [west, south], cell, columns, rows, zones })
}
