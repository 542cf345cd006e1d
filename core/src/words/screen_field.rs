//! What stands on the list of fields, on a field, its edge and its plan; and what to do with a field in one short sentence.

use super::{Language, PitText, Words, capital};
use crate::advice::{FieldAdvice, Readiness, ZoneCall};
use crate::place::Walk;
use crate::record::codes::codes;
use crate::record::{Call, Zone};
use crate::units::Quantity;
use fluent::fluent_args;

codes!(
    /// A text of these screens in which nothing varies.
    FieldText {
        WhatItIs = "what_it_is",
        WhatItIsLine = "what_it_is_line",
        WhichField = "which_field",
        NameAsked = "name_asked",
        NameEnough = "name_enough",
        Find = "find",
        FoundNone = "found_none",
        AllAgain = "all_again",
        DigFirst = "dig_first",
        DigFirstLine = "dig_first_line",
        DigBest = "dig_best",
        DigBehind = "dig_behind",
        SetMachine = "set_machine",
        Pits = "pits",
        Edge = "edge",
        EdgeAsked = "edge_asked",
        EdgeHow = "edge_how",
        EdgeWhole = "edge_whole",
        DropCorner = "drop_corner",
        CornerDropped = "corner_dropped",
        OnPlanHow = "on_plan_how",
        NoPlaceYet = "no_place_yet",
        NoPlaceLine = "no_place_line",
        ShortSteps = "short_steps",
        LongSteps = "long_steps",
        HowSure = "how_sure",
        Light = "light",
        LightDay = "light_day",
        LightDark = "light_dark",
        LightPhone = "light_phone",
        OwnAsked = "own_asked",
        Settled = "settled",
        TeamWordSet = "team_word_set",
        TeamWordNone = "team_word_none",
        Keep = "keep",
        NextPit = "next_pit",
        FinishFirst = "finish_first",
        WhatGoes = "what_goes",
        Delete = "delete",
        InUse = "in_use",
        DeletedHere = "deleted_here",
        BackAsked = "back_asked",
        NothingDeleted = "nothing_deleted",
        LookAtExample = "look_at_example",
        Example = "example",
        ExampleStays = "example_stays",
    }
);

/// Letters of a sentence that still stand in three lines at display size on a narrow phone: our judgement, by eye.
const fn most_letters(language: Language) -> usize {
    match language {
        Language::English => 60,
        Language::German => 75,
    }
}

/// The message of a call in a headline.
const fn headline_id(call: Call) -> &'static str {
    match call {
        Call::LeaveIt => "headline-leave_it",
        Call::RootsFirst => "headline-roots_first",
        Call::Loosen => "headline-loosen",
        Call::Wait => "headline-wait",
        Call::DrainFirst => "headline-drain_first",
        Call::DigAgain => "headline-dig_again",
        Call::AskSpecialist => "headline-ask_specialist",
    }
}

impl Words {
    /// The field in one short sentence: `Loosen the headland; leave the rest.` What does not fit stands below it, zone by zone.
    /// `all_dug`: every zone of the field has a call.
    pub fn headline(&self, field: &FieldAdvice, all_dug: bool) -> String {
        let mut calls: Vec<Call> = Vec::new();
        for zone in &field.zones {
            if !calls.contains(&zone.call) {
                calls.push(zone.call);
            }
        }
        // Work comes first, what is left alone last.
        crate::order::sort_by_key(&mut calls, |&call| match call {
            Call::Loosen => 0,
            Call::LeaveIt => 2,
            _ => 1,
        });
        let of = |call: Call| field.zones.iter().filter(move |zone| zone.call == call);
        let clauses: Vec<String> = calls
            .iter()
            .map(|&call| {
                let zones: Vec<&ZoneCall> = of(call).collect();
                let whole = calls.len() == 1 && all_dug && zones.len() > 1;
                self.headline_clause(call, &zones, whole)
            })
            .collect();
        let Some(first) = clauses.first().cloned() else { return self.of(PitText::NoPit) };
        let rest = match calls.as_slice() {
            [_, last] if of(*last).all(ZoneCall::lacks_reference) => {
                Some(self.say("clause-no_reference.rest"))
            }
            [_, last] => Some(self.say(&format!("{}.rest", headline_id(*last)))),
            _ => None,
        };
        let so_far = |rest: String| self.say_with("headline-so_far", &fluent_args!["rest" => rest]);
        let more = (calls.len() > 1).then(|| self.say("headline-and_more"));
        let tries = [
            rest.clone().filter(|_| all_dug).map(|rest| vec![first.clone(), rest]),
            Some(clauses),
            rest.filter(|_| !all_dug).map(|rest| vec![first.clone(), so_far(rest)]),
            more.map(|more| vec![first.clone(), more]),
            Some(vec![first]),
        ];
        let sentence = |clauses: Vec<String>| {
            let clauses = self.join("join-clauses", &clauses);
            capital(self.say_with("headline-whole", &fluent_args!["clauses" => clauses]))
        };
        let mut sentences: Vec<String> = tries.into_iter().flatten().map(sentence).collect();
        let fits = |sentence: &String| sentence.chars().count() <= most_letters(self.language);
        let at = sentences.iter().position(fits).unwrap_or(sentences.len() - 1);
        sentences.swap_remove(at)
    }

