//! The share of the ground that the tramlines' wheels press.

use crate::record::Field;

/// Share of the ground between the first and last tramline that lies under their wheels; `None` where spacing or tyre
/// width is not known. Two tyres every spacing; where they overlap, each other or those of the next tramline, the
/// ground counts once. Without a wheel track they are taken not to overlap.
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::RecordId;

    fn share(tramline_mm: u32, wheel_track_mm: Option<u32>, tyre_mm: u32) -> f64 {
        let field = Field::new(RecordId::new(1, [0; 10]), "Sedge Piece");
        let field = Field { tramline_mm: Some(tramline_mm), tyre_mm: Some(tyre_mm), wheel_track_mm, ..field };
        share_of(&field).unwrap()
    }

    /// By hand from the definition: two strips of a tyre's width every spacing, their common ground counted once.
    #[test]
    fn shares_are_those_reckoned_by_hand() {
        let cases = [
            (24_000, Some(1_800), 400, 800.0 / 24_000.0),
            (24_000, None, 400, 800.0 / 24_000.0),
            (24_000, Some(300), 400, 700.0 / 24_000.0),
            (12_000, Some(2_000), 600, 0.1),
            (2_000, Some(1_800), 400, 600.0 / 2_000.0),
            (1_000, Some(500), 600, 1.0),
        ];
        for (tramline_mm, track_mm, tyre_mm, expected) in cases {
            let found = share(tramline_mm, track_mm, tyre_mm);
            assert!((found - expected).abs() < 1e-12, "{tramline_mm} {track_mm:?} {tyre_mm}: {found}");
        }
    }

    #[test]
    fn nothing_is_said_without_spacing_or_tyre() {
        let field = Field::new(RecordId::new(1, [0; 10]), "Sedge Piece");
        assert_eq!(share_of(&Field { tramline_mm: Some(24_000), ..field.clone() }), None);
        assert_eq!(share_of(&Field { tyre_mm: Some(400), ..field }), None);
    }
}
