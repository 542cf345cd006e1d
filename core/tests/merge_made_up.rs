//! Whatever somebody makes up, hashes and signature in order: it is refused as a whole, and nothing of the store changes.

use crate::merge_forge;
use crate::merge_support;
use crate::merge_untouched;

use ciborium::Value;
use merge_forge::{Forged, file, with_version};
use merge_support::{key, name};
use merge_untouched::Untouched;
use pitface_core::merge::{
    Bundle, Chain, Content, Damage, Edit, EditName, Header, PIECE_BYTES, Part, PartKind, PhotoPiece,
    Predecessor, Signer, Witness, seal,
};

/// A good part of two edits, to make bad ones of.
fn good() -> Forged {
    let edits = [edit(1 << 20, vec![]), edit(2 << 20, vec![own(1)])];
    let part = seal(&key(1), header(Vec::new()), &edits).unwrap();
    let forged = Forged::of(Part::first_of(&part).unwrap().0.content, 1);
    assert!(Bundle::read(&forged.content()).is_ok());
    forged
}

fn edit(clock: u64, predecessors: Vec<Predecessor>) -> Edit {
    let record = [1, 0x99, 0, 0, 0, 0, 0x70, 0, 0x80, 0, 0, 0, 0, 0, 0, 1];
    Edit { clock, record, field: 100, predecessors, content: Content::Value(name("Long Sedge")) }
}

fn own(sequence: u64) -> Predecessor {
    Predecessor { name: EditName { device: key(1).device(), sequence }, line: 0 }
}

fn header(witness: Vec<Witness>) -> Header {
    let device = key(1).device();
    Header {
        device,
        first: 1,
        before: Chain::start(device),
        witness,
        seen: Vec::new(),
        written_by: "tests".to_owned(),
        sealed_ms: 1,
        ahead_ms: None,
        holder: String::new(),
        key: [0; 32],
        last: 0,
        after: Chain([0; 32]),
        sections: Vec::new(),
    }
}

#[test]
fn what_is_made_up_is_refused() {
    let bytes = |bytes: &[u8]| Value::Bytes(bytes.to_vec());
    let witness = |sequence: u64, length: usize| {
        Value::Array(vec![Value::Array(vec![bytes(&[2; 16]), sequence.into(), bytes(&vec![3; length])])])
    };
    let section = |at: usize, value: Value| {
        let mut listed = good().listed();
        let mut one = listed[0].as_array().unwrap().clone();
        one[at] = value;
        listed[0] = one.into();
        good().with(11, Value::Array(listed))
    };
    let edits = good().sections;
    let raw = zstd::bulk::decompress(&edits, 1 << 20).unwrap();
    let length = raw.len() as u64;
    let twice = [(1, 1, 1, length, edits.clone()), (1, 1, 1, length, edits.clone())];
    let made_up = [
        ("signed by another", Forged { seed: 2, ..good() }),
        ("the key of another", good().with(2, bytes(&key(2).public_key()))),
        ("no key on the curve", good().with(2, bytes(&[0xff; 32]))),
        ("a key of small order", good().with(2, bytes(&[0; 32]))),
        ("a short key", good().with(2, bytes(&[1; 31]))),
        ("a long device", good().with(1, bytes(&[1; 17]))),
        ("first 0", good().with(3, 0)),
        ("first 2", good().with(3, 2)),
        ("first of all", good().with(3, u64::MAX)),
        ("first negative", good().with(3, -1)),
        ("last 0", good().with(4, 0)),
        ("last one less", good().with(4, 1)),
        ("last one more", good().with(4, 3)),
        ("last of all", good().with(4, u64::MAX)),
        ("last beyond what a store counts", good().with(3, u64::MAX >> 1).with(4, (u64::MAX >> 1) + 1)),
        ("another chain before", good().with(5, bytes(&[9; 32]))),
        ("another chain after", good().with(6, bytes(&[9; 32]))),
        ("a short chain", good().with(6, bytes(&[9; 31]))),
        ("witness 0", good().with(7, witness(0, 32))),
        ("witness of all", good().with(7, witness(u64::MAX, 32))),
        ("witness with a short chain", good().with(7, witness(1, 31))),
        ("witness no list", good().with(7, 5)),
        ("witness of nothing", good().with(7, Value::Array(vec![Value::Array(vec![])]))),
        ("seen 0", good().with(8, witness(0, 32))),
        ("seen of all", good().with(8, witness(u64::MAX, 32))),
        ("written by a number", good().with(9, 5)),
        ("sealed before time", good().with(10, -1)),
        ("ahead beyond", good().with(12, u64::MAX)),
        ("holder no text", good().with(13, bytes(b"Ann"))),
        ("sections no list", good().with(11, 1)),
        ("no section", good().with_sections(&[])),
        ("sections but not listed", good().with(11, Value::Array(vec![]))),
        ("edits twice", good().with_sections(&twice)),
        ("section of type -1", section(0, (-1).into())),
        ("section of type 65536", section(0, 65_536.into())),
        ("edits called something else", section(0, 7.into()).with(14, 0)),
        ("stored length one more", section(3, (edits.len() as u64 + 1).into())),
        ("stored length one less", section(3, (edits.len() as u64 - 1).into())),
        ("stored length of all", section(3, u64::MAX.into())),
        ("raw length one more", section(4, (length + 1).into())),
        ("raw length one less", section(4, (length - 1).into())),
        ("raw length 0", section(4, 0.into())),
        ("another hash", section(5, bytes(&[0; 32]))),
        ("packed said to be plain", section(2, 0.into())),
        ("plain said to be packed", good().with_sections(&[(1, 1, 1, length, raw.clone())])),
        ("raw cut", good().with_edits(&raw[..raw.len() - 1])),
        ("raw longer", good().with_edits(&[raw.as_slice(), &[0]].concat())),
        ("raw nothing", good().with_edits(&[])),
    ];
    let mut store = Untouched::new();
    for (what, forged) in made_up {
        let damage = Bundle::read(&forged.content());
        let newer = matches!(damage, Err(Damage::Newer(_)));
        assert!(damage.is_err(), "{what}");
        if newer {
            assert_eq!(what, "edits called something else");
        } else {
            store.refuses(&file(&[forged.part()]));
        }
    }
    for missing in 1..=11 {
        assert!(Bundle::read(&good().without(missing).content()).is_err(), "key {missing}");
    }
    let header = merge_forge::cbor(&Value::Map(good().header));
    for other in [[header.as_slice(), &[0]].concat(), header[..header.len() - 1].to_vec(), vec![], vec![0xf6]]
    {
        store.refuses(&file(&[Part::write(PartKind::Edits, &good().content_with_header(&other))]));
    }
}

