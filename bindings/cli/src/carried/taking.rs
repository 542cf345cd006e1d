//! Taking in files: what came of all of them, and what is to be told of it.

use super::files::Bundles;
use super::{device_json, holder_of, of_store};
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::merge::plan::Missing;
use pitface_core::store::{Came, CameFault, DeviceId, Partner, PhotoHash, Photos, Store, photo_name};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::io::Cursor;
use std::path::Path;

/// What came of several files.
#[derive(Default)]
pub struct AllCame {
    came: Came,
    /// Files of a newer version, which wait.
    held: usize,
    /// Files of a newer version that could be taken in now.
    released: usize,
    partners: Vec<Partner>,
}

/// Takes in files, each of which was checked, and then accepts devices.
pub fn take_in(
    store: &mut Store,
    path: &Path,
    photos: &Photos,
    files: &[Bundles],
    accepted: &[DeviceId],
) -> Result<AllCame, Trouble> {
    let failed = of_store(path);
    let mut all = AllCame::default();
    let released = store.take_in_held(now_ms()).map_err(&failed)?;
    all.released = released.len();
    for taken in released {
        all.came.add(taken.into());
    }
    let take = |store: &mut Store, file: &Bundles| {
        store.take_in_with_photos(&mut Cursor::new(&file.bytes), photos, &BTreeSet::new(), now_ms()).map_err(
            |fault| match fault {
                CameFault::Store(error) => failed(error),
                CameFault::Photo(photo, error) => {
                    let todo = "make room and take the file in again";
                    cannot(&photos.path(&photo), "cannot be kept", &error, todo)
                }
            },
        )
    };
    for file in files {
        let came = take(store, file)?;
        all.held += usize::from(came.taken.held);
        all.came.add(came);
    }
    for device in accepted {
        all.came.add(store.accept(*device, now_ms()).map_err(&failed)?.into());
    }
    if !all.came.photos_unnamed.is_empty() {
        // Their records may have come with a later file, or with the acceptance.
        all.came.photos_unnamed.clear();
        for file in files {
            let Came { photos, photos_unnamed, photos_wrong, .. } = take(store, file)?;
            all.came.add(Came { photos, photos_unnamed, photos_wrong, ..Came::default() });
        }
    }
    all.partners = store.partners().map_err(&failed)?;
    let waits =
        |device: &DeviceId| all.partners.iter().any(|other| other.device == *device && !other.accepted);
    all.came.taken.strangers.retain(waits);
    all.came.taken.missing = store.missing().map_err(&failed)?;
    Ok(all)
}

impl AllCame {
    /// All of it in sentences, and how devices are accepted into the store at `path`.
    pub fn told(&self, words: &Words, path: &Path) -> Vec<String> {
        let accept = |device: &DeviceId| format!("  pitface take-in {} --accept {device}", path.display());
        let told = words.came(&self.came, &self.partners).into_iter();
        told.chain(self.came.taken.strangers.iter().map(accept)).collect()
    }

    /// All of it as an object.
    pub fn json(&self) -> Value {
        let Came { taken, vouched, photos, photos_unnamed, photos_wrong } = &self.came;
        let devices = |devices: &BTreeSet<DeviceId>| -> Vec<Value> {
            devices.iter().map(|device| device_json(*device, holder_of(&self.partners, *device))).collect()
        };
        let names = |photos: &BTreeSet<PhotoHash>| photos.iter().map(photo_name).collect::<Vec<_>>();
        let vouched = vouched
            .iter()
            .map(|(signer, lost)| json!({ "signer": signer.to_string(), "device": lost.to_string() }));
        json!({
            "edits": taken.edits,
            "bundles_known": taken.known,
            "files_held": self.held,
            "files_released": self.released,
            "missing": taken.missing.iter().map(missing_json).collect::<Vec<_>>(),
            "strangers": devices(&taken.strangers),
            "copied": devices(&taken.copied),
            "clock_wrong": devices(&taken.clock_wrong),
            "vouched": vouched.collect::<Vec<_>>(),
            "photos": names(photos),
            "photos_unnamed": names(photos_unnamed),
            "photos_wrong": names(photos_wrong),
        })
    }
}

/// A range of edits.
pub fn missing_json(missing: &Missing) -> Value {
    json!({ "device": missing.device.to_string(), "first": missing.first, "last": missing.last })
}
