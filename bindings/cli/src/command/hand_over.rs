//! `pitface hand-over`: what a store has goes into a file for others, or into a folder that several share.

use crate::argument::Shown;
use crate::carried::chosen::{self, Chosen, Photographs};
use crate::carried::files::Bundles;
use crate::carried::gather::{Gathered, gather};
use crate::carried::shared::{Going, Shared};
use crate::carried::team_word::{HOW, Lock, TeamWord, TeamWordArgument};
use crate::carried::writing::{Handed, Way, write};
use crate::carried::{find_device, of_store, open_to_read, photo_counts, photos_of, tell_aside};
use crate::json::merged;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::write::told_written;
use crate::{Answer, device};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::harmless::wrong_with_name;
use pitface_core::merge::Signer as _;
use pitface_core::store::{DeviceId, Leaving, Photos, Sealer, Store, StoreError, photo_name};
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
    Others tell this device by the fingerprint that `pitface partners` shows.\n\n\
    A locked file is an ordinary age file (age-encryption.org/v1) around the bundle. The team word has twelve characters or more, is not to be \
    guessed, and stands in the variable PITFACE_TEAM_WORD or in the file of --team-word-file, never on the command line, which histories keep. \
    Whoever has set it locks what is handed over, and into a folder that was locked once nothing goes in the clear, but with --open."
)]
#[expect(clippy::struct_excessive_bools, reason = "options that are there or not, each by itself")]
pub struct HandOver {
    /// The store.
    store: PathBuf,
    /// Leave out what this device has, by its fingerprint, or what is in this file of its.
    #[arg(long, value_name = "FINGERPRINT|FILE.pitb")]
    to: Option<String>,
    /// These fields alone, by name or id, for somebody who is not to have the rest: into the folder --out a notes file each, with ids, and their photos. Who wrote what and when
    /// does not go along.
    #[arg(long, value_name = "NAME|ID", conflicts_with_all = ["to", "folder", "locked", "holder"])]
    field: Vec<String>,
    /// Write this file; with --field, into this folder.
    #[arg(long, value_name = "FILE.pitb", required_unless_present = "folder")]
    out: Option<PathBuf>,
    /// Take in every bundle of this folder that several share, and put there what it lacks, as a new file; no sound file there is
    /// changed or removed. The store is made if it is not there.
    #[arg(long, conflicts_with = "out")]
    folder: Option<PathBuf>,
    /// Read every file of the folder again, also those that did not change since the last time.
    #[arg(long, requires = "folder")]
    read_again: bool,
    /// After that make one file of all that this device has put into the folder. The old ones go once the new one was read back.
    #[arg(long, requires = "folder", conflicts_with = "out")]
    gather: bool,
    /// Lock the file with the team word, for folders and messengers that others can look into; with a team word set this is done anyway.
    /// Said in so many words, it begins with a new word in a folder whose files do not open with it.
    #[arg(long)]
    locked: bool,
    /// Do not lock the file, although there is a team word or the folder is locked: whoever gets it can read it.
    #[arg(long, conflicts_with = "locked")]
    open: bool,
    #[command(flatten)]
    team_word: TeamWordArgument,
    /// Notes alone.
    #[arg(long)]
    without_photos: bool,
    /// Photos with all that the camera noted in them: place, time, serial number. Without this they go without, and what is no JPEG stays.
    #[arg(long, conflicts_with = "without_photos")]
    photos_as_taken: bool,
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
        let own = key.device();
        let photos = photos_of(&self.store);
        let opens = self.team_word.word()?;
        let locks = self.locking(opens.as_ref())?;
        if let Some(out) = self.out.as_deref().filter(|_| !self.field.is_empty()) {
            return self.chosen(out, locks.is_some(), &words);
        }
        let mut store = match &self.folder {
            Some(_) if !self.store.exists() => Store::create_or_open(&self.store, own).map_err(&failed)?,
            _ => open_to_read(&self.store, own)?,
        };
        photos.tidy(false);
        let mut there = HashSet::new();
        let to = self.to(&store, opens.as_ref(), &mut there)?;
        let again = self.read_again;
        let going = Going { path: &self.store, photos: &photos, own, word: opens.as_ref(), again };
        let shared = self.folder.as_deref().map(|folder| Shared::take_in(&mut store, folder, &going));
        let mut shared = shared.transpose()?;
        there.extend(shared.iter().flat_map(Shared::parts));
        let holder = match &self.holder {
            Some(holder) => match wrong_with_name(holder) {
                None => holder.clone(),
                Some(wrong) => {
                    let fault = Fault::new("--holder", wrong, "write it shorter, on one line");
                    return Err(Trouble::of_arguments(fault));
                }
            },
            None => store.holder(own).map_err(&failed)?.unwrap_or_default(),
        };
        let sealer =
            Sealer { signer: &key, holder: &holder, written_by: PROGRAM, now_ms: now_ms(), ahead_ms: None };
        let Sealed { mut store, leaving, not_signed } =
            self.sealed(store, &photos, shared.as_ref(), &sealer)?;
        let folder = self.folder.as_deref().unwrap_or(Path::new("."));
        let mut way = Way {
            to,
            there: &there,
            photos: &leaving.photos,
            out: self.out.as_deref(),
            folder,
            own,
            lock: None,
        };
        let mut remarks = not_signed.as_ref().map_or_else(String::new, Trouble::to_string);
        let (mut handed, mut gathered) = (None, None);
        match self.how(locks, shared.as_ref()) {
            How::Written(lock) => {
                let lock_word = lock.as_ref().map(|lock| lock.word);
                way.lock = lock;
                // Written anew it may get the same name.
                shared.as_mut().filter(|_| !self.without_photos).map_or(Ok(()), Shared::put_damaged_aside)?;
                handed = Some(write(&store, &photos, &way)?);
                gathered = self.gather.then(|| gather(folder, own, lock_word)).transpose()?;
                if let Some(shared) = &mut shared {
                    let gathered = gathered.iter().flat_map(|gathered| &gathered.file);
                    let written = handed.iter().flat_map(|handed| &handed.file).chain(gathered);
                    let written = written.map(PathBuf::as_path).filter(|path| path.exists());
                    shared.wrote(&mut store, &going, written)?;
                }
            }
            How::Withheld(wrong) => {
                let todo = format!("{HOW}; or say --open, if anybody may read it");
                let _ = write!(remarks, "{}", Trouble::one(folder, Fault::new("", wrong, todo)));
            }
        }
        remarks = shared.as_ref().map_or_else(String::new, |shared| shared.remarks.clone()) + &remarks;
        for photo in handed.iter().flat_map(|handed| &handed.added.damaged) {
            let fault = Fault::new("", "the photo is damaged and stays here", "see `pitface check`");
            let _ = writeln!(remarks, "{}: {fault}", photos.path(photo).display());
        }
        let waiting = store.not_carried().map_err(&failed)?;
        let counts = photo_counts(&store, &photos).map_err(&failed)?;
        let mut lines = shared.as_ref().map_or_else(Vec::new, |shared| shared.came.told(&words, &self.store));
        let written = handed.is_some();
        let handed = handed.unwrap_or_default();
        let locked = way.lock.is_some();
        if written {
            lines.extend(told(&words, &handed, locked));
            lines.extend(words.photos_leaving(&leaving));
        }
        lines.extend(gathered.iter().flat_map(|gathered| told_gathered(&words, gathered)));
        let [here, named] = counts;
        lines.extend((named > 0).then(|| words.photos_here(here, named)));
        lines.push(words.not_carried(waiting));
        let mut json = json(&handed, locked, waiting, counts);
        let stay: Vec<_> = leaving.stay.iter().map(photo_name).collect();
        json = merged(json, json!({ "photos_stripped": leaving.stripped, "photos_stay": stay }));
        if let Some(shared) = &shared {
            json = merged(json, json!({ "taken_in": shared.came.json(), "files_read": shared.read }));
        }
        if let Some(gathered) = &gathered {
            json = merged(json, gathered_json(gathered));
        }
        Ok(Answer {
            remarks,
            sound: written && not_signed.is_none(),
            ..Answer::new(lines.join("\n") + "\n", json)
        })
    }

    /// Hands over some fields alone.
    fn chosen(&self, out: &Path, has_word: bool, words: &Words) -> Result<Answer, Trouble> {
        if has_word {
            let wrong = "chosen fields go as notes files and photos, which cannot be locked";
            let todo = "say --open if whoever gets them may read them, or hand over everything";
            return Err(Trouble::of_arguments(Fault::new("--field", wrong, todo)));
        }
        let how = match (self.without_photos, self.photos_as_taken) {
            (true, _) => Photographs::Stay,
            (_, true) => Photographs::AsTaken,
            _ => Photographs::WithoutNotes,
        };
        let Chosen { files, leaving } = chosen::write(&self.store, &self.field, out, how)?;
        let written = told_written(&files);
        let mut lines = words.photos_leaving(&leaving);
        lines.push(words.handed_over_chosen());
        let stay: Vec<_> = leaving.stay.iter().map(photo_name).collect();
        let json = json!({ "photos": leaving.photos.len(), "photos_stripped": leaving.stripped, "photos_stay": stay });
        Ok(Answer::new(written.text + &lines.join("\n") + "\n", merged(written.json, json)))
    }

    /// The word to lock with, if it is to be locked and the word is good enough.
    fn locking<'w>(&self, word: Option<&'w TeamWord>) -> Result<Option<&'w TeamWord>, Trouble> {
        match word {
            _ if self.open => Ok(None),
            None if self.locked => {
                Err(Trouble::of_arguments(Fault::new("--locked", "there is no team word", HOW)))
            }
            None => Ok(None),
            Some(word) => word.strong_enough().map(|()| Some(word)),
        }
    }

    /// How a file is to be written. Where a team locks its files, nothing gets there in the clear because somebody forgot the word, and nothing with
    /// a word that was mistyped; a locked file of somebody else keeps nobody from writing.
    fn how<'w>(&self, word: Option<&'w TeamWord>, shared: Option<&Shared>) -> How<'w> {
        match (word, shared) {
            (Some(word), Some(shared)) if !self.locked => match shared.like() {
                None if shared.shut => {
                    How::Withheld("the team word opens none of the files that the team locked here")
                }
                like => How::Written(Some(Lock { word, like })),
            },
            (Some(word), _) => How::Written(Some(Lock::with(word))),
            (None, Some(shared)) if shared.locked && !self.open => {
                How::Withheld("nothing is put here in the clear: the folder is locked")
            }
            (None, _) => How::Written(None),
        }
    }

    /// The store with all that was written here sealed, and the photos that go along. Where the disk is full, what there is still gets out: it is
    /// sealed in memory, and again when there is room.
    fn sealed(
        &self,
        mut store: Store,
        photos: &Photos,
        shared: Option<&Shared>,
        sealer: &Sealer,
    ) -> Result<Sealed, Trouble> {
        let failed = of_store(&self.store);
        let seal = |store: &mut Store| {
            let leaving = self.photos(store, photos, shared)?;
            store.seal(sealer)?;
            Ok(leaving)
        };
        match seal(&mut store) {
            Err(StoreError::DiskFull) => {
                drop(store);
                let aside = Store::open_aside(&self.store, sealer.signer.device());
                let mut aside = aside.map_err(|_| failed(StoreError::DiskFull))?;
                tell_aside(&self.store);
                let leaving = seal(&mut aside).map_err(failed)?;
                Ok(Sealed { store: aside, leaving, not_signed: None })
            }
            // What is in bundles already is as it was signed, and may go.
            Err(error @ StoreError::NotAsWritten(_)) => {
                let leaving = self.photos(&mut store, photos, shared).map_err(&failed)?;
                Ok(Sealed { store, leaving, not_signed: Some(failed(error)) })
            }
            leaving => Ok(Sealed { store, leaving: leaving.map_err(failed)?, not_signed: None }),
        }
    }

    /// The photos that go along: those that are here, and not all there already.
    fn photos(
        &self,
        store: &mut Store,
        photos: &Photos,
        shared: Option<&Shared>,
    ) -> Result<Leaving, StoreError> {
        let mut chosen: Vec<_> = store.photos()?.into_iter().collect();
        chosen.retain(|photo| {
            let there = shared.is_some_and(|shared| shared.has(photo));
            !self.without_photos && !there && photos.size(photo).is_some()
        });
        if self.photos_as_taken {
            return Ok(Leaving { photos: chosen, ..Leaving::default() });
        }
        store.photos_to_leave(photos, chosen, now_ms())
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
            there.extend(Bundles::read(Path::new(to), word)?.parts.iter().map(|part| part.hash));
            return Ok(None);
        }
        let partners = store.partners().map_err(of_store(&self.store))?;
        find_device("--to", to, partners.iter().map(|partner| partner.device)).map(Some)
    }
}

/// A store from which can be handed over.
struct Sealed {
    store: Store,
    leaving: Leaving,
    /// Why what was written here last is not signed.
    not_signed: Option<Trouble>,
}

/// Whether and how a file is written.
enum How<'w> {
    /// Locked if it is said how.
    Written(Option<Lock<'w>>),
    /// Not at all, and why.
    Withheld(&'static str),
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
