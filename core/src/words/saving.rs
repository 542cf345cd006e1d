//! What became of a save: taken back, not made, taken in.

use super::Words;
use crate::error::Fault;
use crate::record::codes::codes;
use crate::store::Kind;
use fluent::fluent_args;

codes!(
    /// Why something was not saved, as far as the person with the phone can do something about it.
    NotSaved {
        /// No room left.
        Full = "full",
        /// The files may not be written.
        Locked = "locked",
        /// Its field, pit or pass is deleted.
        Gone = "gone",
        /// A value that no record may have.
        Refused = "refused",
        /// Anything else the disk reports.
        Failed = "failed",
    }
);

/// Faults of a notes file that are told; the rest are counted.
const FAULTS_TOLD: usize = 5;

impl Words {
    /// Says what a record is, in a word or two.
    pub(super) fn kind_of_record(&self, kind: Kind) -> String {
        self.say(taken(kind))
    }

    /// Says that something was not saved, and what to do.
    pub fn not_saved(&self, why: NotSaved) -> String {
        self.of(why)
    }

    /// Says that a photo is kept.
    pub fn photo_kept(&self) -> String {
        self.say("photo-kept")
    }

    /// Says that the file of a photo cannot be read.
    pub fn photo_lost(&self) -> String {
        self.say("photo-lost")
    }

    /// Says that the notes file of a field was taken in.
    pub fn taken_in(&self, field: &str) -> String {
        self.say_with("taken_in", &fluent_args!["field" => field])
    }

    /// Says that the field of a notes file was deleted here, and what to do.
    pub fn field_deleted(&self, field: &str) -> String {
        self.say_with("taken_in-field_deleted", &fluent_args!["field" => field])
    }

    /// Says that a notes file cannot be read at all.
    pub fn taken_in_unread(&self) -> String {
        self.say("taken_in-unread")
    }

    /// Says that a notes file was not taken in, with the first of its faults. These are English: they are for whoever wrote it.
    pub fn not_taken_in(&self, faults: &[Fault]) -> String {
        let told: Vec<String> = faults.iter().take(FAULTS_TOLD).map(|fault| format!("{fault}.")).collect();
        let told = told.join(" ");
        let told = match faults.len().saturating_sub(FAULTS_TOLD) {
            0 => told,
            count => self.say_with("taken_in-more", &fluent_args!["faults" => told, "count" => count]),
        };
        self.say_with("taken_in-faults", &fluent_args!["faults" => told])
    }
}

const fn taken(kind: Kind) -> &'static str {
    match kind {
        Kind::Field => "taken-field",
        Kind::Pit => "taken-pit",
        Kind::Step => "taken-step",
        Kind::Layer => "taken-layer",
        Kind::Roll => "taken-roll",
        Kind::Photo => "taken-photo",
        Kind::Person => "taken-person",
        Kind::Machine => "taken-machine",
        Kind::Pass => "taken-pass",
        Kind::AfterDig => "taken-after_dig",
        Kind::Part => "taken-part",
        Kind::BuriedLine => "taken-line",
    }
}
