//! The work: what several devices note of the same pits, the same for ours and for every peer.
//!
//! A pit is a record with scalar cells. In **spring** each device digs its share of the pits; digging one is one save of five
//! cells. Then all but the first device have what all others dug; the first stays out of reach, with its own pits alone.
//! In **summer** each device visits pits it has, each as likely as any other, and taps there: a tap is a save of one cell, a few seconds
//! after the one before. The devices do not hear of each other, and many of these cells are edited by several. They begin
//! their summers ten days apart, so that a late edit need not be one with a high count. In autumn the first device takes in
//! everything the others wrote, spring and summer.
//!
//! | work | pits | devices | edits | taps a visit |
//! |---|---|---|---|---|
//! | A | 200 | 2 | 2,000 | 4 |
//! | B | 10,000 | 5 | 100,000 | 4 |
//! | strewn | 10,000 | 5 | 100,000 | 1 |
//!
//! The last is only weighed: a tap here and a tap there is the worst for ours, whose bundles name every record in full so
//! that each can be read and checked by itself.
//! Half of the edits are of spring, half of summer. Clocks are true, to the millisecond.

use std::collections::BTreeMap;

/// How much.
#[derive(Debug, Clone, Copy)]
pub struct Size {
    /// Pits in all.
    pub pits: usize,
    /// Devices.
    pub devices: usize,
    /// Edits in all.
    pub edits: usize,
    /// Taps a visit in summer.
    pub taps: usize,
}

/// A season of two.
pub const WORK_A: Size = Size { pits: 200, devices: 2, edits: 2_000, taps: 4 };
/// A contractor's year.
pub const WORK_B: Size = Size { pits: 10_000, devices: 5, edits: 100_000, taps: 4 };
/// Work B with its taps strewn singly.
pub const STREWN: Size = Size { taps: 1, ..WORK_B };

/// Cells of a pit: the name that peers use, and the number in the store.
pub const CELLS: [(&str, u16); 6] =
    [("kind", 1), ("parent", 2), ("place", 200), ("zone", 201), ("dug_to_mm", 205), ("face", 206)];

/// Those that are filled when a pit is dug, and those that are tapped in summer.
const WHEN_DUG: [usize; 5] = [0, 1, 2, 3, 4];
const IN_SUMMER: [usize; 4] = [2, 3, 4, 5];

/// What a cell can hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Scalar {
    /// A whole number.
    Number(i64),
    /// A code.
    Text(&'static str),
    /// Bytes.
    Bytes(Vec<u8>),
}

/// The codes that are written.
const CODES: [&str; 11] = [
    "open",
    "wheeling",
    "headland",
    "gateway",
    "whole",
    "patch",
    "dry",
    "moist",
    "wet",
    "reference",
    "other",
];

impl Scalar {
    /// A text that was written.
    pub fn text(text: &str) -> Option<Self> {
        CODES.iter().find(|code| **code == text).map(|code| Self::Text(code))
    }
}

/// One save of a device.
#[derive(Debug, Clone)]
pub struct Save {
    /// Unix milliseconds.
    pub time_ms: u64,
    /// Which pit.
    pub pit: usize,
    /// Its cells (places in [`CELLS`]) and their new values.
    pub cells: Vec<(usize, Scalar)>,
}

/// All that is noted.
pub struct Work {
    /// Ids of the pits, UUIDs of version 7.
    pub ids: Vec<[u8; 16]>,
    /// Saves of each device in spring.
    pub spring: Vec<Vec<Save>>,
    /// Saves of each device in summer.
    pub summer: Vec<Vec<Save>>,
}

/// Of one cell, by device: when, and what it noted last.
type OfDevices<'a> = BTreeMap<usize, (u64, &'a Scalar)>;

const DAY_MS: u64 = 86_400_000;
/// 1 March 2026.
const BEGIN_MS: u64 = 1_772_323_200_000;

impl Work {
    /// The same work for the same size.
    pub fn new(size: Size) -> Self {
        let mut chance = Chance(size.edits as u64);
        let each = size.pits / size.devices;
        let mut ids = Vec::with_capacity(size.pits);
        let (mut spring, mut summer) = (Vec::new(), Vec::new());
        for device in 0..size.devices {
            let mut saves = Vec::new();
            for (time_ms, pit) in chance.times(BEGIN_MS, each).into_iter().zip(device * each..) {
                ids.push(chance.id(time_ms));
                let cells = WHEN_DUG.map(|cell| (cell, chance.value(cell, pit))).to_vec();
                saves.push(Save { time_ms, pit, cells });
            }
            spring.push(saves);
        }
        for device in 0..size.devices {
            let begin = BEGIN_MS + 100 * DAY_MS + 10 * DAY_MS * device as u64;
            let has = if device == 0 { each } else { size.pits };
            let visits = (size.edits - size.pits * WHEN_DUG.len()) / size.devices / size.taps;
            let mut saves = Vec::with_capacity(visits * size.taps);
            for mut time_ms in chance.times(begin, visits) {
                let pit = chance.below(has);
                for _ in 0..size.taps {
                    let cell = IN_SUMMER[chance.below(IN_SUMMER.len())];
                    saves.push(Save { time_ms, pit, cells: vec![(cell, chance.value(cell, pit))] });
                    time_ms += 1_500 + chance.any() % 20_000;
                }
            }
            // Visits may overlap; no two saves are at one time.
            saves.sort_by_key(|save| save.time_ms);
            for at in 1..saves.len() {
                saves[at].time_ms = saves[at].time_ms.max(saves[at - 1].time_ms + 1);
            }
            summer.push(saves);
        }
        Self { ids, spring, summer }
    }

