//! Power to pull, power to ask of the tractor, and whether it has it.

use super::draught::Estimate;
use super::table::{PTO_PER_ENGINE, Surface, TRACTION};
use crate::record::codes::codes;
use crate::record::{Drive, Tractor};

codes!(
    /// A tractor against the power needed. Where the lines are drawn is our judgement.
    TractorFit {
        /// Has the upper end of the estimate.
        Enough = "enough",
        /// Has the middle of it, not the upper end.
        Tight = "tight",
        /// Has not even the middle.
        NotEnough = "not_enough",
    }
);

/// Power for a pull at a speed, kilowatts at the drawbar.
pub fn drawbar_kw(draught_kn: Estimate, speed_kmh: f64) -> Estimate {
    draught_kn.map(|kn| kn * speed_kmh / 3.6)
}

/// The PTO power that gives this drawbar power, kilowatts.
pub fn pto_kw(drawbar_kw: Estimate, drive: Drive, surface: Surface) -> Estimate {
    let ratio = TRACTION[drive as usize].ratio[surface as usize];
    drawbar_kw.map(|kw| kw / ratio)
}

/// PTO power a tractor has, kilowatts.
pub fn rated_pto_kw(tractor: &Tractor) -> f64 {
    tractor.power_kw * PTO_PER_ENGINE
}

/// A tractor against the PTO power needed.
pub fn tractor_fit(tractor: &Tractor, needed_pto_kw: Estimate) -> TractorFit {
    let has = rated_pto_kw(tractor);
    if has >= needed_pto_kw.hi {
        TractorFit::Enough
    } else if has >= needed_pto_kw.mid {
        TractorFit::Tight
    } else {
        TractorFit::NotEnough
    }
}
