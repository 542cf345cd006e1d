//! The golden bundles of every released version are read, and hold what is told of them (see `tests/vectors/bundles`).

use pitface_core::merge::{Bundle, Content, Edit, PartKind, PhotoPiece, Witness, read_file};
use serde_json::{Value as Json, json};
use sha2::{Digest, Sha256};
use std::path::{Path, PathBuf};

#[test]
fn golden_bundles_hold_what_is_told_of_them() {
    let files = golden();
    assert!(files.len() >= 9, "{files:?}");
    for path in files {
        let bytes = std::fs::read(&path).unwrap();
        let text = std::fs::read_to_string(path.with_extension("json")).unwrap();
        let mut expected: Json = serde_json::from_str(&text).unwrap();
        let expected = expected["parts"].as_array_mut().unwrap();
        let parts = read_file(&bytes).unwrap_or_else(|damage| panic!("{}: {damage}", path.display()));
        assert_eq!(parts.len(), expected.len(), "{}", path.display());
        for (part, expected) in parts.iter().zip(expected) {
            let doubles = expected.as_object_mut().unwrap().remove("doubles");
            for edit in expected.get_mut("edits").and_then(Json::as_array_mut).into_iter().flatten() {
                written_out(&mut edit["value"]);
            }
            let found = match part.kind {
                PartKind::Edits => edits(&Bundle::read(part.content).unwrap(), doubles.as_ref()),
                PartKind::PhotoPiece => piece(&PhotoPiece::read(part.content).unwrap()),
                PartKind::Other(kind) => json!({ "kind": kind, "content": hex(part.content) }),
                PartKind::End => unreachable!("ends are not given out"),
            };
            assert_eq!(found, *expected, "{}", path.display());
        }
    }
}

fn golden() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/vectors/bundles");
    let versions = std::fs::read_dir(folder).unwrap().map(|version| version.unwrap().path());
    let files = versions.filter(|version| version.is_dir()).flat_map(|version| {
        std::fs::read_dir(version).unwrap().map(|file| file.unwrap().path()).collect::<Vec<_>>()
    });
    let mut bundles: Vec<_> =
        files.filter(|file| file.extension().is_some_and(|end| end == "pitb")).collect();
    bundles.sort();
    bundles
}

/// A value that is told as a repetition.
fn written_out(value: &mut Json) {
    if let (Some(head), Some(repeated)) = (value["head"].as_str(), value["repeated"].as_str()) {
        let times = value["times"].as_u64().unwrap() as usize;
        *value = json!(head.to_owned() + &repeated.repeat(times));
    }
}

fn edits(bundle: &Bundle, doubles: Option<&Json>) -> Json {
    for (edit, bits) in bundle.edits.iter().zip(doubles.into_iter().flat_map(|list| list.as_array().unwrap()))
    {
        let Content::Value(value) = &edit.content else { panic!("redacted") };
        let double: f64 = ciborium::from_reader(value.as_slice()).unwrap();
        assert_eq!(format!("{:016x}", double.to_bits()), bits.as_str().unwrap());
    }
    let header = &bundle.header;
    let names = |names: &[Witness]| -> Json {
        let one = |one: &Witness| json!([hex(&one.name.device.0), one.name.sequence, hex(&one.chain.0)]);
        names.iter().map(one).collect()
    };
    let edit = |(edit, sequence): (&Edit, u64)| {
        let before = edit
            .predecessors
            .iter()
            .map(|before| json!([hex(&before.name.device.0), before.name.sequence, before.line]));
        let value = match &edit.content {
            Content::Value(value) => json!(hex(value)),
            Content::Redacted(_) => Json::Null,
        };
        json!({
            "device": hex(&header.device.0), "sequence": sequence, "clock": edit.clock.to_string(),
            "record": hex(&edit.record), "field": edit.field, "predecessors": before.collect::<Json>(),
            "value": value, "value_hash": hex(&edit.content.hash()),
        })
    };
    json!({
        "kind": 1, "device": hex(&header.device.0), "signer": hex(&header.signer().0),
        "first": header.first, "last": header.last, "witness": names(&header.witness),
        "seen": names(&header.seen), "holder": header.holder, "written_by": header.written_by,
        "sealed_ms": header.sealed_ms, "ahead_ms": header.ahead_ms,
        "edits": bundle.edits.iter().zip(header.first..).map(edit).collect::<Json>(),
    })
}

fn piece(piece: &PhotoPiece) -> Json {
    json!({
        "kind": 2, "photo": hex(&piece.sha256), "size": piece.size_bytes, "offset": piece.offset,
        "bytes": piece.bytes.len(), "hash_of_bytes": hex(&Sha256::digest(piece.bytes)),
    })
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |text, byte| text + &format!("{byte:02x}"))
}
