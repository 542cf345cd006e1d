//! What is drawn over a photo: a line at each boundary, the layers' names, depth ticks along the tape, the tip depth.
//! Every line has a light band under it and every word a plate, to be seen on any soil.

use super::{PhotoSize, Scale, ScaleFault};
use crate::picture::layout::{BASE_LINE, LINE_HEIGHT, spread, text_width};
use crate::picture::shape::{Anchor, Drawing, Point, Role, Shape};
use crate::picture::svg::with_photo;
use crate::picture::{Face, Ruler, Spoken, Theme};
use crate::record::PhotoMark;

/// Sizes in points, our judgement: type of a layer's word and of the rest, the plate round a word, half a tick with and
/// without a number, the distance from an edge.
const WORD: f64 = 15.0;
const SMALL: f64 = 12.0;
const PLATE: f64 = 3.0;
const TICK: f64 = 7.0;
const SHORT_TICK: f64 = 4.0;
const MARGIN: f64 = 6.0;

/// A line of a label, its size and cut.
type Line<'a> = (&'a str, f64, bool, Role);

/// A label that wants to stand at a height.
struct Label<'a> {
    wanted: f64,
    lines: Vec<Line<'a>>,
}

/// The drawing over a photo with these marks: the layers of a face where they lie in the picture, with their names, the tip
/// depth where one is given, and the ruler's marks along the first plumb line. In the coordinates of the picture, as wide as a
/// phone ([`crate::picture::PHONE_WIDTH`]) and as high as the picture then is: to be scaled with it. `text_scale` is the size of
/// text against the usual one, 1.0 to 2.0.
///
/// # Errors
/// What is wrong with the marks.
pub fn on_photo(
    size: PhotoSize,
    marks: &[PhotoMark],
    face: &Face,
    ruler: &Ruler,
    text_scale: f64,
) -> Result<Drawing, ScaleFault> {
    let scale = Scale::of(size, marks)?;
    let [width, height] = scale.drawn();
    let text = text_scale.clamp(1.0, 2.0);
    let mut shapes = Vec::new();
    let layers = face.layers.iter().filter(|layer| layer.bottom_mm > layer.top_mm);
    let edges = layers.clone().flat_map(|layer| [layer.top_mm, layer.bottom_mm]);
    let mut edges: Vec<u32> = edges.chain([0]).collect();
    edges.sort_unstable();
    edges.dedup();
    for edge in edges {
        banded(Role::Boundary, scale.line_of(f64::from(edge)), &mut shapes);
    }
    if let Some(tip) = &face.tip {
        for depth_mm in if tip.lo_mm == tip.hi_mm { vec![tip.lo_mm] } else { vec![tip.lo_mm, tip.hi_mm] } {
            banded(Role::Tip, scale.line_of(f64::from(depth_mm)), &mut shapes);
        }
    }
    ticks(&scale, ruler, text, &mut shapes);
    // Names stand on the side where the tape does not.
    let tape = marks.first().map_or(0, |mark| mark.from_left) * 2 >= PhotoMark::WHOLE;
    let middle = |upper_mm: u32, lower_mm: u32| {
        let depth = f64::from(upper_mm).midpoint(f64::from(lower_mm));
        scale.line_of(depth).map(|[left, right]| if tape { left.y } else { right.y })
    };
    let named = layers.filter_map(|layer| {
        let word: Line = (&layer.word, WORD * text, true, Role::Ink);
        let notes = layer.notes.iter().map(|note| (note.as_str(), SMALL * text, false, Role::Ink));
        let lines = [word].into_iter().chain(notes).filter(|(text, ..)| !text.is_empty()).collect();
        Some(Label { wanted: middle(layer.top_mm, layer.bottom_mm)?, lines })
    });
    let tip = face.tip.as_ref().filter(|tip| !tip.label.is_empty()).and_then(|tip| {
        let lines = vec![(tip.label.as_str(), SMALL * text, true, Role::Tip)];
        Some(Label { wanted: middle(tip.lo_mm, tip.hi_mm)?, lines })
    });
    let labels: Vec<Label> = named.chain(tip).filter(|label| !label.lines.is_empty()).collect();
    write(labels, if tape { Anchor::Start } else { Anchor::End }, [width, height], &mut shapes);
    Ok(Drawing { width, height, shapes })
}

