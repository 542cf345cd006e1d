//! `pitface join`: two records that are one field.

use crate::argument::Shown;
use crate::carried::of_store;
use crate::keep::now_ms;
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::record::RecordId;
use pitface_core::store::{FieldSummary, Store};
use serde_json::json;
use std::path::{Path, PathBuf};

/// Which fields.
#[derive(Args)]
#[command(
    after_help = "What is noted under either field is shown under both from then on, here and wherever it is handed over to; nothing is \
    moved or lost. `pitface undo`, or --apart, takes it apart again. Two fields of one name are told apart by their ids, which `pitface fields` shows."
)]
pub struct Join {
    /// The store.
    store: PathBuf,
    /// A field, by its name or id.
    #[arg(value_name = "NAME|ID")]
    field: String,
    /// The field that it is too, by its name or id; of the two of one name, left out.
    #[arg(value_name = "NAME|ID", conflicts_with = "apart")]
    other: Option<String>,
    /// Take the field apart again.
    #[arg(long)]
    apart: bool,
}

impl Join {
    /// Joins them, or takes one apart.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let failed = of_store(&self.store);
        let mut store = Store::open_existing(&self.store, device::lasting()?.device()).map_err(&failed)?;
        let fields = store.fields().map_err(&failed)?;
        let one = called(&fields, &self.field);
        if self.apart {
            let field = only(&self.store, &fields, &one, &self.field)?;
            let records = store.one_field(field).map_err(&failed)?;
            store.part(field, now_ms()).map_err(&failed)?;
            let ids: Vec<String> = records.iter().map(ToString::to_string).collect();
            return Ok(Answer::new(words.taken_apart(records.len()) + "\n", json!({ "apart": ids })));
        }
        let (one, other) = match (&self.other, one.as_slice()) {
            (None, [one, other]) => (one.id, other.id),
            (None, _) => {
                let wrong = format!("{} fields are called {}", one.len(), self.field);
                return Err(Trouble::one(
                    &self.store,
                    Fault::new("field", wrong, "name the other field too"),
                ));
            }
            (Some(name), _) => {
                let other = called(&fields, name);
                let one = only(&self.store, &fields, &one, &self.field)?;
                (one, only(&self.store, &fields, &other, name)?)
            }
        };
        let before = store.one_field(one).map_err(&failed)?;
        let differ = store.differences(one, other).map_err(&failed)?;
        store.join(one, other, now_ms()).map_err(&failed)?;
        let notes = store.load_notes(one).map_err(&failed)?;
        let name = &notes.field.name;
        let mut lines = if before.contains(&other) {
            vec![words.joined_already(name)]
        } else {
            vec![words.joined(name, notes.pits.len())]
        };
        lines.extend(differ.iter().map(|(cell, [shown, hidden])| words.joined_hidden(*cell, shown, hidden)));
        let records = store.one_field(one).map_err(&failed)?;
        let json = json!({
            "field": name,
            "id": notes.field.id.to_string(),
            "records": records.iter().map(ToString::to_string).collect::<Vec<_>>(),
            "pits": notes.pits.len(),
            "differ": differ.iter().map(|(cell, _)| cell.to_string()).collect::<Vec<_>>(),
        });
        Ok(Answer::new(lines.join("\n") + "\n", json))
    }
}

/// The fields of an id or name.
fn called<'a>(fields: &'a [FieldSummary], text: &str) -> Vec<&'a FieldSummary> {
    let text = text.trim();
    if let Some(field) = fields.iter().find(|field| field.id.to_string() == text.to_lowercase()) {
        return vec![field];
    }
    let name = text.to_lowercase();
    fields.iter().filter(|field| field.name.trim().to_lowercase() == name).collect()
}

/// The one field that is meant.
fn only(
    store: &Path,
    fields: &[FieldSummary],
    found: &[&FieldSummary],
    text: &str,
) -> Result<RecordId, Trouble> {
    let listed = |fields: &[&FieldSummary]| {
        let listed: Vec<String> =
            fields.iter().map(|field| format!("{} ({})", field.name, field.id)).collect();
        listed.join(", ")
    };
    let (wrong, todo) = match found {
        [field] => return Ok(field.id),
        [] => (
            format!("there is no field {text}"),
            format!("name one of: {}", listed(&fields.iter().collect::<Vec<_>>())),
        ),
        several => (
            format!("{} fields are called {text}", several.len()),
            format!("give an id: {}", listed(several)),
        ),
    };
    Err(Trouble::one(store, Fault::new("field", wrong, todo)))
}
