//! The drawing of pit faces: ruler, layers, what lives in them, tip depth, and words beside.

use super::hatch::{hatch, roles};
use super::layout::{Area, BASE_LINE, LINE_HEIGHT, spread, text_width, widest_word, wrap};
use super::living::{Life, lanes, life};
use super::shape::{Anchor, Drawing, Point, Role, Shape};
use crate::reading::{LayerReading, PitReading};
use crate::record::{ChannelsSeen, Condition, FaceMoisture, Patches, RootsSeen};
use crate::units::LengthUnit;

/// Width of a drawn face, points: a phone held upright.
pub const PHONE_WIDTH: f64 = 360.0;

/// One or more faces to be drawn beside each other: the reference first, then the concern. Words come in ready.
#[derive(Debug, Clone, PartialEq)]
pub struct FacePicture {
    /// The faces. They stand beside each other on one ruler where the words leave room, below each other where
    /// they do not.
    pub faces: Vec<Face>,
    /// The depth ruler.
    pub ruler: Ruler,
    /// Size of text against the usual one: 1.0 to 2.0, values outside are taken as the nearest.
    pub text_scale: f64,
}

/// One face.
#[derive(Debug, Clone, PartialEq)]
pub struct Face {
    /// What stands above it; may be empty.
    pub title: String,
    /// Depth of the hole's bottom.
    pub dug_to_mm: u32,
    /// Layers from the top down.
    pub layers: Vec<FaceLayer>,
    /// Tip depth, where one is advised.
    pub tip: Option<Tip>,
}

/// One layer of a face. `None` = not looked, or not readable: nothing is drawn for it.
#[derive(Debug, Clone, PartialEq)]
pub struct FaceLayer {
    /// Depth of its top.
    pub top_mm: u32,
    /// Depth of its bottom; a layer whose bottom is not below its top is left out.
    pub bottom_mm: u32,
    /// Condition, told by hatching; `None` leaves the layer without.
    pub condition: Option<Condition>,
    /// What the roots do in it.
    pub roots: Option<RootsSeen>,
    /// Worm and old root channels.
    pub channels: Option<ChannelsSeen>,
    /// Rust and grey patches.
    pub patches: Option<Patches>,
    /// The condition's word, set strong.
    pub word: String,
    /// Further short lines under the word, such as the cause and the depths.
    pub notes: Vec<String>,
}

/// Range of tip depth; equal bounds give one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Tip {
    /// Shallowest tip.
    pub lo_mm: u32,
    /// Deepest tip.
    pub hi_mm: u32,
    /// What stands beside it.
    pub label: String,
}

/// The depth ruler.
#[derive(Debug, Clone, PartialEq)]
pub struct Ruler {
    /// The unit, set above the ruler.
    pub unit: String,
    /// Marks. Those deeper than the face are left out; a text for which there is no room is left out, its mark stays.
    pub marks: Vec<Mark>,
}

/// One mark of the ruler.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Depth.
    pub depth_mm: u32,
    /// Text beside it; empty for a short mark without.
    pub text: String,
}

impl Face {
    /// A face from what was read in the pit. `words` gives each layer its word and its notes. An unreadable face
    /// (dry or wet) shows its layers without hatching.
    pub fn of(
        pit: &PitReading,
        title: String,
        tip: Option<Tip>,
        words: impl Fn(&LayerReading) -> (String, Vec<String>),
    ) -> Self {
        let readable = !matches!(pit.face, Some(FaceMoisture::Dry | FaceMoisture::Wet));
        let layers = pit.layers.iter().map(|layer| {
            let (word, notes) = words(layer);
            FaceLayer {
                top_mm: layer.top_mm,
                bottom_mm: layer.bottom_mm,
                condition: readable.then_some(layer.condition),
                roots: layer.signs.roots,
                channels: layer.signs.channels,
                patches: layer.signs.patches,
                word,
                notes,
            }
        });
        Self { title, dug_to_mm: pit.dug_to_mm, layers: layers.collect(), tip }
    }

