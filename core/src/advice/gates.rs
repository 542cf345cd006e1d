//! The gates a justified loosening has to pass in the field, in their order: what lies buried, the machine, deep clay, the
//! roll test at tip depth and at the surface. Safety goes first, whatever else holds; to wait is told last, so that nobody
//! waits for a dry day only to meet the drains.

use super::buried;
use super::call::{Readiness, Stance, TipDepth, What, Why};
use super::machine::{CriticalDepth, CriticalPlace, foot_width_for};
use super::pit_view::PitView;
use super::steel::DEEP_CLAY_MM;
use super::zones::Ground;
use crate::place::FieldMap;
use crate::reading::LayerReading;
use crate::record::{Call, Field, Foot, Machine, Roll, RollOutcome, TextureNote, Zone};
use crate::soil::roll::RollMeaning;
use crate::soil::texture::TextureGroup;
use chrono::{Days, NaiveDate};

/// A roll counts for the tip depth when it was taken within this distance of the tip range. Our judgement.
const ROLL_NEAR_MM: u32 = 75;
/// A roll counts for the surface when it was taken no deeper than this. Our judgement.
const SURFACE_MM: u32 = 100;
/// Days after its own that a roll still counts. Our judgement; no life of a moisture test is published, and below 300 mm
/// soil goes from too wet to fit within a day (J. Orson, NIAB).
pub const ROLL_HOLDS_DAYS: u64 = 1;

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

/// Sends a justified loosening through the gates. The first that fails gives the call; the others are told too.
pub fn pass(
    ground: &Ground,
    zone: Zone,
    views: &[&PitView],
    deciding: &LayerReading,
    tip: TipDepth,
) -> Gated {
    let (field, today) = (ground.field, ground.today);
    let mut fails: Vec<(Call, What)> = Vec::new();
    let mut notes: Vec<Why> = Vec::new();
    let note = |what| Why { stance: Stance::Note, what };

    let over = buried::fitted_under(field, ground.map, zone, tip, today);
    let (tip, short) = within_reach(ground, over.tip);
    fails.extend(over.in_the_way.into_iter().chain(short).map(|what| (Call::AskSpecialist, what)));
    notes.extend(over.lifted.into_iter().chain(over.close).map(note));
    let pits: Vec<_> = views.iter().map(|view| view.pit).collect();
    notes.extend(buried::services_told(field, ground.map, zone, &pits, today).into_iter().map(note));

    let texture = deciding.texture.or(field.texture.map(TextureNote::group));
    let bottom_mm = tip.bottom_mm;
    if texture == Some(TextureGroup::Heavy) && bottom_mm > DEEP_CLAY_MM {
        if field.deep_clay_anyway == Some(true) {
            notes.push(Why { stance: Stance::Against, what: What::DeepClayHeldTo { bottom_mm } });
        } else {
            fails.push((Call::RootsFirst, What::DeepClay { bottom_mm }));
        }
    }

    let rolled = Rolled::of(ground, zone, views, &tip);
    fails.extend(rolled.tip.threads().map(|what| (Call::Wait, what)));
    fails.extend(rolled.surface.threads().map(|what| (Call::Wait, what)));
    let (readiness, cloddy) = rolled.tip.fitness(texture, tip.hi_mm);
    notes.extend(rolled.notes(readiness));

    let call = fails.first().map_or(Call::Loosen, |(call, _)| *call);
    let failed = fails
        .into_iter()
        .enumerate()
        .map(|(place, (_, what))| Why { stance: if place == 0 { Stance::For } else { Stance::Note }, what });
    let whys = failed.chain(notes).collect();
    Gated { call, readiness, tip, whys, cloddy }
}

/// A tip depth fitted to a field of which nothing else is known: no deeper than the machine reaches and what lies buried
/// lets it, with what stands in its way.
pub fn fitted(field: &Field, tip: TipDepth) -> (TipDepth, Vec<What>) {
    let map = FieldMap::of(field);
    let ground = Ground {
        field,
        pits: &[],
        map: &map,
        machines: &[],
        passes: &[],
        today: None,
        references_mm: Vec::new(),
    };
    let over = buried::fitted_under(field, &map, Zone::Whole, tip, None);
    let (tip, short) = within_reach(&ground, over.tip);
    (tip, over.in_the_way.into_iter().chain(short).collect())
}

/// A tip depth no deeper than the field's machine reaches, and what falls short: that reach, or every machine that is
/// noted.
fn within_reach(ground: &Ground, mut tip: TipDepth) -> (TipDepth, Option<What>) {
    if let Some(reach_mm) = ground.field.reach_mm {
        tip.hi_mm = tip.hi_mm.min(reach_mm.max(tip.lo_mm));
        if reach_mm < tip.lo_mm {
            return (tip, Some(What::BeyondReach { tip_mm: tip.lo_mm, reach_mm }));
        }
    }
    let none_fits =
        !ground.machines.is_empty() && !ground.machines.iter().any(|machine| fits(machine, tip.lo_mm));
    let foot_mm = foot_width_for(tip.lo_mm, Foot::Plain).least_mm.unwrap_or_default();
    (tip, none_fits.then_some(What::NoMachine { tip_mm: tip.lo_mm, foot_mm }))
}

