//! Calls: the sentence, how sure, the depth, what would change it.

use super::clues::asks_layer;
use super::{Language, Words, capital};
use crate::advice::{
    Change, ChangedAnswer, FieldAdvice, Obstacle, Readiness, RootingLoss, Sureness, TipDepth, WaterHeld,
    What, WorthAsking, ZoneCall,
};
use crate::record::{Call, Zone};
use crate::soil::rooting;
use crate::units::LengthUnit;
use fluent::{FluentArgs, fluent_args};

/// Below this the number of pits says too little of the ground to lean on the depth. Our judgement.
const TOO_UNSURE: f64 = 0.5;

/// Returns whether what lies buried is what a call stands on.
const fn is_buried(lead: Option<&What>) -> bool {
    matches!(lead, Some(What::TooNear { .. } | What::DepthUnknown { .. } | What::NeedsLeave { .. }))
}

impl Words {
    /// The call in one sentence with its zone and depth: `Loosen the headland at 33–35 cm.`
    pub fn call_sentence(&self, call: &ZoneCall) -> String {
        let mut args = self.zone_args(&[call.zone]);
        if let Some(tip) = &call.tip {
            args.set("tip", self.tip_range(tip));
        }
        let lead = call.lead();
        let id = match (call.call, call.readiness, call.tip) {
            (Call::AskSpecialist, ..) if matches!(lead, Some(What::NeedsLeave { .. })) => "ask-leave",
            (Call::AskSpecialist, ..) if is_buried(lead) => "ask-buried",
            (Call::AskSpecialist, ..)
                if matches!(lead, Some(What::NoMachine { .. } | What::BeyondReach { .. })) =>
            {
                "ask-machine"
            }
            (Call::DigAgain, ..) if matches!(lead, Some(What::Behind { .. })) => "dig_again-behind",
            (Call::DigAgain, ..) if matches!(lead, Some(What::LoosenedSince { .. })) => "dig_again-loosened",
            (Call::DigAgain, ..) if call.lacks_reference() => "dig_again-no_reference",
            (Call::Wait, Readiness::StripFirst, _) => "wait-strip_first",
            (Call::Loosen, Readiness::StripFirst, _) => "loosen-strip_first",
            (Call::Loosen, Readiness::RollFirst { depth_mm }, _) => {
                args.set("depth", self.depth(depth_mm));
                "loosen-roll_first"
            }
            (Call::Loosen, Readiness::Fit, Some(_)) => "loosen-at",
            (Call::Loosen, Readiness::RollNotApplicable, Some(_)) => "loosen-roll_not_applicable",
            (Call::Wait, _, Some(_)) => "wait-at",
            (
                Call::LeaveIt
                | Call::RootsFirst
                | Call::Loosen
                | Call::Wait
                | Call::DrainFirst
                | Call::DigAgain
                | Call::AskSpecialist,
                ..,
            ) => &format!("call-{}.sentence", call.call.code()),
        };
        let said = capital(self.say_with(id, &args));
        let again = call.reasons.iter().any(|why| matches!(why.what, What::DidNotLast { .. }));
        if again { format!("{} {said}", self.say("sentence-did_not_last")) } else { said }
    }

    /// The field in one sentence: `Work only the headland; leave the open ground.` Where the zones' calls do not
    /// differ, the sentence of the call for the whole; where open ground was not dug, it says so.
    pub fn whole_sentence(&self, field: &FieldAdvice) -> String {
        let mut calls: Vec<Call> = Vec::new();
        for call in field.zones.iter().map(|zone| zone.call) {
            if !calls.contains(&call) {
                calls.push(call);
            }
        }
        let open_ground = field.zones.iter().any(|zone| matches!(zone.zone, Zone::Open | Zone::Whole));
        let rest_unknown = !field.zones.is_empty() && !open_ground && field.whole.call == Call::DigAgain;
        if calls.len() < 2 && (!rest_unknown || calls.contains(&Call::DigAgain)) {
            return self.call_sentence(&field.whole);
        }
        // What lies buried under the work leads, then comes work; what is left alone is said after it.
        let lead = |zone: &ZoneCall| zone.call == Call::AskSpecialist && is_buried(zone.lead());
        let buried = field.zones.iter().any(lead);
        crate::order::sort_by_key(&mut calls, |&call| match call {
            Call::AskSpecialist if buried => 0,
            Call::Loosen => 1,
            _ => 2,
        });
        let clause = |call: Call| {
            let same = || field.zones.iter().filter(|zone| zone.call == call);
            let zones: Vec<Zone> = same().map(|zone| zone.zone).collect();
            let strip = same().all(|zone| zone.readiness == Readiness::StripFirst);
            let id = if call == Call::AskSpecialist && buried {
                "clause-ask_buried"
            } else if strip && call == Call::Wait {
                "clause-hold_back"
            } else if same().all(ZoneCall::lacks_reference) {
                "clause-no_reference"
            } else if call != Call::Loosen || same().all(|zone| zone.readiness == Readiness::Fit) {
                &format!("call-{}.clause", call.code())
            } else if strip {
                "clause-strip_first"
            } else {
                "clause-loosen_unfit"
            };
            self.say_with(id, &self.zone_args(&zones))
        };
        let mut clauses: Vec<String> = calls.into_iter().map(clause).collect();
        clauses.extend(rest_unknown.then(|| self.say("clause-rest_unknown")));
        let clauses = self.join("join-clauses", &clauses);
        capital(self.say_with("sentence-whole", &fluent_args!["clauses" => clauses]))
    }

