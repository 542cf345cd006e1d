//! What is recorded, and which call is to fail.

use crate::Files;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// One change of the files of a folder, as SQLite asked for it. Files go by their names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A file that was not there is made.
    Create(String),
    /// Bytes are written.
    Write {
        /// The file.
        name: String,
        /// From which byte on.
        at: usize,
        /// What.
        bytes: Vec<u8>,
    },
    /// A file is cut off.
    Truncate {
        /// The file.
        name: String,
        /// Bytes that stay.
        length: usize,
    },
    /// A file is removed.
    Delete(String),
    /// What was written to a file is on the disk now.
    Sync(String),
    /// Syncing a file failed. What was to come to the disk never does unless it is written again: the system takes it for
    /// written (Rebello and others 2020, "Can applications recover from fsync failures?").
    SyncFailed(String),
    /// Which files there are is on the disk now.
    SyncFolder,
}

/// A call that fails.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault {
    /// How-manyth call, from 1.
    pub call: u64,
    /// Whether the disk is full (only writing fails), or the call fails otherwise.
    pub disk_full: bool,
    /// Whether every later one fails too, until [`Tape::mend`].
    pub stays: bool,
}

/// What a call does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Call {
    Open,
    Read,
    Write,
    Truncate,
    Sync,
    Delete,
    Lock,
}

#[derive(Default)]
struct Inner {
    changes: Vec<Change>,
    calls: u64,
    fault: Option<Fault>,
    failed: u64,
    normal: bool,
}

/// What happened in one folder. Clones are the same tape.
#[derive(Clone, Default)]
pub struct Tape {
    inner: Arc<Mutex<Inner>>,
    /// What was in the folder before.
    before: Files,
}

impl Tape {
    /// An empty tape for a folder in which these files are.
    pub fn new(before: Files) -> Self {
        Self { before, ..Self::default() }
    }

    fn inner(&self) -> MutexGuard<'_, Inner> {
        self.inner.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Returns what was in the folder before.
    pub fn before(&self) -> &Files {
        &self.before
    }

    /// From now on `PRAGMA synchronous = FULL` is taken for `NORMAL`: the mistake that the tests have to see.
    pub fn take_full_for_normal(&self) {
        self.inner().normal = true;
    }

    pub(crate) fn takes_full_for_normal(&self) -> bool {
        self.inner().normal
    }

    /// How many changes there are so far.
    pub fn length(&self) -> usize {
        self.inner().changes.len()
    }

    /// All changes.
    pub fn changes(&self) -> Vec<Change> {
        self.inner().changes.clone()
    }

    pub(crate) fn record(&self, change: Change) {
        self.inner().changes.push(change);
    }

    /// Returns whether a file of this name is there by what was before and by the changes so far.
    pub(crate) fn knows(&self, name: &str) -> bool {
        let inner = self.inner();
        let last = inner.changes.iter().rev().find_map(|change| match change {
            Change::Create(its) if its == name => Some(true),
            Change::Delete(its) if its == name => Some(false),
            _ => None,
        });
        last.unwrap_or_else(|| self.before.contains_key(name))
    }

    /// Makes a call fail, counted from now.
    pub fn fail(&self, fault: Fault) {
        let mut inner = self.inner();
        inner.calls = 0;
        inner.failed = 0;
        inner.fault = Some(fault);
    }

    /// The disk works again.
    pub fn mend(&self) {
        self.inner().fault = None;
    }

    /// How many calls have failed since [`Tape::fail`].
    pub fn failed(&self) -> u64 {
        self.inner().failed
    }

    /// Counts a call, and tells whether it has to fail.
    pub(crate) fn fails(&self, call: Call) -> Option<Fault> {
        let mut inner = self.inner();
        let fault = inner.fault?;
        let takes_room = matches!(call, Call::Open | Call::Write | Call::Sync);
        if fault.disk_full && !takes_room {
            return None;
        }
        inner.calls += 1;
        let now = inner.calls == fault.call || (fault.stays && inner.calls > fault.call);
        if now {
            inner.failed += 1;
        }
        now.then_some(fault)
    }
}
