//! From notes files through a store and back: what is shown has always been kept, in the store asked for or in
//! one that goes with the command.

use crate::argument::StoreArgument;
use crate::device;
use crate::field::FieldRead;
use crate::trouble::Trouble;
use pitface_core::error::Fault;
use pitface_core::record::{FieldNotes, RecordId, notes};
use pitface_core::store::{Store, StoreError};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

/// Reads notes files, keeps them, reads them back and makes the calls. Nothing is kept unless every file is sound.
pub fn read(files: &[PathBuf], store: &StoreArgument) -> Result<Vec<FieldRead>, Trouble> {
    let mut trouble = Trouble::default();
    let mut all = Vec::new();
    for file in files {
        match read_file(file) {
            Ok(notes) => all.push(notes),
            Err(faults) => trouble.add(faults),
        }
    }
    let all = trouble.or(all)?;
    keep(all, store.store.as_deref())
}

/// Keeps notes, reads them back and makes the calls.
pub fn keep(all: Vec<FieldNotes>, store: Option<&Path>) -> Result<Vec<FieldRead>, Trouble> {
    // The folder goes, with the store in it, when this returns; the store is closed before it.
    let temporary = tempfile::tempdir();
    let (path, opened) = match store {
        Some(path) => (path.to_owned(), device::lasting().map(|device| Store::create_or_open(path, device))?),
        None => {
            let folder = temporary.as_ref().map_err(|error| {
                let wrong = format!("no temporary folder ({error})");
                Trouble::argument("--store", wrong, "name a store, or set TMPDIR to a folder that can be written")
            })?;
            let path = folder.path().join("passing.pitface");
            (path.clone(), Store::create_or_open(&path, device::passing()))
        }
    };
    let mut store = opened.map_err(|error| of_store(&path, &error))?;
    all.iter()
        .map(|notes| pass(&mut store, notes).map(FieldRead::of))
        .collect::<Result<_, _>>()
        .map_err(|error| of_store(&path, &error))
}

/// Saves notes and reads them back. What the store still has of an earlier reading and the file no longer says
/// is deleted there (its edits stay in the log).
fn pass(store: &mut Store, notes: &FieldNotes) -> Result<FieldNotes, StoreError> {
    let now_ms = now_ms();
    store.save_notes(notes, now_ms)?;
    let said: BTreeSet<RecordId> = ids(notes).collect();
    let kept = store.load_notes(notes.field.id)?;
    let stale: Vec<RecordId> = ids(&kept).filter(|id| !said.contains(id)).collect();
    if stale.is_empty() {
        return Ok(kept);
    }
    for record in stale {
        store.delete_record(record, now_ms)?;
    }
    store.load_notes(notes.field.id)
}

fn ids(notes: &FieldNotes) -> impl Iterator<Item = RecordId> {
    notes.pits.iter().flat_map(|pit| {
        let steps = pit.walk.iter().map(|step| step.id);
        let layers = pit.layers.iter().map(|layer| layer.id);
        let rolls = pit.rolls.iter().map(|roll| roll.id);
        let photos = pit.photos.iter().map(|photo| photo.id);
        // Parts before the pit they hang on: a part of a deleted pit is out of reach.
        steps.chain(layers).chain(rolls).chain(photos).chain([pit.id])
    })
}

fn now_ms() -> u64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    u64::try_from(since.as_millis()).unwrap_or(u64::MAX)
}

fn of_store(path: &Path, error: &StoreError) -> Trouble {
    let said = error.to_string();
    let (wrong, todo) = said.rsplit_once("; ").unwrap_or((&said, "try another file"));
    Trouble::one(path, Fault::new("", wrong, todo))
}
