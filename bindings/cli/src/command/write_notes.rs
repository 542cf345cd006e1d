//! `pitface write`: notes files from a store, with ids, so that a file that was changed is known for what it was.

use crate::Answer;
use crate::json::{self, merged};
use crate::keep::Kept;
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::harmless;
use pitface_core::record::notes;
use pitface_core::store::FieldSummary;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// Which fields, and where to.
#[derive(Args)]
pub struct Write {
    /// The store.
    store: PathBuf,
    /// Which fields, by name or id; all of them if left out.
    #[arg(long, value_name = "NAME|ID")]
    field: Vec<String>,
    /// Folder for a notes file a field; made if it is not there. A notes file that says something else is never replaced. Without a
    /// folder the notes of one field go to standard output.
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
}

impl Write {
    /// Writes them.
    pub fn run(self) -> Result<Answer, Trouble> {
        let mut kept = Kept::open(&self.store)?;
        kept.look()?;
        if let Some(out) = &self.out {
            let fields = kept.several(&self.field)?;
            return write_into(out, &mut kept, &fields);
        }
        let field = match self.field.as_slice() {
            [] => kept.one(None)?,
            [name] => kept.one(Some(name))?,
            _ => {
                let wrong = "the notes of several fields make several files";
                return Err(Trouble::of_arguments(Fault::new("field", wrong, "name a folder with --out")));
            }
        };
        let text = notes::write(&kept.notes(&field)?);
        let notes: Value = serde_json::from_str(&text).unwrap_or_default();
        let told = merged(head(&field), json!({ "notes": notes }));
        Ok(Answer::new(harmless::json(&text).into_owned(), json::fields(vec![told])))
    }
}

fn write_into(out: &Path, kept: &mut Kept, fields: &[FieldSummary]) -> Result<Answer, Trouble> {
    let (mut folder, mut told, mut places) = (Folder::open(out)?, Vec::new(), Vec::new());
    for field in fields {
        let text = notes::write(&kept.notes(field)?);
        let place = folder.add(&format!("{}.notes.json", kept.file_name(field)), text.as_bytes())?;
        told.push(merged(head(field), json!({ "written": place.display().to_string() })));
        places.push((place, field));
    }
    let written = told_written(&folder.finish()?);
    for (place, field) in places {
        kept.wrote(&place, field)?;
    }
    Ok(Answer::new(written.text, merged(json::fields(told), written.json)))
}

fn head(field: &FieldSummary) -> Value {
    json!({ "field": field.name, "field_id": field.id })
}
