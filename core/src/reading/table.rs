//! The one table of what each clue says of each kind: parsed from `clues.table`.

use super::clue::Clue;
use super::kind::{KINDS, Kind};
use crate::error::Fault;
use crate::record::{Cause, Condition};
use crate::soil::texture::TextureGroup;
use std::sync::OnceLock;

/// One number a kind, in the order of [`KINDS`].
pub type PerKind = [f64; KINDS.len()];

/// Longest list of answers.
const MOST_ANSWERS: usize = 6;

/// The text of the table with a source in every row.
pub const TEXT: &str = include_str!("clues.table");

/// What each clue says of each kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// Prior share of each kind, adds up to 1.
    pub prior: PerKind,
    /// For each clue, in the order of [`Clue::ALL`], its rows by texture; those for any texture last.
    rows: Vec<Vec<ClueRows>>,
}

/// The rows of one clue, for some texture groups.
#[derive(Debug, Clone, PartialEq)]
struct ClueRows {
    /// Empty = any texture, also unknown.
    textures: Vec<TextureGroup>,
    /// No row differs by condition: it tells why, never how.
    only_cause: bool,
    /// Chance of each answer in each kind; `None` = not in the table.
    chances: [Option<PerKind>; MOST_ANSWERS],
    /// Share of layers that give the answer, for answers that say nothing.
    silent: [f64; MOST_ANSWERS],
}

/// A row as written: condition and cause columns.
struct Written {
    clue: Clue,
    textures: Vec<TextureGroup>,
    answer: usize,
    numbers: PerKind,
    only_cause: bool,
}

impl Table {
    /// The table of this rule set.
    pub fn standard() -> &'static Self {
        static TABLE: OnceLock<Table> = OnceLock::new();
        // The text is part of the program; `the_table_parses` proves it good, so the fallback is never used.
        TABLE.get_or_init(|| {
            Self::parse(TEXT)
                .unwrap_or_else(|_| Self { prior: [1.0 / KINDS.len() as f64; KINDS.len()], rows: Vec::new() })
        })
    }

    /// Reads a table; see `clues.table` for the form.
    ///
    /// # Errors
    /// The first row that is not understood, by its line.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let mut prior = None;
        let mut weights = vec![1.0; Clue::ALL.len()];
        let mut silent = Vec::new();
        let mut written = Vec::new();
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
            match words.as_slice() {
                ["prior", _, columns @ ..] => {
                    let (numbers, _) = per_kind(columns).ok_or_else(|| bad("not eight numbers above 0"))?;
                    prior = Some(normalised(numbers));
                }
                ["weight", clue, weight] => {
                    let clue = Clue::from_code(clue).ok_or_else(|| bad("unknown clue"))?;
                    weights[clue as usize] = weight.parse().map_err(|_| bad("not a number"))?;
                }
                ["silent", clue, answer, share] => {
                    let (clue, answer) = answer_of(clue, answer).ok_or_else(|| bad("unknown answer"))?;
                    silent.push((clue, answer, share.parse::<f64>().map_err(|_| bad("not a number"))?));
                }
                [clue, answer, textures, columns @ ..] => {
                    let (clue, answer) = answer_of(clue, answer).ok_or_else(|| bad("unknown answer"))?;
                    let (numbers, only_cause) =
                        per_kind(columns).ok_or_else(|| bad("not eight numbers above 0"))?;
                    let textures = textures_of(textures).ok_or_else(|| bad("unknown texture group"))?;
                    written.push(Written { clue, textures, answer, numbers, only_cause });
                }
                _ => return Err(bad("not a row")),
            }
        }
        let prior = prior.ok_or_else(|| Fault::new("", "no prior row", "add one"))?;
        Ok(Self { prior, rows: gather(written, &weights, &silent) })
    }

    /// Chance of an answer in each kind; `None` where the clue or answer says nothing.
    pub fn chances(&self, clue: Clue, answer: usize, texture: Option<TextureGroup>) -> Option<&PerKind> {
        self.rows_of(clue, texture)?.chances.get(answer)?.as_ref()
    }

    /// Share of layers, whatever their kind, that give an answer which says nothing.
    pub fn silent(&self, clue: Clue, answer: usize, texture: Option<TextureGroup>) -> f64 {
        self.rows_of(clue, texture).and_then(|rows| rows.silent.get(answer).copied()).unwrap_or(0.0)
    }

    /// Returns whether a clue only tells why a layer is so, never how it is.
    pub fn only_cause(&self, clue: Clue) -> bool {
        self.rows.get(clue as usize).is_none_or(|all| all.iter().all(|rows| rows.only_cause))
    }

    fn rows_of(&self, clue: Clue, texture: Option<TextureGroup>) -> Option<&ClueRows> {
        let holds = |rows: &&ClueRows| {
            rows.textures.is_empty() || texture.is_some_and(|group| rows.textures.contains(&group))
        };
        self.rows.get(clue as usize)?.iter().find(holds)
    }

    /// The same table with every log odds multiplied by what `factor` returns: for asking how much a call
    /// hangs on the sizes in the table.
    #[must_use]
    pub fn perturbed(&self, factor: &mut dyn FnMut() -> f64) -> Self {
        let mut table = self.clone();
        stretch(&mut table.prior, factor);
        table.prior = normalised(table.prior);
        for rows in table.rows.iter_mut().flatten() {
            for chances in rows.chances.iter_mut().flatten() {
                stretch(chances, factor);
            }
        }
        table
    }
}

