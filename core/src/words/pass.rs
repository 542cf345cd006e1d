//! A pass of the machine: its title, what it did, what comes next, whether it has held; the pit before beside the hole
//! behind; and a hole behind the machine as it is spoken.

use super::after_dig::{checks_near_tines, works_at_tines};
use super::{Words, capital};
use crate::advice::FollowUp;
use crate::advice::after_dig::{
    Check, DigAdvice, Held, Lasts, NextStep, Pair, PassAdvice, PassClue, Remedy, TrafficWarning, Verdict,
};
use crate::record::{AfterDig, Clods, Extent, FeetSeen, Lift, Pass, PlatesLeft, Profile, Smear};
use crate::units::Quantity;
use chrono::{Datelike, NaiveDate};
use fluent::fluent_args;

/// Depth down to which driven soil was found stronger than before it was loosened (soilandwater.org.uk).
const STRONGER_DOWN_TO_MM: u32 = 100;

impl Words {
    /// A pass in a line, with whatever is known of it:
    /// `Trial strip on the headland, 2026-09-01, with NAME at 34 cm, 6 km/h`.
    pub fn pass_title(&self, pass: &Pass, machine: Option<&str>) -> String {
        let (bare, with_zone) = match pass.extent {
            Some(Extent::TrialStrip) => ("pass-strip", "pass-strip_on"),
            Some(Extent::Zone) => ("pass-zone", "pass-zone_on"),
            None => ("pass-run", "pass-run_on"),
        };
        let head = pass.zone.map_or_else(
            || self.say(bare),
            |zone| self.say_with(with_zone, &fluent_args!["on" => self.zone_on(zone)]),
        );
        let tip = pass.tip_mm.map(|tip_mm| self.depth(tip_mm));
        let with = match (machine, tip) {
            (Some(machine), Some(tip)) => {
                Some(self.say_with("pass-with_at", &fluent_args!["machine" => machine, "tip" => tip]))
            }
            (Some(machine), None) => Some(self.say_with("pass-with", &fluent_args!["machine" => machine])),
            (None, Some(tip)) => Some(self.say_with("pass-at", &fluent_args!["tip" => tip])),
            (None, None) => None,
        };
        let done = pass.done.map(|done| self.date(done));
        let speed = pass.speed_kmh.map(|kmh| self.brief_amount(Quantity::Speed, kmh));
        self.comma(&[Some(head), done, with, speed].into_iter().flatten().collect::<Vec<_>>())
    }

    /// A day as it is written: `2026-09-01`, `01.09.2026`.
    pub fn date(&self, day: NaiveDate) -> String {
        let args = fluent_args![
            "year" => day.year().to_string(), "month" => day.month(), "day" => day.day(),
        ];
        self.say_with("pass-day", &args)
    }

    /// Says what a pass did, by the worst of its holes.
    pub fn pass_verdict(&self, pass: &PassAdvice) -> String {
        let Some(verdict) = pass.verdict else { return self.say("pass-not_dug") };
        let said = self.form(verdict, "pass");
        let holes =
            pass.digs.iter().filter(|dig| !dig.season_on && dig.verdict != Verdict::CannotSay).count();
        if holes < 2 || matches!(verdict, Verdict::Done | Verdict::CannotSay) {
            return said;
        }
        format!("{said} {}", self.say_with("pass-worst", &fluent_args!["holes" => holes]))
    }

    /// Says what comes next, with the check to make or the change, and the caution where somebody goes near the tines.
    pub fn next_sentence(&self, pass: &PassAdvice) -> String {
        self.next_of((pass.next, pass.check, pass.remedy))
    }

    /// The same of a step alone.
    pub(super) fn next_of(&self, next: (NextStep, Option<Check>, Option<Remedy>)) -> String {
        match next {
            (NextStep::CheckFirst, Some(check), _) => {
                let said = self.say_with("next-check", &fluent_args!["check" => self.of(check)]);
                self.with_caution(said, checks_near_tines(check))
            }
            (NextStep::ChangeAndTry | NextStep::Wait, _, Some(remedy)) => {
                let said = self.say_with("next-remedy", &fluent_args!["remedy" => self.of(remedy)]);
                self.with_caution(said, works_at_tines(remedy))
            }
            (next, ..) => self.say_with("next-line", &fluent_args!["step" => self.of(next)]),
        }
    }

    /// Said before all else where soil from the depth of the tips rolled to a thread.
    pub fn thread_first(&self) -> String {
        self.say("pass-thread")
    }

    /// Said where all that is known comes from one hole.
    pub fn one_hole(&self) -> String {
        self.say("pass-one_hole")
    }

    /// How long a loosening may last, by the wheels that run there.
    pub fn lasts_sentence(&self, lasts: &Lasts) -> String {
        let args = fluent_args!["least" => lasts.least_months];
        match lasts.controlled_traffic {
            None => self.say_with("pass-lasts_unknown", &args),
            Some(false) => self.say_with("pass-lasts_without", &args),
            Some(true) => self.say("pass-lasts_controlled"),
        }
    }

    /// Said where a whole zone was worked without a trial strip that was dug behind.
    pub fn no_strip_before(&self) -> String {
        self.say("pass-no_strip")
    }

