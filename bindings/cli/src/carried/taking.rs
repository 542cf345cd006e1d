//! Taking in files: what came of all of them, and what is to be told of it.

use super::files::{Bundles, Source};
use super::team_word::TeamWord;
use super::{device_json, holder_of, of_store};
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::merge::plan::Missing;
use pitface_core::store::{
    Came, CameFault, DeviceId, Partner, PhotoHash, Photos, Store, Vouched, Vouching, photo_name,
};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::collections::BTreeSet;
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
    /// Devices accepted on the way.
    accepted: Vec<DeviceId>,
}

impl AllCame {
    /// Begins with files of a newer version that this one may understand by now.
    pub fn begin(store: &mut Store, path: &Path) -> Result<Self, Trouble> {
        let released = store.take_in_held(now_ms()).map_err(of_store(path))?;
        let mut all = Self { released: released.len(), ..Self::default() };
        for taken in released {
            all.came.add(taken.into());
        }
        Ok(all)
    }

    /// Takes in what a file holds, from its beginning.
    pub fn take(
        &mut self,
        store: &mut Store,
        path: &Path,
        photos: &Photos,
        file: (&Path, &mut dyn Source),
    ) -> Result<(), Trouble> {
        let came = taken(store, path, photos, file)?;
        self.held += usize::from(came.taken.held);
        self.came.add(came);
        Ok(())
    }

    /// Accepts a device.
    pub fn accept(&mut self, store: &mut Store, path: &Path, device: DeviceId) -> Result<(), Trouble> {
        self.came.add(store.accept(device, now_ms()).map_err(of_store(path))?.into());
        self.accepted.push(device);
        Ok(())
    }

    /// Takes in the photos of a file that came before: no record named them then.
    pub fn take_photos(
        &mut self,
        store: &mut Store,
        path: &Path,
        photos: &Photos,
        file: (&Path, &mut dyn Source),
    ) -> Result<(), Trouble> {
        let Came { photos, photos_unnamed, photos_wrong, .. } = taken(store, path, photos, file)?;
        self.came.photos_unnamed.retain(|photo| !photos.contains(photo));
        self.came.add(Came { photos, photos_unnamed, photos_wrong, ..Came::default() });
        Ok(())
    }

    /// How it stands once all came.
    pub fn end(mut self, store: &Store, path: &Path) -> Result<Self, Trouble> {
        self.partners = store.partners().map_err(of_store(path))?;
        // Also those whose files are known.
        self.came.taken.strangers = store.strangers().map_err(of_store(path))?;
        self.came.taken.missing = store.missing().map_err(of_store(path))?;
        let vouchings = store.vouchings().map_err(of_store(path))?.into_iter();
        self.came.taken.vouchings =
            vouchings.filter(|vouching| vouching.standing != Vouched::Believed).collect();
        Ok(self)
    }
}

fn taken(
    store: &mut Store,
    path: &Path,
    photos: &Photos,
    (file, mut source): (&Path, &mut dyn Source),
) -> Result<Came, Trouble> {
    let came = store.take_in_with_photos(&mut source, photos, &BTreeSet::new(), now_ms());
    let mut came = came.map_err(|fault| match fault {
        CameFault::Store(error) => Trouble::of_said(path, &error),
        CameFault::Photo(photo, error) => {
            let todo = "make room and take the file in again";
            cannot(&photos.path(&photo), "cannot be kept", &error, todo)
        }
    })?;
    for files in came.photos_wrong.values_mut() {
        files.insert(file.display().to_string());
    }
    Ok(came)
}

