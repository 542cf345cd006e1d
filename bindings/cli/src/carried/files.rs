//! Bundle files: gone over and checked whole, locked or not, without being held in memory.

use super::new_file::ENDING;
use super::team_word::{HOW, TeamWord};
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::merge::{Bundle, Damage, Header, PIECE_BYTES, Part, PartKind, PhotoPiece, each_part};
use pitface_core::store::{FileStamp, KnownFile, PhotoHash, StoreError};
use pitface_locked::{BEGINNING, is_locked};
use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, BufReader, Read, Seek, SeekFrom};
use std::path::{Path, PathBuf};
use std::time::UNIX_EPOCH;

/// What programs for the age format put behind the name of a file they lock.
const LOCKED_ENDING: &str = ".age";

/// What is read from any place of it: a file, or what a locked one holds.
pub trait Source: Read + Seek {}

impl<T: Read + Seek> Source for T {}

/// A file that was checked, every bit of it.
pub struct Bundles {
    /// Where it lies.
    pub path: PathBuf,
    /// Its parts; none of a file of a newer version.
    pub parts: Vec<PartAt>,
    /// What its bundles say of themselves.
    pub headers: Vec<Header>,
    /// Whether it is locked.
    pub locked: bool,
    /// By what it is known again.
    pub stamp: FileStamp,
    /// The photos of which it has pieces, and whether all of them.
    pub photos: BTreeMap<PhotoHash, bool>,
}

/// Where a part lies in what a file holds.
#[derive(Clone, Copy)]
pub struct PartAt {
    /// What it is.
    pub kind: PartKind,
    /// The hash of it.
    pub hash: [u8; 32],
    at: u64,
    length: usize,
}

impl Bundles {
    /// Goes over a file and checks every bit of it. One of a newer version is let pass: a store keeps it for later.
    pub fn read(path: &Path, word: Option<&TeamWord>) -> Result<Self, Trouble> {
        Ok(Self::open(path, word)?.0)
    }

    /// The same, and what it holds to be read again, from its beginning.
    pub fn open(path: &Path, word: Option<&TeamWord>) -> Result<(Self, Box<dyn Source>), Trouble> {
        let stamp = stamp(path).map_err(|error| unread(path, &error))?;
        let (locked, mut source) = source(path, word)?;
        let mut file = Self {
            path: path.to_owned(),
            parts: Vec::new(),
            headers: Vec::new(),
            locked,
            stamp,
            photos: BTreeMap::new(),
        };
        match file.go_over(&mut source) {
            Ok(()) => {}
            Err(StoreError::Bundle(Damage::Newer(_))) => {
                (file.parts, file.headers, file.photos) = (Vec::new(), Vec::new(), BTreeMap::new());
            }
            Err(StoreError::File(error)) => return Err(unread(path, &error)),
            Err(error) => return Err(Trouble::of_said(path, &error)),
        }
        source.rewind().map_err(|error| unread(path, &error))?;
        Ok((file, source))
    }

    fn go_over(&mut self, source: &mut impl Read) -> Result<(), StoreError> {
        let mut pieces: BTreeMap<PhotoHash, u64> = BTreeMap::new();
        each_part(BufReader::new(source), |at, part| {
            let Part { kind, hash, .. } = part;
            match kind {
                PartKind::Edits => self.headers.push(Bundle::read(part.content)?.header),
                PartKind::PhotoPiece => {
                    let piece = PhotoPiece::read(part.content)?;
                    let count = pieces.entry(piece.sha256).or_default();
                    *count += 1;
                    self.photos.insert(piece.sha256, *count >= piece.size_bytes.div_ceil(PIECE_BYTES));
                }
                PartKind::End | PartKind::Other(_) => {}
            }
            self.parts.push(PartAt { kind, hash, at, length: part.bytes.len() });
            Ok(())
        })
    }

    /// Returns what a store remembers of it.
    pub fn known(&self) -> KnownFile {
        KnownFile {
            stamp: self.stamp,
            locked: self.locked,
            parts: self.parts.iter().map(|part| part.hash).collect(),
            photos: self.photos.clone(),
        }
    }

    /// Returns what it holds, from its beginning.
    pub fn source(&self, word: Option<&TeamWord>) -> Result<Box<dyn Source>, Trouble> {
        Ok(source(&self.path, word)?.1)
    }
}

impl PartAt {
    /// Its bytes, in what holds them.
    pub fn read(&self, source: &mut (impl Read + Seek + ?Sized)) -> io::Result<Vec<u8>> {
        let mut bytes = Vec::with_capacity(self.length);
        source.seek(SeekFrom::Start(self.at))?;
        source.take(self.length as u64).read_to_end(&mut bytes)?;
        Ok(bytes)
    }
}

/// Returns whether a file is locked, and what it holds.
fn source(path: &Path, word: Option<&TeamWord>) -> Result<(bool, Box<dyn Source>), Trouble> {
    let unread = |error: io::Error| unread(path, &error);
    let mut file = File::open(path).map_err(unread)?;
    if !begins_locked(&mut file).map_err(unread)? {
        return Ok((false, Box::new(file)));
    }
    let Some(word) = word else {
        return Err(Trouble::one(path, Fault::new("", "the file is locked", HOW)));
    };
    Ok((true, Box::new(word.open(path, file)?)))
}

/// Returns whether a file is locked; it is read from its beginning after that.
pub fn begins_locked(file: &mut File) -> io::Result<bool> {
    let mut begins = Vec::new();
    file.take(BEGINNING.len() as u64).read_to_end(&mut begins)?;
    file.rewind()?;
    Ok(is_locked(&begins))
}

/// By what a file is known again.
pub fn stamp(path: &Path) -> io::Result<FileStamp> {
    let found = std::fs::metadata(path)?;
    let ns = |time: std::time::Duration| i64::try_from(time.as_nanos()).unwrap_or(i64::MAX);
    let changed = found.modified()?;
    let changed_ns = changed.duration_since(UNIX_EPOCH).map_or_else(|before| -ns(before.duration()), ns);
    Ok(FileStamp { size_bytes: found.len(), changed_ns })
}

/// The bytes of a file as they lie there.
pub fn read_bytes(path: &Path) -> Result<Vec<u8>, Trouble> {
    std::fs::read(path).map_err(|error| unread(path, &error))
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

fn unread(path: &Path, error: &io::Error) -> Trouble {
    match error.get_ref() {
        // What opening a locked file says, in its own words.
        Some(inner) if inner.is::<pitface_locked::Refused>() => Trouble::of_said(path, &inner),
        _ => cannot(path, "cannot be read", error, "name a bundle (.pitb)"),
    }
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

/// Returns whether a file with this name is looked into. A hidden one is still being written.
fn is_of_a_bundle(name: &str) -> bool {
    let stem = name.strip_suffix(LOCKED_ENDING).unwrap_or(name).strip_suffix(ENDING);
    !name.starts_with('.') && stem.is_some_and(|stem| stem.ends_with('.'))
}
