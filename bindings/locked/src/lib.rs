//! A bundle locked with the word that a team has agreed on, for folders and messengers that others can look into.
//!
//! A locked file is an ordinary age file (age-encryption.org/v1) whose one recipient is a pass phrase; inside is the bundle file as it is.
//! Any program that knows the format opens it with the same word. Pure functions over bytes: [`is_locked`] tells a locked file by how it
//! begins, whatever its name; [`lock`] and [`unlock`] go one way and the other. Locking keeps strangers out. Who wrote what is
//! shown by the signatures inside, not by the lock: everybody with the word can make a locked file.

mod refused;

pub use refused::Refused;

use age::secrecy::SecretString;
use age::{DecryptError, Decryptor, Encryptor, scrypt};
use std::io::{Read as _, Write as _};

/// How every locked file begins (the age format, version line).
const BEGINNING: &[u8] = b"age-encryption.org/v1\n";

/// Fewest characters of a word with which files are locked. Who gets hold of a locked file can try words at leisure; twelve characters
/// are the fewest with which four short words, or letters by chance, hold out. Our judgement.
pub const SHORTEST_WORD: usize = 12;

/// Work to lock a file, as an exponent of two: 64 MiB of memory for a moment. Every file of a shared folder is opened at every look into it,
/// also on a small phone, so it is two steps below what programs for the format take by themselves. Our judgement.
const WORK: u8 = 16;

/// Most work that a file may ask for: 256 MiB for about a second, which is what programs for the format take by themselves. A file that was
/// made to hang a phone asks for more. Our judgement.
const MOST_WORK: u8 = 18;

/// Where the header must have ended. With a pass phrase it has a fixed form of about 150 bytes; a longer one is for keys, or made to keep
/// the reader busy.
const LONGEST_HEADER: usize = 1024;

/// How the last line of the header begins.
const LAST_LINE: &[u8] = b"\n---";

/// Whether a file is locked, by how it begins.
pub fn is_locked(bytes: &[u8]) -> bool {
    bytes.starts_with(BEGINNING)
}

/// Whether a team's word is long enough to lock with; white space at its ends does not count.
///
/// # Errors
/// [`Refused::TooShort`].
pub fn long_enough(word: &str) -> Result<(), Refused> {
    if word.trim().chars().count() < SHORTEST_WORD { Err(Refused::TooShort) } else { Ok(()) }
}

/// A file locked with a word, without white space at its ends. Twice the same gives different bytes. Takes a moment and 64 MiB.
///
/// # Errors
/// [`Refused::TooShort`].
pub fn lock(bytes: &[u8], word: &str) -> Result<Vec<u8>, Refused> {
    long_enough(word)?;
    lock_with(bytes, word, WORK)
}

/// What a locked file holds, all of it or nothing; never more bytes than went in. Takes a moment and at most 256 MiB beside the two.
///
/// # Errors
/// If it is not locked, not with this word, asks for too much work, or any byte of it is not as it was written.
pub fn unlock(bytes: &[u8], word: &str) -> Result<Vec<u8>, Refused> {
    if !is_locked(bytes) {
        return Err(Refused::NotLocked);
    }
    let header = &bytes[..bytes.len().min(LONGEST_HEADER)];
    if !header.windows(LAST_LINE.len()).any(|window| window == LAST_LINE) {
        return Err(if header.len() < LONGEST_HEADER { Refused::Damaged } else { Refused::OtherKey });
    }
    let mut identity = scrypt::Identity::new(phrase(word));
    identity.set_max_work_factor(MOST_WORK);
    let locked = Decryptor::new_buffered(bytes)?;
    let mut opened = locked.decrypt(std::iter::once(&identity as _))?;
    let mut content = Vec::with_capacity(bytes.len());
    opened.read_to_end(&mut content).map_err(|_| Refused::Damaged)?;
    Ok(content)
}

fn lock_with(bytes: &[u8], word: &str, exponent: u8) -> Result<Vec<u8>, Refused> {
    // Nothing here fails for a pass phrase alone that is written to memory.
    let mut recipient = scrypt::Recipient::new(phrase(word));
    recipient.set_work_factor(exponent);
    let encryptor =
        Encryptor::with_recipients(std::iter::once(&recipient as _)).map_err(|_| Refused::NotMade)?;
    let mut locked = Vec::with_capacity(bytes.len() + bytes.len() / 2048 + LONGEST_HEADER);
    let mut inside = encryptor.wrap_output(&mut locked).map_err(|_| Refused::NotMade)?;
    inside.write_all(bytes).and_then(|()| inside.finish()).map_err(|_| Refused::NotMade)?;
    Ok(locked)
}

/// A word as it is meant: a line's end read from a file, or the space that a phone's keyboard puts behind a word, is none of it.
fn phrase(word: &str) -> SecretString {
    SecretString::from(word.trim().to_owned())
}

impl From<DecryptError> for Refused {
    fn from(error: DecryptError) -> Self {
        match error {
            DecryptError::KeyDecryptionFailed | DecryptError::DecryptionFailed => Self::WrongWord,
            DecryptError::ExcessiveWork { required, .. } => Self::TooMuchWork(required),
            DecryptError::NoMatchingKeys => Self::OtherKey,
            _ => Self::Damaged,
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may fail")]
mod tests;
