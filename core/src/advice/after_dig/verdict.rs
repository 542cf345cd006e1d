//! What a pass did at a hole. No source gives a pass mark; the marks here are ours and simple on purpose.
//!
//! The measure is the share of the layer broken; without a layer, of the section down to the depth wanted.
//! - **Worse**: subsoil up in large clods; or smeared walls or a Y, with less than [`MUCH`] loosened (both of them where
//!   nothing was read): ground is pressed round the slots.
//! - **Done**: at least [`PASS_MARK`], and most plates are not left.
//! - **Not done**: no reading between the lines reaches the mark, or the hole is no deeper than before the pass.
//! - **Partly**: the rest. **Cannot say**: nothing to go by.

use super::across::Section;
use super::codes::Verdict;
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

/// The verdict, and what it stands on. `firm_before_mm` is the depth to firm soil in the pit before.
pub fn judge(
    dig: &AfterDig,
    measured: Option<Measured>,
    firm_before_mm: Option<u32>,
) -> (Verdict, Vec<VerdictReason>) {
    let found = measured.and_then(|measured| measured.measure().map(|(share, why)| (measured, share, why)));
    let mut why = vec![found.map_or(VerdictReason::NoReadings, |(_, _, why)| why)];
    let (smeared, slot) = (dig.smear == Some(Smear::Smeared), dig.profile == Some(Profile::Y));
    let pressed = found.map_or(smeared && slot, |(_, share, _)| (smeared || slot) && share < MUCH);
    let thrown = dig.subsoil_up == Some(true) && dig.clods == Some(Clods::Large);
    why.extend(pressed.then_some(VerdictReason::PressedSlot));
    why.extend(thrown.then_some(VerdictReason::Thrown));
    let no_deeper = found.zip(firm_before_mm).and_then(|((measured, ..), before_mm)| {
        let now_mm = measured.firm_mm;
        (now_mm <= before_mm).then_some(VerdictReason::NoDeeper { before_mm, now_mm })
    });
    let plates = dig.plates == Some(PlatesLeft::Most);
    let verdict = match found {
        _ if pressed || thrown => Verdict::Worse,
        None => Verdict::CannotSay,
        Some((_, share, _)) if share >= PASS_MARK && plates => Verdict::Partly,
        Some((_, share, _)) if share >= PASS_MARK => Verdict::Done,
        Some(_) if no_deeper.is_some() => Verdict::NotDone,
        Some((measured, ..)) if !measured.section.reaches_between() => Verdict::NotDone,
        Some(_) => Verdict::Partly,
    };
    if verdict != Verdict::Done {
        why.extend(no_deeper);
        why.extend(plates.then_some(VerdictReason::PlatesLeft));
    }
    (verdict, why)
}
