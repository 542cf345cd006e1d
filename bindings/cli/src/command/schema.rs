//! `pitface schema`: what a notes file may hold, for other programs.

use crate::Answer;
use clap::Args;
use pitface_core::record::notes::SCHEMA;
use serde_json::{Value, json};

/// Nothing to choose.
#[derive(Args)]
pub struct Schema {}

impl Schema {
    /// Prints it.
    pub fn run() -> Answer {
        let schema: Value = serde_json::from_str(SCHEMA).unwrap_or_default();
        Answer::new(SCHEMA.to_owned(), json!({ "schema": schema }))
    }
}
