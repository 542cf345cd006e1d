//! Lengths in steps of buttons: from one notch to the next, in whole centimetres or half inches.

use crate::units::LengthUnit;
use std::ops::RangeInclusive;

/// Steps of a length in one unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Notch {
    centimetres_mm: u32,
    half_inches: u32,
}

/// One centimetre, or half an inch.
pub(super) const FINE: Notch = Notch { centimetres_mm: 10, half_inches: 1 };
/// Five centimetres, or two inches.
pub(super) const COARSE: Notch = Notch { centimetres_mm: 50, half_inches: 4 };

/// Half a metre, or half a foot: widths over the ground.
pub(super) const WIDE: Notch = Notch { centimetres_mm: 500, half_inches: 12 };

/// Half an inch, millimetres.
const HALF_INCH_MM: f64 = crate::units::INCH_MM / 2.0;

impl Notch {
    /// One step, millimetres.
    pub fn step_mm(self, unit: LengthUnit) -> u32 {
        self.at(1, unit)
    }

    /// The length of so many steps.
    pub fn at(self, steps: u32, unit: LengthUnit) -> u32 {
        match unit {
            LengthUnit::Centimetres => steps * self.centimetres_mm,
            LengthUnit::Inches => (f64::from(steps * self.half_inches) * HALF_INCH_MM).round() as u32,
        }
    }

    /// The nearest number of whole steps.
    pub fn whole(self, mm: u32, unit: LengthUnit) -> u32 {
        self.steps(mm, unit).round() as u32
    }

    fn steps(self, mm: u32, unit: LengthUnit) -> f64 {
        match unit {
            LengthUnit::Centimetres => f64::from(mm) / f64::from(self.centimetres_mm),
            LengthUnit::Inches => f64::from(mm) / (f64::from(self.half_inches) * HALF_INCH_MM),
        }
    }

    /// The nearest whole step.
    pub fn nearest(self, mm: u32, unit: LengthUnit) -> u32 {
        self.at(self.steps(mm, unit).round() as u32, unit)
    }

    /// The next whole step below, then above; `None` outside `fits`.
    pub fn around(self, mm: u32, unit: LengthUnit, fits: RangeInclusive<u32>) -> [Option<u32>; 2] {
        // A whole step in inches is rounded to the millimetre: what is within that is on the step.
        let steps = self.steps(mm, unit);
        let whole = steps.round();
        let on = self.at(whole as u32, unit).abs_diff(mm) <= 1;
        let below = if on { whole - 1.0 } else { steps.floor() };
        let above = if on { whole + 1.0 } else { steps.ceil() };
        [below, above].map(|steps| {
            let mm = self.at((steps >= 0.0).then_some(steps as u32)?, unit);
            fits.contains(&mm).then_some(mm)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_lead_to_whole_numbers_of_the_unit() {
        let cm = LengthUnit::Centimetres;
        assert_eq!(FINE.around(325, cm, 0..=500), [Some(320), Some(330)]);
        assert_eq!(FINE.around(330, cm, 0..=500), [Some(320), Some(340)]);
        assert_eq!(COARSE.around(3_000, cm, 100..=3_000), [Some(2_950), None]);
        assert_eq!(FINE.around(0, cm, 0..=500), [None, Some(10)]);
        assert_eq!(FINE.around(330, LengthUnit::Inches, 0..=500), [Some(318), Some(343)]);
    }

    #[test]
    fn a_step_there_and_back_is_the_same() {
        for unit in [LengthUnit::Centimetres, LengthUnit::Inches] {
            for notch in [FINE, COARSE] {
                for steps in 2..40 {
                    let mm = notch.at(steps, unit);
                    let [_, above] = notch.around(mm, unit, 0..=9_999);
                    let [back, _] = notch.around(above.unwrap(), unit, 0..=9_999);
                    assert_eq!(back, Some(mm));
                }
            }
        }
    }
}
