//! Faces laid out: side by side on one ruler or below each other, with their words beside.

use super::face::{Face, FacePicture, PHONE_WIDTH, Ruler};
use super::ground::{Scale, TUFT, draw_ground};
use super::layout::{BASE_LINE, LINE_HEIGHT, spread, text_width, widest_word, wrap};
use super::shape::{Anchor, Drawing, Point, Role, Shape};

// Lengths in points, our judgement, by eye at phone width.
const MARGIN: f64 = 8.0;
const TICK: f64 = 6.0;
const GUTTER: f64 = 16.0;
const CELL_GAP: f64 = 10.0;
const ROW_GAP: f64 = 16.0;
const LABEL_GAP: f64 = 4.0;
/// Scale of depth, points a millimetre, and the bounds of the height a face should have.
struct Stature {
    points_per_mm: f64,
    height: (f64, f64),
}

/// A face that stands for itself.
const TALL: Stature = Stature { points_per_mm: 0.72, height: (180.0, 440.0) };
/// A face below which more is to be read on a phone.
const LOW: Stature = Stature { points_per_mm: 0.42, height: (120.0, 240.0) };
/// Least height of a layer, so that its hatching can be told, and the height of a face up to which it holds.
const THINNEST: f64 = 4.0;
const TALLEST: f64 = 2_000.0;
/// Least width of a face that stands beside another, and of one that stands alone.
const NARROWEST: (f64, f64) = (50.0, 96.0);

/// Least width of a label, and greatest width of a text at the ruler.
const NARROWEST_LABEL: f64 = 40.0;
const WIDEST_MARK: f64 = 90.0;

/// Sizes of type, points.
struct Type {
    title: f64,
    word: f64,
    note: f64,
    mark: f64,
}

impl Type {
    fn scaled(scale: f64) -> Self {
        let scale = if scale.is_nan() { 1.0 } else { scale.clamp(1.0, 2.0) };
        Self { title: 15.0 * scale, word: 14.0 * scale, note: 12.0 * scale, mark: 12.0 * scale }
    }
}

/// One line of a label.
struct Line {
    text: String,
    role: Role,
    size: f64,
    strong: bool,
}

/// A label beside the face, wanted at a depth.
struct Label {
    depth_mm: f64,
    lines: Vec<Line>,
    tip: bool,
}

impl Label {
    /// Its lines, broken to a width.
    fn wrapped(&self, width: f64) -> Vec<Line> {
        let broken = |line: &Line| {
            let parts = wrap(&line.text, line.size, line.strong, width);
            parts.into_iter().map(|text| Line { text, ..*line }).collect::<Vec<_>>()
        };
        self.lines.iter().flat_map(broken).collect()
    }
}

fn height(lines: &[Line]) -> f64 {
    lines.iter().map(|line| line.size * LINE_HEIGHT).sum()
}

/// Where a face lies on its drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FacePlace {
    /// Left edge of the face, points.
    pub left: f64,
    /// Right edge of the face.
    pub right: f64,
    /// Right edge of the words beside it.
    pub words_right: f64,
    /// Where its surface lies.
    pub surface: f64,
    /// Scale of depth.
    pub points_per_mm: f64,
}

impl FacePlace {
    /// Where a depth lies, points from the upper edge of the drawing.
    pub fn y(&self, depth_mm: u32) -> f64 {
        self.surface + f64::from(depth_mm) * self.points_per_mm
    }

    /// The depth at a height of the drawing, to the millimetre; 0 above the surface.
    pub fn depth_mm(&self, y: f64) -> u32 {
        ((y - self.surface) / self.points_per_mm).round().max(0.0) as u32
    }
}

/// Draws faces.
pub fn face(picture: &FacePicture) -> Drawing {
    drawn(picture, &TALL).0
}

/// Draws faces no higher than their words need, where more is to be read below them.
pub fn low_face(picture: &FacePicture) -> Drawing {
    drawn(picture, &LOW).0
}

/// The same as [`low_face`], with where each face lies, in their order.
pub fn placed_faces(picture: &FacePicture) -> (Drawing, Vec<FacePlace>) {
    drawn(picture, &LOW)
}

fn drawn(picture: &FacePicture, stature: &Stature) -> (Drawing, Vec<FacePlace>) {
    let kind = Type::scaled(picture.text_scale);
    let (mut shapes, mut places) = (Vec::new(), Vec::new());
    let mut bottom = MARGIN;
    let beside = picture.faces.len() == 2 && Row::fits(&picture.faces, &picture.ruler, &kind);
    for faces in picture.faces.chunks(if beside { 2 } else { 1 }) {
        let gap = if shapes.is_empty() { 0.0 } else { ROW_GAP };
        let row = Row::new(faces, &picture.ruler, &kind);
        bottom = row.draw(bottom + gap, stature, &mut shapes, &mut places);
    }
    let height = bottom + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    (Drawing { width: PHONE_WIDTH, height, shapes }, places)
}

