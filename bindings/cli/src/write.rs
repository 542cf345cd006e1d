//! Files that are there whole or not at all.

use crate::input::is_standard_input;
use crate::trouble::Trouble;
use crate::{Answer, replacing};
use pitface_core::error::Fault;
use pitface_core::store::{NewFile, Readers, remove_left_over};
use serde_json::json;
use std::fmt;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// A set of files for one folder: all are written beside their places first and renamed at the end, so that
/// a failure before that leaves nothing behind. Only the names given are overwritten, and only where [`replacing`] lets them.
pub struct Folder {
    path: PathBuf,
    /// Whether it was made for this, so that it goes again when nothing comes of it.
    made: bool,
    waiting: Vec<(PathBuf, NewFile)>,
}

impl Folder {
    /// The folder, made if it is not there.
    pub fn open(path: &Path) -> Result<Self, Trouble> {
        let made = !path.exists();
        std::fs::create_dir_all(path).map_err(|error| {
            let todo = match error.kind() {
                io::ErrorKind::AlreadyExists | io::ErrorKind::NotADirectory => "name a folder, not a file",
                _ => "name a folder that can be written",
            };
            cannot(path, "cannot be made a folder", &error, todo)
        })?;
        remove_left_over(path, false);
        Ok(Self { path: path.to_owned(), made, waiting: Vec::new() })
    }

    /// Takes a file to write; its place in the end.
    pub fn add(&mut self, name: &str, content: &[u8]) -> Result<PathBuf, Trouble> {
        let place = self.path.join(name);
        let written = beside(&self.path)
            .and_then(|mut file| file.write_all(content).and_then(|()| file.file().sync_all()).map(|()| file))
            .map_err(|error| not_written(&place, &error))?;
        self.waiting.push((place.clone(), written));
        Ok(place)
    }

    /// Takes a file that something else writes, which is given an empty one under a passing name; its place in the end.
    pub fn add_written<E: fmt::Display>(
        &mut self,
        name: &str,
        write: impl FnOnce(&Path) -> Result<(), E>,
    ) -> Result<PathBuf, Trouble> {
        let place = self.path.join(name);
        let file = beside(&self.path).map_err(|error| not_written(&place, &error))?;
        write(file.path()).map_err(|error| Trouble::of_said(&place, &error))?;
        file.file().sync_all().map_err(|error| not_written(&place, &error))?;
        self.waiting.push((place.clone(), file));
        Ok(place)
    }

    /// Nothing, if all files so far may be put in their places.
    pub fn allowed(&self) -> Result<(), Trouble> {
        let mut trouble = Trouble::default();
        for (place, written) in &self.waiting {
            if let Err(stands) = replacing::allowed(place, written.path()) {
                trouble.add(stands);
            }
        }
        trouble.or(())
    }

    /// Puts all files in their places.
    pub fn finish(mut self) -> Result<Vec<PathBuf>, Trouble> {
        self.allowed()?;
        self.made = false;
        std::mem::take(&mut self.waiting)
            .into_iter()
            .map(|(place, file)| {
                file.put_unsynced(&place).map_err(|error| {
                    cannot(&place, "cannot be put in its place", &error, "check who may write there")
                })?;
                Ok(place)
            })
            .collect()
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        self.waiting.clear();
        if self.made {
            // Fails, as it should, if something else has come into it meanwhile.
            let _ = std::fs::remove_dir(&self.path);
        }
    }
}

/// A file beside its place, open to all whom the user lets in: drawings and notes are for sharing.
fn beside(folder: &Path) -> io::Result<NewFile> {
    NewFile::begin(folder, Readers::Others)
}

fn not_written(place: &Path, error: &io::Error) -> Trouble {
    cannot(place, "cannot be written", error, "make room or name a folder that can be written")
}

/// That something cannot be done with a file, and what to do.
pub fn cannot(place: &Path, what: &str, error: &io::Error, todo: &str) -> Trouble {
    Trouble::one(place, Fault::new("", format!("{what} ({error})"), todo))
}

/// Returns what a notes file's drawings are named after: `long-sedge` for `long-sedge.notes.json`.
pub fn stem(file: &Path) -> String {
    if is_standard_input(file) {
        return "notes".into();
    }
    let name = file.file_name().unwrap_or_default().to_string_lossy();
    let name = name.strip_suffix(".json").unwrap_or(&name);
    name.strip_suffix(".notes").unwrap_or(name).to_owned()
}

/// The files written, a line each.
pub fn told_written(files: &[PathBuf]) -> Answer {
    let files: Vec<String> = files.iter().map(|file| file.display().to_string()).collect();
    Answer::new(files.join("\n") + "\n", json!({ "written": files }))
}
