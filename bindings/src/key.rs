//! The key by which others tell what this device wrote: made on the first start, kept apart from the notes.
//!
//! Its folder is never part of a backup. A phone whose notes come back from one makes a key of its own and so writes as
//! another device, which answers for what the old one had not handed over; two phones never write under one name.

use crate::PitfaceError;
use pitface_core::merge::KeyFromSeed;
use pitface_core::store::{photo_hash, photo_name, write_whole};
use std::fs;
use std::io;
use std::path::Path;

/// The key in a folder that must be there; made where there is none, or none that can be read as one.
///
/// # Errors
/// `NotFound` without the folder, `Storage` or `DiskFull` if it cannot be read or written.
pub(crate) fn key(folder: &str) -> Result<KeyFromSeed, PitfaceError> {
    let folder = Path::new(folder);
    if !folder.is_dir() {
        return Err(PitfaceError::NotFound { what: folder.display().to_string() });
    }
    let file = folder.join("key");
    let kept = match fs::read(&file) {
        Ok(bytes) => str::from_utf8(&bytes).ok().and_then(|text| photo_hash(text.trim())),
        Err(error) if error.kind() == io::ErrorKind::NotFound => None,
        Err(error) => return Err(error.into()),
    };
    let seed = match kept {
        Some(seed) => seed,
        None => make(&file)?,
    };
    Ok(KeyFromSeed::new(&seed))
}

/// 32 secret bytes in hex, as names of photos are written.
fn make(file: &Path) -> Result<[u8; 32], PitfaceError> {
    let mut seed = [0; 32];
    getrandom::fill(&mut seed)
        .map_err(|error| PitfaceError::Internal { reason: format!("no randomness for a key: {error}") })?;
    write_whole(file, format!("{}\n", photo_name(&seed)).as_bytes())?;
    for_the_owner_alone(file)?;
    Ok(seed)
}

#[cfg(unix)]
fn for_the_owner_alone(file: &Path) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    fs::set_permissions(file, fs::Permissions::from_mode(0o600))
}

#[cfg(not(unix))]
fn for_the_owner_alone(_: &Path) -> io::Result<()> {
    Ok(())
}
