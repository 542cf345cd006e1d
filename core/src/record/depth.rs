//! Depth logic: layers lie one below the other, without gap or overlap. Each breach is its own fault.

use std::fmt;

/// A breach of the depth logic. Depths in millimetres; `layer` is the index as given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DepthFault {
    /// A layer has no bottom.
    MissingBottom {
        /// Its place.
        layer: usize,
    },
    /// Top and bottom are the same depth.
    Equal {
        /// Its place.
        layer: usize,
        /// The depth.
        at_mm: u32,
    },
    /// The bottom lies above the top.
    Inverted {
        /// Its place.
        layer: usize,
        /// Its top.
        top_mm: u32,
        /// Its bottom.
        bottom_mm: u32,
    },
    /// Nothing is said of the ground between two layers.
    Gap {
        /// Place of the lower layer.
        layer: usize,
        /// Bottom of the upper layer.
        from_mm: u32,
        /// Top of the lower layer.
        to_mm: u32,
    },
    /// Two layers claim the same ground.
    Overlap {
        /// Place of the lower layer.
        layer: usize,
        /// Top of the lower layer.
        from_mm: u32,
        /// Bottom of the ground that both claim.
        to_mm: u32,
    },
}

impl fmt::Display for DepthFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::MissingBottom { .. } => f.write_str("the layer has no bottom"),
            Self::Equal { at_mm, .. } => write!(f, "top and bottom are both {at_mm} mm"),
            Self::Inverted { top_mm, bottom_mm, .. } => {
                write!(f, "the bottom at {bottom_mm} mm lies above the top at {top_mm} mm")
            }
            Self::Gap { from_mm, to_mm, .. } => {
                write!(f, "no layer covers {from_mm} to {to_mm} mm")
            }
            Self::Overlap { from_mm, to_mm, .. } => {
                write!(f, "two layers cover {from_mm} to {to_mm} mm")
            }
        }
    }
}

impl std::error::Error for DepthFault {}

impl DepthFault {
    /// Index of the layer it stands at, as given.
    pub const fn layer(&self) -> usize {
        match *self {
            Self::MissingBottom { layer }
            | Self::Equal { layer, .. }
            | Self::Inverted { layer, .. }
            | Self::Gap { layer, .. }
            | Self::Overlap { layer, .. } => layer,
        }
    }
}

/// Checks layers given as `(top, bottom)` in any order; `layer` of a fault is the index as given.
///
/// # Errors
/// The first breach, going down.
pub fn check(layers: &[(u32, Option<u32>)]) -> Result<(), DepthFault> {
    breaches(layers).into_iter().next().map_or(Ok(()), Err)
}

/// Every breach, going down, in the same layers as [`check`] takes. Below a layer whose own depths are broken
/// nothing is said of a gap, because where it ends is not known.
pub fn breaches(layers: &[(u32, Option<u32>)]) -> Vec<DepthFault> {
    let mut order: Vec<usize> = (0..layers.len()).collect();
    crate::order::sort_by_key(&mut order, |&layer| (layers[layer].0, layers[layer].1));
    let mut found = Vec::new();
    let mut above: Option<u32> = None;
    for layer in order {
        let (top_mm, bottom) = layers[layer];
        let own = match bottom {
            None => Some(DepthFault::MissingBottom { layer }),
            Some(bottom_mm) if bottom_mm == top_mm => Some(DepthFault::Equal { layer, at_mm: top_mm }),
            Some(bottom_mm) if bottom_mm < top_mm => Some(DepthFault::Inverted { layer, top_mm, bottom_mm }),
            Some(_) => None,
        };
        if let Some(fault) = own {
            found.push(fault);
            above = None;
            continue;
        }
        match above {
            Some(upper_mm) if top_mm > upper_mm => {
                found.push(DepthFault::Gap { layer, from_mm: upper_mm, to_mm: top_mm });
            }
            Some(upper_mm) if top_mm < upper_mm => {
                let common_mm = bottom.map_or(upper_mm, |bottom_mm| upper_mm.min(bottom_mm));
                found.push(DepthFault::Overlap { layer, from_mm: top_mm, to_mm: common_mm });
            }
            _ => {}
        }
        above = above.max(bottom);
    }
    found
}
