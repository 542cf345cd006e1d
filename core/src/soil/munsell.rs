//! Colours by the Munsell soil colour book, and how far a mottle stands out from its ground.

use crate::error::Fault;
use crate::record::codes::codes;

/// The hue pages of the soil colour book in their order (pages past 5Y: value from memory).
const PAGES: [&str; 19] = [
    "5R", "7.5R", "10R", "2.5YR", "5YR", "7.5YR", "10YR", "2.5Y", "5Y", "10Y", "5GY", "10GY", "5G", "10G",
    "5BG", "10BG", "5B", "10B", "5PB",
];

/// A colour chip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Munsell {
    /// Index of the hue page; `None` for neutral (N), which has no hue.
    page: Option<usize>,
    /// Lightness, 0 to 10.
    value: f64,
    /// Strength of the hue, 0 for neutral.
    chroma: f64,
}

impl Munsell {
    /// From a notation such as `10YR 4/3`, `2.5Y 5/2` or `N 5/0` (also `N 5/`).
    ///
    /// # Errors
    /// Anything else, with what is expected.
    pub fn parse(notation: &str) -> Result<Self, Fault> {
        let fault = || {
            let wrong = format!("\"{notation}\" is no Munsell notation of a soil colour");
            Fault::new("", wrong, "write hue, value and chroma as in 10YR 4/3; hues go from 5R to 5PB, or N")
        };
        let text: String = notation.to_uppercase().split_whitespace().collect();
        let (hue, rest) = text.split_at(text.rfind(|c: char| c.is_ascii_alphabetic()).ok_or_else(fault)? + 1);
        let (value, chroma) = rest.split_once('/').ok_or_else(fault)?;
        let page = PAGES.iter().position(|&page| page == hue);
        let number = |text: &str| text.parse::<f64>().ok().filter(|number| number.is_finite());
        let value = number(value).filter(|value| (0.0..=10.0).contains(value)).ok_or_else(fault)?;
        let chroma = match (page, chroma) {
            (None, "" | "0") if hue == "N" => 0.0,
            (None, _) => return Err(fault()),
            (Some(_), chroma) => {
                number(chroma).filter(|chroma| (0.0..=20.0).contains(chroma)).ok_or_else(fault)?
            }
        };
        Ok(Self { page, value, chroma })
    }

    /// Whether it counts as grey: chroma 2 or less, value 4 or more (value from memory).
    pub fn is_grey(self) -> bool {
        self.chroma <= 2.0 && self.value >= 4.0
    }

    /// Whether it is so dark that contrast no longer shows: value 3 or less, chroma 2 or less.
    fn is_dark(self) -> bool {
        self.value <= 3.0 && self.chroma <= 2.0
    }
}

codes!(
    /// How far two colours stand apart.
    ContrastClass { Faint = "faint", Distinct = "distinct", Prominent = "prominent", }
);

/// Contrast of two colours.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contrast {
    /// Hue pages apart.
    pub hue_pages: usize,
    /// Difference in value.
    pub value: f64,
    /// Difference in chroma.
    pub chroma: f64,
    /// The class.
    pub class: ContrastClass,
}

/// Largest difference in value and chroma that is still faint, and the one that is no longer distinct; by hue
/// pages apart. USDA-NRCS, Soil Survey Technical Note 2, and Field Book for Describing and Sampling Soils,
/// 3rd ed., p. 2-5.
const LIMITS: [Limits; 3] = [
    Limits { faint_to: (2.0, 1.0), distinct_below: 4.0 },
    Limits { faint_to: (1.0, 1.0), distinct_below: 3.0 },
    Limits { faint_to: (0.0, 0.0), distinct_below: 2.0 },
];

struct Limits {
    faint_to: (f64, f64),
    distinct_below: f64,
}

/// Contrast between two colours, in either order. A neutral has no hue: it is held to differ in value and
/// chroma only (our judgement).
pub fn contrast(one: Munsell, other: Munsell) -> Contrast {
    let hue_pages = one.page.zip(other.page).map_or(0, |(one, other)| one.abs_diff(other));
    let value = (one.value - other.value).abs();
    let chroma = (one.chroma - other.chroma).abs();
    let class = match LIMITS.get(hue_pages) {
        _ if one.is_dark() && other.is_dark() => ContrastClass::Faint,
        Some(limits) if value <= limits.faint_to.0 && chroma <= limits.faint_to.1 => ContrastClass::Faint,
        Some(limits) if value < limits.distinct_below && chroma < limits.distinct_below => {
            ContrastClass::Distinct
        }
        _ => ContrastClass::Prominent,
    };
    Contrast { hue_pages, value, chroma, class }
}
