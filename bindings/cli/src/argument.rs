//! Arguments that several commands share, and how lengths and codes are read off the command line.

use crate::preferences::Preferences;
use clap::Args;
use pitface_core::units::{INCH_MM, LengthUnit};
use pitface_core::words::{Language, Words};

/// The parser of a closed list's codes: `code_of!(RollOutcome)`.
macro_rules! code_of {
    ($list:ty) => {{
        use clap::builder::{PossibleValuesParser, TypedValueParser};
        PossibleValuesParser::new(<$list>::CODES)
            .try_map(|code| <$list>::from_code(&code).ok_or_else(|| format!("no code: {code}")))
    }};
}
pub(crate) use code_of;

/// How an answer is shown; every command takes these.
#[derive(Args)]
pub struct Shown {
    /// Answer as one JSON object (errors too); depths in it are whole millimetres.
    #[arg(long, global = true)]
    pub json: bool,
    /// Language of the sentences; without it that of the settings file or the environment.
    #[arg(long, global = true, value_parser = code_of!(Language))]
    pub language: Option<Language>,
    /// Unit in which sentences and drawings give depths; without it that of the settings file or the environment.
    #[arg(long, global = true, value_parser = code_of!(UnitArgument))]
    pub units: Option<UnitArgument>,
}

impl Shown {
    /// The same, with what is preferred where no option says.
    pub fn or(self, preferred: Preferences) -> Self {
        Self { language: self.language.or(preferred.language), units: self.units.or(preferred.units), ..self }
    }

    /// The words in this language and unit.
    pub fn words(&self) -> Words {
        let unit = self.units.unwrap_or(UnitArgument::Cm).into();
        Words::new(self.language.unwrap_or(Language::English), unit)
    }
}

/// A unit of depth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitArgument {
    /// Centimetres.
    Cm,
    /// Inches.
    In,
}

impl UnitArgument {
    /// Their codes.
    pub const CODES: &[&str] = &["cm", "in"];

    /// The unit of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        [Self::Cm, Self::In]
            .into_iter()
            .zip(Self::CODES)
            .find_map(|(unit, its)| (*its == code).then_some(unit))
    }
}

impl From<UnitArgument> for LengthUnit {
    fn from(unit: UnitArgument) -> Self {
        match unit {
            UnitArgument::Cm => Self::Centimetres,
            UnitArgument::In => Self::Inches,
        }
    }
}

/// Deepest length a command takes; a number above it was meant in another unit.
const DEEPEST_MM: f64 = 3_000.0;

/// Millimetres from `300`, `300mm`, `30cm` or `12in`; a bare number is millimetres, as in notes files.
///
/// # Errors
/// Not a number with one of these units, below zero, or deeper than three metres.
pub fn millimetres(text: &str) -> Result<u32, String> {
    let text = text.trim();
    let units = [("mm", 1.0), ("cm", 10.0), ("in", INCH_MM)];
    let (number, factor) = units
        .iter()
        .find_map(|&(unit, factor)| text.strip_suffix(unit).map(|number| (number.trim_end(), factor)))
        .unwrap_or((text, 1.0));
    let number: f64 = number
        .parse()
        .map_err(|_| "not a depth; write millimetres (300) or a unit (30cm, 12in)".to_owned())?;
    let mm = (number * factor).round();
    if (0.0..=DEEPEST_MM).contains(&mm) {
        Ok(mm as u32)
    } else {
        Err("no depth between 0 and 3 m; a bare number is read as millimetres, or write 30cm or 12in".into())
    }
}

#[cfg(test)]
mod tests {
    use super::millimetres;

    #[test]
    fn a_depth_is_read_with_its_unit() {
        assert_eq!(millimetres("300"), Ok(300));
        assert_eq!(millimetres("30cm"), Ok(300));
        assert_eq!(millimetres("30.5 cm"), Ok(305));
        assert_eq!(millimetres("12in"), Ok(305));
    }

    #[test]
    fn what_is_no_depth_is_refused() {
        for wrong in ["", "deep", "-5", "500cm", "NaN", "inf", "3001mm", "1e9", "30 ft"] {
            assert!(millimetres(wrong).is_err(), "{wrong}");
        }
    }
}
