//! Photos travel in pieces, so that any carrier may bring any of them.

use super::part::{array, number};
use super::{Damage, Part, PartKind};

/// Bytes of each piece but the last.
pub const PIECE_BYTES: u64 = 1 << 20;

const HEAD_BYTES: usize = 48;

/// A piece of a photo. That its bytes belong there is known only when the whole photo's hash is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PhotoPiece<'bytes> {
    /// SHA-256 of the whole photo.
    pub sha256: [u8; 32],
    /// Bytes of the whole photo.
    pub size_bytes: u64,
    /// Where in the photo this piece begins.
    pub offset: u64,
    /// Its bytes.
    pub bytes: &'bytes [u8],
}

impl<'bytes> PhotoPiece<'bytes> {
    /// Reads the content of a part.
    ///
    /// # Errors
    /// If it is no piece as the format has them.
    pub fn read(content: &'bytes [u8]) -> Result<Self, Damage> {
        let (head, bytes) =
            content.split_at_checked(HEAD_BYTES).ok_or(Damage::Damaged("a piece of a photo is too short"))?;
        let piece =
            Self { sha256: array(head), size_bytes: number(&head[32..]), offset: number(&head[40..]), bytes };
        let fits = piece.offset.is_multiple_of(PIECE_BYTES)
            && piece.offset < piece.size_bytes
            && bytes.len() as u64 == PIECE_BYTES.min(piece.size_bytes - piece.offset);
        if fits { Ok(piece) } else { Err(Damage::Damaged("a piece of a photo has the wrong length")) }
    }

    /// The bytes of its part.
    pub fn write(&self) -> Vec<u8> {
        let mut content = Vec::with_capacity(HEAD_BYTES + self.bytes.len());
        content.extend(self.sha256);
        content.extend(self.size_bytes.to_be_bytes());
        content.extend(self.offset.to_be_bytes());
        content.extend(self.bytes);
        Part::write(PartKind::PhotoPiece, &content)
    }
}
