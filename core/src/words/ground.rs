//! The ground zone by zone, what working it takes, and what is saved.

use super::Words;
use crate::advice::ZoneCall;
use crate::advice::ground::{GroundWork, Spent, ZoneWork};
use crate::advice::machine::Model;
use crate::record::Machine;
use crate::units::Quantity;
use fluent::fluent_args;

impl Words {
    /// A zone in a line: `Headland, 1.83 ha: Loosen 32–34 cm, 1.1 h of work, 28 (14–42) l of fuel`.
    pub fn ground_line(&self, zone: &ZoneWork, call: Option<&ZoneCall>) -> String {
        let called = call.map_or_else(|| self.say("ground-not_dug"), |call| self.call_line(call));
        let spent = zone.spent.map(|spent| self.spent_parts(&spent)).unwrap_or_default();
        let call = self.comma(&[vec![called], spent].concat());
        match zone.area_ha {
            Some(area_ha) => self.say_with(
                "ground-zone",
                &fluent_args![
                    "zone" => self.label(zone.zone), "area" => self.amount(Quantity::Ground, area_ha), "call" => call,
                ],
            ),
            None => self.say_with(
                "ground-zone_unmeasured",
                &fluent_args!["zone" => self.label(zone.zone), "call" => call],
            ),
        }
    }

    /// Says what the ground says as a whole, a sentence each: harmed ground, all of it, what is saved, what is not known yet,
    /// and what is not told and why.
    pub fn ground(&self, ground: &GroundWork, machine: Option<&Machine>) -> Vec<String> {
        if ground.whole_ha.is_none() {
            return vec![self.say("ground-no_outline")];
        }
        let Some(harmed) = ground.harmed else {
            let worked = ground.zones.iter().any(|zone| zone.tip.is_some());
            let nothing = (!worked).then(|| self.say("ground-nothing"));
            return nothing.into_iter().chain(self.unmeasured(ground)).chain(self.unknown(ground)).collect();
        };
        let mut said: Vec<String> = machine
            .map(|machine| self.say_with("ground-as_set", &fluent_args!["machine" => machine.name.as_str()]))
            .into_iter()
            .collect();
        let rows = [
            ("ground-harmed", Some(harmed)),
            ("ground-everything", ground.everything),
            ("ground-saved", ground.saved),
        ];
        said.extend(rows.into_iter().filter_map(|(id, spent)| Some(self.spent(id, &spent?))));
        said.extend(self.unmeasured(ground));
        said.extend(self.unknown(ground));
        said.extend(self.not_told(&harmed));
        said
    }

    /// Zones to be worked that are in none of the sums.
    fn unmeasured(&self, ground: &GroundWork) -> Option<String> {
        let zones: Vec<String> = ground.unmeasured.iter().map(|&zone| self.form(zone, "the")).collect();
        (!zones.is_empty())
            .then(|| self.say_with("ground-unmeasured", &fluent_args!["zones" => self.and(&zones)]))
    }

    fn unknown(&self, ground: &GroundWork) -> Option<String> {
        (ground.unknown_ha > 0.0).then(|| {
            let area = self.amount(Quantity::Ground, ground.unknown_ha);
            self.say_with("ground-unknown", &fluent_args!["area" => area])
        })
    }

    fn spent(&self, id: &str, spent: &Spent) -> String {
        let area = vec![self.amount(Quantity::Ground, spent.area_ha)];
        let parts = self.comma(&[area, self.spent_parts(spent)].concat());
        self.say_with(id, &fluent_args!["spent" => parts])
    }

    /// Hours, fuel and money, those that are known.
    fn spent_parts(&self, spent: &Spent) -> Vec<String> {
        let hours = spent.hours.value().map(|&hours| {
            let hours = self.amount(Quantity::Time, hours);
            self.say_with("ground-hours", &fluent_args!["hours" => hours])
        });
        let fuel = spent.fuel_l.value().map(|&litres| {
            let fuel = self.estimate(Quantity::Volume, litres);
            self.say_with("ground-fuel", &fluent_args!["fuel" => fuel])
        });
        let cost = spent.cost.value().map(|&cost| {
            let cost = self.estimate(Quantity::Money, cost);
            self.say_with("ground-cost", &fluent_args!["cost" => cost])
        });
        hours.into_iter().chain(fuel).chain(cost).collect()
    }

    /// Says what is missing, and why.
    fn not_told(&self, spent: &Spent) -> Vec<String> {
        let why = |id: &str, why| self.say_with(id, &fluent_args!["why" => self.of(why)]);
        if let Model::DoesNotApply(reason) = spent.hours {
            return vec![why("ground-not_told", reason)];
        }
        let mut said = Vec::new();
        if let Model::DoesNotApply(reason) = spent.fuel_l {
            said.push(why("ground-no_fuel", reason));
        }
        if let Model::DoesNotApply(reason) = spent.cost {
            said.push(why("ground-no_cost", reason));
        }
        said
    }
}
