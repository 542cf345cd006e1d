//! What belongs to a call: cautions, what has to follow, the rooting depth lost.

use super::buried::{UNASKED_DEEPEST_MM, asked_holds};
use super::call::{Caution, FollowUp, Readiness, RootingLoss, TipDepth, WaterHeld, What, Why, ZoneCall};
use crate::reading::{LayerReading, level};
use crate::record::{Buried, Call, Cause, Condition, Field, OrganicMatterLevel, RootsSeen, TextureNote};
use crate::soil::available_water;
use crate::soil::rooting;
use crate::soil::texture::TextureGroup;
use chrono::NaiveDate;

/// A hole deeper than this is deeper than the knee. Common practice, no source.
const KNEE_MM: u32 = 450;

/// From this slope on the legs run across it: contour working halves the loss from 3 % on (Wischmeier & Smith 1978, table
/// 13, value from memory); NRCS and the USDA Forest Service (0834-2828) say to follow contours.
pub const ACROSS_FROM_PERCENT: u32 = 3;
/// From this slope on contour working alone does less and less (Wischmeier & Smith 1978, table 13, value from memory), so
/// that loosened ground is to be covered.
pub const WASHES_FROM_PERCENT: u32 = 9;
/// Days that loosened ground is given to settle before it is sown: our judgement; no figure was found.
const SETTLES_IN_DAYS: i64 = 28;
/// Days of growth that a crop sown for its roots needs before the next one: two months, common practice, no source.
const ROOTS_IN_DAYS: i64 = 60;

/// What the cautions of a call follow from.
pub struct Stands<'a> {
    /// The call.
    pub call: Call,
    /// Depth of the deepest pit of the zone.
    pub deepest_mm: u32,
    /// Dry at tip depth.
    pub cloddy: bool,
    /// The deciding layer.
    pub harmed: Option<&'a LayerReading>,
    /// Tip depth, where there is one.
    pub tip: Option<TipDepth>,
    /// Reasons of the call.
    pub whys: &'a [Why],
}

/// The cautions that apply, those that bear on what is done now before the others.
pub fn cautions(stands: &Stands, field: &Field, today: Option<NaiveDate>) -> Vec<Caution> {
    let &Stands { call, deepest_mm, cloddy, harmed, tip, whys } = stands;
    let texture = harmed.and_then(|layer| layer.texture).or(field.texture.map(TextureNote::group));
    let loosen = call == Call::Loosen;
    let slope = field.slope_percent.unwrap_or(0);
    let sown_within = |days: i64| {
        let left =
            field.next_sown.zip(today).map(|(sown, today)| sown.signed_duration_since(today).num_days());
        left.is_some_and(|left| (0..days).contains(&left))
    };
    let deep = tip.is_some_and(|tip| tip.hi_mm > UNASKED_DEEPEST_MM);
    // Who waits, drains or asks still plans with a machine.
    let planned = loosen || call == Call::Wait;
    let applies = |caution: &Caution| match caution {
        Caution::NobodyAsked => planned && deep && field.services_asked.is_none(),
        Caution::AskAnew => planned && deep && field.services_asked.is_some() && !asked_holds(field, today),
        Caution::AcrossSlope => planned && slope >= ACROSS_FROM_PERCENT,
        Caution::SlopeWashes => planned && slope >= WASHES_FROM_PERCENT,
        Caution::ShortToSettle => planned && sown_within(SETTLES_IN_DAYS),
        Caution::ShortForRoots => {
            let stays = field.next_crop.as_deref().is_some_and(rooting::is_grass);
            call == Call::RootsFirst && !stays && sown_within(ROOTS_IN_DAYS)
        }
        Caution::LiftOut => planned && whys.iter().any(|why| matches!(why.what, What::LiftOut { .. })),
        Caution::AskBeforeDigging | Caution::FillHole | Caution::KnifeAway => true,
        Caution::DeepPit => deepest_mm > KNEE_MM,
        Caution::MachineStopped | Caution::EstimatesOnly | Caution::TrialStrip => planned,
        Caution::ProtectedGround => planned || matches!(call, Call::DrainFirst | Call::AskSpecialist),
        Caution::DrainsUnknown => planned && field.shallowest_mm(Buried::Drain).is_none(),
        Caution::CloddyDry => loosen && cloddy,
        Caution::SandSlowToPay => planned && texture == Some(TextureGroup::Sand),
        Caution::SiltAtRisk => planned && texture == Some(TextureGroup::Silty),
    };
    let mut cautions: Vec<Caution> = Caution::ALL.iter().copied().filter(applies).collect();
    bearing_first(&mut cautions, call);
    cautions
}

