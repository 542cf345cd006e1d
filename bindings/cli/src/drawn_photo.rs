//! Photos of a pit with its layers drawn over them, where the photo has a scale and its file is at hand.

use crate::carried::photos_of;
use crate::field::FieldRead;
use crate::told;
use pitface_core::picture::photo::{PhotoSize, photo_svg};
use pitface_core::picture::{Spoken, Theme};
use pitface_core::record::Photo;
use pitface_core::report::{OnPhoto, on_photo};
use pitface_core::store::{photo_hash, shown_size, without_notes};
use pitface_core::words::Words;
use std::fmt::Write as _;

/// The type of a photo without notes: only JPEG can be looked through for them.
pub const JPEG: &str = "image/jpeg";

/// A photo with the layers drawn over it.
pub struct DrawnPhoto {
    /// Its place among the photos of its pit.
    pub index: usize,
    drawn: OnPhoto,
    bytes: Vec<u8>,
}

impl DrawnPhoto {
    /// As an SVG file, the photo in it.
    pub fn svg(&self, words: &Words, theme: Theme) -> String {
        let OnPhoto { drawing, title, description } = &self.drawn;
        let spoken = Spoken { language: words.language().code(), title, description };
        photo_svg(drawing, &self.bytes, JPEG, theme, &spoken)
    }
}

/// The photos of a pit that have marks and lie in the folder `photos` beside the notes file or store.
pub fn on_photos(words: &Words, field: &FieldRead, pit: usize) -> Vec<DrawnPhoto> {
    let photos = field.notes.pits.get(pit).map(|pit| pit.photos.as_slice()).unwrap_or_default();
    let drawn = photos.iter().enumerate().filter(|(_, photo)| !photo.marks.is_empty());
    drawn.filter_map(|(index, photo)| over(words, field, pit, (index, photo))?.ok()).collect()
}

/// Why photos have no drawing though they have marks, a line each.
pub fn remarks(words: &Words, field: &FieldRead) -> String {
    let mut lines = String::new();
    for (at, pit) in field.notes.pits.iter().enumerate() {
        for (index, photo) in pit.photos.iter().enumerate().filter(|(_, photo)| !photo.marks.is_empty()) {
            if let Some(Err(why)) = over(words, field, at, (index, photo)) {
                let file = field.origin.called.display();
                let _ = writeln!(lines, "{file}: pits[{at}].photos[{index}].marks: {why}");
            }
        }
    }
    lines
}

/// The file of a photo by its hash, where it is at hand.
pub fn photo_file(field: &FieldRead, hash: &str) -> Option<Vec<u8>> {
    std::fs::read(photos_of(&field.origin.called).path(&photo_hash(hash)?)).ok()
}

/// `None` where the file is not at hand or no JPEG of a known size.
fn over(
    words: &Words,
    field: &FieldRead,
    pit: usize,
    (index, photo): (usize, &Photo),
) -> Option<Result<DrawnPhoto, String>> {
    let bytes = photo_file(field, &photo.sha256)?;
    // What is drawn is for others: without the place and time that a camera noted.
    let bytes = without_notes(&bytes)?;
    let [width_px, height_px] = shown_size(&bytes)?;
    let tip = told::zone_call(field, pit).and_then(|call| call.tip);
    let drawn = on_photo(words, field, pit, (photo, PhotoSize { width_px, height_px }), tip)?;
    Some(match drawn {
        Ok(drawn) => Ok(DrawnPhoto { index, drawn, bytes }),
        Err(fault) => Err(words.scale_fault(fault)),
    })
}
