//! Which device writes: an id made once and kept with this person's settings, so that every store written from
//! here knows its edits apart from those of other devices.

use crate::trouble::Trouble;
use crate::write::Folder;
use pitface_core::error::Fault;
use pitface_core::store::DeviceId;
use std::env;
use std::path::PathBuf;
use uuid::Uuid;

/// A new one, for a store that is thrown away.
pub fn passing() -> DeviceId {
    DeviceId(Uuid::new_v4().into_bytes())
}

/// The one of this device, made on first use.
pub fn lasting() -> Result<DeviceId, Trouble> {
    let folder = settings().ok_or_else(|| {
        let todo = "set HOME (or XDG_CONFIG_HOME) to a folder that can be written";
        Trouble::of_arguments(Fault::new("--store", "this device has no place for its id", todo))
    })?;
    let file = folder.join("device");
    if let Ok(text) = std::fs::read_to_string(&file) {
        let id = Uuid::try_parse(text.trim()).map_err(|_| {
            Trouble::one(
                &file,
                Fault::new("", "this is no device id", "delete the file; a new id is then made"),
            )
        })?;
        return Ok(DeviceId(id.into_bytes()));
    }
    let id = Uuid::new_v4();
    let mut folder = Folder::open(&folder)?;
    folder.add("device", format!("{id}\n").as_bytes())?;
    folder.finish()?;
    Ok(DeviceId(id.into_bytes()))
}

fn settings() -> Option<PathBuf> {
    let set = |name| env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    let base =
        set("XDG_CONFIG_HOME").or_else(|| set("APPDATA")).or_else(|| Some(set("HOME")?.join(".config")))?;
    Some(base.join("pitface"))
}
