//! Whether what a file holds lies where the field is.

use crate::place::{MixUp, guess_mix_up, walk};

/// Further than this from everything known of a field, an outline is not its own: the largest one believed is 7 km across. Our judgement.
const FAR_M: f64 = 10_000.0;

/// An outline or line that lies elsewhere than the field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Misplaced {
    /// How far its nearest corner lies from the nearest place of the field, metres.
    pub distance_m: f64,
    /// Which mix-up of longitude and latitude would bring it there, if one does.
    pub mix_up: Option<MixUp>,
}

/// Whether places out of a file lie far from those known of the field (pits, marked parts, where one stands), all
/// `[longitude, latitude]`; `None` where they are near, and where there is nothing to compare.
pub fn misplaced(places: &[[f64; 2]], known: &[[f64; 2]]) -> Option<Misplaced> {
    let from =
        |place: &[f64; 2]| known.iter().map(|near| walk(*place, *near).distance_m).min_by(f64::total_cmp);
    // A few hundred corners tell how far a field is.
    let step = places.len().div_ceil(256).max(1);
    let distance_m = places.iter().step_by(step).filter_map(from).min_by(f64::total_cmp)?;
    (distance_m > FAR_M).then(|| Misplaced { distance_m, mix_up: guess_mix_up(places, known) })
}
