//! What somebody notes of a virtual strip: it follows from what the ground was made to do, with slips.

use super::{Chance, Strip, Truth};
use pitface_core::record::{
    AfterDig, Clods, Extent, FeetSeen, Lift, Machine, Pass, PlatesLeft, Profile, RecordId, Roll, RollOutcome,
    Smear, SpeedRange, Unknown, Wings,
};

const READINGS: usize = 7;

fn id(number: u64) -> RecordId {
    RecordId::new(number, [5; 10])
}

fn to_cm(mm: f64) -> u32 {
    (mm.max(0.0) / 10.0).round() as u32 * 10
}

/// Somebody who looks, and sometimes does not or wrongly.
pub struct Eyes<'a> {
    /// Share of the observations that are missing or wrong, half of them each.
    pub slips: f64,
    pub chance: &'a mut Chance,
}

impl Eyes<'_> {
    fn err(&mut self, share: f64) -> bool {
        let slips = self.slips;
        self.chance.happens(slips * share)
    }

    fn noted<T: Copy + PartialEq>(&mut self, all: &[T], seen: T) -> Option<T> {
        let missing = self.err(0.5);
        let wrong = self.err(0.5);
        (!missing).then(|| if wrong { self.chance.other(all, seen) } else { seen })
    }

    /// A strip as noted.
    pub fn see(&mut self, truth: &Truth) -> Strip {
        let mut pass = self.pass(truth);
        pass.after_digs = vec![self.hole(truth)];
        let bottom_mm = to_cm(truth.bottom + 10.0 * self.chance.normal());
        Strip { machine: machine(truth), pass, bottom_mm }
    }

    fn pass(&mut self, truth: &Truth) -> Pass {
        let mut pass = Pass::new(id(2));
        pass.machine = Some(id(1));
        pass.extent = Some(Extent::TrialStrip);
        pass.tip_mm = Some(to_cm(truth.set_tip));
        let kmh = truth.kmh + 0.15 * self.chance.normal();
        pass.speed_kmh = (!self.err(0.5)).then_some(kmh);
        let roll = if truth.wet > 0.5 {
            RollOutcome::Thread
        } else if truth.dry > 0.45 || self.chance.happens(0.1) {
            RollOutcome::Crumbles
        } else {
            RollOutcome::ShortLengths
        };
        let possible = [RollOutcome::Thread, RollOutcome::ShortLengths, RollOutcome::Crumbles];
        let depth_mm = to_cm(truth.set_tip);
        let rolled = self.noted(&possible, roll);
        let record = |roll| Roll { id: id(4), depth_mm, roll, unknown: Unknown::new() };
        pass.rolls = rolled.map(record).into_iter().collect();
        pass
    }

    fn hole(&mut self, truth: &Truth) -> AfterDig {
        let mut dig = AfterDig::new(id(3));
        self.measure(truth, &mut dig);
        let slot = truth.has_slot();
        let y = slot || truth.wet > self.chance.between(0.4, 0.7);
        dig.profile = self.noted(Profile::ALL, if y { Profile::Y } else { Profile::V });
        let smears = 0.05 + 0.85 * truth.wet + if slot { 0.45 } else { 0.0 };
        let smear = if self.chance.happens(smears) { Smear::Smeared } else { Smear::None };
        dig.smear = self.noted(Smear::ALL, smear);
        let lift = self.lift(truth);
        dig.lift = self.noted(Lift::ALL, lift);
        let lumps = 45.0 + 75.0 * truth.dry + 35.0 * truth.fast + 25.0 * truth.wet + 25.0 * truth.slow;
        let large = lumps + 20.0 * self.chance.normal() > 85.0;
        dig.clods = self.noted(Clods::ALL, if large { Clods::Large } else { Clods::Small });
        let up = 75.0 * truth.fast + 22.0 * truth.dry + 14.0 * self.chance.normal() > 40.0;
        dig.subsoil_up = self.noted(&[true, false], up);
        let plates = self.plates(truth);
        dig.plates = self.noted(PlatesLeft::ALL, plates);
        let feet = self.feet(truth);
        dig.feet = self.noted(FeetSeen::ALL, feet);
        dig.old_slots = self.noted(&[true, false], !truth.old.is_empty());
        dig
    }

    fn measure(&mut self, truth: &Truth, dig: &mut AfterDig) {
        let firm = (0..READINGS).map(|at| {
            let slip = if self.err(1.0) { self.chance.between(-90.0, 90.0) } else { 0.0 };
            let depth = truth.depth(at as f64 / (READINGS - 1) as f64);
            to_cm(depth + slip + (12.0 + 12.0 * truth.dry) * self.chance.normal())
        });
        dig.firm_mm = firm.collect();
        if self.err(0.5) {
            return;
        }
        let slots = truth.tips.iter().map(|tip| {
            let slip = if self.err(0.5) { self.chance.between(-60.0, 60.0) } else { 0.0 };
            to_cm(tip + slip + 8.0 * self.chance.normal())
        });
        dig.slots_mm = slots.collect();
    }

    /// The surface: how high it was lifted, and how rough.
    fn lift(&mut self, truth: &Truth) -> Lift {
        let lifted = 0.17 * truth.mean_depth() * (1.0 - 0.75 * truth.wet) * (1.0 - 0.6 * truth.slow);
        let lost = if truth.has_slot() { 0.6 } else { 1.0 } * (1.0 - 0.3 * truth.leak());
        let heave = lifted * lost + 6.0 * self.chance.normal();
        let shallow = (300.0 - truth.tips[truth.leg]).max(0.0) * 0.25;
        let rough = 8.0 + 48.0 * truth.fast + 30.0 * truth.dry + shallow + 6.0 * self.chance.normal();
        if rough > 34.0 && heave > 12.0 {
            Lift::Furrows
        } else if heave < 22.0 {
            Lift::None
        } else {
            Lift::Even
        }
    }

    fn plates(&mut self, truth: &Truth) -> PlatesLeft {
        let broken = truth.broken() * (1.0 - 0.5 * truth.slow) * (1.0 - 0.4 * truth.wet) + 0.4 * truth.fast;
        match 1.0 - broken + 0.12 * self.chance.normal() {
            left if left > 0.62 => PlatesLeft::Most,
            left if left > 0.2 => PlatesLeft::Some,
            _ => PlatesLeft::None,
        }
    }

    fn feet(&mut self, truth: &Truth) -> FeetSeen {
        let left = truth.left_of_foot.iter().copied().fold(1.0, f64::min);
        if truth.lost.contains(&true) {
            FeetSeen::Lost
        } else if left + 0.05 * self.chance.normal() < 0.82 {
            FeetSeen::Worn
        } else {
            FeetSeen::AsNoted
        }
    }
}

/// The machine as recorded: as it was bought and set, not as it is worn.
fn machine(truth: &Truth) -> Machine {
    let whole = |mm: f64| mm.round() as u32;
    Machine {
        id: id(1),
        name: "legs".into(),
        legs: truth.tips.len() as u32,
        spacing_mm: whole(truth.spacing),
        foot_width_mm: whole(truth.foot),
        wings: truth.wings.map(|wings| Wings { width_mm: whole(wings), lift_mm: None }),
        leading: None,
        working_width_mm: None,
        speed: Some(SpeedRange { lo_kmh: truth.speed.0, hi_kmh: truth.speed.1 }),
        reach_mm: None,
        tractor: None,
        tractor_mass_kg: None,
        unknown: Unknown::new(),
    }
}
