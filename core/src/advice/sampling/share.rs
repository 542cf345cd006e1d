//! The share of ground harmed: what pits say of it, and what it costs to decide on it.

use statrs::function::beta::beta_reg;
use statrs::function::beta::ln_beta;
use statrs::function::factorial::ln_binomial;

/// Pits of a zone that could be judged, and how many of them met a harmed layer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize)]
pub struct Count {
    /// Pits judged.
    pub pits: u32,
    /// Of these, pits with a harmed layer; never more than `pits`.
    pub harmed: u32,
}

/// A share with its interval, each 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Share {
    /// Share found; `None` without a pit.
    pub found: Option<f64>,
    /// Lower end.
    pub lo: f64,
    /// Upper end.
    pub hi: f64,
}

impl Count {
    /// Harmed pits out of pits; more harmed than dug counts as all harmed.
    pub fn new(pits: u32, harmed: u32) -> Self {
        Self { pits, harmed: harmed.min(pits) }
    }

    /// Pits without a harmed layer.
    pub fn sound(self) -> u32 {
        self.pits - self.harmed.min(self.pits)
    }

    /// The count after one more pit.
    #[must_use]
    pub fn with(self, harmed: bool) -> Self {
        Self { pits: self.pits + 1, harmed: self.harmed + u32::from(harmed) }
    }

    /// Share harmed with the interval that holds the truth at least `confidence` (0 to 1) of the time, however the
    /// truth lies (Clopper & Pearson 1934). Nothing known without a pit: 0 to 1.
    pub fn share(self, confidence: f64) -> Share {
        if self.pits == 0 {
            return Share { found: None, lo: 0.0, hi: 1.0 };
        }
        let tail = (1.0 - confidence.clamp(0.0, 1.0)) / 2.0;
        let (harmed, sound) = (f64::from(self.harmed), f64::from(self.sound()));
        let lo = if self.harmed == 0 { 0.0 } else { beta_quantile(harmed, sound + 1.0, tail) };
        let hi = if self.sound() == 0 { 1.0 } else { beta_quantile(harmed + 1.0, sound, 1.0 - tail) };
        Share { found: Some(harmed / f64::from(self.pits)), lo, hi }
    }

    /// Shape of what is believed of the share: a beta distribution that began as Jeffreys' (1946), which leans to
    /// none or all, as harm mostly does within a zone.
    fn belief(self) -> (f64, f64) {
        (f64::from(self.harmed) + 0.5, f64::from(self.sound()) + 0.5)
    }

    /// Share harmed to be expected of the next pit.
    pub fn expected_share(self) -> f64 {
        let (harmed, sound) = self.belief();
        harmed / (harmed + sound)
    }

    /// Chance that more than half of the ground is as the pits counted are.
    pub fn more_than_half(self) -> f64 {
        let (harmed, sound) = self.belief();
        1.0 - beta_reg(harmed, sound, 0.5)
    }

    /// Expected regret of loosening and of leaving it, in costs of loosening the same ground, where loosening pays
    /// from a share of `worth` harmed (above 0, at most 1): loosening ground of share p costs 1 and gains p / worth.
    pub fn regret(self, worth: f64) -> Regret {
        let (harmed, sound) = self.belief();
        let mean_gain = self.expected_share() / worth;
        // E[(1 - p / worth)+]: the part of the belief below the break-even share.
        let loosened = if worth >= 1.0 {
            1.0 - mean_gain
        } else {
            beta_reg(harmed, sound, worth) - mean_gain * beta_reg(harmed + 1.0, sound, worth)
        };
        Regret { loosened: loosened.max(0.0), left: (loosened + mean_gain - 1.0).max(0.0) }
    }

