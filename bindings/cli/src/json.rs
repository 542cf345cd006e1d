//! What was read and advised, as JSON: codes and whole millimetres, no sentences. `bindings/cli/schemas` describes every answer.

use crate::field::FieldRead;
use pitface_core::RULES;
use pitface_core::advice::readers::SeveralReaders;
use pitface_core::advice::{ChangedAnswer, What, Why, ZoneCall, stands_for};
use pitface_core::answer::FieldAnswer;
use pitface_core::place::PlaceRemark;
use pitface_core::reading::{KINDS, LayerReading, NextLook, PitReading};
use pitface_core::record::{Pit, RecordId, remark};
use serde_json::{Map, Value, json};

/// Version of the form of all answers; it changes where a key goes or comes to mean something else, not where one is added.
pub const FORMAT: u64 = 1;

/// The answer about some fields: one shape, however many there are.
pub fn fields(fields: Vec<Value>) -> Value {
    let mut answer = json!({ "rules": RULES });
    answer["fields"] = fields.into();
    answer
}

/// How everything said of a field begins; ids only where something keeps them.
pub fn head(field: &FieldRead) -> Value {
    json!({ "field": field.notes.field.name, "field_id": field.lasting(field.notes.field.id) })
}

/// How everything said of a pit begins.
pub fn pit_head(field: &FieldRead, index: usize) -> Value {
    json!({ "number": index + 1, "id": field.lasting(field.notes.pits[index].id) })
}

/// One field, read and advised.
pub fn field(field: &FieldRead) -> Value {
    let FieldAnswer { reading, advice, .. } = &field.answer;
    let read = reading.pits.iter().zip(field.next_looks()).enumerate();
    let pits: Vec<Value> = read
        .map(|(index, (read, look))| merged(place(field, index), pit(field, index, read, look.as_ref())))
        .collect();
    let zones: Map<String, Value> =
        advice.zones.iter().map(|call| (call.zone.code().to_owned(), zone(field, call))).collect();
    let told = json!({
        "remark": field.notes.field.remark,
        "pits": pits,
        "zones": zones,
        "whole": zone(field, &advice.whole),
        "several_readers": field.readers().map(several),
        "passes": passes(field),
        "worth_asking": field.worth_asking(),
        "unknown_keys": field.unknown_keys,
    });
    merged(head(field), told)
}

/// Holes that several people read, pits by their number.
fn several(readers: &SeveralReaders) -> Value {
    let holes = readers.holes.iter().zip(&readers.calls).map(|(hole, calls)| {
        let pits: Vec<usize> = hole.iter().map(|index| index + 1).collect();
        json!({ "pits": pits, "calls": calls })
    });
    json!({ "holes": holes.collect::<Vec<_>>(), "agreement": readers.agreement })
}

/// Passes with the holes behind them, in the order of the notes; pits and holes by their number, which counts over all passes.
pub fn passes(field: &FieldRead) -> Vec<Value> {
    let number = |id: RecordId| field.notes.pits.iter().position(|pit| pit.id == id).map(|index| index + 1);
    let mut digs = 0;
    let each = field.passes.iter().enumerate();
    each.map(|(index, pass)| {
        let mut object = json!(pass);
        without(&mut object, "pass");
        for (told, dig) in object["digs"].as_array_mut().into_iter().flatten().zip(&pass.digs) {
            without(told, "dig");
            if let Some(pair) = dig.pair {
                told["pair"]["before"] = json!(number(pair.before));
            }
            digs += 1;
            *told = merged(json!({ "number": digs, "id": field.lasting(dig.dig) }), told.take());
        }
        let remark = field.notes.passes.get(index).and_then(|noted| noted.remark.as_deref());
        let head = json!({ "number": index + 1, "id": field.lasting(pass.pass), "remark": remark });
        merged(head, object)
    })
    .collect()
}

fn without(object: &mut Value, key: &str) {
    if let Some(object) = object.as_object_mut() {
        object.shift_remove(key);
    }
}

/// A pit and where it lies: its zone, and what is to be said of that.
pub fn place(field: &FieldRead, index: usize) -> Value {
    let (pit, map) = (&field.notes.pits[index], &field.map);
    let remarks: Vec<Value> = map.remarks(pit).iter().map(of_place).collect();
    let lies = json!({ "place": pit.place, "zone": stands_for(map, pit), "remarks": remarks });
    merged(pit_head(field, index), lies)
}

fn of_place(remark: &PlaceRemark) -> Value {
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

fn pit(field: &FieldRead, index: usize, read: &PitReading, look: Option<&NextLook>) -> Value {
    let noted = &field.notes.pits[index];
    json!({
        "remark": noted.remark,
        "face": read.face,
        "dug_to_mm": read.dug_to_mm,
        "layers": read.layers.iter().map(|read| layer(noted, read)).collect::<Vec<_>>(),
        "next_look": look.map(next_look),
    })
}

fn layer(pit: &Pit, read: &LayerReading) -> Value {
    let remarks: Vec<&str> = remark::of_layer(pit, read.top_mm, read.bottom_mm).collect();
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
        "remark": (!remarks.is_empty()).then(|| remarks.join("\n")),
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
            json!({ "answers": answers, "call": change.call, "hangs": change.hangs })
        })
        .collect();
    let rest = json!({
        "call": call.call,
        "share": call.share,
        "tip_mm": call.tip.map(|tip| [tip.lo_mm, tip.hi_mm]),
        "cleared_share": call.tip.map(|tip| tip.cleared_share),
        "sure": call.sure,
        "ground": call.ground,
        "reasons": call.reasons.iter().map(why).collect::<Vec<_>>(),
        "cautions": call.cautions,
        "cautions_now": call.cautions_now(),
        "would_change": would_change,
        "follow_up": call.follow_up,
        "tip": call.tip,
        "enough_pits": call.tip.map(|tip| tip.enough_pits()),
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
        ChangedAnswer::Deeper { obstacle, mm } => json!({ "obstacle": obstacle, "at_least_mm": mm }),
        ChangedAnswer::Shallower { obstacle, mm } => json!({ "obstacle": obstacle, "less_than_mm": mm }),
        ChangedAnswer::Leave => json!({ "leave": true }),
        ChangedAnswer::DeepClayHeldTo => json!({ "deep_clay_anyway": true }),
        ChangedAnswer::AnotherPit { like } => json!({ "another_pit_like": like }),
    }
}

/// Both objects as one.
pub fn merged(mut object: Value, more: Value) -> Value {
    if let (Some(object), Value::Object(more)) = (object.as_object_mut(), more) {
        object.extend(more);
    }
    object
}
