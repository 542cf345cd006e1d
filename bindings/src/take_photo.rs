//! A photo that was taken, kept and noted.

use crate::PitfaceError;
use crate::given::id;
use crate::held::{Answer, Held};
use crate::made::{new_id, now_ms};
use crate::save::why;
use pitface_core::record::{Photo, Unknown};
use pitface_core::store::{PhotoFault, photo_name};
use std::path::Path;

impl Held {
    pub fn photo_taken(
        &mut self,
        field: &str,
        pit: &str,
        depth_mm: Option<u32>,
        path: &str,
        media_type: String,
    ) -> Result<Answer, PitfaceError> {
        let (field, pit) = (id(field)?, id(pit)?);
        let photos = self.folder.photos();
        let kept = match photos.keep_without_notes(Path::new(path)) {
            Ok(kept) => kept,
            Err(PhotoFault::Unread) => return self.told(self.words.photo_lost()),
            Err(PhotoFault::Unkept(error)) => return self.told(self.words.not_saved(why(&error.into()))),
        };
        let photo = Photo {
            id: new_id(),
            sha256: photo_name(&kept.sha256),
            size_bytes: kept.size_bytes,
            media_type,
            taken: Some(self.now()),
            depth_mm,
            marks: Vec::new(),
            unknown: Unknown::new(),
        };
        if let Err(error) = self.store.save_photo(pit, &photo, now_ms()) {
            if kept.new {
                let _ = std::fs::remove_file(photos.path(&kept.sha256));
            }
            return self.told(self.words.not_saved(why(&error)));
        }
        self.notes.changed(Some(field));
        let told = self.words.photo_kept();
        Ok(Answer { screen: self.shown_with(told, true)?, changed: true })
    }
}