/// Multiplies each log odds (against the mean over kinds) by a factor.
fn stretch(numbers: &mut PerKind, factor: &mut dyn FnMut() -> f64) {
    let mean = numbers.iter().map(|number| number.ln()).sum::<f64>() / numbers.len() as f64;
    for number in numbers.iter_mut() {
        *number = (mean + (number.ln() - mean) * factor()).exp();
    }
}

fn answer_of(clue: &str, answer: &str) -> Option<(Clue, usize)> {
    let clue = Clue::from_code(clue)?;
    Some((clue, clue.answers().iter().position(|code| *code == answer)?))
}

fn textures_of(word: &str) -> Option<Vec<TextureGroup>> {
    if word == "any" {
        return Some(Vec::new());
    }
    word.split(',').map(TextureGroup::from_code).collect()
}

/// The eight columns multiplied out to the kinds, and whether the condition columns are all alike.
fn per_kind(columns: &[&str]) -> Option<(PerKind, bool)> {
    let numbers: Vec<f64> = columns.iter().map(|word| word.parse().ok()).collect::<Option<_>>()?;
    if numbers.len() != 8 || numbers.iter().any(|number| *number <= 0.0) {
        return None;
    }
    let of = |kind: Kind| {
        let cause = match kind.cause {
            Cause::Pressed => 4,
            Cause::Settled => 5,
            Cause::Cemented => 6,
            Cause::Natural | Cause::Unclear => 7,
        };
        numbers[kind.condition as usize] * numbers[cause]
    };
    let alike = columns[..Condition::ALL.len()].iter().all(|word| *word == columns[0]);
    Some((KINDS.map(of), alike))
}

fn normalised(mut numbers: PerKind) -> PerKind {
    let sum: f64 = numbers.iter().sum();
    for number in &mut numbers {
        *number /= sum;
    }
    numbers
}

/// Rows of one clue and texture together, normalised over the answers, tempered by the weight and
/// normalised again, so that what is left is a chance of each answer in each kind.
fn gather(written: Vec<Written>, weights: &[f64], silent: &[(Clue, usize, f64)]) -> Vec<Vec<ClueRows>> {
    let mut all: Vec<Vec<ClueRows>> = vec![Vec::new(); Clue::ALL.len()];
    for row in written {
        let of_clue = &mut all[row.clue as usize];
        let at = of_clue.iter().position(|rows| rows.textures == row.textures).unwrap_or_else(|| {
            let mut rows = ClueRows {
                textures: row.textures,
                only_cause: true,
                chances: [None; MOST_ANSWERS],
                silent: [0.0; MOST_ANSWERS],
            };
            for (_, answer, share) in silent.iter().filter(|(clue, _, _)| *clue == row.clue) {
                rows.silent[*answer] = *share;
            }
            of_clue.push(rows);
            of_clue.len() - 1
        });
        of_clue[at].only_cause &= row.only_cause;
        of_clue[at].chances[row.answer] = Some(row.numbers);
    }
    for (of_clue, weight) in all.iter_mut().zip(weights) {
        crate::order::sort_by_key(of_clue, |rows| rows.textures.is_empty());
        for rows in of_clue {
            let speaking = 1.0 - rows.silent.iter().sum::<f64>();
            for kind in 0..KINDS.len() {
                normalise_over_answers(&mut rows.chances, kind, 1.0);
                for chances in rows.chances.iter_mut().flatten() {
                    chances[kind] = chances[kind].powf(*weight);
                }
                normalise_over_answers(&mut rows.chances, kind, speaking);
            }
        }
    }
    all
}

