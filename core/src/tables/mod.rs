//! A field's notes with what was read and called, as tables that any other program reads: [`geojson`], [`csv`], and a
//! GeoPackage, which is a database and so is written by [`crate::store::write_geopackage`].
//!
//! [`tables`] puts everything into rows once; `fitted` fits them to whoever reads them (words beside codes, units, how exactly
//! places are told), `style` says how a map draws them; the formats only write them down. Nothing is added to what was noted, read and
//! called but the numbers by which rows find each other. Lengths are whole millimetres, days and times ISO 8601 text with
//! the offset they were noted with, ids text. Not looked is empty (`null`), "none" is `none`. Keys that this version does not
//! know and the measures of machines stay in the notes file, which has everything.

mod csv;
mod fitted;
mod geojson;
mod prescription;
mod rows;
mod style;

pub use csv::{csv, guarded};
pub use fitted::{COARSE_DEG, Positions, in_units, labelled, placed};
pub use geojson::geojson;
pub use prescription::{Cells, Prescribed, cells, prescribed, unmarked};
pub use rows::{FieldTold, tables};
pub use style::{LayerStyle, styles};

use crate::place::Rings;
use std::borrow::Cow;

/// Decimals of a degree in texts: a hundredth of a metre on the ground. A GeoPackage has them as they were noted.
pub const DECIMALS: i32 = 7;

/// Rows of one kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What it is called in every format.
    pub name: &'static str,
    /// What its rows have as their place on the ground.
    pub shapes: Option<Shapes>,
    /// The tables whose rows its own belong to, and stand within where a format can nest; empty = it stands alone.
    pub within: &'static [&'static str],
    /// The columns, those that name what a row belongs to first.
    pub columns: Vec<Column>,
    /// The rows.
    pub rows: Vec<Row>,
}

/// What kind of shape a table's rows have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shapes {
    /// Places.
    Points,
    /// Lines, each in one piece or several.
    Lines,
    /// Ground, each in one piece or several.
    Grounds,
}

/// A column.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// Its name; a unit stands at the end.
    pub name: Cow<'static, str>,
    /// What its cells hold.
    pub holds: Holds,
    /// It only says what the row belongs to.
    pub links: bool,
    /// The lists of words that its codes may come from; empty = it holds no codes.
    pub lists: &'static [&'static str],
}

/// What the cells of a column hold, where they are not empty.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Holds {
    /// Text: codes, names, ids, times with their offset.
    Text,
    /// A day as `2025-09-12`.
    Day,
    /// A whole number.
    Whole,
    /// A number.
    Number,
    /// True or false.
    Flag,
    /// Several whole millimetres, in their order.
    Lengths,
}

/// A row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The record's id, where it has one that lasts.
    pub id: Option<String>,
    /// Table and place of the row it belongs to, for a nested table.
    pub of: Option<(&'static str, usize)>,
    /// Where it lies; `None` where nobody noted that.
    pub shape: Option<Shape>,
    /// A cell a column.
    pub cells: Vec<Cell>,
}

/// Where something lies: `[longitude, latitude]` in degrees, as noted.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A place.
    Point([f64; 2]),
    /// The pieces of a line.
    Line(Vec<Vec<[f64; 2]>>),
    /// The pieces of ground: rings closed, the outer one counter-clockwise.
    Ground(Vec<Rings>),
}

/// A cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Not looked, or nothing to say.
    Empty,
    /// Text, or a day.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A number, finite.
    Number(f64),
    /// True or false.
    Flag(bool),
    /// Several whole millimetres.
    Lengths(Vec<u32>),
}

impl Cell {
    /// Several lengths as text, a space between two.
    pub(crate) fn lengths_text(lengths: &[u32]) -> String {
        lengths.iter().map(u32::to_string).collect::<Vec<_>>().join(" ")
    }
}

/// Degrees with as many decimals as texts have.
fn rounded(degrees: f64) -> f64 {
    let scale = 10_f64.powi(DECIMALS);
    // Plus zero: a place just west of Greenwich is not `-0.0`.
    (degrees * scale).round() / scale + 0.0
}
