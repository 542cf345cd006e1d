//! The texture triangle of USDA by its handbook's rules (Soil Survey Manual, chapter 3; as in the texture
//! rules of the National Soil Information System). They say for each line of the triangle which side owns it.

use super::TextureClass;
use super::fractions::{Fractions, PERCENT};

/// One class and when a point belongs to it.
type Rule = (TextureClass, fn(Parts) -> bool);

/// Percentages as the handbook writes its rules, in the units of [`Fractions`].
#[derive(Clone, Copy)]
struct Parts {
    sand: i64,
    silt: i64,
    clay: i64,
}

const fn percent(number: i64) -> i64 {
    number * PERCENT
}

/// `low` ≤ `part` < `high`, in percent.
const fn from_to(part: i64, low: i64, high: i64) -> bool {
    percent(low) <= part && part < percent(high)
}

impl Parts {
    /// Silt and one and a half times clay, under 15.
    const fn is_sand(self) -> bool {
        2 * self.silt + 3 * self.clay < percent(30)
    }

    /// Silt and twice clay, under 30.
    const fn is_sand_or_loamy_sand(self) -> bool {
        self.silt + 2 * self.clay < percent(30)
    }
}

/// Each point meets exactly one of these.
const RULES: [Rule; 12] = [
    (TextureClass::Sand, |p| p.is_sand()),
    (TextureClass::LoamySand, |p| p.is_sand_or_loamy_sand() && !p.is_sand()),
    (TextureClass::SandyLoam, |p| {
        !p.is_sand_or_loamy_sand()
            && (from_to(p.clay, 7, 20) && p.sand > percent(52) || p.clay < percent(7) && p.silt < percent(50))
    }),
    (TextureClass::Loam, |p| from_to(p.clay, 7, 27) && from_to(p.silt, 28, 50) && p.sand <= percent(52)),
    (TextureClass::SiltLoam, |p| {
        p.silt >= percent(50) && from_to(p.clay, 12, 27) || from_to(p.silt, 50, 80) && p.clay < percent(12)
    }),
    (TextureClass::Silt, |p| p.silt >= percent(80) && p.clay < percent(12)),
    (TextureClass::SandyClayLoam, |p| {
        from_to(p.clay, 20, 35) && p.silt < percent(28) && p.sand > percent(45)
    }),
    (TextureClass::ClayLoam, |p| from_to(p.clay, 27, 40) && p.sand > percent(20) && p.sand <= percent(45)),
    (TextureClass::SiltyClayLoam, |p| from_to(p.clay, 27, 40) && p.sand <= percent(20)),
    (TextureClass::SandyClay, |p| p.clay >= percent(35) && p.sand > percent(45)),
    (TextureClass::SiltyClay, |p| p.clay >= percent(40) && p.silt >= percent(40)),
    (TextureClass::Clay, |p| p.clay >= percent(40) && p.sand <= percent(45) && p.silt < percent(40)),
];

/// The class of a point.
pub(super) fn class(fractions: Fractions) -> TextureClass {
    // Sandy loam is also the handbook's rest; the rules leave none (see the tests).
    matching(fractions).next().unwrap_or(TextureClass::SandyLoam)
}

fn matching(fractions: Fractions) -> impl Iterator<Item = TextureClass> {
    let parts = Parts { sand: fractions.sand(), silt: fractions.silt(), clay: fractions.clay() };
    RULES.iter().filter(move |(_, rule)| rule(parts)).map(|&(class, _)| class)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn fractions(sand: i64, clay: i64) -> Fractions {
        let share = |part: i64| part as f64 / PERCENT as f64;
        Fractions::new(share(sand), share(100 * PERCENT - sand - clay), share(clay)).unwrap()
    }

    #[test]
    fn every_whole_percent_meets_exactly_one_rule() {
        for sand in 0..=100 {
            for clay in 0..=100 - sand {
                let point = fractions(percent(sand), percent(clay));
                assert_eq!(matching(point).count(), 1, "sand {sand}, clay {clay}");
            }
        }
    }

    proptest! {
        #[test]
        fn so_does_every_point_between(sand in 0..=100 * PERCENT, share in 0.0..=1.0_f64) {
            let clay = ((100 * PERCENT - sand) as f64 * share) as i64;
            prop_assert_eq!(matching(fractions(sand, clay)).count(), 1);
        }
    }
}