/// Puts the cautions that bear on what a call asks to be done now before the others.
fn bearing_first(cautions: &mut [Caution], call: Call) {
    crate::order::sort_by_key(cautions, |caution| !caution.bears_on(call));
}

impl Caution {
    /// Returns whether it bears on what a call asks to be done now: on the hole that is dug again, on the machine that goes in, on
    /// what is to be asked meanwhile. The others hold whenever it comes to that. Our judgement.
    pub const fn bears_on(self, call: Call) -> bool {
        let digs = matches!(call, Call::DigAgain);
        let works = matches!(call, Call::Loosen);
        match self {
            Self::NobodyAsked | Self::AskAnew | Self::DrainsUnknown | Self::ShortToSettle => {
                works || matches!(call, Call::Wait)
            }
            Self::LiftOut
            | Self::MachineStopped
            | Self::EstimatesOnly
            | Self::AcrossSlope
            | Self::SlopeWashes
            | Self::CloddyDry
            | Self::SandSlowToPay
            | Self::SiltAtRisk
            | Self::TrialStrip => works,
            Self::ShortForRoots => matches!(call, Call::RootsFirst),
            Self::ProtectedGround => works || matches!(call, Call::DrainFirst),
            Self::AskBeforeDigging | Self::FillHole | Self::DeepPit | Self::KnifeAway => digs,
        }
    }
}

/// Returns what has to follow, in order; `harmed` is the deciding layer.
///
/// Nobody is told to do what the field has already: organic matter where it is high, deep roots in a standing ley.
pub fn follow_up(call: Call, whys: &[Why], harmed: Option<&LayerReading>, field: &Field) -> Vec<FollowUp> {
    let mut steps = steps_after(call, whys, harmed);
    steps.retain(|step| !has_already(field, *step));
    steps
}

/// Returns whether a field has already what a step asks for.
pub fn has_already(field: &Field, step: FollowUp) -> bool {
    match step {
        FollowUp::OrganicMatter => field.organic_matter.map(level) == Some(OrganicMatterLevel::High),
        FollowUp::RootsAfter => field.crop_now.as_deref().is_some_and(rooting::is_grass),
        _ => false,
    }
}

fn steps_after(call: Call, whys: &[Why], harmed: Option<&LayerReading>) -> Vec<FollowUp> {
    let says = |test: fn(&What) -> bool| whys.iter().any(|why| test(&why.what));
    let pressed = harmed.is_some_and(|layer| layer.cause == Cause::Pressed).then_some(FollowUp::RemoveCause);
    match call {
        Call::LeaveIt | Call::AskSpecialist => Vec::new(),
        Call::RootsFirst => {
            [FollowUp::RootsAfter, FollowUp::OrganicMatter].into_iter().chain(pressed).collect()
        }
        Call::Loosen => {
            let always =
                [FollowUp::DigBehind, FollowUp::RootsAfter, FollowUp::OrganicMatter, FollowUp::NoTraffic];
            always.into_iter().chain(pressed).collect()
        }
        Call::Wait => vec![FollowUp::RollAgain],
        Call::DrainFirst => vec![FollowUp::MendDrainage],
        Call::DigAgain => {
            let unreadable = says(|what| matches!(what, What::FaceUnreadable { .. }));
            let rootless = says(|what| matches!(what, What::RootsNeeded { .. }));
            let moist = unreadable.then_some(FollowUp::DigWhenMoist);
            moist.into_iter().chain(rootless.then_some(FollowUp::DigInRootedCrop)).collect()
        }
    }
}

