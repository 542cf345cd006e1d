//! Ground worked in an hour.

/// Hectares an hour: speed × width × field efficiency (0 to 1).
pub fn ha_per_hour(speed_kmh: f64, width_mm: u32, field_efficiency: f64) -> f64 {
    speed_kmh * f64::from(width_mm) / 1000.0 * field_efficiency / 10.0
}

/// The speed that gets through so much ground, km/h.
pub fn speed_for_kmh(ha_per_hour: f64, width_mm: u32, field_efficiency: f64) -> f64 {
    ha_per_hour * 10.0 / (f64::from(width_mm) / 1000.0 * field_efficiency)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_speed_asked_for_gives_the_rate(rate in 0.1f64..10.0, width_mm in 500u32..8_000, share in 0.5f64..1.0) {
            let speed_kmh = speed_for_kmh(rate, width_mm, share);
            prop_assert!((ha_per_hour(speed_kmh, width_mm, share) / rate - 1.0).abs() < 1e-12);
        }
    }
}
