//! Merging: edits as they travel between devices. Pure bytes; what is kept where is the matter of [`store`](crate::store).
//!
//! The format stands in `FORMAT.md` beside this file. From small to large: an [`Edit`] of one cell; the [`Chain`] that fixes
//! which edits a device wrote in which order; [`columns`] that pack edits closely; the [`Bundle`], a range of one device's
//! edits with its header and signature; the [`PhotoPiece`]; the [`Part`], a frame around either; and the file
//! of parts ([`each_part, read_file`], [`FileWriter`]). Whatever is read was checked as a whole before anything of it is given out.

mod bundle;
mod cbor;
mod chain;
pub mod columns;
mod damage;
mod edit;
mod file;
mod header;
mod identity;
mod part;
mod photo_piece;
pub mod plan;
mod varint;

pub use bundle::{Bundle, seal};
pub use chain::Chain;
pub use damage::Damage;
pub use edit::{Content, Edit, EditName, Predecessor};
pub use file::{FileWriter, each_part, read_file};
pub use header::{Header, Section, Witness};
pub(crate) use identity::FINGERPRINT_BYTES;
pub use identity::{DeviceId, KeyFromSeed, Signer};
pub use part::{Part, PartKind};
pub use photo_piece::{PIECE_BYTES, PhotoPiece};
