//! The name that stones give a texture: how many, and of which kind (USDA-NRCS, National Soil Survey Handbook
//! 618.90).

use super::class::{self, ClassOf};
use crate::error::Fault;
use crate::record::codes::codes;

/// Rock fragments in percent of the volume.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Fragments {
    /// 2 to 76 mm.
    pub gravel: f64,
    /// 76 to 250 mm.
    pub cobbles: f64,
    /// 250 to 600 mm.
    pub stones: f64,
    /// From 600 mm.
    pub boulders: f64,
    /// Flat, 2 to 150 mm long.
    pub channers: f64,
    /// Flat, 150 to 380 mm long.
    pub flagstones: f64,
}

codes!(
    /// The kind that names the soil.
    FragmentKind {
        Gravelly = "gravelly",
        Cobbly = "cobbly",
        Channery = "channery",
        Flaggy = "flaggy",
        Stony = "stony",
        Bouldery = "bouldery",
    }
);

/// The modifier of a texture name.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Modifier {
    /// How many, by the scheme `fragment_amount_usda`: no modifier, plain, very, extremely, in lieu.
    pub amount: ClassOf,
    /// The kind; `None` where there are too few to name.
    pub kind: Option<FragmentKind>,
    /// All fragments together, percent of the volume.
    pub total_percent: f64,
}

/// The modifier by the handbook's rule: larger fragments count 1.5, 2 and 2.5 times against smaller ones.
///
/// Flat fragments name the soil only where they outweigh gravel and cobbles together (our judgement); then
/// the same weights hold for them (value from memory).
///
/// # Errors
/// A share that is no number, is negative, or shares that add up to more than 100.
pub fn modifier(of: Fragments) -> Result<Modifier, Fault> {
    let parts = [of.gravel, of.cobbles, of.stones, of.boulders, of.channers, of.flagstones];
    if let Some(part) = parts.iter().find(|part| !(0.0..=100.0).contains(*part)) {
        let wrong = format!("{part} is no share in percent");
        return Err(Fault::new("fragments", wrong, "give each as percent of the volume, 0 to 100"));
    }
    let total_percent = parts.iter().sum();
    let amount = class::of("fragment_amount_usda", total_percent)?;
    let kind = (amount.number > 1).then(|| kind(of));
    Ok(Modifier { amount, kind, total_percent })
}

fn kind(of: Fragments) -> FragmentKind {
    let flat = of.channers + of.flagstones > of.gravel + of.cobbles;
    let (small, large, small_kind, large_kind) = if flat {
        (of.channers, of.flagstones, FragmentKind::Channery, FragmentKind::Flaggy)
    } else {
        (of.gravel, of.cobbles, FragmentKind::Gravelly, FragmentKind::Cobbly)
    };
    if small >= 1.5 * large + 2.0 * of.stones + 2.5 * of.boulders {
        small_kind
    } else if large >= 1.5 * of.stones + 2.0 * of.boulders {
        large_kind
    } else if of.stones >= 1.5 * of.boulders {
        FragmentKind::Stony
    } else {
        FragmentKind::Bouldery
    }
}
