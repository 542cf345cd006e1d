//! The Pitface command line: notes files in; layers, calls and drawings out. It holds no rule about soil:
//! it reads arguments, asks the core, and prints what the core answers, as sentences or as JSON.

mod amount;
mod argument;
mod carried;
mod command;
mod device;
mod drawn;
mod drawn_field;
mod field;
mod help;
mod input;
mod json;
mod keep;
mod machine;
mod output;
mod preferences;
mod replacing;
mod told;
mod told_passes;
mod trouble;
mod write;

use argument::Shown;
use clap::error::ErrorKind;
use clap::{CommandFactory as _, FromArgMatches as _, Parser};
use preferences::Preferences;
use std::process::ExitCode;
use trouble::Trouble;

/// Reads soil pits and makes the call: does the structure of this field hold the crop back, how deep,
/// roots or steel, and is it dry enough at depth.
#[derive(Parser)]
#[command(name = "pitface", version)]
struct Pitface {
    #[command(flatten)]
    shown: Shown,
    #[command(subcommand)]
    command: command::Command,
}

/// What a command has to say: once as sentences, once as JSON.
struct Answer {
    text: String,
    json: serde_json::Value,
    /// Lines for standard error that stop nothing.
    remarks: String,
    /// Whether what was looked at is as it should be; else the exit code says so.
    sound: bool,
}

impl Answer {
    fn new(text: String, json: serde_json::Value) -> Self {
        Self { text, json, remarks: String::new(), sound: true }
    }
}

fn main() -> ExitCode {
    let wants_json = std::env::args_os().any(|argument| argument == "--json");
    let outcome = match program().try_get_matches().and_then(|matches| Pitface::from_arg_matches(&matches)) {
        Ok(Pitface { shown, command }) => {
            Preferences::of_this_person().and_then(|preferred| command.run(&shown.or(preferred)))
        }
        Err(help) if is_help(&help) => return output::printed(&help.render().to_string(), true),
        Err(unclear) => Err(Trouble::arguments(&unclear)),
    };
    match outcome {
        Ok(Answer { text, json, remarks, sound }) => {
            output::remark(&remarks);
            output::printed(&if wants_json { pretty(&json) } else { text }, sound)
        }
        Err(trouble) => {
            output::remark(&trouble.to_string());
            let json = if wants_json { pretty(&trouble.to_json()) } else { String::new() };
            output::printed(&json, false)
        }
    }
}

/// The program's arguments, with their help.
fn program() -> clap::Command {
    help::dressed(Pitface::command())
}

/// Help and version, also where nothing was asked at all.
fn is_help(error: &clap::Error) -> bool {
    !error.use_stderr() || error.kind() == ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand
}

fn pretty(json: &serde_json::Value) -> String {
    format!("{json:#}\n")
}
