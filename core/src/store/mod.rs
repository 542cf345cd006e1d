//! The store: one SQLite file that remembers every edit. The only room with SQL.
//!
//! # The format, in a minute
//!
//! Everything noted is a **record** (a field, a pit, a step of the knife walk, ...) under a UUIDv7, and a
//! record is nothing but **cells**: numbered values (see the table in `cells.rs`; a number is never
//! reused). A saved tap is one or more **edits**, each the new value of one cell. Two tables hold them:
//!
//! `log`, one row an edit, only ever added to:
//!
//! | column | what |
//! |---|---|
//! | `device`, `sequence` | who wrote it (a row of `devices`) and that device's how-manyth edit, from 1 without gaps; the key |
//! | `clock` | hybrid clock: 48 bits of Unix milliseconds, 16 bits of counter; all edits of one save share it, so a save is "this device, this clock" |
//! | `record`, `field` | the cell: 16 bytes of UUIDv7 and its number |
//! | `predecessors` | CBOR array of `[device, sequence]`: the edits of that cell its writer had before them; empty for a first value |
//! | `value` | deterministic CBOR; `null` = absent ("not looked") |
//! | `undoes` | first sequence of the save that this edit takes back, else NULL; a note to this device itself |
//!
//! `cells`, what holds now: the edits that no other edit names as predecessor (**heads**), with `clock`
//! and `value` copied. A cell has one head, or several if two devices wrote it without knowing of
//! each other; then the one with the highest (`clock`, device id) has `shown` = 1 and the rest are kept with 0.
//! The table is a cache: [`Store::rebuild`] makes it anew from the log, [`Store::check`] compares the two.
//!
//! `readings` and `said` remember what notes files said when they were read here, as hashes of values, so that a file that is read
//! again changes only what it says otherwise. They stay on this device.
//!
//! Six cells are common to all records: what **kind** it is; its **parent** `[parent's id or null,
//! list, rank]`, so that nothing is nested (the list is the number of the kind it holds); whether it is
//! **deleted**; the **unknown keys** it came with (a JSON object as CBOR, key order kept); and for a field
//! those of the notes file around it; and, of a field, which other record is the **same** field. The creating edit of a record is that of its kind, so (device,
//! sequence) of it also names the record. Cells with a number this version does not know stay as they are,
//! bit for bit; so does a record with a value that this version cannot do without and cannot read: it is left out of what is loaded, and
//! [`Store::not_shown`] tells so.
//!
//! # What is promised
//!
//! - A save is one transaction, synced to the disk before the call returns. Nothing is overwritten: undo is another edit.
//! - One writer: an open store locks the file until dropped; another opener gets [`StoreError::InUse`].
//! - On any error nothing that was saved has changed. A refused opening leaves every byte as it was; a save that a full
//!   disk cut off may leave an unfinished tail in the write-ahead log, which nobody reads.
//! - No clock and no randomness of its own: times, record ids and the device's id are arguments.

mod alone;
mod aside;
mod belongs;
mod carrying;
mod cells;
mod check;
mod check_parts;
mod clock;
mod conflicts;
mod error;
#[cfg(test)]
mod full_disk_test;
mod geopackage;
mod history;
mod kept;
mod last_save;
mod leaving;
mod lines;
mod load;
mod log;
mod looking;
mod matching;
mod missing;
mod not_shown;
mod open;
mod packed;
mod partners;
mod personal;
mod photos;
mod reading_in;
mod redacting;
mod regretted;
mod rows;
mod said;
mod same_field;
mod save;
mod saving;
mod schema;
mod sealing;
mod shared;
mod sources;
mod strangers;
mod taking;
mod undo;
mod using;
mod valid;
mod value;
mod vouching;
mod whole_file;
mod write_ahead;
mod writing;

pub use alone::{NobodyElse, WentAway};
pub use belongs::Belongs;
pub use carrying::{Came, CameFault, Handed, bundle_name};
pub use cells::{Cell, Kind};
pub use check::Checked;
pub use conflicts::{Conflict, Version};
pub use error::StoreError;
pub use geopackage::{Packed, PitPhoto, read_geopackage, write_geopackage};
pub use history::{Deleted, SaveTold};
pub use kept::NAME_NOT_READABLE;
pub use last_save::{Did, LastSave, Named, Written};
pub use leaving::Leaving;
pub use load::FieldSummary;
pub use missing::{Missing, MissingRecord};
pub use not_shown::{NotShown, WhyNotShown};
pub use partners::Partner;
pub use personal::Personal;
pub use photos::{
    KeptPhoto, PhotoFault, PhotoHash, Photos, PhotosChecked, PieceTaken, Stripped, photo_hash, photo_name,
    shown_size, stripped, without_notes,
};
pub use reading_in::{NotesFile, ReadIn};
pub use regretted::Regretted;
pub use same_field::Difference;
pub use saving::Saving;
pub use schema::{APPLICATION_ID, SCHEMA_VERSION};
pub use sealing::Sealer;
pub use shared::{FileStamp, KnownFile};
pub use strangers::Waiting;
pub use taking::TakenIn;
pub use vouching::{Vouched, Vouching};
pub use whole_file::{NewFile, Readers, make_own_folder, remove_left_over, sync_folder, write_whole};

pub use crate::merge::DeviceId;
use crate::record::RecordId;
use rusqlite::Connection;

/// An open store; the one writer of its file until dropped.
#[derive(Debug)]
pub struct Store {
    connection: Connection,
    /// Row of this device in `devices`.
    device: i64,
    /// Whether saves in the write-ahead log could not be read when it was opened.
    lost_saves: bool,
}

/// One cell of one record that was edited.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Change {
    /// The record.
    pub record: RecordId,
    /// The cell.
    pub cell: Cell,
}

/// What a save wrote; it is on the disk.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Saved {
    /// The edited cells in the order written; empty if everything was there already.
    pub changes: Vec<Change>,
}

/// What an undo took back; it is on the disk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Undone {
    /// The cells that have their earlier value again. A record that the undone save had made shows as
    /// its [`Cell::DELETED`].
    pub changes: Vec<Change>,
    /// When the undone save was made, Unix milliseconds by the hybrid clock.
    pub saved_ms: u64,
}
