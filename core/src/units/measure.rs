//! Speeds, forces, powers and rates in metric units and in US customary ones. Inside the core all are metric.

/// In which units quantities are shown and entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum UnitSystem {
    /// km/h, kN, kW, ha, litres, tonnes.
    #[default]
    Metric,
    /// mph, pounds-force, horsepower, acres, US gallons, pounds.
    UsCustomary,
}

/// What is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Millimetres; inches.
    Length,
    /// Metres; feet.
    Width,
    /// Square metres; square feet.
    Area,
    /// km/h; mph.
    Speed,
    /// Kilonewtons; pounds-force.
    Force,
    /// Kilowatts; mechanical horsepower.
    Power,
    /// Hectares; acres.
    Ground,
    /// Hours, in both.
    Time,
    /// Litres; US gallons.
    Volume,
    /// Money, in both.
    Money,
    /// Hectares an hour; acres an hour.
    WorkRate,
    /// Litres an hour; US gallons an hour.
    FuelPerHour,
    /// Litres a hectare; US gallons an acre.
    FuelPerArea,
    /// Tonnes a hectare; pounds an acre.
    Yield,
    /// Money a hectare; money an acre.
    CostPerArea,
    /// Money a tonne; money a pound.
    PricePerMass,
    /// Money a litre; money a US gallon.
    PricePerVolume,
    /// Kilograms; pounds.
    Mass,
}

// All exact by definition (international yard and pound agreement, 1959; US gallon of 231 cubic inches;
// horsepower of 550 foot-pounds a second; standard gravity 9.80665 m/s²).
const FOOT_M: f64 = 0.3048;
const POUND_KG: f64 = 0.453_592_37;
const POUND_FORCE_KN: f64 = POUND_KG * 9.806_65 / 1000.0;
const ACRE_HA: f64 = 0.404_685_642_24;
const GALLON_L: f64 = 3.785_411_784;

impl Quantity {
    /// Every quantity.
    pub const ALL: &'static [Self] = &[
        Self::Length,
        Self::Width,
        Self::Area,
        Self::Speed,
        Self::Force,
        Self::Power,
        Self::Ground,
        Self::Time,
        Self::Volume,
        Self::Money,
        Self::WorkRate,
        Self::FuelPerHour,
        Self::FuelPerArea,
        Self::Yield,
        Self::CostPerArea,
        Self::PricePerMass,
        Self::PricePerVolume,
        Self::Mass,
    ];

    /// How much of the metric unit one US customary unit is.
    const fn metric_per_us(self) -> f64 {
        match self {
            Self::Length => super::INCH_MM,
            Self::Width => FOOT_M,
            Self::Area => FOOT_M * FOOT_M,
            Self::Speed => 1.609_344,
            Self::Force => POUND_FORCE_KN,
            Self::Power => 550.0 * FOOT_M * POUND_FORCE_KN,
            Self::Time | Self::Money => 1.0,
            Self::Ground | Self::WorkRate => ACRE_HA,
            Self::Volume | Self::FuelPerHour => GALLON_L,
            Self::FuelPerArea => GALLON_L / ACRE_HA,
            Self::Yield => POUND_KG / 1000.0 / ACRE_HA,
            Self::CostPerArea => 1.0 / ACRE_HA,
            Self::PricePerMass => 1000.0 / POUND_KG,
            Self::PricePerVolume => 1.0 / GALLON_L,
            Self::Mass => POUND_KG,
        }
    }
}

impl From<super::LengthUnit> for UnitSystem {
    /// Who reads depths in inches reads the rest in US customary units.
    fn from(unit: super::LengthUnit) -> Self {
        match unit {
            super::LengthUnit::Centimetres => Self::Metric,
            super::LengthUnit::Inches => Self::UsCustomary,
        }
    }
}

impl UnitSystem {
    /// A metric value in these units.
    pub fn from_metric(self, quantity: Quantity, value: f64) -> f64 {
        match self {
            Self::Metric => value,
            Self::UsCustomary => value / quantity.metric_per_us(),
        }
    }

    /// A value in these units in the metric one.
    pub fn to_metric(self, quantity: Quantity, value: f64) -> f64 {
        match self {
            Self::Metric => value,
            Self::UsCustomary => value * quantity.metric_per_us(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const US: UnitSystem = UnitSystem::UsCustomary;

    fn is_near(value: f64, expected: f64) -> bool {
        (value / expected - 1.0).abs() < 1e-6
    }

    #[test]
    fn known_pairs() {
        assert!(is_near(US.to_metric(Quantity::Power, 1.0), 0.745_699_9));
        assert!(is_near(US.to_metric(Quantity::Force, 1.0), 0.004_448_222));
        assert!(is_near(US.to_metric(Quantity::FuelPerArea, 1.0), 9.353_96));
        assert!(is_near(US.to_metric(Quantity::Yield, 1.0), 0.001_120_851));
        assert!(is_near(US.from_metric(Quantity::WorkRate, 1.0), 2.471_054));
        assert!(is_near(US.from_metric(Quantity::Speed, 8.046_72), 5.0));
    }

    proptest! {
        /// What was typed, to three decimals, is shown again just as it was typed.
        #[test]
        fn a_typed_number_comes_back_as_typed(thousandths in 0u32..100_000_000, index in 0..Quantity::ALL.len()) {
            let (typed, quantity) = (f64::from(thousandths) / 1000.0, Quantity::ALL[index]);
            for system in [UnitSystem::Metric, US] {
                let back = system.from_metric(quantity, system.to_metric(quantity, typed));
                prop_assert_eq!(format!("{back:.3}"), format!("{typed:.3}"));
            }
        }

        #[test]
        fn whole_millimetres_come_back_exactly(mm in 0u32..10_000_000) {
            let inches = US.from_metric(Quantity::Length, f64::from(mm));
            prop_assert_eq!(US.to_metric(Quantity::Length, inches).round() as u32, mm);
        }
    }
}
