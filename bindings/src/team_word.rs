//! The word with which a team locks its files. It lies beside the key, in the folder that no backup takes, and so in no store and no bundle.

use crate::PitfaceError;
use crate::held::{Answer, Held};
use crate::save::why;
use pitface_core::store::{StoreError, write_whole};
use pitface_core::words::Caption;
use pitface_locked::{as_meant, long_enough};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Where the word lies.
pub(crate) struct TeamWord {
    file: PathBuf,
    word: Option<String>,
}

impl TeamWord {
    /// The word of a folder; a file that cannot be read is none.
    pub fn load(key_folder: &str) -> Self {
        let file = Path::new(key_folder).join("team_word");
        let word = fs::read_to_string(&file).ok().map(|text| as_meant(&text)).filter(|word| !word.is_empty());
        Self { file, word }
    }

    /// The word, if one is set.
    pub fn word(&self) -> Option<&str> {
        self.word.as_deref()
    }

    fn keep(&mut self, word: &str) -> io::Result<()> {
        write_whole(&self.file, word.as_bytes())?;
        self.word = Some(word.to_owned());
        Ok(())
    }

    fn forget(&mut self) -> io::Result<()> {
        match fs::remove_file(&self.file) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
            _ => self.word = None,
        }
        Ok(())
    }
}

impl Held {
    /// The team word was typed, or is to be forgotten where nothing was.
    pub fn set_team_word(&mut self, typed: &str) -> Result<Answer, PitfaceError> {
        let word = as_meant(typed);
        let (done, told) = if word.is_empty() {
            (self.team_word.forget(), Caption::TeamWordForgotten)
        } else if long_enough(&word).is_err() {
            return self.told(self.words.label(Caption::TeamWordShort));
        } else {
            (self.team_word.keep(&word), Caption::TeamWordKept)
        };
        if let Err(error) = done {
            return self.told(self.words.not_saved(why(&StoreError::from(error))));
        }
        self.partners_stale();
        Ok(Answer { screen: self.shown_with(self.words.label(told), true)?, changed: false })
    }
}
