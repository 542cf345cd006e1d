//! Labels of a drawn face.

use super::{Words, capital};
use crate::advice::TipDepth;
use crate::reading::LayerReading;
use crate::record::{Condition, PlaceKind};
use fluent::fluent_args;

impl Words {
    /// Says what a pit is called: `Reference pit`, `Pit on the headland`.
    pub fn pit(&self, place: PlaceKind) -> String {
        capital(self.form(place, "pit"))
    }

    /// The same with its number in the field, from 1: `Pit 3, on the headland`.
    pub fn pit_numbered(&self, number: usize, place: PlaceKind) -> String {
        self.say_with(
            "pits-numbered",
            &fluent_args!["number" => number, "place" => self.place_after_number(place)],
        )
    }

    /// Where a pit was dug, as it stands after its number; the reference pit goes by that one name everywhere.
    pub(super) fn place_after_number(&self, place: PlaceKind) -> String {
        self.form(place, if place == PlaceKind::Reference { "pit" } else { "clause" })
    }

    /// The label of a layer: its condition, and further short lines (cause, depths).
    pub fn layer_label(&self, layer: &LayerReading) -> (String, Vec<String>) {
        let depths = self.depth_range(layer.top_mm, layer.bottom_mm);
        let notes = match layer.condition {
            Condition::Open => vec![depths],
            Condition::Firm | Condition::Tight | Condition::Shut => {
                vec![self.cause_beside(layer.cause), depths]
            }
        };
        (self.label(layer.condition), notes)
    }

    /// The label of the tip depth line: `Tip 33–35 cm`.
    pub fn tip_label(&self, tip: &TipDepth) -> String {
        self.say_with("tip-label", &fluent_args!["tip" => self.tip_range(tip)])
    }
}
