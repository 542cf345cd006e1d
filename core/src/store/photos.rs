//! Photos in a folder, each once under the SHA-256 of its content, and their pieces while they come.
//!
//! | name | what |
//! |---|---|
//! | 64 lower-case hex digits | a photo; it is on the disk whole before it has this name |
//! | the same with `.part` | a folder with the pieces that have come, each a file `SIZE-OFFSET` |
//! | ending in `.new` | what was being written when the power went; see [`Photos::tidy`] |
//!
//! Every file is written beside its place, synced, renamed, and the folder synced. So whatever has a name is whole, and
//! which pieces are there is told by the names alone: an interruption costs at most the piece that was being written.

mod share;
mod size;

pub use share::{Stripped, stripped, without_notes};
pub use size::shown_size;

use super::whole_file::{
    NewFile, Readers, for_owner_alone, make_own_folder, remove_left_over, sync_folder, write_whole,
};
use super::{Cell, DeviceId, Store, StoreError, value};
use crate::merge::{PIECE_BYTES, PhotoPiece};
use rusqlite::{Params, params};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

/// The hash that names a photo: SHA-256 of its bytes.
pub type PhotoHash = [u8; 32];

/// A larger file is no picture of a phone's camera. Our judgement.
const LARGEST_PICTURE_BYTES: u64 = 64 << 20;

/// A folder of photos.
#[derive(Debug, Clone)]
pub struct Photos(PathBuf);

/// A photo in its folder, synced.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptPhoto {
    /// Its hash; its name is this in hex.
    pub sha256: PhotoHash,
    /// Its size.
    pub size_bytes: u64,
    /// Whether it was not there before.
    pub new: bool,
}

/// Why a photo was not kept.
#[derive(Debug, thiserror::Error)]
pub enum PhotoFault {
    /// The file taken cannot be read, or is empty.
    #[error("the photo cannot be read; take or choose it again")]
    Unread,
    /// It cannot be kept.
    #[error("the photo cannot be kept ({0}); make room and try again")]
    Unkept(#[source] io::Error),
}

/// What became of a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PieceTaken {
    /// Its photo, or this piece of it, was there.
    Known,
    /// Kept; others are still missing, or this one took the place of another (see [`Photos::finish`]).
    Kept,
    /// It was the last one: the photo is there.
    Complete,
    /// All pieces are there, and together they are not that photo. They stay: which of them is wrong cannot be told, and those of
    /// the next carrier take their places.
    Wrong,
}

/// What a check of the folder found.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PhotosChecked {
    /// Photos as they were taken.
    pub sound: u64,
    /// Photos whose bytes changed.
    pub damaged: BTreeSet<PhotoHash>,
}

impl Photos {
    /// The photos of a folder; it is made when the first one comes.
    pub fn new(folder: impl Into<PathBuf>) -> Self {
        Self(folder.into())
    }

    /// Where a photo lies, or would.
    pub fn path(&self, photo: &PhotoHash) -> PathBuf {
        self.0.join(photo_name(photo))
    }

    /// Copies a file into the folder; when this returns it is on the disk.
    ///
    /// # Errors
    /// See [`PhotoFault`]; nothing was kept then.
    pub fn keep(&self, from: &Path) -> Result<KeptPhoto, PhotoFault> {
        let mut taken = File::open(from).map_err(|_| PhotoFault::Unread)?;
        make_own_folder(&self.0).map_err(PhotoFault::Unkept)?;
        let mut new = NewFile::begin(&self.0, Readers::Owner).map_err(PhotoFault::Unkept)?;
        let (mut hash, mut size_bytes, mut part) = (Sha256::new(), 0, vec![0; 64 * 1024]);
        loop {
            let count = match taken.read(&mut part) {
                Ok(0) => break,
                Ok(count) => count,
                Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
                Err(_) => return Err(PhotoFault::Unread),
            };
            hash.update(&part[..count]);
            size_bytes += count as u64;
            new.write_all(&part[..count]).map_err(PhotoFault::Unkept)?;
        }
        if size_bytes == 0 {
            return Err(PhotoFault::Unread);
        }
        let sha256 = hash.finalize().into();
        if self.size(&sha256) == Some(size_bytes) {
            return Ok(KeptPhoto { sha256, size_bytes, new: false });
        }
        new.put_at(&self.path(&sha256)).map_err(PhotoFault::Unkept)?;
        Ok(KeptPhoto { sha256, size_bytes, new: true })
    }

    /// Keeps a photo that was taken, without what the camera noted in it ([`without_notes`]); one that is no JPEG as it is.
    ///
    /// # Errors
    /// As [`Photos::keep`].
    pub fn keep_without_notes(&self, from: &Path) -> Result<KeptPhoto, PhotoFault> {
        let mut bytes = Vec::new();
        let taken = File::open(from).map_err(|_| PhotoFault::Unread)?;
        taken.take(LARGEST_PICTURE_BYTES).read_to_end(&mut bytes).map_err(|_| PhotoFault::Unread)?;
        match stripped(&bytes) {
            Stripped::Without(picture) => self.keep_bytes(&picture),
            Stripped::Same | Stripped::NoPicture => self.keep(from),
        }
    }

