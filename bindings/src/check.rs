//! The core asked about a text, without a session: for tests of shells against the published cases (`tests/vectors`), which
//! then hold on the far side of the border too. No screen needs this.

use crate::PitfaceError;
use crate::made::new_id;
use pitface_core::RULES;
use pitface_core::advice::ZoneCall;
use pitface_core::answer::FieldAnswer;
use pitface_core::error::Fault;
use pitface_core::reading::LayerReading;
use pitface_core::record::notes;
use serde_json::{Map, Value, json};

/// Every fault of a notes file, as JSON: `[{"at": …, "wrong": …, "todo": …}, …]` in the order of `bad_inputs.json`; `[]` if
/// there is none. Nothing is kept. Milliseconds, any thread.
///
/// # Errors
/// None but a fault of this program.
#[uniffi::export]
pub fn check_notes(text: String) -> Result<String, PitfaceError> {
    let faults = notes::read(&text, &mut new_id).err().unwrap_or_default();
    let told: Value = faults
        .iter()
        .map(|Fault { at, wrong, todo }| json!({ "at": at, "wrong": wrong, "todo": todo }))
        .collect();
    Ok(told.to_string())
}

/// Layers and calls of a notes file, as JSON: codes and whole millimetres under the keys of the command line's `read`, of
/// which these are a part: `field`, `rules`, `pits[].layers[]` with `top_mm`, `bottom_mm`, `condition`, `cause`, `share`;
/// `zones` (by their codes) and `whole`, each with `call`, `share`, `tip_mm`, `reasons`, `cautions`, `follow_up`. Nothing is
/// kept. Milliseconds, any thread.
///
/// # Errors
/// `Invalid` with the first fault of a file that has some.
#[uniffi::export]
pub fn read_field(text: String) -> Result<String, PitfaceError> {
    let notes = notes::read(&text, &mut new_id).map_err(first)?.notes;
    let FieldAnswer { notes, reading, advice, .. } = FieldAnswer::of(notes, None);
    let layers = |layers: &[LayerReading]| layers.iter().map(layer).collect::<Vec<_>>();
    let pits: Vec<Value> = reading.pits.iter().map(|pit| json!({ "layers": layers(&pit.layers) })).collect();
    let zones: Map<String, Value> =
        advice.zones.iter().map(|call| (call.zone.code().to_owned(), zone(call))).collect();
    let whole = zone(&advice.whole);
    let field = &notes.field.name;
    Ok(json!({ "field": field, "rules": RULES, "pits": pits, "zones": zones, "whole": whole }).to_string())
}

fn first(faults: Vec<Fault>) -> PitfaceError {
    let none = || Fault::new("", "this is no notes file", "give one");
    faults.into_iter().next().unwrap_or_else(none).into()
}

fn layer(read: &LayerReading) -> Value {
    json!({
        "top_mm": read.top_mm,
        "bottom_mm": read.bottom_mm,
        "condition": read.condition,
        "cause": read.cause,
        "share": read.share,
    })
}

fn zone(call: &ZoneCall) -> Value {
    json!({
        "call": call.call,
        "share": call.share,
        "tip_mm": call.tip.map(|tip| [tip.lo_mm, tip.hi_mm]),
        "reasons": call.reasons.iter().map(|why| json!(why.what)).collect::<Vec<_>>(),
        "cautions": call.cautions,
        "follow_up": call.follow_up,
    })
}
