//! When the pits dug settle the call: Wald's sequential probability ratio test (Wald 1945), and whether another pit
//! would pay.

use super::{Count, Regret};
use crate::record::Zone;
use crate::record::codes::codes;

/// What is to be told, and at what risk. All figures of [`Plan::default`] are our judgement, to be set by the user.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Plan {
    /// Share of ground harmed from which loosening pays, between the two below.
    pub worth_share: f64,
    /// With this share harmed or less, loosening must not be called for. Above 0.
    pub sound_share: f64,
    /// With this share harmed or more, loosening must be called for. Below 1.
    pub harmed_share: f64,
    /// Accepted chance of calling for loosening at `sound_share`, between 0 and 0.5.
    pub loosened_wrongly: f64,
    /// Accepted chance of leaving it at `harmed_share`, between 0 and 0.5.
    pub left_wrongly: f64,
    /// What one more pit costs, in hectares of loosening.
    pub pit_costs_ha: f64,
    /// Most pits in one zone.
    pub most_pits: u32,
    /// Confidence of the interval shown.
    pub confidence: f64,
}

impl Default for Plan {
    /// Loosening pays where half the ground is harmed: the regret of loosening sound soil against that of leaving a
    /// harmed layer ([`crate::advice::REGRET`]) breaks even at 0.57 for a Tight and at 0.44 for a Shut one. Two pits
    /// more of one kind than of the other settle a zone. A pit of twenty minutes costs about what 0.1 ha of
    /// loosening does at a contractor's price of some 80 pounds a hectare (NAAC 2025-26, as reported).
    fn default() -> Self {
        Self {
            worth_share: 0.5,
            sound_share: 0.25,
            harmed_share: 0.75,
            loosened_wrongly: 0.1,
            left_wrongly: 0.15,
            pit_costs_ha: 0.1,
            most_pits: 10,
            confidence: 0.8,
        }
    }
}

/// A figure of a plan that cannot be worked with, by its name in [`Plan`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PlanFault {
    /// The three shares are not in order.
    #[error("give sound_share below worth_share below harmed_share, all between 0 and 1")]
    Shares,
    /// A chance of error is out of range.
    #[error("give loosened_wrongly and left_wrongly above 0 and below 0.5")]
    Errors,
    /// The interval's confidence is out of range.
    #[error("give confidence above 0 and below 1")]
    Confidence,
    /// The cost of a pit is negative or no number.
    #[error("give pit_costs_ha as 0 or more hectares")]
    Cost,
    /// The number of pits is out of range.
    #[error("give most_pits from 1 to 100")]
    MostPits,
}

codes!(
    /// How far the pits of a zone have settled its call.
    Settled {
        /// More harmed than loosening needs to pay.
        WorthLoosening = "worth_loosening",
        /// Less harmed than loosening needs to pay.
        NotWorthLoosening = "not_worth_loosening",
        /// More pits can settle it.
        DigOn = "dig_on",
        /// Not settled, but no number of further pits up to the limit would pay.
        NotWorthAPit = "not_worth_a_pit",
    }
);

/// The two bounds of the test, as natural logarithms of the likelihood ratio of harmed against sound.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// At or below it: not worth loosening.
    pub lower: f64,
    /// At or above it: worth loosening.
    pub upper: f64,
}

impl Plan {
    /// Finds the figure that cannot be worked with.
    ///
    /// # Errors
    /// The first such figure.
    pub fn check(&self) -> Result<(), PlanFault> {
        let shares = [0.0, self.sound_share, self.worth_share, self.harmed_share, 1.0];
        let error = |chance: f64| chance > 0.0 && chance < 0.5;
        if !shares.windows(2).all(|pair| pair[0] < pair[1]) {
            Err(PlanFault::Shares)
        } else if !(error(self.loosened_wrongly) && error(self.left_wrongly)) {
            Err(PlanFault::Errors)
        } else if !(self.confidence > 0.0 && self.confidence < 1.0) {
            Err(PlanFault::Confidence)
        } else if !(self.pit_costs_ha >= 0.0 && self.pit_costs_ha.is_finite()) {
            Err(PlanFault::Cost)
        } else if !(1..=100).contains(&self.most_pits) {
            Err(PlanFault::MostPits)
        } else {
            Ok(())
        }
    }

    /// Wald's bounds ln(β / (1 - α)) and ln((1 - β) / α).
    pub fn bounds(&self) -> Bounds {
        let (alpha, beta) = (self.loosened_wrongly, self.left_wrongly);
        Bounds { lower: (beta / (1.0 - alpha)).ln(), upper: ((1.0 - beta) / alpha).ln() }
    }

    /// Steps of the log likelihood ratio: a harmed pit (above 0), a sound one (below 0).
    fn steps(&self) -> (f64, f64) {
        let harmed = (self.harmed_share / self.sound_share).ln();
        let sound = ((1.0 - self.harmed_share) / (1.0 - self.sound_share)).ln();
        (harmed, sound)
    }

    /// Log likelihood ratio of a count, harmed against sound.
    pub fn log_ratio(&self, count: Count) -> f64 {
        let (harmed, sound) = self.steps();
        f64::from(count.harmed) * harmed + f64::from(count.sound()) * sound
    }

