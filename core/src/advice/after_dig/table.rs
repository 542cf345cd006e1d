//! The one table of what each clue says of each cause of failure: parsed from `causes.table`.

use super::clue::PassClue;
use super::codes::FailureCause;
use crate::error::Fault;
use std::sync::OnceLock;

/// One number a cause, in the order of [`FailureCause::ALL`].
pub type PerCause = [f64; FailureCause::ALL.len()];

/// Longest list of answers.
const MOST_ANSWERS: usize = 6;

/// The text of the table with a source in every row.
pub const TEXT: &str = include_str!("causes.table");

/// What each clue says of each cause.
#[derive(Debug, Clone, PartialEq)]
pub struct CauseTable {
    /// Share of each cause before anything is known; adds up to 1.
    pub prior: PerCause,
    /// For each clue, in the order of [`PassClue::ALL`], the chance of each answer; `None` = it says nothing.
    chances: [[Option<PerCause>; MOST_ANSWERS]; PassClue::ALL.len()],
}

impl CauseTable {
    /// The table of this rule set.
    pub fn standard() -> &'static Self {
        static TABLE: OnceLock<CauseTable> = OnceLock::new();
        // The text is part of the program; `the_table_parses` proves it good, so the fallback is never used.
        TABLE.get_or_init(|| {
            let flat = [1.0 / FailureCause::ALL.len() as f64; FailureCause::ALL.len()];
            let nothing = [[None; MOST_ANSWERS]; PassClue::ALL.len()];
            Self::parse(TEXT).unwrap_or(Self { prior: flat, chances: nothing })
        })
    }

    /// Reads a table; see `causes.table` for the form.
    ///
    /// # Errors
    /// The first row that is not understood, by its line.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let mut prior = None;
        let mut weights = [1.0; PassClue::ALL.len()];
        let mut chances = [[None; MOST_ANSWERS]; PassClue::ALL.len()];
        for (number, line) in text.lines().enumerate() {
            let line = line.trim();
            if line.is_empty() || line.starts_with('#') {
                continue;
            }
            let bad = |wrong: &str| {
                Fault::new(format!("line {}", number + 1), wrong, "compare it with the rows around it")
            };
            let (left, source) = line.split_once('|').ok_or_else(|| bad("no source"))?;
            if source.trim().is_empty() {
                return Err(bad("no source"));
            }
            let words: Vec<&str> = left.split_whitespace().collect();
            let numbers = |words: &[&str]| per_cause(words).ok_or_else(|| bad("not ten numbers above 0"));
            match words.as_slice() {
                ["prior", columns @ ..] => {
                    let numbers = numbers(columns)?;
                    let sum: f64 = numbers.iter().sum();
                    prior = Some(numbers.map(|number| number / sum));
                }
                ["weight", clue, weight] => {
                    let clue = PassClue::from_code(clue).ok_or_else(|| bad("unknown clue"))?;
                    weights[clue as usize] = weight.parse().map_err(|_| bad("not a number"))?;
                }
                [clue, answer, columns @ ..] => {
                    let clue = PassClue::from_code(clue).ok_or_else(|| bad("unknown clue"))?;
                    let answer = clue.answers().iter().position(|code| code == answer);
                    chances[clue as usize][answer.ok_or_else(|| bad("unknown answer"))?] =
                        Some(numbers(columns)?);
                }
                _ => return Err(bad("not a row")),
            }
        }
        for (of_clue, weight) in chances.iter_mut().zip(weights) {
            // Tempered between two normalisings, so that what is left is a chance of each answer in each cause.
            normalise_over_answers(of_clue);
            for chance in of_clue.iter_mut().flatten().flatten() {
                *chance = chance.powf(weight);
            }
            normalise_over_answers(of_clue);
        }
        Ok(Self { prior: prior.ok_or_else(|| Fault::new("", "no prior row", "add one"))?, chances })
    }

    /// The same table with every log odds multiplied by what `factor` returns: for asking how much a ranking hangs on
    /// the sizes in the table.
    #[must_use]
    pub fn perturbed(&self, factor: &mut dyn FnMut() -> f64) -> Self {
        let mut table = self.clone();
        for numbers in table.chances.iter_mut().flatten().flatten().chain([&mut table.prior]) {
            let mean = numbers.iter().map(|number| number.ln()).sum::<f64>() / numbers.len() as f64;
            for number in numbers.iter_mut() {
                *number = (mean + (number.ln() - mean) * factor()).exp();
            }
        }
        table
    }

    /// Chance of an answer in each cause; `None` where it says nothing.
    pub fn chances(&self, clue: PassClue, answer: usize) -> Option<&PerCause> {
        self.chances[clue as usize].get(answer)?.as_ref()
    }
}

