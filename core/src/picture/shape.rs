//! What a drawing is made of.

use crate::record::codes::codes;

/// A drawing: shapes painted one after the other on paper. Units are points at a phone's width
/// ([`super::PHONE_WIDTH`]); x grows to the right, y downwards, from the upper left corner.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Width in points.
    pub width: f64,
    /// Height in points.
    pub height: f64,
    /// Shapes, the lowest first.
    pub shapes: Vec<Shape>,
}

/// A place on a drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Points from the left edge.
    pub x: f64,
    /// Points from the upper edge.
    pub y: f64,
}

impl Point {
    /// A place on a drawing.
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }
}

/// One shape. Rectangles, circles and polygons are filled and have no edge; lines and polylines are stroked
/// with round ends and joins at the [`Role::stroke_width`] of their role and are not filled.
#[derive(Debug, Clone, PartialEq)]
#[expect(missing_docs, reason = "fields say what they are; lengths in points")]
pub enum Shape {
    Rectangle {
        role: Role,
        left: f64,
        top: f64,
        width: f64,
        height: f64,
    },
    Circle {
        role: Role,
        centre: Point,
        radius: f64,
    },
    Polygon {
        role: Role,
        points: Vec<Point>,
    },
    Line {
        role: Role,
        from: Point,
        to: Point,
    },
    Polyline {
        role: Role,
        points: Vec<Point>,
    },
    /// One line of text in a sans-serif face; `at` lies on the base line, at the side `anchor` names. `size` is
    /// the height of the type, `strong` its bold cut.
    Text {
        role: Role,
        at: Point,
        anchor: Anchor,
        size: f64,
        strong: bool,
        text: String,
    },
}

impl Shape {
    /// The role of the shape.
    pub const fn role(&self) -> Role {
        match self {
            Self::Rectangle { role, .. }
            | Self::Circle { role, .. }
            | Self::Polygon { role, .. }
            | Self::Line { role, .. }
            | Self::Polyline { role, .. }
            | Self::Text { role, .. } => *role,
        }
    }
}

codes!(
    /// Which part of a text its place names.
    Anchor { Start = "start", Middle = "middle", End = "end", }
);

codes!(
    /// What a shape stands for; its colour comes from the theme.
    Role {
        /// The ground of the drawing.
        Paper = "paper",
        /// Main text.
        Ink = "ink",
        /// Text and strokes of second rank.
        FaintInk = "faint_ink",
        /// Soil on which no condition is read.
        SoilPlain = "soil_plain",
        SoilOpen = "soil_open",
        SoilFirm = "soil_firm",
        SoilTight = "soil_tight",
        SoilShut = "soil_shut",
        /// Sparse dots.
        HatchOpen = "hatch_open",
        /// Thin slanting lines.
        HatchFirm = "hatch_firm",
        /// Close horizontal dashes.
        HatchTight = "hatch_tight",
        /// Solid dense bars.
        HatchShut = "hatch_shut",
        /// Edge of the face, of lumps and of things.
        Outline = "outline",
        /// Line between two layers.
        Boundary = "boundary",
        /// Light band under a line that has to be seen on any hatching.
        Casing = "casing",
        Root = "root",
        /// Wall of a worm or root channel.
        ChannelWall = "channel_wall",
        ChannelHollow = "channel_hollow",
        PatchRust = "patch_rust",
        PatchGrey = "patch_grey",
        PatchEdge = "patch_edge",
        /// Depth ruler.
        Ruler = "ruler",
        /// From a layer to its label.
        Leader = "leader",
        /// Where the feet should run, and its label.
        Tip = "tip",
        /// What was measured in the hole.
        Measured = "measured",
    }
);
