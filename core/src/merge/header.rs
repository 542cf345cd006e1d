//! What a bundle says about itself: whose edits, which, after what, and how they are packed.

use super::{Chain, Damage, DeviceId, EditName, cbor};
use ciborium::Value;

/// Most items of CBOR in a header; unpacked each takes some thirty times the byte it may have been.
const MOST_ITEMS: u64 = 1 << 20;

/// A section of a bundle as its header lists it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Section {
    /// What it holds; 1 = edits.
    pub kind: u16,
    /// Bit 0: a reader that does not know the kind must leave the bundle alone.
    pub flags: u16,
    /// 0 = plain, 1 = Zstandard.
    pub codec: u8,
    /// Bytes in the file.
    pub stored_bytes: u64,
    /// Bytes once unpacked.
    pub raw_bytes: u64,
    /// SHA-256 of the bytes in the file.
    pub hash: [u8; 32],
}

/// How far somebody's edits go that predecessors name, and the chain there, which says in which copy of that device.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Witness {
    /// The device and a sequence at or beyond all that are named.
    pub name: EditName,
    /// Its chain at that sequence.
    pub chain: Chain,
}

/// The header of a bundle.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Header {
    /// Whose edits these are.
    pub device: DeviceId,
    /// Public key that signed.
    pub key: [u8; 32],
    /// Sequence of the first edit, from 1.
    pub first: u64,
    /// Sequence of the last edit.
    pub last: u64,
    /// The chain before the first edit.
    pub before: Chain,
    /// The chain after the last edit.
    pub after: Chain,
    /// The devices that predecessors name.
    pub witness: Vec<Witness>,
    /// How far the signer has the edits of others, where that changed since it last said so.
    pub seen: Vec<Witness>,
    /// Program and version that wrote it.
    pub written_by: String,
    /// When it was sealed, Unix milliseconds by the signer's clock.
    pub sealed_ms: u64,
    /// How far that clock was ahead of satellite time, milliseconds; `None` if not known.
    pub ahead_ms: Option<i64>,
    /// How the holder of the signing device calls themselves; empty if they did not say.
    pub holder: String,
    /// What follows the header.
    pub sections: Vec<Section>,
}

impl Header {
    /// The device that signed.
    pub fn signer(&self) -> DeviceId {
        DeviceId::of_key(&self.key)
    }

    /// How many edits it covers; none where it only says what its signer has seen.
    pub fn count(&self) -> u64 {
        self.last + 1 - self.first
    }

    /// Its bytes.
    pub(super) fn write(&self) -> Vec<u8> {
        let bytes = |bytes: &[u8]| Value::Bytes(bytes.to_vec());
        let witness = |witness: &Witness| {
            let EditName { device, sequence } = witness.name;
            Value::Array(vec![bytes(&device.0), sequence.into(), bytes(&witness.chain.0)])
        };
        let section = |section: &Section| {
            Value::Array(vec![
                section.kind.into(),
                section.flags.into(),
                section.codec.into(),
                section.stored_bytes.into(),
                section.raw_bytes.into(),
                bytes(&section.hash),
            ])
        };
        let mut map = vec![
            (1, bytes(&self.device.0)),
            (2, bytes(&self.key)),
            (3, self.first.into()),
            (4, self.last.into()),
            (5, bytes(&self.before.0)),
            (6, bytes(&self.after.0)),
            (7, Value::Array(self.witness.iter().map(witness).collect())),
            (8, Value::Array(self.seen.iter().map(witness).collect())),
            (9, self.written_by.as_str().into()),
            (10, self.sealed_ms.into()),
            (11, Value::Array(self.sections.iter().map(section).collect())),
        ];
        map.extend(self.ahead_ms.map(|ahead| (12, ahead.into())));
        if !self.holder.is_empty() {
            map.push((13, self.holder.as_str().into()));
        }
        let map = map.into_iter().map(|(key, value): (u8, Value)| (key.into(), value)).collect();
        let mut written = Vec::new();
        // Writing to memory does not fail.
        let _ = ciborium::into_writer(&Value::Map(map), &mut written);
        written
    }

