//! `pitface next`: the question most worth answering in each pit, and whether another pit is worth digging.

use super::whereto;
use crate::Answer;
use crate::argument::Shown;
use crate::asked::OneField;
use crate::json::{self, merged};
use crate::told::{Entry, Section};
use crate::trouble::Trouble;
use crate::{keep, told};
use clap::Args;
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
        let dig = field.next();
        let way = dig.and_then(|dig| whereto::way_to(&dig.next, None, &field));
        let walk = way.as_ref().map(|(_, walk)| *walk);
        let looks = field.next_looks().iter().enumerate().map(|(index, look)| Section {
            heading: told::pit_name(&words, &field, index),
            lines: vec![told::look(&words, look.as_ref())],
        });
        let entry = Entry {
            heading: words.name(&field.notes.field.name),
            sentence: dig.map_or_else(String::new, |dig| words.next_pit_sentence(&dig.next, way)),
            paragraphs: dig.iter().flat_map(|dig| whereto::told_why(&words, dig)).collect(),
            sections: looks.chain([told::worth_asking(&words, &field)]).collect(),
        };
        let looks = field.notes.pits.iter().zip(field.next_looks()).enumerate();
        let pits = looks.map(|(index, (noted, look))| {
            let told = json!({ "place": noted.place, "next_look": look.as_ref().map(json::next_look) });
            merged(json::pit_head(&field, index), told)
        });
        let pits: Vec<Value> = pits.collect();
        let json = merged(
            json::head(&field),
            json!({
                "pits": pits,
                "next": dig.map(|dig| whereto::next_json(&dig, walk)),
                "worth_asking": field.worth_asking(),
            }),
        );
        let answer = Answer::new(told::text(&words, &[entry]), json::fields(vec![json]));
        Ok(Answer { remarks: keep::remarks(&field), ..answer })
    }
}
