//! Reasons of a call and of a reading.

use super::Words;
use crate::advice::{What, Why};
use crate::reading::{Clue, Kind, Reason};
use crate::record::Zone;
use fluent::{FluentArgs, fluent_args};

/// Reasons told for a layer, and against it; the rest is behind a tap. Our judgement.
const TOLD_FOR: usize = 4;
/// See [`TOLD_FOR`].
const TOLD_AGAINST: usize = 2;
/// A reason that changes the odds by less, in decibans (1 = a quarter), is not told. Our judgement.
const TOLD_DECIBANS: f64 = 1.0;
/// The same of a reason against (2 = more than a half): what hardly speaks against a kind reads as if the notes were
/// wrong. Our judgement.
const TOLD_AGAINST_DECIBANS: f64 = 2.0;

impl Words {
    /// A reason as a sentence.
    pub fn why(&self, why: &Why) -> String {
        self.what(&why.what)
    }

    #[expect(clippy::too_many_lines, reason = "one arm a reason, so that none goes unworded")]
    fn what(&self, what: &What) -> String {
        match what {
            What::Layer { pit, top_mm, bottom_mm, kind, share, reasons } => {
                let depths = self.depth_range(*top_mm, *bottom_mm);
                let at = self.say_with("layer-at", &fluent_args!["depths" => depths, "pit" => *pit]);
                self.layer(at, *kind, *share, reasons)
            }
            What::NothingHarmed => self.say("why-nothing_harmed"),
            &What::RootsPass { top_mm, bottom_mm, roots, worms } => {
                let id = match (roots, worms) {
                    (true, true) => "why-roots_pass",
                    (true, false) => "why-roots_pass_alone",
                    (false, _) => "why-worms_pass",
                };
                self.at(id, top_mm, bottom_mm)
            }
            What::NoPits => self.say("why-no_pits"),
            What::FaceUnreadable { face } => self.form(*face, "unreadable"),
            &What::TooShallow { dug_to_mm, need_mm } => {
                self.depths("why-too_shallow", &[("dug_to", dug_to_mm), ("need", need_mm)])
            }
            What::NoReference => self.say("why-no_reference"),
            What::SignsTooFew { top_mm, bottom_mm, missing } => {
                let missing: Vec<String> = missing.iter().map(|&clue| self.label(clue)).collect();
                let args = fluent_args![
                    "depths" => self.depth_range(*top_mm, *bottom_mm),
                    "missing" => self.comma(&missing),
                ];
                self.say_with("why-signs_too_few", &args)
            }
            &What::KindsOpen { top_mm, bottom_mm, one, other } => {
                let args = fluent_args![
                    "depths" => self.depth_range(top_mm, bottom_mm),
                    "one" => self.kind(one),
                    "other" => self.kind(other),
                ];
                self.say_with("why-kinds_open", &args)
            }
            What::SignsClash { top_mm, bottom_mm, signs } => {
                let args = fluent_args![
                    "depths" => self.depth_range(*top_mm, *bottom_mm),
                    "sound" => self.reasons_for(signs),
                    "harm" => self.reasons_against(signs),
                ];
                self.say_with("why-signs_clash", &args)
            }
            What::ReadersDiffer { pits, calls, top_mm, bottom_mm, signs } => {
                let signs: Vec<String> =
                    signs.iter().map(|&sign| self.of(Clue::ALL[sign as usize])).collect();
                let args = fluent_args![
                    "one" => pits[0],
                    "other" => pits[1],
                    "call" => self.label(calls[0]),
                    "other_call" => self.label(calls[1]),
                    "signs" => self.and(&signs),
                    "depths" => self.depth_range(*top_mm, *bottom_mm),
                ];
                let drawn = signs.is_empty();
                self.say_with(if drawn { "why-readers_draw" } else { "why-readers_differ" }, &args)
            }
            What::PitsDisagree { agree, of } => {
                let args = fluent_args!["agree" => *agree, "pits" => self.pits(*of)];
                self.say_with("why-pits_disagree", &args)
            }
            &What::RootsNeeded { top_mm, bottom_mm } => self.at("why-roots_needed", top_mm, bottom_mm),
            &What::Cemented { top_mm, bottom_mm } => self.at("why-cemented", top_mm, bottom_mm),
            &What::WaterStands { top_mm, bottom_mm, .. } => self.at("why-water_stands", top_mm, bottom_mm),
            &What::WaterHeldUp { top_mm, bottom_mm } => self.at("why-water_held_up", top_mm, bottom_mm),
            What::FaceWet => self.say("why-face_wet"),
            &What::Peat { top_mm, bottom_mm } => self.at("why-peat", top_mm, bottom_mm),
            &What::NearSurface { top_mm, bottom_mm } => self.at("why-near_surface", top_mm, bottom_mm),
            &What::UnderGrass { top_mm, bottom_mm } => self.at("why-under_grass", top_mm, bottom_mm),
            &What::Rolled { depth_mm, roll, surface, on } => {
                let told = self.rolled(depth_mm, surface, roll);
                on.map_or_else(|| told.clone(), |on| self.on_day(&told, on))
            }
            &What::RollMissing { depth_mm } => self.depths("why-roll_missing", &[("depth", depth_mm)]),
            What::SurfaceRollMissing => self.say("why-surface_roll_missing"),
            &What::TooNear { obstacle, depth_mm, tip_mm, clearance_mm } => {
                let args = fluent_args![
                    "obstacle" => self.form(obstacle, "the"),
                    "depth" => self.depth(depth_mm),
                    "tip" => self.depth(tip_mm),
                    "clearance" => self.depth(clearance_mm),
                ];
                super::capital(self.say_with("why-too_near", &args))
            }
            &What::NotSure { call, top_mm, bottom_mm, clue } => {
                let mut args = fluent_args!["call" => self.label(call)];
                if let Some(clue) = clue {
                    args.set("clue", self.of(clue));
                    args.set("depths", self.depth_range(top_mm, bottom_mm));
                }
                self.say_with(if clue.is_some() { "why-not_sure_look" } else { "why-not_sure" }, &args)
            }
            What::DepthUnknown { obstacle } => {
                let args = fluent_args!["obstacle" => self.form(*obstacle, "the")];
                super::capital(self.say_with("why-depth_unknown", &args))
            }
            &What::HangsOnDepth { obstacle, depth_mm, needs_mm } => {
                let args = fluent_args![
                    "obstacle" => self.form(obstacle, "the"),
                    "depth" => self.depth(depth_mm),
                    "needs" => self.depth(needs_mm),
                ];
                self.say_with("why-hangs_on_depth", &args)
            }
            &What::HangsOnBottom { bottom_mm, limit_mm } => {
                self.depths("why-hangs_on_bottom", &[("bottom", bottom_mm), ("limit", limit_mm)])
            }
            &What::Service { obstacle, depth_mm, away_m } => self.service(obstacle, depth_mm, away_m),
            &What::NeedsLeave { obstacle, within_m } => {
                let args = fluent_args![
                    "one" => self.form(obstacle, "one"),
                    "within" => self.distance(f64::from(within_m)),
                ];
                super::capital(self.say_with("why-needs_leave", &args))
            }
            &What::LiftOut { obstacle, side_m } => {
                let args = fluent_args![
                    "obstacle" => self.form(obstacle, "the"),
                    "side" => self.distance(f64::from(side_m)),
                ];
                super::capital(self.say_with("why-lift_out", &args))
            }
            What::Asked { whom, on, leave, lapsed } => self.asked_whom(whom, *on, *leave, *lapsed),
            &What::NoMachine { tip_mm, foot_mm } => {
                self.depths("why-no_machine", &[("tip", tip_mm), ("foot", foot_mm)])
            }
            &What::RollPast { rolled } => {
                self.say_with("why-roll_past", &fluent_args!["day" => self.date(rolled)])
            }
            &What::RainSince { rolled, rain } => {
                let args = fluent_args!["day" => self.date(rolled), "rain" => self.date(rain)];
                self.say_with("why-rain_since", &args)
            }
            &What::Behind { on, strip, verdict, next, check, remedy } => {
                self.behind_told(on, strip, verdict, (next, check, remedy))
            }
            &What::LoosenedSince { on } => {
                self.say_with("why-loosened_since", &fluent_args!["day" => self.date(on)])
            }
            &What::DidNotLast { on: Some(on) } => {
                self.say_with("why-did_not_last", &fluent_args!["day" => self.date(on)])
            }
            What::DidNotLast { on: None } => self.say("why-did_not_last_undated"),
            &What::BeyondReach { tip_mm, reach_mm } => {
                self.depths("why-beyond_reach", &[("tip", tip_mm), ("reach", reach_mm)])
            }
            &What::DeepClay { bottom_mm } => self.depths("why-deep_clay", &[("bottom", bottom_mm)]),
            &What::DeepClayHeldTo { bottom_mm } => {
                self.depths("why-deep_clay_held_to", &[("bottom", bottom_mm)])
            }
            What::ZonesDiffer { loosen } => self.zones_differ(loosen),
            What::TwinsCountedOnce { twins } => {
                self.say_with("why-twins_counted_once", &fluent_args!["twins" => *twins])
            }
        }
    }

