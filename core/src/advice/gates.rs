//! The gates a justified loosening has to pass in the field, in their order: the roll test at tip depth and at
//! the surface, what lies buried, the machine's reach, deep clay.

use super::call::{Obstacle, Readiness, Stance, TipDepth, What, Why};
use super::pit_view::PitView;
use super::steel::DEEP_CLAY_MM;
use crate::reading::LayerReading;
use crate::record::{Buried, Call, Field, Roll, RollOutcome, TextureNote};
use crate::soil::roll::RollMeaning;
use crate::soil::texture::TextureGroup;

/// Clearance to keep above drains, moles and services where none was set. Our judgement; no figure was seen.
pub const CLEARANCE_MM: u32 = 100;
/// A roll counts for the tip depth when it was taken within this distance of the tip range. Our judgement.
const ROLL_NEAR_MM: u32 = 75;
/// A roll counts for the surface when it was taken no deeper than this. Our judgement.
const SURFACE_MM: u32 = 100;

/// What the gates leave of a justified loosening.
#[derive(Debug)]
pub struct Gated {
    /// The call.
    pub call: Call,
    /// Where the call is still to loosen.
    pub readiness: Readiness,
    /// Tip depth within the machine's reach.
    pub tip: TipDepth,
    /// What the gates say; the deciding one first.
    pub whys: Vec<Why>,
    /// Dry at tip depth.
    pub cloddy: bool,
}

/// Sends a justified loosening through the gates. The first that fails gives the call; the others are told too,
/// so that nobody waits for a dry day only to meet the drains.
pub fn pass(field: &Field, views: &[&PitView], deciding: &LayerReading, tip: TipDepth) -> Gated {
    let mut fails: Vec<(Call, What)> = Vec::new();
    let mut notes: Vec<Why> = Vec::new();
    let (tip, in_the_way) = fitted(field, tip);

    let rolled = Rolled::of(views, &tip);
    fails.extend(rolled.tip.threads().map(|what| (Call::Wait, what)));
    fails.extend(rolled.surface.threads().map(|what| (Call::Wait, what)));
    let texture = deciding.texture.or(field.texture.map(TextureNote::group));
    let (readiness, cloddy) = rolled.tip.fitness(texture, tip.hi_mm);
    notes.extend(rolled.notes(readiness));

    fails.extend(in_the_way.into_iter().map(|what| (Call::AskSpecialist, what)));
    let bottom_mm = tip.bottom_mm;
    if texture == Some(TextureGroup::Heavy) && bottom_mm > DEEP_CLAY_MM {
        if field.deep_clay_anyway == Some(true) {
            notes.push(Why { stance: Stance::Against, what: What::DeepClayHeldTo { bottom_mm } });
        } else {
            fails.push((Call::RootsFirst, What::DeepClay { bottom_mm }));
        }
    }

    let call = fails.first().map_or(Call::Loosen, |(call, _)| *call);
    let failed = fails
        .into_iter()
        .enumerate()
        .map(|(place, (_, what))| Why { stance: if place == 0 { Stance::For } else { Stance::Note }, what });
    let whys = failed.chain(notes).collect();
    Gated { call, readiness, tip, whys, cloddy }
}

/// A tip depth fitted to a field: no deeper than the machine reaches, with what stands in its way: whatever lies
/// buried nearer than the clearance, and a reach that falls short.
pub fn fitted(field: &Field, mut tip: TipDepth) -> (TipDepth, Vec<What>) {
    let Some(reach_mm) = field.reach_mm else { return (tip, too_near(field, &tip)) };
    tip.hi_mm = tip.hi_mm.min(reach_mm.max(tip.lo_mm));
    let short = (reach_mm < tip.lo_mm).then_some(What::BeyondReach { tip_mm: tip.lo_mm, reach_mm });
    (tip, too_near(field, &tip).into_iter().chain(short).collect())
}

/// Whatever lies buried nearer to the deepest tip than the clearance, shallowest first.
fn too_near(field: &Field, tip: &TipDepth) -> Vec<What> {
    let clearance_mm = field.clearance_mm.unwrap_or(CLEARANCE_MM);
    let buried = [
        (Buried::Drain, Obstacle::Drains),
        (Buried::MoleDrain, Obstacle::MoleDrains),
        (Buried::Service, Obstacle::Services),
    ];
    let mut near: Vec<(u32, Obstacle)> = buried
        .into_iter()
        .filter_map(|(kind, obstacle)| Some((field.shallowest_mm(kind)?, obstacle)))
        .filter(|(depth_mm, _)| tip.hi_mm.saturating_add(clearance_mm) > *depth_mm)
        .collect();
    crate::order::sort_by(&mut near, Ord::cmp);
    near.into_iter()
        .map(|(depth_mm, obstacle)| What::TooNear { obstacle, depth_mm, tip_mm: tip.hi_mm, clearance_mm })
        .collect()
}

