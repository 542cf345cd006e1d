//! Zipped files: a KMZ, a shapefile with its companions, or any other file that is read here.

use super::{Format, Gathered, LARGEST_BYTES, as_text, shapefile, text, too_large};
use crate::error::Fault;
use miniz_oxide::inflate::{TINFLStatus, decompress_to_vec_with_limit};
use rawzip::{CompressionMethod, ZipArchive};
use std::collections::BTreeMap;

/// As many files are looked at. Our judgement.
const MOST_FILES: usize = 2_000;
/// Endings of the files that are unpacked; the rest, pictures above all, are left alone.
const WANTED: [&str; 8] = ["kml", "geojson", "json", "gpx", "shp", "dbf", "prj", "cpg"];

const PACK_ANEW: &str = "pack it anew as a common zip file, without a password";

pub(super) fn read(bytes: &[u8], gathered: &mut Gathered) -> Result<Format, Fault> {
    let files = unpacked(bytes)?;
    let ending = |name: &str, ending: &str| name.rsplit_once('.').is_some_and(|(_, its)| its == ending);
    let mut format = None;
    for (name, shapes) in files.iter().filter(|(name, _)| ending(name, "shp")) {
        let stem = &name[..name.len() - 3];
        let beside = |ending: &str| files.get(&format!("{stem}{ending}")).map(Vec::as_slice);
        let parts =
            shapefile::Parts { shapes, table: beside("dbf"), system: beside("prj"), letters: beside("cpg") };
        shapefile::read(&parts, gathered).map_err(|fault| within(name, fault))?;
        format = Some(Format::Shapefile);
    }
    for (name, bytes) in
        files.iter().filter(|(name, _)| ["kml", "geojson", "json", "gpx"].iter().any(|its| ending(name, its)))
    {
        let read =
            as_text(bytes).and_then(|its| text(name, &its, gathered)).map_err(|fault| within(name, fault))?;
        format = format.or(Some(if read == Format::Kml { Format::Kmz } else { read }));
    }
    format.ok_or_else(|| {
        let todo = "pack a shapefile (.shp, .dbf and .prj of one name), KML, GeoJSON or GPX";
        Fault::new("", "nothing in this zipped file is read here", todo)
    })
}

/// A fault of a file within.
fn within(name: &str, fault: Fault) -> Fault {
    let at = if fault.at.is_empty() { name.to_owned() } else { format!("{name}: {}", fault.at) };
    Fault { at, ..fault }
}

/// The wanted files by their names in small letters. Together they hold no more than [`LARGEST_BYTES`], whatever the archive says of them.
fn unpacked(bytes: &[u8]) -> Result<BTreeMap<String, Vec<u8>>, Fault> {
    let broken = |_| Fault::new("", "this zipped file is broken off or damaged", PACK_ANEW);
    let archive = ZipArchive::from_slice(bytes).map_err(broken)?;
    let (mut files, mut left) = (BTreeMap::new(), LARGEST_BYTES);
    let mut entries = archive.entries();
    let mut seen = 0;
    while let Some(entry) = entries.next_entry().map_err(broken)? {
        seen += 1;
        if seen > MOST_FILES {
            return Err(Fault::new("", "this zipped file holds more files than are looked at", PACK_ANEW));
        }
        let name = String::from_utf8_lossy(entry.file_path().as_bytes()).to_lowercase();
        let wanted = name.rsplit_once('.').is_some_and(|(_, ending)| WANTED.contains(&ending));
        // What a desk's system notes of a file beside it.
        let beside =
            name.starts_with("__macosx/") || name.rsplit('/').next().is_some_and(|own| own.starts_with("._"));
        if !wanted || beside {
            continue;
        }
        let method = entry.compression_method();
        let packed = archive.get_entry(entry.wayfinder()).map_err(broken)?.data();
        let content = if method == CompressionMethod::STORE {
            if packed.len() > left {
                return Err(too_large());
            }
            packed.to_vec()
        } else if method == CompressionMethod::DEFLATE {
            decompress_to_vec_with_limit(packed, left).map_err(|error| match error.status {
                TINFLStatus::HasMoreOutput => too_large(),
                _ => Fault::new(name.as_str(), "this file within is damaged, or has a password", PACK_ANEW),
            })?
        } else {
            return Err(Fault::new(
                name,
                "this file within is packed in a way that is not read here",
                PACK_ANEW,
            ));
        };
        left -= content.len();
        files.insert(name, content);
    }
    Ok(files)
}
