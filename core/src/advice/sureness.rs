//! How sure a call is: the chance that it is right, given what was seen, and that chance as a word.

use super::call::{OfGround, Sureness, What};
use super::sampling::Count;

/// Share from which a call is sure. Our mark.
const SURE_MARK: f64 = 0.85;
/// Share from which a call is likely. Our mark.
const LIKELY_MARK: f64 = 0.60;

/// What the tempered shares leave out, in log odds. Signs are tempered because they partly say the same; told as they
/// come, shares are too low by about this much. Set on drawn fields (`core/tests/drawn_fields.rs` prints how often calls
/// told with each share are right, on other seeds). Our judgement.
const LEFT_OUT: f64 = 0.4;

/// The share as it is told, from the mean share of the kinds a call is right for.
pub fn calibrated(share: f64) -> f64 {
    let odds = share / (1.0 - share) * LEFT_OUT.exp();
    if odds.is_finite() { odds / (1.0 + odds) } else { share }
}

/// That chance as a word.
pub fn in_a_word(share: f64) -> Sureness {
    if share >= SURE_MARK {
        Sureness::Sure
    } else if share >= LIKELY_MARK {
        Sureness::Likely
    } else {
        Sureness::CannotSay
    }
}

/// How far `agree` of `pits` speak for their zone: the chance that more than half of it is so, from a belief that leans to
/// all or none, as harm mostly does within a zone ([`Count`]).
pub fn of_ground(pits: usize, agree: usize) -> OfGround {
    let count = Count::new(pits as u32, agree as u32);
    let share = if pits == 0 { 0.0 } else { count.more_than_half() };
    let word = in_a_word(share);
    let sure = if pits < 2 && word == Sureness::Sure { Sureness::Likely } else { word };
    OfGround { pits, agree, share, sure }
}

/// Chance that water stands, by the facts that say so: of signs that are right four times in five, two make it 0.72 and
/// three 0.91, from one field in seven (arithmetic on assumed signs that do not hang together; our judgement).
pub fn of_water(what: &What) -> f64 {
    match what {
        What::WaterStands { facts, .. } if *facts >= 3 => 0.91,
        _ => 0.72,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_words_begin_at_their_marks() {
        let words = [(0.599, Sureness::CannotSay), (0.60, Sureness::Likely), (0.849, Sureness::Likely)];
        for (share, word) in words.into_iter().chain([(0.85, Sureness::Sure)]) {
            assert_eq!(in_a_word(share), word, "{share}");
        }
    }
}
