//! Speeds, pulls, powers and the like, each with its unit, ranges where there are ranges.

use super::Words;
use crate::advice::machine::Estimate;
use crate::units::{Quantity, UnitSystem};
use fluent::fluent_args;

/// International symbols; the same in every language. Lengths have their own way, see [`Words::depth`].
pub const fn unit_symbol(quantity: Quantity, system: UnitSystem) -> &'static str {
    let (metric, us) = match quantity {
        Quantity::Length => ("mm", "in"),
        Quantity::Width => ("m", "ft"),
        Quantity::Area => ("m²", "ft²"),
        Quantity::Speed => ("km/h", "mph"),
        Quantity::Force => ("kN", "lbf"),
        Quantity::Power => ("kW", "hp"),
        Quantity::Ground => ("ha", "ac"),
        Quantity::Time => ("h", "h"),
        Quantity::Volume => ("l", "gal"),
        Quantity::Money => ("", ""),
        Quantity::WorkRate => ("ha/h", "ac/h"),
        Quantity::FuelPerHour => ("l/h", "gal/h"),
        Quantity::FuelPerArea => ("l/ha", "gal/ac"),
        Quantity::Yield => ("t/ha", "lb/ac"),
        Quantity::CostPerArea => ("/ha", "/ac"),
        Quantity::PricePerMass => ("/t", "/lb"),
        Quantity::PricePerVolume => ("/l", "/gal"),
        Quantity::Mass => ("kg", "lb"),
    };
    match system {
        UnitSystem::Metric => metric,
        UnitSystem::UsCustomary => us,
    }
}

impl Words {
    /// A metric value in the chosen units: `67.9 kW`.
    pub fn amount(&self, quantity: Quantity, metric: f64) -> String {
        self.estimate(quantity, Estimate::around(metric, 0.0))
    }

    /// A metric estimate in the chosen units, with its ends: `41 (20–61) kN`; one number where all read the same.
    pub fn estimate(&self, quantity: Quantity, metric: Estimate) -> String {
        let system = UnitSystem::from(self.unit);
        let shown = metric.map(|value| system.from_metric(quantity, value));
        let spread = shown.lo.to_bits() != shown.hi.to_bits();
        let decimals = decimals(quantity, shown.hi).saturating_sub(usize::from(spread));
        let [lo, mid, hi] = [shown.lo, shown.mid, shown.hi].map(|value| self.decimal(value, decimals));
        let number = if lo == hi {
            mid
        } else {
            self.say_with("machine-estimate", &fluent_args!["lo" => lo, "mid" => mid, "hi" => hi])
        };
        let unit = unit_symbol(quantity, system);
        if unit.is_empty() {
            return number;
        }
        self.say_with("measure-length", &fluent_args!["number" => number, "unit" => unit])
    }

    /// A metric value in the chosen units, to one decimal where it has one: `6 km/h`, `4.5 km/h`.
    pub(super) fn brief_amount(&self, quantity: Quantity, metric: f64) -> String {
        let system = UnitSystem::from(self.unit);
        let tenths = (system.from_metric(quantity, metric) * 10.0).round();
        let number = self.decimal(tenths / 10.0, usize::from(tenths % 10.0 != 0.0));
        let unit = unit_symbol(quantity, system);
        self.say_with("measure-length", &fluent_args!["number" => number, "unit" => unit])
    }

    /// The same as a whole number: `12 m`, `39 ft`.
    pub(super) fn whole_amount(&self, quantity: Quantity, metric: f64) -> String {
        let system = UnitSystem::from(self.unit);
        let number = self.decimal(system.from_metric(quantity, metric), 0);
        let unit = unit_symbol(quantity, system);
        self.say_with("measure-length", &fluent_args!["number" => number, "unit" => unit])
    }

    /// A number with this many decimals, with the language's mark.
    pub(super) fn decimal(&self, value: f64, decimals: usize) -> String {
        let written = format!("{value:.decimals$}");
        match written.split_once('.') {
            Some((whole, tenths)) => {
                self.say_with("number-tenths", &fluent_args!["whole" => whole, "tenths" => tenths])
            }
            None => written,
        }
    }
}

/// Decimals that leave about three figures; an estimate with a spread shows one less. Money has
/// hundredths.
fn decimals(quantity: Quantity, value: f64) -> usize {
    match value.abs() {
        _ if matches!(quantity, Quantity::CostPerArea | Quantity::Money) => 2,
        _ if quantity == Quantity::Time => 1 + usize::from(value.abs() < 1.0),
        _ if quantity == Quantity::Ground => {
            usize::from(value.abs() < 100.0) + usize::from(value.abs() < 10.0)
        }
        ..1.0 => 3,
        ..10.0 => 2,
        ..100.0 => 1,
        _ => 0,
    }
}
