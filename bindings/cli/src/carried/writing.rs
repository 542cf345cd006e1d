//! What a store has, written as one file.

use super::new_file::NewFile;
use super::team_word::Lock;
use crate::replacing;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::merge::{DeviceId, FileWriter};
use pitface_core::store::{PhotoHash, Photos, Store, StoreError};
use pitface_locked::Refused;
use std::collections::HashSet;
use std::io;
use std::path::{Path, PathBuf};

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
    /// How the file is locked; `None`: not at all.
    pub lock: Option<Lock<'a>>,
}

/// Writes a file with what a store has, and photos.
pub fn write(store: &Store, kept: &Photos, way: &Way) -> Result<Handed, Trouble> {
    let folder = match way.out {
        Some(out) => out.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new(".")),
        None => way.folder,
    };
    let place = way.out.unwrap_or(folder);
    let todo = "make room or name a place that can be written";
    let failed = |error: &io::Error| match error.get_ref() {
        Some(refused) if refused.is::<Refused>() => Trouble::of_said(place, &refused),
        _ => cannot(place, "cannot be written", error, todo),
    };
    let written = NewFile::begin(folder, way.lock.clone()).map_err(|error| failed(&error))?;
    let mut file = FileWriter::new(written);
    let added = store.hand_over_with_photos(way.to, way.there, (kept, way.photos), &mut file);
    let added = added.map_err(|error| match error {
        StoreError::File(error) => failed(&error),
        error => Trouble::of_said(place, &error),
    })?;
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
