//! `pitface read`: layers, kinds, reasons, next look, and the call for each zone.

use crate::argument::Shown;
use crate::asked::{Each, ManyFields};
use crate::carried::chosen::take_photos;
use crate::field::FieldRead;
use crate::into_store::{ReadInto, into_store};
use crate::said::{FieldByField, OneSaid};
use crate::trouble::Trouble;
use crate::{json, keep, told};
use clap::Args;
use pitface_core::error::Fault;
use serde_json::json;
use std::path::PathBuf;

/// Which fields to read.
#[derive(Args)]
pub struct Read {
    #[command(flatten)]
    asked: ManyFields,
    /// With files: keep in this store what is read; it is made if it is not there. Without: ask about its fields.
    #[arg(long, value_name = "STORE")]
    store: Option<PathBuf>,
    /// Remove from the store what the file brought earlier and no longer says. The word comes with the list, which reading without it tells.
    #[arg(long, value_name = "WORD", requires = "store")]
    remove_missing: Option<String>,
}

impl Read {
    /// Reads them, each when its turn comes.
    pub fn run(self, shown: &Shown) -> Result<FieldByField, Trouble> {
        let words = shown.words();
        let files = &self.asked.files;
        if self.remove_missing.is_some() && files.len() != 1 {
            let todo = "name the one file whose list it came with";
            let fault = Fault::new("--remove-missing", "the word is that of one file", todo);
            return Err(Trouble::of_arguments(fault));
        }
        if let Some(store) = self.store.as_ref().filter(|_| !files.is_empty()) {
            let read = into_store(keep::all_sound(files)?, store, self.remove_missing.as_deref(), &words)?;
            for (file, ReadInto { field, .. }) in files.iter().zip(&read) {
                take_photos(file, &field.notes, store);
            }
            let (count, closing) = (read.len(), told::closing(&words));
            let said = move |ReadInto { field, lines, json }: ReadInto| OneSaid {
                text: format!("{}\n\n{}", lines.join("\n"), told::entries_text(&told::field(&words, &field))),
                json: json::merged(json::field(&field), json!({ "read_in": json })),
                remarks: keep::remarks(&field),
            };
            let fields = Box::new(read.into_iter().map(move |read| Ok(said(read))));
            return Ok(FieldByField { count, fields, closing });
        }
        let Each { count, fields } = self.asked.each(self.store.as_deref())?;
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
