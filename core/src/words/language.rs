//! The languages, each with its files of sentences.

use crate::record::codes::codes;
use unic_langid::{LanguageIdentifier, langid};

codes!(
    /// A language the words are written in. The code is its ISO 639-1 tag.
    Language {
        English = "en",
        German = "de",
    }
);

/// The files of one language, with their names.
macro_rules! files {
    ($language:literal) => {
        files!(
            $language: "after_dig", "boundary", "calls", "details", "face", "ground", "headings", "machine", "measures", "merging",
            "page", "photos", "place", "plan", "reading_in", "reasons", "saving", "screen", "screen_field", "screen_machine", "screen_partners",
            "screen_pit", "screen_saved", "screen_work", "signs", "soil", "tables"
        )
    };
    ($language:literal: $($name:literal),+) => {
        &[$(($name, include_str!(concat!("../../words/", $language, "/", $name, ".ftl")))),+]
    };
}

impl Language {
    /// Its Fluent files: name without ending, and text.
    pub const fn files(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Self::English => files!("en"),
            Self::German => files!("de"),
        }
    }

    pub(super) const fn identifier(self) -> LanguageIdentifier {
        match self {
            Self::English => langid!("en"),
            Self::German => langid!("de"),
        }
    }
}
