//! Writes the golden bundles of tests/vectors/bundles with what they hold as JSON: `golden_bundles FOLDER`.
//!
//! With `fresh` as a second word it adds those that are too large to keep. All keys, clocks and ids are fixed. Files of a
//! released version are never written again; this program shows how they came about, and the tests in Python read what
//! it writes now.

#![allow(clippy::unwrap_used, reason = "it is run by hand and by tests, and may fail by it")]

#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../tests/merge_forge/mod.rs"]
mod merge_forge;

use ciborium::Value;
use merge_forge::{Forged, cbor, file, with_version};
use pitface_core::merge::{
    Chain, Content, DeviceId, Edit, EditName, Header, KeyFromSeed, PIECE_BYTES, Part, PartKind, PhotoPiece,
    Predecessor, Signer, Witness, seal,
};
use serde_json::{Value as Json, json};
use sha2::{Digest, Sha256};
use std::path::PathBuf;

const FIELD_NAME: u16 = 100;
const NOTES: u16 = 9_000;

/// A device with a fixed key, going on along a line of edits.
#[derive(Clone)]
struct Device {
    seed: u8,
    last: u64,
    chain: Chain,
    clock: u64,
}

/// A part and what is in it.
type Told = (Vec<u8>, Json);

fn main() {
    let mut words = std::env::args().skip(1);
    let folder = PathBuf::from(words.next().unwrap_or_else(|| "tests/vectors/bundles/version_1".to_owned()));
    let mut files = vec![
        ("one_device", one_device()),
        ("two_devices", two_devices()),
        ("copied_device", copied_device()),
        ("vouched", vouched()),
        ("receipt", receipt()),
        ("redacted", redacted()),
        ("exact", exact()),
        ("photo", photo(5_000)),
        ("newer", newer()),
    ];
    if words.next().is_some_and(|word| word == "fresh") {
        files.push(("photo_in_three", photo(2 * PIECE_BYTES + 77)));
    }
    std::fs::create_dir_all(&folder).unwrap();
    for (name, parts) in files {
        let (parts, told): (Vec<_>, Vec<_>) = parts.into_iter().unzip();
        std::fs::write(folder.join(format!("{name}.pitb")), file(&parts)).unwrap();
        let told = serde_json::to_string_pretty(&json!({ "parts": told })).unwrap();
        std::fs::write(folder.join(format!("{name}.json")), told + "\n").unwrap();
    }
}

fn one_device() -> Vec<Told> {
    let mut ann = Device::new(1);
    let first = ann.name(FIELD_NAME, "Long Sedge", &[]);
    let second = ann.name(FIELD_NAME, "Long Sedge west", &[ann.own(1)]);
    let mut edits = vec![first, second];
    for number in 1..=3 {
        ann.clock += 1;
        edits.push(ann.edit(record(2 + number), 201, &cbor(&(100 * u64::from(number)).into()), &[]));
    }
    vec![ann.seal(&edits, &[], &[])]
}

/// Both rename the field, not knowing of each other; then the second settles it.
fn two_devices() -> Vec<Told> {
    let (mut ann, mut ben) = (Device::new(1), Device::new(2));
    let begun = ann.name(FIELD_NAME, "Long Sedge", &[]);
    let begun = ann.seal(&[begun], &[], &[]);
    let seen_first = ann.witness();
    let west = ann.name(FIELD_NAME, "Long Sedge west", &[ann.own(1)]);
    let west = ann.seal(&[west], &[], &[]);
    let east = ben.name(FIELD_NAME, "Long Sedge east", &[named(1, 1, 1)]);
    let east = ben.seal(&[east], &[seen_first], &[seen_first]);
    let before = [named(1, 2, 1), ben.own(1)];
    let settled = ben.name(FIELD_NAME, "Long Sedge west", &sorted(&before));
    let settled = ben.seal(&[settled], &[ann.witness()], &[ann.witness()]);
    vec![begun, west, east, settled]
}

/// One phone copied, and both went on; a third names edits of either.
fn copied_device() -> Vec<Told> {
    let mut ann = Device::new(1);
    let begun = ann.name(FIELD_NAME, "Long Sedge", &[]);
    let begun = ann.seal(&[begun], &[], &[]);
    let mut copy = ann.clone();
    let first = ann.name(FIELD_NAME, "by the first", &[ann.own(1)]);
    let first = ann.seal(&[first], &[], &[]);
    copy.clock += 5;
    let second = copy.name(FIELD_NAME, "by the second", &[copy.own(1)]);
    let second = copy.seal(&[second], &[], &[]);
    let mut ben = Device::new(2);
    let settled = ben.name(FIELD_NAME, "by the first", &[named(1, 2, 1), named(1, 2, 2)]);
    let settled = ben.seal(&[settled], &[ann.witness(), copy.witness()], &[]);
    vec![begun, first, second, settled]
}

