//! Where to dig next, and how far the pits of each zone have settled its call.

use super::{Words, capital};
use crate::advice::sampling::{At, DIG_CLEARANCE_M, Next, Plan, ZoneGround};
use crate::place::Walk;
use crate::record::Zone;
use fluent::fluent_args;

/// From where the way to the next pit is told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WalkFrom {
    /// From where the walker stands.
    Here,
    /// From a pit, by its number as it is told.
    Pit(String),
}

impl Words {
    /// Where to dig next in one sentence: `Dig next on the headland, 140 m to the north-east from pit 4.` Without a way
    /// to walk the zone alone.
    pub fn next_pit_sentence(&self, next: &Next, walk: Option<(WalkFrom, Walk)>) -> String {
        let Next::Pit { zone, at, .. } = *next else {
            return match next {
                Next::Stop => self.enough_pits(),
                Next::Behind { zone } => {
                    let args = fluent_args!["on" => self.zone_on(*zone)];
                    capital(self.say_with("dig_again-behind", &args))
                }
                Next::Reference | Next::Pit { .. } => self.say("next_pit-reference"),
            };
        };
        let on = self.zone_on(zone);
        match (at, walk) {
            (At::Place(_), Some((from, walk))) => {
                let from = match from {
                    WalkFrom::Here => self.say("next_pit-from_here"),
                    WalkFrom::Pit(number) => {
                        self.say_with("next_pit-from_pit", &fluent_args!["number" => number])
                    }
                };
                let args = fluent_args!["on" => on, "walk" => self.walk(walk), "from" => from];
                self.say_with("next_pit-at", &args)
            }
            (At::Place(_), None) => self.dig_another(zone),
            (At::ByEye, _) => self.say_with("next_pit-by_eye", &fluent_args!["on" => on]),
            (At::NowhereClear, _) => {
                let args = fluent_args!["on" => on, "clearance" => self.distance(DIG_CLEARANCE_M)];
                self.say_with("next_pit-nowhere_clear", &args)
            }
        }
    }

    /// Says what belongs to it: the place in degrees, pits still to be expected, distance kept from what lies buried.
    pub fn next_pit_details(&self, next: &Next) -> Vec<String> {
        let Next::Pit { zone, at, still_expected, .. } = *next else { return Vec::new() };
        let mut said = Vec::new();
        if let At::Place([longitude, latitude]) = at {
            let degrees = |value: f64| format!("{value:.6}");
            let args = fluent_args!["longitude" => degrees(longitude), "latitude" => degrees(latitude)];
            said.push(self.say_with("next_pit-place", &args));
            said.extend((zone == Zone::Wheelings).then(|| self.say("next_pit-nearest_wheeling")));
        }
        let pits = self.pits(still_expected.round().max(1.0) as usize);
        said.push(self.say_with("next_pit-still_expected", &fluent_args!["pits" => pits]));
        let clearance = self.distance(DIG_CLEARANCE_M);
        said.push(self.say_with("next_pit-lines", &fluent_args!["clearance" => clearance]));
        said
    }

    /// How much of a zone is harmed by its pits, with the interval, and how far that settles it.
    pub fn zone_share(&self, zone: &ZoneGround, plan: &Plan) -> String {
        let name = self.label(zone.zone);
        let share = zone.count.share(plan.confidence);
        let found = if zone.count.pits == 0 {
            self.say_with("zone_share-none", &fluent_args!["zone" => name])
        } else {
            let args = fluent_args![
                "zone" => name,
                "harmed" => zone.count.harmed,
                "pits" => self.pits(zone.count.pits as usize),
                "lo" => self.percent(share.lo),
                "hi" => self.percent(share.hi),
                "confidence" => self.percent(plan.confidence),
            ];
            self.say_with("zone_share-found", &args)
        };
        let verdict = capital(self.of(zone.verdict(plan)));
        self.say_with("zone_share-line", &fluent_args!["found" => found, "verdict" => verdict])
    }
}
