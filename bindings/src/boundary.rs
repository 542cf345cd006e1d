//! Outlines and lines out of files of other programs.

use crate::PitfaceError;
use crate::given::id;
use crate::held::{Answer, Held};
use crate::made::new_id;
use crate::save::why;
use pitface_core::boundary::{FromFile, LARGEST_BYTES, Trouble, is_geopackage, misplaced, places_of, read};
use pitface_core::error::Fault;
use pitface_core::record::{Buried, BuriedLine, Unknown};
use pitface_core::screen::boundary::InFile;
use pitface_core::screen::{Edit, Place};
use pitface_core::store::read_geopackage;
use std::fs::File;
use std::io::{self, Read as _};
use std::path::Path;

/// What a file holds.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct BoundaryFile {
    /// Its kind and reference system, or why nothing of it can be taken; a sentence.
    pub said: String,
    /// What there is to choose from, areas first.
    pub choices: Vec<BoundaryChoice>,
}

/// One area or line.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct BoundaryChoice {
    /// Its number among the areas, or among the lines, from 1.
    pub number: u32,
    /// Whether it is a line.
    pub is_line: bool,
    /// Its name and size.
    pub label: String,
}

/// What is taken.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct BoundaryTaken {
    /// Number of the choice.
    pub number: u32,
    /// What lies along the line, by its code; none for an area.
    pub line_kind: Option<String>,
    /// Depth to the top of what lies along the line, millimetres.
    pub depth_mm: Option<u32>,
    /// The file has latitude before longitude.
    pub swapped: bool,
    /// It is taken though it lies far from everything noted of the field.
    pub anyway: bool,
}

impl Held {
    /// Shows what is in a file with the edges of fields; what is wrong with it is told where one is.
    pub fn open_boundaries(&mut self, path: &Path) -> Result<Answer, PitfaceError> {
        let Ok(bytes) = bytes_of(path) else { return self.told(self.words.taken_in_unread()) };
        match found_in(path, &bytes, false) {
            Ok(found) => {
                let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
                self.boundary = Some(InFile { name, found });
                self.go(Place::Boundary { field: self.place.field(), chosen: None });
                self.told(String::new())
            }
            Err(fault) => {
                let name = path.file_name().unwrap_or_default().to_string_lossy();
                self.told(self.words.boundary_trouble(Trouble::of(&name, &bytes, &fault)))
            }
        }
    }

    pub fn boundaries_in(&self, path: &str, swapped: bool) -> BoundaryFile {
        let words = &self.words;
        let found = match found(Path::new(path), swapped) {
            Ok(found) => found,
            Err(fault) => {
                let said =
                    fault.map_or_else(|| words.taken_in_unread(), |fault| words.not_taken_in(&[fault]));
                return BoundaryFile { said, choices: Vec::new() };
            }
        };
        let choice = |is_line: bool| move |(number, label)| BoundaryChoice { number, is_line, label };
        let areas = (1..).zip(found.areas.iter().map(|area| words.boundary_area(area))).map(choice(false));
        let lines = (1..).zip(found.lines.iter().map(|line| words.boundary_line(line))).map(choice(true));
        BoundaryFile { said: words.boundary_file(&found), choices: areas.chain(lines).collect() }
    }

    pub fn take_boundary(
        &mut self,
        field: &str,
        path: &str,
        taken: &BoundaryTaken,
    ) -> Result<Answer, PitfaceError> {
        let mut notes = self.store.load_notes(id(field)?)?;
        let found = match found(Path::new(path), taken.swapped) {
            Ok(found) => found,
            Err(None) => return self.told(self.words.taken_in_unread()),
            Err(Some(fault)) => return self.told(self.words.not_taken_in(&[fault])),
        };
        let index = (taken.number as usize).checked_sub(1);
        let no_choice = || PitfaceError::Invalid {
            what: format!("there is no choice {}", taken.number),
            todo: "give a number that the file's choices have".to_owned(),
        };
        let known = places_of(&notes);
        let name = notes.field.name.clone();
        let far = |places: &[[f64; 2]]| {
            misplaced(places, &known).filter(|_| !taken.anyway).map(|far| far.fault(&name))
        };
        let (told, fault) = if let Some(kind) = &taken.line_kind {
            let kind = Buried::from_code(kind).ok_or_else(|| PitfaceError::Invalid {
                what: format!("{kind:?} is no kind of line"),
                todo: format!("give one of: {}", Buried::CODES.join(", ")),
            })?;
            let line = index.and_then(|at| found.lines.get(at)).ok_or_else(no_choice)?;
            let along = line.along.clone();
            let fault = far(&along);
            let (depth_mm, unknown) = (taken.depth_mm, Unknown::new());
            notes.field.lines.push(BuriedLine { id: new_id(), kind, along, depth_mm, sort: None, unknown });
            (self.words.boundary_line_taken(&name, kind, line), fault)
        } else {
            let area = index.and_then(|at| found.areas.get(at)).ok_or_else(no_choice)?;
            let crossed = area.outline().err().map(|fault| Fault::new("", fault.wrong(), fault.todo()));
            let before = pitface_core::place::Outline::new(&notes.field.outline).ok();
            let before = before.map(|outline| outline.area_m2());
            notes.field.outline.clone_from(&area.ring);
            (self.words.boundary_outline_taken(&name, area, before), crossed.or_else(|| far(&area.ring)))
        };
        if let Some(fault) = fault {
            return self.told(self.words.not_taken_in(&[fault]));
        }
        match self.save(&[Edit::Field(notes.field)]) {
            Ok(kept) => Ok(Answer { screen: self.shown_with(told, kept.saved)?, changed: kept.changed }),
            Err(error) => self.told(self.words.not_saved(why(&error))),
        }
    }
}

/// What a file holds; no fault where it cannot be read at all.
fn found(path: &Path, swapped: bool) -> Result<FromFile, Option<Fault>> {
    let bytes = bytes_of(path).map_err(|_| None)?;
    found_in(path, &bytes, swapped).map_err(Some)
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