/// Distance of a roll from the surface or from the tip range.
fn away_mm(roll: &Roll, surface: bool, tip: &TipDepth) -> u32 {
    if surface {
        roll.depth_mm
    } else {
        tip.lo_mm.saturating_sub(roll.depth_mm).max(roll.depth_mm.saturating_sub(tip.hi_mm))
    }
}

/// Whether a roll is near enough to count for the surface or for the tip.
pub fn counts(roll: &Roll, surface: bool, tip: &TipDepth) -> bool {
    away_mm(roll, surface, tip) <= if surface { SURFACE_MM } else { ROLL_NEAR_MM }
}

/// The roll tests that count: of the zone's last day of rolling, at tip depth and at the surface.
struct Rolled {
    tip: Rolls,
    surface: Rolls,
}

/// Outcomes at one of the two depths, one a pit.
struct Rolls {
    surface: bool,
    seen: Vec<(u32, RollOutcome)>,
}

impl Rolled {
    fn of(views: &[&PitView], tip: &TipDepth) -> Self {
        Self { tip: Rolls::of(views, false, tip), surface: Rolls::of(views, true, tip) }
    }

    /// What was rolled, or is missing, beside a thread that decides.
    fn notes(&self, readiness: Readiness) -> Vec<Why> {
        let mut notes = self.tip.fit();
        if let Readiness::RollFirst { depth_mm } = readiness
            && self.tip.seen.is_empty()
        {
            notes.push(Why { stance: Stance::Against, what: What::RollMissing { depth_mm } });
        }
        if self.surface.seen.is_empty() {
            notes.push(Why { stance: Stance::Note, what: What::SurfaceRollMissing });
        } else {
            notes.extend(self.surface.fit());
        }
        notes
    }
}

impl Rolls {
    /// The nearest roll of each pit; of equally near ones the wettest. Moisture is of a day: rolls of days before
    /// the last count no more.
    fn of(views: &[&PitView], surface: bool, tip: &TipDepth) -> Self {
        let nearest = |view: &&PitView| {
            let rolls = view.pit.rolls.iter().filter(|roll| counts(roll, surface, tip));
            let near = rolls.map(|roll| (away_mm(roll, surface, tip), roll.roll, roll.depth_mm));
            let (_, outcome, depth_mm) = near.min()?;
            Some((view.pit.dug.map(|time| time.date_naive()), depth_mm, outcome))
        };
        let all: Vec<_> = views.iter().filter_map(nearest).collect();
        let last = all.iter().filter_map(|(day, ..)| *day).max();
        let mut seen: Vec<(u32, RollOutcome)> = all
            .into_iter()
            .filter(|(day, ..)| day.is_none() || *day == last)
            .map(|(_, depth_mm, outcome)| (depth_mm, outcome))
            .collect();
        crate::order::sort_by_key(&mut seen, |&(depth_mm, outcome)| (outcome, depth_mm));
        Self { surface, seen }
    }

    fn what(&self, (depth_mm, roll): (u32, RollOutcome)) -> What {
        What::Rolled { depth_mm, roll, surface: self.surface }
    }

    /// A thread anywhere: too wet (Tasmanian state guide, AHDB: soil from the surface and from working depth).
    fn threads(&self) -> Option<What> {
        self.seen.first().filter(|(_, roll)| *roll == RollOutcome::Thread).map(|&seen| self.what(seen))
    }

    /// Each outcome seen that lets loosening stand, once.
    fn fit(&self) -> Vec<Why> {
        let mut fit: Vec<(u32, RollOutcome)> =
            self.seen.iter().copied().filter(|(_, roll)| *roll != RollOutcome::Thread).collect();
        fit.dedup_by_key(|(_, roll)| *roll);
        let stance = |roll| if roll == RollOutcome::ShortLengths { Stance::For } else { Stance::Note };
        fit.into_iter().map(|seen| Why { stance: stance(seen.1), what: self.what(seen) }).collect()
    }

    /// What the rolls at tip depth say of the day, by the one rule of [`RollMeaning`]. In sand there is nothing to
    /// roll for.
    fn fitness(&self, texture: Option<TextureGroup>, depth_mm: u32) -> (Readiness, bool) {
        let says =
            |meaning| self.seen.iter().any(|(_, roll)| RollMeaning::of(texture, Some(*roll)) == meaning);
        let crumbles = says(RollMeaning::DryAllowed);
        let readiness = if says(RollMeaning::Right) || crumbles {
            Readiness::Fit
        } else if texture == Some(TextureGroup::Sand) || says(RollMeaning::NotApplicable) {
            Readiness::RollNotApplicable
        } else {
            Readiness::RollFirst { depth_mm }
        };
        (readiness, crumbles)
    }
}
