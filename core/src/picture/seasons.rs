//! A zone over the years: what was seen and done in each, beside each other on one depth scale.

use super::face::{FaceLayer, PHONE_WIDTH, Ruler};
use super::ground::Scale;
use super::hatch::{hatch, roles, small_hatch};
use super::layout::{Area, BASE_LINE, LINE_HEIGHT, widest_word, wrap};
use super::machine::{draw_ruler, right_of};
use super::pieces::{dashed, frame, rectangle};
use super::shape::{Anchor, Drawing, Point, Role, Shape};
use crate::record::Condition;

/// What is drawn of a zone. Words come in ready.
#[derive(Debug, Clone, PartialEq)]
pub struct SeasonsPicture {
    /// The years, the oldest first.
    pub years: Vec<YearColumn>,
    /// The depth ruler.
    pub ruler: Ruler,
    /// Depth of the lowest thing shown.
    pub depth_mm: u32,
    /// Size of text against the usual one: 1.0 to 2.0.
    pub text_scale: f64,
}

/// A year, with what was seen and done in it from left to right.
#[derive(Debug, Clone, PartialEq)]
pub struct YearColumn {
    /// The year.
    pub year: String,
    /// The call, below the year; may be empty.
    pub call: String,
    /// One or more.
    pub seen: Vec<Seen>,
}

/// Something seen or done, with its words below it.
#[derive(Debug, Clone, PartialEq)]
pub struct Seen {
    /// What it is.
    pub ground: SeenGround,
    /// Words below it.
    pub label: String,
}

/// How it is drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum SeenGround {
    /// The face of a pit: layers in their hatching.
    Face(Vec<FaceLayer>),
    /// Loosened by a machine down to its tips; without a depth a leg in dashes.
    Loosened(Option<u32>),
    /// Found loose down to a depth behind the machine; `None` = not measured.
    Loose(Option<u32>),
}

// Lengths in points, our judgement, by eye on paper three beside each other.
const MARGIN: f64 = 8.0;
const GAP: f64 = 8.0;
const YEAR_GAP: f64 = 14.0;
const ROW_GAP: f64 = 18.0;
const TALL: f64 = 150.0;
/// Columns beside each other; further years stand below. Fewer where a word finds no room.
const IN_A_ROW: usize = 3;
/// Half the width of a foot.
const FOOT: f64 = 9.0;

impl SeasonsPicture {
    fn letters(&self) -> f64 {
        if self.text_scale.is_nan() { 1.0 } else { self.text_scale.clamp(1.0, 2.0) }
    }

    /// Size of all letters but those of the year.
    fn note(&self) -> f64 {
        12.0 * self.letters()
    }

    /// Width of a column among so many, with the widest gaps there can be.
    fn width(&self, count: usize) -> f64 {
        let gaps = YEAR_GAP * (count - 1) as f64;
        (PHONE_WIDTH - MARGIN - right_of(&self.ruler, self.note()) - gaps) / count as f64
    }
}

/// Draws the years of a zone.
pub fn seasons(picture: &SeasonsPicture) -> Drawing {
    let labels = || picture.years.iter().flat_map(|year| &year.seen).map(|seen| &seen.label);
    let widest = labels().map(|label| widest_word(label, picture.note(), false)).fold(0.0, f64::max);
    let most = (2..=IN_A_ROW).rev().find(|&count| picture.width(count) >= widest).unwrap_or(2);
    let mut rows: Vec<&[YearColumn]> = Vec::new();
    let mut rest = &picture.years[..];
    while !rest.is_empty() {
        let mut count = 0;
        let fit = rest.iter().take_while(|year| {
            count += year.seen.len();
            count <= most
        });
        let (row, after) = rest.split_at(fit.count().max(1));
        rows.push(row);
        rest = after;
    }
    let mut shapes = Vec::new();
    let mut bottom = MARGIN;
    for (index, row) in rows.iter().enumerate() {
        let top = if index > 0 { bottom + ROW_GAP } else { bottom };
        bottom = draw_row(picture, row, top, &mut shapes);
    }
    let height = bottom + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    Drawing { width: PHONE_WIDTH, height, shapes }
}

