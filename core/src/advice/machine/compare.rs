//! Two settings, or two machines, side by side.

use super::draught::Estimate;
use super::geometry::LoosenedRange;
use super::model::{Model, WhyNot};
use super::setting::Setting;
use crate::record::codes::codes;

codes!(
    /// What is compared.
    Measure {
        /// Share of the ground loosened, 0 to 1.
        Share = "share",
        /// Height of the ridge, mm.
        Ridge = "ridge",
        /// Pull, kN.
        Draught = "draught",
        /// PTO power needed, kW.
        PtoPower = "pto_power",
        /// Work rate, ha/h.
        WorkRate = "work_rate",
        /// Fuel, l/ha.
        Fuel = "fuel",
        /// Cost, money a hectare.
        Cost = "cost",
        /// Extra yield that pays for it, t/ha.
        BreakEven = "break_even",
    }
);

/// One measure of both.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Compared {
    /// What.
    pub measure: Measure,
    /// Of the one.
    pub one: Model<Estimate>,
    /// Of the other.
    pub other: Model<Estimate>,
}

/// Both side by side; measures of which neither has a figure are left out.
pub fn compare(one: &Setting, other: &Setting) -> Vec<Compared> {
    Measure::ALL
        .iter()
        .map(|&measure| Compared { measure, one: measure.of(one), other: measure.of(other) })
        .filter(|row| row.one.value().is_some() || row.other.value().is_some())
        .collect()
}

impl Measure {
    /// Its value in a setting; what has no range of its own has equal ends.
    pub fn of(self, setting: &Setting) -> Model<Estimate> {
        let between = |lo: f64, hi: f64| Estimate { lo, mid: f64::midpoint(lo, hi), hi };
        match self {
            Self::Share => setting.ground.map(|ground| between(ground.least.share, ground.most.share)),
            Self::Ridge => {
                let ridge = |ground: LoosenedRange| [ground.most.ridge_mm, ground.least.ridge_mm];
                setting.ground.map(|ground| {
                    let [lo, hi] = ridge(ground).map(f64::from);
                    between(lo, hi)
                })
            }
            Self::Draught => Model::Applies(setting.draught_kn),
            Self::PtoPower => {
                setting.traction.map(|traction| traction.needed_pto_kw).ok_or(WhyNot::NoTractor).into()
            }
            Self::WorkRate => setting.ha_per_hour,
            Self::Fuel => setting.fuel.map(|fuel| fuel.litres_per_ha),
            Self::Cost => setting.cost_per_ha,
            Self::BreakEven => setting.break_even_t_per_ha,
        }
    }
}
