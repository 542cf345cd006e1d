//! The list of fields as data: where each lies, what its call is, and how far the work on it has come.

use super::degrees;
use crate::advice::Sureness;
use crate::advice::after_dig::Verdict;
use crate::answer::FieldAnswer;
use crate::place::{FieldMap, walk};
use crate::record::{Call, Extent, Field, FieldNotes, RecordId, Zone};
use crate::screen::World;

/// A line of the list of fields.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldListed {
    /// The field.
    pub field: RecordId,
    /// Its name, as it was given.
    pub name: String,
    /// The position lies in it.
    pub here: bool,
    /// Metres to its nearest corner or pit; 0 where the position lies in it, `None` without a position, or where nothing of it has one.
    pub distance_m: Option<f64>,
    /// The call of the field as a whole, the most that is to be done in a zone before what is left: what its sign shows. `None` before
    /// the first pit.
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

/// How far the work on a field has come: what stands in the way first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Work {
    /// No pit yet.
    NotBegun,
    /// Pits are dug, and more are wanted; elsewhere in the field it may be worked already.
    Digging,
    /// Nothing more is to be dug, and something is to be done.
    Called,
    /// A machine has run, and it is not settled yet what came of it.
    Worked,
    /// Nothing is left to be done.
    Done,
}

/// Whether the position lies in a field.
fn stands_in(field: &Field, world: &World) -> bool {
    world.fix.is_some_and(|fix| {
        let map = FieldMap::of(field);
        map.has_outline() && map.locate(&fix.position).outside_m.is_none()
    })
}

/// All fields, the one that is stood in first, then the nearest; those of which nothing has a place come last, by name.
pub fn listed(world: &World) -> Vec<FieldListed> {
    let mut all: Vec<FieldListed> = world.fields.iter().map(|notes| one(notes, world)).collect();
    all.sort_by(|one, other| {
        let far = |field: &FieldListed| field.distance_m.unwrap_or(f64::INFINITY);
        let place = far(one).total_cmp(&far(other));
        let by_name = || (one.name.to_lowercase(), one.field).cmp(&(other.name.to_lowercase(), other.field));
        other.here.cmp(&one.here).then(place).then_with(by_name)
    });
    all
}

/// Those whose name has every word that was typed, in whatever order and case; all of them where nothing was typed.
pub fn with_name(all: Vec<FieldListed>, typed: &str) -> Vec<FieldListed> {
    let words: Vec<String> = typed.split_whitespace().map(str::to_lowercase).collect();
    let has = |field: &FieldListed| {
        let name = field.name.to_lowercase();
        words.iter().all(|word| name.contains(word))
    };
    all.into_iter().filter(has).collect()
}

fn one(notes: &FieldNotes, world: &World) -> FieldListed {
    let answer = world.answer_of(notes);
    let here = stands_in(&notes.field, world);
    let dug = !notes.pits.is_empty();
    let call = dug.then(|| to_be_done(&answer));
    FieldListed {
        field: notes.field.id,
        name: notes.field.name.clone(),
        here,
        distance_m: if here { Some(0.0) } else { distance_m(notes, world) },
        call: call.map(|(call, _)| call),
        sure: call.map(|(_, sure)| sure),
        work: work(&answer),
        pits: notes.pits.len(),
        pits_wanted: notes.pits.len() + still_wanted(&answer),
        passes: notes.passes.len(),
    }
}

/// The call that the sign shows: that of the whole, but where it leaves the field the first zone where something is to be done.
fn to_be_done(answer: &FieldAnswer) -> (Call, Sureness) {
    let advice = &answer.advice;
    let zone = advice.zones.iter().find(|zone| zone.call != Call::LeaveIt);
    let told = if advice.whole.call == Call::LeaveIt { zone.unwrap_or(&advice.whole) } else { &advice.whole };
    (told.call, told.sure)
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

/// Metres from the position to the nearest corner or pit.
fn distance_m(notes: &FieldNotes, world: &World) -> Option<f64> {
    let from = degrees(world.fix?.position);
    let pits = notes.pits.iter().filter_map(|pit| pit.at).map(degrees);
    let places = notes.field.outline.iter().copied().chain(pits);
    places.map(|place| walk(from, place).distance_m).min_by(f64::total_cmp)
}
