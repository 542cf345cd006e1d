//! What is put into the drawing of pit faces: plain data and words that come in ready.

use crate::reading::{LayerReading, PitReading};
use crate::record::{ChannelsSeen, Condition, FaceMoisture, Patches, RootsSeen};
use crate::units::LengthUnit;

/// Width of a drawn face, points: a phone held upright.
pub const PHONE_WIDTH: f64 = 360.0;

/// One or more faces to be drawn beside each other: the reference first, then the concern. Words come in ready.
#[derive(Debug, Clone, PartialEq)]
pub struct FacePicture {
    /// The faces. They stand beside each other on one ruler where the words leave room, below each other where
    /// they do not.
    pub faces: Vec<Face>,
    /// The depth ruler.
    pub ruler: Ruler,
    /// Size of text against the usual one: 1.0 to 2.0, values outside are taken as the nearest.
    pub text_scale: f64,
}

/// One face.
#[derive(Debug, Clone, PartialEq)]
pub struct Face {
    /// What stands above it; may be empty.
    pub title: String,
    /// Depth of the hole's bottom.
    pub dug_to_mm: u32,
    /// Layers from the top down.
    pub layers: Vec<FaceLayer>,
    /// Tip depth, where one is advised.
    pub tip: Option<Tip>,
}

/// One layer of a face. `None` = not looked, or not readable: nothing is drawn for it.
#[derive(Debug, Clone, PartialEq)]
pub struct FaceLayer {
    /// Depth of its top.
    pub top_mm: u32,
    /// Depth of its bottom; a layer whose bottom is not below its top is left out.
    pub bottom_mm: u32,
    /// Condition, told by hatching; `None` leaves the layer without.
    pub condition: Option<Condition>,
    /// What the roots do in it.
    pub roots: Option<RootsSeen>,
    /// Worm and old root channels.
    pub channels: Option<ChannelsSeen>,
    /// Rust and grey patches.
    pub patches: Option<Patches>,
    /// The condition's word, set strong.
    pub word: String,
    /// Further short lines under the word, such as the cause and the depths.
    pub notes: Vec<String>,
}

/// Range of tip depth; equal bounds give one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Tip {
    /// Shallowest tip.
    pub lo_mm: u32,
    /// Deepest tip.
    pub hi_mm: u32,
    /// What stands beside it; a no-break space holds a number to its unit.
    pub label: String,
}

/// The depth ruler.
#[derive(Debug, Clone, PartialEq)]
pub struct Ruler {
    /// The unit, set above the ruler.
    pub unit: String,
    /// Marks. Those deeper than the face are left out; a text for which there is no room is left out, its mark stays.
    pub marks: Vec<Mark>,
}

/// One mark of the ruler.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Depth.
    pub depth_mm: u32,
    /// Text beside it; empty for a short mark without.
    pub text: String,
}

impl Face {
    /// A face from what was read in the pit. `words` gives each layer its word and its notes. An unreadable face
    /// (dry or wet) shows its layers without hatching.
    pub fn of(
        pit: &PitReading,
        title: String,
        tip: Option<Tip>,
        words: impl Fn(&LayerReading) -> (String, Vec<String>),
    ) -> Self {
        let readable = !matches!(pit.face, Some(FaceMoisture::Dry | FaceMoisture::Wet));
        let layers = pit.layers.iter().map(|layer| {
            let (word, notes) = words(layer);
            FaceLayer {
                top_mm: layer.top_mm,
                bottom_mm: layer.bottom_mm,
                condition: readable.then_some(layer.condition),
                roots: layer.signs.roots,
                channels: layer.signs.channels,
                patches: layer.signs.patches,
                word,
                notes,
            }
        });
        Self { title, dug_to_mm: pit.dug_to_mm, layers: layers.collect(), tip }
    }

    /// Deepest thing to be shown.
    pub(super) fn depth_mm(&self) -> u32 {
        let bottoms = self.layers.iter().map(|layer| layer.bottom_mm);
        let tip = self.tip.as_ref().map(|tip| tip.lo_mm.max(tip.hi_mm).saturating_add(20));
        bottoms.chain(tip).fold(self.dug_to_mm, u32::max)
    }
}

impl Ruler {
    /// Marks down to a depth: every 5 cm with a number every 10, or every 2 inches with a number every 4.
    pub fn down_to(depth_mm: u32, unit: LengthUnit, unit_word: String) -> Self {
        let (step, per_number) = match unit {
            LengthUnit::Centimetres => (5_u32, 2),
            LengthUnit::Inches => (2, 2),
        };
        let marks = (0..).map(|index: u32| (index, index.saturating_mul(step)));
        let marks = marks
            .map(|(index, number)| Mark {
                depth_mm: unit.to_mm(f64::from(number)),
                text: if index % per_number == 0 { number.to_string() } else { String::new() },
            })
            .take_while(|mark| mark.depth_mm <= depth_mm.min(DEEPEST_MARK_MM));
        Self { unit: unit_word, marks: marks.collect() }
    }
}

/// No pit is deeper; keeps the number of marks small whatever comes in.
const DEEPEST_MARK_MM: u32 = 5_000;
