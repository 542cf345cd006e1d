//! A hole behind the machine: what the pass did, what that stands on, what may have gone wrong and what to do.

use super::{Words, capital};
use crate::advice::Caution;
use crate::advice::after_dig::{
    Across, CauseReason, Check, DigAdvice, GOOD_CONDITIONS, LikelyCause, PASS_MARK, PassClue, Remedy,
    Stretch, Verdict, VerdictReason,
};
use fluent::fluent_args;

/// Reasons told for a cause, and against it; the rest is behind a tap. Our judgement.
const TOLD_FOR: usize = 4;
/// See [`TOLD_FOR`].
const TOLD_AGAINST: usize = 2;
/// A reason that changes the odds by less, in decibans (1 = a quarter), is not told. Our judgement.
const TOLD_DECIBANS: f64 = 1.0;
/// Share from which a cause is called likely: more so than all others together.
const LIKELY: f64 = 0.5;
/// Share from which a percentage reads 100.
const ALL: f64 = 0.995;
/// Share below which a cause is told as one that hardly is it. Our judgement.
const HARDLY: f64 = 0.1;

impl Words {
    /// Says what the pass did, in one sentence:
    /// `Partly: 61 % of the layer is broken; it is firm between the tine lines (18 cm wide).` A season on, whether
    /// it has held.
    pub fn after_dig_sentence(&self, dig: &DigAdvice) -> String {
        let verdict = if dig.season_on { self.form(dig.verdict, "season") } else { self.of(dig.verdict) };
        let found = self.found(dig);
        capital(self.say_with("dig-sentence", &fluent_args!["verdict" => verdict, "found" => found]))
    }

    /// The same without its first word: `61 % of the layer is broken; it is firm between the tine lines (18 cm wide).`
    pub fn after_dig_found(&self, dig: &DigAdvice) -> String {
        self.say_with("behind-seen", &fluent_args!["seen" => capital(self.found(dig))])
    }

    fn found(&self, dig: &DigAdvice) -> String {
        let clauses = match dig.verdict {
            Verdict::Done => vec![self.loose(dig).unwrap_or_else(|| self.say("dig-done"))],
            Verdict::Partly => {
                let loose = self.loose(dig).unwrap_or_else(|| self.say("dig-partly"));
                let firm = self.firm_at("dig-stayed_firm", &dig.firm_at);
                let against = dig.why.iter().filter_map(|why| self.against(why));
                [Some(loose), firm].into_iter().flatten().chain(against).collect()
            }
            Verdict::NotDone => self.stands(dig),
            Verdict::Worse => self.harmed(dig),
            Verdict::CannotSay if dig.target_mm.or(dig.layer_bottom_mm).is_none() => {
                vec![self.say("dig-no_mark")]
            }
            Verdict::CannotSay => vec![self.say("dig-no_depths")],
        };
        self.join("join-clauses", &clauses)
    }

    /// Says what was seen and counts against a pass, as a clause.
    fn against(&self, why: &VerdictReason) -> Option<String> {
        let VerdictReason::Against { clue, answer } = *why else { return None };
        let answer = clue.answers().iter().position(|code| *code == answer)?;
        Some(self.pass_answer(clue, answer))
    }

    /// The share that is loose, of the layer where one is known.
    fn loose(&self, dig: &DigAdvice) -> Option<String> {
        let of_layer = dig.why.iter().find_map(|why| match *why {
            VerdictReason::LayerBroken { share } => Some(share),
            _ => None,
        });
        if let Some(share) = of_layer.or(dig.layer_broken.value().copied()) {
            let id = if dig.season_on { "dig-layer_still_broken" } else { "dig-layer_broken" };
            return Some(self.say_with(id, &fluent_args!["share" => self.percent(share)]));
        }
        let of_section = dig.why.iter().find_map(|why| match *why {
            VerdictReason::SectionLoose { share } => Some(share),
            _ => None,
        });
        let share = self.percent(of_section.or(dig.share.value().copied())?);
        Some(match dig.target_mm {
            Some(target_mm) => self
                .say_with("dig-loose_to", &fluent_args!["share" => share, "depth" => self.depth(target_mm)]),
            None => self.say_with("dig-loose", &fluent_args!["share" => share]),
        })
    }

