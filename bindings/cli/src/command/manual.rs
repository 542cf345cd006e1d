//! `pitface manual`: the help as pages of a manual.

use crate::Answer;
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use clap::{Args, Command};
use clap_mangen::Man;
use pitface_core::error::Fault;
use std::io;
use std::path::PathBuf;

/// Where to.
#[derive(Args)]
pub struct Manual {
    /// Folder for the pages, `pitface.1` and one a command; made if it is not there. Only these files are overwritten.
    #[arg(long, value_name = "DIR")]
    out: PathBuf,
}

impl Manual {
    /// Writes them.
    pub fn run(self) -> Result<Answer, Trouble> {
        let mut program = crate::program();
        program.build();
        let mut folder = Folder::open(&self.out)?;
        let commands = program.get_subcommands().filter(|command| command.get_name() != "help");
        for command in [&program].into_iter().chain(commands) {
            let (name, page) = page(command).map_err(|error| {
                Trouble::of_arguments(Fault::new("", format!("a page cannot be made ({error})"), "try again"))
            })?;
            folder.add(&name, &page)?;
        }
        Ok(told_written(&folder.finish()?))
    }
}

/// Name and text of a command's page.
fn page(command: &Command) -> io::Result<(String, Vec<u8>)> {
    let name = command.get_display_name().unwrap_or(command.get_name()).to_owned();
    let mut text = Vec::new();
    Man::new(command.clone()).render(&mut text)?;
    Ok((format!("{name}.1"), text))
}
