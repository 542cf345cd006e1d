//! A bundle locked with the word that a team has agreed on, for folders and messengers that others can look into.
//!
//! A locked file is an ordinary age file (age-encryption.org/v1) whose one recipient is a pass phrase; inside is the bundle file as it is.
//! Any program that knows the format opens it with the same word. [`is_locked`] tells a locked file by how it begins, whatever its
//! name; [`Locking`] and [`Opened`] go one way and the other without holding a file in memory, [`lock`] and [`unlock`] do
//! the same with bytes. Locking keeps strangers out. Who wrote what is shown by the signatures inside, not by the lock:
//! everybody with the word can make a locked file.

mod opened;
mod refused;
mod word;

pub use opened::{Opened, unlock};
pub use refused::Refused;
pub use word::{SHORTEST_WORD, as_meant, long_enough};

use age::secrecy::SecretString;
use age::stream::StreamWriter;
use age::{Encryptor, scrypt};
use std::io::{self, Write};

/// How every locked file begins (the age format, version line).
pub const BEGINNING: &[u8] = b"age-encryption.org/v1\n";

/// Work to lock a file, as an exponent of two: 64 MiB of memory for a moment. Every new file of a shared folder is opened, also on a small
/// phone, so it is two steps below what programs for the format take by themselves. Our judgement.
const WORK: u8 = 16;

/// Returns whether a file is locked, by how it begins.
pub fn is_locked(bytes: &[u8]) -> bool {
    bytes.starts_with(BEGINNING)
}

/// A file locked with a word. Twice the same gives different bytes. Takes a moment and 64 MiB.
///
/// # Errors
/// [`Refused::TooShort`].
pub fn lock(bytes: &[u8], word: &str) -> Result<Vec<u8>, Refused> {
    long_enough(word)?;
    lock_with(bytes, word, WORK)
}

/// A locked file that is being written. What is written comes out locked, and is a file only once [`Locking::finish`] was called.
pub struct Locking<W: Write>(StreamWriter<W>);

impl<W: Write> Locking<W> {
    /// Begins one, to be locked with a word. Takes a moment and 64 MiB.
    ///
    /// # Errors
    /// As writing does; a word that is too short is a fault of whoever did not look ([`long_enough`]).
    pub fn begin(to: W, word: &str) -> io::Result<Self> {
        long_enough(word).map_err(io::Error::other)?;
        Self::with(to, word, WORK)
    }

    fn with(to: W, word: &str, exponent: u8) -> io::Result<Self> {
        let mut recipient = scrypt::Recipient::new(SecretString::from(as_meant(word)));
        recipient.set_work_factor(exponent);
        // Nothing of this fails for a pass phrase alone.
        let encryptor = Encryptor::with_recipients(std::iter::once(&recipient as _))
            .map_err(|_| io::Error::other(Refused::NotMade))?;
        Ok(Self(encryptor.wrap_output(to)?))
    }

    /// Ends it; without this it cannot be opened.
    ///
    /// # Errors
    /// As writing does.
    pub fn finish(self) -> io::Result<W> {
        self.0.finish()
    }
}

impl<W: Write> Write for Locking<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.0.flush()
    }
}

fn lock_with(bytes: &[u8], word: &str, exponent: u8) -> Result<Vec<u8>, Refused> {
    let not_made = |_| Refused::NotMade;
    let mut locking = Locking::with(Vec::with_capacity(bytes.len()), word, exponent).map_err(not_made)?;
    locking.write_all(bytes).map_err(not_made)?;
    locking.finish().map_err(not_made)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may fail")]
mod tests;
