//! `pitface check`: whether a store and its photos are as they were written.

use crate::argument::Shown;
use crate::carried::files::Bundles;
use crate::carried::taking::missing_json;
use crate::carried::team_word::{TeamWord, TeamWordArgument};
use crate::carried::{holder_of, of_store, open_to_read, photos_of};
use crate::trouble::Trouble;
use crate::write::cannot;
use crate::{Answer, device};
use clap::Args;
use pitface_core::merge::plan::Missing;
use pitface_core::merge::{Part, PartKind, PhotoPiece, Signer as _};
use pitface_core::store::{Checked, Partner, PhotoHash, Photos, PieceTaken, StoreError, photo_name};
use pitface_core::words::Words;
use serde_json::json;
use std::collections::BTreeSet;
use std::path::PathBuf;

/// Which store.
#[derive(Args)]
#[command(
    after_help = "A store whose edits are damaged is kept as it is: take in bundles of others into a new one \
    (`pitface take-in NEW.pitface FILE.pitb ...`), and what was handed over once is all there."
)]
pub struct Check {
    /// The store.
    store: PathBuf,
    /// Mend what can be: damaged and missing photos from these bundles, current values from the edits.
    #[arg(long, value_name = "FILE.pitb", num_args = 0..)]
    repair: Option<Vec<PathBuf>>,
    #[command(flatten)]
    team_word: TeamWordArgument,
}

/// What was found, and what became of it.
struct Found {
    checked: Option<Checked>,
    damaged: Vec<Missing>,
    rebuilt: bool,
    photos_sound: u64,
    photos_damaged: BTreeSet<PhotoHash>,
    photos_mended: BTreeSet<PhotoHash>,
    photos_missing: Vec<PhotoHash>,
    partners: Vec<Partner>,
}

impl Check {
    /// Checks it.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let failed = of_store(&self.store);
        let word = self.team_word.word()?;
        let (mut trouble, mut files) = (Trouble::default(), Vec::new());
        for file in self.repair.iter().flatten() {
            match Bundles::read(file, word.as_ref()) {
                Ok(file) => files.push(file),
                Err(faults) => trouble.add(faults),
            }
        }
        let files = trouble.or(files)?;
        let mut store = open_to_read(&self.store, device::lasting()?.device())?;
        let (mut checked, mut damaged, mut rebuilt) = (None, Vec::new(), false);
        match store.check() {
            Ok(sound) => checked = Some(sound),
            Err(StoreError::Corrupt(what)) => {
                damaged = store.damaged_edits().map_err(&failed)?;
                if damaged.is_empty() && self.repair.is_some() {
                    store.rebuild().map_err(&failed)?;
                    checked = Some(store.check().map_err(&failed)?);
                    rebuilt = true;
                } else if damaged.is_empty() {
                    return Err(failed(StoreError::Corrupt(what)));
                }
            }
            Err(error) => return Err(failed(error)),
        }
        let photos = photos_of(&self.store);
        let unread = |error: std::io::Error| {
            cannot(&self.store, "has photos that cannot be read", &error, "check who may read them")
        };
        let before = photos.check().map_err(unread)?;
        let named: Vec<PhotoHash> = store.photos().map_err(&failed)?.into_iter().collect();
        let mended = mend(&photos, (&files, word.as_ref()), &before.damaged, &named)?;
        let found = Found {
            checked,
            damaged,
            rebuilt,
            photos_sound: before.sound,
            photos_damaged: before.damaged.difference(&mended).copied().collect(),
            photos_missing: photos.missing(&named),
            photos_mended: mended,
            partners: store.partners().map_err(&failed)?,
        };
        Ok(found.answer(&shown.words()))
    }
}

/// Brings damaged and missing photos back from files; tells which.
fn mend(
    photos: &Photos,
    (files, word): (&[Bundles], Option<&TeamWord>),
    damaged: &BTreeSet<PhotoHash>,
    named: &[PhotoHash],
) -> Result<BTreeSet<PhotoHash>, Trouble> {
    let wanted: BTreeSet<PhotoHash> =
        photos.missing(named).into_iter().chain(damaged.iter().copied()).collect();
    let unkept = |photo: &PhotoHash| {
        let place = photos.path(photo);
        move |error| cannot(&place, "cannot be kept", &error, "make room and repair again")
    };
    let mut mended = BTreeSet::new();
    for file in files.iter().filter(|file| file.photos.keys().any(|photo| wanted.contains(photo))) {
        let (mut source, mut begun) = (file.source(word)?, BTreeSet::new());
        for part in file.parts.iter().filter(|part| part.kind == PartKind::PhotoPiece) {
            let failed =
                |error: &std::io::Error| cannot(&file.path, "cannot be read", error, "fetch it again");
            let bytes = part.read(&mut *source).map_err(|error| failed(&error))?;
            let damaged = |damage| Trouble::of_said(&file.path, &damage);
            let (part, _) = Part::first_of(&bytes).map_err(damaged)?;
            let piece = PhotoPiece::read(part.content).map_err(damaged)?;
            if wanted.contains(&piece.sha256) && !mended.contains(&piece.sha256) {
                begun.insert((piece.sha256, piece.size_bytes));
                if photos.mend(&piece).map_err(unkept(&piece.sha256))? == PieceTaken::Complete {
                    mended.insert(piece.sha256);
                }
            }
        }
        begun.retain(|(photo, _)| !mended.contains(photo));
        for (photo, size_bytes) in begun {
            if photos.finish(&photo, size_bytes).map_err(unkept(&photo))? == PieceTaken::Complete {
                mended.insert(photo);
            }
        }
    }
    Ok(mended)
}

impl Found {
    /// Returns what is damaged still, and what was mended; else that all is sound.
    fn answer(self, words: &Words) -> Answer {
        let names = |photos: &BTreeSet<PhotoHash>| photos.iter().map(photo_name).collect::<Vec<_>>();
        let mut lines = Vec::new();
        for damaged in &self.damaged {
            lines.push(words.checked_damaged(damaged, holder_of(&self.partners, damaged.device)));
        }
        lines.extend(self.rebuilt.then(|| words.checked_cells()));
        lines.extend(names(&self.photos_mended).iter().map(|photo| words.checked_photo(photo, true)));
        lines.extend(names(&self.photos_damaged).iter().map(|photo| words.checked_photo(photo, false)));
        if !self.photos_missing.is_empty() {
            lines.push(words.checked_photos_missing(self.photos_missing.len()));
        }
        let sound = self.checked.filter(|_| self.photos_damaged.is_empty());
        if let Some(checked) = sound {
            let photos = self.photos_sound + self.photos_mended.len() as u64;
            lines.push(words.checked_sound(checked.edits, checked.cells, photos));
        }
        let json = json!({
            "sound": sound.is_some(),
            "edits": self.checked.map(|checked| checked.edits),
            "cells": self.checked.map(|checked| checked.cells),
            "damaged": self.damaged.iter().map(missing_json).collect::<Vec<_>>(),
            "cells_made_anew": self.rebuilt,
            "photos_sound": self.photos_sound,
            "photos_mended": names(&self.photos_mended),
            "photos_damaged": names(&self.photos_damaged),
            "photos_missing": self.photos_missing.iter().map(photo_name).collect::<Vec<_>>(),
        });
        Answer { sound: sound.is_some(), ..Answer::new(lines.join("\n") + "\n", json) }
    }
}
