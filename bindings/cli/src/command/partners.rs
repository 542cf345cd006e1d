//! `pitface partners`: the devices a store knows of, and how far each is in step.

use crate::argument::Shown;
use crate::carried::taking::{how_to_believe, missing_json, vouching_json};
use crate::carried::{device_json, find_device, holder_of, of_store, open_to_read, photo_counts, photos_of};
use crate::json::merged;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::{Answer, device};
use chrono::{Local, NaiveDate, NaiveTime};
use clap::Args;
use pitface_core::merge::Signer as _;
use pitface_core::store::{Partner, Store};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::path::PathBuf;

/// Of which store, and what is decided of them.
#[derive(Args)]
pub struct Partners {
    /// The store.
    store: PathBuf,
    /// Refuse the device with this fingerprint: nothing more of it is taken in, what was taken in stays.
    #[arg(long, value_name = "FINGERPRINT")]
    refuse: Option<String>,
    /// Refuse only what that device sealed after this day by its own clock; whoever has a lost device can set its clock back.
    #[arg(long, value_name = "YYYY-MM-DD", requires = "refuse")]
    after: Option<NaiveDate>,
    /// Believe what the first device answers for of the second, whose key is lost. Only if you know that it was so.
    #[arg(long, num_args = 2, value_names = ["FINGERPRINT", "LOST"])]
    believe: Vec<String>,
    /// Throw away what waits: bundles of devices that are not accepted, and files of newer versions.
    #[arg(long)]
    empty_waiting: bool,
}

impl Partners {
    /// Lists them.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let own = device::lasting()?.device();
        let decides = self.refuse.is_some() || !self.believe.is_empty() || self.empty_waiting;
        let mut store = if decides {
            Store::open_existing(&self.store, own).map_err(&failed)?
        } else {
            open_to_read(&self.store, own)?
        };
        let mut lines = self.decide(&mut store, &words)?;
        let mut partners = store.partners().map_err(&failed)?;
        // This device first.
        partners.sort_by_key(|partner| (partner.device != own, !partner.own, partner.device));
        let missing = store.missing().map_err(&failed)?;
        let waiting = store.not_carried().map_err(&failed)?;
        let newer = store.not_shown_anywhere().map_err(&failed)?.len();
        let [here, named] = photo_counts(&store, &photos_of(&self.store)).map_err(&failed)?;
        let vouchings = store.vouchings().map_err(&failed)?;
        let waiting_here = store.waiting().map_err(&failed)?;
        for partner in &partners {
            let Partner { device, holder, .. } = partner;
            // Alone, so that nothing of theirs stands beside it.
            lines.push(device.to_string());
            lines.push(format!("  {}", words.partner(partner, *device == own, partner.edits == 0)));
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
        for vouching in &vouchings {
            lines.push(words.vouching(vouching, &partners));
            lines.extend(how_to_believe(vouching, &self.store));
        }
        lines.extend(words.waits(&waiting_here));
        if named > 0 {
            lines.push(words.photos_here(here, named));
        }
        lines.extend((newer > 0).then(|| words.not_shown(newer)));
        lines.push(words.not_carried(waiting));
        let json = json!({
            "partners": partners.iter().map(|partner| partner_json(partner, partner.device == own)).collect::<Vec<_>>(),
            "missing": missing.iter().map(missing_json).collect::<Vec<_>>(),
            "vouchings": vouchings.iter().map(vouching_json).collect::<Vec<_>>(),
            "waiting": { "bundles": waiting_here.bundles, "files": waiting_here.files, "bytes": waiting_here.bytes },
            "photos_here": here,
            "photos_named": named,
            "edits_not_carried": waiting,
            "records_of_a_newer_version": newer,
        });
        Ok(Answer::new(lines.join("\n") + "\n", json))
    }

    /// Does what was decided, and tells it.
    fn decide(&self, store: &mut Store, words: &Words) -> Result<Vec<String>, Trouble> {
        let failed = of_store(&self.store);
        let partners = store.partners().map_err(&failed)?;
        let known = || partners.iter().map(|partner| partner.device);
        let mut told = Vec::new();
        if let Some(text) = &self.refuse {
            let device = find_device("--refuse", text, known())?;
            let bundles = store.refuse(device, self.after.map(end_of_day_ms)).map_err(&failed)?;
            told.push(words.refused_now(device, holder_of(&partners, device), bundles));
        }
        if let [signer, lost] = &self.believe[..] {
            let vouchings = store.vouchings().map_err(&failed)?;
            let signer = find_device("--believe", signer, known())?;
            let device = find_device("--believe", lost, vouchings.iter().map(|vouching| vouching.device))?;
            let taken = store.believe(signer, device, now_ms()).map_err(&failed)?;
            told.push(words.believed_now(signer, holder_of(&partners, signer), device));
            told.push(words.came_in(taken.edits));
        }
        if self.empty_waiting {
            told.push(words.emptied(&store.empty_waiting().map_err(&failed)?));
        }
        Ok(told)
    }
}

/// The last millisecond of a day here.
fn end_of_day_ms(day: NaiveDate) -> u64 {
    let next = day.succ_opt().unwrap_or(day).and_time(NaiveTime::MIN);
    let begins = next
        .and_local_timezone(Local)
        .earliest()
        .map_or(next.and_utc().timestamp_millis(), |at| at.timestamp_millis());
    u64::try_from(begins - 1).unwrap_or(1)
}

fn partner_json(partner: &Partner, is_this: bool) -> Value {
    merged(
        device_json(partner.device, &partner.holder),
        json!({
            "this": is_this,
            "own": partner.own,
            "accepted": partner.accepted,
            "refused_ms": partner.refused_ms,
            "edits": partner.edits,
            "copied": partner.copied,
            "clock_wrong": partner.clock_wrong,
        }),
    )
}
