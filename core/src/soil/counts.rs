//! What is counted on an area.

use crate::error::Fault;

const SQUARE_METRE_MM2: f64 = 1e6;

/// Earthworms a square metre, from those in a block of this width and length.
///
/// # Errors
/// A block without area.
pub fn worms_per_m2(count: u32, width_mm: u32, length_mm: u32) -> Result<f64, Fault> {
    if width_mm == 0 || length_mm == 0 {
        return Err(Fault::new("block", "it has no area", "give its width and length in millimetres"));
    }
    Ok(f64::from(count) * SQUARE_METRE_MM2 / (f64::from(width_mm) * f64::from(length_mm)))
}

/// Share of a face taken by roots (or round pores) of one diameter, in percent, as in the example of the New
/// Zealand Soil Description Handbook, draft 3rd ed.
///
/// # Errors
/// A face without area, or a diameter that is no length.
pub fn root_area_percent(count: u32, diameter_mm: f64, face_mm2: f64) -> Result<f64, Fault> {
    for (name, number) in [("diameter", diameter_mm), ("face", face_mm2)] {
        if !(number.is_finite() && number > 0.0) {
            return Err(Fault::new(name, format!("{number} is no size"), "give a number above 0"));
        }
    }
    Ok(f64::from(count) * std::f64::consts::PI * (diameter_mm / 2.0).powi(2) / face_mm2 * 100.0)
}
