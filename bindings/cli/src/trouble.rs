//! Bad input: one line a fault on standard error, one object on standard output with `--json`.

use pitface_core::error::Fault;
use serde_json::{Value, json};
use std::fmt;
use std::path::Path;

/// Everything wrong with what was given; the command has changed nothing.
#[derive(Debug, Default)]
pub struct Trouble {
    faults: Vec<(String, Fault)>,
}

impl Trouble {
    /// One fault of one file (or argument).
    pub fn one(file: &Path, fault: Fault) -> Self {
        Self::of_file(file, vec![fault])
    }

    /// Returns what an error of the core says of a file: `what is wrong; what to do`.
    pub fn of_said(file: &Path, said: &dyn fmt::Display) -> Self {
        let said = said.to_string();
        let (wrong, todo) = said.rsplit_once("; ").unwrap_or((&said, "try another file"));
        Self::one(file, Fault::new("", wrong, todo))
    }

    /// One fault of the arguments.
    pub fn of_arguments(fault: Fault) -> Self {
        Self::of_file(Path::new("arguments"), vec![fault])
    }

    /// Returns what clap has to say of the arguments, on one line.
    pub fn arguments(error: &clap::Error) -> Self {
        let said = error.to_string();
        let mut lines = said.lines().map(str::trim).filter(|line| !line.is_empty());
        let wrong = lines.next().unwrap_or_default().trim_start_matches("error: ").to_owned();
        let hints: Vec<&str> = lines
            .filter(|line| !line.starts_with("Usage:") && !line.starts_with("For more information"))
            .collect();
        let wrong = if hints.is_empty() { wrong } else { format!("{wrong} {}", hints.join(" ")) };
        Self::of_arguments(Fault::new("", wrong, "see `pitface help`"))
    }

    /// All faults of one file.
    pub fn of_file(file: &Path, faults: Vec<Fault>) -> Self {
        let file = file.display().to_string();
        Self { faults: faults.into_iter().map(|fault| (file.clone(), fault)).collect() }
    }

    /// These faults and those.
    pub fn add(&mut self, other: Self) {
        self.faults.extend(other.faults);
    }

    /// Good if there is nothing wrong.
    pub fn or<T>(self, good: T) -> Result<T, Self> {
        if self.faults.is_empty() { Ok(good) } else { Err(self) }
    }

    /// `{"errors": [{"file", "place", "wrong", "todo"}]}`.
    pub fn to_json(&self) -> Value {
        let errors: Vec<Value> = self
            .faults
            .iter()
            .map(|(file, fault)| {
                json!({ "file": file, "place": fault.at, "wrong": fault.wrong, "todo": fault.todo })
            })
            .collect();
        json!({ "errors": errors })
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (file, fault) in &self.faults {
            writeln!(f, "{file}: {fault}")?;
        }
        Ok(())
    }
}
