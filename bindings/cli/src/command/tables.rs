//! `pitface tables`: fields with their pits and calls, in files that other programs read.

use crate::argument::Shown;
use crate::asked::ManyFields;
use crate::field::FieldRead;
use crate::json::{self, merged};
use crate::keep::Kept;
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use crate::{Answer, keep};
use chrono::Utc;
use clap::Args;
use pitface_core::record::RecordId;
use pitface_core::store::write_geopackage;
use pitface_core::tables::{FieldTold, csv, geojson, tables};
use serde_json::json;
use std::path::PathBuf;

/// Which fields, and where to.
#[derive(Args)]
#[command(
    after_help = "Lengths are whole millimetres, places degrees (WGS 84, longitude first) with seven decimals, in the GeoPackage \
    all digits noted. An empty cell (null) is what nobody looked at, `none` is none. Rows find each other by field_number and \
    pit, pass or after_dig. In CSV a text that a spreadsheet would take for a formula, and one that begins with an \
    apostrophe, has an apostrophe put before it: take one off to have it back. Photos, measures of machines and keys of \
    other programs stay in notes files."
)]
pub struct Tables {
    #[command(flatten)]
    asked: ManyFields,
    /// Folder for fields.geojson, fields.gpkg and a CSV file a table; made if it is not there. Only these files are
    /// overwritten.
    #[arg(long, value_name = "DIR")]
    out: PathBuf,
    /// Write fields of this store; nothing is written into it.
    #[arg(long, value_name = "STORE", conflicts_with = "files")]
    store: Option<PathBuf>,
}

impl Tables {
    /// Writes them.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        if let Some(store) = &self.store {
            Kept::open(store)?.look()?;
        }
        let each = self.asked.each(self.store.as_deref())?;
        let fields: Vec<FieldRead> = each.fields.collect::<Result<_, _>>()?;
        let lasts: Vec<_> = fields.iter().map(|field| |id: RecordId| field.lasting(id).is_some()).collect();
        let told: Vec<FieldTold> =
            fields.iter().zip(&lasts).map(|(field, lasts)| told(field, lasts)).collect();
        let tables = tables(&told);
        let mut folder = Folder::open(&self.out)?;
        folder.add("fields.geojson", geojson(&tables).as_bytes())?;
        folder.add_written("fields.gpkg", |path| write_geopackage(path, &tables, Utc::now()))?;
        for table in &tables {
            folder.add(&format!("{}.csv", table.name), &csv(table))?;
        }
        let written = told_written(&folder.finish()?);

        let pits = || fields.iter().flat_map(|field| &field.notes.pits);
        let (count, without) = (pits().count(), pits().filter(|pit| pit.at.is_none()).count());
        let mut lines = vec![words.tables_written(fields.len(), count)];
        lines.extend((without > 0).then(|| words.tables_without_place(without)));
        let written_of = |field: &FieldRead| {
            let pits = &field.notes.pits;
            let without = pits.iter().filter(|pit| pit.at.is_none()).count();
            merged(json::head(field), json!({ "pits": pits.len(), "pits_without_place": without }))
        };
        let json = merged(json::fields(fields.iter().map(written_of).collect()), written.json);
        Ok(Answer {
            remarks: fields.iter().map(keep::remarks).collect(),
            ..Answer::new(format!("{}\n{}", lines.join("\n"), written.text), json)
        })
    }
}

fn told<'a>(field: &'a FieldRead, lasts: &'a dyn Fn(RecordId) -> bool) -> FieldTold<'a> {
    FieldTold { answer: field, lasts }
}
