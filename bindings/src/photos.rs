//! Which pictures are in the folder.

use pitface_core::record::{FieldNotes, Photo};
use pitface_core::store::{Photos, photo_hash};
use std::collections::BTreeSet;

/// Hashes of the photos noted in fields that are not in the folder; one cut short does not count.
pub(crate) fn missing(fields: &[FieldNotes], photos: &Photos) -> BTreeSet<String> {
    let noted = fields.iter().flat_map(|notes| &notes.pits).flat_map(|pit| &pit.photos);
    let is_there = |photo: &Photo| {
        photo_hash(&photo.sha256).and_then(|hash| photos.size(&hash)) == Some(photo.size_bytes)
    };
    noted.filter(|photo| !is_there(photo)).map(|photo| photo.sha256.clone()).collect()
}
