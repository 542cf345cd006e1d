//! Drawings written as SVG: one self-contained element, no style sheet, no script, nothing fetched.

use super::shape::{Anchor, Drawing, Point, Shape};
use super::theme::Theme;
use crate::harmless::lines;
use std::fmt::Write as _;

/// What is read out to whoever does not see the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spoken<'a> {
    /// Language of both, as in BCP 47 (`en`, `de`).
    pub language: &'a str,
    /// Short name of the drawing.
    pub title: &'a str,
    /// What it shows.
    pub description: &'a str,
}

/// Writes a drawing as an SVG element that stands as a file of its own and inside a page.
pub fn svg(drawing: &Drawing, theme: Theme, spoken: &Spoken) -> String {
    over("", drawing, theme, spoken)
}

/// The same over a photo, which goes into the element.
pub(super) fn with_photo(
    drawing: &Drawing,
    photo: &[u8],
    media_type: &str,
    theme: Theme,
    spoken: &Spoken,
) -> String {
    let image = format!(
        "<image width=\"{}\" height=\"{}\" preserveAspectRatio=\"none\" href=\"data:{};base64,{}\"/>\n",
        number(drawing.width),
        number(drawing.height),
        escape(media_type),
        base64(photo),
    );
    over(&image, drawing, theme, spoken)
}

/// Bytes as text (RFC 4648, section 4).
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let byte = |at: usize| u32::from(three.get(at).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for place in 0..4 {
            let letter = LETTERS[(bits >> (18 - 6 * place) & 63) as usize];
            out.push(if place <= three.len() { char::from(letter) } else { '=' });
        }
    }
    out
}

fn over(beneath: &str, drawing: &Drawing, theme: Theme, spoken: &Spoken) -> String {
    let mut out = String::new();
    let (width, height) = (number(drawing.width), number(drawing.height));
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\" role=\"img\" xml:lang=\"{language}\" lang=\"{language}\" \
         font-family=\"system-ui, sans-serif\">\n<title>{}</title>\n<desc>{}</desc>\n",
        escape(spoken.title),
        escape(spoken.description),
        language = escape(spoken.language),
    );
    out.push_str(beneath);
    // Neighbours of the same kind and role share their attributes; lines share one path (areas must not: where
    // two overlap, a path's fill rule could leave a hole).
    for run in drawing.shapes.chunk_by(|one, other| attributes(one, theme) == attributes(other, theme)) {
        let _ = write!(out, "<{}", attributes(&run[0], theme));
        match &run[0] {
            Shape::Line { .. } | Shape::Polyline { .. } => {
                out.push_str(" d=\"");
                for shape in run {
                    out.push_str(&path(shape));
                }
                out.push_str("\"/>\n");
            }
            _ => {
                out.push_str(">\n");
                for shape in run {
                    element(&mut out, shape);
                }
                out.push_str("</g>\n");
            }
        }
    }
    out.push_str("</svg>\n");
    out
}

/// Element and attributes a run of shapes shares.
fn attributes(shape: &Shape, theme: Theme) -> String {
    let role = shape.role();
    let paint = theme.paint(role);
    match shape {
        Shape::Rectangle { .. } | Shape::Circle { .. } | Shape::Polygon { .. } => {
            format!("g fill=\"{paint}\"")
        }
        Shape::Line { .. } | Shape::Polyline { .. } => format!(
            "path fill=\"none\" stroke=\"{paint}\" stroke-width=\"{}\" stroke-linecap=\"round\" \
             stroke-linejoin=\"round\"",
            number(role.stroke_width())
        ),
        Shape::Text { size, strong, anchor, .. } => {
            let weight = if *strong { " font-weight=\"bold\"" } else { "" };
            let anchor = if *anchor == Anchor::Start {
                String::new()
            } else {
                format!(" text-anchor=\"{}\"", anchor.code())
            };
            format!("g fill=\"{paint}\" font-size=\"{}\"{weight}{anchor}", number(*size))
        }
    }
}

/// Path data of a line or an area.
fn path(shape: &Shape) -> String {
    let along = |points: &[Point], close: &str| {
        let mut data = String::new();
        for (index, point) in points.iter().enumerate() {
            let letter = if index == 0 { 'M' } else { 'L' };
            let _ = write!(data, "{letter}{} {}", number(point.x), number(point.y));
        }
        data + close
    };
    match shape {
        Shape::Line { from, to, .. } => along(&[*from, *to], ""),
        Shape::Polyline { points, .. } => along(points, ""),
        Shape::Polygon { points, .. } => along(points, "Z"),
        _ => String::new(),
    }
}

fn element(out: &mut String, shape: &Shape) {
    let _ = match shape {
        Shape::Rectangle { left, top, width, height, .. } => writeln!(
            out,
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>",
            number(*left),
            number(*top),
            number(*width),
            number(*height)
        ),
        Shape::Circle { centre, radius, .. } => writeln!(
            out,
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
            number(centre.x),
            number(centre.y),
            number(*radius)
        ),
        Shape::Text { at, text, .. } => {
            writeln!(out, "<text x=\"{}\" y=\"{}\">{}</text>", number(at.x), number(at.y), escape(text))
        }
        _ => writeln!(out, "<path d=\"{}\"/>", path(shape)),
    };
}

/// A length to a tenth of a point.
fn number(length: f64) -> String {
    let rounded = (length * 10.0).round() / 10.0;
    // No "-0".
    (rounded + 0.0).to_string()
}

/// Text made safe for SVG and HTML, between tags and inside double quotes; characters XML 1.0 has no place for
/// are left out, and so is what would turn other text round or hide ([`harmless`](crate::harmless)).
pub(crate) fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in lines(text).chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{fffe}' | '\u{ffff}' => {}
            _ => out.push(letter),
        }
    }
    out
}
