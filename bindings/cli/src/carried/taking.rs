//! Taking in files: edits first, then the photos that records name, and what is to be told of both.

use super::files::Bundles;
use super::{device_json, holder_of, of_store};
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::merge::plan::Missing;
use pitface_core::store::{
    DeviceId, Partner, PhotoHash, Photos, PieceTaken, Store, StoreError, TakenIn, photo_name,
};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::path::Path;

/// What came.
#[derive(Default)]
pub struct Came {
    edits: u64,
    /// Bundles that were here already.
    known: u32,
    held: usize,
    /// Files of a newer version that could be taken in now.
    released: usize,
    missing: BTreeSet<Missing>,
    strangers: BTreeSet<DeviceId>,
    copied: BTreeSet<DeviceId>,
    clock_wrong: BTreeSet<DeviceId>,
    /// Who answers for whom.
    vouched: BTreeSet<(DeviceId, DeviceId)>,
    photos: BTreeSet<PhotoHash>,
    photos_unnamed: BTreeSet<PhotoHash>,
    photos_wrong: BTreeSet<PhotoHash>,
    partners: Vec<Partner>,
}

/// Takes in files, each of which was checked, and then accepts devices.
pub fn take_in(
    store: &mut Store,
    path: &Path,
    photos: &Photos,
    files: &[Bundles],
    accepted: &[DeviceId],
) -> Result<Came, Trouble> {
    let mut came = Came::default();
    came.edits(store, files, accepted).map_err(of_store(path))?;
    let named = store.photos().map_err(of_store(path))?;
    for piece in files.iter().flat_map(Bundles::pieces) {
        if !named.contains(&piece.sha256) {
            came.photos_unnamed.insert(piece.sha256);
            continue;
        }
        let todo = "make room and take the file in again";
        let place = photos.path(&piece.sha256);
        let taken = photos.take_in(&piece).map_err(|error| cannot(&place, "cannot be kept", &error, todo))?;
        match taken {
            PieceTaken::Complete => drop(came.photos.insert(piece.sha256)),
            PieceTaken::Wrong => drop(came.photos_wrong.insert(piece.sha256)),
            PieceTaken::Known | PieceTaken::Kept => {}
        }
    }
    Ok(came)
}

impl Came {
    fn edits(
        &mut self,
        store: &mut Store,
        files: &[Bundles],
        accepted: &[DeviceId],
    ) -> Result<(), StoreError> {
        let released = store.take_in_held(now_ms())?;
        self.released = released.len();
        for taken in released {
            self.add(taken);
        }
        for file in files {
            let taken = store.take_in(&file.bytes, now_ms())?;
            self.held += usize::from(taken.held);
            let new = |signer| taken.edits > 0 || taken.strangers.contains(&signer);
            let vouched =
                file.headers.iter().filter(|header| header.device != header.signer() && new(header.signer()));
            self.vouched.extend(vouched.map(|header| (header.signer(), header.device)));
            self.add(taken);
        }
        for device in accepted {
            let taken = store.accept(*device, now_ms())?;
            self.add(taken);
        }
        self.missing = store.missing()?;
        self.partners = store.partners()?;
        let waits =
            |device: &DeviceId| self.partners.iter().any(|other| other.device == *device && !other.accepted);
        self.strangers.retain(waits);
        Ok(())
    }

    fn add(&mut self, taken: TakenIn) {
        self.edits += taken.edits;
        self.known += taken.known;
        self.strangers.extend(taken.strangers);
        self.copied.extend(taken.copied);
        self.clock_wrong.extend(taken.clock_wrong);
    }

    /// All of it in sentences, and how devices are accepted into the store at `path`.
    pub fn told(&self, words: &Words, path: &Path) -> Vec<String> {
        let holder = |device: DeviceId| holder_of(&self.partners, device);
        let mut lines = vec![words.came_in(self.edits)];
        if !self.photos.is_empty() {
            lines.push(words.photos_came_in(self.photos.len()));
        }
        lines.extend((0..self.held).map(|_| words.bundle_held()));
        for device in &self.strangers {
            lines.push(words.stranger(*device, holder(*device)));
            lines.push(format!("  pitface take-in {} --accept {device}", path.display()));
        }
        lines
            .extend(self.vouched.iter().map(|(signer, lost)| words.vouches(*signer, holder(*signer), *lost)));
        lines.extend(self.missing.iter().map(|missing| words.edits_missing(missing, holder(missing.device))));
        lines.extend(self.copied.iter().map(|device| words.copied(*device, holder(*device))));
        lines.extend(self.clock_wrong.iter().map(|device| words.clock_wrong(*device, holder(*device))));
        lines.extend(self.photos_wrong.iter().map(|photo| words.photo_wrong(&photo_name(photo))));
        if !self.photos_unnamed.is_empty() {
            lines.push(words.photos_unnamed(self.photos_unnamed.len()));
        }
        lines
    }

    /// All of it as an object.
    pub fn json(&self) -> Value {
        let devices = |devices: &BTreeSet<DeviceId>| -> Vec<Value> {
            devices.iter().map(|device| device_json(*device, holder_of(&self.partners, *device))).collect()
        };
        let names = |photos: &BTreeSet<PhotoHash>| photos.iter().map(photo_name).collect::<Vec<_>>();
        let vouched = self
            .vouched
            .iter()
            .map(|(signer, lost)| json!({ "signer": signer.to_string(), "device": lost.to_string() }));
        json!({
            "edits": self.edits,
            "bundles_known": self.known,
            "files_held": self.held,
            "files_released": self.released,
            "missing": self.missing.iter().map(missing_json).collect::<Vec<_>>(),
            "strangers": devices(&self.strangers),
            "copied": devices(&self.copied),
            "clock_wrong": devices(&self.clock_wrong),
            "vouched": vouched.collect::<Vec<_>>(),
            "photos": names(&self.photos),
            "photos_unnamed": names(&self.photos_unnamed),
            "photos_wrong": names(&self.photos_wrong),
        })
    }
}

/// A range of edits.
pub fn missing_json(missing: &Missing) -> Value {
    json!({ "device": missing.device.to_string(), "first": missing.first, "last": missing.last })
}
