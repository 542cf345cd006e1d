//! `pitface new`: a notes file to begin with.

use crate::Answer;
use crate::trouble::Trouble;
use crate::write::{Folder, stem, told_written};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::record::notes::starting;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// Of which field, and where to.
#[derive(Args)]
pub struct New {
    /// The file to write; nothing is replaced. Without one the notes go to standard output.
    #[arg(value_name = "FIELD.notes.json")]
    file: Option<PathBuf>,
    /// The field's name; from the file's name if left out.
    #[arg(long)]
    name: Option<String>,
}

impl New {
    /// Makes it.
    pub fn run(self) -> Result<Answer, Trouble> {
        let from_file = self.file.as_deref().map(|file| stem(file).replace(['_', '-'], " "));
        let name = self.name.or(from_file).unwrap_or_else(|| "Field".into());
        if name.trim().is_empty() {
            return Err(Trouble::of_arguments(Fault::new(
                "name",
                "a field has a name",
                "give one with --name",
            )));
        }
        let text = starting(name.trim());
        let Some(file) = self.file else {
            let notes: Value = serde_json::from_str(&text).unwrap_or_default();
            return Ok(Answer::new(text, json!({ "notes": notes })));
        };
        if std::fs::symlink_metadata(&file).is_ok() {
            return Err(Trouble::one(&file, Fault::new("", "this is there already", "name a new file")));
        }
        let Some(name) = file.file_name() else {
            return Err(Trouble::one(&file, Fault::new("", "this names no file", "name a new file")));
        };
        let parent = file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let mut folder = Folder::open(parent)?;
        folder.add(&name.to_string_lossy(), text.as_bytes())?;
        folder.finish()?;
        Ok(told_written(&[file]))
    }
}
