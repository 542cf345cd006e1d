//! Before and after: the face of the pit dug before the machine beside the section dug behind it, on one depth scale.

use super::behind::{BehindPicture, Cut, draw_slots, head, right_room};
use super::key;
use super::{KeyLine, KeyMark, MARGIN, draw_ruler, right_of, size_of_text};
use crate::picture::face::{Face, FaceLayer, PHONE_WIDTH};
use crate::picture::ground::{Scale, draw_ground};
use crate::picture::layout::{BASE_LINE, LINE_HEIGHT, wrap};
use crate::picture::shape::{Anchor, Drawing, Point, Role, Shape};
use crate::record::Condition;

/// The words above the two.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PairWords {
    /// Above the pit.
    pub before: String,
    /// Above the section.
    pub after: String,
}

// Lengths in points, our judgement, by eye at phone width.
const GAP: f64 = 26.0;
/// Between the two titles.
const TITLE_GAP: f64 = 6.0;
/// Share of the room that the pit's face takes.
const FACE: f64 = 0.36;
const HEIGHT: (f64, f64) = (190.0, 320.0);
const POINTS_PER_MM: f64 = 0.45;

/// Draws the pit before beside the hole after. Layers of the pit are told in the key; the face's title and the labels
/// of its layers are not drawn beside it.
pub fn pair(before: &Face, after: &BehindPicture, words: &PairWords) -> Drawing {
    let (mut shapes, bottom, lines) = parts(before, after, words);
    let bottom = key::draw(&lines, bottom, size_of_text(after.text_scale), &mut shapes);
    on_paper(shapes, bottom)
}

/// The same with its key apart.
pub fn pair_and_key(before: &Face, after: &BehindPicture, words: &PairWords) -> (Drawing, Vec<KeyLine>) {
    let (shapes, bottom, lines) = parts(before, after, words);
    (on_paper(shapes, bottom), lines)
}

fn on_paper(mut shapes: Vec<Shape>, bottom: f64) -> Drawing {
    let height = bottom + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    Drawing { width: PHONE_WIDTH, height, shapes }
}

/// The two, where they end, and their key.
fn parts(before: &Face, after: &BehindPicture, words: &PairWords) -> (Vec<Shape>, f64, Vec<KeyLine>) {
    let size = size_of_text(after.text_scale);
    let (left, right) = (right_of(&after.ruler, size), PHONE_WIDTH - MARGIN - right_room(after, size));
    let middle = left + (right - left - GAP) * FACE;
    let mut shapes = Vec::new();
    let mut top = MARGIN;
    let ends = [middle + GAP - TITLE_GAP, PHONE_WIDTH - MARGIN];
    let titles = [(&words.before, left, ends[0]), (&words.after, middle + GAP, ends[1])];
    let lines = titles.map(|(text, from, to)| wrap(text, size, true, to - from));
    for ((_, from, _), lines) in titles.iter().zip(&lines) {
        for (index, text) in lines.iter().enumerate() {
            let at = Point::new(*from, top + index as f64 * size * LINE_HEIGHT + size * BASE_LINE);
            let (role, anchor, text) = (Role::Ink, Anchor::Start, text.clone());
            shapes.push(Shape::Text { role, at, anchor, size, strong: true, text });
        }
    }
    top += lines.iter().map(Vec::len).max().unwrap_or(0) as f64 * size * LINE_HEIGHT;

    let depth = f64::from(after.depth_mm().max(before.depth_mm()));
    let tall = (depth * POINTS_PER_MM).clamp(HEIGHT.0, HEIGHT.1);
    let scale = || Scale { surface: top + head(size), points_per_mm: tall / depth };
    draw_ground(before, &scale(), left, middle, &mut shapes);
    let taken = after.readings_mm.len();
    let cut = Cut { picture: after, taken, scale: scale(), left: middle + GAP, right, depth };
    cut.draw(size, &mut shapes);
    draw_ruler(left, (&scale(), depth), &after.ruler, size, &mut shapes);
    let mut bottom = scale().y(depth) + size * LINE_HEIGHT / 2.0 + 6.0;
    bottom = draw_slots(after, middle + GAP, right, bottom, &mut shapes);

    let note = |text: &String| KeyLine { mark: KeyMark::Note, text: text.clone() };
    let mut lines = vec![note(&words.before)];
    lines.extend(before.layers.iter().filter(|layer| layer.bottom_mm > layer.top_mm).map(was));
    lines.push(note(&words.after));
    lines.extend(after.words.key.iter().cloned());
    lines.extend(cut.narrower());
    (shapes, bottom, lines)
}

/// A layer of the pit in the key.
fn was(layer: &FaceLayer) -> KeyLine {
    let mark = match layer.condition {
        Some(Condition::Open) => KeyMark::WasOpen,
        Some(Condition::Firm) => KeyMark::WasFirm,
        Some(Condition::Tight) => KeyMark::WasTight,
        Some(Condition::Shut) => KeyMark::WasShut,
        None => KeyMark::Note,
    };
    let told: Vec<&str> = std::iter::once(&layer.word).chain(&layer.notes).map(String::as_str).collect();
    KeyLine { mark, text: told.join(", ") }
}
