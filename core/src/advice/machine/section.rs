//! A section dug across the machine: depths to firm soil at equal steps from one tine line to the next.

/// Share of the ground down to a target depth that is loosened, 0 to 1, by the trapezoid rule; readings below the
/// target count as the target. `None` for fewer than two readings or a target of 0.
pub fn section_share(readings_mm: &[u32], target_mm: u32) -> Option<f64> {
    let target = Some(f64::from(target_mm)).filter(|&target| target > 0.0)?;
    let capped: Vec<f64> = readings_mm.iter().map(|&mm| f64::from(mm.min(target_mm))).collect();
    let steps = capped.len().checked_sub(1).filter(|&steps| steps > 0)?;
    let area: f64 = capped.windows(2).map(|pair| f64::midpoint(pair[0], pair[1])).sum();
    Some(area / steps as f64 / target)
}

/// Share of the readings at or below a layer's bottom, 0 to 1. `None` without readings.
pub fn broken_share(readings_mm: &[u32], bottom_mm: u32) -> Option<f64> {
    let reaching = readings_mm.iter().filter(|&&mm| mm >= bottom_mm).count();
    (!readings_mm.is_empty()).then(|| reaching as f64 / readings_mm.len() as f64)
}

/// Mean thickness of a layer that is left between two tine lines, by the trapezoid rule: at each reading what of it lies
/// below the depth to firm soil. `None` for fewer than two readings or a layer of no thickness.
pub fn left_mm(readings_mm: &[u32], top_mm: u32, bottom_mm: u32) -> Option<f64> {
    let thickness_mm = bottom_mm.saturating_sub(top_mm);
    let into_layer: Vec<u32> = readings_mm.iter().map(|mm| mm.saturating_sub(top_mm)).collect();
    Some((1.0 - section_share(&into_layer, thickness_mm)?) * f64::from(thickness_mm))
}

/// Height of the firm ground between the two tine lines above the mean of their bottoms; 0 where nothing stands higher.
/// `None` for fewer than three readings, which show nothing between the lines.
pub fn measured_ridge_mm(readings_mm: &[u32]) -> Option<u32> {
    let [first, between @ .., last] = readings_mm else { return None };
    let shallowest = between.iter().min()?;
    Some(first.midpoint(*last).saturating_sub(*shallowest))
}

#[cfg(test)]
mod tests {
    use super::super::Tines;
    use super::{broken_share, left_mm, measured_ridge_mm, section_share};
    use proptest::prelude::*;

    #[test]
    fn one_reading_is_no_section() {
        assert_eq!(section_share(&[350], 350), None);
        assert_eq!(section_share(&[0, 0], 0), None);
    }

    #[test]
    fn a_ridge_stands_between_the_lines() {
        assert_eq!(measured_ridge_mm(&[350, 350, 200, 350, 350]), Some(150));
        assert_eq!(measured_ridge_mm(&[300, 340, 300]), Some(0));
        assert_eq!(measured_ridge_mm(&[300, 300]), None);
    }

    /// A layer at 200 to 300 mm: whole, half and none of it left; the readings in the lines count half.
    #[test]
    fn what_is_left_of_a_layer_is_a_thickness() {
        for (readings, left) in [
            ([180, 200, 150], 100.0),
            ([250, 250, 250], 50.0),
            ([350, 300, 310], 0.0),
            ([350, 280, 350], 10.0),
        ] {
            let found = left_mm(&readings, 200, 300).unwrap();
            assert!((found - left).abs() < 1e-9, "{readings:?} {found}");
        }
        assert_eq!(left_mm(&[350], 200, 300), None);
        assert_eq!(left_mm(&[350, 350], 300, 300), None);
    }

    #[test]
    fn a_reading_at_the_bottom_has_broken_the_layer() {
        assert_eq!(broken_share(&[350, 300, 299, 200], 300), Some(0.5));
        assert_eq!(broken_share(&[], 300), None);
    }

    proptest! {
        #[test]
        fn a_deeper_reading_never_lowers_a_share(
            readings in prop::collection::vec(0u32..600, 2..12), at in 0usize..12, deeper in 1u32..200,
            mark_mm in 100u32..500,
        ) {
            let mut deepened = readings.clone();
            let at = at % readings.len();
            deepened[at] += deeper;
            for share in [section_share, broken_share] {
                prop_assert!(share(&deepened, mark_mm) >= share(&readings, mark_mm));
                prop_assert!((0.0..=1.0).contains(&share(&readings, mark_mm).unwrap()));
            }
        }

        /// Readings taken off the figure of a machine give the figure's share.
        #[test]
        fn a_section_through_the_figure_gives_its_share(
            lifting_width_mm in 40u32..400, tip_mm in 200u32..500, spacing_mm in 400u32..1_000,
        ) {
            let tines = Tines { lifting_width_mm, tip_mm, spacing_mm, slope_degrees: 45.0 };
            let readings: Vec<u32> = (0..=2 * spacing_mm)
                .map(|half_mm| {
                    let from_tine = half_mm.min(2 * spacing_mm - half_mm) / 2;
                    tip_mm.saturating_sub(from_tine.saturating_sub(lifting_width_mm / 2))
                })
                .collect();
            let share = section_share(&readings, tip_mm).unwrap();
            prop_assert!((share - tines.loosened().share).abs() < 0.01, "{share} {:?}", tines.loosened());
        }
    }
}
