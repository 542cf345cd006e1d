//! What a call can fail with: one variant for each thing a shell can do about it.

use pitface_core::error::Fault;
use pitface_core::store::StoreError;

/// Why a call failed; nothing was saved. What a person has to read about a tap is never in here: it comes as
/// [`told`](crate::ShownScreen::told) of a screen. The texts are English, for whoever writes a shell; a shell maps the
/// variants to its own words.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, uniffi::Error)]
pub enum PitfaceError {
    /// A file or folder is not there.
    #[error("{what} is not there")]
    NotFound {
        /// Its path.
        what: String,
    },
    /// Something handed over makes no sense: a fault of the shell.
    #[error("{what}; {todo}")]
    Invalid {
        /// What is wrong, with the value found.
        what: String,
        /// What to do about it.
        todo: String,
    },
    /// The notes are open elsewhere: another process or another session has them.
    #[error("the notes are open elsewhere; close them there")]
    Conflict,
    /// The disk or the file does not work.
    #[error("{reason}")]
    Storage {
        /// What was reported.
        reason: String,
    },
    /// The disk is full: free some space and tap again.
    #[error("the disk is full")]
    DiskFull,
    /// A newer version of the app wrote these notes: this one must be brought up to date.
    #[error("a newer version wrote these notes")]
    NewerVersion,
    /// A fault of this program.
    #[error("{reason}")]
    Internal {
        /// What was reported.
        reason: String,
    },
}

impl From<StoreError> for PitfaceError {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::Missing(path) => Self::NotFound { what: path.display().to_string() },
            StoreError::RecordNotFound { record, kind } => {
                Self::NotFound { what: format!("{kind} {record}") }
            }
            StoreError::InUse => Self::Conflict,
            StoreError::DiskFull => Self::DiskFull,
            StoreError::NewerSchema { .. } => Self::NewerVersion,
            StoreError::InvalidValue(fault) => fault.into(),
            other => Self::Storage { reason: other.to_string() },
        }
    }
}

impl From<Fault> for PitfaceError {
    fn from(fault: Fault) -> Self {
        let Fault { at, wrong, todo } = fault;
        let what = if at.is_empty() { wrong } else { format!("{at}: {wrong}") };
        Self::Invalid { what, todo }
    }
}

impl From<std::io::Error> for PitfaceError {
    fn from(error: std::io::Error) -> Self {
        StoreError::from(error).into()
    }
}
