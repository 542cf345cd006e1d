//! Strips loosened by a virtual machine, with one cause of failure planted. A rough physical model of its own: soil that
//! lets itself be lifted or not, feet that wear, slots that lean. It knows nothing of the table of causes or its clues; what is
//! seen follows from what the ground was made to do. All sizes are invented for this test.

mod seen;

use pitface_core::advice::after_dig::FailureCause;
use pitface_core::record::{Machine, Pass};
use seen::Eyes;

/// Chance from a seed (`SplitMix64`; Steele, Lea and Flood 2014).
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

/// A strip with what was noted of it.
#[derive(Clone)]
pub struct Strip {
    /// The machine as recorded.
    pub machine: Machine,
    /// The pass with its one hole.
    pub pass: Pass,
    /// Bottom of the layer as the pit before gave it.
    pub bottom_mm: u32,
}

/// Share of the observations that are missing or wrong, half of them each, when a careful person takes them.
pub const CAREFUL: f64 = 0.1;

/// A strip that failed for this cause, with this share of the observations missing or wrong; those that did no harm
/// are drawn again.
pub fn failed(cause: FailureCause, slips: f64, chance: &mut Chance) -> Strip {
    loop {
        let truth = Truth::of(cause, chance);
        if truth.broken() < 0.7 || truth.is_thrown() {
            return Eyes { slips, chance }.see(&truth);
        }
    }
}

impl Truth {
    fn of(cause: FailureCause, chance: &mut Chance) -> Self {
        let mut truth = Self::sound(chance);
        let (shift, deeper) = truth.plant(cause, chance);
        let rough = 8.0 + 22.0 * truth.dry;
        for (leg, tip) in truth.tips.iter_mut().enumerate() {
            let across = leg as f64 / (truth.lost.len() - 1) as f64 - 0.5;
            *tip = truth.set_tip + shift + deeper * across + rough * chance.normal();
        }
        truth
    }

    /// A strip where all is as it should be, as far as it ever is.
    fn sound(chance: &mut Chance) -> Self {
        let bottom = chance.between(250.0, 360.0);
        let set_tip = bottom + chance.between(28.0, 48.0);
        let wings = chance.happens(0.65).then(|| chance.between(220.0, 340.0));
        let foot = set_tip / chance.between(4.0, 5.2);
        let widest = set_tip * if wings.is_some() { 1.5 } else { 1.0 };
        let legs = 3 + (chance.share() * 4.0) as usize;
        let (mut wet, mut dry) = (chance.between(0.0, 0.25), 0.0);
        if chance.happens(0.4) {
            (wet, dry) = (0.0, chance.between(0.0, 0.25));
        }
        let slowest = chance.between(3.0, 4.5);
        let speed = (slowest, slowest + chance.between(1.5, 3.0));
        Self {
            bottom,
            set_tip,
            spacing: widest.min(wings.unwrap_or(foot) + chance.between(150.0, 260.0)),
            foot,
            wings,
            left_of_foot: (0..legs).map(|_| chance.between(0.9, 1.0)).collect(),
            lost: vec![false; legs],
            tips: vec![set_tip; legs],
            wet,
            dry,
            slow: 0.0,
            fast: 0.0,
            speed,
            kmh: chance.between(speed.0 * 1.02, speed.1 * 0.98),
            ratio: chance.between(5.4, 7.0),
            slope: 50.0 + 4.0 * chance.normal().clamp(-1.5, 1.5),
            old: Vec::new(),
            leg: ((chance.share() * (legs - 1) as f64) as usize).min(legs - 2),
        }
    }

    /// Makes it fail. How much deeper the tips run than they were set, and how much deeper from the left to the right.
    fn plant(&mut self, cause: FailureCause, chance: &mut Chance) -> (f64, f64) {
        let (mut shift, mut deeper) = (0.0, 0.0);
        match cause {
            FailureCause::TooWet => (self.wet, self.dry) = (chance.between(0.6, 1.0), 0.0),
            FailureCause::TooDry => {
                (self.wet, self.dry) = (0.0, chance.between(0.6, 1.0));
                shift = -chance.between(0.0, 90.0);
                if chance.happens(0.4) {
                    self.kmh = self.speed.0 * chance.between(0.5, 0.95);
                }
            }
            FailureCause::TooShallow => {
                let short = self.set_tip - self.bottom + chance.between(5.0, 70.0);
                if chance.happens(0.4) { self.set_tip -= short } else { shift = -short }
            }
            FailureCause::BelowCritical => {
                if chance.happens(0.5) {
                    self.foot = self.set_tip / chance.between(7.5, 10.0);
                } else {
                    self.set_tip += chance.between(90.0, 160.0);
                    self.foot = self.set_tip / chance.between(6.5, 8.5);
                }
            }
            FailureCause::SpacingTooWide => {
                let widest = self.set_tip * if self.wings.is_some() { 2.0 } else { 1.5 };
                self.spacing = widest * chance.between(1.05, 1.6);
            }
            FailureCause::TooSlow => {
                self.slow = chance.between(0.5, 1.0);
                self.kmh = self.speed.0 * (1.0 - 0.5 * self.slow);
            }
            FailureCause::TooFast => {
                self.fast = chance.between(0.5, 1.0);
                self.kmh = self.speed.1 * (1.0 + 0.7 * self.fast);
                shift = -chance.between(0.0, 35.0);
            }
            FailureCause::WornFeet => self.wear(chance),
            FailureCause::NotLevel => {
                deeper = chance.between(80.0, 170.0) * if chance.happens(0.5) { 1.0 } else { -1.0 };
            }
            FailureCause::OldLoosening => {
                let first = chance.between(0.25, 0.5);
                self.old = vec![(first, self.bottom + chance.between(0.0, 60.0))];
                if chance.happens(0.4) {
                    let next = first + chance.between(0.2, 0.3);
                    self.old.push((next, self.bottom + chance.between(0.0, 60.0)));
                }
            }
        }
        (shift, deeper)
    }

    /// All feet worn, or some of them lost.
    fn wear(&mut self, chance: &mut Chance) {
        let (worn, all) = (chance.between(0.35, 0.65), chance.happens(0.7));
        for (left, lost) in self.left_of_foot.iter_mut().zip(&mut self.lost) {
            if all {
                *left = worn * chance.between(0.9, 1.1);
            }
            *lost = chance.happens(if all { 0.1 } else { 0.5 });
        }
    }

    /// How much of the lift old slots take up, 0 or 1.
    fn leak(&self) -> f64 {
        if self.old.is_empty() { 0.0 } else { 1.0 }
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
        let steeper = 20.0 * self.wet + 14.0 * self.slow + 16.0 * self.leak() - 2.0 * self.fast;
        let tan = (self.slope + steeper).to_radians().tan();
        if tip > critical {
            // Lifted from critical depth up only; below it a slot as wide as the foot.
            if away <= self.foot / 2.0 { tip } else { critical - (away - self.foot / 2.0) * tan }
        } else {
            let leak = 45.0 * self.leak();
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
            * (1.0 - self.leak());
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

    /// Returns whether a leg of the hole ran well below critical depth.
    fn has_slot(&self) -> bool {
        [self.leg, self.leg + 1].iter().any(|&leg| self.tips[leg] > self.critical(leg) + 35.0)
    }

    fn is_thrown(&self) -> bool {
        self.fast > 0.55
    }
}
