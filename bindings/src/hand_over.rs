//! Notes files out and in.

use crate::PitfaceError;
use crate::given::id;
use crate::held::{Answer, Held};
use crate::made::{new_id, now_ms};
use crate::save::why;
use pitface_core::boundary;
use pitface_core::merge::{Damage, Part};
use pitface_core::record::{Field, FieldNotes, RecordId, notes};
use pitface_core::report::{card, sheet};
use pitface_core::screen::{Incoming, Place};
use pitface_core::store::{NotesFile, ReadIn, StoreError, photo_hash, write_whole};
use pitface_core::words::Around;
use pitface_locked::{Opened, Refused, is_locked};
use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, Read, Seek};
use std::path::Path;

/// A notes file that was opened and is not taken in yet.
pub(crate) struct OpenedFile {
    source: Option<String>,
    notes: FieldNotes,
    made: BTreeSet<RecordId>,
    pub shown: Incoming,
}

impl OpenedFile {
    fn file(&self) -> NotesFile<'_> {
        NotesFile { source: self.source.as_deref(), made: &self.made, remove: None }
    }
}

impl Held {
    pub fn export_field(&self, field: &str, folder: &str) -> Result<String, PitfaceError> {
        let notes = self.store.load_notes(id(field)?)?;
        let folder = Path::new(folder);
        if !folder.is_dir() {
            return Err(PitfaceError::NotFound { what: folder.display().to_string() });
        }
        let path = folder.join(format!("{}.notes.json", self.file_name(&notes.field)?));
        write_whole(&path, notes::write(&notes).as_bytes())?;
        Ok(path.display().to_string())
    }

    pub fn export_page(&self, field: &str, of_card: bool, folder: &str) -> Result<String, PitfaceError> {
        let notes = self.store.load_notes(id(field)?)?;
        let folder = Path::new(folder);
        if !folder.is_dir() {
            return Err(PitfaceError::NotFound { what: folder.display().to_string() });
        }
        let answer = self.answers.of(&notes, self.now().date_naive());
        let photos = self.folder.photos();
        let photo = |hash: &str| fs::read(photos.path(&photo_hash(hash)?)).ok();
        let (page, end) = if of_card {
            let none = || PitfaceError::NotFound { what: format!("ground to be loosened in {field}") };
            (card(&self.words, &answer).ok_or_else(none)?, "-card")
        } else {
            (sheet(&self.words, &answer, &photo), "")
        };
        let path = folder.join(format!("{}{end}.html", self.file_name(&notes.field)?));
        write_whole(&path, page.html().as_bytes())?;
        Ok(path.display().to_string())
    }

    pub fn import_file(&mut self, path: &str) -> Result<Answer, PitfaceError> {
        let Ok((text, mut file)) = begun(Path::new(path)) else {
            return self.told(self.words.taken_in_unread());
        };
        if Part::begins(&text) {
            return self.import_bundle(&mut file);
        }
        if is_locked(&text) {
            return self.import_locked(file);
        }
        // Whoever is at an edge means a boundary, also with a file that is none.
        let at_edge = matches!(self.place, Place::Outline { .. } | Place::Boundary { .. });
        if boundary::begins(&text) || at_edge && !text.trim_ascii_start().starts_with(b"{") {
            return self.open_boundaries(Path::new(path));
        }
        let Ok(text) = String::from_utf8(text) else { return self.told(self.words.taken_in_unread()) };
        let mut made = BTreeSet::new();
        let read = notes::read(&text, &mut || {
            let id = new_id();
            made.insert(id);
            id
        });
        let notes = match read {
            Ok(read) => read.notes,
            Err(faults) => return self.told(self.words.not_taken_in(&faults)),
        };
        // The shell gives it under the name that it came with.
        let source = Path::new(path).file_name().map(|name| name.to_string_lossy().into_owned());
        self.opened = Some(OpenedFile { source, notes, made, shown: Incoming::default() });
        self.look_into_opened()
    }

    /// Shows what the opened file would add and change; one that says nothing new is only told.
    fn look_into_opened(&mut self) -> Result<Answer, PitfaceError> {
        let Some(mut opened) = self.opened.take() else { return self.told(String::new()) };
        let came = match self.store.would_read_in(&mut opened.notes.clone(), &opened.file(), now_ms()) {
            Ok(came) => came,
            Err(error) => return self.refused(&error),
        };
        let told = self.would_bring(&came, &opened.notes.field.name);
        if came.is_nothing_new() {
            let place = self.place_of(came.field)?;
            self.go(place);
            return self.told(told.join(" "));
        }
        opened.shown.told = told;
        self.opened = Some(opened);
        self.go(Place::Incoming);
        self.told(String::new())
    }

    /// Takes in the opened file in one save.
    pub fn take_in_opened(&mut self) -> Result<Answer, PitfaceError> {
        let Some(mut opened) = self.opened.take() else { return self.told(String::new()) };
        let mut notes = opened.notes.clone();
        let came = match self.store.read_in(&mut notes, &opened.file(), now_ms()) {
            Ok(came) => came,
            Err(error) => {
                opened.shown.told.truncate(1);
                self.opened = Some(opened);
                return self.refused(&error);
            }
        };
        self.notes.changed(None);
        self.partners_stale();
        let place = self.place_of(came.field)?;
        self.go(place);
        // What it brings stood on the screen before.
        let told = self.words.taken_in(&notes.field.name);
        Ok(Answer { screen: self.shown_with(told, true)?, changed: !came.is_nothing_new() })
    }

    /// Where a field is shown: under the oldest of the records that it is.
    fn place_of(&self, field: RecordId) -> Result<Place, StoreError> {
        let field = self.store.one_field(field)?.first().copied().unwrap_or(field);
        Ok(Place::Field { field })
    }

    fn refused(&mut self, error: &StoreError) -> Result<Answer, PitfaceError> {
        match error {
            StoreError::InvalidValue(fault) => {
                self.told(self.words.not_taken_in(std::slice::from_ref(fault)))
            }
            StoreError::FieldDeleted { name, .. } => self.told(self.words.field_deleted(name)),
            error => self.told(self.words.not_saved(why(error))),
        }
    }

    /// Returns what a notes file would bring.
    fn would_bring(&self, came: &ReadIn, field: &str) -> Vec<String> {
        let belongs = |record| self.store.belongs(record).ok();
        let made = |_| None;
        self.words.read_in(came, field, false, &Around { belongs: &belongs, made: &made })
    }

    fn import_locked(&mut self, file: File) -> Result<Answer, PitfaceError> {
        let Some(word) = self.team_word.word() else { return self.told(self.words.bundle_locked()) };
        match Opened::open(file, word) {
            Ok(mut opened) => self.import_bundle(&mut opened),
            Err(Refused::Damaged) => self.told(self.words.bundle_refused(&Damage::CutOff)),
            Err(_) => self.told(self.words.bundle_wrong_word()),
        }
    }

    /// The name of a field's file.
    fn file_name(&self, field: &Field) -> Result<String, StoreError> {
        let kept = self.store.fields()?;
        let others = kept.iter().filter(|other| other.id != field.id).map(|other| other.name.as_str());
        Ok(notes::file_name(&field.name, field.id, others))
    }
}

/// As much of a file as a notes file has, and the file from its beginning: a film chosen by mistake is not to fill the memory.
fn begun(path: &Path) -> io::Result<(Vec<u8>, File)> {
    let (mut bytes, mut file) = (Vec::new(), File::open(path)?);
    (&mut file).take(notes::LONGEST_BYTES).read_to_end(&mut bytes)?;
    file.rewind()?;
    Ok((bytes, file))
}
