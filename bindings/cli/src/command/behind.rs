//! `pitface behind`: what the holes dug behind the machine say of each pass, why it failed where it did, what to change.

use crate::Answer;
use crate::argument::Shown;
use crate::asked::OneField;
use crate::json::{self, merged};
use crate::trouble::Trouble;
use crate::{keep, told, told_passes};
use clap::Args;
use pitface_core::error::Fault;
use serde_json::json;

/// Which field.
#[derive(Args)]
pub struct Behind {
    #[command(flatten)]
    asked: OneField,
}

impl Behind {
    /// Looks behind the machine.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let field = self.asked.read()?;
        if field.notes.passes.is_empty() {
            let todo = "add it under \"passes\", with \"after_digs\" behind it";
            let fault = Fault::new("passes", "there is no pass in it", todo);
            return Err(Trouble::one(&field.origin.called, fault));
        }
        let entries = told_passes::passes(&words, &field);
        let json = merged(json::head(&field), json!({ "passes": json::passes(&field) }));
        let answer = Answer::new(told::text(&words, &entries), json::fields(vec![json]));
        Ok(Answer { remarks: keep::remarks(&field), ..answer })
    }
}
