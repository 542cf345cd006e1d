//! Outlines and lines out of files of other programs.

use crate::PitfaceError;
use crate::held::{Answer, Held};
use pitface_core::boundary::{FromFile, LARGEST_BYTES, Trouble, is_geopackage, lies_swapped, read};
use pitface_core::error::Fault;
use pitface_core::screen::Place;
use pitface_core::screen::boundary::{InFile, known};
use pitface_core::store::read_geopackage;
use std::fs::File;
use std::io::{self, Read as _};
use std::path::Path;

impl Held {
    /// Shows what is in a file with the edges of fields; what is wrong with it is told where one is.
    pub fn open_boundaries(&mut self, path: &Path) -> Result<Answer, PitfaceError> {
        let Ok(bytes) = bytes_of(path) else { return self.told(self.words.taken_in_unread()) };
        self.load()?;
        match self.found_in(path, &bytes) {
            Ok((found, swapped)) => {
                let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
                self.boundary = Some(InFile { name, found, swapped });
                self.go(Place::Boundary { field: self.place.field(), chosen: None });
                self.told(String::new())
            }
            Err(trouble) => self.told(self.words.boundary_trouble(trouble)),
        }
    }

    /// Returns what a file holds, and whether it was read with latitude for longitude: where that alone brings it onto the globe, or
    /// to the field that is open, or to where one stands while none is.
    fn found_in(&self, path: &Path, bytes: &[u8]) -> Result<(FromFile, bool), Trouble> {
        let trouble = |fault: Fault| {
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            Trouble::of(&name, bytes, &fault)
        };
        let turned = || found_in(path, bytes, true).map(|found| (found, true));
        match found_in(path, bytes, false).map_err(trouble) {
            Ok(found) if lies_swapped(&found, &known(self.place.field(), &self.world())) => {
                turned().map_err(trouble)
            }
            Ok(found) => Ok((found, false)),
            Err(Trouble::Swapped) => turned().map_err(|_| Trouble::Swapped),
            Err(trouble) => Err(trouble),
        }
    }
}

fn bytes_of(path: &Path) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    File::open(path)?.take(LARGEST_BYTES as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn found_in(path: &Path, bytes: &[u8], swapped: bool) -> Result<FromFile, Fault> {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    if is_geopackage(bytes) { read_geopackage(path, swapped) } else { read(&name, bytes, swapped) }
}
