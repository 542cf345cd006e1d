//! Notes files into a store: the one way in which the command line writes what a file says. A file is one save; it adds and changes.

use crate::carried::belongs::belongs_json;
use crate::carried::{device_json, wrote};
use crate::device;
use crate::field::FieldRead;
use crate::json::merged;
use crate::keep::{Sound, now_ms};
use crate::trouble::Trouble;
use pitface_core::merge::Signer as _;
use pitface_core::record::RecordId;
use pitface_core::store::{Change, Kind, NotesFile, ReadIn, Store, StoreError};
use pitface_core::words::{Around, Words};
use serde_json::{Map, Value, json};
use std::path::Path;

/// A field as reading a file left it in the store.
pub struct ReadInto {
    /// The field, all that is noted of it here.
    pub field: FieldRead,
    /// What the file brought, in words.
    pub lines: Vec<String>,
    /// The same with codes and ids.
    pub json: Value,
}

/// Reads sound files into a store, a save each. Nothing is written unless every file can be taken in; `remove` is the word of what the one
/// file no longer says and shall go.
pub fn into_store(
    all: Vec<Sound>,
    path: &Path,
    remove: Option<&str>,
    words: &Words,
) -> Result<Vec<ReadInto>, Trouble> {
    let mut store = Store::create_or_open(path, device::lasting()?.device())
        .map_err(|error| Trouble::of_said(path, &error))?;
    if all.len() > 1 {
        let mut trouble = Trouble::default();
        for sound in &all {
            let mut notes = sound.notes.clone();
            let tried = with_file(sound, remove, |file| store.would_read_in(&mut notes, file, now_ms()));
            if let Err(error) = tried {
                trouble.add(of_file(sound, path, &error));
            }
        }
        trouble.or(())?;
    }
    let mut read = Vec::new();
    for sound in all {
        let mut notes = sound.notes.clone();
        let came = with_file(&sound, remove, |file| store.read_in(&mut notes, file, now_ms()));
        let came = came.map_err(|error| of_file(&sound, path, &error))?;
        let told = told(&store, &came, sound, words);
        read.push(told.map_err(|error| Trouble::of_said(path, &error))?);
    }
    Ok(read)
}

fn with_file(
    sound: &Sound,
    remove: Option<&str>,
    does: impl FnOnce(&NotesFile) -> Result<ReadIn, StoreError>,
) -> Result<ReadIn, StoreError> {
    let source = sound.source.as_ref().map(|source| source.display().to_string());
    does(&NotesFile { source: source.as_deref(), made: &sound.made, remove })
}

/// Returns what is wrong with a file, or with the store.
fn of_file(sound: &Sound, store: &Path, error: &StoreError) -> Trouble {
    let of_the_file = matches!(error, StoreError::InvalidValue(_) | StoreError::FieldDeleted { .. });
    let file = sound.source.as_deref().unwrap_or(Path::new("standard input"));
    Trouble::of_said(if of_the_file { file } else { store }, error)
}

fn told(store: &Store, came: &ReadIn, sound: Sound, words: &Words) -> Result<ReadInto, StoreError> {
    let notes = store.load_notes(came.field)?;
    let belongs = |record: RecordId| store.belongs(record).ok();
    let made = |at: usize| came.missing.records.get(at).map(|record| wrote(&record.made));
    let around = Around { belongs: &belongs, made: &made };
    let mut lines = words.read_in(came, &sound.notes.field.name, true, &around);
    lines.extend(words.missing(came, &around));
    let word = came.missing.word().filter(|_| !came.removed);
    lines.extend(word.as_deref().map(|word| words.remove_missing(word)));
    let json = json(store, came, word.as_deref())?;
    Ok(ReadInto { field: FieldRead::of(notes, sound.origin, sound.unknown_keys), lines, json })
}

fn json(store: &Store, came: &ReadIn, word: Option<&str>) -> Result<Value, StoreError> {
    let of = |record: RecordId| Ok(belongs_json(&store.belongs(record)?));
    let cell = |change: &Change| Ok(merged(of(change.record)?, json!({ "cell": change.cell.to_string() })));
    let cells = |changes: &[Change]| changes.iter().map(cell).collect::<Result<Vec<_>, StoreError>>();
    let records = came.missing.records.iter().map(|missing| {
        let made = json!({ "made_ms": missing.made.written_ms, "removable": missing.removable });
        let by = device_json(missing.made.device, &missing.made.holder);
        Ok(merged(of(missing.record)?, merged(made, json!({ "by": by }))))
    });
    let values = came
        .missing
        .cells
        .iter()
        .map(|(change, untouched)| Ok(merged(cell(change)?, json!({ "removable": untouched }))));
    let mut added = Map::new();
    for (_, kind) in &came.added {
        let count = added.entry(Kind::name(*kind)).or_insert(json!(0));
        *count = json!(count.as_u64().unwrap_or(0) + 1);
    }
    Ok(json!({
        "added": added,
        "changed": cells(&came.changed)?,
        "versions": cells(&came.versions)?,
        "deleted_here": came.deleted.iter().map(|record| of(*record)).collect::<Result<Vec<_>, StoreError>>()?,
        "missing": {
            "records": records.collect::<Result<Vec<_>, StoreError>>()?,
            "values": values.collect::<Result<Vec<_>, StoreError>>()?,
            "word": word,
            "removed": came.removed,
        },
        "same_name": came.same_name.iter().map(ToString::to_string).collect::<Vec<_>>(),
    }))
}