/// A call that time has made another one, with what belongs to it now: cautions that hold only for work go, and what has to
/// follow is that of the call.
pub fn belonging(mut call: ZoneCall) -> ZoneCall {
    let works = matches!(call.call, Call::Loosen | Call::Wait);
    let of_work = |caution: &Caution| {
        matches!(
            caution,
            Caution::NobodyAsked
                | Caution::AskAnew
                | Caution::LiftOut
                | Caution::AcrossSlope
                | Caution::SlopeWashes
                | Caution::ShortToSettle
                | Caution::MachineStopped
                | Caution::EstimatesOnly
                | Caution::TrialStrip
                | Caution::DrainsUnknown
                | Caution::CloddyDry
                | Caution::SandSlowToPay
                | Caution::SiltAtRisk
        )
    };
    call.cautions.retain(|caution| works || !of_work(caution));
    call.cautions.retain(|&caution| call.call == Call::RootsFirst || caution != Caution::ShortForRoots);
    bearing_first(&mut call.cautions, call.call);
    let worked =
        call.reasons.iter().any(|why| matches!(why.what, What::Behind { .. } | What::DidNotLast { .. }));
    call.follow_up = match call.call {
        // Loosened ground that is to be left as it is has to be held open.
        Call::LeaveIt if worked => {
            vec![FollowUp::RootsAfter, FollowUp::OrganicMatter, FollowUp::NoTraffic, FollowUp::RemoveCause]
        }
        Call::RootsFirst => vec![FollowUp::RootsAfter, FollowUp::NoTraffic, FollowUp::RemoveCause],
        Call::DigAgain if worked => vec![FollowUp::DigBehind],
        Call::DigAgain => Vec::new(),
        Call::Wait if call.readiness == Readiness::StripFirst => vec![FollowUp::DigBehind],
        _ => steps_after(call.call, &call.reasons, None),
    };
    if call.call == Call::LeaveIt {
        call.rooting_loss = None;
    }
    call
}

/// How much of the crop's rooting depth, and of the water that it can hold, a Tight or Shut layer cuts off: of the crop sown next where it is noted,
/// else of the one standing now, else of the last.
/// `None` where no depth is known of the crop, it does not root down to the layer, or roots were seen to pass it.
pub fn rooting_loss(field: &Field, layer: &LayerReading) -> Option<RootingLoss> {
    let crop = field.next_crop.as_ref().or(field.crop_now.as_ref()).or(field.last_crop.as_ref())?;
    let rooting = rooting::of(crop)?;
    let share = rooting.share_cut_off(layer.top_mm);
    let pass = matches!(layer.signs.roots, Some(RootsSeen::Through | RootsSeen::InCracks));
    (layer.condition >= Condition::Tight && !pass && share > 0.0).then(|| RootingLoss {
        crop: crop.clone(),
        potential_mm: rooting.depth_mm,
        top_mm: layer.top_mm,
        share,
        water: texture_of(field, layer).map(|texture| held(texture, rooting.depth_mm - layer.top_mm)),
    })
}

/// The texture of a layer, as fine as it was noted: the class of the field, unless the layer is of another group.
fn texture_of(field: &Field, layer: &LayerReading) -> Option<TextureNote> {
    match (layer.texture, field.texture) {
        (Some(group), Some(noted)) if group == noted.group() => Some(noted),
        (Some(group), _) => Some(TextureNote::Group(group)),
        (None, noted) => noted,
    }
}

fn held(texture: TextureNote, thickness_mm: u32) -> WaterHeld {
    let holds = available_water::holds(texture);
    let metres = f64::from(thickness_mm) / 1_000.0;
    let mm = |mm_per_m: f64| (metres * mm_per_m).round() as u32;
    WaterHeld { least_mm: mm(holds.least_mm_per_m), most_mm: mm(holds.most_mm_per_m) }
}
