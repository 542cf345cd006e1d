//! `pitface undo`: the last save made here, taken back; or an undo, taken back itself.

use crate::argument::Shown;
use crate::carried::of_store;
use crate::keep::now_ms;
use crate::said_save::save_json;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::merge::Signer as _;
use pitface_core::store::{Store, Undone};
use serde_json::{Value, json};
use std::path::PathBuf;

/// Of which store.
#[derive(Args)]
pub struct Undo {
    /// The store.
    store: PathBuf,
    /// Take the last undo back instead, as long as nothing was saved since.
    #[arg(long)]
    redo: bool,
}

impl Undo {
    /// Takes it back. What somebody else wrote over it since stays.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let mut store = Store::open_existing(&self.store, device::lasting()?.device()).map_err(&failed)?;
        let (save, undone) = if self.redo {
            (store.last_undone_in(None).map_err(&failed)?, store.redo_in(None, now_ms()).map_err(&failed)?)
        } else {
            (store.last_save_in(None).map_err(&failed)?, store.undo_in(None, now_ms()).map_err(&failed)?)
        };
        let save = save.filter(|_| undone.is_some());
        let told = if self.redo { words.redone(save.as_ref()) } else { words.undone(save.as_ref()) };
        let changes = undone.as_ref().map(changes);
        let named = save.as_ref().map(save_json);
        let [taken_back, stands_again] = if self.redo { [None, changes] } else { [changes, None] };
        let json = json!({ "taken_back": taken_back, "stands_again": stands_again, "save": named });
        Ok(Answer::new(told + "\n", json))
    }
}

fn changes(undone: &Undone) -> Value {
    json!({
        "saved_ms": undone.saved_ms,
        "changes": undone.changes.iter().map(|change| json!({
            "record": change.record.to_string(), "cell": change.cell.to_string(),
        })).collect::<Vec<_>>(),
    })
}
