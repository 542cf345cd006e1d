//! What a store has, and what was written for other programs.

use super::{LISTS, Words, capital};
use crate::advice::{TipDepth, ZoneCall};
use crate::tables::Positions;
use fluent::fluent_args;

impl Words {
    /// How many fields and pits were written.
    pub fn tables_written(&self, fields: usize, pits: usize) -> String {
        self.say_with("tables-written", &fluent_args!["fields" => fields, "pits" => pits])
    }

    /// The word of a code that a closed list has, as it stands alone.
    pub fn of_code(&self, list: &str, code: &str) -> Option<String> {
        let known = LISTS.iter().any(|(name, codes)| *name == list && codes.contains(&code));
        known.then(|| capital(self.say(&format!("{list}-{code}"))))
    }

    /// How places were told, where they were not told as noted.
    pub fn tables_positions(&self, positions: Positions) -> Option<String> {
        match positions {
            Positions::Exact => None,
            Positions::Coarse => Some(self.say("tables-positions_coarse")),
            Positions::None => Some(self.say("tables-positions_none")),
        }
    }

    /// How many photos were written into the GeoPackage.
    pub fn tables_photos(&self, photos: usize) -> String {
        self.say_with("tables-photos", &fluent_args!["photos" => photos])
    }

    /// How many photos were left out, at least one.
    pub fn tables_photos_left(&self, photos: usize) -> String {
        self.say_with("tables-photos_left", &fluent_args!["photos" => photos])
    }

    /// For how many fields there is something that a terminal reads, and that it is advice.
    pub fn terminal_written(&self, fields: usize) -> Vec<String> {
        let written = self.say_with("terminal-written", &fluent_args!["fields" => fields]);
        std::iter::once(written).chain((fields > 0).then(|| self.say("terminal-advice"))).collect()
    }

    /// Ground of a field that a terminal knows nothing of, though it is to be loosened.
    pub fn terminal_unmarked(&self, field: &str) -> String {
        self.say_with("terminal-unmarked", &fluent_args!["field" => field])
    }

    /// Says what a terminal shows of a task.
    pub fn terminal_task(&self) -> String {
        self.say("terminal-task")
    }

    /// Says what a terminal shows of ground that is not to be loosened.
    pub fn terminal_leave(&self) -> String {
        self.say("terminal-leave")
    }

    /// Says what a terminal shows of ground to be loosened to this depth.
    pub fn terminal_loosen(&self, call: &ZoneCall, depth_mm: u32) -> String {
        let tip = call.tip.map(|tip| TipDepth { lo_mm: depth_mm, hi_mm: depth_mm, ..tip });
        self.call_line(&ZoneCall { tip, ..call.clone() })
    }

    /// A field of a store, with how many pits it has.
    pub fn field_line(&self, name: &str, pits: u32) -> String {
        self.say_with("store-field", &fluent_args!["name" => name, "pits" => pits])
    }

    /// A store without fields.
    pub fn no_field(&self) -> String {
        self.say("store-no_field")
    }

    /// How many of the pits have no position, at least one.
    pub fn tables_without_place(&self, pits: usize) -> String {
        self.say_with("tables-no_place", &fluent_args!["pits" => pits])
    }
}
