//! `pitface settle`: values that two people wrote without knowing of each other, and what one deleted while another went on.

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
use pitface_core::store::{Conflict, Regretted, Store, StoreError, Version};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::path::PathBuf;

/// What is to stand. Numbers are those of the list as it was before.
#[derive(Args)]
pub struct Settle {
    /// The store.
    store: PathBuf,
    /// Of value N let this version stand.
    #[arg(long, num_args = 2, value_names = ["N", "VERSION"])]
    keep: Vec<usize>,
    /// Leave record N deleted, with all that came to it. (`pitface bring-back STORE N` brings it back; the numbers are the same.)
    #[arg(long, value_name = "N")]
    stay_deleted: Vec<usize>,
}

impl Settle {
    /// Settles what was told to be, and lists the rest.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let mut store = Store::open_existing(&self.store, device::lasting()?.device()).map_err(&failed)?;
        let conflicts = store.conflicts().map_err(&failed)?;
        let regretted = numbered(&store).map_err(&failed)?;
        let mut trouble = Trouble::default();
        let mut kept = Vec::new();
        for pair in self.keep.chunks_exact(2) {
            match at(&conflicts, pair[0]).and_then(|of| Some((of, at(&of.versions, pair[1])?))) {
                Some(version) => kept.push(version),
                None => trouble.add(unknown("--keep", &format!("{} {}", pair[0], pair[1]))),
            }
        }
        let mut records = Vec::new();
        for number in &self.stay_deleted {
            match regretted.iter().find(|(other, _)| other == number) {
                Some((_, record)) => records.push(record),
                None => trouble.add(unknown("--stay-deleted", &number.to_string())),
            }
        }
        let (kept, records) = trouble.or((kept, records))?;
        let mut lines = Vec::new();
        for (conflict, version) in kept {
            lines.push(settle(&mut store, &words, conflict, version).map_err(&failed)?);
        }
        for record in records {
            lines.push(leave(&mut store, &words, record).map_err(&failed)?);
        }
        let settled = json!(lines.len());
        let left = (store.conflicts().map_err(&failed)?, numbered(&store).map_err(&failed)?);
        lines.extend(told(&store, &words, &left.0, &left.1).map_err(&failed)?);
        let json = merged(json!({ "settled": settled }), json(&store, &left.0, &left.1).map_err(&failed)?);
        Ok(Answer::new(lines.join("\n") + "\n", json))
    }
}

/// The item of a number as it is told, from 1.
fn at<T>(items: &[T], number: usize) -> Option<&T> {
    items.get(number.checked_sub(1)?)
}

fn unknown(argument: &str, number: &str) -> Trouble {
    let fault =
        Fault::new(argument, format!("there is no {number}"), "see `pitface settle STORE` for what there is");
    Trouble::of_arguments(fault)
}

fn settle(
    store: &mut Store,
    words: &Words,
    conflict: &Conflict,
    version: &Version,
) -> Result<String, StoreError> {
    store.settle(conflict.record, conflict.cell, &version.value, now_ms())?;
    let place = words.belongs(&store.belongs(conflict.record)?);
    Ok(words.settled_on(&place, conflict.cell, &version.value))
}

/// Returns what was deleted while somebody went on with it, by the numbers of all that is deleted.
fn numbered(store: &Store) -> Result<Vec<(usize, Regretted)>, StoreError> {
    let deleted = store.deleted()?;
    let number = |one: Regretted| {
        let at = deleted.iter().position(|deleted| deleted.record == one.record)?;
        Some((at + 1, one))
    };
    Ok(store.regretted()?.into_iter().filter_map(number).collect())
}

fn leave(store: &mut Store, words: &Words, regretted: &Regretted) -> Result<String, StoreError> {
    let record = regretted.record;
    store.save_together(now_ms(), |saving| saving.stay_deleted(record))?;
    Ok(words.regret_settled(&words.belongs(&store.belongs(record)?), false))
}

fn told(
    store: &Store,
    words: &Words,
    conflicts: &[Conflict],
    regretted: &[(usize, Regretted)],
) -> Result<Vec<String>, StoreError> {
    let mut lines = vec![words.versions(conflicts.len())];
    for (number, conflict) in (1..).zip(conflicts) {
        let place = words.belongs(&store.belongs(conflict.record)?);
        lines.push(words.versions_title(number, &place, conflict.cell));
        for (number, version) in (1..).zip(&conflict.versions) {
            let told = words.version(number, conflict.cell, &version.value, &wrote(version), number == 1);
            lines.push(format!("  {told}"));
        }
    }
    lines.push(words.regretted(regretted.len()));
    for (number, one) in regretted {
        let place = words.belongs(&store.belongs(one.record)?);
        let others: Vec<_> = one.edited.iter().map(|(cell, version)| (*cell, wrote(version))).collect();
        lines.push(words.regretted_line(*number, &place, &wrote(&one.deleted), &others));
    }
    Ok(lines)
}

fn json(
    store: &Store,
    conflicts: &[Conflict],
    regretted: &[(usize, Regretted)],
) -> Result<Value, StoreError> {
    let version = |version: &Version| {
        let value = json!({ "value": version.to_json(), "written_ms": version.written_ms });
        merged(device_json(version.device, &version.holder), value)
    };
    let conflicts = conflicts.iter().map(|conflict| {
        let versions = conflict.versions.iter().map(version);
        let of = json!({ "cell": conflict.cell.to_string(), "versions": versions.collect::<Vec<_>>() });
        Ok(merged(belongs_json(&store.belongs(conflict.record)?), of))
    });
    let regretted = regretted.iter().map(|(number, one)| {
        let edited =
            one.edited.iter().map(|(cell, edit)| merged(version(edit), json!({ "cell": cell.to_string() })));
        let of = json!({ "number": number, "deleted": version(&one.deleted), "edited": edited.collect::<Vec<_>>() });
        Ok(merged(belongs_json(&store.belongs(one.record)?), of))
    });
    Ok(json!({
        "versions": conflicts.collect::<Result<Vec<_>, StoreError>>()?,
        "deleted_but_edited": regretted.collect::<Result<Vec<_>, StoreError>>()?,
    }))
}
