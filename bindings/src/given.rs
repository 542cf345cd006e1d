//! What a shell hands over, made into what it stands for.

use crate::PitfaceError;
use chrono::FixedOffset;
use pitface_core::record::RecordId;
use pitface_core::words::Language;

/// An id as it was asked with.
pub(crate) fn id(text: &str) -> Result<RecordId, PitfaceError> {
    RecordId::parse(text).ok_or_else(|| PitfaceError::Invalid {
        what: format!("{text:?} is no id of a record"),
        todo: "give it as it came with what was asked".to_owned(),
    })
}

/// A distance from UTC, in minutes, east positive.
pub(crate) fn offset(minutes: i32) -> Result<FixedOffset, PitfaceError> {
    let offset = minutes.checked_mul(60).and_then(FixedOffset::east_opt);
    offset.ok_or_else(|| PitfaceError::Invalid {
        what: format!("{minutes} minutes is no distance from UTC"),
        todo: "give the local time's distance from UTC in minutes, east positive".to_owned(),
    })
}

/// The language of the platform, if it is one of ours; else English.
pub(crate) fn spoken(tag: Option<&str>) -> Language {
    let language = tag.unwrap_or_default().split(['-', '_']).next().unwrap_or_default();
    Language::from_code(&language.to_lowercase()).unwrap_or(Language::English)
}
