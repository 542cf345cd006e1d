//! Opening what was locked.

use crate::word::phrases;
use crate::{Refused, is_locked};
use age::secrecy::SecretString;
use age::stream::StreamReader;
use age::{DecryptError, Decryptor, scrypt};
use std::io::{self, BufReader, Cursor, Read, Seek, SeekFrom};

/// Most work that a file may ask for: 256 MiB for about a second, which is what programs for the format take by themselves. A file that was
/// made to hang a phone asks for more. Our judgement.
pub(crate) const MOST_WORK: u8 = 18;

/// Where the header must have ended. With a pass phrase it has a fixed form of about 150 bytes; a longer one is for keys, or made to keep
/// the reader busy.
const LONGEST_HEADER: u64 = 1024;

/// How the last line of the header begins.
const LAST_LINE: &[u8] = b"\n---";

/// What a locked file holds, read as the file itself would be, block by block (64 KiB). Every block is checked before a byte of it is given; that
/// the file ends where it was ended is known once it was read to there.
pub struct Opened<R>(StreamReader<BufReader<R>>);

impl<R: Read + Seek> Opened<R> {
    /// Opens a locked file. Takes a moment and at most 256 MiB.
    ///
    /// # Errors
    /// If it is not locked, not with this word, asks for too much work, or its beginning cannot be read or is not as it was written.
    pub fn open(mut file: R, word: &str) -> Result<Self, Refused> {
        let header = header(&mut file).map_err(|_| Refused::Damaged)?;
        if !is_locked(&header) {
            return Err(Refused::NotLocked);
        }
        if !header.windows(LAST_LINE.len()).any(|window| window == LAST_LINE) {
            let whole = (header.len() as u64) < LONGEST_HEADER;
            return Err(if whole { Refused::Damaged } else { Refused::OtherKey });
        }
        let phrase = phrase_of(&header, word)?;
        file.rewind().map_err(|_| Refused::Damaged)?;
        let locked = Decryptor::new_buffered(BufReader::new(file))?;
        Ok(Self(locked.decrypt(std::iter::once(&identity(phrase) as _))?))
    }
}

impl<R: Read> Read for Opened<R> {
    fn read(&mut self, bytes: &mut [u8]) -> io::Result<usize> {
        self.0.read(bytes).map_err(damaged)
    }
}

impl<R: Read + Seek> Seek for Opened<R> {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        self.0.seek(to).map_err(damaged)
    }
}

/// Returns what a locked file holds, all of it or nothing; never more bytes than went in. Takes a moment and at most 256 MiB beside the two.
///
/// # Errors
/// As [`Opened::open`], or if any byte of it is not as it was written.
pub fn unlock(bytes: &[u8], word: &str) -> Result<Vec<u8>, Refused> {
    let mut opened = Opened::open(Cursor::new(bytes), word)?;
    let mut content = Vec::with_capacity(bytes.len());
    opened.read_to_end(&mut content).map_err(|_| Refused::Damaged)?;
    Ok(content)
}

/// As much of a file as its header may have.
fn header(file: &mut impl Read) -> io::Result<Vec<u8>> {
    let mut header = Vec::new();
    file.take(LONGEST_HEADER).read_to_end(&mut header)?;
    Ok(header)
}

/// Under which of its forms a word opens a file that begins like this. Where there is one form only, that is not tried out.
fn phrase_of(header: &[u8], word: &str) -> Result<SecretString, Refused> {
    let (meant, before) = phrases(word);
    let Some(before) = before else { return Ok(meant) };
    let identity = identity(meant.clone());
    match Decryptor::new_buffered(header)?.decrypt(std::iter::once(&identity as _)) {
        Err(DecryptError::KeyDecryptionFailed | DecryptError::DecryptionFailed) => Ok(before),
        _ => Ok(meant),
    }
}

fn identity(phrase: SecretString) -> scrypt::Identity {
    let mut identity = scrypt::Identity::new(phrase);
    identity.set_max_work_factor(MOST_WORK);
    identity
}

/// Returns what age reports of a block is damage; what the file below reports stays as it is.
fn damaged(error: io::Error) -> io::Error {
    match error.kind() {
        io::ErrorKind::InvalidData | io::ErrorKind::UnexpectedEof => {
            io::Error::new(io::ErrorKind::InvalidData, Refused::Damaged)
        }
        _ => error,
    }
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