    /// The ground as it was, or a season on as it is again, and where.
    fn stands(&self, dig: &DigAdvice) -> Vec<String> {
        if dig.season_on {
            let again = self.firm_at("dig-firm_again_at", &dig.firm_at);
            return vec![again.unwrap_or_else(|| self.say("dig-firm_again"))];
        }
        let layer = dig.layer_bottom_mm.is_some();
        let stands = self.say(if layer { "dig-layer_stands" } else { "dig-ground_stands" });
        [Some(stands), self.firm_at("dig-stayed_firm", &dig.firm_at)].into_iter().flatten().collect()
    }

    fn harmed(&self, dig: &DigAdvice) -> Vec<String> {
        let harms = [(VerdictReason::PressedSlot, "dig-pressed"), (VerdictReason::Thrown, "dig-thrown")];
        let harms: Vec<String> =
            harms.iter().filter(|(why, _)| dig.why.contains(why)).map(|(_, id)| self.say(id)).collect();
        if harms.is_empty() { vec![self.say("dig-harmed")] } else { harms }
    }

    /// Where it is firm, place by place with how wide in all, in the message `id`; `None` where it is nowhere.
    fn firm_at(&self, id: &str, stretches: &[Stretch]) -> Option<String> {
        let at = |across: Across| {
            let here: Vec<&Stretch> = stretches.iter().filter(|stretch| stretch.across == across).collect();
            let both = across == Across::AtLine && here.len() > 1;
            let named = if both { self.form(across, "both") } else { self.of(across) };
            let width_mm = here
                .iter()
                .map(|stretch| Some(stretch.to_mm?.saturating_sub(stretch.from_mm?)))
                .sum::<Option<u32>>();
            match (here.len(), width_mm) {
                (0, _) => None,
                _ if across == Across::Throughout => Some(named),
                (count, Some(width_mm)) => {
                    let args = fluent_args!["across" => named, "width" => self.depth(width_mm)];
                    Some(self.say_with(if count == 1 { "dig-stretch" } else { "dig-stretches" }, &args))
                }
                (_, None) => {
                    let share = here.iter().map(|stretch| stretch.to - stretch.from).sum();
                    let args = fluent_args!["across" => named, "share" => self.percent(share)];
                    Some(self.say_with("dig-stretch_share", &args))
                }
            }
        };
        let places: Vec<String> = Across::ALL.iter().filter_map(|&across| at(across)).collect();
        let firm = || self.say_with(id, &fluent_args!["where" => self.and(&places)]);
        (!places.is_empty()).then(firm)
    }

    /// One stretch that stayed firm: `Firm between the tine lines: 21–39 cm from the first line.`
    pub fn firm_stretch(&self, stretch: &Stretch) -> String {
        let across = self.of(stretch.across);
        if let Some((from_mm, to_mm)) = stretch.from_mm.zip(stretch.to_mm) {
            let depths = self.depth_range(from_mm, to_mm);
            return self.say_with("stretch-at", &fluent_args!["across" => across, "depths" => depths]);
        }
        let args = fluent_args![
            "across" => across,
            "from" => self.percent(stretch.from),
            "to" => self.percent(stretch.to),
        ];
        self.say_with("stretch-share", &args)
    }

    /// One thing a verdict stands on.
    pub fn verdict_reason(&self, why: &VerdictReason) -> String {
        let against_mark = |id: &str, share| {
            let args = fluent_args!["share" => self.percent(share), "mark" => self.percent(PASS_MARK)];
            self.say_with(id, &args)
        };
        match *why {
            VerdictReason::NoReadings => self.say("stands-no_readings"),
            VerdictReason::LayerBroken { share } => against_mark("stands-layer_broken", share),
            VerdictReason::SectionLoose { share } => against_mark("stands-section_loose", share),
            VerdictReason::NoDeeper { before_mm, now_mm } => {
                let args = fluent_args!["before" => self.depth(before_mm), "now" => self.depth(now_mm)];
                self.say_with("stands-no_deeper", &args)
            }
            VerdictReason::PressedSlot => self.say("stands-pressed_slot"),
            VerdictReason::Thrown => self.say("stands-thrown"),
            VerdictReason::PlatesLeft => self.say("stands-plates_left"),
            VerdictReason::FloorLeft => self.say("stands-floor_left"),
            VerdictReason::SlotSeen { smeared, narrow } => {
                let seen = [(narrow, PassClue::Profile, "y"), (smeared, PassClue::Smear, "smeared")];
                let clauses = seen.iter().filter(|(seen, ..)| *seen);
                let clause = |&(_, clue, answer): &(bool, PassClue, &'static str)| {
                    self.against(&VerdictReason::Against { clue, answer })
                };
                let clauses: Vec<String> = clauses.filter_map(clause).collect();
                self.say_with("stands-slot_seen", &fluent_args!["seen" => capital(self.and(&clauses))])
            }
            VerdictReason::Against { .. } => {
                let against = self.against(why).unwrap_or_default();
                self.say_with("stands-against", &fluent_args!["seen" => capital(against)])
            }
        }
    }

