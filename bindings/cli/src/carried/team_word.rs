//! The word with which a team locks its files. It never stands on the command line, where histories and lists of processes keep it.

use crate::trouble::Trouble;
use crate::write::cannot;
use clap::Args;
use pitface_core::error::Fault;
use pitface_locked::{Locking, Opened, Refused, as_meant, long_enough, unlock};
use std::env;
use std::fs::File;
use std::io::{self, Read, Seek, Write};
use std::path::{Path, PathBuf};

/// The variable of the environment that holds the word.
const VARIABLE: &str = "PITFACE_TEAM_WORD";

/// Fewest tries in which a word may be found by somebody who knows how people choose words (the estimate of zxcvbn; Wheeler 2016). One try at the work of
/// a locked file takes a processor about 0.15 s, so a thousand processors need some seventeen days for as many. Our judgement.
const FEWEST_GUESSES_LOG10: f64 = 10.0;

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
            let word = text.trim_matches(|letter: char| letter.is_whitespace() || letter == '\u{feff}');
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

/// How a new file is locked.
#[derive(Clone)]
pub struct Lock<'a> {
    /// The word.
    pub word: &'a TeamWord,
    /// A file of the same folder that the word must open, so that nobody locks with a word that was mistyped.
    pub like: Option<PathBuf>,
}

impl<'a> Lock<'a> {
    /// With this word, whatever else there is.
    pub fn with(word: &'a TeamWord) -> Self {
        Self { word, like: None }
    }

    /// Begins a locked file.
    pub fn begin<W: Write>(&self, to: W) -> io::Result<Locking<W>> {
        if let Some(like) = &self.like {
            Opened::open(File::open(like)?, &self.word.0).map_err(io::Error::other)?;
        }
        Locking::begin(to, &self.word.0)
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

    /// Returns whether files may be locked with it. What was locked with a weaker one is opened all the same.
    pub fn strong_enough(&self) -> Result<(), Trouble> {
        long_enough(&self.0).map_err(|refused| Trouble::of_said(Path::new("arguments"), &refused))?;
        let word = as_meant(&self.0);
        let strength = zxcvbn::zxcvbn(&word, &["pitface"]);
        if strength.guesses_log10() >= FEWEST_GUESSES_LOG10 {
            return Ok(());
        }
        let wrong = format!(
            "the team word is found in about 10^{:.0} tries, and whoever has a locked file can try at leisure",
            strength.guesses_log10()
        );
        let todo = "agree on four or more words taken by chance, which nobody says one after the other";
        Err(Trouble::of_arguments(Fault::new("", wrong, todo)))
    }

    /// Returns what is in one.
    pub fn unlock(&self, bytes: &[u8]) -> Result<Vec<u8>, Refused> {
        unlock(bytes, &self.0)
    }

    /// Opens one.
    pub fn open<R: Read + Seek>(&self, path: &Path, file: R) -> Result<Opened<R>, Trouble> {
        Opened::open(file, &self.0).map_err(|refused| Trouble::of_said(path, &refused))
    }
}
