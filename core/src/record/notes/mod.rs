//! The notes file (`.notes.json`): one field written by hand or by another program.
//!
//! [`read`] takes a file apart and tells every fault with its place; [`write`] puts one together; [`SCHEMA`]
//! describes the same file to other programs. Keys nobody knows are kept, reported, and written back.

mod cursor;
mod depths;
mod guess;
mod json;
pub(crate) mod length;
mod name;
mod read;
mod starting;
mod value;
mod write;

pub use name::file_name;
pub use read::{Read, read};
pub use starting::starting;
pub use write::write;

/// Version of the notes file that is written, and the newest that is read.
pub const VERSION: u64 = 1;

/// How a key begins that is a comment: kept as unknown keys are, and not told of.
pub const COMMENT: &str = "//";

/// Most bytes that are read as a notes file: some thousand pits with all that can be noted of them. Our judgement.
pub const LONGEST_BYTES: u64 = 16 << 20;

/// The file as a JSON Schema, draft 2020-12. It holds the form and the ranges; what must fit together (depths
/// against each other, the same id twice) only [`read`] checks.
pub const SCHEMA: &str = include_str!("notes.schema.json");
