//! The section behind a machine: depth to firm ground from one tine line to the next as measured in the hole, and what
//! stayed firm above the depth aimed at.

use super::key;
use super::{KeyLine, MARGIN, draw_ruler, right_of, size_of_text};
use crate::advice::machine::LayerDepths;
use crate::picture::face::{PHONE_WIDTH, Ruler};
use crate::picture::ground::Scale;
use crate::picture::hatch::hatch;
use crate::picture::layout::{Area, BASE_LINE, LINE_HEIGHT, text_width};
use crate::picture::pieces::{dashed, dimension, frame, rectangle};
use crate::picture::shape::{Anchor, Drawing, Point, Role, Shape};
use crate::record::Condition;

/// What is drawn of a hole dug across the run of two neighbouring tines.
#[derive(Debug, Clone, PartialEq)]
pub struct BehindPicture {
    /// Depth to firm ground at equal steps across, the first and the last in a tine line; nothing is drawn of fewer
    /// than two.
    pub readings_mm: Vec<u32>,
    /// From tine line to tine line.
    pub spacing_mm: u32,
    /// Tip depth the machine was set to.
    pub tip_mm: Option<u32>,
    /// Depth down to which the ground was to be loosened; firm ground above it is what stayed.
    pub target_mm: u32,
    /// The layer that was to be broken.
    pub layer: Option<LayerDepths>,
    /// Depth of the slots behind several legs, from left to right; may be empty.
    pub slots_mm: Vec<u32>,
    /// Depth ruler.
    pub ruler: Ruler,
    /// Words.
    pub words: BehindWords,
    /// Size of text against the usual one, 1.0 to 2.0.
    pub text_scale: f64,
}

/// The words of a section behind a machine.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BehindWords {
    /// The readings as numbers, in their order, written above them where there is room.
    pub numbers: Vec<String>,
    /// Said where widths are drawn at another scale than depths.
    pub narrower: String,
    /// The key, in order.
    pub key: Vec<KeyLine>,
}

/// Firm ground that stands up between two tines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ridge {
    /// Height of its top above the floor in the tine lines (their mean).
    pub height_mm: u32,
    /// Where its top is, as a share of the way from the first tine line to the last.
    pub at: f64,
}

/// Less than this is no ridge but the unevenness of a floor, millimetres. Our judgement.
const LOWEST_RIDGE_MM: u32 = 20;
/// Depth drawn below the lowest thing shown.
const BELOW_MM: u32 = 50;

// Lengths in points, our judgement, by eye at phone width.
const HEIGHT: (f64, f64) = (150.0, 300.0);
const TINE: f64 = 12.0;
const READING: f64 = 3.2;
const RING: f64 = 8.0;
/// The strip of slots: its height and the space around it.
const STRIP: (f64, f64) = (44.0, 12.0);

impl BehindPicture {
    /// Deepest thing to be shown, with some ground below.
    pub fn depth_mm(&self) -> u32 {
        let readings = self.readings_mm.iter().chain(&self.slots_mm).copied();
        let others = self.tip_mm.into_iter().chain(self.layer.map(|layer| layer.bottom_mm));
        readings.chain(others).fold(self.target_mm, u32::max).saturating_add(BELOW_MM)
    }

    /// The ridge between the tines, if one stands there.
    pub fn ridge(&self) -> Option<Ridge> {
        let [first, between @ .., last] = &self.readings_mm[..] else { return None };
        let floor_mm = u32::midpoint(*first, *last);
        let (index, top_mm) = between.iter().enumerate().min_by_key(|&(_, mm)| mm)?;
        let height_mm = floor_mm.checked_sub(*top_mm).filter(|&height_mm| height_mm >= LOWEST_RIDGE_MM)?;
        let at = (index + 1) as f64 / (self.readings_mm.len() - 1) as f64;
        Some(Ridge { height_mm, at })
    }