    /// The call in a line of a list: `Loosen 33–35 cm`, `Loosen 33–35 cm, roll first`, `Leave it`, `Reference pit missing`.
    pub fn call_line(&self, call: &ZoneCall) -> String {
        if call.lacks_reference() {
            return capital(self.say("call_line-no_reference"));
        }
        let name = self.label(call.call);
        let (Call::Loosen, Some(tip)) = (call.call, &call.tip) else { return name };
        let id = match call.readiness {
            Readiness::Fit => "call_line-at",
            Readiness::RollFirst { .. } => "call_line-roll_first",
            Readiness::RollNotApplicable => "call_line-roll_not_applicable",
            Readiness::StripFirst => "call_line-strip_first",
        };
        self.say_with(id, &fluent_args!["call" => name, "tip" => self.tip_range(tip)])
    }

    /// How sure, with the share in numbers: `likely, 86 of 100`; the word alone where nothing can be said.
    pub fn sureness(&self, sure: Sureness, share: f64) -> String {
        if sure == Sureness::CannotSay {
            return self.of(sure);
        }
        let args = fluent_args!["sure" => self.of(sure), "share" => self.share(share)];
        self.say_with("sureness-with_share", &args)
    }

    /// How sure a call is of what the pits show, and how sure of the ground between them: two things.
    pub fn how_sure(&self, call: &ZoneCall) -> String {
        let face = self.sureness(call.sure, call.share);
        let ground = &call.ground;
        if call.sure == Sureness::CannotSay || ground.pits == 0 {
            return face;
        }
        let args = fluent_args![
            "face" => face,
            "ground" => self.sureness(ground.sure, ground.share),
            "agree" => ground.agree,
            "pits" => self.pits(ground.pits),
        ];
        self.say_with(if ground.pits == 1 { "how_sure-one_pit" } else { "how_sure-pits" }, &args)
    }

    /// Says what a tip depth rests on: `clears 4 of 5 places; 5 pits, sure to 67 %`. Where the pits are too few to lean
    /// on, it says so.
    pub fn tip_statement(&self, tip: &TipDepth) -> String {
        let args = fluent_args![
            "share" => self.small_share(tip.cleared_share),
            "pits" => self.pits(tip.pits),
            "confidence" => self.percent(tip.confidence),
        ];
        let statement =
            self.say_with(if tip.confidence < TOO_UNSURE { "tip-unsure" } else { "tip-clears" }, &args);
        if tip.pits >= tip.enough_pits() {
            return statement;
        }
        let args = fluent_args!["statement" => statement, "enough" => self.pits(tip.enough_pits())];
        self.say_with("tip-more", &args)
    }

    /// Tip depth in full: how deep, why so deep, and what that rests on.
    pub fn tip_sentences(&self, tip: &TipDepth) -> String {
        let args = fluent_args![
            "tip" => self.tip_range(tip),
            "bottom" => self.depth(tip.bottom_mm),
            "statement" => capital(self.tip_statement(tip)),
        ];
        self.say_with("tip-sentences", &args)
    }

    /// `It would be Leave it if the roots went right through at 20–28 cm.`
    pub fn change(&self, change: &Change) -> String {
        let answers: Vec<String> = change.answers.iter().map(|answer| self.changed_answer(answer)).collect();
        let args = fluent_args!["call" => self.label(change.call), "if" => self.and(&answers)];
        self.say_with("change-sentence", &args)
    }

