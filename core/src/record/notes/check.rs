//! What must fit together in a file whose single values are good.

use super::cursor::Gathered;
use crate::record::depth::{self, DepthFault};
use crate::record::{Layer, Pit};
use serde_json::Value;

/// A `[longitude, latitude]` on the globe, or what is wrong and what to do.
pub fn longitude_latitude(value: &Value) -> Result<[f64; 2], (String, String)> {
    let numbers: Option<Vec<f64>> =
        value.as_array().and_then(|parts| parts.iter().map(Value::as_f64).collect());
    let Some([longitude, latitude]) = numbers.as_deref() else {
        return Err((format!("{value} is no position"), "write [longitude, latitude] in degrees".into()));
    };
    if longitude.abs() <= 180.0 && latitude.abs() <= 90.0 {
        return Ok([*longitude, *latitude]);
    }
    let todo = if latitude.abs() <= 180.0 && longitude.abs() <= 90.0 {
        "the two look swapped: longitude comes first"
    } else {
        "longitude goes from -180 to 180, latitude from -90 to 90"
    };
    Err((format!("[{longitude}, {latitude}] is not on the globe"), todo.into()))
}

/// A ring of at least three places.
pub fn ring(ring: &[[f64; 2]], at: &str, gathered: &mut Gathered) {
    let mut different: Vec<&[f64; 2]> = ring.iter().collect();
    different.dedup();
    if !ring.is_empty() && different.len() < 3 {
        let wrong = format!("{} different points enclose no field", different.len());
        gathered.fault(at, wrong, "give at least three, in walking order");
    }
}

/// The layers, where their depths fit together; else the first breach, told at the layer it stands in.
/// A `false` beside a layer says that its bottom is missing.
pub fn layers(read: Vec<Option<(Layer, bool)>>, at: &str, gathered: &mut Gathered) -> Vec<Layer> {
    // With one broken layer the rest cannot be judged: its own fault is told already.
    let Some(read) = read.into_iter().collect::<Option<Vec<_>>>() else { return Vec::new() };
    let spans: Vec<_> = read
        .iter()
        .map(|(layer, has_bottom)| (layer.top_mm, has_bottom.then_some(layer.bottom_mm)))
        .collect();
    if let Err(fault) = depth::check(&spans) {
        let (layer, key, todo) = match fault {
            DepthFault::MissingBottom { layer } => (layer, "bottom_mm", "give the depth of its bottom"),
            DepthFault::Equal { layer, .. } => {
                (layer, "bottom_mm", "leave the layer out, or give it thickness")
            }
            DepthFault::Inverted { layer, .. } => {
                (layer, "bottom_mm", "depths count downwards: swap the two")
            }
            DepthFault::Gap { layer, .. } | DepthFault::Overlap { layer, .. } => {
                (layer, "top_mm", "let it begin where the layer above ends")
            }
        };
        gathered.fault(format!("{at}[{layer}].{key}"), fault.to_string(), todo);
    }
    read.into_iter().map(|(layer, _)| layer).collect()
}

/// Walk and layers stay within the hole, and the walk goes down.
pub fn depths(pit: &Pit, walk_at: &str, layers_at: &str, gathered: &mut Gathered) {
    for (index, pair) in pit.walk.windows(2).enumerate() {
        if pair[1].to_mm <= pair[0].to_mm {
            let wrong =
                format!("the step to {} mm comes after the one to {} mm", pair[1].to_mm, pair[0].to_mm);
            gathered.fault(
                format!("{walk_at}[{}].to_mm", index + 1),
                wrong,
                "go down the face, each step deeper",
            );
        }
    }
    let Some(hole_mm) = pit.dug_to_mm else { return };
    let too_deep = |depth_mm: u32| {
        (depth_mm > hole_mm).then(|| format!("{depth_mm} mm lies below the hole's bottom at {hole_mm} mm"))
    };
    let todo = "correct it, or \"dug_to_mm\"";
    for (index, step) in pit.walk.iter().enumerate() {
        if let Some(wrong) = too_deep(step.to_mm) {
            gathered.fault(format!("{walk_at}[{index}].to_mm"), wrong, todo);
        }
    }
    for (index, layer) in pit.layers.iter().enumerate() {
        if let Some(wrong) = too_deep(layer.bottom_mm) {
            gathered.fault(format!("{layers_at}[{index}].bottom_mm"), wrong, todo);
        }
    }
}
