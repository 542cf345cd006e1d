//! Chosen fields, for somebody who is not to have the rest: a notes file each, with its photos.
//!
//! They go as notes and not as a bundle. A device's edits are one chain, in which those of all fields stand in turn: a bundle of some of them would be
//! told as incomplete by everybody, or would have to carry the hashes of the others, from which a code out of a handful is found at once. So
//! whoever gets them has the field as it stands now, with the ids of its records, but not who wrote what and when; what comes of reading them
//! is written by the reader.

use super::photos_of;
use crate::device;
use crate::keep::{Kept, now_ms};
use crate::trouble::Trouble;
use crate::write::{Folder, cannot};
use pitface_core::merge::Signer as _;
use pitface_core::record::{FieldNotes, notes};
use pitface_core::store::{Leaving, PhotoHash, StoreError, photo_hash, photo_name};
use std::path::{Path, PathBuf};

/// What was written.
pub struct Chosen {
    /// The notes files and photos.
    pub files: Vec<PathBuf>,
    /// What became of the photos.
    pub leaving: Leaving,
}

/// Writes chosen fields of a store into a folder, and into its folder `photos` what they name.
pub fn write(path: &Path, names: &[String], out: &Path, how: Photographs) -> Result<Chosen, Trouble> {
    let failed = |error: StoreError| Trouble::of_said(path, &error);
    let photos = photos_of(path);
    let wanted = {
        let kept = Kept::open(path)?;
        let fields = kept.several(names)?;
        let notes = fields.iter().map(|field| kept.notes(field)).collect::<Result<Vec<_>, _>>()?;
        photos_named(&notes)
    };
    let here: Vec<PhotoHash> = wanted.into_iter().filter(|photo| photos.size(photo).is_some()).collect();
    let leaving = match how {
        Photographs::Stay => Leaving::default(),
        Photographs::AsTaken => Leaving { photos: here, ..Leaving::default() },
        Photographs::WithoutNotes => {
            let mut store = super::open_to_read(path, device::lasting()?.device())?;
            store.photos_to_leave(&photos, here, now_ms()).map_err(failed)?
        }
    };
    let kept = Kept::open(path)?;
    let mut folder = Folder::open(out)?;
    for field in kept.several(names)? {
        let text = notes::write(&kept.notes(&field)?);
        folder.add(&format!("{}.notes.json", kept.file_name(&field)), text.as_bytes())?;
    }
    let mut files = folder.finish()?;
    if !leaving.photos.is_empty() {
        let mut folder = Folder::open(&out.join("photos"))?;
        for photo in leaving.photos.iter().filter(|photo| photos.is_sound(photo)) {
            let place = photos.path(photo);
            let bytes = std::fs::read(&place)
                .map_err(|error| cannot(&place, "cannot be read", &error, "see `pitface check`"))?;
            folder.add(&photo_name(photo), &bytes)?;
        }
        files.extend(folder.finish()?);
    }
    Ok(Chosen { files, leaving })
}

/// Whether photos go along.
#[derive(Clone, Copy)]
pub enum Photographs {
    /// Notes alone.
    Stay,
    /// With what the camera noted in them.
    AsTaken,
    /// Without.
    WithoutNotes,
}

/// Keeps photos that lie in the folder `photos` beside a notes file beside the store, those that its notes name and that are what their names say.
pub fn take_photos(file: &Path, notes: &FieldNotes, store: &Path) {
    let (from, to) = (photos_of(file), photos_of(store));
    for photo in photos_named(std::slice::from_ref(notes)) {
        if to.size(&photo).is_none() && from.is_sound(&photo) {
            // One that finds no room is told as missing; the notes are kept all the same.
            let _ = to.keep(&from.path(&photo));
        }
    }
}

fn photos_named(notes: &[FieldNotes]) -> Vec<PhotoHash> {
    let photos = notes.iter().flat_map(|notes| &notes.pits).flat_map(|pit| &pit.photos);
    photos.filter_map(|photo| photo_hash(&photo.sha256)).collect()
}
