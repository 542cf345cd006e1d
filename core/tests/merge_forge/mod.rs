//! Parts made by hand: what no program of ours writes, but somebody's might.

use ciborium::Value;
use pitface_core::merge::{FileWriter, KeyFromSeed, Part, PartKind, Signer};
use sha2::{Digest, Sha256};

/// A section: type, flags, codec, raw length, stored bytes.
pub type Section = (u16, u16, u8, u64, Vec<u8>);

/// A part of edits, taken apart.
#[derive(Clone)]
pub struct Forged {
    pub header: Vec<(Value, Value)>,
    pub sections: Vec<u8>,
    pub seed: u8,
}

impl Forged {
    /// From the content of a part; the key of `seed` signs what is made of it.
    pub fn of(content: &[u8], seed: u8) -> Self {
        let length = u32::from_be_bytes(content[..4].try_into().unwrap()) as usize;
        let header: Value = ciborium::from_reader(&content[4..4 + length]).unwrap();
        let sections = content[4 + length..content.len() - 64].to_vec();
        Self { header: header.into_map().unwrap(), sections, seed }
    }

    /// Puts a key of the header.
    #[must_use]
    pub fn with(mut self, key: u8, value: impl Into<Value>) -> Self {
        let (key, value) = (Value::from(key), value.into());
        match self.header.iter_mut().find(|(found, _)| *found == key) {
            Some(found) => found.1 = value,
            None => self.header.push((key, value)),
        }
        self
    }

    #[must_use]
    pub fn without(mut self, key: u8) -> Self {
        self.header.retain(|(found, _)| *found != Value::from(key));
        self
    }

    pub fn get(&self, key: u8) -> Value {
        self.header.iter().find(|(found, _)| *found == Value::from(key)).unwrap().1.clone()
    }

    /// The sections that the header lists.
    pub fn listed(&self) -> Vec<Value> {
        self.get(11).into_array().unwrap()
    }

    /// Puts sections in place of all.
    #[must_use]
    pub fn with_sections(mut self, sections: &[Section]) -> Self {
        let listed = |(kind, flags, codec, raw, stored): &Section| {
            Value::Array(vec![
                (*kind).into(),
                (*flags).into(),
                (*codec).into(),
                (stored.len() as u64).into(),
                (*raw).into(),
                Value::Bytes(Sha256::digest(stored).to_vec()),
            ])
        };
        self.sections = sections.iter().flat_map(|section| section.4.clone()).collect();
        self.with(11, Value::Array(sections.iter().map(listed).collect()))
    }

    /// Puts other raw bytes in place of the edits, packed.
    #[must_use]
    pub fn with_edits(self, raw: &[u8]) -> Self {
        let stored = zstd::bulk::compress(raw, 3).unwrap();
        self.with_sections(&[(1, 1, 1, raw.len() as u64, stored)])
    }

    /// The content of the part, signed.
    pub fn content(&self) -> Vec<u8> {
        let header = cbor(&Value::Map(self.header.clone()));
        self.content_with_header(&header)
    }

    /// The content of a part with these bytes as its header, signed.
    pub fn content_with_header(&self, header: &[u8]) -> Vec<u8> {
        let to_sign = [b"pitb1\0\0\0".as_slice(), Sha256::digest(header).as_slice()].concat();
        let signature = KeyFromSeed::new(&[self.seed; 32]).sign(&to_sign).unwrap();
        let length = u32::try_from(header.len()).unwrap().to_be_bytes();
        [length.as_slice(), header, &self.sections, &signature].concat()
    }

    pub fn part(&self) -> Vec<u8> {
        Part::write(PartKind::Edits, &self.content())
    }
}

pub fn cbor(value: &Value) -> Vec<u8> {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).unwrap();
    bytes
}

/// Columns as the edits section has them.
pub fn columns(columns: [Vec<u8>; 11]) -> Vec<u8> {
    cbor(&Value::Array(columns.into_iter().map(Value::Bytes).collect()))
}

/// A file of one group.
pub fn file<B: AsRef<[u8]>>(parts: &[B]) -> Vec<u8> {
    let mut file = FileWriter::new(Vec::new());
    for part in parts {
        file.add(part.as_ref()).unwrap();
    }
    file.end().unwrap()
}

/// A part with another version, its hash made anew.
pub fn with_version(part: &[u8], major: u8, minor: u8) -> Vec<u8> {
    let mut bytes = part[..part.len() - 32].to_vec();
    (bytes[4], bytes[5]) = (major, minor);
    let hash = Sha256::digest(&bytes);
    bytes.extend(hash);
    bytes
}
