//! A version vector of thousands of devices: a store that has edits of all of them says so, and another learns it.

use crate::ours::{Line, NOW_MS};
use crate::peer::{Result, most_memory, timed};
use crate::work::{Chance, Save, Scalar, Size, WORK_A, Work};
use pitface_core::merge::{FileWriter, KeyFromSeed, Part, Signer, read_file};
use pitface_core::store::{Sealer, Store};
use std::collections::HashMap;
use std::fs;
use std::path::Path;

/// How many.
pub const DEVICES: usize = 5_000;

/// Devices that only take in.
const TAKING: [&str; 2] = ["first", "second"];

/// Every device digs a pit and hands it over; two others know them all.
///
/// # Errors
/// Whatever goes wrong.
pub fn prepare(folder: &Path) -> Result<()> {
    let work = Work { ids: vec![Chance(1).id(NOW_MS)], ..Work::new(Size { edits: 1_000, ..WORK_A }) };
    let mut all = FileWriter::new(Vec::new());
    for device in 0..DEVICES {
        let saves = [Save { time_ms: NOW_MS, pit: 0, cells: vec![(4, Scalar::Number(300 + device as i64))] }];
        let file = Line::of(key(device)).hand_over(&work, &saves, &mut HashMap::new(), &[])?;
        for Part { bytes, .. } in read_file(&file)? {
            all.add(bytes)?;
        }
    }
    fs::write(folder.join("hand-over"), all.end()?)?;
    for (number, name) in TAKING.into_iter().enumerate() {
        let mut store = Store::create_or_open(&folder.join(name), key(DEVICES + number).device())?;
        for device in 0..DEVICES + TAKING.len() {
            store.accept_key(&key(device).public_key(), "", NOW_MS)?;
        }
    }
    Ok(())
}

/// The first takes them in, seals what it has seen and hands over; the second takes that in. Prints what it came to.
///
/// # Errors
/// Whatever goes wrong.
pub fn take_in(folder: &Path, say: fn(&str, f64)) -> Result<()> {
    let file = fs::read(folder.join("hand-over"))?;
    let [mut first, mut second] = open(folder)?;
    let (took, taken) = timed(|| Ok(first.take_in(&file, NOW_MS)?))?;
    let signer = key(DEVICES);
    let sealer =
        Sealer { signer: &signer, holder: "", written_by: "pitface 0.1.0", now_ms: NOW_MS, ahead_ms: None };
    let (seal_took, _) = timed(|| Ok(first.seal(&sealer)?))?;
    let mut all = FileWriter::new(Vec::new());
    first.hand_over(None, &mut all)?;
    let all = all.end()?;
    let (learned, also_taken) = timed(|| Ok(second.take_in(&all, NOW_MS)?))?;
    if taken.edits != DEVICES as u64 || also_taken.edits != taken.edits {
        return Err(format!("not all came in: {taken:?}, {also_taken:?}").into());
    }
    say("take_ms", took.ms());
    say("seal_ms", seal_took.ms());
    say("vector_bytes", (all.len() - file.len()) as f64);
    say("learn_ms", learned.ms());
    say("memory", most_memory()? as f64);
    Ok(())
}

fn open(folder: &Path) -> Result<[Store; 2]> {
    let open =
        |number: usize| Store::open_existing(&folder.join(TAKING[number]), key(DEVICES + number).device());
    Ok([open(0)?, open(1)?])
}

fn key(device: usize) -> KeyFromSeed {
    let mut seed = [7; 32];
    seed[..8].copy_from_slice(&(device as u64).to_be_bytes());
    KeyFromSeed::new(&seed)
}