    fn depth_mm(&self) -> u32 {
        let bottoms = self.layers.iter().map(|layer| layer.bottom_mm);
        let tip = self.tip.as_ref().map(|tip| tip.lo_mm.max(tip.hi_mm).saturating_add(20));
        bottoms.chain(tip).fold(self.dug_to_mm, u32::max)
    }
}

impl Ruler {
    /// Marks down to a depth: every 5 cm with a number every 10, or every 2 inches with a number every 4.
    pub fn down_to(depth_mm: u32, unit: LengthUnit, unit_word: String) -> Self {
        let (step, per_number) = match unit {
            LengthUnit::Centimetres => (5_u32, 2),
            LengthUnit::Inches => (2, 2),
        };
        let marks = (0..).map(|index: u32| (index, index.saturating_mul(step)));
        let marks = marks
            .map(|(index, number)| Mark {
                depth_mm: unit.to_mm(f64::from(number)),
                text: if index % per_number == 0 { number.to_string() } else { String::new() },
            })
            .take_while(|mark| mark.depth_mm <= depth_mm.min(DEEPEST_MARK_MM));
        Self { unit: unit_word, marks: marks.collect() }
    }
}

/// No pit is deeper; keeps the number of marks small whatever comes in.
const DEEPEST_MARK_MM: u32 = 5_000;

// Lengths in points, our judgement, by eye at phone width.
const MARGIN: f64 = 8.0;
const TICK: f64 = 6.0;
const GUTTER: f64 = 16.0;
const CELL_GAP: f64 = 10.0;
const ROW_GAP: f64 = 16.0;
const LABEL_GAP: f64 = 4.0;
/// Height of the tufts on the surface.
const TUFT: f64 = 9.0;
/// Scale of depth, bounded by the height a face should have.
const POINTS_PER_MM: f64 = 0.72;
const FACE_HEIGHT: (f64, f64) = (180.0, 440.0);
/// Least width of a face that stands beside another, and of one that stands alone.
const NARROWEST: (f64, f64) = (62.0, 96.0);

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