/// Draws years beside each other from `top` down; gives the bottom.
fn draw_row(picture: &SeasonsPicture, years: &[YearColumn], top: f64, shapes: &mut Vec<Shape>) -> f64 {
    let (head, note) = (14.0 * picture.letters(), picture.note());
    let left = right_of(&picture.ruler, note);
    let count: usize = years.iter().map(|year| year.seen.len()).sum();
    // A year alone is no wider than one among others.
    let width = picture.width(count.max(2));

    // Where each year begins and how wide it is.
    let mut places = Vec::new();
    let mut x = left;
    for year in years {
        let across = year.seen.len() as f64 * (width + GAP) - GAP;
        places.push((x, across));
        x += across + YEAR_GAP;
    }
    let heads: Vec<(Vec<String>, Vec<String>)> = years
        .iter()
        .zip(&places)
        .map(|(year, &(_, across))| {
            (wrap(&year.year, head, true, across), wrap(&year.call, note, false, across))
        })
        .collect();
    let tall = |(year, call): &(Vec<String>, Vec<String>)| {
        (year.len() as f64 * head + call.len() as f64 * note) * LINE_HEIGHT
    };
    let line = top + heads.iter().map(tall).fold(0.0, f64::max) + 2.0;
    let surface = line + note * LINE_HEIGHT + 4.0;
    let scale = Scale { surface, points_per_mm: TALL / f64::from(picture.depth_mm.max(1)) };
    draw_ruler(left, (&scale, picture.depth_mm.into()), &picture.ruler, note, shapes);

    let mut bottom = surface + TALL;
    for ((year, (called, call)), &(start, across)) in years.iter().zip(&heads).zip(&places) {
        let below = write(called, (Role::Ink, head, true), start, top, shapes);
        write(call, (Role::Ink, note, false), start, below, shapes);
        let (from, to) = (Point::new(start, line), Point::new(start + across, line));
        shapes.push(Shape::Line { role: Role::Outline, from, to });
        for (index, seen) in year.seen.iter().enumerate() {
            let left = start + index as f64 * (width + GAP);
            let area = Area { left, top: surface, right: left + width, bottom: surface + TALL };
            draw_seen(&seen.ground, area, &scale, shapes);
            let lines = wrap(&seen.label, note, false, width);
            bottom = bottom.max(write(&lines, (Role::Ink, note, false), left, area.bottom + 4.0, shapes));
        }
    }
    bottom
}

/// Writes lines from `top` down; gives their bottom.
fn write(
    lines: &[String],
    (role, size, strong): (Role, f64, bool),
    left: f64,
    top: f64,
    shapes: &mut Vec<Shape>,
) -> f64 {
    for (index, text) in lines.iter().enumerate() {
        let at = Point::new(left, top + (index as f64 * LINE_HEIGHT + BASE_LINE) * size);
        shapes.push(Shape::Text { role, at, anchor: Anchor::Start, size, strong, text: text.clone() });
    }
    top + lines.len() as f64 * size * LINE_HEIGHT
}

fn draw_seen(ground: &SeenGround, area: Area, scale: &Scale, shapes: &mut Vec<Shape>) {
    let down_to = |mm: u32| Area { bottom: scale.y(mm.into()).clamp(area.top + 1.0, area.bottom), ..area };
    let loose = |mm: u32, shapes: &mut Vec<Shape>| {
        let loosened = down_to(mm);
        shapes.push(rectangle(roles(Condition::Open).0, loosened));
        hatch(Condition::Open, loosened, shapes);
    };
    let across = |y: f64| [Point::new(area.left, y), Point::new(area.right, y)];
    shapes.push(rectangle(Role::SoilPlain, area));
    match ground {
        SeenGround::Face(layers) => {
            for layer in layers.iter().filter(|layer| layer.bottom_mm > layer.top_mm) {
                let its = Area { top: scale.y(layer.top_mm.into()), ..down_to(layer.bottom_mm) };
                if let Some(condition) = layer.condition {
                    shapes.push(rectangle(roles(condition).0, its));
                    small_hatch(condition, its, shapes);
                }
                let [from, to] = across(its.bottom);
                shapes.push(Shape::Line { role: Role::Boundary, from, to });
            }
        }
        SeenGround::Loosened(tip_mm) => {
            let middle = f64::midpoint(area.left, area.right);
            let tip = tip_mm.map_or(f64::midpoint(area.top, area.bottom), |mm| down_to(mm).bottom);
            let leg = [Point::new(middle, area.top), Point::new(middle, tip)];
            let foot = [Point::new(middle - FOOT, tip), Point::new(middle + FOOT, tip)];
            if let Some(mm) = *tip_mm {
                loose(mm, shapes);
                for role in [Role::Casing, Role::Tip] {
                    let [from, to] = across(tip);
                    shapes.push(Shape::Line { role, from, to });
                    shapes.push(Shape::Line { role, from: leg[0], to: leg[1] });
                    shapes.push(Shape::Polyline { role, points: foot.to_vec() });
                }
            } else {
                dashed(Role::Outline, &leg, 5.0, 5.0, shapes);
            }
        }
        SeenGround::Loose(firm_mm) => {
            if let Some(mm) = *firm_mm {
                loose(mm, shapes);
                let [from, to] = across(down_to(mm).bottom);
                for role in [Role::Casing, Role::Measured] {
                    shapes.push(Shape::Line { role, from, to });
                }
            }
        }
    }
    shapes.push(frame(area));
}