/// Returns what a lost key left is signed by that of the phone restored from its backup.
fn vouched() -> Vec<Told> {
    let mut lost = Device::new(1);
    let left = lost.name(FIELD_NAME, "never handed over", &[]);
    let left = lost.seal_by(9, &[left], &[], &[]);
    let mut restored = Device::new(9);
    let on = restored.name(FIELD_NAME, "after the restore", &[named(1, 1, 1)]);
    vec![left, restored.seal(&[on], &[lost.witness()], &[])]
}

fn receipt() -> Vec<Told> {
    let (mut ann, mut ben) = (Device::new(1), Device::new(2));
    let begun = ann.name(FIELD_NAME, "Long Sedge", &[]);
    let begun = ann.seal(&[begun], &[], &[]);
    vec![begun, ben.seal(&[], &[], &[ann.witness()])]
}

fn redacted() -> Vec<Told> {
    let mut ann = Device::new(1);
    let mut hidden = ann.name(FIELD_NAME, "a name that was nobody's business", &[]);
    hidden.content = Content::Redacted(hidden.content.hash());
    let shown = ann.name(FIELD_NAME, "Long Sedge", &[ann.own(1)]);
    vec![ann.seal(&[hidden, shown], &[], &[])]
}

/// Values that must come through bit by bit.
fn exact() -> Vec<Told> {
    let bits = [
        0_u64,
        1,
        0x000f_ffff_ffff_ffff,
        0x0010_0000_0000_0000,
        0x7fef_ffff_ffff_ffff,
        0x3fb9_9999_9999_999a,
        0x4049_8000_0000_0001,
    ];
    let both_signs = bits.into_iter().flat_map(|bits| [bits, bits | 1 << 63]);
    let two_to_53 = 9_007_199_254_740_992.0_f64;
    let floats: Vec<f64> =
        both_signs.map(f64::from_bits).chain([two_to_53 - 1.0, two_to_53, two_to_53 + 2.0]).collect();
    let wholes = [i64::MIN, i64::MIN + 1, -(1 << 53) - 1, -1, 0, 23, 24, 255, 256, (1 << 53) + 1, i64::MAX];
    let texts = [
        "",
        "\u{fc}ber den K\u{f6}rnern",
        "u\u{308}ber den Ko\u{308}rnern",
        "\u{1f469}\u{200d}\u{1f33e} \u{1f1e8}\u{1f1ed} \u{1f3fd}",
        "\u{5e9}\u{5d3}\u{5d4} \u{202e}\u{62d}\u{642}\u{644} 1 \u{202c}",
        "before\0after",
        "\u{feff}\u{fffd}\u{10ffff}",
        "\r\n\t\u{85}\u{2028}",
    ];
    let note = "Damp down to the spade's tip. ".repeat(35_000);
    let values = floats
        .iter()
        .map(|float| Value::from(*float))
        .chain(wholes.map(Value::from))
        .chain(texts.map(Value::from))
        .chain([Value::Null, true.into(), Value::Bytes(vec![0, 255]), note.into()]);
    let mut ann = Device::new(1);
    let edits: Vec<Edit> = (NOTES..)
        .zip(values)
        .map(|(field, value)| {
            ann.clock += 1;
            ann.edit(record(1), field, &cbor(&value), &[])
        })
        .collect();
    let (part, mut told) = ann.seal(&edits, &[], &[]);
    // So that a reader knows that the shortest form of CBOR lost no bit.
    told["doubles"] = floats.iter().map(|float| format!("{:016x}", float.to_bits())).collect();
    vec![(part, told)]
}

fn photo(size: u64) -> Vec<Told> {
    // Bytes as good as drawn by lot, from a generator of one line (Lehmer, 1951).
    let mut state = 1_u64;
    let bytes: Vec<u8> = (0..size)
        .map(|_| {
            state = state * 48_271 % 0x7fff_ffff;
            state as u8
        })
        .collect();
    let sha256: [u8; 32] = Sha256::digest(&bytes).into();
    let mut ann = Device::new(1);
    let said = ann.edit(record(7), 600, &cbor(&Value::Bytes(sha256.to_vec())), &[]);
    let mut parts = vec![ann.seal(&[said], &[], &[])];
    for (piece, offset) in bytes.chunks(PIECE_BYTES as usize).zip((0..).step_by(PIECE_BYTES as usize)) {
        let part = PhotoPiece { sha256, size_bytes: size, offset, bytes: piece }.write();
        let told = json!({
            "kind": 2, "photo": hex(&sha256), "size": size, "offset": offset,
            "bytes": piece.len(), "hash_of_bytes": hex(&Sha256::digest(piece)),
        });
        parts.push((part, told));
    }
    parts
}

