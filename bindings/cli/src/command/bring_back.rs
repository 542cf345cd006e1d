//! `pitface bring-back`: what is deleted in a store, and back with it.

use crate::argument::Shown;
use crate::carried::belongs::belongs_json;
use crate::carried::{device_json, of_store, wrote};
use crate::json::merged;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::store::{Deleted, Store, StoreError};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::path::PathBuf;

/// What comes back.
#[derive(Args)]
pub struct BringBack {
    /// The store.
    store: PathBuf,
    /// Numbers of the list, as it was before; without any, only lists.
    #[arg(value_name = "N")]
    numbers: Vec<usize>,
}

impl BringBack {
    /// Brings back what was told to be, in one save, and lists the rest.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let mut store = Store::open_existing(&self.store, device::lasting()?.device()).map_err(&failed)?;
        let deleted = store.deleted().map_err(&failed)?;
        let (mut chosen, mut trouble) = (Vec::new(), Trouble::default());
        for number in &self.numbers {
            match number.checked_sub(1).and_then(|at| deleted.get(at)) {
                Some(one) if !chosen.contains(&one.record) => chosen.push(one.record),
                Some(_) => {}
                None => {
                    let todo = "see `pitface bring-back STORE` for what is deleted";
                    let fault = Fault::new("N", format!("there is no {number}"), todo);
                    trouble.add(Trouble::of_arguments(fault));
                }
            }
        }
        trouble.or(())?;
        let back = store.save_together(now_ms(), |saving| {
            chosen.iter().try_for_each(|record| saving.bring_back(*record))
        });
        back.map_err(&failed)?;
        let mut lines = Vec::new();
        for record in &chosen {
            let belongs = store.belongs(*record).map_err(&failed)?;
            lines.push(words.regret_settled(&words.belongs(&belongs), true));
        }
        let left = store.deleted().map_err(&failed)?;
        lines.extend(told(&store, &words, &left).map_err(&failed)?);
        let json = json!({
            "brought_back": chosen.iter().map(ToString::to_string).collect::<Vec<_>>(),
            "deleted": left.iter().map(|one| one_json(&store, one)).collect::<Result<Vec<_>, _>>().map_err(&failed)?,
        });
        Ok(Answer::new(lines.join("\n") + "\n", json))
    }
}

fn told(store: &Store, words: &Words, deleted: &[Deleted]) -> Result<Vec<String>, StoreError> {
    let mut lines = vec![words.deleted(deleted.len())];
    for (number, one) in (1..).zip(deleted) {
        let place = words.belongs(&store.belongs(one.record)?);
        lines.push(words.deleted_line(number, &place, &wrote(&one.by)));
    }
    Ok(lines)
}

fn one_json(store: &Store, one: &Deleted) -> Result<Value, StoreError> {
    let by = device_json(one.by.device, &one.by.holder);
    let deleted = json!({ "by": by, "deleted_ms": one.by.written_ms });
    Ok(merged(belongs_json(&store.belongs(one.record)?), deleted))
}
