//! Holes whose readings are still being taken.

use crate::record::{AfterDig, FieldNotes};
use chrono::NaiveDate;

/// Readings taken in a hole, the first and the last in a tine line. Our judgement: a hand's width apart at the usual
/// spacings.
pub const READINGS: usize = 8;
/// Readings from which a hole has something between its lines.
const LEAST: usize = 3;

/// Returns whether the readings of a hole are still being taken: too few to tell anything, or begun today and not at their end.
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::RecordId;

    /// Two readings tell nothing on any day; seven begun today are not at their end, eight are.
    #[test]
    fn a_hole_is_unfinished_until_its_eighth_reading_on_the_day() {
        let dug = chrono::DateTime::parse_from_rfc3339("2025-09-01T10:00:00+01:00").ok();
        let on = |readings: usize, day: u32| {
            let dig =
                AfterDig { dug, firm_mm: vec![300; readings], ..AfterDig::new(RecordId::new(1, [0; 10])) };
            NaiveDate::from_ymd_opt(2025, 9, day).is_some_and(|today| unfinished(&dig, today))
        };
        assert_eq!([0, 2, 3, 7, 8].map(|readings| on(readings, 1)), [false, true, true, true, false]);
        assert_eq!([0, 2, 3, 7, 8].map(|readings| on(readings, 2)), [false, true, false, false, false]);
    }
}
