//! A bundle file on its way to its place: written under another name, locked if asked for, synced, and only then given its own name.

use super::team_word::TeamWord;
use crate::write::beside;
use pitface_core::merge::DeviceId;
use pitface_core::store::bundle_name;
use sha2::{Digest, Sha256};
use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};
use tempfile::NamedTempFile;

/// Ending of a bundle file's name.
pub const ENDING: &str = "pitb";

/// A file that is being written.
pub struct NewFile<'a> {
    folder: &'a Path,
    file: BufWriter<NamedTempFile>,
    hash: Sha256,
    /// What is to be locked, once it is all here.
    inside: Option<(&'a TeamWord, Vec<u8>)>,
}

impl<'a> NewFile<'a> {
    /// Begins one in a folder, to be locked with a word if there is one.
    pub fn begin(folder: &'a Path, word: Option<&'a TeamWord>) -> io::Result<Self> {
        Ok(Self {
            folder,
            file: BufWriter::new(beside(folder)?),
            hash: Sha256::new(),
            inside: word.map(|word| (word, Vec::new())),
        })
    }

    /// Puts it in a place in its folder.
    pub fn put_at(mut self, place: &Path) -> io::Result<()> {
        self.lock()?;
        self.put(place)
    }

    /// Puts it in its folder under the name that its device and its bytes give it.
    pub fn put_named(mut self, own: DeviceId) -> io::Result<PathBuf> {
        self.lock()?;
        let hash = self.hash.clone().finalize().into();
        let place = self.folder.join(bundle_name(own, &hash));
        // One chance in four thousand million, but what is there would be gone.
        if place.exists() && hash_of(&fs::read(&place)?) != hash {
            return Err(io::Error::new(
                io::ErrorKind::AlreadyExists,
                "another file has the name it would get",
            ));
        }
        self.put(&place)?;
        Ok(place)
    }

    fn lock(&mut self) -> io::Result<()> {
        if let Some((word, bytes)) = self.inside.take() {
            self.write_all(&word.lock(&bytes).map_err(io::Error::other)?)?;
        }
        Ok(())
    }

    /// The content is on the disk before the name is, so that no power cut leaves a name with half a file.
    fn put(self, place: &Path) -> io::Result<()> {
        let file = self.file.into_inner().map_err(io::IntoInnerError::into_error)?;
        file.as_file().sync_all()?;
        file.persist(place).map_err(|error| error.error)?;
        sync(self.folder)
    }
}

impl Write for NewFile<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        if let Some((_, inside)) = &mut self.inside {
            return inside.write(bytes);
        }
        let count = self.file.write(bytes)?;
        self.hash.update(&bytes[..count]);
        Ok(count)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.file.flush()
    }
}

/// The hash of a file's bytes.
pub fn hash_of(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// A change of names in a folder lasts once the folder is synced.
#[cfg(unix)]
pub fn sync(folder: &Path) -> io::Result<()> {
    File::open(folder)?.sync_all()
}

/// A change of names in a folder lasts once the folder is synced; here nobody can ask for it.
#[cfg(not(unix))]
pub fn sync(_: &Path) -> io::Result<()> {
    Ok(())
}
