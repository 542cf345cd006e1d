//! From notes files through a store and back. Questions ([`of_file`], [`Kept`]) write no notes; [`into_store`](crate::into_store) alone does.

use crate::carried::open_to_read;
use crate::field::{FieldRead, Origin};
use crate::trouble::Trouble;
use crate::write::stem;
use crate::{device, input};
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::record::{FieldNotes, RecordId, notes};
use pitface_core::store::{FieldSummary, Store, StoreError};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};
use uuid::Uuid;

/// As many fields are listed where one is to be chosen.
const LISTED: usize = 20;

/// A sound notes file.
pub struct Sound {
    /// The file.
    pub origin: Origin,
    /// Where it lies, as a store remembers it; `None` of what comes by standard input.
    pub source: Option<PathBuf>,
    /// What it says.
    pub notes: FieldNotes,
    /// Ids made here, because the file has none for these records.
    pub made: BTreeSet<RecordId>,
    /// Places of keys that nobody knows.
    pub unknown_keys: Vec<String>,
}

/// Returns what a question is asked about: a notes file, which is kept nowhere and writes nothing.
pub fn of_file(file: &Path) -> Result<FieldRead, Trouble> {
    passing(sound(file)?)
}

/// The field of a sound file, by way of a store that goes with the command.
pub fn passing(sound: Sound) -> Result<FieldRead, Trouble> {
    let failed = |error: StoreError| Trouble::of_said(Path::new("memory"), &error);
    let Sound { origin, notes, made, unknown_keys, .. } = sound;
    let mut store = Store::in_memory(device::passing()).map_err(failed)?;
    store.save_notes(&notes, now_ms()).map_err(failed)?;
    let notes = store.load_notes(notes.field.id).map_err(failed)?;
    Ok(FieldRead { passing: made, ..FieldRead::of(notes, origin, unknown_keys) })
}

/// A store whose fields are asked about.
pub struct Kept {
    store: Store,
    path: PathBuf,
    fields: Vec<FieldSummary>,
}

impl Kept {
    /// Opens it; no notes are written into it.
    pub fn open(path: &Path) -> Result<Self, Trouble> {
        let failed = |error: StoreError| Trouble::of_said(path, &error);
        let store = open_to_read(path, device::lasting()?.device())?;
        let fields = store.fields().map_err(failed)?;
        Ok(Self { store, path: path.to_owned(), fields })
    }

    /// An error unless all in it is as it was written: before it is written out for others.
    pub fn look(&self) -> Result<(), Trouble> {
        self.store.look_before_giving_out().map_err(|error| Trouble::of_said(&self.path, &error))
    }

    /// Its fields.
    pub fn fields(&self) -> &[FieldSummary] {
        &self.fields
    }

    /// The notes of a field.
    pub fn notes(&self, field: &FieldSummary) -> Result<FieldNotes, Trouble> {
        self.store.load_notes(field.id).map_err(|error| Trouble::of_said(&self.path, &error))
    }

    /// A field, read.
    pub fn read(&self, field: &FieldSummary) -> Result<FieldRead, Trouble> {
        let origin = Origin { called: self.path.clone(), stem: self.file_name(field) };
        Ok(FieldRead::of(self.notes(field)?, origin, Vec::new()))
    }

    /// A notes file of a field was written there: read again, it is known for what it said. A store that cannot be written forgets it; the file then
    /// counts as one from elsewhere.
    pub fn wrote(&mut self, file: &Path, field: &FieldSummary) -> Result<(), Trouble> {
        let notes = self.notes(field)?;
        let source = lasting_path(file).display().to_string();
        match self.store.wrote_file(&source, &notes) {
            Ok(()) | Err(StoreError::ReadOnly | StoreError::DiskFull) => Ok(()),
            Err(error) => Err(Trouble::of_said(&self.path, &error)),
        }
    }

    /// Returns what a field's files are named after.
    pub fn file_name(&self, field: &FieldSummary) -> String {
        let others = self.fields.iter().filter(|other| other.id != field.id);
        notes::file_name(&field.name, field.id, others.map(|other| other.name.as_str()))
    }

    /// The field of this name or id; without one the only field.
    ///
    /// # Errors
    /// There is none, or several.
    pub fn one(&self, name: Option<&str>) -> Result<FieldSummary, Trouble> {
        match (name, self.fields.as_slice()) {
            (Some(name), _) => self.called(name),
            (None, [only]) => Ok(only.clone()),
            (None, []) => Err(self.none()),
            (None, _) => {
                Err(self
                    .fault("there are several fields", &format!("name one with --field: {}", self.listed())))
            }
        }
    }