    /// Says what is published of a loosening in ideal conditions, and whose the mark is: two sentences.
    pub fn published_share(&self) -> Vec<String> {
        let (least, most) = GOOD_CONDITIONS;
        let args = fluent_args!["range" => self.percent_range(least, most)];
        let mark = fluent_args!["mark" => self.percent(PASS_MARK)];
        vec![self.say_with("stands-published", &args), self.say_with("stands-mark", &mark)]
    }

    /// The figures of a hole, a sentence each: what is loose, the layer, the ridge, and what the figure of the tines
    /// lets expect. What cannot be told says why.
    pub fn after_dig_figures(&self, dig: &DigAdvice) -> Vec<String> {
        let shared = |ids: [&str; 2], name: &'static str, depth_mm: Option<u32>, share: f64| {
            let mut args = fluent_args!["share" => self.percent(share)];
            let [with_depth, alone] = ids;
            let Some(depth_mm) = depth_mm else { return self.say_with(alone, &args) };
            args.set(name, self.depth(depth_mm));
            self.say_with(with_depth, &args)
        };
        let share = self.modelled(&dig.share, "measured-no_share", |&share| {
            shared(["measured-share", "measured-share_only"], "depth", dig.target_mm, share)
        });
        let layer = self.modelled(&dig.layer_broken, "measured-no_layer", |&share| {
            let ends = dig.layer_top_mm.zip(dig.layer_bottom_mm);
            let Some(((top_mm, bottom_mm), left_mm)) = ends.zip(dig.layer_left_mm.value()) else {
                return shared(
                    ["measured-layer", "measured-layer_only"],
                    "bottom",
                    dig.layer_bottom_mm,
                    share,
                );
            };
            let args = fluent_args![
                "depths" => self.depth_range(top_mm, bottom_mm),
                "left" => self.depth(left_mm.round() as u32),
                "share" => self.percent(share),
            ];
            self.say_with(if share >= ALL { "measured-layer_gone" } else { "measured-layer_left" }, &args)
        });
        let ridge = self.modelled(&dig.ridge_mm, "measured-no_ridge", |&ridge_mm| self.ridge(dig, ridge_mm));
        let figure = self.modelled(&dig.figure, "measured-no_figure", |figure| {
            let share = self.percent_range(figure.least.share, figure.most.share);
            self.say_with("measured-figure", &fluent_args!["share" => share])
        });
        vec![share, layer, ridge, figure]
    }

    fn ridge(&self, dig: &DigAdvice, ridge_mm: u32) -> String {
        let figure = dig.figure.value();
        let most = figure.map(|figure| self.depth_range(figure.most.ridge_mm, figure.least.ridge_mm));
        let id = match (ridge_mm, &most) {
            (0, None) => return self.say("measured-flat"),
            (0, Some(_)) => "measured-flat_figure",
            (_, None) => "measured-ridge",
            (_, Some(_)) => "measured-ridge_figure",
        };
        let mut args = fluent_args![];
        if ridge_mm > 0 {
            args.set("ridge", self.depth(ridge_mm));
        }
        if let Some(most) = most {
            args.set("figure", most);
        }
        self.say_with(id, &args)
    }

    /// A cause in a line of a list: `Likely: spacing too wide, 64 of 100`.
    pub fn cause_line(&self, cause: &LikelyCause) -> String {
        let id = match cause.share {
            LIKELY.. => "cause-likely",
            HARDLY.. => "cause-possible",
            _ => "cause-unlikely",
        };
        let args = fluent_args!["cause" => self.of(cause.cause), "share" => self.share(cause.share)];
        self.say_with(id, &args)
    }

    /// The same with what speaks for it and against it.
    pub fn cause_sentence(&self, cause: &LikelyCause) -> String {
        let (carry, against) = (self.cause_for(&cause.reasons), self.cause_against(&cause.reasons));
        let id = match (carry.is_empty(), against.is_empty()) {
            (true, true) => "cause-bare",
            (false, true) => "cause-for",
            (true, false) => "cause-against",
            (false, false) => "cause-both",
        };
        let args = fluent_args!["line" => self.cause_line(cause), "for" => carry, "against" => against];
        self.say_with(id, &args)
    }

    /// A cause with the check to make and the change to follow, a line each; the caution stands where somebody
    /// goes near the tines.
    pub fn cause_lines(&self, cause: &LikelyCause) -> Vec<String> {
        let caution = cause.check.is_some_and(checks_near_tines) || works_at_tines(cause.remedy);
        let mut said = vec![self.cause_sentence(cause)];
        said.extend(cause.check.map(|check| self.check_bare(check)));
        let first_rolled = cause.check == Some(Check::RollAtTip) && cause.remedy.wants_a_roll();
        said.push(if first_rolled {
            self.say_with("remedy-if_no_thread", &fluent_args!["remedy" => self.of(cause.remedy)])
        } else {
            self.remedy_bare(cause.remedy)
        });
        said.extend(caution.then(|| self.of(Caution::MachineStopped)));
        said
    }

    /// Says what speaks for a cause, strongest first: `the ground between the lines stayed firm, …`. Empty where nothing
    /// does.
    pub fn cause_for(&self, reasons: &[CauseReason]) -> String {
        let carry = reasons.iter().filter(|reason| reason.decibans >= TOLD_DECIBANS);
        self.told_of_pass(carry.take(TOLD_FOR))
    }

    /// Says what speaks against it, in the same way.
    pub fn cause_against(&self, reasons: &[CauseReason]) -> String {
        let against = reasons.iter().filter(|reason| reason.decibans <= -TOLD_DECIBANS);
        self.told_of_pass(against.take(TOLD_AGAINST))
    }

    fn told_of_pass<'a>(&self, reasons: impl Iterator<Item = &'a CauseReason>) -> String {
        let clauses = reasons.map(|reason| self.pass_answer(reason.clue, reason.answer));
        self.join("join-clauses", &clauses.collect::<Vec<_>>())
    }

    /// Says what an answer to a clue of a pass says, as a clause: `the walls of the slot are smeared`. Empty where there is
    /// no such answer.
    pub fn pass_answer(&self, clue: PassClue, answer: usize) -> String {
        let code = clue.answers().get(answer);
        code.map_or_else(String::new, |code| self.say(&format!("behind_{}-{code}", clue.code())))
    }

    /// A check as an instruction, with the caution where somebody goes near the tines:
    /// `Check: measure the slots behind the outer legs on both sides.`
    pub fn check_sentence(&self, check: Check) -> String {
        self.with_caution(self.check_bare(check), checks_near_tines(check))
    }

    /// A change as an instruction, likewise: `Then: drive slower.`
    pub fn remedy_sentence(&self, remedy: Remedy) -> String {
        self.with_caution(self.remedy_bare(remedy), works_at_tines(remedy))
    }

    fn check_bare(&self, check: Check) -> String {
        self.say_with("check-line", &fluent_args!["check" => self.of(check)])
    }

    fn remedy_bare(&self, remedy: Remedy) -> String {
        self.say_with("remedy-line", &fluent_args!["remedy" => self.of(remedy)])
    }

    pub(super) fn with_caution(&self, sentence: String, near_tines: bool) -> String {
        if near_tines { format!("{sentence} {}", self.of(Caution::MachineStopped)) } else { sentence }
    }
}

/// Returns whether a check leads somebody to the tines. Slots are measured where the machine stands; soil is looked at in the
/// hole, away from it.
pub(super) const fn checks_near_tines(check: Check) -> bool {
    match check {
        Check::MeasureSlots | Check::ReadAcross | Check::LookAtFeet | Check::SlotsAcross => true,
        Check::RollAtTip | Check::LookAtWalls | Check::TimeTheRun | Check::LookForOldSlots => false,
    }
}

/// Returns whether a change is made at the tines.
pub(super) const fn works_at_tines(remedy: Remedy) -> bool {
    match remedy {
        Remedy::Deeper | Remedy::ShallowerOrWider | Remedy::Closer | Remedy::NewFeet | Remedy::LevelIt => {
            true
        }
        Remedy::WaitForDrier
        | Remedy::WaitForMoister
        | Remedy::Faster
        | Remedy::Slower
        | Remedy::ShiftLines => false,
    }
}
