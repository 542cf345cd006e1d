//! Feature tables of a GeoPackage that another program wrote, for outlines and lines (OGC 12-128r19, clauses 1.1.2 and 2.1).

use crate::boundary::{
    Format, FromFile, Gathered, LARGEST_BYTES, System, geopackage_shape, name_of, system_of_text,
};
use crate::error::Fault;
use crate::store::aside::unchanging;
use rusqlite::types::ValueRef;
use rusqlite::{Connection, OpenFlags, OptionalExtension as _};
use std::path::Path;

const SAVE_ANEW: &str = "save the GeoPackage anew from the program it comes from";
const SAVE_IN_WGS_84: &str = "save it from the other program in WGS 84 (EPSG:4326)";
/// Rows of `gpkg_spatial_ref_sys` that say nothing (clause 1.1.2.1.2): undefined degrees, undefined metres.
const UNDEFINED: [i64; 2] = [0, -1];

/// A table with geometries.
struct Features {
    table: String,
    column: String,
    srs_id: i64,
}

/// The areas and lines of a GeoPackage; `swapped` as in [`crate::boundary::read`]. Nothing is written, not even beside it.
///
/// # Errors
/// One fault: what is wrong, and what to do.
pub fn read_geopackage(path: &Path, swapped: bool) -> Result<FromFile, Fault> {
    let mut beside = path.as_os_str().to_owned();
    beside.push("-wal");
    if std::fs::metadata(&beside).is_ok_and(|file| file.len() > 0) {
        let todo = "close the GeoPackage in the other program, and try again";
        return Err(Fault::new("", "another program has not finished writing it", todo));
    }
    let broken = |error: rusqlite::Error| {
        Fault::new("", format!("this GeoPackage cannot be read ({error})"), SAVE_ANEW)
    };
    let flags =
        OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    let connection = Connection::open_with_flags(unchanging(&path), flags).map_err(broken)?;
    // What the file says of functions and triggers is not run.
    connection.pragma_update(None, "trusted_schema", false).map_err(broken)?;
    let mut gathered = Gathered::new(swapped);
    let mut left = LARGEST_BYTES;
    for features in tables(&connection).map_err(broken)? {
        match features.srs_id {
            id if UNDEFINED.contains(&id) => gathered.in_unstated(System::Wgs84),
            id => gathered.in_system(system(&connection, id, &features.table).map_err(broken)??),
        }
        rows(&connection, &features, &mut left, &mut gathered).map_err(broken)??;
    }
    gathered.close(Format::GeoPackage)
}

/// Tables proper alone: a view could reckon for ever.
fn tables(connection: &Connection) -> rusqlite::Result<Vec<Features>> {
    let mut asked = connection.prepare(
        "SELECT g.table_name, g.column_name, g.srs_id FROM gpkg_geometry_columns g \
         JOIN gpkg_contents c ON c.table_name = g.table_name AND c.data_type = 'features' \
         JOIN sqlite_schema s ON s.type = 'table' AND lower(s.name) = lower(g.table_name) AND s.sql NOT LIKE 'CREATE VIRTUAL%' \
         ORDER BY g.table_name",
    )?;
    let features = asked
        .query_map([], |row| Ok(Features { table: row.get(0)?, column: row.get(1)?, srs_id: row.get(2)? }))?;
    features.collect()
}

fn system(connection: &Connection, srs_id: i64, table: &str) -> rusqlite::Result<Result<System, Fault>> {
    let row = connection
        .query_row(
            "SELECT organization, organization_coordsys_id, definition, srs_name FROM gpkg_spatial_ref_sys WHERE srs_id = ?1",
            [srs_id],
            |row| {
                Ok((row.get::<_, String>(0)?, row.get::<_, u32>(1)?, row.get::<_, String>(2)?, row.get::<_, String>(3)?))
            },
        )
        .optional()?;
    let Some((organization, code, definition, name)) = row else {
        return Ok(Err(Fault::new(table, "nothing says in which reference system it is", SAVE_IN_WGS_84)));
    };
    let known = if organization.eq_ignore_ascii_case("epsg") { System::of_epsg(code) } else { None };
    Ok(known.or_else(|| system_of_text(&definition).ok()).ok_or_else(|| {
        let name: String = name.chars().take(80).collect();
        Fault::new(table, format!("its reference system ({name}) is not read here"), SAVE_IN_WGS_84)
    }))
}

/// Adds the rows of a table; the bytes of their geometries are taken off `left`.
fn rows(
    connection: &Connection,
    features: &Features,
    left: &mut usize,
    gathered: &mut Gathered,
) -> rusqlite::Result<Result<(), Fault>> {
    let mut asked =
        connection.prepare(&format!("SELECT * FROM \"{}\"", features.table.replace('"', "\"\"")))?;
    let columns: Vec<String> = asked.column_names().map(str::to_owned).collect();
    let Some(shape) = columns.iter().position(|name| name.eq_ignore_ascii_case(&features.column)) else {
        return Ok(Err(Fault::new(
            features.table.as_str(),
            "its column of geometries is missing",
            SAVE_ANEW,
        )));
    };
    let mut rows = asked.query([])?;
    let mut number = 0;
    while let Some(row) = rows.next()? {
        number += 1;
        let at = format!("{} row {number}", features.table);
        let blob = match row.get_ref(shape)? {
            ValueRef::Blob(blob) => blob,
            ValueRef::Null => continue,
            _ => return Ok(Err(Fault::new(at, "no geometry stands in this row", SAVE_ANEW))),
        };
        let Some(rest) = left.checked_sub(blob.len()) else {
            let wrong = format!("it holds more than {} MiB of geometries", LARGEST_BYTES >> 20);
            let todo = "save only the fields that are wanted into a file of their own";
            return Ok(Err(Fault::new("", wrong, todo)));
        };
        *left = rest;
        let cells = columns.iter().enumerate().filter_map(|(index, column)| {
            let text = match row.get_ref(index).ok()? {
                ValueRef::Text(text) => String::from_utf8_lossy(text).into_owned(),
                ValueRef::Integer(number) => number.to_string(),
                _ => return None,
            };
            Some((column.as_str(), text))
        });
        if let Err(fault) = geopackage_shape(blob, name_of(cells).as_deref(), &at, gathered) {
            return Ok(Err(fault));
        }
    }
    Ok(Ok(()))
}
