//! `pitface hand-over`: what a store has goes into a file for others, or into a folder that several share.

use crate::argument::Shown;
use crate::carried::files::{Bundles, Handed, Way, in_folder, read_bytes, write};
use crate::carried::gather::{Gathered, gather};
use crate::carried::team_word::{HOW, TeamWord, TeamWordArgument};
use crate::carried::{find_device, of_store, photo_counts, photos_of, taking};
use crate::json::merged;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::store::{DeviceId, Sealer, Store, photo_name};
use pitface_core::words::Words;
use pitface_locked::is_locked;
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
    Others tell this device by the fingerprint that `pitface partners` shows.\n\n\
    A locked file is an ordinary age file (age-encryption.org/v1) around the bundle. The team word has twelve characters or more and stands in \
    the variable PITFACE_TEAM_WORD or in the file of --team-word-file, never on the command line, which histories keep. In a folder that \
    has locked files what is added is locked too."
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
    /// After that make one file of all that this device has put into the folder. The old ones go once the new one was read back.
    #[arg(long, requires = "folder", conflicts_with = "out")]
    gather: bool,
    /// Lock the file with the team word, for folders and messengers that others can look into.
    #[arg(long)]
    locked: bool,
    #[command(flatten)]
    team_word: TeamWordArgument,
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
        let word = self.team_word.word()?;
        let Shared { files, shut, mut remarks } = match &self.folder {
            Some(folder) => Shared::read(folder, word.as_ref())?,
            None => Shared::default(),
        };
        let how = self.how(word.as_ref(), &files, shut)?;
        let mut there = HashSet::new();
        let mut store = Store::open_existing(&self.store, key.device()).map_err(&failed)?;
        let to = self.to(&store, word.as_ref(), &mut there)?;
        there.extend(files.iter().flat_map(Bundles::parts).map(|part| part.hash));
        let came = match &self.folder {
            Some(_) => Some(taking::take_in(&mut store, &self.store, &photos, &files, &[])?),
            None => None,
        };
        drop(files);
        let holder = match self.holder {
            Some(holder) => holder,
            None => store.holder(key.device()).map_err(&failed)?.unwrap_or_default(),
        };
        let sealer =
            Sealer { signer: &key, holder: &holder, written_by: PROGRAM, now_ms: now_ms(), ahead_ms: None };
        store.seal(&sealer).map_err(&failed)?;
        let mut chosen: Vec<_> = store.photos().map_err(&failed)?.into_iter().collect();
        chosen.retain(|photo| !self.without_photos && photos.size(photo).is_some());
        let folder = self.folder.as_deref().unwrap_or(Path::new("."));
        let mut way = Way {
            to,
            there: &there,
            photos: &chosen,
            out: self.out.as_deref(),
            folder,
            own: key.device(),
            word: None,
        };
        let (mut handed, mut gathered) = (None, None);
        if let How::Written(word) = how {
            way.word = word;
            handed = Some(write(&store, &photos, &way)?);
            gathered = self.gather.then(|| gather(folder, key.device(), word)).transpose()?;
        } else {
            let wrong = "nothing is put here in the clear: there are locked files, and none of them opens";
            let _ = write!(remarks, "{}", Trouble::one(folder, Fault::new("", wrong, HOW)));
        }
        for photo in handed.iter().flat_map(|handed| &handed.added.damaged) {
            let fault = Fault::new("", "the photo is damaged and stays here", "see `pitface check`");
            let _ = writeln!(remarks, "{}: {fault}", photos.path(photo).display());
        }
        let waiting = store.not_carried().map_err(&failed)?;
        let counts = photo_counts(&store, &photos).map_err(&failed)?;
        let mut lines = came.as_ref().map_or_else(Vec::new, |came| came.told(&words, &self.store));
        let sound = handed.is_some();
        let handed = handed.unwrap_or_default();
        if sound {
            lines.extend(told(&words, &handed, way.word.is_some()));
        }
        lines.extend(gathered.iter().flat_map(|gathered| told_gathered(&words, gathered)));
        let [here, named] = counts;
        lines.extend((named > 0).then(|| words.photos_here(here, named)));
        lines.push(words.not_carried(waiting));
        let mut json = json(&handed, way.word.is_some(), waiting, counts);
        if let Some(came) = &came {
            json = merged(json, json!({ "taken_in": came.json() }));
        }
        if let Some(gathered) = &gathered {
            json = merged(json, gathered_json(gathered));
        }
        Ok(Answer { remarks, sound, ..Answer::new(lines.join("\n") + "\n", json) })
    }

    /// How a file is to be written. Where a team locks its files, nothing gets there in the clear because somebody forgot the word.
    fn how<'w>(
        &self,
        word: Option<&'w TeamWord>,
        there: &[Bundles],
        shut: usize,
    ) -> Result<How<'w>, Trouble> {
        let opened = there.iter().any(|file| file.locked);
        match word {
            Some(word) if self.locked || opened => {
                word.long_enough()?;
                Ok(How::Written(Some(word)))
            }
            None if self.locked => {
                Err(Trouble::of_arguments(Fault::new("--locked", "there is no team word", HOW)))
            }
            _ if shut > 0 => Ok(How::Withheld),
            _ => Ok(How::Written(None)),
        }
    }

    /// The device it goes to, or else what a file of that device has.
    fn to(
        &self,
        store: &Store,
        word: Option<&TeamWord>,
        there: &mut HashSet<[u8; 32]>,
    ) -> Result<Option<DeviceId>, Trouble> {
        let Some(to) = &self.to else { return Ok(None) };
        if Path::new(to).is_file() {
            there.extend(Bundles::read(Path::new(to), word)?.parts().iter().map(|part| part.hash));
            return Ok(None);
        }
        let partners = store.partners().map_err(of_store(&self.store))?;
        find_device("--to", to, partners.iter().map(|partner| partner.device)).map(Some)
    }
}

