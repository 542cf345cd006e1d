//! Speeds, powers and prices off the command line: a bare number is metric, or the unit is written out.

use pitface_core::units::{Quantity, UnitSystem};
use pitface_core::words::unit_symbol;

/// A metric value from `6`, `6km/h` or `4mph`; above 0.
///
/// # Errors
/// Not a number above 0 with one of these units.
pub fn amount(quantity: Quantity, text: &str) -> Result<f64, String> {
    let systems = [UnitSystem::Metric, UnitSystem::UsCustomary];
    let given = systems.iter().find_map(|&system| {
        let number = text.trim().strip_suffix(unit_symbol(quantity, system))?;
        Some((number.trim_end(), system))
    });
    let (number, system) = given.unwrap_or((text.trim(), UnitSystem::Metric));
    match number.parse::<f64>() {
        Ok(number) if number.is_finite() && number > 0.0 => Ok(system.to_metric(quantity, number)),
        _ => {
            let [metric, us] = systems.map(|system| unit_symbol(quantity, system));
            Err(format!(
                "not a number above 0; a bare number is read as {metric}, or write 5{metric} or 5{us}"
            ))
        }
    }
}

/// The parser of a quantity: `amount_of!(Speed)`.
macro_rules! amount_of {
    ($quantity:ident) => {
        |text: &str| $crate::amount::amount(pitface_core::units::Quantity::$quantity, text)
    };
}
pub(crate) use amount_of;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_is_read_with_its_unit() {
        assert_eq!(amount(Quantity::Speed, "6"), Ok(6.0));
        assert_eq!(amount(Quantity::Speed, "6 km/h"), Ok(6.0));
        assert_eq!(amount(Quantity::Speed, "5mph"), Ok(8.046_72));
        assert_eq!(amount(Quantity::Width, "10ft"), Ok(3.048));
        assert!((amount(Quantity::CostPerArea, "32.16/ac").unwrap() - 79.47).abs() < 0.005);
    }

    #[test]
    fn what_is_no_amount_is_refused() {
        for wrong in ["", "fast", "0", "-5", "NaN", "inf", "5 knots"] {
            assert!(amount(Quantity::Speed, wrong).is_err(), "{wrong}");
        }
    }
}
