//! Why a bundle is not read; in each case nothing of it is used.

/// What is wrong with a bundle, and what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Damage {
    /// Another kind of file.
    #[error("this is no bundle of Pitface; choose another file")]
    NotABundle,
    /// It ends too early.
    #[error("the bundle ends in the middle; fetch it again")]
    CutOff,
    /// Bytes changed on the way, or it was not made as the format says.
    #[error("the bundle is damaged ({0}); fetch it again")]
    Damaged(&'static str),
    /// It is larger than this program reads.
    #[error("the bundle holds more than this program takes in at once ({0})")]
    TooLarge(&'static str),
    /// Not signed by the key it names.
    #[error(
        "the signature of the bundle is wrong: it does not come from whom it says; ask the sender for it"
    )]
    Forged,
    /// From a later version.
    #[error("the bundle is from a newer version ({0}); keep it, update the program and take it in then")]
    Newer(&'static str),
}
