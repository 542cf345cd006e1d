//! The Pitface command line: notes files in; layers, calls and drawings out. It holds no rule about soil:
//! it reads arguments, asks the core, and prints what the core answers, as sentences or as JSON.

mod amount;
mod argument;
mod asked;
mod carried;
mod command;
mod device;
mod drawn;
mod drawn_field;
mod drawn_photo;
mod field;
mod help;
mod input;
mod into_store;
mod json;
mod keep;
mod machine;
mod maps;
mod output;
mod pdf;
mod preferences;
mod progress;
mod replacing;
mod said;
mod said_save;
mod told;
mod told_passes;
mod trouble;
mod write;

use argument::Shown;
use clap::error::ErrorKind;
use clap::{CommandFactory as _, FromArgMatches as _, Parser};
use preferences::Preferences;
use said::{Answer, pretty};
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

fn main() -> ExitCode {
    let wants_json = std::env::args_os().any(|argument| argument == "--json");
    let asked = match program().try_get_matches().and_then(|matches| Pitface::from_arg_matches(&matches)) {
        Ok(asked) => asked,
        Err(help) if is_help(&help) => return output::printed(&help.render().to_string(), true),
        Err(unclear) => return refused(&Trouble::arguments(&unclear), wants_json),
    };
    let Pitface { shown, command } = asked;
    let said = Preferences::of_this_person().and_then(|preferred| command.run(&shown.or(preferred)));
    match said {
        Ok(said) => said.print(wants_json),
        Err(trouble) => refused(&trouble, wants_json),
    }
}

/// Nothing was done, and why.
fn refused(trouble: &Trouble, wants_json: bool) -> ExitCode {
    output::remark(&trouble.to_string());
    let json = if wants_json { pretty(&trouble.to_json()) } else { String::new() };
    output::printed(&json, false)
}

/// The program's arguments, with their help.
fn program() -> clap::Command {
    help::dressed(Pitface::command())
}

/// Help and version, also where nothing was asked at all.
fn is_help(error: &clap::Error) -> bool {
    !error.use_stderr() || error.kind() == ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand
}
