//! `pitface class`: the class of a value in a handbook's table.

use crate::Answer;
use crate::argument::Shown;
use crate::trouble::Trouble;
use clap::Args;
use pitface_core::soil::class::{self, ClassOf, ClassTable};
use serde_json::{Value, json};
use std::fmt::Write as _;

/// Which value of which table.
#[derive(Args)]
pub struct Class {
    /// The scheme; without one, all of them are listed.
    #[arg(requires = "value")]
    scheme: Option<String>,
    /// The value, in the scheme's unit.
    #[arg(allow_negative_numbers = true)]
    value: Option<f64>,
}

impl Class {
    /// Looks it up.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let (Some(scheme), Some(value)) = (self.scheme, self.value) else { return Ok(list()) };
        let found = class::of(&scheme, value).map_err(Trouble::of_arguments)?;
        let value_with_unit = format!("{value} {}", found.unit);
        let told = shown.words().class(found.scheme, &value_with_unit, &found.class.replace('_', " "));
        let mut json = class_json(&found);
        json["value"] = json!(value);
        Ok(Answer::new(format!("{told}\n  {}\n", found.source), json))
    }
}

/// A class with its scheme, limits and source.
pub fn class_json(found: &ClassOf) -> Value {
    json!({
        "scheme": found.scheme,
        "unit": found.unit,
        "class": found.class,
        "number": found.number,
        "lower": found.lower,
        "upper": found.upper,
        "source": found.source,
    })
}

/// The tables, as data: id, what is measured in which unit, source.
fn list() -> Answer {
    let mut text = String::new();
    for ClassTable { id, what, unit, .. } in class::schemes() {
        let _ = writeln!(text, "{id:<32} {what} ({unit})");
    }
    let schemes: Vec<Value> = class::schemes()
        .map(|table| {
            let classes: Vec<&str> = table.rows.iter().map(|row| row.class).collect();
            json!({
                "scheme": table.id, "what": table.what, "unit": table.unit, "classes": classes, "source": table.source(),
            })
        })
        .collect();
    Answer::new(text, json!({ "schemes": schemes }))
}
