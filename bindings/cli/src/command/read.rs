//! `pitface read`: layers, kinds, reasons, next look, and the call for each zone.

use crate::Answer;
use crate::argument::Shown;
use crate::trouble::Trouble;
use crate::{json, keep, told};
use clap::Args;
use std::path::PathBuf;

/// Which files to read.
#[derive(Args)]
pub struct Read {
    /// Notes files, a field each.
    #[arg(required = true, value_name = "FIELD.notes.json")]
    files: Vec<PathBuf>,
    /// Keep what is read in this store; made if it is not there.
    #[arg(long, value_name = "FILE")]
    store: Option<PathBuf>,
}

impl Read {
    /// Reads them.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let fields = match &self.store {
            Some(store) => keep::into_store(&self.files, store)?,
            None => keep::of_files(&self.files)?,
        };
        let entries: Vec<_> = fields.iter().flat_map(|field| told::field(&words, field)).collect();
        let json = json::fields(fields.iter().map(json::field).collect());
        Ok(Answer {
            remarks: keep::remarks(&self.files, &fields),
            ..Answer::new(told::text(&words, &entries), json)
        })
    }
}
