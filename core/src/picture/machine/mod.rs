//! The section across a machine at work: tines, loosened ground, ridges, the layer to be broken, critical depth.
//!
//! Heights and widths are at one scale, so that slopes are true. Two legs are drawn large; of a machine with more a
//! strip above shows all. What each mark means stands in the key below, in words that come in ready.

mod behind;
mod detail;
mod key;
mod pair;

pub use behind::{BehindForm, BehindPicture, BehindWords, Ridge, behind, behind_form};
pub use pair::{PairWords, pair, pair_and_key};

use super::face::{PHONE_WIDTH, Ruler};
use super::ground::Scale;
use super::layout::{BASE_LINE, LINE_HEIGHT, text_width};
use super::shape::{Anchor, Drawing, Point, Role, Shape};
use crate::advice::machine::{LayerDepths, Model, Setting, SideSlope, Work};
use crate::record::Machine;
use crate::record::codes::codes;
use detail::View;

codes!(
    /// A mark of the section that the key explains.
    KeyMark {
        /// Ground loosened.
        Loosened = "loosened",
        /// Ground loosened if the tips run above critical depth.
        LoosenedIfAbove = "loosened_if_above",
        /// Ground loosened only if the sides are flatter than the steepest they may be.
        HangsOnSlope = "hangs_on_slope",
        /// What stays between two tines.
        Ridge = "ridge",
        /// The layer to be broken.
        Layer = "layer",
        /// The range of critical depth.
        Critical = "critical",
        /// Tip depth.
        Tip = "tip",
        /// Tips of the leading tines.
        Leading = "leading",
        /// Floor of the loosened ground as measured.
        Floor = "floor",
        /// Firm ground left above the depth aimed at.
        Stayed = "stayed",
        /// What is left of the layer.
        LayerLeft = "layer_left",
        /// Bottoms of the slots behind several legs.
        Slots = "slots",
        /// A layer that was Open before; and so on.
        WasOpen = "was_open",
        WasFirm = "was_firm",
        WasTight = "was_tight",
        WasShut = "was_shut",
        /// Words without a mark: why no loosened ground is drawn.
        Note = "note",
    }
);

/// One line of the key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeyLine {
    /// The mark.
    pub mark: KeyMark,
    /// What it means here.
    pub text: String,
}

/// What is drawn of a machine and its setting. Words come in ready.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionPicture {
    /// Legs in the ground, at least one.
    pub legs: u32,
    /// From leg to leg.
    pub spacing_mm: u32,
    /// Width of the foot.
    pub foot_width_mm: u32,
    /// Width over the wings, and their lift.
    pub wings_mm: Option<(u32, u32)>,
    /// Depth of the leading tines.
    pub leading_mm: Option<u32>,
    /// Tip depth.
    pub tip_mm: u32,
    /// The layer to be broken.
    pub layer: Option<LayerDepths>,
    /// Range of critical depth, open below where its end is not known.
    pub critical_mm: (u32, Option<u32>),
    /// Slope of the loosened ground's sides: what the steepest loosen is drawn as loosened, what only flatter ones do as hanging on the
    /// slope. Nothing loosened is drawn where the model does not hold.
    pub loosened: Model<SideSlope>,
    /// Depth ruler.
    pub ruler: Ruler,
    /// The key, in order.
    pub key: Vec<KeyLine>,
    /// Size of text against the usual one, 1.0 to 2.0.
    pub text_scale: f64,
}

/// Lift drawn for wings of which it is not known.
const USUAL_LIFT_MM: u32 = 50;
/// Depth drawn below the lowest thing shown.
const BELOW_MM: u32 = 40;

impl SectionPicture {
    /// The picture of a machine as set. `ruler` gives the marks down to a depth.
    pub fn of(
        machine: &Machine,
        work: &Work,
        setting: &Setting,
        key: Vec<KeyLine>,
        ruler: impl FnOnce(u32) -> Ruler,
    ) -> Self {
        let mut picture = Self {
            legs: machine.legs,
            spacing_mm: machine.spacing_mm,
            foot_width_mm: machine.foot_width_mm,
            wings_mm: machine.wings.map(|wings| (wings.width_mm, wings.lift_mm.unwrap_or(USUAL_LIFT_MM))),
            leading_mm: machine.leading.and_then(|leading| leading.depth_mm),
            tip_mm: work.tip_mm,
            layer: work.layer,
            critical_mm: (setting.critical.lo_mm, setting.critical.hi_mm),
            loosened: setting.ground.map(|_| work.slope),
            ruler: Ruler { unit: String::new(), marks: Vec::new() },
            key,
            text_scale: 1.0,
        };
        picture.ruler = ruler(picture.depth_mm());
        picture
    }

    /// Depth of the ground drawn: below tip and layer, and below critical depth unless that lies far deeper.
    pub fn depth_mm(&self) -> u32 {
        let lowest = self.layer.map_or(self.tip_mm, |layer| self.tip_mm.max(layer.bottom_mm));
        let (shallowest, deepest) = self.critical_mm;
        let critical = deepest.unwrap_or(shallowest);
        let lowest = if critical <= lowest.saturating_mul(2) { lowest.max(critical) } else { lowest };
        lowest.saturating_add(BELOW_MM)
    }

    fn spacing(&self) -> f64 {
        f64::from(self.spacing_mm.max(1))
    }
}

// Lengths in points, our judgement, by eye at phone width.
const MARGIN: f64 = 8.0;
const TICK: f64 = 6.0;
/// Room beside the section for the bracket of critical depth.
const BRACKET: f64 = 14.0;
/// Height of the machine above the surface, large and in the strip.
const FRAME: (f64, f64) = (30.0, 13.0);
const STRIP_GAP: f64 = 16.0;
const LARGEST_SCALE: f64 = 0.62;
const HIGHEST: f64 = 300.0;
const SIZE: f64 = 13.0;

