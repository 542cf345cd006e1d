//! KML (OGC 12-007r2), longitude first, always WGS 84.

use super::xml::{SAVE_ANEW, children, text};
use super::{Gathered, System, named};
use crate::error::Fault;
use roxmltree::Node;

pub(super) fn read(root: Node, gathered: &mut Gathered) -> Result<(), Fault> {
    gathered.in_system(System::Wgs84);
    let mut found = false;
    for (index, placemark) in root.descendants().filter(|node| is(*node, "Placemark")).enumerate() {
        found = true;
        let name = text(placemark, "name").or_else(|| named::of(columns(placemark)));
        let at =
            name.as_deref().map_or(format!("Placemark {}", index + 1), |name| format!("Placemark {name}"));
        shapes(placemark, name.as_deref(), &at, gathered)?;
    }
    if !found && root.descendants().any(|node| is(node, "NetworkLink")) {
        let todo = "open it in the other program, and save the places themselves as KML";
        return Err(Fault::new("", "it only links to a file that lies elsewhere", todo));
    }
    Ok(())
}

fn is(node: Node, name: &str) -> bool {
    node.is_element() && node.tag_name().name() == name
}

/// The columns of a placemark that came from a table.
fn columns<'a>(placemark: Node<'a, '_>) -> impl Iterator<Item = (&'a str, String)> {
    let data = placemark.descendants().filter(|node| is(*node, "SimpleData") || is(*node, "Data"));
    data.filter_map(|data| {
        let value = data.text().map(str::to_owned).filter(|text| !text.trim().is_empty());
        Some((data.attribute("name")?, value.or_else(|| text(data, "value"))?))
    })
}

fn shapes(placemark: Node, name: Option<&str>, at: &str, gathered: &mut Gathered) -> Result<(), Fault> {
    let mut polygons = Vec::new();
    for node in placemark.descendants().filter(Node::is_element) {
        match node.tag_name().name() {
            "Polygon" => polygons.push(polygon(node, at)?),
            "LineString" => gathered.line(name, &coordinates(node, at)?, at)?,
            "LinearRing" if !node.ancestors().any(|above| is(above, "Polygon")) => {
                polygons.push(vec![coordinates(node, at)?]);
            }
            "Track" => gathered.line(name, &track(node, at)?, at)?,
            "Point" => gathered.points(1),
            _ => {}
        }
    }
    gathered.polygons(name, &polygons, at)
}

fn polygon(polygon: Node, at: &str) -> Result<Vec<Vec<[f64; 2]>>, Fault> {
    let rings = ["outerBoundaryIs", "innerBoundaryIs"].into_iter().flat_map(|side| children(polygon, side));
    rings.flat_map(|side| children(side, "LinearRing")).map(|ring| coordinates(ring, at)).collect()
}

/// The places of a `coordinates` element: longitude, latitude and perhaps height, by commas, and blanks between places. Blanks beside the
/// commas, as people type them, do no harm.
fn coordinates(node: Node, at: &str) -> Result<Vec<[f64; 2]>, Fault> {
    let text = text(node, "coordinates").unwrap_or_default();
    let parts: Vec<&str> = text.split(',').map(str::trim).collect();
    let tidy = parts.join(",");
    tidy.split_whitespace().map(|place| tuple(place, at)).collect()
}

fn tuple(place: &str, at: &str) -> Result<[f64; 2], Fault> {
    let numbers: Option<Vec<f64>> =
        place.trim_matches(',').split(',').map(|part| part.parse().ok()).collect();
    match numbers.as_deref() {
        Some([longitude, latitude] | [longitude, latitude, _]) => Ok([*longitude, *latitude]),
        Some([_, _, _, _, ..]) => {
            let wrong = format!("`{}` has too many numbers for a place", short(place));
            Err(Fault::new(at, wrong, "write decimals with a point, not a comma"))
        }
        _ => Err(Fault::new(at, format!("`{}` is no place", short(place)), SAVE_ANEW)),
    }
}

/// A track of a receiver: `lon lat height` a place.
fn track(node: Node, at: &str) -> Result<Vec<[f64; 2]>, Fault> {
    let place = |coordinate: Node| {
        let text = coordinate.text().unwrap_or_default();
        let mut numbers = text.split_whitespace().map(str::parse);
        match (numbers.next(), numbers.next()) {
            (Some(Ok(longitude)), Some(Ok(latitude))) => Ok([longitude, latitude]),
            _ => Err(Fault::new(at, format!("`{}` is no place", short(text)), SAVE_ANEW)),
        }
    };
    children(node, "coord").map(place).collect()
}

fn short(text: &str) -> String {
    text.chars().take(40).collect()
}
