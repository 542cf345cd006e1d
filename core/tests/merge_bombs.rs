//! Small files that tell of huge things are refused without filling the memory. All in one test, for it measures the
//! memory of the whole process (by the kernel's account, on Linux only).

use crate::merge_forge;
use crate::merge_support;

use ciborium::Value;
use merge_forge::{Forged, columns, file};
use merge_support::key;
use pitface_core::merge::columns::{MOST_EDITS, MOST_PREDECESSORS};
use pitface_core::merge::{Bundle, Chain, Damage, Header, Part, PartKind, Signer, Witness, read_file, seal};
use std::io::{Read, Write};

const MIB: usize = 1 << 20;
const GIB: u64 = 1 << 30;

/// Name, the bomb, the most memory that refusing it may take.
type Bomb = (&'static str, Vec<u8>, usize);

#[test]
fn bombs_are_refused_without_filling_the_memory() {
    for make in [lengths, counts, predecessors, items] {
        for (what, part, most) in make() {
            assert!(part.len() < 9 * MIB, "{what} is no small file");
            let file = file(&[part]);
            let before = Memory::begin();
            let read = read_file(&file).and_then(|parts| Bundle::read(parts[0].content));
            let took = before.took();
            assert!(matches!(read, Err(Damage::Damaged(_) | Damage::TooLarge(_))), "{what}");
            eprintln!("{what}: a file of {} kB took {took:?} MiB: {}", file.len() / 1000, read.unwrap_err());
            assert!(took.is_none_or(|took| took <= most), "{what}: {took:?} MiB, not {most}");
        }
    }
    let head = |length: u64| [b"PITB\x01\0\0\x01".as_slice(), &length.to_be_bytes(), &[0; 40]].concat();
    for length in [u64::MAX, u64::MAX - 47, 1 << 63, 81 << 20] {
        assert!(matches!(read_file(&head(length)), Err(Damage::TooLarge(_))), "{length}");
    }
    assert_eq!(read_file(&head(79 << 20)), Err(Damage::CutOff));
}

/// Frames that unpack to other than was promised.
fn lengths() -> Vec<Bomb> {
    let packed = zeros(GIB, true);
    let untold = zeros(GIB, false);
    let most = 64 << 20;
    let with = |raw: u64, stored: &[u8]| good().with_sections(&[(1, 1, 1, raw, stored.to_vec())]).part();
    let tiny = zstd::bulk::compress(&[0], 3).unwrap();
    let plain = good().with_sections(&[(1, 1, 0, GIB, vec![0; 9])]).part();
    vec![
        ("a gigabyte said to be 64 MiB", with(most, &packed), 80),
        ("a gigabyte of a length not told, said to be 64 MiB", with(most, &untold), 80),
        ("a gigabyte told as such", with(GIB, &packed), 8),
        ("a gigabyte said to be nothing", with(0, &packed), 8),
        ("a length of all", with(u64::MAX, &packed), 8),
        ("a byte said to be 64 MiB", with(most, &tiny), 80),
        ("plain bytes said to be a gigabyte", plain, 8),
        ("frames one behind the other", with(most, &packed.repeat(3)), 80),
        ("an unknown section of gigabytes", unknown_section(&packed), 8),
    ]
}

fn unknown_section(packed: &[u8]) -> Vec<u8> {
    // Never unpacked; refused for lack of edits.
    good().with_sections(&[(9, 0, 1, u64::MAX, packed.to_vec())]).part()
}

/// The columns of one edit, with these lengths of saves and this count of predecessors.
fn one(lengths: Vec<u8>, counts: Vec<u8>) -> [Vec<u8>; 11] {
    let [born, rest] = record();
    [born, rest, vec![0], vec![1], lengths, vec![0], vec![1], counts, vec![], vec![], vec![1, 0xf6]]
}

/// The columns of one record, born 2^41 ms after the first clock: time, and rest of its id.
fn record() -> [Vec<u8>; 2] {
    [vec![0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x01], vec![0x70, 0x80, 0, 0, 0, 0, 0, 0, 0, 1]]
}

/// Counts that no column covers.
fn counts() -> Vec<Bomb> {
    let said =
        |last: u64, lengths: Vec<u8>| good().with(4, last).with_edits(&columns(one(lengths, vec![0]))).part();
    vec![
        ("as many edits as may be, columns of one", said(MOST_EDITS, vec![1]), 40),
        ("as many edits as may be, all of one save", said(MOST_EDITS, varint(MOST_EDITS)), 48),
        ("one edit too many", said(MOST_EDITS + 1, vec![1]), 8),
        ("2^61 edits", said(1 << 61, vec![1]), 8),
    ]
}

/// Predecessors, two bytes each in the file and many in memory.
fn predecessors() -> Vec<Bomb> {
    let edits = 2_000_u64;
    // Of 120 witnesses, 120 edits each, farthest first.
    let lines: Vec<u8> = (1..=120_u8).flat_map(|line| [line; 120]).collect();
    let distances: Vec<u8> = (1..=120).flat_map(|_| (0..120_u8).rev()).collect();
    assert!(lines.len() as u64 * edits > 10 * MOST_PREDECESSORS);
    let many = usize::try_from(edits).unwrap();
    let [born, rest] = record();
    let raw = columns([
        born,
        rest,
        vec![0],
        vec![1],
        varint(edits),
        vec![0; many],
        vec![1; many],
        varint(lines.len() as u64).repeat(many),
        lines.repeat(many),
        distances.repeat(many),
        [1, 0xf6].repeat(many),
    ]);
    let witness = (1..=120_u8).map(|device| {
        let bytes = |bytes: Vec<u8>| Value::Bytes(bytes);
        Value::Array(vec![bytes(vec![device; 16]), 1_000.into(), bytes(vec![0; 32])])
    });
    let forged = good().with(4, edits).with(7, Value::Array(witness.collect())).with_edits(&raw);
    let claimed = one(vec![1], varint(u64::MAX));
    vec![
        ("millions of predecessors", forged.part(), 192),
        ("predecessors beyond counting", good().with(4, 1).with_edits(&columns(claimed)).part(), 8),
    ]
}

/// Items of CBOR, a byte each in the file and some thirty in memory.
fn items() -> Vec<Bomb> {
    let zeros_in_list = [vec![0x9a, 3, 0xff, 0xff, 0xf0], vec![0; 0x03ff_fff0]].concat();
    let lists_in_list = vec![0x81; 60 * MIB];
    let header = |end: &[u8]| {
        let mut header = merge_forge::cbor(&Value::Map(good().header));
        header[0] += 1; // One pair more, of key 20.
        let header = [header.as_slice(), &[20], end].concat();
        Part::write(PartKind::Edits, &good().content_with_header(&header))
    };
    let many = 8 * MIB as u32 - 2_000;
    let flat = [[0x9a].as_slice(), &many.to_be_bytes(), &vec![0; many as usize]].concat();
    let deep = [vec![0x81; 900_000], vec![0]].concat();
    vec![
        ("a list of 64 million numbers for columns", good().with_edits(&zeros_in_list).part(), 80),
        ("60 million lists in each other for columns", good().with_edits(&lists_in_list).part(), 80),
        ("a header of eight million numbers", header(&flat), 16),
        ("a header of lists in each other", header(&deep), 16),
        ("a list said to have 2^64 items", header(&[0x9b; 9]), 8),
        ("a text said to have 2^63 bytes", header(&[0x7b, 0x80, 0, 0, 0, 0, 0, 0, 0]), 8),
    ]
}

fn zeros(length: u64, told: bool) -> Vec<u8> {
    let mut encoder = zstd::stream::Encoder::new(Vec::new(), 1).unwrap();
    if told {
        encoder.set_pledged_src_size(Some(length)).unwrap();
    }
    encoder.include_contentsize(told).unwrap();
    let block = vec![0; MIB];
    let mut left = std::io::repeat(0).take(length / MIB as u64);
    while left.read(&mut [0]).unwrap() > 0 {
        encoder.write_all(&block).unwrap();
    }
    encoder.finish().unwrap()
}

fn varint(number: u64) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut left = number;
    while left >= 0x80 {
        bytes.push(left as u8 | 0x80);
        left >>= 7;
    }
    bytes.push(left as u8);
    bytes
}

fn good() -> Forged {
    let device = key(1).device();
    let header = Header {
        device,
        first: 1,
        before: Chain::start(device),
        witness: Vec::<Witness>::new(),
        seen: Vec::new(),
        written_by: "tests".to_owned(),
        sealed_ms: 1,
        ahead_ms: None,
        holder: String::new(),
        key: [0; 32],
        last: 0,
        after: Chain([0; 32]),
        sections: Vec::new(),
    };
    let part = seal(&key(1), header, &[]).unwrap();
    Forged::of(Part::first_of(&part).unwrap().0.content, 1)
}

/// The most memory this process had at once since some point, as the kernel counts it.
struct Memory(Option<usize>);

impl Memory {
    fn begin() -> Self {
        // Forgets the earlier peak (proc(5), clear_refs).
        let _ = std::fs::write("/proc/self/clear_refs", "5");
        Self(kb("VmHWM"))
    }

    /// Beyond what it had then, MiB.
    fn took(&self) -> Option<usize> {
        Some(kb("VmHWM")?.saturating_sub(self.0?) / 1024)
    }
}

fn kb(which: &str) -> Option<usize> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with(which))?;
    line.split_whitespace().nth(1)?.parse().ok()
}
