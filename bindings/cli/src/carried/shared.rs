//! A folder that several share, gone through file by file: none is held in memory, and none that is known is read again.

use super::files::{Bundles, begins_locked, in_folder, stamp};
use super::new_file::hash_of;
use super::of_store;
use super::taking::AllCame;
use super::team_word::TeamWord;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::store::{
    DeviceId, KnownFile, PhotoHash, Photos, Store, bundle_name, photo_name, remove_left_over,
};
use std::collections::{BTreeMap, BTreeSet, HashSet};
use std::fmt::Write as _;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

/// What lies in a folder, all of it taken in.
pub struct Shared {
    folder: PathBuf,
    /// The folder in full: what the store calls it.
    place: String,
    /// The files that are whole, by name.
    whole: BTreeMap<String, KnownFile>,
    /// Files of this device that are not as it wrote them.
    own_damaged: Vec<PathBuf>,
    /// Whether a locked file was opened in this run.
    opened: bool,
    /// Whether the folder is locked, as far as can be seen without a word.
    pub locked: bool,
    /// Whether files that this team locked do not open with the word, and none does.
    pub shut: bool,
    /// How many files were read; the others were known.
    pub read: usize,
    /// What became of them.
    pub came: AllCame,
    /// Of the others each is told: one that is still being copied there must not stop those that are whole.
    pub remarks: String,
}

/// Whose folder, with what.
pub struct Going<'a> {
    /// Where the store lies.
    pub path: &'a Path,
    /// Its photos.
    pub photos: &'a Photos,
    /// This device.
    pub own: DeviceId,
    /// The team's word.
    pub word: Option<&'a TeamWord>,
    /// Read also what is known.
    pub again: bool,
}

/// A locked file that does not open.
struct Shut {
    /// Whether its name says that it is of a device known here, and of these bytes.
    of_team: bool,
}

impl Shared {
    /// Goes through a folder and takes in what is new.
    pub fn take_in(store: &mut Store, folder: &Path, going: &Going) -> Result<Self, Trouble> {
        let failed = of_store(going.path);
        let files = in_folder(folder)?;
        let place = fs::canonicalize(folder).unwrap_or_else(|_| folder.to_owned()).display().to_string();
        remove_left_over(folder, false);
        let known = if going.again { BTreeMap::new() } else { store.known_files(&place).map_err(&failed)? };
        let mut shared = Self {
            folder: folder.to_owned(),
            locked: store.folder_is_locked(&place).map_err(&failed)?,
            came: AllCame::begin(store, going.path)?,
            place,
            whole: BTreeMap::new(),
            own_damaged: Vec::new(),
            opened: false,
            shut: false,
            read: 0,
            remarks: String::new(),
        };
        let mut shut = Vec::new();
        for path in files {
            let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            match known.get(&name).filter(|known| stamp(&path).is_ok_and(|stamp| stamp == known.stamp)) {
                Some(known) => drop(shared.whole.insert(name, known.clone())),
                None => shut.extend(shared.file(store, &path, name, going)?),
            }
        }
        shared.photos_again(store, going)?;
        shared.came = std::mem::take(&mut shared.came).end(store, going.path)?;
        store.know_files(&shared.place, &shared.whole).map_err(&failed)?;
        shared.shut = !shared.opened && shut.iter().any(|file| file.of_team);
        let is_open = shared.whole.values().any(|file| !file.locked);
        shared.locked |=
            shared.shut || shared.whole.values().any(|file| file.locked) || !shut.is_empty() && !is_open;
        Ok(shared)
    }

