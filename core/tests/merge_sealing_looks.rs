//! Nothing damaged is signed: bits turn over in edits that no bundle has yet, and then the store is to hand over.
//!
//! `PITFACE_FLIPS=n` turns over n bits instead of as many as in the normal run.

use crate::merge_support;

use merge_support::{Phone, folder, key, pit, sealer};
use pitface_core::merge::{Bundle, Chain, FileWriter, PartKind, Signer, read_file};
use pitface_core::store::{Cell, Store, StoreError};
use std::collections::BTreeSet;
use std::hash::{BuildHasher, RandomState};
use std::path::Path;

const PAGE_BYTES: usize = 4096;
const NOW_MS: u64 = 1_770_000_000_000;

fn flips() -> u64 {
    std::env::var("PITFACE_FLIPS").ok().and_then(|flips| flips.parse().ok()).unwrap_or(400)
}

/// The bytes of a phone's store as it stands.
fn file_of(phone: &mut Phone) -> Vec<u8> {
    let (_folder, path) = phone.copied().closed();
    std::fs::read(path).unwrap()
}

/// Seals what the store at a path has, and gives the chain at every edit that then is in a bundle.
fn signed(path: &Path) -> Result<BTreeSet<Chain>, StoreError> {
    let signer = key(1);
    let mut store = Store::open_existing(path, signer.device())?;
    store.seal(&sealer(&signer, NOW_MS))?;
    let mut file = FileWriter::new(Vec::new());
    store.hand_over(None, &mut file)?;
    let file = file.end().unwrap();
    let parts = read_file(&file)?;
    let edits = parts.iter().filter(|part| part.kind == PartKind::Edits);
    Ok(edits.flat_map(|part| Bundle::read(part.content).unwrap().chains).collect())
}

#[test]
fn no_bit_that_turned_over_in_unsealed_edits_is_signed() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    ben.rename(field, "by Ben");
    ann.take_in(&ben.hand_over());
    ann.seal();
    let sealed = file_of(&mut ann);
    for depth in 1..40 {
        let place = pit(&mut ann, field, 300 + depth);
        ann.step(place, 20 * depth);
        ann.rename(field, &format!("Long Sedge as walked for the {depth}th time"));
    }
    let whole = file_of(&mut ann);
    // The pages that hold what was noted since.
    let pages: Vec<usize> = (0..whole.len() / PAGE_BYTES)
        .map(|page| page * PAGE_BYTES)
        .filter(|at| sealed.get(*at..at + PAGE_BYTES) != whole.get(*at..at + PAGE_BYTES))
        .collect();
    let place = folder();
    let path = place.path().join("notes.pitface");
    std::fs::write(&path, &whole).unwrap();
    let truth = signed(&path).unwrap();
    let (chance, mut refused, mut sound, mut wrong) = (RandomState::new(), 0, 0, Vec::new());
    for number in 0..flips() {
        let page = pages[chance.hash_one((0, number)) as usize % pages.len()];
        let bit = chance.hash_one((1, number)) as usize % (PAGE_BYTES * 8);
        let mut rotten = whole.clone();
        rotten[page + bit / 8] ^= 1 << (bit % 8);
        std::fs::write(&path, &rotten).unwrap();
        match signed(&path) {
            Err(_) => refused += 1,
            Ok(chains) if chains.is_subset(&truth) => sound += 1,
            Ok(_) => wrong.push((page, bit)),
        }
    }
    println!(
        "{} bits: {refused} refused, {sound} signed as written, {} signed as damaged",
        flips(),
        wrong.len()
    );
    assert!(wrong.is_empty(), "{} of {} signed as damaged: {wrong:?}", wrong.len(), flips());
    assert!(refused > 0);
}

#[test]
fn what_is_refused_says_which_edits_and_what_to_do() {
    let mut ann = Phone::new(1);
    let field = ann.new_field("Long Sedge");
    ann.seal();
    ann.rename(field, "Short Sedge");
    let (_folder, path) = ann.closed();
    rusqlite::Connection::open(&path)
        .unwrap()
        .execute_batch(
            "DROP TRIGGER log_is_never_changed;
            UPDATE log SET value = x'6162' WHERE sequence = (SELECT max(sequence) FROM log)",
        )
        .unwrap();
    let (signer, mut store) = (key(1), Store::open_existing(&path, key(1).device()).unwrap());
    let told = store.seal(&sealer(&signer, NOW_MS)).unwrap_err().to_string();
    assert!(told.contains("edits 4 to 4 of device") && told.contains("`pitface check --repair`"), "{told}");
    let told = store.look_before_giving_out().unwrap_err().to_string();
    assert!(told.contains("`pitface check --repair`"), "{told}");
    let redacted = store.redact(field, Cell::FIELD_NAME, &sealer(&signer, NOW_MS));
    assert!(matches!(redacted, Err(StoreError::NotAsWritten(_))), "it would be signed again: {redacted:?}");
}
