//! What stands on the screens of one pit: its title, what is to be done there in one short sentence, what comes next.

use super::{Words, capital};
use crate::advice::{Readiness, Sureness, What, Why, ZoneCall};
use crate::reading::NextLook;
use crate::record::codes::codes;
use crate::record::{Call, PlaceKind, Zone};
use chrono::NaiveDate;
use fluent::fluent_args;

/// Reasons told in the one line under a sentence. Our judgement.
const TOLD_IN_LINE: usize = 3;
/// A reason that changes the odds by less, in decibans (1 = a quarter), is not told there. Our judgement.
const TOLD_DECIBANS: f64 = 1.0;

codes!(
    /// What stands on a button of these screens, or a sentence in which nothing varies.
    FaceText {
        AllLayers = "all_layers",
        AnswerSoFar = "answer_so_far",
        BestCrop = "best_crop",
        Bottom = "bottom",
        ComesAway = "comes_away",
        DeepEnough = "deep_enough",
        DigReference = "dig_reference",
        IsReference = "is_reference",
        KindOfPlace = "kind_of_place",
        Moisture = "moisture",
        NoKnife = "no_knife",
        NotRolled = "not_rolled",
        Photo = "photo",
        PhotoDelete = "photo_delete",
        PhotoDeleted = "photo_deleted",
        PhotoFirst = "photo_first",
        ReferenceFirst = "reference_first",
        ReferenceMissing = "reference_missing",
        ReferenceWhy = "reference_why",
        Remark = "remark",
        RemarkAsked = "remark_asked",
        RollNow = "roll_now",
        Scale = "scale",
        ScaleDepth = "scale_depth",
        ScaleKept = "scale_kept",
        ScaleNone = "scale_none",
        ScaleThere = "scale_there",
        ScaleZero = "scale_zero",
        ShowIt = "show_it",
        StandsSo = "stands_so",
        TapAgain = "tap_again",
        TooFew = "too_few",
    }
);

impl Words {
    /// The title of a pit's screens: `Pit 3 · headland`.
    pub fn pit_title(&self, number: usize, place: PlaceKind) -> String {
        self.say_with("pit_screen-title", &fluent_args!["number" => number, "place" => self.of(place)])
    }

