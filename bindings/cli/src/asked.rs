//! What a command is asked about: notes files, or fields of a store. Neither is written to.

use crate::field::FieldRead;
use crate::input;
use crate::keep::{Kept, of_file, passing, sound};
use crate::trouble::Trouble;
use clap::Args;
use std::path::{Path, PathBuf};

/// One field of a store.
#[derive(Args, Default)]
pub struct OfStore {
    /// Ask about a field of this store; nothing is written into it.
    #[arg(long, value_name = "STORE")]
    pub store: Option<PathBuf>,
    /// Which field of the store, by its name or id; the only one if left out.
    #[arg(long, value_name = "NAME|ID", requires = "store")]
    field: Option<String>,
}

impl OfStore {
    /// The field of the file, or that of the store; `None` without either.
    pub fn or_of(&self, file: Option<&Path>) -> Result<Option<FieldRead>, Trouble> {
        match (&self.store, file) {
            (Some(store), _) => {
                let kept = Kept::open(store)?;
                kept.read(&kept.one(self.field.as_deref())?).map(Some)
            }
            (None, Some(file)) => of_file(file).map(Some),
            (None, None) => Ok(None),
        }
    }
}

/// One field.
#[derive(Args)]
pub struct OneField {
    /// A notes file; `-` is standard input.
    #[arg(value_name = "FIELD.notes.json", required_unless_present = "store", conflicts_with_all = ["store", "field"])]
    file: Option<PathBuf>,
    #[command(flatten)]
    kept: OfStore,
}

impl OneField {
    /// Reads it.
    pub fn read(&self) -> Result<FieldRead, Trouble> {
        // The arguments see to it that one of both is there.
        let file = self.file.as_deref().unwrap_or(Path::new("-"));
        self.kept.or_of(Some(file)).and_then(|field| field.map_or_else(|| of_file(file), Ok))
    }
}

/// Several fields.
#[derive(Args)]
pub struct ManyFields {
    /// Notes files, a field each; `-` is standard input.
    #[arg(value_name = "FIELD.notes.json", required_unless_present = "store")]
    pub files: Vec<PathBuf>,
    /// Which fields of the store, by name or id; all of them if left out.
    #[arg(long, value_name = "NAME|ID", requires = "store", conflicts_with = "files")]
    field: Vec<String>,
}

/// Fields, read one by one when their turn comes.
pub struct Each {
    /// How many there are.
    pub count: usize,
    /// They.
    pub fields: Box<dyn Iterator<Item = Result<FieldRead, Trouble>>>,
}

impl ManyFields {
    /// Looks at everything that is asked about; the fields of a store where one is given, else those of the files.
    ///
    /// # Errors
    /// Every fault of every file, before a field is read.
    pub fn each(self, store: Option<&Path>) -> Result<Each, Trouble> {
        match store {
            Some(store) => {
                let kept = Kept::open(store)?;
                let chosen = kept.several(&self.field)?;
                let count = chosen.len();
                Ok(Each { count, fields: Box::new(chosen.into_iter().map(move |field| kept.read(&field))) })
            }
            None => each_file(self.files),
        }
    }
}

/// The files are gone over twice, so that no more than one is held in memory and none is told of before all are known to be sound. What
/// comes by standard input comes once.
fn each_file(files: Vec<PathBuf>) -> Result<Each, Trouble> {
    input::named_once(&files)?;
    let mut trouble = Trouble::default();
    let mut given = None;
    for file in &files {
        match sound(file) {
            Ok(sound) if input::is_standard_input(file) => given = Some(sound),
            Ok(_) => {}
            Err(faults) => trouble.add(faults),
        }
    }
    trouble.or(())?;
    let count = files.len();
    let read = move |file: PathBuf| {
        let sound = if input::is_standard_input(&file) { given.take() } else { None };
        sound.map_or_else(|| of_file(&file), passing)
    };
    Ok(Each { count, fields: Box::new(files.into_iter().map(read)) })
}
