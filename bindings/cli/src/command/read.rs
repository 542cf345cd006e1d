//! `pitface read`: layers, kinds, reasons, next look, and the call for each zone.

use crate::argument::Shown;
use crate::asked::{Each, ManyFields};
use crate::field::FieldRead;
use crate::said::{FieldByField, OneSaid};
use crate::trouble::Trouble;
use crate::{json, keep, told};
use clap::Args;
use std::path::PathBuf;

/// Which fields to read.
#[derive(Args)]
pub struct Read {
    #[command(flatten)]
    asked: ManyFields,
    /// With files: keep in this store what is read; it is made if it is not there. Without: ask about its fields.
    #[arg(long, value_name = "STORE")]
    store: Option<PathBuf>,
}

impl Read {
    /// Reads them, each when its turn comes.
    pub fn run(self, shown: &Shown) -> Result<FieldByField, Trouble> {
        let words = shown.words();
        let Each { count, fields } = match &self.store {
            Some(store) if !self.asked.files.is_empty() => {
                let fields = keep::into_store(&self.asked.files, store)?;
                Each { count: fields.len(), fields: Box::new(fields.into_iter().map(Ok)) }
            }
            store => self.asked.each(store.as_deref())?,
        };
        let closing = told::closing(&words);
        let said = move |field: FieldRead| OneSaid {
            text: told::entries_text(&told::field(&words, &field)),
            json: json::field(&field),
            remarks: keep::remarks(&field),
        };
        let fields = Box::new(fields.map(move |field| field.map(&said)));
        Ok(FieldByField { count, fields, closing })
    }
}