    /// Returns whether any firm ground is left above the depth aimed at.
    pub fn stayed(&self) -> bool {
        self.readings_mm.iter().any(|&reading| reading < self.target_mm)
    }

    /// Returns whether any of the layer is left.
    pub fn layer_left(&self) -> bool {
        self.layer.is_some_and(|layer| self.readings_mm.iter().any(|&reading| reading < layer.bottom_mm))
    }

    /// Returns whether firm ground is left above the depth aimed at that is none of the layer.
    pub fn stayed_beside_layer(&self) -> bool {
        let beside = |reading: u32| {
            self.layer.is_none_or(|layer| reading < layer.top_mm || layer.bottom_mm < self.target_mm)
        };
        self.readings_mm.iter().any(|&reading| reading < self.target_mm && beside(reading))
    }
}

/// Draws the section.
pub fn behind(picture: &BehindPicture) -> Drawing {
    let taken = picture.readings_mm.len();
    let size = size_of_text(picture.text_scale);
    let (left, right) = (right_of(&picture.ruler, size), PHONE_WIDTH - MARGIN - right_room(picture, size));
    let depth = f64::from(picture.depth_mm());
    let across = (right - left) / f64::from(picture.spacing_mm.max(1));
    let points_per_mm = across.clamp(HEIGHT.0 / depth, HEIGHT.1 / depth);
    let scale = Scale { surface: MARGIN + head(size), points_per_mm };
    let mut shapes = Vec::new();
    let cut = Cut { picture, taken, scale, left, right, depth };
    cut.draw(size, &mut shapes);
    draw_ruler(left, (&cut.scale, depth), &picture.ruler, size, &mut shapes);
    let mut bottom = cut.scale.y(depth) + size * LINE_HEIGHT / 2.0 + 6.0;
    bottom = draw_slots(picture, left, right, bottom, &mut shapes);
    let mut lines = picture.words.key.clone();
    lines.extend(cut.narrower());
    let height = key::draw(&lines, bottom, size, &mut shapes) + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    Drawing { width: PHONE_WIDTH, height, shapes }
}

/// A section on which readings are entered: no key, as low as it may be, the reading in hand marked.
#[derive(Debug, Clone, PartialEq)]
pub struct BehindForm {
    /// The section.
    pub drawing: Drawing,
    /// Column of each reading, in order: left, top, width, height, points of the drawing.
    pub columns: Vec<[f64; 4]>,
}

/// Draws the section as a form: `taken` readings are measured, the others stand for ground that is still whole; the one
/// `in_hand`, from 0, is marked at its place.
pub fn behind_form(picture: &BehindPicture, taken: usize, in_hand: Option<usize>) -> BehindForm {
    let size = size_of_text(picture.text_scale);
    let (left, right) = (right_of(&picture.ruler, size), PHONE_WIDTH - MARGIN - right_room(picture, size));
    let depth = f64::from(picture.depth_mm());
    let scale = Scale { surface: MARGIN + head(size), points_per_mm: HEIGHT.0 / depth };
    let cut = Cut { picture, taken, scale, left, right, depth };
    let mut shapes = Vec::new();
    cut.draw(size, &mut shapes);
    draw_ruler(left, (&cut.scale, depth), &picture.ruler, size, &mut shapes);
    let count = picture.readings_mm.len();
    if let Some(index) = in_hand.filter(|&index| index < count && count > 1) {
        cut.in_hand(index, &mut shapes);
    }
    let bottom = cut.scale.y(depth);
    let height = bottom + size * LINE_HEIGHT / 2.0 + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    let step = (right - left) / (count.max(2) - 1) as f64;
    let column = |index: usize| [cut.x(index) - step / 2.0, 0.0, step, height];
    let columns = (0..if count > 1 { count } else { 0 }).map(column).collect();
    BehindForm { drawing: Drawing { width: PHONE_WIDTH, height, shapes }, columns }
}

