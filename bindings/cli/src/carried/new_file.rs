//! A bundle file on its way to its place: written under another name, locked if asked for, synced, and only then given its own name.

use super::team_word::Lock;
use pitface_core::merge::DeviceId;
use pitface_core::store::{self, Readers, bundle_name};
use pitface_locked::Locking;
use sha2::{Digest, Sha256};
use std::fs::File;
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

/// Ending of a bundle file's name.
pub const ENDING: &str = "pitb";

/// A file that is being written.
pub struct NewFile<'a> {
    folder: &'a Path,
    to: To,
    /// How it is to be locked.
    lock: Option<Lock<'a>>,
}

/// Where the next bytes go.
enum To {
    Open(Hashed),
    Locked(Box<Locking<Hashed>>),
    /// The file before could not be written.
    Lost,
}

impl<'a> NewFile<'a> {
    /// Begins one in a folder, to be locked if that is said how. It is for others: who may read it is the folder's matter.
    pub fn begin(folder: &'a Path, lock: Option<Lock<'a>>) -> io::Result<Self> {
        let file = BufWriter::new(store::NewFile::begin(folder, Readers::Others)?);
        Ok(Self { folder, to: To::Open(Hashed { file, hash: Sha256::new() }), lock })
    }

    /// Puts it in a place in its folder.
    pub fn put_at(self, place: &Path) -> io::Result<()> {
        self.ended()?.put_at(place)
    }

    /// Puts it in its folder under the name that its device and its bytes give it.
    pub fn put_named(self, own: DeviceId) -> io::Result<PathBuf> {
        let folder = self.folder;
        let written = self.ended()?;
        let hash = written.hash.clone().finalize().into();
        let place = folder.join(bundle_name(own, &hash));
        // One chance in four thousand million, but what is there would be gone.
        if place.exists() && hash_of(File::open(&place)?)? != hash {
            return Err(io::Error::new(
                io::ErrorKind::AlreadyExists,
                "another file has the name it would get",
            ));
        }
        written.put_at(&place)?;
        Ok(place)
    }

    fn ended(self) -> io::Result<Hashed> {
        match self.to {
            To::Open(written) => Ok(written),
            To::Locked(locking) => locking.finish(),
            To::Lost => Err(io::ErrorKind::WriteZero.into()),
        }
    }
}

impl Write for NewFile<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        // The lock takes a moment and is begun only where there is something to lock.
        if let Some(lock) = self.lock.take()
            && let To::Open(file) = std::mem::replace(&mut self.to, To::Lost)
        {
            self.to = To::Locked(Box::new(lock.begin(file)?));
        }
        match &mut self.to {
            To::Open(file) => file.write(bytes),
            To::Locked(locking) => locking.write(bytes),
            To::Lost => Err(io::ErrorKind::WriteZero.into()),
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match &mut self.to {
            To::Open(file) => file.flush(),
            To::Locked(locking) => locking.flush(),
            To::Lost => Ok(()),
        }
    }
}

/// A file and the hash of what went into it.
struct Hashed {
    file: BufWriter<store::NewFile>,
    hash: Sha256,
}

impl Hashed {
    /// The content is on the disk before the name is, so that no power cut leaves a name with half a file.
    fn put_at(self, place: &Path) -> io::Result<()> {
        self.file.into_inner().map_err(io::IntoInnerError::into_error)?.put_at(place)
    }
}

impl Write for Hashed {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let count = self.file.write(bytes)?;
        self.hash.update(&bytes[..count]);
        Ok(count)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.file.flush()
    }
}

/// The hash of a file's bytes.
pub fn hash_of(mut file: File) -> io::Result<[u8; 32]> {
    let mut hash = Sha256::new();
    io::copy(&mut file, &mut hash)?;
    Ok(hash.finalize().into())
}
