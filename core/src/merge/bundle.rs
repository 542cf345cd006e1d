//! A range of one device's edits, sealed: header, sections, signature.

use super::columns::{self, Standing};
use super::part::array;
use super::{Chain, Damage, Edit, Header, Part, PartKind, Section, Signer, identity};
use sha2::{Digest, Sha256};

/// The first bytes of what is signed, so that a signature means nothing elsewhere.
const DOMAIN: &[u8; 8] = b"pitb1\0\0\0";
const SIGNATURE_BYTES: usize = 64;
/// Kind of the section with the edits.
const EDITS: u16 = 1;
const CRITICAL: u16 = 1;
const PLAIN: u8 = 0;
const ZSTANDARD: u8 = 1;
/// How hard it is packed: a bundle is packed once, and carried and kept by all.
const LEVEL: i32 = 19;
const LARGEST_RAW_BYTES: u64 = 64 << 20;
/// Most bytes of sections that a reader does not know: it keeps them and hands them on.
const LARGEST_UNKNOWN_BYTES: u64 = 1 << 20;
const LARGEST_HEADER_BYTES: usize = 8 << 20;

/// A bundle that was read, everything in it checked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bundle {
    /// What it says about itself.
    pub header: Header,
    /// Its edits, from `header.first` to `header.last`.
    pub edits: Vec<Edit>,
    /// The chain at each of them.
    pub chains: Vec<Chain>,
}

impl Bundle {
    /// Reads the content of a part of kind [`PartKind::Edits`]: its signature, its hashes, its chain.
    ///
    /// # Errors
    /// If any of these does not hold, it is larger than allowed, or from a newer version.
    pub fn read(content: &[u8]) -> Result<Self, Damage> {
        let (header, rest) = read_header(content)?;
        let edits = edits_of(&header, rest)?;
        let chains = chains(header.before, header.first, &edits);
        if *chains.last().unwrap_or(&header.before) != header.after {
            return Err(Damage::Damaged("its chain does not fit its edits"));
        }
        Ok(Self { header, edits, chains })
    }

    /// The edits alone of a content that [`Self::read`] found in order before: the chain is not made again.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub fn edits_again(content: &[u8]) -> Result<Vec<Edit>, Damage> {
        let (header, rest) = read_header(content)?;
        edits_of(&header, rest)
    }
}

/// The edits in the sections of a bundle.
fn edits_of(header: &Header, sections: &[u8]) -> Result<Vec<Edit>, Damage> {
    let (mut rest, mut edits, mut unknown_bytes) = (sections, None, 0);
    for section in &header.sections {
        let stored = take(&mut rest, section.stored_bytes)?;
        if Sha256::digest(stored).as_slice() != section.hash {
            return Err(Damage::Damaged("the hash of a section does not fit"));
        }
        match section.kind {
            EDITS if edits.is_some() => return Err(Damage::Damaged("it has its edits twice")),
            EDITS => edits = Some(unpack(section, stored)?),
            _ if section.flags & CRITICAL != 0 => {
                return Err(Damage::Newer("a section it does not know"));
            }
            _ => unknown_bytes += section.stored_bytes,
        }
    }
    if unknown_bytes > LARGEST_UNKNOWN_BYTES {
        return Err(Damage::TooLarge("more than 1 MiB of sections it does not know"));
    }
    if !rest.is_empty() {
        return Err(Damage::Damaged("it is longer than its sections"));
    }
    let raw = edits.ok_or(Damage::Damaged("it has no edits"))?;
    columns::read(header.standing(), header.count(), &raw)
}

impl Header {
    fn standing(&self) -> Standing<'_> {
        Standing { device: self.device, first: self.first, witness: &self.witness }
    }

    /// Reads the header alone of a part's content, its signature checked. That the edits are as it says is not known
    /// from this.
    ///
    /// # Errors
    /// As [`Bundle::read`].
    pub fn of_content(content: &[u8]) -> Result<Self, Damage> {
        read_header(content).map(|(header, _)| header)
    }
}

/// Seals edits: the bytes of a part. Of `header`, what follows from the edits and the key is filled in here; `None` if the edits
/// do not fit it (see [`columns::write`]) or the key cannot be used.
pub fn seal(signer: &dyn Signer, header: Header, edits: &[Edit]) -> Option<Vec<u8>> {
    let raw = columns::write(header.standing(), edits)?;
    let stored = zstd::bulk::compress(&raw, LEVEL).ok()?;
    let section = Section {
        kind: EDITS,
        flags: CRITICAL,
        codec: ZSTANDARD,
        stored_bytes: stored.len() as u64,
        raw_bytes: raw.len() as u64,
        hash: Sha256::digest(&stored).into(),
    };
    let header = Header {
        key: signer.public_key(),
        last: header.first + edits.len() as u64 - 1,
        after: chains(header.before, header.first, edits).last().copied().unwrap_or(header.before),
        sections: vec![section],
        ..header
    }
    .write();
    let mut content = Vec::with_capacity(4 + header.len() + stored.len() + SIGNATURE_BYTES);
    content.extend(u32::try_from(header.len()).ok()?.to_be_bytes());
    content.extend(&header);
    content.extend(stored);
    content.extend(signer.sign(&to_sign(&header))?);
    Some(Part::write(PartKind::Edits, &content))
}

/// The chain at each of some edits.
fn chains(before: Chain, first: u64, edits: &[Edit]) -> Vec<Chain> {
    let then = |chain: &mut Chain, (edit, sequence): (&Edit, u64)| {
        *chain = chain.then(sequence, edit);
        Some(*chain)
    };
    edits.iter().zip(first..).scan(before, then).collect()
}

/// The header, its signature checked, and the bytes of the sections.
fn read_header(content: &[u8]) -> Result<(Header, &[u8]), Damage> {
    let mut rest = content;
    let length = take(&mut rest, 4)?;
    let length = u32::from_be_bytes(array(length)) as usize;
    if length > LARGEST_HEADER_BYTES {
        return Err(Damage::TooLarge("a header of more than 8 MiB"));
    }
    let bytes = take(&mut rest, length as u64)?;
    let header = Header::read(bytes)?;
    let (sections, signature) = rest.split_last_chunk::<SIGNATURE_BYTES>().ok_or(Damage::CutOff)?;
    if identity::verifies(&header.key, &to_sign(bytes), signature) {
        Ok((header, sections))
    } else {
        Err(Damage::Forged)
    }
}

fn to_sign(header: &[u8]) -> Vec<u8> {
    [DOMAIN.as_slice(), Sha256::digest(header).as_slice()].concat()
}

fn unpack(section: &Section, stored: &[u8]) -> Result<Vec<u8>, Damage> {
    if section.raw_bytes > LARGEST_RAW_BYTES {
        return Err(Damage::TooLarge("a section of more than 64 MiB"));
    }
    let length = section.raw_bytes as usize;
    let raw = match section.codec {
        PLAIN => stored.to_vec(),
        // Stops at the length it was promised.
        ZSTANDARD => zstd::bulk::decompress(stored, length)
            .map_err(|_| Damage::Damaged("a section does not unpack"))?,
        _ => return Err(Damage::Newer("a way of packing it does not know")),
    };
    if raw.len() == length { Ok(raw) } else { Err(Damage::Damaged("a section has the wrong length")) }
}

fn take<'bytes>(bytes: &mut &'bytes [u8], length: u64) -> Result<&'bytes [u8], Damage> {
    let length = usize::try_from(length).map_err(|_| Damage::CutOff)?;
    let (taken, rest) = bytes.split_at_checked(length).ok_or(Damage::CutOff)?;
    *bytes = rest;
    Ok(taken)
}
