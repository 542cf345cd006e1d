//! The word with which a team locks its files. It never stands on the command line, where histories and lists of processes keep it.

use crate::trouble::Trouble;
use crate::write::cannot;
use clap::Args;
use pitface_core::error::Fault;
use pitface_locked::{Refused, long_enough, unlock};
use std::env;
use std::path::{Path, PathBuf};

/// The variable of the environment that holds the word.
const VARIABLE: &str = "PITFACE_TEAM_WORD";

/// How a word is given.
pub const HOW: &str =
    "give the team word in the variable PITFACE_TEAM_WORD or in a file with --team-word-file";

/// Where the word is.
#[derive(Args)]
pub struct TeamWordArgument {
    /// A file whose one line is the word with which the team locks its files; without this the variable `PITFACE_TEAM_WORD` is looked at.
    #[arg(long, value_name = "FILE")]
    team_word_file: Option<PathBuf>,
}

impl TeamWordArgument {
    /// The word, if there is one.
    pub fn word(&self) -> Result<Option<TeamWord>, Trouble> {
        if let Some(file) = &self.team_word_file {
            let todo = "name a file with the team word as its one line";
            let text = std::fs::read_to_string(file)
                .map_err(|error| cannot(file, "cannot be read", &error, todo))?;
            let word = text.trim();
            if word.is_empty() || word.lines().count() > 1 {
                let wrong = "this file does not hold one line";
                return Err(Trouble::one(file, Fault::new("", wrong, todo)));
            }
            return Ok(Some(TeamWord(word.to_owned())));
        }
        let Some(word) = env::var_os(VARIABLE) else { return Ok(None) };
        let word = word.into_string().map_err(|_| {
            let fault = Fault::new(VARIABLE, "the team word is not text in UTF-8", HOW);
            Trouble::of_arguments(fault)
        })?;
        Ok(Some(word.trim().to_owned()).filter(|word| !word.is_empty()).map(TeamWord))
    }
}

/// The word itself; it is never printed.
pub struct TeamWord(String);

impl TeamWord {
    /// A word as it is.
    #[cfg(test)]
    pub fn of(word: &str) -> Self {
        Self(word.to_owned())
    }

    /// Whether files may be locked with it.
    pub fn long_enough(&self) -> Result<(), Trouble> {
        long_enough(&self.0).map_err(|refused| Trouble::of_said(Path::new("arguments"), &refused))
    }

    /// A locked file.
    pub fn lock(&self, bytes: &[u8]) -> Result<Vec<u8>, Refused> {
        pitface_locked::lock(bytes, &self.0)
    }

    /// What is in one.
    pub fn unlock(&self, bytes: &[u8]) -> Result<Vec<u8>, Refused> {
        unlock(bytes, &self.0)
    }
}
