//! A team's word as it is meant, however it was typed.

use crate::Refused;
use age::secrecy::SecretString;
use unicode_normalization::UnicodeNormalization as _;

/// Fewest characters of a word with which files are locked. Who gets hold of a locked file can try words at leisure; twelve characters
/// are the fewest with which four short words, or letters by chance, hold out. Our judgement.
pub const SHORTEST_WORD: usize = 12;

/// What some editors put before a text file, and nobody sees.
const BYTE_ORDER_MARK: char = '\u{feff}';

/// A word as two people mean the same: letters in one form whatever keyboard made them (Unicode NFKC), one space between words and none at
/// the ends, no byte-order mark. Upper and lower case stay apart.
pub fn as_meant(word: &str) -> String {
    let letters: String = word.nfkc().filter(|letter| *letter != BYTE_ORDER_MARK).collect();
    letters.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Returns whether a team's word is long enough to lock with, as it is meant.
///
/// # Errors
/// [`Refused::TooShort`].
pub fn long_enough(word: &str) -> Result<(), Refused> {
    if as_meant(word).chars().count() < SHORTEST_WORD { Err(Refused::TooShort) } else { Ok(()) }
}

/// Returns what may open a file: the word as it is meant, and as files were locked before (only the ends trimmed) where that is another.
pub(crate) fn phrases(word: &str) -> (SecretString, Option<SecretString>) {
    let (meant, before) = (as_meant(word), word.trim());
    let before = (before != meant).then(|| SecretString::from(before.to_owned()));
    (SecretString::from(meant), before)
}
