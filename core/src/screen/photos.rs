//! Photos of a pit, small beside each other and one full screen: where on the face it belongs, and away with it.

use super::bar::{blank, gone, tool};
use super::photo_scale;
use super::pit::AtPit;
use super::step::COARSE;
use super::{
    Act, Ask, Block, Button, Does, Done, Edit, Headline, Input, Picture, Place, Row, Screen, ScreenKind,
    Stand, Thumbnail, World,
};
use crate::error::Fault;
use crate::picture::{Drawing, Icon, PHONE_WIDTH, icon};
use crate::reading::layers;
use crate::record::{FieldNotes, Photo, Pit, RecordId};
use crate::words::{Caption, FaceText};
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
    /// A finger on the photo that is given a scale.
    Touched {
        /// The photo.
        photo: RecordId,
    },
    /// The photo is deleted.
    Delete {
        /// The photo.
        photo: RecordId,
    },
}

/// Depths offered where a pit has no layers yet. Our judgement.
const DEPTHS_MM: [u32; 5] = [50, 150, 250, 350, 450];
/// Height of a photo whose own is not known, points at a phone's width: as phones take them. Our judgement.
const USUAL_HEIGHT: f64 = PHONE_WIDTH * 4.0 / 3.0;

pub(super) fn pit_of(notes: &FieldNotes, pit: RecordId) -> Option<(usize, &Pit)> {
    notes.pits.iter().enumerate().find(|(_, its)| its.id == pit)
}

/// How many pictures of pits are not on this phone, in a sentence; nothing where all are.
pub(super) fn missing(pits: &[Pit], world: &World) -> Option<String> {
    let photos = pits.iter().flat_map(|pit| &pit.photos);
    let count = photos.filter(|photo| world.photos_missing.contains(&photo.sha256)).count();
    (count > 0).then(|| world.words.photos_missing(count))
}

/// Returns what is noted of a photo, in a line.
pub(super) fn line(photo: &Photo, world: &World) -> String {
    let missing = world.photos_missing.contains(&photo.sha256);
    if missing { world.words.photo_not_here(photo) } else { world.words.photo_line(photo) }
}

/// The photos of a pit as small pictures; nothing where there is none.
pub(super) fn thumbnails(field: RecordId, pit: &Pit, world: &World) -> Option<Block> {
    let small = |photo: &Photo| Thumbnail {
        photo: photo.sha256.clone(),
        label: line(photo, world),
        does: Does::Act(Act::Go(Place::Photo { field, pit: pit.id, photo: photo.id })),
    };
    (!pit.photos.is_empty()).then(|| Block::Photos(pit.photos.iter().map(small).collect()))
}

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let (index, pit) = pit_of(notes, pit)?;
    let place = Place::Photos { field, pit: pit.id };
    let title = words.pit_title(index + 1, pit.place);
    let mut screen = blank(place, ScreenKind::Photos, title, world);
    let said = if pit.photos.is_empty() {
        words.label(Caption::NoPhoto)
    } else {
        words.photos_count(pit.photos.len())
    };
    let line = missing(std::slice::from_ref(pit), world).unwrap_or_else(|| words.label(Caption::Scale));
    screen.answer = Some(Headline { line, ..Headline::new(said) });
    screen.blocks.extend(thumbnails(field, pit, world));
    let ask = Ask::TakePhoto { field, pit: pit.id, depth_mm: None };
    screen.next = Some(Button {
        drawing: Some(icon(Icon::Photo)),
        ..Button::new(words.label(Caption::TakePhoto), Does::Ask(ask))
    });
    Some(screen)
}

/// One photo, full screen.
pub(in crate::screen) fn show_one(
    field: RecordId,
    pit: RecordId,
    photo: RecordId,
    world: &World,
) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let (index, pit) = pit_of(notes, pit)?;
    let photo = pit.photos.iter().find(|its| its.id == photo)?;
    let place = Place::Photo { field, pit: pit.id, photo: photo.id };
    let title = words.pit_title(index + 1, pit.place);
    let mut screen = blank(place, ScreenKind::Photos, title, world);
    let over = AtPit::of(field, pit.id, world).and_then(|at| photo_scale::overlay(&at, photo, world));
    let fault = over.as_ref().and_then(|over| over.as_ref().err().map(|fault| words.scale_fault(*fault)));
    let bare = || Drawing {
        width: PHONE_WIDTH,
        height: world.photo_size.map_or(USUAL_HEIGHT, photo_scale::height),
        shapes: Vec::new(),
    };
    screen.answer = Some(Headline { line: fault.unwrap_or_default(), ..Headline::new(line(photo, world)) });
    screen.picture = Some(Picture {
        drawing: over.and_then(Result::ok).unwrap_or_else(bare),
        photo: Some(photo.sha256.clone()),
        title: words.pit_numbered(index + 1, pit.place),
        description: line(photo, world),
        stand: Stand::Wide,
        touches: Vec::new(),
        anywhere: None,
        zooms: true,
    });
    screen.blocks.extend(world.photo_size.map(|_| scale_way(field, pit, photo, world)));
    screen.blocks.push(where_on_the_face(photo, pit, notes, world));
    let delete = Act::Photo(PhotoAct::Delete { photo: photo.id });
    screen.tools.push(tool(Icon::Delete, words.label(FaceText::PhotoDelete), delete));
    Some(screen)
}

