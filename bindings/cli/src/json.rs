//! What was read and advised, as JSON: codes and whole millimetres, no sentences.

use crate::field::FieldRead;
use pitface_core::RULES;
use pitface_core::advice::after_dig::PassAdvice;
use pitface_core::advice::readers::SeveralReaders;
use pitface_core::advice::{ChangedAnswer, What, Why, ZoneCall, stands_for};
use pitface_core::answer::FieldAnswer;
use pitface_core::place::{FieldMap, PlaceRemark};
use pitface_core::reading::{KINDS, LayerReading, NextLook, PitReading};
use pitface_core::record::{FieldNotes, Pit, RecordId};
use serde_json::{Map, Value, json};

/// One field, read and advised.
pub fn field(field: &FieldRead) -> Value {
    let FieldAnswer { notes, map, reading, advice, passes, .. } = &field.answer;
    let read = reading.pits.iter().zip(field.next_looks()).map(|(read, look)| pit(read, look.as_ref()));
    let pits: Vec<Value> =
        notes.pits.iter().zip(read).map(|(noted, read)| merged(place(noted, map), read)).collect();
    let zones: Map<String, Value> =
        advice.zones.iter().map(|call| (call.zone.code().to_owned(), zone(field, call))).collect();
    json!({
        "field": notes.field.name,
        "rules": RULES,
        "pits": pits,
        "zones": zones,
        "whole": zone(field, &advice.whole),
        "several_readers": field.readers().map(several),
        "passes": passes_of(notes, passes),
        "unknown_keys": field.unknown_keys,
    })
}

/// Holes that several people read, pits by their number.
fn several(readers: &SeveralReaders) -> Value {
    let holes = readers.holes.iter().zip(&readers.calls).map(|(hole, calls)| {
        let pits: Vec<usize> = hole.iter().map(|index| index + 1).collect();
        json!({ "pits": pits, "calls": calls })
    });
    json!({ "holes": holes.collect::<Vec<_>>(), "agreement": readers.agreement })
}

/// Passes with the holes behind them, in the order of the notes: pits by their number, records without an id, since a
/// file without ids gets new ones at every reading.
pub fn passes_of(notes: &FieldNotes, passes: &[PassAdvice]) -> Value {
    let number = |id: RecordId| notes.pits.iter().position(|pit| pit.id == id).map(|index| index + 1);
    let mut all = json!(passes);
    for (object, pass) in all.as_array_mut().into_iter().flatten().zip(passes) {
        without(object, "pass");
        let Some(digs) = object["digs"].as_array_mut() else { continue };
        for (object, dig) in digs.iter_mut().zip(&pass.digs) {
            without(object, "dig");
            if let Some(pair) = dig.pair {
                object["pair"]["before"] = json!(number(pair.before));
            }
        }
    }
    all
}

fn without(object: &mut Value, key: &str) {
    if let Some(object) = object.as_object_mut() {
        object.shift_remove(key);
    }
}

/// Where a pit lies: its zone, and what is to be said of that.
pub fn place(pit: &Pit, map: &FieldMap) -> Value {
    let remarks: Vec<Value> = map.remarks(pit).iter().map(remark).collect();
    json!({ "place": pit.place, "zone": stands_for(map, pit), "remarks": remarks })
}

fn remark(remark: &PlaceRemark) -> Value {
    let more = match *remark {
        PlaceRemark::Outside { distance_m, accuracy_m } => {
            json!({ "distance_m": distance_m, "accuracy_m": accuracy_m })
        }
        PlaceRemark::NearEdge { distance_m, accuracy_m, zone } => {
            json!({ "distance_m": distance_m, "accuracy_m": accuracy_m, "zone": zone })
        }
        PlaceRemark::DiffersFromPlace { zone } | PlaceRemark::MovedTo { zone } => json!({ "zone": zone }),
    };
    merged(json!({ "remark": remark.code() }), more)
}

fn pit(read: &PitReading, look: Option<&NextLook>) -> Value {
    json!({
        "face": read.face,
        "dug_to_mm": read.dug_to_mm,
        "layers": read.layers.iter().map(layer).collect::<Vec<_>>(),
        "next_look": look.map(next_look),
    })
}

fn layer(read: &LayerReading) -> Value {
    let mut kinds: Vec<_> = KINDS.iter().zip(read.shares).collect();
    kinds.sort_by(|(_, one), (_, other)| other.total_cmp(one));
    let kinds: Vec<Value> =
        kinds.iter().map(|(kind, share)| merged(json!(kind), json!({ "share": share }))).collect();
    json!({
        "top_mm": read.top_mm,
        "bottom_mm": read.bottom_mm,
        "condition": read.condition,
        "cause": read.cause,
        "share": read.share,
        "reasons": read.reasons,
        "kinds": kinds,
        "texture": read.texture,
    })
}

/// The question most worth answering in a pit.
pub fn next_look(look: &NextLook) -> Value {
    json!({
        "layer": look.layer,
        "top_mm": look.top_mm,
        "bottom_mm": look.bottom_mm,
        "clue": look.clue,
        "answers": look.clue.answers(),
        "between": look.between,
        "gain": look.gain,
    })
}

fn zone(field: &FieldRead, call: &ZoneCall) -> Value {
    let would_change: Vec<Value> = field
        .changes(call.zone)
        .iter()
        .map(|change| {
            let answers: Vec<Value> = change.answers.iter().map(changed_answer).collect();
            json!({ "answers": answers, "call": change.call })
        })
        .collect();
    let rest = json!({
        "call": call.call,
        "share": call.share,
        "tip_mm": call.tip.map(|tip| [tip.lo_mm, tip.hi_mm]),
        "cleared_share": call.tip.map(|tip| tip.cleared_share),
        "sure": call.sure,
        "reasons": call.reasons.iter().map(why).collect::<Vec<_>>(),
        "cautions": call.cautions,
        "would_change": would_change,
        "follow_up": call.follow_up,
        "tip": call.tip,
        "pits": call.pits,
        "rooting_loss": call.rooting_loss,
    });
    merged(rest, json!(call.readiness))
}

fn why(why: &Why) -> Value {
    let Why { stance, what } = why;
    // A kind reads better spread out, as in the layers.
    let what = match what {
        What::Layer { kind, .. } => merged(json!(what), json!(kind)),
        _ => json!(what),
    };
    merged(json!({ "stance": stance }), what)
}

fn changed_answer(answer: &ChangedAnswer) -> Value {
    match *answer {
        ChangedAnswer::Clue { top_mm, bottom_mm, clue, answer } => json!({
            "top_mm": top_mm, "bottom_mm": bottom_mm, "clue": clue, "answer": clue.answers().get(answer),
        }),
        ChangedAnswer::Roll { surface, roll } => {
            json!({ "roll": roll, "at": if surface { "surface" } else { "tip_depth" } })
        }
    }
}

/// Both objects as one.
pub fn merged(mut object: Value, more: Value) -> Value {
    if let (Some(object), Value::Object(more)) = (object.as_object_mut(), more) {
        object.extend(more);
    }
    object
}

/// One object as it is; several as `{"fields": […]}`.
pub fn fields(mut fields: Vec<Value>) -> Value {
    if fields.len() == 1 { fields.swap_remove(0) } else { json!({ "fields": fields }) }
}
