//! Sand, silt and clay as measured.

use crate::error::Fault;

/// Sand, silt and clay that make up the whole, kept in thousandths of a percent so that the rules of a
/// triangle are exact on its edges.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Fractions {
    sand: i64,
    silt: i64,
    clay: i64,
}

/// Units of [`Fractions`] in one percent.
pub(super) const PERCENT: i64 = 1000;

/// How far three rounded numbers may be from 100 together: one unit of the first decimal.
const SLACK: i64 = PERCENT / 10;

impl Fractions {
    /// From percent by mass of the mineral soil below 2 mm. Sand and clay are taken as given, silt is the
    /// rest, as in the handbook's rules; 0.1 % is left for rounding.
    ///
    /// # Errors
    /// A number that is none, lies outside 0 to 100, or three that do not add up to 100.
    pub fn new(sand_percent: f64, silt_percent: f64, clay_percent: f64) -> Result<Self, Fault> {
        let part = |name: &str, percent: f64| {
            if (0.0..=100.0).contains(&percent) {
                return Ok((percent * PERCENT as f64).round() as i64);
            }
            Err(Fault::new(name, format!("{percent} is no share in percent"), "give a number from 0 to 100"))
        };
        let (sand, silt, clay) =
            (part("sand", sand_percent)?, part("silt", silt_percent)?, part("clay", clay_percent)?);
        let sum = sand + silt + clay;
        let rest = 100 * PERCENT - sand - clay;
        if (sum - 100 * PERCENT).abs() > SLACK || rest < 0 {
            let sum_percent = sum as f64 / PERCENT as f64;
            return Err(Fault::new(
                "",
                format!("sand, silt and clay add up to {sum_percent} percent"),
                "give the shares of the mineral soil below 2 mm, which add up to 100",
            ));
        }
        Ok(Self { sand, silt: rest, clay })
    }

    /// Sand, thousandths of a percent.
    pub(super) const fn sand(self) -> i64 {
        self.sand
    }

    /// Silt, thousandths of a percent.
    pub(super) const fn silt(self) -> i64 {
        self.silt
    }

    /// Clay, thousandths of a percent.
    pub(super) const fn clay(self) -> i64 {
        self.clay
    }

    /// Sand, percent by mass.
    pub fn sand_percent(self) -> f64 {
        self.sand as f64 / PERCENT as f64
    }

    /// Silt, percent by mass.
    pub fn silt_percent(self) -> f64 {
        self.silt as f64 / PERCENT as f64
    }

    /// Clay, percent by mass.
    pub fn clay_percent(self) -> f64 {
        self.clay as f64 / PERCENT as f64
    }
}
