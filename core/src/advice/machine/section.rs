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

#[cfg(test)]
mod tests {
    use super::super::Tines;
    use super::section_share;
    use proptest::prelude::*;

    #[test]
    fn one_reading_is_no_section() {
        assert_eq!(section_share(&[350], 350), None);
        assert_eq!(section_share(&[0, 0], 0), None);
    }

    proptest! {
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
