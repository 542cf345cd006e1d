//! Whether what a file holds lies where the field is.

use super::FromFile;
use crate::error::Fault;
use crate::place::{MixUp, guess_mix_up, walk};
use crate::record::{FieldNotes, Part, PartShape};
use geo::{Contains, LineString, Point, Polygon};

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

impl Misplaced {
    /// Returns what is wrong, and what to do, where nothing more is known of who asks.
    pub fn fault(&self, field: &str) -> Fault {
        let kilometres = (self.distance_m / 1000.0).round();
        let wrong = format!("this lies {kilometres} km from everything noted of {field}");
        let todo = match self.mix_up {
            Some(MixUp::Swapped) => {
                "with longitude and latitude swapped it would not: take them swapped".into()
            }
            Some(mix_up) => format!("{}; {}", mix_up.wrong(), mix_up.todo()),
            None => "choose another one, or take it all the same".into(),
        };
        Fault::new("", wrong, todo)
    }
}

/// Every place noted of a field, `[longitude, latitude]`: holes, marked parts and lines, its outline.
pub fn places_of(notes: &FieldNotes) -> Vec<[f64; 2]> {
    let pits = notes.pits.iter().filter_map(|pit| pit.at);
    let digs = notes.passes.iter().flat_map(|pass| &pass.after_digs).filter_map(|dig| dig.at);
    let holes = pits.chain(digs).map(|at| [at.longitude_deg, at.latitude_deg]);
    let of_part = |part: &Part| match &part.shape {
        PartShape::Ring(ring) => ring.clone(),
        PartShape::Circle { middle, .. } => vec![*middle],
    };
    let field = &notes.field;
    let marked = field.parts.iter().flat_map(of_part);
    let lines = field.lines.iter().flat_map(|line| line.along.iter().copied());
    holes.chain(marked).chain(lines).chain(field.outline.iter().copied()).collect()
}

/// Returns whether places out of a file lie far from those known of the field (pits, marked parts, where one stands), all
/// `[longitude, latitude]`; `None` where they are near, and where there is nothing to compare.
pub fn misplaced(places: &[[f64; 2]], known: &[[f64; 2]]) -> Option<Misplaced> {
    let from =
        |place: &[f64; 2]| known.iter().map(|near| walk(*place, *near).distance_m).min_by(f64::total_cmp);
    // A few hundred corners tell how far a field is.
    let step = places.len().div_ceil(256).max(1);
    let distance_m = places.iter().step_by(step).filter_map(from).min_by(f64::total_cmp)?;
    (distance_m > FAR_M).then(|| Misplaced { distance_m, mix_up: guess_mix_up(places, known) })
}

/// Returns whether a file has latitude before longitude: nothing in it lies near a known place as it stands, and something does with the two
/// swapped. One place of the field tells, for a field is no larger than what counts as near.
pub fn lies_swapped(found: &FromFile, known: &[[f64; 2]]) -> bool {
    let known = &known[..known.len().min(1)];
    let areas = found.areas.iter().map(|area| &area.ring);
    let mut some = false;
    let far = |places: &Vec<[f64; 2]>| {
        let far = misplaced(places, known);
        some |= far.is_some_and(|far| far.mix_up == Some(MixUp::Swapped));
        far.is_some()
    };
    areas.chain(found.lines.iter().map(|line| &line.along)).all(far) && some
}

/// How far a ring of `[longitude, latitude]` lies from a place: to the nearest of its corners, metres; 0 within it.
pub fn away_m(ring: &[[f64; 2]], from: [f64; 2]) -> f64 {
    let area = Polygon::new(LineString::from(ring.to_vec()), Vec::new());
    if area.contains(&Point::from(from)) {
        return 0.0;
    }
    // Which corner is the nearest is told on the flat: a county's fields are measured anew with each position.
    let shrunk = from[1].to_radians().cos();
    let squared =
        |corner: &[f64; 2]| ((corner[0] - from[0]) * shrunk).powi(2) + (corner[1] - from[1]).powi(2);
    let nearest = ring.iter().min_by(|one, other| squared(one).total_cmp(&squared(other)));
    nearest.map_or(f64::INFINITY, |&corner| walk(from, corner).distance_m)
}
