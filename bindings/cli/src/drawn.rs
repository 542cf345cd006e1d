//! The drawings of a field as files, and its sheet.

use crate::drawn_field::{after_digs, face_of, plan_of};
use crate::drawn_photo::{on_photos, photo_file};
use crate::field::FieldRead;
use crate::trouble::Trouble;
use crate::write::Folder;
use pitface_core::picture::Theme;
use pitface_core::report::{Page, sheet};
use pitface_core::words::Words;

/// Adds an SVG file for every pit of a field, `STEM-pit-N.svg`; their names.
pub fn pit_files(
    words: &Words,
    field: &FieldRead,
    stem: &str,
    theme: Theme,
    folder: &mut Folder,
) -> Result<Vec<String>, Trouble> {
    (0..field.notes.pits.len())
        .filter_map(|index| Some((format!("{stem}-pit-{}.svg", index + 1), face_of(words, field, index)?)))
        .map(|(name, drawn)| {
            folder.add(&name, drawn.svg(words, theme).as_bytes())?;
            Ok(name)
        })
        .collect()
}

/// Adds an SVG file for every photo that can be drawn over, `STEM-pit-N-photo-M.svg`.
pub fn photo_files(
    words: &Words,
    field: &FieldRead,
    stem: &str,
    theme: Theme,
    folder: &mut Folder,
) -> Result<(), Trouble> {
    for pit in 0..field.notes.pits.len() {
        for photo in on_photos(words, field, pit) {
            let name = format!("{stem}-pit-{}-photo-{}.svg", pit + 1, photo.index + 1);
            folder.add(&name, photo.svg(words, theme).as_bytes())?;
        }
    }
    Ok(())
}

/// Adds the plan of a field, `STEM-plan.svg`, and a drawing of every hole behind the machine, `STEM-after-dig-N.svg`;
/// their names.
pub fn field_files(
    words: &Words,
    field: &FieldRead,
    stem: &str,
    theme: Theme,
    folder: &mut Folder,
) -> Result<Vec<String>, Trouble> {
    let plan = plan_of(words, field).map(|plan| (format!("{stem}-plan.svg"), plan));
    let holes = after_digs(words, field).into_iter().enumerate();
    let holes =
        holes.filter_map(|(index, hole)| Some((format!("{stem}-after-dig-{}.svg", index + 1), hole?)));
    plan.into_iter()
        .chain(holes)
        .map(|(name, drawn)| {
            folder.add(&name, drawn.svg(words, theme).as_bytes())?;
            Ok(name)
        })
        .collect()
}

/// The sheet of a field.
pub fn sheet_of(words: &Words, field: &FieldRead) -> Page {
    sheet(words, field, &|hash| photo_file(field, hash))
}
