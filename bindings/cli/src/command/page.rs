//! `pitface page`: the sheet of a field as HTML or PDF, or the driver's card; of several fields an overview with their sheets.

use crate::Answer;
use crate::argument::{Shown, code_of};
use crate::asked::ManyFields;
use crate::drawn_photo::photo_file;
use crate::field::FieldRead;
use crate::json::{self, merged};
use crate::pdf::{Paper, pdf};
use crate::trouble::Trouble;
use crate::write::{Folder, told_written};
use crate::{drawn, keep};
use clap::Args;
use pitface_core::error::Fault;
use pitface_core::report::{Page as Sheet, card, overview_with_sheets};
use pitface_core::words::Words;
use std::path::{Path, PathBuf};

/// Which fields, and where to.
#[derive(Args)]
#[command(
    after_help = "A page needs nothing else: no script, nothing fetched. On A4 and letter a field with up to six pits is one side, its pits are the other. A photo with a scale goes in where its file lies under its hash in the folder `photos` beside the notes file or store, without the place and time its camera noted."
)]
pub struct Page {
    #[command(flatten)]
    asked: ManyFields,
    /// Ask about fields of this store; nothing is written into it.
    #[arg(long, value_name = "STORE", conflicts_with = "files")]
    store: Option<PathBuf>,
    /// The page, as HTML, or as PDF where the name ends in `.pdf`; only an earlier page of this program is overwritten.
    #[arg(long, value_name = "FILE.html|FILE.pdf")]
    out: PathBuf,
    /// The paper of a PDF; HTML leaves it to whoever prints [default: a4]
    #[arg(long, value_parser = code_of!(Paper))]
    paper: Option<Paper>,
    /// The driver's card in place of the sheet; takes one field.
    #[arg(long)]
    card: bool,
}

impl Page {
    /// Writes it.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let each = self.asked.each(self.store.as_deref())?;
        let fields: Vec<FieldRead> = each.fields.collect::<Result<_, _>>()?;
        let as_pdf = self.out.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("pdf"));
        if self.paper.is_some() && !as_pdf {
            let todo = "leave it out, or name the page with .pdf";
            let fault = Fault::new("--paper", "HTML has no paper of its own", todo);
            return Err(Trouble::one(Path::new("arguments"), fault));
        }
        let page = match fields.as_slice() {
            [field] if self.card => card_of(&words, field)?,
            [field] => drawn::sheet_of(&words, field),
            _ if self.card => {
                let todo = "name one notes file, or one field of the store with --field";
                return Err(Trouble::one(
                    Path::new("arguments"),
                    Fault::new("--card", "a card is of one field", todo),
                ));
            }
            several => {
                let answers: Vec<_> = several.iter().map(|field| &field.answer).collect();
                let photo = |index: usize, hash: &str| photo_file(&several[index], hash);
                overview_with_sheets(&words, &title(&self.out), &answers, &photo)
            }
        };
        let parent = self.out.parent().filter(|parent| !parent.as_os_str().is_empty());
        let mut folder = Folder::open(parent.unwrap_or(Path::new(".")))?;
        let bytes = if as_pdf {
            let paper = self.paper.unwrap_or(Paper::A4);
            pdf(&page, paper).map_err(|why| Trouble::of_said(&self.out, &why))?
        } else {
            page.html().into_bytes()
        };
        folder.add(&self.out.file_name().unwrap_or_default().to_string_lossy(), &bytes)?;
        folder.finish()?;
        let written = told_written(&[self.out]);
        let json = merged(json::fields(fields.iter().map(json::head).collect()), written.json);
        let remarks = fields.iter().map(keep::remarks).collect();
        Ok(Answer { remarks, ..Answer::new(written.text, json) })
    }
}

fn card_of(words: &Words, field: &FieldRead) -> Result<Sheet, Trouble> {
    card(words, field).ok_or_else(|| {
        let fault =
            Fault::new("", "nothing is to be loosened in this field", "leave --card out for its sheet");
        Trouble::one(&field.origin.called, fault)
    })
}

/// The title of an overview: the name of its file, without the ending.
fn title(out: &Path) -> String {
    out.file_stem().unwrap_or_default().to_string_lossy().into_owned()
}
