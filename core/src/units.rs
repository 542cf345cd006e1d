//! Lengths as people read them. Inside the core a length is a whole number of millimetres (`_mm`).

mod measure;

pub use measure::{Quantity, UnitSystem};

/// Unit in which depths are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LengthUnit {
    /// Whole centimetres, halves kept (`33`, `30.5`).
    #[default]
    Centimetres,
    /// Inches to the nearest half.
    Inches,
}

/// One inch in millimetres, exact by definition (international yard and pound agreement, 1959).
pub const INCH_MM: f64 = 25.4;

impl LengthUnit {
    /// `mm` in this unit as a bare number: centimetres to one decimal, inches to the nearest half.
    pub fn number(self, mm: u32) -> f64 {
        match self {
            Self::Centimetres => f64::from(mm) / 10.0,
            Self::Inches => (f64::from(mm) / INCH_MM * 2.0).round() / 2.0,
        }
    }

    /// Millimetres from a number in this unit, rounded to the millimetre.
    pub fn to_mm(self, number: f64) -> u32 {
        match self {
            Self::Centimetres => (number * 10.0).round() as u32,
            Self::Inches => (number * INCH_MM).round() as u32,
        }
    }
}