fn per_cause(columns: &[&str]) -> Option<PerCause> {
    let numbers: Vec<f64> = columns.iter().map(|word| word.parse().ok()).collect::<Option<_>>()?;
    PerCause::try_from(numbers).ok().filter(|numbers| numbers.iter().all(|number| *number > 0.0))
}

fn normalise_over_answers(chances: &mut [Option<PerCause>; MOST_ANSWERS]) {
    for cause in 0..FailureCause::ALL.len() {
        let sum: f64 = chances.iter().flatten().map(|numbers| numbers[cause]).sum();
        for numbers in chances.iter_mut().flatten() {
            numbers[cause] /= sum;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::RollOutcome;

    #[test]
    fn the_table_parses_and_knows_every_answer_but_a_roll_that_does_not_apply() {
        let table = CauseTable::parse(TEXT).unwrap();
        for &clue in PassClue::ALL {
            for (answer, code) in clue.answers().iter().enumerate() {
                let silent = clue == PassClue::Roll && answer == RollOutcome::WillNotHold as usize;
                assert_eq!(table.chances(clue, answer).is_none(), silent, "{} {code}", clue.code());
            }
        }
    }

    #[test]
    fn the_chances_of_a_clue_add_up_to_one_in_every_cause() {
        let table = CauseTable::standard();
        for &clue in PassClue::ALL {
            for (cause, name) in FailureCause::CODES.iter().enumerate() {
                let answers = 0..clue.answers().len();
                let sum: f64 = answers
                    .filter_map(|answer| table.chances(clue, answer))
                    .map(|chances| chances[cause])
                    .sum();
                assert!((sum - 1.0).abs() < 1e-9, "{} {name} {sum}", clue.code());
            }
        }
    }

    /// As written the columns of a clue are of 100 holes, and so is the prior: a number changed alone stands out.
    #[test]
    fn rows_as_written_are_of_a_hundred_holes() {
        let mut sums: Vec<(&str, Vec<u32>)> = Vec::new();
        for line in TEXT.lines().filter(|line| !line.starts_with(['#', '\n'])) {
            let mut words = line.split('|').next().unwrap_or_default().split_whitespace();
            let Some(clue) = words.next().filter(|&clue| clue != "weight") else { continue };
            let numbers: Vec<u32> = words.filter_map(|word| word.parse().ok()).collect();
            assert_eq!(numbers.len(), FailureCause::ALL.len(), "{line}");
            match sums.iter_mut().find(|(its, _)| *its == clue) {
                Some((_, sum)) => sum.iter_mut().zip(&numbers).for_each(|(sum, number)| *sum += number),
                None => sums.push((clue, numbers)),
            }
        }
        assert_eq!(sums.len(), PassClue::ALL.len() + 1);
        for (clue, sum) in sums {
            let whole = if clue == "prior" { vec![sum.iter().sum()] } else { sum };
            assert!(whole.iter().all(|&sum| sum == 100), "{clue} {whole:?}");
        }
    }

    /// The directions that sources give, whatever the sizes.
    #[test]
    fn published_directions_stand_in_the_table() {
        use FailureCause as Cause;
        let table = CauseTable::standard();
        let rows: [(PassClue, &str, &[Cause]); 9] = [
            (PassClue::Profile, "y", &[Cause::TooWet, Cause::BelowCritical]),
            (PassClue::Lift, "none", &[Cause::TooWet, Cause::BelowCritical, Cause::WornFeet, Cause::TooSlow]),
            (PassClue::Lift, "furrows", &[Cause::TooFast, Cause::TooShallow]),
            (PassClue::SubsoilUp, "yes", &[Cause::TooFast]),
            (PassClue::Smear, "smeared", &[Cause::TooWet, Cause::BelowCritical]),
            (PassClue::Roll, "thread", &[Cause::TooWet]),
            (PassClue::Roll, "crumbles", &[Cause::TooDry]),
            (PassClue::Clods, "large", &[Cause::TooDry]),
            (PassClue::Critical, "below", &[Cause::BelowCritical]),
        ];
        for (clue, code, causes) in rows {
            let answer = clue.answers().iter().position(|known| *known == code).unwrap();
            let chances = table.chances(clue, answer).unwrap();
            let mean: f64 = chances.iter().zip(&table.prior).map(|(chance, prior)| chance * prior).sum();
            for &cause in causes {
                assert!(chances[cause as usize] > mean, "{} {code} {}", clue.code(), cause.code());
            }
        }
    }

    #[test]
    fn a_row_without_a_source_is_refused() {
        assert!(CauseTable::parse("prior 1 1 1 1 1 1 1 1 1 1").is_err());
        assert!(CauseTable::parse("prior 1 1 1 1 1 1 1 1 1 1 |").is_err());
        assert!(CauseTable::parse("lift sideways 1 1 1 1 1 1 1 1 1 1 | x").is_err());
        assert!(CauseTable::parse("lift none 1 1 1 | x").is_err());
    }
}