/// Faces on one ruler, side by side.
struct Row<'a> {
    faces: &'a [Face],
    labels: Vec<Vec<Label>>,
    ruler: &'a Ruler,
    kind: &'a Type,
    /// Right end of the ruler's marks.
    ruler_right: f64,
    cell_width: f64,
    depth_mm: f64,
}

impl<'a> Row<'a> {
    fn new(faces: &'a [Face], ruler: &'a Ruler, kind: &'a Type) -> Self {
        let depth_mm = f64::from(faces.iter().map(Face::depth_mm).fold(50, u32::max));
        let shown = ruler.marks.iter().filter(|mark| f64::from(mark.depth_mm) <= depth_mm);
        let widest = shown
            .map(|mark| mark.text.as_str())
            .chain([ruler.unit.as_str()])
            .map(|text| text_width(text, kind.mark, false))
            .filter(|&width| width <= WIDEST_MARK)
            .fold(0.0, f64::max);
        let ruler_right = MARGIN + widest + 3.0 + TICK;
        let count = faces.len() as f64;
        let cell_width = (PHONE_WIDTH - MARGIN - ruler_right - (count - 1.0) * CELL_GAP) / count;
        let labels = faces.iter().map(|face| labels(face, kind)).collect();
        Self { faces, labels, ruler, kind, ruler_right, cell_width, depth_mm }
    }

    /// Returns whether all words find room with the faces side by side.
    fn fits(faces: &[Face], ruler: &Ruler, kind: &Type) -> bool {
        let row = Row::new(faces, ruler, kind);
        let room = row.cell_width - GUTTER - NARROWEST.0;
        let lines = row.labels.iter().flatten().flat_map(|label| &label.lines);
        let mut words = lines.map(|line| widest_word(&line.text, line.size, line.strong));
        let titles = faces.iter().all(|face| widest_word(&face.title, kind.title, true) <= row.cell_width);
        titles && words.all(|word| word <= room)
    }

    /// Width of the labels, one for all faces of the row: as wide as they like, as far as a face keeps its least
    /// width.
    fn label_width(&self) -> f64 {
        let narrowest = if self.faces.len() > 1 { NARROWEST.0 } else { NARROWEST.1 };
        let lines = self.labels.iter().flatten().flat_map(|label| &label.lines);
        let wanted = lines.map(|line| text_width(&line.text, line.size, line.strong)).fold(0.0, f64::max);
        wanted.min(self.cell_width - GUTTER - narrowest).max(NARROWEST_LABEL)
    }

    /// Height at which the thinnest layer has room for its hatching.
    fn hatchable(&self) -> f64 {
        let layers = self.faces.iter().flat_map(|face| &face.layers);
        let thick =
            layers.filter_map(|layer| layer.bottom_mm.checked_sub(layer.top_mm)).filter(|&thick| thick > 0);
        thick.min().map_or(0.0, |thinnest| THINNEST * self.depth_mm / f64::from(thinnest))
    }

    /// Left edge of a face.
    fn cell_left(&self, cell: usize) -> f64 {
        self.ruler_right + cell as f64 * (self.cell_width + CELL_GAP)
    }

    /// Draws the row from `top` down; gives its bottom.
    fn draw(&self, top: f64, stature: &Stature, shapes: &mut Vec<Shape>, places: &mut Vec<FacePlace>) -> f64 {
        let title = |face: &Face| wrap(&face.title, self.kind.title, true, self.cell_width);
        let titles: Vec<Vec<String>> = self.faces.iter().map(title).collect();
        let title_lines = titles.iter().map(Vec::len).max().unwrap_or(0) as f64;
        let sky = (TUFT + 4.0).max(self.kind.mark * LINE_HEIGHT * 1.5 + 2.0);
        let surface = top + title_lines * self.kind.title * LINE_HEIGHT + sky;

        let label_width = self.label_width();
        let wrapped: Vec<Vec<Vec<Line>>> = self
            .labels
            .iter()
            .map(|labels| labels.iter().map(|label| label.wrapped(label_width)).collect())
            .collect();
        let needed = wrapped
            .iter()
            .map(|labels| labels.iter().map(|lines| height(lines) + LABEL_GAP).sum())
            .fold(0.0, f64::max);
        let tall = (self.depth_mm * stature.points_per_mm).clamp(stature.height.0, stature.height.1);
        let tall = tall.max(self.hatchable().min(TALLEST)).max(needed);
        let scale = Scale { surface, points_per_mm: tall / self.depth_mm };

        for (index, face) in self.faces.iter().enumerate() {
            let left = self.cell_left(index);
            for (line, text) in titles[index].iter().enumerate() {
                let y = top + (line as f64 + BASE_LINE / LINE_HEIGHT) * self.kind.title * LINE_HEIGHT;
                text_at(shapes, Role::Ink, Point::new(left, y), Anchor::Start, self.kind.title, true, text);
            }
            let right = left + self.cell_width - GUTTER - label_width;
            let words_right = left + self.cell_width;
            places.push(FacePlace { left, right, words_right, surface, points_per_mm: scale.points_per_mm });
            draw_ground(face, &scale, left, right, shapes);
            draw_labels(&self.labels[index], &wrapped[index], &scale, tall, right, shapes);
        }
        self.draw_ruler(&scale, tall, shapes);
        // The lowest mark's text hangs half below the ground.
        surface + tall + self.kind.mark * LINE_HEIGHT / 2.0
    }

