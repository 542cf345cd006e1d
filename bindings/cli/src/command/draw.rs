//! `pitface draw`: the pits of a field as SVG files, and its sheet.

use crate::Answer;
use crate::argument::Shown;
use crate::asked::OneField;
use crate::json::{self, merged};
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use crate::{drawn, drawn_photo, keep};
use clap::{Args, ValueEnum};
use pitface_core::picture::Theme;
use std::path::PathBuf;

/// What to draw, and where to.
#[derive(Args)]
#[command(
    after_help = "A photo that has a scale (`marks` in the notes) is drawn over too, where its file lies under its hash in the folder `photos` beside the notes file or store."
)]
pub struct Draw {
    #[command(flatten)]
    asked: OneField,
    /// Folder for the drawings; made if it is not there. Only files named after the notes file (from a store, after the field) are
    /// overwritten.
    #[arg(long, value_name = "DIR")]
    out: PathBuf,
    /// Colours of the SVG files; the page has those of the screen it is read on.
    #[arg(long, value_enum, default_value_t)]
    theme: ThemeArgument,
}

/// Colours of a drawing that stands alone.
#[derive(Clone, Copy, Default, ValueEnum)]
pub(super) enum ThemeArgument {
    /// Dark on light.
    #[default]
    Light,
    /// Light on dark.
    Dark,
    /// Black on white.
    Print,
}

impl From<ThemeArgument> for Theme {
    fn from(theme: ThemeArgument) -> Self {
        match theme {
            ThemeArgument::Light => Self::Light,
            ThemeArgument::Dark => Self::Dark,
            ThemeArgument::Print => Self::Print,
        }
    }
}

impl Draw {
    /// Draws it.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let field = self.asked.read()?;
        let stem = &field.origin.stem;
        let mut folder = Folder::open(&self.out)?;
        drawn::pit_files(&words, &field, stem, self.theme.into(), &mut folder)?;
        drawn::field_files(&words, &field, stem, self.theme.into(), &mut folder)?;
        drawn::photo_files(&words, &field, stem, self.theme.into(), &mut folder)?;
        let page = drawn::sheet_of(&words, &field);
        folder.add(&format!("{stem}.html"), page.html().as_bytes())?;
        let written = told_written(&folder.finish()?);
        let json = merged(json::fields(vec![json::head(&field)]), written.json);
        Ok(Answer {
            remarks: keep::remarks(&field) + &drawn_photo::remarks(&words, &field),
            ..Answer::new(written.text, json)
        })
    }
}
