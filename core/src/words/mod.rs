//! The words shown to people, in the chosen language and unit. The only room that knows languages.
//!
//! Sentences stand in Fluent files, `words/LANGUAGE/*.ftl`; Rust only chooses which one and fills in what
//! varies. A message id is either a sentence (`tip-clears`) or a value of a closed list, `LIST-CODE`
//! (`roots-sideways`), so that a code read in a file leads to its word. Attributes hold the other forms of it
//! that a sentence needs (`.clause`, `.if`, `.the`). Values are written as they stand inside a sentence;
//! [`Words::label`] puts the capital.
//!
//! ```
//! use pitface_core::record::Call;
//! use pitface_core::units::LengthUnit;
//! use pitface_core::words::{Language, Words};
//!
//! let words = Words::new(Language::English, LengthUnit::Centimetres);
//! assert_eq!(words.label(Call::RootsFirst), "Roots first");
//! assert_eq!(words.depth_range(200, 305), "20–30.5\u{a0}cm");
//! ```

mod after_dig;
mod amount;
mod boundary;
mod boundary_screen;
mod calls;
mod cells;
mod clues;
mod deleting;
mod describe;
mod details;
mod face;
mod ground;
mod heading;
mod language;
mod last_save;
mod listed;
mod machine;
mod measures;
mod merging;
mod next_pit;
mod page;
mod pass;
mod photos;
mod place;
mod plan;
mod reading_in;
mod reasons;
mod sample;
mod saving;
mod screen_face;
mod screen_field;
mod screen_partners;
mod screen_pit;
mod screen_rest;
mod screen_saved;
mod screen_work;
mod seasons;
mod section;
mod since;
mod soil;
mod tables;

pub use amount::unit_symbol;
pub use details::{Detail, DetailText};
pub use heading::Heading;
pub use language::Language;
pub use listed::{LISTS, Listed};
pub use merging::Wrote;
pub use next_pit::WalkFrom;
pub use page::PageText;
pub use plan::{PlanTold, ZoneTold};
pub use reading_in::Around;
pub use saving::NotSaved;
pub use screen_face::FaceText;
pub use screen_field::FieldText;
pub use screen_partners::PartnerText;
pub use screen_pit::PitText;
pub use screen_rest::Caption;
pub use screen_work::WorkText;

use crate::harmless;
use crate::units::LengthUnit;
use fluent::concurrent::FluentBundle;
use fluent::{FluentArgs, FluentResource, FluentValue, fluent_args};

/// Everything that is said to people, in one language and one unit of length. Kept by a shell for as long as
/// neither changes; may be shared between threads.
pub struct Words {
    language: Language,
    unit: LengthUnit,
    bundle: FluentBundle<FluentResource>,
}

impl Words {
    /// The words of a language, with depths in a unit.
    pub fn new(language: Language, unit: LengthUnit) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![language.identifier()]);
        // The marks keep right-to-left text apart, of which there is none here, and end up in files and drawings.
        bundle.set_use_isolating(false);
        for (_, text) in language.files() {
            // Of a broken file the sound sentences would still be used; a test keeps broken files out.
            let file = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(sound, _)| sound);
            bundle.add_resource_overriding(file);
        }
        Self { language, unit, bundle }
    }

    /// The language.
    pub const fn language(&self) -> Language {
        self.language
    }

    /// The unit of length.
    pub const fn unit(&self) -> LengthUnit {
        self.unit
    }

    /// Says what stands for a value of a closed list: a word or a few (`flat plates`), for [`Caution`] and
    /// [`FollowUp`] a sentence. As it stands inside a sentence.
    ///
    /// [`Caution`]: crate::advice::Caution
    /// [`FollowUp`]: crate::advice::FollowUp
    pub fn of(&self, value: impl Listed) -> String {
        self.say(&value.id())
    }

    /// The same with a capital, as it stands alone: on a button, in a table, at the head of a line.
    pub fn label(&self, value: impl Listed) -> String {
        capital(self.of(value))
    }

    /// A name that somebody gave, as it is shown where it stands alone.
    pub fn name(&self, name: &str) -> String {
        harmless::name(name).into_owned()
    }

    /// Text somebody wrote, on one line.
    pub fn line(&self, text: &str) -> String {
        harmless::line(text).into_owned()
    }

    /// Words joined as in a sentence: `a, b and c`.
    pub fn and(&self, items: &[String]) -> String {
        match items {
            [] => String::new(),
            [one] => one.clone(),
            [all @ .., last] => self
                .say_with("join-last", &fluent_args!["before" => self.comma(all), "last" => last.as_str()]),
        }
    }

    /// Words joined by commas only: `a, b, c`.
    pub fn comma(&self, items: &[String]) -> String {
        self.join("join-next", items)
    }

    /// Joins parts by the message `id`, which says how the next part follows those before it.
    fn join(&self, id: &str, parts: &[String]) -> String {
        let joined = parts
            .iter()
            .cloned()
            .reduce(|before, next| self.say_with(id, &fluent_args!["before" => before, "next" => next]));
        joined.unwrap_or_default()
    }

    /// Another form of a value's word: the attribute `form` of its message.
    fn form(&self, value: impl Listed, form: &str) -> String {
        self.say(&format!("{}.{form}", value.id()))
    }

    fn say(&self, id: &str) -> String {
        self.pattern(id, None)
    }

    fn say_with(&self, id: &str, args: &FluentArgs) -> String {
        self.pattern(id, Some(&harmless_args(args)))
    }

    /// The text of a message, `id`, or of one of its attributes, `id.attribute`. What is missing is shown in
    /// braces, which tests look for.
    fn pattern(&self, id: &str, args: Option<&FluentArgs>) -> String {
        let (message, attribute) = id.split_once('.').map_or((id, None), |(id, form)| (id, Some(form)));
        let message = self.bundle.get_message(message);
        let pattern = message.and_then(|message| match attribute {
            Some(form) => message.get_attribute(form).map(|attribute| attribute.value()),
            None => message.value(),
        });
        let Some(pattern) = pattern else { return format!("{{{id}}}") };
        self.bundle.format_pattern(pattern, args, &mut Vec::new()).into_owned()
    }
}

/// Returns what varies in a sentence may be somebody else's text: a name, say.
fn harmless_args<'args>(args: &'args FluentArgs) -> FluentArgs<'args> {
    let harmless = |(key, value): (&'args str, &'args FluentValue)| match (key, value) {
        ("field" | "machine" | "holder" | "name" | "program", FluentValue::String(text)) => {
            (key, harmless::name(text).into())
        }
        (_, FluentValue::String(text)) => (key, harmless::line(text).into()),
        _ => (key, value.clone()),
    };
    args.iter().map(harmless).collect()
}

/// The text with its first letter in upper case.
fn capital(text: String) -> String {
    let mut letters = text.chars();
    match letters.next() {
        Some(first) if first.is_lowercase() => first.to_uppercase().chain(letters).collect(),
        _ => text,
    }
}
