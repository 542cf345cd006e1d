//! What belongs to a call: cautions, what has to follow, the rooting depth lost.

use super::call::{Caution, FollowUp, RootingLoss, What, Why};
use crate::reading::LayerReading;
use crate::record::{Call, Field, TextureNote};
use crate::soil::texture::TextureGroup;

/// A hole deeper than this is deeper than the knee. Common practice, no source.
const KNEE_MM: u32 = 450;

/// The cautions that apply, in the order of [`Caution::ALL`].
pub fn cautions(
    call: Call,
    deepest_mm: u32,
    cloddy: bool,
    harmed: Option<&LayerReading>,
    field: &Field,
) -> Vec<Caution> {
    let texture = harmed.and_then(|layer| layer.texture).or(field.texture.map(TextureNote::group));
    let loosen = call == Call::Loosen;
    // Who waits, drains or asks still plans with a machine.
    let planned = loosen || call == Call::Wait;
    let applies = |caution: &Caution| match caution {
        Caution::AskBeforeDigging | Caution::FillHole | Caution::KnifeAway => true,
        Caution::DeepPit => deepest_mm > KNEE_MM,
        Caution::MachineStopped | Caution::EstimatesOnly | Caution::TrialStrip => planned,
        Caution::ProtectedGround => planned || matches!(call, Call::DrainFirst | Call::AskSpecialist),
        Caution::DrainsUnknown => planned && field.drains_mm.is_none(),
        Caution::CloddyDry => loosen && cloddy,
        Caution::SandSlowToPay => planned && texture == Some(TextureGroup::Sand),
        Caution::SiltAtRisk => planned && texture == Some(TextureGroup::Silty),
    };
    Caution::ALL.iter().copied().filter(applies).collect()
}

/// What has to follow, in order.
pub fn follow_up(call: Call, whys: &[Why]) -> Vec<FollowUp> {
    let says = |test: fn(&What) -> bool| whys.iter().any(|why| test(&why.what));
    match call {
        Call::LeaveIt | Call::AskSpecialist => Vec::new(),
        Call::RootsFirst => {
            vec![FollowUp::RootsAfter, FollowUp::OrganicMatter, FollowUp::NoTraffic, FollowUp::RemoveCause]
        }
        Call::Loosen => vec![
            FollowUp::DigBehind,
            FollowUp::RootsAfter,
            FollowUp::OrganicMatter,
            FollowUp::NoTraffic,
            FollowUp::RemoveCause,
        ],
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

/// How much of a crop's rooting depth a layer that lets no root pass cuts off. `None` where the crop would not root
/// down to it.
pub fn rooting_loss(crop: &str, potential_mm: u32, top_mm: u32) -> Option<RootingLoss> {
    let lost_mm = potential_mm.checked_sub(top_mm).filter(|lost_mm| *lost_mm > 0)?;
    let share = f64::from(lost_mm) / f64::from(potential_mm);
    Some(RootingLoss { crop: crop.to_owned(), potential_mm, top_mm, share })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rooting depths of FAO-56, table 22, middle of the range.
    #[test]
    fn a_pan_at_450_mm_costs_wheat_most_of_its_depth_and_potatoes_little() {
        let share = |potential_mm| rooting_loss("crop", potential_mm, 450).map(|loss| loss.share);
        assert_eq!(share(1250), Some(0.64));
        assert_eq!(share(500), Some(0.10));
        assert_eq!(share(400), None);
    }
}
