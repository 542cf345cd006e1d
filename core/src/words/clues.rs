//! Signs and other clues: their answers, and the questions that ask for them.

use super::{Words, capital};
use crate::reading::{Clue, Kind, NextLook};
use crate::record::{Cause, Condition, RollOutcome, Zone};
use fluent::fluent_args;

impl Words {
    /// A condition with its cause: `tight, pressed`. An open layer has no cause to tell.
    pub fn kind(&self, kind: Kind) -> String {
        let condition = self.of(kind.condition);
        match (kind.condition, kind.cause) {
            (Condition::Open, _) => condition,
            (Condition::Firm | Condition::Tight | Condition::Shut, cause) => {
                self.comma(&[condition, self.cause_beside(cause)])
            }
        }
    }

    /// A cause as it stands beside a condition, where a bare `unclear` would leave open what is unclear.
    pub(super) fn cause_beside(&self, cause: Cause) -> String {
        match cause {
            Cause::Unclear => self.form(cause, "beside"),
            Cause::Pressed | Cause::Settled | Cause::Cemented | Cause::Natural => self.of(cause),
        }
    }

    /// The same with a capital: `Tight, pressed`.
    pub fn kind_label(&self, kind: Kind) -> String {
        capital(self.kind(kind))
    }

    /// An answer of a clue (an index into [`Clue::answers`]) as it stands on a button under the clue's question:
    /// `Turned sideways`. Empty for an index past the list.
    pub fn answer(&self, clue: Clue, answer: usize) -> String {
        answer_id(clue, answer).map_or_else(String::new, |id| capital(self.say(&id)))
    }

    /// The same as it stands among reasons, without its question: `roots turned sideways`.
    pub fn answer_clause(&self, clue: Clue, answer: usize) -> String {
        self.answer_form(clue, answer, "clause")
    }

    pub(super) fn answer_form(&self, clue: Clue, answer: usize, form: &str) -> String {
        answer_id(clue, answer).map_or_else(String::new, |id| self.say(&format!("{id}.{form}")))
    }

    /// The question of a next look: `25–30 cm: what do the roots do?`
    pub fn question(&self, look: &NextLook) -> String {
        let question = self.clue_question(look.clue);
        if !asks_layer(look.clue) {
            return capital(question);
        }
        let depths = self.depth_range(look.top_mm, look.bottom_mm);
        self.say_with("question-at", &fluent_args!["depths" => depths, "question" => question])
    }

    /// The question that asks for a clue: `what do the roots do?`
    pub fn clue_question(&self, clue: Clue) -> String {
        self.form(clue, "question")
    }

    /// Says what a next look is for: `decides between pressed and settled`.
    pub fn why_question(&self, look: &NextLook) -> String {
        let [one, other] = look.between;
        let [one, other] = if one.condition == other.condition {
            [one, other].map(|kind| self.cause_beside(kind.cause))
        } else if one.cause == other.cause || Condition::Open == one.condition.min(other.condition) {
            [one, other].map(|kind| self.of(kind.condition))
        } else {
            [one, other].map(|kind| self.say_with("question-kind", &fluent_args!["kind" => self.kind(kind)]))
        };
        self.say_with("question-why", &fluent_args!["one" => one, "other" => other])
    }

    /// Both in two sentences: `25–30 cm: what do the roots do? This decides between pressed and settled.`
    pub fn look(&self, look: &NextLook) -> String {
        let args = fluent_args!["question" => self.question(look), "why" => self.why_question(look)];
        self.say_with("question-with_why", &args)
    }

    /// Said where no question is worth a tap any more.
    pub fn no_more_looks(&self) -> String {
        self.say("question-none")
    }

    /// Said where another pit would help most.
    pub fn dig_another(&self, zone: Zone) -> String {
        self.say_with("pits-another", &self.zone_args(&[zone]))
    }

    /// Said where more pits would not change the call.
    pub fn enough_pits(&self) -> String {
        self.say("pits-enough")
    }

    /// Says what a roll test means for work at that depth: `right for loosening`.
    pub fn roll_meaning(&self, surface: bool, roll: RollOutcome) -> String {
        self.form(roll, if surface { "at_surface" } else { "at_depth" })
    }

    /// A roll test in one sentence: `Soil from 33 cm cracks into short lengths: right for loosening.`
    pub fn rolled(&self, depth_mm: u32, surface: bool, roll: RollOutcome) -> String {
        let args = fluent_args![
            "depth" => self.depth(depth_mm),
            "does" => self.of(roll),
            "meaning" => self.roll_meaning(surface, roll),
        ];
        self.say_with(if surface { "rolled-surface" } else { "rolled-depth" }, &args)
    }
}

fn answer_id(clue: Clue, answer: usize) -> Option<String> {
    clue.answers().get(answer).map(|code| format!("{}-{code}", clue.code()))
}

/// Returns whether a clue is asked of one layer, and not of the place or the field.
pub(super) const fn asks_layer(clue: Clue) -> bool {
    match clue {
        Clue::ComesAway
        | Clue::Resistance
        | Clue::Pores
        | Clue::Channels
        | Clue::Roots
        | Clue::Patches
        | Clue::Smell
        | Clue::ClodInWater
        | Clue::Texture
        | Clue::Lies
        | Clue::Below
        | Clue::Reference => true,
        Clue::OrganicMatter | Clue::Place | Clue::LastLoosened | Clue::LastTraffic => false,
    }
}