    /// Keeps a photo, given as its bytes.
    ///
    /// # Errors
    /// As [`Photos::keep`].
    pub fn keep_bytes(&self, photo: &[u8]) -> Result<KeptPhoto, PhotoFault> {
        let (sha256, size_bytes) = (Sha256::digest(photo).into(), photo.len() as u64);
        if self.size(&sha256) == Some(size_bytes) {
            return Ok(KeptPhoto { sha256, size_bytes, new: false });
        }
        make_own_folder(&self.0).map_err(PhotoFault::Unkept)?;
        write_whole(&self.path(&sha256), photo).map_err(PhotoFault::Unkept)?;
        Ok(KeptPhoto { sha256, size_bytes, new: true })
    }

    /// Removes what killed programs left here, and lets nobody but the owner into the folder; `alone` as in [`remove_left_over`].
    pub fn tidy(&self, alone: bool) {
        for_owner_alone(&self.0);
        remove_left_over(&self.0, alone);
        for entry in fs::read_dir(&self.0).into_iter().flatten().flatten() {
            if entry.file_name().to_string_lossy().ends_with(PIECES) {
                remove_left_over(&entry.path(), alone);
            }
        }
    }

    /// The size of a photo in bytes; `None` if it is not here as a whole.
    pub fn size(&self, photo: &PhotoHash) -> Option<u64> {
        fs::metadata(self.path(photo)).ok().filter(fs::Metadata::is_file).map(|file| file.len())
    }

    /// Returns whether a photo is here with the bytes that its name says.
    pub fn is_sound(&self, photo: &PhotoHash) -> bool {
        hash_of(&self.path(photo)).is_ok_and(|hash| hash == *photo)
    }

    /// Those of some photos that are not here as a whole, in the order given.
    pub fn missing(&self, wanted: &[PhotoHash]) -> Vec<PhotoHash> {
        wanted.iter().filter(|photo| self.size(photo).is_none()).copied().collect()
    }

    /// Goes over the pieces of a photo, in the order of their offsets.
    ///
    /// # Errors
    /// If it cannot be read, or what `each` reports. That the photo is as it was taken is not looked at: whoever puts the
    /// pieces together finds out.
    pub fn each_piece(
        &self,
        photo: &PhotoHash,
        mut each: impl FnMut(&PhotoPiece) -> io::Result<()>,
    ) -> io::Result<()> {
        let mut file = File::open(self.path(photo))?;
        let size_bytes = file.metadata()?.len();
        let mut bytes = Vec::new();
        for offset in (0..size_bytes).step_by(PIECE_BYTES as usize) {
            bytes.clear();
            (&mut file).take(PIECE_BYTES.min(size_bytes - offset)).read_to_end(&mut bytes)?;
            each(&PhotoPiece { sha256: *photo, size_bytes, offset, bytes: &bytes })?;
        }
        Ok(())
    }

    /// Takes in a piece, in any order and from any carrier. One that was there with other bytes is replaced; the photo is then tried
    /// by [`Photos::finish`], which is called after all pieces of a file, so that a file full of wrong ones costs no more than its size.
    ///
    /// # Errors
    /// If it cannot be written; what was there before still is.
    pub fn take_in(&self, piece: &PhotoPiece) -> io::Result<PieceTaken> {
        if self.size(&piece.sha256).is_some() { Ok(PieceTaken::Known) } else { self.put(piece) }
    }

    /// Takes in a piece of a photo whose own bytes are damaged (see [`Photos::check`]): once all are there, they take their place.
    ///
    /// # Errors
    /// As [`Photos::take_in`].
    pub fn mend(&self, piece: &PhotoPiece) -> io::Result<PieceTaken> {
        self.put(piece)
    }

    fn put(&self, piece: &PhotoPiece) -> io::Result<PieceTaken> {
        let parts = self.parts(&piece.sha256);
        let path = parts.join(format!("{}-{}", piece.size_bytes, piece.offset));
        let there = fs::read(&path);
        if there.as_ref().is_ok_and(|there| there == piece.bytes) {
            return Ok(PieceTaken::Known);
        }
        if !parts.is_dir() {
            make_own_folder(&parts)?;
            sync_folder(&self.0)?;
        }
        write_whole(&path, piece.bytes)?;
        // Another one in its place was of another carrier, and one of both is wrong: that of the file at hand is tried, once all of it came.
        if there.is_ok() { Ok(PieceTaken::Kept) } else { self.finish(&piece.sha256, piece.size_bytes) }
    }