/// Returns what a later version adds that this one need not know.
fn newer() -> Vec<Told> {
    let mut ann = Device::new(1);
    let edit = ann.name(FIELD_NAME, "Long Sedge", &[]);
    let new_field = ann.edit(record(1), 64_000, &cbor(&Value::Array(vec![1.into(), "new".into()])), &[]);
    let (part, told) = ann.seal(&[edit, new_field], &[], &[]);
    let (read, _) = Part::first_of(&part).unwrap();
    let forged = Forged::of(read.content, ann.seed);
    let edits = forged.listed()[0].as_array().unwrap()[4].as_integer().unwrap();
    let sections = [
        (1, 1, 1, u64::try_from(edits).unwrap(), forged.sections.clone()),
        (9, 0, 7, 1_000, b"packed in a way of later times".to_vec()),
    ];
    let forged = forged.with_sections(&sections).with(99, "a key of later times");
    let content = b"what only later versions read".as_slice();
    let other = Part::write(PartKind::Other(0x8001), content);
    let told_other = json!({ "kind": 0x8001, "content": hex(content) });
    vec![(with_version(&forged.part(), 1, 1), told), (with_version(&other, 1, 1), told_other)]
}

impl Device {
    fn new(seed: u8) -> Self {
        let clock = (1_760_000_000_000 + 1_000 * u64::from(seed)) << 16;
        Self { seed, last: 0, chain: Chain::start(id(seed)), clock }
    }

    fn own(&self, sequence: u64) -> Predecessor {
        named(self.seed, sequence, 0)
    }

    fn witness(&self) -> Witness {
        Witness { name: EditName { device: id(self.seed), sequence: self.last }, chain: self.chain }
    }

    fn name(&mut self, field: u16, text: &str, before: &[Predecessor]) -> Edit {
        self.clock += 60_000 << 16;
        self.edit(record(1), field, &cbor(&text.into()), before)
    }

    fn edit(&self, record: [u8; 16], field: u16, value: &[u8], before: &[Predecessor]) -> Edit {
        let content = Content::Value(value.to_vec());
        Edit { clock: self.clock, record, field, predecessors: before.to_vec(), content }
    }

    fn seal(&mut self, edits: &[Edit], witness: &[Witness], seen: &[Witness]) -> Told {
        self.seal_by(self.seed, edits, witness, seen)
    }

    fn seal_by(&mut self, signer: u8, edits: &[Edit], witness: &[Witness], seen: &[Witness]) -> Told {
        let header = Header {
            device: id(self.seed),
            first: self.last + 1,
            before: self.chain,
            witness: witness.to_vec(),
            seen: seen.to_vec(),
            written_by: "golden_bundles 1".to_owned(),
            sealed_ms: 1_760_000_500_000,
            ahead_ms: (signer == 2).then_some(-1_250),
            holder: if signer == 1 { String::new() } else { "Hanna M\u{fc}ller".to_owned() },
            key: [0; 32],
            last: 0,
            after: self.chain,
            sections: Vec::new(),
        };
        let names = |witness: &[Witness]| -> Json {
            let one = |one: &Witness| json!([hex(&one.name.device.0), one.name.sequence, hex(&one.chain.0)]);
            witness.iter().map(one).collect()
        };
        let told = json!({
            "kind": 1, "device": hex(&id(self.seed).0), "signer": hex(&id(signer).0),
            "first": header.first, "last": self.last + edits.len() as u64,
            "witness": names(witness), "seen": names(seen), "holder": header.holder,
            "written_by": header.written_by, "sealed_ms": header.sealed_ms, "ahead_ms": header.ahead_ms,
            "edits": edits.iter().zip(header.first..).map(|(edit, sequence)| self.told(edit, sequence)).collect::<Json>(),
        });
        let part = seal(&key(signer), header, edits).unwrap();
        for edit in edits {
            self.last += 1;
            self.chain = self.chain.then(self.last, edit);
        }
        (part, told)
    }

    fn told(&self, edit: &Edit, sequence: u64) -> Json {
        let before =
            |before: &Predecessor| json!([hex(&before.name.device.0), before.name.sequence, before.line]);
        let value = match &edit.content {
            Content::Redacted(_) => Json::Null,
            // As long as this only where one text is repeated.
            Content::Value(value) if value.len() > 10_000 => {
                json!({ "head": hex(&value[..5]), "repeated": hex(&value[5..35]), "times": (value.len() - 5) / 30 })
            }
            Content::Value(value) => json!(hex(value)),
        };
        json!({
            "device": hex(&id(self.seed).0), "sequence": sequence, "clock": edit.clock.to_string(),
            "record": hex(&edit.record), "field": edit.field,
            "predecessors": edit.predecessors.iter().map(before).collect::<Json>(),
            "value": value, "value_hash": hex(&edit.content.hash()),
        })
    }
}

fn key(seed: u8) -> KeyFromSeed {
    KeyFromSeed::new(&[seed; 32])
}

fn id(seed: u8) -> DeviceId {
    key(seed).device()
}

fn named(seed: u8, sequence: u64, line: u32) -> Predecessor {
    Predecessor { name: EditName { device: id(seed), sequence }, line }
}

fn sorted(before: &[Predecessor]) -> Vec<Predecessor> {
    let mut before = before.to_vec();
    before.sort_unstable();
    before
}

/// A UUID of version 7.
fn record(number: u8) -> [u8; 16] {
    [1, 0x99, 0, 0, 0, 0, 0x70, 0, 0x80, 0, 0, 0, 0, 0, 0, number]
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |text, byte| text + &format!("{byte:02x}"))
}
