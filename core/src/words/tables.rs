//! What was written for other programs.

use super::Words;
use fluent::fluent_args;

impl Words {
    /// How many fields and pits were written.
    pub fn tables_written(&self, fields: usize, pits: usize) -> String {
        self.say_with("tables-written", &fluent_args!["fields" => fields, "pits" => pits])
    }

    /// How many of the pits have no position, at least one.
    pub fn tables_without_place(&self, pits: usize) -> String {
        self.say_with("tables-no_place", &fluent_args!["pits" => pits])
    }
}
