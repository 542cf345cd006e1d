//! The proof behind the machine: what a pass loosened, where it did not, why, what to check and what to change.
//!
//! [`look_behind`] goes pass by pass and hole by hole. Measured figures stand on readings alone; the figure of the tines
//! is given only where it holds ([`Model`]). Published: in ideal conditions 75 to 80 % of the compacted layer is broken
//! (USDA Forest Service 0834-2828, p. 6; [`GOOD_CONDITIONS`]). No pass mark is published; ours is [`PASS_MARK`].

mod across;
mod cause;
mod clue;
mod codes;
mod evidence;
mod ground;
mod hole;
mod lasting;
mod next_step;
mod table;
mod unfinished;
mod verdict;

pub use clue::{Before, Evenness, PassClue, Pattern, Reached, RidgeAgainst, SpeedPlace, YesNo};
pub use codes::{Across, Check, FailureCause, Lasting, NextStep, PairBy, Remedy, Verdict};
pub use lasting::Lasts;
pub use table::{CauseTable, PerCause, TEXT as CAUSES_TEXT};
pub use unfinished::{READINGS, unfinished};

use super::FieldAdvice;
use super::machine::{LoosenedRange, Model};
use crate::place::FieldMap;
use crate::reading::FieldReading;
use crate::record::{Condition, FieldNotes, RecordId, RootsSeen};
use chrono::NaiveDate;
use evidence::Rolled;

/// Share of the compacted layer broken in ideal conditions, least and most (USDA Forest Service 0834-2828, p. 6).
pub const GOOD_CONDITIONS: (f64, f64) = (0.75, 0.80);
/// Share from which a pass counts as done: of the layer where one is known, else of the section down to the depth
/// wanted. Ours: no source gives a pass mark; it is the lower end of what good conditions give.
pub const PASS_MARK: f64 = 0.75;
/// Days after a loosening within which traffic is warned of (soilandwater.org.uk: driven on a week later, any pass left
/// strength above the state before; two weeks: our judgement).
pub const TRAFFIC_DAYS: i64 = 14;
/// Days after a pass from which a hole tells whether it has held: a season on. Our judgement.
pub const SEASON_DAYS: i64 = 120;

/// A pass with what the holes dug behind it say.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PassAdvice {
    /// The pass.
    pub pass: RecordId,
    /// One answer a hole, in the order of the notes.
    pub digs: Vec<DigAdvice>,
    /// The worst verdict of its holes of the same season that can say; [`Verdict::CannotSay`] where none can, `None`
    /// where there is none.
    pub verdict: Option<Verdict>,
    /// What comes next.
    pub next: NextStep,
    /// For [`NextStep::CheckFirst`]: the check to be made.
    pub check: Option<Check>,
    /// For [`NextStep::ChangeAndTry`] and [`NextStep::Wait`]: the change, for the likeliest cause of the worst hole.
    pub remedy: Option<Remedy>,
    /// The whole zone was worked without an earlier trial strip in it that was dug behind and found done.
    pub no_strip_before: bool,
    /// Heavy wheels ran over it too soon.
    pub traffic: Option<TrafficWarning>,
    /// Whether it has held; `None` without a hole a season on.
    pub held: Option<Held>,
    /// Soil from the depth of the tips rolled to a thread that day: it goes before all else.
    pub rolled_wet: bool,
    /// All that is known of it comes from a single hole.
    pub one_hole: bool,
    /// How long a loosening here may be expected to last.
    pub lasts: Lasts,
}

