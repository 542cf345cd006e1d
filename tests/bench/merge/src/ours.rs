//! Ours: a store and its bundles.

use crate::peer::{Merged, Peer, Result, Took, hand_over_path, hand_overs, most_memory, timed};
use crate::work::{CELLS, Save, Scalar, Size, WORK_B, Work};
use pitface_core::merge::{
    self, Chain, Content, DeviceId, Edit, EditName, FileWriter, Header, KeyFromSeed, Predecessor, Signer,
    Witness,
};
use pitface_core::record::RecordId;
use pitface_core::store::Store;
use std::collections::{BTreeMap, HashMap};
use std::fs;
use std::path::Path;

/// Most edits in one bundle, as the store seals them.
const MOST_EDITS: usize = 50_000;
/// When all is sealed and taken in.
pub const NOW_MS: u64 = 1_800_000_000_000;

/// A log of a million edits.
pub const MILLION: Size = Size { pits: 100_000, edits: 1_000_000, ..WORK_B };

/// A store with its bundles.
pub struct Ours;

impl Peer for Ours {
    fn prepare(&self, work: &Work, folder: &Path) -> Result<()> {
        write_hand_overs(work, folder)?;
        let mut store = Store::create_or_open(&folder.join("own"), key(0).device())?;
        for device in 0..work.spring.len() as u8 {
            store.accept_key(&key(device).public_key(), "", NOW_MS)?;
        }
        for season in 0..2 {
            store.take_in(&fs::read(hand_over_path(folder, season, 0))?, NOW_MS)?;
        }
        Ok(())
    }

    fn merge(&self, folder: &Path, hand_overs: &[Vec<u8>]) -> Result<Merged> {
        fs::copy(folder.join("own"), folder.join("merged"))?;
        let mut store = Store::open_existing(&folder.join("merged"), key(0).device())?;
        // Files may be put one behind the other.
        let file = hand_overs.concat();
        let (took, taken) = timed(|| Ok(store.take_in(&file, NOW_MS)?))?;
        if !taken.missing.is_empty() || !taken.strangers.is_empty() || taken.edits == 0 {
            return Err(format!("not all came in: {taken:?}").into());
        }
        let memory = most_memory()?;
        let (saved, ()) = timed(|| {
            drop(store);
            Ok(())
        })?;
        Ok(Merged { took, saved, memory })
    }

    fn open(&self, folder: &Path, id: [u8; 16]) -> Result<()> {
        let store = Store::open_existing(&folder.join("merged"), key(0).device())?;
        let id = RecordId::from_bytes(id).ok_or("no id")?;
        store.kind_of(id)?.map(drop).ok_or_else(|| "the pit is not there".into())
    }

    fn shown(&self, folder: &Path, work: &Work, cells: &[(usize, usize)]) -> Result<Vec<Option<Scalar>>> {
        let store = Store::open_existing(&folder.join("merged"), key(0).device())?;
        store.check()?;
        let mut shown = BTreeMap::new();
        for conflict in store.conflicts()? {
            let value = conflict.versions.first().ok_or("no version")?.value.clone();
            shown.insert((conflict.record, conflict.cell.number()), value);
        }
        let mut found = Vec::new();
        for (pit, cell) in cells {
            let record = RecordId::from_bytes(work.ids[*pit]).ok_or("no id")?;
            found.push(shown.get(&(record, CELLS[*cell].1)).map(|bytes| decode(bytes)).transpose()?);
        }
        Ok(found)
    }

    fn accepts(&self, hand_over: &[u8]) -> bool {
        let accepted = || -> Result<()> {
            let folder = tempfile::tempdir()?;
            let mut store = Store::create_or_open(&folder.path().join("store"), key(0).device())?;
            store.accept_key(&key(1).public_key(), "", NOW_MS)?;
            store.take_in(hand_over, NOW_MS)?;
            Ok(())
        };
        accepted().is_ok()
    }
}

/// Seals what each device notes, season by season.
fn write_hand_overs(work: &Work, folder: &Path) -> Result<()> {
    // What stands in each cell after spring.
    let mut stands: HashMap<(usize, usize), EditName> = HashMap::new();
    let mut lines: Vec<Line> = (0..work.spring.len()).map(|device| Line::new(device as u8)).collect();
    for (device, line) in lines.iter_mut().enumerate() {
        let saves = &work.spring[device];
        fs::write(hand_over_path(folder, 0, device), line.hand_over(work, saves, &mut stands, &[])?)?;
    }
    let spring: Vec<Witness> = lines.iter().map(Line::witness).collect();
    for (device, line) in lines.iter_mut().enumerate() {
        let mut stands = stands.clone();
        let saves = &work.summer[device];
        fs::write(hand_over_path(folder, 1, device), line.hand_over(work, saves, &mut stands, &spring)?)?;
    }
    Ok(())
}

/// A million edits: writes their hand-overs.
///
/// # Errors
/// Whatever goes wrong.
pub fn prepare_million(folder: &Path) -> Result<()> {
    write_hand_overs(&Work::new(MILLION), folder)
}