    /// Makes a photo of its pieces, if they are all there: [`PieceTaken::Complete`], [`PieceTaken::Wrong`], or [`PieceTaken::Kept`] where some
    /// are missing.
    ///
    /// # Errors
    /// If it cannot be written; the pieces are still there.
    pub fn finish(&self, sha256: &PhotoHash, size_bytes: u64) -> io::Result<PieceTaken> {
        let parts = self.parts(sha256);
        let pieces = || {
            let offsets = (0..size_bytes).step_by(PIECE_BYTES as usize);
            offsets.map(|offset| parts.join(format!("{size_bytes}-{offset}")))
        };
        if !pieces().all(|piece| piece.exists()) {
            return Ok(PieceTaken::Kept);
        }
        let (mut new, mut hash) = (NewFile::begin(&self.0, Readers::Owner)?, Sha256::new());
        for piece in pieces() {
            let bytes = fs::read(piece)?;
            hash.update(&bytes);
            new.write_all(&bytes)?;
        }
        if hash.finalize().as_slice() != sha256 {
            return Ok(PieceTaken::Wrong);
        }
        new.put_at(&self.path(sha256))?;
        fs::remove_dir_all(&parts)?;
        Ok(PieceTaken::Complete)
    }

    /// How many of its pieces are here of a photo that is not here as a whole.
    pub fn pieces(&self, photo: &PhotoHash) -> usize {
        let is_piece = |entry: &fs::DirEntry| !entry.file_name().to_string_lossy().ends_with(".new");
        let entries = fs::read_dir(self.parts(photo)).into_iter().flatten();
        entries.filter_map(Result::ok).filter(is_piece).count()
    }

    fn parts(&self, photo: &PhotoHash) -> PathBuf {
        self.0.join(photo_name(photo) + PIECES)
    }

    /// Reads every photo and compares it with its name.
    ///
    /// # Errors
    /// If the folder cannot be read; a photo that cannot be read counts as damaged.
    pub fn check(&self) -> io::Result<PhotosChecked> {
        let mut checked = PhotosChecked::default();
        let entries = match fs::read_dir(&self.0) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(checked),
            entries => entries?,
        };
        for entry in entries {
            let entry = entry?;
            let Some(photo) = entry.file_name().to_str().and_then(photo_hash) else { continue };
            if self.is_sound(&photo) {
                checked.sound += 1;
                // Left over if the power went right after the last piece.
                let _ = fs::remove_dir_all(self.parts(&photo));
            } else {
                checked.damaged.insert(photo);
            }
        }
        Ok(checked)
    }
}

impl Store {
    /// All photos that records name, deleted ones too: they can be brought back.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn photos(&self) -> Result<BTreeSet<PhotoHash>, StoreError> {
        const SQL: &str = "SELECT DISTINCT value FROM cells WHERE field = ?1";
        self.named_by(SQL, [Cell::PHOTO_HASH.number()])
    }

    /// Photos that records name of which a device is not known to have the edit that names them.
    ///
    /// # Errors
    /// Whatever the disk reports.
    pub fn photos_new_to(&self, device: DeviceId) -> Result<BTreeSet<PhotoHash>, StoreError> {
        const SQL: &str = "SELECT DISTINCT value FROM cells JOIN devices ON number = cells.device
            WHERE field = ?1 AND base <> ?2 AND NOT EXISTS (SELECT 1 FROM seen
                WHERE line = cells.device AND observer = ?2 AND seen.sequence >= cells.sequence)";
        self.named_by(SQL, params![Cell::PHOTO_HASH.number(), device.0])
    }

    fn named_by(&self, sql: &str, parameters: impl Params) -> Result<BTreeSet<PhotoHash>, StoreError> {
        let mut statement = self.connection.prepare(sql)?;
        let mut rows = statement.query(parameters)?;
        let mut photos = BTreeSet::new();
        while let Some(row) = rows.next()? {
            let name: Option<String> = value::read(Some(row.get_ref(0)?.as_blob().unwrap_or_default()));
            photos.extend(name.as_deref().and_then(photo_hash));
        }
        Ok(photos)
    }
}

/// A hash as a photo is named: 64 lower-case hex digits.
pub fn photo_name(hash: &PhotoHash) -> String {
    hash.iter().flat_map(|byte| [byte >> 4, byte & 15]).map(|digit| char::from(HEX[digit as usize])).collect()
}

/// The hash that a photo's name says; `None` if it is no such name.
pub fn photo_hash(name: &str) -> Option<PhotoHash> {
    let digit = |byte: u8| HEX.iter().position(|digit| *digit == byte);
    let mut hash = [0; 32];
    if name.len() != 64 {
        return None;
    }
    for (byte, pair) in hash.iter_mut().zip(name.as_bytes().chunks_exact(2)) {
        *byte = (digit(pair[0])? << 4 | digit(pair[1])?) as u8;
    }
    Some(hash)
}

/// Ending of the folder with the pieces of a photo.
const PIECES: &str = ".part";

const HEX: &[u8; 16] = b"0123456789abcdef";

fn hash_of(path: &Path) -> io::Result<PhotoHash> {
    let mut hash = Sha256::new();
    io::copy(&mut File::open(path)?, &mut hash)?;
    Ok(hash.finalize().into())
}
