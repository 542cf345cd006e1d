//! `pitface partners`: the devices a store knows of, and how far each is in step.

use crate::argument::Shown;
use crate::carried::taking::missing_json;
use crate::carried::{device_json, holder_of, of_store, open_to_read, photo_counts, photos_of};
use crate::json::merged;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::merge::Signer as _;
use pitface_core::store::Partner;
use serde_json::{Value, json};
use std::path::PathBuf;

/// Of which store.
#[derive(Args)]
pub struct Partners {
    /// The store.
    store: PathBuf,
}

impl Partners {
    /// Lists them.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let own = device::lasting()?.device();
        let store = open_to_read(&self.store, own)?;
        let mut partners = store.partners().map_err(&failed)?;
        // This device first.
        partners.sort_by_key(|partner| (partner.device != own, !partner.own, partner.device));
        let missing = store.missing().map_err(&failed)?;
        let waiting = store.not_carried().map_err(&failed)?;
        let newer = store.not_shown_anywhere().map_err(&failed)?.len();
        let [here, named] = photo_counts(&store, &photos_of(&self.store)).map_err(&failed)?;
        let mut lines = Vec::new();
        for partner in &partners {
            let Partner { device, holder, .. } = partner;
            lines.push(words.partner(partner, *device == own, partner.edits == 0));
            let lacks = missing.iter().filter(|missing| missing.device == *device);
            lines.extend(lacks.map(|missing| words.edits_missing(missing, holder)));
            lines.extend(partner.copied.then(|| words.copied(*device, holder)));
            lines.extend(partner.clock_wrong.then(|| words.clock_wrong(*device, holder)));
        }
        let unknown =
            missing.iter().filter(|missing| partners.iter().all(|other| other.device != missing.device));
        lines.extend(
            unknown.map(|missing| words.edits_missing(missing, holder_of(&partners, missing.device))),
        );
        if named > 0 {
            lines.push(words.photos_here(here, named));
        }
        lines.extend((newer > 0).then(|| words.not_shown(newer)));
        lines.push(words.not_carried(waiting));
        let json = json!({
            "partners": partners.iter().map(|partner| partner_json(partner, partner.device == own)).collect::<Vec<_>>(),
            "missing": missing.iter().map(missing_json).collect::<Vec<_>>(),
            "photos_here": here,
            "photos_named": named,
            "edits_not_carried": waiting,
            "records_of_a_newer_version": newer,
        });
        Ok(Answer::new(lines.join("\n") + "\n", json))
    }
}

fn partner_json(partner: &Partner, is_this: bool) -> Value {
    merged(
        device_json(partner.device, &partner.holder),
        json!({
            "this": is_this,
            "own": partner.own,
            "accepted": partner.accepted,
            "edits": partner.edits,
            "copied": partner.copied,
            "clock_wrong": partner.clock_wrong,
        }),
    )
}
