//! Depth logic against the shared cases: each breach is its own fault (T06).

use pitface_core::record::depth::{DepthFault, breaches, check};
use serde_json::{Value, json};

const CASES: &str = include_str!("../../tests/vectors/depth.json");

fn as_json(fault: DepthFault) -> Value {
    match fault {
        DepthFault::MissingBottom { layer } => json!({"kind": "missing_bottom", "layer": layer}),
        DepthFault::Equal { layer, at_mm } => json!({"kind": "equal", "layer": layer, "at_mm": at_mm}),
        DepthFault::Inverted { layer, top_mm, bottom_mm } => {
            json!({"kind": "inverted", "layer": layer, "top_mm": top_mm, "bottom_mm": bottom_mm})
        }
        DepthFault::Gap { layer, from_mm, to_mm } => {
            json!({"kind": "gap", "layer": layer, "from_mm": from_mm, "to_mm": to_mm})
        }
        DepthFault::Overlap { layer, from_mm, to_mm } => {
            json!({"kind": "overlap", "layer": layer, "from_mm": from_mm, "to_mm": to_mm})
        }
    }
}

#[test]
fn each_breach_is_found_and_is_its_own_fault() {
    let cases: Value = serde_json::from_str(CASES).unwrap();
    for case in cases["cases"].as_array().unwrap() {
        let id = case["id"].as_str().unwrap();
        let layers: Vec<(u32, Option<u32>)> = serde_json::from_value(case["layers"].clone()).unwrap();
        let found: Vec<Value> = breaches(&layers).into_iter().map(as_json).collect();
        assert_eq!(Value::from(found), case["faults"], "{id}");
        let first = check(&layers).err().map(as_json);
        assert_eq!(first.as_ref(), case["faults"].get(0), "{id}");
    }
}

#[test]
fn each_breach_has_its_own_sentence() {
    let broken = [(0, 100), (110, 200), (190, 190), (230, 220)].map(|(top, bottom)| (top, Some(bottom)));
    let missing = breaches(&[(0, None)]);
    let overlap = breaches(&[(0, Some(100)), (90, Some(200))]);
    let all = [breaches(&broken), missing, overlap].concat();
    let told: Vec<String> = all.iter().map(ToString::to_string).collect();
    assert_eq!(
        told,
        [
            "no layer covers 100 to 110 mm",
            "top and bottom are both 190 mm",
            "the bottom at 220 mm lies above the top at 230 mm",
            "the layer has no bottom",
            "two layers cover 90 to 100 mm",
        ]
    );
}
