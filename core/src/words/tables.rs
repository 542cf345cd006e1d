//! What a store has, and what was written for other programs.

use super::Words;
use fluent::fluent_args;

impl Words {
    /// How many fields and pits were written.
    pub fn tables_written(&self, fields: usize, pits: usize) -> String {
        self.say_with("tables-written", &fluent_args!["fields" => fields, "pits" => pits])
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
