//! Reading one pit's face: steps to layers, shares over the kinds of layer, reasons, the next look.

mod clue;
mod kind;

pub use clue::{Below, Clue, Lies, Since, Versus};
pub use kind::{KINDS, Kind};

use crate::record::{Cause, Condition, FaceMoisture, Signs};
use crate::soil::texture::TextureGroup;

/// All pits of a field, read; in the order of its notes.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldReading {
    /// One reading a pit.
    pub pits: Vec<PitReading>,
}

/// One pit, read.
#[derive(Debug, Clone, PartialEq)]
pub struct PitReading {
    /// Moisture of the face; dry and wet faces give no call on structure.
    pub face: Option<FaceMoisture>,
    /// Depth seen: the hole's bottom, or the bottom of the lowest layer where that was not noted.
    pub dug_to_mm: u32,
    /// Layers from the top down, without gap or overlap.
    pub layers: Vec<LayerReading>,
    /// The question most worth answering next; `None` when none is worth a tap.
    pub next_look: Option<NextLook>,
}

/// One layer, read.
#[derive(Debug, Clone, PartialEq)]
pub struct LayerReading {
    /// Depth of its top.
    pub top_mm: u32,
    /// Depth of its bottom.
    pub bottom_mm: u32,
    /// What was seen in it.
    pub signs: Signs,
    /// Texture group of the layer, where known.
    pub texture: Option<TextureGroup>,
    /// Share of each kind, in the order of [`KINDS`]; they add up to 1.
    pub shares: [f64; KINDS.len()],
    /// Most likely condition.
    pub condition: Condition,
    /// Most likely cause; [`Cause::Unclear`] where none reaches the mark, [`Cause::Natural`] for Open.
    pub cause: Cause,
    /// Share of the kinds that the condition and cause shown stand for, 0 to 1.
    pub share: f64,
    /// What speaks for (positive) and against (negative) the kind shown, strongest first.
    pub reasons: Vec<Reason>,
}

/// What one clue adds to the odds of the kind shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reason {
    /// The clue.
    pub clue: Clue,
    /// Its answer, an index into [`Clue::answers`].
    pub answer: usize,
    /// Change of the log odds by this clue, 10 · log10; positive speaks for the kind.
    pub decibans: f64,
}

impl serde::Serialize for Reason {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeStruct;
        let mut reason = serializer.serialize_struct("Reason", 3)?;
        reason.serialize_field("clue", &self.clue)?;
        reason.serialize_field("answer", &self.clue.answers().get(self.answer))?;
        reason.serialize_field("decibans", &self.decibans)?;
        reason.end()
    }
}

/// One question whose answer may change the call.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NextLook {
    /// Index of the layer in the reading.
    pub layer: usize,
    /// Top of the layer.
    pub top_mm: u32,
    /// Bottom of the layer.
    pub bottom_mm: u32,
    /// What to look at (or, for the field's own clues, to ask).
    pub clue: Clue,
    /// Expected fall in regret.
    pub gain: f64,
    /// The two leading kinds it decides between.
    pub between: [Kind; 2],
}
