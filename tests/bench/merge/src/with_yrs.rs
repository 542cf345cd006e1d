//! yrs: a pit is a map in one map; hand-overs are updates of the device's own edits. It has no clock, so its hand-overs are shown, not
//! held against ours.

use crate::peer::{Merged, Peer, Result, hand_over_path, most_memory, timed};
use crate::work::{CELLS, Save, Scalar, Work, text_of};
use std::fs;
use std::path::Path;
use yrs::updates::decoder::Decode;
use yrs::{
    Any, ClientID, Doc, Map, MapPrelim, MapRef, Number, Options, Out, ReadTxn, StateVector, Transact, Update,
};

/// yrs.
pub struct WithYrs;

impl Peer for WithYrs {
    fn prepare(&self, work: &Work, folder: &Path) -> Result<()> {
        let documents: Vec<Doc> = (0..work.spring.len()).map(|device| document(device as u64 + 1)).collect();
        for (device, document) in documents.iter().enumerate() {
            fs::write(hand_over_path(folder, 0, device), write(document, work, &work.spring[device]))?;
        }
        for (device, document) in documents.iter().enumerate() {
            if device > 0 {
                for other in (0..work.spring.len()).filter(|other| *other != device) {
                    let file = fs::read(hand_over_path(folder, 0, other))?;
                    document.transact_mut().apply_update(Update::decode_v1(&file)?)?;
                }
            }
            fs::write(hand_over_path(folder, 1, device), write(document, work, &work.summer[device]))?;
        }
        fs::write(folder.join("own"), whole(&documents[0]))?;
        Ok(())
    }

    fn merge(&self, folder: &Path, hand_overs: &[Vec<u8>]) -> Result<Merged> {
        let document = load(&folder.join("own"))?;
        let (took, ()) = timed(|| {
            let mut transaction = document.transact_mut();
            for file in hand_overs {
                transaction.apply_update(Update::decode_v1(file)?)?;
            }
            Ok(())
        })?;
        let memory = most_memory()?;
        let (saved, ()) = timed(|| Ok(fs::write(folder.join("merged"), whole(&document))?))?;
        Ok(Merged { took, saved, memory })
    }

    fn open(&self, folder: &Path, id: [u8; 16]) -> Result<()> {
        let document = load(&folder.join("merged"))?;
        read(&document, id, "zone").map(drop).ok_or_else(|| "the pit is not there".into())
    }

    fn shown(&self, folder: &Path, work: &Work, cells: &[(usize, usize)]) -> Result<Vec<Option<Scalar>>> {
        let document = load(&folder.join("merged"))?;
        Ok(cells.iter().map(|(pit, cell)| read(&document, work.ids[*pit], CELLS[*cell].0)).collect())
    }

    fn accepts(&self, hand_over: &[u8]) -> bool {
        let update = Update::decode_v1(hand_over);
        update.is_ok_and(|update| document(1).transact_mut().apply_update(update).is_ok())
    }
}

fn document(client: u64) -> Doc {
    Doc::with_options(Options { client_id: ClientID::new(client), ..Options::default() })
}

fn load(path: &Path) -> Result<Doc> {
    let document = document(1);
    document.transact_mut().apply_update(Update::decode_v1(&fs::read(path)?)?)?;
    Ok(document)
}

fn whole(document: &Doc) -> Vec<u8> {
    document.transact().encode_state_as_update_v1(&StateVector::default())
}

/// Makes the saves, each a transaction, and gives what is new as an update.
fn write(document: &Doc, work: &Work, saves: &[Save]) -> Vec<u8> {
    let before = document.transact().state_vector();
    let pits = document.get_or_insert_map("pits");
    for save in saves {
        let mut transaction = document.transact_mut();
        let key = text_of(&work.ids[save.pit]);
        let map: MapRef = match pits.get(&transaction, &key) {
            Some(Out::YMap(map)) => map,
            _ => pits.insert(&mut transaction, key, MapPrelim::default()),
        };
        for (cell, value) in &save.cells {
            let value = match value {
                Scalar::Number(number) => Any::Number((*number).into()),
                Scalar::Text(text) => Any::from(*text),
                Scalar::Bytes(bytes) => Any::from(bytes.clone()),
            };
            map.insert(&mut transaction, CELLS[*cell].0, value);
        }
    }
    document.transact().encode_state_as_update_v1(&before)
}

fn read(document: &Doc, id: [u8; 16], cell: &str) -> Option<Scalar> {
    let pits = document.get_or_insert_map("pits");
    let transaction = document.transact();
    let Some(Out::YMap(map)) = pits.get(&transaction, &text_of(&id)) else { return None };
    match map.get(&transaction, cell)? {
        Out::Any(Any::Number(Number::Int(number))) => Some(Scalar::Number(number)),
        Out::Any(Any::String(text)) => Scalar::text(&text),
        Out::Any(Any::Buffer(bytes)) => Some(Scalar::Bytes(bytes.to_vec())),
        _ => None,
    }
}
