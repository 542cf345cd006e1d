//! Zones with their depth as a zipped shapefile (ESRI Shapefile Technical Description, July 1998; dBASE III tables), for terminals that read
//! nothing else: flat polygons on WGS 84, one a record, whole numbers for the depth.

use super::ForTerminal;
use super::archive::zipped;
use chrono::{DateTime, Datelike as _, NaiveDate, Utc};
use pitface_core::place::Rings;
use pitface_core::tables::{Prescribed, guarded};
use pitface_core::units::LengthUnit;
use pitface_core::words::Words;

/// Bytes of the head of a .shp and .shx.
const HEAD: usize = 100;
const FILE_CODE: i32 = 9994;
const VERSION: i32 = 1000;
const POLYGON: i32 = 5;
/// WGS 84 as ESRI's programs write it.
const SYSTEM: &str = "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],\
    PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

/// A column of the table: its name of at most ten letters, `N`umber or `C`haracters, width, decimals.
type Column = (&'static str, u8, u8, u8);

/// A polygon with its cells as text.
struct Record<'a> {
    rings: &'a Rings,
    cells: Vec<String>,
}

/// The zones of these fields; `all` = also those that are not to be loosened, with depth 0.
///
/// # Errors
/// As zipping them does.
pub fn shapefile(
    fields: &[ForTerminal],
    all: bool,
    stem: &str,
    words: &Words,
    at: DateTime<Utc>,
) -> Result<Vec<u8>, rawzip::Error> {
    let columns = columns(words);
    let zones = fields.iter().flat_map(|its| its.zones.iter().map(move |zone| (its, zone)));
    let zones = zones.filter(|(_, zone)| all || zone.depth_mm.is_some()).zip(1..);
    let records: Vec<Record> = zones
        .flat_map(|((its, zone), number)| {
            let cells = cells(its, zone, number, words);
            zone.ground.iter().map(move |rings| Record { rings, cells: cells.clone() })
        })
        .collect();
    let (shapes, index) = shapes(&records);
    let table = table(&columns, &records, at.date_naive());
    let name = |ending: &str| format!("{stem}.{ending}");
    let files: [(&str, &[u8]); 5] = [
        (&name("shp"), &shapes),
        (&name("shx"), &index),
        (&name("dbf"), &table),
        (&name("prj"), SYSTEM.as_bytes()),
        (&name("cpg"), b"UTF-8"),
    ];
    zipped(&files, at)
}

/// Terminals choose a column by its name, so it says quantity and unit.
fn columns(words: &Words) -> Vec<Column> {
    let mut columns = vec![
        ("ZONE_NO", b'N', 5, 0),
        ("DEPTH_CM", b'N', 5, 0),
        ("DEPTH_MM", b'N', 5, 0),
        ("FIELD_NO", b'N', 5, 0),
        ("FIELD", b'C', 60, 0),
        ("FIELD_ID", b'C', 36, 0),
        ("ZONE", b'C', 12, 0),
        ("ADVICE", b'C', 20, 0),
        ("REMARK", b'C', 60, 0),
    ];
    if words.unit() == LengthUnit::Inches {
        columns.insert(1, ("DEPTH_IN", b'N', 5, 1));
    }
    columns
}

fn cells(its: &ForTerminal, zone: &Prescribed, number: usize, words: &Words) -> Vec<String> {
    let depth_mm = zone.depth_mm.unwrap_or(0);
    let field = &its.field.notes.field;
    let remark = match (zone.depth_mm, zone.call) {
        (Some(depth_mm), Some(call)) => words.terminal_loosen(call, depth_mm),
        (_, Some(call)) => words.call_line(call),
        (_, None) => words.not_dug(),
    };
    let mut cells = vec![
        number.to_string(),
        (depth_mm / 10).to_string(),
        depth_mm.to_string(),
        its.number.to_string(),
        guarded(&field.name),
        its.field.lasting(field.id).map(|id| id.to_string()).unwrap_or_default(),
        zone.zone.code().to_owned(),
        zone.call.map_or_else(String::new, |call| call.call.code().to_owned()),
        // Without the space that does not break, which old tables do not have.
        remark.replace('\u{a0}', " "),
    ];
    if words.unit() == LengthUnit::Inches {
        cells.insert(1, format!("{:.1}", LengthUnit::Inches.number(depth_mm)));
    }
    cells
}

