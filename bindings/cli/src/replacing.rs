//! What may be put where something stands already: only what this program writes anew at every run, over an earlier one of the same
//! sort. A store, notes, a key, a bundle under a drawing's name are somebody's work, and so is all that is not known.

use crate::pdf;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::report::GENERATOR;
use pitface_core::store::APPLICATION_ID;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

/// A sort of file, by how it begins.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sort {
    Nothing,
    Drawing,
    Page,
    Pdf,
    GeoJson,
    GeoPackage,
    ForTerminal,
    Table,
    Bundle,
    ManualPage,
    Store,
    Notes,
    Key,
    Unknown,
}

/// The application id of a GeoPackage (OGC 12-128r18, requirement 2).
const GEOPACKAGE: &[u8] = b"GPKG";
/// Where SQLite keeps it, and how its files begin (sqlite.org/fileformat2.html, 1.3).
const APPLICATION_ID_AT: usize = 68;
/// Where a zipped file names the first file within (APPNOTE 6.3, 4.3.7), and what that is in those for terminals.
const ZIPPED_NAME_AT: usize = 30;
const FOR_TERMINAL: [&str; 3] = ["zones.shp", "loosen.shp", "TASKDATA/"];
/// Only our drawings say their language in both ways, in this order.
const DRAWING: &str = "role=\"img\" xml:lang=\"";
const SQLITE: &[u8] = b"SQLite format 3\0";
/// As much of a file as tells its sort.
const HEAD_BYTES: u64 = 4096;
/// A key is 32 bytes in hex, and a line's end.
const KEY_LETTERS: usize = 64;

impl Sort {
    fn of(head: &[u8]) -> Self {
        let begins: [(&[u8], Self); 4] = [
            (b"{\"type\":\"FeatureCollection\"", Self::GeoJson),
            (b"field_number,", Self::Table),
            (b"PITB", Self::Bundle),
            (b".ie \\n(.g", Self::ManualPage),
        ];
        if head.is_empty() {
            return Self::Nothing;
        }
        if let Some((_, sort)) = begins.iter().find(|(beginning, _)| head.starts_with(beginning)) {
            return *sort;
        }
        let has = |part: &str| head.windows(part.len()).any(|window| window == part.as_bytes());
        // The first file within stands right behind the head of a zipped file.
        if head.starts_with(b"PK") {
            let first = head.get(ZIPPED_NAME_AT..).unwrap_or_default();
            let ours = FOR_TERMINAL.iter().any(|name| first.starts_with(name.as_bytes()));
            return if ours { Self::ForTerminal } else { Self::Unknown };
        }
        if head.starts_with(b"<svg ") && has(DRAWING) {
            return Self::Drawing;
        }
        if head.starts_with(b"<!DOCTYPE html>") && has(GENERATOR) {
            return Self::Page;
        }
        if head.starts_with(pdf::BEGINS) {
            return if has(pdf::PRODUCED) { Self::Pdf } else { Self::Unknown };
        }
        if head.starts_with(SQLITE) {
            return match head.get(APPLICATION_ID_AT..APPLICATION_ID_AT + 4) {
                Some(id) if id == GEOPACKAGE => Self::GeoPackage,
                Some(id) if id == APPLICATION_ID.to_be_bytes() => Self::Store,
                _ => Self::Unknown,
            };
        }
        if pitface_locked::is_locked(head) {
            return Self::Bundle;
        }
        let text = head.trim_ascii();
        if text.len() == KEY_LETTERS && text.iter().all(u8::is_ascii_hexdigit) {
            return Self::Key;
        }
        if text.starts_with(b"{") && has("\"pitface\"") { Self::Notes } else { Self::Unknown }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Nothing => "an empty file",
            Self::Drawing => "a drawing",
            Self::Page => "a page",
            Self::Pdf => "a page as PDF",
            Self::GeoJson => "a GeoJSON file",
            Self::GeoPackage => "a GeoPackage",
            Self::ForTerminal => "a file for a terminal",
            Self::Table => "a table",
            Self::Bundle => "a bundle",
            Self::ManualPage => "a page of the manual",
            Self::Store => "a store",
            Self::Notes => "a notes file",
            Self::Key => "a key",
            Self::Unknown => "another file",
        }
    }

    fn is_written_anew(self) -> bool {
        !matches!(self, Self::Store | Self::Notes | Self::Key | Self::Unknown)
    }
}

/// Nothing, if the file `new` may be put in a place.
///
/// # Errors
/// What stands there is not ours to replace.
pub fn allowed(place: &Path, new: &Path) -> Result<(), Trouble> {
    let unread = |error: io::Error| cannot(place, "cannot be read", &error, "name another place");
    let sort = Sort::of(&head(new).map_err(unread)?);
    allowed_as(place, sort).or_else(|stands| match same(place, new) {
        Ok(true) => Ok(()),
        _ => Err(stands),
    })
}

/// The same of a bundle that is still to be written.
pub fn allowed_bundle(place: &Path) -> Result<(), Trouble> {
    allowed_as(place, Sort::Bundle)
}

fn allowed_as(place: &Path, new: Sort) -> Result<(), Trouble> {
    // Whatever else is wrong with the place is told when the file is put there.
    let Ok(there) = std::fs::symlink_metadata(place) else { return Ok(()) };
    let kind = there.file_type();
    if kind.is_dir() {
        return Err(stands(place, "a folder"));
    }
    if kind.is_symlink() {
        return Err(stands(place, "a link to another place"));
    }
    if !kind.is_file() {
        return Err(stands(place, "a pipe or a device"));
    }
    let unread = |error: io::Error| cannot(place, "cannot be read", &error, "name another place");
    let old = Sort::of(&head(place).map_err(unread)?);
    let may = old == Sort::Nothing || (old.is_written_anew() && old == new);
    if may { Ok(()) } else { Err(stands(place, old.name())) }
}

fn stands(place: &Path, what: &str) -> Trouble {
    let wrong = format!("{what} stands where this file goes");
    Trouble::one(place, Fault::new("", wrong, "move it, or name another place"))
}

/// The head of a file; a PDF, which tells its writer near its end, as a whole.
fn head(path: &Path) -> io::Result<Vec<u8>> {
    let mut head = Vec::new();
    let mut file = File::open(path)?;
    file.by_ref().take(HEAD_BYTES).read_to_end(&mut head)?;
    if head.starts_with(pdf::BEGINS) {
        file.read_to_end(&mut head)?;
    }
    Ok(head)
}

/// Returns whether both are ordinary files with the same bytes: to put one over the other changes nothing.
fn same(one: &Path, other: &Path) -> io::Result<bool> {
    Ok(std::fs::symlink_metadata(one)?.is_file()
        && std::fs::metadata(one)?.len() == std::fs::metadata(other)?.len()
        && std::fs::read(one)? == std::fs::read(other)?)
}
