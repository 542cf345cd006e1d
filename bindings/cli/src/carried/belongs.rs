//! Where a record belongs, as JSON.

use pitface_core::store::Belongs;
use serde_json::{Value, json};

/// The record with its kind, the name of its field and the number of its pit.
pub fn belongs_json(of: &Belongs) -> Value {
    let kind = of.kinds.last().map(|kind| kind.name());
    json!({ "record": of.record.to_string(), "kind": kind, "field": of.field_name, "pit": of.pit_number })
}
