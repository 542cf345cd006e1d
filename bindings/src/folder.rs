//! The files of one folder: the notes, and beside them what is this device's alone.
//!
//! | name | what |
//! |---|---|
//! | `notes.pitface` | the store |
//! | `own.json` | settings of whoever holds the phone |
//! | `place.json` | where one is in the app, the way one came, and what was passed over in each pit |
//! | `photos/` | photos, each under the SHA-256 of its content |
//! | `waiting/` | files of bundles from devices that are not accepted yet, for the photos in them |
//!
//! The small files are written whole or not at all. One that is missing or broken reads as its default: none of them is
//! worth an app that does not start.

use crate::PitfaceError;
use pitface_core::record::RecordId;
use pitface_core::screen::own::Light;
use pitface_core::screen::pit::Skipped;
use pitface_core::screen::{Own, Place, Trail};
use pitface_core::store::{
    DeviceId, NewFile, Photos, Readers, Store, make_own_folder, remove_left_over, write_whole,
};
use pitface_core::units::LengthUnit;
use pitface_core::words::Language;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fs;
use std::io::{self, Read, Seek, SeekFrom, Write as _};
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// Where one is in the app. An earlier version kept the place alone.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Whereabouts {
    /// The place; `None` before there was one.
    pub place: Option<Place>,
    /// The way one came there.
    #[serde(default)]
    pub trail: Trail,
    /// What was passed over in each pit: no finding, so it stands in no record.
    #[serde(default)]
    pub passed_over: BTreeMap<RecordId, Skipped>,
}

/// Pits whose passed-over looks are remembered; of more, those begun first are forgotten. Our judgement.
const MOST_PITS: usize = 200;

impl Whereabouts {
    /// Remembers what is passed over in a pit.
    pub fn pass_over(&mut self, pit: RecordId, skipped: Skipped) {
        self.passed_over.insert(pit, skipped);
        // Ids grow with time.
        while self.passed_over.len() > MOST_PITS {
            self.passed_over.pop_first();
        }
    }
}

/// The folder of a session.
pub(crate) struct Folder(PathBuf);

impl Folder {
    /// A folder that must be there.
    pub fn open(path: &str) -> Result<Self, PitfaceError> {
        if Path::new(path).is_dir() {
            Ok(Self(path.into()))
        } else {
            Err(PitfaceError::NotFound { what: path.to_owned() })
        }
    }

    /// The notes, written by this device and created on the first call; held until dropped.
    pub fn store(&self, device: DeviceId) -> Result<Store, PitfaceError> {
        Ok(Store::create_or_open(&self.0.join("notes.pitface"), device)?)
    }

    /// Where photos lie.
    pub fn photos(&self) -> Photos {
        Photos::new(self.0.join("photos"))
    }

    /// Keeps what a file that was taken in holds until the devices that it is from are accepted; an error if too much waits already.
    pub fn keep_waiting(&self, file: &mut (impl Read + Seek)) -> io::Result<()> {
        /// Most bytes that wait: some forty photos. Our judgement.
        const MOST_BYTES: u64 = 256 << 20;
        let waits =
            self.waiting().into_iter().filter_map(|file| fs::metadata(file).ok()).map(|file| file.len());
        if waits.sum::<u64>().saturating_add(file.seek(SeekFrom::End(0))?) > MOST_BYTES {
            return Err(io::ErrorKind::QuotaExceeded.into());
        }
        let folder = self.waiting_folder();
        make_own_folder(&folder)?;
        file.rewind()?;
        let mut new = NewFile::begin(&folder, Readers::Owner)?;
        io::copy(file, &mut new)?;
        new.put_at(&folder.join(Uuid::new_v4().to_string()))
    }

    /// Removes what a killed app left. Nobody else writes here once the notes are open.
    pub fn tidy(&self) {
        remove_left_over(&self.0, true);
        remove_left_over(&self.waiting_folder(), true);
        self.photos().tidy(true);
    }

    fn waiting_folder(&self) -> PathBuf {
        self.0.join("waiting")
    }

    /// The files that wait.
    pub fn waiting(&self) -> Vec<PathBuf> {
        let files = fs::read_dir(self.waiting_folder()).into_iter().flatten().flatten();
        files.map(|file| file.path()).collect()
    }

    /// The settings; whatever of them is missing or broken is as on the first start.
    pub fn own(&self) -> Own {
        let kept = self.json("own.json").unwrap_or_default();
        let code = |key: &str| kept[key].as_str();
        Own {
            name: code("name").unwrap_or_default().to_owned(),
            left_handed: kept["left_handed"].as_bool().unwrap_or(false),
            volume_keys: kept["volume_keys"].as_bool().unwrap_or(false),
            language: code("language").and_then(Language::from_code),
            unit: UNITS
                .into_iter()
                .find(|(_, unit)| code("unit") == Some(unit))
                .map_or_else(LengthUnit::default, |(unit, _)| unit),
            light: code("light").and_then(Light::from_code).unwrap_or(Light::Phone),
        }
    }

    /// Keeps the settings.
    pub fn keep_own(&self, own: &Own) -> io::Result<()> {
        let unit = UNITS.into_iter().find(|(unit, _)| *unit == own.unit).map(|(_, code)| code);
        let kept = json!({
            "name": own.name,
            "left_handed": own.left_handed,
            "volume_keys": own.volume_keys,
            "language": own.language,
            "unit": unit,
            "light": own.light.code(),
        });
        write_whole(&self.0.join("own.json"), format!("{kept:#}\n").as_bytes())
    }

    /// Where one was last, as far as that is known.
    pub fn whereabouts(&self) -> Whereabouts {
        // As an act is read: one reader in the library, not two.
        let text = fs::read_to_string(self.0.join("place.json")).unwrap_or_default();
        let alone =
            || serde_json::from_str(&text).map(|place| Whereabouts { place, ..Whereabouts::default() });
        serde_json::from_str(&text).or_else(|_| alone()).unwrap_or_default()
    }

    /// Keeps where one is. It outlives the app, which is what it is for; after a power cut one may start at the list, and
    /// no tap that only goes elsewhere waits for the disk.
    pub fn keep_whereabouts(&self, at: &Whereabouts) -> io::Result<()> {
        let mut new = NewFile::begin(&self.0, Readers::Owner)?;
        new.write_all(serde_json::to_string(at)?.as_bytes())?;
        new.put_unsynced(&self.0.join("place.json"))
    }

    fn json(&self, name: &str) -> Option<Value> {
        serde_json::from_str(&fs::read_to_string(self.0.join(name)).ok()?).ok()
    }
}

/// Units by the codes in the file.
const UNITS: [(LengthUnit, &str); 2] = [(LengthUnit::Centimetres, "cm"), (LengthUnit::Inches, "in")];