/// A new device takes in all of them, in one file.
///
/// # Errors
/// Whatever goes wrong.
pub fn take_in_million(folder: &Path) -> Result<Merged> {
    let mut store = Store::create_or_open(&folder.join("merged"), key(200).device())?;
    for device in 0..MILLION.devices as u8 {
        store.accept_key(&key(device).public_key(), "", NOW_MS)?;
    }
    let file = hand_overs(folder, 0)?.concat();
    let (took, taken) = timed(|| Ok(store.take_in(&file, NOW_MS)?))?;
    if taken.edits != MILLION.edits as u64 {
        return Err(format!("not all came in: {taken:?}").into());
    }
    let memory = most_memory()?;
    let (saved, ()) = timed(|| {
        drop(store);
        Ok(())
    })?;
    Ok(Merged { took, saved, memory })
}

/// Opens that store.
///
/// # Errors
/// Whatever goes wrong.
pub fn open_million(folder: &Path) -> Result<Took> {
    let opened = timed(|| Ok(Store::open_existing(&folder.join("merged"), key(200).device())?))?;
    Ok(opened.0)
}

/// The key of a device.
pub fn key(device: u8) -> KeyFromSeed {
    KeyFromSeed::new(&[device + 1; 32])
}

/// A device's edits so far.
pub struct Line {
    signer: KeyFromSeed,
    last: u64,
    chain: Chain,
}

impl Line {
    /// Of a new device.
    pub fn new(device: u8) -> Self {
        Self::of(key(device))
    }

    /// Of a new device with that key.
    pub fn of(signer: KeyFromSeed) -> Self {
        Self { chain: Chain::start(signer.device()), signer, last: 0 }
    }

    fn device(&self) -> DeviceId {
        self.signer.device()
    }

    fn witness(&self) -> Witness {
        Witness { name: EditName { device: self.device(), sequence: self.last }, chain: self.chain }
    }

    /// Seals saves as the store does: sealed anew after [`MOST_EDITS`]. `stands`: what is in each cell, as the device knows it.
    ///
    /// # Errors
    /// If they do not fit the format.
    pub fn hand_over(
        &mut self,
        work: &Work,
        saves: &[Save],
        stands: &mut HashMap<(usize, usize), EditName>,
        others: &[Witness],
    ) -> Result<Vec<u8>> {
        let mut file = FileWriter::new(Vec::new());
        let witness: Vec<Witness> =
            others.iter().filter(|witness| witness.name.device != self.device()).copied().collect();
        let mut edits = Vec::new();
        let first = self.last + 1;
        for save in saves {
            for (cell, value) in &save.cells {
                let name = EditName { device: self.device(), sequence: first + edits.len() as u64 };
                let before = stands.insert((save.pit, *cell), name);
                let line = |name: EditName| {
                    witness
                        .iter()
                        .position(|witness| witness.name.device == name.device)
                        .map_or(0, |at| at + 1)
                };
                let predecessors =
                    before.map(|name| Predecessor { name, line: line(name) as u32 }).into_iter().collect();
                edits.push(Edit {
                    clock: save.time_ms << 16,
                    record: work.ids[save.pit],
                    field: CELLS[*cell].1,
                    predecessors,
                    content: Content::Value(encode(value)?),
                });
            }
        }
        for edits in edits.chunks(MOST_EDITS) {
            // Only those that are named, each as far as it is.
            let named: Vec<u32> =
                edits.iter().flat_map(|edit| &edit.predecessors).map(|named| named.line).collect();
            let has_all = (1..=witness.len() as u32).all(|line| named.contains(&line));
            let witness = if has_all { witness.clone() } else { Vec::new() };
            let header = Header {
                device: self.device(),
                key: [0; 32],
                first: self.last + 1,
                last: 0,
                before: self.chain,
                after: Chain([0; 32]),
                witness,
                seen: Vec::new(),
                written_by: "pitface 0.1.0".to_owned(),
                sealed_ms: NOW_MS,
                sections: Vec::new(),
                ahead_ms: None,
                holder: String::new(),
            };
            for (edit, sequence) in edits.iter().zip(self.last + 1..) {
                self.chain = self.chain.then(sequence, edit);
            }
            self.last += edits.len() as u64;
            file.add(&merge::seal(&self.signer, header, edits).ok_or("edits that do not fit")?)?;
        }
        Ok(file.end()?)
    }
}

fn encode(value: &Scalar) -> Result<Vec<u8>> {
    let mut bytes = Vec::new();
    match value {
        Scalar::Number(number) => ciborium::into_writer(number, &mut bytes)?,
        Scalar::Text(text) => ciborium::into_writer(text, &mut bytes)?,
        // The bytes of a parent cell are CBOR themselves.
        Scalar::Bytes(item) => bytes.extend(item),
    }
    Ok(bytes)
}

fn decode(bytes: &[u8]) -> Result<Scalar> {
    let value: ciborium::Value = ciborium::from_reader(bytes)?;
    Ok(match value {
        ciborium::Value::Integer(number) => Scalar::Number(number.try_into()?),
        ciborium::Value::Text(text) => Scalar::text(&text).ok_or("a code that was not written")?,
        _ => Scalar::Bytes(bytes.to_vec()),
    })
}
