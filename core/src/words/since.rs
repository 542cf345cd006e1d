//! What was done since the pits were dug, and what lies buried under the work.

use super::Words;
use crate::advice::Obstacle;
use crate::advice::after_dig::{Check, NextStep, Remedy, Verdict};
use chrono::NaiveDate;
use fluent::fluent_args;

impl Words {
    /// A sentence with the day it holds for.
    pub(super) fn on_day(&self, told: &str, on: NaiveDate) -> String {
        self.say_with("why-on_day", &fluent_args!["told" => told, "day" => self.date(on)])
    }

    /// A cable or pipe with its depth and how far it runs from the nearest pit.
    pub(super) fn service(&self, obstacle: Obstacle, depth_mm: Option<u32>, away_m: Option<u32>) -> String {
        let mut args = fluent_args!["one" => self.form(obstacle, "one")];
        if let Some(mm) = depth_mm {
            args.set("depth", self.depth(mm));
        }
        if let Some(metres) = away_m {
            args.set("away", self.distance(f64::from(metres)));
        }
        let id = match (depth_mm, away_m) {
            (Some(_), Some(_)) => "why-service_both",
            (Some(_), None) => "why-service_depth",
            (None, Some(_)) => "why-service_away",
            (None, None) => "why-service",
        };
        super::capital(self.say_with(id, &args))
    }

    /// Who was asked about what lies buried, and what came of it.
    pub(super) fn asked_whom(
        &self,
        whom: &str,
        on: Option<NaiveDate>,
        leave: Option<bool>,
        lapsed: bool,
    ) -> String {
        let mut args = fluent_args!["whom" => self.name(whom)];
        let asked = match on {
            Some(on) => {
                args.set("day", self.date(on));
                self.say_with("why-asked_on", &args)
            }
            None => self.say_with("why-asked", &args),
        };
        let came_of_it = match leave {
            _ if lapsed => "why-asked_lapsed",
            Some(true) => "why-asked_leave",
            Some(false) => "why-asked_no_leave",
            None => return asked,
        };
        format!("{asked} {}", self.say(came_of_it))
    }

    /// Says what the holes behind the machine say of a pass or strip.
    pub(super) fn behind_told(
        &self,
        on: Option<NaiveDate>,
        strip: bool,
        verdict: Option<Verdict>,
        next: (NextStep, Option<Check>, Option<Remedy>),
    ) -> String {
        let said = verdict.map_or_else(|| self.say("why-behind_not_dug"), |verdict| self.of(verdict));
        let mut args = fluent_args!["said" => said];
        let id = match (strip, on) {
            (true, Some(_)) => "why-strip_on",
            (true, None) => "why-strip",
            (false, Some(_)) => "why-worked_on",
            (false, None) => "why-worked",
        };
        if let Some(on) = on {
            args.set("day", self.date(on));
        }
        format!("{} {}", self.say_with(id, &args), self.next_of(next))
    }
}