/// Draws faces.
pub fn face(picture: &FacePicture) -> Drawing {
    let kind = Type::scaled(picture.text_scale);
    let mut shapes = Vec::new();
    let mut bottom = MARGIN;
    let beside = picture.faces.len() == 2 && Row::fits(&picture.faces, &picture.ruler, &kind);
    for faces in picture.faces.chunks(if beside { 2 } else { 1 }) {
        let gap = if shapes.is_empty() { 0.0 } else { ROW_GAP };
        bottom = Row::new(faces, &picture.ruler, &kind).draw(bottom + gap, &mut shapes);
    }
    let height = bottom + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    Drawing { width: PHONE_WIDTH, height, shapes }
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
            .fold(0.0, f64::max);
        let ruler_right = MARGIN + widest + 3.0 + TICK;
        let count = faces.len() as f64;
        let cell_width = (PHONE_WIDTH - MARGIN - ruler_right - (count - 1.0) * CELL_GAP) / count;
        let labels = faces.iter().map(|face| labels(face, kind)).collect();
        Self { faces, labels, ruler, kind, ruler_right, cell_width, depth_mm }
    }

    /// Whether all words find room with the faces side by side.
    fn fits(faces: &[Face], ruler: &Ruler, kind: &Type) -> bool {
        let row = Row::new(faces, ruler, kind);
        let room = row.cell_width - GUTTER - NARROWEST.0;
        let lines = row.labels.iter().flatten().flat_map(|label| &label.lines);
        let mut words = lines.map(|line| widest_word(&line.text, line.size, line.strong));
        let titles = faces.iter().all(|face| widest_word(&face.title, kind.title, true) <= row.cell_width);
        titles && words.all(|word| word <= room)
    }

    /// Width of the labels of a face: as wide as they like, as far as the face keeps its least width.
    fn label_width(&self, labels: &[Label]) -> f64 {
        let narrowest = if self.faces.len() > 1 { NARROWEST.0 } else { NARROWEST.1 };
        let lines = labels.iter().flat_map(|label| &label.lines);
        let wanted = lines.map(|line| text_width(&line.text, line.size, line.strong)).fold(0.0, f64::max);
        wanted.clamp(40.0, self.cell_width - GUTTER - narrowest)
    }

    /// Draws the row from `top` down; gives its bottom.
    fn draw(&self, top: f64, shapes: &mut Vec<Shape>) -> f64 {
        let title = |face: &Face| wrap(&face.title, self.kind.title, true, self.cell_width);
        let titles: Vec<Vec<String>> = self.faces.iter().map(title).collect();
        let title_lines = titles.iter().map(Vec::len).max().unwrap_or(0) as f64;
        let sky = (TUFT + 4.0).max(self.kind.mark * LINE_HEIGHT * 1.5 + 2.0);
        let surface = top + title_lines * self.kind.title * LINE_HEIGHT + sky;

        let widths: Vec<f64> = self.labels.iter().map(|labels| self.label_width(labels)).collect();
        let wrapped: Vec<Vec<Vec<Line>>> = self
            .labels
            .iter()
            .zip(&widths)
            .map(|(labels, &width)| labels.iter().map(|label| label.wrapped(width)).collect())
            .collect();
        let needed = wrapped
            .iter()
            .map(|labels| labels.iter().map(|lines| height(lines) + LABEL_GAP).sum())
            .fold(0.0, f64::max);
        let tall = (self.depth_mm * POINTS_PER_MM).clamp(FACE_HEIGHT.0, FACE_HEIGHT.1).max(needed);
        let scale = Scale { surface, points_per_mm: tall / self.depth_mm };

        self.draw_ruler(&scale, tall, shapes);
        for (index, face) in self.faces.iter().enumerate() {
            let left = self.ruler_right + index as f64 * (self.cell_width + CELL_GAP);
            for (line, text) in titles[index].iter().enumerate() {
                let y = top + (line as f64 + BASE_LINE / LINE_HEIGHT) * self.kind.title * LINE_HEIGHT;
                text_at(shapes, Role::Ink, Point::new(left, y), Anchor::Start, self.kind.title, true, text);
            }
            let right = left + self.cell_width - GUTTER - widths[index];
            draw_ground(face, &scale, left, right, shapes);
            draw_labels(&self.labels[index], &wrapped[index], &scale, tall, right, shapes);
        }
        // The lowest mark's text hangs half below the ground.
        surface + tall + self.kind.mark * LINE_HEIGHT / 2.0
    }

    fn draw_ruler(&self, scale: &Scale, tall: f64, shapes: &mut Vec<Shape>) {
        let line = self.ruler_right - 1.0;
        let mut ruler_line =
            |from: Point, to: Point| shapes.push(Shape::Line { role: Role::Ruler, from, to });
        ruler_line(Point::new(line, scale.surface), Point::new(line, scale.surface + tall));
        let shown = || self.ruler.marks.iter().filter(|mark| f64::from(mark.depth_mm) <= self.depth_mm);
        for mark in shown() {
            let y = scale.y(f64::from(mark.depth_mm));
            let length = if mark.text.is_empty() { TICK / 2.0 } else { TICK };
            ruler_line(Point::new(line - length, y), Point::new(line, y));
        }
        let size = self.kind.mark;
        let at = |y: f64| Point::new(line - TICK - 3.0, y);
        let mut free_from = scale.surface - size * LINE_HEIGHT / 2.0;
        let unit_y = free_from - size * (LINE_HEIGHT - BASE_LINE);
        text_at(shapes, Role::FaintInk, at(unit_y), Anchor::End, size, false, &self.ruler.unit);
        for mark in shown().filter(|mark| !mark.text.is_empty()) {
            let edge = scale.y(f64::from(mark.depth_mm)) - size * LINE_HEIGHT / 2.0;
            if edge >= free_from {
                text_at(shapes, Role::Ink, at(edge + size * BASE_LINE), Anchor::End, size, false, &mark.text);
                free_from = edge + size * LINE_HEIGHT;
            }
        }
    }
}

