//! A layer against the same depth of the reference pits.

use super::clue::Versus;
use super::face::FaceLayer;
use crate::record::{ChannelsSeen, ComesAway, RootsSeen, Sign, Signs};

/// Mean difference in steps of the signs from which a layer counts as far worse than the reference, from which as
/// worse, and below which as the same. Between the last two nothing is said. A class is about one step of a sign with
/// four answers, less of one with three: so two classes are put at one and a half steps. Our judgement.
const FAR_WORSE_STEPS: f64 = 1.5;
/// See [`FAR_WORSE_STEPS`].
const WORSE_STEPS: f64 = 0.5;
/// See [`FAR_WORSE_STEPS`].
const SAME_STEPS: f64 = 0.25;

/// Far worse than, worse than, or the same as, the reference; `None` where no sign was looked at in both.
///
/// Each sign that has an order counts by the steps it lies apart, weighted by the thickness in common.
pub fn versus(layer: &FaceLayer, references: &[Vec<FaceLayer>]) -> Option<Versus> {
    let (mut steps, mut thickness_mm) = (0.0, 0.0);
    for other in references.iter().flatten() {
        let common_mm =
            f64::from(layer.bottom_mm.min(other.bottom_mm).saturating_sub(layer.top_mm.max(other.top_mm)));
        for &sign in Sign::ALL {
            if let (Some(here), Some(there)) = (badness(layer.signs, sign), badness(other.signs, sign)) {
                steps += (here - there) * common_mm;
                thickness_mm += common_mm;
            }
        }
    }
    if thickness_mm == 0.0 {
        return None;
    }
    let mean = steps / thickness_mm;
    if mean >= FAR_WORSE_STEPS {
        Some(Versus::FarWorse)
    } else if mean >= WORSE_STEPS {
        Some(Versus::Worse)
    } else {
        (mean < SAME_STEPS).then_some(Versus::Same)
    }
}

/// How bad for roots an answer is, in steps; `None` where it was not looked at or has no order.
fn badness(signs: Signs, sign: Sign) -> Option<f64> {
    match sign {
        Sign::ComesAway => signs.comes_away.map(|value| match value {
            ComesAway::Crumbs | ComesAway::LooseGrains => 0.0,
            ComesAway::RoundedLumps => 1.0,
            ComesAway::SharpBlocks | ComesAway::OneMass => 2.0,
            ComesAway::FlatPlates => 3.0,
        }),
        Sign::Channels => signs.channels.map(|value| match value {
            ChannelsSeen::Many => 0.0,
            ChannelsSeen::Some => 1.0,
            ChannelsSeen::None | ChannelsSeen::CutOff => 2.0,
        }),
        Sign::Roots if signs.roots == Some(RootsSeen::NoneToJudge) => None,
        Sign::Resistance | Sign::Pores | Sign::Roots | Sign::Patches | Sign::Smell => {
            signs.get(sign).map(|steps| steps as f64)
        }
        Sign::ClodInWater => None,
    }
}