    fn headline_clause(&self, call: Call, zones: &[&ZoneCall], whole: bool) -> String {
        let names: Vec<Zone> = zones.iter().map(|zone| zone.zone).collect();
        let mut args = self.zone_args(if whole { &[Zone::Whole] } else { &names });
        let id = match (call, zones) {
            _ if zones.iter().all(|zone| zone.lacks_reference()) => "clause-no_reference",
            (Call::Loosen, zones) if zones.iter().any(|zone| zone.readiness != Readiness::Fit) => {
                "headline-loosen_unfit"
            }
            (Call::Loosen, [zone]) if zone.tip.is_some() => {
                if let Some(tip) = &zone.tip {
                    args.set("tip", self.tip_range(tip));
                }
                "headline-loosen_at"
            }
            _ => headline_id(call),
        };
        self.say_with(id, &args)
    }

    /// `Long Sedge, 12.4 ha`; the name alone where no area is known.
    pub fn field_title(&self, field: &str, hectares: Option<f64>) -> String {
        let Some(hectares) = hectares else { return self.name(field) };
        let area = self.amount(Quantity::Ground, hectares);
        self.say_with("field-with_area", &fluent_args!["field" => field, "area" => area])
    }

    /// A step that digs: `Dig on the headland`.
    pub fn dig_on(&self, zone: Zone) -> String {
        capital(self.say_with("field-dig_on", &fluent_args!["on" => self.zone_on(zone)]))
    }

    /// Where to dig in it: `140 m to the north-east`, or by eye.
    pub fn dig_where(&self, walk: Option<Walk>) -> String {
        walk.map_or_else(|| self.say("field-by_eye"), |walk| self.walk(walk))
    }

    /// A zone in a line of second rank: `2.3 ha, 3 pits, likely`.
    pub fn zone_line_below(&self, hectares: Option<f64>, call: Option<&ZoneCall>) -> String {
        let area = hectares.map(|hectares| self.amount(Quantity::Ground, hectares));
        let pits = call.map(|call| self.pits(call.ground.pits));
        let sure = call.map(|call| self.of(call.sure));
        self.comma(&[area, pits, sure].into_iter().flatten().collect::<Vec<_>>())
    }

    /// `Where does pit 3 lie?`
    pub fn pit_place_asked(&self, number: usize) -> String {
        self.say_with("field-pit_asked", &fluent_args!["number" => number])
    }

    /// Says what is said of a remark longer than one may be.
    pub fn remark_long(&self, letters: usize) -> String {
        self.say_with("field-remark_long", &fluent_args!["letters" => letters])
    }

    /// Says what stands there now: `Now: 24 m`
    pub fn now(&self, value: &str) -> String {
        capital(self.say_with("field-now", &fluent_args!["value" => value]))
    }

    /// `140 m away`
    pub fn away(&self, metres: f64) -> String {
        self.say_with("field-away", &fluent_args!["distance" => self.distance(metres)])
    }
}
