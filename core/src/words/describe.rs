//! What a drawing of a pit face shows, to be spoken by a screen reader.

use super::{Words, capital};
use crate::advice::TipDepth;
use crate::reading::{Clue, Kind, LayerReading, PitReading};
use crate::record::{PlaceKind, Sign};
use fluent::fluent_args;

impl Words {
    /// A face depth by depth from the top: kind, signs seen, the reference pit at the same depth, tip depth.
    pub fn describe(
        &self,
        place: PlaceKind,
        pit: &PitReading,
        reference: Option<&PitReading>,
        tip: Option<&TipDepth>,
    ) -> String {
        let head = fluent_args!["pit" => self.pit(place), "depth" => self.depth(pit.dug_to_mm)];
        let mut said = vec![self.say_with("describe-pit", &head)];
        said.extend(pit.face.map(|face| self.form(face, "described")));
        said.extend(pit.layers.is_empty().then(|| self.say("describe-empty")));
        for layer in &pit.layers {
            said.push(self.describe_layer(layer));
            let beside = reference.and_then(|reference| beside(layer, &reference.layers));
            said.extend(beside.map(|beside| self.compare(layer, beside)));
        }
        let tip = tip.map(|tip| fluent_args!["tip" => self.tip_range_spoken(tip)]);
        said.extend(tip.map(|args| self.say_with("describe-tip", &args)));
        said.join(" ")
    }

    /// One layer with the signs seen in it: `20 to 30 cm: tight, pressed. Flat plates, roots turned sideways.`
    pub fn describe_layer(&self, layer: &LayerReading) -> String {
        let seen: Vec<String> = Sign::ALL
            .iter()
            .filter_map(|&sign| Some(self.answer_clause(Clue::from(sign), layer.signs.get(sign)?)))
            .collect();
        let args = fluent_args![
            "depths" => self.depth_range_spoken(layer.top_mm, layer.bottom_mm),
            "kind" => self.kind(kind(layer)),
            "signs" => capital(self.comma(&seen)),
        ];
        self.say_with(if seen.is_empty() { "describe-layer_unseen" } else { "describe-layer" }, &args)
    }

    /// Says what somebody remarked, on one line: `Remark: a seam of ash at its top`.
    pub fn remark(&self, text: &str) -> String {
        // What breaks a line might pass for a line of ours.
        let text: Vec<&str> = text.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
        self.say_with("describe-remark", &fluent_args!["text" => text.join(" / ")])
    }

    fn compare(&self, layer: &LayerReading, beside: &LayerReading) -> String {
        let args = fluent_args!["kind" => self.kind(kind(beside))];
        let same = kind(layer) == kind(beside);
        self.say_with(if same { "describe-reference_same" } else { "describe-reference" }, &args)
    }
}

const fn kind(layer: &LayerReading) -> Kind {
    Kind { condition: layer.condition, cause: layer.cause }
}

/// The layer of another face that shares most depth with this one.
fn beside<'a>(layer: &LayerReading, others: &'a [LayerReading]) -> Option<&'a LayerReading> {
    let shared_mm = |other: &LayerReading| {
        layer.bottom_mm.min(other.bottom_mm).saturating_sub(layer.top_mm.max(other.top_mm))
    };
    others.iter().rev().max_by_key(|other| shared_mm(other)).filter(|other| shared_mm(other) > 0)
}
