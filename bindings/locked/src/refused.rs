//! Why a file is not locked or not opened.

use crate::SHORTEST_WORD;

/// What is wrong, and what to do. Nothing of the file is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// The word can be found by trying.
    #[error(
        "the team word has fewer than {SHORTEST_WORD} characters and could be found by trying; agree on a longer one, four words say"
    )]
    TooShort,
    /// Another word, or the lines with which the file begins are damaged: the two cannot be told apart.
    #[error(
        "the team word does not open it (or its first lines are damaged); compare the word with whoever sent it, or fetch it again"
    )]
    WrongWord,
    /// The word is right but bytes changed on the way, or the end is missing; or the beginning is no sound one.
    #[error("the locked file is damaged or ends in the middle; fetch it again")]
    Damaged,
    /// Opening it would take more time and memory (as an exponent of two) than this program gives it.
    #[error(
        "opening it asks for more work (2^{0}) than this program does for a file; have it locked anew, with Pitface"
    )]
    TooMuchWork(u8),
    /// Locked for somebody's key, not with a word.
    #[error("it is locked with a key and not with a team word; ask for it locked with the team word")]
    OtherKey,
    /// Not a locked file at all.
    #[error("the file is not locked; use it as it is")]
    NotLocked,
    /// It could not be locked.
    #[error("the file could not be locked; try again")]
    NotMade,
}
