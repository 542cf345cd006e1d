//! Photos that leave: without what a camera noted in them of place, time and itself.
//!
//! A bundle names a photo by the hash of its bytes, so bytes cannot be changed on the way. What is taken with the app is therefore kept without the
//! notes from the first. A photo that has them (of an earlier version, or put there by hand) is replaced before it leaves: the copy without them is
//! kept beside it under its own hash, and an edit of the photo's record names that one. Everybody who does so makes the same copy, so
//! no two disagree. The original stays here; nothing names it any more.

use super::photos::Stripped;
use super::{PhotoHash, Photos, Store, StoreError, photo_hash, photo_name, stripped};
use crate::record::{Photo, RecordId};
use sha2::{Digest as _, Sha256};
use std::collections::BTreeMap;

/// Photos that may leave, and those that may not.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Leaving {
    /// Those that go, as they are named now.
    pub photos: Vec<PhotoHash>,
    /// How many of them have a copy without notes in the place of the original since now.
    pub stripped: usize,
    /// Those that stay: no pictures that can be looked through, or no room for a copy.
    pub stay: Vec<PhotoHash>,
}

impl Store {
    /// Sees to it that photos say nothing of place, time and camera when they leave. Those of a record that is not shown stay.
    ///
    /// # Errors
    /// Whatever the disk reports of the store.
    pub fn photos_to_leave(
        &mut self,
        photos: &Photos,
        chosen: Vec<PhotoHash>,
        now_ms: u64,
    ) -> Result<Leaving, StoreError> {
        let (mut leaving, mut copies) = (Leaving::default(), BTreeMap::new());
        for photo in chosen {
            // One that is damaged is told, and stays, when it is to be handed over.
            let looked = |bytes: Vec<u8>| match Sha256::digest(&bytes) {
                hash if *hash == photo => stripped(&bytes),
                _ => Stripped::Same,
            };
            match std::fs::read(photos.path(&photo)).map(looked) {
                Ok(Stripped::Same) => leaving.photos.push(photo),
                Ok(Stripped::Without(bytes)) => match photos.keep_bytes(&bytes) {
                    Ok(kept) => drop(copies.insert(photo, (kept, false))),
                    Err(_) => leaving.stay.push(photo),
                },
                Ok(Stripped::NoPicture) | Err(_) => leaving.stay.push(photo),
            }
        }
        let mut renamed: Vec<(RecordId, Photo)> = Vec::new();
        if !copies.is_empty() {
            for field in self.fields()? {
                for pit in self.load_notes(field.id)?.pits {
                    for mut photo in pit.photos {
                        let copy = photo_hash(&photo.sha256).and_then(|hash| copies.get_mut(&hash));
                        let Some((kept, named)) = copy else { continue };
                        (photo.sha256, photo.size_bytes) = (photo_name(&kept.sha256), kept.size_bytes);
                        *named = true;
                        renamed.push((pit.id, photo));
                    }
                }
            }
        }
        self.save_together(now_ms, |saving| {
            renamed.iter().try_for_each(|(pit, photo)| saving.photo(*pit, photo))
        })?;
        for (photo, (kept, named)) in copies {
            if named {
                leaving.photos.push(kept.sha256);
                leaving.stripped += 1;
            } else {
                leaving.stay.push(photo);
            }
        }
        Ok(leaving)
    }
}
