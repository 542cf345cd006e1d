//! Bytes changed by lot, always the same ones: in bundles whose hashes and signature are then made anew (further than a
//! fuzzer gets, for it cannot sign), in notes files and in a store's file. Nothing panics, and whatever is accepted
//! leaves a store in order. `PITFACE_MUTATIONS=100000` tries more; `core/fuzz` has the same for `cargo fuzz`.

use crate::merge_forge;
use crate::merge_support;

use ciborium::Value;
use merge_forge::{Forged, cbor, file};
use merge_support::{Phone, key, pit};
use pitface_core::merge::columns::{self, Standing};
use pitface_core::merge::{Bundle, Header, Part, PartKind, Signer, read_file, seal};
use pitface_core::record::RecordId;
use pitface_core::record::notes;
use pitface_core::store::{Store, StoreError};
use std::path::PathBuf;

/// How many changed inputs a test tries.
fn rounds(few: u64) -> u64 {
    std::env::var("PITFACE_MUTATIONS").ok().and_then(|number| number.parse().ok()).unwrap_or(few)
}

/// Lots: `SplitMix64` (Steele, Lea and Flood 2014).
struct Lots(u64);

impl Lots {
    fn draw(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ self.0 >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ mixed >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ mixed >> 31
    }

    fn below(&mut self, end: usize) -> usize {
        self.draw() as usize % end.max(1)
    }

    /// Some bytes changed, taken out, put in, doubled or exchanged.
    fn change(&mut self, bytes: &mut Vec<u8>) {
        const TELLING: [u8; 9] = [0, 1, 0x7f, 0x80, 0xff, 0xf6, 0x9b, 0x5b, b'"'];
        for _ in 0..=self.below(4) {
            let at = self.below(bytes.len());
            let to = (at + 1 + self.below(12)).min(bytes.len());
            match self.below(6) {
                _ if bytes.is_empty() => bytes.push(self.draw() as u8),
                0 => bytes[at] ^= 1 << self.below(8),
                1 => bytes[at] = TELLING[self.below(TELLING.len())],
                2 => bytes[at] = bytes[at].wrapping_add(1 + 254 * self.below(2) as u8),
                3 => drop(bytes.drain(at..to)),
                4 => {
                    let again = bytes[at..to].to_vec();
                    let there = self.below(bytes.len());
                    bytes.splice(there..there, again);
                }
                _ => bytes.insert(at, self.draw() as u8),
            }
        }
    }
}

fn vectors(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors").join(name)
}

/// The edits of the golden bundles that the key of device 1 signed for itself, and of a phone.
fn seeds() -> Vec<Vec<u8>> {
    let mut ann = Phone::new(1);
    let field = ann.new_field("Long Sedge");
    pit(&mut ann, field, 300);
    ann.rename(field, "Sedge");
    let mut files = vec![ann.hand_over()];
    for name in ["one_device", "redacted", "newer", "receipt", "two_devices"] {
        files.push(std::fs::read(vectors(&format!("bundles/version_1/{name}.pitb"))).unwrap());
    }
    let contents = |file: &Vec<u8>| -> Vec<Vec<u8>> {
        let parts = read_file(file).unwrap();
        let edits = parts.iter().filter(|part| part.kind == PartKind::Edits);
        edits.map(|part| part.content.to_vec()).collect()
    };
    files.iter().flat_map(contents).collect()
}

#[test]
fn changed_bundles_signed_anew_do_no_harm() {
    let (seeds, mut lots, mut read) = (seeds(), Lots(1), 0);
    for round in 0..rounds(4_000) {
        let seed = &seeds[lots.below(seeds.len())];
        let forged = Forged::of(seed, 1);
        let content = match lots.below(4) {
            // The content as a whole; the header; the packed edits; the unpacked ones.
            0 => {
                let mut content = seed.clone();
                lots.change(&mut content);
                content
            }
            1 => {
                let mut header = cbor(&Value::Map(forged.header.clone()));
                lots.change(&mut header);
                forged.content_with_header(&header)
            }
            2 => {
                let mut packed = forged.sections.clone();
                lots.change(&mut packed);
                forged.with_sections(&[(1, 1, 1, 1 << 16, packed)]).content()
            }
            _ => {
                let header = Header::of_content(seed).unwrap();
                let stored = &forged.sections[..header.sections[0].stored_bytes as usize];
                let mut raw = zstd::bulk::decompress(stored, header.sections[0].raw_bytes as usize).unwrap();
                lots.change(&mut raw);
                forged.with_edits(&raw).content()
            }
        };
        if let Ok(bundle) = Bundle::read(&content) {
            assert_eq!(bundle.header.count(), bundle.edits.len() as u64, "round {round}");
            read += 1;
        }
    }
    assert!(read > 0, "not one was read: the changes are too coarse to tell anything");
}

