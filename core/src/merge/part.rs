//! The frame around everything in a file: what it is, how long, and that no bit of it changed.

use super::Damage;
use sha2::{Digest, Sha256};

const MAGIC: &[u8; 4] = b"PITB";
/// Version that this program writes and reads.
const MAJOR: u8 = 1;
const MINOR: u8 = 0;
pub(super) const HEAD_BYTES: usize = 16;
const HASH_BYTES: usize = 32;
/// The longest part.
const LARGEST_BYTES: u64 = 80 << 20;

/// What a part holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum PartKind {
    /// Edits of one device.
    Edits,
    /// A piece of a photo.
    PhotoPiece,
    /// The end of a group of parts.
    End,
    /// Something that may be handed on unread (0x8000 and above).
    Other(u16),
}

impl PartKind {
    fn number(self) -> u16 {
        match self {
            Self::Edits => 1,
            Self::PhotoPiece => 2,
            Self::End => 3,
            Self::Other(number) => number,
        }
    }

    fn from_number(number: u16) -> Result<Self, Damage> {
        match number {
            1 => Ok(Self::Edits),
            2 => Ok(Self::PhotoPiece),
            3 => Ok(Self::End),
            0x8000.. => Ok(Self::Other(number)),
            _ => Err(Damage::Newer("a part it does not know")),
        }
    }
}

/// A part of a file, its hash checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part<'bytes> {
    /// What it holds.
    pub kind: PartKind,
    /// Its content.
    pub content: &'bytes [u8],
    /// All of it, as it is handed on.
    pub bytes: &'bytes [u8],
    /// The hash at its end, by which it is known.
    pub hash: [u8; 32],
}

impl<'bytes> Part<'bytes> {
    /// Returns whether bytes are meant as a file of parts, whole or not.
    pub fn begins(bytes: &[u8]) -> bool {
        bytes.starts_with(MAGIC)
    }

    /// How long all of a part is, by its first bytes ([`HEAD_BYTES`]).
    pub(super) fn length(bytes: &[u8]) -> Result<usize, Damage> {
        let head = bytes.get(..HEAD_BYTES).ok_or(Damage::CutOff)?;
        if !Self::begins(head) {
            return Err(Damage::NotABundle);
        }
        match number(&head[8..]) {
            ..=LARGEST_BYTES => Ok(HEAD_BYTES + number(&head[8..]) as usize + HASH_BYTES),
            _ => Err(Damage::TooLarge("a part of more than 80 MiB")),
        }
    }

    /// Reads the first part of some bytes, and gives what follows it.
    ///
    /// # Errors
    /// If it is no part, is damaged, or of a newer version.
    pub fn first_of(bytes: &'bytes [u8]) -> Result<(Self, &'bytes [u8]), Damage> {
        let length = Self::length(bytes)?;
        let (head, whole) = (&bytes[..HEAD_BYTES], bytes.get(..length).ok_or(Damage::CutOff)?);
        let (hashed, hash) = whole.split_at(length - HASH_BYTES);
        if Sha256::digest(hashed).as_slice() != hash {
            return Err(Damage::Damaged("a hash does not fit"));
        }
        // Only now is it known that these bytes are as they were written.
        if head[4] != MAJOR {
            return Err(Damage::Newer("its format"));
        }
        let kind = PartKind::from_number(u16::from_be_bytes([head[6], head[7]]))?;
        let part = Self { kind, content: &hashed[HEAD_BYTES..], bytes: whole, hash: array(hash) };
        Ok((part, &bytes[whole.len()..]))
    }

    /// The bytes of a part with this content.
    pub fn write(kind: PartKind, content: &[u8]) -> Vec<u8> {
        let mut bytes = Vec::with_capacity(HEAD_BYTES + content.len() + HASH_BYTES);
        bytes.extend(MAGIC);
        bytes.extend([MAJOR, MINOR]);
        bytes.extend(kind.number().to_be_bytes());
        bytes.extend((content.len() as u64).to_be_bytes());
        bytes.extend(content);
        let hash = Sha256::digest(&bytes);
        bytes.extend(hash);
        bytes
    }
}

/// The first eight bytes as a number.
pub(super) fn number(bytes: &[u8]) -> u64 {
    bytes.iter().take(8).fold(0, |number, byte| number << 8 | u64::from(*byte))
}

/// The first `N` bytes, which must be there.
pub(super) fn array<const N: usize>(bytes: &[u8]) -> [u8; N] {
    let mut array = [0; N];
    array.copy_from_slice(&bytes[..N]);
    array
}
