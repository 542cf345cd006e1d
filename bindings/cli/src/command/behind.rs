//! `pitface behind`: what the holes dug behind the machine say of each pass, why it failed where it did, what to change.

use crate::Answer;
use crate::argument::Shown;
use crate::field::FieldRead;
use crate::trouble::Trouble;
use crate::{json, keep, told, told_passes};
use clap::Args;
use pitface_core::RULES;
use pitface_core::error::Fault;
use pitface_core::report::PageEntry;
use serde_json::{Value, json};
use std::path::PathBuf;

/// Which field.
#[derive(Args)]
pub struct Behind {
    /// A notes file.
    #[arg(value_name = "FIELD.notes.json")]
    file: PathBuf,
}

impl Behind {
    /// Looks behind the machine.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let files = [self.file];
        let fields = keep::of_files(&files)?;
        if fields.iter().all(|field| field.notes.passes.is_empty()) {
            let todo = "add it under \"passes\", with \"after_digs\" behind it";
            return Err(Trouble::one(&files[0], Fault::new("passes", "there is no pass in it", todo)));
        }
        let entries: Vec<PageEntry> =
            fields.iter().flat_map(|field| told_passes::passes(&words, field)).collect();
        let objects = fields.iter().map(field_json).collect();
        let answer = Answer::new(told::text(&words, &entries), json::fields(objects));
        Ok(Answer { remarks: keep::remarks(&files, &fields), ..answer })
    }
}

fn field_json(field: &FieldRead) -> Value {
    json!({ "field": field.notes.field.name, "rules": RULES, "passes": json::passes_of(&field.notes, &field.passes) })
}
