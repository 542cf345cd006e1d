//! `pitface demo`: an invented estate, every call among its fields, on its whole way through the program.

use crate::argument::Shown;
use crate::into_store::into_store;
use crate::keep::Sound;
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use crate::{Answer, drawn, json, keep, told};
use clap::Args;
use pitface_core::picture::Theme;
use pitface_core::report::{Listed, card, overview};
use std::path::{Path, PathBuf};

/// The notes of the estate, as a walker would have written them: file stem and text.
macro_rules! estate {
    ($($stem:literal),+) => {
        &[$(($stem, include_str!(concat!("../../demo/", $stem, ".notes.json")))),+]
    };
}
const ESTATE: &[(&str, &str)] = estate![
    "far_drove",
    "fox_heath",
    "heron_close",
    "kiln_ground",
    "lapwing_ground",
    "long_sedge",
    "mere_piece",
    "sluice_ground",
    "withy_bottom"
];
/// Its name; invented, like everything in it.
const ESTATE_NAME: &str = "Ellmoor estate";

/// Where to write it.
#[derive(Args)]
pub struct Demo {
    /// Folder for the notes files, the drawings, the sheets and cards, the overview and the store; made if it is not there. Only these
    /// files are overwritten.
    #[arg(long, value_name = "DIR", default_value = "out")]
    out: PathBuf,
    /// Keep the estate in this store instead.
    #[arg(long, value_name = "FILE")]
    store: Option<PathBuf>,
}

/// Name of the store among the files.
const STORE: &str = "estate.pitface";

impl Demo {
    /// Reads the estate and writes it.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let mut folder = Folder::open(&self.out)?;
        let mut sound = Vec::new();
        for (stem, text) in ESTATE {
            let name = format!("{stem}.notes.json");
            let source = keep::lasting_path(&self.out.join(&name));
            sound.push(Sound { source: Some(source), ..keep::read_text(Path::new(&name), text)? });
            folder.add(&name, text.as_bytes())?;
        }
        // Before anything is kept.
        folder.allowed()?;
        let store = self.store.unwrap_or_else(|| self.out.join(STORE));
        let read = into_store(sound, &store, None, &words)?;
        let fields: Vec<_> = read.into_iter().map(|read| read.field).collect();
        for ((stem, _), field) in ESTATE.iter().zip(&fields) {
            drawn::pit_files(&words, field, stem, Theme::Light, &mut folder)?;
            drawn::field_files(&words, field, stem, Theme::Light, &mut folder)?;
            folder.add(&format!("{stem}.html"), drawn::sheet_of(&words, field).html().as_bytes())?;
            if let Some(card) = card(&words, field) {
                folder.add(&format!("{stem}-card.html"), card.html().as_bytes())?;
            }
        }
        let sheets: Vec<String> = ESTATE.iter().map(|(stem, _)| format!("{stem}.html")).collect();
        let listed = fields.iter().zip(&sheets).map(|(field, sheet)| Listed { answer: field, sheet });
        let page = overview(&words, ESTATE_NAME, &listed.collect::<Vec<_>>());
        folder.add("index.html", page.html().as_bytes())?;
        let written = folder.finish()?;

        let entries: Vec<_> = fields.iter().flat_map(|field| told::calls(&words, field)).collect();
        let written = told_written(&[written, vec![store]].concat());
        let text = format!("{}\n{}", told::text(&words, &entries), written.text);
        let fields = json::fields(fields.iter().map(json::field).collect());
        Ok(Answer::new(text, json::merged(fields, written.json)))
    }
}
