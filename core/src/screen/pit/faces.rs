//! The face of a pit on its screens: as a strip beside a question, and wide with its words; layers and boundaries can be
//! touched.

use super::super::{Act, Does, Picture, Place, Row, Stand, Touch, World};
use super::{AtPit, PitAct};
use crate::advice::TipDepth;
use crate::picture::{
    Drawing, Face, FacePicture, FacePlace, Icon, Ruler, Strip, Tip, icon, placed_faces, strip,
};
use crate::record::{PlaceKind, RecordId};

/// Half the height of the place on a picture by which a boundary is dragged, points: a fingertip. Our judgement.
const GRIP: f64 = 14.0;

/// Where a tap on a layer leads.
pub(super) const fn to_layer(field: RecordId, pit: RecordId, index: usize) -> Place {
    Place::Layers { field, pit, layer: Some(index as u16), clue: None }
}

/// The face as a strip, down to the depth that is wanted; what is in hand is lit.
pub(super) fn strip_face(at: &AtPit, lit: Option<(u32, u32)>, world: &World) -> Picture {
    let words = world.words;
    let face = Face::of(at.reading(), String::new(), None, |_| (String::new(), Vec::new()));
    let to_mm = super::start::deep_enough_mm(at);
    let deepest_mm = lit.map_or(to_mm, |(_, bottom_mm)| bottom_mm.max(to_mm)).max(face.dug_to_mm);
    let drawn = Strip {
        layers: face.layers,
        to_mm,
        lit,
        ruler: Ruler::down_to(deepest_mm, words.unit(), String::new()),
        text_scale: world.letters,
    };
    let (drawing, place) = strip(&drawn);
    Picture {
        stand: Stand::Strip,
        touches: layer_touches(at, &place, world),
        ..picture(at, drawing, None, None, world)
    }
}

/// The same with nothing on it to be touched, where one of its layers is asked about already.
pub(super) fn strip_face_alone(at: &AtPit, lit: (u32, u32), world: &World) -> Picture {
    Picture { touches: Vec::new(), ..strip_face(at, Some(lit), world) }
}

/// The face with its words; beside the reference where that is wanted and there is one, with the tip depth where one is
/// given. Its layers can be touched. Nothing where no layer is noted yet.
pub(in crate::screen) fn wide_face(
    at: &AtPit,
    tip: Option<TipDepth>,
    beside_reference: bool,
    world: &World,
) -> Option<Picture> {
    if at.reading().layers.is_empty() {
        return None;
    }
    let beside = beside_reference && at.pit.place != PlaceKind::Reference;
    let reference = at.answer.reference().filter(|reference| beside && *reference != at.index);
    let (drawing, places) = drawn(at, tip.as_ref(), reference, world);
    let touches = places.last().map_or_else(Vec::new, |place| layer_touches(at, place, world));
    Some(Picture { touches, ..picture(at, drawing, tip.as_ref(), reference, world) })
}

/// The same alone, with the boundaries between its layers to be dragged.
pub(super) fn face_to_move(at: &AtPit, world: &World) -> Option<Picture> {
    let picture = wide_face(at, None, false, world)?;
    let place = own_place(at, world)?;
    let grips = boundary_places(at).into_iter().map(|at_mm| Touch {
        left: place.left,
        top: place.y(at_mm) - GRIP,
        width: place.right - place.left,
        height: 2.0 * GRIP,
        label: world.words.boundary(at_mm),
        does: Does::Act(PitAct::Drag { at_mm }.into()),
        drags: true,
    });
    let touches = picture.touches.into_iter().chain(grips).collect();
    Some(Picture { touches, ..picture })
}

/// Where the face of [`face_to_move`] lies on its drawing.
pub(super) fn own_place(at: &AtPit, world: &World) -> Option<FacePlace> {
    drawn(at, None, None, world).1.last().copied()
}

/// Depths of the boundaries between the layers of a pit.
pub(in crate::screen) fn boundary_places(at: &AtPit) -> Vec<u32> {
    at.reading().layers.iter().skip(1).map(|layer| layer.top_mm).collect()
}

fn drawn(
    at: &AtPit,
    tip: Option<&TipDepth>,
    reference: Option<usize>,
    world: &World,
) -> (Drawing, Vec<FacePlace>) {
    let words = world.words;
    let of = |index: usize, title: String, tip: Option<Tip>| {
        Face::of(&at.answer.reading.pits[index], title, tip, |layer| words.layer_label(layer))
    };
    let line = tip.map(|tip| Tip { lo_mm: tip.lo_mm, hi_mm: tip.hi_mm, label: words.tip_label(tip) });
    let beside = reference.map(|reference| of(reference, words.pit(PlaceKind::Reference), None));
    // Alone it needs no title: the screen has one.
    let title = if beside.is_some() { words.pit(at.pit.place) } else { String::new() };
    let faces: Vec<Face> = beside.into_iter().chain([of(at.index, title, line)]).collect();
    let deepest_mm = faces.iter().map(|face| face.dug_to_mm).max().unwrap_or(0);
    let ruler = Ruler::down_to(deepest_mm, words.unit(), words.unit_sign());
    placed_faces(&FacePicture { faces, ruler, text_scale: world.letters })
}

fn picture(
    at: &AtPit,
    drawing: Drawing,
    tip: Option<&TipDepth>,
    reference: Option<usize>,
    world: &World,
) -> Picture {
    let words = world.words;
    let beside = reference.map(|reference| &at.answer.reading.pits[reference]);
    Picture {
        drawing,
        photo: None,
        title: words.pit_numbered(at.number(), at.pit.place),
        description: words.describe(at.pit.place, at.reading(), beside, tip),
        stand: Stand::Wide,
        touches: Vec::new(),
        anywhere: None,
        zooms: false,
    }
}

/// One touch a layer, over the layer and its words.
fn layer_touches(at: &AtPit, place: &FacePlace, world: &World) -> Vec<Touch> {
    let layers = at.reading().layers.iter().enumerate();
    let touch = layers.map(|(index, layer)| Touch {
        left: place.left,
        top: place.y(layer.top_mm),
        width: place.words_right - place.left,
        height: place.y(layer.bottom_mm) - place.y(layer.top_mm),
        label: world.words.describe_layer_short(layer),
        does: Does::Act(Act::Go(to_layer(at.field, at.pit.id, index))),
        drags: false,
    });
    touch.collect()
}

/// The layers as rows, which do what a touch on the face does.
pub(super) fn layer_rows(at: &AtPit, world: &World) -> Vec<Row> {
    let layers = at.reading().layers.iter().enumerate();
    let row = |(index, layer)| Row {
        icon: Some(icon(Icon::Layers)),
        title: world.words.describe_layer_short(layer),
        lines: Vec::new(),
        does: Does::Act(Act::Go(to_layer(at.field, at.pit.id, index))),
    };
    layers.map(row).collect()
}
