//! `pitface demo`: an invented estate, every call among its fields, on its whole way through the program.

use crate::argument::{Shown, StoreArgument};
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use crate::{Answer, drawn, json, keep, told};
use clap::Args;
use pitface_core::picture::Theme;
use std::path::PathBuf;

/// The notes of the estate, as a walker would have written them: file stem and text.
const ESTATE: &[(&str, &str)] = &[];

/// Where to write it.
#[derive(Args)]
pub struct Demo {
    /// Folder for the notes files, the drawings, the page and the store; made if it is not there. Only these
    /// files are overwritten.
    #[arg(long, value_name = "DIR", default_value = "out")]
    out: PathBuf,
    #[command(flatten)]
    store: StoreArgument,
}
