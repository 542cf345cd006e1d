//! `pitface next`: the question most worth answering in each pit, and whether another pit is worth digging.

use crate::Answer;
use crate::argument::Shown;
use crate::asked::OneField;
use crate::json::{self, merged};
use crate::trouble::Trouble;
use crate::{keep, told};
use clap::Args;
use pitface_core::advice::another_pit;
use pitface_core::report::{PageEntry, Section};
use serde_json::{Value, json};

/// Which field to look at.
#[derive(Args)]
pub struct Next {
    #[command(flatten)]
    asked: OneField,
}

impl Next {
    /// Looks for what is worth looking for.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let field = self.asked.read()?;
        let another = another_pit(&field.notes, &field.reading, &field.advice);
        let looks = field.next_looks().iter().enumerate().map(|(index, look)| Section {
            heading: told::pit_name(&words, &field, index),
            lines: vec![told::look(&words, look.as_ref())],
        });
        let entry = PageEntry {
            heading: words.name(&field.notes.field.name),
            sentence: another.map_or_else(|| words.enough_pits(), |zone| words.dig_another(zone)),
            sections: looks.collect(),
            ..PageEntry::default()
        };
        let looks = field.notes.pits.iter().zip(field.next_looks()).enumerate();
        let pits = looks.map(|(index, (noted, look))| {
            let told = json!({ "place": noted.place, "next_look": look.as_ref().map(json::next_look) });
            merged(json::pit_head(&field, index), told)
        });
        let pits: Vec<Value> = pits.collect();
        let json = merged(json::head(&field), json!({ "pits": pits, "another_pit": another }));
        let answer = Answer::new(told::text(&words, &[entry]), json::fields(vec![json]));
        Ok(Answer { remarks: keep::remarks(&field), ..answer })
    }
}
