//! Notes files out and in.

use crate::PitfaceError;
use crate::given::id;
use crate::held::{Answer, Held};
use crate::made::{new_id, now_ms};
use crate::save::why;
use pitface_core::merge::Part;
use pitface_core::record::adopt::{adopt, is_kept_as};
use pitface_core::record::{Field, FieldNotes, RecordId, notes};
use pitface_core::screen::Place;
use pitface_core::store::{Store, StoreError, write_whole};
use std::collections::BTreeSet;
use std::fs::File;
use std::io::{self, Read, Seek};
use std::path::Path;

/// How a file begins that is locked with a team's word (the age format, version line); only the command line opens it so far.
const LOCKED: &[u8] = b"age-encryption.org/v1\n";

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

    pub fn import_file(&mut self, path: &str) -> Result<Answer, PitfaceError> {
        let Ok((text, mut file)) = begun(Path::new(path)) else {
            return self.told(self.words.taken_in_unread());
        };
        if Part::begins(&text) {
            return self.import_bundle(&mut file);
        }
        if text.starts_with(LOCKED) {
            return self.told(self.words.bundle_locked());
        }
        let Ok(text) = String::from_utf8(text) else { return self.told(self.words.taken_in_unread()) };
        let mut made = BTreeSet::new();
        let read = notes::read(&text, &mut || {
            let id = new_id();
            made.insert(id);
            id
        });
        let mut notes = match read {
            Ok(read) => read.notes,
            Err(faults) => return self.told(self.words.not_taken_in(&faults)),
        };
        let by_name = made.contains(&notes.field.id);
        let known = known_as(&self.store, &notes, &made)?;
        if let Some(kept) = &known {
            adopt(&mut notes, kept, &made);
        }
        let saved = match self.store.save_notes(&notes, now_ms()) {
            Ok(saved) => saved,
            Err(error) => return self.told(self.words.not_saved(why(&error))),
        };
        self.notes.changed(None);
        self.place = Place::Field { field: notes.field.id };
        let told = if by_name && known.is_some() {
            self.words.taken_in_by_name(&notes.field.name, notes.pits.len())
        } else {
            self.words.taken_in(&notes.field.name, notes.pits.len())
        };
        Ok(Answer { screen: self.shown_with(told, true)?, changed: !saved.changes.is_empty() })
    }

    /// The name of a field's file.
    fn file_name(&self, field: &Field) -> Result<String, StoreError> {
        let kept = self.store.fields()?;
        let others = kept.iter().filter(|other| other.id != field.id).map(|other| other.name.as_str());
        Ok(notes::file_name(&field.name, field.id, others))
    }
}

/// The field that is kept already and that the notes of a file are of.
fn known_as(
    store: &Store,
    notes: &FieldNotes,
    made: &BTreeSet<RecordId>,
) -> Result<Option<FieldNotes>, StoreError> {
    let kept = store.fields()?;
    let known = kept.into_iter().find(|known| is_kept_as(&notes.field, made, known.id, &known.name));
    known.map(|known| store.load_notes(known.id)).transpose()
}

/// As much of a file as a notes file has, and the file from its beginning: a film chosen by mistake is not to fill the memory.
fn begun(path: &Path) -> io::Result<(Vec<u8>, File)> {
    let (mut bytes, mut file) = (Vec::new(), File::open(path)?);
    (&mut file).take(notes::LONGEST_BYTES).read_to_end(&mut bytes)?;
    file.rewind()?;
    Ok((bytes, file))
}
