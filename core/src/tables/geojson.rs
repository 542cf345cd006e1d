//! Tables as GeoJSON (RFC 7946): one collection, a feature a line.

use super::{Cell, DECIMALS, Row, Shape, Table, rounded};
use crate::place::on_grid;
use serde_json::{Map, Value, json};

/// The tables as one feature collection. Every row of a table that stands alone is a feature, its property `table` the
/// table's name; rows of the others are lists in its properties. Places have seven decimals; a row without a place has no
/// geometry.
pub fn geojson(tables: &[Table]) -> String {
    let nested: Vec<&Table> = tables.iter().filter(|table| !table.within.is_empty()).collect();
    let features: Vec<String> = tables
        .iter()
        .filter(|table| table.within.is_empty())
        .flat_map(|table| (0..table.rows.len()).map(move |at| (table, at)))
        .map(|(table, at)| feature(table, at, &nested).to_string())
        .collect();
    format!("{{\"type\":\"FeatureCollection\",\"features\":[\n{}\n]}}\n", features.join(",\n"))
}

fn feature(table: &Table, at: usize, nested: &[&Table]) -> Value {
    let row = &table.rows[at];
    let mut properties = Map::new();
    properties.insert("table".into(), table.name.into());
    properties.extend(members(table, row, true));
    for other in nested.iter().filter(|other| other.within.contains(&table.name)) {
        let belongs = other.rows.iter().filter(|inner| inner.of == Some((table.name, at)));
        let rows: Vec<Value> =
            belongs.map(|inner| members(other, inner, false).collect::<Map<_, _>>().into()).collect();
        properties.insert(other.name.into(), rows.into());
    }
    let mut feature = Map::new();
    feature.insert("type".into(), "Feature".into());
    feature.extend(row.id.clone().map(|id| ("id".into(), id.into())));
    feature.insert("geometry".into(), row.shape.as_ref().and_then(geometry).unwrap_or(Value::Null));
    feature.insert("properties".into(), properties.into());
    feature.into()
}

/// The cells of a row by their names, with or without those that say what it belongs to.
fn members<'a>(table: &'a Table, row: &'a Row, links: bool) -> impl Iterator<Item = (String, Value)> + 'a {
    let cells = table.columns.iter().zip(&row.cells).filter(move |(column, _)| links || !column.links);
    cells.map(|(column, cell)| (column.name.to_string(), value(cell)))
}

fn value(cell: &Cell) -> Value {
    match cell {
        Cell::Empty => Value::Null,
        Cell::Text(text) => text.as_str().into(),
        Cell::Whole(whole) => (*whole).into(),
        Cell::Number(number) => (*number).into(),
        Cell::Flag(flag) => (*flag).into(),
        Cell::Lengths(lengths) => lengths.as_slice().into(),
    }
}

/// The geometry; `None` where rounding leaves nothing of it.
fn geometry(shape: &Shape) -> Option<Value> {
    let (kind, places) = match shape {
        Shape::Point(place) => ("Point", json!(place.map(rounded))),
        Shape::Line(pieces) => {
            let pieces = pieces.iter().map(|piece| apart(piece)).filter(|piece| piece.len() > 1);
            one_or_many(["LineString", "MultiLineString"], pieces.map(Value::from).collect())?
        }
        Shape::Ground(pieces) => {
            let pieces = pieces.iter().flat_map(|piece| on_grid(piece, DECIMALS));
            one_or_many(["Polygon", "MultiPolygon"], pieces.map(|piece| json!(piece)).collect())?
        }
    };
    Some(json!({ "type": kind, "coordinates": places }))
}

/// Rounded places, neighbours that have become one written once.
fn apart(places: &[[f64; 2]]) -> Vec<Value> {
    let mut places: Vec<[f64; 2]> = places.iter().map(|place| place.map(rounded)).collect();
    places.dedup();
    places.into_iter().map(|place| json!(place)).collect()
}

fn one_or_many(kinds: [&'static str; 2], mut pieces: Vec<Value>) -> Option<(&'static str, Value)> {
    match pieces.len() {
        0 => None,
        1 => Some((kinds[0], pieces.swap_remove(0))),
        _ => Some((kinds[1], pieces.into())),
    }
}