#[test]
fn edits_that_cannot_be_are_refused() {
    let mut store = Untouched::new();
    let mut refused = |what: &str, edits: &[Edit], witness: Vec<Witness>| {
        let part = seal(&key(1), header(witness), edits).unwrap_or_else(|| panic!("{what}"));
        assert!(Bundle::read(Part::first_of(&part).unwrap().0.content).is_err(), "{what}");
        store.refuses(&file(&[part]));
    };
    refused("clock 0", &[edit(0, vec![])], vec![]);
    refused("clock beyond 63 bits", &[edit(1 << 63, vec![])], vec![]);
    refused("latest clock", &[edit(u64::MAX, vec![])], vec![]);
    refused("a record that is no UUID of version 7", &[Edit { record: [0; 16], ..edit(1, vec![]) }], vec![]);
    let nothing = Content::Value(Vec::new());
    refused("a value of no bytes", &[Edit { content: nothing, ..edit(1, vec![]) }], vec![]);
    let no_item = Content::Value(vec![0xff; 33]);
    refused("a value that is no CBOR", &[Edit { content: no_item, ..edit(1, vec![]) }], vec![]);
    let absurd =
        Witness { name: EditName { device: key(2).device(), sequence: u64::MAX }, chain: Chain([0; 32]) };
    refused("a witness beyond all", &[edit(1, vec![])], vec![absurd]);
    let before_all = Predecessor { name: EditName { device: key(1).device(), sequence: 0 }, line: 0 };
    refused("edit 0 replaced", &[edit(1, vec![before_all])], vec![]);
    // What cannot even be sealed.
    assert!(seal(&key(1), header(vec![]), &[edit(1, vec![own(1)])]).is_none(), "replaces itself");
    assert!(seal(&key(1), header(vec![]), &[edit(1, vec![own(2)])]).is_none(), "replaces a later one");
    let twice = edit(1, vec![own(1), own(1)]);
    assert!(seal(&key(1), header(vec![]), &[edit(1, vec![]), twice]).is_none(), "replaces one twice");
}