    /// Chance of each number of harmed pits (0 to `more`) among `more` pits yet to be dug.
    pub fn foreseen(self, more: u32) -> Vec<f64> {
        let (harmed, sound) = self.belief();
        (0..=more)
            .map(|hits| {
                let after = ln_beta(harmed + f64::from(hits), sound + f64::from(more - hits));
                (ln_binomial(u64::from(more), u64::from(hits)) + after - ln_beta(harmed, sound)).exp()
            })
            .collect()
    }

    /// By how much `more` pits are expected to lessen the regret of the better decision; same unit as [`Regret`].
    pub fn gain(self, more: u32, worth: f64) -> f64 {
        let after: f64 = (0..)
            .zip(self.foreseen(more))
            .map(|(hits, chance)| {
                let then = Self { pits: self.pits + more, harmed: self.harmed + hits };
                chance * then.regret(worth).least()
            })
            .sum();
        (self.regret(worth).least() - after).max(0.0)
    }
}

/// Expected regret of the two decisions on a zone, in costs of loosening the same ground.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Regret {
    /// Of loosening it.
    pub loosened: f64,
    /// Of leaving it.
    pub left: f64,
}

impl Regret {
    /// Regret of the better of the two.
    pub fn least(self) -> f64 {
        self.loosened.min(self.left)
    }

    /// Returns whether loosening is the better of the two; of equal ones it is left.
    pub fn says_loosen(self) -> bool {
        self.loosened < self.left
    }
}

/// The share below which `chance` of a beta distribution lies, by halving: exact to the last bits, and never lost
/// where a faster search is.
fn beta_quantile(a: f64, b: f64, chance: f64) -> f64 {
    let (mut lo, mut hi) = (0.0, 1.0);
    for _ in 0..60 {
        let middle = f64::midpoint(lo, hi);
        if beta_reg(a, b, middle) < chance {
            lo = middle;
        } else {
            hi = middle;
        }
    }
    f64::midpoint(lo, hi)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_foreseen_adds_up_and_agrees_with_the_expected_share() {
        let count = Count::new(3, 1);
        let foreseen = count.foreseen(6);
        assert!((foreseen.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        let mean: f64 = foreseen.iter().zip(0..).map(|(chance, hits)| chance * f64::from(hits)).sum();
        assert!((mean / 6.0 - count.expected_share()).abs() < 1e-12);
    }

    #[test]
    fn a_harmed_pit_speaks_for_loosening_and_a_sound_one_against() {
        assert!(Count::new(2, 2).regret(0.3).says_loosen());
        assert!(!Count::new(3, 0).regret(0.3).says_loosen());
        for pits in 0..8 {
            for harmed in 0..=pits {
                let (now, worse) = (Count::new(pits, harmed), Count::new(pits, harmed).with(true));
                assert!(worse.regret(0.3).left > now.regret(0.3).left);
                assert!(worse.regret(0.3).loosened < now.regret(0.3).loosened);
            }
        }
    }

    /// Beta(1/2, 1/2) is the arcsine distribution: its parts below a share are known in closed form.
    #[test]
    fn the_regret_without_a_pit_is_the_arcsine_integral() {
        let worth: f64 = 0.25;
        let below = 2.0 / std::f64::consts::PI * worth.sqrt().asin();
        let mass = (worth.sqrt().asin() - (worth * (1.0 - worth)).sqrt()) / std::f64::consts::PI;
        let regret = Count::default().regret(worth);
        assert!((regret.loosened - (below - mass / worth)).abs() < 1e-12);
        assert!((regret.left - regret.loosened - (0.5 / worth - 1.0)).abs() < 1e-12);
    }

    #[test]
    fn more_pits_never_gain_less() {
        for (pits, harmed) in [(0, 0), (1, 0), (1, 1), (4, 2), (9, 0)] {
            let count = Count::new(pits, harmed);
            let gains: Vec<f64> = (0..10).map(|more| count.gain(more, 0.3)).collect();
            assert!(gains[0].abs() < 1e-12);
            assert!(gains.windows(2).all(|pair| pair[1] >= pair[0] - 1e-12), "{gains:?}");
        }
    }
}
