//! A face as a strip beside what is asked of it: it grows downwards, and what is in hand is lit. No words.

use super::face::{FaceLayer, Ruler};
use super::hatch::{hatch, roles};
use super::layout::{Area, BASE_LINE, LINE_HEIGHT, text_width};
use super::pieces::{frame, rectangle};
use super::row::FacePlace;
use super::shape::{Anchor, Drawing, Point, Role, Shape};

// Lengths in points, our judgement, by eye at the side of a phone.
const HEIGHT: f64 = 400.0;
const FACE_WIDTH: f64 = 58.0;
const MARGIN: f64 = 6.0;
const TICK: f64 = 5.0;
const MARK: f64 = 15.0;
/// How far the light stands out beside the face.
const LIGHT: f64 = 4.0;
/// A strip shows this depth at least, so that a step is no wider than a thumb.
const LEAST_DEPTH_MM: u32 = 400;

/// What is shown of a face beside a question.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    /// Layers as read so far, from the top down; their words are left out.
    pub layers: Vec<FaceLayer>,
    /// Depth of the hole as far as it is wanted: what is not looked at yet stays empty down to here.
    pub to_mm: u32,
    /// Depths of what is in hand, if anything is.
    pub lit: Option<(u32, u32)>,
    /// The depth ruler.
    pub ruler: Ruler,
    /// Size of its numbers against the usual one: 1.0 to 2.0, values outside are taken as the nearest.
    pub text_scale: f64,
}

/// Draws a strip; where the face lies on it goes along.
pub fn strip(strip: &Strip) -> (Drawing, FacePlace) {
    let scale = if strip.text_scale.is_nan() { 1.0 } else { strip.text_scale.clamp(1.0, 2.0) };
    let size = MARK * scale;
    let lowest_mm = strip.layers.iter().map(|layer| layer.bottom_mm);
    let lit_mm = strip.lit.iter().map(|(_, bottom_mm)| *bottom_mm);
    let depth_mm = lowest_mm.chain(lit_mm).fold(strip.to_mm.max(LEAST_DEPTH_MM), u32::max);
    let shown = || strip.ruler.marks.iter().filter(|mark| mark.depth_mm <= depth_mm);
    let widest = shown().map(|mark| text_width(&mark.text, size, false)).fold(0.0, f64::max);
    let left = MARGIN + widest + 3.0 + TICK + LIGHT;
    let half_line = size * LINE_HEIGHT / 2.0;
    let surface = half_line.max(MARGIN);
    let place = FacePlace {
        left,
        right: left + FACE_WIDTH,
        words_right: left + FACE_WIDTH,
        surface,
        points_per_mm: (HEIGHT - surface - half_line.max(MARGIN)) / f64::from(depth_mm),
    };
    let width = place.right + LIGHT + MARGIN;
    let mut shapes = vec![Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width, height: HEIGHT }];
    let area = |top_mm: u32, bottom_mm: u32| Area {
        left,
        top: place.y(top_mm),
        right: place.right,
        bottom: place.y(bottom_mm),
    };
    for layer in strip.layers.iter().filter(|layer| layer.bottom_mm > layer.top_mm) {
        let area = area(layer.top_mm, layer.bottom_mm);
        shapes.push(rectangle(layer.condition.map_or(Role::SoilPlain, |condition| roles(condition).0), area));
        if let Some(condition) = layer.condition {
            hatch(condition, area, &mut shapes);
        }
        let (from, to) = (Point::new(left, area.bottom), Point::new(place.right, area.bottom));
        shapes.push(Shape::Line { role: Role::Boundary, from, to });
    }
    shapes.push(frame(area(0, depth_mm)));
    marks(strip, &place, size, depth_mm, &mut shapes);
    if let Some((top_mm, bottom_mm)) = strip.lit {
        light(area(top_mm, bottom_mm), &mut shapes);
    }
    (Drawing { width, height: HEIGHT, shapes }, place)
}

/// What is in hand: a thick edge that stands out on both sides, to be seen on any hatching and without any.
fn light(area: Area, shapes: &mut Vec<Shape>) {
    let wide = Area { left: area.left - LIGHT, right: area.right + LIGHT, ..area };
    for role in [Role::Casing, Role::Tip] {
        let Shape::Polyline { points, .. } = frame(wide) else { continue };
        shapes.push(Shape::Polyline { role, points });
    }
}

fn marks(strip: &Strip, place: &FacePlace, size: f64, depth_mm: u32, shapes: &mut Vec<Shape>) {
    let mut free_from = f64::NEG_INFINITY;
    for mark in strip.ruler.marks.iter().filter(|mark| mark.depth_mm <= depth_mm) {
        let y = place.y(mark.depth_mm);
        let length = if mark.text.is_empty() { TICK / 2.0 } else { TICK };
        let end = place.left - LIGHT;
        let (from, to) = (Point::new(end - length, y), Point::new(end, y));
        shapes.push(Shape::Line { role: Role::Ruler, from, to });
        let top = y - size * LINE_HEIGHT / 2.0;
        if !mark.text.is_empty() && top >= free_from {
            let at = Point::new(end - TICK - 3.0, top + size * BASE_LINE);
            let text = mark.text.clone();
            shapes.push(Shape::Text { role: Role::Ink, at, anchor: Anchor::End, size, strong: false, text });
            free_from = top + size * LINE_HEIGHT;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Condition;
    use crate::units::LengthUnit;

    fn walked(to_mm: u32, text_scale: f64) -> Strip {
        let layer = FaceLayer {
            top_mm: 0,
            bottom_mm: 250,
            condition: Some(Condition::Shut),
            roots: None,
            channels: None,
            patches: None,
            word: "unused".into(),
            notes: Vec::new(),
        };
        let ruler = Ruler::down_to(2_000, LengthUnit::Centimetres, String::new());
        Strip { layers: vec![layer], to_mm, lit: Some((250, 300)), ruler, text_scale }
    }

    #[test]
    fn a_touch_finds_the_depth_that_is_drawn_there() {
        for (to_mm, text_scale) in [(0, 1.0), (500, 1.3), (2_000, 2.0)] {
            let (_, place) = strip(&walked(to_mm, text_scale));
            for depth_mm in [0, 250, 300, 1_999] {
                assert_eq!(place.depth_mm(place.y(depth_mm)), depth_mm);
            }
            assert_eq!(place.depth_mm(0.0), 0, "above the surface is the surface");
        }
    }

    #[test]
    fn it_has_no_words_but_numbers_and_all_of_it_lies_inside() {
        for text_scale in [1.0, 2.0, f64::NAN] {
            let (drawing, place) = strip(&walked(500, text_scale));
            assert!(place.right < drawing.width && place.y(500) <= drawing.height);
            for shape in &drawing.shapes {
                if let Shape::Text { text, .. } = shape {
                    assert!(text.parse::<u32>().is_ok(), "{text}");
                }
            }
        }
    }

    #[test]
    fn what_is_in_hand_is_the_uppermost_thing_drawn() {
        let last = strip(&walked(500, 1.0)).0.shapes.pop().unwrap();
        assert_eq!(last.role(), Role::Tip);
    }
}
