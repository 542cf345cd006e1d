//! From the knife walk and the looks taken to the layers of a face.

use crate::record::{ComesAway, Field, Layer, Pit, Resistance, Signs};
use crate::soil::texture::TextureGroup;

/// A stretch of the face with the same signs throughout.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FaceLayer {
    /// Depth of its top.
    pub top_mm: u32,
    /// Depth of its bottom.
    pub bottom_mm: u32,
    /// What was seen.
    pub signs: Signs,
    /// Texture group, the layer's own or the field's.
    pub texture: Option<TextureGroup>,
}

/// A piece of walk thinner than this that is left beside a layer whose boundary was moved by hand belongs to
/// its neighbour: it is the moved boundary, not a layer of its own. One step of the walk.
const STEP_MM: u32 = 50;

/// The layers of a pit from the top down: the walk's, with boundaries and looks given by hand laid over them.
/// Neighbours with the same signs are one layer; a thin pan of a single step stays.
///
/// Expects what the notes reader has checked: steps going down, layers without gap or overlap.
pub fn layers(pit: &Pit, field: &Field) -> Vec<FaceLayer> {
    let field_texture = field.texture.map(crate::record::TextureNote::group);
    let walked = walked(pit, field_texture);
    let mut given: Vec<&Layer> = pit.layers.iter().collect();
    crate::order::sort_by_key(&mut given, |layer| layer.top_mm);
    let (Some(first), Some(last)) = (given.first(), given.last()) else {
        return joined(walked);
    };
    let mut all = cut(&walked, 0, first.top_mm, true);
    all.extend(given.iter().map(|layer| FaceLayer {
        top_mm: layer.top_mm,
        bottom_mm: layer.bottom_mm,
        signs: widest(&walked, layer.top_mm, layer.bottom_mm).overlaid(&layer.signs),
        texture: layer.texture.map(crate::record::TextureNote::group).or(field_texture),
    }));
    all.extend(cut(&walked, last.bottom_mm, u32::MAX, false));
    joined(all)
}

/// The walk's steps as layers. Resistance is noted where it changes, so a step without it goes on with the last.
fn walked(pit: &Pit, texture: Option<TextureGroup>) -> Vec<FaceLayer> {
    let mut top_mm = 0;
    let mut resistance = None;
    let mut layers = Vec::with_capacity(pit.walk.len());
    for step in &pit.walk {
        resistance = step.resistance.or(resistance);
        let signs = Signs { comes_away: step.comes_away, resistance, ..Signs::default() };
        layers.push(FaceLayer { top_mm, bottom_mm: step.to_mm, signs, texture });
        top_mm = step.to_mm;
    }
    joined(layers)
}

/// Joins neighbours that read the same.
fn joined(layers: Vec<FaceLayer>) -> Vec<FaceLayer> {
    let mut all: Vec<FaceLayer> = Vec::with_capacity(layers.len());
    for layer in layers {
        match all.last_mut() {
            Some(above) if above.signs == layer.signs && above.texture == layer.texture => {
                above.bottom_mm = layer.bottom_mm;
            }
            _ => all.push(layer),
        }
    }
    all
}

/// The walk between two depths; a sliver left at the end that lies against the given layers goes to its
/// neighbour.
fn cut(walked: &[FaceLayer], from_mm: u32, to_mm: u32, sliver_below: bool) -> Vec<FaceLayer> {
    let mut pieces: Vec<FaceLayer> = walked
        .iter()
        .filter(|layer| layer.bottom_mm > from_mm && layer.top_mm < to_mm)
        .map(|layer| FaceLayer {
            top_mm: layer.top_mm.max(from_mm),
            bottom_mm: layer.bottom_mm.min(to_mm),
            ..*layer
        })
        .collect();
    let is_sliver = |piece: &FaceLayer| {
        piece.bottom_mm - piece.top_mm < STEP_MM && !walked.iter().any(|layer| layer == piece)
    };
    if pieces.len() > 1 {
        if sliver_below && pieces.last().is_some_and(is_sliver) {
            let sliver = pieces.pop();
            if let (Some(sliver), Some(neighbour)) = (sliver, pieces.last_mut()) {
                neighbour.bottom_mm = sliver.bottom_mm;
            }
        } else if !sliver_below && pieces.first().is_some_and(is_sliver) {
            let sliver = pieces.remove(0);
            pieces[0].top_mm = sliver.top_mm;
        }
    }
    pieces
}

/// For each of the walk's two signs the answer that fills most of a stretch; of equal ones the worse.
fn widest(walked: &[FaceLayer], top_mm: u32, bottom_mm: u32) -> Signs {
    let overlap = |layer: &FaceLayer| layer.bottom_mm.min(bottom_mm).saturating_sub(layer.top_mm.max(top_mm));
    let comes_away = ComesAway::ALL
        .iter()
        .map(|&value| (total(walked, |layer| layer.signs.comes_away == Some(value), overlap), value))
        .filter(|(thickness_mm, _)| *thickness_mm > 0)
        .max()
        .map(|(_, value)| value);
    let resistance = Resistance::ALL
        .iter()
        .map(|&value| (total(walked, |layer| layer.signs.resistance == Some(value), overlap), value))
        .filter(|(thickness_mm, _)| *thickness_mm > 0)
        .max()
        .map(|(_, value)| value);
    Signs { comes_away, resistance, ..Signs::default() }
}

fn total(
    walked: &[FaceLayer],
    takes: impl Fn(&FaceLayer) -> bool,
    overlap: impl Fn(&FaceLayer) -> u32,
) -> u32 {
    walked.iter().filter(|layer| takes(layer)).map(overlap).sum()
}
