//! Which code was meant by a word that is none.

/// Words of the trade for what a code says; each row `(word, code)`. Common practice, no source.
const TRADE_WORDS: [(&str, &str); 16] = [
    ("granular", "crumbs"),
    ("crumbly", "crumbs"),
    ("subangular_blocky", "rounded_lumps"),
    ("angular_blocky", "sharp_blocks"),
    ("blocky", "sharp_blocks"),
    ("platy", "flat_plates"),
    ("massive", "one_mass"),
    ("single_grain", "loose_grains"),
    ("tramline", "wheeling"),
    ("field", "open"),
    ("easy", "slips_in"),
    ("soft", "slips_in"),
    ("hard", "hard_push"),
    ("damp", "moist"),
    ("plastic", "thread"),
    ("ssew", "uk"),
];

/// Slips of the pen that still count as the same word.
const SLIPS: usize = 2;

/// The code of a list that a word most likely stands for; `None` where none is near.
pub fn nearest<'a>(word: &str, codes: &[&'a str]) -> Option<&'a str> {
    let word = plain(word);
    let listed = |wanted: &str| codes.iter().copied().find(|code| *code == wanted);
    let holds = |code: &&'a str| {
        word.len() >= 4 && code.len() >= 4 && (code.contains(word.as_str()) || word.contains(*code))
    };
    listed(&word)
        .or_else(|| {
            let (_, code) = TRADE_WORDS.iter().find(|(trade, _)| *trade == word)?;
            listed(code)
        })
        .or_else(|| {
            let (slips, code) = codes.iter().map(|code| (slips(&word, code), *code)).min()?;
            (slips <= SLIPS && slips * 2 < code.len()).then_some(code)
        })
        .or_else(|| {
            let mut holding = codes.iter().copied().filter(holds);
            holding.next().filter(|_| holding.next().is_none())
        })
}

/// The name of a list that a word most likely stands for, whatever their case and blanks.
pub fn nearest_name<'a>(word: &str, names: &[&'a str]) -> Option<&'a str> {
    let plain: Vec<String> = names.iter().map(|name| plain(name)).collect();
    let meant = nearest(word, &plain.iter().map(String::as_str).collect::<Vec<_>>())?;
    plain.iter().position(|name| name == meant).map(|place| names[place])
}

/// A word as codes are written.
fn plain(word: &str) -> String {
    word.trim().to_lowercase().replace([' ', '-'], "_")
}

/// Letters to add, drop or change to get from one word to the other (Levenshtein 1966).
fn slips(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (index, letter) in from.chars().enumerate() {
        let mut corner = row[0];
        row[0] = index + 1;
        for (column, other) in to.iter().enumerate() {
            let changed = corner + usize::from(letter != *other);
            corner = row[column + 1];
            row[column + 1] = changed.min(corner + 1).min(row[column] + 1);
        }
    }
    row[to.len()]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{ComesAway, PlaceKind, Resistance, RootsSeen};

    #[test]
    fn a_slip_a_trade_word_or_another_spelling_is_understood() {
        for (word, codes, meant) in [
            ("crums", ComesAway::CODES, Some("crumbs")),
            ("Flat Plates", ComesAway::CODES, Some("flat_plates")),
            ("plates", ComesAway::CODES, Some("flat_plates")),
            ("massive", ComesAway::CODES, Some("one_mass")),
            ("wheelings", PlaceKind::CODES, Some("wheeling")),
            ("head-land", PlaceKind::CODES, Some("headland")),
            ("none", RootsSeen::CODES, Some("none_to_judge")),
            ("push", Resistance::CODES, None), // firm or hard?
            ("beetroot", ComesAway::CODES, None),
            ("", ComesAway::CODES, None),
        ] {
            assert_eq!(nearest(word, codes), meant, "{word}");
        }
    }

    #[test]
    fn a_name_is_found_whatever_its_case() {
        let names = ["Yard Blade", "Long Legs"];
        assert_eq!(nearest_name("yard-blade", &names), Some("Yard Blade"));
        assert_eq!(nearest_name("Long Lgs", &names), Some("Long Legs"));
        assert_eq!(nearest_name("mole", &names), None);
    }

    #[test]
    fn slips_are_counted_letter_by_letter() {
        for (from, to, count) in [("", "abc", 3), ("kitten", "sitting", 3), ("same", "same", 0)] {
            assert_eq!((slips(from, to), slips(to, from)), (count, count));
        }
    }
}
