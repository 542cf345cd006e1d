//! Published scores of a spade block, layer by layer. A cross-reference for people who use them; nothing is
//! decided by them here.

use crate::error::Fault;
use crate::record::codes::codes;
use crate::record::depth;
use std::cmp::Ordering;

codes!(
    /// A published scale. Values of two of them are never compared: their steps differ, and one runs the
    /// other way.
    ScoreScheme {
        /// Peerlkamp 1959.
        Peerlkamp1959 = "peerlkamp_1959",
        /// Ball, Batey & Munkholm 2007.
        Ball2007 = "ball_2007",
        /// Guimarães, Ball & Tormena 2011.
        Guimaraes2011 = "guimaraes_2011",
        /// Ball and others 2015, subsoil.
        Ball2015 = "ball_2015",
    }
);

/// What is known of a scale.
struct Scale {
    best: f64,
    worst: f64,
    /// Highly restrictive to roots beyond this.
    restrictive_beyond: Option<f64>,
}

/// By [`ScoreScheme`], in its order. Ends of the scales: value from memory (2015: read in its flow chart).
/// The mark of 3.5: Guimarães and others 2013, for the scale of 2011, which keeps the classes of 2007.
const SCALES: [Scale; ScoreScheme::ALL.len()] = [
    Scale { best: 9.0, worst: 1.0, restrictive_beyond: None },
    Scale { best: 1.0, worst: 5.0, restrictive_beyond: Some(3.5) },
    Scale { best: 1.0, worst: 5.0, restrictive_beyond: Some(3.5) },
    Scale { best: 1.0, worst: 5.0, restrictive_beyond: None },
];

/// A value on a scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Score {
    /// The scale.
    scheme: ScoreScheme,
    /// The value.
    value: f64,
}

impl Score {
    /// A value on a scale; halves and other parts are allowed.
    ///
    /// # Errors
    /// A value that the scale does not have.
    pub fn new(scheme: ScoreScheme, value: f64) -> Result<Self, Fault> {
        let Scale { best, worst, .. } = SCALES[scheme as usize];
        if (best.min(worst)..=best.max(worst)).contains(&value) {
            return Ok(Self { scheme, value });
        }
        let wrong = format!("{value} is not on the scale {}", scheme.code());
        Err(Fault::new("score", wrong, format!("give a number from {best} (best) to {worst} (worst)")))
    }

    /// The scale.
    pub const fn scheme(self) -> ScoreScheme {
        self.scheme
    }

    /// The value.
    pub const fn value(self) -> f64 {
        self.value
    }

    /// How this score stands against another of the same scale: `Greater` = better soil, whichever way the
    /// scale runs.
    ///
    /// # Errors
    /// Scores of two scales.
    pub fn against(self, other: Self) -> Result<Ordering, Fault> {
        if self.scheme != other.scheme {
            let wrong = format!("{} and {} are two scales", self.scheme.code(), other.scheme.code());
            return Err(Fault::new("score", wrong, "compare scores of one scale only"));
        }
        let Scale { best, .. } = SCALES[self.scheme as usize];
        let from_best = |score: Self| (score.value - best).abs();
        Ok(from_best(other).total_cmp(&from_best(self)))
    }

    /// Whether it lies beyond the mark at which structure is highly restrictive to roots; `None` where no
    /// mark was published for the scale.
    pub fn is_restrictive(self) -> Option<bool> {
        SCALES[self.scheme as usize].restrictive_beyond.map(|mark| self.value > mark)
    }
}

/// One layer of a block with its value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScoredLayer {
    /// Depth of its top.
    pub top_mm: u32,
    /// Depth of its bottom.
    pub bottom_mm: u32,
    /// Its value on the scale.
    pub value: f64,
}

/// A block: mean and limiting layer always stand together, because the mean hides a thin pan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BlockScore {
    /// Mean of the layers by thickness.
    pub mean: Score,
    /// The worst layer (the uppermost of equal ones), joined with neighbours of the same value.
    pub limiting: ScoredLayer,
    /// Whether the limiting layer is highly restrictive; see [`Score::is_restrictive`].
    pub restrictive: Option<bool>,
}

/// Mean and limiting layer of a block; the order in which the layers are given does not matter.
///
/// # Errors
/// No layer, a breach of the depth logic, or a value that the scale does not have.
pub fn block(scheme: ScoreScheme, layers: &[ScoredLayer]) -> Result<BlockScore, Fault> {
    let depths: Vec<_> = layers.iter().map(|layer| (layer.top_mm, Some(layer.bottom_mm))).collect();
    depth::check(&depths).map_err(|fault| {
        Fault::new("layers", fault.to_string(), "let each layer begin where the one above ends")
    })?;
    let mut joined: Vec<ScoredLayer> = Vec::new();
    let mut order = layers.to_vec();
    crate::order::sort_by_key(&mut order, |layer| layer.top_mm);
    for layer in order {
        Score::new(scheme, layer.value)?;
        match joined.last_mut() {
            Some(upper) if upper.value.total_cmp(&layer.value).is_eq() => upper.bottom_mm = layer.bottom_mm,
            _ => joined.push(layer),
        }
    }
    let Scale { best, .. } = SCALES[scheme as usize];
    let from_best = |layer: &ScoredLayer| (layer.value - best).abs();
    let worst = joined.iter().rev().max_by(|one, other| from_best(one).total_cmp(&from_best(other)));
    let Some(&limiting) = worst else {
        return Err(Fault::new("layers", "there is no layer", "give at least one layer with its value"));
    };
    let thickness = |layer: &ScoredLayer| f64::from(layer.bottom_mm - layer.top_mm);
    let whole: f64 = joined.iter().map(thickness).sum();
    let weighed: f64 = joined.iter().map(|layer| layer.value * thickness(layer)).sum();
    let restrictive = Score::new(scheme, limiting.value)?.is_restrictive();
    Ok(BlockScore { mean: Score { scheme, value: weighed / whole }, limiting, restrictive })
}
