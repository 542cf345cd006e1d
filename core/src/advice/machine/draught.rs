//! Pull of the tines by ASABE D497, never without its spread.

use super::table::{DRAUGHT, DRAUGHT_FACTOR, DRAUGHT_SPREAD, DraughtRow, DraughtSoil};
use crate::record::Machine;

/// A value known to a range only. There is no way to the middle past the ends.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Estimate {
    /// Lower end.
    pub lo: f64,
    /// Middle.
    pub mid: f64,
    /// Upper end.
    pub hi: f64,
}

impl Estimate {
    /// A middle with a spread either way, as a share of it.
    pub const fn around(mid: f64, spread: f64) -> Self {
        Self { lo: mid * (1.0 - spread), mid, hi: mid * (1.0 + spread) }
    }

    /// Each end and the middle by a rising function.
    #[must_use]
    pub fn map(self, rising: impl Fn(f64) -> f64) -> Self {
        Self { lo: rising(self.lo), mid: rising(self.mid), hi: rising(self.hi) }
    }
}

/// Pull of a row of the table, newtons, without the spread: for checks against printed examples of any tool.
pub fn table_draught_n(row: &DraughtRow, factor: f64, tools: f64, depth_cm: f64, speed_kmh: f64) -> f64 {
    factor * (row.a + row.b * speed_kmh + row.c * speed_kmh * speed_kmh) * tools * depth_cm
}

/// Pull of a machine at a tip depth, kilonewtons. The winged row is that of a 30 cm winged point, whatever the wings.
pub fn draught_kn(machine: &Machine, tip_mm: u32, speed_kmh: f64, soil: DraughtSoil) -> Estimate {
    let row = &DRAUGHT[usize::from(machine.wings.is_some())];
    let depth_cm = f64::from(tip_mm) / 10.0;
    let newtons =
        table_draught_n(row, DRAUGHT_FACTOR[soil as usize], machine.legs.into(), depth_cm, speed_kmh);
    Estimate::around(newtons / 1000.0, DRAUGHT_SPREAD)
}
