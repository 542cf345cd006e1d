//! What a session holds between calls, and what each call does with it.

use crate::PitfaceError;
use crate::folder::{Folder, write_whole};
use crate::notes::Notes;
use crate::photos::{self, PhotoFault};
use crate::position::Fixes;
use crate::shown::{Around, ShownScreen};
use chrono::{DateTime, FixedOffset};
use pitface_core::error::Fault;
use pitface_core::place::Fix;
use pitface_core::record::{Photo, RecordId, Unknown, notes};
use pitface_core::screen::{self, Act, Edit, Own, Place, World};
use pitface_core::store::{Saving, Store, StoreError};
use pitface_core::words::{Language, NotSaved, Words};
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;
use std::time::{SystemTime, UNIX_EPOCH};
use uuid::Uuid;

/// A larger file was chosen by mistake, a film say, and is not to fill the memory. Our judgement.
const LONGEST_NOTES_BYTES: u64 = 16 << 20;

/// The state of a session.
pub(crate) struct Held {
    folder: Folder,
    store: Store,
    notes: Notes,
    own: Own,
    /// The language until one is chosen.
    spoken: Language,
    words: Words,
    place: Place,
    /// The place as the file has it.
    kept_place: Option<Place>,
    fixes: Fixes,
    wants_position: bool,
    offset: FixedOffset,
}

/// A screen, and whether the notes have changed.
pub(crate) struct Answer {
    pub screen: ShownScreen,
    pub changed: bool,
}

impl Held {
    pub fn open(folder: &str, language_tag: Option<&str>, offset_minutes: i32) -> Result<Self, PitfaceError> {
        let offset = offset(offset_minutes)?;
        let folder = Folder::open(folder)?;
        let store = folder.store()?;
        let own = folder.own();
        let spoken = spoken(language_tag);
        let kept_place = folder.place();
        let place = match own.language {
            None => Place::Welcome,
            Some(_) => kept_place.unwrap_or(Place::Fields),
        };
        let words = Words::new(own.language.unwrap_or(spoken), own.unit);
        Ok(Self {
            folder,
            store,
            notes: Notes::default(),
            own,
            spoken,
            words,
            place,
            kept_place,
            fixes: Fixes::default(),
            wants_position: false,
            offset,
        })
    }

    /// The screen of the place one is at.
    pub fn shown(&mut self) -> Result<ShownScreen, PitfaceError> {
        self.shown_with(String::new(), false)
    }

    fn told(&mut self, told: String) -> Result<Answer, PitfaceError> {
        Ok(Answer { screen: self.shown_with(told, false)?, changed: false })
    }

    fn shown_with(&mut self, told: String, saved: bool) -> Result<ShownScreen, PitfaceError> {
        self.load()?;
        let can_undo = self.store.can_undo()?;
        let screen = screen::show(self.place, &self.world(can_undo));
        self.place = screen.place;
        self.wants_position = screen.wants_position;
        if !screen.wants_position {
            self.fixes.forget();
        }
        // Without this file one only starts elsewhere the next time.
        if self.kept_place != Some(self.place) && self.folder.keep_place(self.place).is_ok() {
            self.kept_place = Some(self.place);
        }
        let around = Around { told, saved, left_handed: self.own.left_handed, words: &self.words };
        Ok(ShownScreen::new(screen, around))
    }

    /// Loads what the place shows; a place in a field that is gone becomes the list of fields.
    fn load(&mut self) -> Result<(), PitfaceError> {
        if !self.notes.load(&self.store, self.place)? {
            self.place = Place::Fields;
            self.notes.load(&self.store, self.place)?;
        }
        Ok(())
    }

