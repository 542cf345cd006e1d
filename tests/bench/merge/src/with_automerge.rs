//! automerge: a pit is a map under the root, a save a change with its time; hand-overs are bundles of the device's own changes.

use crate::peer::{Merged, Peer, Result, hand_over_path, most_memory, timed};
use crate::work::{CELLS, Save, Scalar, Work, text_of};
use automerge::transaction::{CommitOptions, Transactable};
use automerge::{ActorId, AutoCommit, ChangeHash, ObjType, ROOT, ReadDoc, ScalarValue, Value};
use std::collections::HashSet;
use std::fs;
use std::path::Path;

/// automerge.
pub struct WithAutomerge;

impl Peer for WithAutomerge {
    fn prepare(&self, work: &Work, folder: &Path) -> Result<()> {
        let mut documents: Vec<AutoCommit> = (0..work.spring.len())
            .map(|device| AutoCommit::new().with_actor(ActorId::from([device as u8 + 1; 16])))
            .collect();
        for (device, document) in documents.iter_mut().enumerate() {
            let bytes = write(document, work, &work.spring[device])?;
            fs::write(hand_over_path(folder, 0, device), bytes)?;
        }
        for (device, document) in documents.iter_mut().enumerate() {
            if device > 0 {
                for other in (0..work.spring.len()).filter(|other| *other != device) {
                    document.load_incremental(&fs::read(hand_over_path(folder, 0, other))?)?;
                }
            }
            let bytes = write(document, work, &work.summer[device])?;
            fs::write(hand_over_path(folder, 1, device), bytes)?;
        }
        fs::write(folder.join("own"), documents[0].save())?;
        Ok(())
    }

    fn merge(&self, folder: &Path, hand_overs: &[Vec<u8>]) -> Result<Merged> {
        let mut document = AutoCommit::load(&fs::read(folder.join("own"))?)?;
        let (took, ()) = timed(|| {
            for file in hand_overs {
                document.load_incremental(file)?;
            }
            Ok(())
        })?;
        let memory = most_memory()?;
        let (saved, ()) = timed(|| Ok(fs::write(folder.join("merged"), document.save())?))?;
        Ok(Merged { took, saved, memory })
    }

    fn open(&self, folder: &Path, id: [u8; 16]) -> Result<()> {
        let document = AutoCommit::load(&fs::read(folder.join("merged"))?)?;
        read(&document, id, "zone")?.map(drop).ok_or_else(|| "the pit is not there".into())
    }

    fn shown(&self, folder: &Path, work: &Work, cells: &[(usize, usize)]) -> Result<Vec<Option<Scalar>>> {
        let document = AutoCommit::load(&fs::read(folder.join("merged"))?)?;
        cells.iter().map(|(pit, cell)| read(&document, work.ids[*pit], CELLS[*cell].0)).collect()
    }

    fn accepts(&self, hand_over: &[u8]) -> bool {
        // A device that has something already, as devices do; an empty one would read the file more strictly.
        let mut document = AutoCommit::new();
        document.put(ROOT, "here", true).is_ok() && document.load_incremental(hand_over).is_ok()
    }
}

/// Makes the saves, each a change, and gives them as a bundle.
fn write(document: &mut AutoCommit, work: &Work, saves: &[Save]) -> Result<Vec<u8>> {
    let before: HashSet<ChangeHash> = document.get_changes(&[]).iter().map(automerge::Change::hash).collect();
    for save in saves {
        let key = text_of(&work.ids[save.pit]);
        let map = match document.get(ROOT, &key)? {
            Some((_, map)) => map,
            None => document.put_object(ROOT, &key, ObjType::Map)?,
        };
        for (cell, value) in &save.cells {
            let value = match value {
                Scalar::Number(number) => ScalarValue::Int(*number),
                Scalar::Text(text) => ScalarValue::Str((*text).into()),
                Scalar::Bytes(bytes) => ScalarValue::Bytes(bytes.clone()),
            };
            document.put(&map, CELLS[*cell].0, value)?;
        }
        document.commit_with(CommitOptions::default().with_time(save.time_ms as i64));
    }
    let all = document.get_changes(&[]);
    let own = all.iter().map(automerge::Change::hash).filter(|hash| !before.contains(hash));
    Ok(document.bundle(own)?.bytes().to_vec())
}

fn read(document: &AutoCommit, id: [u8; 16], cell: &str) -> Result<Option<Scalar>> {
    let Some((_, map)) = document.get(ROOT, text_of(&id))? else { return Ok(None) };
    let Some((Value::Scalar(value), _)) = document.get(map, cell)? else { return Ok(None) };
    Ok(match value.as_ref() {
        ScalarValue::Int(number) => Some(Scalar::Number(*number)),
        ScalarValue::Str(text) => Scalar::text(text),
        ScalarValue::Bytes(bytes) => Some(Scalar::Bytes(bytes.clone())),
        _ => None,
    })
}