    /// Reads it; keys it does not know are passed over.
    pub(super) fn read(bytes: &[u8]) -> Result<Self, Damage> {
        if cbor::items(bytes).ok_or(BROKEN)? > MOST_ITEMS {
            return Err(Damage::TooLarge("a header of too many items"));
        }
        let map: Value = ciborium::from_reader(bytes).map_err(|_| BROKEN)?;
        let map = Map(map.into_map().map_err(|_| BROKEN)?);
        let header = Self {
            device: DeviceId(fixed(map.get(1)?)?),
            key: fixed(map.get(2)?)?,
            first: whole(map.get(3)?)?,
            last: whole(map.get(4)?)?,
            before: Chain(fixed(map.get(5)?)?),
            after: Chain(fixed(map.get(6)?)?),
            witness: list(map.get(7)?, witness)?,
            seen: list(map.get(8)?, witness)?,
            written_by: text(map.get(9)?)?,
            sealed_ms: whole(map.get(10)?)?,
            sections: list(map.get(11)?, |[kind, flags, codec, stored, raw, hash]| {
                Ok(Section {
                    kind: whole(kind)?,
                    flags: whole(flags)?,
                    codec: whole(codec)?,
                    stored_bytes: whole(stored)?,
                    raw_bytes: whole(raw)?,
                    hash: fixed(hash)?,
                })
            })?,
            ahead_ms: map.get(12).ok().map(whole).transpose()?,
            holder: map.get(13).ok().map(text).transpose()?.unwrap_or_default(),
        };
        // The store counts in 63 bits.
        let in_range = header.first >= 1 && header.last < 1 << 62 && header.first <= header.last + 1;
        let all = header.witness.iter().chain(&header.seen);
        let in_past =
            all.map(|witness| witness.name.sequence).all(|sequence| (1..1 << 62).contains(&sequence));
        let at_start = header.first > 1 || header.before == Chain::start(header.device);
        if in_range && in_past && at_start { Ok(header) } else { Err(BROKEN) }
    }
}

const BROKEN: Damage = Damage::Damaged("its header is not as the format says");

struct Map(Vec<(Value, Value)>);

impl Map {
    fn get(&self, key: u8) -> Result<&Value, Damage> {
        let is_it = |(found, _): &&(Value, Value)| *found == Value::from(key);
        self.0.iter().find(is_it).map(|(_, value)| value).ok_or(BROKEN)
    }
}

fn fixed<const N: usize>(value: &Value) -> Result<[u8; N], Damage> {
    value.as_bytes().and_then(|bytes| bytes.as_slice().try_into().ok()).ok_or(BROKEN)
}

fn whole<T: TryFrom<i128>>(value: &Value) -> Result<T, Damage> {
    value.as_integer().and_then(|number| i128::from(number).try_into().ok()).ok_or(BROKEN)
}

fn text(value: &Value) -> Result<String, Damage> {
    value.as_text().map(str::to_owned).ok_or(BROKEN)
}

fn witness([device, sequence, chain]: &[Value; 3]) -> Result<Witness, Damage> {
    let name = EditName { device: DeviceId(fixed(device)?), sequence: whole(sequence)? };
    Ok(Witness { name, chain: Chain(fixed(chain)?) })
}

fn list<const N: usize, T>(
    value: &Value,
    read: impl Fn(&[Value; N]) -> Result<T, Damage>,
) -> Result<Vec<T>, Damage> {
    let items = value.as_array().ok_or(BROKEN)?;
    items
        .iter()
        .map(|item| read(item.as_array().and_then(|item| item.as_slice().try_into().ok()).ok_or(BROKEN)?))
        .collect()
}
