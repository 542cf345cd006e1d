//! What is inside a file of bundles, without a session: for tests of shells against the golden bundles (`tests/vectors/bundles`).
//! No screen needs this.

use crate::PitfaceError;
use pitface_core::merge::{Bundle, Content, Damage, Edit, Part, PartKind, PhotoPiece, Witness, read_file};
use pitface_core::store::photo_name;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};

/// Everything in a file of bundles, every bit of it checked, as JSON in the form of `tests/vectors/bundles`: `{"parts": [{"kind": 1,
/// "device": …, "edits": [{"sequence": …, "clock": …, "value": …}]}]}`. Bytes are hex, clocks text. Nothing is kept. Any thread.
///
/// # Errors
/// `Invalid` with what is wrong with the file and what to do.
#[uniffi::export]
pub fn look_bundle(bytes: Vec<u8>) -> Result<String, PitfaceError> {
    let parts = read_file(&bytes).map_err(refused)?;
    let parts = parts.iter().map(part).collect::<Result<Vec<_>, Damage>>().map_err(refused)?;
    Ok(json!({ "parts": parts }).to_string())
}

fn refused(damage: Damage) -> PitfaceError {
    PitfaceError::Invalid { what: damage.to_string(), todo: "fetch it again from whom it came".to_owned() }
}

fn part(part: &Part) -> Result<Value, Damage> {
    Ok(match part.kind {
        PartKind::Edits => edits(&Bundle::read(part.content)?),
        PartKind::PhotoPiece => {
            let piece = PhotoPiece::read(part.content)?;
            json!({
                "kind": 2, "photo": photo_name(&piece.sha256), "size": piece.size_bytes, "offset": piece.offset,
                "bytes": piece.bytes.len(), "hash_of_bytes": photo_name(&Sha256::digest(piece.bytes).into()),
            })
        }
        PartKind::Other(kind) => json!({ "kind": kind, "content": hex(part.content) }),
        PartKind::End => Value::Null,
    })
}

fn edits(Bundle { header, edits, .. }: &Bundle) -> Value {
    let names = |names: &[Witness]| -> Value {
        let name =
            |one: &Witness| json!([one.name.device.to_hex(), one.name.sequence, photo_name(&one.chain.0)]);
        names.iter().map(name).collect()
    };
    let edit = |(edit, sequence): (&Edit, u64)| {
        let before = edit.predecessors.iter();
        let before =
            before.map(|before| json!([before.name.device.to_hex(), before.name.sequence, before.line]));
        let value = match &edit.content {
            Content::Value(value) => json!(hex(value)),
            Content::Redacted(_) => Value::Null,
        };
        json!({
            "device": header.device.to_hex(), "sequence": sequence, "clock": edit.clock.to_string(),
            "record": hex(&edit.record), "field": edit.field, "predecessors": before.collect::<Value>(),
            "value": value, "value_hash": photo_name(&edit.content.hash()),
        })
    };
    json!({
        "kind": 1, "device": header.device.to_hex(), "signer": header.signer().to_hex(),
        "first": header.first, "last": header.last, "witness": names(&header.witness),
        "seen": names(&header.seen), "holder": header.holder, "written_by": header.written_by,
        "sealed_ms": header.sealed_ms, "ahead_ms": header.ahead_ms,
        "edits": edits.iter().zip(header.first..).map(edit).collect::<Value>(),
    })
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |text, byte| text + &format!("{byte:02x}"))
}
