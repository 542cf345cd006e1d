//! The cases of `tests/vectors`, which other languages read too.

use pitface_core::record::notes::{Read, read};
use pitface_core::record::{FieldNotes, RecordId};
use serde::de::DeserializeOwned;
use std::path::PathBuf;

/// Text of a file below `tests/vectors`.
pub fn text(name: &str) -> String {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors").join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Cases of a file below `tests/vectors`; never none.
pub fn cases<T: DeserializeOwned>(name: &str) -> Vec<T> {
    let cases: Vec<T> = serde_json::from_str(&text(name)).unwrap_or_else(|error| panic!("{name}: {error}"));
    assert!(!cases.is_empty(), "{name} is empty");
    cases
}

/// Ids in a row, the same in every run.
pub fn ids() -> impl FnMut() -> RecordId {
    let mut made = 0;
    move || {
        made += 1;
        RecordId::new(made, [0; 10])
    }
}

/// Returns what reading a notes file gives, or the faults as they are told.
pub fn try_read(text: &str) -> Result<Read, Vec<String>> {
    read(text, &mut ids()).map_err(|faults| faults.iter().map(ToString::to_string).collect())
}

/// The notes of a file that is good and has no unknown key.
pub fn notes(text: &str) -> FieldNotes {
    let read = try_read(text).unwrap_or_else(|faults| panic!("{faults:#?}"));
    assert!(read.unknown_keys.is_empty(), "{:?}", read.unknown_keys);
    read.notes
}
