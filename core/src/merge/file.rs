//! A file: parts one after the other, each group closed by its end.

use super::part::HEAD_BYTES;
use super::{Damage, Part, PartKind};
use ciborium::Value;
use sha2::{Digest, Sha256};
use std::io::{self, Read, Write};

/// All parts of a file but the ends, in their order, each known to be whole and none missing.
///
/// # Errors
/// If any byte of the file is not as it was written.
pub fn read_file(bytes: &[u8]) -> Result<Vec<Part<'_>>, Damage> {
    let (mut parts, mut group, mut rest) = (Vec::new(), Group::default(), bytes);
    if bytes.is_empty() {
        return Err(Damage::NotABundle);
    }
    while !rest.is_empty() {
        let (part, after) = Part::first_of(rest)?;
        rest = after;
        if part.kind == PartKind::End {
            if part.content != group.end() {
                return Err(Damage::Damaged("parts of it are missing"));
            }
            group = Group::default();
        } else {
            group.add(part.hash);
            parts.push(part);
        }
    }
    if group.count > 0 { Err(Damage::CutOff) } else { Ok(parts) }
}

/// Goes over a file as [`read_file`] does, part by part with where each begins, and never holds more than one of them. What
/// `each` is given may turn out to be of a file of which something is missing: only after this returned is it known to be whole.
///
/// # Errors
/// As [`read_file`], as reading does, or what `each` returns.
pub fn each_part<R: Read, E: From<io::Error> + From<Damage>>(
    mut from: R,
    mut each: impl FnMut(u64, Part) -> Result<(), E>,
) -> Result<(), E> {
    let (mut group, mut at, mut bytes) = (Group::default(), 0, Vec::new());
    loop {
        bytes.clear();
        from.by_ref().take(HEAD_BYTES as u64).read_to_end(&mut bytes)?;
        if bytes.is_empty() {
            break;
        }
        let length = Part::length(&bytes)?;
        from.by_ref().take((length - bytes.len()) as u64).read_to_end(&mut bytes)?;
        let (part, _) = Part::first_of(&bytes)?;
        if part.kind == PartKind::End {
            if part.content != group.end() {
                return Err(Damage::Damaged("parts of it are missing").into());
            }
            group = Group::default();
        } else {
            group.add(part.hash);
            each(at, part)?;
        }
        at += length as u64;
    }
    match (at, group.count) {
        (0, _) => Err(Damage::NotABundle.into()),
        (_, 0) => Ok(()),
        _ => Err(Damage::CutOff.into()),
    }
}

/// Writes a file part by part.
pub struct FileWriter<W> {
    to: W,
    group: Group,
}

impl<W: Write> FileWriter<W> {
    /// Begins a file.
    pub fn new(to: W) -> Self {
        Self { to, group: Group::default() }
    }

    /// Adds a part, as [`Part::write`] or another file gave it.
    ///
    /// # Errors
    /// As writing does.
    pub fn add(&mut self, part: &[u8]) -> io::Result<()> {
        let (_, hash) = part.split_last_chunk().ok_or(io::ErrorKind::InvalidInput)?;
        self.group.add(*hash);
        self.to.write_all(part)
    }

    /// How many parts there are so far.
    pub fn count(&self) -> u64 {
        self.group.count
    }

    /// A hash of the parts so far and their order.
    pub fn digest(&self) -> [u8; 32] {
        self.group.hashes.clone().finalize().into()
    }

    /// Closes the file; without this it is not one.
    ///
    /// # Errors
    /// As writing does.
    pub fn end(mut self) -> io::Result<W> {
        self.to.write_all(&Part::write(PartKind::End, &self.group.end()))?;
        Ok(self.to)
    }
}

/// The parts since the last end.
#[derive(Default)]
struct Group {
    count: u64,
    hashes: Sha256,
}

impl Group {
    fn add(&mut self, hash: [u8; 32]) {
        self.count += 1;
        self.hashes.update(hash);
    }

    /// The content of its end part.
    fn end(&self) -> Vec<u8> {
        let hash = self.hashes.clone().finalize().to_vec();
        let mut bytes = Vec::new();
        // Writing to memory does not fail.
        let _ = ciborium::into_writer(&Value::Array(vec![self.count.into(), Value::Bytes(hash)]), &mut bytes);
        bytes
    }
}
