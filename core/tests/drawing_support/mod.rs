//! The room that shapes of a drawing take.

use pitface_core::picture::{Anchor, BASE_LINE, Drawing, LINE_HEIGHT, Point, Role, Shape, text_width};

/// What may be lost in rounding.
pub const TOUCH: f64 = 1e-6;

#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Extent {
    pub fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right - TOUCH
            && other.left < self.right - TOUCH
            && self.top < other.bottom - TOUCH
            && other.top < self.bottom - TOUCH
    }

    pub fn holds(&self, other: &Self) -> bool {
        other.left >= self.left - TOUCH
            && other.right <= self.right + TOUCH
            && other.top >= self.top - TOUCH
            && other.bottom <= self.bottom + TOUCH
    }
}

/// The room a shape takes, strokes and type with their width.
pub fn extent(shape: &Shape) -> Extent {
    let around = |points: &[Point], by: f64| Extent {
        left: points.iter().map(|at| at.x).fold(f64::INFINITY, f64::min) - by,
        top: points.iter().map(|at| at.y).fold(f64::INFINITY, f64::min) - by,
        right: points.iter().map(|at| at.x).fold(f64::NEG_INFINITY, f64::max) + by,
        bottom: points.iter().map(|at| at.y).fold(f64::NEG_INFINITY, f64::max) + by,
    };
    match shape {
        Shape::Rectangle { left, top, width, height, .. } => {
            Extent { left: *left, top: *top, right: left + width, bottom: top + height }
        }
        Shape::Circle { centre, radius, .. } => around(&[*centre], *radius),
        Shape::Polygon { points, .. } => around(points, 0.0),
        Shape::Line { role, from, to } => around(&[*from, *to], role.stroke_width() / 2.0),
        Shape::Polyline { role, points } => around(points, role.stroke_width() / 2.0),
        Shape::Text { at, anchor, size, strong, text, .. } => {
            let width = text_width(text, *size, *strong);
            let left = match anchor {
                Anchor::Start => at.x,
                Anchor::Middle => at.x - width / 2.0,
                Anchor::End => at.x - width,
            };
            let top = at.y - size * BASE_LINE;
            Extent { left, top, right: left + width, bottom: top + size * LINE_HEIGHT }
        }
    }
}

pub fn texts(drawing: &Drawing) -> Vec<(&str, Extent)> {
    let shapes = drawing.shapes.iter();
    shapes
        .filter_map(|shape| match shape {
            Shape::Text { text, .. } => Some((text.as_str(), extent(shape))),
            _ => None,
        })
        .collect()
}

pub fn of_role(drawing: &Drawing, role: Role) -> Vec<&Shape> {
    drawing.shapes.iter().filter(|shape| shape.role() == role).collect()
}

/// Everything lies on the sheet and no text lies over another; gives the first that does not.
pub fn fault(drawing: &Drawing) -> Option<String> {
    let sheet = Extent { left: 0.0, top: 0.0, right: drawing.width, bottom: drawing.height };
    if let Some(shape) = drawing.shapes.iter().find(|shape| !sheet.holds(&extent(shape))) {
        return Some(format!("leaves the sheet: {shape:?}"));
    }
    let texts = texts(drawing);
    texts.iter().enumerate().find_map(|(index, (text, room))| {
        let (other, _) = texts[..index].iter().find(|(_, taken)| room.overlaps(taken))?;
        Some(format!("{text:?} lies over {other:?}"))
    })
}