    /// How deep a pit is to be dug, in a short sentence: `Dig to 50 cm at least.`
    pub fn dig_down_to(&self, depth_mm: u32) -> String {
        self.say_with("pit_screen-dig_to", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// Says that a pit is too shallow: `Dig this pit deeper: to 40 cm.`
    pub fn dig_deeper(&self, depth_mm: u32) -> String {
        self.say_with("pit_screen-dig_deeper", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// Says that the hole ends higher than is wanted, and what to do.
    pub fn hole_ends(&self, ends_mm: u32, wanted_mm: u32) -> String {
        let args = fluent_args!["ends" => self.depth(ends_mm), "wanted" => self.depth(wanted_mm)];
        self.say_with("pit_screen-hole_ends", &args)
    }

    /// How deep a hole is wanted, on a button: `50 cm wanted`.
    pub fn wanted(&self, depth_mm: u32) -> String {
        self.say_with("pit_screen-wanted", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// How many looks are to come, and what this one is for: `2 more to see. This decides between pressed and settled.`
    pub fn looks_to_see(&self, count: usize, look: Option<&NextLook>) -> String {
        let more = self.say_with("pit_screen-looks", &fluent_args!["count" => count]);
        let Some(look) = look else { return more };
        let why = self.why_asked(look);
        if count == 0 {
            return why;
        }
        self.say_with("pit_screen-looks_why", &fluent_args!["more" => more, "why" => why])
    }

    /// Says what leads to the looks that are to come, on a button: `Look on: 2 more to see`.
    pub fn look_on(&self, count: usize) -> String {
        self.say_with("pit_screen-look_on", &fluent_args!["count" => count])
    }

    /// Says that a remark has more letters than one may have.
    pub fn remark_too_long(&self, letters: usize) -> String {
        self.say_with("pit_screen-remark_too_long", &fluent_args!["letters" => letters])
    }

    /// Says what is touched next on the tape in a photo: `Touch 50 cm on the tape.`
    pub fn touch_depth(&self, depth_mm: u32) -> String {
        self.say_with("pit_screen-touch_depth", &fluent_args!["depth" => self.depth(depth_mm)])
    }

    /// `3 layers`.
    pub fn layers_count(&self, count: usize) -> String {
        self.say_with("pit_screen-layers", &fluent_args!["count" => count])
    }

    /// Says what to dig next, on a button: `Dig on the headland`.
    pub fn dig_in(&self, zone: Zone) -> String {
        self.say_with("pit_screen-dig_in", &fluent_args!["on" => self.zone_on(zone)])
    }

    /// The same behind the machine: `Dig behind the machine on the headland`.
    pub fn dig_behind_in(&self, zone: Zone) -> String {
        self.say_with("pit_screen-dig_behind_in", &fluent_args!["on" => self.zone_on(zone)])
    }

    /// The call in one short sentence with its depth, to be read at display size: `Loosen the headland at 33–35 cm.`
    pub fn call_headline(&self, call: &ZoneCall) -> String {
        let mut args = self.zone_args(&[call.zone]);
        if let Some(tip) = &call.tip {
            args.set("tip", self.tip_range(tip));
        }
        let lead = call.lead();
        let id = match (call.call, call.readiness, call.tip) {
            (Call::AskSpecialist, ..) => match lead {
                Some(What::TooNear { .. } | What::DepthUnknown { .. }) => "pit_headline-ask_buried",
                Some(What::NoMachine { .. } | What::BeyondReach { .. }) => "pit_headline-ask_machine",
                _ => "pit_headline-ask_specialist",
            },
            (Call::DigAgain, ..) => match lead {
                Some(What::Behind { .. }) => "pit_headline-behind",
                Some(What::LoosenedSince { .. }) => "pit_headline-loosened_since",
                Some(What::NoReference) => "face_text-reference_missing",
                _ => "pit_headline-dig_again",
            },
            (Call::Wait, Readiness::StripFirst, _) => "pit_headline-hold_back",
            (Call::Wait, _, Some(_)) => "pit_headline-wait_at",
            (Call::Wait, _, None) => "pit_headline-wait",
            (Call::Loosen, Readiness::StripFirst, _) => "pit_headline-strip_first",
            (Call::Loosen, Readiness::RollFirst { depth_mm }, _) => {
                args.set("depth", self.depth(depth_mm));
                "pit_headline-roll_first"
            }
            (Call::Loosen, Readiness::RollNotApplicable, Some(_)) => "pit_headline-judge_first",
            (Call::Loosen, _, Some(_)) => "loosen-at",
            (Call::Loosen, _, None) => "call-loosen.sentence",
            (Call::LeaveIt, ..) => "call-leave_it.sentence",
            (Call::RootsFirst, ..) => "pit_headline-roots_first",
            (Call::DrainFirst, ..) => "call-drain_first.sentence",
        };
        capital(self.say_with(id, &args))
    }

    /// A reason in one line: `20–28 cm: flat plates, roots turned sideways, not so in the reference pit.`
    pub fn main_reason(&self, why: &Why) -> String {
        let What::Layer { top_mm, bottom_mm, reasons, .. } = &why.what else { return self.why(why) };
        let strong = reasons.iter().filter(|reason| reason.decibans >= TOLD_DECIBANS).take(TOLD_IN_LINE);
        let told: Vec<String> = strong.map(|reason| self.answer_clause(reason.clue, reason.answer)).collect();
        if told.is_empty() {
            return self.why(why);
        }
        let args =
            fluent_args!["depths" => self.depth_range(*top_mm, *bottom_mm), "told" => self.comma(&told)];
        self.say_with("pit_screen-reason", &args)
    }

    /// How sure the face is read, in one short line: `This face: sure.`
    pub fn sure_of_face(&self, call: &ZoneCall) -> String {
        self.say_with("pit_screen-sure_face", &fluent_args!["sure" => self.of(call.sure)])
    }

    /// How far the pits speak for their ground: `Headland: 3 of 8 pits that would settle the depth.` Nothing where no pit
    /// was judged.
    pub fn sure_of_ground(&self, call: &ZoneCall) -> Option<String> {
        let ground = &call.ground;
        if call.sure == Sureness::CannotSay || ground.pits == 0 {
            return None;
        }
        let mut args = fluent_args!["zone" => self.label(call.zone)];
        let id = match &call.tip {
            Some(tip) if tip.pits < tip.enough_pits() => {
                args.set("dug", tip.pits);
                args.set("enough", tip.enough_pits());
                "pit_screen-sure_depth"
            }
            _ => {
                args.set("agree", ground.agree);
                args.set("pits", self.pits(ground.pits));
                "pit_screen-sure_ground"
            }
        };
        Some(self.say_with(id, &args))
    }

    /// A field and a day, as they stand above what is shown: `Lapwing Ground, 12 September 2026`.
    pub fn field_on_day(&self, field: &str, day: NaiveDate) -> String {
        let args = fluent_args!["field" => field, "day" => self.date(day)];
        self.say_with("pit_screen-field_on_day", &args)
    }

    /// Says what comes next, in a line: `Next: dig on the headland.`
    pub fn next_line(&self, step: &str) -> String {
        self.say_with("pit_screen-next", &fluent_args!["step" => step])
    }
}
