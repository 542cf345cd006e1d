//! Tables as a GeoPackage (OGC 12-128r19, version 1.4): an SQLite file, so it is written in the room of SQL.

mod beside;
mod blob;
mod read;

pub use beside::PitPhoto;
pub use read::read_geopackage;

use super::StoreError;
use crate::tables::{Cell, Column, Holds, LayerStyle, Row, Shapes, Table};
use blob::{Extent, blob, extent};
use chrono::{DateTime, SecondsFormat, Utc};
use rusqlite::types::Value;
use rusqlite::{Connection, params, params_from_iter};
use std::path::Path;

/// `GPKG`: what the file is (requirement 2).
const APPLICATION_ID: i32 = 0x4750_4B47;
/// Version 1.4.0 (requirement 2).
const USER_VERSION: i32 = 10400;
/// WGS 84, longitude first in geometries whatever the definition says (clause 2.1.3.1.1, note on axis order).
const WGS_84: i32 = 4326;
/// The tables that every GeoPackage has, with the rows of `gpkg_spatial_ref_sys` that must be in it (tables 1, 3, 4, 6
/// and annex C of the standard).
const FRAME: &str = include_str!("frame.sql");

/// What a GeoPackage is written from.
pub struct Packed<'a> {
    /// The tables.
    pub tables: &'a [Table],
    /// How map programs draw them.
    pub styles: &'a [LayerStyle],
    /// Photos of the pits, for tables in which `pits` is one.
    pub photos: &'a mut dyn Iterator<Item = PitPhoto>,
}

/// Writes tables as a GeoPackage into a file that is empty or not there yet. Positions stand in it with every digit they
/// were noted with. `at` is told as the time of the last change. Nothing is promised of the file after an error.
///
/// # Errors
/// As writing does; [`StoreError::NotAStore`] where something stands in the file.
pub fn write_geopackage(path: &Path, packed: Packed, at: DateTime<Utc>) -> Result<(), StoreError> {
    let Packed { tables, styles, photos } = packed;
    if std::fs::metadata(path).is_ok_and(|file| file.len() > 0) {
        return Err(StoreError::NotAStore("something stands in the file already"));
    }
    let mut connection = Connection::open(std::path::absolute(path)?)?;
    // A file that is thrown away after an error needs no way back.
    connection.pragma_update(None, "journal_mode", "OFF")?;
    connection.pragma_update(None, "synchronous", "FULL")?;
    connection.pragma_update(None, "foreign_keys", true)?;
    let transaction = connection.transaction()?;
    transaction.pragma_update(None, "application_id", APPLICATION_ID)?;
    transaction.pragma_update(None, "user_version", USER_VERSION)?;
    transaction.execute_batch(FRAME)?;
    let at = at.to_rfc3339_opts(SecondsFormat::Millis, true);
    for table in tables {
        write(&transaction, table, &at)?;
    }
    beside::styles(&transaction, styles, &at)?;
    beside::photos(&transaction, photos, &at)?;
    transaction.commit()?;
    connection.close().map_err(|(_, error)| error)?;
    Ok(())
}

fn write(connection: &Connection, table: &Table, at: &str) -> Result<(), StoreError> {
    let name = quoted(table.name);
    let shape = table.shapes.map(|shapes| format!("shape {}", type_of(shapes)));
    let columns: Vec<String> = ["fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL".to_owned()]
        .into_iter()
        .chain(shape)
        .chain(table.columns.iter().map(declared))
        .collect();
    let create = format!("CREATE TABLE {name} ({})", columns.join(", "));
    connection.execute_batch(&create)?;
    tell(connection, table, at)?;
    let width = table.columns.len() + usize::from(table.shapes.is_some());
    let mut insert =
        connection.prepare(&format!("INSERT INTO {name} VALUES (NULL{})", ", ?".repeat(width)))?;
    for row in &table.rows {
        let shape = table.shapes.is_some().then(|| geometry(row));
        insert.execute(params_from_iter(shape.into_iter().chain(row.cells.iter().map(value))))?;
    }
    Ok(())
}

/// A row of the table of contents.
struct Contents<'a> {
    table: &'a str,
    data: &'static str,
    around: Option<Extent>,
    reference: Option<i32>,
}

impl Contents<'_> {
    fn tell(&self, connection: &Connection, at: &str) -> Result<(), StoreError> {
        let [west, east, south, north] = self.around.map_or([None; 4], |around| around.0.map(Some));
        connection.execute(
            "INSERT INTO gpkg_contents (table_name, data_type, identifier, description, last_change, min_x, min_y, \
             max_x, max_y, srs_id) VALUES (?1, ?2, ?1, '', ?3, ?4, ?5, ?6, ?7, ?8)",
            params![self.table, self.data, at, west, south, east, north, self.reference],
        )?;
        Ok(())
    }
}

/// Returns what the file says of a table.
fn tell(connection: &Connection, table: &Table, at: &str) -> Result<(), StoreError> {
    let data = if table.shapes.is_some() { "features" } else { "attributes" };
    let around = table.rows.iter().filter_map(|row| extent(row.shape.as_ref()?)).reduce(Extent::with);
    let reference = table.shapes.map(|_| WGS_84);
    Contents { table: table.name, data, around, reference }.tell(connection, at)?;
    if let Some(shapes) = table.shapes {
        connection.execute(
            "INSERT INTO gpkg_geometry_columns VALUES (?1, 'shape', ?2, ?3, 0, 0)",
            params![table.name, type_of(shapes), WGS_84],
        )?;
    }
    Ok(())
}

const fn type_of(shapes: Shapes) -> &'static str {
    match shapes {
        Shapes::Points => "POINT",
        Shapes::Lines => "MULTILINESTRING",
        Shapes::Grounds => "MULTIPOLYGON",
    }
}

fn declared(column: &Column) -> String {
    let held = match column.holds {
        Holds::Text | Holds::Lengths => "TEXT",
        Holds::Day => "DATE",
        Holds::Whole => "INTEGER",
        Holds::Number => "DOUBLE",
        Holds::Flag => "BOOLEAN",
    };
    format!("{} {held}", quoted(&column.name))
}

/// A name that may be a word of SQL.
fn quoted(name: &str) -> String {
    format!("\"{name}\"")
}

fn geometry(row: &Row) -> Value {
    row.shape.as_ref().map_or(Value::Null, |shape| Value::Blob(blob(shape, WGS_84)))
}

fn value(cell: &Cell) -> Value {
    match cell {
        Cell::Empty => Value::Null,
        Cell::Text(text) => Value::Text(text.clone()),
        Cell::Whole(whole) => Value::Integer(*whole),
        Cell::Number(number) => Value::Real(*number),
        Cell::Flag(flag) => Value::Integer((*flag).into()),
        Cell::Lengths(lengths) => Value::Text(Cell::lengths_text(lengths)),
    }
}
