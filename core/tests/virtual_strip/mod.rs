//! Strips loosened by a virtual machine, with one cause of failure planted. A rough physical model of its own: soil that
//! lets itself be lifted or not, feet that wear, slots that lean. It knows nothing of the table of causes or its clues; what is
//! seen follows from what the ground was made to do. All sizes are invented for this test.
#![allow(dead_code, reason = "each test file uses its part")]

use pitface_core::advice::after_dig::FailureCause;
use pitface_core::record::{
    AfterDig, Clods, Extent, FeetSeen, Lift, Machine, Pass, PlatesLeft, Profile, RecordId, Roll, RollOutcome,
    Smear, SpeedRange, Unknown, Wings,
};

/// Chance from a seed (SplitMix64; Steele, Lea and Flood 2014).
pub struct Chance(pub u64);

impl Chance {
    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    pub fn happens(&mut self, share: f64) -> bool {
        self.share() < share
    }

    /// About normal with deviation 1: twelve shares less six.
    pub fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.share()).sum::<f64>() - 6.0
    }

    fn other<T: Copy + PartialEq>(&mut self, all: &[T], than: T) -> T {
        let others: Vec<T> = all.iter().copied().filter(|one| *one != than).collect();
        others[(self.bits() % others.len() as u64) as usize]
    }
}

/// What is true of a strip.
struct Truth {
    bottom: f64,
    set_tip: f64,
    spacing: f64,
    foot: f64,
    wings: Option<f64>,
    /// What is left of foot and wings, of 1, leg by leg.
    left_of_foot: Vec<f64>,
    lost: Vec<bool>,
    tips: Vec<f64>,
    wet: f64,
    dry: f64,
    slow: f64,
    fast: f64,
    speed: (f64, f64),
    kmh: f64,
    ratio: f64,
    slope: f64,
    /// Old slots: where between the two lines (share of the spacing), and how deep.
    old: Vec<(f64, f64)>,
    /// Line to the left of the hole.
    leg: usize,
}

/// A strip with what a careful person noted of it.
pub struct Strip {
    /// The machine as recorded.
    pub machine: Machine,
    /// The pass with its one hole.
    pub pass: Pass,
    /// Bottom of the layer as the pit before gave it.
    pub bottom_mm: u32,
}

/// Share of the observations that are missing.
const MISSING: f64 = 0.05;
/// Share of them that are wrong.
const WRONG: f64 = 0.05;
const READINGS: usize = 7;

/// A strip that failed for this cause; those that did no harm are drawn again.
pub fn failed(cause: FailureCause, chance: &mut Chance) -> Strip {
    loop {
        let truth = Truth::of(cause, chance);
        if truth.broken() < 0.7 || truth.is_thrown() {
            return truth.seen(chance);
        }
    }
}

