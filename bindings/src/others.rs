//! What is known of the other devices, as far as the screen shown needs it.

use crate::PitfaceError;
use crate::held::Held;
use crate::shown::ShownScreen;
use chrono::DateTime;
use pitface_core::screen::Place;
use pitface_core::screen::partners::{Checkup, Partners};
use pitface_core::store::{DeviceId, PhotoHash, Store, StoreError};
use std::collections::BTreeSet;

/// What was last found, and whether that still holds.
pub(crate) struct Others {
    partners: Partners,
    stale: bool,
    /// Edits here, and those that nobody else has, when it was last looked up what that is.
    alone_at: Option<(u64, u64)>,
}

impl Others {
    pub fn new(own: DeviceId) -> Self {
        Self { partners: Partners::none(own), stale: true, alone_at: None }
    }

    fn load(&mut self, store: &Store) -> Result<(), StoreError> {
        let own = self.partners.own;
        let mut all = store.partners()?;
        all.retain(|partner| partner.device != own);
        // Alone one has nothing to settle with anybody; looking for it goes over all that is noted.
        let alone = all.is_empty();
        let versions = if alone { Vec::new() } else { store.conflicts()? };
        let regretted = if alone { Vec::new() } else { store.regretted()? };
        self.partners = Partners {
            missing: store.missing()?,
            vouchings: store.vouchings()?,
            waiting: store.waiting()?,
            versions: versions
                .into_iter()
                .map(|of| Ok((store.belongs(of.record)?, of)))
                .collect::<Result<_, StoreError>>()?,
            regretted: regretted
                .into_iter()
                .map(|of| Ok((store.belongs(of.record)?, of)))
                .collect::<Result<_, StoreError>>()?,
            checkup: std::mem::take(&mut self.partners.checkup),
            alone: self.partners.alone,
            alone_since: self.partners.alone_since,
            all,
            ..Partners::none(own)
        };
        self.stale = false;
        Ok(())
    }
}

impl Held {
    pub fn partners(&self) -> &Partners {
        &self.others.partners
    }

    /// What is known of the others has to be looked up again.
    pub fn partners_stale(&mut self) {
        self.others.stale = true;
    }

    /// Something was saved: what there was to settle may be settled by it.
    pub fn saved_something(&mut self) {
        let Partners { versions, regretted, .. } = self.partners();
        if !versions.is_empty() || !regretted.is_empty() {
            self.partners_stale();
        }
    }

    /// Looks up what the place shows.
    pub fn load_partners(&mut self) -> Result<(), PitfaceError> {
        if self.others.stale {
            self.others.load(&self.store)?;
            self.others.partners.team_word = self.team_word.word().is_some();
        }
        if matches!(self.place, Place::Fields | Place::Partners) {
            self.load_alone()?;
        }
        if let Place::Personal { .. } = self.place {
            let personal = self.store.personal()?.into_iter();
            let personal = personal.map(|of| Ok((self.store.belongs(of.record)?, of)));
            self.others.partners.personal = personal.collect::<Result<_, StoreError>>()?;
        }
        if self.place == Place::Partners {
            // All that is noted is gone through for it.
            let alone = self.partners().all.is_empty();
            self.others.partners.not_shown = if alone { 0 } else { self.store.not_shown_anywhere()?.len() };
            let named: Vec<PhotoHash> = self.store.photos()?.into_iter().collect();
            let missing = self.folder.photos().missing(&named).len();
            self.others.partners.photos = [named.len() - missing, named.len()];
        }
        Ok(())
    }

    /// Looks up what nobody else has, once something was saved or others said what they have.
    fn load_alone(&mut self) -> Result<(), PitfaceError> {
        let now = Some((self.store.edits_of_all()?, self.store.not_carried()?));
        if self.others.alone_at != now {
            let alone = self.store.nobody_else()?;
            let since = alone.since_ms.and_then(|since_ms| i64::try_from(since_ms).ok());
            let since = since.and_then(DateTime::from_timestamp_millis);
            self.others.partners.alone_since =
                since.map(|since| since.with_timezone(&self.now().timezone()).date_naive());
            self.others.partners.alone = alone;
            self.others.alone_at = now;
        }
        Ok(())
    }

    /// Checks the store, and keeps what that of the photos found. Current values that are not those of the edits are made
    /// anew. The screen, if anything was wrong.
    pub fn checked(&mut self, photos: BTreeSet<PhotoHash>) -> Result<Option<ShownScreen>, PitfaceError> {
        let mut checkup = Checkup { photos, ..Checkup::default() };
        if let Err(error) = self.store.check() {
            let StoreError::Corrupt(_) = error else { return Err(error.into()) };
            match self.store.damaged_edits() {
                Ok(damaged) if !damaged.is_empty() => checkup.damaged = damaged,
                // Only what was reckoned from the edits is wrong, if that helps.
                Ok(_) if self.store.rebuild().is_ok() && self.store.check().is_ok() => {
                    checkup.made_anew = true;
                    self.notes.changed(None);
                    self.partners_stale();
                }
                _ => checkup.unreadable = true,
            }
        }
        let sound = checkup == Checkup::default();
        self.others.partners.checkup = checkup;
        if sound { Ok(None) } else { self.shown().map(Some) }
    }

    /// Photos that are as they were taken again.
    pub fn mended(&mut self, photos: &BTreeSet<PhotoHash>) {
        self.others.partners.checkup.photos.retain(|photo| !photos.contains(photo));
    }
}
