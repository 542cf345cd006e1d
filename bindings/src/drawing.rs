//! Drawings as they cross the border: the core's own types, named here once more so that one that changes there does
//! not compile here.

use pitface_core::picture;
pub use pitface_core::picture::{Anchor, Drawing, Point, Role, Shape, Theme};

/// A drawing: shapes painted one after the other on paper. Units are points at a phone's width of 360; x grows to the
/// right, y downwards, from the upper left corner. Scale it as a whole.
#[uniffi::remote(Record)]
pub struct Drawing {
    /// Width in points.
    pub width: f64,
    /// Height in points.
    pub height: f64,
    /// Shapes, the lowest first.
    pub shapes: Vec<Shape>,
}

/// A place on a drawing.
#[uniffi::remote(Record)]
pub struct Point {
    /// Points from the left edge.
    pub x: f64,
    /// Points from the upper edge.
    pub y: f64,
}

/// One shape; lengths in points. Rectangles, circles and polygons are filled and have no edge; lines and polylines are
/// stroked with round ends and joins at the width of their role ([`colours`]) and are not filled.
#[uniffi::remote(Enum)]
pub enum Shape {
    /// Filled.
    Rectangle { role: Role, left: f64, top: f64, width: f64, height: f64 },
    /// Filled.
    Circle { role: Role, centre: Point, radius: f64 },
    /// Filled.
    Polygon { role: Role, points: Vec<Point> },
    /// Stroked.
    Line { role: Role, from: Point, to: Point },
    /// Stroked.
    Polyline { role: Role, points: Vec<Point> },
    /// One line of text in a sans-serif face; `at` lies on the base line, at the side `anchor` names. `size` is the
    /// height of the type in points, `strong` its bold cut.
    Text { role: Role, at: Point, anchor: Anchor, size: f64, strong: bool, text: String },
}

/// Which part of a text its place names.
#[uniffi::remote(Enum)]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// What a shape stands for; its colour comes from the theme ([`colours`]).
#[uniffi::remote(Enum)]
pub enum Role {
    /// The ground of the drawing.
    Paper,
    /// Main text.
    Ink,
    /// Text and strokes of second rank.
    FaintInk,
    /// Soil on which no condition is read.
    SoilPlain,
    /// Soil read as Open.
    SoilOpen,
    /// Soil read as Firm.
    SoilFirm,
    /// Soil read as Tight.
    SoilTight,
    /// Soil read as Shut.
    SoilShut,
    /// Sparse dots.
    HatchOpen,
    /// Thin slanting lines.
    HatchFirm,
    /// Close horizontal dashes.
    HatchTight,
    /// Solid dense bars.
    HatchShut,
    /// Edge of the face, of lumps and of things.
    Outline,
    /// Line between two layers.
    Boundary,
    /// Light band under a line that has to be seen on any hatching.
    Casing,
    /// A root.
    Root,
    /// Wall of a worm or root channel.
    ChannelWall,
    /// What is within it.
    ChannelHollow,
    /// Rusty.
    PatchRust,
    /// Grey.
    PatchGrey,
    /// Edge of a patch.
    PatchEdge,
    /// Depth ruler.
    Ruler,
    /// From a layer to its label.
    Leader,
    /// Where the feet should run, and its label.
    Tip,
    /// What was measured in the hole.
    Measured,
}

/// Whose colours a drawing is painted in.
#[uniffi::remote(Enum)]
pub enum Theme {
    /// Dark on light, for the day.
    Light,
    /// Light on dark.
    Dark,
    /// Black on white.
    Print,
    /// For pages of HTML; answers as light.
    Page,
}

/// The colour of a role in a theme, opaque sRGB, and how wide its lines are.
#[derive(Debug, Clone, Copy, PartialEq, uniffi::Record)]
pub struct RoleColour {
    /// The role.
    pub role: Role,
    /// 0 to 255.
    pub red: u8,
    /// 0 to 255.
    pub green: u8,
    /// 0 to 255.
    pub blue: u8,
    /// Width of lines in this role, in points of the drawing; 0 for a role that is only filled.
    pub stroke_width: f64,
}

/// The colours of all roles in a theme, in the order of [`Role`]: a shell has none of its own for drawings. Constant;
/// ask once a theme. About 10 µs, any thread.
///
/// # Errors
/// None but a fault of this program.
#[uniffi::export]
pub fn colours(theme: Theme) -> Result<Vec<RoleColour>, crate::PitfaceError> {
    let of = |&role: &Role| {
        let picture::Colour { red, green, blue } = theme.colour(role);
        RoleColour { role, red, green, blue, stroke_width: role.stroke_width() }
    };
    Ok(Role::ALL.iter().map(of).collect())
}
