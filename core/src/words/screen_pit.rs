//! What stands on the screens of fields and pits.

use super::{Words, capital};
use crate::advice::ZoneCall;
use crate::place::AveragedFix;
use crate::reading::{Clue, Kind, LayerReading, NextLook};
use crate::record::codes::codes;
use crate::record::{PlaceKind, Sign, Signs, Zone};
use chrono::{Datelike, NaiveDate};
use fluent::fluent_args;

codes!(
    /// What stands on a button, or a sentence in which nothing varies.
    PitText {
        AllFields = "all_fields",
        AllowPosition = "allow_position",
        AnotherCorner = "another_corner",
        Behind = "behind",
        BottomOfHole = "bottom_of_hole",
        ByHand = "by_hand",
        CallSoFar = "call_so_far",
        CornerCrosses = "corner_crosses",
        CornerSame = "corner_same",
        DigNext = "dig_next",
        DigPit = "dig_pit",
        DugQuestion = "dug_question",
        Enough = "enough",
        FaceQuestion = "face_question",
        FieldName = "field_name",
        FieldNameMissing = "field_name_missing",
        GiveCall = "give_call",
        HandOver = "hand_over",
        HoleDug = "hole_dug",
        Machine = "machine",
        NoCorner = "no_corner",
        NoFields = "no_fields",
        NoLayers = "no_layers",
        NoPit = "no_pit",
        NoPosition = "no_position",
        NoRollAtDepth = "no_roll_at_depth",
        NotLooked = "not_looked",
        OnPlan = "on_plan",
        OrKeyUp = "or_key_up",
        OutlineAnew = "outline_anew",
        OutlineGone = "outline_gone",
        Own = "own",
        Photos = "photos",
        Place = "place",
        PositionHeld = "position_held",
        PositionNoted = "position_noted",
        PositionRefused = "position_refused",
        PositionSettling = "position_settling",
        ReferenceStands = "reference_stands",
        ResistanceQuestion = "resistance_question",
        RollHow = "roll_how",
        SameAsAbove = "same_as_above",
        Show = "show",
        StartField = "start_field",
        StartPit = "start_pit",
        TakePosition = "take_position",
        TwoFaces = "two_faces",
        WalkEdge = "walk_edge",
        WalkOn = "walk_on",
        Where = "where",
        YouAreHere = "you_are_here",
    }
);

impl Words {
    /// `Headland: Loosen 33–35 cm`.
    pub fn zone_call(&self, call: &ZoneCall) -> String {
        let args = fluent_args!["zone" => self.label(call.zone), "call" => self.call_line(call)];
        self.say_with("plan-named", &args)
    }

    /// A name and what goes with it: `How sure: likely, 86 of 100`.
    pub fn named(&self, name: &str, value: &str) -> String {
        self.say_with("screen_pit-lines_up", &fluent_args!["name" => name, "value" => value])
    }

    /// `4 pits, last 2026-09-12`; the number alone where no day is known.
    pub fn last_dug(&self, pits: usize, day: Option<NaiveDate>) -> String {
        let pits = self.pits(pits);
        let Some(day) = day else { return pits };
        self.say_with("screen_pit-last_dug", &fluent_args!["pits" => pits, "day" => self.date(day)])
    }

    /// The title of a screen of one pit: `Pit 3, on the headland: knife walk`.
    pub fn pit_screen_title(&self, number: usize, place: PlaceKind, what: &str) -> String {
        let args = fluent_args!["pit" => self.pit_numbered(number, place), "what" => what];
        self.say_with("screen_pit-title", &args)
    }