/// The .shp and the .shx.
fn shapes(records: &[Record]) -> (Vec<u8>, Vec<u8>) {
    let (mut shapes, mut index) = (vec![0; HEAD], vec![0; HEAD]);
    for (number, record) in (1..).zip(records) {
        let content = polygon(record.rings);
        for bytes in [words_of(shapes.len()), words_of(content.len())] {
            index.extend(bytes);
        }
        shapes.extend(i32::to_be_bytes(number));
        shapes.extend(words_of(content.len()));
        shapes.extend(content);
    }
    let around = extent(records.iter().flat_map(|record| record.rings.iter().flatten()));
    for file in [&mut shapes, &mut index] {
        let length = words_of(file.len());
        file[..4].copy_from_slice(&FILE_CODE.to_be_bytes());
        file[24..28].copy_from_slice(&length);
        file[28..32].copy_from_slice(&VERSION.to_le_bytes());
        file[32..36].copy_from_slice(&POLYGON.to_le_bytes());
        file[36..68].copy_from_slice(&around);
    }
    (shapes, index)
}

/// A length in words of 16 bits.
fn words_of(bytes: usize) -> [u8; 4] {
    i32::try_from(bytes / 2).unwrap_or(i32::MAX).to_be_bytes()
}

/// A record's content: rings turned, for here edges run clockwise and holes the other way.
fn polygon(rings: &Rings) -> Vec<u8> {
    let mut bytes = POLYGON.to_le_bytes().to_vec();
    bytes.extend(extent(rings.iter().flatten()));
    let places: usize = rings.iter().map(Vec::len).sum();
    for count in [rings.len(), places] {
        bytes.extend(count_of(count));
    }
    let mut start = 0;
    for ring in rings {
        bytes.extend(count_of(start));
        start += ring.len();
    }
    for [longitude, latitude] in rings.iter().flat_map(|ring| ring.iter().rev()) {
        bytes.extend(longitude.to_le_bytes());
        bytes.extend(latitude.to_le_bytes());
    }
    bytes
}

fn count_of(count: usize) -> [u8; 4] {
    i32::try_from(count).unwrap_or(i32::MAX).to_le_bytes()
}

/// West, south, east, north; noughts where there is no place.
fn extent<'a>(places: impl Iterator<Item = &'a [f64; 2]>) -> [u8; 32] {
    let all = places.map(|&[x, y]| [x, y, x, y]);
    let around = all
        .reduce(|one, its| [one[0].min(its[0]), one[1].min(its[1]), one[2].max(its[2]), one[3].max(its[3])]);
    let mut bytes = [0; 32];
    for (into, number) in bytes.chunks_exact_mut(8).zip(around.unwrap_or_default()) {
        into.copy_from_slice(&number.to_le_bytes());
    }
    bytes
}

/// The .dbf.
fn table(columns: &[Column], records: &[Record], today: NaiveDate) -> Vec<u8> {
    let width: usize = 1 + columns.iter().map(|column| usize::from(column.2)).sum::<usize>();
    let head = 32 + 32 * columns.len() + 1;
    let year = u8::try_from(today.year() - 1900).unwrap_or(0);
    let mut bytes = vec![3, year, today.month() as u8, today.day() as u8];
    bytes.extend(u32::try_from(records.len()).unwrap_or(u32::MAX).to_le_bytes());
    for size in [head, width] {
        bytes.extend(u16::try_from(size).unwrap_or(u16::MAX).to_le_bytes());
    }
    bytes.resize(32, 0);
    for &(name, kind, width, decimals) in columns {
        let mut column = [0; 32];
        column[..name.len()].copy_from_slice(name.as_bytes());
        column[11] = kind;
        (column[16], column[17]) = (width, decimals);
        bytes.extend(column);
    }
    bytes.push(b'\r');
    for record in records {
        bytes.push(b' ');
        for (&(_, kind, width, _), cell) in columns.iter().zip(&record.cells) {
            bytes.extend(fitted(cell, usize::from(width), kind == b'N'));
        }
    }
    bytes.push(0x1a);
    bytes
}

/// A cell filled up with blanks, numbers on the left; what is too long is cut between two letters.
fn fitted(cell: &str, width: usize, is_number: bool) -> Vec<u8> {
    let fits = (0..=cell.len().min(width)).rev().find(|&at| cell.is_char_boundary(at)).unwrap_or(0);
    let cell = &cell.as_bytes()[..fits];
    let blanks = vec![b' '; width - cell.len()];
    if is_number { [&blanks, cell].concat() } else { [cell, &blanks].concat() }
}
