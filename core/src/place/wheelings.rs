//! The share of the ground that the tramlines' wheels press.

use crate::record::Field;

/// Share of the ground between the first and last tramline that lies under their wheels; `None` where spacing or tyre
/// width is not known. Two tyres every spacing; where they overlap, each other or those of the next tramline, the
/// ground counts once. Without a wheel track they are taken not to
/// overlap.
pub(super) fn share_of(field: &Field) -> Option<f64> {
    let known = |mm: Option<u32>| mm.filter(|mm| *mm > 0).map(f64::from);
    let (spacing_mm, tyre_mm) = (known(field.tramline_mm)?, known(field.tyre_mm)?);
    let overlaps_mm = known(field.wheel_track_mm).map_or(0.0, |track_mm| {
        // Tramlines repeat, so what counts is the way from one wheel to the next on either side.
        let way_mm = track_mm.rem_euclid(spacing_mm);
        (tyre_mm - way_mm).max(0.0) + (tyre_mm - (spacing_mm - way_mm)).max(0.0)
    });
    Some(((2.0 * tyre_mm - overlaps_mm) / spacing_mm).min(1.0))
}
