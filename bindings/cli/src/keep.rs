//! From notes files through a store and back. Questions ([`of_files`], [`of_store`]) write no notes; [`into_store`] alone does.

use crate::field::FieldRead;
use crate::trouble::Trouble;
use crate::{device, input};
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::record::adopt::{adopt, ids, is_kept_as};
use pitface_core::record::{FieldNotes, RecordId, notes};
use pitface_core::store::{FieldSummary, Store, StoreError};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};
use uuid::Uuid;

/// A sound notes file.
pub struct Sound {
    notes: FieldNotes,
    /// Ids made here, because the file has none for these records.
    made: BTreeSet<RecordId>,
    unknown_keys: Vec<String>,
}

/// What a question is asked about: notes files, which are kept nowhere and write nothing.
pub fn of_files(files: &[PathBuf]) -> Result<Vec<FieldRead>, Trouble> {
    let all = sound(files)?;
    let made: Vec<_> = all.iter().map(|sound| sound.made.clone()).collect();
    let failed = |error: StoreError| Trouble::of_said(Path::new("memory"), &error);
    let mut store = Store::in_memory(device::passing()).map_err(failed)?;
    let mut fields = pass_all(all, &mut store).map_err(failed)?;
    for (field, made) in fields.iter_mut().zip(made) {
        field.passing = made;
    }
    Ok(fields)
}

/// What a question is asked about: every field of a store, as it stands there.
pub fn of_store(path: &Path) -> Result<Vec<FieldRead>, Trouble> {
    let failed = |error: StoreError| Trouble::of_said(path, &error);
    let store = Store::open_existing(path, device::lasting()?.device()).map_err(failed)?;
    let fields = store.fields().map_err(failed)?;
    let read = |field: &FieldSummary| Ok(FieldRead::of(store.load_notes(field.id)?, Vec::new()));
    fields.iter().map(read).collect::<Result<_, _>>().map_err(failed)
}

/// Reads notes files into a store, and reads them back. Nothing is kept unless every file is sound.
pub fn into_store(files: &[PathBuf], store: &Path) -> Result<Vec<FieldRead>, Trouble> {
    keep(sound(files)?, store)
}

/// Keeps notes in a store, and reads them back.
pub fn keep(all: Vec<Sound>, path: &Path) -> Result<Vec<FieldRead>, Trouble> {
    let failed = |error: StoreError| Trouble::of_said(path, &error);
    let mut store = Store::create_or_open(path, device::lasting()?.device()).map_err(failed)?;
    pass_all(all, &mut store).map_err(failed)
}

/// Notes files that are all sound.
fn sound(files: &[PathBuf]) -> Result<Vec<Sound>, Trouble> {
    let mut trouble = input::named_once(files);
    let mut all = Vec::new();
    for file in files {
        match read_file(file) {
            Ok(sound) => all.push(sound),
            Err(faults) => trouble.add(faults),
        }
    }
    trouble.or(all)
}

fn read_file(file: &Path) -> Result<Sound, Trouble> {
    let text = input::text(file)?;
    read_text(&text).map_err(|faults| Trouble::of_file(input::called(file), faults))
}

/// Reads the text of a notes file.
pub fn read_text(text: &str) -> Result<Sound, Vec<Fault>> {
    let mut made = BTreeSet::new();
    let read = notes::read(text, &mut || {
        let id = new_id();
        made.insert(id);
        id
    })?;
    Ok(Sound { notes: read.notes, made, unknown_keys: read.unknown_keys })
}

/// What to know of files that were read: keys nobody knows, a line each.
pub fn remarks(files: &[PathBuf], fields: &[FieldRead]) -> String {
    let mut lines = String::new();
    for (file, field) in files.iter().zip(fields) {
        for place in &field.unknown_keys {
            let fault = Fault::new(place, "nobody knows this key", "it is kept and says nothing here");
            let _ = writeln!(lines, "{}: {fault}", input::called(file).display());
        }
    }
    lines
}

fn pass_all(all: Vec<Sound>, store: &mut Store) -> Result<Vec<FieldRead>, StoreError> {
    let mut passed: Vec<FieldRead> = Vec::new();
    for Sound { mut notes, made, unknown_keys } in all {
        let free = |id| passed.iter().all(|field| field.notes.field.id != id);
        let notes = pass(store, &mut notes, &made, free)?;
        passed.push(FieldRead::of(notes, unknown_keys));
    }
    Ok(passed)
}

/// Saves the notes of one field and reads them back. What the store has of an earlier reading and the file no
/// longer says is deleted there; its edits stay in the log.
fn pass(
    store: &mut Store,
    notes: &mut FieldNotes,
    made: &BTreeSet<RecordId>,
    free: impl Fn(RecordId) -> bool,
) -> Result<FieldNotes, StoreError> {
    let now_ms = now_ms();
    let field = notes.field.id;
    let known = store.fields()?.into_iter().find(|known| {
        is_kept_as(&notes.field, made, known.id, &known.name) && (known.id == field || free(known.id))
    });
    if let Some(known) = known {
        let kept = store.load_notes(known.id)?;
        adopt(notes, &kept, made);
        let said: BTreeSet<RecordId> = ids(notes).collect();
        for gone in ids(&kept).filter(|id| !said.contains(id)) {
            store.delete_record(gone, now_ms)?;
        }
    }
    store.save_notes(notes, now_ms)?;
    store.load_notes(notes.field.id)
}

fn new_id() -> RecordId {
    let mut random = [0; 10];
    random.copy_from_slice(&Uuid::new_v4().as_bytes()[..10]);
    RecordId::new(now_ms(), random)
}

/// Unix milliseconds by this device's clock.
pub fn now_ms() -> u64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    u64::try_from(since.as_millis()).unwrap_or(u64::MAX)
}
