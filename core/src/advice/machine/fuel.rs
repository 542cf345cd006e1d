//! Fuel by a named formula: the published ones differ by up to a third, so a figure without its name is worth nothing.

use super::draught::Estimate;
use super::table::{FUEL_OLDER, FUEL_PART_LOAD};
use crate::record::codes::codes;

codes!(
    /// A formula for fuel.
    FuelFormula {
        /// Part load at full throttle, a straight line (Grisso, Virginia Tech; coefficients from memory).
        PartLoad = "part_load",
        /// The older curve (ASAE D497 and EP496 before 2003; from memory): 21 to 34 % more.
        Older = "older",
    }
);

impl FuelFormula {
    /// Litres an hour of a tractor of this PTO power at this load (0 to 1 of it).
    pub fn litres_per_hour(self, rated_pto_kw: f64, load: f64) -> f64 {
        match self {
            Self::PartLoad => {
                let (slope, idle) = FUEL_PART_LOAD;
                (slope * load + idle) * rated_pto_kw
            }
            Self::Older => {
                let [slope, idle, root, root_slope, root_idle] = FUEL_OLDER;
                let per_kwh = slope * load + idle - root * (root_slope * load + root_idle).sqrt();
                per_kwh * load * rated_pto_kw
            }
        }
    }
}

/// Fuel with the formula that gave it.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Fuel {
    /// The formula.
    pub formula: FuelFormula,
    /// Litres an hour.
    pub litres_per_hour: Estimate,
    /// Litres a hectare.
    pub litres_per_ha: Estimate,
}

impl Fuel {
    /// Fuel for a power needed at the speed that is held; a load above the tractor's power counts as full load, as it
    /// cannot burn more. The pull that takes most goes with the least ground worked.
    pub fn of(
        formula: FuelFormula,
        needed_pto_kw: Estimate,
        rated_pto_kw: f64,
        ha_per_hour: Estimate,
    ) -> Self {
        let litres_per_hour =
            needed_pto_kw.map(|kw| formula.litres_per_hour(rated_pto_kw, (kw / rated_pto_kw).min(1.0)));
        let litres_per_ha = Estimate {
            lo: litres_per_hour.lo / ha_per_hour.hi,
            mid: litres_per_hour.mid / ha_per_hour.mid,
            hi: litres_per_hour.hi / ha_per_hour.lo,
        };
        Self { formula, litres_per_hour, litres_per_ha }
    }
}
