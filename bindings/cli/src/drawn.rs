//! The drawings of a field as files, and a page with all of them.

use crate::drawn_field::{Drawn, after_digs, face_of, plan_of};
use crate::drawn_photo::on_photos;
use crate::field::FieldRead;
use crate::trouble::Trouble;
use crate::write::Folder;
use crate::{told, told_passes};
use pitface_core::advice::{What, ZoneCall};
use pitface_core::picture::Theme;
use pitface_core::report::{Figure, Page, PageEntry, page};
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

/// A page with everything told of some fields: a zone's call stands with the drawing of the pit that decides it, the
/// other pits below.
pub fn fields_page(words: &Words, title: &str, fields: &[FieldRead]) -> String {
    let entries: Vec<PageEntry> = fields.iter().flat_map(|field| page_entries(words, field)).collect();
    page(&Page {
        language: words.language().code().to_owned(),
        title: title.to_owned(),
        lead: Vec::new(),
        entries,
        closing: vec![told::rules(words)],
    })
}

fn page_entries(words: &Words, field: &FieldRead) -> Vec<PageEntry> {
    let mut entries = told::field(words, field);
    let figure = |drawn: Drawn| Figure { svg: drawn.svg(words, Theme::Page), caption: drawn.title };
    entries[0].figures.extend(plan_of(words, field).map(figure));
    let zones = &field.advice.zones;
    let mut figures: Vec<Option<Figure>> =
        (0..field.notes.pits.len()).map(|index| face_of(words, field, index).map(figure)).collect();
    // The entries are the field's own, one a zone, one a pit.
    let (calls, pits) = entries.split_at_mut(1 + zones.len());
    for (entry, call) in calls[1..].iter_mut().zip(zones) {
        entry.figures.extend(deciding_pit(field, call).and_then(|index| figures[index].take()));
    }
    for (index, (entry, figure)) in pits.iter_mut().zip(figures).enumerate() {
        entry.figures.extend(figure.map(|figure| Figure { caption: String::new(), ..figure }));
        entry.figures.extend(
            on_photos(words, field, index).iter().map(|photo| Figure {
                svg: photo.svg(words, Theme::Page),
                caption: photo.title().to_owned(),
            }),
        );
    }
    let mut holes = after_digs(words, field).into_iter();
    let mut passes = told_passes::passes(words, field);
    for (entry, pass) in passes.iter_mut().zip(&field.notes.passes) {
        entry.figures.extend(holes.by_ref().take(pass.after_digs.len()).flatten().map(figure));
    }
    let pits = entries.split_off(1 + zones.len());
    entries.extend(passes.into_iter().chain(pits));
    // On a page of many fields a zone or a pit says whose it is.
    for entry in &mut entries[1..] {
        entry.heading = format!("{}: {}", words.name(&field.notes.field.name), entry.heading);
    }
    entries
}

/// The pit whose layer a zone's call names first; else the zone's first pit.
fn deciding_pit(field: &FieldRead, call: &ZoneCall) -> Option<usize> {
    let named = call.reasons.iter().find_map(|why| match why.what {
        What::Layer { top_mm, bottom_mm, .. } => Some((top_mm, bottom_mm)),
        _ => None,
    });
    let in_zone = |index: &usize| told::zone_call(field, *index).is_some_and(|its| its.zone == call.zone);
    let has_layer = |index: &usize| {
        let mut layers = field.reading.pits[*index].layers.iter();
        layers.any(|layer| Some((layer.top_mm, layer.bottom_mm)) == named)
    };
    let mut pits = (0..field.notes.pits.len()).filter(in_zone);
    pits.clone().find(has_layer).or_else(|| pits.next())
}
