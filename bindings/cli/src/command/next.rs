//! `pitface next`: the question most worth answering in each pit, and whether another pit is worth digging.

use crate::Answer;
use crate::argument::Shown;
use crate::trouble::Trouble;
use crate::{json, keep, told};
use clap::Args;
use pitface_core::RULES;
use pitface_core::advice::another_pit;
use pitface_core::report::{PageEntry, Section};
use serde_json::{Value, json};
use std::path::PathBuf;

/// Which file to look at.
#[derive(Args)]
pub struct Next {
    /// A notes file.
    #[arg(value_name = "FIELD.notes.json")]
    file: PathBuf,
}

impl Next {
    /// Looks for what is worth looking for.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let files = [self.file];
        let fields = keep::of_files(&files)?;
        let mut entries = Vec::new();
        let mut objects = Vec::new();
        for field in &fields {
            let another = another_pit(&field.notes, &field.reading, &field.advice);
            let looks = field.next_looks().iter().enumerate().map(|(index, look)| Section {
                heading: told::pit_name(&words, field, index),
                lines: vec![told::look(&words, look.as_ref())],
            });
            entries.push(PageEntry {
                heading: field.notes.field.name.clone(),
                sentence: another.map_or_else(|| words.enough_pits(), |zone| words.dig_another(zone)),
                sections: looks.collect(),
                ..PageEntry::default()
            });
            let pits = field.notes.pits.iter().zip(field.next_looks());
            let pits: Vec<Value> = pits
                .map(|(noted, look)| json!({ "place": noted.place, "next_look": look.as_ref().map(json::next_look) }))
                .collect();
            objects.push(json!({
                "field": field.notes.field.name, "rules": RULES, "pits": pits, "another_pit": another,
            }));
        }
        let answer = Answer::new(told::text(&words, &entries), json::fields(objects));
        Ok(Answer { remarks: keep::remarks(&files, &fields), ..answer })
    }
}
