//! One edit of one cell.

use super::DeviceId;
use sha2::{Digest, Sha256};

/// Names an edit: who wrote it, and that device's how-manyth it is, from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct EditName {
    /// Whose.
    pub device: DeviceId,
    /// Which, from 1.
    pub sequence: u64,
}

/// An edit that another one replaces. Ordered as the format wants them: by name, then by copy.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Predecessor {
    /// Its name.
    pub name: EditName,
    /// In which line of edits: 0 = that of the bundle itself, n = that of entry n − 1 of its witness. Tells copies of one
    /// device apart, which share their names.
    pub line: u32,
}

/// What an edit put into its cell.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Content {
    /// One item of deterministic CBOR; `null` = absent.
    Value(Vec<u8>),
    /// Taken out for privacy; the SHA-256 of the value is left.
    Redacted([u8; 32]),
}

impl Content {
    /// The SHA-256 of the value.
    pub fn hash(&self) -> [u8; 32] {
        match self {
            Self::Value(value) => Sha256::digest(value).into(),
            Self::Redacted(hash) => *hash,
        }
    }
}

/// One edit; whose and which is said by where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Edit {
    /// Hybrid clock: 48 bits of Unix milliseconds over 16 bits of counter.
    pub clock: u64,
    /// The record, a UUID of version 7.
    pub record: [u8; 16],
    /// Number of the cell.
    pub field: u16,
    /// The edits of that cell which its writer had before it, in ascending order. A deletion names those of all cells of
    /// the record and of what hangs on it.
    pub predecessors: Vec<Predecessor>,
    /// What it put there.
    pub content: Content,
}

impl Edit {
    /// The bytes that the chain is made over: deterministic CBOR, written out by hand because a store checks a
    /// million of them.
    pub(super) fn to_chain(&self, sequence: u64) -> Vec<u8> {
        let mut bytes = Vec::with_capacity(96 + 32 * self.predecessors.len());
        head(&mut bytes, ARRAY, 6);
        head(&mut bytes, WHOLE, sequence);
        head(&mut bytes, WHOLE, self.clock);
        put(&mut bytes, &self.record);
        head(&mut bytes, WHOLE, self.field.into());
        head(&mut bytes, ARRAY, self.predecessors.len() as u64);
        for Predecessor { name, .. } in &self.predecessors {
            head(&mut bytes, ARRAY, 2);
            put(&mut bytes, &name.device.0);
            head(&mut bytes, WHOLE, name.sequence);
        }
        put(&mut bytes, &self.content.hash());
        bytes
    }
}

/// Major types of CBOR (RFC 8949, 3.1).
const WHOLE: u8 = 0;
const BYTES: u8 = 2;
const ARRAY: u8 = 4;

/// The head of an item, its number as short as it can be.
fn head(bytes: &mut Vec<u8>, major: u8, number: u64) {
    let major = major << 5;
    match number {
        0..24 => bytes.push(major | number as u8),
        24..0x100 => bytes.extend([major | 0x18, number as u8]),
        0x100..0x1_0000 => {
            bytes.push(major | 0x19);
            bytes.extend((number as u16).to_be_bytes());
        }
        0x1_0000..0x1_0000_0000 => {
            bytes.push(major | 0x1a);
            bytes.extend((number as u32).to_be_bytes());
        }
        _ => {
            bytes.push(major | 0x1b);
            bytes.extend(number.to_be_bytes());
        }
    }
}

fn put(bytes: &mut Vec<u8>, content: &[u8]) {
    head(bytes, BYTES, content.len() as u64);
    bytes.extend(content);
}

#[cfg(test)]
mod tests {
    use super::*;
    use ciborium::Value;
    use proptest::prelude::*;

    proptest! {
        /// Against the CBOR of a library.
        #[test]
        fn the_chain_is_made_over_cbor(
            sequence: u64, clock: u64, record: [u8; 16], field: u16, device: [u8; 16],
            before in proptest::collection::vec(any::<u64>(), 0..30), value: Vec<u8>,
        ) {
            let named = |sequence: &u64| Predecessor {
                name: EditName { device: DeviceId(device), sequence: *sequence }, line: 0,
            };
            let content = Content::Value(value);
            let edit = Edit {
                clock, record, field, predecessors: before.iter().map(named).collect(), content: content.clone(),
            };
            let bytes = |bytes: &[u8]| Value::Bytes(bytes.to_vec());
            let name = |sequence: &u64| Value::Array(vec![bytes(&device), (*sequence).into()]);
            let same = Value::Array(vec![
                sequence.into(), clock.into(), bytes(&record), field.into(),
                Value::Array(before.iter().map(name).collect()), bytes(&content.hash()),
            ]);
            let mut written = Vec::new();
            ciborium::into_writer(&same, &mut written).unwrap();
            prop_assert_eq!(edit.to_chain(sequence), written);
        }
    }
}
