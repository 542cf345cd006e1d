//! What a shell holds: one session over one folder.

use crate::held::{Answer, Held};
use crate::listen::{Listening, held};
use crate::{BundleReady, ChangeListener, PitfaceError, ShownScreen, Subscription};
use pitface_core::picture::Point;
use pitface_core::place::Fix;
use pitface_core::screen::Input;
use std::sync::{Arc, Mutex};

/// The app without its shell, over one folder of this device. Every call gives the whole screen to be shown next.
///
/// One call at a time works, others wait; any thread, but not the main one: a tap that saves waits for the disk. Whatever
/// a call reports as saved is on the disk.
#[derive(uniffi::Object)]
pub struct Session {
    held: Mutex<Held>,
    listening: Listening,
}

impl Session {
    /// Does something with what is held, and tells whoever listens once it is let go.
    fn answer(
        &self,
        does: impl FnOnce(&mut Held) -> Result<Answer, PitfaceError>,
    ) -> Result<ShownScreen, PitfaceError> {
        let Answer { screen, changed } = does(&mut held(&self.held))?;
        if changed {
            self.listening.tell();
        }
        Ok(screen)
    }
}

#[uniffi::export]
impl Session {
    /// Opens or creates the notes in a folder, which must be there and belong to this app alone; a restart comes back to
    /// the screen one was at. In `key_folder`, which must be there too, lies the key of this device: it must be left out of
    /// every backup, so that a phone restored from one writes as a device of its own. `language_tag` is the platform's (BCP 47, e.g. `de-AT`) and only decides in which language
    /// the first screen asks for one. `offset_minutes` is the local time's distance from UTC, east positive. Opens the
    /// file and loads the words: tens of milliseconds.
    ///
    /// # Errors
    /// `NotFound` without a folder, `Conflict` if another session has it open, `NewerVersion`, `Storage`, `DiskFull`.
    #[uniffi::constructor]
    pub fn open(
        folder: String,
        key_folder: String,
        language_tag: Option<String>,
        offset_minutes: i32,
    ) -> Result<Arc<Self>, PitfaceError> {
        let held = Held::open(&folder, &key_folder, language_tag.as_deref(), offset_minutes)?;
        Ok(Arc::new(Self { held: Mutex::new(held), listening: Listening::default() }))
    }

    /// The screen one is at. Milliseconds; nothing is saved.
    ///
    /// # Errors
    /// `Storage` if the notes cannot be read.
    pub fn screen(&self) -> Result<ShownScreen, PitfaceError> {
        held(&self.held).shown()
    }

    /// A tap: the `act` of what was tapped, as it came. All it saves is saved at once or not at all. What a person must
    /// read about it, also that it could not be saved, is in [`ShownScreen::told`].
    ///
    /// # Errors
    /// `Invalid` for a text that is no act; `Storage` if the notes cannot be read.
    pub fn tap(&self, act: String) -> Result<ShownScreen, PitfaceError> {
        self.answer(|held| held.tap(&act, Input::default()))
    }

    /// A finger on a picture: the act of [`ShownPicture::anywhere`](crate::ShownPicture::anywhere) or of a
    /// [`ShownTouch`](crate::ShownTouch), and where the finger was lifted, in points of its drawing.
    ///
    /// # Errors
    /// As [`Session::tap`].
    pub fn touch(&self, act: String, x: f64, y: f64) -> Result<ShownScreen, PitfaceError> {
        self.answer(|held| held.tap(&act, Input::at(Point::new(x, y))))
    }

    /// How much larger than usual the reader wants letters, 1 for the usual size: drawings heed it. The screen to be shown
    /// then.
    ///
    /// # Errors
    /// As [`Session::screen`].
    pub fn letters(&self, scale: f64) -> Result<ShownScreen, PitfaceError> {
        held(&self.held).set_letters(scale)
    }

    /// Where the file of a photo lies that a screen names by its hash; nothing where it is not on this device.
    ///
    /// # Errors
    /// `Invalid` for a text that is no hash.
    pub fn photo_path(&self, photo: String) -> Result<Option<String>, PitfaceError> {
        held(&self.held).photo_path(&photo)
    }

