//! `pitface hand-over`: what a store has goes into a file for others, or into a folder that several share.

use crate::argument::Shown;
use crate::carried::files::{Bundles, Handed, Way, in_folder, write};
use crate::carried::taking;
use crate::carried::{find_device, of_store, photo_counts, photos_of};
use crate::json::merged;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::store::{DeviceId, Sealer, Store, photo_name};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::collections::HashSet;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

/// What goes into a bundle as the program that wrote it.
const PROGRAM: &str = concat!("pitface ", env!("CARGO_PKG_VERSION"));

/// What goes where.
#[derive(Args)]
#[command(
    after_help = "What is noted here is signed with the key of this device, made on first use in the person's settings \
    (pitface/key). The key is this device's alone: do not copy it to another one, which makes a key of its own. \
    Others tell this device by the fingerprint that `pitface partners` shows."
)]
pub struct HandOver {
    /// The store.
    store: PathBuf,
    /// Leave out what this device has, by its fingerprint, or what is in this file of its.
    #[arg(long, value_name = "FINGERPRINT|FILE.pitb")]
    to: Option<String>,
    /// Write this file.
    #[arg(long, value_name = "FILE.pitb", required_unless_present = "folder")]
    out: Option<PathBuf>,
    /// Take in every bundle of this folder that several share, and put there what it lacks, as a new file; no file there is
    /// changed or removed.
    #[arg(long, conflicts_with = "out")]
    folder: Option<PathBuf>,
    /// Notes alone.
    #[arg(long)]
    without_photos: bool,
    /// How the person with this device calls themselves; remembered.
    #[arg(long, value_name = "NAME")]
    holder: Option<String>,
}

impl HandOver {
    /// Hands it over.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let key = device::lasting()?;
        let photos = photos_of(&self.store);
        let (mut remarks, mut there) = (String::new(), HashSet::new());
        let in_folder = match &self.folder {
            Some(folder) => sound_files(folder, &mut remarks)?,
            None => Vec::new(),
        };
        let mut store = Store::open_existing(&self.store, key.device()).map_err(&failed)?;
        let to = self.to(&store, &mut there)?;
        there.extend(in_folder.iter().flat_map(Bundles::parts).map(|part| part.hash));
        let came = match &self.folder {
            Some(_) => Some(taking::take_in(&mut store, &self.store, &photos, &in_folder, &[])?),
            None => None,
        };
        let holder = match self.holder {
            Some(holder) => holder,
            None => store.holder(key.device()).map_err(&failed)?.unwrap_or_default(),
        };
        let sealer =
            Sealer { signer: &key, holder: &holder, written_by: PROGRAM, now_ms: now_ms(), ahead_ms: None };
        store.seal(&sealer).map_err(&failed)?;
        let mut chosen: Vec<_> = store.photos().map_err(&failed)?.into_iter().collect();
        chosen.retain(|photo| !self.without_photos && photos.size(photo).is_some());
        let way = Way {
            to,
            there: &there,
            photos: &chosen,
            out: self.out.as_deref(),
            folder: self.folder.as_deref().unwrap_or(Path::new(".")),
            own: key.device(),
        };
        let handed = write(&store, &photos, &way)?;
        for photo in &handed.damaged {
            let fault = Fault::new("", "the photo is damaged and stays here", "see `pitface check`");
            let _ = writeln!(remarks, "{}: {fault}", photos.path(photo).display());
        }
        let waiting = store.not_carried().map_err(&failed)?;
        let counts = photo_counts(&store, &photos).map_err(&failed)?;
        let mut lines = came.as_ref().map_or_else(Vec::new, |came| came.told(&words, &self.store));
        lines.extend(told(&words, &handed, waiting, counts));
        let json = merged(
            json(&handed, waiting, counts),
            came.map_or_else(|| json!({}), |came| json!({ "taken_in": came.json() })),
        );
        Ok(Answer { remarks, ..Answer::new(lines.join("\n") + "\n", json) })
    }

    /// The device it goes to, or else what a file of that device has.
    fn to(&self, store: &Store, there: &mut HashSet<[u8; 32]>) -> Result<Option<DeviceId>, Trouble> {
        let Some(to) = &self.to else { return Ok(None) };
        if Path::new(to).is_file() {
            there.extend(Bundles::read(Path::new(to))?.parts().iter().map(|part| part.hash));
            return Ok(None);
        }
        let partners = store.partners().map_err(of_store(&self.store))?;
        find_device("--to", to, partners.iter().map(|partner| partner.device)).map(Some)
    }
}

/// The files of a folder that can be used. Of the others each is told: one that is still being copied there must not stop
/// those that are whole.
fn sound_files(folder: &Path, remarks: &mut String) -> Result<Vec<Bundles>, Trouble> {
    let mut files = Vec::new();
    for path in in_folder(folder)? {
        match Bundles::read(&path) {
            Ok(file) => files.push(file),
            Err(trouble) => {
                let _ = write!(remarks, "{trouble}");
            }
        }
    }
    Ok(files)
}

fn told(words: &Words, handed: &Handed, waiting: u64, photos: [usize; 2]) -> Vec<String> {
    let mut lines = Vec::new();
    match &handed.file {
        Some(file) => {
            lines.push(words.handed_over(handed.bundles, handed.photos));
            lines.push(file.display().to_string());
        }
        None => lines.push(words.nothing_to_hand_over()),
    }
    let [here, named] = photos;
    if named > 0 {
        lines.push(words.photos_here(here, named));
    }
    lines.push(words.not_carried(waiting));
    lines
}

fn json(handed: &Handed, waiting: u64, [here, named]: [usize; 2]) -> Value {
    json!({
        "written": handed.file.as_ref().map(|file| file.display().to_string()),
        "bundles": handed.bundles,
        "photos": handed.photos,
        "photos_damaged": handed.damaged.iter().map(photo_name).collect::<Vec<_>>(),
        "photos_here": here,
        "photos_named": named,
        "edits_not_carried": waiting,
    })
}