impl Truth {
    fn of(cause: FailureCause, chance: &mut Chance) -> Self {
        let bottom = chance.between(250.0, 360.0);
        let set_tip = bottom + chance.between(28.0, 48.0);
        let wings = chance.happens(0.65).then(|| chance.between(220.0, 340.0));
        let mut foot = set_tip / chance.between(4.0, 5.2);
        let lifting = wings.unwrap_or(foot);
        let mut spacing = if wings.is_some() {
            (set_tip * 1.5).min(lifting + chance.between(150.0, 260.0))
        } else {
            set_tip.min(lifting + chance.between(150.0, 260.0))
        };
        let legs = 3 + (chance.share() * 4.0) as usize;
        let (mut wet, mut dry) = (chance.between(0.0, 0.25), 0.0);
        if chance.happens(0.4) {
            (wet, dry) = (0.0, chance.between(0.0, 0.25));
        }
        let speed_lo = chance.between(3.0, 4.5);
        let speed = (speed_lo, speed_lo + chance.between(1.5, 3.0));
        let mut kmh = chance.between(speed.0 * 1.02, speed.1 * 0.98);
        let (mut slow, mut fast) = (0.0, 0.0);
        let mut left_of_foot: Vec<f64> = (0..legs).map(|_| chance.between(0.9, 1.0)).collect();
        let mut lost = vec![false; legs];
        let mut deeper = vec![0.0; legs];
        let mut shift = 0.0;
        let mut old = Vec::new();
        let mut set = set_tip;
        match cause {
            FailureCause::TooWet => (wet, dry) = (chance.between(0.6, 1.0), 0.0),
            FailureCause::TooDry => {
                (wet, dry) = (0.0, chance.between(0.6, 1.0));
                shift = -chance.between(0.0, 90.0);
                if chance.happens(0.4) {
                    kmh = speed.0 * chance.between(0.5, 0.95);
                }
            }
            FailureCause::TooShallow => {
                let short = set_tip - bottom + chance.between(5.0, 70.0);
                if chance.happens(0.4) { set = set_tip - short } else { shift = -short }
            }
            FailureCause::BelowCritical => {
                if chance.happens(0.5) {
                    foot = set_tip / chance.between(7.5, 10.0);
                } else {
                    set = set_tip + chance.between(90.0, 160.0);
                    foot = set / chance.between(6.5, 8.5);
                }
                wet = wet.max(chance.between(0.0, 0.3)) * f64::from(u8::from(dry == 0.0));
            }
            FailureCause::SpacingTooWide => {
                spacing = set_tip * if wings.is_some() { 2.0 } else { 1.5 } * chance.between(1.05, 1.6);
            }
            FailureCause::TooSlow => {
                slow = chance.between(0.5, 1.0);
                kmh = speed.0 * (1.0 - 0.5 * slow);
            }
            FailureCause::TooFast => {
                fast = chance.between(0.5, 1.0);
                kmh = speed.1 * (1.0 + 0.7 * fast);
                shift = -chance.between(0.0, 35.0);
            }
            FailureCause::WornFeet => {
                let worn = chance.between(0.35, 0.65);
                let all = chance.happens(0.7);
                for leg in 0..legs {
                    if all {
                        left_of_foot[leg] = worn * chance.between(0.9, 1.1);
                    }
                    lost[leg] = chance.happens(if all { 0.1 } else { 0.5 });
                }
            }
            FailureCause::NotLevel => {
                let across = chance.between(80.0, 170.0) * if chance.happens(0.5) { 1.0 } else { -1.0 };
                for (leg, deeper) in deeper.iter_mut().enumerate() {
                    *deeper = across * (leg as f64 / (legs - 1) as f64 - 0.5);
                }
            }
            FailureCause::OldLoosening => {
                let first = chance.between(0.25, 0.5);
                old = vec![(first, bottom + chance.between(0.0, 60.0))];
                if chance.happens(0.4) {
                    old.push((first + chance.between(0.2, 0.3), bottom + chance.between(0.0, 60.0)));
                }
            }
        }
        let rough = 8.0 + 22.0 * dry;
        let tips = deeper.iter().map(|deeper| set + shift + deeper + rough * chance.normal()).collect();
        let leg = ((chance.share() * (legs - 1) as f64) as usize).min(legs - 2);
        let slope = 50.0 + 4.0 * chance.normal().clamp(-1.5, 1.5);
        let ratio = chance.between(5.4, 7.0);
        Self {
            bottom,
            set_tip: set,
            spacing,
            foot,
            wings,
            left_of_foot,
            lost,
            tips,
            wet,
            dry,
            slow,
            fast,
            speed,
            kmh,
            ratio,
            slope,
            old,
            leg,
        }
    }

    fn old_slots(&self) -> f64 {
        f64::from(u8::from(!self.old.is_empty()))
    }

    /// Critical depth of a leg as it really is that day.
    fn critical(&self, leg: usize) -> f64 {
        let winged = if self.wings.is_some() && !self.lost[leg] { 1.12 } else { 1.0 };
        self.foot
            * self.left_of_foot[leg]
            * self.ratio
            * winged
            * (1.0 - 0.45 * self.wet)
            * (1.0 - 0.25 * self.slow)
    }

