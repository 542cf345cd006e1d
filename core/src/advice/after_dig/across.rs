//! One hole read across: stretches that stayed firm, the pattern, the ridge against the figure's.

use super::Stretch;
use super::clue::{Pattern, RidgeAgainst};
use super::codes::Across;
use crate::advice::machine::{Tines, TinesRange};

/// Readings of one place differ by about this much from hand to hand. Our judgement.
const READING_SLACK_MM: u32 = 15;
/// Differences across a hole from which they count as more than the unevenness of breaking soil. Our judgement.
const UNEVEN_MM: u32 = 60;
/// Share of the readings down to the mark from which the ground is loose nearly everywhere. Our judgement.
const NEARLY_ALL: f64 = 0.85;
/// Firm ground next to a tine line at less than this share of the line's own depth is a slot's wall. Our judgement.
const SLOT_WALL: f64 = 0.5;
/// A ridge differs from the figure's where it lies outside its range by more than two readings' slack. Our judgement.
const RIDGE_SLACK_MM: u32 = 2 * READING_SLACK_MM;

/// Readings from line to line against the depth that was to be reached.
#[derive(Debug, Clone, Copy)]
pub struct Section<'a> {
    /// Depths to firm soil; three or more.
    pub readings_mm: &'a [u32],
    /// Depth from which a reading counts as loosened through.
    pub mark_mm: u32,
}

