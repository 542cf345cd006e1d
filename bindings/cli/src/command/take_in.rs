//! `pitface take-in`: what others noted comes into a store.

use crate::argument::Shown;
use crate::carried::files::Bundles;
use crate::carried::team_word::TeamWordArgument;
use crate::carried::{find_device, of_store, photos_of, taking};
use crate::trouble::Trouble;
use crate::{Answer, device};
use clap::Args;
use pitface_core::merge::{Header, Signer as _};
use pitface_core::store::Store;
use std::path::PathBuf;

/// Which files, into which store.
#[derive(Args)]
pub struct TakeIn {
    /// The store; made if it is not there.
    store: PathBuf,
    /// Bundles that others handed over. All are checked before any is used: one damaged bit, and nothing is taken in.
    #[arg(value_name = "FILE.pitb", required_unless_present = "accept")]
    files: Vec<PathBuf>,
    /// Accept the device with this fingerprint, once it is the same as the one its holder reads out; what it signs is taken
    /// in from then on.
    #[arg(long, value_name = "FINGERPRINT")]
    accept: Vec<String>,
    #[command(flatten)]
    team_word: TeamWordArgument,
}

impl TakeIn {
    /// Takes them in.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let word = self.team_word.word()?;
        let (mut trouble, mut files) = (Trouble::default(), Vec::new());
        for file in &self.files {
            match Bundles::read(file, word.as_ref()) {
                Ok(file) => files.push(file),
                Err(faults) => trouble.add(faults),
            }
        }
        let files = trouble.or(files)?;
        let key = device::lasting()?;
        let there = self.store.exists();
        let known = if there || files.is_empty() {
            let store = Store::open_existing(&self.store, key.device()).map_err(of_store(&self.store))?;
            store.partners().map_err(of_store(&self.store))?
        } else {
            Vec::new()
        };
        let signers = || {
            let headers = files.iter().flat_map(|file| &file.headers);
            headers.map(Header::signer).chain(known.iter().map(|partner| partner.device))
        };
        let accepted = self.accept.iter().map(|text| find_device("--accept", text, signers()));
        let accepted = accepted.collect::<Result<Vec<_>, _>>()?;
        let mut store = Store::create_or_open(&self.store, key.device()).map_err(of_store(&self.store))?;
        let came = taking::take_in(
            &mut store,
            &self.store,
            &photos_of(&self.store),
            (&files, word.as_ref()),
            &accepted,
        )?;
        Ok(Answer::new(came.told(&words, &self.store).join("\n") + "\n", came.json()))
    }
}
