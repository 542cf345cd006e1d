//! What can go wrong with a store; one variant for each thing a person or a shell can do about it.

use super::{Cell, DeviceId, Vouched};
use crate::error::Fault;
use crate::merge::Damage;
use crate::record::RecordId;
use rusqlite::ErrorCode;
use std::path::PathBuf;

/// Why a store could not be opened, read or written. In each case nothing was changed.
///
/// Messages say what is wrong and what to do; they leave out the store's path, which the caller knows.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum StoreError {
    /// Nothing there to open, or no folder to create it in.
    #[error("there is no {}; check the path, or create it first", .0.display())]
    Missing(PathBuf),
    /// Not a store at all.
    #[error("this is no Pitface store: {0}; choose another file")]
    NotAStore(&'static str),
    /// Written by a later version of this program.
    #[error("the store has schema {found}, this version knows up to {known}; update the program to open it")]
    NewerSchema {
        /// Version in the file.
        found: i64,
        /// Newest version this program knows.
        known: i64,
    },
    /// A store, but damaged.
    #[error("the store is damaged: {0}; keep the file as it is and restore a copy of it")]
    Corrupt(String),
    /// Something in it is not as it was written, and would have been signed or written out for others.
    #[error("{0}, so nothing of it is signed or given out; look at it with `pitface check --repair`")]
    NotAsWritten(String),
    /// The file or its folder may not be written.
    #[error("the store or its folder cannot be written; move it to a folder that can, or allow writing")]
    ReadOnly,
    /// No room left; nothing of this save was kept.
    #[error("the disk is full and nothing of this was saved; free some space and save again")]
    DiskFull,
    /// Another program, or another part of this one, has it open.
    #[error("the store is open elsewhere and takes one writer at a time; close it there and try again")]
    InUse,
    /// No such record, or it is deleted, or it is of another kind.
    #[error("there is no {kind} {record} in the store; save it first")]
    RecordNotFound {
        /// The id asked for.
        record: RecordId,
        /// The kind asked for.
        kind: &'static str,
    },
    /// A field that was deleted here, of which a file speaks still.
    #[error("the field {name} was deleted here; bring it back first, or leave the file alone")]
    FieldDeleted {
        /// Its id.
        field: RecordId,
        /// Its name.
        name: String,
    },
    /// A value that no record may have.
    #[error("not saved: {0}")]
    InvalidValue(#[from] Fault),
    /// A bundle that is not read; nothing of it was taken in.
    #[error("not taken in: {0}")]
    Bundle(#[from] Damage),
    /// The device's key could not be used.
    #[error("the key of this device cannot be used now; unlock it and hand over again")]
    NoKey,
    /// Two devices that are known show the same fingerprint: one of them was made to.
    #[error(
        "another device shows the fingerprint {0} too, so nobody can tell whom they accept; accept neither, and tell the holder"
    )]
    SameFingerprint(DeviceId),
    /// This device does not refuse itself.
    #[error("this is the device one is on; refuse it where it is not welcome")]
    OwnDevice,
    /// What one device says in the name of another is not to be believed, or nothing of the kind is here.
    #[error("{}", not_to_believe(*.0))]
    NotToBelieve(Option<Vouched>),
    /// No room for more files of newer versions.
    #[error(
        "files of newer versions that wait take all the room they may; update the program, or throw away what waits (`pitface partners STORE --empty-waiting`)"
    )]
    TooMuchWaits,
    /// A cell that a record cannot do without is absent or means nothing to this version.
    #[error("{cell} of record {record} cannot be read by this version; update the program")]
    Unreadable {
        /// The record.
        record: RecordId,
        /// Its cell.
        cell: Cell,
    },
    /// Whatever else the database reports.
    #[error("the store failed: {0}; try again, and restart the device if it stays")]
    Database(#[source] rusqlite::Error),
    /// Whatever else the file system reports.
    #[error("the store cannot be reached: {0}; check the path and its device")]
    File(#[source] std::io::Error),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        match error.sqlite_error_code() {
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::InUse,
            Some(ErrorCode::DiskFull) => Self::DiskFull,
            Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied) => Self::ReadOnly,
            Some(ErrorCode::DatabaseCorrupt) => Self::Corrupt(error.to_string()),
            Some(ErrorCode::NotADatabase) => Self::NotAStore("SQLite cannot read it"),
            _ => match error {
                // A column of another type than the schema says.
                rusqlite::Error::InvalidColumnType(..)
                | rusqlite::Error::FromSqlConversionFailure(..)
                | rusqlite::Error::IntegralValueOutOfRange(..) => Self::Corrupt(error.to_string()),
                _ => Self::Database(error),
            },
        }
    }
}

impl From<std::io::Error> for StoreError {
    fn from(error: std::io::Error) -> Self {
        use std::io::ErrorKind::{PermissionDenied, ReadOnlyFilesystem, StorageFull};
        match error.kind() {
            PermissionDenied | ReadOnlyFilesystem => Self::ReadOnly,
            StorageFull => Self::DiskFull,
            _ => Self::File(error),
        }
    }
}

fn not_to_believe(standing: Option<Vouched>) -> &'static str {
    match standing {
        None | Some(Vouched::Asks) => {
            "nothing waits here that the one device says in the name of the other; see `pitface partners`"
        }
        Some(Vouched::Believed) => "it is believed already; there is nothing to do",
        Some(Vouched::ThisDevice) => {
            "nobody else speaks for the device one is on; ask the holder of the other"
        }
        Some(Vouched::Accepted) => {
            "that device is accepted here and speaks for itself; refuse it first, if it is lost"
        }
        Some(Vouched::WentOn) => "that device went on itself, and otherwise; ask the holders of both",
    }
}