/// Room above the surface for the numbers, the marks of the tine lines and the unit of the ruler.
pub(super) fn head(size: f64) -> f64 {
    size * LINE_HEIGHT + (TINE + 4.0).max(size * LINE_HEIGHT * 1.5)
}

/// Room right of the section for half of the last number.
pub(super) fn right_room(picture: &BehindPicture, size: f64) -> f64 {
    let half = |text: &String| text_width(text, size, true) / 2.0;
    picture.words.numbers.last().map_or(0.0, half).max(TINE)
}

/// The ground of a hole between two tine lines, at a scale of depths.
pub(super) struct Cut<'a> {
    pub picture: &'a BehindPicture,
    /// Readings that are measured, from the left.
    pub taken: usize,
    pub scale: Scale,
    pub left: f64,
    pub right: f64,
    pub depth: f64,
}

impl Cut<'_> {
    fn x(&self, index: usize) -> f64 {
        let steps = (self.picture.readings_mm.len() - 1) as f64;
        self.left + index as f64 / steps * (self.right - self.left)
    }

    /// Words that say so where widths are not at the scale of depths, by more than a tenth.
    pub fn narrower(&self) -> Option<KeyLine> {
        let across = (self.right - self.left) / f64::from(self.picture.spacing_mm.max(1));
        let off = (across / self.scale.points_per_mm - 1.0).abs() > 0.1;
        let text = self.picture.words.narrower.clone();
        (off && !text.is_empty()).then_some(KeyLine { mark: super::KeyMark::Note, text })
    }

    /// Height on the paper of the floor at a place across.
    fn floor(&self, x: f64) -> f64 {
        let readings = &self.picture.readings_mm;
        let along = (x - self.left) / (self.right - self.left) * (readings.len() - 1) as f64;
        let index = (along.max(0.0) as usize).min(readings.len() - 2);
        let (from, to) = (f64::from(readings[index]), f64::from(readings[index + 1]));
        self.scale.y(from + (to - from) * (along - index as f64).clamp(0.0, 1.0))
    }

    pub fn draw(&self, size: f64, shapes: &mut Vec<Shape>) {
        let Self { picture, scale, left, right, depth, .. } = self;
        let area = Area { left: *left, top: scale.surface, right: *right, bottom: scale.y(*depth) };
        shapes.push(rectangle(Role::SoilPlain, area));
        if picture.readings_mm.len() < 2 {
            shapes.push(frame(area));
            return;
        }
        let band = |top_mm: u32, bottom_mm: u32| (scale.y(top_mm.into()), scale.y(bottom_mm.into()));
        let layer = picture.layer.filter(|layer| layer.top_mm < layer.bottom_mm);
        let layer = layer.map(|layer| band(layer.top_mm, layer.bottom_mm));
        self.left_standing((Condition::Firm, Role::SoilFirm), band(0, picture.target_mm), layer, shapes);
        if let Some(layer) = layer {
            self.left_standing((Condition::Tight, Role::SoilTight), layer, None, shapes);
        }
        self.loosened(area, shapes);
        for y in layer.into_iter().flat_map(|(top, bottom)| [top, bottom]) {
            shapes.push(Shape::Line {
                role: Role::Boundary,
                from: Point::new(*left, y),
                to: Point::new(*right, y),
            });
        }
        if let Some(tip) = picture.tip_mm.map(|mm| scale.y(mm.into())) {
            for role in [Role::Casing, Role::Tip] {
                shapes.push(Shape::Line { role, from: Point::new(*left, tip), to: Point::new(*right, tip) });
            }
        }
        shapes.push(frame(area));
        self.measured(shapes);
        self.heads(size, shapes);
    }

    /// What stands above the lower edge of a band, filled and hatched; not hatched where the layer is.
    fn left_standing(
        &self,
        (condition, tone): (Condition, Role),
        (top, bottom): (f64, f64),
        but: Option<(f64, f64)>,
        shapes: &mut Vec<Shape>,
    ) {
        let columns = ((self.right - self.left) / COLUMN).ceil().max(1.0);
        let xs = (0..=columns as u32)
            .map(|column| self.left + f64::from(column) / columns * (self.right - self.left));
        let readings = (0..self.picture.readings_mm.len()).map(|index| self.x(index));
        let mut xs: Vec<f64> = xs.chain(readings).collect();
        crate::order::sort_numbers(&mut xs);
        let upper = xs.into_iter().map(|x| Point::new(x, self.floor(x).clamp(top, bottom)));
        let mut points: Vec<Point> = upper.collect();
        if points.iter().all(|at| bottom - at.y < 0.5) {
            return;
        }
        points.extend([Point::new(self.right, bottom), Point::new(self.left, bottom)]);
        shapes.push(Shape::Polygon { role: tone, points });
        let mut all = Vec::new();
        hatch(condition, Area { left: self.left, top, right: self.right, bottom }, &mut all);
        let stands = |at: Point| {
            at.y > self.floor(at.x) + INSIDE
                && !but.is_some_and(|(top, bottom)| at.y > top - INSIDE && at.y < bottom + INSIDE)
        };
        for shape in all {
            if let Shape::Line { role, from, to } = shape {
                pieces(from, to, stands).for_each(|(from, to)| shapes.push(Shape::Line { role, from, to }));
            }
        }
    }

    fn loosened(&self, area: Area, shapes: &mut Vec<Shape>) {
        let count = self.picture.readings_mm.len();
        let floor = (0..count).map(|index| Point::new(self.x(index), self.floor(self.x(index))));
        let mut points: Vec<Point> = floor.collect();
        let deepest = points.iter().map(|at| at.y).fold(area.top, f64::max);
        points.extend([Point::new(area.right, area.top), Point::new(area.left, area.top)]);
        shapes.push(Shape::Polygon { role: Role::SoilOpen, points });
        let mut dots = Vec::new();
        hatch(Condition::Open, Area { bottom: deepest.max(area.top + 1.0), ..area }, &mut dots);
        shapes.extend(dots.into_iter().filter(|dot| match dot {
            Shape::Circle { centre, radius, .. } => {
                let around = [centre.x - 3.0 * radius, centre.x, centre.x + 3.0 * radius];
                around
                    .into_iter()
                    .all(|x| centre.y + radius + INSIDE < self.floor(x.clamp(self.left, self.right)))
            }
            _ => false,
        }));
    }

    /// The place of a reading that is asked for: dashes down to the bottom, a ring where it is now.
    fn in_hand(&self, index: usize, shapes: &mut Vec<Shape>) {
        let x = self.x(index);
        let (from, to) = (Point::new(x, self.scale.surface), Point::new(x, self.scale.y(self.depth)));
        shapes.push(Shape::Line { role: Role::Casing, from, to });
        dashed(Role::Measured, &[from, to], 7.0, 5.0, shapes);
        let centre = Point::new(x, if index < self.taken { self.floor(x) } else { self.scale.surface });
        for (role, radius) in [(Role::Paper, RING + 2.0), (Role::Measured, RING), (Role::Paper, RING - 3.0)] {
            shapes.push(Shape::Circle { role, centre, radius });
        }
    }

    fn measured(&self, shapes: &mut Vec<Shape>) {
        let count = self.picture.readings_mm.len();
        let points: Vec<Point> = (0..count.min(self.taken))
            .map(|index| Point::new(self.x(index), self.floor(self.x(index))))
            .collect();
        for role in [Role::Casing, Role::Measured] {
            shapes.push(Shape::Polyline { role, points: points.clone() });
        }
        if let Some(ridge) = self.picture.ridge().filter(|_| self.taken >= count) {
            let readings = &self.picture.readings_mm;
            let x = self.left + ridge.at * (self.right - self.left);
            let bottom = self.scale.y(f64::midpoint(readings[0].into(), readings[count - 1].into()));
            let top = self.floor(x) + READING + 2.0;
            dimension(Role::Outline, x, top.min(bottom), bottom, shapes);
        }
        shapes.extend(points.into_iter().map(reading));
    }

    /// Tine lines, and the readings in numbers above them.
    fn heads(&self, size: f64, shapes: &mut Vec<Shape>) {
        for x in [self.left, self.right] {
            let corners = [(-TINE / 2.0, -TINE), (TINE / 2.0, -TINE), (0.0, -1.0)];
            let points =
                corners.map(|(right, down)| Point::new(x + right, self.scale.surface + down)).to_vec();
            shapes.push(Shape::Polygon { role: Role::Outline, points });
        }
        let base = self.scale.surface - head(size) + size * BASE_LINE;
        let numbers = &self.picture.words.numbers;
        let count = numbers.len().min(self.picture.readings_mm.len()).min(self.taken);
        let half = |number: &str| text_width(number, size, true) / 2.0;
        let last = count.saturating_sub(1);
        let mut free_from = f64::NEG_INFINITY;
        for (index, number) in numbers.iter().take(count).enumerate() {
            let (x, half_width) = (self.x(index), half(number));
            // The last one always has its room.
            let before_last = index == last || x + half_width + 4.0 <= self.x(last) - half(&numbers[last]);
            if x - half_width >= free_from && before_last {
                let (role, anchor, text) = (Role::Ink, Anchor::Middle, number.clone());
                shapes.push(Shape::Text { role, at: Point::new(x, base), anchor, size, strong: true, text });
                free_from = x + half_width + 4.0;
            }
        }
    }
}

