//! Where a pit lies, and what is to be said about it.

use super::Words;
use crate::advice::readers::SeveralReaders;
use crate::place::PlaceRemark;
use crate::reading::Clue;
use crate::record::{Call, Pit, PlaceKind};
use crate::units::Quantity;
use fluent::fluent_args;

impl Words {
    /// Says what is to be said about where a pit lies: `Pit 4 lies 12 m outside the outline.` The place is the one noted.
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

    /// Holes that several people read and would call differently, in two sentences each; empty where it does not
    /// matter. `pits` are those of the same notes.
    pub fn several_readers(&self, several: &SeveralReaders, pits: &[Pit]) -> Vec<String> {
        let holes = several.holes.iter().zip(&several.calls);
        let differ = |calls: &[Option<Call>]| {
            let mut judged = calls.iter().flatten();
            judged.next().is_some_and(|first| judged.any(|call| call != first))
        };
        let differing = holes.filter(|(_, calls)| differ(calls));
        let mut said: Vec<String> = differing
            .map(|(hole, calls)| {
                let numbers: Vec<String> = hole.iter().map(|index| (index + 1).to_string()).collect();
                let people: Vec<String> = hole.iter().filter_map(|&index| pits.get(index)?.by.clone()).collect();
                let call = |call: &Option<Call>| {
                    call.map_or_else(|| self.say("readers-not_judged"), |call| self.label(call))
                };
                let calls: Vec<String> = calls.iter().map(call).collect();
                let args = fluent_args![
                    "pits" => self.and(&numbers), "people" => self.and(&people), "calls" => self.comma(&calls),
                ];
                self.say_with("readers-line", &args)
            })
            .collect();
        let most = several.agreement.differ_most.filter(|_| !said.is_empty());
        said.extend(most.map(|sign| {
            let found = several.agreement.signs.iter().find(|its| its.sign == sign);
            let kappa = found.and_then(|its| its.linear.or(its.equal)).map_or_else(String::new, |kappa| {
                self.say_with("readers-kappa", &fluent_args!["kappa" => self.decimal(kappa, 2)])
            });
            let args = fluent_args!["sign" => self.of(Clue::ALL[sign as usize]), "kappa" => kappa];
            self.say_with("readers-differ", &args)
        }));
        said
    }
}
