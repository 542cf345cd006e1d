//! Which pictures are in the folder.

use pitface_core::picture::photo::PhotoSize;
use pitface_core::record::{FieldNotes, Photo};
use pitface_core::screen::Place;
use pitface_core::store::{Photos, photo_hash, shown_size};
use std::collections::BTreeSet;

/// Hashes of the photos noted in fields that are not in the folder; one cut short does not count.
pub(crate) fn missing(fields: &[FieldNotes], photos: &Photos) -> BTreeSet<String> {
    let noted = fields.iter().flat_map(|notes| &notes.pits).flat_map(|pit| &pit.photos);
    let is_there = |photo: &Photo| {
        photo_hash(&photo.sha256).and_then(|hash| photos.size(&hash)) == Some(photo.size_bytes)
    };
    noted.filter(|photo| !is_there(photo)).map(|photo| photo.sha256.clone()).collect()
}

/// The size of the photo that a place shows; `None` elsewhere, and where its file is not at hand or no JPEG.
pub(crate) fn size_shown(fields: &[FieldNotes], place: Place, photos: &Photos) -> Option<PhotoSize> {
    let (Place::Photo { photo, .. } | Place::PhotoScale { photo, .. }) = place else { return None };
    let mut noted = fields.iter().flat_map(|notes| &notes.pits).flat_map(|pit| &pit.photos);
    let hash = photo_hash(&noted.find(|its| its.id == photo)?.sha256)?;
    let bytes = std::fs::read(photos.path(&hash)).ok()?;
    let [width_px, height_px] = shown_size(&bytes)?;
    Some(PhotoSize { width_px, height_px })
}