    fn world(&self, can_undo: bool) -> World<'_> {
        World {
            own: &self.own,
            words: &self.words,
            fields: self.notes.of(self.place),
            fix: self.fixes.averaged(),
            position_refused: self.fixes.refused,
            now: self.now(),
            can_undo,
        }
    }

    fn now(&self) -> DateTime<FixedOffset> {
        let now = i64::try_from(now_ms()).ok().and_then(DateTime::from_timestamp_millis);
        now.unwrap_or_default().with_timezone(&self.offset)
    }

    pub fn tap(&mut self, act: &str, text: Option<&str>) -> Result<Answer, PitfaceError> {
        let act: Act = serde_json::from_str(act).map_err(|error| PitfaceError::Invalid {
            what: format!("this is no act: {error}"),
            todo: "give the act of what was tapped as it came".to_owned(),
        })?;
        self.load()?;
        let can_undo = self.store.can_undo()?;
        let done = match screen::tap(self.place, &act, text, &self.world(can_undo), &mut new_id) {
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
        self.place = done.place;
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

    /// All edits of a tap in one save; an undo among them parts it in two.
    fn save(&mut self, edits: &[Edit]) -> Result<Kept, StoreError> {
        let mut kept = Kept::default();
        for (undone, edits) in edits.split(|edit| matches!(edit, Edit::Undo)).enumerate() {
            if undone > 0 {
                self.undo(&mut kept)?;
            }
            if edits.is_empty() {
                continue;
            }
            let saved = self
                .store
                .save_together(now_ms(), |saving| edits.iter().try_for_each(|edit| put_in(saving, edit)))?;
            kept.saved = true;
            kept.changed |= !saved.changes.is_empty();
            for edit in edits {
                self.notes.edited(edit, self.place);
            }
        }
        Ok(kept)
    }

    fn undo(&mut self, kept: &mut Kept) -> Result<(), StoreError> {
        let undone = self.store.undo(now_ms())?;
        let mut kinds = Vec::new();
        if let Some(undone) = undone {
            (kept.saved, kept.changed) = (true, true);
            self.notes.changed(None);
            for change in undone.changes {
                kinds.extend(self.store.kind_of(change.record)?);
            }
        }
        kept.told = self.words.taken_back(&kinds);
        Ok(())
    }

    pub fn back(&mut self) -> Result<Option<ShownScreen>, PitfaceError> {
        let Some(above) = self.place.above() else { return Ok(None) };
        self.place = above;
        self.shown().map(Some)
    }

    pub fn fix(&mut self, fix: Fix) -> Result<Option<ShownScreen>, PitfaceError> {
        self.fixes.add(fix);
        if self.wants_position { self.shown().map(Some) } else { Ok(None) }
    }

    pub fn position_refused(&mut self) -> Result<ShownScreen, PitfaceError> {
        self.fixes.forget();
        self.fixes.refused = true;
        self.shown()
    }

    pub fn photo_taken(
        &mut self,
        field: &str,
        pit: &str,
        depth_mm: Option<u32>,
        path: &str,
        media_type: String,
    ) -> Result<Answer, PitfaceError> {
        let (field, pit) = (id(field)?, id(pit)?);
        let kept = match photos::keep(Path::new(path), &self.folder.photos()) {
            Ok(kept) => kept,
            Err(PhotoFault::Unread) => return self.told(self.words.photo_lost()),
            Err(PhotoFault::Unkept(error)) => return self.told(self.words.not_saved(why(&error.into()))),
        };
        let photo = Photo {
            id: new_id(),
            sha256: kept.sha256,
            size_bytes: kept.size_bytes,
            media_type,
            taken: Some(self.now()),
            depth_mm,
            unknown: Unknown::new(),
        };
        if let Err(error) = self.store.save_photo(pit, &photo, now_ms()) {
            if let Some(path) = kept.new {
                let _ = std::fs::remove_file(path);
            }
            return self.told(self.words.not_saved(why(&error)));
        }
        self.notes.changed(Some(field));
        let told = self.words.photo_kept();
        Ok(Answer { screen: self.shown_with(told, true)?, changed: true })
    }

    pub fn export_field(&self, field: &str, folder: &str) -> Result<String, PitfaceError> {
        let notes = self.store.load_notes(id(field)?)?;
        let folder = Path::new(folder);
        if !folder.is_dir() {
            return Err(PitfaceError::NotFound { what: folder.display().to_string() });
        }
        let path = folder.join(format!("{}.notes.json", file_name(&notes.field.name)));
        write_whole(&path, notes::write(&notes).as_bytes())?;
        Ok(path.display().to_string())
    }

    pub fn import_file(&mut self, path: &str) -> Result<Answer, PitfaceError> {
        let Ok(text) = text(Path::new(path)) else { return self.told(self.words.taken_in_unread()) };
        let notes = match notes::read(&text, &mut new_id) {
            Ok(read) => read.notes,
            Err(faults) => return self.told(self.words.not_taken_in(&faults)),
        };
        let saved = match self.store.save_notes(&notes, now_ms()) {
            Ok(saved) => saved,
            Err(error) => return self.told(self.words.not_saved(why(&error))),
        };
        self.notes.changed(None);
        self.place = Place::Field { field: notes.field.id };
        let told = self.words.taken_in(&notes.field.name, notes.pits.len());
        Ok(Answer { screen: self.shown_with(told, true)?, changed: !saved.changes.is_empty() })
    }

    pub fn set_offset(&mut self, minutes: i32) -> Result<(), PitfaceError> {
        self.offset = offset(minutes)?;
        Ok(())
    }
}

/// What a save came to.
#[derive(Default)]
struct Kept {
    /// It is on the disk.
    saved: bool,
    /// Something is now other than it was.
    changed: bool,
    told: String,
}

fn put_in(saving: &mut Saving, edit: &Edit) -> Result<(), StoreError> {
    match edit {
        Edit::Field(field) => saving.field(field),
        Edit::Pit { field, pit } => saving.pit(*field, pit),
        Edit::Step { pit, step } => saving.step(*pit, step),
        Edit::Layer { pit, layer } => saving.layer(*pit, layer),
        Edit::Roll { parent, roll } => saving.roll(*parent, roll),
        Edit::Photo { pit, photo } => saving.photo(*pit, photo),
        Edit::Machine { field, machine } => saving.machine(*field, machine),
        Edit::Pass { field, pass } => saving.pass(*field, pass),
        Edit::AfterDig { pass, dig } => saving.after_dig(*pass, dig),
        Edit::Delete { record } => saving.delete(*record),
        // Parted off before.
        Edit::Undo => Ok(()),
    }
}

/// Why something was not saved, as far as the person with the phone can do something about it.
fn why(error: &StoreError) -> NotSaved {
    match error {
        StoreError::DiskFull => NotSaved::Full,
        StoreError::ReadOnly => NotSaved::Locked,
        StoreError::RecordNotFound { .. } => NotSaved::Gone,
        StoreError::InvalidValue(_) => NotSaved::Refused,
        _ => NotSaved::Failed,
    }
}

/// A fault of a tap, as the screens word it: what is wrong, and what to do where that is said apart.
fn to_read(fault: Fault) -> String {
    if fault.todo.is_empty() { fault.wrong } else { format!("{} {}", fault.wrong, fault.todo) }
}

fn id(text: &str) -> Result<RecordId, PitfaceError> {
    RecordId::parse(text).ok_or_else(|| PitfaceError::Invalid {
        what: format!("{text:?} is no id of a record"),
        todo: "give it as it came with what was asked".to_owned(),
    })
}

fn offset(minutes: i32) -> Result<FixedOffset, PitfaceError> {
    let offset = minutes.checked_mul(60).and_then(FixedOffset::east_opt);
    offset.ok_or_else(|| PitfaceError::Invalid {
        what: format!("{minutes} minutes is no distance from UTC"),
        todo: "give the local time's distance from UTC in minutes, east positive".to_owned(),
    })
}

/// The language of the platform, if it is one of ours; else English.
fn spoken(tag: Option<&str>) -> Language {
    let language = tag.unwrap_or_default().split(['-', '_']).next().unwrap_or_default();
    Language::from_code(&language.to_lowercase()).unwrap_or(Language::English)
}

pub(crate) fn new_id() -> RecordId {
    let mut random = [0; 10];
    random.copy_from_slice(&Uuid::new_v4().as_bytes()[..10]);
    RecordId::new(now_ms(), random)
}

fn now_ms() -> u64 {
    let now = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    u64::try_from(now.as_millis()).unwrap_or(u64::MAX)
}

fn text(path: &Path) -> io::Result<String> {
    let mut text = String::new();
    File::open(path)?.take(LONGEST_NOTES_BYTES).read_to_string(&mut text)?;
    Ok(text)
}

/// A field's name as the name of a file: letters and digits of any script, the rest as one line between them.
fn file_name(name: &str) -> String {
    const LONGEST: usize = 60;
    let parts: Vec<&str> =
        name.split(|letter: char| !letter.is_alphanumeric()).filter(|part| !part.is_empty()).collect();
    let name: String = parts.join("_").chars().take(LONGEST).collect();
    if name.is_empty() { "field".to_owned() } else { name }
}
