//! Bundles out and in: everything noted, with photos, for other walkers.

use crate::PitfaceError;
use crate::held::{Answer, Held};
use crate::made::now_ms;
use crate::save::why;
use crate::shown::ShownScreen;
use pitface_core::merge::{Damage, FileWriter, Signer as _};
use pitface_core::record::RecordId;
use pitface_core::screen::Place;
use pitface_core::screen::partners::Decided;
use pitface_core::store::{
    Came, CameFault, Cell, DeviceId, Handed, Leaving, NewFile, PhotoHash, Readers, Sealer, StoreError,
    TakenIn, bundle_name,
};
use pitface_locked::{Locking, Refused};
use std::collections::{BTreeSet, HashSet};
use std::fs::{self, File};
use std::io::{BufWriter, Read, Seek};
use std::path::{Path, PathBuf};

/// What goes into a bundle as the program that wrote it.
const PROGRAM: &str = concat!("pitface-app ", env!("CARGO_PKG_VERSION"));

/// What is read from any place of it: a file, or what a locked one holds.
pub(crate) trait Source: Read + Seek {}

impl<T: Read + Seek> Source for T {}

/// A file ready to be handed over, and the screen to be shown.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct BundleReady {
    /// Where it lies; nothing where there is nothing to hand over.
    pub path: Option<String>,
    /// The screen, with what is told of it.
    pub screen: ShownScreen,
}

impl Held {
    pub fn export_bundle(
        &mut self,
        to: Option<&str>,
        with_photos: bool,
        folder: &str,
    ) -> Result<BundleReady, PitfaceError> {
        let to = to.map(device).transpose()?;
        let folder = Path::new(folder);
        if !folder.is_dir() {
            return Err(PitfaceError::NotFound { what: folder.display().to_string() });
        }
        let made = self.photos_for(to, with_photos).and_then(|leaving| {
            let sealer = Sealer {
                signer: &self.key,
                holder: self.own.name.trim(),
                written_by: PROGRAM,
                now_ms: now_ms(),
                ahead_ms: self.fixes.ahead_ms(),
            };
            self.store.seal(&sealer)?;
            Ok(self.write_bundle(to, &leaving.photos, folder)?.map(|written| (written, leaving)))
        });
        let (path, told) = match made {
            Ok(Some(((path, handed), leaving))) => {
                let mut told = vec![self.words.bundle_ready(handed.photos, handed.damaged.len())];
                told.extend(self.words.photos_leaving(&leaving));
                told.extend(self.team_word.word().map(|_| self.words.handed_over_locked()));
                (Some(path.display().to_string()), told.join(" "))
            }
            Ok(None) => (None, self.words.nothing_to_hand_over()),
            Err(error) => (None, self.words.not_saved(why(&error))),
        };
        self.partners_stale();
        Ok(BundleReady { path, screen: self.shown_with(told, false)? })
    }

    /// Takes a name or a position out of the notes here and, with the next file, everywhere.
    pub fn take_out(&mut self, record: RecordId, cell: Cell) -> Result<Answer, PitfaceError> {
        let name = self.words.versions_of(&self.words.belongs(&self.store.belongs(record)?), cell);
        let sealer = Sealer {
            signer: &self.key,
            holder: self.own.name.trim(),
            written_by: PROGRAM,
            now_ms: now_ms(),
            ahead_ms: self.fixes.ahead_ms(),
        };
        match self.store.take_out(record, cell, &sealer) {
            Ok(values) => {
                self.took_in();
                let told = self.words.taken_out(&name, values);
                Ok(Answer { screen: self.shown_with(told, true)?, changed: true })
            }
            Err(error) => self.told(self.words.not_saved(why(&error))),
        }
    }

    /// The photos that go along, without what a camera noted in them.
    fn photos_for(&mut self, to: Option<DeviceId>, with_photos: bool) -> Result<Leaving, StoreError> {
        let photos = self.folder.photos();
        let chosen = match to {
            _ if !with_photos => Vec::new(),
            Some(device) => here(self.store.photos_new_to(device)?, &photos),
            None => here(self.store.photos()?, &photos),
        };
        let leaving = self.store.photos_to_leave(&photos, chosen, now_ms())?;
        if leaving.stripped > 0 {
            self.notes.changed(None);
        }
        Ok(leaving)
    }

    /// Writes it beside its place first; nothing where there is nothing to write.
    fn write_bundle(
        &self,
        to: Option<DeviceId>,
        chosen: &[PhotoHash],
        folder: &Path,
    ) -> Result<Option<(PathBuf, Handed)>, StoreError> {
        let photos = self.folder.photos();
        let nothing = HashSet::new();
        let new = BufWriter::new(NewFile::begin(folder, Readers::Owner)?);
        let (new, handed, digest) = if let Some(word) = self.team_word.word() {
            let mut file = FileWriter::new(Locking::begin(new, word)?);
            let handed = self.store.hand_over_with_photos(to, &nothing, (&photos, chosen), &mut file)?;
            if file.count() == 0 {
                return Ok(None);
            }
            let digest = file.digest();
            (file.end()?.finish()?, handed, digest)
        } else {
            let mut file = FileWriter::new(new);
            let handed = self.store.hand_over_with_photos(to, &nothing, (&photos, chosen), &mut file)?;
            if file.count() == 0 {
                return Ok(None);
            }
            let digest = file.digest();
            (file.end()?, handed, digest)
        };
        let path = folder.join(bundle_name(self.key.device(), &digest));
        new.into_inner().map_err(std::io::IntoInnerError::into_error)?.put_at(&path)?;
        Ok(Some((path, handed)))
    }

