//! What is measured, each beside its floor.

use crate::floor::Plain;
use crate::measure::interleaved;
use crate::table::{Bar, Row};
use pitface_core::advice::advise;
use pitface_core::reading::{Table, read_field, read_pit, reference_faces};
use pitface_core::record::{ComesAway, FieldNotes, RecordId};
use pitface_core::store::{DeviceId, Store};
use std::error::Error;
use std::hint::black_box;
use std::path::Path;
use std::time::Duration;

/// How much is measured.
pub struct Size {
    /// Pits in the large store.
    pub pits: usize,
    /// Rounds of a quick measurement; slow ones make a tenth.
    pub rounds: usize,
}

impl Size {
    /// As the bars are meant.
    pub const FULL: Self = Self { pits: 10_000, rounds: 1_000 };
    /// A quick look.
    pub const SHORT: Self = Self { pits: 1_000, rounds: 100 };
}

/// Pits of the field that is called and loaded.
const FIELD_PITS: usize = 50;
/// Cells of a pit of ours, about: what a floor reads for it.
const CELLS_A_PIT: u32 = 60;
const DEVICE: DeviceId = DeviceId([7; 16]);
/// The first days of 2026, Unix milliseconds.
const NOW_MS: u64 = 1_767_225_600_000;

/// All rows, in `folder`.
pub fn all(folder: &Path, size: &Size) -> Result<Vec<Row>, Box<dyn Error>> {
    let mut rows = Vec::new();
    Ok(rows)
}
