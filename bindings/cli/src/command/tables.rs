//! `pitface tables`: fields with their pits and calls, in files that other programs read.

use crate::argument::{Shown, code_of};
use crate::asked::ManyFields;
use crate::field::FieldRead;
use crate::json::{self, merged};
use crate::keep::Kept;
use crate::maps::ForTerminal;
use crate::maps::photos::PitPhotos;
use crate::maps::shapefile::shapefile;
use crate::maps::task_data::task_data;
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use crate::{Answer, keep};
use chrono::Utc;
use clap::{Args, ValueEnum};
use pitface_core::advice::Caution;
use pitface_core::error::Fault;
use pitface_core::record::RecordId;
use pitface_core::store::{Packed, write_geopackage};
use pitface_core::tables::{
    FieldTold, Positions, Table, csv, geojson, in_units, labelled, placed, styles, tables,
};
use pitface_core::words::Words;
use serde_json::json;
use std::path::PathBuf;

/// Which fields, and where to.
#[derive(Args)]
#[command(
    after_help = "Lengths are whole millimetres, with `--units in` inches, feet, acres and mph; a column's name ends with its unit. Places are \
    degrees (WGS 84, longitude first) with seven decimals, in the GeoPackage all digits noted. Beside each code stands its word in the chosen \
    language, in a column ending with _label. An empty cell (null) is what nobody looked at, `none` is none. Rows find each other by \
    field_number and pit, pass or after_dig. In CSV a text that a spreadsheet would take for a formula, and one that begins with an \
    apostrophe, has an apostrophe put before it: take one off to have it back. The GeoPackage holds styles by which QGIS draws it. \
    Measures of machines and keys of other programs stay in notes files. Names and remarks are written as they stand, also without positions."
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
    /// How exactly places are told: as noted, single places to about a kilometre without outlines and lines, or not at all.
    #[arg(long, value_name = "HOW", default_value = "exact", value_parser = code_of!(Positions))]
    positions: Positions,
    /// What else to write.
    #[arg(long, value_name = "WHAT,…", value_enum, value_delimiter = ',')]
    also: Vec<Also>,
}

/// Files written only on request.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Also {
    /// Photos of the pits, into the GeoPackage; from the folder `photos` beside the notes file or store.
    Photos,
    /// Zones with their depth as zipped shapefiles for a terminal: zones.zip with all of them, loosen.zip with those to loosen.
    Shapefile,
    /// Zones with their depth as ISO 11783-10 task data for a terminal, TASKDATA.zip: advice, no leave to work.
    TaskData,
}

impl Tables {
    /// Writes them.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        if let Some(store) = &self.store {
            Kept::open(store)?.look()?;
        }
        let Self { asked, out, store, positions, also } = self;
        let for_terminal = [Also::Shapefile, Also::TaskData].iter().any(|its| also.contains(its));
        if for_terminal && positions != Positions::Exact {
            let todo = "leave out --positions, or do not ask for shapefile and task-data";
            return Err(Trouble::of_arguments(Fault::new(
                "--positions",
                "a terminal needs places as noted",
                todo,
            )));
        }
        let each = asked.each(store.as_deref())?;
        let fields: Vec<FieldRead> = each.fields.collect::<Result<_, _>>()?;
        let tables = told(&fields, positions, &words);
        let drawn = styles(|list, code| words.of_code(list, code), &words.not_dug(), words.unit().into());
        let mut photos = PitPhotos::of(if also.contains(&Also::Photos) { fields.as_slice() } else { &[] });
        let (mut folder, now) = (Folder::open(&out)?, Utc::now());
        folder.add("fields.geojson", geojson(&tables).as_bytes())?;
        folder.add_written("fields.gpkg", |path| {
            write_geopackage(
                path,
                Packed { tables: &tables, styles: &drawn, photos: &mut photos },
                Utc::now(),
            )
        })?;
        for table in &tables {
            folder.add(&format!("{}.csv", table.name), &csv(table))?;
        }
        let terminal = ForTerminal::of(if for_terminal { &fields } else { &[] });
        let packed = |error: rawzip::Error| {
            Trouble::one(
                &out,
                Fault::new("", format!("the zipped files cannot be made ({error})"), "try again"),
            )
        };
        if also.contains(&Also::Shapefile) && !terminal.is_empty() {
            for (stem, all) in [("zones", true), ("loosen", false)] {
                let zipped = shapefile(&terminal, all, stem, &words, now).map_err(packed)?;
                folder.add(&format!("{stem}.zip"), &zipped)?;
            }
        }
        let mut tasks = 0;
        if also.contains(&Also::TaskData)
            && let Some((zipped, count)) = task_data(&terminal, &words, now).map_err(packed)?
        {
            tasks = count;
            folder.add("TASKDATA.zip", &zipped)?;
        }
        let written = told_written(&folder.finish()?);

        let pits = || fields.iter().flat_map(|field| &field.notes.pits);
        let (count, without) = (pits().count(), pits().filter(|pit| pit.at.is_none()).count());
        let mut lines = vec![words.tables_written(fields.len(), count)];
        lines.extend((without > 0).then(|| words.tables_without_place(without)));
        lines.extend(words.tables_positions(positions));
        if also.contains(&Also::Photos) {
            lines.push(words.tables_photos(photos.written));
            lines.extend((photos.left_out > 0).then(|| words.tables_photos_left(photos.left_out)));
        }
        if for_terminal {
            lines.extend(words.terminal_written(if also.contains(&Also::Shapefile) {
                terminal.len()
            } else {
                tasks
            }));
            lines.extend(
                terminal
                    .iter()
                    .filter(|its| its.runs_unmarked())
                    .map(|its| words.terminal_unmarked(&its.field.notes.field.name)),
            );
            let all: Vec<_> = terminal.iter().map(|its| its.field.advice.cautions().0).collect();
            let applying =
                Caution::ALL.iter().filter(|caution| all.iter().flatten().any(|its| its == *caution));
            lines.extend(applying.map(|&caution| words.of(caution)));
        }
        let written_of = |field: &FieldRead| {
            let pits = &field.notes.pits;
            let without = pits.iter().filter(|pit| pit.at.is_none()).count();
            merged(json::head(field), json!({ "pits": pits.len(), "pits_without_place": without }))
        };
        let more = json!({
            "positions": positions.code(),
            "photos": photos.written,
            "photos_left_out": photos.left_out,
        });
        let json = merged(json::fields(fields.iter().map(written_of).collect()), more);
        Ok(Answer {
            remarks: fields.iter().map(keep::remarks).collect(),
            ..Answer::new(format!("{}\n{}", lines.join("\n"), written.text), merged(json, written.json))
        })
    }
}

/// The rows, fitted to whoever asked for them.
fn told(fields: &[FieldRead], positions: Positions, words: &Words) -> Vec<Table> {
    let lasts: Vec<_> = fields.iter().map(|field| |id: RecordId| field.lasting(id).is_some()).collect();
    let each = fields.iter().zip(&lasts).map(|(field, lasts)| FieldTold { answer: &field.answer, lasts });
    let each: Vec<FieldTold> = each.collect();
    let mut tables = tables(&each);
    labelled(&mut tables, |list, code| words.of_code(list, code));
    placed(&mut tables, positions);
    in_units(&mut tables, words.unit().into());
    tables
}
