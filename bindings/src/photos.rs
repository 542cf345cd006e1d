//! Photos: each kept once, under the hash of its content.

use crate::folder::{beside, put_in_place};
use pitface_core::record::FieldNotes;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

/// A photo in its folder, synced.
pub(crate) struct KeptPhoto {
    /// 64 lower-case hex digits; also its name.
    pub sha256: String,
    pub size_bytes: u64,
    /// Its path, if it was not there before.
    pub new: Option<PathBuf>,
}

/// What went wrong.
pub(crate) enum PhotoFault {
    /// The file taken cannot be read.
    Unread,
    /// It cannot be kept.
    Unkept(io::Error),
}

/// Copies a file into the folder under its hash; when this returns it is on the disk.
pub(crate) fn keep(from: &Path, photos: &Path) -> Result<KeptPhoto, PhotoFault> {
    let mut taken = File::open(from).map_err(|_| PhotoFault::Unread)?;
    fs::create_dir_all(photos).map_err(PhotoFault::Unkept)?;
    let new = beside(&photos.join("photo"));
    let kept = copy(&mut taken, &new, photos);
    if !matches!(kept, Ok(KeptPhoto { new: Some(_), .. })) {
        let _ = fs::remove_file(&new);
    }
    kept
}

fn copy(taken: &mut File, new: &Path, photos: &Path) -> Result<KeptPhoto, PhotoFault> {
    let mut file = File::create(new).map_err(PhotoFault::Unkept)?;
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
        file.write_all(&part[..count]).map_err(PhotoFault::Unkept)?;
    }
    if size_bytes == 0 {
        return Err(PhotoFault::Unread);
    }
    let sha256 = hash.finalize().iter().fold(String::new(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    });
    let path = photos.join(&sha256);
    if is_there(&path, size_bytes) {
        return Ok(KeptPhoto { sha256, size_bytes, new: None });
    }
    put_in_place(&file, new, &path).map_err(PhotoFault::Unkept)?;
    Ok(KeptPhoto { sha256, size_bytes, new: Some(path) })
}

/// Whether a whole photo lies there; one cut short does not count.
fn is_there(path: &Path, size_bytes: u64) -> bool {
    fs::metadata(path).is_ok_and(|there| there.len() == size_bytes)
}

/// Hashes of the photos noted in fields that are not in the folder.
pub(crate) fn missing(fields: &[FieldNotes], photos: &Path) -> BTreeSet<String> {
    let noted = fields.iter().flat_map(|notes| &notes.pits).flat_map(|pit| &pit.photos);
    let gone = noted.filter(|photo| !is_there(&photos.join(&photo.sha256), photo.size_bytes));
    gone.map(|photo| photo.sha256.clone()).collect()
}