fn normalise_over_answers(chances: &mut [Option<PerKind>; MOST_ANSWERS], kind: usize, to: f64) {
    let sum: f64 = chances.iter().flatten().map(|numbers| numbers[kind]).sum();
    for numbers in chances.iter_mut().flatten() {
        numbers[kind] *= to / sum;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Sign;

    #[test]
    fn the_table_parses_and_knows_every_clue() {
        let table = Table::parse(TEXT).unwrap();
        for &clue in Clue::ALL {
            for (answer, code) in clue.answers().iter().enumerate() {
                let says = table.chances(clue, answer, None).is_some();
                let silent = table.silent(clue, answer, None) > 0.0;
                assert!(says != silent, "{} {code}", clue.code());
            }
        }
    }

    #[test]
    fn the_chances_of_a_clue_add_up_to_one_in_every_kind() {
        let table = Table::standard();
        for &clue in Clue::ALL {
            for texture in [None, Some(TextureGroup::Sand), Some(TextureGroup::Silty)] {
                for kind in 0..KINDS.len() {
                    let sum: f64 = (0..clue.answers().len())
                        .map(|answer| {
                            table.chances(clue, answer, texture).map_or(0.0, |chances| chances[kind])
                                + table.silent(clue, answer, texture)
                        })
                        .sum();
                    assert!((sum - 1.0).abs() < 1e-9, "{} {sum}", clue.code());
                }
            }
        }
    }

    /// The reason why no worse answer can ever improve the condition: going from an answer to the next worse
    /// one, every kind of a worse condition gains at least as much as every kind of a better one.
    #[test]
    fn a_worse_answer_moves_every_worse_condition_up() {
        let table = Table::standard();
        let worse: [(Sign, &[[usize; 2]]); 6] = [
            (Sign::Resistance, &[[0, 1], [1, 2], [2, 3]]),
            (Sign::Pores, &[[0, 1], [1, 2], [2, 3]]),
            (Sign::Channels, &[[0, 1], [1, 2], [1, 3]]),
            (Sign::Roots, &[[0, 1], [1, 2], [2, 3]]),
            (Sign::Patches, &[[0, 1], [1, 2]]),
            (Sign::Smell, &[[0, 1], [1, 2]]),
        ];
        for (sign, steps) in worse {
            for [from, to] in steps {
                let (from_chances, to_chances) = (
                    table.chances(sign.into(), *from, None).unwrap(),
                    table.chances(sign.into(), *to, None).unwrap(),
                );
                let gain = |kind: usize| to_chances[kind] / from_chances[kind];
                for (better, kind) in KINDS.iter().enumerate() {
                    for (worse, other) in KINDS.iter().enumerate() {
                        if kind.condition < other.condition {
                            assert!(
                                gain(better) <= gain(worse) + 1e-12,
                                "{} {from}->{to}: {kind:?} {} {other:?} {}",
                                sign.code(),
                                gain(better),
                                gain(worse)
                            );
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn a_row_without_a_source_is_refused() {
        assert!(Table::parse("prior any 1 1 1 1 1 1 1 1 |").is_err());
        assert!(Table::parse("prior any 1 1 1 1 1 1 1 1").is_err());
        assert!(Table::parse("roots upward any 1 1 1 1 1 1 1 1 | x").is_err());
    }
}
