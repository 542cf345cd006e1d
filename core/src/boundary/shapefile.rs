//! Shapefiles (ESRI Shapefile Technical Description, July 1998): polygons and lines, flat or with heights and measures, which are
//! left out.

use super::{Gathered, System, dbase, wkt};
use crate::error::Fault;
use crate::order::sort_by;

/// Bytes of the file's head, and of a record's.
const HEAD: usize = 100;
const RECORD_HEAD: usize = 8;
/// Kinds of shape by their last digit: points, lines, polygons and sets of points; the tens say what stands behind x and y.
const LINES: u32 = 3;
const POLYGONS: u32 = 5;
const DIMENSIONS: u32 = 10;
/// Where counts, parts and places stand in a record of lines or polygons.
const COUNTS: usize = 36;
const PARTS: usize = 44;

const SAVE_ANEW: &str = "save the shapefile anew from the program it comes from";

/// The files of a shapefile.
pub(super) struct Parts<'a> {
    pub shapes: &'a [u8],
    pub table: Option<&'a [u8]>,
    pub system: Option<&'a [u8]>,
    pub letters: Option<&'a [u8]>,
}

pub(super) fn read(parts: &Parts, gathered: &mut Gathered) -> Result<(), Fault> {
    match parts.system {
        Some(definition) => gathered.in_system(wkt::system(&String::from_utf8_lossy(definition))?),
        // Degrees are taken for WGS 84, which is told; metres are refused as soon as one place is off the globe.
        None => gathered.in_unstated(System::Wgs84),
    }
    let mut names = parts.table.and_then(|table| dbase::names(table, parts.letters)).into_iter().flatten();
    let mut rest =
        parts.shapes.get(HEAD..).ok_or_else(|| Fault::new("", "this shapefile is broken off", SAVE_ANEW))?;
    let mut number = 0;
    while !rest.is_empty() {
        number += 1;
        let at = format!("record {number}");
        let broken = || Fault::new(at.as_str(), "the shapefile is broken off or damaged here", SAVE_ANEW);
        let words = big(rest, 4).ok_or_else(broken)? as usize;
        let record =
            words.checked_mul(2).and_then(|length| rest.get(RECORD_HEAD..RECORD_HEAD.checked_add(length)?));
        let record = record.ok_or_else(broken)?;
        rest = &rest[RECORD_HEAD + record.len()..];
        // A row that was deleted from the table still has its record here.
        let name = match names.next() {
            Some(dbase::Row::Deleted) => continue,
            Some(dbase::Row::Named(name)) => name,
            None => None,
        };
        shape(record, name.as_deref(), &at, gathered)?.ok_or_else(broken)?;
    }
    Ok(())
}

/// One record; `None` where it is broken.
fn shape(record: &[u8], name: Option<&str>, at: &str, gathered: &mut Gathered) -> Result<Option<()>, Fault> {
    let Some(kind) = little(record, 0) else { return Ok(None) };
    match kind % DIMENSIONS {
        LINES | POLYGONS if kind < 3 * DIMENSIONS => {
            let Some(lines) = lines(record) else { return Ok(None) };
            if kind % DIMENSIONS == POLYGONS {
                gathered.polygons(name, &sorted(lines), at)?;
            } else {
                lines.iter().try_for_each(|line| gathered.line(name, line, at))?;
            }
        }
        // Nothing (0), points, patches of solids.
        0 => {}
        _ => gathered.points(1),
    }
    Ok(Some(()))
}

/// The parts of a record.
fn lines(record: &[u8]) -> Option<Vec<Vec<[f64; 2]>>> {
    let (parts, points) = (little(record, COUNTS)? as usize, little(record, COUNTS + 4)? as usize);
    let places = PARTS.checked_add(parts.checked_mul(4)?)?;
    let places = record.get(places..places.checked_add(points.checked_mul(16)?)?)?;
    let starts: Option<Vec<usize>> =
        (0..parts).map(|part| Some(little(record, PARTS + 4 * part)? as usize)).collect();
    let starts = starts?;
    let ends = starts.iter().skip(1).copied().chain([points]);
    let line = |(start, end): (&usize, usize)| {
        let bytes = places.get(start.checked_mul(16)?..end.checked_mul(16)?)?;
        let number = |bytes: &[u8]| Some(f64::from_le_bytes(bytes.try_into().ok()?));
        bytes.chunks_exact(16).map(|place| Some([number(&place[..8])?, number(&place[8..])?])).collect()
    };
    starts.iter().zip(ends).map(line).collect()
}

/// Rings sorted into polygons: a ring that lies in another one is its hole, and one in a hole is a polygon again. The way they turn is not
/// asked: many files have it wrong.
fn sorted(rings: Vec<Vec<[f64; 2]>>) -> Vec<Vec<Vec<[f64; 2]>>> {
    let mut rings: Vec<_> =
        rings.into_iter().filter(|ring| ring.len() > 2).map(|ring| (spanned(&ring).abs(), ring)).collect();
    // A ring is smaller than the one it lies in.
    sort_by(&mut rings, |one, other| other.0.total_cmp(&one.0));
    let mut polygons: Vec<Vec<Vec<[f64; 2]>>> = Vec::new();
    // Of every ring the polygon whose hole it is; none of an outer one.
    let mut placed: Vec<Option<usize>> = Vec::new();
    for index in 0..rings.len() {
        let ring = &rings[index].1;
        let around = (0..index).rev().find(|&other| contains(&rings[other].1, ring));
        let hole_of = around.and_then(|other| match placed[other] {
            None => polygons.iter().position(|polygon| polygon[0] == rings[other].1),
            Some(_) => None,
        });
        match hole_of {
            Some(polygon) => polygons[polygon].push(ring.clone()),
            None => polygons.push(vec![ring.clone()]),
        }
        placed.push(hole_of);
    }
    polygons
}

/// Twice the area in the plane of the file.
fn spanned(ring: &[[f64; 2]]) -> f64 {
    ring.iter()
        .zip(ring.iter().cycle().skip(1))
        .map(|(one, other)| one[0] * other[1] - other[0] * one[1])
        .sum()
}

/// Returns whether a ring has the most part of another one's corners inside.
fn contains(ring: &[[f64; 2]], other: &[[f64; 2]]) -> bool {
    let inside = |[x, y]: [f64; 2]| {
        let sides = ring.iter().zip(ring.iter().cycle().skip(1));
        let crossed = sides.filter(|([ax, ay], [bx, by])| {
            (*ay > y) != (*by > y) && x < (bx - ax) * (y - ay) / (by - ay) + ax
        });
        crossed.count() % 2 == 1
    };
    // A few corners tell; one alone may lie on the other's side.
    let step = (other.len() / 8).max(1);
    let looked: Vec<bool> = other.iter().step_by(step).map(|corner| inside(*corner)).collect();
    looked.iter().filter(|inside| **inside).count() * 2 > looked.len()
}

fn little(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_le_bytes(bytes.get(at..at.checked_add(4)?)?.try_into().ok()?))
}

fn big(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_be_bytes(bytes.get(at..at.checked_add(4)?)?.try_into().ok()?))
}
