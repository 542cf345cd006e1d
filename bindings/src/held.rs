//! What a session holds between calls, and what each call does with it.

use crate::PitfaceError;
use crate::folder::{Folder, Whereabouts};
use crate::given::{offset, spoken};
use crate::hand_over::OpenedFile;
use crate::key::{Kept, key};
use crate::made::{new_id, now_ms};
use crate::notes::{Notes, shows_photos};
use crate::others::Others;
use crate::photos;
use crate::position::Fixes;
use crate::save::why;
use crate::shown::{Around, ShownScreen};
use crate::team_word::TeamWord;
use crate::undoing::Undoing;
use chrono::{DateTime, FixedOffset};
use pitface_core::answer::Answers;
use pitface_core::error::Fault;
use pitface_core::merge::{KeyFromSeed, Signer as _};
use pitface_core::picture::photo::PhotoSize;
use pitface_core::place::Fix;
use pitface_core::screen::boundary::InFile;
use pitface_core::screen::{self, Act, Input, Own, Place, World};
use pitface_core::store::{Store, WentAway, photo_hash};
use pitface_core::words::{Language, Words};
use std::collections::BTreeSet;

/// Letters larger than this a drawing does not follow; the largest that the layout of faces is made for.
const MOST_LETTERS: f64 = 2.0;

/// The state of a session.
pub(crate) struct Held {
    pub folder: Folder,
    pub store: Store,
    pub key: KeyFromSeed,
    pub team_word: TeamWord,
    /// What happened when it was opened, to be told with the first screen.
    to_tell: String,
    /// What was told with the last screen.
    told: String,
    pub notes: Notes,
    /// What follows from the notes, kept until they are others.
    pub answers: Answers,
    pub others: Others,
    pub own: Own,
    /// The language until one is chosen.
    spoken: Language,
    pub words: Words,
    pub place: Place,
    /// The way one came, and what was passed over.
    at: Whereabouts,
    /// A notes file that was opened and not taken in yet.
    pub opened: Option<OpenedFile>,
    /// A file with the edges of fields, for as long as one is at what is in it.
    pub boundary: Option<InFile>,
    /// Where one is as the file has it.
    kept_at: Whereabouts,
    /// What was deleted here, while it is shown.
    went_away: Vec<WentAway>,
    pub fixes: Fixes,
    wants_position: bool,
    /// Hashes of the open field's photos that are not in the folder.
    photos_missing: BTreeSet<String>,
    /// Size of the photo that the place shows.
    photo_size: Option<PhotoSize>,
    /// How much larger than usual letters are wanted.
    letters: f64,
    offset: FixedOffset,
    undoing: Undoing,
}

/// A screen, and whether the notes have changed.
pub(crate) struct Answer {
    pub screen: ShownScreen,
    pub changed: bool,
}

impl Held {
    pub fn open(
        folder: &str,
        key_folder: &str,
        language_tag: Option<&str>,
        offset_minutes: i32,
    ) -> Result<Self, PitfaceError> {
        let offset = offset(offset_minutes)?;
        let folder = Folder::open(folder)?;
        let Kept { key, set_aside } = key(key_folder)?;
        let mut store = folder.store(key.device())?;
        folder.tidy();
        // What came from a newer version may be understood since an update. What cannot be taken in now, on a full disk say, waits on.
        let _ = store.take_in_held(now_ms());
        let own = folder.own();
        let spoken = spoken(language_tag);
        let kept_at = folder.whereabouts();
        // Whoever never chose a language reads in that of the phone, and comes back to where they were all the same.
        let first = if own.language.is_none() { Place::Welcome } else { Place::Fields };
        let place = kept_at.place.unwrap_or(first);
        let words = Words::new(own.language.unwrap_or(spoken), own.unit);
        Ok(Self {
            folder,
            store,
            others: Others::new(key.device()),
            team_word: TeamWord::load(key_folder),
            to_tell: set_aside
                .map_or_else(String::new, |file| words.key_set_aside(&file.display().to_string())),
            told: String::new(),
            key,
            notes: Notes::default(),
            answers: Answers::default(),
            own,
            spoken,
            words,
            place,
            at: kept_at.clone(),
            opened: None,
            boundary: None,
            kept_at,
            went_away: Vec::new(),
            fixes: Fixes::default(),
            wants_position: false,
            photos_missing: BTreeSet::new(),
            photo_size: None,
            letters: 1.0,
            offset,
            undoing: Undoing::default(),
        })
    }