    /// How deep a pit is to be dug.
    pub fn dig_to(&self, depth_mm: u32) -> String {
        self.say_with("screen_pit-dig_to", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// A position as averaged so far: `±4 m, 18 fixes over 20 s.`
    pub fn position_so_far(&self, fix: &AveragedFix) -> String {
        let args = fluent_args![
            "accuracy" => self.accuracy(fix.position.accuracy_m),
            "fixes" => fix.fixes,
            "seconds" => fix.span_s.round(),
        ];
        self.say_with("screen_pit-position", &args)
    }

    /// A position as noted: `Position noted, ±4 m.`
    pub fn position_noted(&self, accuracy_m: Option<f64>) -> String {
        let Some(metres) = accuracy_m else { return self.of(PitText::PositionNoted) };
        let args = fluent_args!["accuracy" => self.accuracy(Some(metres))];
        self.say_with("screen_pit-position_noted", &args)
    }

    /// Whole metres or yards, never less than one.
    fn accuracy(&self, metres: Option<f64>) -> String {
        self.distance(metres.unwrap_or(crate::place::UNSTATED_ACCURACY_M).max(1.0))
    }

    /// `Corner 3 is noted.`
    pub fn corner_noted(&self, number: usize) -> String {
        self.say_with("screen_pit-corner", &fluent_args!["number" => number])
    }

    /// `3 corners noted.`
    pub fn corners(&self, count: usize) -> String {
        self.say_with("screen_pit-corners", &fluent_args!["count" => count])
    }

    /// Says what a next look is for, in a sentence of its own: `This decides between pressed and settled.`
    pub fn why_asked(&self, look: &NextLook) -> String {
        self.say_with("screen_pit-why", &fluent_args!["why" => self.why_question(look)])
    }

    /// Says what was seen in a layer: `Flat plates, roots turned sideways`; empty where nothing was looked at.
    pub fn signs_seen(&self, signs: &Signs) -> String {
        let seen = Sign::ALL.iter().filter_map(|&sign| Some((Clue::from(sign), signs.get(sign)?)));
        let seen: Vec<String> = seen.map(|(clue, answer)| self.answer_clause(clue, answer)).collect();
        capital(self.comma(&seen))
    }

    /// `Headland: not dug yet`.
    pub fn zone_not_dug(&self, zone: Zone) -> String {
        self.named(&self.label(zone), &self.say("ground-not_dug"))
    }

    /// Says what is asked of a step of the knife walk: `15–20 cm: how does the soil come away?`
    pub fn step_question(&self, top_mm: u32, bottom_mm: u32) -> String {
        let args = fluent_args!["depths" => self.depth_range(top_mm, bottom_mm)];
        self.say_with("screen_pit-step", &args)
    }

    /// `Boundary at 25 cm`.
    pub fn boundary(&self, depth_mm: u32) -> String {
        self.say_with("screen_pit-boundary", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// Says what moves a boundary: `1 cm deeper`, `1 cm higher`.
    pub fn nudge(&self, by_mm: i32) -> String {
        let id = if by_mm < 0 { "screen_pit-nudge_up" } else { "screen_pit-nudge_down" };
        self.say_with(id, &fluent_args!["depth" => self.depth(by_mm.unsigned_abs())])
    }

    /// Says what a roll test asks, of soil from the surface or from a depth.
    pub fn roll_question(&self, depth_mm: Option<u32>) -> String {
        match depth_mm {
            Some(depth_mm) => {
                self.say_with("screen_pit-roll_depth", &fluent_args!["depth" => self.depth(depth_mm)])
            }
            None => self.say("screen_pit-roll_surface"),
        }
    }

    /// A year something last happened in, or `Before 2024`.
    pub fn since_year(&self, day: NaiveDate, or_before: bool) -> String {
        let year = if or_before { day.year() + 1 } else { day.year() };
        let args = fluent_args!["year" => year.to_string()];
        capital(self.say_with(if or_before { "since_year-before" } else { "since_year-recent" }, &args))
    }

    /// A layer in a line of a list: `20–30 cm: tight, pressed`.
    pub fn describe_layer_short(&self, layer: &LayerReading) -> String {
        let kind = Kind { condition: layer.condition, cause: layer.cause };
        self.named(&self.depth_range(layer.top_mm, layer.bottom_mm), &self.kind(kind))
    }

    /// The question that asks for a clue as it stands alone.
    pub fn clue_asked(&self, clue: Clue) -> String {
        capital(self.clue_question(clue))
    }
}
