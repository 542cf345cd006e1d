//! A photo of a pit with its layers drawn over it.

use super::sheet::PhotoFile;
use crate::advice::TipDepth;
use crate::answer::FieldAnswer;
use crate::picture::photo::{self, PhotoSize, ScaleFault};
use crate::picture::{Drawing, Face, Ruler, Tip};
use crate::record::Photo;
use crate::screen::Pictured;
use crate::store::{shown_size, without_notes};
use crate::words::Words;

/// A drawing over a photo, with what is said of it.
#[derive(Debug, Clone, PartialEq)]
pub struct OnPhoto {
    /// The drawing, in the coordinates of the picture (see [`photo::on_photo`]).
    pub drawing: Drawing,
    /// Its title.
    pub title: String,
    /// What it shows, read out to whoever does not see it.
    pub description: String,
}

/// The layers of a pit over one of its photos, with the tip depth where one is given; `None` where there is no such pit.
///
/// # Errors
/// Why the photo's marks give no scale.
pub fn on_photo(
    words: &Words,
    answer: &FieldAnswer,
    pit: usize,
    (photo, size): (&Photo, PhotoSize),
    tip: Option<TipDepth>,
) -> Option<Result<OnPhoto, ScaleFault>> {
    let (dug, read) = (answer.notes.pits.get(pit)?, answer.reading.pits.get(pit)?);
    let title = words.photo_drawn_over(&words.pit_numbered(pit + 1, dug.place));
    let line = tip.map(|tip| Tip { lo_mm: tip.lo_mm, hi_mm: tip.hi_mm, label: words.tip_label(&tip) });
    let face = Face::of(read, title.clone(), line, |layer| words.layer_label(layer));
    let deepest_mm = photo.marks.iter().map(|mark| mark.depth_mm).fold(face.dug_to_mm, u32::max);
    let ruler = Ruler::down_to(deepest_mm, words.unit(), words.unit_sign());
    let drawn = photo::on_photo(size, &photo.marks, &face, &ruler, 1.0);
    let description = words.describe(dug.place, read, None, tip.as_ref());
    Some(drawn.map(|drawing| OnPhoto { drawing, title, description }))
}

/// The first photo of a pit that has a scale and a file, with the layers drawn over it, and its file. Place and time that a
/// camera noted in it are left out, for a page is for others.
pub(super) fn photo_of(
    words: &Words,
    answer: &FieldAnswer,
    pit: usize,
    file: PhotoFile,
) -> Option<(Pictured, Vec<u8>)> {
    let tip = answer.call_at(pit).and_then(|call| call.tip);
    let photos = answer.notes.pits.get(pit)?.photos.iter().filter(|photo| !photo.marks.is_empty());
    let mut drawn = photos.filter_map(|photo| {
        let bytes = without_notes(&file(&photo.sha256)?)?;
        let [width_px, height_px] = shown_size(&bytes)?;
        let size = PhotoSize { width_px, height_px };
        let OnPhoto { drawing, title, description } =
            on_photo(words, answer, pit, (photo, size), tip)?.ok()?;
        Some((Pictured { drawing, title, description }, bytes))
    });
    drawn.next()
}