    /// Returns what the test alone says; `None` = between the bounds.
    pub fn settled(&self, count: Count) -> Option<Settled> {
        let (ratio, bounds) = (self.log_ratio(count), self.bounds());
        if ratio >= bounds.upper {
            Some(Settled::WorthLoosening)
        } else if ratio <= bounds.lower {
            Some(Settled::NotWorthLoosening)
        } else {
            None
        }
    }

    /// Returns whether some number of further pits, up to the limit, is expected to save more than it costs. The first pit
    /// of a zone pays wherever the zone costs more to loosen than a pit to dig: nothing is called unseen.
    pub fn pays(&self, count: Count, area_ha: f64) -> bool {
        if count.pits == 0 {
            return area_ha > self.pit_costs_ha;
        }
        let left = self.most_pits.saturating_sub(count.pits);
        (1..=left)
            .any(|more| count.gain(more, self.worth_share) * area_ha > f64::from(more) * self.pit_costs_ha)
    }

    /// How far a zone of this area is settled.
    pub fn verdict(&self, count: Count, area_ha: f64) -> Settled {
        self.settled(count).unwrap_or(if self.pays(count, area_ha) {
            Settled::DigOn
        } else {
            Settled::NotWorthAPit
        })
    }

    /// Expected regret of the two decisions on a zone, in hectares of loosening.
    pub fn regret_ha(&self, count: Count, area_ha: f64) -> Regret {
        let Regret { loosened, left } = count.regret(self.worth_share);
        Regret { loosened: loosened * area_ha, left: left * area_ha }
    }

    /// Number of pits still to be expected until nothing more is to be dug in this zone, over all the ways the pits
    /// may turn out, given those dug.
    pub fn still_expected(&self, count: Count, area_ha: f64) -> f64 {
        // From the limit backwards; one row per number of further pits, one entry per number of these harmed.
        let left = self.most_pits.saturating_sub(count.pits);
        let mut after: Vec<f64> = vec![0.0; left as usize + 1];
        for more in (0..left).rev() {
            after = (0..=more)
                .map(|hits| {
                    let then = Count::new(count.pits + more, count.harmed + hits);
                    if self.verdict(then, area_ha) != Settled::DigOn {
                        return 0.0;
                    }
                    let share = then.expected_share();
                    1.0 + share * after[hits as usize + 1] + (1.0 - share) * after[hits as usize]
                })
                .collect();
        }
        after[0]
    }

    /// Wald's approximation to the chance that the test ends on "not worth loosening" where the true share is
    /// `share` (0 to 1), with no limit to the pits: the operating characteristic.
    pub fn chance_left(&self, share: f64) -> f64 {
        let Bounds { lower, upper } = self.bounds();
        let power = self.wald_power(share);
        if power.abs() < 1e-9 {
            return upper / (upper - lower);
        }
        // (A^h - 1) / (A^h - B^h), with both powers kept below 1 so that none overflows.
        if power > 0.0 {
            (1.0 - (-power * upper).exp()) / (1.0 - (power * (lower - upper)).exp())
        } else {
            let above = (power * upper).exp();
            (above - 1.0) / (above - (power * lower).exp())
        }
    }

    /// Wald's approximation to the number of pits the test takes where the true share is `share`, from none dug,
    /// with no limit to the pits.
    pub fn expected_pits(&self, share: f64) -> f64 {
        let Bounds { lower, upper } = self.bounds();
        let (harmed, sound) = self.steps();
        let drift = share * harmed + (1.0 - share) * sound;
        if drift.abs() < 1e-9 {
            return -lower * upper / (share * harmed * harmed + (1.0 - share) * sound * sound);
        }
        let left = self.chance_left(share);
        (left * lower + (1.0 - left) * upper) / drift
    }

    /// The power h other than 0 with E[ratio^h] = 1 at `share`; 1 at the sound share, -1 at the harmed one, 0 where
    /// the ratio drifts neither way.
    fn wald_power(&self, share: f64) -> f64 {
        const FAR: f64 = 500.0;
        let (harmed, sound) = self.steps();
        let drift = share * harmed + (1.0 - share) * sound;
        if drift.abs() < 1e-12 {
            return 0.0;
        }
        let excess = |h: f64| {
            let grown = |chance: f64, step: f64| if chance > 0.0 { chance * (h * step).exp() } else { 0.0 };
            grown(share, harmed) + grown(1.0 - share, sound) - 1.0
        };
        // The function is convex and 0 at 0, so beyond its dip on the other side it rises through 0 once.
        let (mut near, mut far) = (0.0, if drift < 0.0 { FAR } else { -FAR });
        for _ in 0..100 {
            let middle = f64::midpoint(near, far);
            if excess(middle) < 0.0 {
                near = middle;
            } else {
                far = middle;
            }
        }
        f64::midpoint(near, far)
    }
}

/// Area taken for a zone where none is known: those of a field of 10 ha with a headland, tramlines and one gateway.
/// Our judgement.
pub fn usual_area_ha(zone: Zone) -> f64 {
    match zone {
        Zone::Whole => 10.0,
        Zone::Open => 8.0,
        Zone::Headland => 1.5,
        Zone::Wheelings | Zone::Patch => 0.5,
        Zone::Gateway => 0.05,
    }
}