/// Width of the columns that slanting edges are cut by, points, and how far hatching stays off the floor.
const COLUMN: f64 = 2.0;
const INSIDE: f64 = 2.6;

/// The parts of a line that lie where they may.
fn pieces(from: Point, to: Point, may: impl Fn(Point) -> bool) -> impl Iterator<Item = (Point, Point)> {
    let steps = (to.x - from.x).hypot(to.y - from.y).ceil().max(1.0) as u32;
    let at = move |step: u32| {
        let share = f64::from(step) / f64::from(steps);
        Point::new(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share)
    };
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for step in (0..=steps).filter(|&step| may(at(step))) {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == step => *last = step,
            _ => runs.push((step, step)),
        }
    }
    runs.into_iter().filter(|(first, last)| last > first).map(move |(first, last)| (at(first), at(last)))
}

/// The mark of one reading.
pub(super) fn reading(centre: Point) -> Shape {
    Shape::Circle { role: Role::Measured, centre, radius: READING }
}

/// The slots behind all legs beside each other; gives the bottom.
pub(super) fn draw_slots(
    picture: &BehindPicture,
    left: f64,
    right: f64,
    top: f64,
    shapes: &mut Vec<Shape>,
) -> f64 {
    let Some(&deepest) = picture.slots_mm.iter().chain(&picture.tip_mm).max() else { return top };
    if picture.slots_mm.is_empty() {
        return top;
    }
    let area = Area { left, top: top + STRIP.1, right, bottom: top + STRIP.1 + STRIP.0 };
    let y = |mm: u32| area.top + f64::from(mm) / f64::from(deepest.max(1)) * (area.height() - 6.0);
    shapes.push(rectangle(Role::SoilPlain, area));
    if let Some(tip) = picture.tip_mm.map(y) {
        for role in [Role::Casing, Role::Tip] {
            shapes.push(Shape::Line { role, from: Point::new(left, tip), to: Point::new(right, tip) });
        }
    }
    shapes.push(frame(area));
    let count = picture.slots_mm.len() as f64;
    for (index, &slot) in picture.slots_mm.iter().enumerate() {
        let x = left + (index as f64 + 0.5) / count * (right - left);
        let (from, to) = (Point::new(x, area.top), Point::new(x, y(slot)));
        for role in [Role::Casing, Role::Measured] {
            shapes.push(Shape::Line { role, from, to });
        }
        shapes.push(reading(to));
    }
    area.bottom + STRIP.1
}