    fn layer(&self, at: String, kind: Kind, share: f64, reasons: &[Reason]) -> String {
        let (carry, against) = (self.reasons_for(reasons), self.reasons_against(reasons));
        let mut args = fluent_args![
            "depths" => at,
            "kind" => self.kind(kind),
            "share" => self.share(share),
        ];
        let id = match (carry.is_empty(), against.is_empty()) {
            (true, true) => "layer-bare",
            (false, true) => "layer-for",
            (true, false) => "layer-against",
            (false, false) => "layer-both",
        };
        for (name, clauses) in [("for", carry), ("against", against)] {
            if !clauses.is_empty() {
                args.set(name, clauses);
            }
        }
        self.say_with(id, &args)
    }

    /// Says what speaks for the kind of a layer, strongest first, the reference pit last:
    /// `flat plates, roots turned sideways; not so in the reference pit`. Empty where nothing does.
    pub fn reasons_for(&self, reasons: &[Reason]) -> String {
        self.told(reasons.iter().filter(|reason| reason.decibans >= TOLD_DECIBANS).take(TOLD_FOR))
    }

    /// Says what speaks against it, in the same way.
    pub fn reasons_against(&self, reasons: &[Reason]) -> String {
        self.told(
            reasons.iter().filter(|reason| reason.decibans <= -TOLD_AGAINST_DECIBANS).take(TOLD_AGAINST),
        )
    }

    fn told<'a>(&self, reasons: impl Iterator<Item = &'a Reason>) -> String {
        let (beside, own): (Vec<&Reason>, Vec<&Reason>) =
            reasons.partition(|reason| reason.clue == Clue::Reference);
        let parts = [own, beside].map(|reasons| {
            let clauses: Vec<String> =
                reasons.iter().map(|reason| self.answer_clause(reason.clue, reason.answer)).collect();
            self.comma(&clauses)
        });
        let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        self.join("join-clauses", &parts)
    }

    fn zones_differ(&self, loosen: &[Zone]) -> String {
        if loosen.is_empty() {
            self.say("why-zones_differ")
        } else {
            self.say_with("why-zones_differ_work", &self.zone_args(loosen))
        }
    }

    fn at(&self, id: &str, top_mm: u32, bottom_mm: u32) -> String {
        self.say_with(id, &fluent_args!["depths" => self.depth_range(top_mm, bottom_mm)])
    }

    fn depths(&self, id: &str, depths: &[(&'static str, u32)]) -> String {
        let args: FluentArgs =
            depths.iter().map(|&(name, mm)| (name, fluent::FluentValue::from(self.depth(mm)))).collect();
        self.say_with(id, &args)
    }
}
