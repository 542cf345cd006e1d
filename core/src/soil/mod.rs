//! Handbook tables and rules that know nothing of a pit. A value always carries the scheme it was read by.
//!
//! | room | what may be in it |
//! |---|---|
//! | [`class`] | every table that turns one number into a class, and the one look-up over them |
//! | [`texture`] | texture classes, by feel and from fractions |
//! | [`roll`] | what two roll tests say |
//! | [`density`] | packing density, porosity, densities at which roots stop or soil settles |
//! | [`resistance`] | penetration resistance against roots and against the need for loosening |
//! | [`fragments`], [`munsell`] | names of stony soil; contrast of two colours |
//! | [`counts`] | what is counted on an area: worms, roots |
//! | [`rooting`] | how deep crops root |
//! | [`score`], [`subsoil_score`] | published scores, as a cross-reference only |
//! | [`available_water`] | water used up, by feel |

pub mod available_water;
pub mod class;
pub mod counts;
pub mod density;
pub mod fragments;
pub mod munsell;
pub mod resistance;
pub mod roll;
pub mod rooting;
pub mod score;
pub mod subsoil_score;
pub mod texture;
