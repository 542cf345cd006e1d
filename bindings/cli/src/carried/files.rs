//! Bundle files: read and checked whole, locked or not; what a store has, written as one.

use super::new_file::{ENDING, NewFile, hash_of};
use super::team_word::{HOW, TeamWord};
use crate::replacing;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::merge::{
    Bundle, Damage, DeviceId, FileWriter, Header, Part, PartKind, PhotoPiece, read_file,
};
use pitface_core::store::{PhotoHash, Photos, Store};
use pitface_locked::is_locked;
use std::collections::HashSet;
use std::io;
use std::path::{Path, PathBuf};

/// What programs for the age format put behind the name of a file they lock.
const LOCKED_ENDING: &str = ".age";

/// A file that was read.
pub struct Bundles {
    /// Where it lies.
    pub path: PathBuf,
    /// All of it, unlocked.
    pub bytes: Vec<u8>,
    /// What its bundles say of themselves; none of a file of a newer version.
    pub headers: Vec<Header>,
    /// Whether it was locked.
    pub locked: bool,
    /// The hash of its bytes as they lie there.
    pub hash: [u8; 32],
}

impl Bundles {
    /// Reads a file and checks every bit of it. One of a newer version is let pass: a store keeps it for later.
    pub fn read(path: &Path, word: Option<&TeamWord>) -> Result<Self, Trouble> {
        Self::of(path, read_bytes(path)?, word)
    }

    /// The same of the bytes of a file.
    pub fn of(path: &Path, bytes: Vec<u8>, word: Option<&TeamWord>) -> Result<Self, Trouble> {
        let (hash, locked) = (hash_of(&bytes), is_locked(&bytes));
        let bytes = unlocked(path, bytes, word)?;
        let headers = match headers(&bytes) {
            Err(Damage::Newer(_)) => Vec::new(),
            headers => headers.map_err(|damage| Trouble::of_said(path, &damage))?,
        };
        Ok(Self { path: path.to_owned(), bytes, headers, locked, hash })
    }

    /// Its parts; none of a file of a newer version.
    pub fn parts(&self) -> Vec<Part<'_>> {
        read_file(&self.bytes).unwrap_or_default()
    }

    /// The pieces of photos in it.
    pub fn pieces(&self) -> impl Iterator<Item = PhotoPiece<'_>> {
        let parts = self.parts().into_iter().filter(|part| part.kind == PartKind::PhotoPiece);
        parts.filter_map(|part| PhotoPiece::read(part.content).ok())
    }
}

/// The bytes of a file as they lie there.
pub fn read_bytes(path: &Path) -> Result<Vec<u8>, Trouble> {
    std::fs::read(path).map_err(|error| cannot(path, "cannot be read", &error, "name a bundle (.pitb)"))
}

/// The bytes of a bundle, whether the file is locked or not.
pub fn unlocked(path: &Path, bytes: Vec<u8>, word: Option<&TeamWord>) -> Result<Vec<u8>, Trouble> {
    if !is_locked(&bytes) {
        return Ok(bytes);
    }
    let Some(word) = word else {
        return Err(Trouble::one(path, Fault::new("", "the file is locked", HOW)));
    };
    word.unlock(&bytes).map_err(|refused| Trouble::of_said(path, &refused))
}

fn headers(bytes: &[u8]) -> Result<Vec<Header>, Damage> {
    let parts = read_file(bytes)?;
    for part in parts.iter().filter(|part| part.kind == PartKind::PhotoPiece) {
        PhotoPiece::read(part.content)?;
    }
    let bundles = parts.iter().filter(|part| part.kind == PartKind::Edits);
    bundles.map(|part| Ok(Bundle::read(part.content)?.header)).collect()
}

/// The bundle files of a folder, by name.
pub fn in_folder(folder: &Path) -> Result<Vec<PathBuf>, Trouble> {
    let unread = |error: io::Error| {
        cannot(folder, "cannot be read as a folder", &error, "name a folder that is there")
    };
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(unread)? {
        let path = entry.map_err(unread)?.path();
        if path.file_name().is_some_and(|name| is_of_a_bundle(&name.to_string_lossy())) && path.is_file() {
            files.push(path);
        }
    }
    files.sort();
    Ok(files)
}

/// Whether a file with this name is looked into. A hidden one is still being written.
fn is_of_a_bundle(name: &str) -> bool {
    let stem = name.strip_suffix(LOCKED_ENDING).unwrap_or(name).strip_suffix(ENDING);
    !name.starts_with('.') && stem.is_some_and(|stem| stem.ends_with('.'))
}

/// What is handed over.
#[derive(Default)]
pub struct Handed {
    /// The file written; `None` if there was nothing to write.
    pub file: Option<PathBuf>,
    /// What is in it.
    pub added: pitface_core::store::Handed,
}

/// For whom, and where to.
pub struct Way<'a> {
    /// What this device said it has is left out.
    pub to: Option<DeviceId>,
    /// Parts that are there already are left out.
    pub there: &'a HashSet<[u8; 32]>,
    /// Photos to go with it.
    pub photos: &'a [PhotoHash],
    /// The file; `None`: one in the folder, named after this device and its content.
    pub out: Option<&'a Path>,
    /// The folder, where no file is named.
    pub folder: &'a Path,
    /// This device.
    pub own: DeviceId,
    /// The word with which the file is locked.
    pub word: Option<&'a TeamWord>,
}

/// Writes a file with what a store has, and photos.
pub fn write(store: &Store, kept: &Photos, way: &Way) -> Result<Handed, Trouble> {
    let folder = match way.out {
        Some(out) => out.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new(".")),
        None => way.folder,
    };
    let place = way.out.unwrap_or(folder);
    let todo = "make room or name a place that can be written";
    let failed = |error: &io::Error| cannot(place, "cannot be written", error, todo);
    let written = NewFile::begin(folder, way.word).map_err(|error| failed(&error))?;
    let mut file = FileWriter::new(written);
    let added = store.hand_over_with_photos(way.to, way.there, (kept, way.photos), &mut file);
    let added = added.map_err(|error| Trouble::of_said(place, &error))?;
    let mut handed = Handed { file: None, added };
    if file.count() == 0 {
        return Ok(handed);
    }
    if place.is_dir() && way.out.is_some() {
        let todo = "name a file, or give the folder with --folder";
        return Err(Trouble::one(place, Fault::new("", "this is a folder", todo)));
    }
    way.out.map_or(Ok(()), replacing::allowed_bundle)?;
    let written = file.end().map_err(|error| failed(&error))?;
    let put = match way.out {
        Some(out) => written.put_at(out).map(|()| out.to_owned()),
        None => written.put_named(way.own),
    };
    handed.file = Some(put.map_err(|error| failed(&error))?);
    Ok(handed)
}
