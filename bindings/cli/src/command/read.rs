//! `pitface read`: layers, kinds, reasons, next look, and the call for each zone.

use crate::Answer;
use crate::argument::{Shown, StoreArgument};
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
    #[command(flatten)]
    store: StoreArgument,
}

impl Read {
    /// Reads them.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let fields = keep::read(&self.files, &self.store)?;
        let entries: Vec<_> = fields.iter().flat_map(|field| told::field(&words, field)).collect();
        let json = json::fields(fields.iter().map(json::field).collect());
        Ok(Answer {
            remarks: keep::remarks(&self.files, &fields),
            ..Answer::new(told::text(&words, &entries), json)
        })
    }
}