/// Takes in files, each of which was checked, and then accepts devices.
pub fn take_in(
    store: &mut Store,
    path: &Path,
    photos: &Photos,
    (files, word): (&[Bundles], Option<&TeamWord>),
    accepted: &[DeviceId],
) -> Result<AllCame, Trouble> {
    let mut all = AllCame::begin(store, path)?;
    for file in files {
        all.take(store, path, photos, (&file.path, &mut *file.source(word)?))?;
    }
    for device in accepted {
        all.accept(store, path, *device)?;
    }
    // Their records may have come with a later file, or with the acceptance.
    let unnamed = std::mem::take(&mut all.came.photos_unnamed);
    for file in files.iter().filter(|file| file.photos.keys().any(|photo| unnamed.contains(photo))) {
        all.take_photos(store, path, photos, (&file.path, &mut *file.source(word)?))?;
    }
    all.end(store, path)
}

impl AllCame {
    /// All of it in sentences, and how devices are accepted into the store at `path`.
    pub fn told(&self, words: &Words, path: &Path) -> Vec<String> {
        let accept = |device: &DeviceId| {
            [format!("  {device}"), format!("  pitface take-in {} --accept {device}", path.display())]
        };
        let accepted =
            self.accepted.iter().map(|device| words.accepted(*device, holder_of(&self.partners, *device)));
        let told = words.came(&self.came, &self.partners).into_iter();
        let taken = &self.came.taken;
        let believe = taken.vouchings.iter().filter_map(|vouching| how_to_believe(vouching, path));
        accepted.chain(told).chain(taken.strangers.iter().flat_map(accept)).chain(believe).collect()
    }

    /// All of it as an object.
    pub fn json(&self) -> Value {
        let Came { taken, photos, photos_unnamed, photos_wrong } = &self.came;
        let devices = |devices: &BTreeSet<DeviceId>| -> Vec<Value> {
            devices.iter().map(|device| device_json(*device, holder_of(&self.partners, *device))).collect()
        };
        let names = |photos: &BTreeSet<PhotoHash>| photos.iter().map(photo_name).collect::<Vec<_>>();
        let brought_wrong =
            photos_wrong.iter().flat_map(|(photo, files)| files.iter().map(move |file| (photo, file)));
        json!({
            "edits": taken.edits,
            "bundles_known": taken.known,
            "files_held": self.held,
            "files_released": self.released,
            "missing": taken.missing.iter().map(missing_json).collect::<Vec<_>>(),
            "accepted": self.accepted.iter().map(|device| device_json(*device, holder_of(&self.partners, *device))).collect::<Vec<_>>(),
            "strangers": devices(&taken.strangers),
            "copied": devices(&taken.copied),
            "clock_wrong": devices(&taken.clock_wrong),
            "refused": devices(&taken.refused),
            "no_room": devices(&taken.no_room),
            "vouchings": taken.vouchings.iter().map(vouching_json).collect::<Vec<_>>(),
            "unknown_parts": taken.unknown_parts,
            "photos": names(photos),
            "photos_unnamed": names(photos_unnamed),
            "photos_wrong": photos_wrong.keys().map(photo_name).collect::<Vec<_>>(),
            "photos_wrong_in": brought_wrong.map(|(photo, file)| json!({ "photo": photo_name(photo), "file": file })).collect::<Vec<_>>(),
        })
    }
}

/// Returns what one device says in the name of another.
pub fn vouching_json(vouching: &Vouching) -> Value {
    let standing = match vouching.standing {
        Vouched::Believed => "believed",
        Vouched::Asks => "asks",
        Vouched::ThisDevice => "this_device",
        Vouched::Accepted => "accepted",
        Vouched::WentOn => "went_on",
    };
    json!({
        "signer": vouching.signer.to_string(), "device": vouching.device.to_string(), "last": vouching.last,
        "standing": standing,
    })
}

/// How a person here says yes to it, where it asks for that.
pub fn how_to_believe(vouching: &Vouching, store: &Path) -> Option<String> {
    let Vouching { signer, device, .. } = vouching;
    let how = || format!("  pitface partners {} --believe {signer} {device}", store.display());
    (vouching.standing == Vouched::Asks).then(how)
}

/// A range of edits.
pub fn missing_json(missing: &Missing) -> Value {
    json!({ "device": missing.device.to_string(), "first": missing.first, "last": missing.last })
}