/// One hole behind the machine.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct DigAdvice {
    /// The hole.
    pub dig: RecordId,
    /// Dug at least [`SEASON_DAYS`] after the pass: it tells whether it has held, not whether it was done.
    pub season_on: bool,
    /// The depth wanted, against which the share is taken: the pass's tip depth, else the zone's.
    pub target_mm: Option<u32>,
    /// Top of the layer to be broken, from the pit before, else from the zone's call.
    pub layer_top_mm: Option<u32>,
    /// Its bottom, likewise.
    pub layer_bottom_mm: Option<u32>,
    /// Share of the ground down to the depth wanted that is loose, measured, 0 to 1.
    pub share: Model<f64>,
    /// Share of the layer that is broken, measured, 0 to 1: of its thickness, by the trapezoid rule; where its top is not
    /// known, of the readings those that reach its bottom.
    pub layer_broken: Model<f64>,
    /// Mean thickness of the layer that is left, mm, measured.
    pub layer_left_mm: Model<f64>,
    /// Height of the ridge between the two tine lines above their bottoms, measured.
    pub ridge_mm: Model<u32>,
    /// What the figure of the tines lets expect.
    pub figure: Model<LoosenedRange>,
    /// Where it stayed firm, from one line to the other.
    pub firm_at: Vec<Stretch>,
    /// What the pass did here.
    pub verdict: Verdict,
    /// What the verdict stands on.
    pub why: Vec<VerdictReason>,
    /// Likely causes, the likeliest first; empty where it is done, cannot be said, or the hole is of a later season.
    pub causes: Vec<LikelyCause>,
    /// The pit before, and what has changed.
    pub pair: Option<Pair>,
}

/// A stretch between two tine lines that stayed firm above the mark: the layer's bottom, else [`PASS_MARK`] of the
/// depth wanted.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Stretch {
    /// Beginning as a share of the way from the first line to the next, 0 to 1.
    pub from: f64,
    /// End, likewise.
    pub to: f64,
    /// Beginning from the first line, where the spacing of the legs is known.
    pub from_mm: Option<u32>,
    /// End, likewise.
    pub to_mm: Option<u32>,
    /// Under what it lies.
    pub across: Across,
}

/// What a verdict stands on. Written in JSON with its name as `why`.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
#[serde(tag = "why", rename_all = "snake_case")]
#[expect(missing_docs, reason = "fields say what they are: shares, depths")]
pub enum VerdictReason {
    /// No depths to firm soil were read, or there is no depth to hold them against.
    NoReadings,
    /// This share of the layer is broken.
    LayerBroken { share: f64 },
    /// No layer is known; this share of the ground down to the depth wanted is loose.
    SectionLoose { share: f64 },
    /// No deeper than before the pass.
    NoDeeper { before_mm: u32, now_mm: u32 },
    /// Walls of the slot smeared, or a slot below the loosened ground, and little else loosened.
    PressedSlot,
    /// Subsoil on the surface in large clods.
    Thrown,
    /// Most of the layer's plates are left whole.
    PlatesLeft,
    /// Nothing was read, but what the slot looks like is known to come of a pass that does not loosen.
    SlotSeen { smeared: bool, narrow: bool },
    /// A floor of the layer stays from line to line: nowhere between them is it broken through.
    FloorLeft,
    /// Something seen or noted counts against it; `answer` is the code of the answer.
    Against { clue: PassClue, answer: &'static str },
}

/// One cause as likely as the clues make it.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct LikelyCause {
    /// The cause.
    pub cause: FailureCause,
    /// How likely against the others, 0 to 1; they add up to 1.
    pub share: f64,
    /// What speaks for and against it, strongest first.
    pub reasons: Vec<CauseReason>,
    /// The check that tells it from the others; `None` where it has been made.
    pub check: Option<Check>,
    /// The change to make.
    pub remedy: Remedy,
}

/// What one clue says of a cause.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CauseReason {
    /// The clue.
    pub clue: PassClue,
    /// Its answer, an index into [`PassClue::answers`].
    pub answer: usize,
    /// Weight of evidence, 10 · log10; positive speaks for the cause.
    pub decibans: f64,
}

impl serde::Serialize for CauseReason {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeStruct;
        let mut reason = serializer.serialize_struct("CauseReason", 3)?;
        reason.serialize_field("clue", &self.clue)?;
        reason.serialize_field("answer", &self.clue.answers().get(self.answer))?;
        reason.serialize_field("decibans", &self.decibans)?;
        reason.end()
    }
}

/// The pit before the pass beside the hole behind it.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Pair {
    /// The pit.
    pub before: RecordId,
    /// How it was found.
    pub by: PairBy,
    /// Condition of its worst layer.
    pub condition: Condition,
    /// Top of that layer.
    pub top_mm: u32,
    /// Bottom of that layer.
    pub bottom_mm: u32,
    /// Depth to its first Tight or Shut layer; `None` without one.
    pub firm_before_mm: Option<u32>,
    /// Mean depth to firm soil now; `None` without readings.
    pub firm_now_mm: Option<u32>,
}

