//! `pitface history`: what happened in a store, by whom and when.

use crate::argument::Shown;
use crate::carried::{device_json, local, of_store};
use crate::json::merged;
use crate::trouble::Trouble;
use crate::{Answer, device, said_save};
use clap::Args;
use pitface_core::merge::Signer as _;
use pitface_core::store::{Kind, SaveTold, Store, StoreError};
use pitface_core::words::Wrote;
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use std::path::PathBuf;

/// Of which store, and how far back.
#[derive(Args)]
pub struct History {
    /// The store.
    store: PathBuf,
    /// How many saves, from the last one back.
    #[arg(long, value_name = "N", default_value_t = 20)]
    last: usize,
}

impl History {
    /// Lists the saves.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let store = Store::open_existing(&self.store, device::lasting()?.device()).map_err(&failed)?;
        let saves = store.saves(self.last).map_err(&failed)?;
        let (mut lines, mut objects) = (Vec::new(), Vec::new());
        for (number, save) in (1..).zip(&saves) {
            let fields = fields(&store, save).map_err(&failed)?;
            let wrote = Wrote { device: save.device, holder: &save.holder, when: local(save.saved_ms) };
            lines.push(words.save_told(number, &wrote, &fields, save));
            objects.push(save_json(save, &fields));
        }
        if saves.is_empty() {
            lines.push(words.nothing_saved());
        }
        Ok(Answer::new(lines.join("\n") + "\n", json!({ "saves": objects })))
    }
}

/// The names of the fields of a save, each once.
fn fields(store: &Store, save: &SaveTold) -> Result<Vec<String>, StoreError> {
    let mut names: Vec<String> = Vec::new();
    for record in &save.records {
        let name = store.field_name(*record)?.unwrap_or_default();
        if !name.is_empty() && !names.contains(&name) {
            names.push(name);
        }
    }
    Ok(names)
}

fn save_json(save: &SaveTold, fields: &[String]) -> Value {
    let counts = |counts: &BTreeMap<Kind, usize>| -> Map<String, Value> {
        counts.iter().map(|(kind, count)| (kind.name().to_owned(), json!(count))).collect()
    };
    merged(
        device_json(save.device, &save.holder),
        json!({
            "saved_ms": save.saved_ms,
            "fields": fields,
            "made": counts(&save.made),
            "changed": counts(&save.changed),
            "deleted": counts(&save.deleted),
            "brought_back": counts(&save.brought_back),
            "joined": save.joined,
            "undid": save.undid,
            "save": save.named.as_ref().map(said_save::save_json),
        }),
    )
}