    /// A line of text entered in a [`ShownBlock::Typing`](crate::ShownBlock::Typing), with its act.
    ///
    /// # Errors
    /// As [`Session::tap`].
    pub fn r#type(&self, act: String, text: String) -> Result<ShownScreen, PitfaceError> {
        self.answer(|held| held.tap(&act, Input::typed(&text)))
    }

    /// The platform's own *back*: the place above; nothing where there is none, then leave the app.
    ///
    /// # Errors
    /// As [`Session::screen`].
    pub fn back(&self) -> Result<Option<ShownScreen>, PitfaceError> {
        held(&self.held).back()
    }

    /// A fix of the satellite receiver: degrees, the radius in metres said to hold the true place in 68 of 100 cases, and
    /// the satellites' time in milliseconds since 1970. The screen to be shown now, or nothing where no position is
    /// wanted. Fixes of the last 60 s are averaged.
    ///
    /// # Errors
    /// As [`Session::screen`].
    pub fn fix(
        &self,
        longitude_deg: f64,
        latitude_deg: f64,
        accuracy_m: f64,
        satellite_time_ms: i64,
    ) -> Result<Option<ShownScreen>, PitfaceError> {
        let at = [longitude_deg, latitude_deg];
        held(&self.held).fix(Fix { at, accuracy_m, time_ms: satellite_time_ms })
    }

    /// The platform will not give the position; held until the next fix.
    ///
    /// # Errors
    /// As [`Session::screen`].
    pub fn position_refused(&self) -> Result<ShownScreen, PitfaceError> {
        held(&self.held).position_refused()
    }

    /// A photo was taken: `field`, `pit` and `depth_mm` (millimetres) are those it was asked with, `path` is where it lies;
    /// `media_type` e.g. `image/jpeg`. It is copied into the folder without what the camera noted in it of place, time and itself, under its content's hash; the file at `path` is to be
    /// deleted afterwards. Reads and syncs the whole file.
    ///
    /// # Errors
    /// `Invalid` for ids that are none; else as [`Session::screen`]. A file that cannot be read or kept is told.
    pub fn photo_taken(
        &self,
        field: String,
        pit: String,
        depth_mm: Option<u32>,
        path: String,
        media_type: String,
    ) -> Result<ShownScreen, PitfaceError> {
        self.answer(|held| held.photo_taken(&field, &pit, depth_mm, &path, media_type))
    }

    /// Writes the notes file of a field into `folder`, replacing one of the same name, and gives its path. The name is the
    /// field's, with the end of its id where another field's file would be called the same.
    ///
    /// # Errors
    /// `Invalid` for an id that is none, `NotFound` for a field or folder that is not there, `DiskFull`, `Storage`.
    pub fn export_field(&self, field: String, folder: String) -> Result<String, PitfaceError> {
        held(&self.held).export_field(&field, &folder)
    }

    /// Writes the sheet of a field, or its driver's card, into `folder` as a page in the chosen language, as
    /// `ShownDoes::SharePage` says it, and gives its path. Photos go in without the place and time their camera noted.
    ///
    /// # Errors
    /// `Invalid` for an id that is none, `NotFound` for a field or folder that is not there and for the card of a field without
    /// ground to be loosened, `DiskFull`, `Storage`.
    pub fn export_page(&self, field: String, card: bool, folder: String) -> Result<String, PitfaceError> {
        held(&self.held).export_page(&field, card, &folder)
    }

    /// Writes everything noted here into `folder` for others to take in, as `ShownDoes::ShareBundle` says it; with photos
    /// it may be large and take its time. What is to be told, also that it could not be written, is on the screen.
    ///
    /// # Errors
    /// `Invalid` for an id that is none, `NotFound` for a folder that is not there, `Storage` if the notes cannot be read.
    pub fn export_bundle(
        &self,
        to: Option<String>,
        with_photos: bool,
        folder: String,
    ) -> Result<BundleReady, PitfaceError> {
        held(&self.held).export_bundle(to.as_deref(), with_photos, &folder)
    }

    /// Goes over every byte of notes and photos, for what the disk has silently damaged: once a start, after the first
    /// screen. What is wrong stands on the screen of the other devices; its screen to be shown if something was found. The
    /// notes are held meanwhile (a second for 50,000 taps), the photos are not.
    ///
    /// # Errors
    /// As [`Session::screen`].
    pub fn check(&self) -> Result<Option<ShownScreen>, PitfaceError> {
        let photos = held(&self.held).folder.photos();
        let damaged = photos.check()?.damaged;
        held(&self.held).checked(damaged)
    }

    /// Takes in a file that somebody handed over. Of a file with boundaries it shows what is in it; a tap takes one as the edge of the field
    /// one is in, or as a new field. Of a notes file it shows what it would add and change; a tap
    /// takes it in. Its name, as it came, is what it is known by the next time. Of bundles it goes to the other devices. Whatever is wrong with it is
    /// told, and then nothing of it is taken.
    ///
    /// # Errors
    /// As [`Session::screen`].
    pub fn import_file(&self, path: String) -> Result<ShownScreen, PitfaceError> {
        self.answer(|held| held.import_file(&path))
    }

    /// The local time's distance from UTC has changed: minutes, east positive.
    ///
    /// # Errors
    /// `Invalid` beyond a day.
    pub fn set_offset(&self, minutes: i32) -> Result<(), PitfaceError> {
        held(&self.held).set_offset(minutes)
    }

    /// Has `listener` told of every save, until the subscription is stopped or closed.
    ///
    /// # Errors
    /// None but a fault of this program.
    pub fn subscribe(&self, listener: Arc<dyn ChangeListener>) -> Result<Arc<Subscription>, PitfaceError> {
        Ok(self.listening.add(listener))
    }
}