    /// Says that a call hangs on one answer, and on which; `None` where it does not.
    pub fn hangs_on(&self, changes: &[Change]) -> Option<String> {
        let change = changes.iter().find(|change| change.hangs)?;
        Some(self.say_with("change-hangs", &fluent_args!["change" => self.change(change)]))
    }

    fn changed_answer(&self, answer: &ChangedAnswer) -> String {
        match *answer {
            ChangedAnswer::Clue { top_mm, bottom_mm, clue, answer } => {
                let args = fluent_args![
                    "if" => self.answer_form(clue, answer, "if"),
                    "depths" => self.depth_range(top_mm, bottom_mm),
                ];
                self.say_with(if asks_layer(clue) { "change-layer" } else { "change-field" }, &args)
            }
            ChangedAnswer::Roll { surface, roll } => {
                let args = fluent_args!["if" => self.form(roll, "if")];
                self.say_with(if surface { "change-roll_surface" } else { "change-roll_depth" }, &args)
            }
            ChangedAnswer::Deeper { obstacle, mm } => self.lies("change-deeper", obstacle, mm),
            ChangedAnswer::Shallower { obstacle, mm } => self.lies("change-shallower", obstacle, mm),
            ChangedAnswer::Leave => self.say("change-leave"),
            ChangedAnswer::DeepClayHeldTo => self.say("change-deep_clay"),
            ChangedAnswer::AnotherPit { like } => {
                self.say_with("change-another_pit", &fluent_args!["pit" => like])
            }
        }
    }

    fn lies(&self, id: &str, obstacle: Obstacle, mm: u32) -> String {
        let args = fluent_args!["obstacle" => self.form(obstacle, "the"), "depth" => self.depth(mm)];
        self.say_with(id, &args)
    }

    /// A question about the field as a whole, with what its answer can change and where.
    pub fn worth_asking(&self, worth: &WorthAsking) -> String {
        let mut args = self.zone_args(&worth.zones);
        args.set("question", self.of(worth.input));
        args.set("what", self.of(worth.bears_on));
        self.say_with("ask-field", &args)
    }

    /// The same in a line under what is asked: `Not noted yet; it can change the tip depth on the open ground.`
    pub fn worth_noting(&self, worth: &WorthAsking) -> String {
        let mut args = self.zone_args(&worth.zones);
        args.set("what", self.of(worth.bears_on));
        self.say_with("ask-field_line", &args)
    }

    /// `The layer from 45 cm cuts off 64 % of the 125 cm winter wheat could root.`
    pub fn rooting_loss(&self, loss: &RootingLoss) -> String {
        let mut args = fluent_args![
            "top" => self.depth(loss.top_mm),
            "percent" => self.percent(loss.share),
            "potential" => self.depth(loss.potential_mm),
            "crop" => self.crop(&loss.crop),
        ];
        let Some(water) = loss.water else { return self.say_with("rooting-loss", &args) };
        args.set("water", self.water(water));
        self.say_with("rooting-loss_water", &args)
    }

    /// Water that soil holds: `130–180 mm`, to ten millimetres; in half inches for those who read inches.
    fn water(&self, held: WaterHeld) -> String {
        if self.unit() == LengthUnit::Inches {
            return self.depth_range(held.least_mm, held.most_mm);
        }
        let [lo, hi] = [held.least_mm, held.most_mm].map(|mm| (mm + 5) / 10 * 10);
        let range = if lo == hi {
            lo.to_string()
        } else {
            self.say_with("range-written", &fluent_args!["lo" => lo, "hi" => hi])
        };
        self.say_with("water-mm", &fluent_args!["range" => range])
    }

    /// A crop that somebody named, in the language of the words where it is a known one; else as it was written.
    pub fn crop(&self, written: &str) -> String {
        let german = self.language == Language::German;
        let known = rooting::of(written).filter(|crop| !crop.is_named(written, german));
        let named = known.and_then(|crop| if german { crop.german } else { crop.names }.first());
        named.map_or_else(|| written.to_owned(), |name| (*name).to_owned())
    }

    /// A zone with where in the field it is: `on the headland`.
    pub fn zone_on(&self, zone: Zone) -> String {
        self.form(zone, "on")
    }

    /// Zones in the forms sentences take them: `$the` as what is worked, `$on` as where.
    pub(super) fn zone_args(&self, zones: &[Zone]) -> FluentArgs<'static> {
        let joined = |form| {
            let zones: Vec<String> = zones.iter().map(|&zone| self.form(zone, form)).collect();
            self.and(&zones)
        };
        fluent_args!["the" => joined("the"), "on" => joined("on")]
    }
}