    /// Takes in a file of bundles, and goes to the screen of the other devices.
    pub fn import_bundle(&mut self, mut file: &mut dyn Source) -> Result<Answer, PitfaceError> {
        let photos = self.folder.photos();
        let damaged = self.partners().checkup.photos.clone();
        let mut came = match self.store.take_in_with_photos(&mut file, &photos, &damaged, now_ms()) {
            Ok(came) => came,
            Err(CameFault::Store(StoreError::Bundle(damage))) => {
                return self.told(self.words.bundle_refused(&damage));
            }
            Err(CameFault::Store(StoreError::TooMuchWaits)) => return self.told(self.words.too_much_waits()),
            // What is locked is checked block by block as it is read.
            Err(CameFault::Store(StoreError::File(error)))
                if error.get_ref().and_then(|inner| inner.downcast_ref::<Refused>()).is_some() =>
            {
                return self.told(self.words.bundle_refused(&Damage::Damaged("locked")));
            }
            Err(CameFault::Store(error)) => return self.told(self.words.not_saved(why(&error))),
            Err(CameFault::Photo(_, error)) => {
                self.took_in();
                return self.told(self.words.not_saved(why(&error.into())));
            }
        };
        self.mended(&came.photos);
        if !came.taken.strangers.is_empty() && !came.photos_unnamed.is_empty() {
            // Its photos belong to records that wait; where there is no room, they have to be handed over again.
            if self.folder.keep_waiting(&mut file).is_ok() {
                came.photos_unnamed.clear();
            }
        }
        self.go(Place::Partners);
        self.came(&came, Vec::new())
    }

    /// Does what was decided of another device.
    pub fn decide(&mut self, decided: Decided) -> Result<Answer, PitfaceError> {
        match decided {
            Decided::Accept(device) => self.accept(device),
            Decided::Refuse(device) => {
                let bundles = match self.store.refuse(device, None) {
                    Ok(bundles) => bundles,
                    Err(error) => return self.told(self.words.not_saved(why(&error))),
                };
                let told = self.words.refused_now(device, self.partners().holder(device), bundles);
                self.look_through_waiting(&mut Came::default());
                self.partners_stale();
                self.told(told)
            }
            Decided::Believe { signer, device } => {
                let taken = match self.store.believe(signer, device, now_ms()) {
                    Ok(taken) => taken,
                    Err(error) => return self.told(self.words.not_saved(why(&error))),
                };
                let told = self.words.believed_now(signer, self.partners().holder(signer), device);
                self.came(&taken.into(), vec![told])
            }
            Decided::EmptyWaiting => {
                let waited = match self.store.empty_waiting() {
                    Ok(waited) => waited,
                    Err(error) => return self.told(self.words.not_saved(why(&error))),
                };
                for path in self.folder.waiting() {
                    let _ = fs::remove_file(path);
                }
                let told = self.words.emptied(&waited);
                self.partners_stale();
                self.told(told)
            }
        }
    }

    /// Accepts a device; what waited for it comes in.
    fn accept(&mut self, device: DeviceId) -> Result<Answer, PitfaceError> {
        let taken = match self.store.accept(device, now_ms()) {
            Ok(taken) => taken,
            Err(StoreError::SameFingerprint(_)) => return self.told(self.words.same_fingerprint()),
            Err(error) => return self.told(self.words.not_saved(why(&error))),
        };
        let accepted = self.words.accepted(device, self.partners().holder(device));
        let mut came = Came::from(taken);
        self.look_through_waiting(&mut came);
        self.came(&came, vec![accepted])
    }

    /// Takes the photos out of all files that wait for them.
    fn look_through_waiting(&mut self, came: &mut Came) {
        for path in self.folder.waiting() {
            self.photos_of_waiting(&path, came);
        }
    }

    /// Photos that came before the records that name them were accepted. A file that somebody still waits in is kept.
    fn photos_of_waiting(&mut self, path: &Path, came: &mut Came) {
        let Ok(mut file) = File::open(path) else { return };
        let photos = self.folder.photos();
        let damaged = self.partners().checkup.photos.clone();
        let again = self.store.take_in_with_photos(&mut file, &photos, &damaged, now_ms());
        let Ok(again) = again else { return };
        self.mended(&again.photos);
        came.photos.extend(&again.photos);
        if again.taken.strangers.is_empty() || again.photos_unnamed.is_empty() {
            let _ = fs::remove_file(path);
        }
    }

    fn came(&mut self, came: &Came, before: Vec<String>) -> Result<Answer, PitfaceError> {
        self.took_in();
        let changed = came.taken.edits > 0 || !came.photos.is_empty();
        let partners = self.store.partners()?;
        // Who waits and what is missing stands on the screen that is shown.
        let taken = TakenIn { strangers: BTreeSet::new(), missing: BTreeSet::new(), ..came.taken.clone() };
        let came = Came { taken, ..came.clone() };
        let told: Vec<String> = before.into_iter().chain(self.words.came(&came, &partners)).collect();
        Ok(Answer { screen: self.shown_with(told.join(" "), true)?, changed })
    }

    /// Anything may stand otherwise now.
    fn took_in(&mut self) {
        self.notes.changed(None);
        self.partners_stale();
    }
}

fn here(named: impl IntoIterator<Item = PhotoHash>, photos: &pitface_core::store::Photos) -> Vec<PhotoHash> {
    named.into_iter().filter(|photo| photos.size(photo).is_some()).collect()
}

/// A device by its id in hex, as it crosses the border.
fn device(id: &str) -> Result<DeviceId, PitfaceError> {
    let invalid = || PitfaceError::Invalid {
        what: format!("{id:?} is no id of a device"),
        todo: "give the one of what was tapped as it came".to_owned(),
    };
    DeviceId::from_hex(id).ok_or_else(invalid)
}
