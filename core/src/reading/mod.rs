//! Reading one pit's face: steps to layers, shares over the kinds of layer, reasons, the next look.

mod clash;
mod clue;
mod evidence;
mod face;
mod kind;
mod next_look;
mod posterior;
mod reference;
mod table;

pub use clash::{CLASH_DECIBANS, camps, conflict};
pub use clue::{Below, Clue, Lies, Since, Versus};
pub use evidence::{Evidence, level};
pub use face::{FaceLayer, layers};
pub use kind::{KINDS, Kind};
pub use next_look::{Regrets, TAP_WORTH, leading_rivals, next_look, next_look_except};
pub use posterior::{CAUSE_MARK, shares};
pub use table::{PerKind, TEXT as CLUES_TEXT, Table};

use crate::record::{Cause, Condition, FaceMoisture, Field, FieldNotes, Pit, PlaceKind, Signs};
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
    /// Every clue that is known of it.
    pub evidence: Evidence,
    /// Share of each kind, in the order of [`KINDS`]; they add up to 1.
    pub shares: PerKind,
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

/// Reads every pit of a field by the standard table.
pub fn read_field(notes: &FieldNotes) -> FieldReading {
    read_field_with(notes, Table::standard())
}

/// Reads every pit of a field by a given table.
pub fn read_field_with(notes: &FieldNotes, table: &Table) -> FieldReading {
    let references = reference_faces(notes);
    let pits = notes.pits.iter().map(|pit| read_pit(pit, &notes.field, &references, table)).collect();
    FieldReading { pits }
}

/// The faces of the field's reference pits that can be read.
pub fn reference_faces(notes: &FieldNotes) -> Vec<Vec<FaceLayer>> {
    notes
        .pits
        .iter()
        .filter(|pit| pit.place == PlaceKind::Reference && is_readable(pit))
        .map(|pit| layers(pit, &notes.field))
        .filter(|layers| !layers.is_empty())
        .collect()
}

/// Returns whether the face can be read: not noted as dry or wet.
pub fn is_readable(pit: &Pit) -> bool {
    matches!(pit.face, None | Some(FaceMoisture::Moist))
}

/// Reads one pit. A reference pit is compared with none.
pub fn read_pit(pit: &Pit, field: &Field, references: &[Vec<FaceLayer>], table: &Table) -> PitReading {
    let references = if pit.place == PlaceKind::Reference { &[] } else { references };
    let faces = layers(pit, field);
    let read = |index: usize| {
        let evidence = evidence::gather(&faces, index, pit, field, references);
        read_layer(&faces[index], evidence, table)
    };
    PitReading {
        face: pit.face,
        dug_to_mm: pit.dug_to_mm.or(faces.last().map(|layer| layer.bottom_mm)).unwrap_or(0),
        layers: (0..faces.len()).map(read).collect(),
    }
}

/// Reads one layer from its clues.
pub fn read_layer(face: &FaceLayer, evidence: Evidence, table: &Table) -> LayerReading {
    let shares = shares(&evidence, table);
    let (kind, share) = posterior::shown(&shares);
    LayerReading {
        top_mm: face.top_mm,
        bottom_mm: face.bottom_mm,
        signs: face.signs,
        texture: face.texture,
        evidence,
        shares,
        condition: kind.condition,
        cause: kind.cause,
        share,
        reasons: posterior::reasons(&evidence, table, kind),
    }
}
