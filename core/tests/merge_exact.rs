//! Values and edits come through a bundle as they went in, whatever they are.

use crate::merge_forge;

use ciborium::Value;
use merge_forge::cbor;
use pitface_core::merge::columns::{self, Standing};
use pitface_core::merge::{
    Bundle, Chain, Content, Damage, DeviceId, Edit, EditName, Header, KeyFromSeed, Part, Predecessor, Signer,
    Witness, seal,
};
use proptest::collection::{btree_set, vec};
use proptest::prelude::*;

/// Any value of CBOR, a few levels deep.
fn any_value() -> impl Strategy<Value = Value> {
    let text = prop_oneof![
        any::<String>(),
        // Composed and taken apart, right to left, joined pictures, NUL, the ends of Unicode.
        vec(
            prop::sample::select(vec![
                "\u{fc}",
                "u\u{308}",
                "\u{5e9}",
                "\u{202e}",
                "\u{1f469}\u{200d}\u{1f33e}",
                "\0",
                "\u{feff}",
                "\u{10ffff}",
                "\u{85}",
            ]),
            0..12
        )
        .prop_map(|parts| parts.concat()),
    ];
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        // Every pattern of 64 bits but those that are no number.
        any::<u64>()
            .prop_map(f64::from_bits)
            .prop_filter("a number", |float| !float.is_nan())
            .prop_map(Value::from),
        // Subnormal ones.
        (0..1_u64 << 52, any::<bool>())
            .prop_map(|(bits, minus)| Value::from(f64::from_bits(bits | u64::from(minus) << 63))),
        text.prop_map(Value::from),
        vec(any::<u8>(), 0..80).prop_map(Value::Bytes),
    ];
    leaf.prop_recursive(3, 24, 6, |inner| {
        prop_oneof![
            vec(inner.clone(), 0..6).prop_map(Value::Array),
            vec((inner.clone(), inner.clone()), 0..4).prop_map(Value::Map),
            (any::<u64>(), inner).prop_map(|(tag, value)| Value::Tag(tag, Box::new(value))),
        ]
    })
}

/// An edit but for what it names: that depends on where it stands.
fn any_edit() -> impl Strategy<Value = Edit> {
    let content = prop_oneof![
        8 => any_value().prop_map(|value| Content::Value(cbor(&value))),
        1 => any::<[u8; 32]>().prop_map(Content::Redacted),
    ];
    let field = prop_oneof![0..6_u16, any::<u16>()];
    let clock = prop_oneof![1..4_u64, 1..=i64::MAX as u64];
    (clock, 0..5_u8, any::<[u8; 15]>(), field, content).prop_map(|(clock, again, random, field, content)| {
        let mut record = [again; 16];
        if again == 0 {
            record[1..].copy_from_slice(&random);
        }
        record[6] = 0x70 | record[6] & 0x0f;
        Edit { clock, record, field, predecessors: Vec::new(), content }
    })
}

/// Edits of a line that begins anywhere, and the witness of what they name.
fn any_line() -> impl Strategy<Value = (u64, Vec<Witness>, Vec<Edit>)> {
    let witness = vec((0..4_u8, 1..1_u64 << 62, any::<[u8; 32]>()), 0..4);
    let edit = (any_edit(), btree_set((0..5_u32, any::<u64>()), 0..6));
    let first = prop_oneof![Just(1), 1..1_u64 << 40];
    (first, witness, vec(edit, 0..40)).prop_map(|(first, witness, edits)| {
        let witness: Vec<Witness> = witness
            .into_iter()
            .map(|(device, sequence, chain)| Witness {
                name: EditName { device: DeviceId([device; 16]), sequence },
                chain: Chain(chain),
            })
            .collect();
        let edits = edits
            .into_iter()
            .zip(first..)
            .map(|((mut edit, names), own)| {
                let named = |(line, lot): (u32, u64)| {
                    let (device, most) = match line.checked_sub(1).map(|at| witness.get(at as usize)) {
                        None => (device(), own - 1),
                        Some(of) => of.map(|of| (of.name.device, of.name.sequence))?,
                    };
                    let name = EditName { device, sequence: 1 + lot % most.max(1) };
                    (most > 0).then_some(Predecessor { name, line })
                };
                edit.predecessors = names.into_iter().filter_map(named).collect();
                edit.predecessors.sort_unstable();
                edit.predecessors.dedup();
                edit
            })
            .collect();
        (first, witness, edits)
    })
}

