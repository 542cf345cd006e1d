//! Stores and bundles on their way: opening, reading files before anything of them is used, telling who is who.

pub mod belongs;
pub mod chosen;
pub mod files;
pub mod gather;
pub mod new_file;
pub mod shared;
pub mod taking;
pub mod team_word;
pub mod writing;

use crate::trouble::Trouble;
use chrono::{DateTime, Local, NaiveDateTime};
use pitface_core::error::Fault;
use pitface_core::store::{DeviceId, Partner, Photos, Store, StoreError, Version};
use pitface_core::words::Wrote;
use serde_json::{Value, json};
use std::io::Write as _;
use std::path::Path;

/// Returns what went wrong with a store.
pub fn of_store(path: &Path) -> impl Fn(StoreError) -> Trouble + '_ {
    |error| Trouble::of_said(path, &error)
}

/// Opens a store that is only asked, or handed over from. Where it cannot be written, on a full disk or a medium that is read only, a copy in memory takes its place; this
/// is told.
pub fn open_to_read(path: &Path, device: DeviceId) -> Result<Store, Trouble> {
    match Store::open_existing(path, device) {
        Err(error @ (StoreError::ReadOnly | StoreError::DiskFull)) => {
            Store::open_aside(path, device).map_err(|_| of_store(path)(error)).inspect(|_| tell_aside(path))
        }
        opened => opened.map_err(of_store(path)),
    }
}

/// Tells that a store is worked with in memory.
pub fn tell_aside(path: &Path) {
    let wrong = "the store cannot be written; it is worked with in memory, and nothing of this is kept in it";
    let todo = "make room or allow writing when you can";
    // Nobody is left to tell when standard error is closed.
    let _ = write!(std::io::stderr(), "{}", Trouble::one(path, Fault::new("", wrong, todo)));
}

/// Photos lie in the folder `photos` beside their store, as on a phone.
pub fn photos_of(store: &Path) -> Photos {
    Photos::new(store.parent().unwrap_or(Path::new("")).join("photos"))
}

/// A device as JSON: its fingerprint, its whole id, and how its holder calls themselves.
pub fn device_json(device: DeviceId, holder: &str) -> Value {
    json!({ "device": device.to_string(), "id": device.to_hex(), "holder": holder })
}

/// Milliseconds as local time.
pub fn local(ms: u64) -> Option<NaiveDateTime> {
    let time = DateTime::from_timestamp_millis(i64::try_from(ms).ok()?)?;
    Some(time.with_timezone(&Local).naive_local())
}

/// Who wrote a version, and when.
pub fn wrote(version: &Version) -> Wrote<'_> {
    Wrote { device: version.device, holder: &version.holder, when: local(version.written_ms) }
}

/// The one device among some whose fingerprint this is; a longer beginning of its id does as well.
pub fn find_device(
    argument: &str,
    text: &str,
    known: impl Iterator<Item = DeviceId>,
) -> Result<DeviceId, Trouble> {
    // A fingerprint, to a whole id.
    const DIGITS: std::ops::RangeInclusive<usize> = 20..=32;
    let sought: String = text.chars().filter(|letter| *letter != '-').collect::<String>().to_lowercase();
    let fault = |wrong: String, todo: &str| Err(Trouble::of_arguments(Fault::new(argument, wrong, todo)));
    if !DIGITS.contains(&sought.len()) || !sought.chars().all(|letter| letter.is_ascii_hexdigit()) {
        return fault(
            format!("`{text}` is no fingerprint"),
            "write all of it as it is shown, e.g. 1a2b-3c4d-5e6f-7a8b-9c0d",
        );
    }
    let mut found: Vec<DeviceId> = known.filter(|device| device.to_hex().starts_with(&sought)).collect();
    found.sort_unstable();
    found.dedup();
    match found[..] {
        [device] => Ok(device),
        [] => fault(format!("no device {text} is known here"), "see `pitface partners` for those that are"),
        _ => {
            let todo = "one of them may be made to look like the other: ask its holder for the whole id (--json shows it)";
            fault(format!("several devices have the fingerprint {text}"), todo)
        }
    }
}

/// How the holder of a device calls themselves.
pub fn holder_of(partners: &[Partner], device: DeviceId) -> &str {
    partners.iter().find(|partner| partner.device == device).map_or("", |partner| &partner.holder)
}

/// How many photos are here, and how many records name.
pub fn photo_counts(store: &Store, photos: &Photos) -> Result<[usize; 2], StoreError> {
    let named: Vec<_> = store.photos()?.into_iter().collect();
    Ok([named.len() - photos.missing(&named).len(), named.len()])
}
