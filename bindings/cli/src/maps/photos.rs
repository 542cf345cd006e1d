//! Photos of the pits on their way into a GeoPackage.

use crate::carried::photos_of;
use crate::drawn_photo::JPEG;
use crate::field::FieldRead;
use pitface_core::record::Photo;
use pitface_core::store::{PitPhoto, photo_hash, without_notes};
use std::path::PathBuf;

/// The photos of fields, read one by one when their turn comes.
pub struct PitPhotos {
    waiting: std::vec::IntoIter<Waiting>,
    /// How many were given so far.
    pub written: usize,
    /// How many were passed over so far: not here, or no pictures that can be looked through.
    pub left_out: usize,
}

struct Waiting {
    pit_row: usize,
    id: Option<String>,
    photo: Photo,
    file: Option<PathBuf>,
}

impl PitPhotos {
    /// Those of all pits; pits are counted over all fields, as the rows of their table are.
    pub fn of(fields: &[FieldRead]) -> Self {
        let pits = fields.iter().flat_map(|field| field.notes.pits.iter().map(move |pit| (field, pit)));
        let photos = pits.enumerate().flat_map(|(pit_row, (field, pit))| {
            let folder = photos_of(&field.origin.called);
            pit.photos.iter().map(move |photo| Waiting {
                pit_row,
                id: field.lasting(photo.id).map(|id| id.to_string()),
                file: photo_hash(&photo.sha256).map(|hash| folder.path(&hash)),
                photo: photo.clone(),
            })
        });
        Self { waiting: photos.collect::<Vec<_>>().into_iter(), written: 0, left_out: 0 }
    }
}

impl Iterator for PitPhotos {
    type Item = PitPhoto;

    fn next(&mut self) -> Option<PitPhoto> {
        loop {
            let Waiting { pit_row, id, photo, file } = self.waiting.next()?;
            // No photo leaves with the place and time that its camera noted.
            let Some(bytes) = file.and_then(|file| without_notes(&std::fs::read(file).ok()?)) else {
                self.left_out += 1;
                continue;
            };
            self.written += 1;
            return Some(PitPhoto {
                pit_row,
                id,
                media_type: JPEG,
                taken: photo.taken.map(|taken| taken.to_rfc3339()),
                depth_mm: photo.depth_mm,
                bytes,
            });
        }
    }
}