/// Heavy wheels on freshly loosened ground: its strength can exceed the state before loosening (a sandy loam, driven on
/// a week later; soilandwater.org.uk).
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct TrafficWarning {
    /// Day of the pass.
    pub loosened: NaiveDate,
    /// Day of the wheels.
    pub driven_on: NaiveDate,
    /// Days between.
    pub days: i64,
}

/// Whether it has held: holes a season on against the first ones.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Held {
    /// Whether it has.
    pub lasting: Lasting,
    /// Mean share of the layer broken (of the section where no layer is known), then.
    pub then: Option<f64>,
    /// The same a season on.
    pub now: Option<f64>,
    /// What roots do a season on: the worst seen.
    pub roots: Option<RootsSeen>,
}

/// Returns what the holes behind the machine say of each pass, in the order of the notes. `reading` and `advice` are those of
/// the same notes.
pub fn look_behind(notes: &FieldNotes, reading: &FieldReading, advice: &FieldAdvice) -> Vec<PassAdvice> {
    look_behind_with(notes, reading, advice, CauseTable::standard())
}

/// The same by a given table of causes.
pub fn look_behind_with(
    notes: &FieldNotes,
    reading: &FieldReading,
    advice: &FieldAdvice,
    table: &CauseTable,
) -> Vec<PassAdvice> {
    look_behind_on(notes, reading, advice, &FieldMap::of(&notes.field), table)
}

/// The same on a day, in a field that is laid out already: readings that do not reach the next tine line yet are not
/// looked at. Without a day all readings are taken as finished.
pub(crate) fn look_behind_as_of(
    notes: &FieldNotes,
    reading: &FieldReading,
    advice: &FieldAdvice,
    map: &FieldMap,
    today: Option<NaiveDate>,
) -> Vec<PassAdvice> {
    let finished = today.and_then(|today| unfinished::without_unfinished(notes, today));
    look_behind_on(finished.as_ref().unwrap_or(notes), reading, advice, map, CauseTable::standard())
}

fn look_behind_on(
    notes: &FieldNotes,
    reading: &FieldReading,
    advice: &FieldAdvice,
    map: &FieldMap,
    table: &CauseTable,
) -> Vec<PassAdvice> {
    let field = &notes.field;
    let mut passes: Vec<PassAdvice> = notes
        .passes
        .iter()
        .map(|pass| {
            let read = |dig| hole::read(notes, map, pass, dig, reading, advice, table);
            let digs: Vec<DigAdvice> = pass.after_digs.iter().map(read).collect();
            let held = lasting::held(pass, &digs);
            let tip_mm = ground::wanted(pass, None, advice).depth_mm;
            let rolled = tip_mm.and_then(|tip_mm| evidence::roll_at_tip(pass, field, tip_mm));
            let roll = Rolled::of(rolled, field);
            let (next, check, remedy) = next_step::next(pass, &digs, held, roll);
            let can_say = |dig: &&DigAdvice| !dig.season_on && dig.verdict != Verdict::CannotSay;
            let one_hole = digs.iter().filter(can_say).count() == 1;
            PassAdvice {
                pass: pass.id,
                verdict: next_step::verdict(&digs),
                digs,
                next,
                check,
                remedy,
                no_strip_before: false,
                traffic: lasting::traffic(pass, field),
                held,
                rolled_wet: roll == Rolled::Thread,
                one_hole,
                lasts: Lasts::of(field),
            }
        })
        .collect();
    let verdicts: Vec<_> =
        notes.passes.iter().zip(&passes).map(|(pass, advice)| (pass, advice.verdict)).collect();
    let unproven: Vec<bool> =
        notes.passes.iter().map(|pass| next_step::no_strip_before(pass, &verdicts)).collect();
    for (advice, no_strip_before) in passes.iter_mut().zip(unproven) {
        advice.no_strip_before = no_strip_before;
    }
    passes
}