    /// The screen of the place one is at.
    pub fn shown(&mut self) -> Result<ShownScreen, PitfaceError> {
        let told = std::mem::take(&mut self.to_tell);
        self.shown_with(told, false)
    }

    /// The screen of the place one is at, without a tap: what was told of the last one stands until the next.
    fn shown_still(&mut self) -> Result<ShownScreen, PitfaceError> {
        let told = if self.to_tell.is_empty() { &self.told } else { &self.to_tell }.clone();
        self.to_tell.clear();
        self.shown_with(told, false)
    }

    pub fn told(&mut self, told: String) -> Result<Answer, PitfaceError> {
        Ok(Answer { screen: self.shown_with(told, false)?, changed: false })
    }

    pub fn shown_with(&mut self, told: String, saved: bool) -> Result<ShownScreen, PitfaceError> {
        self.load_shown()?;
        let mut screen = screen::show(self.place, &self.world());
        if screen.place != self.place {
            // The place shown instead may show more than was loaded for the one that is gone.
            self.shown_place(screen.place);
            self.load_shown()?;
            screen = screen::show(self.place, &self.world());
        }
        self.shown_place(screen.place);
        if !matches!(self.place, Place::Boundary { .. }) {
            self.boundary = None;
        }
        self.wants_position = screen.wants_position;
        if !screen.wants_position {
            self.fixes.forget();
        }
        // Without this file one only starts elsewhere the next time.
        self.at.place = Some(self.place);
        if self.kept_at != self.at && self.folder.keep_whereabouts(&self.at).is_ok() {
            self.kept_at.clone_from(&self.at);
        }
        self.told.clone_from(&told);
        let around = Around { told, saved, own: &self.own, words: &self.words };
        Ok(ShownScreen::new(screen, around))
    }

    /// Loads all that the screen of the place is made of.
    fn load_shown(&mut self) -> Result<(), PitfaceError> {
        self.load()?;
        self.load_partners()?;
        self.photos_missing = if shows_photos(self.place) {
            photos::missing(self.notes.of(self.place), &self.folder.photos())
        } else {
            BTreeSet::new()
        };
        self.photo_size = photos::size_shown(self.notes.of(self.place), self.place, &self.folder.photos());
        self.undoing.load(&self.store, self.place.field())?;
        Ok(())
    }

    /// What is shown is another place where the record of this one is gone, or where nothing is left to be asked.
    fn shown_place(&mut self, shown: Place) {
        if shown != self.place {
            self.at.trail.fell_back(shown);
        }
        self.place = shown;
    }

    /// Goes to a place, and remembers from where.
    pub fn go(&mut self, place: Place) {
        self.at.trail.went(self.place, place);
        self.place = place;
    }

    /// Loads what the place shows; a place in a field that is gone becomes the list of fields.
    pub fn load(&mut self) -> Result<(), PitfaceError> {
        if !self.notes.load(&self.store, self.place)? {
            self.shown_place(Place::Fields);
            self.notes.load(&self.store, self.place)?;
        }
        self.went_away = if self.place == Place::WentAway { self.store.went_away()? } else { Vec::new() };
        Ok(())
    }

