//! Leaves painted: text, drawings in black and white, outline and what the file says of itself.

use super::PRODUCER;
use super::fit::{FOOT, MARGIN};
use super::flow::{Piece, What};
use super::font::Fonts;
use super::tree::Tree;
use krilla::configure::{Configuration, Validator};
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point, Rect, Size, Transform};
use krilla::image::Image;
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, LineCap, LineJoin, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{ArtifactType, BBox, ContentTag, SpanTag};
use krilla::{Document, SerializeSettings, color::rgb};
use pitface_core::picture::{Anchor, Colour, Drawing, Role, Shape, Theme};
use pitface_core::report::Page;

/// Size of the foot of a leaf, points.
const FOOT_SIZE: f32 = 7.5;

/// A heading and where it stands.
struct Heading<'a> {
    rank: u16,
    text: &'a str,
    leaf: usize,
    at: Point,
}

/// The file.
///
/// # Errors
/// The fault that keeps it from being a PDF/UA-1 file.
pub fn painted(
    page: &Page,
    (width, height): (f32, f32),
    leaves: &[Vec<Piece>],
    fonts: &Fonts,
    mut tree: Tree,
) -> Result<Vec<u8>, String> {
    let configuration = Configuration::new_with_validator(Validator::UA1);
    let settings = SerializeSettings { configuration, enable_tagging: true, ..SerializeSettings::default() };
    let mut document = Document::new_with(settings);
    let mut headings = Vec::new();
    for (index, leaf) in leaves.iter().enumerate() {
        let size = PageSettings::from_wh(width, height).ok_or("no size of a leaf")?;
        let mut sheet = document.start_page_with(size);
        let mut surface = sheet.surface();
        for piece in leaf {
            if let What::Heading { rank, text } = &piece.what {
                let at = Point::from_xy(piece.x + MARGIN, piece.y + MARGIN);
                headings.push(Heading { rank: *rank, text, leaf: index, at });
            }
            Brush { surface: &mut surface, fonts }.piece(piece, &mut tree, index);
        }
        if leaves.len() > 1 {
            surface.start_tagged(ContentTag::Artifact(ArtifactType::Footer));
            let foot = format!("{} · {} / {}", page.title, index + 1, leaves.len());
            let y = height - MARGIN - FOOT + 2.0 + FOOT_SIZE;
            Brush { surface: &mut surface, fonts }.text((MARGIN, y), &foot, FOOT_SIZE, false);
            surface.end_tagged();
        }
        surface.finish();
        sheet.finish();
    }
    let mut outline = Outline::new();
    for node in nodes(&headings) {
        outline.push_child(node);
    }
    document.set_outline(outline);
    let language = page.language.code();
    let told = Metadata::new().title(page.title.clone()).language(language.to_owned());
    document.set_metadata(told.creator(PRODUCER.to_owned()).producer(PRODUCER.to_owned()));
    document.set_tag_tree(tree.written(language));
    document.finish().map_err(|error| format!("{error:?}"))
}

/// Headings with those of lower rank under them.
fn nodes(mut headings: &[Heading]) -> Vec<OutlineNode> {
    let mut nodes = Vec::new();
    while let Some((first, rest)) = headings.split_first() {
        let under = rest.iter().take_while(|heading| heading.rank > first.rank).count();
        let mut node = OutlineNode::new(first.text.to_owned(), XyzDestination::new(first.leaf, first.at));
        for child in self::nodes(&rest[..under]) {
            node.push_child(child);
        }
        nodes.push(node);
        headings = &rest[under..];
    }
    nodes
}

struct Brush<'b, 's> {
    surface: &'b mut Surface<'s>,
    fonts: &'b Fonts,
}

impl Brush<'_, '_> {
    fn piece(&mut self, piece: &Piece, tree: &mut Tree, leaf: usize) {
        let (x, y) = (piece.x + MARGIN, piece.y + MARGIN);
        match &piece.what {
            What::Heading { .. } => {}
            What::Text { text, size, strong } => {
                // Words keep the signs that the type cannot show.
                let missing = self.fonts.lacks(text, *strong).then_some(text.as_str());
                let span = SpanTag::empty().with_actual_text(missing);
                let mark = self.surface.start_tagged(ContentTag::Span(span));
                self.text((x, y), text, *size, *strong);
                self.surface.end_tagged();
                if let Some(tag) = piece.tag {
                    tree.drawn(tag, mark);
                }
            }
            What::Figure { drawing, photo, scale } => {
                let mark = self.surface.start_tagged(ContentTag::Other);
                self.figure(drawing, *photo, *scale, (x, y));
                self.surface.end_tagged();
                let (wide, high) = (drawing.width as f32 * scale, drawing.height as f32 * scale);
                if let Some(tag) = piece.tag {
                    tree.drawn(tag, mark);
                    let box_of = Rect::from_xywh(x, y, wide, high);
                    if let Some(rect) = box_of {
                        tree.stands(tag, BBox::new(leaf, rect));
                    }
                }
            }
            What::Stroke { right, down, width } => {
                self.surface.start_tagged(ContentTag::Artifact(ArtifactType::Other));
                let path = path(&[(x, y), (x + right, y + down)], false);
                self.stroke(path, Theme::Print.colour(Role::FaintInk), *width);
                self.surface.end_tagged();
            }
        }
    }