/// The way to its scale, with what stands there now.
fn scale_way(field: RecordId, pit: &Pit, photo: &Photo, world: &World) -> Block {
    let words = world.words;
    let known_mm = COARSE.nearest(photo_scale::KNOWN_MM[0], words.unit());
    let place = Place::PhotoScale { field, pit: pit.id, photo: photo.id, zero: None, known_mm };
    let stands = if photo.marks.is_empty() { FaceText::ScaleNone } else { FaceText::ScaleThere };
    let row = Row {
        icon: Some(icon(Icon::Layers)),
        title: words.label(FaceText::Scale),
        lines: vec![words.of(stands)],
        does: Does::Act(Act::Go(place)),
    };
    Block::Ways { heading: String::new(), rows: vec![row] }
}

/// Where on the face it belongs: rows, with what stands there now.
fn where_on_the_face(photo: &Photo, pit: &Pit, notes: &FieldNotes, world: &World) -> Block {
    let words = world.words;
    let row = |label: String, depth_mm: Option<u32>, chosen: bool| Row {
        icon: None,
        title: label,
        lines: if chosen { vec![words.of(FaceText::StandsSo)] } else { Vec::new() },
        does: Does::Act(Act::Photo(PhotoAct::At { photo: photo.id, depth_mm })),
    };
    let whole = row(words.label(Caption::WholeFace), None, photo.depth_mm.is_none());
    let at = places(pit, notes).into_iter().map(|(top_mm, bottom_mm)| {
        let within = |depth_mm: u32| (top_mm..bottom_mm).contains(&depth_mm);
        let label = words.depth_range(top_mm, bottom_mm);
        row(label, Some(u32::midpoint(top_mm, bottom_mm)), photo.depth_mm.is_some_and(within))
    });
    let rows = [whole].into_iter().chain(at).collect();
    Block::Ways { heading: words.label(Caption::PhotoPlace), rows }
}

/// The layers of a pit, or the usual depths where it has none.
fn places(pit: &Pit, notes: &FieldNotes) -> Vec<(u32, u32)> {
    let layers: Vec<_> =
        layers(pit, &notes.field).iter().map(|layer| (layer.top_mm, layer.bottom_mm)).collect();
    if layers.is_empty() { DEPTHS_MM.map(|mm| (mm - 50, mm + 50)).to_vec() } else { layers }
}

pub(super) fn tap(place: Place, act: &PhotoAct, input: Input, world: &World) -> Result<Done, Fault> {
    let gone = || gone(world.words);
    let (Place::Photos { field, pit }
    | Place::Photo { field, pit, .. }
    | Place::PhotoScale { field, pit, .. }) = place
    else {
        return Err(gone());
    };
    let notes = world.notes(field).ok_or_else(gone)?;
    let (_, pit) = pit_of(notes, pit).ok_or_else(gone)?;
    let own = |photo: RecordId| pit.photos.iter().find(|its| its.id == photo).ok_or_else(gone);
    match *act {
        PhotoAct::At { photo, depth_mm } => {
            let photo = Photo { depth_mm, ..own(photo)?.clone() };
            let told = world.words.kept(&world.words.photo_line(&photo));
            Ok(Done { told, ..Done::save(Edit::Photo { pit: pit.id, photo }, place) })
        }
        PhotoAct::Touched { photo } => {
            Ok(photo_scale::touched(pit.id, own(photo)?, place, input.point, world))
        }
        PhotoAct::Delete { photo } => {
            let record = own(photo)?.id;
            let told = world.words.of(FaceText::PhotoDeleted);
            let place = Place::Photos { field, pit: pit.id };
            Ok(Done { told, ..Done::save(Edit::Delete { record }, place) })
        }
    }
}
