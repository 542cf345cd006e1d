//! A photo gets a scale by two touches on the tape in it: 0, and a depth that is known. Then the layers lie over it.

use super::bar::blank;
use super::photos::{PhotoAct, line, pit_of};
use super::pit::{AtPit, Says, says};
use super::step::COARSE;
use super::{
    Act, Block, Button, Does, Done, Edit, Headline, Picture, Place, Screen, ScreenKind, Stand, World,
};
use crate::picture::photo::{PhotoSize, ScaleFault, marked, on_photo};
use crate::picture::{Drawing, Face, PHONE_WIDTH, Point, Role, Ruler, Shape, Tip};
use crate::record::{Photo, PhotoMark, RecordId};
use crate::words::FaceText;

/// Depths offered for the second touch; the first is the one that is asked for unless another is chosen. Our judgement.
pub(super) const KNOWN_MM: [u32; 6] = [500, 400, 300, 200, 600, 1_000];
/// Half the cross that shows the first touch, points.
const CROSS: f64 = 12.0;

/// Height of a drawing over a photo of a size, points at a phone's width.
pub(super) fn height(size: PhotoSize) -> f64 {
    PHONE_WIDTH * f64::from(size.height_px) / f64::from(size.width_px.max(1))
}

/// Returns what is drawn over a photo: the layers where they lie in it, and the tip depth where one is advised; `None` without a
/// scale.
pub(super) fn overlay(at: &AtPit, photo: &Photo, world: &World) -> Option<Result<Drawing, ScaleFault>> {
    let size = world.photo_size.filter(|_| !photo.marks.is_empty())?;
    let words = world.words;
    let tip = match says(at) {
        Says::Call(call) => call.tip,
        _ => None,
    };
    let line = tip.map(|tip| Tip { lo_mm: tip.lo_mm, hi_mm: tip.hi_mm, label: words.tip_label(&tip) });
    let face = Face::of(at.reading(), String::new(), line, |layer| words.layer_label(layer));
    let ruler = Ruler::down_to(face.dug_to_mm, words.unit(), words.unit_sign());
    Some(on_photo(size, &photo.marks, &face, &ruler, world.letters))
}

/// The next of the two touches.
pub(in crate::screen) fn show(
    field: RecordId,
    (pit, photo): (RecordId, RecordId),
    (zero, known_mm): (Option<[u32; 2]>, u32),
    world: &World,
) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let (index, pit) = pit_of(notes, pit)?;
    let its = pit.photos.iter().find(|its| its.id == photo)?;
    let size = world.photo_size?;
    let place = Place::PhotoScale { field, pit: pit.id, photo, zero, known_mm };
    let title = words.pit_title(index + 1, pit.place);
    let mut screen = blank(place, ScreenKind::Photos, title, world);
    screen.answer = Some(Headline::new(match zero {
        None => words.of(FaceText::ScaleZero),
        Some(_) => words.touch_depth(known_mm),
    }));
    let shapes = zero.map_or_else(Vec::new, |zero| cross(zero, size));
    screen.picture = Some(Picture {
        drawing: Drawing { width: PHONE_WIDTH, height: height(size), shapes },
        photo: Some(its.sha256.clone()),
        title: words.pit_numbered(index + 1, pit.place),
        description: line(its, world),
        stand: Stand::Wide,
        touches: Vec::new(),
        anywhere: Some(Act::Photo(PhotoAct::Touched { photo })),
        zooms: true,
    });
    if zero.is_some() {
        let depth = |mm: u32| {
            let known_mm = COARSE.nearest(mm, words.unit());
            let place = Place::PhotoScale { field, pit: pit.id, photo, zero, known_mm };
            (known_mm, Button::new(words.depth(known_mm), Does::Act(Act::Go(place))))
        };
        let answers = KNOWN_MM.map(depth).map(|(mm, button)| button.chosen_if(mm == known_mm));
        let text = words.of(FaceText::ScaleDepth);
        screen.blocks.push(Block::Question { text, columns: 3, answers: answers.into() });
    }
    Some(screen)
}

/// Where the first touch was.
fn cross([from_left, from_top]: [u32; 2], size: PhotoSize) -> Vec<Shape> {
    let share = |part: u32| f64::from(part) / f64::from(PhotoMark::WHOLE);
    let (x, y) = (share(from_left) * PHONE_WIDTH, share(from_top) * height(size));
    let line = |role, from: (f64, f64), to: (f64, f64)| Shape::Line {
        role,
        from: Point::new(x + from.0, y + from.1),
        to: Point::new(x + to.0, y + to.1),
    };
    let strokes = |role| [line(role, (-CROSS, 0.0), (CROSS, 0.0)), line(role, (0.0, -CROSS), (0.0, CROSS))];
    [strokes(Role::Casing), strokes(Role::Tip)].concat()
}

/// A finger on the photo: the first shows 0, the second the depth that is known. Marks that give no scale are told, and
/// both are touched anew.
pub(super) fn touched(
    pit: RecordId,
    photo: &Photo,
    place: Place,
    point: Option<Point>,
    world: &World,
) -> Done {
    let (Place::PhotoScale { field, zero, known_mm, .. }, Some(size), Some(point)) =
        (place, world.photo_size, point)
    else {
        return Done::go(place);
    };
    let part = |at: f64, whole: f64| {
        (at / whole * f64::from(PhotoMark::WHOLE)).round().clamp(0.0, f64::from(PhotoMark::WHOLE)) as u32
    };
    let at = [part(point.x, PHONE_WIDTH), part(point.y, height(size))];
    let scale = |zero| Place::PhotoScale { field, pit, photo: photo.id, zero, known_mm };
    let Some(first) = zero else { return Done::go(scale(Some(at))) };
    let mark = |[from_left, from_top]: [u32; 2], depth_mm| PhotoMark { from_left, from_top, depth_mm };
    match marked(photo, size, vec![mark(first, 0), mark(at, known_mm)]) {
        Ok(photo) => {
            let place = Place::Photo { field, pit, photo: photo.id };
            let told = world.words.of(FaceText::ScaleKept);
            Done { told, ..Done::save(Edit::Photo { pit, photo }, place) }
        }
        Err(fault) => Done { told: world.words.scale_fault(fault), ..Done::go(scale(None)) },
    }
}