/// Whether and how a file is written.
enum How<'w> {
    /// Locked if there is a word.
    Written(Option<&'w TeamWord>),
    /// Not at all: the word is missing.
    Withheld,
}

/// What lies in a folder that several share.
#[derive(Default)]
struct Shared {
    /// The files that can be used.
    files: Vec<Bundles>,
    /// How many are locked and do not open.
    shut: usize,
    /// Of the others each is told: one that is still being copied there must not stop those that are whole.
    remarks: String,
}

impl Shared {
    fn read(folder: &Path, word: Option<&TeamWord>) -> Result<Self, Trouble> {
        let mut shared = Self::default();
        for path in in_folder(folder)? {
            let bytes = read_bytes(&path);
            let locked = bytes.as_ref().is_ok_and(|bytes| is_locked(bytes));
            match bytes.and_then(|bytes| Bundles::of(&path, bytes, word)) {
                Ok(file) => shared.files.push(file),
                Err(trouble) => {
                    shared.shut += usize::from(locked);
                    let _ = write!(shared.remarks, "{trouble}");
                }
            }
        }
        Ok(shared)
    }
}

fn told(words: &Words, handed: &Handed, locked: bool) -> Vec<String> {
    let Some(file) = &handed.file else { return vec![words.nothing_to_hand_over()] };
    let mut lines =
        vec![words.handed_over(handed.added.bundles, handed.added.photos), file.display().to_string()];
    lines.extend(locked.then(|| words.handed_over_locked()));
    lines
}

fn told_gathered(words: &Words, Gathered { file, removed }: &Gathered) -> Vec<String> {
    let file = file.as_ref().map(|file| file.display().to_string());
    [words.gathered(*removed)].into_iter().chain(file).collect()
}

fn json(handed: &Handed, locked: bool, waiting: u64, [here, named]: [usize; 2]) -> Value {
    json!({
        "written": handed.file.as_ref().map(|file| file.display().to_string()),
        "locked": handed.file.is_some() && locked,
        "bundles": handed.added.bundles,
        "photos": handed.added.photos,
        "photos_damaged": handed.added.damaged.iter().map(photo_name).collect::<Vec<_>>(),
        "photos_here": here,
        "photos_named": named,
        "edits_not_carried": waiting,
    })
}

fn gathered_json(Gathered { file, removed }: &Gathered) -> Value {
    json!({ "gathered": file.as_ref().map(|file| file.display().to_string()), "files_removed": removed })
}
