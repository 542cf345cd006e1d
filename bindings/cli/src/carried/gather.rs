//! The files that this device wrote into a shared folder, gathered into one.
//!
//! No part may get lost, wherever this stops and whoever does the same beside it. So a new file is written with every part of
//! the old ones, synced, named, the folder synced, read back from its place and compared, and only then are the old ones removed, one by one,
//! each if it still is what was read. After a power cut the folder has the old files, or the new one and some of the old: the removals
//! are asked for after the new name is on the disk, and it does not matter which of them got there.
//!
//! Two of these at once, in two stores of one device say, cannot remove each other's work: whoever removes a file has read it before its
//! own was written, so of any files that lean on each other one has been there first and is not removed by what it leans on. A
//! gathered file has its parts in one order, so that the same parts give the same file and name, and a file never counts as its own
//! predecessor; a locked one is different each time. Clear files may go into a locked one and never the other way, so the two kinds cannot
//! lean on each other in turns.
//!
//! A program that carries the folder to other machines may carry the removal first. What is missing there meanwhile is in this device's store.

use super::files::{Bundles, PartAt, Source, in_folder};
use super::new_file::{NewFile, hash_of};
use super::team_word::{Lock, TeamWord};
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::merge::{DeviceId, FileWriter, PartKind};
use pitface_core::store::{bundle_name, sync_folder};
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

/// What was gathered.
#[derive(Default)]
pub struct Gathered {
    /// The one file; `None` if there was nothing to gather.
    pub file: Option<PathBuf>,
    /// Files that went into it and are gone.
    pub removed: usize,
}

/// Most files that are open at once; of more, as many are gathered first.
const MOST_AT_ONCE: usize = 100;

/// Gathers the files of a device in a folder, into a locked one if there is a word.
pub fn gather(folder: &Path, own: DeviceId, word: Option<&TeamWord>) -> Result<Gathered, Trouble> {
    let mut gathered = Gathered::default();
    while let Some(found) = Found::read(folder, own, word)? {
        let all = found.0.len() < MOST_AT_ONCE;
        let mut proven = found.write(folder, own, word)?.prove(word)?;
        while proven.remove_one()? {}
        let more = proven.finish()?;
        gathered = Gathered { file: more.file, removed: gathered.removed + more.removed };
        if all {
            break;
        }
    }
    Ok(gathered)
}

/// The files of this device, gone over and whole, each with the hash of its bytes as they lie there.
struct Found(Vec<(Bundles, [u8; 32])>);

/// The new file is in its place.
struct Written {
    file: PathBuf,
    /// The hashes of all parts that must be in it.
    parts: BTreeSet<[u8; 32]>,
    old: VecDeque<(PathBuf, [u8; 32])>,
}

/// The new file was read back, and has every part of the old ones.
struct Proven {
    folder: PathBuf,
    file: PathBuf,
    old: VecDeque<(PathBuf, [u8; 32])>,
    removed: usize,
}

impl Found {
    /// Reads them. Whose name is not that of this device and of its own bytes was written or changed by somebody else and is left alone; so is what
    /// cannot be read as a whole, or not be understood yet. `None` if they are one already.
    fn read(folder: &Path, own: DeviceId, word: Option<&TeamWord>) -> Result<Option<Self>, Trouble> {
        let whole = |path: PathBuf| {
            let hash = hash_of(File::open(&path).ok()?).ok()?;
            let is_own = path.file_name().is_some_and(|found| *found == *bundle_name(own, &hash));
            let file = is_own.then(|| Bundles::read(&path, word).ok()).flatten()?;
            // With a word at hand a locked file could be read, and its content go into a clear one, only by mistake.
            (!file.parts.is_empty() && (word.is_some() || !file.locked)).then_some((file, hash))
        };
        let files: Vec<_> = in_folder(folder)?.into_iter().filter_map(whole).take(MOST_AT_ONCE).collect();
        let as_wanted = files.iter().all(|(file, _)| file.locked == word.is_some());
        Ok((files.len() > usize::from(as_wanted)).then_some(Self(files)))
    }

    fn write(&self, folder: &Path, own: DeviceId, word: Option<&TeamWord>) -> Result<Written, Trouble> {
        let failed = |error: io::Error| {
            cannot(folder, "cannot be written", &error, "make room or name a folder that can be written")
        };
        let sources = self.0.iter().map(|(file, _)| file.source(word));
        let mut sources: Vec<Box<dyn Source>> = sources.collect::<Result<_, _>>()?;
        let parts = self.0.iter().enumerate().flat_map(|(place, (file, _))| {
            file.parts.iter().map(move |part| ((part.kind, part.hash), (place, *part)))
        });
        // Ordered, so that the same parts make the same file: edits before photos, whose records they bring.
        let parts: BTreeMap<(PartKind, [u8; 32]), (usize, PartAt)> = parts.collect();
        let mut file = FileWriter::new(NewFile::begin(folder, word.map(Lock::with)).map_err(failed)?);
        for (place, part) in parts.values() {
            let bytes = part.read(&mut *sources[*place]).map_err(failed)?;
            file.add(&bytes).map_err(failed)?;
        }
        let file = file.end().and_then(|file| file.put_named(own)).map_err(failed)?;
        let old = self.0.iter().filter(|(old, _)| old.path != file);
        Ok(Written {
            old: old.map(|(old, hash)| (old.path.clone(), *hash)).collect(),
            parts: parts.into_keys().map(|(_, hash)| hash).collect(),
            file,
        })
    }
}

impl Written {
    /// Reads it as anybody would, and compares.
    fn prove(self, word: Option<&TeamWord>) -> Result<Proven, Trouble> {
        let read = Bundles::read(&self.file, word)?;
        let there: BTreeSet<_> = read.parts.iter().map(|part| part.hash).collect();
        if !self.parts.is_subset(&there) {
            let todo = "check the disk; the files it was made of are all still there";
            return Err(Trouble::one(&self.file, Fault::new("", "the file is not as it was written", todo)));
        }
        let folder = self.file.parent().unwrap_or(Path::new(".")).to_owned();
        Ok(Proven { folder, file: self.file, old: self.old, removed: 0 })
    }
}

impl Proven {
    /// Removes one of the files that went into it, if it still is what was read. Whether there was one left.
    fn remove_one(&mut self) -> Result<bool, Trouble> {
        let Some((path, hash)) = self.old.pop_front() else { return Ok(false) };
        match File::open(&path).and_then(hash_of) {
            Ok(found) if found == hash => {}
            _ => return Ok(true),
        }
        match fs::remove_file(&path) {
            Ok(()) => self.removed += 1,
            // Another one of these was faster.
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => {
                let todo = "check who may write there; what is in it is in the new file too";
                return Err(cannot(&path, "cannot be removed", &error, todo));
            }
        }
        Ok(true)
    }

    /// Returns what came of it. Without this last sync removed files could be back after a power cut, which harms nothing.
    fn finish(self) -> Result<Gathered, Trouble> {
        let todo = "run it again";
        sync_folder(&self.folder).map_err(|error| cannot(&self.folder, "cannot be synced", &error, todo))?;
        Ok(Gathered { file: Some(self.file), removed: self.removed })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may fail")]
mod tests;