    /// Takes in a file that is not known; one that cannot be is told.
    fn file(
        &mut self,
        store: &mut Store,
        path: &Path,
        name: String,
        going: &Going,
    ) -> Result<Option<Shut>, Trouble> {
        self.read += 1;
        match Bundles::open(path, going.word) {
            Ok((file, mut source)) => {
                self.came.take(store, going.path, going.photos, (path, &mut *source))?;
                self.opened |= file.locked;
                self.whole.insert(name, file.known());
                Ok(None)
            }
            Err(trouble) => {
                let _ = write!(self.remarks, "{trouble}");
                let is_locked = File::open(path).and_then(|mut file| begins_locked(&mut file));
                let hash = File::open(path).and_then(hash_of).ok();
                let named = |device| hash.is_some_and(|hash| bundle_name(device, &hash) == name);
                let own = format!("{}-", &going.own.to_hex()[..8]);
                if name.starts_with(&own) && hash.is_some() && !named(going.own) {
                    self.own_damaged.push(path.to_owned());
                }
                let partners = store.partners().map_err(of_store(going.path))?;
                let of_team = partners.iter().any(|partner| named(partner.device));
                Ok(is_locked.unwrap_or(false).then_some(Shut { of_team }))
            }
        }
    }

    /// Reads files again for photos that are wanted only now: the record that names them came later, or the picture was lost here.
    fn photos_again(&mut self, store: &mut Store, going: &Going) -> Result<(), Trouble> {
        let named: Vec<PhotoHash> = store.photos().map_err(of_store(going.path))?.into_iter().collect();
        let wanted: BTreeSet<PhotoHash> = going.photos.missing(&named).into_iter().collect();
        for (name, known) in &self.whole {
            if !known.photos.keys().any(|photo| wanted.contains(photo)) {
                continue;
            }
            let path = self.folder.join(name);
            match Bundles::open(&path, going.word) {
                Ok((_, mut source)) => {
                    self.came.take_photos(store, going.path, going.photos, (&path, &mut *source))?;
                }
                Err(trouble) => drop(write!(self.remarks, "{trouble}")),
            }
        }
        Ok(())
    }

    /// The hashes of the parts that are there.
    pub fn parts(&self) -> HashSet<[u8; 32]> {
        self.whole.values().flat_map(|file| file.parts.iter().copied()).collect()
    }

    /// Returns whether all of a photo is there in one file.
    pub fn has(&self, photo: &PhotoHash) -> bool {
        self.whole.values().any(|file| file.photos.get(photo) == Some(&true))
    }

    /// A locked file that a word must open before something is locked with it; `None` where one was opened, or none is there.
    pub fn like(&self) -> Option<PathBuf> {
        let locked = self.whole.iter().filter(|(_, file)| file.locked && !self.opened);
        let smallest = locked.min_by_key(|(_, file)| file.stamp.size_bytes);
        smallest.map(|(name, _)| self.folder.join(name))
    }

    /// Notes for the next time what was written here just now, once each file was read back; and that the folder is locked, if one was.
    pub fn wrote<'a>(
        &mut self,
        store: &mut Store,
        going: &Going,
        written: impl Iterator<Item = &'a Path>,
    ) -> Result<(), Trouble> {
        for path in written {
            let file = Bundles::read(path, going.word)?;
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            self.whole.insert(name.into_owned(), file.known());
        }
        self.whole.retain(|name, _| self.folder.join(name).exists());
        if self.whole.values().any(|file| file.locked) {
            store.lock_folder(&self.place).map_err(of_store(going.path))?;
        }
        store.know_files(&self.place, &self.whole).map_err(of_store(going.path))
    }

    /// Puts files of this device that are damaged aside, before all it has is put there anew. Nothing of them is lost, and nobody comes upon them again.
    pub fn put_damaged_aside(&mut self) -> Result<(), Trouble> {
        for path in std::mem::take(&mut self.own_damaged) {
            let failed = |error| cannot(&path, "is damaged and cannot be put aside", &error, "remove it");
            let hash = File::open(&path).and_then(hash_of).map_err(failed)?;
            let mut name = path.as_os_str().to_owned();
            name.push(format!(".{}.damaged", &photo_name(&hash)[..8]));
            fs::rename(&path, &name).map_err(failed)?;
            let wrong =
                "this file of this device was damaged; all that the store has is put into the folder anew";
            let todo =
                format!("the damaged one is kept as {}; remove it if you like", Path::new(&name).display());
            let _ = write!(self.remarks, "{}", Trouble::one(&path, Fault::new("", wrong, &todo)));
        }
        Ok(())
    }
}
