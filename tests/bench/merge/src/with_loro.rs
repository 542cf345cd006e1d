//! loro: a pit is a map container in one map, a save a change with its time; hand-overs are the device's own updates, packed by
//! Zstandard as ours are.

use crate::peer::{Merged, Peer, Result, hand_over_path, most_memory, timed};
use crate::work::{CELLS, Save, Scalar, Work, text_of};
use loro::{ExportMode, IdSpan, LoroDoc, LoroMap, LoroValue, ValueOrContainer};
use std::fs;
use std::path::Path;

/// loro.
pub struct WithLoro;

/// As ours.
const LEVEL: i32 = 19;
const LARGEST_BYTES: usize = 64 << 20;

impl Peer for WithLoro {
    fn prepare(&self, work: &Work, folder: &Path) -> Result<()> {
        let mut documents = Vec::new();
        for device in 0..work.spring.len() {
            let document = LoroDoc::new();
            document.set_peer_id(device as u64 + 1)?;
            // Every save keeps its own time.
            document.set_change_merge_interval(-1);
            documents.push(document);
        }
        for (device, document) in documents.iter().enumerate() {
            fs::write(hand_over_path(folder, 0, device), write(document, work, &work.spring[device])?)?;
        }
        for (device, document) in documents.iter().enumerate() {
            if device > 0 {
                for other in (0..work.spring.len()).filter(|other| *other != device) {
                    document.import(&unpack(&fs::read(hand_over_path(folder, 0, other))?)?)?;
                }
            }
            fs::write(hand_over_path(folder, 1, device), write(document, work, &work.summer[device])?)?;
        }
        fs::write(folder.join("own"), documents[0].export(ExportMode::Snapshot)?)?;
        Ok(())
    }

    fn merge(&self, folder: &Path, hand_overs: &[Vec<u8>]) -> Result<Merged> {
        let document = LoroDoc::from_snapshot(&fs::read(folder.join("own"))?)?;
        let (took, ()) = timed(|| {
            let files = hand_overs.iter().map(|file| unpack(file)).collect::<Result<Vec<_>>>()?;
            document.import_batch(&files)?;
            Ok(())
        })?;
        let memory = most_memory()?;
        let (saved, ()) =
            timed(|| Ok(fs::write(folder.join("merged"), document.export(ExportMode::Snapshot)?)?))?;
        Ok(Merged { took, saved, memory })
    }

    fn open(&self, folder: &Path, id: [u8; 16]) -> Result<()> {
        let document = LoroDoc::from_snapshot(&fs::read(folder.join("merged"))?)?;
        read(&document, id, "zone").map(drop).ok_or_else(|| "the pit is not there".into())
    }

    fn shown(&self, folder: &Path, work: &Work, cells: &[(usize, usize)]) -> Result<Vec<Option<Scalar>>> {
        let document = LoroDoc::from_snapshot(&fs::read(folder.join("merged"))?)?;
        Ok(cells.iter().map(|(pit, cell)| read(&document, work.ids[*pit], CELLS[*cell].0)).collect())
    }

    fn accepts(&self, hand_over: &[u8]) -> bool {
        unpack(hand_over).is_ok_and(|file| LoroDoc::new().import(&file).is_ok())
    }
}

/// Makes the saves, each a change, and gives them as packed updates.
fn write(document: &LoroDoc, work: &Work, saves: &[Save]) -> Result<Vec<u8>> {
    let peer = document.peer_id();
    let before = document.oplog_vv().get(&peer).copied().unwrap_or(0);
    let pits = document.get_map("pits");
    for save in saves {
        let key = text_of(&work.ids[save.pit]);
        let map = match pits.get(&key) {
            Some(ValueOrContainer::Container(found)) => found.into_map().map_err(|_| "no map")?,
            _ => pits.insert_container(&key, LoroMap::new())?,
        };
        for (cell, value) in &save.cells {
            let value = match value {
                Scalar::Number(number) => LoroValue::I64(*number),
                Scalar::Text(text) => LoroValue::from(*text),
                Scalar::Bytes(bytes) => LoroValue::from(bytes.clone()),
            };
            map.insert(CELLS[*cell].0, value)?;
        }
        document.set_next_commit_timestamp(save.time_ms as i64);
        document.commit();
    }
    let after = document.oplog_vv().get(&peer).copied().unwrap_or(0);
    let own = [IdSpan::new(peer, before, after)];
    let updates = document.export(ExportMode::UpdatesInRange { spans: own.as_slice().into() })?;
    Ok(zstd::bulk::compress(&updates, LEVEL)?)
}

fn unpack(file: &[u8]) -> Result<Vec<u8>> {
    Ok(zstd::bulk::decompress(file, LARGEST_BYTES)?)
}

fn read(document: &LoroDoc, id: [u8; 16], cell: &str) -> Option<Scalar> {
    let map = document.get_map("pits").get(&text_of(&id))?.into_container().ok()?.into_map().ok()?;
    match map.get(cell)?.into_value().ok()? {
        LoroValue::I64(number) => Some(Scalar::Number(number)),
        LoroValue::String(text) => Scalar::text(&text),
        LoroValue::Binary(bytes) => Some(Scalar::Bytes(bytes.to_vec())),
        _ => None,
    }
}
