//! What a pass did at a hole. No source gives a pass mark; the marks here are ours and simple on purpose.
//!
//! The measure is the share of the layer's thickness that is broken; without a layer, of the section down to the depth wanted.
//! - **Worse**: subsoil up in large clods; or a Y with less than [`MUCH`] of the layer broken, or smeared walls where the
//!   ground is hardly looser either (both of them where nothing was read): ground is pressed round the slots.
//! - **Done**: at least [`PASS_MARK`], broken through somewhere between the lines, and nothing seen counts against it: most
//!   plates left, slots of unequal depth, large clods, furrows. A speed that is none of the machine's is told beside it.
//! - **Not done**: no reading between the lines reaches the mark, or the hole is no deeper than before the pass; where
//!   nothing was read, a Y, or smeared walls without a V (DAFWA 2017: V good, Y too wet; DPIPWE Tasmania: compressed and
//!   smeared, so raise the tine).
//! - **Partly**: the rest. **Cannot say**: nothing to go by.

use super::across::Section;
use super::clue::PassClue;
use super::codes::Verdict;
use super::evidence::Evidence;
use super::{PASS_MARK, VerdictReason};
use crate::record::{AfterDig, Clods, PlatesLeft, Profile, Smear};

/// From this share on, a smeared wall is a blemish of a loosening and not all there is to it. Our judgement.
const MUCH: f64 = 0.5;

/// What was measured at a hole.
#[derive(Debug, Clone, Copy)]
pub struct Measured<'a> {
    /// The readings against the mark.
    pub section: Section<'a>,
    /// Share of the layer broken, where one is known.
    pub layer_broken: Option<f64>,
    /// Share of the section loose down to the depth wanted.
    pub share: Option<f64>,
    /// Mean depth to firm soil.
    pub firm_mm: u32,
}

impl Measured<'_> {
    /// The share the verdict stands on.
    fn measure(&self) -> Option<(f64, VerdictReason)> {
        let broken = self.layer_broken.map(|share| (share, VerdictReason::LayerBroken { share }));
        broken.or_else(|| self.share.map(|share| (share, VerdictReason::SectionLoose { share })))
    }
}

/// What was seen or noted that counts against a pass being done: the clue, its answers, and whether any of them alone is
/// enough. Clods and furrows: USDA Forest Service 0834-2828, pp. 3, 4, 6, for the direction; that one is enough, and that
/// a speed is not (it says how it was done, not what came of it), is our judgement.
const AGAINST: [(PassClue, &[&str], bool); 4] = [
    (PassClue::Slots, &["sloping", "jagged"], true),
    (PassClue::Clods, &["large"], true),
    (PassClue::Lift, &["furrows"], true),
    (PassClue::Speed, &["below", "above"], false),
];

/// The verdict, and what it stands on. `firm_before_mm` is the depth to firm soil in the pit before.
pub fn judge(
    dig: &AfterDig,
    measured: Option<Measured>,
    firm_before_mm: Option<u32>,
    evidence: &Evidence,
) -> (Verdict, Vec<VerdictReason>) {
    let found = measured.and_then(|measured| measured.measure().map(|(share, why)| (measured, share, why)));
    let mut why = vec![found.map_or(VerdictReason::NoReadings, |(_, _, why)| why)];
    let (smeared, slot) = (dig.smear == Some(Smear::Smeared), dig.profile == Some(Profile::Y));
    // Ground that gives way deeper than before is loose, whatever the walls look like.
    let looser = |measured: Measured| match firm_before_mm {
        Some(before_mm) => measured.firm_mm > before_mm,
        None => measured.share.is_some_and(|share| share >= MUCH),
    };
    let pressed = found.map_or(smeared && slot, |(measured, share, _)| {
        share < MUCH && (slot || (smeared && !looser(measured)))
    });
    let thrown = dig.subsoil_up == Some(true) && dig.clods == Some(Clods::Large);
    why.extend(pressed.then_some(VerdictReason::PressedSlot));
    why.extend(thrown.then_some(VerdictReason::Thrown));
    let no_deeper = found.zip(firm_before_mm).and_then(|((measured, ..), before_mm)| {
        let now_mm = measured.firm_mm;
        (now_mm <= before_mm).then_some(VerdictReason::NoDeeper { before_mm, now_mm })
    });
    let plates = dig.plates == Some(PlatesLeft::Most);
    let failing_sign = slot || (smeared && dig.profile != Some(Profile::V));
    let floor = found.is_some_and(|(measured, ..)| !measured.section.reaches_between());
    let against = AGAINST.iter().filter_map(|(clue, answers, enough)| {
        let answer = evidence.answer_among(*clue, answers)?;
        Some((VerdictReason::Against { clue: *clue, answer }, *enough))
    });
    let against: Vec<(VerdictReason, bool)> = against.collect();
    let marred = plates || floor || against.iter().any(|(_, enough)| *enough);
    let verdict = match found {
        _ if pressed || thrown => Verdict::Worse,
        None if failing_sign => Verdict::NotDone,
        None => Verdict::CannotSay,
        Some((_, share, _)) if share >= PASS_MARK && marred => Verdict::Partly,
        Some((_, share, _)) if share >= PASS_MARK => Verdict::Done,
        Some(_) if no_deeper.is_some() || floor => Verdict::NotDone,
        Some(_) => Verdict::Partly,
    };
    let sign_alone = found.is_none() && verdict == Verdict::NotDone;
    why.extend(sign_alone.then_some(VerdictReason::SlotSeen { smeared, narrow: slot }));
    if verdict != Verdict::Done {
        why.extend(no_deeper);
        why.extend(plates.then_some(VerdictReason::PlatesLeft));
        why.extend((floor && verdict == Verdict::Partly).then_some(VerdictReason::FloorLeft));
    }
    if matches!(verdict, Verdict::Done | Verdict::Partly) {
        why.extend(against.into_iter().map(|(why, _)| why));
    }
    (verdict, why)
}
