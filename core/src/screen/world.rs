//! What a screen is made from: everything that comes in from outside.

use super::boundary::InFile;
use super::own::Light;
use super::partners::Partners;
use super::pit::Skipped;
use super::{Incoming, Place, example};
use crate::answer::{Answers, FieldAnswer};
use crate::picture::photo::PhotoSize;
use crate::place::AveragedFix;
use crate::record::{FieldNotes, RecordId};
use crate::store::{LastSave, WentAway};
use crate::units::LengthUnit;
use crate::words::{Language, Words};
use chrono::{DateTime, FixedOffset};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Settings of whoever holds the phone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Own {
    /// Name that goes with pits and photos; empty until it is given.
    pub name: String,
    /// The phone is held in the left hand.
    pub left_handed: bool,
    /// The volume keys answer the knife walk.
    pub volume_keys: bool,
    /// Language; `None` until it is chosen.
    pub language: Option<Language>,
    /// Unit of depth.
    pub unit: LengthUnit,
    /// Whether screens are dark on light or light on dark.
    pub light: Light,
}

/// What is known when a screen is shown or a tap is answered.
pub struct World<'a> {
    /// Settings.
    pub own: &'a Own,
    /// The words in their language and unit.
    pub words: &'a Words,
    /// All fields with everything noted, for the list of fields; else only the one that is open.
    pub fields: &'a [FieldNotes],
    /// What follows from them, as last worked out.
    pub answers: &'a Answers,
    /// The position as averaged so far.
    pub fix: Option<&'a AveragedFix>,
    /// The platform said it may not read the position.
    pub position_refused: bool,
    /// Hashes of the photos of the open field whose pictures are not on this phone.
    pub photos_missing: &'a BTreeSet<String>,
    /// Size of the photo that the place shows, where its file is at hand.
    pub photo_size: Option<PhotoSize>,
    /// What is known of the other devices.
    pub partners: &'a Partners,
    /// A notes file that waits to be taken in.
    pub incoming: Option<&'a Incoming>,
    /// What was deleted on this device, for the place that shows it; else nothing.
    pub went_away: &'a [WentAway],
    /// A file with the edges of fields that was opened.
    pub boundary: Option<&'a InFile>,
    /// Now, with the local offset.
    pub now: DateTime<FixedOffset>,
    /// Where *back* leads; `None` where no way is known that one came, then to the place above.
    pub back: Option<Place>,
    /// What was passed over in each pit.
    pub passed_over: &'a BTreeMap<RecordId, Skipped>,
    /// How much larger than usual the reader wants letters, 1.0 to 2.0: drawings heed it.
    pub letters: f64,
    /// What undo takes back: the last save within the open field, outside of fields the last of all.
    pub undo: Option<&'a LastSave>,
    /// What redo brings again, likewise.
    pub redo: Option<&'a LastSave>,
}

impl<'a> World<'a> {
    /// A field with everything noted in it.
    pub fn notes(&self, field: RecordId) -> Option<&'a FieldNotes> {
        self.fields.iter().find(|notes| notes.field.id == field)
    }

    /// The same with everything that follows from it.
    pub fn answer(&self, field: RecordId) -> Option<Arc<FieldAnswer>> {
        Some(self.answer_of(self.notes(field)?))
    }

    /// Returns what was passed over in a pit.
    pub fn passed_over(&self, pit: RecordId) -> Skipped {
        self.passed_over.get(&pit).copied().unwrap_or(Skipped::NONE)
    }

    /// Returns what follows from notes today; from those of the example on the last day noted in them.
    pub fn answer_of(&self, notes: &FieldNotes) -> Arc<FieldAnswer> {
        let last = (notes.field.id == example::FIELD).then(|| crate::advice::last_day(notes)).flatten();
        self.answers.of(notes, last.unwrap_or_else(|| self.now.date_naive()))
    }
}
