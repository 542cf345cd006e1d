//! What can be wrong with something noted, and where: shared by every room that takes input.

use crate::harmless::line;
use std::fmt;

/// One thing wrong with input: where it stands, what is wrong, what to do.
///
/// English only, on purpose: these are read by whoever writes a notes file or a shell, and the
/// shells map their own situations to words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Place in the input, e.g. `pits[2].walk[3].to_mm`; empty for the whole of it.
    pub at: String,
    /// What is wrong, with the value found.
    pub wrong: String,
    /// What to do about it.
    pub todo: String,
}

impl Fault {
    /// A fault at a place.
    pub fn new(at: impl Into<String>, wrong: impl Into<String>, todo: impl Into<String>) -> Self {
        Self { at: at.into(), wrong: wrong.into(), todo: todo.into() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.at.is_empty() {
            write!(f, "{}: ", line(&self.at))?;
        }
        write!(f, "{}; {}", line(&self.wrong), line(&self.todo))
    }
}

impl std::error::Error for Fault {}
