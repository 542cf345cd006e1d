//! What a tap has saved, as it is told at once.

use super::{Words, capital};
use crate::record::{FaceMoisture, PlaceKind};
use chrono::NaiveDate;
use fluent::fluent_args;

impl Words {
    /// Something is saved: `20–30 cm: roots turned sideways. Saved.`
    pub fn kept(&self, what: &str) -> String {
        self.say_with("saved-kept", &fluent_args!["what" => capital(what.to_owned())])
    }

    /// The same of something with a value: `Reading 3: 33 cm. Saved.`
    pub fn kept_as(&self, what: &str, value: &str) -> String {
        self.kept(&self.named(what, value))
    }

    /// `Pit 3, in a wheeling, is begun. Saved.`
    pub fn pit_begun(&self, number: usize, place: PlaceKind) -> String {
        self.say_with("saved-begun", &fluent_args!["pit" => self.pit_numbered(number, place)])
    }

    /// How moist the face is; with the hole dug just now said as well.
    pub fn face_kept(&self, face: FaceMoisture, dug_now: bool) -> String {
        let id = if dug_now { "saved-dug" } else { "saved-face" };
        self.say_with(id, &fluent_args!["moisture" => self.of(face)])
    }

    /// From which depth on something holds: `From 20 cm`.
    pub fn from_depth(&self, depth_mm: u32) -> String {
        self.say_with("saved-from", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// `The hole ends at 50 cm. Saved.`
    pub fn bottom_kept(&self, depth_mm: u32) -> String {
        self.say_with("saved-bottom", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// Where a boundary has been moved to.
    pub fn boundary_kept(&self, depth_mm: u32) -> String {
        self.say_with("saved-boundary", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// Which soil is rolled: `Soil from 35 cm`, `Soil from the surface`.
    pub fn soil_from(&self, depth_mm: Option<u32>) -> String {
        match depth_mm {
            Some(depth_mm) => {
                self.say_with("saved-soil_depth", &fluent_args!["depth" => self.depth(depth_mm)])
            }
            None => self.say("saved-soil_surface"),
        }
    }

    /// `Reading 3`, from 1.
    pub fn reading_number(&self, number: usize) -> String {
        self.say_with("saved-reading", &fluent_args!["number" => number])
    }

    /// `Slot 2`, from 1.
    pub fn slot_number(&self, number: usize) -> String {
        self.say_with("saved-slot", &fluent_args!["number" => number])
    }

    /// Heavy wheels over a pass, or none noted.
    pub fn driven_kept(&self, day: Option<NaiveDate>) -> String {
        let Some(day) = day else { return self.say("saved-not_driven") };
        self.say_with("saved-driven", &fluent_args!["day" => self.date(day)])
    }

    /// For which hand the screens are now.
    pub fn hand_kept(&self, left: bool) -> String {
        self.say(if left { "saved-left_hand" } else { "saved-right_hand" })
    }

    /// Says what the volume keys do from now on.
    pub fn keys_kept(&self, answer: bool) -> String {
        self.say(if answer { "saved-keys" } else { "saved-no_keys" })
    }
}
