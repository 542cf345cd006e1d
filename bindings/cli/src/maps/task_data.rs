//! Zones with their depth as task data (ISO 11783-10, version 3.3, which the most terminals take), marked as advice: a planned task that
//! names no machine, so that nothing is bound to one.
//!
//! Structure, ranges and names follow the published schemas of versions 3.3 and 4.3; the standard's own text was not read, and no terminal was
//! tried. A zone without loosening has work state 0 and no depth: depth 0 would mean a tool at the surface.

use super::archive::zipped;
use super::{ForTerminal, shortened};
use chrono::{DateTime, Utc};
use pitface_core::tables::{Cells, cells};
use pitface_core::units::{INCH_MM, LengthUnit};
use pitface_core::words::Words;
use std::fmt::Write as _;

/// Letters of a name.
const LETTERS: usize = 32;
/// Entries of the data dictionary (ISO 11783-11): setpoint of the tillage depth in mm, positive downwards; setpoint of the work state.
const DEPTH: &str = "0033";
const WORK_STATE: &str = "0121";
/// The zone of ground that is not to be loosened, also where the position is lost or outside the field.
const LEAVE: usize = 0;
/// A grid has one byte a cell, so that so many zones of a field can be told apart.
const MOST_ZONES: usize = 254;

/// The task data of these fields as a zipped folder `TASKDATA`; how many fields are in it. `None` where none has an edge that a grid fits.
///
/// # Errors
/// As zipping it does.
pub fn task_data(
    fields: &[ForTerminal],
    words: &Words,
    at: DateTime<Utc>,
) -> Result<Option<(Vec<u8>, usize)>, rawzip::Error> {
    let gridded = fields.iter().filter_map(|its| Some((its, cells(its.field, &its.zones)?)));
    let gridded: Vec<(&ForTerminal, Cells)> = gridded
        .filter(|(its, cells)| its.zones.len() <= MOST_ZONES && cells.zones.iter().any(Option::is_some))
        .collect();
    if gridded.is_empty() {
        return Ok(None);
    }
    let mut files = vec![("TASKDATA/TASKDATA.XML".to_owned(), document(&gridded, words).into_bytes())];
    for (number, (_, cells)) in (1..).zip(&gridded) {
        let codes = cells.zones.iter().map(|zone| zone.map_or(LEAVE, |zone| zone + 1) as u8);
        files.push((format!("TASKDATA/{}.bin", grid_name(number)), codes.collect()));
    }
    let files: Vec<(&str, &[u8])> =
        files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
    zipped(&files, at).map(|bytes| Some((bytes, gridded.len())))
}

fn grid_name(number: usize) -> String {
    format!("GRD{number:05}")
}

fn document(fields: &[(&ForTerminal, Cells)], words: &Words) -> String {
    let version = env!("CARGO_PKG_VERSION");
    let mut xml = format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <ISO11783_TaskData VersionMajor=\"3\" VersionMinor=\"3\" ManagementSoftwareManufacturer=\"Pitface\" \
         ManagementSoftwareVersion=\"{version}\" DataTransferOrigin=\"1\">\n\
         <CTR A=\"CTR1\" B=\"Pitface\"/>\n<FRM A=\"FRM1\" B=\"Pitface\" I=\"CTR1\"/>\n"
    );
    for (number, (its, _)) in (1..).zip(fields) {
        part_field(its, number, &mut xml);
    }
    for (number, (its, cells)) in (1..).zip(fields) {
        task(its, cells, number, words, &mut xml);
    }
    let (scale, decimals, unit) = match words.unit() {
        LengthUnit::Centimetres => (0.1, 0, "cm"),
        LengthUnit::Inches => (1.0 / INCH_MM, 1, "in"),
    };
    let _ = write!(
        xml,
        "<VPN A=\"VPN1\" B=\"0\" C=\"{scale:.9}\" D=\"{decimals}\" E=\"{unit}\"/>\n</ISO11783_TaskData>\n"
    );
    xml
}

/// The field with its edge.
fn part_field(its: &ForTerminal, number: usize, xml: &mut String) {
    let field = &its.field.notes.field;
    let area_m2 = its.field.map.whole_m2().unwrap_or(0.0).round() as u64;
    let _ = write!(
        xml,
        "<PFD A=\"PFD{number}\" C=\"{}\" D=\"{area_m2}\" E=\"CTR1\" F=\"FRM1\"><PLN A=\"1\"><LSG A=\"1\">",
        name(&field.name)
    );
    for [longitude, latitude] in field.outline.iter().chain(field.outline.first()) {
        let _ = write!(xml, "<PNT A=\"2\" C=\"{latitude:.9}\" D=\"{longitude:.9}\"/>");
    }
    xml.push_str("</LSG></PLN></PFD>\n");
}

fn task(its: &ForTerminal, cells: &Cells, number: usize, words: &Words, xml: &mut String) {
    let title = format!("{} {}", words.terminal_task(), its.field.notes.field.name);
    let _ = write!(
        xml,
        "<TSK A=\"TSK{number}\" B=\"{}\" C=\"CTR1\" D=\"FRM1\" E=\"PFD{number}\" G=\"1\" H=\"{LEAVE}\" I=\"{LEAVE}\" J=\"{LEAVE}\">\
         <TZN A=\"{LEAVE}\" B=\"{}\"><PDV A=\"{WORK_STATE}\" B=\"0\"/></TZN>",
        name(&title),
        name(&words.terminal_leave())
    );
    for (code, zone) in (1..).zip(&its.zones) {
        let (Some(depth_mm), Some(call)) = (zone.depth_mm, zone.call) else { continue };
        let said = words.terminal_loosen(call, depth_mm);
        let _ = write!(
            xml,
            "<TZN A=\"{code}\" B=\"{}\"><PDV A=\"{DEPTH}\" B=\"{depth_mm}\" E=\"VPN1\"/><PDV A=\"{WORK_STATE}\" B=\"1\"/></TZN>",
            name(&said)
        );
    }
    let ([west, south], [wide, high]) = (cells.corner, cells.cell);
    let (columns, rows) = (cells.columns, cells.rows);
    let _ = writeln!(
        xml,
        "<GRD A=\"{south:.9}\" B=\"{west:.9}\" C=\"{high:.12}\" D=\"{wide:.12}\" E=\"{columns}\" F=\"{rows}\" G=\"{}\" H=\"{}\" I=\"1\"/></TSK>",
        grid_name(number),
        columns * rows
    );
}

/// A name as it stands in an attribute.
fn name(text: &str) -> String {
    let text = shortened(&text.replace('\u{a0}', " "), LETTERS);
    let kept = text.chars().filter(|letter| !letter.is_control()).collect::<String>();
    kept.replace('&', "&amp;").replace('<', "&lt;").replace('"', "&quot;")
}
