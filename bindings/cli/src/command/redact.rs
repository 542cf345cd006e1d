//! `pitface redact`: names, positions and remarks, taken out of every copy.

use crate::argument::Shown;
use crate::carried::belongs::belongs_json;
use crate::carried::of_store;
use crate::json::merged;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::store::{Personal, Sealer, Store, StoreError};
use pitface_core::words::{PartnerText, Words};
use serde_json::{Value, json};
use std::path::PathBuf;

/// What goes into a bundle as the program that wrote it.
const PROGRAM: &str = concat!("pitface ", env!("CARGO_PKG_VERSION"));

/// What is to go. Numbers are those of the list as it was before.
#[derive(Args)]
#[command(
    after_help = "Without --take-out it lists what there is and changes nothing. What is taken out is gone from the store for good, earlier values too, and from \
    every other store once it takes in what is handed over after that. It does not reach notes files, tables and drawings made from the store, photos, \
    old bundles that nobody removes, or a store that takes in nothing more. That something was written, by whom and when, stays, and so does its hash, from which a \
    short name can be guessed. What others wrote they take out themselves."
)]
pub struct Redact {
    /// The store.
    store: PathBuf,
    /// Take number N of the list out of every copy; this cannot be undone.
    #[arg(long, value_name = "N", num_args = 1..)]
    take_out: Vec<usize>,
}

impl Redact {
    /// Lists, or takes out.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let key = device::lasting()?;
        let mut store = Store::open_existing(&self.store, key.device()).map_err(&failed)?;
        let all = store.personal().map_err(&failed)?;
        let (mut chosen, mut trouble) = (Vec::new(), Trouble::default());
        for number in &self.take_out {
            match number.checked_sub(1).and_then(|at| all.get(at)) {
                Some(of) if of.here > 0 => chosen.push(of),
                found => {
                    let wrong = match found {
                        None => format!("there is no {number}"),
                        Some(_) => format!("{number} was written by others, who alone can take it out"),
                    };
                    let todo = "see `pitface redact STORE` for what there is";
                    trouble.add(Trouble::of_arguments(Fault::new("--take-out", wrong, todo)));
                }
            }
        }
        let chosen = trouble.or(chosen)?;
        let holder = store.holder(key.device()).map_err(&failed)?.unwrap_or_default();
        let sealer =
            Sealer { signer: &key, holder: &holder, written_by: PROGRAM, now_ms: now_ms(), ahead_ms: None };
        let (mut lines, mut values) = (Vec::new(), 0);
        for of in chosen {
            let name = name(&store, &words, of).map_err(&failed)?;
            let taken = store.take_out(of.record, of.cell, &sealer).map_err(&failed)?;
            lines.push(words.taken_out(&name, taken));
            values += taken;
        }
        let left = store.personal().map_err(&failed)?;
        if left.is_empty() {
            lines.push(words.label(PartnerText::NothingPersonal));
        }
        for (number, of) in (1..).zip(&left) {
            let name = name(&store, &words, of).map_err(&failed)?;
            lines.push(format!("{number}. {name}\n  {}", words.personal(of)));
        }
        if self.take_out.is_empty() && !left.is_empty() {
            let means = [PartnerText::TakeOutMeans, PartnerText::TakeOutCannot];
            lines.extend(means.map(|text| words.label(text)));
        }
        let left: Result<Vec<Value>, StoreError> = left.iter().map(|of| told(&store, of)).collect();
        let json = json!({ "values_taken_out": values, "personal": left.map_err(failed)? });
        Ok(Answer::new(lines.join("\n") + "\n", json))
    }
}

fn name(store: &Store, words: &Words, of: &Personal) -> Result<String, StoreError> {
    Ok(words.versions_of(&words.belongs(&store.belongs(of.record)?), of.cell))
}

fn told(store: &Store, of: &Personal) -> Result<Value, StoreError> {
    let values = json!({ "cell": of.cell.name(), "values_here": of.here, "values_of_others": of.others });
    Ok(merged(belongs_json(&store.belongs(of.record)?), values))
}