    pub fn world(&self) -> World<'_> {
        World {
            own: &self.own,
            words: &self.words,
            fields: self.notes.of(self.place),
            answers: &self.answers,
            fix: self.fixes.averaged(),
            position_refused: self.fixes.refused,
            photos_missing: &self.photos_missing,
            partners: self.partners(),
            incoming: self.opened.as_ref().map(|opened| &opened.shown),
            went_away: &self.went_away,
            boundary: self.boundary.as_ref(),
            now: self.now(),
            back: self.at.trail.back(self.place),
            passed_over: &self.at.passed_over,
            photo_size: self.photo_size,
            letters: self.letters,
            undo: self.undoing.undo(),
            redo: self.undoing.redo(),
        }
    }

    pub fn now(&self) -> DateTime<FixedOffset> {
        let now = i64::try_from(now_ms()).ok().and_then(DateTime::from_timestamp_millis);
        now.unwrap_or_default().with_timezone(&self.offset)
    }

    pub fn tap(&mut self, act: &str, input: Input) -> Result<Answer, PitfaceError> {
        let act: Act = serde_json::from_str(act).map_err(|error| PitfaceError::Invalid {
            what: format!("this is no act: {error}"),
            todo: "give the act of what was tapped as it came".to_owned(),
        })?;
        self.load()?;
        self.load_partners()?;
        let done = match screen::tap(self.place, &act, input, &self.world(), &mut new_id) {
            Ok(done) => done,
            Err(fault) => return self.told(to_read(fault)),
        };
        let kept = match self.save(&done.edits) {
            Ok(kept) => kept,
            Err(error) => return self.told(self.words.not_saved(why(&error))),
        };
        let mut saved = kept.saved;
        if let Some(own) = done.own
            && own != self.own
        {
            if let Err(error) = self.folder.keep_own(&own) {
                let told = self.words.not_saved(why(&error.into()));
                let screen = self.shown_with(told, saved)?;
                return Ok(Answer { screen, changed: kept.changed });
            }
            self.owned(own);
            saved = true;
        }
        self.go(done.place);
        if let Some((pit, skipped)) = done.passed_over {
            self.at.pass_over(pit, skipped);
        }
        if let Some((record, cell)) = done.take_out {
            return self.take_out(record, cell);
        }
        if let Some(word) = done.team_word {
            return self.set_team_word(&word);
        }
        if let Some(decided) = done.decided {
            return self.decide(decided);
        }
        if done.take_in {
            return self.take_in_opened();
        }
        let told = if done.told.is_empty() { kept.told } else { done.told };
        Ok(Answer { screen: self.shown_with(told, saved)?, changed: kept.changed })
    }

    fn owned(&mut self, own: Own) {
        let language = own.language.unwrap_or(self.spoken);
        if language != self.words.language() || own.unit != self.words.unit() {
            self.words = Words::new(language, own.unit);
        }
        self.own = own;
    }

    pub fn back(&mut self) -> Result<Option<ShownScreen>, PitfaceError> {
        let from = self.place;
        let Some(back) = self.at.trail.back(from) else { return Ok(None) };
        let back = if back.is_like(from) { from.above().unwrap_or(back) } else { back };
        self.go(back);
        self.shown().map(Some)
    }

    pub fn fix(&mut self, fix: Fix) -> Result<Option<ShownScreen>, PitfaceError> {
        self.fixes.add(fix, now_ms());
        if self.wants_position { self.shown_still().map(Some) } else { Ok(None) }
    }

    pub fn position_refused(&mut self) -> Result<ShownScreen, PitfaceError> {
        self.fixes.forget();
        self.fixes.refused = true;
        self.shown_still()
    }

    pub fn set_letters(&mut self, scale: f64) -> Result<ShownScreen, PitfaceError> {
        self.letters = if scale.is_finite() { scale.clamp(1.0, MOST_LETTERS) } else { 1.0 };
        self.shown_still()
    }

    pub fn photo_path(&self, photo: &str) -> Result<Option<String>, PitfaceError> {
        let hash = photo_hash(photo).ok_or_else(|| PitfaceError::Invalid {
            what: "this is no hash of a photo".to_owned(),
            todo: "give the hash as the screen has it".to_owned(),
        })?;
        let photos = self.folder.photos();
        Ok(photos.size(&hash).map(|_| photos.path(&hash).display().to_string()))
    }

    pub fn set_offset(&mut self, minutes: i32) -> Result<(), PitfaceError> {
        self.offset = offset(minutes)?;
        Ok(())
    }
}

/// A fault of a tap, as the screens word it: what is wrong, and what to do where that is said apart.
fn to_read(fault: Fault) -> String {
    if fault.todo.is_empty() { fault.wrong } else { format!("{} {}", fault.wrong, fault.todo) }
}