/// Returns whether a machine reaches a tip depth and is not held to press there instead of lifting. With wings nobody gives a
/// figure, so they never rule a machine out.
fn fits(machine: &Machine, tip_mm: u32) -> bool {
    let reaches = machine.reach_mm.is_none_or(|reach_mm| reach_mm >= tip_mm);
    reaches && CriticalDepth::of(machine).place(tip_mm) != CriticalPlace::Below
}

/// Distance of a roll from the surface or from the tip range.
fn away_mm(roll: &Roll, surface: bool, tip: &TipDepth) -> u32 {
    if surface {
        roll.depth_mm
    } else {
        tip.lo_mm.saturating_sub(roll.depth_mm).max(roll.depth_mm.saturating_sub(tip.hi_mm))
    }
}

/// Returns whether a roll is near enough to count for the surface or for the tip.
pub fn counts(roll: &Roll, surface: bool, tip: &TipDepth) -> bool {
    away_mm(roll, surface, tip) <= if surface { SURFACE_MM } else { ROLL_NEAR_MM }
}

/// The roll tests that count: of the zone's last day of rolling, at tip depth and at the surface.
struct Rolled {
    tip: Rolls,
    surface: Rolls,
    /// Rolls that were taken, and why they count no more.
    past: Option<What>,
}

/// Outcomes at one of the two depths, one a pit.
struct Rolls {
    surface: bool,
    /// The day they were taken.
    on: Option<NaiveDate>,
    seen: Vec<(u32, RollOutcome)>,
}

/// One roll of a pit or a pass: day, depth, outcome.
type Taken = (Option<NaiveDate>, u32, RollOutcome);

impl Rolled {
    /// Moisture is of a day: rolls of days before the last one count no more, and none once the last is past.
    fn of(ground: &Ground, zone: Zone, views: &[&PitView], tip: &TipDepth) -> Self {
        let [at_tip, at_surface] = [false, true].map(|surface| taken(ground, zone, views, surface, tip));
        let last = at_tip.iter().chain(&at_surface).filter_map(|(day, ..)| *day).max();
        let past = last.and_then(|last| past(ground, last));
        let rolls = |surface: bool, taken: Vec<Taken>| {
            // A roll without a day is not believed to be newer than those that are past.
            let counts = |(day, ..): &Taken| past.is_none() && (day.is_none() || *day == last);
            let mut seen: Vec<_> =
                taken.into_iter().filter(counts).map(|(_, depth_mm, outcome)| (depth_mm, outcome)).collect();
            crate::order::sort_by_key(&mut seen, |&(depth_mm, outcome)| (outcome, depth_mm));
            Rolls { surface, on: last.filter(|_| past.is_none()), seen }
        };
        Self { tip: rolls(false, at_tip), surface: rolls(true, at_surface), past }
    }

    /// Returns what was rolled, or is missing, beside a thread that decides.
    fn notes(&self, readiness: Readiness) -> Vec<Why> {
        // Rolls that are past are all that is to be said of rolls.
        if let Some(what) = self.past.clone() {
            return vec![Why { stance: Stance::Against, what }];
        }
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

/// Why rolls of a day count no more, where they do not: it has rained since, or too many days have gone.
fn past(ground: &Ground, on: NaiveDate) -> Option<What> {
    let rain = ground.field.last_rain.filter(|rain| *rain > on);
    let until = on.checked_add_days(Days::new(ROLL_HOLDS_DAYS));
    let gone = ground.today.zip(until).is_some_and(|(today, until)| today > until);
    rain.map(|rain| What::RainSince { rolled: on, rain })
        .or_else(|| gone.then_some(What::RollPast { rolled: on }))
}

/// The nearest roll of each pit and pass of a zone; of equally near ones the wettest. For the tips only soil from below
/// the layer stands: what is inside or above it dries and wets by itself.
fn taken(ground: &Ground, zone: Zone, views: &[&PitView], surface: bool, tip: &TipDepth) -> Vec<Taken> {
    let nearest = |rolls: &[Roll], layer_bottom_mm: u32, day: Option<NaiveDate>| -> Option<Taken> {
        let below = |roll: &&Roll| surface || roll.depth_mm >= layer_bottom_mm;
        let counting = rolls.iter().filter(below).filter(|roll| counts(roll, surface, tip));
        let (_, outcome, depth_mm) =
            counting.map(|roll| (away_mm(roll, surface, tip), roll.roll, roll.depth_mm)).min()?;
        Some((day, depth_mm, outcome))
    };
    let of_pit = |view: &&PitView| {
        let day = view.pit.dug.map(|time| time.date_naive());
        nearest(&view.pit.rolls, view.harmed_bottom_mm().unwrap_or(0), day)
    };
    let passes = ground.passes.iter().filter(|pass| super::in_time::covers(pass, zone));
    let of_passes = passes.filter_map(|pass| nearest(&pass.rolls, tip.bottom_mm, pass.done));
    views.iter().filter_map(of_pit).chain(of_passes).collect()
}

impl Rolls {
    fn what(&self, (depth_mm, roll): (u32, RollOutcome)) -> What {
        What::Rolled { depth_mm, roll, surface: self.surface, on: self.on }
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

    /// Returns what the rolls at tip depth say of the day, by the one rule of [`RollMeaning`]. In sand there is nothing to
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
