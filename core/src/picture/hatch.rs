//! Hatching: condition told without colour. Every stroke and dot ends inside the layer, and a layer however
//! thin gets at least one.

use super::layout::Area;
use super::shape::{Point, Role, Shape};
use crate::record::Condition;

// Spacings in points, our judgement, chosen by eye at phone width.
const DOT_RADIUS: f64 = 1.3;
const DOT_COLUMNS: f64 = 15.0;
const DOT_ROWS: f64 = 10.0;
const SLANT_SPACING: f64 = 12.0;
const DASH_ROWS: f64 = 5.6;
const DASH: f64 = 8.0;
const DASH_GAP: f64 = 4.0;
const BAR_ROWS: f64 = 7.0;
/// Share of a row that is bar.
const BAR_SHARE: f64 = 0.64;

/// The tone of a layer and its hatching.
pub(super) const fn roles(condition: Condition) -> (Role, Role) {
    match condition {
        Condition::Open => (Role::SoilOpen, Role::HatchOpen),
        Condition::Firm => (Role::SoilFirm, Role::HatchFirm),
        Condition::Tight => (Role::SoilTight, Role::HatchTight),
        Condition::Shut => (Role::SoilShut, Role::HatchShut),
    }
}

/// Hatches a layer.
pub(super) fn hatch(condition: Condition, area: Area, shapes: &mut Vec<Shape>) {
    hatch_at(condition, area, 1.0, shapes);
}

/// Hatches a small mark, closer than a layer: each kind still shows more than one stroke.
pub(super) fn small_hatch(condition: Condition, area: Area, shapes: &mut Vec<Shape>) {
    let spacing = match condition {
        Condition::Open | Condition::Firm => 0.55,
        Condition::Tight | Condition::Shut => 0.75,
    };
    hatch_at(condition, area, spacing, shapes);
}

fn hatch_at(condition: Condition, area: Area, spacing: f64, shapes: &mut Vec<Shape>) {
    let (_, role) = roles(condition);
    match condition {
        Condition::Open => dots(role, area, spacing, shapes),
        Condition::Firm => slants(role, area, spacing, shapes),
        Condition::Tight => dashes(role, area, spacing, shapes),
        Condition::Shut => bars(role, area, spacing, shapes),
    }
}

/// Middles of as many rows of about this height as fit, at least one.
fn rows(area: Area, height: f64) -> impl Iterator<Item = (usize, f64)> {
    let count = (area.height() / height).floor().max(1.0);
    let step = area.height() / count;
    (0..count as usize).map(move |row| (row, area.top + (row as f64 + 0.5) * step))
}

fn dots(role: Role, area: Area, spacing: f64, shapes: &mut Vec<Shape>) {
    /// Moves each dot a little off its grid, by its place in the row of dots.
    const JITTER: [(f64, f64); 7] =
        [(0.0, 0.1), (0.22, -0.2), (-0.18, 0.16), (0.1, 0.24), (-0.24, -0.1), (0.16, 0.0), (-0.08, -0.24)];
    let radius = DOT_RADIUS.min(area.height() / 2.0);
    let columns = (area.width() / DOT_COLUMNS / spacing).floor().max(1.0);
    let step = area.width() / columns;
    let mut index = 0;
    for (row, y) in rows(area, DOT_ROWS * spacing) {
        for column in 0..columns as usize {
            let (right, down) = JITTER[index % JITTER.len()];
            index += 1;
            let stagger = if row % 2 == 0 { 0.3 } else { 0.7 };
            let x = area.left + (column as f64 + stagger + right) * step;
            let y = y + down * DOT_ROWS * spacing;
            let centre = Point::new(
                x.clamp(area.left + radius, area.right - radius),
                y.clamp(area.top + radius, area.bottom - radius),
            );
            shapes.push(Shape::Circle { role, centre, radius });
        }
    }
}

fn slants(role: Role, area: Area, spacing: f64, shapes: &mut Vec<Shape>) {
    let area = inset(area, role);
    let (width, height) = (area.width(), area.height());
    let count = ((width + height) / SLANT_SPACING / spacing).floor().max(1.0);
    let step = (width + height) / count;
    for index in 0..count as usize {
        // Each line falls to the left at 45°: x + y is the same all along it.
        let sum = (index as f64 + 0.5) * step;
        let from = Point::new(area.left + sum.min(width), area.top + (sum - width).max(0.0));
        let to = Point::new(area.left + (sum - height).max(0.0), area.top + sum.min(height));
        shapes.push(Shape::Line { role, from, to });
    }
}

fn dashes(role: Role, area: Area, spacing: f64, shapes: &mut Vec<Shape>) {
    let (dash, gap) = (DASH * spacing, DASH_GAP * spacing);
    for (row, y) in rows(area, DASH_ROWS * spacing) {
        let bounds = inset(area, role);
        let mut x = bounds.left - if row % 2 == 0 { 0.0 } else { f64::midpoint(dash, gap) };
        while x < bounds.right {
            let (from, to) = (x.max(bounds.left), (x + dash).min(bounds.right));
            if to - from > 1.0 {
                shapes.push(Shape::Line { role, from: Point::new(from, y), to: Point::new(to, y) });
            }
            x += dash + gap;
        }
    }
}

fn bars(role: Role, area: Area, spacing: f64, shapes: &mut Vec<Shape>) {
    let count = rows(area, BAR_ROWS * spacing).count() as f64;
    let height = area.height() / count * BAR_SHARE;
    for (_, y) in rows(area, BAR_ROWS * spacing) {
        shapes.push(Shape::Rectangle {
            role,
            left: area.left,
            top: y - height / 2.0,
            width: area.width(),
            height,
        });
    }
}

/// The area a line's middle may run in so that its round ends stay inside; never turned inside out.
fn inset(area: Area, role: Role) -> Area {
    let by = |extent: f64| (role.stroke_width() / 2.0 + 0.5).min(extent / 2.0);
    let (x, y) = (by(area.width()), by(area.height()));
    Area { left: area.left + x, top: area.top + y, right: area.right - x, bottom: area.bottom - y }
}
