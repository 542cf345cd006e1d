//! What stands in a GeoPackage beside the tables: styles for map programs, and photos of the pits (OGC 18-000, related tables, media).

use super::Contents;
use crate::store::StoreError;
use crate::tables::LayerStyle;
use rusqlite::{Connection, params};

/// The table in which QGIS keeps styles, as version 3.22 makes it. A style is found only where the schema is empty text and not null.
const STYLES: &str = include_str!("styles.sql");
/// Tables of related media, with the rows by which they are known.
const RELATED: &str = include_str!("related.sql");

/// A photo of a pit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PitPhoto {
    /// Place of its pit among the rows of the table `pits`, from 0.
    pub pit_row: usize,
    /// Its id, where it has one that lasts.
    pub id: Option<String>,
    /// Media type, `image/jpeg`.
    pub media_type: &'static str,
    /// When it was taken, RFC 3339.
    pub taken: Option<String>,
    /// Depth on the face that its middle shows.
    pub depth_mm: Option<u32>,
    /// The picture.
    pub bytes: Vec<u8>,
}

/// Writes the styles; the first of a layer is its default.
pub(super) fn styles(connection: &Connection, styles: &[LayerStyle], at: &str) -> Result<(), StoreError> {
    if styles.is_empty() {
        return Ok(());
    }
    connection.execute_batch(STYLES)?;
    Contents { table: "layer_styles", data: "attributes", around: None, reference: None }
        .tell(connection, at)?;
    for LayerStyle { table, qml } in styles {
        connection.execute(
            "INSERT INTO layer_styles (f_table_catalog, f_table_schema, f_table_name, f_geometry_column, styleName, \
             styleQML, styleSLD, useAsDefault, description, owner, update_time) \
             VALUES ('', '', ?1, 'shape', ?1, ?2, '', 1, '', '', ?3)",
            params![table, qml, at],
        )?;
    }
    Ok(())
}

/// Writes photos as they come, so that no more than one is held in memory. Without one nothing tells of photos.
pub(super) fn photos(
    connection: &Connection,
    photos: &mut dyn Iterator<Item = PitPhoto>,
    at: &str,
) -> Result<(), StoreError> {
    for (count, photo) in photos.enumerate() {
        if count == 0 {
            connection.execute_batch(RELATED)?;
            Contents { table: "photos", data: "attributes", around: None, reference: None }
                .tell(connection, at)?;
        }
        connection.execute(
            "INSERT INTO photos (data, content_type, photo_id, taken, depth_mm) VALUES (?1, ?2, ?3, ?4, ?5)",
            params![photo.bytes, photo.media_type, photo.id, photo.taken, photo.depth_mm],
        )?;
        // Rows of `pits` were numbered from 1 as they were written.
        let pit = i64::try_from(photo.pit_row).unwrap_or(i64::MAX).saturating_add(1);
        connection.execute(
            "INSERT INTO pits_photos (base_id, related_id) VALUES (?1, ?2)",
            params![pit, connection.last_insert_rowid()],
        )?;
    }
    Ok(())
}
