//! Language and unit where no option says: what the settings file has, else the locale of the environment, else English and
//! centimetres. The settings file goes before the environment, because somebody wrote it for this program alone.

use crate::argument::UnitArgument;
use crate::device::settings_folder;
use crate::trouble::Trouble;
use crate::write::cannot;
use pitface_core::error::Fault;
use pitface_core::words::Language;
use serde_json::Value;
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};

/// Name of the settings file in the settings folder.
const FILE: &str = "settings.json";

/// More than this no settings file has.
const MOST_BYTES: u64 = 64 << 10;

/// What is preferred, as far as anything says.
#[derive(Clone, Copy, Default, PartialEq, Eq, Debug)]
pub struct Preferences {
    /// Language of the sentences.
    pub language: Option<Language>,
    /// Unit of depths.
    pub units: Option<UnitArgument>,
}

impl Preferences {
    /// Those of whoever runs the command.
    ///
    /// # Errors
    /// The settings file cannot be read or says what cannot be.
    pub fn of_this_person() -> Result<Self, Trouble> {
        let environment = Self::of_locale(|name| std::env::var(name).ok());
        let written =
            settings_folder().map_or(Ok(Self::default()), |folder| Self::of_file(&folder.join(FILE)))?;
        Ok(written.or(environment))
    }

    fn or(self, other: Self) -> Self {
        Self { language: self.language.or(other.language), units: self.units.or(other.units) }
    }

    fn of_file(file: &PathBuf) -> Result<Self, Trouble> {
        let todo = "check who may read it";
        let mut text = String::new();
        match std::fs::File::open(file) {
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Self::default()),
            opened => opened
                .and_then(|opened| opened.take(MOST_BYTES).read_to_string(&mut text))
                .map_err(|error| cannot(file, "cannot be read", &error, todo))?,
        };
        Self::of_text(file, &text)
    }

    fn of_text(file: &Path, text: &str) -> Result<Self, Trouble> {
        let form = r#"write {"language": "en", "units": "cm"}, or delete the file"#;
        let Ok(Value::Object(settings)) = serde_json::from_str(text) else {
            return Err(Trouble::one(file, Fault::new("", "this is no JSON object", form)));
        };
        let (mut found, mut trouble) = (Self::default(), Trouble::default());
        for (key, value) in &settings {
            let code = value.as_str().unwrap_or_default();
            let known = match key.as_str() {
                "language" => {
                    found.language = Language::from_code(code);
                    found.language.map(|_| ()).ok_or_else(|| Language::CODES.join(", "))
                }
                "units" => {
                    found.units = UnitArgument::from_code(code);
                    found.units.map(|_| ()).ok_or_else(|| UnitArgument::CODES.join(", "))
                }
                _ => {
                    trouble.add(Trouble::one(file, Fault::new(key, "nobody knows this setting", form)));
                    Ok(())
                }
            };
            if let Err(codes) = known {
                let fault = Fault::new(
                    key,
                    format!("`{value}` is not one of the known codes"),
                    format!("use one of: {codes}"),
                );
                trouble.add(Trouble::one(file, fault));
            }
        }
        trouble.or(found)
    }

    /// Returns what the locale says: the first of its variables that is set and not empty holds (POSIX.1-2024, 8.2), for measures that of GNU,
    /// `LC_MEASUREMENT`.
    fn of_locale(variable: impl Fn(&str) -> Option<String>) -> Self {
        let first =
            |names: [&str; 3]| names.into_iter().filter_map(&variable).find(|value| !value.is_empty());
        let language = first(["LC_ALL", "LC_MESSAGES", "LANG"]);
        let measures = first(["LC_ALL", "LC_MEASUREMENT", "LANG"]);
        Self {
            language: language.and_then(|locale| Language::from_code(Locale::of(&locale).language)),
            units: measures.map(|locale| Locale::of(&locale).units()),
        }
    }
}

/// A locale's name taken apart: `language_TERRITORY.codeset@modifier`.
struct Locale<'a> {
    language: &'a str,
    territory: &'a str,
}

impl<'a> Locale<'a> {
    fn of(name: &'a str) -> Self {
        let name = name.split(['.', '@']).next().unwrap_or_default();
        let (language, territory) = name.split_once('_').unwrap_or((name, ""));
        Self { language, territory }
    }

    /// Inches only where the law measures so: the locales of the United States (value from memory: `measurement` is 2 in these
    /// alone).
    fn units(&self) -> UnitArgument {
        if self.territory == "US" { UnitArgument::In } else { UnitArgument::Cm }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may fail")]
mod tests {
    use super::*;

    fn of(set: &[(&str, &str)]) -> Preferences {
        Preferences::of_locale(|name| {
            set.iter().find(|(key, _)| *key == name).map(|(_, value)| (*value).to_owned())
        })
    }

    #[test]
    fn the_locale_tells_language_and_unit() {
        type Case<'a> = (&'a [(&'a str, &'a str)], Option<&'a str>, Option<UnitArgument>);
        let cases: &[Case] = &[
            (&[], None, None),
            (&[("LANG", "C.UTF-8")], None, Some(UnitArgument::Cm)),
            (&[("LANG", "de_AT.UTF-8")], Some("de"), Some(UnitArgument::Cm)),
            (&[("LANG", "de")], Some("de"), Some(UnitArgument::Cm)),
            (&[("LANG", "en_US.UTF-8")], Some("en"), Some(UnitArgument::In)),
            (&[("LANG", "fr_FR@euro")], None, Some(UnitArgument::Cm)),
            (&[("LANG", "en_US"), ("LC_MEASUREMENT", "de_DE")], Some("en"), Some(UnitArgument::Cm)),
            (&[("LANG", "en_GB"), ("LC_MESSAGES", "de_DE")], Some("de"), Some(UnitArgument::Cm)),
            (&[("LANG", "en_GB"), ("LC_MESSAGES", "")], Some("en"), Some(UnitArgument::Cm)),
            (
                &[("LC_ALL", "de_DE"), ("LC_MEASUREMENT", "en_US"), ("LANG", "en_US")],
                Some("de"),
                Some(UnitArgument::Cm),
            ),
        ];
        for (set, language, units) in cases {
            let found = of(set);
            assert_eq!((found.language.map(Language::code), found.units), (*language, *units), "{set:?}");
        }
    }

    #[test]
    fn a_settings_file_says_what_cannot_be() {
        let of = |text| Preferences::of_text(Path::new("settings.json"), text);
        let german = of(r#"{"language": "de", "units": "in"}"#).unwrap();
        assert_eq!(german, Preferences { language: Some(Language::German), units: Some(UnitArgument::In) });
        assert_eq!(of("{}").unwrap(), Preferences::default());
        let told = of(r#"{"language": "fr", "units": 3, "colour": "red"}"#).unwrap_err().to_string();
        assert_eq!(told.lines().count(), 3, "{told}");
        assert!(of("language = de").unwrap_err().to_string().contains("no JSON object"));
    }
}