/// Draws the section.
pub fn section(picture: &SectionPicture) -> Drawing {
    let size = size_of_text(picture.text_scale);
    let left = right_of(&picture.ruler, size);
    let room = PHONE_WIDTH - MARGIN - BRACKET - left;

    let mut shapes = Vec::new();
    let mut top = MARGIN;
    let large = picture.legs.clamp(1, 2);
    let depth = f64::from(picture.depth_mm());
    let points_per_mm =
        (room / (f64::from(large) * picture.spacing())).min(LARGEST_SCALE).min(HIGHEST / depth);
    if picture.legs > large {
        let all = room / (f64::from(picture.legs) * picture.spacing());
        let deep = f64::from(picture.tip_mm + BELOW_MM);
        let strip =
            View { left, surface: top + FRAME.1, points_per_mm: all, legs: picture.legs, depth_mm: deep };
        strip.draw_strip(picture, &mut shapes);
        top = strip.y(deep);
        let first = f64::from((picture.legs - large) / 2) * picture.spacing();
        let last = first + f64::from(large) * picture.spacing();
        let right = left + f64::from(large) * picture.spacing() * points_per_mm;
        zoom_lines(&strip, (first, last), (left, right), top, &mut shapes);
        top += STRIP_GAP;
    }
    let unit = size * LINE_HEIGHT * 1.5;
    let view = View { left, surface: top + FRAME.0.max(unit), points_per_mm, legs: large, depth_mm: depth };
    view.draw(picture, &mut shapes);
    let scale = Scale { surface: view.surface, points_per_mm };
    draw_ruler(left, (&scale, depth), &picture.ruler, size, &mut shapes);
    let bottom = view.y(depth) + size * LINE_HEIGHT / 2.0 + 6.0;
    let height = key::draw(&picture.key, bottom, size, &mut shapes) + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    Drawing { width: PHONE_WIDTH, height, shapes }
}

/// The key of a section on its own, for where the section is shown without one.
pub fn key(lines: &[KeyLine], text_scale: f64) -> Drawing {
    let mut shapes = Vec::new();
    let height = key::draw(lines, MARGIN, size_of_text(text_scale), &mut shapes) + MARGIN;
    let paper = Shape::Rectangle { role: Role::Paper, left: 0.0, top: 0.0, width: PHONE_WIDTH, height };
    shapes.insert(0, paper);
    Drawing { width: PHONE_WIDTH, height, shapes }
}

/// From the two legs in the strip to the corners of the large drawing below.
fn zoom_lines(
    strip: &View,
    (first_mm, last_mm): (f64, f64),
    (left, right): (f64, f64),
    top: f64,
    shapes: &mut Vec<Shape>,
) {
    let y = top + 3.0;
    let (from, to) = (strip.x(first_mm), strip.x(last_mm));
    let points = [(left, y + 10.0), (from, y), (to, y), (right, y + 10.0)];
    let points = points.map(|(x, y)| Point::new(x, y)).to_vec();
    shapes.push(Shape::Polyline { role: Role::Leader, points });
}

/// Left edge of a section: right of its ruler's texts.
pub(super) fn right_of(ruler: &Ruler, size: f64) -> f64 {
    let marks = ruler.marks.iter().map(|mark| mark.text.as_str());
    let widest = marks.chain([ruler.unit.as_str()]).map(|text| text_width(text, size, false));
    MARGIN + widest.fold(0.0, f64::max).min(PHONE_WIDTH / 3.0) + 3.0 + TICK
}

/// Size of type at a scale of text.
fn size_of_text(scale: f64) -> f64 {
    SIZE * if scale.is_nan() { 1.0 } else { scale.clamp(1.0, 2.0) }
}

/// Draws the depth ruler at a section's left edge.
pub(super) fn draw_ruler(
    line: f64,
    (scale, depth_mm): (&Scale, f64),
    ruler: &Ruler,
    size: f64,
    shapes: &mut Vec<Shape>,
) {
    let mut stroke = |from: (f64, f64), to: (f64, f64)| {
        let (from, to) = (Point::new(from.0, from.1), Point::new(to.0, to.1));
        shapes.push(Shape::Line { role: Role::Ruler, from, to });
    };
    let shown = || ruler.marks.iter().filter(|mark| f64::from(mark.depth_mm) <= depth_mm);
    stroke((line, scale.surface), (line, scale.y(depth_mm)));
    for mark in shown() {
        let length = if mark.text.is_empty() { TICK / 2.0 } else { TICK };
        stroke((line - length, scale.y(mark.depth_mm.into())), (line, scale.y(mark.depth_mm.into())));
    }
    let mut text = |role, y: f64, text: &str| {
        let at = Point::new(line - TICK - 3.0, y);
        let text = text.to_owned();
        shapes.push(Shape::Text { role, at, anchor: Anchor::End, size, strong: false, text });
    };
    let mut free_from = scale.surface - size * LINE_HEIGHT / 2.0;
    if !ruler.unit.is_empty() {
        text(Role::FaintInk, free_from - size * (LINE_HEIGHT - BASE_LINE), &ruler.unit);
    }
    for mark in shown().filter(|mark| !mark.text.is_empty()) {
        let edge = scale.y(mark.depth_mm.into()) - size * LINE_HEIGHT / 2.0;
        if edge >= free_from {
            text(Role::Ink, edge + size * BASE_LINE, &mark.text);
            free_from = edge + size * LINE_HEIGHT;
        }
    }
}
