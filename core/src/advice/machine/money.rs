//! What it costs and what it has to bring. Prices date quickly: all of them come from the user, in the user's money.

use super::draught::Estimate;

/// What working a field is paid by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Price {
    /// By area, fuel included.
    PerHectare {
        /// Money a hectare.
        cost: f64,
    },
    /// By time, with the fuel beside it.
    PerHour {
        /// Money an hour: tractor, machine, driver.
        cost: f64,
        /// Money a litre of fuel.
        fuel_per_litre: f64,
    },
}

impl Price {
    /// Money a hectare. `None` where it is paid by time and the fuel is not known.
    pub fn per_ha(self, ha_per_hour: Estimate, litres_per_ha: Option<Estimate>) -> Option<Estimate> {
        match self {
            Self::PerHectare { cost } => Some(Estimate::around(cost, 0.0)),
            Self::PerHour { cost, fuel_per_litre } => {
                let (litres, rate) = (litres_per_ha?, ha_per_hour);
                let both = |litres: f64, rate: f64| cost / rate + litres * fuel_per_litre;
                Some(Estimate {
                    lo: both(litres.lo, rate.hi),
                    mid: both(litres.mid, rate.mid),
                    hi: both(litres.hi, rate.lo),
                })
            }
        }
    }
}

/// The extra yield that pays for a cost, tonnes a hectare.
pub fn break_even_t_per_ha(cost_per_ha: Estimate, grain_price_per_t: f64) -> Estimate {
    cost_per_ha.map(|cost| cost / grain_price_per_t)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn work_paid_by_time_needs_the_fuel() {
        let price = Price::PerHour { cost: 90.0, fuel_per_litre: 0.7 };
        let rate = Estimate::around(2.0, 0.0);
        assert_eq!(price.per_ha(rate, None), None);
        let cost = price.per_ha(rate, Some(Estimate { lo: 10.0, mid: 15.0, hi: 20.0 })).unwrap();
        assert!(
            (cost.lo - 52.0).abs() < 1e-9 && (cost.mid - 55.5).abs() < 1e-9 && (cost.hi - 59.0).abs() < 1e-9
        );
    }
}
