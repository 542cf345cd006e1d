//! Which device writes: a key made once and kept with this person's settings, so that every store written from here knows its
//! edits apart from those of other devices, and these can be sure whose they are.

use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::merge::KeyFromSeed;
use pitface_core::store::{
    DeviceId, NewFile, Readers, make_own_folder, photo_hash, photo_name, remove_left_over,
};
use std::env;
use std::io::Write;
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// A new one, for a store that is thrown away.
pub fn passing() -> DeviceId {
    DeviceId(Uuid::new_v4().into_bytes())
}

/// The key of this device, made on first use.
pub fn lasting() -> Result<KeyFromSeed, Trouble> {
    let folder = settings_folder().ok_or_else(|| {
        let todo = "set HOME (or XDG_CONFIG_HOME) to a folder that can be written";
        Trouble::of_arguments(Fault::new("--store", "this device has no place for its key", todo))
    })?;
    let file = folder.join("key");
    if !file.exists() {
        make(&folder, &file)?;
    }
    tell_readers(&file);
    let text = std::fs::read_to_string(&file)
        .map_err(|error| cannot(&file, "cannot be read", &error, "check who may read it"))?;
    // 32 bytes in hex, as the names of photos are.
    let seed = photo_hash(text.trim()).ok_or_else(|| {
        let todo = "put the right one back, or delete the file: a new key is then made, and others have to accept it";
        Trouble::one(&file, Fault::new("", "this is no key", todo))
    })?;
    Ok(KeyFromSeed::new(&seed))
}

/// Makes a key that only this person may read.
fn make(folder: &Path, file: &Path) -> Result<(), Trouble> {
    let todo = "make room, or let this person write there";
    let cannot = |error: &std::io::Error| cannot(file, "cannot be written", error, todo);
    let mut seed = [0; 32];
    getrandom::fill(&mut seed).map_err(|error| {
        let wrong = format!("this machine gives no randomness for a key ({error})");
        Trouble::one(file, Fault::new("", wrong, "try again"))
    })?;
    make_own_folder(folder).map_err(|error| cannot(&error))?;
    remove_left_over(folder, false);
    // Open to its owner alone, from the first byte on.
    let mut written = NewFile::begin(folder, Readers::Owner).map_err(|error| cannot(&error))?;
    let text = format!("{}\n", photo_name(&seed));
    written.write_all(text.as_bytes()).map_err(|error| cannot(&error))?;
    match written.put_new(file) {
        // Another command made one at the same time: that one holds.
        Err(error) if !file.exists() => Err(cannot(&error)),
        _ => Ok(()),
    }
}

/// Tells, once a run, of a key that others can read: whoever has it can write in this person's name.
#[cfg(unix)]
fn tell_readers(file: &Path) {
    use std::os::unix::fs::PermissionsExt as _;
    use std::sync::Once;
    static TOLD: Once = Once::new();
    if std::fs::metadata(file).is_ok_and(|found| found.permissions().mode() & 0o077 != 0) {
        TOLD.call_once(|| {
            let wrong = "others on this machine can read or change the key of this device";
            let todo = "let its owner alone (chmod 600); if somebody may have copied it, remove it: a new one is then made, which others have to accept";
            // Nobody is left to tell when standard error is closed.
            let _ = write!(std::io::stderr(), "{}", Trouble::one(file, Fault::new("", wrong, todo)));
        });
    }
}

#[cfg(not(unix))]
fn tell_readers(_: &Path) {}

/// Where this person keeps settings of programs; none where the environment names no such place.
pub fn settings_folder() -> Option<PathBuf> {
    let set = |name| env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    let base =
        set("XDG_CONFIG_HOME").or_else(|| set("APPDATA")).or_else(|| Some(set("HOME")?.join(".config")))?;
    Some(base.join("pitface"))
}