    /// Of cells that several devices changed in summer: the value that was noted last, and whether another device's
    /// differs from it.
    pub fn conflicts(&self) -> BTreeMap<(usize, usize), Scalar> {
        // Of each cell, the last of every device.
        let mut last: BTreeMap<(usize, usize), OfDevices> = BTreeMap::new();
        for (device, saves) in self.summer.iter().enumerate() {
            for save in saves {
                for (cell, value) in &save.cells {
                    last.entry((save.pit, *cell)).or_default().insert(device, (save.time_ms, value));
                }
            }
        }
        let differing = |of: &OfDevices| {
            let (_, latest) = of.values().max_by_key(|(time_ms, _)| time_ms)?;
            of.values().any(|(_, value)| value != latest).then(|| (*latest).clone())
        };
        last.iter().filter_map(|(cell, of)| Some((*cell, differing(of)?))).collect()
    }
}

/// A small generator of chance (splitmix64), so that the work is the same everywhere.
pub struct Chance(pub u64);

impl Chance {
    /// Any number.
    pub fn any(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ self.0 >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ mixed >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ mixed >> 31
    }

    /// A number below a limit.
    pub fn below(&mut self, limit: usize) -> usize {
        (self.any() % limit as u64) as usize
    }

    /// Times within ninety days, ascending, no two alike.
    fn times(&mut self, begin_ms: u64, count: usize) -> Vec<u64> {
        let mut times: Vec<u64> = (0..count).map(|_| begin_ms + self.any() % (90 * DAY_MS)).collect();
        times.sort_unstable();
        for at in 1..times.len() {
            times[at] = times[at].max(times[at - 1] + 1);
        }
        times
    }

    /// A UUID of version 7.
    pub fn id(&mut self, time_ms: u64) -> [u8; 16] {
        let mut id = [0; 16];
        id[..6].copy_from_slice(&time_ms.to_be_bytes()[2..]);
        id[6..14].copy_from_slice(&self.any().to_be_bytes());
        id[14..].copy_from_slice(&self.any().to_be_bytes()[..2]);
        id[6] = 0x70 | id[6] & 0x0f;
        id[8] = 0x80 | id[8] & 0x3f;
        id
    }

    fn value(&mut self, cell: usize, pit: usize) -> Scalar {
        let mut one_of = |codes: &[&'static str]| Scalar::Text(codes[self.below(codes.len())]);
        match CELLS[cell].0 {
            "kind" => Scalar::Number(2),
            "parent" => Scalar::Bytes(parent(pit as u64)),
            "place" => one_of(&["open", "wheeling", "headland", "gateway"]),
            "zone" => one_of(&["open", "headland", "gateway", "patch"]),
            "face" => one_of(&["dry", "moist", "wet"]),
            _ => Scalar::Number(300 + 5 * self.below(121) as i64),
        }
    }
}

/// The parent cell of a pit as the store has it: CBOR [field, list, rank]. Peers keep these bytes.
fn parent(rank: u64) -> Vec<u8> {
    let mut bytes = vec![0x83, 0x50];
    bytes.extend(*b"\x01\x9c\xa0\x00\x00\x00\x70\x00\x80\x00\x00\x00\x00\x00\x00\x01");
    bytes.push(2);
    match rank {
        ..24 => bytes.push(rank as u8),
        24..0x100 => bytes.extend([0x18, rank as u8]),
        0x100..0x1_0000 => {
            bytes.push(0x19);
            bytes.extend((rank as u16).to_be_bytes());
        }
        _ => {
            bytes.push(0x1a);
            bytes.extend((rank as u32).to_be_bytes());
        }
    }
    bytes
}

/// An id as peers have it, whose keys are text: base 64 without padding (RFC 4648, 5), 22 characters.
#[cfg(feature = "peers")]
pub fn text_of(id: &[u8; 16]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let whole = u128::from_be_bytes(*id);
    // 128 bits are 22 times six, the last four bits padded.
    (0..22)
        .map(|at| {
            let six = if at < 21 { whole >> (122 - 6 * at) } else { whole << 4 };
            LETTERS[(six & 63) as usize] as char
        })
        .collect()
}