    /// The fields of these names or ids; without any all fields.
    ///
    /// # Errors
    /// There is none at all, or not one alone of a name.
    pub fn several(&self, names: &[String]) -> Result<Vec<FieldSummary>, Trouble> {
        if names.is_empty() {
            return if self.fields.is_empty() { Err(self.none()) } else { Ok(self.fields.clone()) };
        }
        let (mut chosen, mut trouble) = (Vec::new(), Trouble::default());
        for name in names {
            match self.called(name) {
                Ok(field) => chosen.push(field),
                Err(fault) => trouble.add(fault),
            }
        }
        trouble.or(chosen)
    }

    fn called(&self, name: &str) -> Result<FieldSummary, Trouble> {
        let by_id = self.fields.iter().find(|field| field.id.to_string() == name.trim().to_lowercase());
        if let Some(field) = by_id {
            return Ok(field.clone());
        }
        let same: Vec<&FieldSummary> =
            self.fields.iter().filter(|field| field.name.trim() == name.trim()).collect();
        match same[..] {
            [field] => Ok(field.clone()),
            [] => {
                let todo = format!("name one of: {}", self.listed());
                Err(self.fault(&format!("there is no field called {name}"), &todo))
            }
            _ => {
                let pits = |count: u32| if count == 1 { "1 pit".to_owned() } else { format!("{count} pits") };
                let each = same.iter().map(|field| format!("{} ({})", field.id, pits(field.pits)));
                let ids: Vec<String> = each.collect();
                let todo = format!("give the id of one with --field: {}", ids.join(", "));
                Err(self.fault(&format!("{} fields are called {name}", same.len()), &todo))
            }
        }
    }

    fn listed(&self) -> String {
        let names: Vec<&str> = self.fields.iter().take(LISTED).map(|field| field.name.as_str()).collect();
        let more = self.fields.len().saturating_sub(LISTED);
        let more = if more > 0 { format!(" and {more} more (see `pitface fields`)") } else { String::new() };
        format!("{}{more}", names.join(", "))
    }

    fn none(&self) -> Trouble {
        self.fault(
            "there is no field in it",
            "read a notes file into it with `pitface read FIELD.notes.json --store`",
        )
    }

    fn fault(&self, wrong: &str, todo: &str) -> Trouble {
        Trouble::one(&self.path, Fault::new("field", wrong, todo))
    }
}

/// Notes files that are all sound.
pub fn all_sound(files: &[PathBuf]) -> Result<Vec<Sound>, Trouble> {
    input::named_once(files)?;
    let mut trouble = Trouble::default();
    let mut all = Vec::new();
    for file in files {
        match sound(file) {
            Ok(sound) => all.push(sound),
            Err(faults) => trouble.add(faults),
        }
    }
    trouble.or(all)
}

/// A notes file that is sound.
pub fn sound(file: &Path) -> Result<Sound, Trouble> {
    read_text(file, &input::text(file)?)
}

/// The text of a notes file, if it is sound.
pub fn read_text(file: &Path, text: &str) -> Result<Sound, Trouble> {
    let mut made = BTreeSet::new();
    let read = notes::read(text, &mut || {
        let id = new_id();
        made.insert(id);
        id
    });
    let called = input::called(file);
    let read = read.map_err(|faults| Trouble::of_file(called, faults))?;
    let origin = Origin { called: called.to_owned(), stem: stem(file) };
    let source = (!input::is_standard_input(file)).then(|| lasting_path(file));
    Ok(Sound { origin, source, notes: read.notes, made, unknown_keys: read.unknown_keys })
}

/// Returns what to know of a file that was read: keys nobody knows, a line each.
pub fn remarks(field: &FieldRead) -> String {
    let mut lines = String::new();
    for place in &field.unknown_keys {
        let fault = Fault::new(place, "nobody knows this key", "it is kept and says nothing here");
        let _ = writeln!(lines, "{}: {fault}", field.origin.called.display());
    }
    lines
}

/// The same path for one file, from wherever it is named.
pub fn lasting_path(file: &Path) -> PathBuf {
    let in_folder = || {
        let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        Some(folder.canonicalize().ok()?.join(file.file_name()?))
    };
    let absolute = || std::path::absolute(file).ok();
    file.canonicalize().ok().or_else(in_folder).or_else(absolute).unwrap_or_else(|| file.to_owned())
}

/// A new id, above all those made here before, also within a millisecond: of pits that weigh alike the first one speaks.
pub fn new_id() -> RecordId {
    let made = Uuid::now_v7();
    let mut rest = [0; 10];
    rest.copy_from_slice(&made.as_bytes()[6..]);
    RecordId::new((made.as_u128() >> 80) as u64, rest)
}

/// Unix milliseconds by this device's clock.
pub fn now_ms() -> u64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    u64::try_from(since.as_millis()).unwrap_or(u64::MAX)
}