    /// Depth loosened at a distance from the line of a leg, by this leg.
    fn by_leg(&self, leg: usize, away: f64) -> f64 {
        let (tip, critical) = (self.tips[leg], self.critical(leg));
        let lifting = if self.lost[leg] {
            self.foot * self.left_of_foot[leg] * 0.9
        } else {
            self.wings.unwrap_or(self.foot) * self.left_of_foot[leg]
        };
        let steeper = 20.0 * self.wet + 14.0 * self.slow + 16.0 * self.old_slots() - 2.0 * self.fast;
        let tan = (self.slope + steeper).to_radians().tan();
        if tip > critical {
            // Lifted from critical depth up only; below it a slot as wide as the foot.
            if away <= self.foot / 2.0 { tip } else { critical - (away - self.foot / 2.0) * tan }
        } else {
            let leak = 45.0 * self.old_slots();
            if away <= self.foot / 2.0 { tip } else { tip - leak - (away - lifting / 2.0).max(0.0) * tan }
        }
        .max(0.0)
    }

    /// Depth to firm soil at a share of the way from the left line of the hole to the right one.
    fn depth(&self, share: f64) -> f64 {
        let away = share * self.spacing;
        let (left, right) = (self.by_leg(self.leg, away), self.by_leg(self.leg + 1, self.spacing - away));
        let alone = left.max(right);
        // Lifts that meet help each other break the ridge.
        let help = 0.5
            * (1.0 - self.wet).powi(2)
            * (1.0 - 0.8 * self.slow)
            * (1.0 - 0.45 * self.dry)
            * (1.0 - self.old_slots());
        let tip = self.tips[self.leg].min(self.tips[self.leg + 1]);
        let pressed = tip > self.critical(self.leg).min(self.critical(self.leg + 1));
        let meets = left > 60.0 && right > 60.0;
        let helped = if meets && !pressed { alone + help * (tip - alone).max(0.0) } else { alone };
        let old = self.old.iter().map(|(at, depth)| {
            let away = (share - at).abs() * self.spacing;
            if away < 45.0 { *depth } else { depth - (away - 45.0) * 1.6 }
        });
        old.fold(helped, f64::max)
    }

    fn broken(&self) -> f64 {
        let points = 101;
        let reaching =
            (0..points).filter(|&point| self.depth(f64::from(point) / f64::from(points - 1)) >= self.bottom);
        reaching.count() as f64 / f64::from(points)
    }

    fn mean_depth(&self) -> f64 {
        (0..21).map(|point| self.depth(f64::from(point) / 20.0)).sum::<f64>() / 21.0
    }

    fn is_thrown(&self) -> bool {
        self.fast > 0.55
    }

