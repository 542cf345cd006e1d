//! Photos of a pit: what is noted of each, and where on the face the last one belongs.

use super::bar::{asked, choice, empty, gone};
use super::{Act, Ask, Button, Does, Done, Draft, Edit, Known, Place, ScreenKind, World};
use crate::error::Fault;
use crate::reading::layers;
use crate::record::{FieldNotes, Photo, Pit, RecordId};
use crate::words::Caption;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhotoAct {
    /// Where on the face a photo belongs; nowhere for one of the whole face.
    At {
        /// The photo.
        photo: RecordId,
        /// Depth of its middle.
        depth_mm: Option<u32>,
    },
}

/// Depths offered where a pit has no layers yet. Our judgement.
const DEPTHS_MM: [u32; 5] = [50, 150, 250, 350, 450];

fn pit_of(notes: &FieldNotes, pit: RecordId) -> Option<(usize, &Pit)> {
    notes.pits.iter().enumerate().find(|(_, its)| its.id == pit)
}

/// How many pictures of a pit are not on this phone, in a sentence; nothing where all are.
pub(super) fn missing(pit: &Pit, world: &World) -> Option<String> {
    let count = pit.photos.iter().filter(|photo| world.photos_missing.contains(&photo.sha256)).count();
    (count > 0).then(|| world.words.photos_missing(count))
}

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Draft> {
    let (notes, words) = (world.notes(field)?, world.words);
    let (index, pit) = pit_of(notes, pit)?;
    let place = Place::Photos { field, pit: pit.id };
    let mut screen = empty(place, ScreenKind::Photos, words.label(Caption::Photos), world);
    let heading = words.pit_numbered(index + 1, pit.place);
    screen.known = if pit.photos.is_empty() {
        vec![Known::Sentence(words.label(Caption::NoPhoto)), Known::Line(heading)]
    } else {
        let line = |photo: &Photo| {
            let missing = world.photos_missing.contains(&photo.sha256);
            if missing { words.photo_not_here(photo) } else { words.photo_line(photo) }
        };
        let lines = pit.photos.iter().map(line).collect();
        let known = [
            Some(Known::Sentence(words.photos_count(pit.photos.len()))),
            missing(pit, world).map(Known::Sentence),
            Some(Known::Section { heading, lines }),
            Some(Known::Line(words.label(Caption::OnlyNoted))),
        ];
        known.into_iter().flatten().collect()
    };
    screen.known.push(Known::Line(words.label(Caption::Scale)));
    if let Some(last) = pit.photos.last() {
        let at = |label: String, depth_mm: Option<u32>, chosen: bool| {
            choice(label, Act::Photo(PhotoAct::At { photo: last.id, depth_mm }), chosen)
        };
        let mut buttons = vec![at(words.label(Caption::WholeFace), None, last.depth_mm.is_none())];
        buttons.extend(places(pit, notes).into_iter().map(|(top_mm, bottom_mm)| {
            let within = |depth_mm: u32| (top_mm..bottom_mm).contains(&depth_mm);
            let label = words.depth_range(top_mm, bottom_mm);
            at(label, Some(u32::midpoint(top_mm, bottom_mm)), last.depth_mm.is_some_and(within))
        }));
        screen.doing = asked(words.label(Caption::PhotoPlace), 3, buttons);
    }
    let ask = Ask::TakePhoto { field, pit: pit.id, depth_mm: None };
    screen.bar.main =
        Some(Button { strong: true, ..Button::new(words.label(Caption::TakePhoto), Does::Ask(ask)) });
    Some(screen)
}

/// The layers of a pit, or the usual depths where it has none.
fn places(pit: &Pit, notes: &FieldNotes) -> Vec<(u32, u32)> {
    let layers: Vec<_> =
        layers(pit, &notes.field).iter().map(|layer| (layer.top_mm, layer.bottom_mm)).collect();
    if layers.is_empty() { DEPTHS_MM.map(|mm| (mm - 50, mm + 50)).to_vec() } else { layers }
}

pub(super) fn tap(place: Place, act: &PhotoAct, world: &World) -> Result<Done, Fault> {
    let gone = || gone(world.words);
    let Place::Photos { field, pit } = place else { return Err(gone()) };
    let notes = world.notes(field).ok_or_else(gone)?;
    let (_, pit) = pit_of(notes, pit).ok_or_else(gone)?;
    let PhotoAct::At { photo, depth_mm } = *act;
    let photo = pit.photos.iter().find(|its| its.id == photo).ok_or_else(gone)?;
    let photo = Photo { depth_mm, ..photo.clone() };
    Ok(Done::save(Edit::Photo { pit: pit.id, photo }, place))
}