    /// Heavy wheels too soon, a sentence each: when, what is published of it, and what to do.
    pub fn traffic_warning(&self, traffic: &TrafficWarning) -> Vec<String> {
        let driven = if traffic.days < 1 {
            self.say("pass-driven_same_day")
        } else {
            let args = fluent_args!["days" => traffic.days, "day" => self.date(traffic.driven_on)];
            self.say_with("pass-driven", &args)
        };
        let why = fluent_args!["depth" => self.depth(STRONGER_DOWN_TO_MM)];
        vec![driven, self.say_with("pass-driven_why", &why), self.of(FollowUp::NoTraffic)]
    }

    /// Says whether it has held, with the shares then and now, and what the roots do:
    /// `It has held: 82 % was loose behind the machine, 78 % is a season on. Roots go right through.`
    pub fn held_sentence(&self, held: &Held) -> String {
        let id = match (held.then, held.now) {
            (Some(_), Some(_)) => "held-shares",
            (Some(_), None) => "held-then",
            (None, Some(_)) => "held-now",
            (None, None) => "held-sentence",
        };
        let mut args = fluent_args!["lasting" => self.of(held.lasting)];
        for (name, share) in [("then", held.then), ("now", held.now)] {
            if let Some(share) = share {
                args.set(name, self.percent(share));
            }
        }
        let said = capital(self.say_with(id, &args));
        match held.roots {
            Some(roots) => format!("{said} {}", self.seen(&[self.form(roots, "clause")])),
            None => said,
        }
    }

    /// The pit before beside the hole behind, in two sentences:
    /// `Before: tight at 22–29 cm. Behind the machine: firm only from 33 cm on average.`
    pub fn pair_sentences(&self, pair: &Pair) -> String {
        let before = fluent_args![
            "condition" => self.of(pair.condition),
            "depths" => self.depth_range(pair.top_mm, pair.bottom_mm),
        ];
        let before = self.say_with("pair-before", &before);
        let behind = pair.firm_now_mm.map_or_else(
            || self.say("pair-not_read"),
            |now_mm| {
                let no_deeper = pair.firm_before_mm.is_some_and(|before_mm| now_mm <= before_mm);
                let id = if no_deeper { "pair-no_deeper" } else { "pair-deeper" };
                self.say_with(id, &fluent_args!["now" => self.depth(now_mm)])
            },
        );
        format!("{before} {behind}")
    }

    /// How the pit before was found, as a sentence.
    pub fn pair_found(&self, pair: &Pair) -> String {
        self.seen(&[self.of(pair.by)])
    }

    /// A hole behind the machine with what was read and seen in it and what that says, to be spoken by a screen
    /// reader.
    pub fn describe_after_dig(&self, hole: &AfterDig, dig: &DigAdvice) -> String {
        let mut said = vec![self.say(if dig.season_on { "behind-hole_season" } else { "behind-hole" })];
        let wanted =
            |target_mm| self.say_with("behind-wanted", &fluent_args!["depth" => self.depth(target_mm)]);
        said.extend(dig.target_mm.map(wanted));
        let layer =
            |bottom_mm| self.say_with("behind-layer", &fluent_args!["bottom" => self.depth(bottom_mm)]);
        said.extend(dig.layer_bottom_mm.map(layer));
        for (id, depths_mm) in [("behind-readings", &hole.firm_mm), ("behind-slots", &hole.slots_mm)] {
            if !depths_mm.is_empty() {
                said.push(self.say_with(id, &fluent_args!["depths" => self.depths_in_turn(depths_mm)]));
            }
        }
        let seen = self.seen_behind(hole);
        said.extend((!seen.is_empty()).then(|| self.seen(&seen)));
        said.push(self.after_dig_sentence(dig));
        said.extend(dig.pair.iter().map(|pair| self.pair_sentences(pair)));
        said.extend(dig.causes.first().map(|cause| self.cause_lines(cause).join(" ")));
        said.join(" ")
    }

    /// Says what was seen in the hole and at the machine, a clause each.
    fn seen_behind(&self, hole: &AfterDig) -> Vec<String> {
        let yes_no = |seen: bool| if seen { "yes" } else { "no" };
        let seen = [
            (PassClue::Profile, hole.profile.map(Profile::code)),
            (PassClue::Smear, hole.smear.map(Smear::code)),
            (PassClue::Plates, hole.plates.map(PlatesLeft::code)),
            (PassClue::Clods, hole.clods.map(Clods::code)),
            (PassClue::OldSlots, hole.old_slots.map(yes_no)),
            (PassClue::Lift, hole.lift.map(Lift::code)),
            (PassClue::SubsoilUp, hole.subsoil_up.map(yes_no)),
            (PassClue::Feet, hole.feet.map(FeetSeen::code)),
        ];
        let clause = |(clue, code): (PassClue, Option<&str>)| {
            let answer = clue.answers().iter().position(|its| Some(*its) == code)?;
            Some(self.pass_answer(clue, answer))
        };
        let roots = hole.roots.map(|roots| self.form(roots, "clause"));
        seen.into_iter().filter_map(clause).chain(roots).collect()
    }

    /// Clauses as one sentence with a capital and a stop.
    fn seen(&self, clauses: &[String]) -> String {
        let clauses = self.join("join-clauses", clauses);
        self.say_with("behind-seen", &fluent_args!["seen" => capital(clauses)])
    }

    /// Depths one after the other under one unit: `34; 22.5; 33 cm`. No commas: German writes them within numbers.
    pub(super) fn depths_in_turn(&self, depths_mm: &[u32]) -> String {
        let numbers: Vec<String> = depths_mm.iter().map(|&mm| self.number(mm)).collect();
        self.with_unit(self.join("join-clauses", &numbers))
    }
}
