//! What a save wrote, as JSON: the record that it is named after, and the cells it wrote there.

use pitface_core::store::{Did, LastSave, Written};
use serde_json::{Value, json};

/// A save as it is named.
pub fn save_json(save: &LastSave) -> Value {
    let of = &save.of;
    let wrote = |wrote: &Written| {
        let [before, after] = wrote.to_json();
        json!({ "cell": wrote.cell.to_string(), "before": before, "after": after })
    };
    json!({
        "saved_ms": save.saved_ms,
        "did": match save.did {
            Did::Deleted => "deleted",
            Did::Joined => "joined",
            Did::BroughtBack => "brought_back",
            Did::Made => "made",
            Did::Changed => "changed",
        },
        "record": of.record.to_string(),
        "kind": of.kind.name(),
        "field": of.field,
        "pit": of.pit,
        "pass": of.pass,
        "after_dig": of.after_dig,
        "name": of.name,
        "top_mm": of.top_mm,
        "bottom_mm": of.bottom_mm,
        "wrote": save.wrote.iter().map(wrote).collect::<Vec<_>>(),
        "others": save.others,
    })
}
