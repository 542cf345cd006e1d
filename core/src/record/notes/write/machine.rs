//! Writes a machine.

use super::Keys;
use crate::record::{Machine, Unknown};
use serde_json::Value;

/// Keys under which a machine has an object without an id.
const PARTS: [&str; 4] = ["wings", "leading", "speed", "tractor"];

pub fn machine(machine: &Machine) -> Value {
    let wings = machine.wings.map(|wings| {
        Keys::new().put("width_mm", wings.width_mm).may("lift_mm", wings.lift_mm).close(&Unknown::new())
    });
    let leading =
        machine.leading.map(|leading| Keys::new().may("depth_mm", leading.depth_mm).close(&Unknown::new()));
    let speed = machine.speed.map(|speed| {
        Keys::new().put("lo_kmh", speed.lo_kmh).put("hi_kmh", speed.hi_kmh).close(&Unknown::new())
    });
    let tractor = machine.tractor.map(|tractor| {
        Keys::new()
            .put("power_kw", tractor.power_kw)
            .put("drive", tractor.drive.code())
            .may("mass_kg", machine.tractor_mass_kg)
            .close(&Unknown::new())
    });
    // What was unknown in a part that has been taken off would make a part again.
    let is_there = [wings.is_some(), leading.is_some(), speed.is_some(), tractor.is_some()];
    let mut unknown = machine.unknown.clone();
    for (part, _) in PARTS.iter().zip(is_there).filter(|(_, is_there)| !is_there) {
        unknown.shift_remove(*part);
    }
    Keys::of(machine.id)
        .put("name", machine.name.as_str())
        .put("legs", machine.legs)
        .put("spacing_mm", machine.spacing_mm)
        .put("foot_width_mm", machine.foot_width_mm)
        .may("wings", wings)
        .may("leading", leading)
        .may("working_width_mm", machine.working_width_mm)
        .may("speed", speed)
        .may("reach_mm", machine.reach_mm)
        .may("tractor", tractor)
        .close(&unknown)
}
