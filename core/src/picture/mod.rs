//! Drawings as a list of shapes with roles, never colours: the pit face, a small drawing for each answer that can
//! be drawn, the section across a machine and behind it, and the plan of a field.
//!
//! Whoever shows a drawing (the SVG writer here, a canvas elsewhere) paints shape after shape in the order of
//! the list, each in the colour its [`Role`] has in the [`Theme`] of the hour. Everything is resolved to
//! absolute coordinates: hatching is single lines and dots that end inside their layer, labels stand where
//! they collide with nothing, text already has its size. The same input always gives the same drawing.
//!
//! Condition is told by hatching and by the word beside it; colour only helps.

mod answer;
mod curve;
mod face;
mod ground;
mod hatch;
mod icon;
mod layout;
mod living;
pub mod machine;
pub mod photo;
mod pieces;
pub mod plan;
mod row;
mod seasons;
mod shape;
mod sheet;
mod strip;
mod svg;
mod theme;

pub use answer::{answer, how_to_roll, roll};
pub use face::{Face, FaceLayer, FacePicture, Mark, PHONE_WIDTH, Ruler, Tip};
pub use icon::{ICON_SIDE, Icon, icon};
pub use layout::{BASE_LINE, LINE_HEIGHT, text_width};
pub use row::{FacePlace, face, low_face, placed_faces};
pub use seasons::{SeasonsPicture, Seen, SeenGround, YearColumn, seasons};
pub use shape::{Anchor, Drawing, Point, Role, Shape};
pub use sheet::{ANSWER_HEIGHT, ANSWER_WIDTH};
pub use strip::{Strip, strip};
pub(crate) use svg::escape;
pub use svg::{Spoken, svg};
pub use theme::{Colour, Theme, style_sheet};
