//! Handbook tables and rules that know nothing of a pit. A value always carries the scheme it was read by.
//!
//! | room | what may be in it |
//! |---|---|
//! | [`class`] | every table that turns one number into a class, and the one look-up over them |
//! | [`texture`] | texture classes, by feel and from fractions |
//! | [`roll`] | what two roll tests say |
//! | [`ring`] | a ring of soil weighed wet and dry |
//! | [`density`] | packing density, porosity, densities at which roots stop or soil settles |
//! | [`resistance`] | penetration resistance against roots and against the need for loosening |
//! | [`rooting`] | how deep crops root |
//! | [`available_water`] | water that soil holds for crops |

pub mod available_water;
pub mod class;
pub mod density;
pub mod resistance;
pub mod ring;
pub mod roll;
pub mod rooting;
pub mod texture;
