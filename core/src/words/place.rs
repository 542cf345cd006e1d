//! Where a pit lies, and what is to be said about it.

use super::Words;
use crate::place::PlaceRemark;
use crate::reading::Clue;
use crate::record::PlaceKind;
use crate::units::Quantity;
use fluent::fluent_args;

impl Words {
    /// What is to be said about where a pit lies: `Pit 4 lies 12 m outside the outline.` The place is the one noted.
    pub fn place_remark(&self, number: usize, place: PlaceKind, remark: &PlaceRemark) -> String {
        let mut args = fluent_args!["number" => number];
        let id = match *remark {
            PlaceRemark::Outside { distance_m, accuracy_m } => {
                args.set("distance", self.remark_distance(distance_m));
                if distance_m > accuracy_m {
                    "remark-outside"
                } else {
                    args.set("accuracy", self.metres(accuracy_m.ceil().max(1.0)));
                    "remark-outside_accuracy"
                }
            }
            PlaceRemark::NearEdge { distance_m, accuracy_m, zone } => {
                args.set("on", self.zone_on(zone));
                args.set("distance", self.remark_distance(distance_m));
                args.set("accuracy", self.metres(accuracy_m.ceil().max(1.0)));
                "remark-near_edge"
            }
            PlaceRemark::DiffersFromPlace { zone } => {
                args.set("on", self.zone_on(zone));
                args.set("place", self.place_clause(place));
                "remark-differs"
            }
            PlaceRemark::MovedTo { zone } => {
                args.set("on", self.zone_on(zone));
                args.set("place", self.place_clause(place));
                "remark-moved"
            }
        };
        self.say_with(id, &args)
    }

    fn place_clause(&self, place: PlaceKind) -> String {
        let answer = PlaceKind::ALL.iter().position(|its| *its == place);
        answer.map_or_else(String::new, |answer| self.answer_clause(Clue::Place, answer))
    }

    /// Whole metres or feet: a position tells no more.
    fn remark_distance(&self, metres: f64) -> String {
        if metres < 1.0 {
            return self.say_with("remark-near", &fluent_args!["distance" => self.metres(1.0)]);
        }
        self.metres(metres.round())
    }

    fn metres(&self, metres: f64) -> String {
        self.whole_amount(Quantity::Width, metres)
    }
}
