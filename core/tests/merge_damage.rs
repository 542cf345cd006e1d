//! Whatever happens to a bundle on its way: it is refused as a whole, and nothing of the store changes.

use crate::merge_forge;
use crate::merge_support;
use crate::merge_untouched;

use merge_forge::file;
use merge_support::{Phone, pit};
use merge_untouched::Untouched;
use pitface_core::merge::plan::Missing;
use pitface_core::merge::{Bundle, Damage, Part, PartKind, PhotoPiece, read_file};

/// Each position of this is tried on a store too.
const SAMPLE: usize = 97;

/// A file of two phones with all kinds of parts in two groups.
fn a_file() -> Vec<u8> {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    let first = ann.hand_over();
    ben.take_in(&first);
    ben.rename(field, "Sedge");
    let mut parts: Vec<Vec<u8>> =
        read_file(&ben.hand_over()).unwrap().iter().map(|part| part.bytes.to_vec()).collect();
    parts.push(PhotoPiece { sha256: [3; 32], size_bytes: 60, offset: 0, bytes: &[5; 60] }.write());
    parts.push(Part::write(PartKind::Other(0x8001), b"of later times"));
    [first, file(&parts)].concat()
}

/// As `Store::take_in` checks it.
fn read(file: &[u8]) -> Result<(), Damage> {
    read_file(file)?.iter().try_for_each(|part| match part.kind {
        PartKind::Edits => Bundle::read(part.content).map(drop),
        PartKind::PhotoPiece => PhotoPiece::read(part.content).map(drop),
        _ => Ok(()),
    })
}

fn parts_of(file: &[u8]) -> Vec<Vec<u8>> {
    read_file(file).unwrap().iter().map(|part| part.bytes.to_vec()).collect()
}

/// Where the heads of all parts are, those of ends too.
fn heads(file: &[u8]) -> Vec<usize> {
    let (mut at, mut heads) = (0, Vec::new());
    while at < file.len() {
        heads.extend(at..at + 16);
        at += Part::first_of(&file[at..]).unwrap().0.bytes.len();
    }
    heads
}

#[test]
fn every_changed_bit_is_refused() {
    let mut file = a_file();
    assert_eq!(read(&file), Ok(()));
    let mut store = Untouched::new();
    let heads = heads(&file);
    for at in 0..file.len() {
        for bit in 0..8 {
            file[at] ^= 1 << bit;
            assert!(read(&file).is_err(), "bit {bit} of byte {at}");
            if heads.contains(&at) || (at * 8 + bit) % SAMPLE == 0 {
                store.refuses(&file);
            }
            file[at] ^= 1 << bit;
        }
    }
}

#[test]
fn every_lost_tail_is_refused() {
    let file = a_file();
    let first_group = heads(&file)[16 * 2 - 1] + 1 - 16;
    let mut store = Untouched::new();
    let mut whole = Vec::new();
    for length in 0..file.len() {
        if read(&file[..length]).is_ok() {
            whole.push(length);
        } else if length % SAMPLE == 0 {
            store.refuses(&file[..length]);
        }
    }
    // Only where a group ends is it a file; what is missing then is told by the edits that wait.
    let end = Part::first_of(&file[first_group..]).unwrap().0;
    assert_eq!(end.kind, PartKind::End);
    assert_eq!(whole, [first_group + end.bytes.len()]);
}

/// Behind a frame made anew, signature and hashes keep out every other bit.
#[test]
fn every_changed_bit_within_a_frame_made_anew_is_refused() {
    let file_of_all = a_file();
    let parts = read_file(&file_of_all).unwrap();
    let mut store = Untouched::new();
    for part in parts.iter().filter(|part| part.kind == PartKind::Edits).take(2) {
        let mut content = part.content.to_vec();
        for at in 0..content.len() * 8 {
            content[at / 8] ^= 1 << (at % 8);
            assert!(Bundle::read(&content).is_err(), "bit {at}");
            if at % SAMPLE == 0 {
                store.refuses(&file(&[Part::write(PartKind::Edits, &content)]));
            }
            content[at / 8] ^= 1 << (at % 8);
        }
        for length in 0..content.len() {
            assert!(Bundle::read(&content[..length]).is_err(), "{length} bytes");
        }
        content.push(0);
        assert!(Bundle::read(&content).is_err());
    }
}

#[test]
fn parts_swapped_doubled_left_out_or_added_are_refused() {
    let whole = a_file();
    let mut store = Untouched::new();
    let first_group = read_group(&whole);
    let second = &whole[first_group..];
    let mut pieces = Vec::new();
    let mut rest = second;
    while !rest.is_empty() {
        let (part, after) = Part::first_of(rest).unwrap();
        pieces.push(part.bytes);
        rest = after;
    }
    assert!(pieces.len() >= 5, "{}", pieces.len());
    let mut changed: Vec<Vec<&[u8]>> = Vec::new();
    for at in 0..pieces.len() {
        let mut without = pieces.clone();
        without.remove(at);
        let mut doubled = pieces.clone();
        doubled.insert(at, pieces[at]);
        changed.extend([without, doubled]);
        for other in 0..at {
            let mut swapped = pieces.clone();
            swapped.swap(at, other);
            changed.push(swapped);
        }
    }
    for change in changed {
        let end_twice = change.len() > pieces.len() && change[change.len() - 2] == change[change.len() - 1];
        let changed = [&whole[..first_group], &change.concat()].concat();
        assert!(read(&changed).is_err(), "end twice: {end_twice}");
        store.refuses(&changed);
    }
    for added in [b"\0".as_slice(), b"PITB", &[0; 1000], &whole[..20], &whole[..whole.len() - 1]] {
        store.refuses(&[&whole, added].concat());
        store.refuses(&[added, &whole].concat());
    }
    store.refuses(b"");
    store.refuses(b"PK\x03\x04 another kind of file");
}

fn read_group(file: &[u8]) -> usize {
    let mut rest = file;
    loop {
        let (part, after) = Part::first_of(rest).unwrap();
        rest = after;
        if part.kind == PartKind::End {
            return file.len() - rest.len();
        }
    }
}

/// A whole group that is cut out is no damage, and is noticed all the same.
#[test]
fn a_group_that_is_cut_out_is_named_as_missing() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    let first = ann.hand_over();
    let edits = ann.store.check().unwrap().edits as u64;
    ann.rename(field, "Sedge");
    let second = ann.hand_over_what(&first);
    let file = [first.as_slice(), &second].concat();
    let came = ben.take_in(&file[first.len()..]);
    let missing = Missing { device: ann.id(), first: 1, last: edits };
    assert_eq!((came.edits, came.missing.into_iter().collect::<Vec<_>>()), (0, vec![missing]));
    assert_eq!(ben.take_in(&file[..first.len()]).edits, edits + 1);
}

/// In another order, with an end that says so, it is another file of the same.
#[test]
fn the_order_of_parts_does_not_matter() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    pit(&mut ann, field, 300);
    ben.take_in(&ann.hand_over());
    ben.rename(field, "Sedge");
    ann.take_in(&ben.hand_over());
    ann.rename(field, "Sedge west");
    let mut parts = parts_of(&ann.hand_over());
    assert!(parts.len() >= 3);
    for _ in 0..parts.len() {
        parts.rotate_left(1);
        let mut cat = Phone::new(3);
        Phone::trust_all(&mut [&mut ann, &mut ben, &mut cat]);
        cat.trust(1);
        cat.trust(2);
        cat.take_in(&file(&parts));
        assert_eq!(cat.store.digest().unwrap(), ann.store.digest().unwrap());
    }
}