fn key() -> KeyFromSeed {
    KeyFromSeed::new(&[1; 32])
}

fn device() -> DeviceId {
    key().device()
}

fn sealed(first: u64, witness: &[Witness], edits: &[Edit]) -> Vec<u8> {
    let header = Header {
        device: device(),
        first,
        before: if first == 1 { Chain::start(device()) } else { Chain([5; 32]) },
        witness: witness.to_vec(),
        seen: witness.to_vec(),
        written_by: "tests".to_owned(),
        sealed_ms: u64::MAX,
        ahead_ms: Some(i64::MIN),
        holder: "\u{202e}J\u{f8}rn \u{1f33e}".to_owned(),
        key: [0; 32],
        last: 0,
        after: Chain([0; 32]),
        sections: Vec::new(),
    };
    seal(&key(), header, edits).expect("edits that fit their header")
}

proptest! {
    #[test]
    fn columns_come_back((first, witness, edits) in any_line()) {
        let standing = Standing { device: device(), first, witness: &witness };
        let written = columns::write(standing, &edits).expect("edits that fit their standing");
        prop_assert_eq!(columns::read(standing, edits.len() as u64, &written).unwrap(), edits);
        // One more or one less than there are is refused.
        prop_assert!(columns::read(standing, 1 + written.len() as u64, &written).is_err());
    }

    #[test]
    fn bundles_come_back((first, witness, edits) in any_line()) {
        let part = sealed(first, &witness, &edits);
        let (part, rest) = Part::first_of(&part).unwrap();
        prop_assert!(rest.is_empty());
        let bundle = Bundle::read(part.content).unwrap();
        prop_assert_eq!(bundle.header.count(), edits.len() as u64);
        prop_assert_eq!(&bundle.header.witness, &witness);
        prop_assert_eq!(&bundle.header.seen, &witness);
        prop_assert_eq!(bundle.header.ahead_ms, Some(i64::MIN));
        prop_assert_eq!(bundle.header.holder.as_str(), "\u{202e}J\u{f8}rn \u{1f33e}");
        prop_assert_eq!(bundle.edits, edits);
    }

    #[test]
    fn values_mean_the_same_before_and_after(value in any_value()) {
        let edit = Edit {
            clock: 1, record: [0x77; 16], field: 1, predecessors: Vec::new(), content: Content::Value(cbor(&value)),
        };
        let part = sealed(1, &[], &[edit]);
        let bundle = Bundle::read(Part::first_of(&part).unwrap().0.content).unwrap();
        let Content::Value(bytes) = &bundle.edits[0].content else { panic!("redacted") };
        let after: Value = ciborium::from_reader(bytes.as_slice()).unwrap();
        // As text, which tells 0.0 from −0.0.
        prop_assert_eq!(format!("{after:?}"), format!("{value:?}"));
    }
}

#[test]
fn a_note_of_a_megabyte_comes_back() {
    let note = "Damp down to the spade's tip.\0".repeat(35_000);
    assert!(note.len() > 1 << 20);
    let content = Content::Value(cbor(&note.into()));
    let edit = Edit { clock: 1, record: [0x77; 16], field: 1, predecessors: Vec::new(), content };
    let part = sealed(1, &[], std::slice::from_ref(&edit));
    let bundle = Bundle::read(Part::first_of(&part).unwrap().0.content).unwrap();
    assert_eq!(bundle.edits, [edit]);
}

/// A value that were none would break the store of whoever took it in: one that begins as a redacted one does in the log
/// would be taken for that.
#[test]
fn what_is_no_value_is_refused() {
    let no_values = [vec![0xff; 33], vec![0x62, 0x41], vec![0xf6, 0xf6], vec![0x61, 0xc3], vec![0x9f, 0xff]];
    for value in no_values {
        let content = Content::Value(value.clone());
        let edit = Edit { clock: 1, record: [0x77; 16], field: 1, predecessors: Vec::new(), content };
        let part = sealed(1, &[], &[edit]);
        let read = Bundle::read(Part::first_of(&part).unwrap().0.content);
        assert!(matches!(read, Err(Damage::Damaged(_))), "{value:x?}: {read:?}");
    }
}