/// The photo with a drawing over it, as one SVG element that fetches nothing. `media_type` is that of the bytes.
pub fn photo_svg(drawing: &Drawing, photo: &[u8], media_type: &str, theme: Theme, spoken: &Spoken) -> String {
    with_photo(drawing, photo, media_type, theme, spoken)
}

/// A line on its light band.
fn banded(role: Role, line: Option<[Point; 2]>, shapes: &mut Vec<Shape>) {
    let Some([from, to]) = line else { return };
    shapes.extend([Role::Casing, role].map(|role| Shape::Line { role, from, to }));
}

/// The ruler's marks along the tape, a number beside those that have one and room for it.
fn ticks(scale: &Scale, ruler: &Ruler, text: f64, shapes: &mut Vec<Shape>) {
    let size = SMALL * text;
    let mut free: Option<Point> = None;
    for mark in &ruler.marks {
        let depth = f64::from(mark.depth_mm);
        let (Some(at), Some([left, right])) = (scale.on_tape(depth), scale.line_of(depth)) else { continue };
        let length = (right.x - left.x).hypot(right.y - left.y);
        let along = |half: f64| {
            let (x, y) = ((right.x - left.x) / length * half, (right.y - left.y) / length * half);
            [Point::new(at.x - x, at.y - y), Point::new(at.x + x, at.y + y)]
        };
        banded(Role::Ruler, Some(along(if mark.text.is_empty() { SHORT_TICK } else { TICK })), shapes);
        let room = free.is_none_or(|last| (last.x - at.x).hypot(last.y - at.y) >= size * LINE_HEIGHT + PLATE);
        if mark.text.is_empty() || !room {
            continue;
        }
        free = Some(at);
        let [_, end] = along(TICK + PLATE * 2.0);
        let wide = text_width(&mark.text, size, false);
        let upper = end.y - size * LINE_HEIGHT / 2.0;
        let lines = [(mark.text.as_str(), size, false, Role::Ink)];
        // At the right edge of the picture the number goes to the left of its tick.
        let left = if end.x + wide + PLATE > scale.drawn()[0] {
            along(TICK + PLATE * 2.0)[0].x - wide
        } else {
            end.x
        };
        plate(&lines, left, upper, wide, Anchor::Start, shapes);
    }
}

/// The labels along a side of the picture, none over another.
fn write(mut labels: Vec<Label>, side: Anchor, [width, height]: [f64; 2], shapes: &mut Vec<Shape>) {
    labels.sort_by(|one, other| one.wanted.total_cmp(&other.wanted));
    let tall =
        |label: &Label| label.lines.iter().map(|(_, size, ..)| size * LINE_HEIGHT).sum::<f64>() + PLATE * 2.0;
    let blocks: Vec<(f64, f64)> = labels.iter().map(|label| (label.wanted, tall(label))).collect();
    for (label, top) in labels.iter().zip(spread(&blocks, MARGIN, height - MARGIN)) {
        let widths = label.lines.iter().map(|(text, size, strong, _)| text_width(text, *size, *strong));
        let wide = widths.fold(0.0, f64::max);
        let left = if side == Anchor::Start { MARGIN + PLATE } else { width - MARGIN - PLATE - wide };
        plate(&label.lines, left, top + PLATE, wide, side, shapes);
    }
}

/// Lines of text on a light plate, the upper left corner of the text given.
fn plate(lines: &[Line], left: f64, top: f64, wide: f64, anchor: Anchor, shapes: &mut Vec<Shape>) {
    let tall: f64 = lines.iter().map(|(_, size, ..)| size * LINE_HEIGHT).sum();
    let (width, height) = (wide + PLATE * 2.0, tall + PLATE);
    shapes.push(Shape::Rectangle {
        role: Role::Casing,
        left: left - PLATE,
        top: top - PLATE / 2.0,
        width,
        height,
    });
    let mut upper = top;
    for (text, size, strong, role) in lines {
        let at = Point::new(if anchor == Anchor::End { left + wide } else { left }, upper + size * BASE_LINE);
        let text = (*text).to_owned();
        shapes.push(Shape::Text { role: *role, at, anchor, size: *size, strong: *strong, text });
        upper += size * LINE_HEIGHT;
    }
}
