//! Answers as last made.

use super::FieldAnswer;
use crate::record::{FieldNotes, RecordId};
use chrono::NaiveDate;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::Arc;

/// The answers of fields, each kept until its notes, or the day, are others. Notes are compared, not watched: whoever keeps
/// them need not say what was changed, and nothing stale can be shown.
#[derive(Debug, Default, Clone)]
pub struct Answers(RefCell<BTreeMap<RecordId, Arc<FieldAnswer>>>);

impl Answers {
    /// The answer that follows from these notes on this day.
    pub fn of(&self, notes: &FieldNotes, today: NaiveDate) -> Arc<FieldAnswer> {
        let (field, today) = (notes.field.id, Some(today));
        let earlier = self.0.borrow().get(&field).map(Arc::clone);
        if let Some(kept) = earlier.as_ref().filter(|kept| kept.today == today && kept.notes == *notes) {
            return Arc::clone(kept);
        }
        let made = Arc::new(match earlier {
            Some(earlier) => FieldAnswer::after(&earlier, notes.clone(), today),
            None => FieldAnswer::of(notes.clone(), today),
        });
        self.0.borrow_mut().insert(field, Arc::clone(&made));
        made
    }
}