impl Section<'_> {
    /// The stretches between the lines that are firm above the mark.
    pub fn firm_at(&self, spacing_mm: Option<u32>) -> Vec<Stretch> {
        let last = self.readings_mm.len() - 1;
        let steps = last as f64;
        let is_firm = |&at: &usize| self.readings_mm[at] < self.mark_mm;
        let firm: Vec<usize> = (0..=last).filter(is_firm).collect();
        let runs = firm.chunk_by(|one, next| one + 1 == *next);
        let runs = runs.filter_map(|run| Some((*run.first()?, *run.last()?)));
        runs.map(|(first, end)| {
            // A reading stands for half a step to either side.
            let from = ((first as f64 - 0.5) / steps).max(0.0);
            let to = ((end as f64 + 0.5) / steps).min(1.0);
            let mm = |share: f64| spacing_mm.map(|spacing_mm| (share * f64::from(spacing_mm)).round() as u32);
            let across = match (first == 0, end == last) {
                (true, true) => Across::Throughout,
                (false, false) => Across::Between,
                _ => Across::AtLine,
            };
            Stretch { from, to, from_mm: mm(from), to_mm: mm(to), across }
        })
        .collect()
    }

    /// Returns whether the ground is loose down to the mark anywhere but in the tine lines themselves.
    pub fn reaches_between(&self) -> bool {
        self.readings_mm[1..self.readings_mm.len() - 1].iter().any(|&mm| self.reaches(mm))
    }

    const fn reaches(&self, mm: u32) -> bool {
        mm.saturating_add(READING_SLACK_MM) >= self.mark_mm
    }

    /// Returns what the readings look like. The same from either side.
    pub fn pattern(&self) -> Pattern {
        let readings = self.readings_mm;
        let reaches = |mm: u32| self.reaches(mm);
        let reaching = readings.iter().filter(|&&mm| reaches(mm)).count();
        let (first, last) = (readings[0], readings[readings.len() - 1]);
        let between = &readings[1..readings.len() - 1];
        let deepest_between = between.iter().copied().max().unwrap_or(0);
        if reaching as f64 >= NEARLY_ALL * readings.len() as f64 {
            Pattern::Loose
        } else if deepest_between > first.max(last).saturating_add(UNEVEN_MM) {
            Pattern::LooseBetween
        } else if self.lopsided_mm() > f64::from(UNEVEN_MM) {
            Pattern::OneSide
        } else if !reaches(first) && !reaches(last) {
            Pattern::Shallow
        } else if self.is_slot() {
            Pattern::SlotOnly
        } else {
            Pattern::Ridge
        }
    }

    /// Difference between the mean depths of the two halves.
    fn lopsided_mm(&self) -> f64 {
        let half = self.readings_mm.len() / 2;
        let mean =
            |half: &[u32]| half.iter().map(|&mm| f64::from(mm)).sum::<f64>() / half.len().max(1) as f64;
        let (left, right) = (&self.readings_mm[..half], &self.readings_mm[self.readings_mm.len() - half..]);
        (mean(left) - mean(right)).abs()
    }

    fn is_slot(&self) -> bool {
        let readings = self.readings_mm;
        let (left, right) = (&readings[..2], [readings[readings.len() - 1], readings[readings.len() - 2]]);
        let wall = |line: u32, beside: u32| f64::from(beside) < SLOT_WALL * f64::from(line);
        wall(left[0], left[1]) && wall(right[0], right[1])
    }

    /// The ridge found against that of the figure, read at the same steps.
    pub fn ridge_against(&self, tines: &TinesRange, measured_mm: u32) -> RidgeAgainst {
        let [lo_mm, hi_mm] = [&tines.flat, &tines.steep].map(|tines| self.reckoned_ridge_mm(tines));
        if measured_mm > hi_mm + RIDGE_SLACK_MM {
            RidgeAgainst::Higher
        } else if measured_mm + RIDGE_SLACK_MM < lo_mm {
            RidgeAgainst::Lower
        } else {
            RidgeAgainst::AsReckoned
        }
    }

    /// Height of the figure's ridge at these steps.
    fn reckoned_ridge_mm(&self, tines: &Tines) -> u32 {
        let steps = self.readings_mm.len() as u32 - 1;
        let tan = tines.slope_degrees.to_radians().tan();
        let above_tip = |step: u32| {
            let from_line =
                f64::from(step.min(steps - step)) / f64::from(steps) * f64::from(tines.spacing_mm);
            ((from_line - f64::from(tines.lifting_width_mm) / 2.0) * tan).clamp(0.0, f64::from(tines.tip_mm))
        };
        (1..steps).map(above_tip).fold(0.0, f64::max).round() as u32
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn section(readings_mm: &[u32]) -> Section<'_> {
        Section { readings_mm, mark_mm: 300 }
    }

    #[test]
    fn every_pattern_has_its_look() {
        for (readings, pattern) in [
            (&[350, 350, 290, 350, 350][..], Pattern::Loose),
            (&[350, 310, 200, 300, 350], Pattern::Ridge),
            (&[350, 150, 140, 150, 360], Pattern::SlotOnly),
            (&[230, 210, 200, 220, 240], Pattern::Shallow),
            (&[350, 340, 250, 180, 170], Pattern::OneSide),
            (&[230, 240, 350, 250, 220], Pattern::LooseBetween),
            // Six readings of seven are loose nearly everywhere, five of six are not.
            (&[350, 350, 350, 200, 350, 350, 350], Pattern::Loose),
            (&[350, 350, 200, 350, 350, 350], Pattern::Ridge),
            // The wall of a slot stands at less than half of its depth.
            (&[350, 174, 140, 174, 350], Pattern::SlotOnly),
            (&[350, 175, 140, 175, 350], Pattern::Ridge),
            // 60 mm are still the unevenness of breaking soil, 61 are not.
            (&[230, 230, 200, 170, 170], Pattern::Shallow),
            (&[231, 231, 200, 170, 170], Pattern::OneSide),
            (&[220, 220, 280, 220, 220], Pattern::Shallow),
            (&[220, 220, 281, 220, 220], Pattern::LooseBetween),
        ] {
            assert_eq!(section(readings).pattern(), pattern, "{readings:?}");
        }
    }

    #[test]
    fn stretches_say_where_it_stayed_firm() {
        let between = section(&[350, 350, 200, 350, 350]).firm_at(Some(700));
        assert_eq!(between.len(), 1);
        assert_eq!(
            (between[0].from_mm, between[0].to_mm, between[0].across),
            (Some(263), Some(438), Across::Between)
        );
        let sides = section(&[200, 350, 350, 350, 200]).firm_at(None);
        assert_eq!(
            sides.iter().map(|stretch| stretch.across).collect::<Vec<_>>(),
            [Across::AtLine, Across::AtLine]
        );
        let all = section(&[200, 200, 200]).firm_at(None);
        assert_eq!((all[0].from, all[0].to, all[0].across), (0.0, 1.0, Across::Throughout));
    }

    proptest! {
        #[test]
        fn a_hole_looks_the_same_from_the_other_side(readings in prop::collection::vec(50u32..500, 3..12)) {
            let mirrored: Vec<u32> = readings.iter().rev().copied().collect();
            let (one, other) = (section(&readings), section(&mirrored));
            prop_assert_eq!(one.pattern(), other.pattern());
            let widths = |section: &Section| -> f64 {
                section.firm_at(None).iter().map(|stretch| stretch.to - stretch.from).sum()
            };
            prop_assert!((widths(&one) - widths(&other)).abs() < 1e-9);
        }
    }
}
