//! Bundle files: read and checked whole; written under another name first.

use super::id_of;
use crate::trouble::Trouble;
use crate::write::{beside, cannot};
use pitface_core::error::Fault;
use pitface_core::merge::{
    Bundle, Damage, DeviceId, FileWriter, Header, Part, PartKind, PhotoPiece, read_file,
};
use pitface_core::store::{PhotoHash, Photos, Store};
use sha2::{Digest, Sha256};
use std::collections::HashSet;
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

/// Ending of a bundle file's name.
const ENDING: &str = "pitb";

/// A file that was read.
pub struct Bundles {
    /// All of it.
    pub bytes: Vec<u8>,
    /// What its bundles say of themselves; none of a file of a newer version.
    pub headers: Vec<Header>,
}

impl Bundles {
    /// Reads a file and checks every bit of it. One of a newer version is let pass: a store keeps it for later.
    pub fn read(path: &Path) -> Result<Self, Trouble> {
        let bytes = std::fs::read(path)
            .map_err(|error| cannot(path, "cannot be read", &error, "name a bundle (.pitb)"))?;
        let headers = match headers(&bytes) {
            Err(Damage::Newer(_)) => Vec::new(),
            headers => headers.map_err(|damage| Trouble::of_said(path, &damage))?,
        };
        Ok(Self { bytes, headers })
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
        let hidden = path.file_name().is_none_or(|name| name.to_string_lossy().starts_with('.'));
        if !hidden && path.extension().is_some_and(|ending| ending == ENDING) && path.is_file() {
            files.push(path);
        }
    }
    files.sort();
    Ok(files)
}

/// What is handed over.
pub struct Handed {
    /// The file written; `None` if there was nothing to write.
    pub file: Option<PathBuf>,
    /// Bundles in it.
    pub bundles: u64,
    /// Photos in it, whole or in part.
    pub photos: usize,
    /// Photos that are damaged here, and stayed out.
    pub damaged: Vec<PhotoHash>,
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
    let mut written = beside(folder).map_err(|error| failed(&error))?;
    let mut all = FileWriter::new(Vec::new());
    store.hand_over(way.to, &mut all).map_err(|error| Trouble::of_said(place, &error))?;
    let all = all.end().map_err(|error| failed(&error))?;
    let mut file =
        FileWriter::new(Hashing { to: BufWriter::new(written.as_file_mut()), hash: Sha256::new() });
    let new = |part: &[u8]| part.last_chunk::<32>().is_some_and(|hash| !way.there.contains(hash));
    let mut handed = Handed { file: None, bundles: 0, photos: 0, damaged: Vec::new() };
    for part in read_file(&all).map_err(|damage| Trouble::of_said(place, &damage))? {
        if new(part.bytes) {
            file.add(part.bytes).map_err(|error| failed(&error))?;
            handed.bundles += 1;
        }
    }
    for photo in way.photos {
        if !kept.is_sound(photo) {
            handed.damaged.push(*photo);
            continue;
        }
        let before = file.count();
        let add = |piece: &PhotoPiece| {
            let part = piece.write();
            if new(&part) { file.add(&part) } else { Ok(()) }
        };
        kept.each_piece(photo, add).map_err(|error| failed(&error))?;
        handed.photos += usize::from(file.count() > before);
    }
    if file.count() == 0 {
        return Ok(handed);
    }
    let Hashing { to, hash } = file.end().map_err(|error| failed(&error))?;
    to.into_inner().map_err(|error| failed(error.error()))?.sync_all().map_err(|error| failed(&error))?;
    let hash = hash.finalize();
    let name = || {
        let [a, b, c, d] = [hash[0], hash[1], hash[2], hash[3]];
        format!("{}-{a:02x}{b:02x}{c:02x}{d:02x}.{ENDING}", &id_of(way.own)[..8])
    };
    let place = way.out.map_or_else(|| folder.join(name()), Path::to_owned);
    if place.is_dir() {
        let todo = "name a file, or give the folder with --folder";
        return Err(Trouble::one(&place, Fault::new("", "this is a folder", todo)));
    }
    written.persist(&place).map_err(|error| failed(&error.error))?;
    sync(folder).map_err(|error| failed(&error))?;
    handed.file = Some(place);
    Ok(handed)
}

/// A new name in a folder lasts once the folder is synced.
#[cfg(unix)]
fn sync(folder: &Path) -> io::Result<()> {
    std::fs::File::open(folder)?.sync_all()
}

#[cfg(not(unix))]
fn sync(_: &Path) -> io::Result<()> {
    Ok(())
}

/// Hashes what goes through.
struct Hashing<W> {
    to: W,
    hash: Sha256,
}

impl<W: Write> Write for Hashing<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let count = self.to.write(bytes)?;
        self.hash.update(&bytes[..count]);
        Ok(count)
    }
    fn flush(&mut self) -> io::Result<()> {
        self.to.flush()
    }
}