    fn draw_ruler(&self, scale: &Scale, tall: f64, shapes: &mut Vec<Shape>) {
        let line = self.ruler_right;
        let mut stroke = |from: (f64, f64), to: (f64, f64)| {
            let (from, to) = (Point::new(from.0, from.1), Point::new(to.0, to.1));
            shapes.push(Shape::Line { role: Role::Ruler, from, to });
        };
        stroke((line, scale.surface), (line, scale.surface + tall));
        let shown = || self.ruler.marks.iter().filter(|mark| f64::from(mark.depth_mm) <= self.depth_mm);
        for mark in shown() {
            let y = scale.y(f64::from(mark.depth_mm));
            let length = if mark.text.is_empty() { TICK / 2.0 } else { TICK };
            for cell in 0..self.faces.len() {
                let left = self.cell_left(cell);
                stroke((left - length, y), (left, y));
            }
        }
        let size = self.kind.mark;
        let at = |y: f64| Point::new(line - TICK - 3.0, y);
        let mut free_from = scale.surface - size * LINE_HEIGHT / 2.0;
        let fits = |text: &str| text_width(text, size, false) <= WIDEST_MARK;
        if fits(&self.ruler.unit) {
            let unit_y = free_from - size * (LINE_HEIGHT - BASE_LINE);
            text_at(shapes, Role::FaintInk, at(unit_y), Anchor::End, size, false, &self.ruler.unit);
        }
        for mark in shown().filter(|mark| !mark.text.is_empty() && fits(&mark.text)) {
            let edge = scale.y(f64::from(mark.depth_mm)) - size * LINE_HEIGHT / 2.0;
            if edge >= free_from {
                text_at(shapes, Role::Ink, at(edge + size * BASE_LINE), Anchor::End, size, false, &mark.text);
                free_from = edge + size * LINE_HEIGHT;
            }
        }
    }
}

fn labels(face: &Face, kind: &Type) -> Vec<Label> {
    let line = |text: &str, role, size, strong| Line { text: text.to_owned(), role, size, strong };
    let shown = face.layers.iter().filter(|layer| layer.bottom_mm > layer.top_mm);
    let layers = shown.map(|layer| Label {
        depth_mm: f64::midpoint(layer.top_mm.into(), layer.bottom_mm.into()),
        lines: std::iter::once(line(&layer.word, Role::Ink, kind.word, true))
            .chain(layer.notes.iter().map(|note| line(note, Role::FaintInk, kind.note, false)))
            .collect(),
        tip: false,
    });
    let tip = face.tip.iter().map(|tip| Label {
        depth_mm: f64::midpoint(tip.lo_mm.into(), tip.hi_mm.into()),
        lines: vec![line(&tip.label, Role::Tip, kind.note, true)],
        tip: true,
    });
    let mut labels: Vec<Label> = layers.chain(tip).collect();
    crate::order::sort_by(&mut labels, |one, other| one.depth_mm.total_cmp(&other.depth_mm));
    labels
}

fn draw_labels(
    labels: &[Label],
    wrapped: &[Vec<Line>],
    scale: &Scale,
    tall: f64,
    face_right: f64,
    shapes: &mut Vec<Shape>,
) {
    let blocks: Vec<(f64, f64)> = labels
        .iter()
        .zip(wrapped)
        .map(|(label, lines)| (scale.y(label.depth_mm), height(lines) + LABEL_GAP))
        .collect();
    let tops = spread(&blocks, scale.surface, scale.surface + tall);
    for ((label, lines), top) in labels.iter().zip(wrapped).zip(tops) {
        let Some(first) = lines.first() else { continue };
        let left = face_right + GUTTER;
        let from = scale.y(label.depth_mm);
        let to = top + LABEL_GAP / 2.0 + first.size * LINE_HEIGHT / 2.0;
        let role = if label.tip { Role::Tip } else { Role::Leader };
        let start = if label.tip { 3.0 } else { 0.0 };
        let corners =
            [(face_right + start, from), (face_right + 5.0, from), (left - 5.0, to), (left - 2.0, to)];
        shapes.push(Shape::Polyline { role, points: corners.map(|(x, y)| Point::new(x, y)).to_vec() });
        let mut y = top + LABEL_GAP / 2.0;
        for line in lines {
            let at = Point::new(left, y + line.size * BASE_LINE);
            text_at(shapes, line.role, at, Anchor::Start, line.size, line.strong, &line.text);
            y += line.size * LINE_HEIGHT;
        }
    }
}

fn text_at(
    shapes: &mut Vec<Shape>,
    role: Role,
    at: Point,
    anchor: Anchor,
    size: f64,
    strong: bool,
    text: &str,
) {
    if !text.is_empty() {
        shapes.push(Shape::Text { role, at, anchor, size, strong, text: text.to_owned() });
    }
}
