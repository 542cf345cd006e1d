//! `pitface fields`: what is in a store.

use crate::Answer;
use crate::argument::Shown;
use crate::json;
use crate::keep::Kept;
use crate::trouble::Trouble;
use clap::Args;
use serde_json::{Value, json};
use std::fmt::Write as _;
use std::path::PathBuf;

/// Which store.
#[derive(Args)]
pub struct Fields {
    /// The store.
    store: PathBuf,
}

impl Fields {
    /// Lists its fields, in the order they were first saved.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let (words, kept) = (shown.words(), Kept::open(&self.store)?);
        let mut text = String::new();
        for field in kept.fields() {
            let _ = writeln!(text, "{}\n  {}", words.field_line(&field.name, field.pits), field.id);
        }
        if kept.fields().is_empty() {
            text = words.no_field() + "\n";
        }
        let each = kept.fields().iter();
        let fields: Vec<Value> = each
            .map(|field| json!({ "field": field.name, "field_id": field.id, "pits": field.pits }))
            .collect();
        Ok(Answer::new(text, json::fields(fields)))
    }
}
