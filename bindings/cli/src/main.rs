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
mod json;
mod keep;
mod machine;
mod told;
mod told_passes;
mod trouble;
mod write;

use argument::Shown;
use clap::Parser;
use std::io::{self, Write};
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
    let outcome = match Pitface::try_parse() {
        Ok(Pitface { shown, command }) => command.run(&shown),
        Err(help) if !help.use_stderr() => {
            let _ = help.print();
            return ExitCode::SUCCESS;
        }
        Err(unclear) => Err(Trouble::arguments(&unclear)),
    };
    match outcome {
        Ok(Answer { text, json, remarks, sound }) => {
            let _ = write!(io::stderr(), "{remarks}");
            print(&if wants_json { pretty(&json) } else { text });
            ExitCode::from(if sound { 0 } else { 2 })
        }
        Err(trouble) => {
            // Nobody is left to tell when standard error is closed.
            let _ = write!(io::stderr(), "{trouble}");
            if wants_json {
                print(&pretty(&trouble.to_json()));
            }
            ExitCode::from(2)
        }
    }
}

fn pretty(json: &serde_json::Value) -> String {
    format!("{json:#}\n")
}

/// To standard output; a reader that has gone away (`pitface read … | head`) is no trouble of ours.
fn print(text: &str) {
    let mut out = io::stdout().lock();
    let _ = out.write_all(text.as_bytes()).and_then(|()| out.flush());
}
