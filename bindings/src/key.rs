//! The key by which others tell what this device wrote: made on the first start, kept apart from the notes.
//!
//! Its folder is never part of a backup. A phone whose notes come back from one makes a key of its own and so writes as
//! another device, which answers for what the old one had not handed over; two phones never write under one name.

use crate::PitfaceError;
use pitface_core::merge::KeyFromSeed;
use pitface_core::store::{photo_hash, photo_name, write_whole};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// The key, and what is to be told of it.
pub(crate) struct Kept {
    pub key: KeyFromSeed,
    /// Where a file lies that was in the key's place and is none; a new one was made.
    pub set_aside: Option<PathBuf>,
}

/// The key in a folder that must be there; made where there is none. A file in its place that is no key is set aside, not lost, and told.
///
/// # Errors
/// `NotFound` without the folder, `Storage` or `DiskFull` if it cannot be read or written.
pub(crate) fn key(folder: &str) -> Result<Kept, PitfaceError> {
    let folder = Path::new(folder);
    if !folder.is_dir() {
        return Err(PitfaceError::NotFound { what: folder.display().to_string() });
    }
    let file = folder.join("key");
    let seed = match fs::read(&file) {
        Ok(bytes) => {
            let kept = str::from_utf8(&bytes).ok().and_then(|text| photo_hash(text.trim()));
            let Some(seed) = kept else {
                let set_aside = aside(&file)?;
                return Ok(Kept { key: KeyFromSeed::new(&make(&file)?), set_aside: Some(set_aside) });
            };
            seed
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => make(&file)?,
        Err(error) => return Err(error.into()),
    };
    Ok(Kept { key: KeyFromSeed::new(&seed), set_aside: None })
}

/// Gives a file a name that nothing has yet. Without a hard link: Android allows an app none.
fn aside(file: &Path) -> io::Result<PathBuf> {
    let mut number = 1;
    loop {
        let place = file.with_extension(format!("unreadable-{number}"));
        match fs::File::create_new(&place) {
            Ok(_) => break fs::rename(file, &place).map(|()| place),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => number += 1,
            Err(error) => break Err(error),
        }
    }
}

/// 32 secret bytes in hex, as names of photos are written.
fn make(file: &Path) -> Result<[u8; 32], PitfaceError> {
    let mut seed = [0; 32];
    getrandom::fill(&mut seed)
        .map_err(|error| PitfaceError::Internal { reason: format!("no randomness for a key: {error}") })?;
    write_whole(file, format!("{}\n", photo_name(&seed)).as_bytes())?;
    Ok(seed)
}