#[test]
fn columns_that_do_not_fit_are_refused() {
    // Of the one edit `100 = null`: times and rest of records; times, counters and lengths of saves; record and field of each;
    // how many predecessors, their lines and distances; values.
    let born = vec![0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x01]; // Zigzag of 2^41 milliseconds.
    let rest = vec![0x70, 0x80, 0, 0, 0, 0, 0, 0, 0, 1];
    let one =
        [born, rest, vec![0], vec![1], vec![1], vec![0], vec![100], vec![0], vec![], vec![], vec![1, 0xf6]];
    let forged = |columns: [Vec<u8>; 11]| good().with(4, 1).with_edits(&merge_forge::columns(columns));
    let is_chain = |forged: &Forged| matches!(Bundle::read(&forged.content()), Err(Damage::Damaged(what)) if what.contains("chain"));
    assert!(is_chain(&forged(one.clone())), "good columns get as far as the chain");
    for at in 0..11 {
        let mut longer = one.clone();
        longer[at].push(0);
        let mut cut = one.clone();
        let was_cut = cut[at].pop().is_some();
        for columns in [longer].into_iter().chain(was_cut.then_some(cut)) {
            assert!(!is_chain(&forged(columns.clone())), "{columns:x?}");
            assert!(Bundle::read(&forged(columns).content()).is_err());
        }
    }
    let far = vec![0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 1];
    let others: [&[(usize, Vec<u8>)]; 17] = [
        &[(0, far.clone())],                              // born beyond all time
        &[(1, vec![0x60, 0x80, 0, 0, 0, 0, 0, 0, 0, 1])], // no UUID of version 7
        &[(4, vec![0])],                                  // a save of no edit
        &[(4, vec![2])],                                  // more than there are
        &[(2, vec![1])],                                  // a clock below 0
        &[(2, vec![0x80; 11])],                           // no end of a number
        &[(3, vec![0x80, 0x80, 4])],                      // a counter of more than 16 bits
        &[(5, vec![2])],                                  // a record that is not there
        &[(5, vec![1])],                                  // one before the first
        &[(6, vec![0x80, 0x80, 4])],                      // field 65,536
        &[(7, vec![1]), (8, vec![0]), (9, vec![0])],      // itself
        &[(7, vec![1]), (8, vec![0]), (9, vec![1])],      // edit 0
        &[(7, vec![1]), (8, vec![1]), (9, vec![0])],      // a witness that is not there
        &[(7, far.clone())],                              // more than can be
        &[(10, vec![2, 0xf6])],                           // a longer value
        &[(10, vec![0])],                                 // redacted, without a hash
        &[(10, far)],                                     // longer than all
    ];
    for changed in others {
        let mut columns = one.clone();
        for (at, column) in changed {
            columns[*at].clone_from(column);
        }
        let forged = forged(columns.clone());
        assert!(!is_chain(&forged) && Bundle::read(&forged.content()).is_err(), "{columns:x?}");
    }
}

#[test]
fn pieces_of_photos_that_do_not_fit_are_refused() {
    let piece = |size_bytes, offset, bytes: &[u8]| {
        let part = PhotoPiece { sha256: [1; 32], size_bytes, offset, bytes }.write();
        PhotoPiece::read(Part::first_of(&part).unwrap().0.content).is_ok()
    };
    assert!(piece(5, 0, &[0; 5]));
    assert!(piece(PIECE_BYTES + 1, PIECE_BYTES, &[0]));
    for (size, offset, length) in [
        (5, 0, 4),
        (5, 0, 6),
        (0, 0, 0),
        (5, 5, 0),
        (5, 1, 4),
        (PIECE_BYTES * 2, PIECE_BYTES, 7),
        (u64::MAX, 0, 9),
        (PIECE_BYTES, u64::MAX, 1),
    ] {
        assert!(!piece(size, offset, &vec![0; length]), "{size} {offset} {length}");
    }
}

#[test]
fn a_higher_minor_version_is_read_and_another_major_is_kept() {
    let part = good().part();
    let bundle = |bytes: &[u8]| Part::first_of(bytes).map(|(part, _)| Bundle::read(part.content).is_ok());
    assert_eq!(bundle(&with_version(&part, 1, 200)), Ok(true));
    for major in [0, 2, 255] {
        assert!(matches!(bundle(&with_version(&part, major, 0)), Err(Damage::Newer(_))));
    }
}