    /// A line from its base line's left end.
    fn text(&mut self, (x, y): (f32, f32), text: &str, size: f32, strong: bool) {
        if !text.is_empty() {
            let (shown, glyphs) = self.fonts.glyphs(text, strong);
            let start = Point::from_xy(x, y);
            self.surface.draw_glyphs(start, &glyphs, self.fonts.font(strong), &shown, size, false);
        }
    }

    fn figure(&mut self, drawing: &Drawing, photo: Option<&[u8]>, scale: f32, (x, y): (f32, f32)) {
        self.surface.push_transform(&Transform::from_row(scale, 0.0, 0.0, scale, x, y));
        let photo = photo.and_then(|bytes| Image::from_jpeg(bytes.to_vec().into(), false).ok());
        let size = Size::from_wh(drawing.width as f32, drawing.height as f32);
        if let Some((photo, size)) = photo.zip(size) {
            self.surface.draw_image(photo, size);
        }
        for shape in &drawing.shapes {
            self.shape(shape);
        }
        self.surface.pop();
    }

    fn shape(&mut self, shape: &Shape) {
        let role = shape.role();
        let colour = Theme::Print.colour(role);
        let of = |point: &pitface_core::picture::Point| (point.x as f32, point.y as f32);
        match shape {
            Shape::Rectangle { left, top, width, height, .. } => {
                let (left, top) = (*left as f32, *top as f32);
                let rect = Rect::from_xywh(left, top, *width as f32, *height as f32);
                self.fill(
                    rect.and_then(|rect| {
                        let mut path = PathBuilder::new();
                        path.push_rect(rect);
                        path.finish()
                    }),
                    colour,
                );
            }
            Shape::Circle { centre, radius, .. } => self.fill(circle(of(centre), *radius as f32), colour),
            Shape::Polygon { points, .. } => {
                self.fill(path(&points.iter().map(of).collect::<Vec<_>>(), true), colour);
            }
            Shape::Line { from, to, .. } => {
                self.stroke(path(&[of(from), of(to)], false), colour, role.stroke_width() as f32);
            }
            Shape::Polyline { points, .. } => {
                let path = path(&points.iter().map(of).collect::<Vec<_>>(), false);
                self.stroke(path, colour, role.stroke_width() as f32);
            }
            Shape::Text { at, anchor, size, strong, text, .. } => {
                let (x, y) = of(at);
                let size = *size as f32;
                let width = self.fonts.width(text, size, *strong);
                let left = match anchor {
                    Anchor::Start => x,
                    Anchor::Middle => x - width / 2.0,
                    Anchor::End => x - width,
                };
                self.surface.set_fill(Some(fill(colour)));
                self.text((left, y), text, size, *strong);
                self.surface.set_fill(None);
            }
        }
    }

    fn fill(&mut self, path: Option<Path>, colour: Colour) {
        self.surface.set_stroke(None);
        self.surface.set_fill(Some(fill(colour)));
        if let Some(path) = path {
            self.surface.draw_path(&path);
        }
        self.surface.set_fill(None);
    }

    fn stroke(&mut self, path: Option<Path>, colour: Colour, width: f32) {
        let (line_cap, line_join) = (LineCap::Round, LineJoin::Round);
        let paint = paint(colour).into();
        self.surface.set_fill(None);
        self.surface.set_stroke(Some(Stroke { paint, width, line_cap, line_join, ..Stroke::default() }));
        if let Some(path) = path {
            self.surface.draw_path(&path);
        }
        self.surface.set_stroke(None);
    }
}

fn paint(colour: Colour) -> rgb::Color {
    rgb::Color::new(colour.red, colour.green, colour.blue)
}

fn fill(colour: Colour) -> Fill {
    Fill { paint: paint(colour).into(), ..Fill::default() }
}

fn path(points: &[(f32, f32)], closed: bool) -> Option<Path> {
    let mut path = PathBuilder::new();
    let (first, rest) = points.split_first()?;
    path.move_to(first.0, first.1);
    for point in rest {
        path.line_to(point.0, point.1);
    }
    if closed {
        path.close();
    }
    path.finish()
}

/// A circle in four curves, each a quarter.
fn circle((x, y): (f32, f32), radius: f32) -> Option<Path> {
    /// Distance of the handles of a quarter circle, in radii: 4/3 · (√2 − 1).
    const HANDLE: f32 = 0.552_285;
    let (r, h) = (radius, radius * HANDLE);
    let mut path = PathBuilder::new();
    path.move_to(x + r, y);
    path.cubic_to(x + r, y + h, x + h, y + r, x, y + r);
    path.cubic_to(x - h, y + r, x - r, y + h, x - r, y);
    path.cubic_to(x - r, y - h, x - h, y - r, x, y - r);
    path.cubic_to(x + h, y - r, x + r, y - h, x + r, y);
    path.close();
    path.finish()
}
