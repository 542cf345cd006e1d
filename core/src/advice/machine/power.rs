//! Power to pull, power to ask of the tractor, and whether it has it.

use super::draught::Estimate;
use super::table::{BEST_SLIP, MOST_SLIP, ON_REAR_WHEELS, PTO_PER_ENGINE, Surface, TRACTION, WHEEL_NUMERIC};
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

/// What a tractor's wheels can pull, kN, from best traction to as much slip as still is work.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Grip {
    /// At the slip for best traction.
    pub best_kn: f64,
    /// At [`MOST_SLIP`].
    pub most_kn: f64,
    /// Against the pull of the machine: `enough` holds its upper end at best traction, `tight` its middle at most slip.
    pub fit: TractorFit,
}

/// Standard gravity, m/s².
const GRAVITY: f64 = 9.806_65;

/// Pull over weight on driven wheels at a slip (0 to 1): gross traction less motion resistance. Brixius 1987 for bias-ply
/// tyres, as in ASABE D497: formula and coefficients read second-hand, in two accounts that agree. Tracks are taken as wheels: our
/// judgement, they hold no less.
pub fn pull_per_weight(surface: Surface, slip: f64) -> f64 {
    let numeric = WHEEL_NUMERIC[surface as usize];
    let gross = 0.88 * (1.0 - (-0.1 * numeric).exp()) * (1.0 - (-7.5 * slip).exp()) + 0.04;
    let resistance = 1.0 / numeric + 0.04 + 0.5 * slip / numeric.sqrt();
    gross - resistance
}

/// Returns what a tractor of this mass can pull, against what the machine pulls; `per_weight` where pull over weight was measured.
pub fn grip(
    mass_kg: u32,
    drive: Drive,
    surface: Surface,
    per_weight: Option<f64>,
    draught_kn: Estimate,
) -> Grip {
    let driven = if drive == Drive::TwoWheel { ON_REAR_WHEELS } else { 1.0 };
    let weight_kn = f64::from(mass_kg) * GRAVITY / 1_000.0;
    let (least, most) = BEST_SLIP[surface as usize];
    let pull = |slip| per_weight.unwrap_or_else(|| driven * pull_per_weight(surface, slip)) * weight_kn;
    let (best_kn, most_kn) = (pull(f64::midpoint(least, most)), pull(MOST_SLIP));
    let fit = if best_kn >= draught_kn.hi {
        TractorFit::Enough
    } else if most_kn >= draught_kn.mid {
        TractorFit::Tight
    } else {
        TractorFit::NotEnough
    };
    Grip { best_kn, most_kn, fit }
}

/// The fastest speed up to `asked_kmh` at which a pull, kN at a speed, takes no more than this power at the drawbar, kW.
pub fn held_kmh(pull_kn: impl Fn(f64) -> f64, drawbar_kw: f64, asked_kmh: f64) -> f64 {
    let takes = |kmh: f64| pull_kn(kmh) * kmh / 3.6;
    if takes(asked_kmh) <= drawbar_kw {
        return asked_kmh;
    }
    // Halving fifty times leaves nothing of a speed.
    let (slow, _) = (0..50).fold((0.0, asked_kmh), |(slow, fast), _| {
        let middle = f64::midpoint(slow, fast);
        if takes(middle) <= drawbar_kw { (middle, fast) } else { (slow, middle) }
    });
    slow
}

/// Drawbar power that a tractor gives on a surface, kW.
pub fn available_drawbar_kw(tractor: &Tractor, surface: Surface) -> f64 {
    rated_pto_kw(tractor) * TRACTION[tractor.drive as usize].ratio[surface as usize]
}

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

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Worked by hand from the formula: firm soil at 9 % slip, and at 20 %.
    #[test]
    fn firm_soil_gives_about_two_fifths_of_the_weight() {
        let near = |slip: f64, expected: f64| (pull_per_weight(Surface::Firm, slip) - expected).abs() < 0.002;
        assert!(near(0.09, 0.370) && near(0.20, 0.598), "{}", pull_per_weight(Surface::Firm, 0.09));
    }

    #[test]
    fn a_light_tractor_slips_before_it_stalls() {
        let pull = Estimate::around(40.0, 0.5);
        let fit = |mass_kg, drive| grip(mass_kg, drive, Surface::Firm, None, pull).fit;
        assert_eq!(fit(17_000, Drive::FrontAssist), TractorFit::Enough);
        assert_eq!(fit(8_000, Drive::FrontAssist), TractorFit::Tight);
        assert_eq!(fit(8_000, Drive::TwoWheel), TractorFit::NotEnough);
        assert_eq!(grip(8_000, Drive::TwoWheel, Surface::Firm, Some(0.8), pull).fit, TractorFit::Enough);
    }

    proptest! {
        #[test]
        fn the_speed_held_takes_the_power_there_is(power in 5.0f64..300.0, asked in 1.0f64..15.0, a in 5.0f64..100.0) {
            let pull = |kmh: f64| a * (1.0 + 0.008 * kmh * kmh);
            let held = held_kmh(pull, power, asked);
            prop_assert!(held <= asked);
            let takes = pull(held) * held / 3.6;
            prop_assert!(takes <= power + 1e-9);
            prop_assert!(asked - held < 1e-9 || (takes - power).abs() < 1e-6);
        }
    }
}
