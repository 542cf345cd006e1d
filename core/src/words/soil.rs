//! Answers of the handbook commands: texture, class, roll.

use super::{Words, capital};
use crate::soil::roll::{RollMeaning, RollReading};
use crate::soil::texture::{Texture, TextureClass, TextureScheme};
use fluent::fluent_args;

impl Words {
    /// A texture class with the scheme it is of: `sandy loam (USDA triangle)`.
    pub fn texture(&self, texture: Texture) -> String {
        let args = fluent_args!["class" => self.of(texture.class), "scheme" => self.of(texture.scheme)];
        self.say_with("soil-texture", &args)
    }

    /// A texture class with how a face of it is read.
    pub fn texture_sentence(&self, texture: Texture) -> String {
        let args =
            fluent_args!["texture" => self.texture(texture), "group" => self.form(texture.group(), "clause")];
        capital(self.say_with("soil-texture_sentence", &args))
    }

    /// A point of a triangle that lies on the edge of several classes.
    pub fn texture_edge(&self, scheme: TextureScheme, classes: &[TextureClass]) -> String {
        let classes: Vec<String> = classes.iter().map(|&class| self.of(class)).collect();
        let args = fluent_args!["classes" => self.and(&classes), "scheme" => self.of(scheme)];
        self.say_with("soil-texture_edge", &args)
    }

    /// A value read off a scheme, with the scheme.
    pub fn class(&self, scheme: &str, value: &str, class: &str) -> String {
        self.say_with("soil-class", &fluent_args!["scheme" => scheme, "value" => value, "class" => class])
    }

    /// Says what two roll tests say together: work waits for the wetter of the two, and the one at depth decides
    /// whether anything is known.
    pub fn roll_sentence(&self, reading: &RollReading) -> String {
        let id = match (reading.surface, reading.at_depth) {
            (_, RollMeaning::TooWet) => "soil-roll_wet_at_depth",
            (RollMeaning::TooWet, _) => "soil-roll_wet_surface",
            (_, RollMeaning::NotTested) => "soil-roll_missing",
            (_, RollMeaning::NotApplicable) => "soil-roll_not_applicable",
            (_, RollMeaning::DryAllowed) => "soil-roll_cloddy",
            (_, RollMeaning::Right) => "soil-roll_fit",
        };
        self.say(id)
    }
}