    /// What a careful person notes, with a tenth of the answers missing or wrong.
    fn seen(&self, chance: &mut Chance) -> Strip {
        let id = |number: u64| RecordId::new(number, [5; 10]);
        let mut dig = AfterDig::new(id(3));
        let firm = (0..READINGS).map(|at| {
            let slip = if chance.happens(WRONG + MISSING) { chance.between(-90.0, 90.0) } else { 0.0 };
            let depth = self.depth(at as f64 / (READINGS - 1) as f64);
            to_cm(depth + slip + (12.0 + 12.0 * self.dry) * chance.normal())
        });
        dig.firm_mm = firm.collect();
        if !chance.happens(MISSING) {
            let legs = self.tips.len();
            let slots = (0..legs).map(|leg| {
                let slip = if chance.happens(WRONG) { chance.between(-60.0, 60.0) } else { 0.0 };
                to_cm(self.tips[leg] + slip + 8.0 * chance.normal())
            });
            dig.slots_mm = slots.collect();
        }
        let both = [self.leg, self.leg + 1];
        let slot = both.iter().any(|&leg| self.tips[leg] > self.critical(leg) + 35.0);
        let y = slot || self.wet > chance.between(0.4, 0.7);
        dig.profile = noted(chance, Profile::ALL, if y { Profile::Y } else { Profile::V });
        let smears = 0.05 + 0.85 * self.wet + if slot { 0.45 } else { 0.0 };
        let smear = if chance.happens(smears) { Smear::Smeared } else { Smear::None };
        dig.smear = noted(chance, Smear::ALL, smear);
        let heave = self.mean_depth()
            * 0.17
            * (1.0 - 0.75 * self.wet)
            * (1.0 - 0.6 * self.slow)
            * if slot { 0.6 } else { 1.0 }
            * (1.0 - 0.3 * self.old_slots())
            + 6.0 * chance.normal();
        let aggressive = (300.0 - self.tips[self.leg]).max(0.0) * 0.25;
        let rough = 8.0 + 48.0 * self.fast + 30.0 * self.dry + aggressive + 6.0 * chance.normal();
        let lift = if rough > 34.0 && heave > 12.0 {
            Lift::Furrows
        } else if heave < 22.0 {
            Lift::None
        } else {
            Lift::Even
        };
        dig.lift = noted(chance, Lift::ALL, lift);
        let lumps = 45.0 + 75.0 * self.dry + 35.0 * self.fast + 25.0 * self.wet + 25.0 * self.slow;
        let clods = if lumps + 20.0 * chance.normal() > 85.0 { Clods::Large } else { Clods::Small };
        dig.clods = noted(chance, Clods::ALL, clods);
        let up = 75.0 * self.fast + 22.0 * self.dry + 14.0 * chance.normal() > 40.0;
        dig.subsoil_up = noted(chance, &[true, false], up);
        let whole = 1.0 - self.broken() * (1.0 - 0.5 * self.slow) * (1.0 - 0.4 * self.wet) - 0.4 * self.fast
            + 0.12 * chance.normal();
        let plates = if whole > 0.62 {
            PlatesLeft::Most
        } else if whole > 0.2 {
            PlatesLeft::Some
        } else {
            PlatesLeft::None
        };
        dig.plates = noted(chance, PlatesLeft::ALL, plates);
        let worn = self.left_of_foot.iter().copied().fold(1.0, f64::min);
        let feet = if self.lost.contains(&true) {
            FeetSeen::Lost
        } else if worn + 0.05 * chance.normal() < 0.82 {
            FeetSeen::Worn
        } else {
            FeetSeen::AsNoted
        };
        dig.feet = noted(chance, FeetSeen::ALL, feet);
        dig.old_slots = noted(chance, &[true, false], !self.old.is_empty());
        let mut pass = Pass::new(id(2));
        pass.machine = Some(id(1));
        pass.extent = Some(Extent::TrialStrip);
        pass.tip_mm = Some(to_cm(self.set_tip));
        pass.speed_kmh = (!chance.happens(MISSING)).then_some(self.kmh + 0.15 * chance.normal());
        let roll = if self.wet > 0.5 {
            RollOutcome::Thread
        } else if self.dry > 0.45 || chance.happens(0.1) {
            RollOutcome::Crumbles
        } else {
            RollOutcome::ShortLengths
        };
        let possible = [RollOutcome::Thread, RollOutcome::ShortLengths, RollOutcome::Crumbles];
        let depth_mm = to_cm(self.set_tip);
        let rolled = noted(chance, &possible, roll);
        pass.rolls = rolled
            .map(|roll| Roll { id: id(4), depth_mm, roll, unknown: Unknown::new() })
            .into_iter()
            .collect();
        pass.after_digs = vec![dig];
        let whole = |mm: f64| mm.round() as u32;
        let machine = Machine {
            id: id(1),
            name: "legs".into(),
            legs: self.tips.len() as u32,
            spacing_mm: whole(self.spacing),
            foot_width_mm: whole(self.foot),
            wings: self.wings.map(|wings| Wings { width_mm: whole(wings), lift_mm: None }),
            leading: None,
            working_width_mm: None,
            speed: Some(SpeedRange { lo_kmh: self.speed.0, hi_kmh: self.speed.1 }),
            reach_mm: None,
            tractor: None,
            unknown: Unknown::new(),
        };
        Strip { machine, pass, bottom_mm: to_cm(self.bottom + 10.0 * chance.normal()) }
    }
}

fn to_cm(mm: f64) -> u32 {
    (mm.max(0.0) / 10.0).round() as u32 * 10
}

fn noted<T: Copy + PartialEq>(chance: &mut Chance, all: &[T], seen: T) -> Option<T> {
    if chance.happens(MISSING) {
        None
    } else if chance.happens(WRONG) {
        Some(chance.other(all, seen))
    } else {
        Some(seen)
    }
}
