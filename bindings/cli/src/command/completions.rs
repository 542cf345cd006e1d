//! `pitface completions`: what a shell needs to complete commands and options.

use crate::Answer;
use clap::Args;
use clap_complete::{Shell, generate};
use serde_json::json;

/// For which shell.
#[derive(Args)]
pub struct Completions {
    /// The shell.
    #[arg(value_enum)]
    shell: Shell,
}

impl Completions {
    /// Writes them to standard output.
    pub fn run(self) -> Answer {
        let mut script = Vec::new();
        generate(self.shell, &mut crate::program(), "pitface", &mut script);
        let script = String::from_utf8_lossy(&script).into_owned();
        let json = json!({ "shell": self.shell.to_string(), "script": script });
        Answer::new(script, json)
    }
}