/// Edits that were changed and then sealed by an accepted device are taken in or refused; the store is in order after either.
#[test]
fn changed_edits_that_are_taken_in_leave_a_store_in_order() {
    let (seeds, mut lots, mut taken) = (seeds(), Lots(2), 0);
    let seeds: Vec<(Bundle, Vec<u8>)> = seeds
        .iter()
        .map(|content| Bundle::read(content).unwrap())
        .filter(|bundle| bundle.header.device == key(1).device() && bundle.header.first == 1)
        .map(|bundle| {
            let standing =
                Standing { device: bundle.header.device, first: 1, witness: &bundle.header.witness };
            let raw = columns::write(standing, &bundle.edits).unwrap();
            (bundle, raw)
        })
        .collect();
    for round in 0..rounds(400) {
        let (bundle, raw) = &seeds[lots.below(seeds.len())];
        let mut raw = raw.clone();
        lots.change(&mut raw);
        let witness = &bundle.header.witness;
        let standing = Standing { device: bundle.header.device, first: 1, witness };
        let Ok(edits) = columns::read(standing, bundle.edits.len() as u64, &raw) else { continue };
        let part = seal(&key(1), bundle.header.clone(), &edits).expect("what was read can be sealed");
        let mut phone = Phone::new(2);
        phone.trust(1);
        let now = phone.now();
        match phone.store.take_in(&file(&[part]), now) {
            Ok(came) => taken += came.edits,
            Err(StoreError::Bundle(_)) => continue,
            Err(error) => panic!("round {round}: {error}"),
        }
        phone.store.check().unwrap_or_else(|error| panic!("round {round}: {error}"));
        for field in phone.store.fields().unwrap_or_else(|error| panic!("round {round}: {error}")) {
            // What no version can read hides nothing but its own record.
            let loaded = phone.store.load_notes(field.id).map(drop);
            loaded.unwrap_or_else(|error| panic!("round {round}: {error}"));
        }
        let told = phone.store.not_shown_anywhere();
        told.unwrap_or_else(|error| panic!("round {round}: {error}"));
        let handed_on = phone.hand_over();
        assert!(read_file(&handed_on).unwrap().iter().all(|part| Bundle::read(part.content).is_ok()));
    }
    assert!(taken > 0, "nothing was taken in");
}

#[test]
fn changed_notes_are_read_or_refused() {
    let mut files = vec![std::fs::read(vectors("notes_full.json")).unwrap()];
    for name in ["L08", "T51", "T63"] {
        files.push(std::fs::read(vectors(&format!("decisions/{name}.notes.json"))).unwrap());
    }
    let (mut lots, mut read) = (Lots(3), 0);
    for round in 0..rounds(4_000) {
        let mut text = files[lots.below(files.len())].clone();
        lots.change(&mut text);
        let Ok(text) = String::from_utf8(text) else { continue };
        let mut made = 0;
        let mut new_id = || {
            made += 1;
            RecordId::new(made, [0; 10])
        };
        let Ok(first) = notes::read(&text, &mut new_id) else { continue };
        let written = notes::write(&first.notes);
        let again = notes::read(&written, &mut new_id).map(|again| again.notes);
        assert!(again.is_ok_and(|again| again == first.notes), "round {round}");
        read += 1;
    }
    assert!(read > 0, "not one was read");
}

#[test]
fn a_changed_store_is_opened_or_refused() {
    let folder = tempfile::tempdir().unwrap();
    let mut ann = Phone::new(1);
    let field = ann.new_field("Long Sedge");
    pit(&mut ann, field, 300);
    ann.seal();
    let copy = ann.copied();
    let bytes = copy.bytes();
    let (_, good) = bytes.iter().find(|(name, _)| name == "notes.pitface").unwrap();
    assert!(good.len() > 1000);
    let mut lots = Lots(4);
    let path = folder.path().join("notes.pitface");
    for _ in 0..rounds(300) {
        let mut bytes = good.clone();
        for _ in 0..=lots.below(6) {
            let at = lots.below(bytes.len());
            bytes[at] = lots.draw() as u8;
        }
        for name in ["notes.pitface-wal", "notes.pitface-shm"] {
            let _ = std::fs::remove_file(folder.path().join(name));
        }
        std::fs::write(&path, &bytes).unwrap();
        let Ok(mut store) = Store::open_existing(&path, key(1).device()) else { continue };
        let _ = (store.check(), store.conflicts(), store.missing(), store.digest());
        for field in store.fields().unwrap_or_default() {
            let _ = store.load_notes(field.id);
        }
        let _ = store.rebuild();
    }
}

/// A part of this file's makers: what is signed anew is what was meant.
#[test]
fn forging_makes_good_parts() {
    for seed in seeds() {
        let header = Header::of_content(&seed).unwrap();
        if header.signer() == key(1).device() {
            let part = Forged::of(&seed, 1).part();
            assert_eq!(Part::first_of(&part).unwrap().0.content, seed);
        }
    }
}
