//! The way one came: where *back* leads, kept by a session and over a restart.

use super::Place;
use serde::{Deserialize, Serialize};

/// Most places that are remembered; of a longer way the beginning is forgotten. Our judgement.
const MOST_PLACES: usize = 32;

/// The places one came through, the last one last; the place one is at is not among them. Written as text (JSON) a list
/// of places.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Trail(Vec<Place>);

impl Trail {
    /// Where *back* leads from a place: to where one came from, else to the place above; nowhere from the topmost.
    pub fn back(&self, from: Place) -> Option<Place> {
        from.above().map(|above| self.0.last().copied().unwrap_or(above))
    }

    /// One went from a place to another. A place that is on the way already cuts it there; a question that is answered and
    /// a place that only became another of its kind are not come back to.
    pub fn went(&mut self, from: Place, to: Place) {
        let back = self.back(from);
        if to.above().is_none() {
            self.0.clear();
        } else if let Some(at) = self.0.iter().position(|place| place.is_like(to)) {
            self.0.truncate(at);
        } else if !from.is_like(to) && !from.is_passed_through() && back != Some(to) {
            self.0.push(from);
        }
        if self.0.len() > MOST_PLACES {
            self.0.remove(0);
        }
    }

    /// The record of where one was is gone, and another place is shown instead.
    pub fn fell_back(&mut self, to: Place) {
        if to.above().is_none() {
            self.0.clear();
        } else if let Some(at) = self.0.iter().position(|place| place.is_like(to)) {
            self.0.truncate(at);
        }
    }
}

impl Place {
    /// Returns whether it is the same kind of place for the same record, with perhaps another question asked.
    pub fn is_like(self, other: Self) -> bool {
        match (self, other) {
            (Self::PhotoScale { photo: one, .. }, Self::PhotoScale { photo: other, .. })
            | (Self::StartPit { field: one, .. }, Self::StartPit { field: other, .. })
            | (Self::NewMachine { field: one, .. }, Self::NewMachine { field: other, .. })
            | (Self::NewPass { field: one, .. }, Self::NewPass { field: other, .. })
            | (Self::InHole { pass: one, .. }, Self::InHole { pass: other, .. })
            | (
                Self::KnifeWalk { pit: one, .. } | Self::HoleEnds { pit: one, .. },
                Self::KnifeWalk { pit: other, .. } | Self::HoleEnds { pit: other, .. },
            ) => one == other,
            (
                Self::Measure { machine: one, measure: of_one, .. },
                Self::Measure { machine: other, measure: of_other, .. },
            ) => (one, of_one) == (other, of_other),
            (
                Self::PassDetail { pass: one, detail: of_one, .. },
                Self::PassDetail { pass: other, detail: of_other, .. },
            ) => (one, of_one) == (other, of_other),
            (
                Self::Versions { field: one, pit: of_one, .. },
                Self::Versions { field: other, pit: of_other, .. },
            ) => (one, of_one) == (other, of_other),
            (Self::Regretted { .. }, Self::Regretted { .. }) => true,
            (one, other) => one == other,
        }
    }

    /// Returns whether it asks something, or shows a file that is taken in, and has nothing to show once that is done.
    const fn is_passed_through(self) -> bool {
        matches!(
            self,
            Self::NextLook { .. }
                | Self::Roll { .. }
                | Self::PhotoScale { .. }
                | Self::Deleting { .. }
                | Self::Incoming
                | Self::Welcome
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::RecordId;

    fn ids() -> (RecordId, RecordId) {
        (RecordId::new(1, [1; 10]), RecordId::new(2, [1; 10]))
    }

    /// A field, and a pit's walk and answer in it.
    fn places() -> [Place; 3] {
        let (field, pit) = ids();
        [Place::Field { field }, Place::KnifeWalk { field, pit }, Place::Call { field, pit }]
    }

    /// Goes through places; where one may go back to, step by step.
    fn back_from(way: &[Place]) -> Vec<Place> {
        let mut trail = Trail::default();
        for pair in way.windows(2) {
            trail.went(pair[0], pair[1]);
        }
        let (mut at, mut backs) = (way[way.len() - 1], Vec::new());
        while let Some(to) = trail.back(at) {
            trail.went(at, to);
            backs.push(to);
            at = to;
            assert!(backs.len() < 20, "going back comes to an end");
        }
        backs
    }

    #[test]
    fn back_from_the_answer_so_far_leads_into_the_walk_and_not_out_of_the_pit() {
        let [at, walk, call] = places();
        assert_eq!(back_from(&[Place::Fields, at, walk, call]), [walk, at, Place::Fields]);
    }

    #[test]
    fn a_place_on_the_way_cuts_it() {
        let [at, walk, call] = places();
        assert_eq!(back_from(&[Place::Fields, at, walk, call, walk]), [at, Place::Fields]);
    }

    #[test]
    fn a_place_without_a_way_leads_up_and_not_round_and_round() {
        let [at, _, call] = places();
        assert_eq!(back_from(&[call]), [at, Place::Fields]);
    }

    #[test]
    fn a_pit_that_was_begun_is_not_begun_again_by_going_back() {
        let ((field, pit), [at, walk, _]) = (ids(), places());
        let [new, begun] = [None, Some(pit)].map(|pit| Place::StartPit { field, pit });
        assert_eq!(back_from(&[Place::Fields, at, new, begun, walk]), [begun, at, Place::Fields]);
    }

    #[test]
    fn questions_that_were_answered_are_passed_through() {
        let ((field, pit), [at, walk, call]) = (ids(), places());
        let (look, roll) = (Place::NextLook { field, pit }, Place::Roll { field, pit });
        assert_eq!(back_from(&[Place::Fields, at, walk, look, roll, call]), [walk, at, Place::Fields]);
    }

    #[test]
    fn a_long_way_is_forgotten_from_its_beginning() {
        let mut trail = Trail::default();
        let field = |number: u64| Place::Field { field: RecordId::new(number, [1; 10]) };
        for number in 0..100 {
            trail.went(field(number), field(number + 1));
        }
        assert_eq!((trail.0.len(), trail.back(field(100))), (MOST_PLACES, Some(field(99))));
    }

    #[test]
    fn it_survives_as_text() {
        let [at, walk, _] = places();
        let mut trail = Trail::default();
        trail.went(at, walk);
        let text = serde_json::to_string(&trail).unwrap();
        assert_eq!(serde_json::from_str::<Trail>(&text).unwrap(), trail);
    }
}
