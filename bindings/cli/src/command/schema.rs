//! `pitface schema`: what a notes file may hold, and what every answer says, for other programs.

use crate::Answer;
use clap::Args;
use clap::builder::PossibleValuesParser;
use pitface_core::record::notes::SCHEMA;
use serde_json::{Value, json};

/// The schemas of the answers, by the command that gives them; `errors` is what a refused one says.
macro_rules! answers {
    ($($name:literal)+) => {
        &[$(($name, include_str!(concat!("../../schemas/", $name, ".schema.json")))),+]
    };
}
const ANSWERS: &[(&str, &str)] = answers! {
    "behind" "boundary" "bring-back" "check" "class" "completions" "demo" "draw" "errors" "fields" "ground" "hand-over" "history" "join" "look" "manual" "new" "next"
    "page" "partners" "read" "redact" "roll" "sample" "schema" "set" "settle" "tables" "take-in" "texture" "tip" "undo" "where" "write"
};
/// What they have in common.
const PARTS: &str = include_str!("../../schemas/parts.schema.json");
/// The schema of the notes file.
const NOTES: &str = "notes";

/// Of what.
#[derive(Args)]
pub struct Schema {
    /// `notes` for the notes file, a command for its answer with --json, `errors` for what a refused command says.
    #[arg(default_value = NOTES, hide_possible_values = true, value_parser = names())]
    of: String,
}

fn names() -> PossibleValuesParser {
    PossibleValuesParser::new([NOTES].into_iter().chain(ANSWERS.iter().map(|(name, _)| *name)))
}

impl Schema {
    /// Prints it, with all it refers to.
    pub fn run(self) -> Answer {
        let of_answer = ANSWERS.iter().find(|(name, _)| *name == self.of);
        let mut schema = parsed(of_answer.map_or(SCHEMA, |(_, text)| text));
        if of_answer.is_some() {
            schema["$defs"] = json!({ "parts": parsed(PARTS) });
        }
        Answer::new(format!("{schema:#}\n"), json!({ "schema": schema }))
    }
}

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory as _;

    #[test]
    fn every_command_has_a_schema_of_its_answer() {
        for command in crate::Pitface::command().get_subcommands() {
            let name = command.get_name();
            assert!(ANSWERS.iter().any(|(its, _)| *its == name), "{name} has none in bindings/cli/schemas");
        }
        for (name, text) in ANSWERS {
            assert_eq!(parsed(text)["$id"], format!("{name}.schema.json"));
        }
    }
}
