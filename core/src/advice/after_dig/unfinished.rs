//! Holes whose readings are still being taken.

use crate::record::{AfterDig, FieldNotes};
use chrono::NaiveDate;

/// Readings taken in a hole, the first and the last in a tine line. Our judgement: a hand's width apart at the usual
/// spacings.
pub const READINGS: usize = 8;
/// Readings from which a hole has something between its lines.
const LEAST: usize = 3;

/// Whether the readings of a hole are still being taken: too few to tell anything, or begun today and not at their end.
pub fn unfinished(dig: &AfterDig, today: NaiveDate) -> bool {
    let read = dig.firm_mm.len();
    let begun_today = dig.dug.is_some_and(|dug| dug.date_naive() == today);
    read > 0 && read < READINGS && (read < LEAST || begun_today)
}

/// The notes without unfinished readings; `None` where there are none.
pub(super) fn without_unfinished(notes: &FieldNotes, today: NaiveDate) -> Option<FieldNotes> {
    let is_unfinished = |dig: &AfterDig| unfinished(dig, today);
    notes.passes.iter().flat_map(|pass| &pass.after_digs).any(is_unfinished).then(|| {
        let mut notes = notes.clone();
        for dig in notes.passes.iter_mut().flat_map(|pass| &mut pass.after_digs) {
            if unfinished(dig, today) {
                dig.firm_mm.clear();
            }
        }
        notes
    })
}
