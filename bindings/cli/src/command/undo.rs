//! `pitface undo`: the last save made here, taken back.

use crate::argument::Shown;
use crate::carried::of_store;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::merge::Signer as _;
use pitface_core::store::{Kind, Store, StoreError};
use serde_json::json;
use std::path::PathBuf;

/// Of which store.
#[derive(Args)]
pub struct Undo {
    /// The store.
    store: PathBuf,
}

impl Undo {
    /// Takes it back. What somebody else wrote over it since stays.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let mut store = Store::open_existing(&self.store, device::lasting()?.device()).map_err(&failed)?;
        let undone = store.undo(now_ms()).map_err(&failed)?;
        let changes = undone.as_ref().map(|undone| undone.changes.as_slice()).unwrap_or_default();
        let kinds = changes.iter().filter_map(|change| store.kind_of(change.record).transpose());
        let kinds: Vec<Kind> = kinds.collect::<Result<_, StoreError>>().map_err(&failed)?;
        let json = json!({
            "taken_back": undone.as_ref().map(|undone| json!({
                "saved_ms": undone.saved_ms,
                "changes": undone.changes.iter().map(|change| json!({
                    "record": change.record.to_string(), "cell": change.cell.to_string(),
                })).collect::<Vec<_>>(),
            })),
        });
        Ok(Answer::new(words.taken_back(&kinds) + "\n", json))
    }
}
