//! GPX 1.0 and 1.1: tracks and routes of a receiver, always WGS 84. It has no areas; a track that runs round is taken for one.

use super::xml::{SAVE_ANEW, children, text};
use super::{Gathered, System};
use crate::error::Fault;
use roxmltree::Node;

pub(super) fn read(root: Node, gathered: &mut Gathered) -> Result<(), Fault> {
    gathered.in_system(System::Wgs84);
    gathered.points(children(root, "wpt").count());
    for (index, route) in children(root, "rte").enumerate() {
        let at = format!("rte {}", index + 1);
        gathered.line(text(route, "name").as_deref(), &places(route, "rtept", &at)?, &at)?;
    }
    for (index, track) in children(root, "trk").enumerate() {
        let (at, name) = (format!("trk {}", index + 1), text(track, "name"));
        let segments = children(track, "trkseg").map(|segment| places(segment, "trkpt", &at));
        let segments: Vec<Vec<[f64; 2]>> = segments.collect::<Result<_, _>>()?;
        if let [_, _, ..] = segments.as_slice() {
            // Where the receiver paused a new one begins: the way as a whole comes first, for a boundary is walked with pauses.
            gathered.line(name.as_deref(), &segments.concat(), &at)?;
        }
        for (number, segment) in (1..).zip(&segments) {
            let part = name.as_deref().filter(|_| segments.len() > 1);
            let part = part.map(|name| format!("{name} {number}/{}", segments.len()));
            gathered.line(part.as_deref().or(name.as_deref()), segment, &at)?;
        }
    }
    Ok(())
}

fn places(node: Node, name: &'static str, at: &str) -> Result<Vec<[f64; 2]>, Fault> {
    let degrees = |point: Node, attribute: &str| {
        let text = point.attribute(attribute).unwrap_or_default().trim();
        text.parse::<f64>().map_err(|_| {
            let found: String = text.chars().take(40).collect();
            Fault::new(at, format!("`{found}` is no {attribute} of a point"), SAVE_ANEW)
        })
    };
    children(node, name).map(|point| Ok([degrees(point, "lon")?, degrees(point, "lat")?])).collect()
}
