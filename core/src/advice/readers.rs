//! Holes of a field that several people read: which pits of the notes they are, how far the readers agree, and whether
//! it matters.

use super::agreement::{Agreement, ReaderFace, SLICE_MM, agreement};
use super::call::What;
use super::pit_view::{Limiting, PitView};
use super::zones::alike;
use crate::place::{UNSTATED_ACCURACY_M, walk};
use crate::reading::{FaceLayer, FieldReading, LayerReading, PitReading};
use crate::record::{Call, FieldNotes, Pit, PlaceKind, Position, Sign, Zone};
use chrono::NaiveDate;
use std::collections::HashMap;

/// A degree of latitude is nowhere shorter, in metres (110,574 at the equator on the ellipsoid of WGS 84), and no way is shorter than its way
/// from south to north.
const LEAST_M_A_DEGREE: f64 = 110_000.0;

/// What several readers of the same holes say.
#[derive(Debug, Clone, PartialEq)]
pub struct SeveralReaders {
    /// Each hole, as the indices of the pits that are readings of it.
    pub holes: Vec<Vec<usize>>,
    /// The calls that follow for those pits, in the same order; `None` where a pit cannot be judged.
    pub calls: Vec<Vec<Option<Call>>>,
    /// How far the readers agree over all these holes.
    pub agreement: Agreement,
}

/// The holes of a field that several people read; `None` where there is none. `reading` is that of the same notes.
pub fn several_readers(notes: &FieldNotes, reading: &FieldReading) -> Option<SeveralReaders> {
    let pits: Vec<&Pit> = notes.pits.iter().collect();
    let holes = holes(&pits);
    let call_of = |index: usize| {
        PitView::of(&notes.pits[index], &reading.pits[index], &notes.field)
            .judged()
            .map(|(limiting, _)| limiting.call)
    };
    let calls: Vec<Vec<Option<Call>>> =
        holes.iter().map(|hole| hole.iter().map(|&index| call_of(index)).collect()).collect();
    let faces: Vec<Vec<ReaderFace>> = holes
        .iter()
        .zip(&calls)
        .map(|(hole, calls)| {
            let each = hole.iter().zip(calls);
            each.map(|(&index, call)| face(&notes.pits[index], &reading.pits[index], *call)).collect()
        })
        .collect();
    (!holes.is_empty()).then(|| SeveralReaders { agreement: agreement(&faces), holes, calls })
}

/// Which of some pits are readings of one hole by several people, as their indices. Only pits of one day and one kind of place are
/// compared with each other.
fn holes(pits: &[&Pit]) -> Vec<Vec<usize>> {
    let mut holes: Vec<Vec<usize>> = Vec::new();
    let mut alike: HashMap<(PlaceKind, NaiveDate), Vec<usize>> = HashMap::new();
    for (index, pit) in pits.iter().enumerate() {
        let Some(day) = day(pit).filter(|_| pit.by.is_some()) else { continue };
        let alike = alike.entry((pit.place, day)).or_default();
        match alike.iter().copied().find(|&hole: &usize| are_one_hole(pits[holes[hole][0]], pit)) {
            Some(hole) if holes[hole].iter().all(|&other| pits[other].by != pit.by) => {
                holes[hole].push(index);
            }
            _ => {
                alike.push(holes.len());
                holes.push(vec![index]);
            }
        }
    }
    holes.retain(|hole| hole.len() > 1);
    holes
}

/// Bars the pits of every hole whose readers would do different things: it gives no call until they have looked again. To
/// leave it and roots first count as the same, for both keep steel out. `number_of` tells a pit's number in the notes.
pub(super) fn bar_where_they_differ(views: &mut [(Zone, PitView)], number_of: impl Fn(&Pit) -> usize) {
    let pits: Vec<&Pit> = views.iter().map(|(_, view)| view.pit).collect();
    for hole in holes(&pits) {
        let judged: Vec<(&PitView, &Limiting, &LayerReading)> = hole
            .iter()
            .filter_map(|&at| views[at].1.judged().map(|(limiting, layer)| (&views[at].1, limiting, layer)))
            .collect();
        let Some((&(one, first, layer), other)) = judged.split_first().and_then(|(one, others)| {
            let differs = others.iter().find(|(_, limiting, _)| !alike(limiting.doing(), one.1.doing()));
            Some((one, differs?))
        }) else {
            continue;
        };
        let (top_mm, bottom_mm) = (layer.top_mm.min(other.2.top_mm), layer.bottom_mm.max(other.2.bottom_mm));
        let what = What::ReadersDiffer {
            pits: [one, other.0].map(|view| number_of(view.pit)),
            calls: [first.doing(), other.1.doing()],
            top_mm,
            bottom_mm,
            signs: differing(one.reading, other.0.reading, top_mm, bottom_mm),
        };
        for at in hole {
            views[at].1.barred.get_or_insert_with(|| what.clone());
        }
    }
}

/// The signs for which two readings give different answers somewhere between two depths, in the order of [`Sign::ALL`].
fn differing(one: &PitReading, other: &PitReading, top_mm: u32, bottom_mm: u32) -> Vec<Sign> {
    let answer = |reading: &PitReading, sign: Sign, depth_mm: u32| {
        let holds = |layer: &&LayerReading| (layer.top_mm..layer.bottom_mm).contains(&depth_mm);
        reading.layers.iter().find(holds).and_then(|layer| layer.signs.get(sign))
    };
    let depths = || (top_mm..bottom_mm).step_by((SLICE_MM / 2) as usize);
    let differs = |sign: &Sign| {
        depths().any(|depth_mm| {
            let both = answer(one, *sign, depth_mm).zip(answer(other, *sign, depth_mm));
            both.is_some_and(|(one, other)| one != other)
        })
    };
    Sign::ALL.iter().copied().filter(differs).collect()
}

/// Returns whether two pits of one day and one kind of place are readings of one hole: by different people, and no further apart than their
/// positions may be off. Our judgement.
fn are_one_hole(one: &Pit, other: &Pit) -> bool {
    let together = |(one, other): (Position, Position)| {
        let off_m = accuracy_m(one) + accuracy_m(other);
        // Most pits are further apart than that from south to north alone, which costs next to nothing to tell.
        let north_m = (one.latitude_deg - other.latitude_deg).abs() * LEAST_M_A_DEGREE;
        north_m <= off_m && walk(place(one), place(other)).distance_m <= off_m
    };
    one.by != other.by && one.at.zip(other.at).is_some_and(together)
}

fn day(pit: &Pit) -> Option<NaiveDate> {
    pit.dug.map(|dug| dug.date_naive())
}

fn accuracy_m(position: Position) -> f64 {
    position.accuracy_m.unwrap_or(UNSTATED_ACCURACY_M)
}

const fn place(position: Position) -> [f64; 2] {
    [position.longitude_deg, position.latitude_deg]
}

fn face(pit: &Pit, read: &PitReading, call: Option<Call>) -> ReaderFace {
    let layer = |layer: &crate::reading::LayerReading| FaceLayer {
        top_mm: layer.top_mm,
        bottom_mm: layer.bottom_mm,
        signs: layer.signs,
        texture: layer.texture,
    };
    let by = pit.by.clone().unwrap_or_default();
    ReaderFace { by, layers: read.layers.iter().map(layer).collect(), call }
}
