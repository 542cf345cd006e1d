//! What somebody can do to get another call, found by trying, as other answers are: measure a depth, get leave, hold to deep
//! clay, dig another pit.

use super::buried::{kept_above_mm, set_deeper, set_shallower};
use super::call::{Change, ChangedAnswer, Stance, What, Why, ZoneCall};
use super::change::Base;
use crate::record::{Call, Field, FieldNotes, Pit, RecordId, Zone};
use chrono::NaiveDate;

/// Levers pulled together at most. Our judgement: whoever has to get four things right asks somebody else.
const TOGETHER: usize = 3;
/// A depth at which nothing stands in the way of any tip.
const OUT_OF_THE_WAY_MM: u32 = 10_000;
/// The levers that exist for a call and change it.
pub fn levers(base: &Base) -> Vec<Change> {
    let near = hangs(base).and_then(|answer| base.change(&[answer]));
    [way_cleared(base), near, another_pit(base)].into_iter().flatten().collect()
}

/// The least that clears the way: what stands first in it is taken out until the call is another one.
fn way_cleared(base: &Base) -> Option<Change> {
    let mut answers: Vec<ChangedAnswer> = Vec::new();
    let mut said = base.now.clone();
    while answers.len() < TOGETHER {
        let answer = against(base, &said, &answers)?;
        answers.push(answer);
        said = base.tried(&answers)?;
        if said.call != base.now.call {
            return Some(Change { answers, call: said.call, hangs: false });
        }
    }
    None
}

/// The lever against what a call stands on.
fn against(base: &Base, said: &ZoneCall, pulled: &[ChangedAnswer]) -> Option<ChangedAnswer> {
    let carried = said.reasons.iter().filter(|why| why.stance == Stance::For).map(|why| &why.what);
    let lever = carried.into_iter().find_map(|what| match *what {
        What::NeedsLeave { .. } => Some(ChangedAnswer::Leave),
        What::DeepClay { .. } => Some(ChangedAnswer::DeepClayHeldTo),
        What::TooNear { obstacle, tip_mm, clearance_mm, .. } => {
            Some(ChangedAnswer::Deeper { obstacle, mm: tip_mm + clearance_mm })
        }
        What::DepthUnknown { obstacle } => {
            let out = ChangedAnswer::Deeper { obstacle, mm: OUT_OF_THE_WAY_MM };
            let tried: Vec<ChangedAnswer> = pulled.iter().copied().chain([out]).collect();
            // What lies deep enough is out of the way of a tip that is told only then, or by what comes next in the way.
            let tip_mm = base.tried(&tried).and_then(|said| tip_of(&said))?;
            let mm = tip_mm + kept_above_mm(&field_with(base, pulled)?, obstacle, base.today);
            Some(ChangedAnswer::Deeper { obstacle, mm })
        }
        _ => None,
    })?;
    (!pulled.contains(&lever)).then_some(lever)
}

/// The shallow end of the tip that a call names, or that something stands in the way of.
fn tip_of(said: &ZoneCall) -> Option<u32> {
    let in_the_way = |why: &Why| match why.what {
        What::TooNear { tip_mm, .. } => Some(tip_mm),
        _ => None,
    };
    said.tip.map(|tip| tip.lo_mm).or_else(|| said.reasons.iter().find_map(in_the_way))
}

/// The field with some levers pulled.
fn field_with(base: &Base, answers: &[ChangedAnswer]) -> Option<Field> {
    let mut notes = base.notes.clone();
    answers.iter().try_for_each(|answer| set(base, &mut notes, *answer))?;
    Some(notes.field)
}

/// The depth on which work hangs by a few centimetres.
fn hangs(base: &Base) -> Option<ChangedAnswer> {
    let works = matches!(base.now.call, Call::Loosen | Call::Wait);
    base.now.reasons.iter().filter(|_| works).find_map(|why| match why.what {
        What::HangsOnDepth { obstacle, needs_mm, .. } => {
            Some(ChangedAnswer::Shallower { obstacle, mm: needs_mm })
        }
        _ => None,
    })
}

/// Finds the first pit such that one more like it would give the call that the pits do not give. One pit is tried for each call that a pit
/// gives by itself: in a field of thousands trying each of them would take a minute.
fn another_pit(base: &Base) -> Option<Change> {
    let open = base.now.call == Call::DigAgain && base.zone != Zone::Whole;
    let mut tried = base.clearest.iter().filter(|_| open).map(|&pit| base.numbers[pit]);
    tried.find_map(|like| base.change(&[ChangedAnswer::AnotherPit { like }]))
}

/// Pulls a lever; `None` where it is none, or cannot be pulled.
pub fn set(base: &Base, notes: &mut FieldNotes, answer: ChangedAnswer) -> Option<()> {
    match answer {
        ChangedAnswer::Deeper { obstacle, mm } => set_deeper(&mut notes.field, obstacle, mm),
        ChangedAnswer::Shallower { obstacle, mm } => set_shallower(&mut notes.field, obstacle, mm),
        ChangedAnswer::Leave => {
            notes.field.services_leave = Some(true);
            notes.field.services_asked_on = Some(base.today.unwrap_or(NaiveDate::MIN));
            notes.field.services_asked.get_or_insert_default();
        }
        ChangedAnswer::DeepClayHeldTo => notes.field.deep_clay_anyway = Some(true),
        ChangedAnswer::AnotherPit { like } => {
            let index = base.numbers.iter().position(|&number| number == like)?;
            let by = notes.pits[index].by.as_deref().unwrap_or_default();
            // Without a position it is no second reading of the same hole.
            let pit = Pit {
                id: RecordId::new(u64::MAX, [0xFF; 10]),
                at: None,
                zone: Some(base.zone),
                by: Some(format!("{by}+")),
                ..notes.pits[index].clone()
            };
            notes.pits.push(pit);
        }
        ChangedAnswer::Clue { .. } | ChangedAnswer::Roll { .. } => return None,
    }
    Some(())
}
