//! The list of fields as data: where each lies, what its call is, and how far the work on it has come.

use super::{degrees, lead};
use crate::advice::Sureness;
use crate::advice::after_dig::Verdict;
use crate::answer::FieldAnswer;
use crate::place::{FieldMap, walk};
use crate::record::codes::codes;
use crate::record::{Call, Extent, FieldNotes, PartShape, RecordId, Zone};
use crate::screen::World;

/// Nearer than this one stands at a field whose edge nobody walked, metres. Our judgement.
const AT_FIELD_M: f64 = 50.0;

/// A line of the list of fields.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldListed {
    /// The field.
    pub field: RecordId,
    /// Its name, as it was given.
    pub name: String,
    /// The position lies in it; where nobody walked its edge, near what of it has a place.
    pub here: bool,
    /// Metres to its edge, 0 inside; without one to its nearest corner, pit or part. `None` without a position, or where nothing of it
    /// has one.
    pub distance_m: Option<f64>,
    /// The call that leads, as its sign and its sentence show it: work before what waits, and that before what is left alone. `None`
    /// before the first pit.
    pub call: Option<Call>,
    /// How sure that is where the pits were dug.
    pub sure: Option<Sureness>,
    /// How far the work has come.
    pub work: Work,
    /// Pits dug.
    pub pits: usize,
    /// Pits wanted in all before nothing more is to be dug, as far as can be told; never fewer than dug.
    pub pits_wanted: usize,
    /// Passes noted.
    pub passes: usize,
}

codes!(
    /// How far the work on a field has come: what stands in the way first.
    Work {
        /// No pit yet.
        NotBegun = "not_begun",
        /// Pits are dug, and more are wanted; elsewhere in the field it may be worked already.
        Digging = "digging",
        /// Nothing more is to be dug, and something is to be done.
        Called = "called",
        /// A machine has run, and it is not settled yet what came of it.
        Worked = "worked",
        /// Nothing is left to be done.
        Done = "done",
    }
);

/// All fields, the one that is stood in first, then the nearest; those of which nothing has a place come last, by name.
pub fn listed(world: &World) -> Vec<FieldListed> {
    let mut all: Vec<FieldListed> = world.fields.iter().map(|notes| one(notes, world)).collect();
    crate::order::sort_by(&mut all, |one, other| {
        let far = |field: &FieldListed| field.distance_m.unwrap_or(f64::INFINITY);
        let place = far(one).total_cmp(&far(other));
        let by_name = || (one.name.to_lowercase(), one.field).cmp(&(other.name.to_lowercase(), other.field));
        other.here.cmp(&one.here).then(place).then_with(by_name)
    });
    all
}

fn one(notes: &FieldNotes, world: &World) -> FieldListed {
    let answer = world.answer_of(notes);
    let (has_edge, distance_m) = distance_m(notes, world);
    let near_m = if has_edge { f64::MIN_POSITIVE } else { AT_FIELD_M };
    let call = lead(&answer);
    FieldListed {
        field: notes.field.id,
        name: notes.field.name.clone(),
        here: distance_m.is_some_and(|metres| metres < near_m),
        distance_m,
        call: call.map(|call| call.call),
        sure: call.map(|call| call.sure),
        work: work(&answer),
        pits: notes.pits.len(),
        pits_wanted: notes.pits.len() + still_wanted(&answer),
        passes: notes.passes.len(),
    }
}

/// Pits that are still wanted: where something is to be dug at least that one; of a tip depth as many as make it sure.
fn still_wanted(answer: &FieldAnswer) -> usize {
    use crate::advice::sampling::Next;
    match answer.next().map(|dig| dig.next) {
        Some(Next::Pit { still_expected, zone, .. }) => {
            let expected = whole(still_expected);
            let enough = answer.call_of(zone).and_then(|call| Some((call.tip?.enough_pits(), call.pits)));
            let for_depth = enough.map_or(0, |(enough, dug)| enough.saturating_sub(dug));
            expected.max(for_depth).max(1)
        }
        Some(Next::Reference) => 1,
        _ => 0,
    }
}

/// Pits that are expected, as a number of holes.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a few dozen at most, and never below 0"
)]
fn whole(expected: f64) -> usize {
    expected.max(0.0).ceil() as usize
}

fn work(answer: &FieldAnswer) -> Work {
    let notes = &answer.notes;
    if notes.pits.is_empty() && notes.passes.is_empty() {
        return Work::NotBegun;
    }
    let calls = || answer.advice.zones.iter();
    let nothing_to_do = calls().all(|zone| zone.call == Call::LeaveIt) && !notes.pits.is_empty();
    // A strip that was worked settles its zone no more than a run that nobody looked behind.
    let proved = |zone: Option<Zone>| {
        notes.passes.iter().zip(&answer.passes).any(|(pass, said)| {
            pass.zone == zone
                && pass.extent != Some(Extent::TrialStrip)
                && said.verdict == Some(Verdict::Done)
        })
    };
    let unproved = notes.passes.iter().any(|pass| !proved(pass.zone));
    match (still_wanted(answer) > 0, nothing_to_do, unproved) {
        (_, _, true) => Work::Worked,
        (true, ..) => Work::Digging,
        (false, true, false) => Work::Done,
        (false, false, false) => Work::Called,
    }
}

/// Returns whether the edge of a field is known, and metres to it, else to the nearest of what has a place.
fn distance_m(notes: &FieldNotes, world: &World) -> (bool, Option<f64>) {
    let field = &notes.field;
    let map = FieldMap::of(field);
    let has_edge = map.has_outline();
    let Some(fix) = world.fix else { return (has_edge, None) };
    if has_edge {
        return (true, Some(map.locate(&fix.position).outside_m.unwrap_or(0.0)));
    }
    let from = degrees(fix.position);
    let pits = notes.pits.iter().filter_map(|pit| pit.at).map(degrees);
    let parts = field.parts.iter().filter_map(|part| match &part.shape {
        PartShape::Ring(ring) => ring.first().copied(),
        PartShape::Circle { middle, .. } => Some(*middle),
    });
    let places = field.outline.iter().copied().chain(pits).chain(parts);
    (false, places.map(|place| walk(from, place).distance_m).min_by(f64::total_cmp))
}
