//! The notes file (`.notes.json`): one field written by hand or by another program.
//!
//! [`read`] takes a file apart and tells every fault with its place; [`write`] puts one together; [`SCHEMA`] is the
//! same form as a JSON Schema for other programs. Keys nobody knows are kept, reported, and written back.

mod check;
mod cursor;
mod read;
mod write;

pub use read::{Read, read};
pub use write::write;

/// Version of the notes file this program writes, and the newest it reads.
pub const VERSION: u64 = 1;

/// The form of the file as JSON Schema, draft 2020-12.
pub const SCHEMA: &str = include_str!("notes.schema.json");