/// Where a depth lies on the drawing.
struct Scale {
    surface: f64,
    points_per_mm: f64,
}

impl Scale {
    fn y(&self, depth_mm: f64) -> f64 {
        self.surface + depth_mm * self.points_per_mm
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
    labels.sort_by(|one, other| one.depth_mm.total_cmp(&other.depth_mm));
    labels
}

/// The soil of a face, its life and its tip depth.
fn draw_ground(face: &Face, scale: &Scale, left: f64, right: f64, shapes: &mut Vec<Shape>) {
    let ground = Area { left, top: scale.surface, right, bottom: scale.y(face.depth_mm().into()) };
    let layers: Vec<(&FaceLayer, Area)> = face
        .layers
        .iter()
        .filter(|layer| layer.bottom_mm > layer.top_mm)
        .map(|layer| {
            let (top, bottom) = (scale.y(layer.top_mm.into()), scale.y(layer.bottom_mm.into()));
            (layer, Area { left, top, right, bottom })
        })
        .collect();
    for &(layer, area) in &layers {
        let tone = layer.condition.map_or(Role::SoilPlain, |condition| roles(condition).0);
        let (width, height) = (area.width(), area.height());
        shapes.push(Shape::Rectangle { role: tone, left, top: area.top, width, height });
        if let Some(condition) = layer.condition {
            hatch(condition, area, shapes);
        }
    }
    for &(_, area) in layers.iter().skip(1) {
        let (from, to) = (Point::new(left, area.top), Point::new(right, area.top));
        shapes.push(Shape::Line { role: Role::Boundary, from, to });
    }
    tufts(ground, shapes);
    let mut above = Life::default();
    let mut room_above = TUFT;
    for &(layer, area) in &layers {
        let here = Life { roots: layer.roots, channels: layer.channels, patches: layer.patches };
        life(here, above, area, room_above, shapes);
        above = here;
        room_above = area.height();
    }
    let corners = [(left, ground.top), (right, ground.top), (right, ground.bottom), (left, ground.bottom)];
    let mut edge: Vec<Point> = corners.iter().map(|&(x, y)| Point::new(x, y)).collect();
    edge.push(edge[0]);
    shapes.push(Shape::Polyline { role: Role::Outline, points: edge });
    if let Some(tip) = &face.tip {
        draw_tip(tip, scale, left, right, shapes);
    }
}

/// What grows on the surface, over every root.
fn tufts(ground: Area, shapes: &mut Vec<Shape>) {
    for x in lanes(ground) {
        for (right, up) in [(-4.0, 0.7), (0.0, 1.0), (3.5, 0.75)] {
            let (from, to) = (Point::new(x, ground.top), Point::new(x + right, ground.top - up * TUFT));
            shapes.push(Shape::Line { role: Role::FaintInk, from, to });
        }
    }
}

fn draw_tip(tip: &Tip, scale: &Scale, left: f64, right: f64, shapes: &mut Vec<Shape>) {
    let (lo, hi) = (scale.y(tip.lo_mm.min(tip.hi_mm).into()), scale.y(tip.lo_mm.max(tip.hi_mm).into()));
    let depths = if tip.lo_mm == tip.hi_mm { vec![lo] } else { vec![lo, hi] };
    for role in [Role::Casing, Role::Tip] {
        for &y in &depths {
            shapes.push(Shape::Line { role, from: Point::new(left, y), to: Point::new(right + 3.0, y) });
        }
    }
    let (from, to) = (Point::new(right + 3.0, lo), Point::new(right + 3.0, hi));
    shapes.push(Shape::Line { role: Role::Tip, from, to });
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
